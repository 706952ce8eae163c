"""What a plant still holds after a failure: thrust at bow and stern, power on each bus, and the most wind, by bisection. A screen, not a capability plot."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from inspector.conversion.failure import Left, after, elements
from inspector.conversion.inputs import PRACTICE, BadInput, plain
from inspector.conversion.plant import Plant
from inspector.conversion.shapes import Default, Span
from inspector.conversion.station_keeping import FASTEST
from inspector.conversion.thrust_sharing import HELD, Level, Supply, Terms, Try, beam_try, head_try, standing

LIMIT = Default("most that sets and engines are loaded to while keeping station", 0.90, "", "a step of load must still find room", PRACTICE)
HALVINGS = 31


@dataclass(frozen=True)
class Outcome:
    """What one failure leaves. Thrusts and needs [kN] at the wind to be held; wind: most beam wind held [m/s]; ahead: the same from ahead.

    holds: True or False where all levels agree, None where it is not known; limit: what gives way first.
    """

    element: str
    lost: frozenset[str]
    bow: float
    stern: float
    along: float
    bow_need: float | None
    stern_need: float | None
    sources: tuple[Supply, ...]
    holds: bool | None
    wind: Span | None
    ahead: Span | None
    limit: str


def outcome(
    plant: Plant, levels: tuple[Level, Level, Level], removed: Iterable[str] = (), speed: float | None = None, terms: Terms | None = None
) -> Outcome:
    """The plant after these failures.

    Parameters: levels : the worst case (least thrust, greatest force), the likely, the best; speed: wind to be held [m/s], None where not said.

    Errors
    ------
    BadInput : an element that is not in the plant, or a wind that cannot be.
    """
    removed, terms = tuple(removed), terms or Terms()
    left, likely = after(plant, removed), levels[1]
    if speed is not None:
        plain("wind to be held", speed, 0, FASTEST, "m/s")
    tried = beam_try(plant, left, likely, speed or 0.0, terms)
    groups = [sum(likely.across[unit.name] for unit in standing(plant, left, bow)) for bow in (True, False)]
    along = sum(likely.along[unit.name] for unit in plant.thrusters if unit.along and unit.name in left.alive)
    wind, ahead = (_most(plant, left, levels, terms, way) for way in (beam_try, head_try))
    known = speed is not None and likely.beam is not None
    return Outcome(
        " and ".join(removed),
        left.lost,
        *groups,
        along,
        tried.bow if known else None,
        tried.stern if known else None,
        tried.sources,
        _agreed(plant, left, levels, speed, terms) if known else None,
        wind,
        ahead,
        _limit(plant, left, likely, wind, terms),
    )


def outcomes(plant: Plant, levels: tuple[Level, Level, Level], speed: float | None = None, terms: Terms | None = None) -> tuple[Outcome, ...]:
    """Every single failure of the plant as found, worst first."""
    working = {one.name for one in (*plant.sets, *plant.ties, *plant.thrusters, *plant.engines)} | set(plant.buses)
    alike: dict[frozenset[str], Outcome] = {}
    made = []
    for name in elements(plant):
        left = after(plant, (name,))
        # a pump and the unit that it cools leave the same plant: reckoned once
        if (key := left.alive & working) not in alike:
            alike[key] = outcome(plant, levels, (name,), speed, terms)
        made.append(replace(alike[key], element=name, lost=left.lost))
    return tuple(sorted(made, key=lambda one: _badness(one, made)))


def worst(found: Iterable[Outcome]) -> Outcome | None:
    """The worst single failure: least wind held, else least thrust; None where nothing can fail."""
    found = tuple(found)
    return min(found, key=lambda one: _badness(one, found), default=None)


def _badness(one: Outcome, among: Iterable[Outcome]) -> tuple[float, ...]:
    ends = (max((other.bow for other in among), default=0.0) or 1.0, max((other.stern for other in among), default=0.0) or 1.0)
    weakest = min(one.bow / ends[0], one.stern / ends[1])
    held = one.wind.middle if one.wind else weakest
    online = sum(source.online for source in one.sources)
    # equal to the metre per second in the fourth decimal is equal: then the one that leaves less thrust and power is worse
    return round(held, 4), round(one.bow + one.stern, 6), online


def most_wind(holds: Callable[[float], bool]) -> float:
    """The greatest wind [m/s] up to 100 that holds, by bisection; 0 where not even still air does."""
    if not holds(0.0):
        return 0.0
    low, high = 0.0, FASTEST
    if holds(high):
        return high
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    return low


def power_limited(available: float, full: float) -> tuple[float, float]:
    """Shares of power and of thrust that are left where so much power is there [kW] for so much at full [kW]: T goes as P^(2/3)."""
    if full <= 0:
        raise BadInput(f"Power at full is {full:g} kW, and it must be more than none.", field="power at full", value=full)
    share = min(max(available, 0.0) / full, 1.0)
    return share, share ** (2 / 3)


def _most(plant: Plant, left: Left, levels: tuple[Level, Level, Level], terms: Terms, way: Callable[..., Try]) -> Span | None:
    force = "beam" if way is beam_try else "head"
    if any(getattr(level, force) is None for level in levels):
        return None
    low, point, high = (most_wind(lambda wind, level=level: way(plant, left, level, wind, terms).why == HELD) for level in levels)
    return Span(min(low, point), point, max(point, high))


def _agreed(plant: Plant, left: Left, levels: tuple[Level, Level, Level], speed: float, terms: Terms) -> bool | None:
    def held(level: Level) -> bool:
        return all(way(plant, left, level, speed, terms).why == HELD for way in (beam_try, head_try))

    if held(levels[0]):
        return True
    return None if held(levels[2]) else False


def _limit(plant: Plant, left: Left, level: Level, wind: Span | None, terms: Terms) -> str:
    if wind is None:
        return ""
    return beam_try(plant, left, level, min(wind.middle * 1.0001 + 1e-4, FASTEST), terms).why
