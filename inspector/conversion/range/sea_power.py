"""Power at sea: calm-water power with the sea margin, and the load of the engines by it."""

from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import or_default, plain, within
from inspector.conversion.core.figure import Default, Figure
from inspector.conversion.core.span import Span
from inspector.conversion.range.engines import Engine
from inspector.conversion.range.hotel_load import Hotel
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

    def __post_init__(self) -> None:
        if self.running is not None:
            plain("main engines running", self.running, 1, self.main.count)
        if self.sea_margin is not None:
            within("sea margin", self.sea_margin, 1.0, 2.0)
        if self.reserve is not None:
            within("reserve", self.reserve, 0.0, 0.5)


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


def main_load(ship: Ship, power: Span) -> Span:
    """Return the load of each running main engine.

    Parameters
    ----------
    ship : Ship
    power : Span
        Of all main engines together [kW].

    Returns
    -------
    Span
        [fraction of rated power]

    References
    ----------
    Power over rated power (common practice).
    """
    # Engines that stand still carry nothing: one of two in use has twice the load.
    return power / (ship.main.power * (ship.running or ship.main.count))
