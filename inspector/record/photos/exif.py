"""What a camera wrote beside a picture: how it was held, and when the picture was taken.

Only the few tags in use are read: a reader of all tags can be made to fill the memory.
"""

import re
import struct
from datetime import datetime

from PIL import Image

_ORIENTATION, _EXIF_BLOCK, _OFFSET = 0x0112, 0x8769, 0x9010
# Time and its offset from UTC: of the original, and of its digital form.
_TIMES = ((0x9003, 0x9011), (0x9004, 0x9012))
_WANTED = {_ORIENTATION, _EXIF_BLOCK, _OFFSET, *(tag for pair in _TIMES for tag in pair)}
_BYTES_OF_TYPE = {3: 2, 4: 4}
_MOST_TAGS, _LONGEST_VALUE = 1_000, 64
# Clocks on land are between 12 hours behind UTC and 14 hours ahead.
_OFFSET_TEXT = re.compile(r"[+-](0\d|1[0-4]):[0-5]\d")
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}
_ON_ITS_SIDE = (5, 6, 7, 8)


def read_exif(block: bytes) -> tuple[int, str | None]:
    """Read orientation and time.

    Parameters
    ----------
    block : bytes
        The EXIF block, with or without its name before it; may be empty or broken.

    Returns
    -------
    tuple of (int, str or None)
        Orientation, 1 (upright) to 8; ISO time, with an offset where the camera wrote one.

    References
    ----------
    CIPA DC-008 (Exif 2.32), 4.6: tags and their types. *From memory.*
    """
    tiff = block.removeprefix(b"Exif\0\0")
    order = {b"II*\0": "<", b"MM\0*": ">"}.get(tiff[:4])
    if order is None:
        return 1, None
    main = _tags(tiff, order, _number(tiff, order, 4))
    camera = _tags(tiff, order, _whole(main.get(_EXIF_BLOCK), order))
    orientation = _whole(main.get(_ORIENTATION), order)
    return orientation if orientation in _TURNS else 1, _time_of(camera)


def _tags(tiff: bytes, order: str, place: int) -> dict[int, bytes]:
    """The tags of a directory with their values; the rest of a broken one is passed over."""
    found: dict[int, bytes] = {}
    if not 8 <= place <= len(tiff) - 2:
        return found
    (count,) = struct.unpack_from(order + "H", tiff, place)
    for number in range(min(count, _MOST_TAGS)):
        start = place + 2 + 12 * number
        if start + 12 > len(tiff):
            break
        tag, kind, values = struct.unpack_from(order + "HHI", tiff, start)
        if tag in _WANTED:
            size = min(values, _LONGEST_VALUE) * _BYTES_OF_TYPE.get(kind, 1)
            # Up to four bytes are in the entry itself, more are where it points.
            at = start + 8 if size <= 4 else _number(tiff, order, start + 8)
            if at + size <= len(tiff):
                found.setdefault(tag, tiff[at : at + size])
    return found


def _number(tiff: bytes, order: str, place: int) -> int:
    """Four bytes as a whole number; 0 behind the end."""
    return _whole(tiff[place : place + 4], order)


def _whole(value: bytes | None, order: str) -> int:
    """A value of two or four bytes; 0 for anything else."""
    if value is None or len(value) not in (2, 4):
        return 0
    return int.from_bytes(value, "little" if order == "<" else "big")


def _time_of(camera: dict[int, bytes]) -> str | None:
    """When the shutter opened, or else when the picture was stored in the camera."""
    for taken, offset in _TIMES:
        # Some cameras write only the offset of the last change, which is their clock's too.
        zone = camera.get(offset) or camera.get(_OFFSET)
        moment = _time(_text(camera.get(taken)), _text(zone))
        if moment is not None:
            return moment
    return None


def _text(value: bytes | None) -> str:
    return (value or b"").decode("ascii", "replace").strip("\0 ")


def upright(picture: Image.Image, orientation: int) -> Image.Image:
    """Turn a picture so that it is seen as the camera's owner saw it.

    Parameters
    ----------
    picture : Image
        As decoded.
    orientation : int
        As `read_exif` returned it.

    Returns
    -------
    Image
    """
    turn = _TURNS.get(orientation)
    return picture if turn is None else picture.transpose(turn)


def upright_size(size: tuple[int, int], orientation: int) -> tuple[int, int]:
    """Return the size that a picture has once it is upright.

    Parameters
    ----------
    size : tuple of int
        Width and height as decoded, in pixels.
    orientation : int
        As `read_exif` returned it.

    Returns
    -------
    tuple of int
        Width and height, in pixels.
    """
    width, height = size
    return (height, width) if orientation in _ON_ITS_SIDE else size


def _time(taken: str, offset: str) -> str | None:
    # EXIF writes "2026:05:02 09:14:07", and the offset, if at all, apart as "+02:00".
    try:
        moment = datetime.strptime(taken, "%Y:%m:%d %H:%M:%S")
    except ValueError:
        return None
    return moment.isoformat() + (offset if _OFFSET_TEXT.fullmatch(offset) else "")
