"""Entries -> state. A field's value is its heads: the entries that no other entry replaces (a multi-value register).

The fold is a union: neither order, clock nor repetition of the entries can change what it yields.
"""

from collections.abc import Iterable, Iterator
from typing import Any

from inspector.record.entry import Entry


class Field:
    """All that was ever said about one field of one subject."""

    __slots__ = ("_replaced", "entries")

    def __init__(self) -> None:
        self.entries: dict[str, Entry] = {}
        self._replaced: set[str] = set()

    def add(self, entry: Entry) -> None:
        self.entries[entry.id] = entry
        self._replaced.update(entry.replaces)

    @property
    def heads(self) -> list[Entry]:
        """What nobody has replaced, oldest first; more than one: people who answered without seeing each other."""
        # A copy each time something is gone through: another thread may be adding, and copying a dict's values is one step.
        heads = [entry for entry in list(self.entries.values()) if entry.id not in self._replaced]
        # Honest devices cannot replace in a circle; if a forged set does, every entry is shown rather than none.
        return sorted(heads or list(self.entries.values()), key=_age)

    @property
    def history(self) -> list[Entry]:
        """Every entry, oldest first."""
        return sorted(self.entries.values(), key=_age)


def _age(entry: Entry) -> tuple[str, str]:
    return entry.at, entry.id


def same(one: Any, other: Any) -> bool:
    """Whether two JSON values are the same one. Python holds true for 1 and false for 0; here as on the walk page they differ."""
    if isinstance(one, bool) or isinstance(other, bool):
        return one is other
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(same, one, other))
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(same(value, other[key]) for key, value in one.items())
    return one == other


class State:
    """What the screens and the report show, folded from entries one by one."""

    def __init__(self, entries: Iterable[Entry] = ()):
        self._fields: dict[str, dict[str, Field]] = {}
        for entry in entries:
            self.add(entry)

    def add(self, entry: Entry) -> None:
        """Fold one more entry in; adding the same entry again changes nothing."""
        self._fields.setdefault(entry.subject, {}).setdefault(entry.field, Field()).add(entry)

    def heads(self, subject: str, field: str) -> list[Entry]:
        """The entries that stand, oldest first; empty where nothing was recorded."""
        found = self._fields.get(subject, {}).get(field)
        return found.heads if found else []

    def value(self, subject: str, field: str, default: Any = None) -> Any:
        """The newest head's value; `default` where nothing was recorded or the value was cleared."""
        heads = self.heads(subject, field)
        return default if not heads or heads[-1].value is None else heads[-1].value

    def disputed(self, subject: str, field: str) -> bool:
        """True where heads differ: two people answered differently without seeing each other."""
        values = [entry.value for entry in self.heads(subject, field)]
        return not all(same(value, values[0]) for value in values[1:])

    def history(self, subject: str, field: str) -> list[Entry]:
        """Every entry of a field, oldest first."""
        found = self._fields.get(subject, {}).get(field)
        return found.history if found else []

    def fields(self, subject: str) -> list[str]:
        """The fields recorded for a subject, by name."""
        return sorted(self._fields.get(subject, {}))

    def values(self, subject: str) -> dict[str, Any]:
        """Field -> value of a subject, without the cleared ones."""
        found = {field: self.value(subject, field) for field in self.fields(subject)}
        return {field: value for field, value in found.items() if value is not None}

    def subjects(self, prefix: str = "") -> list[str]:
        """Every subject that begins with `prefix`, in order."""
        return sorted(subject for subject in list(self._fields) if subject.startswith(prefix))

    def disputes(self) -> Iterator[tuple[str, str, list[Entry]]]:
        """(subject, field, heads) of every disagreement."""
        for subject in self.subjects():
            for field in self.fields(subject):
                if self.disputed(subject, field):
                    yield subject, field, self.heads(subject, field)


def snapshot(state: State) -> dict[str, dict[str, list[str]]]:
    """A plain, comparable picture of a state: subject -> field -> ids of the heads."""
    return {s: {f: [e.id for e in state.heads(s, f)] for f in state.fields(s)} for s in state.subjects()}
