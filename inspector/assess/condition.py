"""Ratings -> condition: 0 to 100 with the interval that the unseen leaves open, coverage by weight, and caps by critical checks.

Computed in fractions and rounded once at the end, so that the order of the figures (low <= points <= high) holds exactly and a cap acts before any rounding.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from inspector.assess.shapes import CheckResult, Condition

# Points and caps are our own choice of scale (no published one exists for a walk-round); 24 < 59 keeps a better rating from ever costing points.
POINTS = {"good": Fraction(1), "fair": Fraction(3, 5), "poor": Fraction(1, 4), "failed": Fraction(0)}
CAPS = {"poor": 59, "failed": 24}


@dataclass(frozen=True)
class Item:
    """One applicable check: weight (> 0), whether it is critical, its rating (None: not seen) and its title."""

    weight: float
    critical: bool = False
    rating: str | None = None
    title: str = ""


def condition(items: Iterable[Item]) -> Condition:
    """Condition over the applicable items (what is not fitted must be left out before).

    points = 100 x sum(weight x points) / sum(weight) over the seen; low counts every unseen item as failed, high as good, caps included.
    Without any item there is no figure: points None, 0 to 100, coverage 0, applicable 0.

    Examples
    --------
    >>> found = condition([Item(3, rating="good"), Item(1, rating="failed"), Item(4)])
    >>> found.points, found.low, found.high, found.coverage
    (75.0, 37.5, 87.5, 0.5)
    """
    items = tuple(items)
    seen = [item for item in items if item.rating is not None]
    if not items:
        return Condition(None, 0.0, 100.0, 0.0, 0, 0)
    whole, looked_at = _weight(items), _weight(seen)
    low = min(_mean(items, unseen="failed"), _cap(items, unseen="failed"))
    high = min(_mean(items, unseen="good"), _cap(seen))
    points = min(_mean(seen), _cap(seen)) if seen else None
    return Condition(
        points=None if points is None else float(points), low=float(low), high=float(high), coverage=float(looked_at / whole),
        seen=len(seen), applicable=len(items), capped_by=_capped_by(items, seen),
    )


def of_results(results: Iterable[CheckResult]) -> Condition:
    """Condition over check results; what is not fitted leaves the set, and a title names its unit where there are several."""
    results = tuple(result for result in results if result.applicable)
    several = len({result.unit for result in results}) > 1
    return condition(
        Item(one.check.weight, one.check.critical, one.rating, f"{one.unit_name}: {one.check.title}" if several else one.check.title) for one in results
    )


def _weight(items: Iterable[Item]) -> Fraction:
    return sum((Fraction(item.weight) for item in items), Fraction(0))


def _mean(items: Iterable[Item], unseen: str = "failed") -> Fraction:
    items = tuple(items)
    return 100 * sum((Fraction(item.weight) * POINTS[item.rating or unseen] for item in items), Fraction(0)) / _weight(items)


def _cap(items: Iterable[Item], unseen: str = "good") -> Fraction:
    return Fraction(min((CAPS.get(item.rating or unseen, 100) for item in items if item.critical), default=100))


def _capped_by(items: tuple[Item, ...], seen: list[Item]) -> tuple[str, ...]:
    """Titles of the critical checks whose cap lowers a figure; a cap above every figure sets nothing."""
    cap = _cap(seen)
    if not seen or max(_mean(seen), _mean(items, unseen="good")) <= cap:
        return ()
    return tuple(item.title for item in seen if item.critical and CAPS.get(item.rating or "", 100) == cap)
