"""What a PNG says is seen through becomes white paper, and nothing else does, at any depth."""

import struct
import zlib

import pytest
from PIL import Image

from inspector.record import photos
from tests.reliability import hostile_pictures as make

SIDE, GREY, RGB, GREY_ALPHA, RGB_ALPHA = 64, 0, 2, 4, 6
WHITE = (255, 255, 255)


def halves(depth, colour, left, right, clear=None):
    """A PNG whose left half has one sample row and whose right half another, with the colour that
    is seen through."""
    row = b"\0" + packed(left, depth) + packed(right, depth)
    more = b""
    if clear is not None:
        more = make.png_chunk(b"tRNS", struct.pack(f">{len(clear)}H", *clear))
    return make.png(SIDE, SIDE, depth, colour, more=more, rows=zlib.compress(row * SIDE))


def packed(samples, depth):
    """Half a row of one pixel again and again."""
    bits = "".join(format(sample, f"0{depth}b") for sample in samples) * (SIDE // 2)
    return int(bits, 2).to_bytes(len(bits) // 8, "big")


def shown(folder, data):
    """The colours in the middle of both halves of the report's copy."""
    taken = photos.take_in(folder, data)
    with Image.open(photos.report_copy(folder, taken.sha)) as copy:
        return copy.getpixel((SIDE // 4, 32)), copy.getpixel((SIDE * 3 // 4, 32))


@pytest.mark.parametrize(
    ("depth", "clear", "other", "expected"),
    [
        (1, 1, 0, 0),
        (2, 1, 0, 0),
        (2, 2, 1, 85),
        (4, 5, 10, 170),
        (8, 10, 200, 200),
        (16, 0, 40_000, 156),
        (16, 65_535, 0, 0),
        (16, 40_000, 39_999, 156),
        (16, 40_000, 40_001, 156),
    ],
)
def test_grey_is_seen_through_where_its_file_says_so(tmp_path, depth, clear, other, expected):
    """The grey that is named becomes white, and its nearest neighbour stays as it is."""
    left, right = shown(tmp_path, halves(depth, GREY, [clear], [other], [clear]))
    assert WHITE == left
    assert right == pytest.approx((expected,) * 3, abs=2)


@pytest.mark.parametrize(("depth", "most", "half"), [(8, 255, 128), (16, 65_535, 32_768)])
def test_colour_and_layers_are_seen_through_alike(tmp_path, depth, most, half):
    """A named colour and a layer of transparency give the same picture in 8 bits and in 16."""
    named = halves(depth, RGB, [half, 0, 0], [0, half, 0], [half, 0, 0])
    layered = halves(depth, RGB_ALPHA, [half, 0, 0, 0], [0, half, 0, most])
    for data in (named, layered):
        left, right = shown(tmp_path, data)
        assert WHITE == left
        assert right == pytest.approx((0, 128, 0), abs=4)
    left, right = shown(tmp_path, halves(depth, GREY_ALPHA, [half, 0], [half, most]))
    assert WHITE == left
    assert right == pytest.approx((128,) * 3, abs=2)


def test_a_large_picture_is_seen_through_in_every_strip(tmp_path):
    """A picture that is made smaller strip by strip has no seam and no forgotten strip."""
    clear = make.png_chunk(b"tRNS", struct.pack(">H", 0))
    taken = photos.take_in(tmp_path, make.png(3300, 3307, 16, GREY, more=clear))
    with Image.open(photos.report_copy(tmp_path, taken.sha)) as copy:
        assert (1650, 1654) == copy.size
        assert (WHITE[0], WHITE[0]) == copy.convert("L").getextrema()


def test_strips_give_the_picture_that_the_whole_gives(tmp_path):
    """Made smaller in strips or at once, the picture is the same but for what JPEG does to it."""
    whole = Image.effect_noise((3300, 2100), 90).convert("RGB")
    out = make.io.BytesIO()
    whole.save(out, "PNG", compress_level=1)
    taken = photos.take_in(tmp_path, out.getvalue())
    expected = make.io.BytesIO()
    whole.reduce(2).save(expected, "JPEG", quality=82)
    assert expected.getvalue() == photos.report_copy(tmp_path, taken.sha).read_bytes()
