"""Entries and photos in and out over HTTP."""

import hashlib
import io

import pytest
from PIL import Image

SUBJECT = "sheet/reefers/{unit}/temperature"


def entry(number, subject="sheet/hull/shell-and-sea-chests/anodes", field="rating", value="good", **more):
    return {"id": f"phone:{number}", "at": "2026-05-02T09:14:07.512Z", "device": "phone", "who": "QX", "subject": subject, "field": field,
            "value": value, "replaces": [], **more}


def test_an_entry_is_stored_then_already_had(client, begun):
    """The same entry twice is kept once, and both answers say what became of it."""
    first = client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1)]})
    again = client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1)]})

    assert {"phone:1": "stored"} == first.json["fates"]
    assert {"phone:1": "already had"} == again.json["fates"]


def test_a_refused_entry_does_not_hold_up_the_others(client, begun):
    """One bad entry gets its sentence; its neighbours are stored."""
    answer = client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1), entry(2, subject="nowhere"), entry(3)]})

    assert ["stored", "stored"] == [answer.json["fates"][one] for one in ("phone:1", "phone:3")]
    assert answer.json["fates"]["phone:2"].startswith("refused: The entry's subject")


def test_an_id_used_twice_with_other_content_is_refused(client, begun):
    """A second entry under a known id never replaces the first."""
    client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1)]})
    answer = client.post(f"/exchange/{begun}/entries", json={"entries": [entry(1, value="failed")]})

    assert "refused" in answer.json["fates"]["phone:1"]


def test_a_reading_is_judged_at_once(client, begun, app):
    """The answer to a hand-over judges the sheet it touched, with sentence and source."""
    library = app.extensions["desk"].library
    system, check = next((s, c) for s in library.systems.values() for c in s.checks if c.criterion == "cold-store-temperature")
    unit = client.get(f"/exchange/{begun}/entries").json["entries"]
    unit = next(e["subject"].split("/")[2] for e in unit if e["subject"].startswith(f"unit/{system.id}/"))
    subject = f"sheet/{system.id}/{unit}/{check.id}"
    readings = [entry(1, subject, "reading/temperature", {"value": "14", "unit": "°F"})]
    if "store" not in check.given:
        readings.append(entry(2, subject, "reading/store", {"value": "frozen"}))

    judged = client.post(f"/exchange/{begun}/entries", json={"entries": readings}).json["judgements"][subject]

    assert judged["rating"] in ("fair", "poor")
    assert judged["source"]


def test_entries_come_out_after_a_position_and_all_for_another_epoch(client, begun):
    """A position counts within one epoch only."""
    whole = client.get(f"/exchange/{begun}/entries").json
    none = client.get(f"/exchange/{begun}/entries?after={whole['position']}&epoch={whole['epoch']}").json
    other = client.get(f"/exchange/{begun}/entries?after={whole['position']}&epoch=other").json

    assert none["entries"] == []
    assert len(other["entries"]) == whole["position"]


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b'{"entries": 1}', b'{"entries": ' + b"[" * 50_000, b"\xff"])
def test_a_body_that_is_no_batch_gets_a_sentence(client, begun, body):
    """Whatever is posted, the answer is 4xx with a sentence."""
    answer = client.post(f"/exchange/{begun}/entries", data=body, content_type="application/json")

    assert answer.status_code == 400
    assert answer.json["error"]


def test_a_photo_comes_back_as_a_thumbnail(client, begun):
    """A PNG goes in under its digest, a small JPEG comes out."""
    data = io.BytesIO()
    Image.new("RGB", (900, 600), "teal").save(data, "PNG")
    sha = hashlib.sha256(data.getvalue()).hexdigest()

    taken = client.put(f"/exchange/{begun}/photo/{sha}", data=data.getvalue(), content_type="application/octet-stream")
    thumb = client.get(f"/inspection/{begun}/photo/{sha}/thumb")

    assert taken.status_code == 200
    assert Image.open(io.BytesIO(thumb.data)).format == "JPEG"
    thumb.close()


@pytest.mark.parametrize("data", [b"", b"not a picture", b"\xff\xd8\xff\xe0" + b"\0" * 400])
def test_a_false_photo_gets_a_sentence(client, begun, data):
    """Bytes that are no photo are refused with one sentence."""
    sha = hashlib.sha256(data).hexdigest()
    answer = client.put(f"/exchange/{begun}/photo/{sha}", data=data, content_type="application/octet-stream")

    assert 400 <= answer.status_code < 500
    assert answer.json["error"].endswith(".")


def test_a_photo_under_another_digest_is_refused(client, begun):
    """Bytes that do not fit the digest they came under are refused."""
    answer = client.put(f"/exchange/{begun}/photo/{'0' * 64}", data=b"abc", content_type="application/octet-stream")

    assert "digest" in answer.json["error"]
