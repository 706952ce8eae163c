"""A phone that comes back under another name hands over what it still holds, and nobody else does
so in its place."""

import hashlib
import io
import itertools

import pytest
from PIL import Image

from inspector.record.catalogue import Catalogue
from inspector.sharing.devices import MOST_NAMES, Devices

SHEET = "sheet/hull/shell/anodes"


def _hand_over(device, shared_id, name, number=1, proof="", **more):
    sent = {
        "id": f"{name}:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": name,
        "who": "QX",
        "subject": SHEET,
        "field": "rating",
        "value": "poor",
        "replaces": [],
        **more,
    }
    body = {"entries": [sent], "device": name, "proof": proof}
    answer = device.ask("POST", f"/exchange/{shared_id}/entries", json=body)
    return answer.json["fates"][sent["id"]]


def test_a_device_taken_out_and_joined_again_is_the_same(laptop, tablet, code, shared_id):
    """With its old pass, which lets nobody in any more, it proves which device it was."""
    first, old = tablet.id, tablet.token
    laptop.post(f"/sharing/device/{first}", data={"do": "remove"})
    assert first not in laptop.get("/sharing").get_data(as_text=True)
    assert 401 == tablet.ask("GET", f"/exchange/{shared_id}/entries").status_code
    tablet.join(code(), before={"device": first, "token": old})
    assert first == tablet.id
    assert "stored" == _hand_over(tablet, shared_id, first)


def test_a_device_taken_out_that_lost_its_pass_hands_over(laptop, tablet, code, shared_id):
    """Under its new name it brings what waits under the old one, and the laptop's page says so."""
    first = tablet.id
    laptop.post(f"/sharing/device/{first}", data={"do": "remove"})
    tablet.join(code(), used=[{"device": first, "token": ""}])
    assert first != tablet.id
    assert "stored" == _hand_over(tablet, shared_id, first)
    assert f"hands over also for {first}" in laptop.get("/sharing").get_data(as_text=True)


@pytest.mark.parametrize("name", ["tablet-of-qx-0123abcd", "phone-0123456789ab"])
def test_what_was_recorded_under_another_laptops_name_is_taken(tablet, shared_id, name):
    """A second laptop at the same address, or no pass at all: a name that nobody knows here."""
    assert "stored" == _hand_over(tablet, shared_id, name)


def test_a_browser_that_lost_everything_but_an_open_page_proves_its_name(
    tablet, new_device, code, shared_id
):
    """Its first name is still let in here; the token that the page has in memory shows whose."""
    first, token = tablet.id, tablet.token
    again = new_device()
    again.join(code())
    assert "hand over only its own" in _hand_over(again, shared_id, first, proof="guess")
    assert "stored" == _hand_over(again, shared_id, first, proof=token)
    assert 401 == tablet.ask("GET", f"/exchange/{shared_id}/entries").status_code


def test_nobody_writes_in_the_name_of_a_device_that_is_let_in(
    tablet, new_device, code, shared_id, shared_app
):
    """Neither at joining nor at handing over, and not in the name of a laptop."""
    other = new_device()
    host = shared_app.extensions["data_folder"].host
    names = (tablet.id, host, f"{host}-0f0f0f", "another-laptop-ab12")
    other.join(code(), used=[{"device": name} for name in names])
    for name in names:
        assert "hand over only its own" in _hand_over(other, shared_id, name, 500)
    inspection = shared_app.extensions["data_folder"].inspections.get(shared_id)
    assert 500 not in {each.number for each in inspection.entries}


def test_an_earlier_name_belongs_to_one_browser(laptop, tablet, new_device, code, shared_id):
    """Whoever hands over first for it has it, until that one is let in no more."""
    other, name = new_device(), "phone-0123456789ab"
    other.join(code())
    assert "stored" == _hand_over(tablet, shared_id, name)
    assert "hand over only its own" in _hand_over(other, shared_id, name, 2)
    laptop.post(f"/sharing/device/{tablet.id}", data={"do": "revoke"})
    assert "stored" == _hand_over(other, shared_id, name, 2)


def test_names_are_bounded(tablet, shared_id):
    """Who makes up names comes to an end."""
    outcomes = [
        _hand_over(tablet, shared_id, f"phone-{number:012x}") for number in range(MOST_NAMES + 1)
    ]
    assert ["stored"] * MOST_NAMES == outcomes[:-1]
    assert "hand over only its own" in outcomes[-1]


@pytest.mark.parametrize("used", [7, ["x"], [{"device": 7}], [{"device": "x" * 99, "token": 7}]])
def test_whatever_a_browser_says_of_its_names_it_joins(new_device, code, shared_id, used):
    """What is no list of names is passed over."""
    assert 200 == new_device().join(code(), used=used).status_code


def test_a_device_taken_out_stays_known_after_a_restart(tmp_path):
    """And the list has room for others."""
    catalogue = Catalogue(tmp_path / "catalogue.json")
    token, document = Devices(catalogue).let_in("tablet")
    Devices(catalogue).remove(document["id"])
    again = Devices(Catalogue(tmp_path / "catalogue.json"))
    assert [] == again.all()
    assert again.of_token(token) is None
    _, back = again.let_in("tablet", (document["id"], token))
    assert document["id"] == back["id"]
    assert [document["id"]] == [each["id"] for each in again.all()]


def test_a_photo_keeps_its_place(laptop, tablet, code, shared_id, shared_app):
    """Its bytes come under the new name and what says where it belongs under the old one."""
    out = io.BytesIO()
    Image.new("RGB", (90, 60), "teal").save(out, "JPEG")
    data, first = out.getvalue(), tablet.id
    sha = hashlib.sha256(data).hexdigest()
    laptop.post(f"/sharing/device/{first}", data={"do": "remove"})
    tablet.join(code())
    answer = tablet.ask("PUT", f"/exchange/{shared_id}/photo/{sha}", data=data)
    assert 200 == answer.status_code
    page = laptop.get(f"/inspection/{shared_id}/check").get_data(as_text=True)
    assert f"The photo {sha[:12]}… is here and nothing here says where it belongs" in page
    numbers = itertools.count(1)
    for field, value in (("on", SHEET), ("kind", "image/jpeg")):
        said = {"subject": f"photo/{sha}", "field": field, "value": value}
        outcome = _hand_over(tablet, shared_id, first, next(numbers), **said)
        assert "stored" == outcome
    state = shared_app.extensions["data_folder"].inspections.get(shared_id).state
    assert SHEET == state.value(f"photo/{sha}", "on")
    page = laptop.get(f"/inspection/{shared_id}/check").get_data(as_text=True)
    assert sha[:12] not in page
