"""What killed writes left behind: half-written files, and folders of imports and beginnings.

A file that somebody is writing at this moment is never touched: its name holds the process that
writes it, and what is younger than an hour is left alone.
"""

import os
import re
import shutil
import time
from collections.abc import Iterator
from pathlib import Path

# As `durable.replace` and `bundle.write` name what they write, before it gets its own name.
_DRAFT = re.compile(r"\..+\.(\d+)(-\d+)?\.new")
_FOLDERS = (".quarantine-", ".checklists")
# No write of ours takes so long, whatever process number it has.
OLD = 86_400  # seconds
YOUNG = 3_600  # seconds


def clear(data: Path, moment: float | None = None) -> list[Path]:
    """Remove what killed writes left in a data folder.

    Parameters
    ----------
    data : Path
        The data folder.
    moment : float, optional
        Now, in seconds since 1970.

    Returns
    -------
    list of Path
        What was removed; what the disk does not let go stays for the next time.
    """
    moment = time.time() if moment is None else moment
    return [path for path in _candidates(data) if _is_left(path, moment) and _removed(path)]


def _candidates(data: Path) -> Iterator[Path]:
    """Every file and folder whose name says that it is a draft."""
    inspections = list((data / "inspections").glob("*"))
    for folder in (data, data / "tls", data / "inspections", data / "quarantine", *inspections):
        yield from _drafts_in(folder)
    for folder in inspections:
        for part in ("journal", "photos", "copies", "derived", "refused", "checklists"):
            yield from _drafts_in(folder / part)


def _drafts_in(folder: Path) -> Iterator[Path]:
    """The drafts directly in a folder; in the quarantine of the web pages everything is one."""
    try:
        with os.scandir(folder) as found:
            names = [entry.name for entry in found]
    except OSError:
        return
    for name in names:
        is_draft = _DRAFT.fullmatch(name) or name.startswith(_FOLDERS)
        # In quarantine everything is a draft, whatever it is called.
        if is_draft or folder.name == "quarantine":
            yield folder / name


def _is_left(path: Path, moment: float) -> bool:
    """Whether nobody can be writing it any more."""
    try:
        age = moment - path.stat().st_mtime
    except OSError:
        return False
    if age > OLD:
        return True
    match = _DRAFT.fullmatch(path.name)
    # Not at once: a process may just have begun with the same number, on another computer that sees
    # this folder.
    return age > YOUNG and match is not None and not _runs(int(match[1]))


def _runs(process: int) -> bool:
    """Whether a process of that number runs on this computer."""
    # On Windows the same call would end the process.
    if os.name == "nt":
        return True
    try:
        os.kill(process, 0)
    except (ProcessLookupError, OverflowError):
        return False
    # Somebody else's process: it runs.
    except PermissionError:
        return True
    return True


def _removed(path: Path) -> bool:
    try:
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path)
        else:
            path.unlink()
    except OSError:
        return False
    return True
