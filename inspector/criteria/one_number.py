"""A judgement by a ladder: one number, its band, the limit it stands against, and the sentence that says all three."""

from decimal import ROUND_HALF_UP, Decimal

from inspector.criteria.judgement import Judgement
from inspector.criteria.ladder import Ladder
from inspector.criteria.source import Source
from inspector.quantities import difference


def exact(value: float) -> Decimal:
    """Return a number as it is written, so that shares of it lie where a person computes them."""
    return Decimal(repr(float(value)))


def cents(value: Decimal) -> float:
    """Return a number rounded half up to two decimals, as published tables print it."""
    return float(value.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP))


def banded(
    name: str, ladder: Ladder, value: float, limit: float, source: Source, told: str, notes: tuple[str, ...] = (), *, least: bool
) -> Judgement:
    """Return the judgement of one number by the criterion's ladder.

    told : the sentence up to "is" or "are", which the band's meaning finishes. least : True where the limit is the least that
    will do, False where it is the most; the margin is positive on the good side.
    """
    step = ladder.step(value)
    margin = difference(value, limit) if least else difference(limit, value)
    return Judgement(name, step.band, step.rating, value, ladder.unit, limit, margin, f"{told} {step.meaning}.", source, notes)


def between(value: float, low: float, high: float) -> tuple[float, float]:
    """Return the nearer end of a band and the margin to it, positive inside the band."""
    below, above = difference(value, low), difference(high, value)
    return (low, below) if below <= above else (high, above)


def around(centre: Decimal, percent: float) -> tuple[float, float]:
    """Return the ends of a band of so many percent to either side."""
    part = centre * exact(percent) / 100
    return float(centre - part), float(centre + part)
