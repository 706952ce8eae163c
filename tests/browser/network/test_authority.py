"""A phone that trusts the laptop's certificate, and then no more: near is told from far."""

import shutil
import sys

import pytest
from playwright.sync_api import expect

from inspector.sharing import authority
from tests import a_walk
from tests.a_sharing_laptop import SharingLaptop, trusting_browser
from tests.web.joining.test_shared_server import ADDRESS, new_code

pytestmark = pytest.mark.skipif(
    sys.platform != "linux", reason="only Linux answers on all of 127.0.0.0/8 by itself"
)


@pytest.fixture
def laptop(tmp_path):
    """Starts and kills `inspector serve --share` on one port; one inspection is begun."""
    one = SharingLaptop(tmp_path / "data", ADDRESS)
    one.begin()
    yield one
    one.kill()


@pytest.fixture
def trusting(chromium, laptop, tmp_path):
    """A page of a browser that trusts the laptop's first certificate alone."""
    identity = authority.identity_for(laptop.data / "tls", ADDRESS)
    with trusting_browser(chromium, identity, tmp_path / "profile") as context:
        yield context.pages[0]


def rate(page, number):
    button = a_walk.plain_cards(page).nth(number).locator("[data-rate=fair]")
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")


def test_a_renewed_authority_does_not_look_like_distance(trusting, laptop):
    """Killed, the laptop is far; started with another authority it is near and not trusted, and
    the strip says so with the address that helps. What is recorded waits."""
    page = trusting
    laptop.start("--share", "--address", ADDRESS)
    page.goto(f"{laptop.secure}/join#{new_code(laptop.port).replace('-', '')}")
    page.click("form#join button")
    page.wait_for_url("**/walk")
    a_walk.called(page, "QX")
    a_walk.sheet(page)
    rate(page, 0)
    a_walk.handed_over(page)
    strip, helps = page.locator("#strip"), f"open {laptop.plain}/trust on this device"

    laptop.kill()
    rate(page, 1)
    expect(strip).to_contain_text("no contact with", timeout=20_000)
    expect(strip).to_contain_text(helps)
    assert "no safe connection" not in strip.inner_text()

    shutil.rmtree(laptop.data / "tls")
    laptop.start("--share", "--address", ADDRESS)
    page.evaluate("() => window.dispatchEvent(new Event('online'))")
    expect(strip).to_contain_text("is near, but no safe connection", timeout=30_000)
    expect(strip).to_contain_text(helps)
    expect(strip).to_contain_text("1 to hand over")
    assert "no contact" not in strip.inner_text()
