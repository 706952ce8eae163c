"""Reads the scenario's short lines (see well_kept.py) into what the record says of each unit's checks."""

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from inspector.checklists import Check, System
from inspector.checklists import Reading as Asked

RATINGS = {"g": "good", "f": "fair", "p": "poor", "x": "failed", "n": "not fitted"}
_NUMBER = re.compile(r"(-?[0-9.,]+)(?: (.+))?")
_CODE = re.compile(r"\d\d/\d\d/\d\d")
_GATE = ("permit", "attendant", "instrument", "entered")
Said = tuple[str, str, Any]


class _Place(NamedTuple):
    """The sheet that is being read, and the unit's position among those that are asked the check."""

    subject: str
    position: int
    units: int


def joined(*parts: Mapping[str, str]) -> dict[str, str]:
    """Texts by system, put together; a system may be written in several parts."""
    systems = dict.fromkeys(system for part in parts for system in part)
    return {system: "\n".join(part[system].strip() for part in parts if system in part) for system in systems}


def sheets_of(system: System, units: Iterable[str], text: str) -> Iterator[Said]:
    """(subject, field, value) for every check that the text speaks of, on every unit that is asked it; ValueError where the text does not fit the system."""
    asked = {unit: {check.id for check in system.checks_for(kind_of(system, unit))} for unit in units}
    lines = dict(line.split(" ", 1) for line in text.strip().splitlines())
    for check in system.checks:
        meant = [unit for unit, ids in asked.items() if check.id in ids] if check.id in lines else []
        for position, unit in enumerate(meant):
            yield from _sheet(_Place(f"sheet/{system.id}/{unit}/{check.id}", position, len(meant)), check, lines[check.id])
    unknown = set(lines) - {check.id for check in system.checks}
    if unknown:
        raise ValueError(f"{system.id} has no check {', '.join(sorted(unknown))}")


def kind_of(system: System, unit: str) -> str:
    """The kind of a demo unit: its id begins with it; "" where its system has one kind only."""
    return next((kind for kind in system.kinds if unit.startswith(kind)), "")


def _sheet(at: _Place, check: Check, line: str) -> Iterator[Said]:
    subject = at.subject
    ratings, readings, notes = ([part.strip() for part in line.split(" |", 2)] + ["", ""])[:3]
    word = _turn(ratings.split("/"), at)
    rating = f"not seen: {word[1:]}" if word.startswith("?") else RATINGS[word]
    yield subject, "rating", rating
    if check.enclosed:
        yield subject, "gate", dict.fromkeys(_GATE, "no" if ":" in rating else "yes")
    asked = {one.id: one for one in check.readings}
    for pair in filter(None, readings.split("; ")) if ":" not in rating else ():
        name, _, values = pair.partition("=")
        if name not in asked:
            raise ValueError(f"{subject} has no reading {name}")
        yield subject, f"reading/{name}", _reading(asked[name], values, at)
    note = _turn(notes.split("||"), at)
    if note:
        yield subject, "note", note


def _reading(asked: Asked, values: str, at: _Place) -> dict[str, str]:
    # a / between the figures of a particle code is no parting either
    several = asked.kind in ("number", "whole", "date") or ("/" in values and not (asked.kind == "text" and _CODE.fullmatch(values)))
    value = _turn(_parts(values), at) if several else values
    if asked.kind != "number":
        return {"value": value}
    number, unit = _NUMBER.fullmatch(value).groups()
    return {"value": number, "unit": unit or asked.unit}


def _parts(values: str) -> list[str]:
    # a / inside a unit (in/s) is no parting
    return re.split(r"/(?!s\b)", values)


def _turn(options: list[str], at: _Place) -> str:
    if len(options) not in (1, at.units):
        raise ValueError(f"{at.subject}: {' and '.join(options)} are {len(options)}; expected one for all, or one for each of {at.units} units")
    return options[at.position % len(options)].strip()
