"""Writing that survives a pulled plug: append with fsync, and replace as a whole.

All disk writes of the record go through here.
"""

import os
import threading
import time
from pathlib import Path

from inspector.values.errors import InspectorError

REPLACE_TRIES = 8
# Windows translates line ends unless a file is opened as binary; other systems have no such flag.
_BINARY = getattr(os, "O_BINARY", 0)
_NEWLINE = b"\n"


class NotWritten(InspectorError):
    """The disk did not take it; nothing was acknowledged."""


def sync_folder(folder: Path) -> None:
    """Make a new or renamed name in a folder durable, where the system can.

    Parameters
    ----------
    folder : Path
        Nothing is done on Windows, which cannot and need not.
    """
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def sync_file(path: Path) -> None:
    """Make the content of a file durable, whoever wrote it.

    Parameters
    ----------
    path : Path
        Nothing is done where there is no such file.

    Raises
    ------
    OSError
        Where the disk refuses.
    """
    try:
        # Writable, since Windows flushes no file that was opened for reading.
        handle = os.open(path, os.O_RDWR | _BINARY)
    except FileNotFoundError:
        return
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def open_for_appending(path: Path) -> int:
    """Open a file, or begin it, so that everything is written to its end.

    Parameters
    ----------
    path : Path
        Its folder must exist.

    Returns
    -------
    int
        A handle of the system, to be closed by the caller.
    """
    return os.open(path, os.O_RDWR | os.O_CREAT | os.O_APPEND | _BINARY, 0o644)


def ends_in_half_a_line(handle: int) -> bool:
    """Tell whether a file has content that does not end in a newline.

    Parameters
    ----------
    handle : int
        An open file; its position is changed.

    Returns
    -------
    bool
    """
    size = os.lseek(handle, 0, os.SEEK_END)
    if size == 0:
        return False
    os.lseek(handle, size - 1, os.SEEK_SET)
    return os.read(handle, 1) != _NEWLINE


def append(handle: int, data: bytes) -> None:
    """Append all of `data` to an open file and fsync it once.

    Parameters
    ----------
    handle : int
        A file opened by `open_for_appending`.
    data : bytes

    Raises
    ------
    NotWritten
        The file is then cut back to where it was, as far as the disk lets us.
    """
    start = os.lseek(handle, 0, os.SEEK_END)
    try:
        _write_all(handle, data)
    except OSError as problem:
        _cut_back(handle, start)
        raise NotWritten(
            f"The disk did not take the entry ({_plain(problem)}); it is not kept here. "
            "Free some space, then try again."
        ) from problem


def _write_all(handle: int, data: bytes) -> None:
    """Write and fsync; the system may take only a part at a time."""
    rest = memoryview(data)
    while rest:
        rest = rest[os.write(handle, rest) :]
    os.fsync(handle)


def _cut_back(handle: int, length: int) -> None:
    """Remove what a failed write may have left, where the disk still lets us."""
    try:
        os.ftruncate(handle, length)
    except OSError:
        # The half line stays; its checksum does not fit, so that it is named and left out on
        # reading.
        return


def replace(path: Path, data: bytes, mode: int = 0o644) -> None:
    """Write a file as a whole: sibling, fsync, rename over the old one, fsync the folder.

    Parameters
    ----------
    path : Path
        Holds the old content or the new, never half.
    data : bytes
    mode : int
        The rights of a new file.

    Raises
    ------
    NotWritten
        The old content is then still there.
    """
    sibling = path.with_name(f".{path.name}.{os.getpid()}-{threading.get_ident()}.new")
    try:
        _write_new(sibling, data, mode)
        _rename(sibling, path)
        sync_folder(path.parent)
    except OSError as problem:
        sibling.unlink(missing_ok=True)
        raise NotWritten(
            f"{path.name} could not be written ({_plain(problem)}); the earlier one is still "
            "there. Free some space, then try again."
        ) from problem


def _write_new(path: Path, data: bytes, mode: int) -> None:
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_TRUNC | _BINARY, mode)
    try:
        _write_all(handle, data)
    finally:
        os.close(handle)


def _rename(source: Path, target: Path) -> None:
    # On Windows a virus scanner or indexer may keep the target open for a moment; elsewhere the
    # first try succeeds.
    for attempt in range(REPLACE_TRIES):
        try:
            os.replace(source, target)
            return
        except PermissionError:
            if os.name != "nt" or attempt == REPLACE_TRIES - 1:
                raise
            time.sleep(0.02 * 2**attempt)


def _plain(problem: OSError) -> str:
    """What the system says, to be put into a sentence."""
    return (problem.strerror or str(problem)).lower()
