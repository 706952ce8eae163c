"""The boxes of a HEIC photo: whether it has a picture in it, and of what size.

The picture itself is decoded only where pillow-heif is installed; without it a photo is kept when
its container has all that a picture needs.
"""

import re
import struct
from collections.abc import Iterator

MOST_BOXES = 1_000
_HEADER = 8
# Where the items are, what they are, and which of them is the picture.
_OF_A_PICTURE = (b"iloc", b"iinf", b"pitm")
_SIZE = re.compile(rb"ispe\0\0\0\0(.{8})", re.DOTALL)


def is_whole(data: bytes) -> bool:
    """Tell whether a HEIC file has a picture in it and is not cut short.

    Parameters
    ----------
    data : bytes
        The whole file.

    Returns
    -------
    bool

    References
    ----------
    ISO/IEC 14496-12 (boxes) and 23008-12 (HEIF, items and their sizes). *From memory.*
    """
    boxes = list(_boxes(data))
    if sum(len(body) + header for _, body, header in boxes) != len(data):
        return False
    by_name = {name: body for name, body, _ in boxes if body}
    # A sequence of pictures has its table in moov.
    if b"moov" in by_name:
        return b"mdat" in by_name
    meta = by_name.get(b"meta", b"")
    inside = {name for name, body, _ in _boxes(meta[4:]) if body}
    return inside.issuperset(_OF_A_PICTURE) and (b"mdat" in by_name or b"idat" in inside)


def size_of(data: bytes) -> tuple[int, int]:
    """Read the size of the largest picture in a HEIC file.

    Parameters
    ----------
    data : bytes
        The whole file.

    Returns
    -------
    tuple of int
        Width and height as stored, in pixels; 0 where it is not known.
    """
    meta = next((body for name, body, _ in _boxes(data) if name == b"meta"), b"")
    sizes = [struct.unpack(">II", found[1]) for found in _SIZE.finditer(meta, 0, 100_000)]
    # The picture is the largest of its items: the others are tiles and a thumbnail.
    return max(sizes, key=lambda size: size[0] * size[1], default=(0, 0))


def exif_of(data: bytes) -> bytes:
    """Find the EXIF block of a HEIC file.

    Parameters
    ----------
    data : bytes
        The whole file.

    Returns
    -------
    bytes
        At most 64 KiB from its first byte on; nothing where there is none.
    """
    place = max(data.find(b"Exif\0\0" + order) for order in (b"MM\0*", b"II*\0"))
    return data[place : place + 65_536] if place >= 0 else b""


def _boxes(data: bytes) -> Iterator[tuple[bytes, bytes, int]]:
    """Name, body and length of the header of each box; in a file that was cut they do not fill
    it."""
    place = 0
    for _ in range(MOST_BOXES):
        if place + _HEADER > len(data):
            return
        length, header = int.from_bytes(data[place : place + 4], "big"), _HEADER
        name = data[place + 4 : place + 8]
        # 1 says that a long length follows, of eight bytes.
        if length == 1:
            length, header = int.from_bytes(data[place + 8 : place + 16], "big"), 16
        # A length of 0 reaches to the end of the file.
        length = length or len(data) - place
        if length < header or place + length > len(data):
            return
        yield name, data[place + header : place + length], header
        place += length
