"""Finds a browser for the browser tests: an installed Chromium, Chrome or Edge, else playwright's own download."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "msedge", "microsoft-edge")
PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
MISSING = "no browser: install Chromium, Chrome or Edge (Debian: apt install chromium), then run the tests again"


def installed() -> str | None:
    """Path of an installed browser that playwright can drive, or None."""
    found = (shutil.which(name) for name in NAMES)
    return next((path for path in found if path), None) or next((place for place in PLACES if Path(place).exists()), None)


def own_download() -> str | None:
    """Path of the browser that playwright downloaded, if it is there."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        path = play.chromium.executable_path
    return path if Path(path).exists() else None


def fetch_if_missing() -> None:
    """Fetch playwright's own Chromium where none is installed; where that fails, say in one line what to install."""
    if installed() or own_download():
        return
    done = subprocess.run([sys.executable, "-m", "playwright", "install", "chromium"], capture_output=True, env=os.environ, check=False)
    if done.returncode:
        print(MISSING, flush=True)
