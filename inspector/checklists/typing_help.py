"""What a page needs to help somebody type a reading: its sign, and what is plausible."""

from collections.abc import Mapping

from inspector.checklists.model import Check
from inspector.checklists.registry import criterion
from inspector.criteria.core.criterion import Criterion
from inspector.values.errors import InspectorError
from inspector.values.field import Field
from inspector.values.unit_tables import QUANTITY
from inspector.values.units import convert, units_like

# Quantities that go below zero where no criterion says anything else.
_SIGNED = ("temperature", "temperature difference", "angle")


def typing_help(
    check: Check, reading: Field, own_criteria: Mapping[str, Criterion] | None = None
) -> dict[str, object]:
    """Return what helps to type one reading of a check.

    Parameters
    ----------
    check : Check
    reading : Field
        One of its readings.
    own_criteria : mapping of str to Criterion, optional

    Returns
    -------
    dict
        ``signed``: whether it can be below zero. ``ranges``: "<low> <high>" for each unit that is
        offered, joined by "|", as its criterion accepts it; "" where nothing says what is
        plausible.
    """
    if reading.kind != "number" or not reading.unit:
        return {"signed": False, "ranges": ""}
    asked = _input_of(check, reading, own_criteria)
    signed = QUANTITY.get(reading.unit) in _SIGNED
    if asked is None or asked.low is None or asked.high is None:
        return {"signed": signed, "ranges": ""}
    ends = (asked.low, asked.high)
    try:
        ranges = [
            " ".join(f"{convert(end, asked.unit, unit):.6g}" for end in ends)
            for unit in units_like(reading.unit)
        ]
        # A temperature may be below zero in one unit only.
        signed = any(part.startswith("-") for part in ranges)
    except InspectorError:
        return {"signed": signed, "ranges": ""}
    return {"signed": signed, "ranges": "|".join(ranges)}


def _input_of(
    check: Check, reading: Field, own_criteria: Mapping[str, Criterion] | None
) -> Field | None:
    """The input of the check's criterion that the reading supplies; None where it supplies none."""
    if not check.criterion:
        return None
    inputs = criterion(check.criterion, own_criteria).inputs
    return next((each for each in inputs if each.name == reading.name and each.unit), None)
