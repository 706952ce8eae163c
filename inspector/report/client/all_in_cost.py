"""What she costs until she reaches the brief: the price asked and the priced work, as one sum."""

from dataclasses import dataclass

from inspector.conversion.core.case import Case
from inspector.conversion.core.span import Span
from inspector.conversion.money.calculation import sums_of
from inspector.conversion.money.particulars import PRICES
from inspector.record.typed_values import typed_number


@dataclass(frozen=True)
class AllIn:
    """The whole cost beside the budget, in one currency.

    Parameters
    ----------
    asking : float or None
        The asking price [currency].
    work : Span or None
        P10, P50 and P90 of the priced work [currency].
    planned : float or None
        What the work stays below in four cases of five, P80 [currency].
    budget : float or None
        For vessel and work [currency].
    currency : str
    unpriced : int
        Work lines without a price, which are in no sum [-].
    """

    asking: float | None = None
    work: Span | None = None
    planned: float | None = None
    budget: float | None = None
    currency: str = ""
    unpriced: int = 0

    @property
    def total(self) -> Span | None:
        """Price and work together [currency]; None where either is not known."""
        if self.work is None or self.asking is None:
            return None
        return self.work + self.asking

    @property
    def total_planned(self) -> float | None:
        """Price and work together, stayed below in four cases of five [currency]."""
        if self.planned is None or self.asking is None:
            return None
        return self.planned + self.asking

    @property
    def left(self) -> float | None:
        """What of the budget is left with the likely total [currency]; minus where it lacks."""
        total = self.total
        if total is None or self.budget is None:
            return None
        return self.budget - total.middle


def all_in_cost(case: Case) -> AllIn:
    """Return the whole cost of one inspection.

    Parameters
    ----------
    case : Case

    Returns
    -------
    AllIn

    References
    ----------
    The same sums as the chapter on money and the comparison; model of our own.
    """
    sums, prices = sums_of(case), case.one(PRICES)
    return AllIn(
        prices.number("asking"),
        sums.cost,
        sums.spread.p80 if sums.spread else None,
        typed_number(case.assessment.brief.get("budget"), 0) or None,
        prices.text("currency"),
        len(sums.unpriced),
    )
