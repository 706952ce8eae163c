"""One running instance per data folder: a lock that the system releases when the process dies."""

import os
from pathlib import Path
from typing import IO

from inspector.values.errors import InspectorError

LOCK_FILE = "held-by"


class FolderInUse(InspectorError):
    """Another running instance uses the data folder."""


def lock_folder(folder: Path) -> IO[str]:
    """Lock a data folder until the returned file is closed or the process ends.

    Parameters
    ----------
    folder : Path
        Made where it is not there yet.

    Returns
    -------
    file
        To be kept open as long as the folder is used.

    Raises
    ------
    FolderInUse
        Where another instance has it.
    """
    make_private(folder)
    # It must stay open to keep the lock.
    file = open(folder / LOCK_FILE, "a+", encoding="utf-8")  # noqa: SIM115
    try:
        _lock(file)
    except OSError as problem:
        file.close()
        raise FolderInUse(
            f"The data folder {folder} is in use by another running inspector. Use that one, stop "
            "it, or name another folder with --data."
        ) from problem
    file.seek(0)
    file.truncate()
    file.write(f"{os.getpid()}\n")
    file.flush()
    return file


def make_private(folder: Path) -> None:
    """Make a folder that only its owner may enter.

    Parameters
    ----------
    folder : Path
        One that exists keeps the rights that somebody gave it.
    """
    folder.parent.mkdir(parents=True, exist_ok=True)
    folder.mkdir(mode=0o700, exist_ok=True)


if os.name == "nt":
    import msvcrt

    def _lock(file: IO[str]) -> None:
        # The locked byte is far beyond the text, since Windows also forbids reading a locked one.
        file.seek(1 << 20)
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _lock(file: IO[str]) -> None:
        fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
