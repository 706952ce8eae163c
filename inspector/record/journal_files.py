"""All journal files of one inspection: the own one, which is written, and those of others."""

import os
from collections.abc import Callable, Iterable
from itertools import islice
from pathlib import Path

from inspector.record import durable
from inspector.record.device_counts import DeviceCounts
from inspector.record.entry import Entry, to_dict
from inspector.record.journal import Damage, Journal, JournalContents, Lost, read_file
from inspector.record.own_numbers import NumbersGiven, forged, last_own_number, name_in, new_name
from inspector.record.refusals import Refusals
from inspector.record.value_kinds import faults_of_kinds


class JournalFiles:
    """What the files hold, and the own file. Not thread-safe; the inspection's lock covers it.

    Parameters
    ----------
    folder : Path
        The inspection's folder.
    host : str
        This computer's first name.
    given : NumbersGiven
    fold : callable, optional
        Gets the entries that are new.
    """

    def __init__(
        self,
        folder: Path,
        host: str,
        given: NumbersGiven,
        fold: Callable[[list[Entry]], None] | None = None,
    ):
        self.folder, self.given = folder, given
        # As text, since it is listed at every request.
        self._journals = str(folder / "journal")
        self._fold = fold or _nothing
        self.known: dict[str, Entry] = {}
        self.counted = DeviceCounts()
        self.damage: dict[str, list[Damage]] = {}
        self.unwritten = ""
        self._marks: dict[str, tuple] = {}
        # Ids that entries name as replaced and that were not here when those came.
        self._named: set[str] = set()
        self._write_as(name_in(folder / "journal", host, given))

    def _write_as(self, name: str) -> None:
        """Write into the file of that name from now on."""
        self.host = name
        self.own = Journal(self.folder / "journal" / f"{name}.jsonl")
        self.refusals = Refusals(self.folder / "refused", name)
        # Ids that are, or were, in the own file, in that order.
        self._in_own: dict[str, None] = {}
        self._own_counted = DeviceCounts()
        self._remembered = self.given.highest(name)
        # Whether the disk did not take the last count.
        self._forgotten = False
        # Not settled: own lines may be in the file that no fsync of ours covers.
        # Doubt: a failed write may have left whole lines there.
        self._settled, self.doubt = False, False

    @property
    def as_written(self) -> bool:
        """Whether nothing would be lost if the files were let go and read again."""
        path = self.own.path
        is_read = self._marks.get(path.name, ()) == _mark(path)
        return is_read and not self.doubt and not self.unwritten

    def refresh(self) -> None:
        """Read the files that changed since they were last read."""
        if not self.doubt:
            self._read_own()
        # The own file came first: where two files give an id different contents, the first
        # one counts.
        for name in self._names():
            if name != self.own.path.name:
                self._read_if_changed(self.folder / "journal" / name)

    def _names(self) -> list[str]:
        """The names of the journal files, in order; asked at every request, so not by a glob."""
        try:
            names = os.listdir(self._journals)
        except OSError:
            return []
        return sorted(name for name in names if name.endswith(".jsonl"))

    def _read_own(self) -> None:
        """Read the own file where it changed; what was in it and is no longer is written again."""
        path, contents = self.own.path, JournalContents()
        if not self.known:
            self._read_if_changed(path)
            self._count_own(self.known)
            self._remember()
            return
        try:
            if self._marks.get(path.name) == _mark(path):
                return
            read_file(path, contents)
        except FileNotFoundError:
            pass
        self._read_if_changed(path)
        removed = [self.known[each] for each in self._in_own if each not in contents.entries]
        self._count_own(contents.entries)
        self.unwritten = ""
        if removed:
            # Unless this succeeds the file is read again the next time, and then written again.
            self._marks.pop(path.name, None)
            self._write_again(removed)

    def _count_own(self, entries: dict[str, Entry]) -> None:
        for entry_id, entry in entries.items():
            self._in_own[entry_id] = None
            self._own_counted.add(entry.device, entry.number)

    def _write_again(self, removed: list[Entry]) -> None:
        """Put back what somebody removed from the own file while this runs."""
        path = self.own.path
        try:
            if not self.folder.is_dir():
                raise durable.NotWritten(
                    f"The folder {self.folder} is no longer there; what was recorded is only in "
                    "memory now. Put the folder back before you stop the program."
                )
            # Opened anew, so that nothing is glued to half a line that somebody left.
            self.own.close()
            self.own.append(removed)
        except durable.NotWritten as problem:
            self.unwritten, self._settled = str(problem), False
            what = f"{len(removed)} entries were removed from it and are only in memory: {problem}"
            self.damage[path.name] = [Damage(path.name, 0, what)]
            return
        self._read_if_changed(path)

    def _read_if_changed(self, path: Path) -> None:
        try:
            mark = _mark(path)
            if not mark or self._marks.get(path.name) == mark:
                return
            before, contents = len(self.known), JournalContents(self.known)
            read_file(path, contents)
        except FileNotFoundError:
            # Renamed away in this very moment; what was read of it is kept.
            return
        self._marks[path.name], self.damage[path.name] = mark, contents.damage
        new = list(islice(self.known.values(), before, None))
        if path != self.own.path:
            new = self._without_refused(path, contents, new)
        else:
            self._name_unreadable(new)
        self._learn(new)

    def _name_unreadable(self, own: list[Entry]) -> None:
        """List the lines of the own file whose values are not of their field's kind."""
        # An earlier version took them in from a device or a file. They stay in the file and keep
        # their numbers.
        reasons = faults_of_kinds(own)
        unreadable = [(to_dict(self.known[each]), why) for each, why in reasons.items()]
        if unreadable:
            self.refusals.keep(unreadable, self.own.path.name)

    def _without_refused(
        self, path: Path, contents: JournalContents, new: list[Entry]
    ) -> list[Entry]:
        """What somebody else's file brought, without what it cannot or must not say.

        That is what only pretends to be of this computer, and values of another kind.
        """
        damaged = sum(len(each.lost) for each in contents.damage)
        reasons = faults_of_kinds(new) | forged(self.host, self.last_number(), new, damaged)
        refused = [(to_dict(self.known.pop(each)), why) for each, why in reasons.items()]
        if refused:
            self.refusals.keep(refused, path.name)
        return [entry for entry in new if entry.id not in reasons]

    def _learn(self, entries: list[Entry]) -> None:
        for entry in entries:
            self._named.update(each for each in entry.replaces if each not in self.known)
            self.counted.add(entry.device, entry.number)
        self._fold(entries)

    def append(self, entries: list[Entry]) -> None:
        """Append entries to the own file, then show them.

        Raises
        ------
        durable.NotWritten
            Where the disk does not take them.
        """
        if not entries:
            return
        try:
            before = _mark(self.own.path)
            written = self.own.append(entries)
        except durable.NotWritten:
            self._settled, self.doubt = False, True
            raise
        new = {entry.id: entry for entry in entries}
        self.known.update(new)
        self._count_own(new)
        self._remember()
        self._learn(entries)
        self._mark_own(before, written)

    def _mark_own(self, before: tuple, written: int) -> None:
        """Remember the own file as it is after a write, if it only grew by that."""
        path = self.own.path
        after, remembered = _mark(path), self._marks.get(path.name, ())
        grown = bool(after) and after[1] - written == (before[1] if before else 0)
        if before == remembered and grown and (not before or before[0] == after[0]):
            self._marks[path.name] = after
            return
        # Somebody changed it, or put another file in its place, in this very moment.
        self._marks.pop(path.name, None)
        self.refresh()
        if self.unwritten:
            raise durable.NotWritten(self.unwritten)

    def settle(self) -> int:
        """Make the own file such that the next entry may be written.

        Returns
        -------
        int
            As `last_number`.

        Raises
        ------
        durable.NotWritten
            Where that fails.
        """
        # A number may be given again only if nothing with that number can be on the disk. Half a
        # line can never become whole. A whole line that a failed write left behind might survive a
        # pulled plug or not: it is written once more, with an fsync that succeeds, and from then on
        # counts.
        self.refresh()
        if self.unwritten:
            raise durable.NotWritten(self.unwritten)
        if not self._settled:
            self.own.secure()
            if self.doubt:
                self._write_what_was_left()
            self._settled = True
        if self._forgotten:
            self._remember()
        # Read once: each answer waits for it.
        given = self.given.highest(self.host)
        if self.is_behind(given):
            self.begin_new_name()
            return self.last_number()
        return self.last_number(given)

    def _write_what_was_left(self) -> None:
        contents = JournalContents()
        read_file(self.own.path, contents)
        self.own.append(
            [entry for entry in contents.entries.values() if entry.id not in self.known]
        )
        self.doubt = False
        self.refresh()

    def failed(self) -> None:
        """Remember that a write of somebody else's into the own file failed."""
        self.own.close()
        self._settled, self.doubt = False, True

    def is_behind(self, given: int | None = None) -> bool:
        """Tell whether this computer gave numbers that its own file does not know.

        So it is after an older backup was put back: what is written next must not take them again.
        """
        given = self.given.highest(self.host) if given is None else given
        return max(given, self.counted.highest(self.host)) > self.last_in_own()

    def begin_new_name(self) -> None:
        """Write under a new name, into a new file, from now on.

        Raises
        ------
        durable.NotWritten
            Where what was written until now cannot be made durable.
        """
        self.own.close()
        try:
            durable.sync_file(self.own.path)
        except OSError as problem:
            raise durable.NotWritten(
                f"The journal {self.own.path} cannot be made durable: {problem.strerror}."
            ) from problem
        name = new_name(self.host)
        self.given.remember(name, 0)
        self._write_as(name)
        self.refresh()

    def _remember(self) -> None:
        number = self.last_in_own()
        self._forgotten = number > self._remembered and not self.given.remember(self.host, number)
        if not self._forgotten:
            self._remembered = max(self._remembered, number)

    def last_in_own(self) -> int:
        """Return the highest number that was written into the own file, readable or not."""
        lost = [each for each in self._own_lost() if self._is_gone(each)]
        count, highest = self._own_counted.count(self.host), self._own_counted.highest(self.host)
        return last_own_number(self.host, count, highest, lost)

    def _is_gone(self, lost: Lost) -> bool:
        return lost.entry_id not in self._in_own or not self.is_back(lost)

    def last_number(self, given: int | None = None) -> int:
        """Return the highest number that this computer can have given, whether read or not."""
        given = self.given.highest(self.host) if given is None else given
        lost = [each for each in self._own_lost() if not self.is_back(each)]
        count, highest = self.counted.count(self.host), self.counted.highest(self.host)
        last = last_own_number(self.host, count, highest, lost)
        return max(last, given)

    def _own_lost(self) -> list[Lost]:
        damage = self.damage.get(self.own.path.name, ())
        return [each for line in damage for each in line.lost]

    def is_back(self, lost: Lost) -> bool:
        """Tell whether what a damaged line held is whole elsewhere."""
        return lost.is_entry(self.known.get(lost.entry_id))

    def named(self, ids: Iterable[str]) -> set[str]:
        """Return those of some ids that an entry named as replaced before they were here."""
        return self._named.intersection(ids)

    def next_number(self, last: int) -> int:
        """Return the number after the last one that nobody has named as replaced yet.

        Whoever forges an entry cannot replace this computer's answers before they are made.
        """
        number = last + 1
        while f"{self.host}:{number}" in self._named:
            number += 1
        return number


def _nothing(_: list[Entry]) -> None:
    """Nobody shows what these files hold."""


def _mark(path: Path) -> tuple:
    """What changes whenever a file gets other content or is replaced; () where there is none."""
    try:
        facts = os.stat(path)
    except FileNotFoundError:
        return ()
    return facts.st_ino, facts.st_size, facts.st_mtime_ns
