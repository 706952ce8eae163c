"""What kind of picture some bytes are, told by the bytes themselves; never by a name or by what a sender claims."""

from collections.abc import Iterator

SUFFIXES = {"jpeg": "jpg", "png": "png", "webp": "webp", "heic": "heic"}
_HEIF_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"}


def kind_of(data: bytes) -> str | None:
    """The kind that the first bytes tell: "jpeg", "png", "webp", "heic", or None."""
    if data.startswith(b"\xff\xd8\xff"):
        return "jpeg"
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return "png"
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return "webp"
    return "heic" if data[4:8] == b"ftyp" and data[8:12] in _HEIF_BRANDS else None


def heif_boxes(data: bytes) -> Iterator[int]:
    """The lengths of the boxes that a HEIF file is made of, one after the other; a cut file does not come out even."""
    place = 0
    while place + 8 <= len(data):
        length = int.from_bytes(data[place:place + 4], "big")
        if length == 1:
            length = int.from_bytes(data[place + 8:place + 16], "big")
        length = length or len(data) - place
        if length < 8:
            return
        yield length
        place += length
