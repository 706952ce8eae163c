"""What is true of everything that was written, told apart from the code under test: nothing here is
shared with inspector.record.state.

Truth is kept twice. `heads_of` folds entries by what they replace; `unseen_heads` asks only what
each author had in sight when he wrote: an entry stands until somebody who knew it wrote in its
field again.
"""

import itertools
import os
import secrets
from collections.abc import Collection, Iterable
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Any
from unittest import mock

from inspector.record import inspection as store

FIRST_DAY = date(2026, 5, 2)


def is_note(entry: dict) -> bool:
    """Whether an entry is a laptop's note that the author of another one made a false claim."""
    return entry["subject"] == "inspection" and entry["field"].startswith("unseen/")


def by_field(entries: Iterable[dict]) -> dict[tuple[str, str], list[dict]]:
    """Entries sorted into their fields, without notes."""
    found: dict[tuple[str, str], list[dict]] = {}
    for entry in entries:
        if not is_note(entry):
            found.setdefault((entry["subject"], entry["field"]), []).append(entry)
    return found


def void_claims(entries: Iterable[dict]) -> set[tuple[str, str]]:
    """(entry, what it claims to replace) of every claim that a laptop noted as not seen."""
    notes = [entry for entry in entries if is_note(entry)]
    return {
        (note["field"].removeprefix("unseen/").replace("_", ":"), claim)
        for note in notes
        for claim in note["value"]
    }


def is_later(one: str, than: str) -> bool:
    """Whether an id is a later one of the same device, which its author cannot have seen."""
    device, number = one.split(":")
    other, own = than.split(":")
    return device == other and int(number) > int(own)


def heads_of(said: list[dict], void: Collection[tuple[str, str]] = ()) -> list[dict]:
    """Of one field's entries those that no other one replaces, by time and id."""
    gone = {
        one
        for entry in said
        for one in entry["replaces"]
        if not is_later(one, than=entry["id"]) and (entry["id"], one) not in void
    }
    return sorted(
        (entry for entry in said if entry["id"] not in gone),
        key=lambda entry: (entry["at"], entry["id"]),
    )


def folded(entries: Iterable[dict]) -> dict[str, dict[str, list[str]]]:
    """The dumb fold: subject -> field -> ids of the heads."""
    found: dict[str, dict[str, list[str]]] = {}
    entries = list(entries)
    void = void_claims(entries)
    for (subject, name), said in by_field(entries).items():
        found.setdefault(subject, {})[name] = [entry["id"] for entry in heads_of(said, void)]
    return found


def disputes_of(entries: list[dict]) -> set[tuple[str, str]]:
    """The fields in which heads differ in value."""
    void = void_claims(entries)
    heads = {place: heads_of(said, void) for place, said in by_field(entries).items()}
    return {
        place
        for place, standing in heads.items()
        if any(one["value"] != standing[0]["value"] for one in standing)
    }


@dataclass
class World:
    """All that was ever written, with what its author knew then; what was acknowledged; the
    clocks; how far each file is safe from a pulled plug; what strangers made up; and what went
    with an older state that somebody put back, while nobody else had it."""

    entries: dict[str, dict] = field(default_factory=dict)
    saw: dict[str, frozenset[str]] = field(default_factory=dict)
    acknowledged: set[str] = field(default_factory=set)
    attempts: dict[str, frozenset[str]] = field(default_factory=dict)
    synced: dict[int, int] = field(default_factory=dict)
    days: int = 0
    forged: set[str] = field(default_factory=set)
    gone: set[str] = field(default_factory=set)
    ticks: Any = field(default_factory=lambda: itertools.count(1))
    issued: list[str] = field(default_factory=list)

    def now(self) -> str:
        """A time that nobody else gets, by a clock that is wrong by `days`."""
        tick, day = next(self.ticks), FIRST_DAY + timedelta(self.days)
        at = f"{day}T09:{tick // 60000 % 60:02}:{tick // 1000 % 60:02}.{tick % 1000:03}Z"
        self.issued.append(at)
        # Notes have no field, so what their author saw is nothing to anybody.
        self.attempts.setdefault(at, frozenset())
        return at

    def fsync(self, handle: int) -> None:
        """In place of the real one: remembers how much of the file no pulled plug can take."""
        facts = os.fstat(handle)
        self.synced[facts.st_ino] = facts.st_size

    @contextmanager
    def in_force(self):
        """Within this, clocks and disks are this world's."""
        counts = itertools.count(1)

        # A history that fails must fail again.
        def token(length):
            return f"{next(counts):0{2 * length}x}"

        with (
            mock.patch.object(os, "fsync", self.fsync),
            mock.patch.object(store, "now", self.now),
            mock.patch.object(secrets, "token_hex", token),
        ):
            yield

    def write(self, entry: dict, saw: frozenset[str]) -> None:
        """Somebody wrote this entry, knowing those."""
        known = self.entries.setdefault(entry["id"], entry)
        assert known == entry, f"one id, two contents: {known} and {entry}"
        self.saw.setdefault(entry["id"], saw)

    def count_as_seen(self, entry: dict, here: set[str]) -> None:
        """Its author may have seen what it names and what is here: nothing that he himself made
        later, and nothing whose author saw it."""
        claims = {
            one
            for one in here.intersection(entry["replaces"])
            if not is_later(one, than=entry["id"]) and entry["id"] not in self.saw[one]
        }
        self.saw[entry["id"]] |= claims

    def forge(self, entry: dict) -> None:
        """A stranger made this up, having seen nothing."""
        self.write(entry, frozenset())
        self.forged.add(entry["id"])

    def unseen_heads(self, entries: Iterable[dict]) -> dict[tuple[str, str], set[str]]:
        """Of each field the entries that no author of another one had in sight."""
        found = {}
        for place, said in by_field(entries).items():
            seen = frozenset().union(*(self.saw[entry["id"]] for entry in said))
            found[place] = {entry["id"] for entry in said} - seen
        return found
