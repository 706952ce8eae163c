"""What kind of picture some bytes are, by the bytes themselves and never by a name or a claim."""

# Kind -> the ending of its files.
SUFFIXES = {"jpeg": "jpg", "png": "png", "webp": "webp", "heic": "heic"}
_HEIF_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"}


def kind_of(data: bytes) -> str | None:
    """Return the kind of a picture.

    Parameters
    ----------
    data : bytes
        The picture, or its first bytes.

    Returns
    -------
    str or None
        "jpeg", "png", "webp" or "heic"; None for anything else.
    """
    if data.startswith(b"\xff\xd8\xff"):
        return "jpeg"
    if data.startswith(b"\x89PNG\r\n\x1a\n"):
        return "png"
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return "webp"
    return "heic" if data[4:8] == b"ftyp" and data[8:12] in _HEIF_BRANDS else None
