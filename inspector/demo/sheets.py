"""Reads the scenario's short lines (see well_kept.py) into what the record says of each unit's checks."""

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from inspector.checklists import Check, System
from inspector.checklists import Reading as Asked

RATINGS = {"g": "good", "f": "fair", "p": "poor", "x": "failed", "n": "not fitted"}
_NUMBER = re.compile(r"(-?[0-9.,]+)(?: (.+))?")
_CODE = re.compile(r"\d\d/\d\d/\d\d")
_GATE = ("permit", "attendant", "instrument", "entered")
Said = tuple[str, str, Any]


def joined(*parts: Mapping[str, str]) -> dict[str, str]:
    """Texts by system, put together; a system may be written in several parts."""
    systems = dict.fromkeys(system for part in parts for system in part)
    return {system: "\n".join(part[system].strip() for part in parts if system in part) for system in systems}


def sheets_of(system: System, units: Iterable[str], text: str) -> Iterator[Said]:
    """(subject, field, value) for every check that the text speaks of, on every unit that is asked it."""
    units = tuple(units)
    lines = dict(line.split(" ", 1) for line in text.strip().splitlines())
    for check in system.checks:
        meant = [unit for unit in units if check in system.checks_for(kind_of(system, unit))]
        for position, unit in enumerate(meant):
            if check.id in lines:
                yield from _sheet(f"sheet/{system.id}/{unit}/{check.id}", check, lines[check.id], position)
    unknown = set(lines) - {check.id for check in system.checks}
    if unknown:
        raise ValueError(f"{system.id} has no check {', '.join(sorted(unknown))}")


def kind_of(system: System, unit: str) -> str:
    """The kind of a demo unit: its id begins with it; "" where its system has one kind only."""
    return next((kind for kind in system.kinds if unit.startswith(kind)), "")


def _sheet(subject: str, check: Check, line: str, position: int) -> Iterator[Said]:
    ratings, readings, notes = ([part.strip() for part in line.split(" |", 2)] + ["", ""])[:3]
    word = _turn(ratings.split("/"), position)
    rating = f"not seen: {word[1:]}" if word.startswith("?") else RATINGS[word]
    yield subject, "rating", rating
    if check.enclosed:
        yield subject, "gate", dict.fromkeys(_GATE, "no" if ":" in rating else "yes")
    asked = {one.id: one for one in check.readings}
    for pair in filter(None, readings.split("; ")) if ":" not in rating else ():
        name, _, values = pair.partition("=")
        if name not in asked:
            raise ValueError(f"{subject} has no reading {name}")
        yield subject, f"reading/{name}", _reading(asked[name], values, position)
    note = _turn([one.strip() for one in notes.removeprefix("|").split("||")], position)
    if note:
        yield subject, "note", note


def _reading(asked: Asked, values: str, position: int) -> dict[str, str]:
    # a / between the figures of a particle code is no parting either
    several = asked.kind in ("number", "whole", "date") or ("/" in values and not (asked.kind == "text" and _CODE.fullmatch(values)))
    value = _turn(_parts(values), position) if several else values
    if asked.kind != "number":
        return {"value": value}
    number, unit = _NUMBER.fullmatch(value).groups()
    return {"value": number, "unit": unit or asked.unit}


def _parts(values: str) -> list[str]:
    # a / inside a unit (in/s) is no parting
    return re.split(r"/(?!s\b)", values)


def _turn(options: list[str], position: int) -> str:
    return options[position % len(options)].strip()
