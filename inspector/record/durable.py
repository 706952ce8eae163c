"""Writing that survives a pulled plug: append with fsync, and replace as a whole. All disk writes of the record go through here."""

import os
import threading
import time
from pathlib import Path

from inspector.errors import InspectorError

REPLACE_TRIES = 8


class NotWritten(InspectorError):
    """The disk did not take it; nothing was acknowledged."""


def sync_folder(folder: Path) -> None:
    """Make a new or renamed name in `folder` durable, where the system can (Windows cannot and need not)."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def sync_file(path: Path) -> None:
    """Make what stands in a file durable, whoever wrote it; nothing where there is no such file. OSError where the disk refuses."""
    try:
        handle = os.open(path, os.O_RDWR | getattr(os, "O_BINARY", 0))
    except FileNotFoundError:
        return
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def append(handle: int, data: bytes) -> None:
    """Append all of `data` to an open file and fsync it once.

    On failure the file is cut back to where it was, as far as the disk lets us, and NotWritten tells why.
    """
    start = os.lseek(handle, 0, os.SEEK_END)
    try:
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest):]
        os.fsync(handle)
    except OSError as problem:
        _cut_back(handle, start)
        raise NotWritten(f"The disk did not take the entry ({_plain(problem)}); it is not kept here. Free some space, then try again.") from problem


def _cut_back(handle: int, length: int) -> None:
    try:
        os.ftruncate(handle, length)
    except OSError:
        # The half line stays; its checksum will not fit, so reading names it and passes over it.
        return


def replace(path: Path, data: bytes, mode: int = 0o644) -> None:
    """Write a file as a whole: sibling, fsync, rename over the old one, fsync the folder. Old or new, never half."""
    sibling = path.with_name(f".{path.name}.{os.getpid()}-{threading.get_ident()}.new")
    try:
        handle = os.open(sibling, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | getattr(os, "O_BINARY", 0), mode)
        try:
            rest = memoryview(data)
            while rest:
                rest = rest[os.write(handle, rest):]
            os.fsync(handle)
        finally:
            os.close(handle)
        _rename(sibling, path)
        sync_folder(path.parent)
    except OSError as problem:
        sibling.unlink(missing_ok=True)
        raise NotWritten(f"{path.name} could not be written ({_plain(problem)}); the earlier one still stands. Free some space, then try again.") from problem


def _rename(source: Path, target: Path) -> None:
    # On Windows a virus scanner or indexer may hold the target for a moment; elsewhere the first try succeeds.
    for attempt in range(REPLACE_TRIES):
        try:
            os.replace(source, target)
            return
        except PermissionError:
            if os.name != "nt" or attempt == REPLACE_TRIES - 1:
                raise
            time.sleep(0.02 * 2**attempt)


def _plain(problem: OSError) -> str:
    return (problem.strerror or str(problem)).lower()
