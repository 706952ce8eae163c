"""Repair against replacement by equivalent annual cost: what each costs a year over its own life, at one discount rate.

E. L. Grant and others, Principles of Engineering Economy; as in any handbook of engineering economics: EAC = (P - S) A/P + S i + A.
It assumes renewal on the same terms after each life; what is already spent stays out.
"""

import math
from dataclasses import dataclass

from inspector.errors import InspectorError

MOST_YEARS = 200


class NoAnnualCost(InspectorError):
    """A figure from which no annual cost follows. Attribute: ``field``."""


@dataclass(frozen=True)
class Way:
    """One way to have the thing: price now, life [years], residual after it (negative: what getting rid of it costs), yearly cost; one currency."""

    price: float
    life: float
    residual: float = 0.0
    yearly: float = 0.0


@dataclass(frozen=True)
class Comparison:
    """Both ways a year at `rate` [fraction]; `cheaper` is "refurbish", "replace" or "" where they lie within `clear` of each other.

    break_even_rate: the rate between 0 and 1 at which both cost the same, None where there is none.
    break_even_life: the life of the refurbishment [years] at which both cost the same, None where there is none up to 200.
    """

    refurbish: float
    replace: float
    rate: float
    cheaper: str
    break_even_rate: float | None
    break_even_life: float | None


def capital_recovery(rate: float, years: float) -> float:
    """The yearly payment for a present sum of 1: A/P(i, n) = i (1+i)^n / ((1+i)^n - 1), and 1/n at rate 0.

    rate [fraction a year] above -1; years at least 1. Raises NoAnnualCost naming the field.

    Examples
    --------
    >>> round(capital_recovery(0.08, 10), 6), capital_recovery(0.0, 10)
    (0.149029, 0.1)
    """
    if not rate > -1 or not math.isfinite(rate):
        raise NoAnnualCost(f"The discount rate must be above -100 %, not {rate * 100:g} %.", field="rate")
    if not 1 <= years <= MOST_YEARS:
        raise NoAnnualCost(f"A life must be 1 to {MOST_YEARS} years, not {years:g}.", field="life")
    if abs(rate) < 1e-12:
        return 1 / years
    # expm1 and log1p keep the digits that a plain power loses near rate 0
    return rate / -math.expm1(-years * math.log1p(rate))


def annual_cost(way: Way, rate: float) -> float:
    """What a way costs a year [currency of its figures]: (P - S) A/P + S i + A.

    Examples
    --------
    >>> round(annual_cost(Way(180_000, 6, 10_000, 42_000), 0.08), 2)
    79573.62
    """
    return (way.price - way.residual) * capital_recovery(rate, way.life) + way.residual * rate + way.yearly


def cheaper(one: float, other: float, clear: float) -> str:
    """Which yearly cost is clearly the lower, "refurbish" (one) or "replace" (other); "" within the share `clear` of the larger."""
    if abs(one - other) <= clear * max(abs(one), abs(other)):
        return ""
    return "refurbish" if one < other else "replace"


def compare(refurbish: Way, replace: Way, rate: float, clear: float = 0.05) -> Comparison:
    """Both ways beside each other. clear: share of the dearer below which no difference is told (5 %: common practice).

    Raises NoAnnualCost where a life or the rate cannot be used.
    """
    one, other = annual_cost(refurbish, rate), annual_cost(replace, rate)
    by_rate = _root(lambda i: annual_cost(refurbish, i) - annual_cost(replace, i), 0.0, 1.0)
    by_life = _root(lambda n: annual_cost(Way(refurbish.price, n, refurbish.residual, refurbish.yearly), rate) - other, 1.0, float(MOST_YEARS))
    return Comparison(one, other, rate, cheaper(one, other, clear), by_rate, by_life)


def _root(function, low: float, high: float) -> float | None:
    """Where a function changes its sign, by bisection over a grid: the first crossing from below, None where there is none."""
    steps = 64
    grid = [low + (high - low) * step / steps for step in range(steps + 1)]
    values = [function(at) for at in grid]
    for left, right, before, after in zip(grid, grid[1:], values, values[1:], strict=False):
        if before == 0:
            return left
        if (before < 0) != (after < 0):
            return _bisected(function, left, right, before < 0)
    return grid[-1] if values[-1] == 0 else None


def _bisected(function, left: float, right: float, rising: bool) -> float:
    for _ in range(80):
        middle = (left + right) / 2
        if (function(middle) < 0) == rising:
            left = middle
        else:
            right = middle
    return (left + right) / 2
