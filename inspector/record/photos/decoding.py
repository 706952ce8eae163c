"""A photo decoded to its end, and made into the two JPEGs that are shown.

The kind is decided by content, never by a name. A picture is decoded before it is accepted: to read
its header alone misses a file that was cut short. What decoding takes is calculated before, from
the container, so that a small file cannot fill the memory or the processor.
"""

import io
from dataclasses import dataclass

from PIL import Image

from inspector.record.photos import heif_container, jpeg_structure, png_structure
from inspector.record.photos.exif import read_exif, upright, upright_size
from inspector.record.photos.photo_refusals import Busy, PhotoRefused, damaged
from inspector.record.photos.picture_kind import kind_of
from inspector.record.photos.plain_picture import plain, saved_as_jpeg
from inspector.record.photos.turns import Turns

# By kind, for what each takes in memory: a JPEG is decoded at a fraction of its size, a PNG whole,
# and the decoder of WebP keeps the picture five times.
MOST_PIXELS = {
    "jpeg": 120_000_000,
    "png": 50_000_000,
    "webp": 20_000_000,
    "heic": 50_000_000,
}
MOST_SIDE = 32_000  # pixels
MOST_UNPACKED = 200_000_000  # bytes of a PNG, which may have 8 for each pixel
REPORT_SIDE = 1600
THUMB_SIDE = 320
REPORT_QUALITY, THUMB_QUALITY = 82, 78
# What decoding takes at most, by measurement: bytes for each pixel, and for the rest.
_BYTES_PER_PIXEL = {"jpeg": 0, "png": 4, "webp": 16, "heic": 8}
_BYTES_BESIDE = 60_000_000
# Every kind has its own bound below; Pillow's would only warn.
Image.MAX_IMAGE_PIXELS = None
turns = Turns()


@dataclass(frozen=True)
class Decoded:
    """What was found in a photo.

    Parameters
    ----------
    kind : str
        "jpeg", "png", "webp" or "heic".
    width, height : int
        Upright size in pixels; 0 where it could not be decoded here.
    taken_at : str or None
        ISO time by the camera.
    report, thumb : bytes
        The upright JPEGs for the report and for lists; empty where it could not be decoded here.
    """

    kind: str
    width: int = 0
    height: int = 0
    taken_at: str | None = None
    report: bytes = b""
    thumb: bytes = b""


@dataclass(frozen=True)
class _Container:
    """What the file has beside its pixels, and what the decoder receives of it."""

    kind: str
    format: str
    needed: bytes
    exif: bytes = b""
    coefficient_bytes: int = 0
    png: png_structure.PngStructure | None = None


def decode(data: bytes) -> Decoded:
    """Decode a photo.

    Parameters
    ----------
    data : bytes
        The photo as it came.

    Returns
    -------
    Decoded

    Raises
    ------
    PhotoRefused
        For what is no whole picture of a known kind.
    Busy
        Where other photos take all of what decoding may take just now.
    """
    kind = kind_of(data)
    if kind is None:
        raise PhotoRefused(
            "The file is not a photo by its content; JPEG, PNG, WebP and HEIC are taken in."
        )
    if kind == "heic":
        return _decode_heic(data)
    try:
        return _decoded(_look_into(data, kind))
    except (PhotoRefused, Busy):
        raise
    except Exception as problem:  # noqa: BLE001  (decoders report damage by a dozen kinds of error)
        raise damaged(kind) from problem


def _look_into(data: bytes, kind: str) -> _Container:
    if kind == "jpeg":
        jpeg = jpeg_structure.look_through(data)
        return _Container(kind, "JPEG", jpeg.needed, jpeg.exif, jpeg.coefficient_bytes)
    if kind == "png":
        png = png_structure.look_through(data)
        if png.unpacked_bytes > MOST_UNPACKED:
            raise _too_large(kind, png.width, png.height)
        return _Container(kind, "PNG", png.needed, png.exif, png=png)
    # The container says how long it is: shorter is cut short.
    if len(data) < 8 + int.from_bytes(data[4:8], "little"):
        raise damaged(kind)
    return _Container(kind, "WEBP", data)


def _decode_heic(data: bytes) -> Decoded:
    if not heif_container.is_whole(data):
        raise damaged("heic")
    _refuse_too_large("heic", *heif_container.size_of(data))
    # Read by ourselves: without the extra package the time is still known.
    exif = heif_container.exif_of(data)
    undecoded = Decoded("heic", taken_at=read_exif(exif)[1])
    try:
        import pillow_heif
    except ImportError:
        return undecoded
    pillow_heif.register_heif_opener()
    try:
        return _decoded(_Container("heic", "HEIF", data, exif))
    except (PhotoRefused, Busy):
        raise
    except Exception:  # noqa: BLE001  (what this reader cannot show is still kept)
        return undecoded


def _refuse_too_large(kind: str, width: int, height: int) -> None:
    if width * height > MOST_PIXELS[kind] or max(width, height) > MOST_SIDE:
        raise _too_large(kind, width, height)


def _too_large(kind: str, width: int, height: int) -> PhotoRefused:
    name = {"jpeg": "JPEG", "png": "PNG", "webp": "WebP", "heic": "HEIC"}[kind]
    megapixels = MOST_PIXELS[kind] / 1e6
    return PhotoRefused(
        f"The photo has {width} x {height} pixels; a {name} may have at most {megapixels:.0f} "
        f"megapixels (less with 16 bits a colour), and {MOST_SIDE} on a side. "
        "Send a smaller copy, as a JPEG."
    )


def _decoded(container: _Container) -> Decoded:
    kind = container.kind
    with Image.open(io.BytesIO(container.needed), formats=(container.format,)) as picture:
        width, height = picture.size
        _refuse_too_large(kind, width, height)
        amount = width * height * _BYTES_PER_PIXEL[kind] + container.coefficient_bytes
        with turns.turn(amount + _BYTES_BESIDE):
            return _rendered(picture, container)


def _rendered(picture: Image.Image, container: _Container) -> Decoded:
    """The picture upright, and no larger than the report needs it."""
    width, height = picture.size
    factor = _reduction(width, height)
    # The JPEG decoder gives 1/2, 1/4 or 1/8 almost for nothing, if asked for with the picture's own
    # shape.
    picture.draft("RGB", (max(width // factor, 1), max(height // factor, 1)))
    picture.load()
    orientation, taken_at = read_exif(container.exif or picture.info.get("exif", b""))
    if container.kind == "heic":
        orientation = 1  # its decoder has turned it
    # The decoder reduced it already.
    if picture.size != (width, height):
        factor = 1
    small = upright(plain(picture, factor, container.png), orientation)
    thumb = small.copy()
    thumb.thumbnail((THUMB_SIDE, THUMB_SIDE), reducing_gap=2.0)
    size = upright_size((width, height), orientation)
    report_copy = saved_as_jpeg(small, REPORT_QUALITY)
    return Decoded(
        container.kind, *size, taken_at, report_copy, saved_as_jpeg(thumb, THUMB_QUALITY)
    )


def _reduction(width: int, height: int) -> int:
    """How many times smaller a picture may be decoded and still fill the report."""
    longest = max(width, height)
    return next((factor for factor in (8, 4, 2) if longest // factor >= REPORT_SIDE), 1)
