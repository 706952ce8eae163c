"""Work lines with low, likely and high -> the spread of their sum: Monte Carlo with one common cause, exact moments beside it, and what drives it.

Each line is a triangle (low, likely, high). All lines share a part of their luck (a yard, a season, a currency): a Gaussian copula with one
correlation. The draws are stratified, so that ten thousand of them settle the mean exactly and the quantiles closely; the same lines give the
same figures each time.
"""

import math
import random
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from operator import add, mul
from statistics import NormalDist

from inspector.conversion.shapes import ConversionError

DRAWS = 10_000
CELLS = 64              # cells of a table per unit of the normal variate
REACH = 6               # the tables end at so many standard deviations
RANKED = 2_500          # draws from which the rank correlations come: their error is a fiftieth
SEED = 20_001


class BadLine(ConversionError):
    """A work line whose costs are no triangle. Attributes: ``field``, ``line``."""


@dataclass(frozen=True)
class CostLine:
    """One line, in one currency: low <= likely <= high, none below 0."""

    name: str
    low: float
    likely: float
    high: float

    def __post_init__(self) -> None:
        numbers = (self.low, self.likely, self.high)
        if not all(math.isfinite(one) for one in numbers) or not 0 <= self.low <= self.likely <= self.high:
            shown = ", ".join(f"{one:g}" for one in numbers)
            raise BadLine(f"{self.name}: the costs must rise from low over likely to high, none below 0, and not be {shown}.", field="low", line=self.name)

    @property
    def mean(self) -> float:
        """(a + m + b) / 3 of the triangle."""
        return (self.low + self.likely + self.high) / 3

    @property
    def variance(self) -> float:
        """(a2 + m2 + b2 - ab - am - bm) / 18 of the triangle."""
        a, m, b = self.low, self.likely, self.high
        return max((a * a + m * m + b * b - a * b - a * m - b * m) / 18, 0.0)

    def quantile(self, share: float) -> float:
        """The value that so much of the triangle lies below; share 0..1."""
        a, m, b = self.low, self.likely, self.high
        if b == a:
            return a
        if share <= (m - a) / (b - a):
            return a + math.sqrt(share * (b - a) * (m - a))
        return b - math.sqrt((1 - share) * (b - a) * (b - m))


@dataclass(frozen=True)
class Spread:
    """The sum of the lines: `base` is the sum of the likely costs, `within` the chance to stay inside it; drivers by rank correlation, largest first."""

    base: float
    mean: float
    deviation: float
    p10: float
    p50: float
    p80: float
    p90: float
    within: float
    correlation: float
    drivers: tuple[tuple[str, float], ...]

    @property
    def contingency(self) -> float:
        """What P80 asks beyond the sum of the likely costs."""
        return self.p80 - self.base


def deviation(lines: Sequence[CostLine], correlation: float) -> float:
    """Standard deviation of the sum where all pairs have the same correlation: sqrt(S s2 + r ((S s)2 - S s2)); closed form."""
    squares = sum(line.variance for line in lines)
    total = sum(math.sqrt(line.variance) for line in lines)
    return math.sqrt(max(squares + correlation * (total * total - squares), 0.0))


def spread(lines: Sequence[CostLine], correlation: float = 0.3, draws: int = DRAWS, seed: int = SEED) -> Spread:
    """The spread of the sum by `draws` stratified draws of the copula.

    correlation: of the normal variates behind the lines, 0..1 (0.3: common practice). Raises ConversionError for no lines or a correlation outside.
    """
    if not lines:
        raise ConversionError("There is no priced work line to sum.", field="lines")
    if not 0 <= correlation <= 1:
        raise ConversionError(f"The correlation must be 0 to 1, not {correlation:g}.", field="correlation")
    indices = _indices(len(lines), correlation, draws, seed)
    totals = [0.0] * draws
    picked = []
    for line, index in zip(lines, indices, strict=True):
        table = _table(line)
        values = map(table.__getitem__, index)
        if line.high > line.low:
            picked.append((line, index))
        totals = list(map(add, totals, values))
    ordered = sorted(totals)
    base = sum(line.likely for line in lines)
    mean = sum(line.mean for line in lines)
    found = math.sqrt(sum((total - mean) ** 2 for total in totals) / draws)
    return Spread(base, mean, found, *(_at(ordered, share) for share in (0.1, 0.5, 0.8, 0.9)), within=bisect_right(ordered, base) / draws,
                  correlation=correlation, drivers=_drivers(picked, totals))


def _at(ordered: list[float], share: float) -> float:
    return ordered[min(int(share * len(ordered)), len(ordered) - 1)]


@lru_cache(maxsize=4)
def _normal_strata(draws: int) -> tuple[float, ...]:
    """The middles of `draws` equally likely slices of the normal distribution."""
    inverse = NormalDist().inv_cdf
    return tuple(inverse((n + 0.5) / draws) for n in range(draws))


def _indices(count: int, correlation: float, draws: int, seed: int) -> list[list[int]]:
    """For each line the cell of its table in each draw.

    The common part and the own part are shuffles of the same strata. Every line takes the own part from another place of one ring, so that each
    line's own draws are exactly stratified and any two lines meet unlike numbers in each draw.
    """
    chance = random.Random(seed)
    strata = _normal_strata(draws)
    scale, middle = CELLS, REACH * CELLS
    common, own = list(strata), list(strata)
    chance.shuffle(common)
    chance.shuffle(own)
    shared = [math.floor(math.sqrt(correlation) * scale * value + chance.random()) + middle for value in common]
    ring = [math.floor(math.sqrt(1 - correlation) * scale * value + chance.random()) for value in own] * 2
    starts = chance.sample(range(draws), count) if count <= draws else [chance.randrange(draws) for _ in range(count)]
    return [list(map(add, shared, ring[start : start + draws])) for start in starts]


@lru_cache(maxsize=1)
def _shares() -> tuple[float, ...]:
    """The normal distribution at the cells of a table."""
    below = NormalDist().cdf
    return tuple(below((n - REACH * CELLS) / CELLS) for n in range(2 * REACH * CELLS + 2))


@lru_cache(maxsize=512)
def _table(line: CostLine) -> tuple[float, ...]:
    """The line's cost in each cell."""
    return tuple(line.quantile(share) for share in _shares())


def _drivers(picked: list[tuple[CostLine, list[int]]], totals: list[float]) -> tuple[tuple[str, float], ...]:
    """Rank correlation (Spearman) of each line with the sum, largest first; constant lines have none."""
    count = min(RANKED, len(totals))
    of_total = _ranks(totals[:count])
    found = [(line.name, _correlated(_cell_ranks(index[:count]), of_total)) for line, index in picked]
    return tuple(sorted(((name, value) for name, value in found if value is not None), key=lambda pair: -pair[1]))


def _cell_ranks(cells: list[int]) -> list[float]:
    """Mean ranks of whole numbers in few cells: by counting, since sorting each line would take most of the time."""
    counts = [0] * (2 * REACH * CELLS + 2)
    for cell in cells:
        counts[cell] += 1
    ranks, below = [], 0
    for count in counts:
        ranks.append(below + (count + 1) / 2)
        below += count
    return list(map(ranks.__getitem__, cells))


def _ranks(values: Sequence[float]) -> list[float]:
    """Ranks from 1, ties as their mean."""
    order = sorted(range(len(values)), key=values.__getitem__)
    ranks = [0.0] * len(values)
    at = 0
    while at < len(order):
        end = at
        while end + 1 < len(order) and values[order[end + 1]] == values[order[at]]:
            end += 1
        for place in range(at, end + 1):
            ranks[order[place]] = (at + end) / 2 + 1
        at = end + 1
    return ranks


def _correlated(one: Sequence[float], other: Sequence[float]) -> float | None:
    count = len(one)
    mean_one, mean_other = sum(one) / count, sum(other) / count
    square_one = sum(map(mul, one, one)) - count * mean_one**2
    square_other = sum(map(mul, other, other)) - count * mean_other**2
    if square_one <= 1e-9 or square_other <= 1e-9:
        return None
    return (sum(map(mul, one, other)) - count * mean_one * mean_other) / math.sqrt(square_one * square_other)


def spearman(one: Sequence[float], other: Sequence[float]) -> float | None:
    """Rank correlation of two lists of the same length, ties by their mean rank; None where one of them is constant.

    Examples
    --------
    >>> round(spearman([1, 2, 3, 4, 5], [2, 1, 4, 3, 5]), 6)
    0.8
    """
    return _correlated(_ranks(one), _ranks(other))


# AACE International Recommended Practice 18R-97: class -> (least and most definition %, low range %, high range %); the ends as commonly printed (memory)
CLASSES = {
    5: ((0, 2), (-50, -20), (30, 100)), 4: ((1, 15), (-30, -15), (20, 50)), 3: ((10, 40), (-20, -10), (10, 30)),
    2: ((30, 75), (-15, -5), (5, 20)), 1: ((65, 100), (-10, -3), (3, 15)),
}


def estimate_class(definition: float) -> int:
    """The class of an estimate by the share of definition [%], by 18R-97; where two overlap, the less certain one. A visit alone is no better than class 4."""
    if not 0 <= definition <= 100:
        raise ConversionError(f"The share of definition must be 0 to 100 %, not {definition:g} %.", field="definition")
    return max(number for number, ((low, high), _, _) in CLASSES.items() if low <= definition <= high)
