"""Righting levers as typed from the booklet, the areas under them, and the general intact criteria they are held against."""

import math
from collections.abc import Callable
from dataclasses import dataclass
from math import radians, sin

from inspector.conversion.inputs import BadInput, plain
from inspector.conversion.shapes import Span, span
from inspector.criteria.source import Source

INTACT = Source("IS Code 2008, resolution MSC.267(85), part A", "2008, read in extracts", "2.2, general criteria of righting levers", "seen")
LEAST_ANGLE = 25.0   # deg
LEAST = {"area to 30 deg": 0.055, "area to 40 deg or flooding": 0.090, "area from 30 to 40 deg or flooding": 0.030, "lever at 30 deg or more": 0.20,
         "angle of the greatest lever": LEAST_ANGLE, "initial GM": 0.15}


@dataclass(frozen=True)
class Levers:
    """One curve of righting levers: angles [deg] rising from zero, levers [m]."""

    angles: tuple[float, ...]
    levers: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.angles) < 3 or len(self.angles) != len(self.levers):
            sentence = f"Righting levers: {len(self.angles)} angles are too few, and a curve needs three or more."
            raise BadInput(sentence, field="righting levers", value=len(self.angles))
        if self.angles[0] != 0 or any(a >= b for a, b in zip(self.angles, self.angles[1:], strict=False)):
            raise BadInput("Righting levers: the angles must begin at 0 deg and rise, each once.", field="righting levers", value=self.angles)

    def at(self, angle: float) -> float:
        """Lever [m] at an angle [deg], straight between the ordinates; BadInput beyond the last one."""
        plain("righting levers: angle", angle, 0, self.angles[-1], "deg")
        pairs = list(zip(self.angles, self.levers, strict=True))
        (a, low), (b, high) = next(two for two in zip(pairs, pairs[1:], strict=False) if angle <= two[1][0])
        return low + (high - low) * (angle - a) / (b - a)

    def area(self, to: float) -> float:
        """Area under the curve [m·rad] from zero to an angle [deg]: Simpson's rules for even steps, trapezia where they do not fit."""
        xs = [x for x in self.angles if x < to] + [to]
        ys = [self.at(x) for x in xs]
        if len(xs) == 1:
            return 0.0
        step, steps = xs[1] - xs[0], len(xs) - 1
        even = all(abs(b - a - step) < 1e-9 for a, b in zip(xs, xs[1:], strict=False))
        if even and steps % 3 == 0:
            weights = [1 if i in (0, steps) else 2 if i % 3 == 0 else 3 for i in range(steps + 1)]
            return radians(3 * step / 8 * sum(w * y for w, y in zip(weights, ys, strict=True)))
        if even and steps % 2 == 0:
            weights = [1 if i in (0, steps) else 4 if i % 2 else 2 for i in range(steps + 1)]
            return radians(step / 3 * sum(w * y for w, y in zip(weights, ys, strict=True)))
        return radians(sum((b - a) * (y + z) / 2 for a, b, y, z in zip(xs, xs[1:], ys, ys[1:], strict=False)))

    def lowered(self, rise: float) -> "Levers":
        """The curve after the centre of gravity rises [m]: each lever less rise x sin of its angle."""
        return Levers(self.angles, tuple(lever - rise * sin(radians(angle)) for angle, lever in zip(self.angles, self.levers, strict=True)))

    @property
    def peak(self) -> Span:
        """Where the greatest lever stands [deg]: at the greatest ordinate, and as far as its neighbours either way."""
        at = max(range(len(self.levers)), key=lambda one: self.levers[one])
        return Span(self.angles[max(at - 1, 0)], self.angles[at], self.angles[min(at + 1, len(self.angles) - 1)])

    def greatest_from(self, angle: float) -> float:
        """Greatest lever [m] at an angle [deg] or more."""
        return max([self.at(angle), *(y for x, y in zip(self.angles, self.levers, strict=True) if x >= angle)])


@dataclass(frozen=True)
class Held:
    """One criterion: what is asked at least, what was found (None where the levers do not reach), in a unit ("m·rad", "m" or "deg")."""

    name: str
    asked: float
    unit: str
    found: Span | None

    @property
    def met(self) -> bool | None:
        return None if self.found is None else self.found.at_least(self.asked)


def held(curve: Levers | None, rise: Span, gm: Span | None, flooding: float | None = None) -> tuple[Held, ...]:
    """The general criteria of IS Code 2008 part A 2.2 one by one.

    curve: the levers before the centre of gravity rises by `rise` [m] (None: not known); gm [m] after it; flooding [deg].
    """
    end = 40.0 if flooding is None else min(40.0, flooding)
    beyond = end if end > 30 else math.inf      # flooding before 30 deg leaves nothing to measure between
    measures = (
        ("area to 30 deg", "m·rad", 30.0, lambda one: one.area(30.0)), ("area to 40 deg or flooding", "m·rad", end, lambda one: one.area(end)),
        ("area from 30 to 40 deg or flooding", "m·rad", beyond, lambda one: one.area(end) - one.area(30.0)),
        ("lever at 30 deg or more", "m", 30.0, lambda one: one.greatest_from(30.0)), ("angle of the greatest lever", "deg", LEAST_ANGLE, lambda one: one.peak),
    )
    rows = [Held(name, LEAST[name], unit, _over(curve, rise, measure, reach)) for name, unit, reach, measure in measures]
    return (*rows, Held("initial GM", LEAST["initial GM"], "m", gm))


def _over(curve: Levers | None, rise: Span, measure: Callable[[Levers], float | Span], reach: float) -> Span | None:
    """A measure of the curve over the rise; None where the typed angles end before `reach` [deg]."""
    if curve is None or curve.angles[-1] < reach:
        return None
    ends = [span(measure(curve.lowered(one))) for one in (rise.low, rise.high)]
    point = None if rise.point is None else span(measure(curve.lowered(rise.point)))
    given = [*ends, *([] if point is None else [point])]
    return Span(min(one.low for one in given), None if point is None else point.point, max(one.high for one in given))
