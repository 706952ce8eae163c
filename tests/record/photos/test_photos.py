"""Photos are kept as they came, shown upright, and refused where they are no whole picture."""

import hashlib
import io
import struct
import zlib
from pathlib import Path

import pytest
from PIL import Image

from inspector.record import durable, photos
from inspector.record.photos import PhotoRefused

# How a camera stores an upright picture for each EXIF orientation (TIFF 6.0 / EXIF 2.32, tag
# 0x0112).
STORED = {
    1: None,
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_90,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_270,
}


def exif(**tags):
    block = Image.Exif()
    block[0x0112] = tags.get("orientation", 1)
    if "taken" in tags:
        block[0x8769] = {36867: tags["taken"], 36881: tags.get("offset", "")}
    return block


def is_red(path, corner=(0.1, 0.1)):
    with Image.open(path) as shown:
        red, green, blue = shown.convert("RGB").getpixel(
            (int(shown.width * corner[0]), int(shown.height * corner[1]))
        )
    return red > 180 and green < 80 and blue < 80


@pytest.mark.parametrize("orientation", range(1, 9))
@pytest.mark.parametrize("kind", ["JPEG", "WEBP", "PNG"])
def test_every_orientation_is_shown_upright(tmp_path, picture, orientation, kind):
    """However the camera was turned, copies and size are upright."""
    with Image.open(io.BytesIO(picture())) as upright:
        stored = (
            upright.transpose(STORED[orientation])
            if STORED[orientation] is not None
            else upright.copy()
        )
    out = io.BytesIO()
    stored.save(out, kind, exif=exif(orientation=orientation))
    taken = photos.take_in(tmp_path, out.getvalue())
    assert (640, 480) == (taken.width, taken.height)
    for path in (photos.report_copy(tmp_path, taken.sha), photos.thumbnail(tmp_path, taken.sha)):
        assert is_red(path)
        assert not is_red(path, (0.9, 0.1))
        assert not is_red(path, (0.1, 0.9))
        with Image.open(path) as shown:
            assert shown.width > shown.height
            assert not shown.getexif()


@pytest.mark.parametrize(
    ("kind", "suffix", "told"),
    [("JPEG", "jpg", "jpeg"), ("PNG", "png", "png"), ("WEBP", "webp", "webp")],
)
def test_the_original_is_kept_to_the_byte_and_once(tmp_path, picture, kind, suffix, told):
    """The bytes that came stand under their SHA-256; taking them in again writes nothing new."""
    data = picture(kind)
    first, second = photos.take_in(tmp_path, data), photos.take_in(tmp_path, data)
    path = photos.original(tmp_path, first.sha)
    assert (told, True, False) == (first.kind, first.new, second.new)
    assert f"{hashlib.sha256(data).hexdigest()}.{suffix}" == path.name
    assert data == path.read_bytes()
    assert [path] == list((tmp_path / "photos").iterdir())
    assert [] == photos.verify(tmp_path)


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        ((4032, 3024), (2016, 1512)),
        ((3024, 4032), (1512, 2016)),
        ((1500, 700), (1500, 700)),
        ((6500, 300), (1625, 75)),
    ],
)
@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_the_report_copy_keeps_at_least_1600_pixels(tmp_path, picture, size, expected, kind):
    """The copy is halved as long as its long side keeps 1600 pixels; the thumbnail fits 320."""
    taken = photos.take_in(tmp_path, picture(kind, size))
    assert size == (taken.width, taken.height)
    with (
        Image.open(photos.report_copy(tmp_path, taken.sha)) as copy,
        Image.open(photos.thumbnail(tmp_path, taken.sha)) as thumb,
    ):
        assert expected == copy.size
        assert max(thumb.size) == 320


@pytest.mark.parametrize(
    ("kind", "mode"),
    [
        ("PNG", "P"),
        ("PNG", "RGBA"),
        ("PNG", "LA"),
        ("PNG", "1"),
        ("PNG", "L"),
        ("JPEG", "CMYK"),
        ("JPEG", "L"),
        ("WEBP", "RGBA"),
    ],
)
def test_every_colour_mode_becomes_a_plain_copy(tmp_path, picture, kind, mode):
    """Palette, transparency, grey and print colours come out as an RGB JPEG."""
    taken = photos.take_in(tmp_path, picture(kind, mode=mode))
    path = photos.report_copy(tmp_path, taken.sha)
    assert mode in ("LA", "1", "L") or is_red(path)
    with Image.open(path) as copy:
        assert ("JPEG", "RGB", (640, 480)) == (copy.format, copy.mode, copy.size)


def test_see_through_parts_become_white(tmp_path):
    """Transparent black is paper, not ink."""
    out = io.BytesIO()
    Image.new("RGBA", (64, 64), (0, 0, 0, 0)).save(out, "PNG")
    taken = photos.take_in(tmp_path, out.getvalue())
    with Image.open(photos.report_copy(tmp_path, taken.sha)) as copy:
        assert (255, 255, 255) == copy.getpixel((32, 32))


def test_sixteen_bit_grey_is_scaled_and_not_clipped(tmp_path):
    """Half grey in 16 bits is half grey in 8."""
    out = io.BytesIO()
    Image.new("I;16", (64, 64), 32768).save(out, "PNG")
    taken = photos.take_in(tmp_path, out.getvalue())
    with Image.open(photos.report_copy(tmp_path, taken.sha)) as copy:
        assert 128 == pytest.approx(copy.getpixel((32, 32))[0], abs=2)


def test_the_time_of_the_camera_is_read_with_its_offset(tmp_path, picture):
    """EXIF's own spelling of the time becomes ISO; a nonsense time is none."""
    with_offset = picture(exif=exif(taken="2026:05:02 09:14:07", offset="+02:00"))
    assert "2026-05-02T09:14:07+02:00" == photos.take_in(tmp_path, with_offset).taken_at
    assert (
        "2026-05-02T09:14:07"
        == photos.take_in(tmp_path, picture(exif=exif(taken="2026:05:02 09:14:07"))).taken_at
    )
    assert (
        photos.take_in(tmp_path, picture(exif=exif(taken="0000:00:00 00:00:00"))).taken_at is None
    )
    assert photos.take_in(tmp_path, picture()).taken_at is None


@pytest.mark.filterwarnings("ignore:Corrupt EXIF data")
def test_a_broken_exif_block_does_not_cost_the_photo(tmp_path, picture):
    """Metadata that cannot be read is passed over; the picture is kept."""
    taken = photos.take_in(tmp_path, picture(exif=b"Exif\0\0MM\0*\xff\xff\xff\xff" + b"\xff" * 40))
    assert (640, 480, None) == (taken.width, taken.height, taken.taken_at)


def test_missing_copies_are_made_again(tmp_path, picture):
    """The derived folder may be deleted at any time."""
    sha = photos.take_in(tmp_path, picture()).sha
    made = photos.report_copy(tmp_path, sha).read_bytes()
    for path in (tmp_path / "derived").iterdir():
        path.unlink()
    assert made == photos.report_copy(tmp_path, sha).read_bytes()
    assert is_red(photos.thumbnail(tmp_path, sha))


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
@pytest.mark.parametrize("part", [0.3, 0.6, 0.95])
def test_a_photo_cut_short_is_refused(tmp_path, kind, part):
    """A transfer that ended early is refused as damaged and leaves nothing behind."""
    noise = Image.effect_noise((800, 600), 80).convert("RGB")
    out = io.BytesIO()
    noise.save(out, kind)
    data = out.getvalue()
    with pytest.raises(PhotoRefused, match="damaged or cut short"):
        photos.take_in(tmp_path, data[: int(len(data) * part)])
    assert [] == [path for path in tmp_path.rglob("*") if path.is_file()]


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"GIF89a" + bytes(60),
        b"<svg xmlns='http://www.w3.org/2000/svg'/>",
        b"%PDF-1.7\n",
        b"BM" + bytes(90),
        b"\x89PNG",
    ],
)
def test_what_is_no_photo_is_refused(tmp_path, data):
    """Other types are refused by content, whatever they are called."""
    with pytest.raises(PhotoRefused, match="not a photo by its content|is empty"):
        photos.take_in(tmp_path, data)


@pytest.mark.parametrize(
    "data",
    [
        b"\xff\xd8\xff\xe0" + bytes(200),
        b"\x89PNG\r\n\x1a\n" + bytes(200),
        b"RIFF\x10\0\0\0WEBPVP8 " + bytes(40),
    ],
)
def test_a_false_header_is_refused(tmp_path, data):
    """The first bytes of a photo with nonsense behind them are no photo."""
    with pytest.raises(PhotoRefused, match="damaged"):
        photos.take_in(tmp_path, data)


def png_of(width, height):
    def chunk(name, body):
        return (
            struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))
        )

    head = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"IDAT", zlib.compress(bytes(1000)))
        + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize("size", [(12_001, 10_000), (60_000, 60_000)])
def test_a_picture_of_too_many_pixels_is_refused_before_it_is_decoded(tmp_path, size):
    """A small file that would fill the memory is refused by its header."""
    with pytest.raises(PhotoRefused, match="at most 50 megapixels"):
        photos.take_in(tmp_path, png_of(*size))


def test_a_file_of_too_many_bytes_is_refused(tmp_path, picture):
    """At most 25 MB are taken in."""
    with pytest.raises(PhotoRefused, match="at most 25 MB"):
        photos.take_in(tmp_path, picture() + bytes(25_000_000))


def box(name, body):
    return struct.pack(">I", len(body) + 8) + name + body


def heif(body=b"pixels", *, inside=(b"iloc", b"iinf", b"pitm"), size=(4032, 3024), block=b""):
    items = b"".join(box(name, bytes(8)) for name in inside)
    pixels = box(b"ispe", bytes(4) + struct.pack(">II", *size))
    return b"".join(
        (
            box(b"ftyp", b"heic" + bytes(4) + b"mif1heic"),
            box(b"meta", bytes(4) + items + pixels),
            box(b"mdat", body + block),
        )
    )


def test_heic_is_kept_untouched(tmp_path):
    """What this computer cannot show is still never lost."""
    taken = photos.take_in(tmp_path, heif())
    assert ("heic", True) == (taken.kind, taken.new)
    assert heif() == photos.original(tmp_path, taken.sha).read_bytes()
    assert photos.report_copy(tmp_path, taken.sha) is None
    assert [] == photos.verify(tmp_path)


def test_heic_cut_short_is_refused(tmp_path):
    """The lengths of its boxes must come out even."""
    with pytest.raises(PhotoRefused, match="HEIC"):
        photos.take_in(tmp_path, heif()[:-3])


def test_rot_is_found_by_verify_and_mended_by_the_same_photo(tmp_path, picture):
    """One altered byte of an original is named; taking the photo in again makes it whole."""
    data = picture()
    path = photos.original(tmp_path, photos.take_in(tmp_path, data).sha)
    path.write_bytes(data[:-20] + b"?" + data[-19:])
    (tmp_path / "photos" / "holiday.jpg").write_bytes(data)
    damaged, strange = photos.verify(tmp_path)
    assert f"photos/{path.name} is damaged" in damaged
    assert "photos/holiday.jpg is not named" in strange
    assert photos.take_in(tmp_path, data).new
    assert [strange] == photos.verify(tmp_path)


@pytest.mark.parametrize("sha", ["../../secret", "0" * 63, "0" * 64, ""])
def test_a_photo_that_is_not_there_is_none(tmp_path, sha):
    """No address but a digest of a photo that is kept leads to a file."""
    Path(tmp_path / "photos").mkdir()
    assert (None, None, None) == (
        photos.original(tmp_path, sha),
        photos.report_copy(tmp_path, sha),
        photos.thumbnail(tmp_path, sha),
    )


def test_a_full_disk_keeps_the_original_or_refuses_it(tmp_path, picture, monkeypatch):
    """The photo is acknowledged only when its own bytes are written; copies may follow later."""
    real = durable.replace

    def only_originals(path, data, mode=0o644):
        if path.parent.name == "derived":
            raise durable.NotWritten("The disk is full.")
        real(path, data, mode)

    monkeypatch.setattr(durable, "replace", only_originals)
    sha = photos.take_in(tmp_path, picture()).sha
    assert [] == photos.verify(tmp_path)
    monkeypatch.setattr(durable, "replace", real)
    assert photos.report_copy(tmp_path, sha).is_file()
