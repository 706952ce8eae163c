"""However many photos a server works on, its pages have threads of their own."""

import contextlib
import socket
import threading
import time
import urllib.request
from concurrent.futures import ThreadPoolExecutor

import pytest

from inspector.sharing.network import servers
from inspector.sharing.network.request_threads import PAGE_THREADS, PHOTO_THREADS
from inspector.sharing.network.servers import plain_server


class Application:
    """An application whose photos take until they are released."""

    def __init__(self):
        self.release = threading.Event()
        self.begun = threading.Semaphore(0)

    def __call__(self, environ, start_response):
        if "/photo/" in environ["PATH_INFO"]:
            self.begun.release()
            self.release.wait(60)
        start_response("200 OK", [("Content-Type", "text/plain")])
        return [b"answered"]


@pytest.fixture
def served():
    """Such an application, and the address where it is served."""
    application = Application()
    with socket.create_server(("127.0.0.1", 0)) as bound:
        server = plain_server(application, bound, largest=1024)
        threading.Thread(target=server.run, daemon=True).start()
        yield application, f"http://127.0.0.1:{bound.getsockname()[1]}"
        application.release.set()
        server.task_dispatcher.shutdown()
        for open_thing in list(server._map.values()):
            open_thing.close()


def read(address):
    opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
    with opener.open(address, timeout=30) as answer:
        return answer.read()


def test_pages_answer_while_photos_take_all_of_their_threads(served):
    """More photos than there are threads in all are in work, and a page is answered."""
    application, address = served
    count = PAGE_THREADS + PHOTO_THREADS + 4
    with ThreadPoolExecutor(count) as clients:
        photos = [clients.submit(read, f"{address}/x/photo/{number}") for number in range(count)]
        for _ in range(PHOTO_THREADS):
            application.begun.acquire()
        assert b"answered" == read(f"{address}/page")
        assert not any(photo.done() for photo in photos)
        application.release.set()
        assert [b"answered"] * count == [photo.result() for photo in photos]


def test_a_request_that_cannot_be_read_does_not_stop_the_server(served):
    """Nonsense is refused, and the next page is answered."""
    _, address = served
    host, port = address.removeprefix("http://").split(":")
    with socket.create_connection((host, int(port)), timeout=30) as client:
        client.sendall(b"nonsense\r\n\r\n")
        assert client.recv(100).startswith(b"HTTP/1.0 400")
    assert b"answered" == read(f"{address}/page")


def half_sent(address):
    """A connection whose request is never sent to its end."""
    host, port = address.removeprefix("http://").split(":")
    one = socket.create_connection((host, int(port)), timeout=10)
    one.sendall(b"POST /inspections HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 500\r\n\r\nhalf")
    return one


def test_requests_that_are_never_sent_to_their_end_stop_no_page(served):
    """With 300 half-sent requests open every page is still answered within a second."""
    _, address = served
    with contextlib.ExitStack() as open_things:
        for _ in range(300):
            open_things.enter_context(half_sent(address))
        for _ in range(20):
            began = time.monotonic()
            assert b"answered" == read(f"{address}/page")
            assert time.monotonic() - began < 1


def test_a_silent_connection_is_closed_and_a_slow_one_is_not(monkeypatch):
    """Silence ends a connection; a phone that sends a little now and then goes on."""
    monkeypatch.setattr(servers, "SILENT_FOR", 3)
    with socket.create_server(("127.0.0.1", 0)) as bound:
        server = plain_server(Application(), bound, largest=1024)
        threading.Thread(target=server.run, daemon=True).start()
        address = f"http://127.0.0.1:{bound.getsockname()[1]}"
        with half_sent(address) as silent, half_sent(address) as slow:
            for _ in range(9):
                slow.sendall(b"x")
                time.sleep(1)
            silent.settimeout(5)
            assert b"" == silent.recv(100)
            slow.settimeout(0.1)
            with pytest.raises(TimeoutError):
                slow.recv(100)
        server.task_dispatcher.shutdown()
        for open_thing in list(server._map.values()):
            open_thing.close()
