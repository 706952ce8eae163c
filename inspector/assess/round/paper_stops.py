"""The stops of a visit on paper: every look with a number that sheet and typing page share."""

from collections.abc import Mapping
from dataclasses import dataclass

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment


@dataclass(frozen=True)
class PaperLook:
    """One look as a line on paper.

    Parameters
    ----------
    number : str
        Of the stop and of the line in it: "7.12".
    system : str
        Name.
    result : CheckResult
        The check on its unit, with what is recorded.
    """

    number: str
    system: str
    result: CheckResult


@dataclass(frozen=True)
class PaperStop:
    """One space with its looks.

    Parameters
    ----------
    number : int
        Its place in the walking order of all spaces.
    space, name : str
        Id and name.
    looks : tuple of PaperLook
        System by system.
    """

    number: int
    space: str
    name: str
    looks: tuple[PaperLook, ...]


def paper_stops(assessment: Assessment, spaces: Mapping[str, str]) -> tuple[PaperStop, ...]:
    """Return the stops that have looks, numbered in walking order.

    Parameters
    ----------
    assessment : Assessment
    spaces : mapping of str to str
        Id -> name of every space of the checklists, in walking order.

    Returns
    -------
    tuple of PaperStop
        Numbers change only when units are counted anew.
    """
    by_space: dict[str, list[tuple[str, CheckResult]]] = {}
    for part in assessment.systems:
        for unit in part.units:
            for result in unit.results:
                by_space.setdefault(result.space, []).append((part.system.name, result))
    return tuple(
        PaperStop(
            number,
            space,
            name,
            tuple(
                PaperLook(f"{number}.{line}", system, result)
                for line, (system, result) in enumerate(by_space[space], 1)
            ),
        )
        for number, (space, name) in enumerate(spaces.items(), 1)
        if space in by_space
    )
