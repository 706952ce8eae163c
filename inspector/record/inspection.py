"""One inspection on disk, open for reading and recording."""

import secrets
import threading
from collections import ChainMap
from collections.abc import Callable, Collection, Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inspector.record import durable
from inspector.record.entry import Entry, EntryRefused, from_dict, now, to_dict
from inspector.record.journal import Damage
from inspector.record.journal_files import JournalFiles
from inspector.record.own_numbers import EVERY, NumbersGiven
from inspector.record.refusals import (
    entries_anew,
    is_here,
    refuse_forged,
    refuse_strange,
    whole_entries,
)
from inspector.record.state import State, same_value
from inspector.record.unseen import SUBJECT, field_of, not_seen, without_note
from inspector.record.value_kinds import fits_its_field, refuse_other_kind


@dataclass
class Outcomes:
    """What became of each entry that was handed over.

    Parameters
    ----------
    outcomes : dict of str to str
        Id -> "stored", "already had" or "refused: <sentence>"; "number <n>" for one without an id.
    stored : list of Entry
        The new entries.
    """

    outcomes: dict[str, str] = field(default_factory=dict)
    stored: list[Entry] = field(default_factory=list)


class Inspection:
    """One inspection's folder.

    Parameters
    ----------
    folder : Path
        Its name is the inspection's id.
    host : str
        This computer's name: of its own journal file, and of the device in its entries.
    given : NumbersGiven, optional
        How far this computer has numbered here, as remembered outside the data folder.
    """

    def __init__(self, folder: Path, host: str, given: NumbersGiven | None = None):
        self.folder, self.id = folder, folder.name
        self.epoch = secrets.token_hex(4)
        self.lock = threading.RLock()
        self.entries: list[Entry] = []
        self.state = State()
        self._files = JournalFiles(folder, host, given or NumbersGiven(None), self._fold)
        # A process killed before its fsync may have left lines: they are made durable before they
        # are shown. A folder that can only be read is shown as it is.
        with suppress(OSError):
            durable.sync_file(self._files.own.path)
        self.refresh()

    @property
    def host(self) -> str:
        """The name under which this computer writes here."""
        return self._files.host

    @property
    def damage(self) -> list[Damage]:
        """Every line that cannot be trusted, by file."""
        with self.lock:
            found = self._files.damage
            return [damage for name in sorted(found) for damage in found[name]]

    def damage_to_mend(self) -> list[Damage]:
        """Return the damage but for lines whose every entry has come back from elsewhere."""
        with self.lock:
            return [each for each in self.damage if not self._is_mended(each)]

    def _is_mended(self, damage: Damage) -> bool:
        return bool(damage.lost) and all(map(self._files.is_back, damage.lost))

    def refresh(self) -> None:
        """Read the journal files that changed since they were last read.

        A file-synchronising program or a bundle may have brought lines.
        """
        with self.lock:
            self._files.refresh()

    def take_in(
        self,
        raw: Iterable[Any],
        only: str | Collection[str] = "",
        origin: str = "",
        made_here: bool = False,
        check: Callable[[Entry], None] | None = None,
    ) -> Outcomes:
        """Take entries from any device; one fsync for all new ones, acknowledged only once on disk.

        Parameters
        ----------
        raw : iterable of Any
            Parsed JSON.
        only : str or collection of str
            The one device whose new entries are taken, or all names that it has used; "" for any.
        origin : str
            Who hands over, kept beside what is refused.
        made_here : bool
            Whether this program made the entries; only then may they bear this computer's next
            numbers.
        check : callable, optional
            Raises EntryRefused for a new entry that may not come this way.

        Returns
        -------
        Outcomes

        Raises
        ------
        durable.NotWritten
            Where the disk does not take them; then none of them counts.
        """
        result, new, refused = Outcomes(), {}, []
        only = {only} if isinstance(only, str) and only else set(only)
        with self.lock:
            last = self._files.settle()
            for number, data in enumerate(raw, 1):
                try:
                    entry = from_dict(data)
                    known = self._files.known.get(entry.id) or new.get(entry.id)
                    refuse_strange(entry, known, only)
                    if known is None:
                        # An entry that was made here may bear any next number.
                        refuse_forged(entry, self.host, EVERY if made_here else last)
                        refuse_other_kind(entry)
                        if check:
                            check(entry)
                        new[entry.id] = entry
                    result.outcomes.setdefault(entry.id, "already had" if known else "stored")
                except EntryRefused as problem:
                    result.outcomes[problem.entry_id or f"number {number}"] = f"refused: {problem}"
                    refused.append((data, str(problem)))
            # Notes first: whoever carries a part of the file has no entry without its note.
            self._files.append([*self._notes_on(new, only, last), *new.values()])
            if refused:
                self._files.refusals.keep(refused, origin)
        result.stored = list(new.values())
        return result

    def _notes_on(self, new: dict[str, Entry], same: Collection[str], last: int) -> list[Entry]:
        """Own entries on what others name as replaced and nobody here has seen."""
        known = ChainMap(new, self._files.known)
        claims = {each.id: not_seen(each, known, {each.device, *same}) for each in new.values()}
        named = self._files.named(new)
        if named and self.damage_to_mend():
            late = {each: new[each] for each in named}
            claims |= without_note(self.entries, late, self.state.unseen_by)
        notes = []
        for entry_id, not_counted in claims.items():
            # Entries in this computer's own name are made here or were.
            if not_counted and known[entry_id].device != self.host:
                last = self._files.next_number(last)
                change = (SUBJECT, field_of(entry_id), not_counted)
                notes.append(self._own_entry(last, "", change, []))
        return notes

    def record(
        self,
        who: str,
        changes: Iterable[tuple[str, str, Any]],
        seen: Callable[[str, str], list[str]] | None = None,
        settles: bool = False,
    ) -> list[Entry]:
        """Record changes made on this computer; unchanged values make no entry.

        Parameters
        ----------
        who : str
            Name or initials of the person.
        changes : iterable of (str, str, Any)
            Subject, field, value.
        seen : callable, optional
            (subject, field) -> ids of the heads that the person saw; by default the current ones.
        settles : bool
            Whether the person was shown a disagreement and ends it: then a value equal to the
            newest answer is an entry too.

        Returns
        -------
        list of Entry

        Raises
        ------
        durable.NotWritten
            Where the disk does not take them. Their numbers are then given to the next entries, so
            that no hole is left.
        """
        with self.lock:
            entries, last = [], self._files.settle()
            for subject, name, value in changes:
                ends_dispute = settles and self.state.disputed(subject, name)
                if not ends_dispute and same_value(self.state.value(subject, name), value):
                    continue
                heads = seen(subject, name) if seen else self._current_heads(subject, name)
                last = self._files.next_number(last)
                entries.append(self._own_entry(last, who, (subject, name, value), heads))
            self._files.append(entries)
            return entries

    def _current_heads(self, subject: str, name: str) -> list[str]:
        return [entry.id for entry in self.state.heads(subject, name)]

    def _own_entry(
        self, number: int, who: str, change: tuple[str, str, Any], replaces: list[str]
    ) -> Entry:
        """An entry of this computer, checked like any other."""
        subject, name, value = change
        return from_dict(
            {
                "id": f"{self.host}:{number}",
                "at": now(),
                "device": self.host,
                "who": who,
                "subject": subject,
                "field": name,
                "value": value,
                "replaces": replaces,
            }
        )

    @contextmanager
    def written_to(self) -> Iterator[JournalFiles]:
        """Let a bundle be appended to the own file while this is entered.

        Afterwards its lines are read; where it failed, the next entry is not glued to half a line.
        """
        with self.lock:
            self.refresh()
            try:
                yield self._files
            except BaseException:
                self._files.failed()
                raise
            self._files.settle()

    def _fold(self, entries: list[Entry]) -> None:
        for entry in entries:
            self.entries.append(entry)
            # One of another kind is only in the own file, from an earlier version.
            if fits_its_field(entry):
                self.state.add(entry)

    def since(self, position: int) -> list[Entry]:
        """Return the entries taken in after a position, from whichever file they came.

        Parameters
        ----------
        position : int
            How many entries the caller has; valid within one `epoch`.

        Returns
        -------
        list of Entry
        """
        with self.lock:
            self.refresh()
            return self.entries[position:]

    def complete_up_to(self) -> dict[str, int]:
        """Device -> the highest number up to which every entry is here."""
        with self.lock:
            return self._files.counted.complete_up_to()

    def missing(self) -> dict[str, list[int]]:
        """Device -> numbers below its highest that are not here; {} where nothing is missing."""
        with self.lock:
            return self._files.counted.missing()

    def written_and_gone(self) -> dict[str, tuple[int, int]]:
        """Return what this computer once wrote here and nobody has brought back.

        Returns
        -------
        dict of str to tuple of (int, int)
            Each of its names -> the first and the last number that are not here, as after an older
            backup was put back.
        """
        with self.lock:
            here, given = self._files.counted, self._files.given
            ends = [(name, here.highest(name) + 1, given.highest(name)) for name in given.names()]
            # A damaged count says nothing on what was written.
            return {name: (first, last) for name, first, last in ends if first <= last < EVERY}

    def refused(self) -> list[dict[str, Any]]:
        """Return what was refused here and did not come another way, oldest first.

        Returns
        -------
        list of dict
            {"at", "from", "why", "entry"} each; "entry" is what was handed over, whatever it was.
        """
        with self.lock:
            rows = self._files.refusals.all()
            known = self._files.known
            return [row for row in rows if not is_here(row["entry"], known, self.state)]

    def take_in_kept_aside(self) -> int:
        """Take in what was refused, as far as it is whole and says something new.

        For the owner of this computer, who has looked at it. Where another content is here under
        the same id, both are written anew under new ids.

        Returns
        -------
        int
            How many entries are new.

        Raises
        ------
        durable.NotWritten
            Where the disk does not take them.
        """
        with self.lock:
            new = whole_entries(self.refused())
            known = self._files.known
            wanted = [entry for entry_id, entry in new.items() if entry_id not in known]
            if any(entry.device == self.host for entry in new.values()):
                # Whoever wrote them, these numbers are used now.
                self._files.begin_new_name()
            names = {entry.device for entry in wanted}
            taken = self.take_in(map(to_dict, wanted), names, "what was kept aside").stored
            here = {each: known[each] for each in new if known.get(each, new[each]) != new[each]}
            self._write_anew([here, {each: new[each] for each in here}])
            return len(taken) + len(here)

    def _write_anew(self, sides: list[dict[str, Entry]]) -> None:
        last = self._files.last_number()

        def next_id() -> str:
            nonlocal last
            last = self._files.next_number(last)
            return f"{self.host}:{last}"

        self._files.append(entries_anew(sides, self.state, next_id))

    def may_be_closed(self) -> bool:
        """Tell whether nothing would be lost if this were let go and read again from the disk."""
        # Whoever holds the lock is writing at this moment.
        if not self.lock.acquire(blocking=False):
            return False
        try:
            return self._files.as_written
        finally:
            self.lock.release()

    def close(self) -> None:
        """Close the journal file."""
        self._files.own.close()
