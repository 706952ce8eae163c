"""A door before the real server that fails in each way a link or a computer can fail."""

import contextlib
import http.client
import http.server
import json
import threading
import time
from collections.abc import Iterator

PAGE = b"<!doctype html><title>Welcome aboard</title><h1>Accept the terms of this network</h1>"


class Door:
    """Forwards every request to the server behind it, but for the faults that are set.

    Parameters
    ----------
    behind : int
        The server's port.
    """

    def __init__(self, behind: int):
        self.behind, self.fault, self.only, self.delay = behind, "", "", 0.0
        self.port = 0
        self.asked: list[str] = []

    def fails(self, fault: str, only: str = "/exchange/") -> None:
        """Fail in this way from now on, for the addresses that hold `only`; "" ends it."""
        self.fault, self.only = fault, only

    def fault_for(self, path: str) -> str:
        """The fault that a request for this address meets now."""
        return self.fault if self.only in path else ""


class _Handler(http.server.BaseHTTPRequestHandler):
    protocol_version = "HTTP/1.1"
    door: Door

    def answer(self) -> None:
        """Answer as the fault says, or as the server behind does."""
        body = self.rfile.read(int(self.headers.get("Content-Length") or 0))
        self.door.asked.append(f"{self.command} {self.path}")
        fault = self.door.fault_for(self.path)
        if fault == "silence":
            self._wait_until_it_ends()
            self.close_connection = True
        elif fault == "cut":
            self.close_connection = True
        elif fault == "sign-in page":
            self._send(200, "text/html", PAGE)
        elif fault == "garbage":
            self._send(200, "application/json", b'{"entries": [', {"X-Inspector": "1"})
        elif fault.startswith("page "):
            self._send(int(fault[5:]), "text/html", b"<h1>Bad gateway</h1>")
        elif fault.startswith("own "):
            said = json.dumps({"error": "A sentence of the computer."}).encode()
            self._send(int(fault[4:]), "application/json", said, {"X-Inspector": "1"})
        else:
            self._forward(body, half=fault == "half")

    do_GET = do_POST = do_PUT = answer  # noqa: N815  (the names are the library's)

    def _wait_until_it_ends(self) -> None:
        while self.door.fault == "silence":
            time.sleep(0.05)

    def _forward(self, body: bytes, *, half: bool) -> None:
        time.sleep(self.door.delay if self.command == "PUT" else 0)
        there = http.client.HTTPConnection("127.0.0.1", self.door.behind, timeout=60)
        with contextlib.closing(there):
            there.request(self.command, self.path, body, dict(self.headers))
            reply = there.getresponse()
            found = reply.read()
            self.send_response(reply.status)
            for name, value in reply.getheaders():
                if name.lower() not in ("connection", "transfer-encoding", "date", "server"):
                    self.send_header(name, value)
            self.end_headers()
            self.wfile.write(found[: len(found) // 2] if half else found)
            self.close_connection = half

    def _send(self, status: int, kind: str, body: bytes, more: dict | None = None) -> None:
        self.send_response(status)
        headers = {"Content-Type": kind, "Content-Length": str(len(body)), **(more or {})}
        for name, value in headers.items():
            self.send_header(name, value)
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, *_):
        """Say nothing."""


@contextlib.contextmanager
def door_before(behind: int) -> Iterator[Door]:
    """Open a door before a server on loopback, while the block runs.

    Parameters
    ----------
    behind : int
        The server's port.

    Yields
    ------
    Door
    """
    door = Door(behind)
    handler = type("Handler", (_Handler,), {"door": door})
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    server.daemon_threads = True
    # A browser that gave up leaves a broken pipe behind, which is no news.
    server.handle_error = lambda *_: None
    door.port = server.server_address[1]
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        yield door
    finally:
        door.fails("")
        server.shutdown()
        server.server_close()
