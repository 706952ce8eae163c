"""Power at sea: calm-water power with the sea margin, and the load of the engines by it."""

from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import or_default, plain, within
from inspector.conversion.core.figure import Default, Figure
from inspector.conversion.core.span import Span
from inspector.conversion.range.engines import Engine
from inspector.conversion.range.hotel_load import Hotel, hotel_power
from inspector.conversion.range.speed_power import PowerCurve
from inspector.criteria.core.source import Source
from inspector.values.quantity import joined

MARGIN_SOURCE = Source.recalled(
    "Service margin on calm-water power, as designers use it",
    "15 %, 10 to 25 %",
    edition="no edition",
)
SEA_MARGIN = Default(
    "sea margin",
    Span(1.10, 1.15, 1.25),
    "calm-water power, so wind, waves and fouling come on top",
    source=MARGIN_SOURCE,
)
IN_SERVICE = Default(
    "sea margin", Span(1.0, 1.0, 1.10), "points from a log already carry the weather of their days"
)
RESERVE = Default(
    "reserve", 0.10, "least for planning; remote passages ask 15 to 20 %, or three days"
)


@dataclass(frozen=True)
class Ship:
    """All that range depends on.

    Parameters
    ----------
    curve : PowerCurve
        Power by speed.
    main : Engine
    hotel : Hotel
    fuel : Figure
        Usable fuel before any reserve [t].
    generator : Engine or None
        None where the engines of the generators are not known.
    running : int or None
        Main engines in use; None for all.
    sea_margin : float or Span or None
        1.0 to 2.0 [factor: 1.15 is 15 %], on power without weather; None for the usual one.
    reserve : float or Span or None
        0.0 to 0.5 [fraction of the usable fuel]; None for the usual one.
    shaft_generator : float or None
        Rating of the shaft generators that carry the hotel load at sea [kW]; None where the sets
        carry it.
    station_fuel : float or None
        What is burnt on station [t/day]; None where it is not known.

    Raises
    ------
    BadInput
        A value is outside its range.
    """

    curve: PowerCurve
    main: Engine
    hotel: Hotel
    fuel: Figure
    generator: Engine | None = None
    running: int | None = None
    sea_margin: float | Span | None = None
    reserve: float | Span | None = None
    shaft_generator: float | None = None
    station_fuel: float | None = None

    def __post_init__(self) -> None:
        if self.running is not None:
            plain("main engines running", self.running, 1, self.main.count)
        if self.sea_margin is not None:
            within("sea margin", self.sea_margin, 1.0, 2.0)
        if self.reserve is not None:
            within("reserve", self.reserve, 0.0, 0.5)
        if self.shaft_generator is not None:
            plain("shaft generators", self.shaft_generator, 1, 20_000, "kW")
        if self.station_fuel is not None:
            plain("fuel a day on station", self.station_fuel, 0, 500, "t/day")


def sea_power(ship: Ship, speed: float) -> Figure:
    """Return the power at a speed with the sea margin.

    Parameters
    ----------
    ship : Ship
    speed : float
        [kn]

    Returns
    -------
    Figure
        Of all main engines together [kW]; without a span where power is not known.

    References
    ----------
    The sea margin of 15 %, 10 to 25 %, on calm-water power, as designers use it (memory).
    """
    calm = ship.curve.at(speed)
    # A gap goes through all results with its reason.
    if calm.span is None:
        return calm
    # Weather is counted once: points of a log have it already, whatever margin was typed.
    in_service = ship.curve.kind == "log"
    given = None if in_service else ship.sea_margin
    margin, defaults = or_default(given, IN_SERVICE if in_service else SEA_MARGIN)
    return replace(
        calm,
        name="power at sea",
        span=calm.span * margin,
        formula_text=joined([calm.formula_text, "× sea margin"], "; "),
        defaults=(*calm.defaults, *defaults),
    )


def shaft_load(ship: Ship) -> Span:
    """Return what shaft generators take from the main engines for the hotel load at sea.

    Parameters
    ----------
    ship : Ship

    Returns
    -------
    Span
        [kW]; nothing without them, and never more than their rating.

    References
    ----------
    Hotel load over the efficiency of a generator, see ``hotel_load``.
    """
    rating = ship.shaft_generator
    if rating is None:
        return Span.exact(0.0)
    return hotel_power(ship.hotel).span.apply(lambda load: min(load, rating))


def main_load(ship: Ship, power: Span) -> Span:
    """Return the load of each running main engine.

    Parameters
    ----------
    ship : Ship
    power : Span
        Of all main engines together at the propellers [kW].

    Returns
    -------
    Span
        [fraction of rated power], with what shaft generators take

    References
    ----------
    Power over rated power (common practice).
    """
    # Engines that stand still carry nothing: one of two in use has twice the load.
    return (power + shaft_load(ship)) / (ship.main.power * (ship.running or ship.main.count))
