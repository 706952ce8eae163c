"""What is refused, whoever hands it over, and is kept beside the journal with the reason.

It is shown to people and never folded, until the owner of the computer takes it in.
"""

import contextlib
import hashlib
import json
import os
from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

from inspector.record import durable
from inspector.record.entry import MOST_REPLACED, Entry, EntryRefused, from_dict, now, to_dict
from inspector.record.own_numbers import not_of_this_computer
from inspector.record.state import State, same_value
from inspector.record.value_kinds import fits_its_field, refuse_other_kind

MOST_BYTES = 8_000_000
# Of one thing that was handed over, in characters of JSON; every entry has fewer.
LONGEST = 150_000
LONGEST_SHOWN = 2000
LONGEST_REASON = 1000
_TEXTS = ("at", "from", "why")


class Refusals:
    """The file of this computer's refusals. Not thread-safe; the inspection's lock covers it.

    Parameters
    ----------
    folder : Path
        Where every computer's file is.
    host : str
        This computer's name.
    """

    def __init__(self, folder: Path, host: str):
        self.folder, self.path = folder, folder / f"{host}.jsonl"
        self._digests: set[str] | None = None

    def keep(self, refused: list[tuple[Any, str]], origin: str) -> None:
        """Keep refusals that are not kept already, as long as there is room.

        A disk that does not take them costs nothing but this copy: the device keeps its own.

        Parameters
        ----------
        refused : list of (Any, str)
            What was handed over, and the sentence why it was refused.
        origin : str
            Who handed it over.
        """
        if self._digests is None:
            self._digests = {_digest(row) for row in _rows(self.path)}
        lines, size = [], self.path.stat().st_size if self.path.is_file() else 0
        for data, why in refused:
            reason = why[:LONGEST_REASON]
            row = {"at": now(), "from": origin, "why": reason, "entry": _bounded(data)}
            digest, line = _digest(row), json.dumps(row).encode() + b"\n"
            # The same thing may be handed over again and again; it is kept once.
            if digest not in self._digests and size + len(line) <= MOST_BYTES:
                self._digests.add(digest)
                lines.append(line)
                size += len(line)
        if lines:
            # The refusal was answered already: a full disk must not turn it into an error of its
            # own.
            with contextlib.suppress(OSError, durable.NotWritten):
                self._append(b"".join(lines))

    def _append(self, data: bytes) -> None:
        self.folder.mkdir(exist_ok=True)
        handle = durable.open_for_appending(self.path)
        try:
            durable.append(handle, data)
        finally:
            os.close(handle)

    def all(self) -> list[dict[str, Any]]:
        """Return every refusal of every computer, oldest first.

        Returns
        -------
        list of dict
            {"at", "from", "why", "entry"} each.
        """
        rows = [row for path in sorted(self.folder.glob("*.jsonl")) for row in _rows(path)]
        return sorted(rows, key=lambda row: row["at"])


def _bounded(data: Any) -> Any:
    """What was handed over, cut where it is too long to be kept."""
    try:
        text = json.dumps(data)
    except (ValueError, TypeError, RecursionError):
        return {"unreadable": True}
    return data if len(text) <= LONGEST else {"cut": text[:LONGEST_SHOWN]}


def _digest(row: dict[str, Any]) -> str:
    """The same for the same thing refused again at another time."""
    # Without the time, which differs whenever the same thing comes again.
    content = json.dumps([row["from"], row["why"], row["entry"]], sort_keys=True)
    return hashlib.sha256(content.encode()).hexdigest()


def _rows(path: Path) -> list[dict[str, Any]]:
    """The refusals in a file; lines that cannot be read are left out."""
    try:
        lines = path.read_bytes().split(b"\n")
    except OSError:
        return []
    rows = []
    for line in lines:
        with contextlib.suppress(ValueError, RecursionError):
            row = json.loads(line)
            if _is_refusal(row):
                rows.append(row)
    return rows


def _is_refusal(row: Any) -> bool:
    if not isinstance(row, dict) or "entry" not in row:
        return False
    return all(isinstance(row.get(key), str) for key in _TEXTS)


def refuse_forged(entry: Entry, host: str, last: int) -> None:
    """Refuse an entry in this computer's name that it has not made.

    Parameters
    ----------
    entry : Entry
    host : str
        This computer's name.
    last : int
        The highest number that it has given.

    Raises
    ------
    EntryRefused
    """
    if entry.device == host and entry.number > last:
        raise EntryRefused(not_of_this_computer(entry.id, last), entry.id)


def refuse_strange(entry: Entry, known: Entry | None, only: Collection[str]) -> None:
    """Refuse what contradicts a known entry, or comes from another device than allowed.

    Parameters
    ----------
    entry : Entry
    known : Entry or None
        The one with its id that is here.
    only : collection of str
        The devices whose new entries are taken, empty for all.

    Raises
    ------
    EntryRefused
    """
    if known is not None and known != entry:
        raise EntryRefused(
            f"Another entry with the id {entry.id} is already kept; this one has other content.",
            entry.id,
        )
    if known is None and only and entry.device not in only:
        names = ", ".join(sorted(only))
        raise EntryRefused(
            f"{entry.id} is an entry of {entry.device}; {names} may hand over only its own. "
            f"Let {entry.device} hand it over.",
            entry.id,
        )


def whole_entries(rows: Iterable[dict[str, Any]]) -> dict[str, Entry]:
    """Return what of refusals is a whole entry, by its id; of two with one id the first.

    Parameters
    ----------
    rows : iterable of dict
        As `Refusals.all` returns them.

    Returns
    -------
    dict of str to Entry
    """
    found: dict[str, Entry] = {}
    for row in rows:
        with contextlib.suppress(EntryRefused):
            entry = from_dict(row["entry"])
            refuse_other_kind(entry)
            found.setdefault(entry.id, entry)
    return found


def is_here(data: Any, known: Mapping[str, Entry], state: State) -> bool:
    """Tell whether what was refused came another way, or was written anew.

    Parameters
    ----------
    data : Any
        What was handed over, whatever it was.
    known : mapping of str to Entry
    state : State

    Returns
    -------
    bool
    """
    entry_id = data.get("id") if isinstance(data, dict) else None
    there = known.get(entry_id) if isinstance(entry_id, str) else None
    # One of another kind is in the own file and still not shown, so it stays named.
    if there is None or not fits_its_field(there):
        return False
    if to_dict(there) == data:
        return True
    try:
        return written_anew(from_dict(data), state) is not None
    except EntryRefused:
        return False


# One number with two contents, as after a whole disk was restored: a computer that does not
# remember what it wrote since gives those numbers once more. Each of two computers then has one of
# the contents, and nobody can say which of them an entry meant that names the number as replaced.
# So both are written again under new numbers, by whom and when they were recorded, as entries that
# replace the old number: wherever these come, the same answers are shown, whatever the old number
# holds there.


def written_anew(entry: Entry, state: State) -> Entry | None:
    """Find the entry under which the content of another one was written anew.

    Parameters
    ----------
    entry : Entry
        It may be one that is not here.
    state : State

    Returns
    -------
    Entry or None
    """
    for each in state.history(entry.subject, entry.field):
        same = (each.at, each.who) == (entry.at, entry.who) and same_value(each.value, entry.value)
        if same and each.id != entry.id and entry.id in each.replaces:
            return each
    return None


def entries_anew(
    sides: Iterable[Mapping[str, Entry]], state: State, new_id: Callable[[], str]
) -> list[Entry]:
    """Make the entries that stand for the contents of numbers given twice.

    Parameters
    ----------
    sides : iterable of mapping of str to Entry
        For each side the contents that it has, by their id.
    state : State
        Contents that were written anew already are left out.
    new_id : callable
        Returns the next id of this computer.

    Returns
    -------
    list of Entry
        To be recorded together.
    """
    made = []
    for side in sides:
        there = {entry_id: written_anew(entry, state) for entry_id, entry in side.items()}
        ids = {entry_id: found.id if found else new_id() for entry_id, found in there.items()}
        for entry_id, entry in side.items():
            if there[entry_id] is None:
                # What it replaced on its side it replaces still, under the new ids.
                replaced = [ids[each] for each in entry.replaces if each in ids]
                names = dict.fromkeys((entry_id, *replaced, *entry.replaces))
                device = ids[entry_id].rpartition(":")[0]
                claims = tuple(names)[:MOST_REPLACED]
                made.append(replace(entry, id=ids[entry_id], device=device, replaces=claims))
    return made
