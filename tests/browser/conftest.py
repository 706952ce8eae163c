"""A real server on loopback and a real Chromium at phone size, with touch."""

import os
import threading

import pytest
import waitress

from inspector import create_app
from tests import a_browser


@pytest.fixture(scope="session")
def chromium():
    path = a_browser.installed() or a_browser.own_download()
    if not path:
        if os.environ.get("BROWSER_REQUIRED"):
            pytest.fail(a_browser.MISSING)
        pytest.skip(a_browser.MISSING)
    from playwright.sync_api import sync_playwright

    quiet = ["--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync"]
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=path, args=quiet)
        yield browser
        browser.close()


@pytest.fixture
def served(tmp_path):
    """The address of a server over an empty data folder."""
    app = create_app(tmp_path / "data", TESTING=True)
    server = waitress.create_server(app, host="127.0.0.1", port=0, threads=4)
    threading.Thread(target=server.run, daemon=True).start()
    yield f"http://127.0.0.1:{server.effective_port}", app
    server.close()
    app.extensions["desk"].close()


@pytest.fixture
def phone(chromium):
    """A page at 390x844 with touch; any script error fails the test."""
    context = chromium.new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True, device_scale_factor=2)
    page = context.new_page()
    page.set_default_timeout(15_000)
    wrong: list[str] = []
    page.on("pageerror", lambda problem: wrong.append(str(problem)))
    yield page
    context.close()
    assert wrong == []
