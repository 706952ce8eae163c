"""The time that a camera wrote into a photo is stored as an entry and printed in the register."""

import hashlib
import io

import pytest
from PIL import Image
from pypdf import PdfReader

from tests.record.conftest import a_picture


def photo(dial, offset="", tint=0):
    """A photo taken at that time of the camera's clock."""
    exif = Image.Exif()
    exif[0x8769] = {0x9003: dial, **({0x9011: offset} if offset else {})}
    return a_picture(exif=exif, size=(320 + tint, 240))


def hand_over(client, inspection, data, taken, number):
    """As the walk does it: the entries about the photo, then its bytes."""
    sha = hashlib.sha256(data).hexdigest()
    facts = {"on": "sheet/hull/shell/paint", "kind": "jpeg", "taken": taken}
    entries = [
        {
            "id": f"phone-1:{number + index}",
            "at": "2026-05-02T12:00:00.000Z",
            "device": "phone-1",
            "who": "QX",
            "subject": f"photo/{sha}",
            "field": field,
            "value": value,
            "replaces": [],
        }
        for index, (field, value) in enumerate(facts.items())
    ]
    client.post(f"/exchange/{inspection}/entries", json={"entries": entries})
    assert 200 == client.put(f"/exchange/{inspection}/photo/{sha}", data=data).status_code
    return sha


@pytest.fixture
def record(app, begun):
    return app.extensions["data_folder"].inspections.get(begun)


def test_it_is_stored_once_in_the_photographers_name(client, begun, record):
    """One entry, also where the photo is handed over twice; none for a photo without a time."""
    data = photo("2026:05:02 09:14:07", "+02:00")
    sha = hand_over(client, begun, data, "2026-05-02T07:14:07.000Z", 1)
    client.put(f"/exchange/{begun}/photo/{sha}", data=data)
    stored = [entry for entry in record.entries if entry.field == "camera_time"]
    assert ["2026-05-02T09:14:07+02:00"] == [entry.value for entry in stored]
    assert [("QX", record.host)] == [(entry.who, entry.device) for entry in stored]

    without = hand_over(client, begun, a_picture(), "2026-05-02T07:20:00.000Z", 4)
    assert record.state.value(f"photo/{without}", "camera_time") is None


def test_bytes_alone_register_no_photo(client, begun, record):
    """A photo that no entry mentions is not registered by its bytes alone."""
    data = photo("2026:05:02 09:14:07")
    sha = hashlib.sha256(data).hexdigest()
    assert 200 == client.put(f"/exchange/{begun}/photo/{sha}", data=data).status_code
    assert [] == record.state.fields(f"photo/{sha}")


def test_the_register_is_in_that_order_and_names_the_cameras_offset(client, begun, app, record):
    """Chosen last, taken first; the report names how far the camera's clock was from UTC."""
    late = hand_over(
        client, begun, photo("2026:05:02 11:30:00", tint=1), "2026-05-02T09:30:00.000Z", 1
    )
    early = hand_over(
        client, begun, photo("2026:05:02 11:10:00", tint=2), "2026-05-02T09:10:00.000Z", 4
    )
    phone = hand_over(client, begun, a_picture(size=(330, 240)), "2026-05-02T09:20:00.000Z", 7)
    photos = app.extensions["data_folder"].assessment_of(record).photos
    assert [early, phone, late] == [each.sha for each in photos]
    answer = client.get(f"/inspection/{begun}/report.pdf")
    pages = PdfReader(io.BytesIO(answer.data)).pages
    text = " ".join("".join(page.extract_text() for page in pages).split())
    assert "2026-05-02 11:10" in text
    assert "2026-05-02 09:20 UTC" in text
    assert "3 photos." in text
    assert "The time of 2 of them is by the camera" in text
    assert "were 2 h 00 min ahead of UTC" in text
