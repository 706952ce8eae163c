"""How many looks the units on board ask for, and how long they take one person."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from inspector.checklists.asked import Asked, asked_of, minutes_of
from inspector.checklists.attainable import reason_against_check
from inspector.checklists.model import Library, Trial
from inspector.record.state import State
from inspector.record.typed_values import texts

# A unit as ``units_of`` lists it.
OnBoard = Mapping[str, list[dict[str, str]]]


@dataclass(frozen=True)
class Effort:
    """What looks ask for; what is optional counts in none of these.

    Parameters
    ----------
    checks : int
        How many there are.
    minutes, critical : float
        For all of them, and for the critical ones; each trial once, without the ways [min].
    scans : int
        How many of them can be read from scans before the visit.
    scan_minutes : float
        For these [min].
    """

    checks: int
    minutes: float
    critical: float
    scans: int
    scan_minutes: float


def asked_on_board(state: State, library: Library, units: OnBoard) -> dict[str, list[Asked]]:
    """Return the checks that the units on board are asked, by system.

    Parameters
    ----------
    state : State
    library : Library
    units : mapping of str to list of dict
        As ``units_of`` lists them.

    Returns
    -------
    dict of str to list of Asked
        With a key for each system of the units.
    """
    return {
        system: asked_of(
            library.systems[system],
            {unit["id"]: unit["kind"] for unit in on_board},
            answered_in(state, system),
        )
        for system, on_board in units.items()
    }


def answered_in(state: State, system: str) -> set[tuple[str, str]]:
    """Return unit and check of every sheet of a system for which something is recorded."""
    found = set()
    for subject in state.subjects(f"sheet/{system}/"):
        _, _, unit, check = subject.split("/")
        if state.values(subject):
            found.add((unit, check))
    return found


def effort_of(asked: Iterable[Asked], trials: Mapping[str, Trial]) -> Effort:
    """Return what checks ask for.

    Parameters
    ----------
    asked : iterable of Asked
        Of one system, or of the whole vessel: a trial that several systems share counts once.
    trials : mapping of str to Trial

    Returns
    -------
    Effort
    """
    # What is only offered is no time that a surveyor must plan for.
    needed = [one for one in asked if not one.check.optional]
    scans = [one for one in needed if one.check.scan]
    return Effort(
        checks=len(needed),
        minutes=minutes_of(needed, trials),
        critical=minutes_of([one for one in needed if one.check.critical], trials),
        scans=len(scans),
        scan_minutes=minutes_of(scans, trials),
    )


@dataclass(frozen=True)
class Chances:
    """What can be had at this visit.

    Parameters
    ----------
    state, berth : str
        How and where she is, "" where that is not known.
    had : int
        How many looks can be had.
    against : mapping of str to int
        Reason -> how many cannot be had for it.
    """

    state: str
    berth: str
    had: int
    against: Mapping[str, int]


def chances_now(state: State, asked: Mapping[str, list[Asked]]) -> Chances:
    """Return what can be had in the state in which the vessel is met.

    Parameters
    ----------
    state : State
    asked : mapping of str to list of Asked
        As ``asked_on_board`` returns it.

    Returns
    -------
    Chances
        Over all that is not optional.
    """
    visit = texts(state, "inspection")
    how, where = visit.get("state", ""), visit.get("berth", "")
    reasons = Counter(
        reason_against_check(one.check, visit)
        for own in asked.values()
        for one in own
        if not one.check.optional
    )
    # No reason against it: it can be had today.
    had = reasons.pop("", 0)
    return Chances(how, where, had, dict(reasons))


def not_asked_by_unit(
    library: Library, units: OnBoard, asked: Mapping[str, list[Asked]]
) -> dict[str, list[str]]:
    """Return, for each sheet, the checks of its kind that another unit's sheet asks once.

    Parameters
    ----------
    library : Library
    units : mapping of str to list of dict
        As ``units_of`` lists them.
    asked : mapping of str to list of Asked
        As ``asked_on_board`` returns it.

    Returns
    -------
    dict of str to list of str
        "<system>/<unit>" -> ids of checks.
    """
    found = {}
    for system, on_board in units.items():
        own = {(one.unit, one.check.id) for one in asked[system]}
        for unit in on_board:
            checks = library.systems[system].checks_for(unit["kind"])
            found[f"{system}/{unit['id']}"] = [
                check.id for check in checks if (unit["id"], check.id) not in own
            ]
    return found
