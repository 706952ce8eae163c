"""The figures of the chapter on power: balances, winds that are withstood, and the shore supply."""

from collections.abc import Iterator
from dataclasses import replace

from inspector.conversion.core.figure import Figure, Gap, no_figure, unique
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.power.calculation import PowerResults
from inspector.conversion.power.electrical_loads import CONDITIONS, demand
from inspector.conversion.power.holding.holding_power import Outcome
from inspector.conversion.power.holding.polar import MOST_WIND, POWER_OF
from inspector.conversion.power.holding.station_keeping import SCREEN
from inspector.conversion.power.load_balance import LOAD_FACTOR, spare_for_new
from inspector.conversion.power.plant import with_bus
from inspector.conversion.power.three_phase import shore_power, supply_mismatch, transformer_loading
from inspector.values.quantity import Cell, Quantity, sentence
from inspector.values.units import convert

RUNNING = (
    "All sets in order are taken as running; "
    "loads marked as not essential are taken as shed while keeping station."
)
SHARING = (
    "Surge, sway and yaw are balanced together; wind and current are steady and from one side, "
    "by the components of their forces from ahead and on the beam, and there is no sea beyond the "
    "factor for waves."
)
RUDDERS = (
    "A rudder gives side thrust only with ahead thrust of its propeller in the same share, which "
    "other units must take; its drag is not counted. Where no distance off the centreline is "
    "typed, a unit is on it."
)
AT_MOST = "64 kn stands for 64 kn and more: a static balance says nothing of a hurricane."
ENGINES = (
    "A shaft generator is counted at its own rating; "
    "what it takes from its engine is not taken off the propeller."
)


def power_figures(results: PowerResults) -> tuple[Figure, ...]:
    """Return all figures of the chapter in the order in which they are shown.

    Parameters
    ----------
    results : PowerResults

    Returns
    -------
    tuple of Figure

    References
    ----------
    See ``load_balance``, ``holding_power`` and ``three_phase``.
    """
    return (*_balances(results), *_winds(results), *_shore(results.board))


def in_knots(wind: Span) -> Span:
    """Return a wind in knots, with its middle where it has no likely value.

    Parameters
    ----------
    wind : Span
        Wind [m/s].

    Returns
    -------
    Span
        Wind [kn].

    References
    ----------
    International nautical mile of 1929.
    """
    # The middle is shown as likely: winds are found by search, each of its ends and its point.
    return Span(*(convert(end, "m/s", "kn") for end in (wind.low, wind.middle, wind.high)))


def element_name(name: str, results: PowerResults) -> str:
    """Return an element as it is named in sentences, "bus A" for A.

    Parameters
    ----------
    name : str
    results : PowerResults

    Returns
    -------
    str

    References
    ----------
    Model of our own.
    """
    return with_bus(name, results.plant.buses)


def shortfall_name(outcome: Outcome, results: PowerResults) -> str:
    """Return what falls short first: "power of bus A", "bow thrust".

    Parameters
    ----------
    outcome : Outcome
    results : PowerResults

    Returns
    -------
    str

    References
    ----------
    Model of our own.
    """
    if not outcome.shortfall.startswith(POWER_OF):
        return outcome.shortfall
    return POWER_OF + element_name(outcome.shortfall.removeprefix(POWER_OF), results)


def transformer_share(row: Row) -> float | None:
    """Return the load of a transformer as a share of its plate.

    Parameters
    ----------
    row : Row
        A row of the table of transformers.

    Returns
    -------
    float or None
        None where neither a load nor a current with its voltage was given.

    References
    ----------
    Plain arithmetic of three-phase circuits, see ``transformer_loading``.
    """
    rating, load, current, voltage = (
        row.number(name) for name in ("rating", "load", "current", "voltage")
    )
    try:
        return transformer_loading(rating, load, current, voltage)
    except ConversionError:
        return None


def _balances(results: PowerResults) -> Iterator[Figure]:
    """Yield demand and margin of each condition, then the spare for new loads [kW]."""
    for balance in results.converted:
        yield balance.demand
        if balance.margin.known:
            yield balance.margin
    if results.present:
        # Of the vessel as she is: the new loads are what it is wanted for.
        yield spare_for_new(results.present)
        yield from spare_by_bus(results)
    new = results.particulars.new_consumers
    added = [demand(new, condition) for condition in CONDITIONS] if new else []
    known = [figure for figure in added if figure.known]
    if known:
        # Conditions exclude each other, so new loads never take more than in the worst of them.
        most = max(known, key=lambda figure: figure.span.middle)
        yield Figure(
            "new loads, in the condition where they take most",
            most.span,
            "kW",
            most.name.partition(", ")[2],
            most.assumptions,
            most.defaults,
        )


def spare_by_bus(results: PowerResults) -> Iterator[Figure]:
    """Yield the spare for new loads of each bus [kW], where they are not all one island.

    Parameters
    ----------
    results : PowerResults

    Yields
    ------
    Figure

    References
    ----------
    Model of our own: the least over the conditions of the island that the bus is in.
    """
    if not any(balance.place for balance in results.present):
        return
    for bus in results.plant.buses:
        # An island over all buses has no place, and every bus is in it.
        here = [each for each in results.present if not each.buses or bus in each.buses]
        if here:
            name = f"spare for new consumers on {element_name(bus, results)}, one set out"
            yield replace(spare_for_new(here), name=name)


def _winds(results: PowerResults) -> Iterator[Figure]:
    """Yield the winds as inspected, after the worst failure, and after the worst from ahead."""
    if results.intact is None:
        return
    yield from _wind_figures(results, results.intact, "as inspected")
    worst = results.worst
    # Worst is judged from every side; from ahead another failure may be worse, and is shown too.
    if worst is not None:
        without = f"without {element_name(worst.element, results)}"
        yield from _wind_figures(results, worst, without, ahead=False)
    known = [failure for failure in results.failures if failure.ahead is not None]
    if known:
        failure = min(known, key=lambda failure: failure.ahead.middle)
        without = f"without {element_name(failure.element, results)}"
        yield _wind_figure(results, f"most wind from ahead, {without}", failure.ahead)


def _wind_figures(
    results: PowerResults, outcome: Outcome, when: str, *, ahead: bool = True
) -> Iterator[Figure]:
    """Yield the most wind from every side, on the beam and from ahead for one outcome [kn]."""
    formula: Cell = "by balance"
    if outcome.shortfall:
        formula = f"by balance; {shortfall_name(outcome, results)} falls short first"
    # Without a frontal area there is no other side than the beam.
    if outcome.least is not None and outcome.ahead is not None:
        every = sentence(
            "{formula}, from {heading}",
            formula=formula,
            heading=Quantity.exact(outcome.worst_heading, "deg", 0),
        )
        yield _wind_figure(results, f"most wind from every side, {when}", outcome.least, every)
    if outcome.wind is not None:
        only = formula if outcome.ahead is None else "by balance"
        yield _wind_figure(results, f"most wind on the beam, {when}", outcome.wind, only)
    if ahead and outcome.ahead is not None:
        yield _wind_figure(results, f"most wind from ahead, {when}", outcome.ahead)


def _wind_figure(
    results: PowerResults, name: str, wind: Span, formula: Cell = "by balance"
) -> Figure:
    """Return one wind [kn] with all assumptions and defaults that it depends on."""
    thrust_defaults = unique(*(thrust.defaults for thrust in results.thrusts))
    plant = results.plant
    # Only where both exist can a set be driven by a propulsion engine.
    engines = (ENGINES,) if plant.engines and plant.sets else ()
    with_rudder = any(unit.is_propeller and unit.across for unit in plant.thrusters)
    rudders = (RUDDERS,) if with_rudder else ()
    most = (AT_MOST,) if wind.high >= MOST_WIND else ()
    return Figure(
        name,
        in_knots(wind),
        "kn",
        formula,
        (RUNNING, SHARING, *rudders, *engines, *most),
        (*thrust_defaults, *results.defaults),
        (),
        SCREEN,
    )


def _shore(board: Row) -> Iterator[Figure]:
    """Yield the figures of the shore supply; one gap where its particulars cannot be."""
    try:
        yield from _shore_power(board)
        yield from _shore_mismatch(board)
    except ConversionError as problem:
        yield no_figure("shore supply", "kW", (Gap("shore supply", str(problem)),))


def _shore_power(board: Row) -> Iterator[Figure]:
    """Yield what the shore connection gives, where its breaker and voltage are known."""
    volts, amperes = board.number("shore_voltage"), board.number("shore_current")
    factor = board.number("power_factor")
    # Zero volts or amperes is a shore box out of use, not a connection.
    if volts and amperes:
        assumed = () if factor is not None else (LOAD_FACTOR,)
        most = shore_power(amperes, volts, LOAD_FACTOR.value if factor is None else factor)
        formula = "√3 × V × A × power factor"
        yield Figure("power from shore, at most", Span.exact(most), "kW", formula, (), assumed)


def _shore_mismatch(board: Row) -> Iterator[Figure]:
    """Yield how the ship's machines run on the shore's voltage and frequency."""
    values = [
        board.number(name) for name in ("voltage", "frequency", "shore_voltage", "shore_frequency")
    ]
    # Zero volts or hertz is a supply that is off, and nothing to compare with.
    if not all(values):
        return
    mismatch = supply_mismatch(*values)
    yield Figure(
        "flux of the ship's machines on shore supply",
        Span.exact(mismatch.flux * 100),
        "%",
        "V / Hz of shore against the ship's; above 105 % they heat",
    )
    yield Figure(
        "speed of motors on shore supply",
        Span.exact(mismatch.speed * 100),
        "%",
        sentence(
            "Hz of shore against the ship's; fans take {power} of their power",
            power=Quantity.exact(mismatch.fan_power * 100, "%", 0),
        ),
    )
