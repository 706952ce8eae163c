"""Points of speed and power from a vessel's own log or trial, and the curves through them.

Powers are of all main engines together, at the coupling, in kW; speeds in kn; displacements in t.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import exp, log, sqrt

from inspector.conversion.core.bounds import BadInput, one_of, plain

# Beyond these a speed was mistyped, kn.
SLOWEST, FASTEST = 0.5, 60.0
KINDS = ("log", "trial")
# The usual sea margin, on a point of calm water that stands among points of a log.
CALM_TO_SERVICE = 1.15


@dataclass(frozen=True)
class SpeedPoint:
    """One point of a log or a trial. What is not known of it is named with every result.

    Parameters
    ----------
    speed : float
        0.5 to 60 [kn].
    power : float
        Of all main engines together [kW].
    displacement : float or None
        [t]
    kind : str or None
        "log" (in service, weather included) or "trial" (calm water).
    through_water : bool or None
        False where the speed is over ground and not the mean of runs both ways.
    from_fuel : bool
        Whether the power follows from fuel per day by her engines' own consumption.

    Raises
    ------
    BadInput
        A value is outside its range.
    """

    speed: float
    power: float
    displacement: float | None = None
    kind: str | None = None
    through_water: bool | None = None
    from_fuel: bool = False

    def __post_init__(self) -> None:
        plain("speed point: speed", self.speed, SLOWEST, FASTEST, "kn")
        plain("speed point: power", self.power, 1, 100_000, "kW")
        if self.displacement is not None:
            plain("speed point: displacement", self.displacement, 10, 500_000, "t")
        if self.kind is not None:
            one_of("speed point: kind", self.kind, KINDS)


@dataclass(frozen=True)
class Fit:
    """The curve P = a V^n through points.

    Parameters
    ----------
    a : float
        Power at 1 kn [kW].
    n : float
        The exponent.
    scatter : float
        The standard error of ln P [fraction: 0.03 is 3 %].
    """

    a: float
    n: float
    scatter: float


def power_law(points: Iterable[tuple[float, float]]) -> Fit:
    """Return the least squares of ln P over ln V.

    Parameters
    ----------
    points : iterable of (float, float)
        Speed [kn] and power [kW]; two different speeds at least.

    Returns
    -------
    Fit

    Raises
    ------
    BadInput
        All speeds are the same.

    References
    ----------
    Ordinary least squares on the vessel's own points (common practice).
    """
    logs = [(log(speed), log(power)) for speed, power in points]
    mean_x, mean_y = (sum(values) / len(logs) for values in zip(*logs, strict=True))
    spread = sum((x - mean_x) ** 2 for x, _ in logs)
    # All points at one speed say nothing of how power grows with it.
    if spread == 0:
        sentence = "Speed points: a fit needs two different speeds."
        raise BadInput(sentence, field="speed points", value=len(logs))
    n = sum((x - mean_x) * (y - mean_y) for x, y in logs) / spread
    intercept = mean_y - n * mean_x
    rest = sum((y - intercept - n * x) ** 2 for x, y in logs)
    # Through two points a curve always fits; only a third shows how well.
    # Two points less, for the two constants that the fit has taken from them.
    scatter = sqrt(rest / (len(logs) - 2)) if len(logs) > 2 else 0.0
    return Fit(exp(intercept), n, scatter)


def admiralty_coefficient(displacement: float, speed: float, power: float) -> float:
    """Return C = D^(2/3) V³ / P.

    Parameters
    ----------
    displacement : float
        D [t].
    speed : float
        V [kn].
    power : float
        P, as the point gives it [kW].

    Returns
    -------
    float
        [t^(2/3) kn³/kW]

    References
    ----------
    The admiralty coefficient of naval architecture (common practice).
    """
    return displacement ** (2 / 3) * speed**3 / power


def admiralty_power(displacement: float, speed: float, coefficient: float) -> float:
    """Return P = D^(2/3) V³ / C.

    Parameters
    ----------
    displacement : float
        D [t].
    speed : float
        V [kn].
    coefficient : float
        C [t^(2/3) kn³/kW].

    Returns
    -------
    float
        [kW]

    References
    ----------
    The admiralty coefficient of naval architecture (common practice).
    """
    return displacement ** (2 / 3) * speed**3 / coefficient


def at_displacement(point: SpeedPoint, displacement: float | None) -> float:
    """Return the power of a point carried to another displacement by (D1/D2)^(2/3).

    Parameters
    ----------
    point : SpeedPoint
    displacement : float or None
        [t]

    Returns
    -------
    float
        [kW]; as it is where either displacement is not known.

    References
    ----------
    The admiralty coefficient of naval architecture (common practice).
    """
    if displacement is None or point.displacement is None:
        return point.power
    return point.power * (displacement / point.displacement) ** (2 / 3)


def weathered(points: Iterable[SpeedPoint]) -> tuple[SpeedPoint, ...]:
    """Return points that may be fitted together: with any of a log, all of them with weather.

    Parameters
    ----------
    points : iterable of SpeedPoint

    Returns
    -------
    tuple of SpeedPoint
        As they are where none is of a log; else those that are not carry the usual sea margin.

    References
    ----------
    A sea margin of 15 % on calm water, as designers use it (from memory).
    """
    among = tuple(points)
    if not any(point.kind == "log" for point in among):
        return among
    return tuple(
        point if point.kind == "log" else replace(point, power=point.power * CALM_TO_SERVICE)
        for point in among
    )


def notes_on(points: Iterable[SpeedPoint]) -> tuple[str, ...]:
    """Return the sentences that go with every result from these points.

    Parameters
    ----------
    points : iterable of SpeedPoint

    Returns
    -------
    tuple of str
        About current, weather and mixture.

    References
    ----------
    Model of our own.
    """
    points = tuple(points)
    kinds, waters = {point.kind for point in points}, {point.through_water for point in points}
    notes = {
        "Some speeds are over ground: current is in them.": False in waters,
        "Whether all speeds are through the water is not known.": None in waters,
        "Whether the points are of a log or a trial is not known: "
        "they are taken as calm water.": None in kinds,
        "Points of a log and others are mixed: those without weather take a sea margin of "
        f"{100 * (CALM_TO_SERVICE - 1):.0f} %.": "log" in kinds and len(kinds) > 1,
    }
    return tuple(note for note, applies in notes.items() if applies)
