"""The chapter on the power plant."""

from collections.abc import Iterator

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, Requirement
from inspector.conversion.core.figure import Gap, unique
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.conversion.power.calculation import PowerResults, calculate
from inspector.conversion.power.island_balance import worst_in
from inspector.conversion.power.load_balance import spare_for_new
from inspector.conversion.power.particulars import TABLES, TRANSFORMERS
from inspector.conversion.power.power_drawings import drawings
from inspector.conversion.power.power_figures import in_knots, power_figures
from inspector.conversion.power.power_tables import tables
from inspector.conversion.power.power_warnings import warnings
from inspector.conversion.power.presentation import NOTHING_TYPED, VERIFY, answer
from inspector.values.units import convert


def chapter(case: Case) -> Chapter:
    """Return the chapter on power. Never raises for recorded data.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
    """
    results, transformers = calculate(case), case.rows(TRANSFORMERS)
    ids = tuple(table.id for table in TABLES)
    faults = (*case.faults(*TABLES), *results.faults)
    if not results.has_input and not transformers:
        why = "none is typed; take them from the plates, the load balance and the one-line diagram"
        gaps = (Gap("generating sets, loads and thrusters", why),)
        return Chapter(
            "power", "Power plant", NOTHING_TYPED, gaps=gaps, faults=faults, particulars=ids
        )
    return Chapter(
        "power",
        "Power plant",
        answer(results, spare_for_new(results.present)),
        power_figures(results),
        tables(results, transformers),
        tuple(drawings(results)),
        warnings=tuple(warnings(results, transformers)),
        gaps=unique(results.gaps, _shore_gaps(results.board)),
        defaults=results.defaults,
        faults=faults,
        verify=VERIFY,
        particulars=ids,
        requirements=tuple(_requirements(results)),
    )


def _shore_gaps(board: Row) -> Iterator[Gap]:
    """Yield the gap of a shore connection without breaker or voltage."""
    if board.number("shore_current") is None or board.number("shore_voltage") is None:
        why = "what it gives in harbour cannot be calculated without its breaker and voltage"
        yield Gap("shore connection", why)


def _requirements(results: PowerResults) -> Iterator[Requirement]:
    """Yield what is asked: power with one set out [kW], and the wind after a failure [kn]."""
    # The two in which the ship lives for weeks; manoeuvring takes minutes, and has its table.
    for condition in ("harbour", "sea"):
        # The island that is worst off: none of the others can help it.
        balance = worst_in(results.converted, condition)
        demand = balance.demand.span if balance is not None else None
        if demand is not None:
            yield Requirement(
                f"power-one-set-out-{condition}",
                f"Power with one set out, {balance.name}, new loads, upper end of the demand",
                # The upper end: a plant that carries only the likely load goes dark on a busy
                # evening.
                round(demand.high, 1),
                "kW",
                Span.exact(balance.remaining),
            )
    worst = results.worst
    if results.wind is not None and worst is not None and worst.least is not None:
        yield Requirement(
            "wind-after-failure",
            "Wind withstood from every side after the worst single failure",
            round(convert(results.wind, "m/s", "kn"), 1),
            "kn",
            in_knots(worst.least),
        )
