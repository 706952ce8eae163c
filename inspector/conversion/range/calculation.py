"""Range and endurance of one case: its passages, and what on board runs out first."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.figure import Figure, Gap, no_figure
from inspector.conversion.core.span import Span
from inspector.conversion.range.consumables import Limits, limits
from inspector.conversion.range.economical_speed import (
    Economy,
    economical_speed,
    fuel_margin,
    range_beside_station,
)
from inspector.conversion.range.fuel.fuel_on_board import tank_gaps, usable_fuel
from inspector.conversion.range.particulars import Inputs
from inspector.conversion.range.passages import Passage, passage
from inspector.conversion.range.sea_power import Ship
from inspector.conversion.range.stores import Stores
from inspector.values.formatting import show

NO_TANK = Gap("Fuel tanks", "no tank with fuel is recorded")


@dataclass(frozen=True)
class Results:
    """What range and endurance come to.

    Parameters
    ----------
    fuel : Figure
        Usable fuel before any reserve [t].
    at_speed : Passage or None
        At the brief's speed; None where no speed is asked for or none can be calculated.
    economy : Economy or None
        At the speed of greatest range.
    margin : Figure or None
        Fuel left after the brief's range and days [t].
    by_running : tuple of (int, Passage)
        Main engines running -> the passage at the brief's speed; empty with a single engine.
    beside_station : Figure or None
        Range on the fuel that the brief's days on station leave [nmi]; None without such days.
    ship : Ship or None
        All that range depends on; None while power or engines are not known.
    lasting : Limits or None
        How long everything on board lasts; None where the brief names no persons.
    """

    fuel: Figure
    at_speed: Passage | None
    economy: Economy | None
    margin: Figure | None
    lasting: Limits | None
    by_running: tuple[tuple[int, Passage], ...] = ()
    beside_station: Figure | None = None
    ship: Ship | None = None


def calculate(inputs: Inputs) -> Results:
    """Return range and endurance of one case.

    Parameters
    ----------
    inputs : Inputs

    Returns
    -------
    Results

    Raises
    ------
    ConversionError
        Values that are accepted one by one contradict each other.

    References
    ----------
    Model of our own: it joins the passages, the economical speed and the limits of the stores,
    each of which names its source.
    """
    fuel = usable_fuel(inputs.tanks) if inputs.tanks else no_figure("usable fuel", "t", (NO_TANK,))
    ship = _ship(inputs, fuel)
    speed, persons = inputs.brief.speed, inputs.brief.persons
    at_speed = passage(ship, speed) if ship and speed else None
    economy = economical_speed(ship) if ship else None
    margin = None
    # A margin is what the brief leaves of the fuel, so without a range there is none to leave.
    if at_speed is not None and inputs.brief.range is not None:
        margin = fuel_margin(ship, at_speed, inputs.brief)
    lasting = None
    if persons:
        lasting = limits(inputs.stores, persons, _fuel_days(at_speed, economy))
    by_running = _by_running(ship, speed) if ship and speed else ()
    beside, station = None, inputs.brief.station
    if at_speed is not None and station:
        beside = range_beside_station(ship, at_speed, station)
    return Results(fuel, at_speed, economy, margin, lasting, by_running, beside, ship)


def _by_running(ship: Ship, speed: float) -> tuple[tuple[int, Passage], ...]:
    """Return the passage at a speed [kn] for each count of main engines that may run."""
    if ship.main.count < 2:
        return ()
    counts = range(1, ship.main.count + 1)
    return tuple((count, passage(replace(ship, running=count), speed)) for count in counts)


def _ship(inputs: Inputs, fuel: Figure) -> Ship | None:
    """Return all that range depends on; None while power or engines are not known."""
    if not inputs.curves.curves or inputs.main is None:
        return None
    # The first curve is the one that is closest to the vessel: her own points, if there are any.
    return Ship(
        inputs.curves.curves[0],
        inputs.main,
        inputs.hotel,
        fuel,
        inputs.generator,
        inputs.running,
        inputs.sea_margin,
        inputs.reserve,
        inputs.shaft_generator,
        inputs.station_fuel,
    )


def _fuel_days(at_speed: Passage | None, economy: Economy | None) -> tuple[Figure, ...]:
    """The days of fuel at the brief's speed, else at the economical one."""
    # The brief's own speed comes first: a voyage is planned by it.
    best = at_speed or (economy.passage if economy else None)
    if best is None:
        return ()
    return (
        replace(best.days, name=f"fuel, under way at {show(float(f'{best.speed:.3g}'), 'kn')}"),
    )


def gaps_of(inputs: Inputs) -> tuple[Gap, ...]:
    """Return what is missing for a closer result.

    Parameters
    ----------
    inputs : Inputs

    Returns
    -------
    tuple of Gap

    References
    ----------
    Model of our own.
    """
    return tuple(_gaps(inputs))


def _gaps(inputs: Inputs) -> Iterator[Gap]:
    """Yield what is missing for range and stores."""
    yield from inputs.curves.gaps
    yield from inputs.gaps
    if inputs.main is None:
        yield Gap("Main engines", "their rated power is needed for load and consumption")
    if not inputs.tanks:
        yield Gap("Fuel tanks", "enter each tank that holds fuel with its capacity")
    yield from tank_gaps(inputs.tanks)
    if inputs.stores == Stores():
        yield Gap("Stores and holding", "what the persons on board live from is not entered")
    if inputs.brief.speed is None:
        yield _brief_gap("Speed")
    if inputs.brief.persons is None:
        yield _brief_gap("Persons on board")


def _brief_gap(name: str) -> Gap:
    return Gap(f"{name} in the brief", "without it nothing can be set against the brief")


def requirements_of(inputs: Inputs, results: Results) -> tuple[Requirement, ...]:
    """Return the brief's speed, range and endurance with what the vessel offers.

    Parameters
    ----------
    inputs : Inputs
    results : Results

    Returns
    -------
    tuple of Requirement

    References
    ----------
    Model of our own.
    """
    return tuple(_requirements(inputs, results))


def _requirements(inputs: Inputs, results: Results) -> Iterator[Requirement]:
    """Yield the demands of the brief on speed [%], range [nmi] and endurance [days]."""
    brief, at_speed = inputs.brief, results.at_speed
    if brief.speed:
        load = at_speed.load if at_speed else None
        offered = None if load is None else load * 100
        label = f"{show(brief.speed, 'kn')} on the engines, load"
        yield Requirement("speed", label, 100.0, "%", offered, least=False)
    if brief.range:
        reach = at_speed.range.span if at_speed else None
        label = "Range"
        # Who wants to lie on station wants to come home from it as well.
        if brief.station:
            label = "Range beside the days on station"
            reach = results.beside_station.span if results.beside_station else None
        lacks = at_speed.range.gaps if at_speed else ()
        yield Requirement("range", label, brief.range, "nmi", reach, lacks=lacks)
    if brief.endurance:
        label = "Endurance, first thing to run out"
        shortest = _shortest(results.lasting)
        binding = results.lasting.binding if results.lasting else None
        name = binding.name if binding is not None and shortest is not None else ""
        lacks = results.lasting.gaps if results.lasting else ()
        yield Requirement(
            "endurance", label, brief.endurance, "days", shortest, binds=name, lacks=lacks
        )


def _shortest(lasting: Limits | None) -> Span | None:
    """The least of all days, end by end; None while any of them is not known."""
    # What is not known may be what ends the voyage.
    if lasting is None or not all(figure.known for figure in lasting.figures):
        return None
    spans = [figure.span for figure in lasting.figures]
    low, high = min(span.low for span in spans), min(span.high for span in spans)
    return Span(low, min(span.middle for span in spans), high)
