"""A joined device writes what the walk writes, in its own name, and nothing else."""

import re

import pytest

from inspector.record.entry import SUBJECTS
from inspector.web.exchange import DEVICE_MAY_WRITE

PHOTO = "photo/" + "a" * 64
ALLOWED = (
    *(
        ("sheet/hull/shell/anodes", field)
        for field in ("rating", "depth", "note", "gate", "reading/mm")
    ),
    ("unit/hull/shell", "walked_past"),
    *(
        ("finding/f-1", field)
        for field in ("title", "text", "action", "urgency", "on", "check", "gone")
    ),
    *(("inspection", field) for field in ("state", "berth")),
    *((PHOTO, field) for field in ("on", "kind", "taken", "name", "caption")),
)
# Every kind of subject that there is, with a field that a laptop writes or somebody may try.
REFUSED = (
    ("inspection", "title"),
    ("vessel", "name"),
    ("brief", "speed"),
    ("settings", "units"),
    ("unit/hull/shell", "name"),
    ("verdict/hull/shell", "word"),
    ("row/tanks/one", "name"),
    ("certificate/c1", "expires"),
    ("scope/s1", "text"),
    ("signature/s1", "name"),
    ("profile/oil-water", "limit"),
    ("sheet/hull/shell/anodes", "gone"),
    ("sheet/hull/shell/anodes", "reading"),
    ("finding/f-1", "rating"),
    (PHOTO, "gone"),
)


def _hand_over(tablet, shared_id, subject, field, device=""):
    device = device or tablet.id
    sent = {
        "id": f"{device}:1",
        "at": "2026-05-02T09:14:07.512Z",
        "device": device,
        "who": "QX",
        "subject": subject,
        "field": field,
        "value": {"gate": {"permit": "no"}, "gone": True}.get(field, "poor"),
        "replaces": [],
    }
    answer = tablet.ask("POST", f"/exchange/{shared_id}/entries", json={"entries": [sent]})
    return answer.json["fates"][sent["id"]]


def test_every_kind_of_subject_is_either_allowed_or_tried_here():
    """No new kind of subject is open to devices, or forgotten, by accident."""
    kinds = set(re.findall(r"[a-z]{3,}", re.sub(r"\[[^]]*\]", "", SUBJECTS.pattern)))
    assert kinds == {subject.partition("/")[0] for subject, _ in ALLOWED + REFUSED}
    assert {subject.partition("/")[0] for subject, _ in ALLOWED} == set(DEVICE_MAY_WRITE)


@pytest.mark.parametrize(("subject", "field"), ALLOWED)
def test_a_device_writes_what_the_walk_writes(tablet, shared_id, subject, field):
    """Checks, findings and photos are stored."""
    assert "stored" == _hand_over(tablet, shared_id, subject, field)


@pytest.mark.parametrize(("subject", "field"), REFUSED)
def test_a_device_writes_nothing_else(tablet, shared_id, shared_app, subject, field):
    """The rest is refused with a sentence, kept aside, and changes nothing."""
    outcome = _hand_over(tablet, shared_id, subject, field)
    assert "is recorded on the computer itself" in outcome
    inspection = shared_app.extensions["data_folder"].inspections.get(shared_id)
    assert not [entry for entry in inspection.entries if entry.device == tablet.id]
    assert [subject] == [row["entry"]["subject"] for row in inspection.refused()]


def test_a_device_writes_in_no_other_name(tablet, shared_id, shared_app):
    """Neither in the computer's name nor in that of another device."""
    host = shared_app.extensions["data_folder"].host
    for name in (host, "another-tablet"):
        outcome = _hand_over(tablet, shared_id, "sheet/hull/shell/anodes", "rating", name)
        assert "may hand over only its own" in outcome or "already kept" in outcome
