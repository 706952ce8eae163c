"""Readings as typed -> judgement: units converted, constants and particulars filled in.

A surveyor's typing is never an exception: what cannot be judged comes back as one sentence that
says what is missing or wrong. Whoever wants a judgement calls `judge_sheet`, so that a client's
report and the surveyor's phone cannot differ.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from inspector.assess.limit_crossed import with_limit_crossed
from inspector.checklists.model import Check
from inspector.checklists.registry import criterion
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.limit_sets import LimitSet
from inspector.record.typed_values import typed_text, typed_unit
from inspector.values.errors import InspectorError
from inspector.values.field import Field
from inspector.values.measures import parse_measure
from inspector.values.text import listed
from inspector.values.units import convert

_ORIGINS = {
    "vessel": "the vessel's particulars",
    "brief": "the brief",
    "inspection": "the visit",
    "certificate": "the certificates",
}
_TOO_FAR = "a number is far beyond anything that can be measured; read it again"


@dataclass(frozen=True)
class Basis:
    """What every judgement of an inspection depends on beside the readings of its own sheet.

    Parameters
    ----------
    vessel, brief, visit : mapping of str to str
        Particulars of the vessel, of the brief and of the inspection itself, as typed.
    limits : mapping of str to LimitSet
        The limits that the surveyor set, by criterion; all others are as shipped.
    own_criteria : mapping of str to Criterion
        The surveyor's own, which are looked at before the shipped ones.
    certificate : mapping of str to str
        The certificate by which the bottom is inspected, as typed: a sheet and the list of
        certificates must not count one docking by two periods.
    """

    vessel: Mapping[str, str] = field(default_factory=dict)
    brief: Mapping[str, str] = field(default_factory=dict)
    visit: Mapping[str, str] = field(default_factory=dict)
    limits: Mapping[str, LimitSet] = field(default_factory=dict)
    own_criteria: Mapping[str, Criterion] = field(default_factory=dict)
    certificate: Mapping[str, str] = field(default_factory=dict)


def judge_sheet(
    check: Check, readings: Mapping[str, Any], basis: Basis
) -> tuple[Judgement | None, str]:
    """Judge one check's readings by its criterion.

    An input of the criterion is what was typed, else the particular that the check names under
    `from`, else the constant under `given`.

    Parameters
    ----------
    check : Check
        The check that was answered.
    readings : mapping of str to Any
        Reading id -> as recorded, ``{"value": text, "unit": text}`` or plain text.
    basis : Basis
        Particulars and limits.

    Returns
    -------
    tuple of (Judgement or None, str)
        (judgement, ""); (None, "") where nothing was typed or the check has no criterion;
        (None, one sentence) where it cannot be judged.
    """
    if not check.criterion:
        return None, ""
    try:
        return _judged(check, readings, basis)
    except InspectorError as problem:
        return None, str(problem)
    # A slip of the finger, such as 9e300, overflows in the formulas of the criteria.
    except ArithmeticError:
        return None, f"{check.title} cannot be judged: {_TOO_FAR}."


def _judged(
    check: Check, readings: Mapping[str, Any], basis: Basis
) -> tuple[Judgement | None, str]:
    rule = criterion(check.criterion, basis.own_criteria)
    # Nothing typed is no reading that could not be judged: it is silent.
    typed = [asked for asked in rule.inputs if typed_text(readings.get(asked.name))]
    if not typed:
        return None, ""
    # In this order: what is typed on the sheet is nearest to the thing, and comes last.
    values = {**check.given, **_from_particulars(check, basis)}
    for asked in typed:
        values[asked.name] = _converted(asked, readings[asked.name], check)
    missing = [asked for asked in rule.inputs if _is_missing(asked, values)]
    if missing:
        return None, _missing_sentence(check, missing)
    return _applied(rule, values, basis.limits.get(rule.name)), ""


def _is_missing(asked: Field, values: Mapping[str, Any]) -> bool:
    return not asked.optional and values.get(asked.name) in (None, "")


def _applied(rule: Criterion, values: Mapping[str, Any], limits: LimitSet | None) -> Judgement:
    """The judgement, from the inputs that the criterion knows."""
    known = {asked.name for asked in rule.inputs}
    inputs = {name: value for name, value in values.items() if name in known}
    return with_limit_crossed(rule, inputs, limits, rule.apply(inputs, limits))


def _from_particulars(check: Check, basis: Basis) -> dict[str, str]:
    """Input -> text, of the inputs that the check takes from what is typed elsewhere."""
    sources = {
        "vessel": basis.vessel,
        "brief": basis.brief,
        "inspection": basis.visit,
        "certificate": basis.certificate,
    }
    found = {}
    for name, origin in check.taken.items():
        source, _, particular = origin.partition(".")
        value = str(sources.get(source, {}).get(particular) or "").strip()
        if value:
            found[name] = value
    return found


def _converted(asked: Field, reading: Any, check: Check) -> Any:
    """A reading in the unit of the criterion's input; where none was typed, in the check's own."""
    text = typed_text(reading)
    if asked.kind != "number" or asked.unit is None:
        return text
    # The checklist may ask in another unit than the criterion calculates in.
    units = [own.unit for own in check.readings if own.name == asked.name]
    unit = typed_unit(reading) or next(iter(units), "") or asked.unit
    return convert(*parse_measure(text, unit), asked.unit)


def _missing_sentence(check: Check, missing: list[Field]) -> str:
    names = [_missing_name(check, asked) for asked in missing]
    verb = "is" if len(names) == 1 else "are"
    return f"{check.title} cannot be judged yet: {listed(names)} {verb} missing."


def _missing_name(check: Check, asked: Field) -> str:
    labels = [own.label for own in check.readings if own.name == asked.name]
    label = next(iter(labels), asked.label)
    origin = _ORIGINS.get(check.taken.get(asked.name, "").partition(".")[0])
    return f"'{label}' (from {origin})" if origin else f"'{label}'"
