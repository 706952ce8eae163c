"""Photos and devices' copies as they come: checked, and kept unchanged under their digest."""

import contextlib
import hashlib
from dataclasses import dataclass
from pathlib import Path

from inspector.record import durable
from inspector.record.photos.decoding import Decoded, decode
from inspector.record.photos.device_copies import keep_copy
from inspector.record.photos.originals import DIGEST
from inspector.record.photos.photo_refusals import PhotoRefused
from inspector.record.photos.picture_kind import SUFFIXES
from inspector.record.photos.renditions import keep_renditions

MOST_BYTES = 25_000_000
_MOST_MEGABYTES = f"{MOST_BYTES / 1e6:.0f}"


@dataclass(frozen=True, slots=True)
class KeptPhoto:
    """A photo as it is kept.

    Parameters
    ----------
    sha : str
        The SHA-256 of the original.
    kind : str
        "jpeg", "png", "webp" or "heic".
    width, height : int
        Upright size in pixels; 0 where it is not known.
    taken_at : str or None
        ISO time by the camera.
    new : bool
        Whether it was not here before.
    """

    sha: str
    kind: str
    width: int
    height: int
    taken_at: str | None
    new: bool


def take_in(folder: Path, data: bytes) -> KeptPhoto:
    """Check a photo, keep it by its SHA-256 and make what is shown of it.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    data : bytes
        The photo as it came.

    Returns
    -------
    KeptPhoto

    Raises
    ------
    PhotoRefused
        For what is no whole picture of a known kind.
    durable.NotWritten
        Where the disk does not take it.
    Busy
        Where too many photos are worked on; the same photo is taken in a little later.
    """
    if not data:
        raise PhotoRefused("The photo is empty (0 bytes); send it again.")
    if len(data) > MOST_BYTES:
        raise PhotoRefused(
            f"The photo has {len(data) / 1e6:.1f} MB; at most {_MOST_MEGABYTES} MB are taken in. "
            "Send a smaller copy."
        )
    decoded, sha = decode(data), hashlib.sha256(data).hexdigest()
    path = folder / "photos" / f"{sha}.{SUFFIXES[decoded.kind]}"
    new = not _has(path, data)
    if new:
        path.parent.mkdir(parents=True, exist_ok=True)
        durable.replace(path, data)
    # They can be made again at any time, so a disk that is full just now must not refuse a photo
    # that is already kept.
    with contextlib.suppress(durable.NotWritten):
        keep_renditions(folder, sha, decoded)
    return _kept(sha, decoded, new)


def take_in_copy(folder: Path, sha: str, data: bytes) -> KeptPhoto:
    """Check a device's smaller copy of a photo and keep it beside the originals.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    sha : str
        The SHA-256 of the original.
    data : bytes
        The copy; where the photo has one already, it is checked and not kept.

    Returns
    -------
    KeptPhoto
        With the size of the copy.

    Raises
    ------
    PhotoRefused
        For what is no whole JPEG, PNG or WebP picture.
    durable.NotWritten
        Where the disk does not take it.
    Busy
        Where too many photos are worked on; the same photo is taken in a little later.
    """
    if not DIGEST.fullmatch(sha):
        raise PhotoRefused(
            f"{sha[:80]!r} is not the SHA-256 of a photo; 64 hexadecimal digits are expected."
        )
    if not 0 < len(data) <= MOST_BYTES:
        raise PhotoRefused(
            f"The copy has {len(data) / 1e6:.1f} MB; 1 byte to {_MOST_MEGABYTES} MB are taken in."
        )
    decoded = decode(data)
    # Nothing here can be sure to show it, and a copy is made to be shown.
    if decoded.kind == "heic":
        raise PhotoRefused(
            "A copy is a JPEG, PNG or WebP picture; this one is HEIC. Send the original instead."
        )
    return _kept(sha, decoded, keep_copy(folder, sha, data, SUFFIXES[decoded.kind]))


def _has(path: Path, data: bytes) -> bool:
    """Whether a file holds exactly these bytes."""
    # Compared and not trusted by name: a file may have rotted, and is then written anew.
    return path.is_file() and path.stat().st_size == len(data) and path.read_bytes() == data


def _kept(sha: str, decoded: Decoded, new: bool) -> KeptPhoto:
    return KeptPhoto(sha, decoded.kind, decoded.width, decoded.height, decoded.taken_at, new)
