"""The golden cases of all criteria as a surveyor would type them: one check for each criterion, one
unit for each case, so that the computer and a device can be asked the same.
"""

from collections.abc import Iterator
from datetime import date
from typing import Any

from inspector.checklists.registry import CRITERIA
from inspector.criteria.core.criterion import Criterion
from inspector.values.field import Field
from tests.criteria.conftest import VALID
from tests.criteria.golden_judgements import cases_of

SYSTEM = "golden"
_WORDS = {"ask": "Ask.", "look": "Look.", "bad": "Bad.", "space": "deck"}


def golden_tables() -> dict[str, dict[str, Any]]:
    """A checklist folder's tables with one check for each criterion, which reads every input."""
    system = {
        "id": SYSTEM,
        "name": "Golden",
        "order": 1,
        "unit": "case",
        "units": [],
        "about": "",
        "retain": "",
        "refurbish": "",
        "remove": "",
    }
    checks = [
        {
            "id": rule.name,
            "title": rule.title,
            **_WORDS,
            "minutes": 1,
            "weight": 1,
            "criterion": rule.name,
            "readings": [_reading(asked) for asked in rule.inputs],
        }
        for rule in CRITERIA.values()
    ]
    return {"golden.toml": {"system": system, "check": checks}}


def _reading(asked: Field) -> dict[str, Any]:
    raw = {"id": asked.name, "label": asked.label, "kind": asked.kind, "optional": asked.optional}
    if asked.choices:
        raw["choices"] = list(asked.choices)
    return raw | ({"unit": asked.unit} if asked.unit else {})


def golden_entries() -> Iterator[dict[str, Any]]:
    """Every reading of every case, as a device records it."""
    number = 0
    for rule in CRITERIA.values():
        for place, case in enumerate(cases_of(rule, VALID[rule.name]), 1):
            for subject, field, value in _readings(rule, place, case):
                number += 1
                yield entry(number, subject, field, value)


def _readings(
    rule: Criterion, place: int, case: dict[str, Any]
) -> Iterator[tuple[str, str, dict[str, str]]]:
    for asked in rule.inputs:
        if case[asked.name] is not None:
            value = {"value": typed(case[asked.name]), "unit": asked.unit or ""}
            yield f"sheet/{SYSTEM}/case-{place}/{rule.name}", f"reading/{asked.name}", value


def typed(value: Any) -> str:
    """A value as it is typed: never in powers of ten, and never with exactly three decimals."""
    if isinstance(value, date):
        return value.isoformat()
    if not isinstance(value, float):
        return str(value)
    whole, _, decimals = f"{value:.15f}".rstrip("0").partition(".")
    return f"{whole}.{decimals.ljust(4, '0')}" if decimals else whole


def entry(number: int, subject: str, field: str, value: Any) -> dict[str, Any]:
    """One entry of a device called "tester"."""
    return {
        "id": f"tester:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "tester",
        "who": "QX",
        "subject": subject,
        "field": field,
        "value": value,
        "replaces": [],
    }
