"""The real server as a process of its own, which a test can kill and start again on the same
port and data; and an impostor on that port."""

import http.server
import json
import re
import signal
import socket
import subprocess
import sys
import threading
import urllib.request
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


def free_port() -> int:
    """A port nobody listens on just now."""
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


class Computer:
    """`inspector serve` over one data folder and one port."""

    def __init__(self, data: Path):
        self.data, self.port, self.process = data, free_port(), None
        self.address = f"http://127.0.0.1:{self.port}"
        self.start()

    def start(self) -> None:
        """Start it, and return once it answers."""
        command = [
            sys.executable,
            "-m",
            "inspector",
            "serve",
            "--data",
            str(self.data),
            "--port",
            str(self.port),
            "--no-browser",
        ]
        self.process = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)
        assert any(re.search(r"http://\S+/", line) for line in self.process.stdout), (
            "the server did not start"
        )

    def kill(self) -> None:
        """End it at once, as a pulled plug does."""
        if self.process.returncode is None:
            self.process.send_signal(signal.SIGKILL)
            self.process.wait()
            self.process.stdout.close()

    def get(self, path: str):
        """Parsed JSON of an address."""
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        with opener.open(self.address + path, timeout=10) as answer:
            return json.load(answer)

    def entries(self, inspection: str) -> dict[str, dict]:
        """Every entry the computer has of an inspection, by id."""
        return {one["id"]: one for one in self.get(f"/exchange/{inspection}/entries")["entries"]}


class SignInPage:
    """What a hotspot puts in place of everything: a friendly page with status 200, whatever was
    asked."""

    PAGE = b"<!doctype html><title>Welcome aboard</title><h1>Accept the terms of this network</h1>"

    def __init__(self, port: int):
        self.asked: list[str] = []
        outer = self

        class Handler(http.server.BaseHTTPRequestHandler):
            def answer(self):
                outer.asked.append(f"{self.command} {self.path}")
                self.rfile.read(int(self.headers.get("Content-Length") or 0))
                self.send_response(200)
                self.send_header("Content-Type", "text/html")
                self.send_header("Content-Length", str(len(SignInPage.PAGE)))
                self.end_headers()
                self.wfile.write(SignInPage.PAGE)

            do_GET = do_POST = do_PUT = answer  # noqa: N815  (the names are the library's)

            def log_message(self, *_):
                pass

        http.server.ThreadingHTTPServer.allow_reuse_address = True
        self.server = http.server.ThreadingHTTPServer(("127.0.0.1", port), Handler)
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        """Let go of the port."""
        self.server.shutdown()
        self.server.server_close()
