"""Entries -> state. A field's value is its heads: the entries that no other entry replaces.

This is a multi-value register (Shapiro and others 2011, *from memory*). The fold is a union:
neither order, clock nor repetition of the entries can change its result.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from typing import Any

from inspector.record.entry import Entry
from inspector.record.unseen import Unseen


class Field:
    """All that was ever recorded about one field of one subject.

    Only an entry that its author can have seen is replaced. An entry may arrive before those it
    replaces: it replaces each once that arrives. Three claims are left out, whatever the order of
    arrival: a device's entry replaces none of its own later ones; where entries replace one another
    in a circle, none of them replaces another one of the circle; and what a computer noted as
    not seen is not replaced.
    """

    __slots__ = ("_heads", "_unseen", "entries")

    def __init__(self, unseen: Unseen) -> None:
        self.entries: dict[str, Entry] = {}
        self._unseen = unseen
        self._heads: tuple[tuple[int, int], list[Entry]] = ((0, 0), [])

    def add(self, entry: Entry) -> None:
        """Add one entry; to add it again changes nothing."""
        self.entries[entry.id] = entry

    @property
    def heads(self) -> list[Entry]:
        """The entries that nobody has replaced, oldest first.

        More than one: people who answered without seeing each other.
        """
        # A copy, since another thread may be adding; copying a dict's values is one step. Entries
        # are only ever added, so their count says whether the heads are still these.
        entries, (counts, heads) = list(self.entries.values()), self._heads
        now = (len(entries), self._unseen.count)
        if counts != now:
            heads = _heads_of(entries, self._unseen)
            self._heads = (now, heads)
        return list(heads)

    @property
    def history(self) -> list[Entry]:
        """Every entry, oldest first."""
        return sorted(self.entries.values(), key=_age)


def _heads_of(entries: list[Entry], unseen: Unseen) -> list[Entry]:
    """The entries that none of the others replaces, oldest first."""
    by_id = {entry.id: entry for entry in entries}
    replaces = {entry.id: _replaced_by(entry, by_id, unseen) for entry in entries}
    # Entries that replace each other in a circle, as only a forged file has them, would leave no
    # head at all.
    in_circles = _without_ends(_turned(_without_ends(replaces)))
    replaced = set()
    for entry_id, targets in replaces.items():
        if entry_id in in_circles:
            targets = [target for target in targets if target not in in_circles]
        replaced.update(targets)
    return sorted((entry for entry in entries if entry.id not in replaced), key=_age)


def _replaced_by(entry: Entry, by_id: dict[str, Entry], unseen: Unseen) -> list[str]:
    """The ids of the known entries that an entry can have replaced."""
    claimed = set(entry.replaces).difference(unseen.claimed_by(entry.id))
    known = [by_id[entry_id] for entry_id in claimed if entry_id in by_id]
    return [
        # Of its own device an entry can have replaced only what came before it.
        other.id
        for other in known
        if other.device != entry.device or other.number < entry.number
    ]


def _without_ends(replaces: dict[str, list[str]]) -> dict[str, list[str]]:
    """Remove, again and again, the entries that no remaining one replaces."""
    remaining = dict(replaces)
    counts = Counter(target for targets in replaces.values() for target in targets)
    ends = [entry_id for entry_id in replaces if not counts[entry_id]]
    while ends:
        for target in remaining.pop(ends.pop()):
            counts[target] -= 1
            if not counts[target]:
                ends.append(target)
    return remaining


def _turned(replaces: dict[str, list[str]]) -> dict[str, list[str]]:
    """Who is replaced by whom, in place of who replaces whom."""
    turned: dict[str, list[str]] = {entry_id: [] for entry_id in replaces}
    for entry_id, targets in replaces.items():
        for target in targets:
            turned[target].append(entry_id)
    return turned


def _age(entry: Entry) -> tuple[str, str]:
    return entry.at, entry.id


def same_value(one: Any, other: Any) -> bool:
    """Tell whether two JSON values are the same.

    Python takes true for 1 and false for 0; here, as on the walk page, they differ.

    Parameters
    ----------
    one, other : Any
        Parsed JSON.

    Returns
    -------
    bool
    """
    # Python takes true for 1, which JSON and the browser do not.
    if isinstance(one, bool) or isinstance(other, bool):
        return one is other
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(same_value, one, other))
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(
            same_value(value, other[key]) for key, value in one.items()
        )
    return one == other


class State:
    """What the screens and the report show, folded from entries one by one."""

    def __init__(self, entries: Iterable[Entry] = ()):
        self._fields: dict[str, dict[str, Field]] = {}
        self._unseen = Unseen()
        for entry in entries:
            self.add(entry)

    def add(self, entry: Entry) -> None:
        """Fold one more entry in; to add the same entry again changes nothing."""
        if self._unseen.add(entry):
            return
        fields = self._fields.get(entry.subject)
        if fields is None:
            fields = self._fields.setdefault(entry.subject, {})
        field = fields.get(entry.field)
        if field is None:
            field = fields.setdefault(entry.field, Field(self._unseen))
        field.add(entry)

    def unseen_by(self, entry_id: str) -> Collection[str]:
        """Return the ids that an entry names as replaced and that are noted as not seen by it."""
        return self._unseen.claimed_by(entry_id)

    def heads(self, subject: str, field: str) -> list[Entry]:
        """Return the entries that nobody replaced, oldest first; empty where there is none."""
        found = self._fields.get(subject, {}).get(field)
        return found.heads if found else []

    def value(self, subject: str, field: str, default: Any = None) -> Any:
        """Return the newest head's value, or `default` where there is none or it was cleared."""
        heads = self.heads(subject, field)
        # Of heads that disagree the newest, until somebody settles it: a page must show one of
        # them.
        return default if not heads or heads[-1].value is None else heads[-1].value

    def disputed(self, subject: str, field: str) -> bool:
        """Tell whether heads differ: two people answered differently without seeing each other."""
        values = [entry.value for entry in self.heads(subject, field)]
        return not all(same_value(value, values[0]) for value in values[1:])

    def history(self, subject: str, field: str) -> list[Entry]:
        """Return every entry of a field, oldest first."""
        found = self._fields.get(subject, {}).get(field)
        return found.history if found else []

    def fields(self, subject: str) -> list[str]:
        """Return the fields recorded for a subject, by name."""
        return sorted(self._fields.get(subject, {}))

    def values(self, subject: str) -> dict[str, Any]:
        """Return field -> value of a subject, without the cleared ones."""
        found = {field: self.value(subject, field) for field in self.fields(subject)}
        return {field: value for field, value in found.items() if value is not None}

    def subjects(self, prefix: str = "") -> list[str]:
        """Return every subject that begins with `prefix`, by name."""
        return sorted(subject for subject in list(self._fields) if subject.startswith(prefix))

    def removed(self, subject: str) -> bool:
        """Tell whether a subject was taken out and not brought back.

        This is the one meaning of the field "gone".
        """
        return self.value(subject, "gone") in (True, "true", "yes")

    def existing(self, prefix: str) -> list[str]:
        """Return the subjects with that prefix that were not taken out, the oldest first."""
        return [subject for subject in self.oldest_first(prefix) if not self.removed(subject)]

    def oldest_first(self, prefix: str) -> list[str]:
        """Return the subjects with that prefix, also those taken out, the oldest first."""
        subjects = self.subjects(prefix)
        return sorted(subjects, key=lambda subject: (self._first_entry(subject), subject))

    def _first_entry(self, subject: str) -> tuple[str, str, int]:
        # Entries made in one act share a millisecond; the device's own count gives their order.
        firsts = (self.history(subject, field)[0] for field in self.fields(subject))
        return min((entry.at, entry.device, entry.number) for entry in firsts)

    def disputes(self) -> Iterator[tuple[str, str, list[Entry]]]:
        """Yield (subject, field, heads) of every disagreement."""
        for subject in self.subjects():
            for field in self.fields(subject):
                if self.disputed(subject, field):
                    yield subject, field, self.heads(subject, field)


def snapshot(state: State) -> dict[str, dict[str, list[str]]]:
    """Return a plain picture of a state that can be compared.

    Parameters
    ----------
    state : State

    Returns
    -------
    dict of str to dict
        Subject -> field -> ids of the heads.
    """
    return {subject: _head_ids(state, subject) for subject in state.subjects()}


def _head_ids(state: State, subject: str) -> dict[str, list[str]]:
    fields = state.fields(subject)
    return {field: [head.id for head in state.heads(subject, field)] for field in fields}
