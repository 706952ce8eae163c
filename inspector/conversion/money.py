"""Money: the work lines summed with their spread, the class of the estimate, what drives it, and what removed things may bring in.

The tool has no prices of its own: every amount is the surveyor's, from his rate book or his pen, in one currency, with a date and a place.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inspector.assess.shapes import Part, SystemPart, WorkLine
from inspector.conversion.book import Case
from inspector.conversion.chapters import Bar, Bars, Chapter, Lines
from inspector.conversion.cost import CLASSES, CostLine, Spread, deviation, estimate_class, spread
from inspector.conversion.shapes import ConversionError, Default, Figure, Gap, Span
from inspector.conversion.tables import Column, Row, Table
from inspector.criteria.source import Source
from inspector.words import grouped

PRACTICE = Source("Correlation of the lines of one refit", "no publisher", "one common cause", "common practice")
AACE = Source("AACE International Recommended Practice 18R-97", "edition not read", "table of estimate classes", "memory")
CORRELATION = 0.3
LEAST_CLASS = 4      # a visit of some hours cannot claim better: our own judgement
MOST_DRIVERS = 8

PRICES = Table("prices", "Currency and prices", "What all amounts are in, and when and where they held.", (
    Column("currency", "Currency", kind="text", needed=True), Column("priced_on", "Date of the prices", kind="date"),
    Column("place", "Place of the yard", kind="text"), Column("asking", "Asking price of the vessel", high=1e12),
    Column("correlation", "Common cause of the lines, 0 to 1", low=0, high=1), Column("definition", "Share of the work that is defined", "%", low=0, high=100),
), single=True)
SALES = Table("sales", "Sale of what is removed", "What removed things may bring in, after taking them out.", (
    Column("name", "What", kind="text", needed=True), Column("low", "Low", needed=True, high=1e12), Column("likely", "Likely", needed=True, high=1e12),
    Column("high", "High", needed=True, high=1e12), Column("buyer", "Where it would be sold", kind="text"),
))
TABLES = (PRICES, SALES)


@dataclass(frozen=True)
class Money:
    """All sums of one inspection: the priced lines, their spread (None where there are none), the sales, and how many lines carry no price."""

    priced: tuple[CostLine, ...]
    spread: Spread | None
    sales: Span | None
    unpriced: tuple[WorkLine, ...]
    number: int                       # class of the estimate
    faults: tuple[str, ...] = ()
    two_ways: tuple["TwoWays", ...] = ()   # parts priced both ways


@dataclass(frozen=True)
class TwoWays:
    """A part that is priced to be refurbished and to be replaced: the act whose lines count, and the lines of the other act, which are in no sum."""

    part: Part
    counts: str
    aside: tuple[WorkLine, ...]

    @property
    def left_out(self) -> float:
        """What the lines of the other act come to, by their likely costs."""
        return sum(line.likely or 0.0 for line in self.aside)


def two_ways(system: SystemPart) -> Iterator[TwoWays]:
    """The parts of a system that are priced both ways, which is one work and not two: the verdict takes one, and where it takes neither the dearer counts."""
    for part in (system.whole, *system.units):
        lines = {act: tuple(line for line in system.lines if line.unit == part.id and line.act == act) for act in ("refurbish", "replace")}
        likely = {act: sum(line.likely or 0.0 for line in of_act) for act, of_act in lines.items()}
        if all(likely.values()):
            dearer = max(likely, key=lambda act: likely[act])
            counts = {"remove": "replace", "refurbish": "refurbish"}.get(part.verdict, dearer)
            yield TwoWays(part, counts, lines["refurbish" if counts == "replace" else "replace"])


def money(case: Case) -> Money:
    """The sums of one inspection; a line whose figures are no triangle is told and left out."""
    prices = case.one(PRICES)
    both = tuple(one for system in case.assessment.systems for one in two_ways(system))
    aside = {line.id for one in both for line in one.aside}
    lines = [(system.system.name, line) for system in case.assessment.systems for line in system.lines if line.id not in aside]
    priced, faults = [], []
    for name, line in lines:
        if None in (line.low, line.likely, line.high):
            continue
        try:
            priced.append(CostLine(f"{name}: {line.text or line.act}", line.low, line.likely, line.high))
        except ConversionError as problem:
            faults.append(str(problem))
    correlation = prices.number("correlation")
    found = spread(priced, CORRELATION if correlation is None else correlation) if priced else None
    definition = prices.number("definition")
    number = max(LEAST_CLASS, estimate_class(definition)) if definition is not None else 5
    unpriced = tuple(line for _, line in lines if None in (line.low, line.likely, line.high))
    return Money(tuple(priced), found, _sales(case.rows(SALES), faults), unpriced, number, tuple(faults), both)


def _sales(rows: Sequence[Row], faults: list[str]) -> Span | None:
    spans = []
    for row in rows:
        try:
            one = CostLine(row.text("name"), *(row.number(name) or 0.0 for name in ("low", "likely", "high")))
        except ConversionError as problem:
            faults.append(str(problem))
        else:
            spans.append(Span(one.low, one.likely, one.high))
    total = Span.exact(0)
    for one in spans:
        total = total + one
    return total if spans else None


def chapter(case: Case) -> Chapter:
    """The chapter on money."""
    sums, prices = money(case), case.one(PRICES)
    currency = prices.text("currency")
    gaps = tuple(_gaps(sums, prices))
    if sums.spread is None:
        return Chapter("money", "Money", "No work line carries a low, a likely and a high cost yet, so there is nothing to sum.", gaps=gaps,
                       faults=(*case.faults(*TABLES), *sums.faults), tables=("prices", "sales"))
    found = sums.spread
    low, high = CLASSES[sums.number][1][0], CLASSES[sums.number][2][1]
    answer = (f"The priced work comes to {_amount(found.p50, currency)} as likely as not, and to {_amount(found.p80, currency)} or less in four cases of five; "
              f"class {sums.number} estimate, which as such reaches from {low} % to +{high} %.")
    return Chapter(
        "money", "Money", answer, tuple(_figures(sums, prices, currency)), tuple(_lines(case, sums, currency)), tuple(_drawings(sums, currency)),
        warnings=tuple(_warnings(sums)), gaps=gaps, faults=(*case.faults(*TABLES), *sums.faults), tables=("prices", "sales"),
        verify="An estimate from a visit: only quotations by yards against a scope and drawings are prices.",
    )


def _gaps(sums: Money, prices: Row):
    if not prices.text("currency"):
        yield Gap("Currency", "Amounts name none; give it with the date and place of the prices.")
    elif not prices["priced_on"]:
        yield Gap("Date of the prices", "An amount without a date cannot be brought to another year.")
    if sums.unpriced:
        count = len(sums.unpriced)
        names = "; ".join((line.text or line.act)[:60] for line in sums.unpriced[:5]) + ("; and more" if count > 5 else "")
        yield Gap(f"{count} work {'line' if count == 1 else 'lines'} without a price", f"Not in any sum: {names}.")


def _figures(sums: Money, prices: Row, currency: str):
    found = sums.spread
    default = () if prices.number("correlation") is not None else (
        Default("common cause of the lines", CORRELATION, "", "Lines of one refit rise and fall together; none of it would understate the spread.", PRACTICE),)
    assumed = ("Each line is a triangle of low, likely and high.", "Low and high are taken as the ends of what can happen; people mostly name them too narrow.")
    yield Figure("Cost of the priced work", Span(found.p10, found.p50, found.p90), currency, "P10, P50 and P90 of the sum", assumed, default)
    yield Figure("Sum of the likely costs", Span.exact(found.base), currency, f"kept in {found.within * 100:.0f} % of cases")
    yield Figure("Cost to plan with (P80)", Span.exact(found.p80), currency, "not exceeded in four cases of five")
    yield Figure("Contingency on the likely sum", Span.exact(found.contingency), currency, "P80 less the sum of the likely costs")
    exact = deviation(sums.priced, found.correlation)
    yield Figure("Standard deviation", Span.exact(found.deviation), currency, f"closed form {_amount(exact, currency)} at the same correlation of the costs")
    if sums.sales is not None:
        yield Figure("Sale of what is removed", sums.sales, currency, "sum of lows, likelies and highs; not taken off the cost above")
        yield Figure("Cost less sales", Span(found.p10, found.p50, found.p90) - sums.sales, currency, "widest ends")


def _lines(case: Case, sums: Money, currency: str):
    rows = sorted(((line.sequence, system.system.name, line) for system in case.assessment.systems for line in system.lines),
                  key=lambda row: (row[0] is None, row[0] or 0))
    aside = {line.id for one in sums.two_ways for line in one.aside}
    shown = tuple((str(order or "–"), name, f"{line.act}: {line.text}{' (in no sum)' if line.id in aside else ''}",
                   *(_bare(value) for value in (line.low, line.likely, line.high)), line.rate or "–") for order, name, line in rows)
    if shown:
        note = f"Amounts in {currency or 'one currency'}."
        yield Lines("Work in its sequence", ("order", "system", "what", "low", "likely", "high", "rate"), shown, (3, 4, 5), note)
    if sums.spread.drivers:
        drivers = tuple((name, f"{value:.2f}") for name, value in sums.spread.drivers[:MOST_DRIVERS])
        yield Lines("What drives the spread", ("line", "rank correlation"), drivers, (1,),
                    "Spearman's rank correlation of each line with the sum: the first are the ones worth a quotation.")
    rows = tuple((str(number), f"{low}–{high} %", f"{a} to {b} %", f"+{c} to +{d} %", "this one" if number == sums.number else "")
                 for number, ((low, high), (a, b), (c, d)) in sorted(CLASSES.items(), reverse=True))
    yield Lines("Classes of estimate", ("class", "defined", "low side", "high side", ""), rows, (), f"{AACE}; made for process plants, by analogy only.")


def _drawings(sums: Money, currency: str):
    found = sums.spread
    bars = [Bar("all priced work", found.p10, found.p50, found.p90, found.base)]
    largest = sorted(sums.priced, key=lambda line: -(line.high - line.low))[:MOST_DRIVERS]
    bars += [Bar(line.name[:34], line.low, line.likely, line.high) for line in largest]
    told = f"All priced work from {_amount(found.p10, currency)} to {_amount(found.p90, currency)}, half of the cases below {_amount(found.p50, currency)}."
    yield Bars("Spread of the cost", currency, tuple(bars), told, "sum of the likely costs")


def _warnings(sums: Money):
    for one in sums.two_ways:
        why = f"by its verdict ({one.part.verdict})" if one.part.verdict in ("remove", "refurbish") else f"as its verdict is {one.part.verdict}, the dearer,"
        counts, other = ("replacing", "refurbishing") if one.counts == "replace" else ("refurbishing", "replacing")
        yield (f"{one.part.name} is priced both ways: {why} {counts} counts, and {other} at {_bare(one.left_out)} is in no sum. "
               "If both are to be done, enter both as one act.")
    if sums.spread.within < 0.3:
        yield f"The sum of the likely costs is kept in only {sums.spread.within * 100:.0f} % of cases: it is not the price to plan with."


def rounded(value: float) -> float:
    """An estimated sum as far as it may claim: whole hundreds below 100 000, whole thousands above; below 1000 whole units.

    Examples
    --------
    >>> rounded(1234567.8), rounded(23456.7), rounded(123.4)
    (1235000.0, 23500.0, 123.0)
    """
    return round(value, 0 if abs(value) < 1000 else -2 if abs(value) < 100_000 else -3)


def _amount(value: float, currency: str) -> str:
    return f"{grouped(rounded(value))} {currency}".strip()


def _bare(value: float | None) -> str:
    return "–" if value is None else grouped(value)
