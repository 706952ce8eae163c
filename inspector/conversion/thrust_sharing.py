"""How thrusters share a force, and what that asks of buses and engines: thrust at bow and stern, power on each source. A screen, no control system.

Units of a group share by their full thrust, so that all work at one fraction; where that asks too much of a bus, its units may
be left idle altogether, and nothing finer is looked for: the cautious side. All sets in order run; essential loads stay on.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from itertools import combinations

from inspector.conversion.failure import Left
from inspector.conversion.inputs import plain
from inspector.conversion.load_balance import can_give
from inspector.conversion.plant import GeneratorSet, Plant, Thruster, alternatives
from inspector.conversion.station_keeping import Force, power_for

MOST_GROUPS = 4  # of buses and engines, of which any but one may be left idle; with more, one at a time
HELD = ""


@dataclass(frozen=True)
class Level:
    """One consistent set of numbers: full thrust by unit [kN], across and along, the forces (None where not known), and a factor on the hotel loads."""

    across: Mapping[str, float]
    along: Mapping[str, float]
    beam: Force | None = None
    head: Force | None = None
    hotel: float = 1.0


@dataclass(frozen=True)
class Terms:
    """efficiency of electric drives; limit: share of sets and engines that may be used; power_factor of the load (None: not read, sets give their rating)."""

    efficiency: float = 0.92
    limit: float = 0.90
    power_factor: float | None = None

    def __post_init__(self) -> None:
        plain("efficiency of the drives", self.efficiency, 0.5, 1)
        plain("load limit while keeping station", self.limit, 0.3, 1)
        if self.power_factor is not None:
            plain("power factor of the load", self.power_factor, 0.1, 1)


@dataclass(frozen=True)
class Supply:
    """A group of buses tied together, or an engine: load and online [kW]; online is what its sets may give, by power and by current."""

    name: str
    load: float
    online: float


@dataclass(frozen=True)
class Try:
    """One wind tried: needs [kN] (None where that group never was there), sources, and why it is not held ("" where it is)."""

    bow: float | None
    stern: float | None
    sources: tuple[Supply, ...]
    why: str


def beam_try(plant: Plant, left: Left, level: Level, speed: float, terms: Terms) -> Try:
    """Hold wind and current on the beam at a wind [m/s]: with all units, else with those of a weak bus or engine left idle."""
    return _first(plant, left, lambda idle: _beam(plant, left, level, speed, terms, idle))


def head_try(plant: Plant, left: Left, level: Level, speed: float, terms: Terms) -> Try:
    """Hold wind and current from ahead at a wind [m/s], in the same way."""
    return _first(plant, left, lambda idle: _head(plant, left, level, speed, terms, idle))


def _first(plant: Plant, left: Left, attempt: Callable[[frozenset[str]], Try]) -> Try:
    """The first way of leaving units idle that holds, else the one that leaves none idle."""
    every = sorted({feeder(unit, left) for unit in plant.thrusters if unit.name in left.alive})
    groups = sorted({" + ".join(sorted(left.island(name) or (name,))) for name in every})
    most = len(groups) - 1 if len(groups) <= MOST_GROUPS else 1
    ways = (frozenset(name for group in idle for name in group.split(" + ")) for count in range(1, most + 1) for idle in combinations(groups, count))
    with_all = attempt(frozenset())
    return with_all if with_all.why == HELD else next((found for found in map(attempt, ways) if found.why == HELD), with_all)


def _beam(plant: Plant, left: Left, level: Level, speed: float, terms: Terms, idle: frozenset[str]) -> Try:
    used = [[unit for unit in standing(plant, left, side) if feeder(unit, left) not in idle] for side in (True, False)]
    centres = [_centre(units, level) if units else _centre(_all(plant, side), level) for side, units in zip((True, False), used, strict=True)]
    if level.beam is None or None in centres:
        where = "the bow" if centres[0] is None else "the stern"
        why = f"no thrust across at {where}" if level.beam is not None else HELD
        return Try(None, None, _sources(plant, left, {}, terms, level.hotel), why)
    needs = level.beam.shares(speed, *centres)
    work: dict[str, float] = {}
    whys: list[str] = []
    for name, units, need in zip(("bow", "stern"), used, needs, strict=True):
        power, short = _shared(units, level.across, need)
        work |= power
        whys += [f"{name} thrust"] if short else []
    sources = _sources(plant, left, work, terms, level.hotel)
    return Try(*needs, sources, next(iter([*whys, *_overloaded(sources, terms, {feeder(unit, left) for units in used for unit in units})]), HELD))


def _head(plant: Plant, left: Left, level: Level, speed: float, terms: Terms, idle: frozenset[str]) -> Try:
    units = [unit for unit in plant.thrusters if unit.along and unit.name in left.alive and feeder(unit, left) not in idle]
    if level.head is None:
        return Try(None, None, (), HELD)
    work, short = _shared(units, level.along, level.head.total(speed))
    sources = _sources(plant, left, work, terms, level.hotel)
    return Try(
        None, None, sources, "thrust ahead" if short else next(iter(_overloaded(sources, terms, {feeder(unit, left) for unit in units})), HELD)
    )


def _all(plant: Plant, bow: bool) -> list[Thruster]:
    return [unit for unit in plant.thrusters if unit.across and (unit.x > 0) == bow]


def standing(plant: Plant, left: Left, bow: bool) -> list[Thruster]:
    return [unit for unit in _all(plant, bow) if unit.name in left.alive]


def _centre(units: Iterable[Thruster], level: Level) -> float | None:
    """Where a group's force acts when all work at one fraction; None where there is no group."""
    units = tuple(units)
    total = sum(level.across[unit.name] for unit in units)
    return sum(level.across[unit.name] * unit.x for unit in units) / total if total else None


def _shared(units: Iterable[Thruster], full: Mapping[str, float], need: float) -> tuple[dict[str, float], bool]:
    """Shaft power by unit [kW] for a need [kN], all at one fraction of their thrust, and whether it is short; at full where it is."""
    units = tuple(units)
    total = sum(full[unit.name] for unit in units)
    fraction = min(need / total, 1.0) if total else 0.0
    return {unit.name: power_for(fraction * full[unit.name], full[unit.name], unit.rated) for unit in units if full[unit.name]}, need > total


def feeder(unit: Thruster, left: Left) -> str:
    """The first of its feeds that lives; "" where none does."""
    return next((name for name in alternatives(unit.feed) if name in left.alive), "")


def _sources(plant: Plant, left: Left, work: Mapping[str, float], terms: Terms, hotel: float) -> tuple[Supply, ...]:
    drawn: dict[str, float] = {}
    for unit in plant.thrusters:
        if unit.name in work:
            drawn[feeder(unit, left)] = drawn.get(feeder(unit, left), 0.0) + work[unit.name]
    buses = [
        Supply(
            " + ".join(sorted(island)),
            sum(hotel * plant.hotel.get(bus, 0.0) + drawn.get(bus, 0.0) / terms.efficiency for bus in island),
            sum(_gives(one, terms) for one in plant.sets if one.counts and one.name in left.alive and one.bus in island),
        )
        for island in left.islands
    ]
    return (*buses, *(Supply(engine.name, drawn.get(engine.name, 0.0), engine.rated) for engine in plant.engines if engine.name in left.alive))


def _gives(one: GeneratorSet, terms: Terms) -> float:
    # at a poor power factor a set is full by current before it is by power, as in the balance of loads
    return one.rated if terms.power_factor is None else can_give(one, terms.power_factor)


def _overloaded(sources: Iterable[Supply], terms: Terms, feeders: set[str]) -> list[str]:
    # a bus that drives no unit in use may trip on its own loads: no thrust hangs on it
    return [f"power of {one.name}" for one in sources if one.load > terms.limit * one.online + 1e-9 and feeders & set(one.name.split(" + "))]
