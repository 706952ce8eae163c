"""Range, days and economical speed against the box of the brief: how far and how long at which speed, and whether that is known to be enough.

Speeds in kn, distances in nmi, fuel in t. The sea margin is applied once: points from a log in service already carry
their weather. No reserve is universal; the one used is listed.
"""

from dataclasses import dataclass, replace
from math import ceil

from inspector.conversion.consumption import HIGHEST_LOAD, LOWEST_LOAD, Engine, Hotel, burn_per_day, hotel_power, rate
from inspector.conversion.inputs import PRACTICE, BadInput, or_default, plain, within
from inspector.conversion.shapes import Default, Figure, Span, no_figure, rest_on, unique
from inspector.conversion.speed_power import Curve
from inspector.criteria.source import Source
from inspector.quantities import show

MARGIN_SOURCE = Source("Service margin on calm-water power, as designers use it", "no edition", "15 %, 10 to 25 %", "memory")
SEA_MARGIN = Default("sea margin", Span(1.10, 1.15, 1.25), "", "calm-water power, so wind, waves and fouling come on top", MARGIN_SOURCE)
IN_SERVICE = Default("sea margin", Span(1.0, 1.0, 1.10), "", "points from a log already carry the weather of their days", PRACTICE)
RESERVE = Default("reserve", 0.10, "", "least for planning; remote passages ask 15 to 20 %, or three days", PRACTICE)
UNKNOWN_SETS = Engine("generator engines", 500.0, kind="auxiliary")
FULL_SET = 0.85  # load of a generator set above which a further one is taken on


@dataclass(frozen=True)
class BriefBox:
    """What the client asks: speed_low, speed_high [kn]; range [nmi]; endurance [days]; persons. None is not said."""

    speed_low: float | None = None
    speed_high: float | None = None
    range: float | None = None
    endurance: float | None = None
    persons: int | None = None

    def __post_init__(self) -> None:
        limits = {"speed_low": (1, 60, "kn"), "speed_high": (1, 60, "kn"), "range": (1, 40_000, "nmi"), "endurance": (0.1, 1000, "days"),
                  "persons": (1, 1000, "")}
        for field, (low, high, unit) in limits.items():
            if getattr(self, field) is not None:
                plain(f"brief: {field.replace('_', ' ')}", getattr(self, field), low, high, unit)
        if self.speed_low is not None and self.speed_high is not None and self.speed_low > self.speed_high:
            sentence = f"Brief: speed low of {show(self.speed_low, 'kn')} is above its speed high of {show(self.speed_high, 'kn')}."
            raise BadInput(sentence, field="brief: speed low", value=self.speed_low)

    @property
    def speeds(self) -> tuple[float, ...]:
        """The speeds asked for [kn], each once."""
        return unique(speed for speed in (self.speed_low, self.speed_high) if speed is not None)


@dataclass(frozen=True)
class Ship:
    """All that range needs: power by speed, main engines, hotel load, usable fuel [t, before reserve].

    running: main engines in use (None: all); generator: None where its engines are not known; sea_margin (1.15 is 15 %) and
    reserve (share) are None for the usual ones.
    """

    curve: Curve
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


@dataclass(frozen=True)
class Passage:
    """One speed [kn] kept: power [kW], load (share), burn [t/day], per_mile [kg/nmi], range [nmi], days. reached: None is not known."""

    speed: float
    power: Figure
    load: Span | None
    burn: Figure
    per_mile: Figure
    range: Figure
    days: Figure
    reached: bool | None


def sea_power(ship: Ship, speed: float) -> Figure:
    """Power [kW] at a speed [kn] with the sea margin, all main engines together."""
    calm = ship.curve.at(speed)
    if calm.span is None:
        return calm
    margin, defaults = or_default(ship.sea_margin, IN_SERVICE if ship.curve.kind == "log" else SEA_MARGIN)
    formula = f"{calm.formula_text}; x sea margin"
    return Figure("power at sea", calm.span * margin, "kW", formula, calm.assumptions, (*calm.defaults, *defaults), calm.gaps, calm.source)


def main_load(ship: Ship, power: Span) -> Span:
    """Load of each running main engine, as a share of its rated power [kW, all together]."""
    return power / (ship.main.power * (ship.running or ship.main.count))


def propulsion_burn(ship: Ship, power: Figure) -> Figure:
    """Fuel of the main engines [t/day] for a power at sea [kW]."""
    return burn_per_day(((power, rate(ship.main, _possible(main_load(ship, power.span)))),))


def hotel_burn(ship: Ship, where: str = "sea") -> Figure:
    """Fuel of the generator engines [t/day] for the hotel load at "sea" or at "anchor"."""
    power = hotel_power(ship.hotel, where)
    sets = ship.generator
    if sets is None:
        # the published rates of auxiliaries do not depend on the load, so that any load and size will do
        return burn_per_day(((power, rate(UNKNOWN_SETS, 0.6)),))
    running = min(max(1, ceil(power.span.high / (FULL_SET * sets.power))), sets.count)
    told = (f"{running} of {sets.count} generator sets running, a further one taken on at {FULL_SET:.0%} load.",)
    if power.span.high > sets.power * sets.count:
        told += ("The hotel load may be more than all generator sets give.",)
    specific = rate(sets, _possible(power.span / (running * sets.power)))
    return burn_per_day(((replace(power, assumptions=(*power.assumptions, *told)), specific),))


def available(ship: Ship) -> Figure:
    """Usable fuel less the reserve [t]; without a span where the fuel is not known."""
    if ship.fuel.span is None:
        return no_figure("fuel before reserve is touched", "t", ship.fuel.gaps)
    reserve, defaults = or_default(ship.reserve, RESERVE)
    parts = rest_on(ship.fuel)
    return Figure("fuel before reserve is touched", ship.fuel.span * (1 - reserve), "t", "usable fuel x (1 − reserve)",
                  parts["assumptions"], (*parts["defaults"], *defaults), parts["gaps"], ship.fuel.source)


def passage(ship: Ship, speed: float) -> Passage:
    """What one speed [kn] costs and how far it goes; figures without a span where a gap forbids them."""
    plain("speed", speed, 0.5, 60, "kn")
    power = sea_power(ship, speed)
    if power.span is None:
        return _nothing(speed, power)
    load = main_load(ship, power.span)
    reached = None if load.high > 1 else True
    reached = False if load.low > 1 else reached
    drive, hotel, fuel = propulsion_burn(ship, power), hotel_burn(ship), available(ship)
    parts = rest_on(drive, hotel)
    if not reached:
        verb = "are" if reached is False else "may be"
        parts["assumptions"] += (f"At {show(speed, 'kn')} the engines {verb} asked for more than their rated power.",)
    burn = Figure("burn per day", drive.span + hotel.span, "t/day", "main engines + hotel", **parts)
    per_mile = Figure("fuel per mile", burn.span * 1000 / (24 * speed), "kg/nmi", "1000 x burn per day / (24 x speed)", **parts)
    if fuel.span is None:
        return Passage(speed, power, load, burn, per_mile, no_figure("range", "nmi", fuel.gaps), no_figure("days under way", "days", fuel.gaps), reached)
    both = rest_on(burn, fuel)
    reach = Figure("range", fuel.span * 1000 / per_mile.span, "nmi", "usable fuel x (1 − reserve) / fuel per mile", **both)
    days = Figure("days under way", fuel.span / burn.span, "days", "usable fuel x (1 − reserve) / burn per day", **both)
    return Passage(speed, power, load, burn, per_mile, reach, days, reached)


def _nothing(speed: float, power: Figure) -> Passage:
    names = (("burn per day", "t/day"), ("fuel per mile", "kg/nmi"), ("range", "nmi"), ("days under way", "days"))
    burn, per_mile, reach, days = (no_figure(name, unit, power.gaps) for name, unit in names)
    return Passage(speed, power, None, burn, per_mile, reach, days, None)


def _possible(load: Span) -> Span:
    # consumption is told for loads that an engine can have; Passage.reached speaks of the rest
    return load.apply(lambda share: min(max(share, LOWEST_LOAD), HIGHEST_LOAD))
