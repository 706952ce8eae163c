"""Azimuth units that steer the ship: how fast they turn."""

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

AZIMUTH = Source("MSC.1/Circ.1416, interpretation of SOLAS II-1/29 for azimuth units (IACS UI SC242)", "rates recalled", "2.3 and 0.5° a second", "memory")
RATES = {"main": 2.3, "auxiliary": 0.5}  # deg/s


def turning_limit(angle: float, gear: str) -> float:
    """Return the most time [s] for an azimuth unit to turn an angle [deg]. MSC.1/Circ.1416 (rates memory)."""
    return float(exact(angle) / exact(RATES[gear]))


def turning_ladder(angle: float, gear: str) -> Ladder:
    """Two bands of the time [s] of an azimuth unit for an angle."""
    return stairs(
        "s",
        to(turning_limit(angle, gear), "quick enough", "good", "quick enough"),
        beyond("slow", "failed", "slower than its rate"),
    )


def judge_turning(time: float, angle: float, gear: str) -> Judgement:
    """Judge how fast an azimuth unit turns.

    Parameters
    ----------
    time [s], 0.5 to 1800; angle [deg] turned in it, 10 to 360; gear : main or auxiliary.

    References
    ----------
    MSC.1/Circ.1416 (IACS UI SC242): about 2.3° a second for the main and 0.5 for the auxiliary gear (memory).
    """
    limit = turning_limit(angle, gear)
    rate = round(angle / time, 3)
    return told(
        "azimuth-turning-time",
        turning_ladder(angle, gear).step(time),
        f"A turn by {show(angle, 'deg')} in {show(time, 's')}, against at most {show(limit, 's')} at {RATES[gear]}° a second,",
        (time, "s", limit),
        AZIMUTH,
        (f"That is {rate:g}° a second; the declared limits of angle govern.",),
    )


CRITERIA = (
    Criterion(
        "azimuth-turning-time",
        "Turning time of an azimuth unit",
        (
            Input("time", "Time taken", "number", "s", low=0.5, high=1800),
            Input("angle", "Angle turned", "number", "deg", low=10, high=360),
            Input("gear", "Which gear", "choice", choices=tuple(RATES)),
        ),
        AZIMUTH,
        judge_turning,
        "Azimuth units that steer the ship, turns of 10 to 360°.",
        "Both rates from both sides by our own arithmetic on recalled rates.",
        ladder=turning_ladder,
    ),
)
