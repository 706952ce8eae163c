"""Fuel per day at a speed, which is what a log has, as a point of speed and power.

The power is the one at which her engines burn so much; the burn at that power is then calculated
back by the same consumption, so that a passage at the speed of the log burns what the log says.
"""

from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import BadInput, plain
from inspector.conversion.core.span import Span
from inspector.conversion.range.engine_consumption import rate
from inspector.conversion.range.engines import HIGHEST_LOAD, LOWEST_LOAD, Engine
from inspector.conversion.range.hotel_load import Hotel, hotel_power
from inspector.conversion.range.passages import burn_of_sets
from inspector.conversion.range.speed_points import SpeedPoint

MAIN_ONLY, EVERYTHING = "main engines", "everything aboard"
BURNS = (MAIN_ONLY, EVERYTHING)
HOURS = 24
# Steps in which power and consumption come to agree; a tenth of a watt is left after a dozen.
STEPS = 40


@dataclass(frozen=True)
class Plant:
    """What burns the fuel.

    Parameters
    ----------
    main : Engine
    generator : Engine or None
    hotel : Hotel
    running : int or None
        Main engines in use; None for all.
    shaft_generator : float or None
        Rating of the shaft generators that carry the hotel load at sea [kW]; None for none.
    """

    main: Engine
    generator: Engine | None
    hotel: Hotel
    running: int | None = None
    shaft_generator: float | None = None


def power_of_burn(plant: Plant, fuel: float) -> float:
    """Return the power at which the main engines burn an amount of fuel.

    Parameters
    ----------
    plant : Plant
    fuel : float
        Of all main engines together [t/day].

    Returns
    -------
    float
        Of all main engines together [kW].

    References
    ----------
    Power × specific consumption × 24 h, solved by repetition; consumption see
    ``engine_consumption``.
    """
    rated = plant.main.power * (plant.running or plant.main.count)
    power = fuel * 1e6 / HOURS / 200
    for _ in range(STEPS):
        load = min(max(power / rated, LOWEST_LOAD), HIGHEST_LOAD)
        power = fuel * 1e6 / HOURS / rate(plant.main, load).span.middle
    return power


def point_of_burn(point: SpeedPoint, plant: Plant | None, fuel: float, burns: str) -> SpeedPoint:
    """Return a point of the log with fuel per day as a point with power.

    Parameters
    ----------
    point : SpeedPoint
        Speed and displacement, with any power.
    plant : Plant or None
        None where no main engine is known.
    fuel : float
        [t/day]
    burns : str
        One of BURNS: whether the sets' fuel is in it.

    Returns
    -------
    SpeedPoint

    Raises
    ------
    BadInput
        No main engine is known, or the hotel load alone burns more.

    References
    ----------
    Model of our own: what the hotel load burns is taken off first.
    """
    field = "speed point: fuel"
    plain(field, fuel, 0.01, 1000, "t/day")
    if plant is None:
        sentence = "Speed point: fuel per day needs the main engines in the table of engines."
        raise BadInput(sentence, field=field, value=fuel)
    # As the log was written: without what the conversion adds.
    before = replace(plant.hotel, added_sea=Span.exact(0.0), added_anchor=Span.exact(0.0))
    hotel = hotel_power(before)
    if plant.shaft_generator is not None:
        shaft = min(hotel.span.middle, plant.shaft_generator)
        return _at(point, power_of_burn(plant, fuel) - shaft, fuel)
    if burns == EVERYTHING:
        fuel -= burn_of_sets(plant.generator, hotel).span.middle
    return _at(point, power_of_burn(plant, fuel) if fuel > 0 else 0.0, fuel)


def _at(point: SpeedPoint, power: float, fuel: float) -> SpeedPoint:
    """Return the point with its power [kW]."""
    if power < 1:
        sentence = "Speed point: fuel per day is less than the hotel load alone burns."
        raise BadInput(sentence, field="speed point: fuel", value=fuel)
    return replace(point, power=power, from_fuel=True)
