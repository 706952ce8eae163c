"""The kind of ship as calculated for one inspection's persons."""

from dataclasses import dataclass

from inspector.conversion.core.case import Case
from inspector.conversion.core.ship_particulars import HYDROSTATICS
from inspector.conversion.ship_kind.architect_list import (
    Compartment,
    Needed,
    compartments,
    needed_by_architect,
)
from inspector.conversion.ship_kind.assumed_damage import assumed_damage
from inspector.conversion.ship_kind.existing_items import ExistingItems, existing_items
from inspector.conversion.ship_kind.kind_lines import KindLine, kind_lines
from inspector.conversion.ship_kind.particulars import ABOARD
from inspector.conversion.ship_kind.ship_kinds import Aboard, kind_of
from inspector.conversion.space.calculation import layout
from inspector.record.typed_values import typed_number
from inspector.values.errors import InspectorError

MOST_PERSONS = 6000


@dataclass(frozen=True)
class ShipKind:
    """What the persons of the brief make of a vessel.

    Parameters
    ----------
    aboard : Aboard
    kind : str
        By who is aboard; "" where that is not known.
    wanted : str
        The kind that the brief names; "" where it names none.
    length : float or None
        [m]
    length_from : str
        Where the length comes from.
    lines : tuple of KindLine
        Empty where the brief names no persons.
    items : ExistingItems
    needed : tuple of Needed
    compartments : tuple of Compartment
    damage : tuple of (float, float) or None
        The damage to be survived by a passenger ship: length and depth [m].
    faults : tuple of str
    """

    aboard: Aboard
    kind: str
    wanted: str
    length: float | None
    length_from: str
    lines: tuple[KindLine, ...]
    items: ExistingItems
    needed: tuple[Needed, ...]
    compartments: tuple[Compartment, ...]
    damage: tuple[float, float] | None
    faults: tuple[str, ...] = ()


def ship_kind(case: Case) -> ShipKind:
    """Return what the persons of the brief make of a vessel.

    Parameters
    ----------
    case : Case

    Returns
    -------
    ShipKind

    References
    ----------
    Model of our own, joining the rules of ``ship_kinds``, each of which names its source.
    """
    aboard, faults = _aboard(case)
    length, length_from = _length(case)
    usable = aboard.persons is not None
    return ShipKind(
        aboard,
        kind_of(aboard),
        str(case.assessment.brief.get("ship") or ""),
        length,
        length_from,
        kind_lines(aboard, length, _tonnage(case)) if usable else (),
        existing_items(case.assessment, aboard.persons),
        needed_by_architect(case),
        compartments(case),
        _damage(case, aboard, length),
        faults,
    )


def _aboard(case: Case) -> tuple[Aboard, tuple[str, ...]]:
    """Who is aboard, and what about it contradicts itself."""
    row = case.one(ABOARD)
    persons = typed_number(case.assessment.brief.get("persons"), 0)
    total = int(persons) if persons and 1 <= persons <= MOST_PERSONS else None
    crew, special, passengers = (row["crew"], row["special"], row["passengers"])
    told = [each for each in (crew, special, passengers) if each is not None]
    faults = ()
    if total is not None and sum(told) > total:
        faults = (
            f"{ABOARD.title}: {sum(told)} persons are named and the brief asks for {total}; "
            "correct one of both.",
        )
    return Aboard(total, crew, special, passengers), faults


def _length(case: Case) -> tuple[float | None, str]:
    """The length by which rules are chosen, and where it comes from."""
    given = case.one(ABOARD).number("length")
    if given is not None:
        return given, "the load line certificate"
    between = case.one(HYDROSTATICS).number("lpp")
    if between is not None:
        return between, "the length between perpendiculars, which is close to it"
    over_all = typed_number(case.assessment.vessel.get("length"), 0)
    if over_all and 5 <= over_all <= 400:
        return over_all, "the length over all, which is longer"
    return None, ""


def _tonnage(case: Case) -> float | None:
    """The gross tonnage after the conversion, else as it is."""
    try:
        after = layout(case).tonnage.after
    except InspectorError:
        after = None
    if after is not None:
        return after.high
    return typed_number(case.assessment.vessel.get("tonnage"), 0)


def _damage(case: Case, aboard: Aboard, length: float | None) -> tuple[float, float] | None:
    """The damage that a passenger ship with these persons must survive."""
    breadth = case.one(HYDROSTATICS).number("breadth")
    if breadth is None:
        breadth = typed_number(case.assessment.vessel.get("breadth"), 0)
    if aboard.persons is None or length is None or not breadth or not 2 <= breadth <= 80:
        return None
    return assumed_damage(aboard.persons, length, breadth)
