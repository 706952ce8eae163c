"""The JPEGs of a photo that are shown, kept under `derived` and made again when needed."""

from pathlib import Path

from inspector.record import durable
from inspector.record.photos.decoding import Decoded, decode
from inspector.record.photos.device_copies import device_copy
from inspector.record.photos.originals import DIGEST, original
from inspector.record.photos.photo_refusals import PhotoRefused


def report_copy(folder: Path, sha: str) -> Path | None:
    """Return the upright JPEG for the report, from a device's copy until the original is here.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    sha : str
        The photo's SHA-256.

    Returns
    -------
    Path or None
        None without a readable original or copy; HEIC needs pillow-heif.

    Raises
    ------
    Busy
        Where it has to be made anew, and too many photos are worked on.
    """
    return _rendition(folder, sha, "report")


def thumbnail(folder: Path, sha: str) -> Path | None:
    """Return the upright JPEG of at most THUMB_SIDE pixels.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    sha : str
        The photo's SHA-256.

    Returns
    -------
    Path or None
        As for `report_copy`.
    """
    return _rendition(folder, sha, "thumb")


def keep_renditions(folder: Path, name: str, decoded: Decoded) -> None:
    """Keep the JPEGs of a photo, where they are not there yet.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    name : str
        What their names begin with.
    decoded : Decoded
        The photo.

    Raises
    ------
    durable.NotWritten
        Where the disk does not take them.
    """
    derived = folder / "derived"
    derived.mkdir(parents=True, exist_ok=True)
    for size, data in (("report", decoded.report), ("thumb", decoded.thumb)):
        path = derived / f"{name}.{size}.jpg"
        if data and not path.is_file():
            durable.replace(path, data)


def _rendition(folder: Path, sha: str, size: str) -> Path | None:
    if not DIGEST.fullmatch(sha):
        return None
    # An original that cannot be read here need not hide a copy that can.
    made = _made(folder, sha, size, original(folder, sha))
    if made is not None:
        return made
    # It has a name of its own, so that it is not taken for a rendition of the original later.
    return _made(folder, f"{sha}.of-copy", size, device_copy(folder, sha))


def _made(folder: Path, name: str, size: str, source: Path | None) -> Path | None:
    """The rendition of one source, made where it is not there yet."""
    if source is None:
        return None
    path = folder / "derived" / f"{name}.{size}.jpg"
    if path.is_file():
        return path
    try:
        keep_renditions(folder, name, decode(source.read_bytes()))
    except PhotoRefused:
        return None
    return path if path.is_file() else None
