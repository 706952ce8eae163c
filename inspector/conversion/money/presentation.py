"""The figures and tables of the chapter on money."""

from collections.abc import Iterator, Sequence

from inspector.assess.model import SystemPart
from inspector.assess.registers import WorkLine
from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.figure import Default, Figure
from inspector.conversion.core.span import Span
from inspector.conversion.money.calculation import Sums
from inspector.conversion.money.cost_line import standard_deviation
from inspector.conversion.money.cost_spread import CORRELATION
from inspector.conversion.money.estimate_class import AACE, CLASSES
from inspector.conversion.money.particulars import EXTREMES, TENTHS
from inspector.criteria.core.source import Source
from inspector.values.quantity import Cell, Money, Quantity, sentence
from inspector.values.text import counted

COMMON_CAUSE_SOURCE = Source.common_practice(
    "Correlation of the lines of one refit", "one common cause"
)
COMMON_CAUSE = Default(
    "common cause of the lines",
    CORRELATION,
    "Lines of one refit rise and fall together; none of it would understate the spread.",
    source=COMMON_CAUSE_SOURCE,
)
ENDS = Default(
    "low and high of all lines",
    EXTREMES,
    "Ask whoever priced them: people mostly mean what one case in ten is below or above, and then "
    "the spread is wider.",
)
TRIANGLES = "Each line is a triangle of low, likely and high."
# What low and high of a triangle are taken as.
TAKEN_AS = {
    EXTREMES: "Low and high are taken as the ends of what can happen.",
    TENTHS: "Low and high are taken as what one case in ten is below and above.",
}
CLASS_NOTE = (
    "The work is spread as far as its lines or as its class of estimate, whichever is wider on "
    "each side of the middle."
)
AT_LEAST = "What is not priced is in none of these: all of it is so much at least."
MOST_DRIVERS = 8


def figures(
    sums: Sums, currency: str, *, correlation_given: bool, ends: str = ""
) -> Iterator[Figure]:
    """Yield all of the money, the priced work, and the sales.

    Parameters
    ----------
    sums : Sums
        With anything priced.
    currency : str
    correlation_given : bool
        Whether the surveyor gave the common cause of the lines.
    ends : str
        What low and high are, EXTREMES or TENTHS; "" where nobody said.

    Yields
    ------
    Figure
        In the currency.
    """
    yield from _total(sums, currency)
    if sums.spread is not None:
        defaults = (*(() if correlation_given else (COMMON_CAUSE,)), *(() if ends else (ENDS,)))
        yield Figure(
            "Cost of the priced work",
            sums.cost,
            currency,
            "P10, P50 and P90 of the sum of the lines",
            (TRIANGLES, TAKEN_AS[ends or EXTREMES]),
            (*defaults, *_completed(sums)),
            is_money=True,
        )
        yield from _work(sums, currency)
    if sums.sales is not None:
        how = "sum of lows, likelies and highs; not taken off any cost above"
        yield Figure("Sale of what is removed", sums.sales, currency, how, is_money=True)
        # What a sale brings is not sure, so it is never taken off the cost itself.
        net = sums.total.span - sums.sales
        yield Figure("All of it less sales", net, currency, "widest ends", is_money=True)


def _total(sums: Sums, currency: str) -> Iterator[Figure]:
    """Yield everything that is priced, and what it leaves of the budget."""
    total = sums.total
    assumed = (CLASS_NOTE, *((AT_LEAST,) if sums.open else ()))
    how = "P10, P50 and P90 of asking price, work, costs beside it and the rise of prices"
    name = "All of it, as far as priced" if sums.open else "All of it"
    yield Figure(name, total.span, currency, how, assumed, is_money=True)
    how = "not exceeded in four cases of five"
    yield _exact(f"{name}, to plan with (P80)", total.p80, currency, how)
    if sums.budget is not None:
        within = sentence(
            "{at_most}kept in {share} of cases",
            at_most="at most " if sums.open else "",
            share=percent(sums.everything.within),
        )
        yield _exact("Budget of the brief", sums.budget, currency, within)
        how = "budget less P80" + ("; what is not priced comes off it" if sums.open else "")
        yield _exact("Left of the budget", sums.budget - total.p80, currency, how)


def _completed(sums: Sums) -> Iterator[Default]:
    """Yield the default of lines of which an end was not typed."""
    if sums.completed:
        lines = counted(sums.completed, "work line lacks", "work lines lack")
        yield Default(
            "ends that were not typed",
            f"the range of class {sums.estimate_class}",
            f"{lines} a low or a high cost.",
            source=AACE,
        )


def _work(sums: Sums, currency: str) -> Iterator[Figure]:
    """Yield the sum of the work lines, alone and as its class of estimate spreads it."""
    found, work = sums.spread, sums.everything.work
    within = sentence("kept in {share} of cases", share=percent(found.within))
    yield _exact("Sum of the likely costs", found.base, currency, within)
    how = sentence(
        "P10, P50 and P90, at least as wide as class {number}", number=sums.estimate_class
    )
    yield Figure(
        "Cost of the work by its class",
        work.span,
        currency,
        how,
        (CLASS_NOTE,),
        source=AACE,
        is_money=True,
    )
    how = "of the work by its class; not exceeded in four cases of five"
    yield _exact("Cost to plan with (P80)", work.p80, currency, how)
    how = "P80 less the sum of the likely costs"
    yield _exact("Contingency on the likely sum", work.p80 - found.base, currency, how)
    closed = sentence(
        "of the lines alone; closed form {exact} at the same correlation of the costs",
        exact=Money.exact(standard_deviation(sums.priced, found.correlation), currency),
    )
    # Simulated and in closed form beside each other, so that a reader can check one by the other.
    yield _exact("Standard deviation", found.deviation, currency, closed)


def _exact(name: str, value: float, currency: str, how: Cell) -> Figure:
    return Figure(name, Span.exact(value), currency, how, is_money=True)


def time_figure(sums: Sums) -> Figure | None:
    """Return the months in the yard.

    Parameters
    ----------
    sums : Sums

    Returns
    -------
    Figure or None
        [months]; None where no line says how long it takes.
    """
    months = sums.time.months
    if months is None:
        return None
    how = "places of the sequence one after the other, their longest line each"
    missing = len(sums.time.without)
    if missing:
        how += f"; so long at least, since {counted(missing, 'line says', 'lines say')} nothing"
    return Figure("Months in the yard", months, "months", how)


def totals_table(sums: Sums, currency: str) -> FigureTable:
    """Return what the total is made of, head by head, against the budget.

    Parameters
    ----------
    sums : Sums
        With anything priced.
    currency : str

    Returns
    -------
    FigureTable
    """
    rows: list[tuple[Cell, ...]] = [
        (head.name, Money.exact(head.likely, currency), head.how)
        for head in sums.heads
        if head.likely is not None
    ]
    rows += [(name, None, "not priced, and not nothing") for name in sums.open]
    total = sums.total
    rows.append(("sum of the likely amounts", Money.exact(sums.likely, currency), ""))
    contingency = Money.exact(total.p80 - sums.likely, currency)
    rows.append(("contingency", contingency, "what four cases of five ask beyond the likely sum"))
    at_least = "so much at least" if sums.open else ""
    rows.append(("to plan with (P80)", Money.exact(total.p80, currency), at_least))
    if sums.budget is not None:
        left = Money.exact(sums.budget - total.p80, currency)
        rows.append(("budget of the brief", Money.exact(sums.budget, currency), ""))
        rows.append(("left of the budget", left, "so much at most" if sums.open else ""))
    columns = table_columns("head", ("likely", currency), "made of")
    return FigureTable("All of the money", columns, tuple(rows))


def percent(share: float) -> Quantity:
    """Return a share as whole percents.

    Parameters
    ----------
    share : float
        0 to 1 [-].

    Returns
    -------
    Quantity
        [%]
    """
    return Quantity.exact(100 * share, "%", 0)


def work_table(systems: Sequence[SystemPart], sums: Sums, currency: str) -> FigureTable | None:
    """Return the work lines in their sequence, with the amounts as typed.

    Parameters
    ----------
    systems : sequence of SystemPart
    sums : Sums
    currency : str

    Returns
    -------
    FigureTable or None
        None where there is no line.
    """
    lines = [(system.system.name, line) for system in systems for line in system.lines]
    if not lines:
        return None
    # Lines without a place in the sequence come last.
    lines.sort(key=lambda named: (named[1].sequence is None, named[1].sequence or 0))
    columns = table_columns(
        "order",
        "system",
        "what",
        ("low", currency),
        ("likely", currency),
        ("high", currency),
        "weeks",
        "rate",
    )
    rows = tuple(
        (
            line.sequence or None,
            system,
            # A line without a triangle is still listed: the reader must see what the sum does not
            # hold.
            _what(line, line.id in sums.left_out),
            *(_typed(amount, currency) for amount in (line.low, line.likely, line.high)),
            None if line.weeks is None else Quantity.exact(line.weeks),
            line.rate or None,
        )
        for system, line in lines
    )
    return FigureTable("Work in its sequence", columns, rows)


def _what(line: WorkLine, left_out: bool) -> str:
    return f"{line.act}: {line.text}{' (in no sum)' if left_out else ''}"


def _typed(amount: float | None, currency: str) -> Money | None:
    return None if amount is None else Money.exact(amount, currency, as_typed=True)


def drivers_table(sums: Sums) -> FigureTable | None:
    """Return what drives the spread.

    Parameters
    ----------
    sums : Sums
        With a spread.

    Returns
    -------
    FigureTable or None
        None where every line has a fixed cost.
    """
    if not sums.spread.drivers:
        return None
    rows = tuple(
        (name, Quantity.exact(value, "", 2)) for name, value in sums.spread.drivers[:MOST_DRIVERS]
    )
    note = (
        "Spearman's rank correlation of each line with the sum: the first are the ones worth a "
        "quotation."
    )
    columns = table_columns("line", "rank correlation")
    return FigureTable("What drives the spread", columns, rows, note)


def classes_table(estimate_class: int) -> FigureTable:
    """Return the classes of estimate, with the one of this estimate marked.

    Parameters
    ----------
    estimate_class : int

    Returns
    -------
    FigureTable
    """
    columns = table_columns(
        "class", ("defined", "%"), ("low side", "%"), ("high side", "%"), "this estimate"
    )
    rows = tuple(
        (
            number,
            Quantity(claims.defined[0], None, claims.defined[1], "%"),
            Quantity(claims.below[0], None, claims.below[1], "%"),
            Quantity(claims.above[0], None, claims.above[1], "%", signed=True),
            "this one" if number == estimate_class else "",
        )
        for number, claims in sorted(CLASSES.items(), reverse=True)
    )
    note = f"{AACE}; made for process plants, by analogy only."
    return FigureTable("Classes of estimate", columns, rows, note)
