"""The sums of one inspection: priced work with its spread, sales, and parts priced in two ways."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.assess.registers import WorkLine
from inspector.assess.work_cost import PricedTwice, parts_priced_twice
from inspector.conversion.core.case import Case
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.cost_spread import CORRELATION, Spread, spread
from inspector.conversion.money.estimate_class import class_of_visit
from inspector.conversion.money.particulars import PRICES, SALES


@dataclass(frozen=True)
class Sums:
    """All sums of one inspection, in one currency.

    Parameters
    ----------
    priced : tuple of CostLine
    spread : Spread or None
        Of the priced lines; None where there are none.
    sales : Span or None
        What removed things may bring in [currency]; None where nothing is for sale.
    unpriced : tuple of WorkLine
    estimate_class : int
    faults : tuple of str
        Lines whose costs cannot be used, one sentence each.
    priced_twice : tuple of PricedTwice
    """

    priced: tuple[CostLine, ...]
    spread: Spread | None
    sales: Span | None
    unpriced: tuple[WorkLine, ...]
    estimate_class: int
    faults: tuple[str, ...] = ()
    priced_twice: tuple[PricedTwice, ...] = ()

    @property
    def left_out(self) -> frozenset[str]:
        """The ids of the lines that are in no sum because their part is priced the other way."""
        return frozenset(line.id for part in self.priced_twice for line in part.left_out)

    @property
    def cost(self) -> Span | None:
        """P10, P50 and P90 of the priced work [currency]."""
        if self.spread is None:
            return None
        return Span(self.spread.p10, self.spread.p50, self.spread.p90)


def sums_of(case: Case) -> Sums:
    """Return the sums of one inspection; costs that cannot be used become faults.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Sums

    References
    ----------
    Model of our own; the spread as in ``cost_spread``, the class by AACE 18R-97.
    """
    prices = case.one(PRICES)
    twice = tuple(part for system in case.assessment.systems for part in parts_priced_twice(system))
    # Replacing and refurbishing one part are two ways to one end; a sum of both pays twice.
    left_out = {line.id for part in twice for line in part.left_out}
    counted = [
        (system.system.name, line)
        for system in case.assessment.systems
        for line in system.lines
        if line.id not in left_out
    ]
    faults: list[str] = []
    priced = [
        (f"{system}: {line.text or line.act}", line.low, line.likely, line.high)
        for system, line in counted
        if _is_priced(line)
    ]
    lines = _cost_lines(priced, faults)
    correlation = prices.number("correlation")
    correlation = CORRELATION if correlation is None else correlation
    return Sums(
        lines,
        spread(lines, correlation) if lines else None,
        _sales(case.rows(SALES), faults),
        tuple(line for _, line in counted if not _is_priced(line)),
        class_of_visit(prices.number("definition")),
        tuple(faults),
        twice,
    )


def _is_priced(line: WorkLine) -> bool:
    """Whether a work line has all three sums: low, likely and high."""
    # One or two of the sums make no triangle: such a line is named as not priced.
    return None not in (line.low, line.likely, line.high)


def _cost_lines(
    named: Sequence[tuple[str, float, float, float]], faults: list[str]
) -> tuple[CostLine, ...]:
    """The lines whose costs rise; the others become sentences."""
    made = []
    for name, low, likely, high in named:
        try:
            made.append(CostLine(name, low, likely, high))
        except ConversionError as problem:
            faults.append(str(problem))
    return tuple(made)


def _sales(rows: Sequence[Row], faults: list[str]) -> Span | None:
    """Return the sum of what may be sold, None where nothing is listed."""
    named = [
        (row.text("name"), *(row.number(end) or 0.0 for end in ("low", "likely", "high")))
        for row in rows
    ]
    lines = _cost_lines(named, faults)
    if not lines:
        return None
    # Ends are summed plainly: sales are few, and often to the same buyer.
    return sum((Span(line.low, line.likely, line.high) for line in lines), Span.exact(0))
