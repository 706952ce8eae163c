"""The whole way as a surveyor goes it alone: the button on the laptop's first page, one code after
the other, a phone that joins, ready or not, hand over now, the step that lasts, and stop."""

import re

import pytest
from playwright.sync_api import expect

from inspector.sharing import authority
from inspector.sharing.addresses import own_addresses
from tests import a_walk
from tests.a_sharing_laptop import SharingLaptop, trusting_browser

SECRET = "not the real one 7"
LONG = 30_000


@pytest.fixture
def near():
    """An address of this machine that browsers take for one of a network, as they do no loopback
    address."""
    found = [each.address for each in own_addresses()]
    if not found:
        pytest.skip("this machine is on no network")
    return found[0]


@pytest.fixture
def laptop(tmp_path, near):
    """The real program on two networks, with one inspection."""
    one = SharingLaptop(tmp_path / "data", near, f"{near}=wlan0 127.0.0.2=eth0")
    one.inspection = one.begin("Grey Heron")
    one.start()
    yield one
    one.kill()


@pytest.fixture
def screen(chromium, laptop):
    """The laptop's own browser, on the first page."""
    context = chromium.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.set_default_timeout(LONG)
    page.goto(laptop.loopback)
    yield page
    context.close()


def share(screen, laptop):
    """The button, the question in words, and the way to the first code."""
    screen.click("button:has-text('share with phones')")
    choice = screen.locator("fieldset label")
    expect(choice).to_have_count(2)
    expect(choice.nth(0)).to_contain_text("Wi-Fi (wlan0)")
    expect(choice.nth(1)).to_contain_text("a network cable (eth0)")
    choice.nth(0).click()
    screen.click("button:has-text('share with phones')")
    screen.wait_for_url("**/sharing/network")


def code_to_join(screen):
    """The letters of the code that fills the screen."""
    return screen.inner_text(".one-code code").replace("-", "")


def join(phone, laptop, screen):
    """Scan, tap once, and be in the only inspection."""
    screen.goto(f"{laptop.loopback}/sharing/network")
    screen.click("button:has-text('yes, show the code to join')")
    screen.wait_for_selector(".one-code code")
    phone.goto(f"{laptop.plain}/join#{code_to_join(screen)}&1")
    expect(phone.locator("[name=name]")).to_have_value("phone 1")
    phone.click("#join button")
    phone.wait_for_url("**/walk")
    a_walk.called(phone, "QX")


def fits(page):
    """Nothing scrolls sideways."""
    return page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")


def test_one_code_at_a_time_fills_the_screen(screen, laptop):
    """First the network, as typed and not kept; then the inspection. Each stands alone and whole
    in sight, at both widths."""
    share(screen, laptop)
    screen.fill("[name=name]", "deck")
    screen.fill("[name=password]", SECRET)
    screen.click("button:has-text('show the code of the network')")
    for number, words in ((1, "deck"), (2, "Grey Heron")):
        for width, height in ((1280, 800), (390, 844)):
            screen.set_viewport_size({"width": width, "height": height})
            expect(screen.locator(".one-code header")).to_contain_text(f"code {number} of 2")
            expect(screen.locator(".one-code header")).to_contain_text(words)
            expect(screen.locator("svg")).to_have_count(1)
            box = screen.locator(".one-code svg").bounding_box()
            assert box["width"] > 0.55 * min(width, height)
            assert box["y"] >= 0
            assert box["y"] + box["height"] <= height
            assert fits(screen)
        if number == 1:
            screen.click("button:has-text('next: join the inspection')")
            screen.wait_for_selector(".one-code code")

    assert SECRET not in (laptop.data / "catalogue.json").read_text()
    screen.goto(f"{laptop.loopback}/sharing/network")
    expect(screen.locator("[name=password]")).to_have_value(SECRET)
    screen.goto(f"{laptop.loopback}/sharing")
    screen.click("button:has-text('stop sharing')")
    share(screen, laptop)
    expect(screen.locator("[name=password]")).to_have_value("")


def test_a_phone_joins_records_hands_over_and_is_listed_until_sharing_stops(screen, laptop, phone):
    """The laptop goes on by itself once the phone is in, lists what it holds and whether it is
    ready with the next steps; hand over now empties it; after stop nothing answers there, and what
    the phone records waits on it."""
    share(screen, laptop)
    join(phone, laptop, screen)
    screen.wait_for_url("**/sharing?joined=*")
    expect(screen.locator("main")).to_contain_text("phone 1 is in")
    expect(phone.locator("#here")).to_have_text("Grey Heron")
    expect(phone.locator("#basic")).to_contain_text("Keep this page open.")

    phone.evaluate("() => { location.hash = 'ready'; }")
    line = phone.locator("#ready li", has_text="judging without the computer")
    expect(line).to_have_attribute("data-ready", "ready", timeout=a_walk.STARTS_MS)
    expect(phone.locator("#ready h2")).to_contain_text("Ready, with a caution: the app itself")
    for each in phone.locator("#ready li:not([data-ready=ready])").all():
        expect(each.locator(".next-step")).to_contain_text("Next: ")
    listed = screen.locator("#phones .phone")
    expect(listed).to_contain_text("ready with a caution", timeout=LONG)
    expect(listed).to_contain_text("Readings are judged on it; no round is on it.")
    expect(listed).to_contain_text("All of it is on this laptop.")
    listed.locator("summary").click()
    expect(listed.locator("li", has_text="the app itself")).to_contain_text("Keep this page open")
    screen.keyboard.press("Escape")
    screen.locator("h1").click()

    # The laptop takes nothing for a while, and the phone can still say what it holds.
    entries, full = re.compile(r"/exchange/[^/]+/entries$"), {"error": "The disk is full."}
    phone.route(entries, lambda route: route.fulfill(status=507, json=full))
    a_walk.sheet(phone)
    a_walk.plain_cards(phone).first.locator("[data-rate=poor]").click()
    phone.click("#tools-switch")
    phone.click("#tools [data-hand-over]")
    said = phone.locator("#tools .hand-over [role=status]")
    expect(said).to_contain_text("Not handed over: ", timeout=LONG)
    expect(said).to_contain_text("All of it is kept here.")
    expect(listed).to_contain_text("Still holds 1 answer, the oldest from just now.", timeout=LONG)
    expect(listed).to_contain_text("Tap “hand over now” on it.")
    expect(listed.locator("details")).to_have_attribute("open", "")
    phone.unroute(entries)
    phone.click("#tools [data-hand-over]")
    expect(said).to_contain_text("All of it is on ", timeout=LONG)
    expect(listed).to_contain_text("All of it is on this laptop.", timeout=LONG)

    screen.goto(laptop.loopback)
    expect(screen.locator("main")).to_contain_text("1 let in")
    screen.click("button:has-text('stop sharing')")
    expect(screen.locator(".said")).to_contain_text("Sharing has stopped")
    expect(screen.locator("main")).to_contain_text("share with phones")
    a_walk.plain_cards(phone).nth(1).locator("[data-rate=fair]").click()
    expect(phone.locator("#strip")).to_contain_text("no contact with", timeout=LONG)
    expect(phone.locator("#strip")).to_contain_text("1 to hand over")

    share(screen, laptop)
    phone.evaluate("() => window.dispatchEvent(new Event('online'))")
    a_walk.handed_over(phone)


def test_trusting_the_laptop_is_a_step_of_its_own_and_lasts(screen, laptop, chromium, tmp_path):
    """Over http the page says "not trusted yet" with the steps of its own family, or "trusted" and
    goes on over https without a second code, as the same phone. There the walk opens with the
    laptop gone, and the page of what is kept names the vessel."""
    share(screen, laptop)
    stranger = chromium.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
    page = stranger.new_page()
    page.goto(f"{laptop.plain}/trust")
    expect(page.locator("#verdict")).to_have_text("Not trusted yet.", timeout=LONG)
    expect(page.locator(".family[open] svg")).to_have_count(4)
    assert fits(page)
    stranger.close()

    identity = authority.identity_for(laptop.data / "tls", laptop.address)
    with trusting_browser(chromium, identity, tmp_path / "profile") as context:
        phone = context.pages[0]
        join(phone, laptop, screen)
        a_walk.handed_over(phone)
        phone.click("#basic a")
        expect(phone.locator("#verdict")).to_have_text("Trusted.", timeout=LONG)
        phone.click("#go-on")
        phone.wait_for_url(f"{laptop.secure}/inspection/{laptop.inspection}/walk", timeout=LONG)
        a_walk.called(phone, "QX")
        a_walk.kept_for_good(phone)
        screen.goto(f"{laptop.loopback}/sharing")
        expect(screen.locator("#phones .phone")).to_have_count(1)
        expect(screen.locator("#phones .phone")).to_contain_text("works after closing too")
        # The page of before says where it goes on.
        old = context.new_page()
        old.goto(f"{laptop.plain}/inspection/{laptop.inspection}/walk")
        expect(old.locator("main")).to_contain_text(f"goes on at {laptop.secure}/")
        old.close()

        laptop.kill()
        again = context.new_page()
        phone.close()
        again.goto(f"{laptop.secure}/")
        link = again.locator("main a")
        expect(link).to_have_text("Walk: Grey Heron")
        link.click()
        expect(again.locator("#here")).to_have_text("Grey Heron", timeout=LONG)
        assert laptop.inspection not in again.inner_text("body")
