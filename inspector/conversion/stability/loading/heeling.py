"""Heel by passengers who crowd to one side, and by turning."""

from math import cos, radians

from inspector.conversion.core.bounds import plain
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.criteria.core.source import Source
from inspector.values.units import convert

PASSENGER_CRITERIA = Source.recalled(
    "IS Code 2008, resolution MSC.267(85), part A",
    "3.1 passenger ships: crowding to one side, and turning",
    edition="2008",
)
PERSON = 0.075  # t
MOST_HEEL = 10.0  # deg


def crowding_lever(passengers: int, off_centre: float, mass: float) -> float:
    """Return the heeling lever of passengers who crowd to one side.

    Parameters
    ----------
    passengers : int
    off_centre : float
        How far from the centreline they can stand [m].
    mass : float
        Displacement [t].

    Returns
    -------
    float
        Lever upright [m]: passengers × 75 kg × distance / displacement.

    Raises
    ------
    BadInput
        A displacement that cannot be.

    References
    ----------
    IS Code 2008, part A, 3.1.1 (from memory): 75 kg a person.

    Examples
    --------
    >>> round(crowding_lever(40, 6.0, 3000), 4)
    0.006
    """
    return passengers * PERSON * off_centre / plain("displacement", mass, 1, 500_000, "t")


def turning_lever(speed: float, length: float, kg: float, draught: float) -> float:
    """Return the heeling lever of a turn.

    Parameters
    ----------
    speed : float
        Service speed [kn].
    length : float
        On the waterline [m].
    kg : float
        Centre of gravity over the keel [m].
    draught : float
        Mean draught [m].

    Returns
    -------
    float
        Lever upright [m]: 0.200 v² / (L g) × (KG − d/2), v in m/s; never below zero.

    Raises
    ------
    BadInput
        A length that cannot be.

    References
    ----------
    IS Code 2008, part A, 3.1.2 (from memory): M = 0.200 v² / L × Δ × (KG − d/2) in kN·m.
    """
    metres = convert(speed, "kn", "m/s")
    lever = 0.200 * metres**2 / plain("length", length, 5, 500, "m") / 9.81 * (kg - draught / 2)
    return max(lever, 0.0)


def heel_by(curve: RightingLevers, lever: float) -> float | None:
    """Return the heel at which the righting lever meets a heeling lever.

    Parameters
    ----------
    curve : RightingLevers
    lever : float
        Upright [m]; it falls with the cosine of the heel.

    Returns
    -------
    float or None
        Heel [deg] to a tenth; None where no lever of the curve is so great.

    References
    ----------
    Balance of moments, plain mechanics.
    """
    if lever <= 0:
        return 0.0
    for tenth in range(1, int(10 * curve.angles[-1]) + 1):
        heel = tenth / 10
        if curve.lever_at(heel) >= lever * cos(radians(heel)):
            return heel
    return None
