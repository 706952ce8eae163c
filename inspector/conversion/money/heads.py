"""The heads of the total: asking price, work, the costs beside it, and the rise of prices."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inspector.conversion.core.particulars import Row
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.other_costs import OtherCost
from inspector.conversion.money.particulars import KINDS
from inspector.conversion.money.yard_time import YardTime
from inspector.values.quantity import Cell, Quantity, sentence
from inspector.values.text import capital, counted

DAYS_IN_A_YEAR = 365.25
ASKING, WORK, RISE = "asking price", "work lines", "rise of prices"


@dataclass(frozen=True)
class Head:
    """One head of the total.

    Parameters
    ----------
    name : str
    likely : float or None
        The sum of its likely amounts [currency]; None where it is not priced.
    how : Cell
        What it is made of.
    why : str
        Why it is not priced, "" where it is.
    """

    name: str
    likely: float | None
    how: Cell = ""
    why: str = ""


@dataclass(frozen=True)
class PriceRise:
    """What prices rise by until the middle of the work.

    Parameters
    ----------
    factor : float or None
        [-]; None where it is not known.
    how : Cell
    why : str
        Why it is not known.
    """

    factor: float | None
    how: Cell = ""
    why: str = ""


def price_rise(prices: Row, time: YardTime) -> PriceRise:
    """Return the factor from the date of the prices to the middle of the work.

    Parameters
    ----------
    prices : Row
        The row of PRICES.
    time : YardTime

    Returns
    -------
    PriceRise

    References
    ----------
    C1 = C0 (1 + g)^t, as in any textbook of engineering economics; all lines of the work and beside
    it are of the same date.

    Examples
    --------
    >>> from datetime import date
    >>> row = Row("one", {"rise": 4.0, "priced_on": date(2030, 1, 1), "begins": date(2031, 7, 2)})
    >>> round(price_rise(row, YardTime(None, ())).factor, 3)
    1.061
    """
    rise, priced_on, begins = prices.number("rise"), prices["priced_on"], prices["begins"]
    if rise is None:
        return PriceRise(None, why="by how much in a year is not typed")
    if rise == 0:
        return PriceRise(1.0, "none, as typed")
    if priced_on is None or begins is None:
        return PriceRise(None, why="the date of the prices or the begin of the work is not typed")
    weeks = 0.0 if time.weeks is None else time.weeks.middle
    years = (begins - priced_on).days / DAYS_IN_A_YEAR + weeks * 7 / DAYS_IN_A_YEAR / 2
    how = sentence(
        "{rise} in a year over {years} from {priced_on} to the middle of the work",
        rise=Quantity.exact(rise, "%", 1),
        years=Quantity.exact(years, "years", 1),
        priced_on=priced_on,
    )
    return PriceRise((1 + rise / 100) ** years, how)


def heads_of(
    asking: float | None,
    work: Sequence[CostLine],
    others: Sequence[OtherCost],
    rise: PriceRise,
) -> tuple[Head, ...]:
    """Return the heads of the total with their likely amounts.

    Parameters
    ----------
    asking : float or None
        Asking price [currency].
    work : sequence of CostLine
    others : sequence of OtherCost
    rise : PriceRise

    Returns
    -------
    tuple of Head
        Asking price first and the rise of prices last; kinds without a row are not among them.

    References
    ----------
    Model of our own.
    """
    base = sum(line.likely for line in work)
    beside = tuple(_beside(base, others))
    rising = base + sum(head.likely or 0.0 for head in beside)
    found = [Head(ASKING, asking, "as typed", "" if asking is not None else "not typed")]
    if work:
        found.append(Head(WORK, base, counted(len(work), "priced line")))
    last = Head(RISE, None, why=rise.why)
    if rise.factor is not None:
        last = Head(RISE, (rise.factor - 1) * rising, rise.how)
    return (*found, *beside, last)


def _beside(base: float, others: Sequence[OtherCost]) -> Iterator[Head]:
    """Yield a head for each kind of which anything is priced."""
    for kind in KINDS:
        priced = [other for other in others if other.kind == kind and other.line is not None]
        if not priced:
            continue
        likely = sum(other.line.likely * (base if other.is_share else 1.0) for other in priced)
        names = [other.name for other in priced if other.name != capital(kind)]
        yield Head(kind, likely, "; ".join(names))
