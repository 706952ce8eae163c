"""A data folder is held by one running instance: a lock file that the system itself lets go of when the process dies."""

import os
from pathlib import Path
from typing import IO

from inspector.errors import InspectorError


class FolderHeld(InspectorError):
    """Another running instance holds the data folder."""


def hold(folder: Path) -> IO[str]:
    """Hold `folder` until the returned file is closed or the process ends; FolderHeld if another instance has it."""
    make_private(folder)
    file = open(folder / "held-by", "a+", encoding="utf-8")  # noqa: SIM115  (it must stay open to hold)
    try:
        _lock(file)
    except OSError as problem:
        file.close()
        raise FolderHeld(
            f"The data folder {folder} is in use by another running inspector. Use that one, stop it, or name another folder with --data."
        ) from problem
    file.seek(0)
    file.truncate()
    file.write(f"{os.getpid()}\n")
    file.flush()
    return file


def make_private(folder: Path) -> None:
    """Make a folder that only its owner may enter; one that exists keeps the rights that somebody gave it."""
    folder.parent.mkdir(parents=True, exist_ok=True)
    folder.mkdir(mode=0o700, exist_ok=True)


if os.name == "nt":
    import msvcrt

    def _lock(file: IO[str]) -> None:
        # The locked byte lies far beyond the text, since Windows also forbids reading a locked one.
        file.seek(1 << 20)
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _lock(file: IO[str]) -> None:
        fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
