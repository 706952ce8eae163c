"""What a check must satisfy that names a criterion: its inputs supplied, each by a reading, constant or particular of the right kind, unit and choices.

Which criteria exist and what they ask for is told by the caller as plain data, because the criteria lie above the checklists.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from inspector.errors import InspectorError
from inspector.quantities import convert


@dataclass(frozen=True)
class KnownInput:
    """What a criterion asks for one of its inputs: kind (number, whole, choice, date, text), unit (None without), choices, and whether it may be missing."""

    kind: str
    unit: str | None = None
    choices: tuple[str, ...] = ()
    optional: bool = False


# criterion -> input -> what it asks
KnownCriteria = Mapping[str, Mapping[str, KnownInput]]
# kind of input -> the kinds of reading that can feed it
_FED_BY = {"number": ("number",), "whole": ("whole",), "choice": ("choice",), "date": ("date",), "text": ("text", "choice")}
_GIVEN_AS = {"number": (int, float), "whole": (int,), "choice": (str,), "date": (str, date), "text": (str,)}


def reading_kind(reading: Mapping) -> str:
    """The kind of a raw reading: as written, else choice where choices are listed, else number."""
    return str(reading.get("kind", "choice" if reading.get("choices") else "number"))


def faults_of_criterion(where: str, check: Mapping, readings: list[Mapping], criteria: KnownCriteria | None) -> list[str]:
    """Every mistake between a check and the criterion it names; none where no criterion is named or `criteria` is None."""
    name = check.get("criterion")
    if not isinstance(name, str) or criteria is None:
        return []
    if name not in criteria:
        return [f"{where}, key criterion: {name!r} is not known; known are {', '.join(sorted(criteria))}."]
    inputs = criteria[name]
    typed = {one["id"]: one for one in readings if isinstance(one.get("id"), str)}
    constants, taken = _table(check.get("given")), _table(check.get("from"))
    listed = ", ".join(sorted(inputs))
    faults = [
        f"{where}, key {key}.{one}: is no input of {name}; its inputs are {listed}."
        for key, pairs in (("given", constants), ("from", taken)) for one in pairs if one not in inputs
    ]
    if not inputs.keys() & typed.keys():
        faults.append(f"{where}, key readings: none of them is an input of {name} ({listed}).")
    for one, asked in inputs.items():
        faults += _faults_of_input(where, name, one, asked, typed.get(one), one in constants or one in taken)
        faults += _faults_of_constant(where, name, one, asked, constants)
    return faults


def _faults_of_input(where: str, criterion: str, name: str, asked: KnownInput, reading: Mapping | None, elsewhere: bool) -> list[str]:
    if reading is None:
        missing = not asked.optional and not elsewhere
        return [f"{where}, key readings: {criterion} cannot do without {name!r}; expected it as a reading, in given or in from."] if missing else []
    where = f"{where}, reading {name}"
    if reading_kind(reading) not in _FED_BY[asked.kind]:
        return [f"{where}, key kind: is {reading_kind(reading)}; {criterion} asks for {' or '.join(_FED_BY[asked.kind])}."]
    faults = _faults_of_unit(where, criterion, asked, reading) + _faults_of_choices(where, criterion, asked, reading)
    if reading.get("optional") is True and not asked.optional and not elsewhere:
        faults.append(f"{where}, key optional: is true, but {criterion} cannot do without it; expected false, or the input in given or from as well.")
    return faults


def _faults_of_unit(where: str, criterion: str, asked: KnownInput, reading: Mapping) -> list[str]:
    unit = reading.get("unit")
    if asked.kind != "number" or not isinstance(unit, str):
        return []
    try:
        convert(1, unit, asked.unit or "")
    except InspectorError:
        return [f"{where}, key unit: is {unit!r}; {criterion} asks for {asked.unit or 'a plain number'} or a unit that converts to it."]
    return []


def _faults_of_choices(where: str, criterion: str, asked: KnownInput, reading: Mapping) -> list[str]:
    choices = reading.get("choices")
    if asked.kind != "choice" or not isinstance(choices, list):
        return []
    return [
        f"{where}, key choices: {choice!r} is no choice of {criterion}; its choices are {', '.join(asked.choices)}."
        for choice in choices if str(choice) not in asked.choices
    ]


def _faults_of_constant(where: str, criterion: str, name: str, asked: KnownInput, constants: Mapping[str, Any]) -> list[str]:
    if name not in constants:
        return []
    value = constants[name]
    if isinstance(value, bool) or not isinstance(value, _GIVEN_AS[asked.kind]):
        return [f"{where}, key given.{name}: is {value!r}; {criterion} asks for a {asked.kind}."]
    if asked.kind == "choice" and value not in asked.choices:
        return [f"{where}, key given.{name}: {value!r} is no choice of {criterion}; its choices are {', '.join(asked.choices)}."]
    return []


def _table(value: Any) -> Mapping[str, Any]:
    return value if isinstance(value, Mapping) else {}
