"""A phone that comes back under another name hands over all it still holds, or its file is taken
in; each time the laptop's journal has every answer and every photo."""

import hashlib
import shutil

import pytest
from playwright.sync_api import expect

from inspector import create_app
from inspector.sharing.shared_inspections import Shared
from tests import a_walk
from tests.a_server import serving
from tests.browser.conftest import LAN_NAME


def shared_app(data):
    """A laptop that shares with devices at the name that stands for its address."""
    return create_app(data, TESTING=True, WTF_CSRF_ENABLED=False, SHARED=Shared(LAN_NAME, 5731))


def begin(app):
    """Begin an inspection on the laptop and share it; returns its id."""
    answer = app.test_client().post("/inspections", data={"go": "walk"})
    inspection = answer.headers["Location"].split("/")[2]
    app.extensions["sharing"].share(inspection)
    return inspection


def join(page, app, address):
    """Join by a new code, as after scanning it."""
    code = app.extensions["sharing"].pairing.new_code().replace("-", "")
    page.goto(f"{address}/join#{code}")
    page.fill("[name=name]", "tablet")
    page.click("form#join button")
    page.wait_for_url("**/walk")


def rate(page, number, word):
    button = a_walk.plain_cards(page).nth(number).locator(f"[data-rate={word}]")
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")


def photograph(page, path):
    card = a_walk.unfold(a_walk.plain_cards(page).first)
    card.locator("[data-act=photo]").click()
    card.locator("input[data-photo=choose]").set_input_files(path)
    expect(page.locator("#strip")).to_contain_text("1 photo to hand over", timeout=30_000)


def recorded_away(page, tmp_path):
    """Two answers and a photo without a connection; returns the photo's digest."""
    page.context.set_offline(True)
    rate(page, 1, "poor")
    rate(page, 2, "failed")
    [(digest, path)] = a_walk.pictures(tmp_path, 1).items()
    photograph(page, path)
    return digest


def reopen(page, address, inspection):
    """Open the walk again, as from the list."""
    page.goto(f"{address}/inspection/{inspection}/walk")


def ratings(app, inspection):
    """The ratings in the laptop's journal: by devices, each with its value."""
    record = app.extensions["data_folder"].inspections.get(inspection)
    assert [] == record.refused()
    return sorted(
        each.value
        for each in record.entries
        if each.field == "rating" and each.device != app_host(app)
    )


def app_host(app):
    return app.extensions["data_folder"].host


def photos(app, inspection):
    folder = app.extensions["data_folder"].inspections.get(inspection).folder / "photos"
    return {hashlib.sha256(path.read_bytes()).hexdigest() for path in folder.iterdir()}


def test_taken_out_of_the_list_and_joined_again(phone, tmp_path):
    """It gets the name back that it had, and hands over what it recorded meanwhile."""
    app = shared_app(tmp_path / "data")
    inspection = begin(app)
    with serving(app) as port:
        address = f"http://{LAN_NAME}:{port}"
        join(phone, app, address)
        a_walk.come_aboard(phone, address, inspection, "QX")
        a_walk.sheet(phone)
        rate(phone, 0, "fair")
        a_walk.handed_over(phone)
        digest = recorded_away(phone, tmp_path)
        devices = app.extensions["sharing"].devices
        [before] = [each["id"] for each in devices.all()]
        devices.remove(before)
        phone.context.set_offline(False)
        expect(phone.locator("#strip")).not_to_contain_text("all handed over")

        join(phone, app, address)
        reopen(phone, address, inspection)
        a_walk.handed_over(phone)

        [after] = [each["id"] for each in devices.all() if not each.get("revoked")]
        assert before == after
        assert ["failed", "fair", "poor"] == ratings(app, inspection)
        assert {digest} == photos(app, inspection)
        a_walk.sheet(phone)
        rate(phone, 3, "good")
        a_walk.handed_over(phone)
        last = app.extensions["data_folder"].inspections.get(inspection).entries[-1]
        assert after == last.device


def test_a_second_laptop_at_the_same_address(phone, tmp_path):
    """It gets what waits, and all that this phone has handed over to the first one."""
    first = shared_app(tmp_path / "first")
    inspection = begin(first)
    with serving(first) as port:
        address = f"http://{LAN_NAME}:{port}"
        join(phone, first, address)
        a_walk.come_aboard(phone, address, inspection, "QX")
        # Before anything is recorded on board, the second laptop has a copy.
        source = first.extensions["data_folder"].inspections.get(inspection).folder
        copy = tmp_path / "second" / "inspections" / inspection
        shutil.copytree(source, copy)
        a_walk.sheet(phone)
        rate(phone, 0, "fair")
        a_walk.handed_over(phone)
        digest = recorded_away(phone, tmp_path)
        [before] = [each["id"] for each in first.extensions["sharing"].devices.all()]

    second = shared_app(tmp_path / "second")
    second.extensions["sharing"].share(inspection)
    with serving(second, port):
        phone.context.set_offline(False)
        join(phone, second, address)
        reopen(phone, address, inspection)
        a_walk.handed_over(phone)

        [after] = [each["id"] for each in second.extensions["sharing"].devices.all()]
        assert before != after
        assert ["failed", "fair", "poor"] == ratings(second, inspection)
        assert {digest} == photos(second, inspection)


@pytest.mark.parametrize("way", ["handed over", "by a file"])
def test_site_data_cleared_while_the_page_is_open(phone, tmp_path, way):
    """The page still has all of it, and gives it to the laptop or into a file for its owner."""
    app = shared_app(tmp_path / "data")
    inspection = begin(app)
    with serving(app) as port:
        address = f"http://{LAN_NAME}:{port}"
        join(phone, app, address)
        a_walk.come_aboard(phone, address, inspection, "QX")
        a_walk.sheet(phone)
        rate(phone, 0, "fair")
        a_walk.handed_over(phone)
        digest = recorded_away(phone, tmp_path)
        session = phone.context.new_cdp_session(phone)
        session.send("Storage.clearDataForOrigin", {"origin": address, "storageTypes": "all"})
        expect(phone.locator("#alarm")).to_contain_text("were cleared", timeout=40_000)
        if way == "handed over":
            phone.context.set_offline(False)
            a_walk.handed_over(phone)
        else:
            # Somebody took the phone out of the list: nothing can be handed over any more.
            devices = app.extensions["sharing"].devices
            devices.remove(devices.all()[0]["id"])
            phone.evaluate("() => { location.hash = 'sheets'; }")
            with phone.expect_download() as waiting:
                phone.click("#save-file")
            saved = tmp_path / "waiting.json"
            waiting.value.save_as(saved)
            answer = app.test_client().post("/import", data={"file": saved.open("rb")})
            assert 302 == answer.status_code

        assert ["failed", "fair", "poor"] == ratings(app, inspection)
        assert {digest} == photos(app, inspection)
