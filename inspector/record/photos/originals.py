"""The photos as they came: found, verified, and named where one is missing."""

import hashlib
import re
from collections.abc import Iterable
from pathlib import Path

from inspector.record.photos.device_copies import device_copy, verify_copies
from inspector.record.photos.picture_kind import SUFFIXES

DIGEST = re.compile(r"[0-9a-f]{64}")


def original(folder: Path, sha: str) -> Path | None:
    """Find the file with the original bytes of a photo.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    sha : str
        The photo's SHA-256.

    Returns
    -------
    Path or None
        None where the original is not here.
    """
    if not DIGEST.fullmatch(sha):
        return None
    candidates = (folder / "photos" / f"{sha}.{suffix}" for suffix in SUFFIXES.values())
    return next((path for path in candidates if path.is_file()), None)


def kept(folder: Path) -> list[str]:
    """Return the SHA-256 of every original that is here, by its name.

    Parameters
    ----------
    folder : Path
        The inspection's folder.

    Returns
    -------
    list of str
    """
    names = {path.stem for path in (folder / "photos").glob("*.*")}
    return sorted(name for name in names if DIGEST.fullmatch(name))


def verify(folder: Path) -> list[str]:
    """Hash every original and every device's copy anew.

    Parameters
    ----------
    folder : Path
        The inspection's folder.

    Returns
    -------
    list of str
        One sentence for each file that is no longer what its name says.
    """
    paths = sorted((folder / "photos").glob("*"))
    # A name with a leading dot is a file that is being written.
    faults = [_fault(path) for path in paths if not path.name.startswith(".")]
    return [fault for fault in faults if fault] + verify_copies(folder)


def _fault(path: Path) -> str:
    """What is wrong with a file among the originals, "" where nothing is."""
    if not DIGEST.fullmatch(path.stem) or path.suffix[1:] not in SUFFIXES.values():
        return f"photos/{path.name} is not named like a photo of ours; it is not used."
    if path.is_file() and hashlib.sha256(path.read_bytes()).hexdigest() == path.stem:
        return ""
    return (
        f"photos/{path.name} is damaged: its bytes no longer have the SHA-256 in its name. "
        "Restore it from a bundle or a backup."
    )


def missing(folder: Path, wanted: Iterable[str]) -> list[str]:
    """Name the photos whose original is not here.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    wanted : iterable of str
        The SHA-256 of every photo that entries mention.

    Returns
    -------
    list of str
        One sentence each, which says whether a device's copy takes its place.
    """
    absent = sorted(sha for sha in wanted if original(folder, sha) is None)
    return [_missing_sentence(folder, sha) for sha in absent]


def _missing_sentence(folder: Path, sha: str) -> str:
    has_copy = device_copy(folder, sha) is not None
    instead = "a copy takes its place" if has_copy else "nor is a copy"
    return f"The original of photo {sha[:12]}… is not here; {instead}."
