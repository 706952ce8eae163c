"""A curve of righting levers as typed from the booklet, and the areas under it."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import prod, radians, sin, sqrt

from inspector.conversion.core.bounds import BadInput, plain
from inspector.conversion.core.span import Span

# Beyond it not even the careful area of a hollow curve is below the true one (our own trials).
WIDEST_STEP = 20.0  # deg


@dataclass(frozen=True)
class RightingLevers:
    """One curve of righting levers GZ, or of cross curves KN.

    Parameters
    ----------
    angles : tuple of float
        Angles of heel [deg], rising from zero.
    levers : tuple of float
        Levers at those angles [m].

    Raises
    ------
    BadInput
        Fewer than three angles, or angles that do not rise from zero.
    """

    angles: tuple[float, ...]
    levers: tuple[float, ...]

    def __post_init__(self) -> None:
        # Two points are a straight line, and a curve of levers never is one.
        if len(self.angles) < 3 or len(self.angles) != len(self.levers):
            raise BadInput(
                f"Righting levers: {len(self.angles)} angles are too few, "
                "and a curve needs three or more.",
                field="righting levers",
                value=len(self.angles),
            )
        # Rows are sorted before, so that only a repeated angle is left to refuse.
        rising = all(low < high for low, high in pairwise(self.angles))
        if self.angles[0] != 0 or not rising:
            raise BadInput(
                "Righting levers: the angles must begin at 0° and rise, each once.",
                field="righting levers",
                value=self.angles,
            )

    def lever_at(self, angle: float) -> float:
        """Return the lever at an angle, on a straight line between the ordinates.

        Parameters
        ----------
        angle : float
            Angle of heel [deg].

        Returns
        -------
        float
            Lever [m].

        Raises
        ------
        BadInput
            The angle is beyond the last ordinate.

        References
        ----------
        Linear interpolation.
        """
        plain("righting levers: angle", angle, 0, self.angles[-1], "deg")
        ordinates = pairwise(zip(self.angles, self.levers, strict=True))
        # Straight between two ordinates, as a ruler on the booklet's curve.
        start, end = next(step for step in ordinates if angle <= step[1][0])
        return start[1] + (end[1] - start[1]) * (angle - start[0]) / (end[0] - start[0])

    def area_to(self, angle: float) -> float:
        """Return the area under the curve from upright to an angle.

        Parameters
        ----------
        angle : float
            Angle of heel [deg].

        Returns
        -------
        float
            Area [m·rad].

        Raises
        ------
        BadInput
            The angle is beyond the last ordinate.

        References
        ----------
        See ``area_between``.
        """
        return self.area_between(0.0, angle)

    def area_between(self, start: float, end: float) -> float:
        """Return the area under the curve from one angle to another.

        Parameters
        ----------
        start, end : float
            Angles of heel [deg].

        Returns
        -------
        float
            Area [m·rad].

        Raises
        ------
        BadInput
            An angle is beyond the last ordinate, or uneven steps are wider than 20°.

        References
        ----------
        Simpson's 3/8 and 1/3 rules for even steps. For all others each strip counts with the least
        of its trapezium and of the parabolas through a neighbour: a model of our own, careful
        where the curve is hollow as well as where it is round.
        """
        whole, first = self._by_simpson(end), self._by_simpson(start)
        if whole is not None and first is not None:
            return whole - first
        # A difference of two careful areas would not be careful, so the strips are summed from
        # where the area begins.
        return radians(self._strips(start, end))

    def _by_simpson(self, angle: float) -> float | None:
        """Return the area from upright [m·rad]; None where the steps do not fit Simpson's rules."""
        if angle == 0:
            return 0.0
        steps = bisect_left(self.angles, angle)
        # An angle between two ordinates leaves a shorter last step.
        if steps == len(self.angles) or self.angles[steps] != angle:
            return None
        step, levers = self.angles[1], self.levers[: steps + 1]
        if any(abs(at - step * place) > 1e-9 for place, at in enumerate(self.angles[: steps + 1])):
            return None
        # The three-eighths rule first: 0 to 30° in steps of 10° is what the criteria ask most.
        if steps % 3 == 0:
            weights = [_three_eighths_weight(position, steps) for position in range(steps + 1)]
            return radians(3 * step / 8 * _weighted(weights, levers))
        if steps % 2 == 0:
            weights = [_third_weight(position, steps) for position in range(steps + 1)]
            return radians(step / 3 * _weighted(weights, levers))
        return None

    def _strips(self, start: float, end: float) -> float:
        """Return a careful area [m·deg] between two angles, strip by strip."""
        plain("righting levers: angle", end, start, self.angles[-1], "deg")
        points = list(zip(self.angles, self.levers, strict=True))
        total = 0.0
        for position, (left, right) in enumerate(pairwise(self.angles)):
            low, high = max(left, start), min(right, end)
            if low >= high:
                continue
            self._check_step(left, right)
            # The strip with a neighbour on either side, where there is one.
            near = points[max(position - 1, 0) : position + 3]
            curves = [near[place : place + 3] for place in range(len(near) - 2)]
            curves.append(points[position : position + 2])
            total += min(_area_through(curve, low, high) for curve in curves)
        return total

    def _check_step(self, left: float, right: float) -> None:
        """Refuse a step [deg] over which a curve may do anything."""
        if right - left > WIDEST_STEP:
            raise BadInput(
                f"Righting levers: the step from {left:g}° to {right:g}° is too wide for an area; "
                f"give one at least every {WIDEST_STEP:g}°.",
                field="righting levers: angle",
                value=right - left,
                unit="deg",
            )

    def until(self, angle: float) -> "RightingLevers":
        """Return the curve cut off at an angle.

        Parameters
        ----------
        angle : float
            Angle of heel [deg].

        Returns
        -------
        RightingLevers
            The same curve where it ends sooner.

        Raises
        ------
        BadInput
            Fewer than three ordinates would be left.

        References
        ----------
        Linear interpolation at the cut.
        """
        if angle >= self.angles[-1]:
            return self
        kept = bisect_left(self.angles, angle)
        levers = (*self.levers[:kept], self.lever_at(angle))
        return RightingLevers((*self.angles[:kept], angle), levers)

    def lowered(self, rise: float) -> "RightingLevers":
        """Return the curve after the centre of gravity rises.

        Parameters
        ----------
        rise : float
            Rise of the centre of gravity [m].

        Returns
        -------
        RightingLevers
            Each lever less rise × sin of its angle.

        References
        ----------
        Plain mechanics.
        """
        levers = [
            # A centre of gravity that is higher takes its rise times the sine of the heel from each
            # lever.
            lever - rise * sin(radians(angle))
            for angle, lever in zip(self.angles, self.levers, strict=True)
        ]
        return RightingLevers(self.angles, tuple(levers))

    @property
    def greatest_lever_angle(self) -> Span:
        """Where the greatest lever is [deg]: at its ordinate, as far as the neighbours either "
        "way."""
        position = self.levers.index(max(self.levers))
        # The true top is somewhere between the neighbours of the greatest ordinate.
        before, after = max(position - 1, 0), min(position + 1, len(self.angles) - 1)
        return Span(self.angles[before], self.angles[position], self.angles[after])

    def greatest_lever_from(self, angle: float) -> float:
        """Return the greatest lever at an angle or more.

        Parameters
        ----------
        angle : float
            Angle of heel [deg].

        Returns
        -------
        float
            Lever [m].

        Raises
        ------
        BadInput
            The angle is beyond the last ordinate.

        References
        ----------
        The greatest ordinate, plain geometry.
        """
        ordinates = zip(self.angles, self.levers, strict=True)
        return max([self.lever_at(angle), *(lever for at, lever in ordinates if at >= angle)])


def _three_eighths_weight(position: int, steps: int) -> int:
    """Return the factor of an ordinate by Simpson's second rule: 1, 3, 3, 2 ... 1."""
    if position in (0, steps):
        return 1
    return 2 if position % 3 == 0 else 3


def _third_weight(position: int, steps: int) -> int:
    """Return the factor of an ordinate by Simpson's first rule: 1, 4, 2 ... 1."""
    if position in (0, steps):
        return 1
    return 4 if position % 2 else 2


def _weighted(weights: Sequence[int], levers: Sequence[float]) -> float:
    return sum(weight * lever for weight, lever in zip(weights, levers, strict=True))


def _area_through(points: Sequence[tuple[float, float]], low: float, high: float) -> float:
    """Return the area [m·deg] from one angle to another under the polynomial through points."""
    # Gauss's two points are exact to the third power, and the polynomial has two at most.
    middle, half = (low + high) / 2, (high - low) / 2
    places = (middle - half / sqrt(3), middle + half / sqrt(3))
    return half * sum(_through(points, at) for at in places)


def _through(points: Sequence[tuple[float, float]], angle: float) -> float:
    """Return the lever at an angle by Lagrange's polynomial through points."""
    lever = 0.0
    for own, (at, value) in enumerate(points):
        others = [other for place, (other, _) in enumerate(points) if place != own]
        lever += value * prod((angle - other) / (at - other) for other in others)
    return lever
