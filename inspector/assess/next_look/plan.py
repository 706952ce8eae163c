"""The best set of looks for the minutes left, exactly.

It is a knapsack over spaces, where to enter a space costs the walk to it once. The greedy order by
gain per minute can lose; the exact plan is a dynamic programme over half minutes and quick.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

# Half minutes.
TICKS = 2
# So that 30.0000000001 minutes fit into 30, and equal sums are not taken for better ones.
_MINUTE_TOLERANCE, _GAIN_TOLERANCE = 1e-9, 1e-12


@dataclass(frozen=True)
class Look:
    """One look that could still be taken.

    Parameters
    ----------
    subject : str
        The sheet.
    label : str
        "Bow thruster 1: Water in the hub oil".
    space : str
        Where it is taken.
    minutes : float
    gain : float
        What it is worth.
    """

    subject: str
    label: str
    space: str
    minutes: float
    gain: float


@dataclass(frozen=True)
class Plan:
    """The chosen looks.

    Parameters
    ----------
    looks : tuple of Look
        In walking order.
    gain : float
        What they are worth together.
    minutes : float
        Walks included.
    why : str
        Why there is none, "" where there are any.
    """

    looks: tuple[Look, ...]
    gain: float
    minutes: float
    why: str = ""


@dataclass(frozen=True)
class _Step:
    """What was decided for one space, by time: the looks taken, and whether it was entered."""

    looks: list[Look]
    taken: list[bytearray]
    entered: bytearray
    entering: int


def best_plan(looks: Iterable[Look], minutes: float, walk: float = 2.0, here: str = "") -> Plan:
    """Find the set of looks with the greatest sum of gains that fits.

    Parameters
    ----------
    looks : iterable of Look
    minutes : float
        Left on board.
    walk : float
        Minutes to enter a space other than `here`.
    here : str
        The space where the surveyor is, "" where that is not known.

    Returns
    -------
    Plan
        Of equal ones the shorter, then the first in the order given. Exact; the effort grows with
        looks times half minutes.
    """
    useful = [look for look in looks if look.gain > 0]
    budget = math.floor(max(minutes, 0) * TICKS + _MINUTE_TOLERANCE)
    spaces = list(dict.fromkeys(look.space for look in useful))
    # Where the surveyor is comes first: it costs no walk.
    spaces.sort(key=lambda space: space != here)
    best = [0.0] * (budget + 1)
    steps: list[_Step] = []
    for space in spaces:
        own = [look for look in useful if look.space == space]
        best, step = _with_space(best, own, 0 if space == here else _ticks(walk))
        steps.append(step)
    chosen, spent = _followed(steps, best)
    if not chosen:
        return Plan((), 0.0, 0.0, _why_empty(useful, minutes))
    order = {look.subject: number for number, look in enumerate(useful)}
    chosen.sort(key=lambda look: (spaces.index(look.space), order[look.subject]))
    return Plan(tuple(chosen), math.fsum(look.gain for look in chosen), spent / TICKS)


def _ticks(minutes: float) -> int:
    return math.ceil(minutes * TICKS - _MINUTE_TOLERANCE)


def _with_space(before: list[float], looks: list[Look], entering: int) -> tuple[list[float], _Step]:
    """The best sums with one more space, by the time spent."""
    inside = _later(before, entering, 0.0)
    taken = []
    for look in looks:
        with_look = _later(inside, _ticks(look.minutes), look.gain)
        taken.append(_where_better(with_look, inside))
        inside = _best_of(with_look, inside)
    step = _Step(looks, taken, _where_better(inside, before), entering)
    return _best_of(inside, before), step


def _later(sums: list[float], ticks: int, gain: float) -> list[float]:
    """The sums after something that takes time and brings a gain."""
    size = len(sums)
    moved = [value + gain for value in sums[: max(size - ticks, 0)]]
    return [-math.inf] * min(ticks, size) + moved


def _where_better(new: list[float], old: list[float]) -> bytearray:
    pairs = zip(new, old, strict=True)
    return bytearray(gained > kept + _GAIN_TOLERANCE for gained, kept in pairs)


def _best_of(new: list[float], old: list[float]) -> list[float]:
    return [max(pair) for pair in zip(new, old, strict=True)]


def _followed(steps: list[_Step], best: list[float]) -> tuple[list[Look], int]:
    """Back from the shortest time that reaches the greatest sum to the looks that make it."""
    top = max(best) - _GAIN_TOLERANCE
    end = at = next(tick for tick, value in enumerate(best) if value >= top)
    chosen: list[Look] = []
    # Each step knows what it did at a time, so the way back is taken from the last space to the
    # first.
    for step in reversed(steps):
        if not step.entered[at]:
            continue
        for look, marks in zip(reversed(step.looks), reversed(step.taken), strict=True):
            if marks[at]:
                chosen.append(look)
                at -= _ticks(look.minutes)
        at -= step.entering
    return chosen, end - at


def _why_empty(useful: Sequence[Look], minutes: float) -> str:
    if not useful:
        return "Nothing that is still unseen could change what is worth doing."
    shortest = min(look.minutes for look in useful)
    return (
        f"Nothing fits into {minutes:g} minutes: the shortest useful look takes {shortest:g}, and "
        "the walk to it."
    )
