"""Pictures and entries made for the tests of the record."""

import io

import pytest
from PIL import Image, ImageDraw

from inspector.record.entry import Entry


def an_entry(
    number,
    value="good",
    *,
    device="phone",
    subject="sheet/hull/hull-1/plating",
    field="rating",
    replaces=(),
    at="2026-05-02T09:00:00.000Z",
):
    """One entry; everything but its number has a default."""
    return Entry(f"{device}:{number}", at, device, "AB", subject, field, value, tuple(replaces))


def a_picture(kind="JPEG", size=(640, 480), mode="RGB", exif=None, **options):
    """Bytes of a grey picture whose upper left ninth is red (black where there is no colour)."""
    picture = Image.new("RGB", size, (120, 130, 140))
    ImageDraw.Draw(picture).rectangle((0, 0, size[0] // 3, size[1] // 3), fill=(220, 20, 20))
    picture = picture.convert(mode)
    out = io.BytesIO()
    picture.save(out, kind, **({"exif": exif} if exif else {}), **options)
    return out.getvalue()


@pytest.fixture
def entry():
    """Maker of entries."""
    return an_entry


@pytest.fixture
def picture():
    """Maker of picture bytes."""
    return a_picture


@pytest.fixture
def inspection(tmp_path):
    """Maker of an inspection's folder: a checklist, an entry and, with bytes given, a photo."""
    from inspector.record import photos
    from inspector.record.journal import Journal

    def make(place, host="laptop", entries=None, data=b"", name="2026-05-02-aa"):
        folder = tmp_path / place / name
        (folder / "checklists").mkdir(parents=True)
        (folder / "checklists" / "hull.toml").write_text('[system]\nid = "hull"\n')
        journal = Journal(folder / "journal" / f"{host}.jsonl")
        journal.append(entries or [an_entry(1)])
        journal.close()
        if data:
            photos.take_in(folder, data)
        return folder

    return make
