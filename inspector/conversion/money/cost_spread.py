"""The spread of the sum of priced work lines by simulation, and what drives it.

Each line is a triangle. All lines share a part of their luck (a yard, a season, a currency): a
Gaussian copula with one correlation. The draws are stratified, so that ten thousand of them settle
the mean exactly and the quantiles closely; the same lines give the same figures each time.
"""

import math
import random
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from operator import add
from statistics import NormalDist

from inspector.conversion.core.span import ConversionError
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.rank_correlation import correlation as correlation_of
from inspector.conversion.money.rank_correlation import ranks, ranks_of_cells
from inspector.values.formatting import show

# Of the normal variates behind the lines, where nobody gave one: common practice, no source.
CORRELATION = 0.3
DRAWS = 10_000
# A line is read from a table with so many cells per unit of the normal variate ...
CELLS = 64
# ... that ends at so many standard deviations.
REACH = 6
TABLE_SIZE = 2 * REACH * CELLS + 2
# The rank correlations come from so many draws: their error is a fiftieth.
RANKED = 2_500
RANDOM_START = 20_001


@dataclass(frozen=True)
class Spread:
    """The sum of the lines as it may come out.

    Parameters
    ----------
    base : float
        Sum of the likely costs [currency].
    mean, deviation : float
        Of the sum [currency].
    p10, p50, p80, p90 : float
        Not exceeded in so many cases of a hundred [currency].
    within : float
        Share of cases that keep within the base [-].
    correlation : float
        Of the normal variates behind the lines [-].
    drivers : tuple of (str, float)
        Lines with their rank correlation with the sum [-], largest first.
    """

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
        """What P80 asks beyond the sum of the likely costs [currency]."""
        return self.p80 - self.base


def spread(
    lines: Sequence[CostLine],
    correlation: float = CORRELATION,
    draws: int = DRAWS,
    start: int = RANDOM_START,
) -> Spread:
    """Return the spread of the sum by stratified draws of the copula.

    Parameters
    ----------
    lines : sequence of CostLine
    correlation : float
        Of the normal variates behind the lines, 0 to 1 [-].
    draws : int
        How many [-].
    start : int
        Start of the random numbers, always the same so that two reports are.

    Returns
    -------
    Spread

    Raises
    ------
    ConversionError
        There is no line, or the correlation is not from 0 to 1.

    References
    ----------
    Model of our own: triangles joined by a Gaussian copula, as in any textbook of simulation.
    """
    lines = tuple(lines)
    if not lines:
        raise ConversionError("There is no priced work line to sum.", field="lines")
    drawn = drawn_together((lines,), correlation, draws, start)
    return spread_of(lines, drawn)


@dataclass(frozen=True)
class Drawn:
    """Groups of lines that were drawn together.

    Parameters
    ----------
    sums : tuple of list of float
        Of each group, its sum in each draw [as its lines].
    cells : tuple of list of list of int
        Of each group and line, the cell of its table in each draw.
    luck : list of float
        The common part of the luck in each draw: a normal variate [-].
    correlation : float
        [-]
    """

    sums: tuple[list[float], ...]
    cells: tuple[list[list[int]], ...]
    luck: list[float]
    correlation: float


def drawn_together(
    groups: Sequence[Sequence[CostLine]],
    correlation: float = CORRELATION,
    draws: int = DRAWS,
    start: int = RANDOM_START,
) -> Drawn:
    """Return stratified draws of several groups of lines, all with the common part of their luck.

    Parameters
    ----------
    groups : sequence of sequence of CostLine
    correlation : float
        Of the normal variates behind all lines, 0 to 1 [-].
    draws : int
        How many [-].
    start : int
        Start of the random numbers.

    Returns
    -------
    Drawn

    Raises
    ------
    ConversionError
        The correlation is not from 0 to 1.

    References
    ----------
    As ``spread``.
    """
    if not 0 <= correlation <= 1:
        raise ConversionError(
            f"The correlation must be 0 to 1, not {show(correlation, '')}.", field="correlation"
        )
    luck, of_all = _cells(sum(map(len, groups)), correlation, draws, start)
    cells, sums = [], []
    for lines in groups:
        of_group, of_all = of_all[: len(lines)], of_all[len(lines) :]
        totals = [0.0] * draws
        for line, of_line in zip(lines, of_group, strict=True):
            costs = map(_cost_table(line).__getitem__, of_line)
            totals = list(map(add, totals, costs))
        cells.append(of_group)
        sums.append(totals)
    return Drawn(tuple(sums), tuple(cells), luck, correlation)


def spread_of(lines: Sequence[CostLine], drawn: Drawn) -> Spread:
    """Return the spread of the first group that was drawn.

    Parameters
    ----------
    lines : sequence of CostLine
        The lines of that group.
    drawn : Drawn

    Returns
    -------
    Spread

    References
    ----------
    As ``spread``.
    """
    totals = drawn.sums[0]
    ordered = sorted(totals)
    base = sum(line.likely for line in lines)
    mean = sum(line.mean for line in lines)
    return Spread(
        base,
        mean,
        math.sqrt(sum((total - mean) ** 2 for total in totals) / len(totals)),
        *quantiles(ordered),
        within=bisect_right(ordered, base) / len(totals),
        correlation=drawn.correlation,
        drivers=_drivers(lines, drawn.cells[0], totals),
    )


def quantiles(ordered: Sequence[float]) -> tuple[float, float, float, float]:
    """Return P10, P50, P80 and P90 of sums that are in order.

    Parameters
    ----------
    ordered : sequence of float
        [currency]

    Returns
    -------
    tuple of float
        One in ten below and above, the middle, and the four in five that planners use [currency].

    References
    ----------
    Quantiles of a sample, as in any textbook of statistics.
    """
    return tuple(_quantile(ordered, share) for share in (0.1, 0.5, 0.8, 0.9))


def _quantile(ordered: Sequence[float], share: float) -> float:
    return ordered[min(int(share * len(ordered)), len(ordered) - 1)]


@lru_cache(maxsize=4)
def _normal_strata(draws: int) -> tuple[float, ...]:
    """The middles of equally likely slices of the normal distribution."""
    inverse = NormalDist().inv_cdf
    return tuple(inverse((number + 0.5) / draws) for number in range(draws))


def _cells(
    count: int, correlation: float, draws: int, start: int
) -> tuple[list[float], list[list[int]]]:
    """The common luck of each draw, and for each line the cell of its table in each draw.

    The common part and the own part are shuffles of the same strata. Every line takes the own part
    from another place of one ring, so that each line's own draws are exactly stratified and any two
    lines meet unlike numbers in each draw.
    """
    chance = random.Random(start)
    common, own = list(_normal_strata(draws)), list(_normal_strata(draws))
    chance.shuffle(common)
    chance.shuffle(own)
    shared_scale, own_scale = CELLS * math.sqrt(correlation), CELLS * math.sqrt(1 - correlation)
    # The order of the random numbers is part of the result: the same record gives the same report.
    shared = [
        math.floor(shared_scale * value + chance.random()) + REACH * CELLS for value in common
    ]
    ring = [math.floor(own_scale * value + chance.random()) for value in own] * 2
    # Each line begins at a place of its own on the ring, so that no two have the same luck.
    if count <= draws:
        places = chance.sample(range(draws), count)
    else:
        places = [chance.randrange(draws) for _ in range(count)]
    cells = [list(map(add, shared, ring[place : place + draws])) for place in places]
    return common, cells


@lru_cache(maxsize=1)
def _shares() -> tuple[float, ...]:
    """The normal distribution at the cells of a table."""
    below = NormalDist().cdf
    return tuple(below((cell - REACH * CELLS) / CELLS) for cell in range(TABLE_SIZE))


@lru_cache(maxsize=512)
def _cost_table(line: CostLine) -> tuple[float, ...]:
    """The line's cost in each cell."""
    return tuple(line.quantile(share) for share in _shares())


def _drivers(
    lines: Sequence[CostLine], cells_of_lines: list[list[int]], totals: list[float]
) -> tuple[tuple[str, float], ...]:
    """Rank correlation of each line with the sum, largest first; a constant line has none."""
    count = min(RANKED, len(totals))
    # Ranked once: this is the dearest step, and every line is compared with it.
    ranks_of_totals = ranks(totals[:count])
    found = []
    for line, cells in zip(lines, cells_of_lines, strict=True):
        # A fixed price drives nothing.
        if line.high <= line.low:
            continue
        value = correlation_of(ranks_of_cells(cells[:count], TABLE_SIZE), ranks_of_totals)
        if value is not None:
            found.append((line.name, value))
    return tuple(sorted(found, key=lambda pair: -pair[1]))
