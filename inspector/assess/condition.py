"""Ratings -> condition: 0 to 100, with the interval that the unseen leaves open.

Computed in fractions and rounded once at the end, so that low <= points <= high holds exactly.
A critical check decides the word and does not crush the points.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from inspector.assess.checked import CheckResult, Condition
from inspector.assess.verdict.settings import DEFAULTS, Settings

# Points are our own choice of scale: no published one exists for a walk-round. In hundredths, so
# that sums stay exact.
POINTS = {"good": 100, "fair": 60, "poor": 25, "failed": 0}
_BEST, _WORST = POINTS["good"], POINTS["failed"]
# Shares of weights are floats: one that is a hair below its figure must not read as less.
_TOLERANCE = 1e-9


@dataclass(frozen=True)
class Item:
    """One applicable check.

    Parameters
    ----------
    weight : float
        Above 0.
    critical : bool
    rating : str or None
        None where it was not seen.
    proved : bool
        Whether it was seen at the depth that the check asks for.
    """

    weight: float
    critical: bool = False
    rating: str | None = None
    proved: bool = True

    @property
    def is_open(self) -> bool:
        """Whether a critical check still needs its proof; what was seen to be bad needs none."""
        good = self.rating in ("good", "fair")
        return self.critical and (self.rating is None or (good and not self.proved))

    @property
    def point(self) -> int | None:
        """The points that it counts with; a critical one without its proof counts as fair."""
        if self.rating is None:
            return None
        found = POINTS[self.rating]
        return min(found, POINTS["fair"]) if self.is_open else found

    @property
    def least(self) -> int:
        """The points that it could still turn out to have, at worst."""
        unproved = self.critical and not self.proved
        return _WORST if self.rating is None or unproved else POINTS[self.rating]

    @property
    def most(self) -> int:
        """The same, at best."""
        return _BEST if self.rating is None or self.is_open else POINTS[self.rating]


def condition(items: Iterable[Item], settings: Settings = DEFAULTS) -> Condition:
    """Return the condition over the applicable items.

    points = 100 x sum(weight x points) / sum(weight) over the seen; low counts every open item as
    failed, high as good.

    Parameters
    ----------
    items : iterable of Item
        Without what is not fitted.
    settings : Settings
        With the share of the weight that must be found good, and the level of retain.

    Returns
    -------
    Condition
        Without any item there is no figure: points None, 0 to 100, coverage 0, applicable 0.

    Examples
    --------
    >>> found = condition([Item(3, rating="good"), Item(1, rating="failed"), Item(4)])
    >>> found.points, found.low, found.high, found.coverage
    (75.0, 37.5, 87.5, 0.5)
    """
    items = tuple(items)
    seen = tuple(item for item in items if item.rating is not None)
    if not items:
        return Condition(None, 0.0, 100.0, 0.0, 0, 0)
    points = _mean((item.weight, item.point) for item in seen) if seen else None
    high = float(_mean((item.weight, item.most) for item in items))
    return Condition(
        points=None if points is None else float(points),
        low=float(_mean((item.weight, item.least) for item in items)),
        high=high,
        coverage=_share(seen, items),
        seen=len(seen),
        applicable=len(items),
        enough=bool(seen) and _enough(items, high, settings),
    )


def _enough(items: tuple[Item, ...], high: float, settings: Settings) -> bool:
    """Whether the word can no longer be expected to turn.

    What was found good counts, and not what was merely seen: a mixed unit must be looked at longer
    than a good one. In simulated looks a word that becomes firm by the share that was seen was
    wrong one time in ten at a quarter of the weight and one in twenty at half of it; by the share
    found good it is wrong one time in fifty. Each of the three ways stays open whatever is seen
    next, so that seeing more never takes a firm word back.
    """
    if any(item.is_open for item in items):
        return False
    good = [item for item in items if item.rating == "good"]
    all_seen = all(item.rating is not None for item in items)
    sound = _share(good, items) >= settings.coverage - _TOLERANCE
    return all_seen or sound or high < settings.retain_from


def _share(some: Iterable[Item], items: tuple[Item, ...]) -> float:
    """The share by weight, 0 to 1."""
    return float(Fraction(_weight(some)) / _weight(items))


def of_results(results: Iterable[CheckResult], settings: Settings = DEFAULTS) -> Condition:
    """Return the condition over check results.

    Parameters
    ----------
    results : iterable of CheckResult
        What is not fitted does not count, nor does what is only about a date.
    settings : Settings
        With the share of the weight that must be found good, and the level of retain.

    Returns
    -------
    Condition
    """
    applicable = (result for result in results if result.applicable and not result.is_service)
    return condition((item_of(result) for result in applicable), settings)


def item_of(result: CheckResult) -> Item:
    """Return a check result as an item of a condition.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    Item
    """
    check, rating = result.check, result.rating if result.seen else None
    return Item(check.weight, check.critical, rating, result.proved)


def _weight(items: Iterable[Item]) -> Fraction | int:
    return sum(_exact(item.weight) for item in items)


def _exact(weight: float) -> Fraction | int:
    # Whole weights, as nearly all are, are added much faster than fractions.
    return int(weight) if weight == int(weight) else Fraction(weight)


def _mean(pairs: Iterable[tuple[float, int]]) -> Fraction:
    """Points by weight, 0 to 100."""
    total, reached = 0, 0
    for weight, points in pairs:
        exact = _exact(weight)
        total += exact
        reached += exact * points
    return Fraction(reached) / total
