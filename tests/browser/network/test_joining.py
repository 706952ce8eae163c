"""Joining with a real browser over plain http at a name that is not this computer's own, as a
phone on the hotspot sees it."""

import re
import time

import pytest

from inspector import create_app
from inspector.sharing.shared_inspections import Shared
from tests.a_server import serving
from tests.browser.conftest import LAN_NAME


@pytest.fixture
def site(tmp_path):
    """A shared instance with a shared inspection: its address for devices, and the application."""
    app = create_app(
        tmp_path / "data",
        TESTING=True,
        WTF_CSRF_ENABLED=False,
        SHARED=Shared(LAN_NAME, 5731),
    )
    begun = (
        app.test_client()
        .post("/inspections", data={"go": "walk"})
        .headers["Location"]
        .split("/")[2]
    )
    app.extensions["sharing"].share(begun)
    with serving(app) as port:
        yield f"http://{LAN_NAME}:{port}", app, begun


def join(phone, address, app, name="tablet of QX"):
    code = app.extensions["sharing"].pairing.new_code().replace("-", "")
    phone.goto(f"{address}/join#{code}")
    phone.fill("[name=name]", name)
    phone.click("#join button")
    phone.wait_for_url("**/walk")


def test_a_phone_joins_by_the_code_in_the_address_and_records_in_its_own_name(phone, site):
    """Scan, name, join, walk: what is tapped is in the laptop's journal under the device's own
    name, and the code is gone from the address."""
    address, app, begun = site
    assert 401 == phone.goto(address).status
    join(phone, address, app)
    phone.fill("#who-name", "QX")
    phone.click("#who-keep")
    phone.locator("[data-sheet^='hull/']").first.click()
    phone.locator("#cards article.check:not([data-enclosed]) button[data-rate=fair]").first.click()
    device = app.extensions["sharing"].devices.all()[0]["id"]
    inspection = app.extensions["data_folder"].inspections.get(begun)
    end = time.monotonic() + 30
    while time.monotonic() < end and not any(
        entry.field == "rating" for entry in inspection.since(0)
    ):
        phone.wait_for_timeout(100)

    assert re.fullmatch(r"tablet-of-qx-[0-9a-f]{8}", device)
    assert {"fair"} == {
        entry.value
        for entry in inspection.entries
        if entry.device == device and entry.field == "rating"
    }
    assert {} == inspection.missing()
    assert phone.evaluate("() => isSecureContext") is False


def test_a_wrong_code_is_told_on_the_page_and_a_second_join_keeps_the_device(phone, site):
    """The refusal's sentence stands under the form; joining again in the same browser makes no
    second device."""
    address, app, _ = site
    phone.goto(f"{address}/join#wrongwrong")
    assert "" == phone.evaluate("() => location.hash")
    phone.fill("[name=name]", "tablet")
    phone.click("#join button")
    phone.wait_for_selector("#join .fault:not([hidden])")
    assert "not the code" in phone.inner_text("#join .fault")
    join(phone, address, app)
    first = [one["id"] for one in app.extensions["sharing"].devices.all()]
    join(phone, address, app)

    assert first == [one["id"] for one in app.extensions["sharing"].devices.all()]
