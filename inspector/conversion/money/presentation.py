"""The figures, tables and the drawing of the chapter on money."""

from collections.abc import Iterator, Sequence
from textwrap import shorten

from inspector.assess.model import SystemPart
from inspector.assess.registers import WorkLine
from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.drawing import Bar, Bars
from inspector.conversion.core.figure import Default, Figure
from inspector.conversion.core.span import Span
from inspector.conversion.money.calculation import Sums
from inspector.conversion.money.cost_line import standard_deviation
from inspector.conversion.money.cost_spread import CORRELATION
from inspector.conversion.money.estimate_class import AACE, CLASSES
from inspector.criteria.core.source import Source
from inspector.values.quantity import Cell, Money, Quantity, sentence

COMMON_CAUSE_SOURCE = Source.common_practice(
    "Correlation of the lines of one refit", "one common cause"
)
COMMON_CAUSE = Default(
    "common cause of the lines",
    CORRELATION,
    "Lines of one refit rise and fall together; none of it would understate the spread.",
    source=COMMON_CAUSE_SOURCE,
)
TRIANGLES = (
    "Each line is a triangle of low, likely and high.",
    "Low and high are taken as the ends of what can happen; people mostly name them too narrow.",
)
MOST_DRIVERS = 8
# Characters of a label beside a bar.
LABEL_WIDTH = 34


def figures(sums: Sums, currency: str, *, correlation_given: bool) -> Iterator[Figure]:
    """Yield the sums of the priced work and of the sales.

    Parameters
    ----------
    sums : Sums
        With a spread.
    currency : str
    correlation_given : bool
        Whether the surveyor gave the common cause of the lines.

    Yields
    ------
    Figure
        In the currency.
    """
    found = sums.spread
    yield Figure(
        "Cost of the priced work",
        sums.cost,
        currency,
        "P10, P50 and P90 of the sum",
        TRIANGLES,
        () if correlation_given else (COMMON_CAUSE,),
        is_money=True,
    )
    within = sentence("kept in {share} of cases", share=percent(found.within))
    yield _exact("Sum of the likely costs", found.base, currency, within)
    how = "not exceeded in four cases of five"
    yield _exact("Cost to plan with (P80)", found.p80, currency, how)
    how = "P80 less the sum of the likely costs"
    yield _exact("Contingency on the likely sum", found.contingency, currency, how)
    closed = sentence(
        "closed form {exact} at the same correlation of the costs",
        exact=Money.exact(standard_deviation(sums.priced, found.correlation), currency),
    )
    # Simulated and in closed form beside each other, so that a reader can check one by the other.
    yield _exact("Standard deviation", found.deviation, currency, closed)
    if sums.sales is not None:
        how = "sum of lows, likelies and highs; not taken off the cost above"
        yield Figure("Sale of what is removed", sums.sales, currency, how, is_money=True)
        # What a sale brings is not sure, so it is never taken off the cost itself.
        net = sums.cost - sums.sales
        yield Figure("Cost less sales", net, currency, "widest ends", is_money=True)


def _exact(name: str, value: float, currency: str, how: Cell) -> Figure:
    return Figure(name, Span.exact(value), currency, how, is_money=True)


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


def drawing(sums: Sums, currency: str) -> Bars:
    """Return the spread of the cost, with the lines that are spread most.

    Parameters
    ----------
    sums : Sums
        With a spread.
    currency : str

    Returns
    -------
    Bars
        In the currency.
    """
    found = sums.spread
    # By the width, since that is where a quotation would help most.
    widest = sorted(sums.priced, key=lambda line: line.low - line.high)[:MOST_DRIVERS]
    bars = (
        Bar("all priced work", found.p10, found.p50, found.p90, found.base),
        *(
            Bar(shorten(line.name, LABEL_WIDTH, placeholder=" …"), line.low, line.likely, line.high)
            for line in widest
        ),
    )
    described = sentence(
        "All priced work from {p10} to {p90}, half of the cases below {p50}.",
        p10=Money.exact(found.p10, currency),
        p90=Money.exact(found.p90, currency),
        p50=Money.exact(found.p50, currency),
    )
    return Bars("Spread of the cost", currency, bars, described, "sum of the likely costs")
