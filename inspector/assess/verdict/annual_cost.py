"""Repair against replacement by equivalent annual cost: what each costs a year over its own life.

EAC = (P - S) A/P + S i + A, as in E. L. Grant and others, Principles of Engineering Economy, and
any handbook of engineering economics (*from memory*). It assumes renewal on the same terms after
each life; what is already spent is left out.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from inspector.values.errors import InspectorError

MOST_YEARS = 200
# Below this share of the dearer one no difference is reported: common practice, no source.
CLEAR_DIFFERENCE = 0.05
_GRID_STEPS, _BISECTIONS = 64, 80


class NoAnnualCost(InspectorError):
    """A figure from which no annual cost follows. Attribute: ``field``."""


@dataclass(frozen=True)
class Option:
    """One way to have the thing; all money in one currency.

    Parameters
    ----------
    price : float
        To be paid now.
    life : float
        Years.
    residual : float
        Its worth after its life; negative for what it costs to dispose of it.
    yearly : float
        Running and upkeep, a year.
    """

    price: float
    life: float
    residual: float = 0.0
    yearly: float = 0.0


@dataclass(frozen=True)
class Comparison:
    """Refurbishing and replacing a year.

    Parameters
    ----------
    refurbish, replace : float
        The cost of each, a year.
    rate : float
        Discount rate, 0.08 for 8 %.
    cheaper : str
        "refurbish", "replace", or "" where there is no clear difference.
    break_even_rate : float or None
        The rate between 0 and 1 at which both cost the same.
    break_even_life : float or None
        The life of the refurbishment [years], up to MOST_YEARS, at which both cost the same.
    """

    refurbish: float
    replace: float
    rate: float
    cheaper: str
    break_even_rate: float | None
    break_even_life: float | None


def capital_recovery(rate: float, years: float) -> float:
    """Return the yearly payment for a present sum of 1: A/P(i, n) = i (1+i)^n / ((1+i)^n - 1).

    Parameters
    ----------
    rate : float
        A year, above -1; at 0 the payment is 1/n.
    years : float
        At least 1.

    Returns
    -------
    float

    Raises
    ------
    NoAnnualCost
        With the field that cannot be used.

    Examples
    --------
    >>> round(capital_recovery(0.08, 10), 6), capital_recovery(0.0, 10)
    (0.149029, 0.1)
    """
    if not rate > -1 or not math.isfinite(rate):
        raise NoAnnualCost(
            f"The discount rate must be above -100 %, not {rate * 100:g} %.", field="rate"
        )
    if not 1 <= years <= MOST_YEARS:
        raise NoAnnualCost(f"A life must be 1 to {MOST_YEARS} years, not {years:g}.", field="life")
    if abs(rate) < 1e-12:
        return 1 / years
    # expm1 and log1p keep the digits that a plain power loses near rate 0.
    return rate / -math.expm1(-years * math.log1p(rate))


def annual_cost(option: Option, rate: float) -> float:
    """Return what an option costs a year: (P - S) A/P + S i + A.

    Parameters
    ----------
    option : Option
    rate : float
        Discount rate a year.

    Returns
    -------
    float
        In the currency of its figures.

    Raises
    ------
    NoAnnualCost
        Where its life or the rate cannot be used.

    Examples
    --------
    >>> round(annual_cost(Option(180_000, 6, 10_000, 42_000), 0.08), 2)
    79573.62
    """
    recovered = (option.price - option.residual) * capital_recovery(rate, option.life)
    return recovered + option.residual * rate + option.yearly


def cheaper(refurbish: float, replace: float, clear: float) -> str:
    """Return which yearly cost is clearly the lower.

    Parameters
    ----------
    refurbish, replace : float
        A year.
    clear : float
        Share of the larger within which there is no clear difference.

    Returns
    -------
    str
        "refurbish", "replace" or "".
    """
    if abs(refurbish - replace) <= clear * max(abs(refurbish), abs(replace)):
        return ""
    return "refurbish" if refurbish < replace else "replace"


def compare(
    refurbish: Option, replacement: Option, rate: float, clear: float = CLEAR_DIFFERENCE
) -> Comparison:
    """Compare refurbishing with replacing.

    Parameters
    ----------
    refurbish, replacement : Option
    rate : float
        Discount rate a year.
    clear : float
        Share of the dearer below which no difference is reported.

    Returns
    -------
    Comparison

    Raises
    ------
    NoAnnualCost
        Where a life or the rate cannot be used.
    """

    def difference_at_rate(at: float) -> float:
        return annual_cost(refurbish, at) - annual_cost(replacement, at)

    def difference_at_life(years: float) -> float:
        return annual_cost(replace(refurbish, life=years), rate) - cost_replaced

    cost_refurbished, cost_replaced = (
        annual_cost(option, rate) for option in (refurbish, replacement)
    )
    return Comparison(
        cost_refurbished,
        cost_replaced,
        rate,
        cheaper(cost_refurbished, cost_replaced, clear),
        _first_root(difference_at_rate, 0.0, 1.0),
        _first_root(difference_at_life, 1.0, float(MOST_YEARS)),
    )


def _first_root(function: Callable[[float], float], low: float, high: float) -> float | None:
    """The lowest place where a function changes its sign, None where there is none."""
    grid = [low + (high - low) * step / _GRID_STEPS for step in range(_GRID_STEPS + 1)]
    values = [function(place) for place in grid]
    for left, right, before, after in zip(grid, grid[1:], values, values[1:], strict=False):
        if before == 0:
            return left
        if (before < 0) != (after < 0):
            return _bisected(function, left, right, before < 0)
    return grid[-1] if values[-1] == 0 else None


def _bisected(function: Callable[[float], float], left: float, right: float, rising: bool) -> float:
    for _ in range(_BISECTIONS):
        middle = (left + right) / 2
        if (function(middle) < 0) == rising:
            left = middle
        else:
            right = middle
    return (left + right) / 2
