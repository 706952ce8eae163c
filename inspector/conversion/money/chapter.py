"""The chapter on money: the work lines summed with their spread, and what may be sold.

The tool has no prices of its own: every amount is the surveyor's, from his rate book or typed, in
one currency, with a date and a place.
"""

from collections.abc import Iterator

from inspector.assess.work_cost import PricedTwice
from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.figure import Gap
from inspector.conversion.core.particulars import Row
from inspector.conversion.money import presentation
from inspector.conversion.money.calculation import Sums, sums_of
from inspector.conversion.money.estimate_class import CLASSES
from inspector.conversion.money.particulars import PRICES, TABLES
from inspector.values.quantity import Cell, Money, Quantity, Sentence, sentence
from inspector.values.text import counted

TITLE = "Money"
VERIFY = (
    "An estimate from a visit: only quotations by yards against a scope and drawings are prices."
)
NOTHING_PRICED = (
    "No work line carries a low, a likely and a high cost yet, so there is nothing to sum."
)
# Share of cases below which a sum misleads who plans with it: our own choice.
SELDOM = 0.3
NAMED_UNPRICED = 5


def chapter(case: Case) -> Chapter:
    """Return the chapter on money.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
    """
    sums, prices = sums_of(case), case.one(PRICES)
    currency = prices.text("currency")
    shared = {
        "gaps": tuple(_gaps(sums, prices)),
        "faults": (*case.faults(*TABLES), *sums.faults),
        "particulars": tuple(table.id for table in TABLES),
    }
    # Faults and gaps are shown all the same: they say why there is nothing to sum.
    if sums.spread is None:
        return Chapter("money", TITLE, NOTHING_PRICED, **shared)
    given = prices.number("correlation") is not None
    return Chapter(
        "money",
        TITLE,
        _answer(sums, currency),
        tuple(presentation.figures(sums, currency, correlation_given=given)),
        tuple(_tables(case, sums, currency)),
        (presentation.drawing(sums, currency),),
        warnings=tuple(_warnings(sums, currency)),
        verify=VERIFY,
        **shared,
    )


def _answer(sums: Sums, currency: str) -> Sentence:
    """Return the chapter in a sentence: the sums at 50 and 80 %, and what their class claims."""
    # Beside the spread of the lines, which says nothing of what was forgotten.
    claims = CLASSES[sums.estimate_class]
    return sentence(
        "The priced work comes to {p50} as likely as not, and to {p80} or less in four cases of "
        "five; class {number} estimate, which as such reaches from {low} to {high}.",
        p50=Money.exact(sums.spread.p50, currency),
        p80=Money.exact(sums.spread.p80, currency),
        number=sums.estimate_class,
        low=Quantity.exact(claims.below[0], "%"),
        high=Quantity.exact(claims.above[1], "%", signed=True),
    )


def _tables(case: Case, sums: Sums, currency: str) -> Iterator[FigureTable]:
    """Yield the tables that have anything to show."""
    tables = (
        presentation.work_table(case.assessment.systems, sums, currency),
        presentation.drivers_table(sums),
        presentation.classes_table(sums.estimate_class),
    )
    yield from (table for table in tables if table is not None)


def _gaps(sums: Sums, prices: Row) -> Iterator[Gap]:
    """Yield what the sums lack: a currency, a date of the prices, lines without a price."""
    # A number without a currency is no price, so this comes before its date.
    if not prices.text("currency"):
        yield Gap("Currency", "Amounts name none; give it with the date and place of the prices.")
    elif not prices["priced_on"]:
        why = "An amount without a date cannot be brought to another year."
        yield Gap("Date of the prices", why)
    if sums.unpriced:
        # Enough to find the place; the whole list is in the table of work.
        named = [line.text or line.act for line in sums.unpriced[:NAMED_UNPRICED]]
        if len(sums.unpriced) > NAMED_UNPRICED:
            named.append("and more")
        yield Gap(
            f"{counted(len(sums.unpriced), 'work line')} without a price",
            f"Not in any sum: {'; '.join(named)}.",
        )


def _warnings(sums: Sums, currency: str) -> Iterator[Cell]:
    """Yield what is priced twice, and a likely sum that is seldom kept."""
    for twice in sums.priced_twice:
        yield _priced_twice(twice, currency)
    if sums.spread.within < SELDOM:
        yield sentence(
            "The sum of the likely costs is kept in only {share} of cases: it is not the price to "
            "plan with.",
            share=presentation.percent(sums.spread.within),
        )


def _priced_twice(twice: PricedTwice, currency: str) -> Sentence:
    """Return the sentence on a part priced both ways: which act counts, and why."""
    verdict = twice.part.verdict
    cost = Money.exact(twice.left_out_cost, currency, as_typed=True)
    if not twice.counts:
        return sentence(
            "{part} is priced both ways, and goes without a new one in its place: refurbishing and "
            "replacing, together {cost}, are in no sum.",
            part=twice.part.name,
            cost=cost,
        )
    why = f"by its verdict ({verdict})"
    if twice.is_the_dearer:
        why = f"as its verdict is {verdict}, the dearer,"
    acts = ("replacing", "refurbishing")
    counts, other = acts if twice.counts == "replace" else reversed(acts)
    return sentence(
        "{part} is priced both ways: {why} {counts} counts, and {other} at {cost} is in no sum. "
        "If both are to be done, enter both as one act.",
        part=twice.part.name,
        why=why,
        counts=counts,
        other=other,
        cost=cost,
    )
