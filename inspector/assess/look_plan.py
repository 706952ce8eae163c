"""The best set of looks for the minutes left, exactly: a knapsack over spaces, where entering a space costs the walk to it once.

The greedy order by gain per minute can lose; the exact plan is a dynamic programme over half minutes and cheap. Beside it stands the one
joint question, buy or walk away, where the gains of single looks do not add up and subsets are enumerated.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import combinations, product

TICKS = 2          # half minutes
MOST_JOINT = 10    # deal-breakers taken together: 3^10 outcomes are quick, and nobody has more


@dataclass(frozen=True)
class Look:
    """One look that could still be taken: `gain` is what seeing it is worth, `minutes` what it takes in its `space`."""

    subject: str
    label: str
    space: str
    minutes: float
    gain: float


@dataclass(frozen=True)
class Plan:
    """The chosen looks in walking order, what they are worth together and how long they take, walks included; `why` says it where it is empty."""

    looks: tuple[Look, ...]
    gain: float
    minutes: float
    why: str = ""


def best_plan(looks: Iterable[Look], minutes: float, walk: float = 2.0, here: str = "") -> Plan:
    """The set of looks with the greatest sum of gains that fits; ties go to the shorter plan, then to the order given.

    minutes: left on board. walk: minutes to enter a space other than `here`, where one stands. Exact, O(looks x half minutes).
    """
    useful = [look for look in looks if look.gain > 0]
    budget = math.floor(max(minutes, 0) * TICKS + 1e-9)
    spaces = list(dict.fromkeys(look.space for look in useful))
    spaces.sort(key=lambda space: space != here)
    best = [0.0] * (budget + 1)
    trail: list[tuple[list[Look], list[bytearray], bytearray, int]] = []
    for space in spaces:
        items = [look for look in useful if look.space == space]
        entering = 0 if space == here else _ticks(walk)
        best, *steps = _with_space(best, items, entering)
        trail.append((items, *steps, entering))
    chosen, at = _followed(trail, best)
    if not chosen:
        return Plan((), 0.0, 0.0, _why_empty(useful, minutes))
    order = {look.subject: number for number, look in enumerate(useful)}
    by_space = sorted(chosen, key=lambda look: (spaces.index(look.space), order[look.subject]))
    return Plan(tuple(by_space), sum(look.gain for look in by_space), at / TICKS)


def _ticks(minutes: float) -> int:
    return math.ceil(minutes * TICKS - 1e-9)


def _with_space(before: list[float], items: list[Look], entering: int) -> tuple[list[float], list[bytearray], bytearray]:
    """One space more: the best sums, for each item where it was taken, and where the space was entered at all."""
    size = len(before)
    inside = [-math.inf] * min(entering, size) + before[: max(size - entering, 0)]
    taken = []
    for look in items:
        cost, gain = _ticks(look.minutes), look.gain
        moved = [-math.inf] * min(cost, size) + [value + gain for value in inside[: max(size - cost, 0)]]
        taken.append(bytearray(new > old + 1e-12 for new, old in zip(moved, inside, strict=True)))
        inside = [max(pair) for pair in zip(moved, inside, strict=True)]
    entered = bytearray(new > old + 1e-12 for new, old in zip(inside, before, strict=True))
    return [max(pair) for pair in zip(inside, before, strict=True)], taken, entered


def _followed(trail: list, best: list[float]) -> tuple[list[Look], int]:
    """Back from the shortest time that reaches the greatest sum to the looks that make it."""
    top = max(best)
    end = at = next(tick for tick, value in enumerate(best) if value >= top - 1e-12)
    chosen: list[Look] = []
    for items, taken, entered, entering in reversed(trail):
        if not entered[at]:
            continue
        for look, marks in zip(reversed(items), reversed(taken), strict=True):
            if marks[at]:
                chosen.append(look)
                at -= _ticks(look.minutes)
        at -= entering
    return chosen, end - at


def _why_empty(useful: Sequence[Look], minutes: float) -> str:
    if not useful:
        return "Nothing that is still unseen could change what is worth doing."
    shortest = min(look.minutes for look in useful)
    return f"Nothing fits into {minutes:g} minutes: the shortest useful look takes {shortest:g}, and the walk to it."


@dataclass(frozen=True)
class Breaker:
    """A possible deal-breaker: chance [0..1] that it is wrong, what that costs, and the minutes to find out."""

    label: str
    chance: float
    loss: float
    minutes: float


def joint_gain(breakers: Sequence[Breaker], seen: Iterable[int], worth: float) -> float:
    """What seeing some of the breakers (indices) is worth to the one decision: buy (worth less the losses) or walk away (0).

    R. A. Howard, Information Value Theory, IEEE Transactions on Systems Science and Cybernetics SSC-2(1), 1966.
    """
    seen = list(seen)
    rest = worth - sum(one.chance * one.loss for index, one in enumerate(breakers) if index not in seen)
    found = 0.0
    for outcome in product((False, True), repeat=len(seen)):
        chance, value = 1.0, rest
        for wrong, index in zip(outcome, seen, strict=True):
            one = breakers[index]
            chance *= one.chance if wrong else 1 - one.chance
            value -= one.loss if wrong else 0.0
        found += chance * max(value, 0.0)
    return found - max(worth - sum(one.chance * one.loss for one in breakers), 0.0)


def best_joint(breakers: Sequence[Breaker], worth: float, minutes: float) -> tuple[tuple[Breaker, ...], float]:
    """The subset of at most MOST_JOINT deal-breakers (the dearest ones) that is worth most within the minutes, by enumeration."""
    few = sorted(breakers, key=lambda one: -one.chance * one.loss)[:MOST_JOINT]
    best: tuple[tuple[int, ...], float] = ((), 0.0)
    for size in range(1, len(few) + 1):
        for subset in combinations(range(len(few)), size):
            if sum(few[index].minutes for index in subset) <= minutes + 1e-9:
                gain = joint_gain(few, subset, worth)
                if gain > best[1] + 1e-9:
                    best = (subset, gain)
    return tuple(few[index] for index in best[0]), best[1]
