"""The real server, killed with SIGKILL again and again while two clients hand over entries and
photos; whatever was acknowledged is then looked for.

By hand: python3 -m tests.reliability.kill --times 1000
"""

import argparse
import contextlib
import hashlib
import http.client
import io
import json
import random
import socket
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from PIL import Image

ROOT = Path(__file__).resolve().parents[2]
KILLS_PER_INSPECTION = 40
# Photos that each client has had acknowledged before an inspection is looked through.
LEAST_PHOTOS = 2
# Seconds in which an answer must come on however slow a machine; nothing waits so long otherwise.
PATIENCE = 120
NOT_ANSWERED = (OSError, http.client.HTTPException, ValueError, KeyError)


@dataclass
class Counts:
    """What happened: kills, acknowledged entries and photos, and those of them that were not
    there afterwards."""

    kills: int = 0
    entries: int = 0
    photos: int = 0
    lost: list[str] = field(default_factory=list)


class Server:
    """The server as a process of its own, always on the same port and folder."""

    def __init__(self, data: Path):
        self.data, self.process = data, None
        with socket.socket() as one:
            one.bind(("127.0.0.1", 0))
            self.port = one.getsockname()[1]

    def start(self) -> None:
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
        self.process = subprocess.Popen(
            command, cwd=ROOT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
        )
        end = time.monotonic() + PATIENCE
        while time.monotonic() < end and self.process.poll() is None:
            with contextlib.suppress(*NOT_ANSWERED):
                return Caller(self).session()
            time.sleep(0.01)
        raise AssertionError("the server does not come up again")

    def kill(self) -> None:
        self.process.kill()
        self.process.wait()


class Caller:
    """One client with its own cookie and form token."""

    def __init__(self, server: Server, patience: float = PATIENCE):
        self.server, self.headers, self.patience = server, {}, patience

    def session(self) -> None:
        self.headers = {}
        answer, data = self.ask("GET", "/session")
        self.headers = {
            "Cookie": answer.headers["Set-Cookie"].partition(";")[0],
            "X-CSRFToken": json.loads(data)["csrf"],
        }

    def ask(
        self, method: str, path: str, body: bytes | None = None, kind: str = "application/json"
    ):
        connection = http.client.HTTPConnection(
            "127.0.0.1", self.server.port, timeout=self.patience
        )
        try:
            connection.request(method, path, body, {**self.headers, "Content-Type": kind})
            answer = connection.getresponse()
            return answer, answer.read()
        finally:
            connection.close()

    def json(
        self, method: str, path: str, body: bytes | None = None, kind: str = "application/json"
    ):
        answer, data = self.ask(method, path, body, kind)
        if answer.status != 200:
            raise ValueError(answer.status)
        return json.loads(data)


class Client(threading.Thread):
    """One device that hands over entries, and now and then a photo, until told to stop; keeps
    what was acknowledged."""

    def __init__(self, server: Server, inspection: str, name: str, seed: int):
        super().__init__(daemon=True)
        self.caller, self.inspection, self.name_of_device = Caller(server, 10), inspection, name
        self.chance, self.number = random.Random(seed), 0
        self.entries: set[str] = set()
        self.photos: set[str] = set()
        self.stop = threading.Event()

    def run(self) -> None:
        while not self.stop.is_set():
            try:
                if not self.caller.headers:
                    self.caller.session()
                self.entry_batch()
                if self.chance.random() < 0.3:
                    self.photo()
            except NOT_ANSWERED:
                self.stop.wait(
                    0.02
                )  # not acknowledged, so nothing was promised; the numbers that were used are not used again

    def entry_batch(self) -> None:
        batch = []
        for _ in range(self.chance.randint(1, 5)):
            self.number += 1
            batch.append(
                {
                    "id": f"{self.name_of_device}:{self.number}",
                    "at": "2026-05-02T09:14:07.512Z",
                    "device": self.name_of_device,
                    "who": "QX",
                    "subject": f"sheet/hull/shell/check-{self.number}",
                    "field": "note",
                    "value": "x" * self.chance.randint(1, 3000),
                    "replaces": [],
                }
            )
        told = self.caller.json(
            "POST", f"/exchange/{self.inspection}/entries", json.dumps({"entries": batch}).encode()
        )
        self.entries |= {
            one for one, fate in told["fates"].items() if fate in ("stored", "already had")
        }

    def photo(self) -> None:
        out = io.BytesIO()
        Image.new("RGB", (64, 48), tuple(self.chance.randbytes(3))).save(out, "JPEG")
        data = out.getvalue()
        sha = hashlib.sha256(data).hexdigest()
        told = self.caller.json(
            "PUT", f"/exchange/{self.inspection}/photo/{sha}", data, "application/octet-stream"
        )
        if told["sha"] == sha:
            self.photos.add(sha)


def run(
    times: int, folder: Path, seed: int = 11, tell: Callable[[Counts], None] = lambda _: None
) -> Counts:
    """Kill the server `times` times under two clients; returns what happened; `tell` hears of it
    between two inspections."""
    chance, counts, server = random.Random(seed), Counts(), Server(folder / "data")
    server.start()
    try:
        while counts.kills < times:
            _one_inspection(server, min(KILLS_PER_INSPECTION, times - counts.kills), chance, counts)
            tell(counts)
    finally:
        server.kill()
    return counts


def _one_inspection(server: Server, kills: int, chance: random.Random, counts: Counts) -> None:
    caller = Caller(server)
    caller.session()
    answer, _ = caller.ask("POST", "/inspections", b"go=walk", "application/x-www-form-urlencoded")
    inspection = answer.headers["Location"].split("/")[2]
    clients = [
        Client(server, inspection, name, chance.randrange(1 << 30))
        for name in ("phone-a", "phone-b")
    ]
    for client in clients:
        client.start()
    for _ in range(kills):
        # Mostly under load, which a slow machine reaches later; now and then at once.
        if chance.random() < 0.8:
            known = [len(client.entries) for client in clients]
            _wait(
                lambda known=known: any(
                    len(client.entries) > count
                    for client, count in zip(clients, known, strict=True)
                )
            )
        time.sleep(chance.uniform(0, 0.3))
        server.kill()
        counts.kills += 1
        server.start()
    _wait(lambda: all(len(client.photos) >= LEAST_PHOTOS for client in clients))
    for client in clients:
        client.stop.set()
        client.join()
    _look_for(caller, inspection, clients, counts)


def _wait(is_so: Callable[[], bool]) -> None:
    """Wait for what must come, however slow the machine is."""
    end = time.monotonic() + PATIENCE
    while not is_so():
        if time.monotonic() > end:
            raise AssertionError(f"no client had its answer within {PATIENCE} s")
        time.sleep(0.01)


def _look_for(caller: Caller, inspection: str, clients: list[Client], counts: Counts) -> None:
    kept = {one["id"] for one in caller.json("GET", f"/exchange/{inspection}/entries")["entries"]}
    for client in clients:
        counts.entries += len(client.entries)
        counts.photos += len(client.photos)
        counts.lost += sorted(client.entries - kept)
        counts.lost += [
            sha
            for sha in client.photos
            if not caller.json("GET", f"/exchange/{inspection}/photo/{sha}")["original"]
        ]


def _tell(counts: Counts) -> None:
    print(
        f"{counts.kills} kills, {counts.entries} entries and {counts.photos} photos acknowledged, {len(counts.lost)} of them lost.",
        flush=True,
    )


def main() -> None:
    """Run by hand, and print what happened."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--times", type=int, default=100)
    parser.add_argument("--seed", type=int, default=random.randrange(1 << 30))
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        print(f"seed {options.seed}", flush=True)
        counts = run(options.times, Path(folder), options.seed, _tell)
    sys.exit(1 if counts.lost else 0)


if __name__ == "__main__":
    main()
