"""Debian's file-synchronising program `syncthing` on loopback: one instance carries one folder
to the other instances it is told of."""

import os
import re
import shutil
import subprocess
import time
import urllib.error
import urllib.request
from pathlib import Path

import pytest

from tests.a_computer import free_port

MISSING = (
    "syncthing is not installed, so carried folders cannot be tried (Debian: apt install syncthing)"
)
KEY = "only-for-this-test"
# What stays on its own computer: copies that can be made again, and drafts that are renamed a
# moment later.
IGNORED = ("derived", ".*.new", ".quarantine-*", ".checklists")
OPTIONS = {
    "globalAnnounceEnabled": "false",
    "localAnnounceEnabled": "false",
    "relaysEnabled": "false",
    "natEnabled": "false",
    "startBrowser": "false",
    "crashReportingEnabled": "false",
    "autoUpgradeIntervalH": "0",
    "urAccepted": "-1",
    "reconnectionIntervalS": "1",
    "announceLANAddresses": "false",
    "setLowPriority": "false",
}


def program() -> str:
    """Path of the program. Where it is missing the test is left out with a sentence, and fails
    where everything is required (CI)."""
    found = shutil.which("syncthing")
    if not found:
        pytest.fail(MISSING) if os.environ.get("BROWSER_REQUIRED") else pytest.skip(MISSING)
    return found


class Carrier:
    """One instance with its own home folder, ports on loopback and one shared folder."""

    def __init__(self, home: Path, folder: Path):
        self.home, self.folder, self.process = home, folder, None
        self.port, self.control = free_port(), free_port()
        self.environment = {**os.environ, "STNOUPGRADE": "1", "HOME": str(home)}
        command = [program(), "generate", f"--home={home}", "--no-default-folder"]
        subprocess.run(command, check=True, capture_output=True, env=self.environment, timeout=30)
        self.id = re.search(r'<device id="([A-Z0-9-]+)"', (home / "config.xml").read_text()).group(
            1
        )
        folder.mkdir(parents=True, exist_ok=True)
        (folder / ".stfolder").mkdir()
        (folder / ".stignore").write_text("\n".join(IGNORED) + "\n")

    def know(self, *others: "Carrier") -> None:
        """Write the configuration: this instance and these share the folder."""
        all_of_us = (self, *others)
        devices = "".join(
            f'<device id="{one.id}" name="{one.home.name}" compression="never"><address>tcp://127.0.0.1:{one.port}</address></device>'
            for one in all_of_us
        )
        members = "".join(f'<device id="{one.id}"></device>' for one in all_of_us)
        options = "".join(f"<{name}>{value}</{name}>" for name, value in OPTIONS.items())
        (self.home / "config.xml").write_text(
            f'<configuration version="35"><folder id="inspections" path="{self.folder}" type="sendreceive" rescanIntervalS="3600" fsWatcherEnabled="true" '
            f'fsWatcherDelayS="1">{members}<minDiskFree unit="MB">1</minDiskFree><maxConflicts>-1</maxConflicts></folder>{devices}'
            f'<gui enabled="true" tls="false"><address>127.0.0.1:{self.control}</address><apikey>{KEY}</apikey></gui>'
            f"<options><listenAddress>tcp://127.0.0.1:{self.port}</listenAddress>{options}</options></configuration>"
        )

    def start(self) -> None:
        """Start it, and return once it answers."""
        command = [program(), "serve", f"--home={self.home}", "--no-browser", "--no-restart"]
        with open(self.home / "log.txt", "ab") as log:
            self.process = subprocess.Popen(
                command, env=self.environment, stdout=log, stderr=subprocess.STDOUT
            )
        end = time.monotonic() + 20
        while not self._answers():
            if self.process.poll() is not None or time.monotonic() > end:
                raise AssertionError(
                    "syncthing does not start: " + (self.home / "log.txt").read_text()[-2000:]
                )
            time.sleep(0.1)

    def _answers(self) -> bool:
        try:
            self._ask("GET", "/rest/system/ping")
        except (urllib.error.URLError, OSError):
            return False
        return True

    def scan(self) -> None:
        """Look for changes now, rather than when the system tells of them."""
        self._ask("POST", "/rest/db/scan?folder=inspections")

    def _ask(self, method: str, path: str) -> bytes:
        request = urllib.request.Request(
            f"http://127.0.0.1:{self.control}{path}", method=method, headers={"X-API-Key": KEY}
        )
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        with opener.open(request, timeout=20) as answer:
            return answer.read()

    def stop(self) -> None:
        """Stop it: this computer is cut off."""
        if self.process and self.process.poll() is None:
            self.process.terminate()
            try:
                self.process.wait(timeout=10)
            except subprocess.TimeoutExpired:
                self.process.kill()
                self.process.wait()
