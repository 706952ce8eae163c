"""The journal: append, read, recover. The only code that touches a journal file.

A line is `{"sum":"<crc32 of the entry's bytes>","entry":{...}}`: valid JSON by itself, and checkable before it is parsed.
Each computer writes only its own file; reading takes the union of all files in the folder.
"""

import json
import os
import threading
import zlib
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

from inspector.record import durable
from inspector.record.entry import Entry, EntryRefused, from_dict, to_json

_HEAD = b'{"sum":"'
_MIDDLE = b'","entry":'
_SUM_END = len(_HEAD) + 8
_BODY = _SUM_END + len(_MIDDLE)


@dataclass(frozen=True)
class Damage:
    """A line that cannot be trusted: file, line number from 1, what is wrong."""

    file: str
    line: int
    what: str

    def __str__(self) -> str:
        return f"{self.file}, line {self.line}: {self.what}"


@dataclass
class Reading:
    """What a folder of journal files holds: the whole entries by id, in reading order, and the damage."""

    entries: dict[str, Entry] = field(default_factory=dict)
    damage: list[Damage] = field(default_factory=list)


def to_line(entry: Entry) -> bytes:
    """The entry as one line with its checksum."""
    body = to_json(entry).encode("utf-8")
    return _HEAD + b"%08x" % zlib.crc32(body) + _MIDDLE + body + b"}\n"


def from_line(line: bytes) -> Entry:
    """One line (without its newline) back to an entry; EntryRefused says what is wrong with it."""
    if not line.startswith(_HEAD) or line[_SUM_END:_BODY] != _MIDDLE or not line.endswith(b"}"):
        raise EntryRefused("is not a whole journal line")
    body = line[_BODY:-1]
    if b"%08x" % zlib.crc32(body) != line[len(_HEAD):_SUM_END]:
        raise EntryRefused("its checksum does not fit")
    try:
        return from_dict(json.loads(body))
    except (ValueError, RecursionError) as problem:
        raise EntryRefused("its entry is not readable JSON") from problem


def read_file(path: Path, into: Reading) -> None:
    """Read one file into `into`: whole entries are taken, every damaged line is named, nothing else is lost."""
    for number, line in enumerate(path.read_bytes().split(b"\n"), 1):
        if not line:
            continue
        try:
            entry = from_line(line)
        except EntryRefused as problem:
            into.damage.append(Damage(path.name, number, str(problem)))
            continue
        known = into.entries.setdefault(entry.id, entry)
        if known != entry:
            into.damage.append(Damage(path.name, number, f"the entry {entry.id} stands elsewhere with other content; the first one is used"))


def read_folder(folder: Path) -> Reading:
    """Read every journal file of a folder as one union."""
    reading = Reading()
    for path in sorted(folder.glob("*.jsonl")):
        read_file(path, reading)
    return reading


class Journal:
    """The one file that this computer appends to. Thread-safe; an entry is acknowledged when `append` returns."""

    def __init__(self, path: Path):
        self.path = path
        self._handle: int | None = None
        self._lock = threading.Lock()

    def append(self, entries: Iterable[Entry]) -> None:
        """Write entries with one fsync for all of them; durable.NotWritten if the disk does not take them (then none counts)."""
        data = b"".join(map(to_line, entries))
        if not data:
            return
        with self._lock:
            handle = self._ready()
            try:
                durable.append(handle, data)
            except durable.NotWritten:
                # Half a line may have stayed behind; opening anew ends it, so that the next entry is not glued to it.
                os.close(self._handle)
                self._handle = None
                raise

    def secure(self) -> None:
        """Open the file and fsync what stands in it (a process killed before its fsync may have left lines); durable.NotWritten where that fails."""
        with self._lock:
            handle = self._ready()
            try:
                os.fsync(handle)
            except OSError as problem:
                os.close(self._handle)
                self._handle = None
                raise durable.NotWritten(f"The journal {self.path} cannot be made durable: {problem.strerror}.") from problem

    def _ready(self) -> int:
        # A backup put back, or a program that carries folders, may have put another file in this one's place: what is written now must not go to the old one.
        if self._handle is not None and not _bears(self.path, self._handle):
            os.close(self._handle)
            self._handle = None
        if self._handle is None:
            self._handle = self._open()
        return self._handle

    def _open(self) -> int:
        handle = None
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            handle = os.open(self.path, os.O_RDWR | os.O_CREAT | os.O_APPEND | getattr(os, "O_BINARY", 0), 0o644)
            durable.sync_folder(self.path.parent)
            self._end_torn_line(handle)
        except OSError as problem:
            if handle is not None:
                os.close(handle)
            raise durable.NotWritten(f"The journal {self.path} cannot be opened for writing: {problem.strerror}.") from problem
        return handle

    @staticmethod
    def _end_torn_line(handle: int) -> None:
        # A line torn by a pulled plug stays as it is, as evidence; the next one must only not be glued to it.
        size = os.lseek(handle, 0, os.SEEK_END)
        if size:
            os.lseek(handle, size - 1, os.SEEK_SET)
            if os.read(handle, 1) != b"\n":
                os.write(handle, b"\n")

    def close(self) -> None:
        """Let go of the file."""
        with self._lock:
            if self._handle is not None:
                os.close(self._handle)
                self._handle = None


def _bears(path: Path, handle: int) -> bool:
    try:
        return os.path.samestat(os.fstat(handle), os.stat(path))
    except FileNotFoundError:
        return False
