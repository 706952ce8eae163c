"""The time and the turn that a camera wrote are read from any EXIF block, and a broken one costs
neither the photo nor time."""

import struct
from datetime import datetime

import pytest
from PIL import Image

from inspector.record import photos
from inspector.record.photos.exif import read_exif
from tests.reliability import hostile_pictures as make

ORIGINAL, DIGITIZED, OFFSET = 0x9003, 0x9004, 0x9010
OFFSET_ORIGINAL, OFFSET_DIGITIZED = 0x9011, 0x9012
NINE, TEN = "2026:05:02 09:14:07", "2026:05:02 10:00:00"


def exif_block(tags, orientation=1):
    """An EXIF block with these tags of the camera, as Pillow writes it."""
    block = Image.Exif()
    block[0x0112] = orientation
    block[0x8769] = tags
    return block.tobytes()


@pytest.mark.parametrize(
    ("tags", "expected"),
    [
        ({ORIGINAL: NINE}, "2026-05-02T09:14:07"),
        ({ORIGINAL: NINE, OFFSET_ORIGINAL: "+02:00"}, "2026-05-02T09:14:07+02:00"),
        ({ORIGINAL: NINE, OFFSET_ORIGINAL: "-09:30"}, "2026-05-02T09:14:07-09:30"),
        ({ORIGINAL: NINE, OFFSET: "+14:00"}, "2026-05-02T09:14:07+14:00"),
        (
            {ORIGINAL: NINE, OFFSET_ORIGINAL: "+01:00", OFFSET: "+02:00"},
            "2026-05-02T09:14:07+01:00",
        ),
        ({ORIGINAL: NINE, DIGITIZED: TEN}, "2026-05-02T09:14:07"),
        ({DIGITIZED: TEN, OFFSET_DIGITIZED: "+00:00"}, "2026-05-02T10:00:00+00:00"),
        ({ORIGINAL: "    :  :     :  :  ", DIGITIZED: TEN}, "2026-05-02T10:00:00"),
        ({ORIGINAL: NINE, OFFSET_ORIGINAL: "   :  "}, "2026-05-02T09:14:07"),
        ({ORIGINAL: NINE, OFFSET_ORIGINAL: "+15:00"}, "2026-05-02T09:14:07"),
        ({ORIGINAL: NINE, OFFSET_ORIGINAL: "+02:75"}, "2026-05-02T09:14:07"),
        ({ORIGINAL: NINE, OFFSET_ORIGINAL: "+2"}, "2026-05-02T09:14:07"),
        ({ORIGINAL: "2026:13:02 09:14:07"}, None),
        ({ORIGINAL: "yesterday"}, None),
        ({}, None),
    ],
)
def test_the_time_of_the_camera_has_its_offset_where_that_is_one(tags, expected):
    """The time of the original counts before that of its digital form; an offset that no clock on
    land has is left out."""
    _, taken_at = read_exif(exif_block(tags))
    assert expected == taken_at
    assert taken_at is None or datetime.fromisoformat(taken_at).year == 2026


def little_endian(orientation):
    """A block in the other order of bytes, with an orientation only."""
    return b"Exif\0\0II*\0" + struct.pack("<IHHHIIII", 8, 1, 0x0112, 3, 1, orientation, 0, 0)


@pytest.mark.parametrize(("written", "read"), [(1, 1), (6, 6), (8, 8), (0, 1), (9, 1), (77, 1)])
def test_an_orientation_that_is_none_is_upright(written, read):
    """Values beyond 1 to 8 mean nothing."""
    assert (read, None) == read_exif(little_endian(written))
    assert read == read_exif(exif_block({}, written))[0]


def test_a_block_cut_anywhere_is_read_as_far_as_it_goes():
    """No cut raises, and what is read is what was written."""
    whole = exif_block({ORIGINAL: NINE, OFFSET_ORIGINAL: "+02:00"}, 6)
    for length in range(len(whole)):
        orientation, taken_at = read_exif(whole[:length])
        assert orientation in (1, 6)
        assert taken_at in (None, "2026-05-02T09:14:07", "2026-05-02T09:14:07+02:00")
    assert (6, "2026-05-02T09:14:07+02:00") == read_exif(whole)


@pytest.mark.parametrize(
    "block", [make.exif_of_many_tags(), make.exif_in_a_circle(), b"Exif\0\0MM\0*\xff\xff\xff\xff"]
)
def test_a_hostile_block_means_nothing(block):
    """Tags that point everywhere or at themselves are passed over."""
    assert (1, None) == read_exif(block)


def test_a_heic_photo_has_the_time_of_its_camera(tmp_path):
    """Also where the picture itself cannot be shown here."""
    block = exif_block({ORIGINAL: NINE, OFFSET_ORIGINAL: "+02:00"})
    pixels = make.box(b"mdat", b"pixels" + block)
    taken = photos.take_in(tmp_path, make.heic(make.heic_items(4032, 3024), pixels))
    assert "2026-05-02T09:14:07+02:00" == taken.taken_at
