"""The most wind from every side, with surge, sway and yaw balanced together.

A screen, no capability plot: wind, current and waves come from one side, by the components of
their forces from ahead and on the beam.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, radians, sin, sqrt

from inspector.conversion.power.holding.attainable_thrust import (
    Group,
    Unit,
    Wrench,
    compiled,
    furthest_in,
    rudder_choices,
)
from inspector.conversion.power.holding.failure_case import FailureCase, Scenario, Supply
from inspector.conversion.power.holding.force_balance import Limit, furthest
from inspector.values.units import convert

STEP = 10  # degrees between two headings of the polar
BEAMS = (90, 270)
# Hurricane force begins at 64 kn, and a static screen says nothing of it.
MOST_WIND = convert(64, "kn", "m/s")
POWER_OF = "power of "
# How close to the least power the search comes, as a share, and in how many steps at most.
CLOSE_ENOUGH = 1e-6
MOST_HALVINGS = 24
# The share of the limiting thrust above which power is named as what falls short.
POWER_COUNTS = 0.2


@dataclass(frozen=True)
class Held:
    """The wind that is withstood from one side.

    Parameters
    ----------
    heading : int
        Where wind and current come from, clockwise from ahead [degrees].
    wind : float
        The most wind [m/s], at most 64 kn.
    shortfall : str
        What gives way first; "" at the most that is looked for.
    """

    heading: int
    wind: float
    shortfall: str


def worst_of(polar: Sequence[Held]) -> Held:
    """Return the side from which least wind is withstood; of equal ones the first from ahead.

    Parameters
    ----------
    polar : sequence of Held
        One at least.

    Returns
    -------
    Held

    References
    ----------
    Model of our own.
    """
    # Port and starboard are often alike but for rounding, which must not choose between them.
    return min(polar, key=lambda held: (round(held.wind, 6), held.heading))


def headings(scenario: Scenario) -> tuple[int, ...]:
    """Return the headings that can be calculated: without a force from ahead the beams only.

    Parameters
    ----------
    scenario : Scenario

    Returns
    -------
    tuple of int
        Degrees, clockwise from ahead.

    References
    ----------
    Model of our own.
    """
    return BEAMS if scenario.head is None else tuple(range(0, 360, STEP))


def held_from(
    case: FailureCase, heading: int, enough: float = MOST_WIND, choices: Sequence | None = None
) -> Held:
    """Return the most wind from one side.

    Parameters
    ----------
    case : FailureCase
        With forces on the beam.
    heading : int
        Clockwise from ahead [degrees].
    enough : float
        The search ends early where so much wind is withstood [m/s].
    choices : sequence of tuple of Group, optional
        The units in every choice of ahead or astern, where they were made before.

    Returns
    -------
    Held

    References
    ----------
    Static balance of surge, sway and yaw (plain mechanics).
    """
    choices = rudder_choices(case.groups()) if choices is None else choices
    still, growing = wrenches(case.scenario, heading)
    target = min(enough, MOST_WIND) ** 2
    best: Limit | None = None
    for groups in choices:
        # What another choice of ahead and astern can give at most is known in one step.
        if best is not None and not _may_be_better(groups, best, still, growing):
            continue
        found = furthest(groups, still, growing, target)
        if best is None or found.reach > best.reach:
            best = found
        if best.reach >= target:
            break
    wind = min(sqrt(max(best.reach, 0.0)), MOST_WIND)
    return Held(heading, wind, "" if best.reach >= target else _shortfall(case, best))


def _may_be_better(groups: Sequence[Group], best: Limit, still: Wrench, growing: Wrench) -> bool:
    """Return whether a choice may reach further, by its most where the best one gave way."""
    weight = _dot(best.direction, growing)
    if best.reach < 0 or weight <= 0:
        return True
    most = _dot(best.direction, furthest_in(compiled(groups), best.direction))
    return (most - _dot(best.direction, still)) / weight > best.reach


def wrenches(scenario: Scenario, heading: int) -> tuple[Wrench, Wrench]:
    """Return what thrust must give against the current, and for each square of the wind's speed.

    Parameters
    ----------
    scenario : Scenario
    heading : int
        Where both come from, clockwise from ahead [degrees].

    Returns
    -------
    tuple of (tuple of float, tuple of float)
        Force ahead [kN], to starboard [kN], turning moment [kN·m].

    References
    ----------
    Components by cosine and sine of the angle (common practice, no source).
    """
    beam, head = scenario.beam, scenario.head
    ahead, across = cos(radians(heading)), sin(radians(heading))
    # Exact on the beam and from ahead, where rounding would ask for a hair of the other.
    if heading % 90 == 0:
        ahead, across = float(round(ahead)), float(round(across))

    # Wind from starboard pushes to port, so thrust must push to starboard.
    def wrench(force: float, x: float, frontal: float) -> Wrench:
        side = beam.waves * force * across
        return beam.waves * frontal * ahead, side, side * x

    still = wrench(beam.current, beam.x_current, head.current if head else 0.0)
    return still, wrench(beam.wind, beam.x_wind, head.wind if head else 0.0)


def _dot(a: Wrench, b: Wrench) -> float:
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def _shortfall(case: FailureCase, limit: Limit) -> str:
    """Return what gives way first, by what counts most in the direction that gives way."""
    missing = _missing(case, limit)
    if missing:
        return missing
    thrusts: dict[str, float] = {}
    powers: dict[str, float] = {}
    for push in limit.most.pushes:
        short_of_power = push.share < 1 and push.gain > 0
        named = powers if short_of_power else thrusts
        name = f"{POWER_OF}{push.group.name}" if short_of_power else _thrust_of(push.unit, limit)
        named[name] = named.get(name, 0.0) + push.gain
    total = sum(thrusts.values()) + sum(powers.values())
    # Power that limits a good part of the thrust is what can be mended first.
    if sum(powers.values()) > POWER_COUNTS * total:
        return max(powers, key=lambda name: powers[name])
    return max(thrusts, key=lambda name: thrusts[name], default="thrust")


def _thrust_of(unit: Unit, limit: Limit) -> str:
    """Return the thrust of a unit that counts in a direction: "bow thrust", "thrust along"."""
    ahead, across, turning = limit.direction
    along = abs(ahead - turning * unit.y) * max(unit.ahead, unit.astern)
    if along > abs(across + turning * unit.x) * unit.side:
        return "thrust along"
    return "bow thrust" if unit.x > 0 else "stern thrust"


def _missing(case: FailureCase, limit: Limit) -> str:
    """Return the thrust that is not there at all; "" where every kind is."""
    units = [unit for group in case.groups() for unit in group.units if group.power > 0]
    if not units:
        return "no thrust"
    for end, forward in (("bow", True), ("stern", False)):
        if not any(unit.side and (unit.x > 0) == forward for unit in units):
            return f"no thrust across at the {end}"
    # A rudder needs what takes its ahead thrust, without which it gives nothing at all.
    nothing = limit.reach < 1e-6 and any(unit.rudder for unit in units)
    return "thrust along" if nothing or not limit.shares else ""


def supplies_at(case: FailureCase, wind: float | None) -> tuple[Supply, ...]:
    """Return the supplies with their loads at a wind on the beam, at the least shaft power.

    Parameters
    ----------
    case : FailureCase
    wind : float or None
        Wind [m/s]; None for the other loads alone.

    Returns
    -------
    tuple of Supply
        At their limit where the wind is too much.

    References
    ----------
    Shaft power as thrust to the power of 1.5 (common practice, no source).
    """
    shares: dict[str, float] = {}
    if wind is not None and case.scenario.beam is not None:
        still, growing = wrenches(case.scenario, BEAMS[0])
        need = tuple(a + wind**2 * b for a, b in zip(still, growing, strict=True))
        shares = _least_power(case, need) if _dot(need, need) > 0 else {}
    loads = dict.fromkeys((group.name for group in case.groups()), 0.0)
    for group in case.groups():
        for unit in group.units:
            loads[group.name] += unit.rated * shares.get(unit.name, 0.0) ** 1.5
    return _supplies(case, loads)


def _least_power(case: FailureCase, need: Wrench) -> dict[str, float]:
    """Return the share of full thrust of each unit that balances a wrench at the least power."""
    origin = (0.0, 0.0, 0.0)
    found = max(
        ((furthest(groups, origin, need), groups) for groups in rudder_choices(case.groups())),
        key=lambda each: each[0].reach,
    )
    limit, groups = found
    if limit.reach <= 1:
        return limit.shares
    # As if all units had one supply, whose power is lowered until it just suffices.
    units = tuple(unit for group in groups for unit in group.units)
    pooled = _pooled(units, need)
    within = all(
        sum(unit.rated * pooled.shares.get(unit.name, 0.0) ** 1.5 for unit in group.units)
        <= group.power + 1e-6
        for group in groups
    )
    # Where one supply would be short, the units share as they do at the most wind.
    if within:
        return pooled.shares
    return {name: share / limit.reach for name, share in limit.shares.items()}


def _pooled(units: tuple[Unit, ...], need: Wrench) -> Limit:
    """Return how units share a wrench that they can balance, at the least power of all."""
    origin = (0.0, 0.0, 0.0)

    def tried(power: float) -> Limit:
        return furthest((Group("all", power, units),), origin, need)

    enough, short = sum(unit.rated for unit in units), 0.0
    best = tried(enough)
    for step in range(MOST_HALVINGS):
        if best.reach <= 1 + CLOSE_ENOUGH:
            break
        # Exact while no unit is at full; where one is, halving finds the rest.
        guess = enough * best.reach**-1.5
        power = guess if step < 2 and guess > short else (enough + short) / 2
        found = tried(power)
        if found.reach >= 1 - CLOSE_ENOUGH:
            enough, best = power, found
        else:
            short = power
        if enough - short <= CLOSE_ENOUGH * enough:
            break
    return best


def _supplies(case: FailureCase, shafts: dict[str, float]) -> tuple[Supply, ...]:
    """Return the supplies with their loads, for a shaft power by supply [kW]."""
    islands = []
    for island in case.remaining.islands:
        name = " + ".join(sorted(island))
        load = case.other_loads(island) + shafts.get(name, 0.0) / case.limits.efficiency
        islands.append(Supply(name, load, case.capacity(island)))
    engines = [
        Supply(engine.name, shafts.get(engine.name, 0.0), engine.rated)
        for engine in case.plant.engines
        if engine.name in case.remaining.alive
    ]
    return (*islands, *engines)
