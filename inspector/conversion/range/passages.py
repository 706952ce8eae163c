"""Passages: how far and how long the usable fuel lasts at one speed, hotel load included.

Speeds in kn, distances in nmi, fuel in t. The sea margin is applied once: points from a log in
service already carry their weather. No reserve is universal; the one that was used is listed.
"""

from dataclasses import dataclass, replace
from math import ceil

from inspector.conversion.core.bounds import or_default, plain
from inspector.conversion.core.figure import Figure, no_figure, rest_on
from inspector.conversion.core.span import Span
from inspector.conversion.range.engine_consumption import burn_per_day, rate
from inspector.conversion.range.engines import HIGHEST_LOAD, LOWEST_LOAD, Engine
from inspector.conversion.range.hotel_load import hotel_power
from inspector.conversion.range.sea_power import RESERVE, Ship, main_load, sea_power, shaft_load
from inspector.values.formatting import show

UNKNOWN_SETS = Engine("generator engines", 500.0, kind="auxiliary")
# The load of a generator set above which a further one is started.
FULL_SET = 0.85
HOURS = 24
FROM_FUEL = "The fuel of the main engines is her own per day, as her log has it."
BY_SHAFT = "At sea shaft generators carry the hotel load, on the main engines."


@dataclass(frozen=True)
class Passage:
    """One speed that is kept until the reserve is reached.

    Parameters
    ----------
    speed : float
        [kn]
    power : Figure
        At sea, of all main engines [kW].
    load : Span or None
        Of each running main engine [fraction of rated power]; None where power is not known.
    burn : Figure
        Of main engines and generators [t/day].
    per_mile : Figure
        [kg/nmi]
    range : Figure
        [nmi]
    days : Figure
        [days]
    reached : bool or None
        Whether the engines give the speed; None where that is not known.
    """

    speed: float
    power: Figure
    load: Span | None
    burn: Figure
    per_mile: Figure
    range: Figure
    days: Figure
    reached: bool | None


def propulsion_burn(ship: Ship, power: Figure) -> Figure:
    """Return the fuel that the main engines burn.

    Parameters
    ----------
    ship : Ship
    power : Figure
        At sea, of all main engines together [kW].

    Returns
    -------
    Figure
        [t/day]

    References
    ----------
    Power times specific consumption, see ``engine_consumption``.
    """
    specific = rate(ship.main, _possible(main_load(ship, power.span)))
    if ship.curve.from_fuel:
        # Power came from her fuel by this very consumption: its error is in neither, and not twice.
        likely = Span.exact(specific.span.middle)
        notes = (*specific.assumptions, FROM_FUEL)
        specific = replace(specific, span=likely, assumptions=notes)
    whole = replace(power, span=power.span + shaft_load(ship))
    return burn_per_day(((whole, specific),))


def hotel_burn(ship: Ship, where: str = "sea") -> Figure:
    """Return the fuel that the generator engines burn for the hotel load.

    Parameters
    ----------
    ship : Ship
    where : str
        "sea" or "anchor".

    Returns
    -------
    Figure
        [t/day]

    References
    ----------
    A further set is started at 85 % load (common practice); consumption see
    ``engine_consumption``.
    """
    power = hotel_power(ship.hotel, where)
    rating = ship.shaft_generator
    if where == "sea" and rating is not None:
        # What the shaft generators cannot carry is left to the sets, and mostly that is nothing.
        left = power.span.apply(lambda load: max(load - rating, 0.0))
        power = replace(power, span=left, assumptions=(*power.assumptions, BY_SHAFT))
        if not left.high:
            return replace(power, name="burn per day", unit="t/day")
    return burn_of_sets(ship.generator, power)


def burn_of_sets(sets: Engine | None, power: Figure) -> Figure:
    """Return the fuel that generating sets burn for a power.

    Parameters
    ----------
    sets : Engine or None
        None where they are not known.
    power : Figure
        Of their engines together [kW].

    Returns
    -------
    Figure
        [t/day]

    References
    ----------
    A further set is started at 85 % load (common practice); consumption see
    ``engine_consumption``.
    """
    if sets is None:
        # The published rates of auxiliaries do not depend on load or size: any will do.
        return burn_per_day(((power, rate(UNKNOWN_SETS, 0.6)),))
    # As many sets run as carry the greatest load without exceeding what each may take.
    running = min(max(1, ceil(power.span.high / (FULL_SET * sets.power))), sets.count)
    notes = (
        f"{running} of {sets.count} generator sets running, "
        f"a further one started at {show(100 * FULL_SET, '%')} load.",
    )
    # A note and no refusal: the sets are aboard, and the load may be read wrongly.
    if power.span.high > sets.power * sets.count:
        notes += ("The hotel load may be more than all generator sets give.",)
    specific = rate(sets, _possible(power.span / (running * sets.power)))
    power = replace(power, assumptions=(*power.assumptions, *notes))
    return burn_per_day(((power, specific),))


def available(ship: Ship) -> Figure:
    """Return the usable fuel less the reserve.

    Parameters
    ----------
    ship : Ship

    Returns
    -------
    Figure
        [t]; without a span where the fuel is not known.

    References
    ----------
    A reserve of 10 % at the least for planning (common practice).
    """
    if ship.fuel.span is None:
        return no_figure("fuel before reserve is touched", "t", ship.fuel.gaps)
    reserve, defaults = or_default(ship.reserve, RESERVE)
    return replace(
        ship.fuel,
        name="fuel before reserve is touched",
        span=ship.fuel.span * (1 - reserve),
        formula_text="usable fuel × (1 − reserve)",
        defaults=(*ship.fuel.defaults, *defaults),
    )


def passage(ship: Ship, speed: float) -> Passage:
    """Return what one speed costs and how far it reaches.

    Parameters
    ----------
    ship : Ship
    speed : float
        0.5 to 60 [kn].

    Returns
    -------
    Passage
        Its figures are without a span where a gap forbids them.

    Raises
    ------
    BadInput
        The speed cannot be meant.

    References
    ----------
    Range = fuel / fuel per mile, fuel per mile = burn / (24 × speed) (common practice).
    """
    plain("speed", speed, 0.5, 60, "kn")
    power = sea_power(ship, speed)
    # Beyond the curve there is no power, and so no range: the gap goes through.
    if power.span is None:
        return _unknown_passage(speed, power)
    load = main_load(ship, power.span)
    # None where only a part of the span is more than the engines have.
    reached = load.at_most(1)
    burn = _burn(ship, power, speed, reached)
    per_mile = replace(
        burn,
        name="fuel per mile",
        span=burn.span * 1000 / (HOURS * speed),
        unit="kg/nmi",
        formula_text="burn per day / (24 × speed)",
    )
    fuel = available(ship)
    reach = _lasts(fuel, per_mile, "range", "nmi", "fuel per mile", 1000)
    days = _lasts(fuel, burn, "days under way", "days", "burn per day", 1)
    return Passage(speed, power, load, burn, per_mile, reach, days, reached)


def _burn(ship: Ship, power: Figure, speed: float, reached: bool | None) -> Figure:
    """The fuel of main engines and hotel load [t/day]."""
    drive, hotel = propulsion_burn(ship, power), hotel_burn(ship)
    parts = rest_on(drive, hotel)
    if not reached:
        verb = "may be" if reached is None else "are"
        note = f"At {show(speed, 'kn')} the engines {verb} asked for more than their rated power."
        parts["assumptions"] += (note,)
    total = drive.span + hotel.span
    return Figure("burn per day", total, "t/day", "main engines + hotel", **parts)


def _lasts(fuel: Figure, use: Figure, name: str, unit: str, used: str, factor: float) -> Figure:
    """How far or how long the fuel lasts; ``factor`` is the unit of use in a tonne."""
    if fuel.span is None:
        return no_figure(name, unit, fuel.gaps)
    formula = f"usable fuel × (1 − reserve) / {used}"
    return Figure(name, fuel.span * factor / use.span, unit, formula, **rest_on(use, fuel))


def _unknown_passage(speed: float, power: Figure) -> Passage:
    """Return a passage without power: four figures with the reason why each is missing."""
    names = {
        "burn per day": "t/day",
        "fuel per mile": "kg/nmi",
        "range": "nmi",
        "days under way": "days",
    }
    # The same four figures as of a known speed, so that no table has a hole.
    burn, per_mile, reach, days = (
        no_figure(name, unit, power.gaps) for name, unit in names.items()
    )
    return Passage(speed, power, None, burn, per_mile, reach, days, None)


def _possible(load: Span) -> Span:
    """Return a load, cut to the loads at which an engine's consumption is known."""
    # Consumption is known for loads that an engine can have; Passage.reached reports the rest.
    return load.apply(lambda share: min(max(share, LOWEST_LOAD), HIGHEST_LOAD))
