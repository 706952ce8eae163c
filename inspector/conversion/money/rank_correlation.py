"""Spearman's rank correlation, with a fast way to rank whole numbers of a small range."""

import math
from collections.abc import Sequence
from operator import mul


def ranks(values: Sequence[float]) -> list[float]:
    """Return the rank of each value from 1, ties as their mean.

    Parameters
    ----------
    values : sequence of float
        In any unit.

    Returns
    -------
    list of float
        Ranks [-].

    References
    ----------
    Mean ranks of ties, as in any textbook of statistics.
    """
    order = sorted(range(len(values)), key=values.__getitem__)
    found = [0.0] * len(values)
    start = 0
    while start < len(order):
        end = start
        while end + 1 < len(order) and values[order[end + 1]] == values[order[start]]:
            end += 1
        for place in range(start, end + 1):
            found[order[place]] = (start + end) / 2 + 1
        start = end + 1
    return found


def ranks_of_cells(cells: Sequence[int], size: int) -> list[float]:
    """Return the mean rank of each whole number below a size.

    Counting is enough for a small range, and sorting each line would take most of the time.

    Parameters
    ----------
    cells : sequence of int
        Whole numbers from 0 to below ``size`` [-].
    size : int
        How many different numbers there may be [-].

    Returns
    -------
    list of float
        Ranks [-].

    References
    ----------
    Mean ranks of ties, as in any textbook of statistics.
    """
    counts = [0] * size
    for cell in cells:
        counts[cell] += 1
    rank_of_cell, below = [], 0
    for count in counts:
        rank_of_cell.append(below + (count + 1) / 2)
        below += count
    return list(map(rank_of_cell.__getitem__, cells))


def correlation(first: Sequence[float], second: Sequence[float]) -> float | None:
    """Return the plain (product-moment) correlation of two lists of the same length.

    Parameters
    ----------
    first, second : sequence of float
        In any unit.

    Returns
    -------
    float or None
        -1 to 1 [-]; None where one of the lists is constant.

    References
    ----------
    Pearson's coefficient, as in any textbook of statistics.
    """
    count = len(first)
    mean_first, mean_second = sum(first) / count, sum(second) / count
    square_first = sum(map(mul, first, first)) - count * mean_first**2
    square_second = sum(map(mul, second, second)) - count * mean_second**2
    # A constant list goes along with nothing, which is no correlation and not one of 0.
    if square_first <= 1e-9 or square_second <= 1e-9:
        return None
    product = sum(map(mul, first, second)) - count * mean_first * mean_second
    return product / math.sqrt(square_first * square_second)
