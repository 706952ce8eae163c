"""The journal: append, read, recover. The only code that touches a journal file.

A line is `{"sum":"<crc32 of the entry's bytes>","entry":{...}}`: valid JSON by itself, and
checkable before it is parsed. Each computer writes only its own file; reading takes the union of
all files in the folder.
"""

import json
import os
import re
import threading
import zlib
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inspector.record import durable
from inspector.record.entry import ID, Entry, EntryRefused, from_dict, to_json

_HEAD = b'{"sum":"'
_MIDDLE = b'","entry":'
_SUM_END = len(_HEAD) + 8
_BODY = _SUM_END + len(_MIDDLE)
_LOST_ID = re.compile(rb'"id":"(' + ID.pattern.encode() + rb')","at":')
_BYTE_ORDER_MARK = b"\xef\xbb\xbf"


@dataclass(frozen=True)
class Lost:
    """What a damaged line still says of an entry in it; either may be damaged too.

    Parameters
    ----------
    entry_id : str
        "" where no id can be read.
    checksum : str
        The eight signs that were written as its checksum.
    """

    entry_id: str
    checksum: str

    def is_entry(self, entry: Entry | None) -> bool:
        """Tell whether this is what was written of an entry that is whole elsewhere."""
        if entry is None:
            return False
        # One sign may differ: the checksum itself may be what was damaged.
        pairs = zip(self.checksum, _checksum(to_json(entry).encode()).decode(), strict=False)
        return sum(one == other for one, other in pairs) >= 7


@dataclass(frozen=True)
class Damage:
    """A line that cannot be trusted.

    Parameters
    ----------
    file : str
        Name of the journal file.
    line : int
        Number of the line, from 1; 0 for the file as a whole.
    what : str
        What is wrong.
    lost : tuple of Lost
        The entries that were written there and cannot be read.
    """

    file: str
    line: int
    what: str
    lost: tuple[Lost, ...] = ()

    def __str__(self) -> str:
        place = f"{self.file}, line {self.line}" if self.line else self.file
        return f"{place}: {self.what}"


@dataclass
class JournalContents:
    """What is in a folder of journal files.

    Parameters
    ----------
    entries : dict of str to Entry
        The whole entries by id, in the order of reading.
    damage : list of Damage
    """

    entries: dict[str, Entry] = field(default_factory=dict)
    damage: list[Damage] = field(default_factory=list)


def to_line(entry: Entry) -> bytes:
    """Write an entry as one line with its checksum.

    Parameters
    ----------
    entry : Entry

    Returns
    -------
    bytes
        With its newline.
    """
    body = to_json(entry).encode("utf-8")
    return _HEAD + _checksum(body) + _MIDDLE + body + b"}\n"


def from_line(line: bytes) -> Entry:
    """Read an entry from a line.

    Parameters
    ----------
    line : bytes
        Without its newline.

    Returns
    -------
    Entry

    Raises
    ------
    EntryRefused
        With what is wrong with it.
    """
    if not line.startswith(_HEAD) or line[_SUM_END:_BODY] != _MIDDLE or not line.endswith(b"}"):
        raise EntryRefused("is not a whole journal line")
    # The checksum is over the bytes as written: JSON made anew might differ in spaces or order.
    body = line[_BODY:-1]
    if _checksum(body) != line[len(_HEAD) : _SUM_END]:
        raise EntryRefused("its checksum does not fit")
    try:
        return from_dict(_parsed(body.decode("utf-8")))
    except (ValueError, RecursionError) as problem:
        raise EntryRefused("its entry is not readable JSON") from problem


def _parsed(text: str) -> Any:
    """What `json.loads` gives, in half its time for the lines that we write ourselves."""
    try:
        found, end = _SCAN(text, 0)
    except StopIteration:
        end = -1
    # Blanks around it, or more than one value.
    return found if end == len(text) else json.loads(text)


_SCAN = json.JSONDecoder().scan_once


def lines_of(data: bytes) -> list[bytes]:
    """Split a journal's bytes into lines, whatever an editor made of the line ends.

    Parameters
    ----------
    data : bytes

    Returns
    -------
    list of bytes
        Without line ends; an entry's own line breaks are escaped, so it never spans two lines.
    """
    if b"\r" in data:
        data = data.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    return [line.rstrip(b" \t") for line in data.removeprefix(_BYTE_ORDER_MARK).split(b"\n")]


def _lost_in(line: bytes) -> tuple[Lost, ...]:
    """The entries that a damaged line held; a line torn by a pulled plug held none."""
    # Half a line was never acknowledged, so its number may be given again. A whole one ends in
    # "]}}", of which a flipped bit leaves two signs.
    if line[-4:].count(b"}") + line[-4:].count(b"]") < 2:
        return ()
    # A damaged line end joins two lines.
    parts = line.split(_HEAD)
    return tuple(map(_lost_entry, parts[1:] if len(parts) > 1 else parts))


def _lost_entry(part: bytes) -> Lost:
    found = _LOST_ID.search(part)
    return Lost(found[1].decode() if found else "", part[:8].decode("ascii", "replace"))


def _checksum(body: bytes) -> bytes:
    return b"%08x" % zlib.crc32(body)


def read_file(path: Path, into: JournalContents) -> None:
    """Read one file: whole entries are taken, every damaged line is named, nothing else is lost.

    Parameters
    ----------
    path : Path
    into : JournalContents
        Where entries and damage are added.
    """
    for number, line in enumerate(lines_of(path.read_bytes()), 1):
        if not line:
            continue
        try:
            entry = from_line(line)
        except EntryRefused as problem:
            into.damage.append(Damage(path.name, number, str(problem), _lost_in(line)))
            continue
        # The first of two contents counts, on every computer that reads the same files in order.
        known = into.entries.setdefault(entry.id, entry)
        if known is not entry and known != entry:
            what = f"the entry {entry.id} is also here with other content; the first one is used"
            into.damage.append(Damage(path.name, number, what))


def read_folder(folder: Path) -> JournalContents:
    """Read every journal file of a folder as one union.

    Parameters
    ----------
    folder : Path

    Returns
    -------
    JournalContents
    """
    reading = JournalContents()
    for path in sorted(folder.glob("*.jsonl")):
        read_file(path, reading)
    return reading


class Journal:
    """The one file that this computer appends to. Thread-safe.

    An entry is acknowledged when `append` returns.
    """

    def __init__(self, path: Path):
        self.path = path
        self._handle: int | None = None
        self._lock = threading.Lock()

    def append(self, entries: Iterable[Entry]) -> int:
        """Write entries with one fsync for all of them.

        Returns
        -------
        int
            How many bytes were written.

        Raises
        ------
        durable.NotWritten
            If the disk does not take them; then none counts.
        """
        data = b"".join(map(to_line, entries))
        if not data:
            return 0
        with self._lock:
            handle = self._ready()
            try:
                durable.append(handle, data)
            except durable.NotWritten:
                # Half a line may be left there; opening anew ends it, so that the next entry is not
                # glued to it.
                self._let_go()
                raise
        return len(data)

    def secure(self) -> None:
        """Open the file and fsync its content: a process killed before its fsync may have left
        lines.

        Raises
        ------
        durable.NotWritten
            Where that fails.
        """
        with self._lock:
            handle = self._ready()
            try:
                os.fsync(handle)
            except OSError as problem:
                self._let_go()
                raise durable.NotWritten(
                    f"The journal {self.path} cannot be made durable: {problem.strerror}."
                ) from problem

    def _ready(self) -> int:
        """The open file, opened anew where another one has taken its place."""
        # A backup put back, or a program that carries folders, may have put another file in this
        # one's place: what is written now must not go to the old one.
        if self._handle is not None and not _is_file_of(self.path, self._handle):
            self._let_go()
        if self._handle is None:
            self._handle = self._open()
        return self._handle

    def _open(self) -> int:
        handle = None
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            handle = durable.open_for_appending(self.path)
            durable.sync_folder(self.path.parent)
            # A line torn by a pulled plug is kept as evidence; the next one must not be glued to
            # it.
            if durable.ends_in_half_a_line(handle):
                os.write(handle, b"\n")
        except OSError as problem:
            if handle is not None:
                os.close(handle)
            raise durable.NotWritten(
                f"The journal {self.path} cannot be opened for writing: {problem.strerror}."
            ) from problem
        return handle

    def close(self) -> None:
        """Close the file."""
        with self._lock:
            self._let_go()

    def __del__(self) -> None:
        # An inspection that nobody works on any more is simply let go.
        self._let_go()

    def _let_go(self) -> None:
        if self._handle is not None:
            os.close(self._handle)
            self._handle = None


def _is_file_of(path: Path, handle: int) -> bool:
    """Whether a handle is still the file of that name."""
    try:
        return os.path.samestat(os.fstat(handle), os.stat(path))
    except FileNotFoundError:
        return False
