"""The file with the summary of an inspection, from which the list is made without opening it.

A summary is trusted only while its checksum fits and while nothing that it was made from has
changed: journals, checklists, program. It may be deleted at any time, and is then made again.
"""

import contextlib
import hashlib
import json
import os
import threading
import zlib
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Any

from inspector import __version__, places

FILE = Path("derived") / "summary.json"
# Rooms whose code decides what a summary says.
_ROOMS = ("assess", "checklists", "criteria", "record", "services", "values")
Row = dict[str, Any]


def mark_of_record(folder: Path) -> str:
    """Return what changes whenever the journals or checklists of an inspection change.

    Parameters
    ----------
    folder : Path
        The inspection's folder.

    Returns
    -------
    str
    """
    parts = [_facts(folder / part, ending) for part, ending in _RECORDED]
    return hashlib.sha256("\n\n".join(parts).encode()).hexdigest()


_RECORDED = (("journal", ".jsonl"), ("checklists", ".toml"))


def _facts(folder: Path, ending: str) -> str:
    """Name, size and times of each file: not only content, since reading it all takes too long."""
    # A program that carries folders sets the time of a file back to that of its source; the time
    # of the last change of its data on this disk cannot be set.
    files = []
    with contextlib.suppress(FileNotFoundError), os.scandir(folder) as found:
        for file in found:
            if file.name.endswith(ending):
                facts = file.stat()
                files.append((file.name, facts.st_size, facts.st_mtime_ns, facts.st_ctime_ns))
    files.sort()
    return repr(files)


@cache
def program_mark() -> str:
    """Return what changes whenever the code or the criteria that judge change.

    Returns
    -------
    str
    """
    lines = [__version__]
    for path in sorted(_code()):
        facts = path.stat()
        lines.append(f"{path.name} {facts.st_size} {facts.st_mtime_ns}")
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()


def _code() -> Iterable[Path]:
    for room in _ROOMS:
        yield from (places.PACKAGE / room).rglob("*.py")
    yield from (places.shipped("checklists") / "criteria").glob("*.toml")


def read(folder: Path, mark: str) -> Row | None:
    """Read the summary of an inspection.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    mark : str
        As `mark_of_record` gives it now.

    Returns
    -------
    dict or None
        None where there is none, or none to be trusted. One that an earlier program made still
        says what the vessel is called; it is marked as ``earlier``, and has no systems.
    """
    try:
        checksum, _, body = (folder / FILE).read_bytes().partition(b"\n")
        if checksum != _checksum(body):
            return None
        found = json.loads(body)
        if found["record"] != mark:
            return None
        row = found["row"]
    except (OSError, ValueError, LookupError, TypeError, RecursionError):
        return None
    if found.get("program") != program_mark():
        # An older program's names and dates still serve the list; its verdicts may not.
        return {**row, "systems": [], "earlier": True}
    return row


def write(folder: Path, mark: str, row: Row) -> None:
    """Keep the summary of an inspection; a folder that takes none is read anew the next time.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    mark : str
        As `mark_of_record` gave it before the inspection was read.
    row : dict
    """
    found = {"record": mark, "program": program_mark(), "row": row}
    body = json.dumps(found, ensure_ascii=False, separators=(",", ":")).encode()
    path = folder / FILE
    draft = path.with_name(f".{path.name}.{os.getpid()}-{threading.get_ident()}.new")
    try:
        path.parent.mkdir(exist_ok=True)
        # Not made durable: half a summary has another checksum, and is made again.
        draft.write_bytes(_checksum(body) + b"\n" + body)
        os.replace(draft, path)
    except OSError:
        with contextlib.suppress(OSError):
            draft.unlink(missing_ok=True)


def _checksum(body: bytes) -> bytes:
    return b"%08x" % zlib.crc32(body)
