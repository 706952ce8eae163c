"""Severe wind and rolling after the changes, over all that masses and heights may be."""

from dataclasses import dataclass
from itertools import product

from inspector.conversion.core.figure import Figure, Gap
from inspector.conversion.core.side_area import SideArea
from inspector.conversion.core.span import Span
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.levers.weather_criterion import (
    NEEDED_REACH,
    WeatherResult,
    WindAndHull,
    roll_to_windward,
    weather_criterion,
)
from inspector.conversion.stability.starting_condition import StartingCondition

NAME = "Severe wind and rolling"
# What of the table of hydrostatics the criterion cannot do without, as a reader knows it.
NEEDED = {
    "wind_height": "centre of that area above half the draught",
    "lwl": "length of the waterline",
    "breadth": "breadth",
    "depth": "depth",
    "cb": "block coefficient",
}
AREA = "side area in the wind after the changes"


@dataclass(frozen=True)
class SevereWind:
    """The criterion after the changes.

    Parameters
    ----------
    lever : Span
        Of the steady wind [m].
    heel : Span or None
        Under steady wind [deg]; None where some levers do not withstand it.
    most_heel : float
        The greatest heel that is allowed [deg].
    roll : Span
        To windward [deg].
    ratio : Span
        Area to leeward over area to windward; at least 1 is asked.
    """

    lever: Span
    heel: Span | None
    most_heel: float
    roll: Span
    ratio: Span

    @property
    def heel_met(self) -> bool | None:
        """Whether she heels little enough under steady wind; None where the span disagrees."""
        return False if self.heel is None else self.heel.at_most(self.most_heel)

    @property
    def ratio_met(self) -> bool | None:
        """Whether she comes back from the gust; None where the span disagrees."""
        return self.ratio.at_least(1.0)


def missing_for_wind(start: StartingCondition, wind: SideArea) -> Gap | None:
    """Return what of the table of hydrostatics the criterion lacks.

    Parameters
    ----------
    start : StartingCondition
    wind : SideArea
        After the changes.

    Returns
    -------
    Gap or None
        None where nothing is missing.

    References
    ----------
    IS Code 2008, part A, 2.3 (from memory).
    """
    lacking = [label for name, label in NEEDED.items() if not start.number(name)]
    if not wind.area:
        lacking.insert(0, AREA)
    return Gap(NAME, f"Not calculated without: {', '.join(lacking)}.") if lacking else None


def severe_wind(
    start: StartingCondition,
    levers: LeverSpan | None,
    afloat: tuple[Figure, Figure, Figure, Figure],
    wind: SideArea,
) -> SevereWind | None:
    """Return severe wind and rolling after the changes.

    Parameters
    ----------
    start : StartingCondition
    levers : LeverSpan or None
        GZ after the changes [m].
    afloat : tuple of Figure
        Displacement [t], draught amidships [m], fluid KG [m] and GM [m] after.
    wind : SideArea
        After the changes.

    Returns
    -------
    SevereWind or None
        None where a part of it is not known.

    Raises
    ------
    BadInput
        A GM that is not surely above zero, or a displacement that cannot be.

    References
    ----------
    IS Code 2008, part A, 2.3, see ``weather_criterion``; its ends are a model of our own.
    """
    if levers is None or levers.reach < NEEDED_REACH or missing_for_wind(start, wind) is not None:
        return None
    if any(figure.span is None for figure in afloat):
        return None
    mass, draught, kg, gm = (figure.span for figure in afloat)
    hull = _hull(start, draught.middle, wind)
    flooding = start.number("flooding")

    def result(curve: RightingLevers, tonnes: float, at: tuple[float, float]) -> WeatherResult:
        return weather_criterion(curve, hull, tonnes, roll_to_windward(hull, *at), flooding)

    # A high centre of gravity goes with a small GM: they are one weight list, and not two spans.
    heights = {(kg.high, gm.low), (kg.low, gm.high)}
    found = [result(*one) for one in product(levers.ends, {mass.low, mass.high}, heights)]
    likely = result(levers.middle, mass.middle, (kg.middle, gm.middle))
    return _spanned(found, likely, hull.most_heel)


def _hull(start: StartingCondition, draught: float, wind: SideArea) -> WindAndHull:
    """Return the hull at a draught [m], with the area in the wind."""
    height, length, breadth, depth, block = (start.number(name) for name in NEEDED)
    keels = start.number("keels") or 0.0
    return WindAndHull(wind.area, height, length, breadth, draught, depth, block, keels)


def _spanned(found: list[WeatherResult], likely: WeatherResult, most_heel: float) -> SevereWind:
    """Return the results of all ends as spans."""
    heels = [one.heel for one in (*found, likely)]
    heel = None if None in heels else _span(heels)
    every = (*found, likely)
    return SevereWind(
        _span([one.lever for one in every]),
        heel,
        most_heel,
        _span([one.roll for one in every]),
        _span([one.ratio for one in every]),
    )


def _span(values: list[float]) -> Span:
    """Return the span of values, of which the last one is likely."""
    return Span(min(values), values[-1], max(values))
