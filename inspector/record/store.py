"""One inspection on disk, open for reading and recording; and the folder of all inspections.

An inspection is held in memory as its folded state; every accepted entry is on disk before it is in that state.
"""

import re
import secrets
import shutil
import threading
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, nullcontext, suppress
from dataclasses import dataclass, field
from itertools import islice
from pathlib import Path
from typing import Any

from inspector.errors import InspectorError
from inspector.record import durable
from inspector.record.entry import Entry, EntryRefused, from_dict, now
from inspector.record.journal import Damage, Journal, Reading, read_file
from inspector.record.numbers import Counted
from inspector.record.refusals import Refusals
from inspector.record.state import State, same

INSPECTION_ID = re.compile(r"[a-z0-9][a-z0-9-]{0,59}")


class NoSuchInspection(InspectorError):
    """There is no inspection of that id."""


@dataclass
class Fates:
    """What became of each entry handed over: id -> "stored", "already had" or "refused: <sentence>"; and the new entries."""

    fates: dict[str, str] = field(default_factory=dict)
    stored: list[Entry] = field(default_factory=list)


class Inspection:
    """One inspection's folder. `host` names this computer's own journal file and device."""

    def __init__(self, folder: Path, host: str):
        self.folder, self.host, self.id = folder, host, folder.name
        self.epoch = secrets.token_hex(4)
        self.lock = threading.RLock()
        self._journal = Journal(folder / "journal" / f"{host}.jsonl")
        self._refusals = Refusals(folder / "refused", host)
        self._marks: dict[str, tuple] = {}
        self._damage: dict[str, list[Damage]] = {}
        self._known: dict[str, Entry] = {}
        self._counted = Counted()
        # Not settled: own lines may stand in the file that no fsync of ours covers. Doubt: a failed write may have left whole lines there.
        self._settled, self._doubt = False, False
        self.entries: list[Entry] = []
        self.state = State()
        # A process killed before its fsync may have left lines: they are made durable before they are shown. A folder that can only be read is shown as it is.
        with suppress(OSError):
            durable.sync_file(self._journal.path)
        self.refresh()

    @property
    def damage(self) -> list[Damage]:
        """Every line that cannot be trusted, by file."""
        with self.lock:
            return [one for name in sorted(self._damage) for one in self._damage[name]]

    def refresh(self) -> None:
        """Read the journal files that changed since they were last read: a file-synchronising program or a bundle may have brought lines in."""
        with self.lock:
            # The own file first: where two files give an id different contents, the first one read is used.
            for path in sorted((self.folder / "journal").glob("*.jsonl"), key=lambda path: (path != self._journal.path, path.name)):
                if path != self._journal.path or not self._doubt:
                    self._read_if_changed(path)

    def _read_if_changed(self, path: Path) -> None:
        try:
            mark = _mark(path)
            if self._marks.get(path.name) == mark:
                return
            before, reading = len(self._known), Reading(self._known)
            read_file(path, reading)
        except FileNotFoundError:
            return  # renamed away in this very moment; what was read of it stays
        self._marks[path.name], self._damage[path.name] = mark, reading.damage
        self._fold(list(islice(self._known.values(), before, None)))

    def take_in(self, raw: Iterable[Any], only: str = "", origin: str = "") -> Fates:
        """Take entries (parsed JSON) from any device; one fsync for all new ones, acknowledged only once on disk.

        only: the one device whose new entries are taken ("" for any); origin: who hands over, told beside what is refused.
        Raises durable.NotWritten where the disk does not take them; then none of them counts.
        """
        result, fresh, refused = Fates(), {}, []
        with self.lock:
            self._settle()
            for number, data in enumerate(raw, 1):
                try:
                    entry = from_dict(data)
                    known = self._known.get(entry.id) or fresh.get(entry.id)
                    self._refuse_strange(entry, known, only)
                    if known is None:
                        fresh[entry.id] = entry
                    result.fates.setdefault(entry.id, "already had" if known else "stored")
                except EntryRefused as problem:
                    result.fates[problem.entry_id or f"number {number}"] = f"refused: {problem}"
                    refused.append((data, str(problem)))
            self._keep(list(fresh.values()))
            if refused:
                self._refusals.keep(refused, origin)
        result.stored = list(fresh.values())
        return result

    def _refuse_strange(self, entry: Entry, known: Entry | None, only: str) -> None:
        if known is not None and known != entry:
            raise EntryRefused(f"Another entry with the id {entry.id} is already kept; this one has other content.", entry.id)
        if known is None and only and entry.device != only:
            raise EntryRefused(f"{entry.id} is an entry of {entry.device}; {only} may hand over only its own. Let {entry.device} hand it over.", entry.id)

    def say(self, who: str, changes: Iterable[tuple[str, str, Any]], seen: Callable[[str, str], list[str]] | None = None,
            settles: bool = False) -> list[Entry]:
        """Record (subject, field, value) changes made on this computer; unchanged values make no entry.

        seen: tells which heads the author saw (their ids); by default those that stand now. settles: the author was shown a disagreement and ends
        it, so that a value equal to the newest answer is an entry too.
        Where the disk does not take them (durable.NotWritten) the numbers are given to the next entries: no hole is left.
        """
        with self.lock:
            self._settle()
            entries, last = [], self._counted.highest(self.host)
            for subject, name, value in changes:
                if same(self.state.value(subject, name), value) and not (settles and self.state.disputed(subject, name)):
                    continue
                heads = seen(subject, name) if seen else [entry.id for entry in self.state.heads(subject, name)]
                raw = {"id": f"{self.host}:{last + len(entries) + 1}", "at": now(), "device": self.host, "who": who, "subject": subject, "field": name,
                       "value": value, "replaces": heads}
                entries.append(from_dict(raw))
            self._keep(entries)
            return entries

    def _settle(self) -> None:
        # A number may be given again only if nothing with that number can be on the disk. Half a line can never become whole. A whole line that a failed
        # write left behind might survive a pulled plug or not: it is written once more, with an fsync that succeeds, and from then on counts as said.
        self.refresh()
        if self._settled:
            return
        self._journal.secure()
        if self._doubt:
            reading = Reading()
            read_file(self._journal.path, reading)
            left = [entry for entry in reading.entries.values() if entry.id not in self._known]
            self._journal.append(left)
            self._doubt = False
            self.refresh()
        self._settled = True

    @contextmanager
    def written_to(self) -> Iterator[None]:
        """While this is entered, a bundle is appended to the own file; afterwards that is seen, and where it failed nothing is glued to it."""
        with self.lock:
            try:
                yield
            except BaseException:
                self._journal.close()
                self._settled, self._doubt = False, True
                raise
            self._settle()

    def _keep(self, entries: list[Entry]) -> None:
        if not entries:
            return
        try:
            self._journal.append(entries)
        except durable.NotWritten:
            self._settled, self._doubt = False, True
            raise
        self._marks[self._journal.path.name] = _mark(self._journal.path)
        self._known.update((entry.id, entry) for entry in entries)
        self._fold(entries)

    def _fold(self, entries: list[Entry]) -> None:
        for entry in entries:
            self.entries.append(entry)
            self._counted.add(entry.device, entry.number)
            self.state.add(entry)

    def since(self, position: int) -> list[Entry]:
        """The entries taken in after `position` (a count, valid within one `epoch`), those that other computers' files brought included."""
        with self.lock:
            self.refresh()
            return self.entries[position:]

    def held(self) -> dict[str, int]:
        """Device -> the highest number up to which every entry is here."""
        with self.lock:
            return self._counted.held()

    def missing(self) -> dict[str, list[int]]:
        """Device -> numbers below its highest that are not here, at most 200 of each; {} where nothing is missing."""
        with self.lock:
            return self._counted.missing()

    def refused(self) -> list[dict[str, Any]]:
        """What was refused here: {"at", "from", "why", "entry"} each, oldest first; `entry` is what was handed over, whatever it was."""
        with self.lock:
            return self._refusals.all()

    def close(self) -> None:
        """Let go of the journal file."""
        self._journal.close()


def _mark(path: Path) -> tuple:
    facts = path.stat()
    return facts.st_ino, facts.st_size, facts.st_mtime_ns


class Inspections:
    """The folder of all inspections; each is opened once and kept open."""

    def __init__(self, folder: Path, host: str):
        self.folder, self.host = folder, host
        self._open: dict[str, Inspection] = {}
        self._lock = threading.RLock()

    def ids(self) -> list[str]:
        """Ids of all inspections, by name."""
        return sorted(path.parent.name for path in self.folder.glob("*/checklists") if INSPECTION_ID.fullmatch(path.parent.name))

    def get(self, inspection_id: str) -> Inspection:
        """The inspection of that id; NoSuchInspection with one sentence otherwise."""
        with self._lock:
            if inspection_id not in self._open:
                if not INSPECTION_ID.fullmatch(inspection_id) or not (self.folder / inspection_id / "checklists").is_dir():
                    raise NoSuchInspection(f"There is no inspection {inspection_id!r} in {self.folder}; `inspector list` shows those that are there.")
                self._open[inspection_id] = Inspection(self.folder / inspection_id, self.host)
            found = self._open[inspection_id]
        found.refresh()
        return found

    @contextmanager
    def paused(self, inspection_id: str) -> Iterator[None]:
        """While this is entered, an open inspection of that id takes nothing in: a bundle may then append to its journal file, and is seen afterwards.

        Raises durable.NotWritten where what a failed write left behind cannot be cleared up even now.
        """
        with self._lock:
            found = self._open.get(inspection_id)
        with found.written_to() if found else nullcontext():
            yield

    def create(self, checklists: Path, inspection_id: str = "") -> Inspection:
        """Begin an inspection: its folder with the checklists as they are today."""
        inspection_id = inspection_id or f"{now()[:10]}-{secrets.token_hex(3)}"
        folder = self.folder / inspection_id
        for name in ("journal", "photos", "derived"):
            (folder / name).mkdir(parents=True, exist_ok=True)
        # The checklists folder is what makes it an inspection, so it comes last and in one step.
        draft = folder / ".checklists"
        shutil.copytree(checklists, draft, dirs_exist_ok=True, ignore=lambda _, names: [n for n in names if not n.endswith(".toml")])
        draft.rename(folder / "checklists")
        return self.get(inspection_id)

    def forget(self, inspection_id: str) -> None:
        """Close one, so that the next `get` reads it anew (after a bundle was taken in)."""
        with self._lock:
            found = self._open.pop(inspection_id, None)
            if found:
                found.close()

    def close(self) -> None:
        """Let go of every file."""
        for inspection_id in list(self._open):
            self.forget(inspection_id)
