"""Power by speed, from the vessel's own log or trial first, the regression of resistance second, her own admiralty coefficient third.

Each way is a curve with ``at(speed)``, which answers a figure or, outside what it may tell, a gap. All ways that exist are
shown side by side with their spread; the first of them is used. Powers are of all main engines together, at the coupling,
in kW; speeds in kn; displacements in t.
"""

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Protocol

from inspector.conversion.hull_form import HullForms, Particulars, effective_power, hull_forms
from inspector.conversion.inputs import PRACTICE, BadInput, or_default, plain, within
from inspector.conversion.propulsive import Propulsion, chain
from inspector.conversion.resistance import FASTEST, HOLTROP_1984, SLOWEST, TOP_FROUDE, froude, resistance
from inspector.conversion.shapes import Default, Figure, Gap, Span, no_figure, span, unique
from inspector.conversion.speed_points import Fit, SpeedPoint, admiralty_coefficient, admiralty_power, at_displacement, power_law, told_of
from inspector.criteria.source import Source
from inspector.quantities import show

FIT_SOURCE = Source("Least squares of ln P over ln V on the vessel's own points", "own mechanics", "fit", "common practice")
ADMIRALTY = Source("Admiralty coefficient from the vessel's own points", "own mechanics", "P = D^(2/3) V³ / C", "common practice")
LEAST_POINTS, LEAST_RANGE = 3, 2.0  # points, kn
BEYOND = 1.0  # kn, how far a fit may leave its points
NEAR = 2.0  # kn, how far an admiralty coefficient may leave its point
LIKELY_EXPONENT = (2.5, 4.5)
LEAST_SCATTER = Default("scatter of the points", 0.03, "", "no log is closer than its gauges, however well its few points lie", PRACTICE)
SERVICE = Default("service factor on the computed power", Span(1.0, 1.9, 2.3), "",
                  "tunnels, nozzles, skegs, fouling and pitch off its best: such hulls commonly need 1.5 to 2.3 times the computed power", PRACTICE)


class Curve(Protocol):
    """A way to tell power by speed: its name, the speeds [kn] it covers, and whether weather is in it already ("log")."""

    method: str
    kind: str
    low_speed: float
    high_speed: float

    def at(self, speed: float) -> Figure: ...


@dataclass(frozen=True)
class PointsCurve:
    """The fit through three or more own points over 2 kn or more; told to 1 kn beyond them and no further."""

    points: tuple[SpeedPoint, ...]
    displacement: float | Span | None = None
    method: str = "own points, fitted"

    def __post_init__(self) -> None:
        speeds = [point.speed for point in self.points]
        if len(speeds) < LEAST_POINTS or max(speeds) - min(speeds) < LEAST_RANGE:
            sentence = f"Speed points: a fit needs {LEAST_POINTS} points over {LEAST_RANGE:g} kn or more, and there are {len(speeds)}."
            raise BadInput(sentence, field="speed points", value=len(speeds))

    @property
    def kind(self) -> str:
        return "log" if all(point.kind == "log" for point in self.points) else "trial"

    @property
    def low_speed(self) -> float:
        return min(point.speed for point in self.points) - BEYOND

    @property
    def high_speed(self) -> float:
        return max(point.speed for point in self.points) + BEYOND

    @cached_property
    def fit(self) -> Fit:
        return power_law((point.speed, at_displacement(point, _middle(self.displacement))) for point in self.points)

    def at(self, speed: float) -> Figure:
        """Power [kW] at a speed [kn]; the span is twice the scatter (3 % at the least) either way, doubled beyond the points."""
        plain("speed", speed, SLOWEST, FASTEST, "kn")
        if not self.low_speed <= speed <= self.high_speed:
            return _beyond(self.method, speed, self.low_speed, self.high_speed)
        fit = self.fit
        inside = self.low_speed + BEYOND <= speed <= self.high_speed - BEYOND
        closest = LEAST_SCATTER.value
        share = min(2 * max(fit.scatter, closest) * (1 if inside else 2), 0.9)
        defaults = (LEAST_SCATTER,) if fit.scatter < closest else ()
        formula = f"P = {fit.a:.4g} V^{fit.n:.3f}, scatter {show(round(100 * fit.scatter, 2), '%')}"
        power = Span.around(fit.a * speed**fit.n, share) * _carried(self.displacement)
        return Figure("power", power, "kW", formula, self._assumptions(inside), defaults, self._gaps, FIT_SOURCE)

    def _assumptions(self, inside: bool) -> tuple[str, ...]:
        low, high = LIKELY_EXPONENT
        told = (
            (not low <= self.fit.n <= high, f"The exponent {self.fit.n:.2f} lies outside {low} to {high}: check the points."),
            (not inside, f"The speed lies beyond the points, by {BEYOND:g} kn at the most."),
        )
        return (*(sentence for holds, sentence in told if holds), *told_of(self.points))

    @cached_property
    def _gaps(self) -> tuple[Gap, ...]:
        known = self.displacement is not None and all(point.displacement is not None for point in self.points)
        why = "the points are taken as they are, because her displacement now or then is not known"
        return () if known else (Gap("displacement of the points", why),)


@dataclass(frozen=True)
class HoltropCurve:
    """The regression of resistance with the propulsive chain and a service factor (None: the usual one, listed)."""

    forms: HullForms
    propulsion: Propulsion = Propulsion()
    service: float | Span | None = None
    edition: int = 1984
    method: str = "regression of resistance"
    kind: str = "trial"

    def __post_init__(self) -> None:
        if self.forms.middle is None:
            raise BadInput("Hull: no hull can be told from these particulars, see the gaps.", field="hull", value=None)

    @property
    def low_speed(self) -> float:
        return 3.0

    @cached_property
    def high_speed(self) -> float:
        """[kn] at a Froude number of 0.45, the greatest of any box; below the end of the formulas."""
        return min(0.45, TOP_FROUDE[self.edition]) / froude(1.0, self.forms.middle.length)

    def at(self, speed: float) -> Figure:
        """Power [kW] at a speed [kn]."""
        plain("speed", speed, SLOWEST, FASTEST, "kn")
        if not self.low_speed <= speed <= self.high_speed:
            return _beyond(self.method, speed, self.low_speed, self.high_speed)
        effective, error, outside = effective_power(self.forms, speed, self.edition)
        # the regressions of the chain ask for one hull: the middle one, whose stern stands for all
        links = chain(self.propulsion, self.forms.middle, resistance(self.forms.middle, speed, self.edition, self.forms.water), self.forms.water)
        service, from_service = or_default(self.service, SERVICE)
        defaults = unique(self.forms.defaults, error, links.defaults, from_service)
        assumptions = (*outside, *links.assumptions, f"Calm, deep water of 15 °C and {show(self.forms.water.density, 'kg/m³')}.")
        formula = "P = P_E / (propulsive, shaft and gear efficiency) x service factor"
        return Figure("power", effective / links.efficiency * service, "kW", formula, assumptions, defaults, links.gaps, HOLTROP_1984)


@dataclass(frozen=True)
class AdmiraltyCurve:
    """Her own admiralty coefficient, from points that carry a displacement; told to 2 kn from the nearest of them."""

    points: tuple[SpeedPoint, ...]
    displacement: float | Span
    method: str = "own admiralty coefficient"

    def __post_init__(self) -> None:
        within("displacement", self.displacement, 10, 500_000, "t")
        if not self.usable:
            raise BadInput("Speed points: an admiralty coefficient needs a point with its displacement.", field="speed points", value=len(self.points))

    @cached_property
    def usable(self) -> tuple[SpeedPoint, ...]:
        return tuple(sorted((point for point in self.points if point.displacement is not None), key=lambda point: point.speed))

    @property
    def kind(self) -> str:
        return "log" if all(point.kind == "log" for point in self.usable) else "trial"

    @property
    def low_speed(self) -> float:
        return self.usable[0].speed - NEAR

    @property
    def high_speed(self) -> float:
        """[kn], up to where the points stay near each other."""
        reach = self.usable[0].speed
        for one, other in pairwise(self.usable):
            if other.speed - one.speed > 2 * NEAR:
                break
            reach = other.speed
        return reach + NEAR

    def at(self, speed: float) -> Figure:
        """Power [kW] at a speed [kn], from the coefficients of all points within reach and 10 % for the cube law."""
        plain("speed", speed, SLOWEST, FASTEST, "kn")
        near = [point for point in self.usable if abs(point.speed - speed) <= NEAR]
        if not near:
            return _beyond(self.method, speed, self.low_speed, self.high_speed)
        found = [admiralty_coefficient(point.displacement, point.speed, point.power) for point in near]
        coefficient = Span(min(found), sorted(found)[len(found) // 2], max(found))
        power = coefficient.apply(lambda c: admiralty_power(_middle(self.displacement), speed, c)) * Span.around(1.0, 0.10) * _carried(self.displacement)
        error = Default("error of the cube law", 0.10, "", "power seldom follows the cube of the speed over 2 kn", PRACTICE)
        formula = f"P = D^(2/3) V³ / C, C {coefficient.low:.1f} to {coefficient.high:.1f}"
        return Figure("power", power, "kW", formula, ("Same hull, near her own speed.", *told_of(near)), (error,), (), ADMIRALTY)


def _beyond(method: str, speed: float, low: float, high: float) -> Figure:
    why = f"{show(speed, 'kn')} lies outside {show(round(low, 2), 'kn')} to {show(round(high, 2), 'kn')}, which is as far as this way tells: {method}"
    return no_figure("power", "kW", (Gap("power at this speed", why),))


@dataclass(frozen=True)
class Ways:
    """The curves that exist, the one to be used first, and the gaps that keep others away."""

    curves: tuple[Curve, ...]
    gaps: tuple[Gap, ...] = ()

    def at(self, speed: float) -> tuple[tuple[str, Figure], ...]:
        """Every way's name and figure at a speed [kn]."""
        return tuple((curve.method, curve.at(speed)) for curve in self.curves)

    def spread(self, speed: float) -> float | None:
        """The largest over the smallest point of all ways that tell this speed [kn]; None where fewer than two do."""
        points = [figure.span.point for _, figure in self.at(speed) if figure.span and figure.span.point]
        return max(points) / min(points) if len(points) > 1 else None


def ways(points: tuple[SpeedPoint, ...] = (), known: Particulars | None = None, propulsion: Propulsion | None = None,
         service: float | Span | None = None) -> Ways:
    """All the ways to tell power by speed that these inputs allow, the best first: own points, regression, own admiralty coefficient.

    Errors
    ------
    BadInput : a value that cannot be meant, with ``field``.
    """
    curves, gaps = [], []
    displacement = known.displacement if known else None
    speeds = [point.speed for point in points]
    if len(points) >= LEAST_POINTS and max(speeds) - min(speeds) >= LEAST_RANGE:
        curves.append(PointsCurve(points, displacement))
    else:
        gaps.append(Gap("speed and power points", f"{LEAST_POINTS} points of log or trial over {LEAST_RANGE:g} kn would tell more than any formula"))
    forms = hull_forms(known or Particulars())
    if forms.middle is not None:
        curves.append(HoltropCurve(forms, propulsion or Propulsion(), service))
    gaps.extend(forms.gaps)
    if displacement is not None and any(point.displacement is not None for point in points):
        curves.append(AdmiraltyCurve(points, displacement))
    return Ways(tuple(curves), tuple(gaps))


def _middle(value: float | Span | None) -> float | None:
    return None if value is None else span(value).middle


def _carried(displacement: float | Span | None) -> Span:
    # what an uncertain displacement does to the power that was reckoned at its middle
    if not isinstance(displacement, Span):
        return Span.exact(1.0)
    return (span(displacement) / _middle(displacement)).apply(lambda ratio: ratio ** (2 / 3))
