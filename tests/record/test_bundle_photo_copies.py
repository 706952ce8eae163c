"""A bundle whose photos carry nothing of what a camera writes into them: it can be taken in, says
what it is, and a later bundle with originals completes it."""

import json
import shutil
import zipfile

import pytest
from PIL import Image

from inspector.record import photos
from inspector.record.bundles import bundle

MAKER, SERIAL = "A made-up maker", "SN-0815-4711"


@pytest.fixture
def with_place():
    """EXIF with place, device and time, as a phone writes it."""
    exif = Image.Exif()
    exif[0x010F] = MAKER
    exif[0x8769] = {0xA431: SERIAL, 0x9003: "2026:05:02 09:14:07"}
    exif[0x8825] = {1: "N", 2: (54.0, 19.0, 0.0), 3: "E", 4: (10.0, 8.0, 0.0)}
    return exif


@pytest.fixture
def here(inspection, picture, with_place):
    """An inspection with such a photo, and the photo's digest."""
    folder = inspection("here")
    data = picture(exif=with_place)
    assert MAKER.encode() in data
    return folder, photos.take_in(folder, data).sha


def contents(path):
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def test_nothing_of_the_cameras_data_is_in_it(tmp_path, here):
    """No byte of place, maker or serial number, no EXIF at all; the picture itself is there."""
    folder, sha = here
    bundle.write(folder, tmp_path / "whole.zip")
    assert any(MAKER.encode() in data for data in contents(tmp_path / "whole.zip").values())
    bundle.write(folder, tmp_path / "copies.zip", originals=False)
    found = contents(tmp_path / "copies.zip")
    for data in found.values():
        assert MAKER.encode() not in data
        assert SERIAL.encode() not in data
        assert b"Exif" not in data
    pictures = [name for name in found if name.startswith(("photos/", "copies/"))]
    assert 1 == len(pictures)
    assert pictures[0].startswith(f"copies/{sha}.")
    manifest = json.loads(found["manifest.json"])
    assert "without the camera's data" in manifest["photos"]
    assert [] == manifest["left_out"]


def test_it_is_taken_in_shown_and_completed_by_a_later_bundle(tmp_path, here):
    """There the copy is shown the original is named as not here; with it all is whole."""
    folder, sha = here
    bundle.write(folder, tmp_path / "copies.zip", originals=False)
    bundle.take_in(tmp_path / "copies.zip", tmp_path / "there", "host")
    there = tmp_path / "there" / folder.name
    assert photos.original(there, sha) is None
    assert photos.report_copy(there, sha).is_file()
    assert "a copy takes its place" in photos.missing(there, [sha])[0]
    assert [] == photos.verify(there)

    # It travels on as it is, and so does a bundle of copies made of copies.
    bundle.write(there, tmp_path / "again.zip", originals=False)
    bundle.take_in(tmp_path / "again.zip", tmp_path / "third", "host2")
    assert photos.report_copy(tmp_path / "third" / folder.name, sha).is_file()

    bundle.write(folder, tmp_path / "whole.zip")
    bundle.take_in(tmp_path / "whole.zip", tmp_path / "there", "host")
    assert photos.original(there, sha) is not None
    assert [] == photos.missing(there, [sha])


def test_a_photo_that_cannot_be_shown_is_left_out_and_named(tmp_path, here):
    """Its bytes may hold anything, so they do not travel; the manifest names it."""
    folder, sha = here
    photos.original(folder, sha).write_bytes(b"rotten")
    shutil.rmtree(folder / "derived")
    bundle.write(folder, tmp_path / "copies.zip", originals=False)
    found = contents(tmp_path / "copies.zip")
    assert [] == [name for name in found if name.startswith(("photos/", "copies/"))]
    (left_out,) = json.loads(found["manifest.json"])["left_out"]
    assert sha in left_out


@pytest.mark.parametrize("gone", ["checklists", ""], ids=["half deleted", "deleted"])
def test_of_a_deleted_inspection_no_bundle_is_made(tmp_path, here, gone):
    """What could not be taken in anywhere is refused with a sentence, and no file is left."""
    folder, _ = here
    shutil.rmtree(folder / gone)
    with pytest.raises(bundle.NotWhole, match="checklists are gone"):
        bundle.write(folder, tmp_path / "out.zip")
    assert not (tmp_path / "out.zip").exists()
