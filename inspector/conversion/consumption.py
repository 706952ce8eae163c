"""What engines burn: g/kWh by load from the engine's own points, else from a published curve listed as a default; and the hotel load.

Loads are shares of rated power (0.85 is 85 %); powers in kW at the engine's coupling; rates in g/kWh.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from inspector.conversion.inputs import PRACTICE, BadInput, one_of, or_default, plain, within
from inspector.conversion.shapes import Default, Figure, Gap, Span, rest_on, span
from inspector.criteria.source import Source
from inspector.quantities import show
from inspector.words import capital

GHG_STUDY = Source("Fourth IMO GHG Study", "2020", "table 19 and load correction, as reproduced in an open model", "seen")
HOTEL_SOURCE = Source("Fourth IMO GHG Study", "2020", "auxiliary power at sea: yacht 130, service 220, offshore 320 kW, as reproduced in an open model", "seen")
TOLERANCE_SOURCE = Source("ISO 3046-1", "edition not read", "tolerance of 5 % on a declared consumption", "memory")
LEAST_BURNING = 0.780  # load of least consumption of the correction
LOWEST_LOAD, HIGHEST_LOAD = 0.05, 1.1
LOW_LOAD = 0.30
HEAT = 42.7  # MJ/kg
LIKELY_EFFICIENCY = (0.25, 0.50)
# speed class -> g/kWh for engines built before 1984, 1984 to 2000, after 2000
BASE = {"medium speed": (200.0, 185.0, 175.0), "high speed": (210.0, 190.0, 185.0), "auxiliary": (210.0, 190.0, 185.0)}
HIGH_SPEED = 900.0  # rpm
USED = Default("used engine over the published rate", Span(1.0, 1.05, 1.15), "", "5 % tolerance and up to 10 % for age", PRACTICE)
DECLARED = Default("measured over declared consumption", Span(1.0, 1.0, 1.05), "", "a declared consumption carries a tolerance of 5 %", TOLERANCE_SOURCE)
SHAPE = Default("shape of the consumption curve", "0.455 L² − 0.710 L + 1.280", "", "beyond her own points the published shape is laid through the nearest",
                GHG_STUDY)
AT_SEA = Default("hotel load at sea", Span(130.0, 220.0, 320.0), "kW", "no reading of the switchboard over a day", HOTEL_SOURCE)
GENERATOR = Default("generator efficiency", Span(0.92, 0.94, 0.96), "", "usual for such sets", PRACTICE)


@dataclass(frozen=True)
class ConsumptionPoint:
    """One point: load (share of rated power), rate [g/kWh]; measured, or declared by the maker."""

    load: float
    rate: float
    measured: bool = False

    def __post_init__(self) -> None:
        plain("consumption point: load", self.load, LOWEST_LOAD, HIGHEST_LOAD)
        plain("consumption point: rate", self.rate, 1, 1000, "g/kWh")
        efficiency, (low, high) = brake_efficiency(self.rate), LIKELY_EFFICIENCY
        if not low <= efficiency <= high:
            sentence = f"Consumption point: rate of {show(self.rate, 'g/kWh')} is an efficiency of {efficiency:.2f}, and a diesel has {low} to {high}."
            raise BadInput(sentence, field="consumption point: rate", value=self.rate)


@dataclass(frozen=True)
class Engine:
    """One or more like engines: power [kW] of each; count; rpm rated; built (year); own points; kind "main" or "auxiliary"."""

    name: str
    power: float
    count: int = 1
    rpm: float | None = None
    built: int | None = None
    points: tuple[ConsumptionPoint, ...] = ()
    kind: str = "main"

    def __post_init__(self) -> None:
        if self.power is None:
            sentence = f"{capital(self.name)}: power is not given, and without it no load and no consumption can be told."
            raise BadInput(sentence, field=f"{self.name}: power", value=None)
        plain(f"{self.name}: power", self.power, 1, 30_000, "kW")
        plain(f"{self.name}: number of engines", self.count, 1, 12)
        one_of(f"{self.name}: kind", self.kind, ("main", "auxiliary"))
        if self.rpm is not None:
            plain(f"{self.name}: speed", self.rpm, 300, 3000, "rpm")
        if self.built is not None:
            plain(f"{self.name}: year built", self.built, 1930, 2100)
        if len({point.load for point in self.points}) < len(self.points):
            raise BadInput(f"{self.name}: consumption points hold one load twice; give each load once.", field=f"{self.name}: points", value=self.points)


@dataclass(frozen=True)
class Hotel:
    """The load that the ship has with or without way on: sea, anchor [kW, numbers or spans, None not known].

    measured_at: "engine" (power of the generator engines) or "switchboard" (electrical, the generators' losses come on top).
    """

    sea: float | Span | None = None
    anchor: float | Span | None = None
    measured_at: str = "switchboard"

    def __post_init__(self) -> None:
        for field in ("sea", "anchor"):
            if getattr(self, field) is not None:
                within(f"hotel load: {field}", getattr(self, field), 0, 20_000, "kW")
        one_of("hotel load: measured at", self.measured_at, ("engine", "switchboard"))


def brake_efficiency(rate: float) -> float:
    """3600 / (rate x 42.7 MJ/kg), of a rate [g/kWh]."""
    return 3600 / (rate * HEAT)


def load_factor(load: float) -> float:
    """Rate at a load over the base rate: 0.455 L² - 0.710 L + 1.280. References: Fourth IMO GHG Study 2020 (seen)."""
    return 0.455 * load**2 - 0.710 * load + 1.280


def base_rate(kind: str, rpm: float | None, built: int | None) -> Default:
    """The published base rate [g/kWh] of an engine, as a default; a span over all classes that it may belong to."""
    by_speed = (("medium speed", rpm is None or rpm <= HIGH_SPEED), ("high speed", rpm is None or rpm > HIGH_SPEED))
    classes = ["auxiliary"] if kind == "auxiliary" else [name for name, holds in by_speed if holds]
    ages = (0, 1, 2) if built is None else ((0,) if built < 1984 else (1,) if built <= 2000 else (2,))
    rates = sorted(BASE[name][age] for name in classes for age in ages)
    why = f"{' or '.join(classes)}, {'year not known' if built is None else f'built {built}'}: no consumption of her own was given"
    return Default("base consumption", Span(rates[0], rates[len(rates) // 2], rates[-1]), "g/kWh", why, GHG_STUDY)


def rate(engine: Engine, load: float | Span) -> Figure:
    """Specific consumption [g/kWh] of an engine at a load.

    Errors
    ------
    BadInput : the load is not between 0.05 and 1.1.
    """
    load = within(f"{engine.name}: load", load, LOWEST_LOAD, HIGHEST_LOAD)
    low_load = (f"{engine.name} may run below {LOW_LOAD:.0%} load, where deposits form and rates are uncertain.",) if load.low < LOW_LOAD else ()
    name = f"consumption of {engine.name}"
    if not engine.points:
        default = base_rate(engine.kind, engine.rpm, engine.built)
        # the study corrects no auxiliary for load
        factor = Span.exact(1.0) if engine.kind == "auxiliary" else _over(load_factor, load, (LEAST_BURNING,))
        formula = "base x (0.455 L² − 0.710 L + 1.280) x used engine"
        return Figure(name, default.value * factor * USED.value, "g/kWh", formula, low_load, (default, USED), (), GHG_STUDY)
    points = sorted(engine.points, key=lambda point: point.load)
    found = _over(lambda share: _between(points, share), load, (LEAST_BURNING, *(point.load for point in points)))
    beyond = (SHAPE,) if load.low < points[0].load or load.high > points[-1].load else ()
    declared = () if all(point.measured for point in points) else (DECLARED,)
    return Figure(name, found * (DECLARED.value if declared else 1.0), "g/kWh", "between the engine's own points", low_load, (*beyond, *declared), (), None)


def _between(points: list[ConsumptionPoint], load: float) -> float:
    nearest = points[0] if load < points[0].load else points[-1]
    for one, other in pairwise(points):
        if one.load <= load <= other.load and one.load < other.load:
            return one.rate + (other.rate - one.rate) * (load - one.load) / (other.load - one.load)
    return nearest.rate * load_factor(load) / load_factor(nearest.load)


def _over(function: Callable[[float], float], load: Span, knots: Iterable[float]) -> Span:
    """The span of a function that is monotone between its knots."""
    point = None if load.point is None else function(load.point)
    values = [function(share) for share in (load.low, load.high, *(knot for knot in knots if load.low < knot < load.high))]
    values += [] if point is None else [point]
    return Span(min(values), point, max(values))


def hotel_power(hotel: Hotel, where: str = "sea") -> Figure:
    """The power of the generator engines [kW] for the hotel load, at "sea" or at "anchor".

    Where the load at anchor is not known, that at sea stands for it and the gap is named.
    """
    one_of("hotel load: where", where, ("sea", "anchor"))
    if where == "anchor" and hotel.anchor is None:
        at_sea = hotel_power(hotel)
        return replace(at_sea, gaps=(*at_sea.gaps, Gap("hotel load at anchor", "the load at sea is taken for it")))
    given = hotel.sea if where == "sea" else hotel.anchor
    load, defaults = or_default(given, AT_SEA)
    # the default is power of the engines already
    if given is None or hotel.measured_at == "engine":
        return Figure(f"hotel power at {where}", load, "kW", "as given", defaults=defaults, source=HOTEL_SOURCE if defaults else None)
    return Figure(f"hotel power at {where}", load / GENERATOR.value, "kW", "load / generator efficiency", defaults=(GENERATOR,))


def burn_per_day(parts: Iterable[tuple[Figure, Figure]]) -> Figure:
    """Fuel burnt [t/day] by pairs of power [kW] and rate [g/kWh]: 24 sum(P x rate) / 10^6."""
    parts = tuple(parts)
    total = span(0.0)
    for power, specific in parts:
        total = total + power.span * specific.span
    return Figure("burn per day", total * 24 / 1e6, "t/day", "24 h x sum of power x rate", **rest_on(*(figure for pair in parts for figure in pair)))
