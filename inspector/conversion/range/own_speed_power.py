"""Power by speed from the vessel's own points: a fit through them, or her admiralty coefficient."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from inspector.conversion.core.bounds import BadInput, plain, within
from inspector.conversion.core.figure import Default, Figure, Gap, no_figure
from inspector.conversion.core.span import Span, span
from inspector.conversion.hull.resistance import FASTEST, SLOWEST
from inspector.conversion.range.speed_points import (
    Fit,
    SpeedPoint,
    admiralty_coefficient,
    admiralty_power,
    at_displacement,
    notes_on,
    power_law,
    weathered,
)
from inspector.criteria.core.source import Source
from inspector.values.formatting import show
from inspector.values.quantity import Quantity, sentence

FIT_SOURCE = Source.common_practice(
    "Least squares of ln P over ln V on the vessel's own points", "fit", edition="own mechanics"
)
ADMIRALTY = Source.common_practice(
    "Admiralty coefficient from the vessel's own points",
    "P = D^(2/3) V³ / C",
    edition="own mechanics",
)
# What a fit needs: points, and kn from the slowest to the fastest.
LEAST_POINTS, LEAST_RANGE = 3, 2.0
# How far a fit may leave its points, and an admiralty coefficient its point, kn.
BEYOND = 1.0
NEAR = 2.0
LIKELY_EXPONENT = (2.5, 4.5)
# How far a point is carried to another displacement, and by which powers of it (common practice).
CARRIED = (0.75, 1.33)
EXPONENTS = (0.5, 1.0)
LEAST_SCATTER = Default(
    "scatter of the points",
    0.03,
    "no log is closer than its gauges, however well its few points fit",
)
CUBE_LAW = Default(
    "error of the cube law", 0.10, "power seldom follows the cube of the speed over 2 kn"
)


@dataclass(frozen=True)
class PointsCurve:
    """The fit through three or more own points over 2 kn or more, to 1 kn beyond them.

    Parameters
    ----------
    points : tuple of SpeedPoint
    displacement : float or Span or None
        For which power is asked [t].
    method : str

    Raises
    ------
    BadInput
        There are too few points, or they are too near to each other.
    """

    points: tuple[SpeedPoint, ...]
    displacement: float | Span | None = None
    method: str = "own points, fitted"
    is_own = True
    is_fitted = True

    def __post_init__(self) -> None:
        if not _enough(self.points):
            problem = (
                f"Speed points: a fit needs {LEAST_POINTS} points over {LEAST_RANGE:g} kn or more, "
                f"and there are {len(self.points)}."
            )
            raise BadInput(problem, field="speed points", value=len(self.points))

    @property
    def from_fuel(self) -> bool:
        """Whether every point is fuel per day, so that the burn itself was read."""
        return all(point.from_fuel for point in self.points)

    @property
    def kind(self) -> str:
        """ "log" where any point is of a log: the others then carry its weather too."""
        return "log" if any(point.kind == "log" for point in self.points) else "trial"

    @property
    def low_speed(self) -> float:
        """The slowest speed that it covers [kn]."""
        return min(point.speed for point in self.points) - BEYOND

    @property
    def high_speed(self) -> float:
        """The fastest speed that it covers [kn]."""
        return max(point.speed for point in self.points) + BEYOND

    @cached_property
    def fit(self) -> Fit:
        """The curve through the points at the displacement asked for."""
        return power_law(
            (point.speed, at_displacement(point, _middle(self.displacement)))
            for point in weathered(self.points)
        )

    def at(self, speed: float) -> Figure:
        """Return the power at a speed by the fit.

        Parameters
        ----------
        speed : float
            [kn]

        Returns
        -------
        Figure
            [kW]; its span is twice the scatter (3 % at the least) either way, growing to the
            double of that a knot beyond the points.

        Raises
        ------
        BadInput
            The speed cannot be meant.

        References
        ----------
        Ordinary least squares on the vessel's own points; the widths are a model of our own.
        """
        plain("speed", speed, SLOWEST, FASTEST, "kn")
        if not self.low_speed <= speed <= self.high_speed:
            return _beyond(self.method, speed, self.low_speed, self.high_speed)
        fit = self.fit
        # Beyond the points the scatter grows, and a knot beyond it is doubled: the fit is carried
        # there and not measured. It grows from the last point on, since a jump would make a speed
        # just past it look cheaper at its low end than any that was measured.
        slowest, fastest = self.low_speed + BEYOND, self.high_speed - BEYOND
        beyond = max(slowest - speed, speed - fastest, 0.0)
        inside = beyond == 0
        closest = LEAST_SCATTER.value
        # Twice the scatter holds about 95 % of the points; 0.9 keeps the low end above nothing.
        share = min(2 * max(fit.scatter, closest) * (1 + beyond / BEYOND), 0.9)
        defaults = (LEAST_SCATTER,) if fit.scatter < closest else ()
        formula = sentence(
            "P = {power} × (V in kn) to the power {exponent}, scatter {scatter}",
            power=Quantity.exact(fit.a, "kW"),
            exponent=f"{fit.n:.3f}",
            scatter=Quantity.exact(round(100 * fit.scatter, 2), "%"),
        )
        too_far = _too_far(self.points, self.displacement)
        if too_far is not None:
            return too_far
        power = Span.around(fit.a * speed**fit.n, share) * _carried(self.displacement)
        power = power * _by_other_exponents(self.points, self.displacement)
        return Figure(
            "power",
            power,
            "kW",
            formula,
            self._assumptions(inside),
            defaults,
            self._gaps,
            FIT_SOURCE,
        )

    def _assumptions(self, inside: bool) -> tuple[str, ...]:
        """Return the notes on the points, the gravest first."""
        notes = list(notes_on(self.points))
        if not inside:
            notes.insert(0, f"The speed lies beyond the points, by {BEYOND:g} kn at the most.")
        # Displacement hulls follow about the cube; far from it a point was misread.
        low, high = LIKELY_EXPONENT
        if not low <= self.fit.n <= high:
            found = f"The exponent {self.fit.n:.2f} lies outside {low} to {high}"
            notes.insert(0, f"{found}: check the points.")
        return tuple(notes)

    @cached_property
    def _gaps(self) -> tuple[Gap, ...]:
        known = self.displacement is not None and all(
            point.displacement is not None for point in self.points
        )
        why = "the points are taken as they are, because her displacement now or then is not known"
        return () if known else (Gap("displacement of the points", why),)


@dataclass(frozen=True)
class AdmiraltyCurve:
    """Her own admiralty coefficient, from points with a displacement, to 2 kn from the nearest.

    Parameters
    ----------
    points : tuple of SpeedPoint
    displacement : float or Span
        For which power is asked [t].
    method : str

    Raises
    ------
    BadInput
        No point has a displacement, or the one asked for cannot be meant.
    """

    points: tuple[SpeedPoint, ...]
    displacement: float | Span
    method: str = "own admiralty coefficient"
    is_own = True
    is_fitted = False

    def __post_init__(self) -> None:
        within("displacement", self.displacement, 10, 500_000, "t")
        if not self.usable:
            problem = "Speed points: an admiralty coefficient needs a point with its displacement."
            raise BadInput(problem, field="speed points", value=len(self.points))

    @cached_property
    def usable(self) -> tuple[SpeedPoint, ...]:
        """The points with a displacement, by their speeds."""
        known = (point for point in weathered(self.points) if point.displacement is not None)
        return tuple(sorted(known, key=lambda point: point.speed))

    @property
    def from_fuel(self) -> bool:
        """Whether every point is fuel per day, so that the burn itself was read."""
        return all(point.from_fuel for point in self.usable)

    @property
    def kind(self) -> str:
        """ "log" where any point is of a log: the others then carry its weather too."""
        return "log" if any(point.kind == "log" for point in self.usable) else "trial"

    @property
    def low_speed(self) -> float:
        """The slowest speed that it covers [kn]."""
        return self.usable[0].speed - NEAR

    @property
    def high_speed(self) -> float:
        """The fastest speed that it covers [kn]: as far as the points are near each other."""
        reach = self.usable[0].speed
        for slower, faster in pairwise(self.usable):
            # In a hole between points there is none within reach, and the curve ends before it.
            if faster.speed - slower.speed > 2 * NEAR:
                break
            reach = faster.speed
        return reach + NEAR

    def at(self, speed: float) -> Figure:
        """Return the power at a speed, from the coefficients of all points within reach.

        Parameters
        ----------
        speed : float
            [kn]

        Returns
        -------
        Figure
            [kW]; its span holds 10 % for the cube law.

        Raises
        ------
        BadInput
            The speed cannot be meant.

        References
        ----------
        The admiralty coefficient of naval architecture (common practice).
        """
        plain("speed", speed, SLOWEST, FASTEST, "kn")
        # The coefficient drifts with speed, so only points near to it speak for it.
        near = [point for point in self.usable if abs(point.speed - speed) <= NEAR]
        if not near:
            return _beyond(self.method, speed, self.low_speed, self.high_speed)
        found = sorted(
            admiralty_coefficient(point.displacement, point.speed, point.power) for point in near
        )
        # The middle one and not the mean: one bad point among three does not pull it.
        coefficient = Span(found[0], found[len(found) // 2], found[-1])
        too_far = _too_far(near, self.displacement)
        if too_far is not None:
            return too_far
        displacement = _middle(self.displacement)
        power = coefficient.apply(lambda c: admiralty_power(displacement, speed, c))
        ends = f"{coefficient.low:.1f} to {coefficient.high:.1f}"
        return Figure(
            "power",
            power
            * Span.around(1.0, CUBE_LAW.value)
            * _carried(self.displacement)
            * _by_other_exponents(near, self.displacement),
            "kW",
            f"P = D to the power 2/3 × V³ / C, C {ends} (t, kn, kW)",
            ("Same hull, near her own speed.", *notes_on(near)),
            (CUBE_LAW,),
            (),
            ADMIRALTY,
        )


def _beyond(method: str, speed: float, low: float, high: float) -> Figure:
    """Return the refusal of a speed [kn] outside what a method covers."""
    ends = f"{show(round(low, 2), 'kn')} to {show(round(high, 2), 'kn')}"
    why = f"{show(speed, 'kn')} lies outside {ends}, which is all that this method covers: {method}"
    return no_figure("power", "kW", (Gap("power at this speed", why),))


def _ratios(points: Iterable[SpeedPoint], displacement: float | Span | None) -> list[float]:
    """Return the displacement asked for over that of each point, where both are known."""
    asked = _middle(displacement)
    known = [point.displacement for point in points if point.displacement is not None]
    return [] if asked is None else [asked / each for each in known]


def _too_far(points: Iterable[SpeedPoint], displacement: float | Span | None) -> Figure | None:
    """Return the refusal to carry points to a displacement far from theirs; None where near."""
    low, high = CARRIED
    beyond = [ratio for ratio in _ratios(points, displacement) if not low <= ratio <= high]
    if not beyond:
        return None
    percent = show(round(100 * max(beyond, key=lambda ratio: abs(ratio - 1))), "%")
    why = (
        f"her displacement is {percent} of that of a point, and points are carried to "
        f"{show(100 * low, '%')} to {show(100 * high, '%')} of it only"
    )
    return no_figure("power", "kW", (Gap("points near her displacement", why),))


def _by_other_exponents(points: Iterable[SpeedPoint], displacement: float | Span | None) -> Span:
    """Return how the power widens, as the exponent of displacement is known within limits."""
    low, high = EXPONENTS
    ends = [1.0]
    for ratio in _ratios(points, displacement):
        ends += [ratio ** (exponent - 2 / 3) for exponent in (low, high)]
    return Span(min(ends), 1.0, max(ends))


def _enough(points: tuple[SpeedPoint, ...]) -> bool:
    """Whether a curve can be fitted through the points."""
    speeds = [point.speed for point in points]
    return len(speeds) >= LEAST_POINTS and max(speeds) - min(speeds) >= LEAST_RANGE


def _middle(value: float | Span | None) -> float | None:
    return None if value is None else span(value).middle


def _carried(displacement: float | Span | None) -> Span:
    """Return how an uncertain displacement widens the power: its ratio to the power of 2/3."""
    # The power was calculated at the middle of an uncertain displacement.
    if not isinstance(displacement, Span):
        return Span.exact(1.0)
    return (span(displacement) / _middle(displacement)).apply(lambda ratio: ratio ** (2 / 3))
