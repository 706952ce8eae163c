"""A priced work line as a triangle of low, likely and high, and the deviation of their sum."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from inspector.conversion.core.span import ConversionError
from inspector.values.formatting import amount

TENTH = 0.1
# Each halves what is not known of a share: sixty leave nothing of a float.
HALVINGS = 60


class BadCostLine(ConversionError):
    """A work line whose costs do not rise from low to high. Attributes: ``field``, ``line``."""


@dataclass(frozen=True)
class CostLine:
    """One priced line, in one currency.

    Parameters
    ----------
    name : str
    low, likely, high : float
        Costs that rise in this order, none below 0 [currency].

    Raises
    ------
    BadCostLine
        They do not.
    """

    name: str
    low: float
    likely: float
    high: float

    def __post_init__(self) -> None:
        costs = (self.low, self.likely, self.high)
        # NaN passes every comparison as false, so it is asked for by name.
        finite = all(math.isfinite(cost) for cost in costs)
        if finite and 0 <= self.low <= self.likely <= self.high:
            return
        shown = ", ".join(amount(cost) for cost in costs)
        raise BadCostLine(
            f"{self.name}: the costs must rise from low over likely to high, none below 0, "
            f"and not be {shown}.",
            field="low",
            line=self.name,
        )

    @property
    def mean(self) -> float:
        """(a + m + b) / 3 of the triangle [currency]."""
        return (self.low + self.likely + self.high) / 3

    @property
    def variance(self) -> float:
        """(a2 + m2 + b2 - ab - am - bm) / 18 of the triangle [currency squared]."""
        a, m, b = self.low, self.likely, self.high
        # Rounding may leave a hair below zero where all three are the same.
        return max((a * a + m * m + b * b - a * b - a * m - b * m) / 18, 0.0)

    def quantile(self, share: float) -> float:
        """Return the cost that a share of the triangle is below.

        Parameters
        ----------
        share : float
            0 to 1 [-].

        Returns
        -------
        float
            Cost [currency].

        References
        ----------
        The triangular distribution, as in any textbook of probability.
        """
        a, m, b = self.low, self.likely, self.high
        # A fixed price has no spread, and its triangle no area to divide by.
        if b == a:
            return a
        if share <= (m - a) / (b - a):
            return a + math.sqrt(share * (b - a) * (m - a))
        return b - math.sqrt((1 - share) * (b - a) * (b - m))


def standard_deviation(lines: Sequence[CostLine], correlation: float) -> float:
    """Return the standard deviation of the sum of lines, all pairs of which are correlated alike.

    sqrt(S s2 + r ((S s)2 - S s2)), in closed form.

    Parameters
    ----------
    lines : sequence of CostLine
    correlation : float
        Of the costs of each pair, 0 to 1 [-].

    Returns
    -------
    float
        Standard deviation [currency].

    References
    ----------
    Variance of a sum of correlated variables, as in any textbook of probability.
    """
    squares = sum(line.variance for line in lines)
    total = sum(math.sqrt(line.variance) for line in lines)
    return math.sqrt(max(squares + correlation * (total * total - squares), 0.0))


def from_tenths(name: str, p10: float, likely: float, p90: float) -> CostLine:
    """Return the triangle of which one case in ten is below and one above the ends given.

    People who name a low and a high mostly mean these, and not what can happen at worst.

    Parameters
    ----------
    name : str
    p10, likely, p90 : float
        Costs that rise in this order, none below 0 [currency].

    Returns
    -------
    CostLine
        Its low end is never below 0, since no work costs less than nothing.

    Raises
    ------
    BadCostLine
        They do not rise.

    References
    ----------
    The triangular distribution, as in any textbook of probability: with r the share of the width
    below the peak, peak - P10 = w (r - sqrt(0.1 r)), and alike above it.
    """
    given = CostLine(name, p10, likely, p90)
    below, above = likely - p10, p90 - likely
    if p10 == p90:
        return given
    # The share of the width below the peak: from a tenth, where P10 is the peak itself.
    least, most = TENTH, 1 - TENTH
    for _ in range(HALVINGS):
        share = (least + most) / 2
        if below * _inner(1 - share) > above * _inner(share):
            least = share
        else:
            most = share
    width = (below + above) / (_inner(share) + _inner(1 - share))
    return CostLine(name, max(likely - share * width, 0.0), likely, likely + (1 - share) * width)


def _inner(share: float) -> float:
    """The part of the width of a triangle between its tenth and its peak, on one side."""
    return share - math.sqrt(TENTH * share)
