"""A full disk of the laptop: every form that writes answers with one sentence and gives back what
was typed, and the same form sent again succeeds once there is room."""

import errno
import re
import shutil

import pytest
from markupsafe import Markup

from tests.reliability.faults import failing

FORMS = [
    ("/inspections", {"go": "walk"}),
    ("/surveyors", {"name": "Q. Xanthe"}),
    ("/brief/new", {"client": "Society for Cold Coasts", "speed": "11"}),
    (
        "/rates",
        {"name": "Blast and paint", "unit": "m²", "low": "40", "likely": "55", "high": "80"},
    ),
    ("/inspection/{id}/decide/thrusters/verdict", {"decision": "remove", "reason": "Worn out."}),
    ("/inspection/{id}/decide/thrusters/facts", {"life_years": "9"}),
    ("/inspection/{id}/decide/thrusters/line", {"act": "refurbish", "text": "New seals."}),
    ("/inspection/{id}/finding", {"title": "Crack", "urgency": "in the yard"}),
    ("/inspection/{id}/rules", {"coverage": "55"}),
    ("/inspection/{id}/edit/vessel", {"name": "Grey Petrel"}),
    ("/inspection/{id}/edit/inspection", {"place": "At the quay"}),
    ("/inspection/{id}/edit/brief", {"client": "Society for Cold Coasts"}),
    ("/inspection/{id}/units", {"system": "thrusters", "add": "Bow thruster 9"}),
]


def full(*_, **__):
    raise OSError(errno.ENOSPC, "No space left on device")


def hidden(page):
    """The fields that the page sends again, with what was typed in them."""
    found = re.findall(r'<input type="hidden" name="([^"]*)" value="([^"]*)">', page)
    return {Markup(name).unescape(): Markup(value).unescape() for name, value in found}


@pytest.mark.parametrize(("address", "typed"), FORMS, ids=[form[0] for form in FORMS])
def test_each_form_says_so_and_gives_back_what_was_typed(client, begun, address, typed):
    """507, one sentence, no trace of the program; what was typed is sent again in one tap."""
    address = address.format(id=begun)
    with failing(1, "full") as disk:
        refused = client.post(address, data=typed)
    page = refused.get_data(as_text=True)
    assert disk.calls, "this form wrote nothing"
    assert refused.status_code == 507
    assert 1 == page.count('role="alert"')
    assert "no space left on device" in page.lower()
    assert "Traceback" not in page
    assert typed.items() <= hidden(page).items()

    again = client.post(address, data=hidden(page))
    assert again.status_code in (200, 302), again.get_data(as_text=True)


@pytest.mark.parametrize("refuses", ["copyfile", "mkdir"])
def test_an_inspection_that_cannot_be_begun_leaves_nothing(
    app, client, begun, monkeypatch, refuses
):
    """Wherever the disk refuses, no half inspection stays in the list or in the folder."""
    inspections = app.extensions["data_folder"].inspections
    if refuses == "copyfile":
        monkeypatch.setattr(shutil, "copyfile", full)
    else:
        monkeypatch.setattr("pathlib.Path.mkdir", full)
    refused = client.post("/inspections", data={"go": "walk"})
    assert refused.status_code == 507
    assert "Free some space" in refused.get_data(as_text=True)
    monkeypatch.undo()
    assert [begun] == inspections.ids()
    assert [begun] == [path.name for path in inspections.folder.iterdir()]


def test_an_inspection_whose_first_entries_are_not_taken_is_taken_back(app, client, begun):
    """Folder and checklists were written and the journal was not: the list stays as it was."""
    inspections = app.extensions["data_folder"].inspections
    with failing(1, "full"):
        assert 507 == client.post("/inspections", data={"go": "walk"}).status_code
    assert [begun] == inspections.ids()
    assert [begun] == [path.name for path in inspections.folder.iterdir()]


def test_a_device_is_told_in_json(client, begun):
    """The exchange answers a program of ours."""
    entry = {
        "id": "phone-1:1",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "phone-1",
        "who": "QX",
        "subject": "sheet/hull/shell/paint",
        "field": "rating",
        "value": "good",
        "replaces": [],
    }
    with failing(1, "full"):
        refused = client.post(f"/exchange/{begun}/entries", json={"entries": [entry]})
    assert 507 == refused.status_code
    assert "did not take the entry" in refused.json["error"]


def test_what_is_no_fault_of_the_disk_is_not_called_one(app, client, monkeypatch):
    """Another error of the system stays an error of the program's own."""
    app.config["PROPAGATE_EXCEPTIONS"] = False

    def broken(*_):
        raise OSError(errno.EBADF, "Bad file descriptor")

    monkeypatch.setattr("inspector.services.shelf.Shelf.rows_at_once", broken)
    assert 500 == client.get("/").status_code
