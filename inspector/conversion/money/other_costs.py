"""The costs beside the work, from their rows: in money, or as a share of the work."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.money.cost_line import CostLine, from_tenths
from inspector.conversion.money.estimate_class import CLASSES
from inspector.conversion.money.particulars import (
    GROWTH,
    IDLE_MONTH,
    ONCE,
    SHARE,
    TENTHS,
    YARD_MONTH,
)
from inspector.values.text import capital


@dataclass(frozen=True)
class OtherCost:
    """One row of the costs beside the work.

    Parameters
    ----------
    kind, name : str
    line : CostLine or None
        [currency], or a share of the work [-]; None where it is not priced.
    is_share : bool
    why : str
        Why it is not priced, "" where it is.
    """

    kind: str
    name: str
    line: CostLine | None
    is_share: bool = False
    why: str = ""


@dataclass(frozen=True)
class Pricing:
    """How typed amounts are read.

    Parameters
    ----------
    ends : str
        What low and high are: EXTREMES or TENTHS.
    estimate_class : int
        Its widest range stands in for an end that nobody typed.
    """

    ends: str
    estimate_class: int

    def line(self, name: str, low: float | None, likely: float, high: float | None) -> CostLine:
        """Return typed amounts as a triangle.

        Parameters
        ----------
        name : str
        low, high : float or None
            Ends as typed [currency].
        likely : float
            [currency]

        Returns
        -------
        CostLine

        Raises
        ------
        BadCostLine
            The amounts do not rise.

        References
        ----------
        Model of our own; the range of the class by AACE 18R-97 (*from memory*).
        """
        claims = CLASSES[self.estimate_class]
        if low is None:
            low = likely * (1 + claims.below[0] / 100)
        if high is None:
            high = likely * (1 + claims.above[1] / 100)
        make = from_tenths if self.ends == TENTHS else CostLine
        return make(name, low, likely, high)


@dataclass(frozen=True)
class Months:
    """How often a monthly cost is paid.

    Parameters
    ----------
    yard : Span or None
        In the yard [months].
    idle : float or None
        Laid up before [months].
    """

    yard: Span | None
    idle: float | None


def other_costs(
    rows: Sequence[Row], pricing: Pricing, months: Months, faults: list[str]
) -> tuple[OtherCost, ...]:
    """Return the costs beside the work.

    Parameters
    ----------
    rows : sequence of Row
        Of the table COSTS.
    pricing : Pricing
    months : Months
    faults : list of str
        Takes a sentence for each row whose amounts cannot be used.

    Returns
    -------
    tuple of OtherCost

    References
    ----------
    Model of our own.
    """
    return tuple(_read(rows, pricing, months, faults))


def _read(
    rows: Sequence[Row], pricing: Pricing, months: Months, faults: list[str]
) -> Iterator[OtherCost]:
    for row in rows:
        kind = row.text("kind")
        name = row.text("name") or kind
        likely = row.number("likely")
        if likely is None:
            yield OtherCost(kind, name, None, why="its likely amount is not typed")
            continue
        try:
            line = pricing.line(capital(name), row.number("low"), likely, row.number("high"))
        except ConversionError as problem:
            faults.append(str(problem))
            yield OtherCost(kind, name, None, why="its amounts do not rise")
            continue
        # Growth is spoken of in percent; whatever else names no measure is a sum.
        per = row.text("per") or (SHARE if kind == GROWTH else ONCE)
        yield _measured(kind, line, per, months)


def _measured(kind: str, line: CostLine, per: str, months: Months) -> OtherCost:
    """Return a cost by what it is paid for."""
    if per == SHARE:
        return OtherCost(kind, line.name, _times(line, Span.exact(0.01)), is_share=True)
    # What costs nothing in a month costs nothing in any number of them.
    if per == ONCE or line.high == 0:
        return OtherCost(kind, line.name, line)
    idle = None if months.idle is None else Span.exact(months.idle)
    count, why = {
        YARD_MONTH: (months.yard, "how long the work takes is not typed beside its lines"),
        IDLE_MONTH: (idle, "the months laid up are not typed"),
    }[per]
    if count is None:
        return OtherCost(kind, line.name, None, why=why)
    return OtherCost(kind, line.name, _times(line, count))


def _times(line: CostLine, factor: Span) -> CostLine:
    """Return a line times a number of months, or as a share."""
    likely = line.likely * factor.middle
    low, high = line.low * factor.low, line.high * factor.high
    return CostLine(line.name, min(low, likely), likely, max(high, likely))
