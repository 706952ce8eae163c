"""Readings as typed -> judgement: units converted, constants and particulars filled in, and a sentence instead of an error where that fails.

A surveyor's typing is never an exception: whatever cannot be judged comes back as one sentence that says what is missing or wrong.
"""

from collections.abc import Mapping
from typing import Any

from inspector.checklists import Check
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.profiles import Profile
from inspector.criteria.registry import criterion
from inspector.errors import InspectorError
from inspector.quantities import convert, parse_number
from inspector.words import listed

_ORIGINS = {"vessel": "the vessel's particulars", "brief": "the brief", "inspection": "the visit"}


def judge_sheet(
    check: Check, readings: Mapping[str, Any], vessel: Mapping[str, str], brief: Mapping[str, str],
    profiles: Mapping[str, Profile] | None = None, visit: Mapping[str, str] | None = None,
) -> tuple[Judgement | None, str]:
    """Judge one check's readings by its criterion.

    readings: reading id -> {"value": text, "unit": text} as recorded. Inputs come from what was typed, else `from` (vessel or brief), else `given`.
    profiles: limits that the surveyor set, by criterion; the others are as shipped. visit: the fields of the inspection itself, such as its date.
    Returns (judgement, ""), or (None, "") where nothing was typed or no criterion is named, or (None, one sentence) where it cannot be judged.
    """
    if not check.criterion:
        return None, ""
    try:
        rule = criterion(check.criterion)
        typed = {asked.name: readings[asked.name] for asked in rule.inputs if typed_text(readings.get(asked.name))}
        if not typed:
            return None, ""
        values = {**check.given, **_taken(check, {"vessel": vessel, "brief": brief, "inspection": visit or {}})}
        values |= {asked.name: _converted(asked, typed[asked.name], check) for asked in rule.inputs if asked.name in typed}
        missing = [asked for asked in rule.inputs if not asked.optional and values.get(asked.name) in (None, "")]
        return (None, _missing_sentence(check, missing)) if missing else (_applied(rule, values, (profiles or {}).get(rule.name)), "")
    except InspectorError as problem:
        return None, str(problem)
    except ArithmeticError:
        return None, f"{check.title} cannot be judged: a number is far beyond anything that can be measured; read it again."


def typed_text(reading: Any) -> str:
    """What was typed for a reading, without its unit; "" where nothing was."""
    value = reading.get("value") if isinstance(reading, Mapping) else reading
    return "" if value is None or isinstance(value, Mapping | list) else str(value).strip()


def typed_unit(reading: Any) -> str:
    """The unit typed with a reading, "" where none was."""
    unit = reading.get("unit") if isinstance(reading, Mapping) else None
    return unit.strip() if isinstance(unit, str) else ""


def _applied(rule: Criterion, values: Mapping[str, Any], profile: Profile | None) -> Judgement:
    known = {asked.name for asked in rule.inputs}
    return rule.apply({name: value for name, value in values.items() if name in known}, profile)


def _taken(check: Check, sources: Mapping[str, Mapping[str, str]]) -> dict[str, str]:
    found = {}
    for name, origin in check.taken.items():
        room, _, field = origin.partition(".")
        value = str(sources.get(room, {}).get(field) or "").strip()
        if value:
            found[name] = value
    return found


def _converted(asked: Input, reading: Any, check: Check) -> Any:
    text = typed_text(reading)
    if asked.kind != "number" or asked.unit is None:
        return text
    own = next((one.unit for one in check.readings if one.id == asked.name), "")
    return convert(parse_number(text), typed_unit(reading) or own or asked.unit, asked.unit)


def _missing_sentence(check: Check, missing: list[Input]) -> str:
    names = [_missing_name(check, asked) for asked in missing]
    return f"{check.title} cannot be judged yet: {listed(names)} {'is' if len(names) == 1 else 'are'} missing."


def _missing_name(check: Check, asked: Input) -> str:
    label = next((one.label for one in check.readings if one.id == asked.name), asked.label)
    origin = _ORIGINS.get(check.taken.get(asked.name, "").partition(".")[0])
    return f"'{label}' (from {origin})" if origin else f"'{label}'"
