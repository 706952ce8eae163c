"""What the dynamic-positioning equipment classes require of power and thrust.

MSC/Circ.645 for units built from 1 July 1994, MSC.1/Circ.1580 from 9 June 2017. Both are functional
texts, not counts: equipment consistent with a class is not the class; only the notation and the
verification document are.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.power.cascade_failure import out_of_order
from inspector.conversion.power.holding.holding_power import Outcome
from inspector.conversion.power.plant import Plant, with_bus
from inspector.criteria.core.source import Source
from inspector.values.text import counted

OLDER_FROM, NEWER_FROM = date(1994, 7, 1), date(2017, 6, 9)
OLDER = Source.seen(
    "MSC/Circ.645, guidelines for vessels with dynamic positioning", "1994", "2 and 3.2"
)
NEWER = Source.seen(
    "MSC.1/Circ.1580, guidelines for vessels and units with dynamic positioning", "2017", "2 and 3"
)
CLASSES = ("1", "2", "3")
# A finding that names more failures than this is no longer read.
MOST_NAMED = 4


@dataclass(frozen=True)
class DpRequirement:
    """One requirement of a class.

    Parameters
    ----------
    requirement : str
        What the class requires.
    finding : str
        What the plant has.
    met : bool or None
        Whether it is met; None where that is not known.
    """

    requirement: str
    finding: str
    met: bool | None


def text_for(built: date | None) -> Source | None:
    """Return the text by which a unit is judged.

    Parameters
    ----------
    built : date or None
        Day of the keel.

    Returns
    -------
    Source or None
        None before July 1994, or where the day is not known.

    References
    ----------
    MSC/Circ.645 and MSC.1/Circ.1580, application (seen).
    """
    # Older ships are under no text, and a guess by the newer ones would fail them wrongly.
    if built is None or built < OLDER_FROM:
        return None
    return OLDER if built < NEWER_FROM else NEWER


def dp_requirements(
    number: str, plant: Plant, failures: Sequence[Outcome]
) -> tuple[DpRequirement, ...]:
    """Return the requirements of a class that power and thrust can answer.

    Parameters
    ----------
    number : str
        "1", "2" or "3".
    plant : Plant
    failures : sequence of Outcome
        Every single failure of the plant.

    Returns
    -------
    tuple of DpRequirement

    Raises
    ------
    BadInput
        The class is none of the three.

    References
    ----------
    MSC/Circ.645, 2 and 3.2, and MSC.1/Circ.1580, 2 and 3 (seen).
    """
    if number not in CLASSES:
        sentence = f"DP class: {number!r} is not one of 1, 2, 3."
        raise BadInput(sentence, field="dp class", value=number)
    # Class 1 may lose position on one failure, so the search for failures has nothing to add.
    if number == "1":
        requirement = (
            "Position may be lost on one failure; no redundancy is required of power and thrust."
        )
        return (DpRequirement(requirement, "nothing to check here", True),)
    ties = _open_ties(plant) if number == "3" else _parting_ties(plant)
    found = (_divided(plant), ties, _single_failure(plant, failures), _in_order(plant))
    return (*found, _compartments()) if number == "3" else found


def _divided(plant: Plant) -> DpRequirement:
    """Return whether the sets in order are on two buses or more."""
    buses = {generator.bus for generator in plant.sets if generator.counts}
    requirement = "Power divisible into two or more systems, so that one remains after a failure."
    finding = f"sets in order on {counted(len(buses), 'bus', 'buses')}"
    return DpRequirement(requirement, finding, len(buses) >= 2)


def _open_ties(plant: Plant) -> DpRequirement:
    """Class 3: ties open, or closed ones proven and still not known to be equal."""
    requirement = "Ties open, unless closed ties are shown to be of equal integrity."
    closed = [tie for tie in plant.ties if tie.closed]
    if not closed:
        return DpRequirement(requirement, "all open", True)
    # Proving trials speak for a closed tie, but equal integrity is more than a plate can show.
    met = None if all(tie.proven for tie in closed) else False
    names = ", ".join(tie.name for tie in closed)
    return DpRequirement(requirement, f"closed: {names}", met)


def _parting_ties(plant: Plant) -> DpRequirement:
    """Class 2: closed ties proven to part by themselves."""
    requirement = "Closed ties part by themselves on faults."
    unproven = [tie.name for tie in plant.ties if tie.closed and not tie.proven]
    if unproven:
        finding = f"closed and not proven: {', '.join(unproven)}"
        return DpRequirement(requirement, finding, False)
    return DpRequirement(requirement, "open, or proven to part on a fault", True)


def _single_failure(plant: Plant, failures: Sequence[Outcome]) -> DpRequirement:
    """Position after any single failure, by the cases that were calculated."""
    requirement = (
        "Position kept after any single failure of an active part: sets, switchboards, thrusters, "
        "control, remote valves."
    )
    # By the likely thrusts and needs; what may be lost is in the case below.
    lost = [
        with_bus(failure.element, plant.buses)
        for failure in failures
        if failure.keeps_station is False
    ]
    # One failure that loses position is enough, whatever the uncertain ones would show.
    if lost:
        more = " and others" if len(lost) > MOST_NAMED else ""
        finding = f"not kept without {', '.join(lost[:MOST_NAMED])}{more}"
        return DpRequirement(requirement, finding, False)
    # One uncertain failure leaves the whole requirement open.
    if not failures or any(failure.keeps_station is None for failure in failures):
        finding = "not known: wind to be withstood, areas or thrusts are missing or too uncertain"
        return DpRequirement(requirement, finding, None)
    return DpRequirement(requirement, "kept in every case tried", True)


def _in_order(plant: Plant) -> DpRequirement:
    """What the failure analysis counts on, and what was out of order at the inspection."""
    requirement = "All parts that the failure analysis counts on in order."
    broken = sorted(out_of_order(plant))
    if broken:
        return DpRequirement(requirement, f"out of order: {', '.join(broken)}", False)
    # Only as far as somebody typed it: the table does not know what was not tried.
    return DpRequirement(requirement, "nothing typed as out of order", True)


def _compartments() -> DpRequirement:
    """Class 3: fire and flooding, which no table can answer."""
    return DpRequirement(
        "Fire or flooding of any one compartment, and failure of static parts, survived.",
        "only as far as rooms and static parts are typed as dependencies; "
        "walk the separation of spaces",
        None,
    )
