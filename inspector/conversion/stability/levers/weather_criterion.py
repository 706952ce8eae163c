"""Severe wind and rolling: steady wind, a roll to windward, and a gust from there."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan, degrees, radians, sqrt

from inspector.conversion.core.bounds import plain
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.roll_period import roll_constant
from inspector.criteria.core.source import Source

WEATHER = Source.recalled(
    "IS Code 2008, resolution MSC.267(85), part A",
    "2.3 severe wind and rolling; the formula of the roll as 46 CFR 28.575 repeats it",
    edition="2008",
)
WIND_PRESSURE = 504.0  # Pa
GRAVITY = 9.81  # m/s²
GUST = 1.5  # lever of the gust over that of the steady wind
MOST_HEEL = 16.0  # deg, under steady wind
DECK_SHARE = 0.80  # of the angle at which the deck edge is under water
LAST_HEEL = 50.0  # deg, where the area to leeward ends at the latest
NEEDED_REACH = 40.0  # deg, as far as the levers must be known
# B/d -> X1, block coefficient -> X2, bilge keels in % of L B -> k, roll period [s] -> s.
X1 = (
    (2.4, 1.0),
    (2.5, 0.98),
    (2.6, 0.96),
    (2.7, 0.95),
    (2.8, 0.93),
    (2.9, 0.91),
    (3.0, 0.90),
    (3.1, 0.88),
    (3.2, 0.86),
    (3.4, 0.82),
    (3.5, 0.80),
)
X2 = ((0.45, 0.75), (0.50, 0.82), (0.55, 0.89), (0.60, 0.95), (0.65, 0.97), (0.70, 1.0))
K = ((0, 1.0), (1.0, 0.98), (1.5, 0.95), (2.0, 0.88), (2.5, 0.79), (3.0, 0.74), (3.5, 0.72))
K = (*K, (4.0, 0.70))
S = (
    (6, 0.100),
    (7, 0.098),
    (8, 0.093),
    (12, 0.065),
    (14, 0.053),
    (16, 0.044),
    (18, 0.038),
    (20, 0.035),
)


@dataclass(frozen=True)
class WindAndHull:
    """What the wind acts on, and the hull that rolls.

    Parameters
    ----------
    area : float
        Side area over the water, after the changes [m²].
    height : float
        Its centre over half the draught [m].
    length, breadth, draught, depth : float
        On the waterline; moulded [m].
    block : float
        Block coefficient.
    keels : float
        Area of both bilge keels [m²]; 0 where there are none.
    """

    area: float
    height: float
    length: float
    breadth: float
    draught: float
    depth: float
    block: float
    keels: float = 0.0

    @property
    def most_heel(self) -> float:
        """The greatest heel under steady wind [deg]."""
        deck_edge = degrees(atan(2 * (self.depth - self.draught) / self.breadth))
        return min(MOST_HEEL, DECK_SHARE * deck_edge)


@dataclass(frozen=True)
class WeatherResult:
    """The criterion on one curve of levers.

    Parameters
    ----------
    lever : float
        Of the steady wind [m].
    heel : float or None
        Under steady wind [deg]; None where no lever is so great.
    roll : float
        To windward [deg].
    windward, leeward : float
        Areas a and b [m·rad].
    """

    lever: float
    heel: float | None
    roll: float
    windward: float
    leeward: float

    @property
    def ratio(self) -> float:
        """Area b over area a; at least 1 is asked. 0 where the wind is not withstood."""
        return self.leeward / self.windward if self.windward > 0 else 0.0


def wind_lever(hull: WindAndHull, mass: float) -> float:
    """Return the lever of the steady wind.

    Parameters
    ----------
    hull : WindAndHull
    mass : float
        Displacement [t].

    Returns
    -------
    float
        lw1 = P A Z / (1000 g Δ) [m].

    Raises
    ------
    BadInput
        A displacement that cannot be.

    References
    ----------
    IS Code 2008, part A, 2.3.2 (from memory).
    """
    weight = 1000 * GRAVITY * plain("displacement", mass, 1, 500_000, "t")
    return WIND_PRESSURE * hull.area * hull.height / weight


def roll_to_windward(hull: WindAndHull, kg: float, gm: float) -> float:
    """Return the angle of roll to windward by wave action.

    Parameters
    ----------
    hull : WindAndHull
    kg : float
        Centre of gravity over the keel [m].
    gm : float
        Metacentric height with free surfaces [m].

    Returns
    -------
    float
        φ1 = 109 k X1 X2 √(r s) [deg].

    Raises
    ------
    BadInput
        A GM that is not above zero.

    References
    ----------
    IS Code 2008, part A, 2.3.4 (formula as 46 CFR 28.575 repeats it; tables from memory).
    """
    plain("GM", gm, 0.01, 60, "m")
    constant = roll_constant(hull.breadth, hull.draught, hull.length)
    period = 2 * constant * hull.breadth / sqrt(gm)
    r = 0.73 + 0.6 * (kg - hull.draught) / hull.draught
    shares = (
        _between(K, 100 * hull.keels / (hull.length * hull.breadth)),
        _between(X1, hull.breadth / hull.draught),
        _between(X2, hull.block),
    )
    # A centre of gravity far below the water would make r negative, which no roll has.
    return 109 * shares[0] * shares[1] * shares[2] * sqrt(max(r, 0.0) * _between(S, period))


def weather_criterion(
    curve: RightingLevers, hull: WindAndHull, mass: float, roll: float, flooding: float | None
) -> WeatherResult:
    """Return the areas to windward and to leeward of a gust.

    Parameters
    ----------
    curve : RightingLevers
        GZ with free surfaces, to 40° or more.
    hull : WindAndHull
    mass : float
        Displacement [t].
    roll : float
        Angle of roll to windward [deg].
    flooding : float, optional
        Angle of down-flooding [deg].

    Returns
    -------
    WeatherResult
        The area to leeward ends at 50°, at flooding, where the levers fall below the gust, or where
        they end.

    Raises
    ------
    BadInput
        A displacement that cannot be.

    References
    ----------
    IS Code 2008, part A, 2.3.1 (from memory); straight lines between the ordinates.
    """
    lever = wind_lever(hull, mass)
    gust = GUST * lever
    heel, leeward_start = _first_heel(curve, lever), _first_heel(curve, gust)
    if heel is None or leeward_start is None:
        return WeatherResult(lever, heel, roll, 0.0, 0.0)
    end = min(LAST_HEEL, curve.angles[-1], LAST_HEEL if flooding is None else flooding)
    end = min(end, _second_heel(curve, gust, leeward_start))
    windward = -_area_over(curve, heel - roll, leeward_start, gust)
    leeward = _area_over(curve, leeward_start, max(end, leeward_start), gust)
    return WeatherResult(lever, heel, roll, windward, leeward)


def _between(table: Sequence[tuple[float, float]], at: float) -> float:
    """Return a factor on a straight line between the rows; its end beyond them, as printed."""
    if at <= table[0][0]:
        return table[0][1]
    for (low, first), (high, last) in pairwise(table):
        if at <= high:
            return first + (last - first) * (at - low) / (high - low)
    return table[-1][1]


def _first_heel(curve: RightingLevers, lever: float) -> float | None:
    """Return the first heel [deg] at which the curve has a lever."""
    points = zip(curve.angles, curve.levers, strict=True)
    for (low, first), (high, last) in pairwise(points):
        if first < lever <= last:
            return low + (lever - first) * (high - low) / (last - first)
    return None


def _second_heel(curve: RightingLevers, lever: float, after: float) -> float:
    """Return the heel [deg] past which the curve is below a lever; its end if it never is."""
    points = list(zip(curve.angles, curve.levers, strict=True))
    for (low, first), (high, last) in pairwise(points[bisect_left(curve.angles, after) :]):
        if first >= lever > last:
            return low + (first - lever) * (high - low) / (first - last)
    return curve.angles[-1]


def _area_over(curve: RightingLevers, low: float, high: float, lever: float) -> float:
    """Return the area [m·rad] between a curve and a lever; to port it mirrors to starboard."""
    both = {*curve.angles, *(-angle for angle in curve.angles)}
    places = sorted({low, high} | {angle for angle in both if low < angle < high})
    heights = [_either_side(curve, angle) - lever for angle in places]
    strips = zip(pairwise(places), pairwise(heights), strict=True)
    return radians(sum((right - left) * (y + z) / 2 for (left, right), (y, z) in strips))


def _either_side(curve: RightingLevers, angle: float) -> float:
    lever = curve.lever_at(min(abs(angle), curve.angles[-1]))
    return lever if angle >= 0 else -lever
