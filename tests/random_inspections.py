"""Inspections drawn by a number: a few systems of the shipped checklists with units, answers,
readings and everything else that a walk records, as entries of two devices.
"""

import random
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from inspector import places
from inspector.checklists.library_tables import NOT_SYSTEMS, library_of_tables
from inspector.checklists.loader import read_library
from inspector.checklists.model import Check, Library
from inspector.checklists.registry import criterion
from inspector.values.units import convert
from inspector.values.vocabulary import (
    BERTHS,
    DEPTHS,
    NEEDS,
    NOT_FITTED,
    NOT_SEEN_REASONS,
    RATINGS,
    VESSEL_STATES,
    WALKED_PAST,
    not_seen,
)
from tests.criteria.conftest import VALID
from tests.criteria.golden_judgements import cases_of
from tests.criteria.golden_readings import typed

DEVICES = ("phone", "tablet")
PEOPLE = ("QX", "AB", "CD")
DAY = "2026-05-02"


@dataclass(frozen=True)
class Drawn:
    """An inspection drawn by a number.

    Parameters
    ----------
    tables : mapping
        Of its checklists.
    entries : list of dict
        What was recorded, in an order in which it could have been.
    """

    tables: Mapping[str, Any]
    entries: list[dict[str, Any]]

    @property
    def library(self) -> Library:
        """Its checklists."""
        return library_of_tables(self.tables)


@cache
def shipped_tables() -> Mapping[str, Any]:
    """The tables of the checklists as they are shipped."""
    return read_library(places.shipped("checklists")).tables


def drawn(seed: int, most_systems: int = 3) -> Drawn:
    """Draw an inspection: the same number, the same inspection."""
    luck = random.Random(f"inspection {seed}")
    every = shipped_tables()
    names = sorted(name for name, table in every.items() if "system" in table)
    chosen = luck.sample(names, luck.randint(1, most_systems))
    tables = {name: table for name, table in every.items() if name in chosen or name in NOT_SYSTEMS}
    library = library_of_tables(tables)
    writer = _Writer(luck)
    _prepared(writer, library)
    for system in library.systems.values():
        for number in range(1, luck.randint(1, 3) + 1):
            _unit(writer, system, f"one-{number}")
    return Drawn(tables, writer.entries)


class _Writer:
    """Entries of two devices, ten seconds apart; sometimes one that has not seen the one before."""

    def __init__(self, luck: random.Random):
        self.luck = luck
        self.entries: list[dict[str, Any]] = []
        self._numbers = dict.fromkeys(DEVICES, 0)
        self._last: dict[tuple[str, str], str] = {}

    def __call__(self, subject: str, field: str, value: Any) -> None:
        device = self.luck.choice(DEVICES)
        self._numbers[device] += 1
        seconds = 10 * len(self.entries)
        clock = f"{8 + seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}"
        last = self._last.get((subject, field))
        entry_id = f"{device}:{self._numbers[device]}"
        self.entries.append(
            {
                "id": entry_id,
                "at": f"{DAY}T{clock}.000Z",
                "device": device,
                "who": self.luck.choice(PEOPLE),
                "subject": subject,
                "field": field,
                "value": value,
                "replaces": [last] if last and self.luck.random() < 0.8 else [],
            }
        )
        self._last[subject, field] = entry_id

    def chance(self, share: float) -> bool:
        return self.luck.random() < share


def _prepared(writer: _Writer, library: Library) -> None:
    """What is said before the visit."""
    luck = writer.luck
    writer("inspection", "date", DAY)
    writer("inspection", "aboard", luck.choice(["0.75", "1.5", "4", "8"]))
    writer("inspection", "people", luck.choice(["1", "1", "2", "3"]))
    writer("inspection", "state", luck.choice(VESSEL_STATES))
    writer("inspection", "berth", luck.choice(BERTHS))
    writer("vessel", "year", str(luck.randint(1980, 2022)))
    writer("vessel", "built", f"{luck.randint(1995, 2015)}-03-01")
    writer("brief", "horizon", str(luck.randint(3, 20)))
    for system in library.systems:
        if writer.chance(0.7):
            writer("brief", f"need/{system}", luck.choice(NEEDS))


def _unit(writer: _Writer, system: Any, unit: str) -> None:
    """A unit with its answers."""
    luck = writer.luck
    writer(f"unit/{system.id}/{unit}", "name", f"Unit {unit}")
    if system.kinds:
        writer(f"unit/{system.id}/{unit}", "kind", luck.choice([*system.kinds]))
    if writer.chance(0.3):
        writer(f"unit/{system.id}/{unit}", "walked_past", luck.choice(WALKED_PAST))
    share = luck.choice([0.0, 0.2, 0.5, 0.9])
    for check in system.checks:
        if writer.chance(share):
            _sheet(writer, check, f"sheet/{system.id}/{unit}/{check.id}")
    if writer.chance(0.1):
        writer(f"verdict/{system.id}/{unit}", "decision", luck.choice(["retain", "remove"]))


def _sheet(writer: _Writer, check: Check, subject: str) -> None:
    """Readings, a rating, a depth, a second opinion; seldom all of them."""
    luck = writer.luck
    if check.criterion and writer.chance(0.5):
        for name, value in _readings(luck, check).items():
            writer(subject, f"reading/{name}", value)
    if writer.chance(0.8):
        for _ in range(luck.choice([1, 1, 1, 2])):
            writer(subject, "rating", _answer(luck))
        if writer.chance(0.5):
            writer(subject, "depth", luck.choice(DEPTHS))
    if writer.chance(0.1):
        writer(subject, "note", "Seen from the ladder only.")


def _answer(luck: random.Random) -> str:
    return luck.choice([*RATINGS, *RATINGS, NOT_FITTED, not_seen(luck.choice(NOT_SEEN_REASONS))])


def _readings(luck: random.Random, check: Check) -> dict[str, dict[str, str]]:
    """The readings of a case of its criterion, as they are typed."""
    rule = criterion(check.criterion)
    case = luck.choice(_cases(rule.name))
    inputs = {field.name: field for field in rule.inputs}
    found = {}
    for asked in check.readings:
        value = case.get(asked.name)
        if value is None or asked.name not in inputs:
            continue
        if asked.kind == "number" and asked.unit:
            value = convert(float(value), inputs[asked.name].unit, asked.unit)
        found[asked.name] = {"value": typed(value), "unit": asked.unit or ""}
    return found


@cache
def _cases(name: str) -> tuple[dict[str, Any], ...]:
    return tuple(cases_of(criterion(name), VALID[name]))
