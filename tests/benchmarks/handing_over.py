"""What it costs to hand a day's work over to the real server on loopback, against a bare server
of the same kind that only writes the same bytes down."""

import contextlib
import hashlib
import http.client
import io
import json
import logging
import os
import random
import subprocess
import sys
import time
from pathlib import Path

import waitress
from PIL import Image

from tests.a_computer import ROOT, Computer, free_port
from tests.benchmarks.common import Answers

ENTRIES, BATCH, PHOTOS, PICTURES = 5_000, 200, 300, 6


class Line:
    """One connection that is kept open, as a browser keeps it."""

    def __init__(self, port: int):
        self.connection, self.headers = (
            http.client.HTTPConnection("127.0.0.1", port, timeout=60),
            {},
        )

    def ask(
        self, method: str, path: str, body: bytes | None = None, kind: str = "application/json"
    ) -> tuple[http.client.HTTPResponse, bytes]:
        """The answer and its body; RuntimeError for a refusal."""
        self.connection.request(method, path, body, {**self.headers, "Content-Type": kind})
        answer = self.connection.getresponse()
        data = answer.read()
        if answer.status >= 400:
            raise RuntimeError(f"{method} {path}: {answer.status} {data[:200]!r}")
        return answer, data

    def begin(self) -> str:
        """Sign in as this computer's own page does, begin an inspection, return its id."""
        answer, data = self.ask("GET", "/session")
        self.headers = {
            "Cookie": answer.headers["Set-Cookie"].partition(";")[0],
            "X-CSRFToken": json.loads(data)["csrf"],
        }
        answer, _ = self.ask(
            "POST", "/inspections", b"go=walk", "application/x-www-form-urlencoded"
        )
        return answer.headers["Location"].split("/")[2]


class BareServer:
    """The same kind of server as a process of its own, whose only act is to write each body down
    and fsync it."""

    def __init__(self, folder: Path):
        self.port = free_port()
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tests.benchmarks.handing_over", str(folder), str(self.port)],
            cwd=ROOT,
        )
        end = time.monotonic() + 30
        while time.monotonic() < end:
            with contextlib.suppress(OSError):
                Line(self.port).ask("PUT", "/", b"up")
                return
            time.sleep(0.05)
        raise RuntimeError("the bare server does not come up")

    def stop(self) -> None:
        self.process.terminate()
        self.process.wait()


def bare_app(folder: Path):
    """The WSGI application of the bare server."""

    def app(environ, start_response):
        data = environ["wsgi.input"].read()
        handle = os.open(folder / "bytes", os.O_WRONLY | os.O_CREAT | os.O_APPEND)
        os.write(handle, data)
        os.fsync(handle)
        os.close(handle)
        start_response("200 OK", [("Content-Type", "text/plain"), ("Content-Length", "2")])
        return [b"ok"]

    return app


def batches() -> list[bytes]:
    """The entries as the bodies that carry them."""
    answers = Answers()
    return [
        json.dumps({"entries": [answers() for _ in range(BATCH)]}).encode()
        for _ in range(ENTRIES // BATCH)
    ]


def pictures() -> list[bytes]:
    """So many different photos of about half a megabyte, made from a few by four bytes after
    their end."""
    made = []
    for number in range(PICTURES):
        out = io.BytesIO()
        Image.effect_noise((1600, 1200), 20 + number).convert("RGB").save(out, "JPEG", quality=80)
        made.append(out.getvalue())
    return [made[number % PICTURES] + random.randbytes(4) for number in range(PHOTOS)]


def timed(line: Line, requests: list[tuple[str, str, bytes]]) -> float:
    """Seconds for the requests one after the other."""
    start = time.perf_counter()
    for method, path, body in requests:
        line.ask(method, path, body)
    return time.perf_counter() - start


def tell(what: str, count: int, of_bytes: int, ours: float, bare: float, goal: str) -> None:
    print(
        f"{what}: {count / ours:.0f} a second, {of_bytes / ours / 1e6:.1f} MB/s in {ours:.2f} s, "
        f"{ours / bare:.1f} x the same bytes "
        f"only written down ({of_bytes / bare / 1e6:.1f} MB/s); goal {goal}",
        flush=True,
    )


def handed_over(folder: Path) -> None:
    """5,000 entries in batches of 200 and 300 photos, to the real server and to the bare one, in
    turn."""
    (folder / "bare").mkdir()
    computer, bare = Computer(folder / "data"), BareServer(folder / "bare")
    try:
        ours, floor = Line(computer.port), Line(bare.port)
        inspection = ours.begin()
        bodies, photos = batches(), pictures()
        path = f"/exchange/{inspection}/entries"
        spent, least = (
            timed(ours, [("POST", path, body) for body in bodies]),
            timed(floor, [("PUT", "/", body) for body in bodies]),
        )
        tell(
            f"{ENTRIES} entries handed over",
            ENTRIES,
            sum(map(len, bodies)),
            spent,
            least,
            "at least 5,000 a second",
        )
        puts = [
            ("PUT", f"/exchange/{inspection}/photo/{hashlib.sha256(data).hexdigest()}", data)
            for data in photos
        ]
        spent, least = timed(ours, puts), timed(floor, [("PUT", "/", data) for data in photos])
        tell(
            f"{PHOTOS} photos (1600 x 1200) handed over",
            PHOTOS,
            sum(map(len, photos)),
            spent,
            least,
            "none: each is decoded and two copies are made",
        )
        assert ENTRIES == sum(
            entry["device"] == "phone" for entry in computer.entries(inspection).values()
        )
    finally:
        bare.stop()
        computer.kill()


if __name__ == "__main__":
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)
    waitress.serve(
        bare_app(Path(sys.argv[1])), host="127.0.0.1", port=int(sys.argv[2]), threads=4, _quiet=True
    )
