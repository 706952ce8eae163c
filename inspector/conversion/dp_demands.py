"""What the dynamic-positioning equipment classes ask of power and thrust, against a plant and its single failures.

MSC/Circ.645 for units built from 1 July 1994, MSC.1/Circ.1580 from 9 June 2017. Both are functional texts, not counts:
equipment consistent with a class is not the class; only the notation and the verification document are.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from inspector.conversion.failure import out_of_order
from inspector.conversion.holding import Outcome
from inspector.conversion.inputs import BadInput
from inspector.conversion.plant import Plant, spoken
from inspector.criteria.source import Source

OLDER_FROM, NEWER_FROM = date(1994, 7, 1), date(2017, 6, 9)
OLDER = Source("MSC/Circ.645, guidelines for vessels with dynamic positioning", "1994", "2 and 3.2", "seen")
NEWER = Source("MSC.1/Circ.1580, guidelines for vessels and units with dynamic positioning", "2017", "2 and 3", "seen")
CLASSES = ("1", "2", "3")


@dataclass(frozen=True)
class Demand:
    """One demand of a class: what is asked, what was found, and whether it is met (None: not known)."""

    asked: str
    found: str
    met: bool | None


def text_for(built: date | None) -> Source | None:
    """Which text a unit is judged by, by the day of her keel; None before July 1994 or where the day is not known."""
    if built is None or built < OLDER_FROM:
        return None
    return OLDER if built < NEWER_FROM else NEWER


def demands(number: str, plant: Plant, found: Sequence[Outcome]) -> tuple[Demand, ...]:
    """The demands of class "1", "2" or "3" that power and thrust can answer.

    Errors
    ------
    BadInput : the class is none of the three.
    """
    if number not in CLASSES:
        raise BadInput(f"DP class: {number!r} is not one of 1, 2, 3.", field="dp class", value=number)
    if number == "1":
        return (Demand("Position may be lost on one failure; no redundancy is asked of power and thrust.", "nothing to check here", True),)
    made = (_divided(plant), _ties(number, plant), _single(plant, found), _repaired(plant))
    return (*made, _rooms()) if number == "3" else made


def _divided(plant: Plant) -> Demand:
    buses = {one.bus for one in plant.sets if one.counts}
    asked = "Power divisible into two or more systems, so that one stays after a failure."
    return Demand(asked, f"sets in order on {len(buses)} {'bus' if len(buses) == 1 else 'buses'}", len(buses) >= 2)


def _ties(number: str, plant: Plant) -> Demand:
    closed = [tie for tie in plant.ties if tie.closed]
    unproven = [tie.name for tie in closed if not tie.proven]
    if number == "3":
        found = f"closed: {', '.join(tie.name for tie in closed)}" if closed else "all open"
        return Demand("Ties open, unless closed ties are shown to be of equal integrity.", found, None if closed and not unproven else not closed)
    found = f"closed and not proven: {', '.join(unproven)}" if unproven else "open, or proven to part on a fault"
    return Demand("Closed ties part by themselves on faults.", found, not unproven)


def _single(plant: Plant, found: Sequence[Outcome]) -> Demand:
    asked = "Position held after any single failure of an active part: sets, switchboards, thrusters, control, remote valves."
    fails = [spoken(one.element, plant.buses) for one in found if one.holds is False]
    unknown = [one.element for one in found if one.holds is None]
    if fails:
        return Demand(asked, f"not held without {', '.join(fails[:4])}{' and others' if len(fails) > 4 else ''}", False)
    if unknown or not found:
        return Demand(asked, "not known: wind to be held, areas or thrusts are missing or too uncertain", None)
    return Demand(asked, "held in every case tried", True)


def _repaired(plant: Plant) -> Demand:
    broken = sorted(out_of_order(plant))
    return Demand(
        "All parts that the failure analysis counts on in order.",
        f"out of order: {', '.join(broken)}" if broken else "nothing typed as out of order",
        not broken,
    )


def _rooms() -> Demand:
    return Demand(
        "Fire or flooding of any one compartment, and failure of static parts, survived.",
        "only as far as rooms and static parts are typed as needs; walk the separation of spaces",
        None,
    )
