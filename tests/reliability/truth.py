"""What is true of everything that was written, told apart from the code under test: nothing here is shared with inspector.record.state.

Truth is kept twice. `heads_of` folds entries by what they replace; `unseen_heads` asks only what each author had in sight when he wrote: an entry stands
until somebody who knew it wrote in its field again.
"""

import itertools
import os
from collections.abc import Iterable
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any
from unittest import mock

from inspector.record import store

BASE_YEAR = 2026


def by_field(entries: Iterable[dict]) -> dict[tuple[str, str], list[dict]]:
    """Entries sorted into their fields."""
    found: dict[tuple[str, str], list[dict]] = {}
    for entry in entries:
        found.setdefault((entry["subject"], entry["field"]), []).append(entry)
    return found


def heads_of(said: list[dict]) -> list[dict]:
    """Of one field's entries those that no other one replaces, by time and id."""
    gone = {one for entry in said for one in entry["replaces"]}
    return sorted((entry for entry in said if entry["id"] not in gone), key=lambda entry: (entry["at"], entry["id"]))


def folded(entries: Iterable[dict]) -> dict[str, dict[str, list[str]]]:
    """The dumb fold: subject -> field -> ids of the heads."""
    found: dict[str, dict[str, list[str]]] = {}
    for (subject, name), said in by_field(entries).items():
        found.setdefault(subject, {})[name] = [entry["id"] for entry in heads_of(said)]
    return found


def disputes_of(entries: Iterable[dict]) -> set[tuple[str, str]]:
    """The fields in which heads differ in value."""
    heads = {place: heads_of(said) for place, said in by_field(entries).items()}
    return {place for place, standing in heads.items() if any(one["value"] != standing[0]["value"] for one in standing)}


@dataclass
class World:
    """All that was ever written, with what its author knew then; what was acknowledged; the clocks; and how far each file is safe from a pulled plug."""

    entries: dict[str, dict] = field(default_factory=dict)
    saw: dict[str, frozenset[str]] = field(default_factory=dict)
    acknowledged: set[str] = field(default_factory=set)
    attempts: dict[str, frozenset[str]] = field(default_factory=dict)
    synced: dict[int, int] = field(default_factory=dict)
    years: int = 0
    ticks: Any = field(default_factory=lambda: itertools.count(1))
    issued: list[str] = field(default_factory=list)

    def now(self) -> str:
        """A time that nobody else gets, by a clock that is wrong by `years`."""
        tick = next(self.ticks)
        at = f"{BASE_YEAR + self.years}-05-02T09:{tick // 60000 % 60:02}:{tick // 1000 % 60:02}.{tick % 1000:03}Z"
        self.issued.append(at)
        return at

    def fsync(self, handle: int) -> None:
        """In place of the real one: remembers how much of the file no pulled plug can take."""
        facts = os.fstat(handle)
        self.synced[facts.st_ino] = facts.st_size

    @contextmanager
    def in_force(self):
        """Within this, clocks and disks are this world's."""
        with mock.patch.object(os, "fsync", self.fsync), mock.patch.object(store, "now", self.now):
            yield

    def write(self, entry: dict, saw: frozenset[str]) -> None:
        """Somebody wrote this entry, knowing those."""
        known = self.entries.setdefault(entry["id"], entry)
        assert known == entry, f"one id, two contents: {known} and {entry}"
        self.saw.setdefault(entry["id"], saw)

    def unseen_heads(self, entries: Iterable[dict]) -> dict[tuple[str, str], set[str]]:
        """Of each field the entries that no author of another one had in sight."""
        found = {}
        for place, said in by_field(entries).items():
            seen = frozenset().union(*(self.saw[entry["id"]] for entry in said))
            found[place] = {entry["id"] for entry in said} - seen
        return found
