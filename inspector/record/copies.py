"""Copies of photos that devices made before the original could travel. Kept as recorded things, since nothing here can make them again.

A file is `copies/<SHA-256 of the original>.<SHA-256 of the copy>.<kind>`: it says what it stands for, and its own bytes can be checked. The first whole copy
of a photo is kept and later ones are passed over; it is used for thumbnails and report until the original is here, and stays.
"""

import hashlib
import re
from pathlib import Path

from inspector.record import durable

NAME = re.compile(r"[0-9a-f]{64}\.[0-9a-f]{64}\.(jpg|png|webp)")


def keep(folder: Path, sha: str, data: bytes, suffix: str) -> bool:
    """Keep a copy of the photo `sha`; False where a whole one is here. `data` was looked at by the caller. durable.NotWritten as usual."""
    if copy(folder, sha) is not None:
        return False
    (folder / "copies").mkdir(parents=True, exist_ok=True)
    durable.replace(folder / "copies" / f"{sha}.{hashlib.sha256(data).hexdigest()}.{suffix}", data)
    return True


def copy(folder: Path, sha: str) -> Path | None:
    """The first copy of the photo `sha` whose bytes are what its name says, or None."""
    return next((path for path in sorted((folder / "copies").glob(f"{sha}.*")) if is_whole(path)), None)


def is_whole(path: Path) -> bool:
    """Whether a file is named like a copy and its bytes have the digest in its name."""
    return bool(NAME.fullmatch(path.name)) and path.is_file() and hashlib.sha256(path.read_bytes()).hexdigest() == path.name[65:129]


def verify(folder: Path) -> list[str]:
    """One sentence for each file among the copies that is no longer what its name says."""
    found = (path for path in sorted((folder / "copies").glob("*")) if not path.name.startswith("."))
    return [f"copies/{path.name} is not a whole copy of a photo; it is not used." for path in found if not is_whole(path)]
