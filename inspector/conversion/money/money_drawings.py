"""The drawings of the chapter on money: from the asking price to the budget, and what spreads."""

from collections.abc import Iterator

from inspector.conversion.core.drawing import Bar, Bars
from inspector.conversion.money.calculation import Sums
from inspector.conversion.money.presentation import MOST_DRIVERS
from inspector.conversion.money.total_spread import class_range
from inspector.values.quantity import Cell, Money, joined, sentence


def drawings(sums: Sums, currency: str) -> Iterator[Bars]:
    """Yield the drawings that have anything to show.

    Parameters
    ----------
    sums : Sums
        With anything priced.
    currency : str

    Yields
    ------
    Bars
        In the currency.
    """
    yield waterfall(sums, currency)
    if sums.spread is not None:
        yield work_spread(sums, currency)


def waterfall(sums: Sums, currency: str) -> Bars:
    """Return the heads on top of each other, from the asking price to the sum to plan with.

    Parameters
    ----------
    sums : Sums
        With anything priced.
    currency : str

    Returns
    -------
    Bars
        Each bar begins where the one above it ends; the last is the whole.
    """
    bars, reached = [], 0.0
    steps = [(head.name, head.likely) for head in sums.heads if head.likely]
    total = sums.total
    for name, amount in (*steps, ("contingency to four in five", total.p80 - sums.likely)):
        ends = sorted((reached, reached + amount))
        bars.append(Bar(name, ends[0], None, ends[1], sums.budget))
        reached += amount
    bars.append(Bar("all of it, P10 to P90", total.p10, total.p50, total.p90, sums.budget))
    limit = "" if sums.budget is None else "budget of the brief"
    return Bars(
        "From the asking price to the whole", currency, tuple(bars), _told(sums, currency), limit
    )


def _told(sums: Sums, currency: str) -> Cell:
    """Return the heads in words, for a reader to whom the drawing says nothing."""
    parts: list[Cell] = [
        sentence("{name} {amount}", name=head.name, amount=Money.exact(head.likely, currency))
        for head in sums.heads
        if head.likely
    ]
    whole = sentence(
        "{at_least}{p80} in four cases of five",
        at_least="at least " if sums.open else "",
        p80=Money.exact(sums.total.p80, currency),
    )
    found = sentence("{parts}: {whole}", parts=joined(parts, ", "), whole=whole)
    if sums.budget is None:
        return joined((found, "."), "")
    budget = Money.exact(sums.budget, currency)
    return sentence("{found}; the budget is {budget}.", found=found, budget=budget)


def work_spread(sums: Sums, currency: str) -> Bars:
    """Return the spread of the work in one bar, with the lines that are spread most.

    Parameters
    ----------
    sums : Sums
        With a priced work line.
    currency : str

    Returns
    -------
    Bars
        In the currency.
    """
    lines, work = sums.spread, sums.everything.work
    # By the width, since that is where a quotation would help most.
    widest = sorted(sums.priced, key=lambda line: line.low - line.high)[:MOST_DRIVERS]
    bars = (
        Bar("the work by its class, P10 to P90", work.p10, work.p50, work.p90, work.p80),
        # Without its system: the work itself tells more in the room there is.
        *(
            Bar(line.name.partition(": ")[2] or line.name, line.low, line.likely, line.high)
            for line in widest
        ),
    )
    claimed = class_range(lines.p50, sums.estimate_class)
    described = sentence(
        "The lines alone reach from {p10} to {p90}, class {number} from {low} to {high}; the wider "
        "counts on each side, half of the cases are below {p50} and four in five below {p80}.",
        p10=Money.exact(lines.p10, currency),
        p90=Money.exact(lines.p90, currency),
        number=sums.estimate_class,
        low=Money.exact(claimed.low, currency),
        high=Money.exact(claimed.high, currency),
        p50=Money.exact(work.p50, currency),
        p80=Money.exact(work.p80, currency),
    )
    return Bars("Spread of the work", currency, bars, described, "four cases in five (P80)")
