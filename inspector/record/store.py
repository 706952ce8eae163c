"""One inspection on disk, open for reading and recording; and the folder of all inspections.

An inspection is held in memory as its folded state; every accepted entry is on disk before it is in that state.
"""

import re
import secrets
import shutil
import threading
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inspector.errors import InspectorError
from inspector.record.entry import Entry, EntryRefused, from_dict, now
from inspector.record.journal import Journal, Reading, read_folder
from inspector.record.state import State

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
        self._lock = threading.RLock()
        self._journal = Journal(folder / "journal" / f"{host}.jsonl")
        reading: Reading = read_folder(folder / "journal")
        self.damage = reading.damage
        self.entries: list[Entry] = list(reading.entries.values())
        self._known = reading.entries
        self.state = State(self.entries)
        self._last_own = max((entry.number for entry in self.entries if entry.device == host), default=0)

    def take_in(self, raw: Iterable[Any]) -> Fates:
        """Take entries (parsed JSON) from any device; one fsync for all new ones, acknowledged only once on disk.

        Raises durable.NotWritten where the disk does not take them; then none of them counts.
        """
        result, fresh = Fates(), {}
        with self._lock:
            for number, data in enumerate(raw, 1):
                try:
                    entry = from_dict(data)
                    known = self._known.get(entry.id) or fresh.get(entry.id)
                    if known is None:
                        fresh[entry.id] = entry
                    elif known != entry:
                        raise EntryRefused(f"Another entry with the id {entry.id} is already kept; this one has other content.", entry.id)
                    result.fates.setdefault(entry.id, "already had" if known else "stored")
                except EntryRefused as problem:
                    result.fates[problem.entry_id or f"number {number}"] = f"refused: {problem}"
            self._keep(list(fresh.values()))
        result.stored = list(fresh.values())
        return result

    def say(self, who: str, changes: Iterable[tuple[str, str, Any]], seen: Callable[[str, str], list[str]] | None = None) -> list[Entry]:
        """Record (subject, field, value) changes made on this computer; unchanged values make no entry.

        seen: tells which heads the author saw (their ids); by default those that stand now.
        """
        with self._lock:
            entries = []
            for subject, name, value in changes:
                if self.state.value(subject, name) == value:
                    continue
                heads = seen(subject, name) if seen else [entry.id for entry in self.state.heads(subject, name)]
                number = self._last_own + len(entries) + 1
                raw = {"id": f"{self.host}:{number}", "at": now(), "device": self.host, "who": who, "subject": subject, "field": name,
                       "value": value, "replaces": heads}
                entries.append(from_dict(raw))
            # Counted before it is written: a line whose sync failed may still turn up on the disk, so its number is never given to another entry.
            self._last_own += len(entries)
            self._keep(entries)
            return entries

    def _keep(self, entries: list[Entry]) -> None:
        self._journal.append(entries)
        for entry in entries:
            self._known[entry.id] = entry
            self.entries.append(entry)
            self.state.add(entry)

    def since(self, position: int) -> list[Entry]:
        """The entries taken in after `position` (a count, valid within one `epoch`)."""
        with self._lock:
            return self.entries[position:]

    def close(self) -> None:
        """Let go of the journal file."""
        self._journal.close()


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
            return self._open[inspection_id]

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
