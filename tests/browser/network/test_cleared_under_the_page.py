"""Site data that are cleared while the walk is open: the page raises the alarm, writes back what it
knows, goes on with its own numbers, and hands everything over."""

import hashlib

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.sharing.shared_inspections import Shared
from tests import a_walk
from tests.a_faulty_door import door_before
from tests.a_server import serving
from tests.browser.conftest import LAN_NAME

DELETE = """() => new Promise((done) => {
  const asked = indexedDB.deleteDatabase("inspection-walk");
  asked.onsuccess = () => done("deleted");
  asked.onblocked = () => done("blocked");
})"""


@pytest.fixture
def door(tmp_path):
    """A door before a real server; the application is `door.app`."""
    app = create_app(tmp_path / "data", TESTING=True)
    with serving(app) as port, door_before(port) as one:
        one.app, one.address = app, f"http://127.0.0.1:{one.port}"
        yield one


def rate(page, number, word="fair"):
    button = a_walk.plain_cards(page).nth(number).locator(f"[data-rate={word}]")
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")


def photograph(page, files):
    card = a_walk.unfold(a_walk.plain_cards(page).first)
    card.locator("[data-act=photo]").click()
    card.locator("input[data-photo=choose]").set_input_files(files)
    expect(page.locator("#strip")).to_contain_text("1 photo to hand over", timeout=30_000)


def open_beside(page):
    """Another tab of this site, which holds no database open."""
    other = page.context.new_page()
    other.goto(f"{page.url.split('/inspection')[0]}/static/css/base.css")
    return other


def clear_by_browser(page, _):
    """As a person does it in the settings of the browser: everything of this site."""
    session = page.context.new_cdp_session(page)
    origin = page.evaluate("() => location.origin")
    session.send("Storage.clearDataForOrigin", {"origin": origin, "storageTypes": "all"})


def delete_from_another_tab(_, beside):
    """As a page of this site can do it."""
    assert beside.evaluate(DELETE) == "deleted"


def all_is_there(page, app, inspection):
    """The computer and the device have the same entries; returns them by their ids."""
    page.evaluate("() => window.dispatchEvent(new Event('online'))")
    a_walk.handed_over(page)
    record = app.extensions["data_folder"].inspections.get(inspection)
    assert a_walk.log_of(page).keys() == {entry.id for entry in record.entries}
    assert [] == record.refused()
    return {entry.id: entry for entry in record.entries}


def assert_whole(entries, answers):
    """One device gave so many ratings, and its numbers, depths included, have no hole."""
    entries = list(entries)
    assert answers == len([entry for entry in entries if entry.field == "rating"])
    assert list(range(1, len(entries) + 1)) == sorted(
        int(entry.id.split(":")[1]) for entry in entries
    )


def numbers(entries):
    """The numbers of each phone's entries, in order."""
    phones = [entry for entry in entries.values() if entry.device != "" and ":" in entry.id]
    own = {}
    for entry in phones:
        own.setdefault(entry.device, []).append(int(entry.id.split(":")[1]))
    return {device: sorted(given) for device, given in own.items() if "phone" in device}


@pytest.mark.parametrize("clear", [clear_by_browser, delete_from_another_tab])
def test_nothing_is_lost_and_no_number_is_given_twice(phone, door, tmp_path, clear):
    """Two answers are handed over, two and a photo wait, then the data are cleared, then two more:
    all six and the photo arrive, numbered one after the other."""
    inspection = a_walk.begin(phone, door.address)
    beside = open_beside(phone)
    a_walk.sheet(phone)
    rate(phone, 0)
    rate(phone, 1)
    a_walk.handed_over(phone)
    door.fails("cut", "/")
    rate(phone, 2)
    rate(phone, 3, "poor")
    pictures = a_walk.pictures(tmp_path, 1)
    photograph(phone, list(pictures.values()))
    before = a_walk.log_of(phone)

    clear(phone, beside)

    expect(phone.locator("#alarm")).to_contain_text(
        "were cleared while this page was open", timeout=30_000
    )
    rate(phone, 4)
    rate(phone, 5, "failed")
    expect(phone.locator("#strip")).to_contain_text("1 photo to hand over")
    assert before.items() <= a_walk.log_of(phone).items()
    door.fails("")
    there = all_is_there(phone, door.app, inspection)
    ratings = [entry.value for entry in there.values() if entry.field == "rating"]
    assert sorted(["fair"] * 4 + ["poor", "failed"]) == sorted(ratings)
    given = numbers(there)
    assert [list(range(1, len(one) + 1)) for one in given.values()] == list(given.values())
    assert len(given) == 1
    kept = door.app.extensions["data_folder"].inspections.get(inspection).folder / "photos"
    found = {hashlib.sha256(path.read_bytes()).hexdigest() for path in kept.iterdir()}
    assert set(pictures) == found


def test_an_answer_in_the_very_moment_is_numbered_on(phone, door):
    """The tap follows at once, before the page can have looked: its number goes on all the same."""
    inspection = a_walk.begin(phone, door.address)
    a_walk.sheet(phone)
    rate(phone, 0)
    a_walk.handed_over(phone)
    door.fails("cut", "/")
    phone.evaluate(
        """() => {
      indexedDB.deleteDatabase("inspection-walk");
      const cards = document.querySelectorAll("#cards article.check:not([data-enclosed])");
      for (const number of [1, 2, 3]) cards[number].querySelector("[data-rate=poor]").click();
    }"""
    )
    expect(phone.locator("#alarm")).to_contain_text(
        "were cleared while this page was open", timeout=30_000
    )
    for number in (1, 2, 3):
        pressed = a_walk.plain_cards(phone).nth(number).locator("[data-rate=poor]")
        expect(pressed).to_have_attribute("aria-pressed", "true")
    door.fails("")
    there = all_is_there(phone, door.app, inspection)
    assert_whole((entry for entry in there.values() if "phone" in entry.device), 4)


def test_two_tabs_write_back_what_each_of_them_knows(phone, door):
    """Both tabs notice; the numbers of both go on together, and nothing of either is missing."""
    inspection = a_walk.begin(phone, door.address)
    a_walk.sheet(phone)
    other = phone.context.new_page()
    other.goto(phone.url)
    expect(phone.locator("#strip")).to_contain_text("open in another tab too")
    beside = open_beside(phone)
    door.fails("cut", "/")
    rate(phone, 0)
    rate(other, 5)
    delete_from_another_tab(phone, beside)
    for page in (phone, other):
        expect(page.locator("#alarm")).to_contain_text("were cleared", timeout=40_000)
    rate(phone, 1)
    rate(other, 6)
    door.fails("")
    there = all_is_there(phone, door.app, inspection)
    assert_whole((entry for entry in there.values() if "phone" in entry.device), 4)


def test_a_joined_device_keeps_its_pass(phones, tmp_path):
    """The pass is written back too, so that the device goes on handing over in its own name."""
    app = create_app(tmp_path / "data", TESTING=True, SHARED=Shared(LAN_NAME, 5731))
    with serving(app) as port:
        laptop, page = phones(), phones()
        inspection = a_walk.begin(laptop, f"http://127.0.0.1:{port}", "Ann")
        app.extensions["sharing"].share(inspection)
        code = app.extensions["sharing"].pairing.new_code().replace("-", "")
        page.goto(f"http://{LAN_NAME}:{port}/join#{code}")
        page.fill("[name=name]", "tablet")
        page.click("form#join button")
        page.wait_for_url("**/walk")
        a_walk.come_aboard(page, f"http://{LAN_NAME}:{port}", inspection, "QX")
        a_walk.sheet(page)
        rate(page, 0)
        a_walk.handed_over(page)

        clear_by_browser(page, None)

        expect(page.locator("#alarm")).to_contain_text("were cleared")
        rate(page, 1)
        there = all_is_there(page, app, inspection)
        device = app.extensions["sharing"].devices.all()[0]["id"]
        own = [entry for entry in there.values() if entry.device == device]
        assert_whole(own, 2)
        page.reload()
        expect(page.locator("#strip")).to_contain_text("all handed over")
        a_walk.sheet(page)
        rate(page, 2)
        a_walk.handed_over(page)
