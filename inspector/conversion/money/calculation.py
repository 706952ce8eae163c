"""All of the money of one inspection: what every page, report and table says that it costs.

What is not priced is never nothing: it is named, and keeps the total open.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inspector.assess.model import SystemPart
from inspector.assess.registers import WorkLine
from inspector.assess.work_cost import PricedTwice, parts_priced_twice
from inspector.conversion.core.case import Case
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.core.things import read_things, unpriced_things
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.cost_spread import CORRELATION, Spread
from inspector.conversion.money.estimate_class import class_of_visit
from inspector.conversion.money.heads import Head, heads_of, price_rise
from inspector.conversion.money.other_costs import Months, OtherCost, Pricing, other_costs
from inspector.conversion.money.particulars import (
    COSTS,
    EXTREMES,
    KINDS,
    PRICES,
    SALES,
    UNSEEN,
)
from inspector.conversion.money.total_spread import AllOfIt, Tenths, Terms, all_of_it
from inspector.conversion.money.yard_time import YardTime, yard_time
from inspector.record.typed_values import typed_number
from inspector.values.text import counted
from inspector.values.vocabulary import FIRM


@dataclass(frozen=True)
class Sums:
    """All sums of one inspection, in one currency.

    Parameters
    ----------
    priced : tuple of CostLine
        The work lines that count and are priced.
    everything : AllOfIt or None
        How work and total spread; None where nothing at all is priced.
    heads : tuple of Head
        What the total is made of, priced or not, in the order of a balance.
    open : tuple of str
        What is not priced, by name: where there is any, the total is so much at least.
    budget : float or None
        Of the brief, for vessel and work [currency].
    sales : Span or None
        What removed things may bring in [currency]; None where nothing is for sale.
    unpriced : tuple of WorkLine
    estimate_class : int
    time : YardTime
    faults : tuple of str
        Lines whose costs cannot be used, one sentence each.
    priced_twice : tuple of PricedTwice
    completed : int
        Lines of which an end was not typed [-].
    """

    priced: tuple[CostLine, ...]
    everything: AllOfIt | None
    heads: tuple[Head, ...] = ()
    open: tuple[str, ...] = ()
    budget: float | None = None
    sales: Span | None = None
    unpriced: tuple[WorkLine, ...] = ()
    estimate_class: int = 5
    time: YardTime = YardTime(None, ())
    faults: tuple[str, ...] = ()
    priced_twice: tuple[PricedTwice, ...] = ()
    completed: int = 0

    @property
    def left_out(self) -> frozenset[str]:
        """The ids of the lines that are in no sum because their part is priced the other way."""
        return frozenset(line.id for part in self.priced_twice for line in part.left_out)

    @property
    def spread(self) -> Spread | None:
        """The work lines as priced; None where none is."""
        return None if self.everything is None else self.everything.lines

    @property
    def cost(self) -> Span | None:
        """P10, P50 and P90 of the work lines as priced [currency]."""
        if self.spread is None:
            return None
        return Span(self.spread.p10, self.spread.p50, self.spread.p90)

    @property
    def total(self) -> Tenths | None:
        """Everything that is priced [currency]; None where nothing is."""
        return None if self.everything is None else self.everything.total

    @property
    def likely(self) -> float:
        """The likely amounts of all heads that are priced [currency]."""
        return sum(head.likely or 0.0 for head in self.heads)


def sums_of(case: Case) -> Sums:
    """Return all of the money of one inspection; costs that cannot be used become faults.

    Whoever shows a total takes it from here.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Sums

    References
    ----------
    Model of our own; the spread as in ``total_spread``, the class by AACE 18R-97.
    """
    prices, systems = case.one(PRICES), case.assessment.systems
    twice = tuple(part for system in systems for part in parts_priced_twice(system))
    # Replacing and refurbishing one part are two ways to one end; a sum of both pays twice.
    left_out = {line.id for part in twice for line in part.left_out}
    counted_lines = [
        (system.system.name, line)
        for system in systems
        for line in system.lines
        if line.id not in left_out
    ]
    faults: list[str] = []
    pricing = Pricing(prices.text("ends") or EXTREMES, class_of_visit(prices.number("definition")))
    work = tuple(_work(counted_lines, pricing, faults))
    time = yard_time(line for _, line in counted_lines)
    months = Months(time.months, prices.number("laid_up"))
    others = other_costs(case.rows(COSTS), pricing, months, faults)
    rise = price_rise(prices, time)
    heads = heads_of(prices.number("asking"), work, others, rise)
    budget = typed_number(case.assessment.brief.get("budget"), 0)
    unpriced = tuple(line for _, line in counted_lines if not line.is_priced)
    return Sums(
        work,
        _all_of_it(prices, work, others, pricing, rise.factor, budget),
        heads,
        (
            *_open(systems, counted_lines, unpriced, heads, others, prices),
            *_things_without_a_line(case, counted_lines, others),
        ),
        budget,
        _sales(case.rows(SALES), faults),
        unpriced,
        pricing.estimate_class,
        time,
        tuple(faults),
        twice,
        sum(line.is_priced and None in (line.low, line.high) for _, line in counted_lines),
    )


def _all_of_it(
    prices: Row,
    work: tuple[CostLine, ...],
    others: Sequence[OtherCost],
    pricing: Pricing,
    factor: float | None,
    budget: float | None,
) -> AllOfIt | None:
    """Return the spread of everything that is priced, None where nothing is."""
    asking, correlation = prices.number("asking"), prices.number("correlation")
    priced = [other for other in others if other.line is not None]
    if not work and not priced and asking is None:
        return None
    return all_of_it(
        work,
        tuple(other.line for other in priced if other.is_share),
        tuple(other.line for other in priced if not other.is_share),
        Terms(
            CORRELATION if correlation is None else correlation,
            pricing.estimate_class,
            asking or 0.0,
            1.0 if factor is None else factor,
            budget,
        ),
    )


def _work(
    lines: Sequence[tuple[str, WorkLine]], pricing: Pricing, faults: list[str]
) -> Iterator[CostLine]:
    """Yield the work lines that are priced; amounts that do not rise become sentences."""
    for system, line in lines:
        if line.likely is None:
            continue
        name = f"{system}: {line.text or line.act}"
        try:
            yield pricing.line(name, line.low, line.likely, line.high)
        except ConversionError as problem:
            faults.append(str(problem))


def _open(
    systems: Sequence[SystemPart],
    lines: Sequence[tuple[str, WorkLine]],
    unpriced: Sequence[WorkLine],
    heads: Sequence[Head],
    others: Sequence[OtherCost],
    prices: Row,
) -> Iterator[str]:
    """Yield what has no price, by name."""
    if systems and not lines:
        yield "the work (no line is recorded)"
    yield from (line.text or line.act for line in unpriced)
    offered = sum(len(system.offered) for system in systems)
    if offered:
        lines_text = counted(offered, "line that follows", "lines that follow")
        yield f"{lines_text} from what was found and {'is' if offered == 1 else 'are'} not recorded"
    yield from (f"{head.name} ({head.why})" for head in heads if head.likely is None)
    yield from (f"{other.name} ({other.why})" for other in others if other.line is None)
    typed = {other.kind for other in others}
    # The last kind is for what no other names, so nobody misses it.
    for kind in KINDS[:-1]:
        if kind not in typed and not _needless(kind, systems, prices):
            yield kind
    if not systems:
        yield "the work (no unit is on board)"


def _things_without_a_line(
    case: Case, lines: Sequence[tuple[str, WorkLine]], others: Sequence[OtherCost]
) -> tuple[str, ...]:
    """Return what goes on the vessel and is in no line and no cost, by name."""
    names = [line.text for _, line in lines] + [other.name for other in others]
    found = unpriced_things(read_things(case), names)
    return tuple(f"{name} (goes on, and is in no work line)" for name in found)


def _needless(kind: str, systems: Sequence[SystemPart], prices: Row) -> bool:
    """Whether a kind of cost cannot arise."""
    if kind == "lay-up":
        return prices.number("laid_up") == 0
    # Where every word is firm, no look is left that could find more work.
    return kind == UNSEEN and all(
        unit.firmness == FIRM for system in systems for unit in system.units
    )


def _sales(rows: Sequence[Row], faults: list[str]) -> Span | None:
    """Return the sum of what may be sold, None where nothing is listed."""
    lines = []
    for row in rows:
        ends = (row.number(end) or 0.0 for end in ("low", "likely", "high"))
        try:
            lines.append(CostLine(row.text("name"), *ends))
        except ConversionError as problem:
            faults.append(str(problem))
    if not lines:
        return None
    # Ends are summed plainly: sales are few, and often to the same buyer.
    return sum((Span(line.low, line.likely, line.high) for line in lines), Span.exact(0))
