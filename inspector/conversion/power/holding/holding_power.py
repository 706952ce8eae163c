"""What a plant can withstand after a failure: thrust, power on each bus, and the most wind.

A screen, not a capability plot.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import BadInput, plain
from inspector.conversion.core.figure import Default
from inspector.conversion.core.span import Span
from inspector.conversion.power.cascade_failure import after_failure, single_failures
from inspector.conversion.power.holding.attainable_thrust import Group, rudder_choices
from inspector.conversion.power.holding.failure_case import (
    FailureCase,
    LoadLimits,
    Scenario,
    Supply,
)
from inspector.conversion.power.holding.polar import (
    BEAMS,
    MOST_WIND,
    Held,
    headings,
    held_from,
    supplies_at,
    worst_of,
)
from inspector.conversion.power.holding.station_keeping import FASTEST
from inspector.conversion.power.plant import Plant
from inspector.values.formatting import show

LIMIT = Default(
    "most that sets and engines are loaded to while keeping station",
    0.90,
    "a step of load must still find room",
)
# A side from which so many times the least wind is withstood is the worst in no scenario.
FAR_FROM_LEAST = 1.5
# The worst (least thrust, greatest force), the likely and the best.
Scenarios = tuple[Scenario, Scenario, Scenario]


# Polar, and the winds on the beam, from ahead and from every side.
Winds = tuple[tuple[Held, ...], Span | None, Span | None, Span | None]
# The groups that are left in each scenario -> their winds.
Memo = dict[tuple[tuple[Group, ...], ...], Winds]


@dataclass(frozen=True)
class Outcome:
    """What a failure leaves; thrusts are likely values.

    Parameters
    ----------
    element : str
        What failed; "" where nothing did.
    lost : frozenset of str
        All that is lost with it.
    bow, stern, along : float
        Full thrust of what is left [kN]; across without rudders, which give nothing alone.
    supplies : tuple of Supply
        At the wind to be withstood, on the beam.
    keeps_station : bool or None
        Whether the wind to be withstood is, from every side: True or False where all scenarios
        agree, None where it is not known.
    wind : Span or None
        Most wind on the beam that is withstood, the worse of both sides [m/s].
    ahead : Span or None
        Most wind from ahead that is withstood [m/s].
    least : Span or None
        Most wind that is withstood from every side [m/s]: on the beam, where nothing is known from
        ahead.
    polar : tuple of Held
        The likely wind from every side.
    shortfall : str
        What falls short first, from the side from which least is withstood.
    """

    element: str
    lost: frozenset[str]
    bow: float
    stern: float
    along: float
    supplies: tuple[Supply, ...]
    keeps_station: bool | None
    wind: Span | None
    ahead: Span | None
    least: Span | None
    polar: tuple[Held, ...]
    shortfall: str

    @property
    def worst_heading(self) -> int | None:
        """Where the wind comes from of which least is withstood [degrees from ahead]."""
        return worst_of(self.polar).heading if self.polar else None


def outcome(
    plant: Plant,
    scenarios: Scenarios,
    removed: Iterable[str] = (),
    speed: float | None = None,
    limits: LoadLimits | None = None,
    known: Memo | None = None,
) -> Outcome:
    """Return what a plant can withstand after these failures.

    Parameters
    ----------
    plant : Plant
    scenarios : tuple of Scenario
        The worst (least thrust, greatest force), the likely and the best.
    removed : iterable of str
        The elements that fail.
    speed : float, optional
        Wind to be withstood [m/s]; None where it is not known.
    limits : LoadLimits, optional
    known : dict, optional
        Winds that were found before with the same scenarios, by the units that were left.

    Returns
    -------
    Outcome

    Raises
    ------
    BadInput
        An element is not in the plant, or the wind cannot be.

    References
    ----------
    Model of our own: static balance of surge, sway and yaw, see ``polar``.
    """
    removed, limits = tuple(removed), limits or LoadLimits()
    if speed is not None:
        plain("wind to be withstood", speed, 0, FASTEST, "m/s")
    remaining = after_failure(plant, removed)
    cases = [FailureCase(plant, remaining, scenario, limits) for scenario in scenarios]
    likely = cases[1]
    units = [unit for group in likely.groups() for unit in group.units]
    polar, wind, ahead, least = _held(cases, {} if known is None else known)
    worst = worst_of(polar) if polar else None
    return Outcome(
        " and ".join(removed),
        remaining.lost,
        sum(unit.side for unit in units if unit.x > 0 and not unit.rudder),
        sum(unit.side for unit in units if unit.x <= 0 and not unit.rudder),
        sum(unit.side if unit.all_round else unit.ahead for unit in units),
        supplies_at(likely, speed),
        _keeps_station(least, speed),
        wind,
        ahead,
        least,
        polar,
        worst.shortfall if worst else "",
    )


def outcomes(
    plant: Plant,
    scenarios: Scenarios,
    speed: float | None = None,
    limits: LoadLimits | None = None,
) -> tuple[Outcome, ...]:
    """Return every single failure of a plant as inspected, worst first.

    Parameters
    ----------
    plant : Plant
    scenarios : tuple of Scenario
        The worst, the likely and the best.
    speed : float, optional
        Wind to be withstood [m/s].
    limits : LoadLimits, optional

    Returns
    -------
    tuple of Outcome

    Raises
    ------
    BadInput
        The wind cannot be.

    References
    ----------
    Model of our own, see ``outcome``.
    """
    elements = (*plant.sets, *plant.ties, *plant.thrusters, *plant.engines)
    powered = {element.name for element in elements} | set(plant.buses)
    calculated: dict[frozenset[str], Outcome] = {}
    found, known = [], {}
    for name in single_failures(plant):
        remaining = after_failure(plant, (name,))
        # A pump and the unit that it cools leave the same plant, which is calculated once.
        left = remaining.alive & powered
        # The search for the wind takes most of the time of this chapter.
        if left not in calculated:
            calculated[left] = outcome(plant, scenarios, (name,), speed, limits, known)
        found.append(replace(calculated[left], element=name, lost=remaining.lost))
    return _worst_first(found)


def _worst_first(found: Iterable[Outcome]) -> tuple[Outcome, ...]:
    """Return outcomes with the worst first: least wind, else least thrust, else least power."""
    among = tuple(found)
    most_bow = max((result.bow for result in among), default=0.0) or 1.0
    most_stern = max((result.stern for result in among), default=0.0) or 1.0

    def severity(result: Outcome) -> tuple[float, ...]:
        weakest = min(result.bow / most_bow, result.stern / most_stern)
        withstood = result.least.middle if result.least else weakest
        capacity = sum(supply.capacity for supply in result.supplies)
        # Winds equal to the third decimal are equal: then less thrust and power is worse.
        thrust = round(result.bow + result.stern + result.along, 6)
        return round(withstood, 3), thrust, capacity

    return tuple(sorted(among, key=severity))


def power_limited(available: float, full: float) -> tuple[float, float]:
    """Return how far thrusters can work where their power is limited.

    Parameters
    ----------
    available : float
        Power that there is [kW].
    full : float
        Power at full [kW].

    Returns
    -------
    tuple of (float, float)
        Shares of power and of thrust.

    Raises
    ------
    BadInput
        The power at full is not above zero.

    References
    ----------
    T goes as P^(2/3), propeller law at zero speed (common practice, no source).
    """
    if full <= 0:
        raise BadInput(
            f"Power at full is {show(full, 'kW')}, and it must be more than none.",
            field="power at full",
            value=full,
        )
    # Hotel loads may take more than there is, which leaves nothing and not less.
    share = min(max(available, 0.0) / full, 1.0)
    return share, share ** (2 / 3)


def _held(cases: list[FailureCase], known: Memo) -> Winds:
    """Return polar and winds; what leaves the same units with the same power is searched once."""
    # Without areas there is no force, so no wind can be named.
    if any(case.scenario.beam is None for case in cases):
        return (), None, None, None
    # A bow thruster and the bus that feeds nothing else leave the same.
    left = tuple(case.groups() for case in cases)
    if left not in known:
        polar = _polar(cases[1])
        known[left] = (polar, *_winds(cases, polar))
    return known[left]


def _polar(likely: FailureCase) -> tuple[Held, ...]:
    """Return the likely wind from every side."""
    choices = rudder_choices(likely.groups())
    both_sides = _is_mirrored(likely)
    found: dict[int, Held] = {}
    for heading in headings(likely.scenario):
        other = found.get((360 - heading) % 360) if both_sides else None
        if other is None:
            found[heading] = held_from(likely, heading, choices=choices)
        else:
            found[heading] = replace(other, heading=heading)
    return tuple(found.values())


def _is_mirrored(case: FailureCase) -> bool:
    """Return whether port and starboard are alike: every unit is on the centreline."""
    return all(unit.y == 0 for unit in case.plant.thrusters)


def _winds(cases: list[FailureCase], polar: tuple[Held, ...]) -> tuple[Span, Span | None, Span]:
    """Return the most wind on the beam, from ahead, and from every side [m/s]."""
    likely = {held.heading: held.wind for held in polar}
    worst, _, best = cases
    # One side is enough where both are alike.
    beams = BEAMS[:1] if _is_mirrored(worst) else BEAMS
    beam = _span(worst, best, beams, min(likely[each] for each in beams))
    if 0 not in likely:
        return beam, None, beam
    ahead = _span(worst, best, (0,), likely[0])
    # From the side from which least is withstood first, so that the others end early.
    least = min(likely.values())
    near = [each for each in likely if likely[each] <= FAR_FROM_LEAST * least]
    order = sorted(
        (each for each in near if each <= 180 or len(beams) > 1), key=lambda each: likely[each]
    )
    return beam, ahead, _span(worst, best, order, min(likely.values()))


def _span(worst: FailureCase, best: FailureCase, sides: Iterable[int], likely: float) -> Span:
    """Return the least of the most winds from some sides in all scenarios [m/s]."""
    sides = tuple(sides)
    low, high = (_least(case, sides) for case in (worst, best))
    return Span(min(low, likely), likely, max(high, likely))


def _least(case: FailureCase, sides: Iterable[int]) -> float:
    """Return the wind that is withstood from each of these sides [m/s]."""
    least, choices = MOST_WIND, rudder_choices(case.groups())
    for heading in sides:
        least = min(least, held_from(case, heading, least, choices).wind)
        if least == 0:
            break
    return least


def _keeps_station(least: Span | None, speed: float | None) -> bool | None:
    """Return whether a wind is withstood in all scenarios, in none, or not surely."""
    if least is None or speed is None:
        return None
    # Nothing is claimed of winds beyond those that are looked for.
    if speed > MOST_WIND:
        return False
    return least.at_least(speed)
