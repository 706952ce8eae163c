"""The wording of the chapter on power: its answer, and the cautions that go with it."""

from inspector.conversion.core.figure import Figure
from inspector.conversion.core.span_sentences import likely_with_span
from inspector.conversion.power.calculation import PowerResults
from inspector.conversion.power.holding.holding_power import Outcome
from inspector.conversion.power.island_balance import worst_in
from inspector.conversion.power.load_balance import Balance
from inspector.conversion.power.power_figures import element_name, in_knots, shortfall_name
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.text import capital

VERIFY = (
    "A screen, not a capability plot and no failure analysis: verify before you rely on it. "
    "Station keeping near divers, structures or people in the water is proven by trials, by class "
    "and flag, and by the vessel's own failure analysis; loads by measurements of an electrician."
)
NOTHING_TYPED = (
    "Nothing is typed of the power plant yet, "
    "so neither power nor station keeping can be calculated."
)
TOO_LITTLE = (
    "Too little is typed to calculate the power with one set out or what a failure leaves; "
    "see what is missing."
)


def answer(results: PowerResults, spare: Figure) -> Cell:
    """Return the chapter in one or two sentences.

    Parameters
    ----------
    results : PowerResults
    spare : Figure
        Spare for new consumers [kW].

    Returns
    -------
    Cell
    """
    parts = []
    # One condition for the answer: that in which nobody can call for help from ashore.
    at_sea = worst_in(results.converted, "sea")
    if at_sea is not None:
        parts.append(_at_sea(at_sea))
    if spare.known:
        start = f"in {_tightest(spare)}, the spare for new loads is"
        start = start if parts else capital(start)
        parts.append(joined((start, likely_with_span(spare.span, "kW", 0))))
    if results.worst is not None:
        start = "the worst single failure is {element}, after which {remains}"
        parts.append(
            sentence(
                start if parts else capital(start),
                element=element_name(results.worst.element, results),
                remains=_remains(results.worst, results),
            )
        )
    return joined((joined(parts, "; "), "."), "") if parts else TOO_LITTLE


def _tightest(spare: Figure) -> str:
    """Return the condition and the buses that leave least to spare."""
    return spare.formula_text.rpartition(": ")[2]


def _at_sea(balance: Balance) -> Cell:
    """Return whether the sets that remain carry the demand at sea."""
    words = {
        True: "carry the demand at sea",
        False: "do not carry the demand at sea",
        None: "may or may not carry the demand at sea, as far as known",
    }
    where = f" of {balance.place}" if balance.place else ""
    if not balance.stopped:
        return f"No set in order feeds the demand at sea{where}"
    return sentence(
        "With {stopped} out, the rest of the sets{where} ({remaining}) {carried}{there}",
        stopped=balance.stopped,
        where=where,
        remaining=Quantity.exact(balance.remaining, "kW", 0),
        carried=words[balance.carried],
        there=" there" if where else "",
    )


def _remains(failure: Outcome, results: PowerResults) -> Cell:
    """Return what is left after a failure: the wind withstood, else the thrust."""
    # Without areas there is still the thrust that is left, which says more than nothing.
    if failure.least is None:
        return sentence(
            "{bow} at the bow and {stern} at the stern remain",
            bow=Quantity.exact(failure.bow, "kN", 0),
            stern=Quantity.exact(failure.stern, "kN", 0),
        )
    shortfall = shortfall_name(failure, results)
    # No wind at all is withstood, so what is lacking is worth more than "0 kn".
    if failure.least.high == 0:
        lacking = shortfall.removeprefix("no ")
        side = "on the beam" if failure.ahead is None else "from every side"
        return f"not even the current is withstood {side}, for want of {lacking}"
    return sentence(
        "{wind} of wind {side} is withstood{first}",
        wind=likely_with_span(in_knots(failure.least), "kn", 1),
        side="on the beam" if failure.ahead is None else "from every side",
        first=f": {shortfall} falls short first" if shortfall else "",
    )
