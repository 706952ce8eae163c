"""The tables of the chapter on power."""

from collections.abc import Sequence

from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.conversion.power.calculation import PowerResults
from inspector.conversion.power.holding.failure_case import Supply
from inspector.conversion.power.holding.holding_power import Outcome, power_limited
from inspector.conversion.power.load_balance import LOAD_FACTOR, Balance, main_sets
from inspector.conversion.power.plant_elements import alternatives
from inspector.conversion.power.power_figures import (
    element_name,
    in_knots,
    shortfall_name,
    transformer_share,
)
from inspector.conversion.power.sets_running import SetsRunning, sets_running
from inspector.conversion.power.three_phase import three_phase
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.text import counted

AS_INSPECTED = "none, as inspected"
KEPT = {True: "yes", False: "no", None: "not known"}
MET = {True: "met", False: "not met", None: "not known"}
# More failures than this are a book, and the worst are first.
MOST_FAILURES = 24


def _kilowatts(power: float) -> Quantity:
    return Quantity.exact(power, "kW", 0)


def tables(results: PowerResults, transformers: Sequence[Row]) -> tuple[FigureTable, ...]:
    """Return the tables that have any row.

    Parameters
    ----------
    results : PowerResults
    transformers : sequence of Row
        The rows of the table of transformers.

    Returns
    -------
    tuple of FigureTable
    """
    made = (
        _balance_table(results),
        _failure_table(results),
        _bus_table(results),
        _thrust_table(results),
        _transformer_table(transformers),
        _dp_table(results),
    )
    return tuple(table for table in made if table.rows)


def _balance_table(results: PowerResults) -> FigureTable:
    """Return the table of demand against the remaining sets, a condition a row."""
    names = ", ".join(generator.name for generator in main_sets(results.plant.sets))
    return FigureTable(
        "Power with one set out",
        table_columns(
            "condition",
            ("demand", "kW"),
            "set out",
            ("rest", "kW"),
            ("margin", "kW"),
            "sets running",
            ("current on the board", "A"),
        ),
        tuple(_balance_row(balance, results) for balance in results.converted),
        sentence(
            "Counted: {names}. Margin against the rest in full; new loads are in. Buses that no "
            "closed tie joins are balanced apart, each without its own largest set. Sets running: "
            "the fewest that carry it at 85 % or less.",
            names=names,
        ),
    )


def _balance_row(balance: Balance, results: PowerResults) -> tuple[Cell, ...]:
    """Return one condition: demand, what is left of the sets, how many run, and the current."""
    known = (balance.name, balance.stopped or "none feeds it", _kilowatts(balance.remaining))
    condition, stopped, remaining = known
    if balance.demand.span is None:
        return condition, None, stopped, remaining, None, None, None
    factor, power = results.board.number("power_factor"), balance.demand.span.middle
    # At the likely demand, since sets are started for what is drawn and not for what may be.
    running = sets_running(balance.sets, power, factor) if balance.sets else None
    volts, current = results.board.number("voltage"), None
    if volts:
        load = three_phase(power, volts, factor or LOAD_FACTOR.value)
        current = Quantity.exact(load.current, "A", 0)
    return (
        condition,
        balance.demand.span.quantity("kW", 0),
        stopped,
        remaining,
        balance.margin.span.quantity("kW", 0),
        None if running is None else _running(running),
        current,
    )


def _running(running: SetsRunning) -> Cell:
    """Return how many sets run, at which share of what they can give."""
    return sentence(
        "{count} at {load}, {word}",
        count=running.count,
        load=Quantity.exact(running.load * 100, "%", 0),
        word=running.word,
    )


def _failure_table(results: PowerResults) -> FigureTable:
    """Return the table of single failures, the vessel as inspected first."""
    shown = results.failures[:MOST_FAILURES]
    intact = (results.intact,) if results.intact else ()
    # What is left out is counted, so that the list does not look complete.
    hidden = len(results.failures) - len(shown)
    more = f" Not shown: {counted(hidden, 'lesser failure')}." if hidden else ""
    return FigureTable(
        "Single failures, worst first",
        table_columns(
            "failure",
            "takes with it",
            ("from every side", "kn"),
            ("worst from", "deg"),
            ("on the beam", "kn"),
            "falls short first",
            "station kept",
            "load of each supply",
            ("bow, left", "kN"),
            ("stern, left", "kN"),
            ("along, left", "kN"),
        ),
        tuple(_failure_row(outcome, results) for outcome in (*intact, *shown)),
        sentence(
            "As inspected: without all that is out of order. Winds are the most that is withstood, "
            "with surge, sway and yaw balanced together. Loads are those at the wind to be "
            "withstood, on the beam. Thrust left is at its likely value, at bow and stern without "
            "rudders, which give nothing alone.{more}",
            more=more,
        ),
    )


def _failure_row(outcome: Outcome, results: PowerResults) -> tuple[Cell, ...]:
    """Return one failure: what it takes, what is left against what is needed."""
    # What is out of order was lost before, and no failure takes it once more.
    already = results.intact.lost if results.intact else frozenset()
    taken = sorted(outcome.lost - already - {outcome.element})
    supplies = [_supply(supply, results) for supply in outcome.supplies]
    return (
        element_name(outcome.element, results) or AS_INSPECTED,
        ", ".join(element_name(name, results) for name in taken) or None,
        _knots(outcome.least if outcome.ahead is not None else None),
        None if outcome.ahead is None else Quantity.exact(outcome.worst_heading, "deg", 0),
        _knots(outcome.wind),
        shortfall_name(outcome, results) or None,
        None if results.wind is None else KEPT[outcome.keeps_station],
        joined(supplies, "; ") if supplies else "none: dark",
        _kilonewtons(outcome.bow),
        _kilonewtons(outcome.stern),
        _kilonewtons(outcome.along),
    )


def _knots(wind: Span | None) -> Quantity | None:
    """Return a wind in knots; None where it is not known."""
    return None if wind is None else in_knots(wind).quantity("kn", 1)


def _supply(supply: Supply, results: PowerResults) -> Cell:
    """Return a supply with its load as a share of its capacity [%]."""
    # A share is short enough for a narrow column; the powers are in the tables of sets and buses.
    load = Quantity.exact(100 * supply.load / supply.capacity, "%", 0)
    return sentence("{name} {load}", name=element_name(supply.name, results), load=load)


def _kilonewtons(thrust: float) -> Quantity:
    return Quantity.exact(thrust, "kN", 1)


def _bus_table(results: PowerResults) -> FigureTable:
    """Return the table of the power that each supply has for its thrusters."""
    supplies = results.intact.supplies if results.intact else ()
    rows = [_bus_row(supply, results) for supply in supplies]
    return FigureTable(
        "Thrusters at full against the power of their bus or engine",
        table_columns(
            "bus or engine",
            ("sets", "kW"),
            ("other loads", "kW"),
            ("thrusters at full", "kW"),
            ("free for them", "kW"),
            ("power", "%"),
            ("thrust", "%"),
        ),
        tuple(row for row in rows if row is not None),
        "At the load limit, nothing failed. Below 100 % they cannot all work at full at once.",
    )


def _bus_row(supply: Supply, results: PowerResults) -> tuple[Cell, ...] | None:
    """Return what the thrusters of a supply could take; None where it drives none."""
    fed = [
        unit
        for unit in results.plant.thrusters
        # By its first feed: the change-over to another is for a failure.
        if not unit.out and alternatives(unit.feed)[0] in supply.places
    ]
    # Rated at the shaft, so that the losses of the drives are taken off what the bus has for them.
    full = sum(unit.rated for unit in fed)
    # A board that drives no thruster has nothing to compare.
    if full <= 0:
        return None
    is_engine = supply.name in results.particulars.engine_names
    hotel = sum(results.plant.hotel.get(bus, 0.0) for bus in supply.places)
    efficiency = 1.0 if is_engine else results.limits.efficiency
    free = (results.limits.share * supply.capacity - hotel) * efficiency
    power, thrust = power_limited(free, full)
    return (
        element_name(supply.name, results),
        _kilowatts(supply.capacity),
        _kilowatts(hotel),
        _kilowatts(full),
        _kilowatts(max(free, 0.0)),
        Quantity.exact(power * 100, "%", 0),
        Quantity.exact(thrust * 100, "%", 0),
    )


def _thrust_table(results: PowerResults) -> FigureTable:
    """Return the table of the full thrust of each unit [kN], with where it is from."""
    rows = []
    for unit, thrust in zip(results.plant.thrusters, results.thrusts, strict=True):
        position = Quantity.exact(unit.x, "m", signed=True)
        span = thrust.span.quantity("kN", 1)
        rows.append((unit.name, unit.kind, unit.feed, position, span, thrust.formula_text))
    return FigureTable(
        "Full thrust taken",
        table_columns("unit", "kind", "fed by", ("from midship", "m"), ("thrust", "kN"), "from"),
        tuple(rows),
        "A bollard or trial value is better than any of these.",
    )


def _transformer_table(transformers: Sequence[Row]) -> FigureTable:
    """Return the table of transformers, each with its load as a share of the plate [%]."""
    rows = []
    for row in transformers:
        share = transformer_share(row)
        rating = Quantity.exact(row.number("rating"), "kVA")
        # A transformer that cannot be judged keeps its row, with what to type.
        if share is None:
            missing = "type its load, or a current with its voltage"
            rows.append((row.text("name"), rating, None, missing))
        else:
            word = "overloaded" if share > 1 else "within the plate"
            load = Quantity.exact(share * 100, "%", 1)
            rows.append((row.text("name"), rating, load, word))
    return FigureTable(
        "Transformers",
        table_columns("transformer", ("rating", "kVA"), ("load", "%"), "result"),
        tuple(rows),
        "By power or by current against the plate.",
    )


def _dp_table(results: PowerResults) -> FigureTable:
    """Return the table of what the DP class requires, against what was found."""
    rows = [(each.requirement, each.finding, MET[each.met]) for each in results.dp_requirements]
    unknown = "Neither text applies, or the day of the keel is not recorded; the newer one was read"
    return FigureTable(
        "What the DP equipment class requires of power and thrust",
        table_columns("required", "finding", "result"),
        tuple(rows),
        sentence(
            "{text}. Consistent equipment is not the class: the notation and the verification "
            "document are, and these lapse with a change of flag or an alteration that was not "
            "agreed.",
            text=str(results.dp_text) if results.dp_text else unknown,
        ),
    )
