"""Ten readings of ten criteria as a surveyor types them on the shipped checklists, with what the
computer says of each.
"""

from dataclasses import dataclass

from inspector import places
from inspector.assess.judging import Basis, judge_sheet
from inspector.checklists.loader import read_library
from inspector.checklists.model import Check
from inspector.checklists.registry import criterion
from inspector.values.units import convert
from tests.criteria.conftest import VALID
from tests.criteria.golden_readings import typed


@dataclass(frozen=True)
class Reading:
    """A check with what is typed into its fields, and the sentence that the computer answers."""

    system: str
    check: str
    fields: dict[str, str]
    sentence: str


def ten_readings() -> list[Reading]:
    """The first ten checks whose criterion needs nothing but what is typed on the card, each with
    another criterion and in another system where there are enough.
    """
    library = read_library(places.shipped("checklists"))
    found: dict[str, Reading] = {}
    for system in library.systems.values():
        of_system = 0
        for check in system.checks:
            if of_system < 2 and check.criterion not in found and _is_plain(check):
                found[check.criterion] = _reading(system.id, check)
                of_system += 1
    return list(found.values())[:10]


def _is_plain(check: Check) -> bool:
    """Whether every sheet of the system shows the card, free to be filled in, and it is enough."""
    if not check.criterion or check.kinds or check.enclosed or check.taken or check.once:
        return False
    asked = {reading.name for reading in check.readings} | set(check.given)
    return all(field.optional or field.name in asked for field in criterion(check.criterion).inputs)


def _reading(system: str, check: Check) -> Reading:
    fields = {}
    for asked in check.readings:
        rule = {field.name: field for field in criterion(check.criterion).inputs}.get(asked.name)
        value = VALID[check.criterion].get(asked.name)
        if rule is None or value is None:
            continue
        if asked.kind == "number" and asked.unit:
            value = convert(float(value), rule.unit, asked.unit)
        fields[asked.name] = typed(value)
    judgement, cannot = judge_sheet(check, fields, Basis())
    assert judgement, f"{system}/{check.id}: {cannot}"
    return Reading(system, check.id, fields, judgement.sentence)
