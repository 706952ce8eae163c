"""What she costs until she reaches the brief, as the first pages show it.

The sums are those of the chapter on money and of the comparison: one function makes them all.
"""

from dataclasses import dataclass

from inspector.conversion.core.case import Case
from inspector.conversion.core.span import Span
from inspector.conversion.money.calculation import sums_of
from inspector.conversion.money.particulars import PRICES


@dataclass(frozen=True)
class AllIn:
    """The whole cost beside the budget, in one currency.

    Parameters
    ----------
    total : Span or None
        P10, P50 and P90 of price, work and the costs beside it [currency]; None where nothing is
        priced.
    planned : float or None
        What the total stays below in four cases of five, P80 [currency].
    budget : float or None
        For vessel and work [currency].
    currency : str
    heads : tuple of (str, float or None)
        What the total is made of with its likely amount [currency]; None where it is not priced.
    open : tuple of str
        What is not priced, by name: where there is any, the total is so much at least.
    """

    total: Span | None = None
    planned: float | None = None
    budget: float | None = None
    currency: str = ""
    heads: tuple[tuple[str, float | None], ...] = ()
    open: tuple[str, ...] = ()

    @property
    def left(self) -> float | None:
        """What is left of the budget with the total to plan with [currency]; minus: lacking."""
        if self.planned is None or self.budget is None:
            return None
        return self.budget - self.planned


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
    ``conversion.money.calculation.sums_of``.
    """
    sums = sums_of(case)
    total = sums.total
    return AllIn(
        total.span if total else None,
        total.p80 if total else None,
        sums.budget or None,
        case.one(PRICES).text("currency"),
        tuple((head.name, head.likely) for head in sums.heads),
        sums.open,
    )
