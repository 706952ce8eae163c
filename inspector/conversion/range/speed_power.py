"""Power by speed, by every method that the particulars allow.

Each method is a curve with ``at(speed)``, which returns a figure or, outside what it covers, a gap.
All methods that exist are shown side by side with their spread; the first of them is used. Powers
are of all main engines together, at the coupling, in kW; speeds in kn; displacements in t.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import Protocol

from inspector.conversion.core.bounds import BadInput, or_default, plain
from inspector.conversion.core.figure import Default, Figure, Gap, unique
from inspector.conversion.core.span import Span
from inspector.conversion.hull.hull_form import HullForms, Particulars, effective_power, hull_forms
from inspector.conversion.hull.propulsive_power import Propulsion, chain
from inspector.conversion.hull.resistance import (
    FASTEST,
    HOLTROP_1984,
    SLOWEST,
    TOP_FROUDE,
    froude,
    resistance,
)
from inspector.conversion.range.own_speed_power import (
    LEAST_POINTS,
    LEAST_RANGE,
    AdmiraltyCurve,
    PointsCurve,
    _beyond,
    _enough,
)
from inspector.conversion.range.speed_points import (
    SpeedPoint,
)
from inspector.values.quantity import Quantity, sentence

SERVICE = Default(
    "service factor on the computed power",
    Span(1.0, 1.9, 2.3),
    "tunnels, nozzles, skegs, fouling and pitch off its best: "
    "such hulls commonly need 1.5 to 2.3 times the computed power",
)


class PowerCurve(Protocol):
    """A method that gives power by speed.

    Attributes
    ----------
    method : str
        Its name.
    kind : str
        "log" where weather is in it already, else "trial".
    low_speed, high_speed : float
        The speeds that it covers [kn].
    is_own, is_fitted, from_fuel : bool
        Whether it comes from the vessel's own points, whether it is a fit through them, and whether
        all of them are fuel per day.
    """

    method: str
    kind: str
    low_speed: float
    high_speed: float
    is_own: bool
    is_fitted: bool
    from_fuel: bool

    def at(self, speed: float) -> Figure:
        """Return the power at a speed.

        Parameters
        ----------
        speed : float
            [kn]

        Returns
        -------
        Figure
            [kW]

        References
        ----------
        Each method names its own.
        """


@dataclass(frozen=True)
class HoltropCurve:
    """The regression of resistance with the propulsive efficiency and a service factor.

    Parameters
    ----------
    forms : HullForms
    propulsion : Propulsion
    service : float or Span or None
        Power in service over the computed one [factor]; None for the usual one, which is listed.
    edition : int
        Of the regression, 1982 or 1984.
    method : str

    Raises
    ------
    BadInput
        The forms have no hull.
    """

    forms: HullForms
    propulsion: Propulsion = Propulsion()
    service: float | Span | None = None
    edition: int = 1984
    method: str = "regression of resistance"
    is_own = False
    is_fitted = False
    from_fuel = False

    def __post_init__(self) -> None:
        if self.forms.middle is None:
            problem = "Hull: no hull follows from these particulars, see the gaps."
            raise BadInput(problem, field="hull", value=None)

    @property
    def kind(self) -> str:
        """ "log" where a service factor was typed, which holds fouling and weather."""
        return "trial" if self.service is None else "log"

    @property
    def low_speed(self) -> float:
        """The slowest speed that it covers [kn]."""
        return 3.0

    @cached_property
    def high_speed(self) -> float:
        """The fastest speed that it covers [kn]: a Froude number of 0.45, the most of any box."""
        return min(0.45, TOP_FROUDE[self.edition]) / froude(1.0, self.forms.middle.length)

    def at(self, speed: float) -> Figure:
        """Return the power at a speed by the regression.

        Parameters
        ----------
        speed : float
            [kn]

        Returns
        -------
        Figure
            [kW]

        Raises
        ------
        BadInput
            The speed cannot be meant, or the propeller contradicts the hull.

        References
        ----------
        Holtrop, A statistical re-analysis of resistance and propulsion data, International
        Shipbuilding Progress 31 (363), 1984; the service factor is common practice.
        """
        plain("speed", speed, SLOWEST, FASTEST, "kn")
        # Outside its ships a regression still gives a number, which nobody should read.
        if not self.low_speed <= speed <= self.high_speed:
            return _beyond(self.method, speed, self.low_speed, self.high_speed)
        effective, error, outside = effective_power(self.forms, speed, self.edition)
        # The propulsive regressions need one hull: the stern of the middle one is taken for all.
        middle, water = self.forms.middle, self.forms.water
        calm = resistance(middle, speed, self.edition, water)
        links = chain(self.propulsion, middle, calm, water)
        service, from_service = or_default(self.service, SERVICE)
        defaults = unique(self.forms.defaults, error, links.defaults, from_service)
        assumptions = (
            *outside,
            *links.assumptions,
            sentence(
                "Calm, deep water of {temperature} and {density}.",
                temperature=Quantity.exact(15, "°C"),
                density=Quantity.exact(water.density, "kg/m³"),
            ),
        )
        formula = "P = P_E / (propulsive, shaft and gear efficiency) × service factor"
        return Figure(
            "power",
            effective / links.efficiency * service,
            "kW",
            formula,
            assumptions,
            defaults,
            links.gaps,
            HOLTROP_1984,
        )


@dataclass(frozen=True)
class PowerCurves:
    """The curves that exist, the one to be used first, and the gaps that keep others away."""

    curves: tuple[PowerCurve, ...]
    gaps: tuple[Gap, ...] = ()

    def at(self, speed: float) -> tuple[tuple[str, Figure], ...]:
        """Return the power at a speed by every method.

        Parameters
        ----------
        speed : float
            [kn]

        Returns
        -------
        tuple of (str, Figure)
            The name of the method and its power [kW].

        References
        ----------
        Each method names its own.
        """
        return tuple((curve.method, curve.at(speed)) for curve in self.curves)

    def spread(self, speed: float) -> float | None:
        """Return the largest over the smallest point of all methods that cover a speed.

        Parameters
        ----------
        speed : float
            [kn]

        Returns
        -------
        float or None
            A factor; None where fewer than two methods cover it.

        References
        ----------
        Model of our own.
        """
        figures = [figure for _, figure in self.at(speed) if figure.known]
        # Likely values only: the spans of two methods may overlap however far apart the methods
        # are.
        points = [figure.span.point for figure in figures if figure.span.point]
        return max(points) / min(points) if len(points) > 1 else None


def power_curves(
    points: tuple[SpeedPoint, ...] = (),
    known: Particulars | None = None,
    propulsion: Propulsion | None = None,
    service: float | Span | None = None,
) -> PowerCurves:
    """Return the power by speed by all methods that the inputs allow, the best first.

    Parameters
    ----------
    points : tuple of SpeedPoint
        The vessel's own.
    known : Particulars or None
        Of the hull.
    propulsion : Propulsion or None
    service : float or Span or None
        Power in service over the computed one [factor].

    Returns
    -------
    PowerCurves
        Own points, the regression, own admiralty coefficient, as far as they exist.

    Raises
    ------
    BadInput
        A value that cannot be meant, with ``field``.

    References
    ----------
    Each method names its own; their order is a model of our own.
    """
    curves: list[PowerCurve] = []
    gaps = []
    displacement = known.displacement if known else None
    if _enough(points):
        curves.append(PointsCurve(points, displacement))
    else:
        why = (
            f"{LEAST_POINTS} points of log or trial over {LEAST_RANGE:g} kn "
            "would tell more than any formula"
        )
        gaps.append(Gap("speed and power points", why))
    # Empty particulars give the gaps by name, which is what the page shows.
    forms = hull_forms(known or Particulars())
    if forms.middle is not None:
        curves.append(HoltropCurve(forms, propulsion or Propulsion(), service))
    gaps.extend(forms.gaps)
    if displacement is not None and any(point.displacement is not None for point in points):
        curves.append(AdmiraltyCurve(points, displacement))
    return PowerCurves(tuple(curves), tuple(gaps))
