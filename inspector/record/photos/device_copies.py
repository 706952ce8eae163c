"""Copies of photos that devices made before the original could travel; nothing here can make them
again.

A file is `copies/<SHA-256 of the original>.<SHA-256 of the copy>.<kind>`: it names what it is a
copy of, and its own bytes can be checked. The first whole copy of a photo is kept and later ones
are not; it is shown until the original is here, and is kept after that too.
"""

import hashlib
import re
from pathlib import Path

from inspector.record import durable

NAME = re.compile(r"[0-9a-f]{64}\.([0-9a-f]{64})\.(jpg|png|webp)")


def keep_copy(folder: Path, sha: str, data: bytes, suffix: str) -> bool:
    """Keep a copy of a photo.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    sha : str
        The SHA-256 of the original.
    data : bytes
        The copy, decoded by the caller before.
    suffix : str
        The ending of its file: "jpg", "png" or "webp".

    Returns
    -------
    bool
        False where a whole copy is here already.

    Raises
    ------
    durable.NotWritten
        Where the disk does not take it.
    """
    if device_copy(folder, sha) is not None:
        return False
    (folder / "copies").mkdir(parents=True, exist_ok=True)
    durable.replace(folder / "copies" / f"{sha}.{hashlib.sha256(data).hexdigest()}.{suffix}", data)
    return True


def device_copy(folder: Path, sha: str) -> Path | None:
    """Find the first whole copy of a photo.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    sha : str
        The SHA-256 of the original.

    Returns
    -------
    Path or None
        None where there is no copy whose bytes are what its name says.
    """
    paths = sorted((folder / "copies").glob(f"{sha}.*"))
    return next((path for path in paths if _is_whole(path)), None)


def verify_copies(folder: Path) -> list[str]:
    """Hash every copy anew.

    Parameters
    ----------
    folder : Path
        The inspection's folder.

    Returns
    -------
    list of str
        One sentence for each file that is no longer what its name says.
    """
    paths = sorted((folder / "copies").glob("*"))
    named = [path for path in paths if not path.name.startswith(".")]
    return [
        f"copies/{path.name} is not a whole copy of a photo; it is not used."
        for path in named
        if not _is_whole(path)
    ]


def _is_whole(path: Path) -> bool:
    """Whether a file is named like a copy and its bytes have the digest in its name."""
    name = NAME.fullmatch(path.name)
    if name is None or not path.is_file():
        return False
    return hashlib.sha256(path.read_bytes()).hexdigest() == name[1]
