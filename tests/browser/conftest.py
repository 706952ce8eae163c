"""A real server on loopback and a real Chromium at phone size, with touch."""

import os

import pytest

from inspector import create_app
from tests import a_browser
from tests.a_computer import Computer
from tests.a_server import serving

LAN_NAME = "laptop.test"


@pytest.fixture(scope="session")
def chromium():
    path = a_browser.installed() or a_browser.own_download()
    if not path:
        if os.environ.get("BROWSER_REQUIRED"):
            pytest.fail(a_browser.MISSING)
        pytest.skip(a_browser.MISSING)
    from playwright.sync_api import expect, sync_playwright

    # A state comes late where two browsers share two cores; a wait ends as soon as it is there.
    expect.set_options(timeout=20_000)
    quiet = [
        "--no-sandbox",
        "--disable-dev-shm-usage",
        "--disable-gpu",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        # A name that is not loopback: what a page sees of a plain http address on a local network,
        # without needing one.
        f"--host-resolver-rules=MAP {LAN_NAME} 127.0.0.1",
    ]
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=path, args=quiet)
        yield browser
        browser.close()


@pytest.fixture
def served(tmp_path):
    """The address of a server over an empty data folder."""
    app = create_app(tmp_path / "data", TESTING=True)
    with serving(app) as port:
        yield f"http://127.0.0.1:{port}", app


@pytest.fixture
def computer(tmp_path):
    """The real server as a process of its own, which a test may kill and start again."""
    one = Computer(tmp_path / "data")
    yield one
    one.kill()


@pytest.fixture
def phones(chromium):
    """Makes pages at 390x844 with touch, each on a device of its own; any script error on any of
    them fails the test."""
    made, wrong = [], []

    def phone():
        context = chromium.new_context(
            viewport={"width": 390, "height": 844},
            has_touch=True,
            is_mobile=True,
            device_scale_factor=2,
        )
        made.append(context)
        page = context.new_page()
        page.set_default_timeout(15_000)
        page.on("pageerror", lambda problem: wrong.append(str(problem)))
        return page

    yield phone
    for context in made:
        context.close()
    assert wrong == []


@pytest.fixture
def phone(phones):
    """One such page."""
    return phones()
