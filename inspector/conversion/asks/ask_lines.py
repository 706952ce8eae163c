"""The lines of what is asked: each requirement of every chapter, with its state, worst first."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from inspector.conversion.core.chapter import Chapter, Requirement

MET, NOT_MET, NOT_SURE, NOT_KNOWN = "met", "not met", "not sure", "not known"
# The order in which a reader must see them: what fails, what may fail, what nobody knows.
WORST_FIRST = (NOT_MET, NOT_SURE, NOT_KNOWN, MET)


@dataclass(frozen=True)
class AskLine:
    """One thing that is asked, and where it is answered.

    Parameters
    ----------
    requirement : Requirement
    chapter : str
        The id of the chapter that answers it.
    state : str
        One of WORST_FIRST.
    """

    requirement: Requirement
    chapter: str
    state: str


def state_of(requirement: Requirement) -> str:
    """Return how a requirement is met.

    Parameters
    ----------
    requirement : Requirement

    Returns
    -------
    str
        One of WORST_FIRST.

    References
    ----------
    Model of our own.
    """
    if requirement.offered is None:
        return NOT_KNOWN
    return {True: MET, False: NOT_MET, None: NOT_SURE}[requirement.met]


def margin(requirement: Requirement) -> float:
    """Return how far the likely value, else the careful end, is on the good side of what is asked.

    Parameters
    ----------
    requirement : Requirement

    Returns
    -------
    float
        Share of what is asked [-]; below zero where it is missed; 0 where nothing is offered.

    References
    ----------
    Model of our own.
    """
    offered, asked = requirement.offered, requirement.asked
    if offered is None:
        return 0.0
    careful = offered.low if requirement.least else offered.high
    likely = careful if offered.point is None else offered.point
    beyond = likely - asked if requirement.least else asked - likely
    # Where nothing is asked for but a side of zero, the reach of the span is the yardstick.
    return beyond / (abs(asked) or max(abs(offered.low), abs(offered.high)) or 1.0)


def ask_lines(chapters: Iterable[Chapter]) -> tuple[AskLine, ...]:
    """Return every requirement of the chapters, the worst first.

    Parameters
    ----------
    chapters : iterable of Chapter

    Returns
    -------
    tuple of AskLine
        By state, and in each state by the margin, the least first.

    References
    ----------
    Model of our own.
    """
    lines = [
        AskLine(requirement, chapter.id, state_of(requirement))
        for chapter in chapters
        for requirement in chapter.requirements
    ]
    return tuple(sorted(lines, key=_order))


def _order(line: AskLine) -> tuple[int, float]:
    return WORST_FIRST.index(line.state), margin(line.requirement)


def counts(lines: Sequence[AskLine]) -> dict[str, int]:
    """Return how many lines are in each state.

    Parameters
    ----------
    lines : sequence of AskLine

    Returns
    -------
    dict of str to int
        Every state of WORST_FIRST.

    References
    ----------
    Model of our own.
    """
    return {state: sum(line.state == state for line in lines) for state in WORST_FIRST}
