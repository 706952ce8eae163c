"""Numbers calculated in decimals, so that a limit is where a person with a pencil finds it."""

from decimal import ROUND_HALF_UP, Decimal

from inspector.values.numbers import difference


def exact(value: float) -> Decimal:
    """Return a number as it is written: 0.1 is a tenth and not its binary neighbour."""
    return Decimal(repr(float(value)))


def to_hundredths(value: Decimal) -> float:
    """Return a number rounded half up to two decimals, as published tables print it."""
    return float(value.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP))


def share(percent: float | Decimal, whole: float | Decimal) -> float:
    """Return so many percent of a whole.

    Examples
    --------
    >>> share(110, 0.3), share(2.5, 440)
    (0.33, 11.0)
    """
    return float(exact(whole) * exact(percent) / 100)


def percent_of(part: float, whole: float) -> float:
    """Return how many percent of a whole a part is.

    Examples
    --------
    >>> percent_of(0.3, 0.4)
    75.0
    """
    return float(100 * exact(part) / exact(whole))


def around(centre: float | Decimal, percent: float) -> tuple[float, float]:
    """Return the ends of a band of so many percent to either side."""
    centre = exact(centre)
    part = centre * exact(percent) / 100
    return float(centre - part), float(centre + part)


def nearer_end(value: float, low: float, high: float) -> tuple[float, float]:
    """Return the nearer end of a band and the margin to it, positive inside the band.

    Examples
    --------
    >>> nearer_end(2.1, 2, 3), nearer_end(3.5, 2, 3)
    ((2, 0.1), (3, -0.5))
    """
    under, over = difference(value, low), difference(high, value)
    return (low, under) if under <= over else (high, over)
