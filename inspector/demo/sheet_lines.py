"""Reads the short lines of the demo's sheets into recorded values.

A sheet is one text per system with one line per check: ``check ratings | readings | notes``. An
indented line continues the line above it. Ratings are g, f, p, x (failed), n (not fitted) or
?reason (not seen). A second letter says how a rating is known, r (reported), s (sighted) or t
(tested), where that is not the usual depth, which the walk records beside each rating. Where the
units of a system differ, their ratings and numbers are written in order with / between and their
notes with || between; a single one is meant for all of them.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, NamedTuple

from inspector.assess.depth import usual_depth
from inspector.checklists.model import Check, System
from inspector.values.field import Field
from inspector.values.vocabulary import DEPTHS
from inspector.values.vocabulary import RATINGS as RATED

RATINGS = {"g": "good", "f": "fair", "p": "poor", "x": "failed", "n": "not fitted"}
_DEPTHS = {depth[0]: depth for depth in DEPTHS}
_NUMBER = re.compile(r"(-?[0-9.,]+)(?: (.+))?")
_PARTICLE_CODE = re.compile(r"\d\d/\d\d/\d\d")
_GATE = ("permit", "attendant", "instrument", "entered")
# Subject, field and value of one entry.
FieldValue = tuple[str, str, Any]


class _Place(NamedTuple):
    """A sheet, and the unit's position among those that are asked the check."""

    subject: str
    position: int
    units: int


def logical_lines(text: str) -> list[str]:
    """Return the lines of a text, each joined with the indented lines that continue it.

    Examples
    --------
    >>> logical_lines("hull g | From the quay,\\n    through glasses.\\nmast f")
    ['hull g | From the quay, through glasses.', 'mast f']
    """
    return re.sub(r"\n +", " ", text.strip()).splitlines()


def joined(*parts: Mapping[str, str]) -> dict[str, str]:
    """Return sheets by system, put together from parts; several parts may share a system."""
    systems = dict.fromkeys(system for part in parts for system in part)
    return {
        system: "\n".join(part[system].strip() for part in parts if system in part)
        for system in systems
    }


def sheets_of(system: System, units: Iterable[str], text: str) -> Iterator[FieldValue]:
    """Yield what is recorded of every check that a text names, on every unit that is asked it.

    Parameters
    ----------
    system : System
    units : iterable of str
        Ids of the system's units.
    text : str
        Lines in the format of this module.

    Yields
    ------
    FieldValue

    Raises
    ------
    ValueError
        The text does not fit the system: an unknown check or reading, or a wrong count of values.
    """
    asked = {
        unit: {check.id for check in system.checks_for(kind_of(system, unit))} for unit in units
    }
    lines = dict(line.split(" ", 1) for line in logical_lines(text))
    for check in system.checks:
        # Left unanswered on purpose: a demo in which everything was seen would show no span.
        if check.id not in lines:
            continue
        rated = [unit for unit, ids in asked.items() if check.id in ids]
        if check.once:
            rated = rated[:1]
        # Values are written in the order of the units that are asked this check.
        for position, unit in enumerate(rated):
            place = _Place(f"sheet/{system.id}/{unit}/{check.id}", position, len(rated))
            yield from _sheet(place, check, lines[check.id])
    unknown = set(lines) - {check.id for check in system.checks}
    if unknown:
        raise ValueError(f"{system.id} has no check {', '.join(sorted(unknown))}")


def kind_of(system: System, unit: str) -> str:
    """Return the kind that a demo unit's id begins with, else the system's first and usual one.

    It is "" where the system has one kind only.
    """
    longest_first = sorted(system.kinds, key=len, reverse=True)
    usual = next(iter(system.kinds), "")
    return next((kind for kind in longest_first if unit.startswith(kind)), usual)


def _sheet(at: _Place, check: Check, line: str) -> Iterator[FieldValue]:
    """Yield what is recorded of one check on one unit."""
    ratings, readings, notes = ([part.strip() for part in line.split(" |", 2)] + ["", ""])[:3]
    word = _of_unit(ratings.split("/"), at)
    seen = not word.startswith("?")
    rating = RATINGS[word[0]] if seen else f"not seen: {word[1:]}"
    yield at.subject, "rating", rating
    if check.enclosed:
        yield at.subject, "gate", dict.fromkeys(_GATE, "yes" if seen else "no")
    if seen:
        read = list(_readings(at, check, readings))
        yield from read
    if rating in RATED:
        typed = [field.removeprefix("reading/") for _, field, _ in read]
        said = _DEPTHS[word[1]] if word[1:] else ""
        yield at.subject, "depth", said or usual_depth(check, typed)
    note = _of_unit(notes.split("||"), at)
    if note:
        yield at.subject, "note", note


def _readings(at: _Place, check: Check, readings: str) -> Iterator[FieldValue]:
    """Yield the readings of a check, written "name=value; name=value"."""
    asked = {reading.name: reading for reading in check.readings}
    for pair in filter(None, readings.split("; ")):
        name, _, values = pair.partition("=")
        if name not in asked:
            raise ValueError(f"{at.subject} has no reading {name}")
        yield at.subject, f"reading/{name}", _reading(asked[name], values, at)


def _reading(asked: Field, values: str, at: _Place) -> dict[str, str]:
    """Return one reading with its unit, that of the check where none is written."""
    value = _of_unit(_parts(values), at) if _is_per_unit(asked, values) else values
    if asked.kind != "number":
        return {"value": value}
    number, unit = _NUMBER.fullmatch(value).groups()
    return {"value": number, "unit": unit or asked.unit}


def _is_per_unit(asked: Field, values: str) -> bool:
    """Whether / separates the values of units here."""
    if asked.kind in ("number", "whole", "date"):
        return True
    # The / of a choice, or between the figures of a particle code, does not separate units.
    is_code = asked.kind == "text" and _PARTICLE_CODE.fullmatch(values)
    return "/" in values and values not in asked.choices and not is_code


def _parts(values: str) -> list[str]:
    """Split the values of several units at /."""
    # The / inside a unit (in/s) does not separate units of the vessel.
    return re.split(r"/(?!s\b)", values)


def _of_unit(options: list[str], at: _Place) -> str:
    """The value of one unit: the only one, or the one at the unit's position."""
    if len(options) not in (1, at.units):
        raise ValueError(
            f"{at.subject}: {' and '.join(options)} are {len(options)}; "
            f"expected one for all, or one for each of {at.units} units"
        )
    return options[at.position % len(options)].strip()
