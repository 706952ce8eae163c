"""The page that offers the bundle says what the photos in it carry, and offers it without."""

import io
import shutil
import zipfile

from inspector.record import photos
from tests.record.conftest import a_picture


def names(answer):
    with zipfile.ZipFile(io.BytesIO(answer.data)) as archive:
        return [name.partition("/")[0] for name in archive.namelist()]


def test_both_bundles_are_offered_with_what_they_carry(app, client, begun):
    """The page names place and device; each link gives the bundle that it promises."""
    record = app.extensions["data_folder"].inspections.get(begun)
    photos.take_in(record.folder, a_picture())
    page = client.get(f"/inspection/{begun}/report").get_data(as_text=True)
    assert "the place (GPS), the time, and make and number of the device" in page
    for link, part, other in (
        (f"/inspection/{begun}/bundle.zip", "photos", "copies"),
        (f"/inspection/{begun}/bundle.zip?photos=copies", "copies", "photos"),
    ):
        assert f'href="{link}"' in page
        answer = client.get(link)
        assert answer.status_code == 200
        assert part in names(answer)
        assert other not in names(answer)
    assert 400 == client.get(f"/inspection/{begun}/bundle.zip?photos=none").status_code


def test_a_deleted_inspection_gives_no_bundle(app, client, begun):
    """Half deleted or deleted while it is open: a sentence, never a file nobody can take in."""
    folder = app.extensions["data_folder"].inspections.get(begun).folder
    shutil.rmtree(folder / "checklists")
    answer = client.get(f"/inspection/{begun}/bundle.zip")
    assert 400 <= answer.status_code < 500
    assert "zip" not in answer.content_type
    shutil.rmtree(folder)
    answer = client.get(f"/inspection/{begun}/bundle.zip")
    assert 400 <= answer.status_code < 500
    assert "zip" not in answer.content_type
