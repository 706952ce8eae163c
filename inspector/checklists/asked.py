"""Which checks each unit is asked, and how long they take together.

A check that is asked once per vessel goes to one unit; a trial in which several checks are read off
takes its time once.
"""

import math
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from inspector.checklists.model import Check, Library, System, Trial


@dataclass(frozen=True)
class Asked:
    """One check that one unit is asked.

    Parameters
    ----------
    system, unit : str
        Their ids.
    check : Check
    """

    system: str
    unit: str
    check: Check


def asked_of(
    system: System, kinds: Mapping[str, str], answered: Collection[tuple[str, str]] = ()
) -> list[Asked]:
    """Return the checks that the units of a system are asked.

    Parameters
    ----------
    system : System
    kinds : mapping of str to str
        Id of each unit on board -> its kind, in the order in which they were counted.
    answered : collection of (str, str)
        Unit and check of what is answered already: where a check is asked once, it stays with the
        unit on whose sheet it was answered.

    Returns
    -------
    list of Asked
        Unit by unit, in the order of the checklist.
    """
    bearers = {
        check.id: _bearer(check, system, kinds, answered) for check in system.checks if check.once
    }
    return [
        Asked(system.id, unit, check)
        for unit, kind in kinds.items()
        for check in system.checks_for(kind)
        if not check.once or bearers[check.id] == unit
    ]


def _bearer(
    check: Check, system: System, kinds: Mapping[str, str], answered: Collection[tuple[str, str]]
) -> str:
    """The unit on whose sheet a check is asked once, "" where none is asked it."""
    candidates = [unit for unit, kind in kinds.items() if check in system.checks_for(kind)]
    # A unit whose kind is not known is asked everything; one of the right kind comes before it.
    candidates.sort(key=lambda unit: bool(check.kinds) and kinds[unit] not in check.kinds)
    with_answer = [unit for unit in candidates if (unit, check.id) in answered]
    return next(iter([*with_answer, *candidates]), "")


def minutes_of(asked: Iterable[Asked], trials: Mapping[str, Trial]) -> float:
    """Return how long checks take one person [min], without the ways from space to space.

    Parameters
    ----------
    asked : iterable of Asked
    trials : mapping of str to Trial
        Those of the library. A trial's minutes count once for each unit or once for the vessel, as
        it says itself; the minutes of a check within it are those of reading it off.

    Returns
    -------
    float
        Without what is optional, which nobody has to do.
    """
    needed = [one for one in asked if not one.check.optional]
    runs = {run_of(one, trials): trials.get(one.check.together) for one in needed}
    # Reading off, and then each trial once, however many checks are read in it.
    own = math.fsum(one.check.minutes for one in needed)
    return own + math.fsum(trial.minutes for trial in runs.values() if trial)


def run_of(one: Asked, trials: Mapping[str, Trial]) -> tuple[str, ...]:
    """Return which run of which trial a check is read off in.

    Parameters
    ----------
    one : Asked
    trials : mapping of str to Trial

    Returns
    -------
    tuple of str
        Alike for the checks of one run; empty where the check is done by itself.
    """
    trial = trials.get(one.check.together)
    if trial is None:
        return ()
    # One run for the whole vessel, or one for each unit: what makes two checks the same run.
    return (trial.id,) if trial.per == "vessel" else (trial.id, one.system, one.unit)


def minutes_of_sheet(system: System, library: Library) -> float:
    """Return how long one unit of every kind of a system takes together [min]."""
    return minutes_of(asked_of(system, {"": ""}), library.trials)
