"""The chapter on money: the work lines summed with their spread, and what may be sold.

The tool has no prices of its own: every amount is the surveyor's, from his rate book or typed, in
one currency, with a date and a place.
"""

from collections.abc import Iterator

from inspector.assess.work_cost import PricedTwice
from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.figure import Figure, Gap
from inspector.conversion.core.particulars import Row
from inspector.conversion.money import presentation
from inspector.conversion.money.calculation import Sums, sums_of
from inspector.conversion.money.estimate_class import CLASSES
from inspector.conversion.money.money_drawings import drawings
from inspector.conversion.money.particulars import PRICES, TABLES
from inspector.values.quantity import Cell, Money, Quantity, Sentence, joined, sentence
from inspector.values.text import counted

TITLE = "Money"
VERIFY = (
    "An estimate from a visit: only quotations by yards against a scope and drawings are prices."
)
NOTHING_PRICED = (
    "Neither an asking price nor any work line with a cost is typed yet, so there is nothing to "
    "sum."
)
# Share of cases below which a sum misleads who plans with it: our own choice.
SELDOM = 0.3
NAMED_OPEN = 12


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
    if sums.everything is None:
        return Chapter("money", TITLE, NOTHING_PRICED, **shared)
    return Chapter(
        "money",
        TITLE,
        _answer(sums, currency),
        tuple(_figures(sums, prices)),
        tuple(_tables(case, sums, currency)),
        tuple(drawings(sums, currency)),
        warnings=tuple(_warnings(sums, currency)),
        verify=VERIFY,
        **shared,
    )


def _figures(sums: Sums, prices: Row) -> Iterator[Figure]:
    """Yield all figures of the chapter: money, and the time in the yard."""
    given = prices.number("correlation") is not None
    currency, ends = prices.text("currency"), prices.text("ends")
    yield from presentation.figures(sums, currency, correlation_given=given, ends=ends)
    time = presentation.time_figure(sums)
    if time is not None:
        yield time


def _answer(sums: Sums, currency: str) -> Cell:
    """Return the chapter in two sentences: all of it against the budget, and the work's class."""
    total = sums.total
    template = (
        "{what} to {p50} as likely as not, and to {p80} or less in four cases of five{budget}."
    )
    if total.span.is_exact:
        template = "{what} to {p50}{budget}."
    whole = sentence(
        template,
        what="What is priced comes" if sums.open else "All of it comes",
        p50=Money.exact(total.p50, currency),
        p80=Money.exact(total.p80, currency),
        budget=_budget(sums, currency),
    )
    parts: list[Cell] = [whole]
    if sums.open:
        parts.append(f"{counted(len(sums.open), 'thing has', 'things have')} no price.")
    if sums.spread is not None:
        # Beside the spread of the lines, which says nothing of what was forgotten.
        claims = CLASSES[sums.estimate_class]
        work = sentence(
            "The work is a class {number} estimate, which as such reaches from {low} to {high}.",
            number=sums.estimate_class,
            low=Quantity.exact(claims.below[0], "%"),
            high=Quantity.exact(claims.above[1], "%", signed=True),
        )
        parts.append(work)
    return joined(parts)


def _budget(sums: Sums, currency: str) -> Cell:
    """Return how often the budget is kept, "" without one."""
    if sums.budget is None:
        return ""
    return sentence(
        "; the budget of {budget} is kept in {at_most}{share} of cases",
        budget=Money.exact(sums.budget, currency),
        at_most="at most " if sums.open else "",
        share=presentation.percent(sums.everything.within),
    )


def _tables(case: Case, sums: Sums, currency: str) -> Iterator[FigureTable]:
    """Yield the tables that have anything to show."""
    yield presentation.totals_table(sums, currency)
    work = presentation.work_table(case.assessment.systems, sums, currency)
    if work is not None:
        yield work
    if sums.spread is not None:
        drivers = presentation.drivers_table(sums)
        if drivers is not None:
            yield drivers
        yield presentation.classes_table(sums.estimate_class)


def _gaps(sums: Sums, prices: Row) -> Iterator[Gap]:
    """Yield what the sums lack: a currency, a date of the prices, what has no price."""
    # A number without a currency is no price, so this comes before its date.
    if not prices.text("currency"):
        yield Gap("Currency", "Amounts name none; give it with the date and place of the prices.")
    elif not prices["priced_on"]:
        why = "An amount without a date cannot be brought to another year."
        yield Gap("Date of the prices", why)
    if sums.open:
        # Enough to find the place; the whole list is in the table.
        named = list(sums.open[:NAMED_OPEN])
        if len(sums.open) > NAMED_OPEN:
            named.append("and more")
        yield Gap(
            f"{counted(len(sums.open), 'thing')} without a price",
            f"In no sum, so that all of it is so much at least: {'; '.join(named)}.",
        )


def _warnings(sums: Sums, currency: str) -> Iterator[Cell]:
    """Yield a budget that does not last, what is priced twice, a sum that is seldom kept."""
    if sums.budget is not None and sums.total.p80 > sums.budget:
        yield sentence(
            "What is priced passes the budget by {over} in the case to plan with.",
            over=Money.exact(sums.total.p80 - sums.budget, currency),
        )
    for twice in sums.priced_twice:
        yield _priced_twice(twice, currency)
    if sums.spread is not None and sums.spread.within < SELDOM:
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
