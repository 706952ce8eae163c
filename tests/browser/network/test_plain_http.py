"""A device of the local network over plain http: no service worker, no digests by the browser;
everything goes on while the page stays open."""

import hashlib

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.sharing.shared_inspections import Shared
from tests import a_walk
from tests.a_computer import free_port
from tests.a_server import serving
from tests.ten_readings import ten_readings

NAME = "laptop.test"  # conftest.py maps it to loopback; to a browser it is any other address


@pytest.fixture
def shared(tmp_path):
    """(address for devices, app, address on the laptop itself), shared in basic mode."""
    port = free_port()
    app = create_app(tmp_path / "data", TESTING=True, SHARED=Shared(NAME, port))
    with serving(app, port):
        yield f"http://{NAME}:{port}", app, f"http://127.0.0.1:{port}"


@pytest.fixture
def joined(shared, phones):
    """(page on the walk, app, inspection): a device that was let in by its code."""
    address, app, own = shared
    laptop = phones()
    inspection = a_walk.begin(laptop, own, "Ann")
    app.extensions["sharing"].share(inspection)
    page = phones()
    page.goto(f"{address}/join#{app.extensions['sharing'].pairing.new_code().replace('-', '')}")
    page.fill("[name=name]", "tablet of QX")
    page.click("form#join button")
    page.wait_for_url("**/walk")
    a_walk.come_aboard(page, address, inspection, "QX")
    return page, app, inspection


def test_the_page_says_that_it_must_stay_open_and_records_all_the_same(joined, tmp_path):
    """Not a secure context: the page says so, keeps answers and photos with the link down, and
    hands them over under its pass."""
    page, app, inspection = joined
    assert [False, False] == page.evaluate("() => [isSecureContext, Boolean(crypto.subtle)]")
    expect(page.locator("#basic")).to_contain_text("Keep this page open")
    a_walk.sheet(page)
    expect(page.locator("#strip")).to_contain_text("handed over")
    page.context.set_offline(True)
    a_walk.plain_cards(page).first.locator("[data-rate=fair]").click()
    pictures = a_walk.pictures(tmp_path, 1)
    card = a_walk.unfold(a_walk.plain_cards(page).first)
    card.locator("[data-act=photo]").click()
    card.locator("input[data-photo=choose]").set_input_files(list(pictures.values()))
    expect(page.locator("#strip")).to_contain_text("1 photo to hand over", timeout=30_000)
    expect(page.locator("#strip")).to_contain_text("this device has no network")
    page.evaluate("() => { location.hash = 'ready'; }")
    expect(page.locator("#ready li").nth(3)).to_contain_text("leave it open until you are back")

    page.context.set_offline(False)

    a_walk.handed_over(page)
    record = app.extensions["data_folder"].inspections.get(inspection)
    device = app.extensions["sharing"].devices.all()[0]["id"]
    assert ["fair"] == [
        entry.value
        for entry in record.entries
        if entry.device == device and entry.field == "rating"
    ]
    kept = {
        hashlib.sha256(path.read_bytes()).hexdigest()
        for path in (record.folder / "photos").iterdir()
        if path.is_file()
    }
    assert set(pictures) <= kept


@pytest.mark.parametrize(
    ("waits", "expected"),
    [(True, ["beforeunload"]), (False, [])],
    ids=["something waits", "nothing waits"],
)
def test_the_page_warns_before_it_is_closed_while_something_waits(joined, waits, expected):
    """Closing asks first while something waits, because the page cannot be opened again without
    the laptop; otherwise it does not."""
    page, _, _ = joined
    a_walk.sheet(page)
    fair = a_walk.plain_cards(page).first.locator("[data-rate=fair]")
    if waits:
        page.context.set_offline(True)
        fair.click()
    else:
        with page.expect_response(
            lambda answer: answer.request.method == "POST" and answer.url.endswith("/entries")
        ):
            fair.click()
        page.wait_for_timeout(500)
    expect(page.locator("#strip")).to_contain_text("1 to hand over" if waits else "all handed over")
    asked = []
    page.on("dialog", lambda dialog: (asked.append(dialog.type), dialog.accept()))

    with page.expect_event("close"):
        page.close(run_before_unload=True)

    assert expected == asked


def test_a_device_that_is_let_in_no_more_says_so_and_goes_on_recording(joined):
    """After its pass was taken back nothing is handed over and nothing is lost; joined again as
    the same device it hands everything over."""
    page, app, inspection = joined
    a_walk.sheet(page)
    a_walk.handed_over(page)
    devices, pairing = app.extensions["sharing"].devices, app.extensions["sharing"].pairing
    device = devices.all()[0]["id"]
    devices.revoke(device)

    a_walk.plain_cards(page).first.locator("[data-rate=poor]").click()

    expect(page.locator("#strip")).to_contain_text("not let in any more", timeout=20_000)
    expect(page.locator("#strip")).to_contain_text("1 to hand over")
    expect(a_walk.plain_cards(page).first.locator("[data-rate=poor]")).to_have_attribute(
        "aria-pressed", "true"
    )
    other = page.context.new_page()
    other.goto(f"{page.url.split('/inspection')[0]}/join#{pairing.new_code().replace('-', '')}")
    other.fill("[name=name]", "tablet of QX")
    other.click("form#join button")
    other.wait_for_url("**/walk")
    other.close()
    page.evaluate("() => window.dispatchEvent(new Event('online'))")
    a_walk.handed_over(page)
    record = app.extensions["data_folder"].inspections.get(inspection)
    assert ["poor"] == [entry.value for entry in record.entries if entry.field == "rating"]


def test_the_open_page_judges_without_the_computer(joined):
    """Nothing can be kept without a service worker; what the open page has loaded judges on."""
    page, _, _ = joined
    reading = ten_readings()[0]
    line = a_walk.judging_line(page)
    expect(line).to_have_attribute("data-ready", "ready", timeout=a_walk.STARTS_MS)
    expect(line).to_contain_text("as long as this page is open")
    card = a_walk.card(page, reading.system, reading.check)
    page.context.set_offline(True)

    a_walk.fill_readings(card, reading.fields)

    expect(card.locator(".judged")).to_contain_text(reading.sentence)
    expect(card.locator(".judged")).to_contain_text("Judged on this device")
