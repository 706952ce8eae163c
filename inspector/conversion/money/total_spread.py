"""The spread of all of the money, and the range that the class of the estimate adds to the work.

The lines alone spread as far as whoever priced them could think of; the class of an estimate says
how far such estimates turn out to be off, with all that nobody thought of. The wider of the two
counts on each side of the middle, so that one bar holds both.
"""

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import astuple, dataclass
from functools import lru_cache
from statistics import NormalDist

from inspector.conversion.core.span import Span
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.cost_spread import (
    Drawn,
    Spread,
    drawn_together,
    quantiles,
    spread_of,
)
from inspector.conversion.money.estimate_class import CLASSES

# Standard deviations between the middle and the ninth tenth of a normal distribution.
TENTH_AWAY = NormalDist().inv_cdf(0.9)


@dataclass(frozen=True)
class Terms:
    """What the lines are joined by.

    Parameters
    ----------
    correlation : float
        Of the normal variates behind all lines [-].
    estimate_class : int
        5, the least certain, to 1.
    asking : float
        Asking price, 0 where none is named [currency].
    rise : float
        Factor from the prices' date to the middle of the work [-].
    budget : float or None
        [currency]
    """

    correlation: float
    estimate_class: int
    asking: float = 0.0
    rise: float = 1.0
    budget: float | None = None


@dataclass(frozen=True)
class Tenths:
    """A sum as it may come out: not exceeded in 10, 50, 80 and 90 cases of a hundred [currency]."""

    p10: float
    p50: float
    p80: float
    p90: float

    @property
    def span(self) -> Span:
        """P10, P50 and P90 [currency]."""
        return Span(self.p10, self.p50, self.p90)


@dataclass(frozen=True)
class AllOfIt:
    """What all of the money may come to.

    Parameters
    ----------
    lines : Spread or None
        Of the work lines as priced; None where none is.
    work : Tenths or None
        Of the work, at least as wide as its class of estimate.
    total : Tenths
        Of everything that is priced.
    within : float or None
        Share of cases within the budget [-]; None without one.
    """

    lines: Spread | None
    work: Tenths | None
    total: Tenths
    within: float | None


@lru_cache(maxsize=64)
def all_of_it(
    work: tuple[CostLine, ...],
    shares: tuple[CostLine, ...],
    others: tuple[CostLine, ...],
    terms: Terms,
) -> AllOfIt:
    """Return what all of the money may come to.

    asking price + rise × (work × (1 + shares of it) + other costs), draw by draw.

    Parameters
    ----------
    work : tuple of CostLine
        The work lines [currency].
    shares : tuple of CostLine
        Costs as shares of the work [-].
    others : tuple of CostLine
        Costs in money [currency].
    terms : Terms

    Returns
    -------
    AllOfIt

    References
    ----------
    Model of our own: the copula of ``cost_spread``; the class by AACE 18R-97 (*from memory*).
    """
    # The order in which lines were typed must not choose which of the draws a line gets.
    work, shares, others = (tuple(sorted(lines, key=astuple)) for lines in (work, shares, others))
    drawn = drawn_together((work, shares, others), terms.correlation)
    lines = spread_of(work, drawn) if work else None
    of_work = drawn.sums[0] if lines is None else list(_widened(lines, drawn, terms.estimate_class))
    sums = sorted(
        terms.asking + terms.rise * (work_cost * (1 + share) + other)
        for work_cost, share, other in zip(of_work, *drawn.sums[1:], strict=True)
    )
    within = None if terms.budget is None else bisect_right(sums, terms.budget) / len(sums)
    widened = None if lines is None else Tenths(*quantiles(sorted(of_work)))
    return AllOfIt(lines, widened, Tenths(*quantiles(sums)), within)


def class_range(middle: float, estimate_class: int) -> Span:
    """Return what a class of estimate claims of a sum, at its widest.

    Parameters
    ----------
    middle : float
        [currency]
    estimate_class : int
        5, the least certain, to 1.

    Returns
    -------
    Span
        One case in ten is below it and one above [currency].

    References
    ----------
    AACE 18R-97 (*from memory*): ranges meant as about 80 %.
    """
    claims = CLASSES[estimate_class]
    return Span(middle * (1 + claims.below[0] / 100), middle, middle * (1 + claims.above[1] / 100))


def _widened(lines: Spread, drawn: Drawn, estimate_class: int) -> Iterator[float]:
    """Yield the work of each draw, spread until P10 and P90 are where the class puts them."""
    claimed = class_range(lines.p50, estimate_class)
    # Fixed prices have no spread that could be stretched; the common luck takes its place.
    if lines.p90 <= lines.p10:
        yield from _around(claimed, drawn.luck)
        return
    down = _stretch(lines.p50 - lines.p10, claimed.point - claimed.low)
    up = _stretch(lines.p90 - lines.p50, claimed.high - claimed.point)
    for cost in drawn.sums[0]:
        away = cost - lines.p50
        # No work costs less than nothing.
        yield max(lines.p50 + away * (up if away > 0 else down), 0.0)


def _stretch(own: float, claimed: float) -> float:
    """How much wider a side becomes; what is wider already stays as it is."""
    return max(claimed / own, 1.0) if own > 0 else 1.0


def _around(claimed: Span, luck: Iterable[float]) -> Iterator[float]:
    """Yield costs about a point: normal on each side, with the ends as its tenths."""
    for away in luck:
        side = claimed.high - claimed.point if away > 0 else claimed.point - claimed.low
        yield max(claimed.point + side * away / TENTH_AWAY, 0.0)
