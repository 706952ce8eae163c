"""Points of speed and power from a vessel's own log or trial, and the curves through them.

Powers are of all main engines together, at the coupling, in kW; speeds in kn; displacements in t.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from math import exp, log, sqrt

from inspector.conversion.inputs import BadInput, one_of, plain

SLOWEST, FASTEST = 0.5, 60.0  # kn, beyond which a number was mistyped
KINDS = ("log", "trial")


@dataclass(frozen=True)
class SpeedPoint:
    """One point of a log or a trial: speed [kn], power [kW] of all main engines together; displacement [t] if known.

    kind: "log" (in service, weather included) or "trial" (calm water); through_water: False where the speed is over ground
    and not the mean of runs both ways. None is not known, and is told with every result.
    """

    speed: float
    power: float
    displacement: float | None = None
    kind: str | None = None
    through_water: bool | None = None

    def __post_init__(self) -> None:
        plain("speed point: speed", self.speed, SLOWEST, FASTEST, "kn")
        plain("speed point: power", self.power, 1, 100_000, "kW")
        if self.displacement is not None:
            plain("speed point: displacement", self.displacement, 10, 500_000, "t")
        if self.kind is not None:
            one_of("speed point: kind", self.kind, KINDS)


@dataclass(frozen=True)
class Fit:
    """P = a V^n through points; scatter is the standard error of ln P. A share: 0.03 is 3 %."""

    a: float
    n: float
    scatter: float


def power_law(points: Iterable[tuple[float, float]]) -> Fit:
    """Ordinary least squares of ln P over ln V. Parameters: (speed [kn], power [kW]), two different speeds at least."""
    logs = [(log(speed), log(power)) for speed, power in points]
    mean_x, mean_y = (sum(column) / len(logs) for column in zip(*logs, strict=True))
    spread = sum((x - mean_x) ** 2 for x, _ in logs)
    if spread == 0:
        raise BadInput("Speed points: a fit needs two different speeds.", field="speed points", value=len(logs))
    n = sum((x - mean_x) * (y - mean_y) for x, y in logs) / spread
    intercept = mean_y - n * mean_x
    rest = sum((y - intercept - n * x) ** 2 for x, y in logs)
    return Fit(exp(intercept), n, sqrt(rest / (len(logs) - 2)) if len(logs) > 2 else 0.0)


def admiralty_coefficient(displacement: float, speed: float, power: float) -> float:
    """C = D^(2/3) V³ / P. Parameters: displacement [t], speed [kn], power [kW, as the point gives it]."""
    return displacement ** (2 / 3) * speed**3 / power


def admiralty_power(displacement: float, speed: float, coefficient: float) -> float:
    """P [kW] = D^(2/3) V³ / C. Parameters: displacement [t], speed [kn]."""
    return displacement ** (2 / 3) * speed**3 / coefficient


def at_displacement(point: SpeedPoint, displacement: float | None) -> float:
    """The point's power [kW] carried to another displacement [t] by (D1/D2)^(2/3), or as it is where either is not known."""
    if displacement is None or point.displacement is None:
        return point.power
    return point.power * (displacement / point.displacement) ** (2 / 3)


def told_of(points: Iterable[SpeedPoint]) -> tuple[str, ...]:
    """The sentences that go with every result from these points: current, weather and mixture."""
    points = tuple(points)
    kinds, waters = {point.kind for point in points}, {point.through_water for point in points}
    told = (
        (False in waters, "Some speeds are over ground: current is in them."),
        (None in waters, "Whether all speeds are through the water is not known."),
        (None in kinds, "Whether the points are of a log or a trial is not known: they are taken as calm water."),
        (len(kinds - {None}) > 1, "Points of trial and of service are mixed: they are taken as calm water."),
    )
    return tuple(sentence for holds, sentence in told if holds)
