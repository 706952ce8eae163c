"""The chunks of a PNG, looked through before it is decoded."""

import struct
from collections.abc import Iterator
from dataclasses import dataclass

from inspector.record.photos.photo_refusals import PhotoRefused, damaged

MOST_CHUNKS = 20_000
_NEEDED = (b"IHDR", b"PLTE", b"tRNS", b"iCCP", b"IDAT", b"IEND")
_CHANNELS = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}


@dataclass
class PngStructure:
    """What was found in the chunks.

    Parameters
    ----------
    needed : bytes
        The picture with only those chunks that the decoder needs.
    exif : bytes
        The EXIF block, or nothing.
    width, height : int
        In pixels.
    depth : int
        Bits of a sample.
    channels : int
        Samples of a pixel.
    transparent : tuple of int
        The samples of the colour that is seen through, as the file has them.
    """

    needed: bytes
    exif: bytes
    width: int
    height: int
    depth: int
    channels: int
    transparent: tuple[int, ...] = ()

    @property
    def unpacked_bytes(self) -> int:
        """The size of all rows once they are unpacked [bytes]."""
        # Known before anything is unpacked: a small PNG may hold a gigabyte of one colour.
        return self.width * self.height * self.channels * self.depth // 8


def look_through(data: bytes) -> PngStructure:
    """Look through the chunks of a PNG.

    Parameters
    ----------
    data : bytes
        The whole file.

    Returns
    -------
    PngStructure

    Raises
    ------
    PhotoRefused
        Where its chunks make no picture.

    References
    ----------
    W3C, Portable Network Graphics (PNG) Specification, 2nd edition, chapter 11. *From memory.*
    """
    kept, exif, head, transparent = [data[:8]], b"", b"", b""
    for name, start, stop in _chunks(data):
        body = slice(start + 8, stop - 4)
        if name in _NEEDED:
            kept.append(data[start:stop])
        if name == b"IHDR":
            # The first one counts, as for decoders.
            head = head or data[body]
        elif name == b"tRNS":
            transparent = data[body]
        elif name == b"eXIf":
            exif = data[body]
    if len(head) != 13 or head[9] not in _CHANNELS:
        raise damaged("png")
    width, height, depth, colour = struct.unpack(">IIBB", head[:10])
    found = PngStructure(b"".join(kept), exif, width, height, depth, _CHANNELS[colour])
    if colour in (0, 2) and len(transparent) == 2 * found.channels:
        found.transparent = struct.unpack(f">{found.channels}H", transparent)
    return found


def _chunks(data: bytes) -> Iterator[tuple[bytes, int, int]]:
    """Name, start and end of each chunk to the last."""
    place = 8
    for _ in range(MOST_CHUNKS):
        length = int.from_bytes(data[place : place + 4], "big")
        name, stop = data[place + 4 : place + 8], place + 12 + length
        # A chunk that ends beyond the file: cut short, or a length made up.
        if stop > len(data):
            raise damaged("png")
        yield name, place, stop
        if name == b"IEND":
            return
        place = stop
    raise PhotoRefused(
        f"The photo has more than {MOST_CHUNKS} PNG chunks; no program writes that. Save it as a "
        "new PNG or a JPEG."
    )
