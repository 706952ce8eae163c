"""The real server, killed with SIGKILL at random moments while answers are posted: every
acknowledged answer is there."""

import http.client
import json
import random
import re
import signal
import subprocess
import sys
import threading
import time
import urllib.request
from http.cookiejar import CookieJar
from pathlib import Path

import pytest

from tests.reliability import kill

ROOT = Path(__file__).resolve().parents[2]
ANSWERS = 200


class Served:
    """The server as a process of its own, started again after each kill."""

    def __init__(self, data: Path):
        self.data, self.process, self.address = data, None, ""
        self.start()

    def start(self) -> None:
        command = [
            sys.executable,
            "-m",
            "inspector",
            "serve",
            "--data",
            str(self.data),
            "--port",
            "0",
            "--no-browser",
        ]
        self.process = subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True)
        for line in self.process.stdout:
            found = re.search(r"http://\S+/", line)
            if found:
                self.address = found.group()
                break
        self.opener = urllib.request.build_opener(
            urllib.request.HTTPCookieProcessor(CookieJar()), urllib.request.ProxyHandler({})
        )
        self.token = self.get("session")["csrf"]

    def get(self, path: str):
        with self.opener.open(self.address + path, timeout=kill.PATIENCE) as answer:
            return json.load(answer)

    def post(self, path: str, body: bytes, kind: str = "application/json"):
        request = urllib.request.Request(
            self.address + path, body, {"Content-Type": kind, "X-CSRFToken": self.token}
        )
        with self.opener.open(request, timeout=kill.PATIENCE) as answer:
            return answer.read(), answer.url

    def kill(self) -> None:
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()
        self.process.stdout.close()


@pytest.fixture
def served(tmp_path):
    server = Served(tmp_path / "data")
    yield server
    if server.process.returncode is None:
        server.kill()


@pytest.mark.skipif(sys.platform == "win32", reason="SIGKILL is a POSIX signal")
def test_no_acknowledged_answer_is_lost_when_the_server_is_killed(served):
    """Over 200 posted answers with the server killed again and again, whatever was answered
    "stored" is read back."""
    chance, kills = random.Random(11), 0
    _, url = served.post("inspections", b"go=walk", "application/x-www-form-urlencoded")
    inspection, acknowledged = url.split("/")[-2], set()
    for number in range(1, ANSWERS + 1):
        entry = {
            "id": f"phone:{number}",
            "at": "2026-05-02T09:14:07.512Z",
            "device": "phone",
            "who": "QX",
            "value": "good",
            "replaces": [],
            "subject": f"sheet/hull/shell/check-{number}",
            "field": "rating",
        }
        doomed = chance.random() < 0.08
        if doomed:
            threading.Timer(
                chance.random() * 0.004, served.process.send_signal, [signal.SIGKILL]
            ).start()
        try:
            reply, _ = served.post(
                f"exchange/{inspection}/entries", json.dumps({"entries": [entry]}).encode()
            )
            if json.loads(reply)["fates"][entry["id"]] in ("stored", "already had"):
                acknowledged.add(entry["id"])
        except (OSError, http.client.HTTPException, ValueError):
            pass  # not acknowledged, so nothing was promised
        if doomed:
            time.sleep(0.01)
            served.kill()
            kills += 1
            served.start()
    kept = {one["id"] for one in served.get(f"exchange/{inspection}/entries")["entries"]}

    assert kills >= 8
    assert len(acknowledged) > ANSWERS / 2
    assert acknowledged - kept == set()


@pytest.mark.skipif(sys.platform == "win32", reason="SIGKILL is a POSIX signal")
def test_two_devices_under_load_lose_nothing_that_was_acknowledged(tmp_path):
    """Twenty kills while two devices hand over entries and photos: every one that was
    acknowledged is there afterwards."""
    counts = kill.run(20, tmp_path)

    assert 20 == counts.kills
    # Each kill but a few waited for an answer, and each client for its photos.
    assert counts.entries >= 10
    assert counts.photos >= 2 * kill.LEAST_PHOTOS
    assert [] == counts.lost


def test_a_held_data_folder_is_refused_in_one_sentence(served):
    """A second instance on the same folder ends with 1 and one sentence, no traceback."""
    command = [
        sys.executable,
        "-m",
        "inspector",
        "serve",
        "--data",
        str(served.data),
        "--no-browser",
    ]
    second = subprocess.run(
        command, cwd=ROOT, capture_output=True, text=True, timeout=30, check=False
    )

    assert second.returncode == 1
    assert "in use by another running inspector" in second.stderr
    assert "Traceback" not in second.stderr
