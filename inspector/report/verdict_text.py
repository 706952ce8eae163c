"""What the report says of a verdict in words: its reason, and the facts that it depends on."""

from inspector.assess.model import Part
from inspector.report.cell_runs import Run
from inspector.values.cell_text import figure, money_text
from inspector.values.formatting import show
from inspector.values.quantity import Money
from inspector.values.units import convert

NEED_WORDS = {
    "": "the brief does not say",
    "required": "required by the brief",
    "useful": "useful to the brief",
    "neutral": "the brief asks neither way",
    "unwanted": "not wanted by the brief",
}


def verdict_reason(part: Part) -> str:
    """Return the reason of a verdict: the surveyor's where he decided, else the proposal's.

    Parameters
    ----------
    part : Part

    Returns
    -------
    str
    """
    if part.decision:
        return part.reason or "Decided by the surveyor without a reason given."
    return part.proposal.sentence or part.proposal.rule_text


def overruled_proposal(part: Part) -> list[Run]:
    """Return the proposed verdict, where the surveyor decided otherwise.

    Parameters
    ----------
    part : Part

    Returns
    -------
    list of Run
    """
    proposal = part.proposal
    if part.decision in ("", proposal.verdict):
        return []
    return [(f"proposed: {proposal.spoken}", "i")]


def fact_rows(part: Part, units: str, currency: str = "") -> list[tuple[str, str]]:
    """Return what a verdict depends on beside the condition.

    Parameters
    ----------
    part : Part
    units : str
        "si" or "us".
    currency : str
        Of the costs; "" where none was named.

    Returns
    -------
    list of (str, str)
        The name and the value of each fact that is known.
    """
    facts = part.facts
    rows = [
        ("need", NEED_WORDS[facts.need]),
        ("law against the thing", " ".join(facts.law)),
        ("remaining life", _years(facts.life_years)),
        ("the buyer's horizon", _years(facts.horizon)),
        ("parts", facts.parts),
        ("cost to refurbish", _cost(facts.refurbish_cost, currency)),
        ("cost to replace", _cost(facts.replace_cost, currency)),
        ("papers and services beside the word", _papers(part)),
        ("cost of papers and services", _cost(facts.services_cost, currency)),
        ("weight saved by removal", _weight(facts.weight_won, units)),
        ("space gained by removal", _space(facts.space_won, units)),
    ]
    return [(name, value) for name, value in rows if value]


def _papers(part: Part) -> str:
    """What is due of papers and services: with date and cost, and never what makes the word."""
    return " ".join(paper.sentence for paper in part.papers)


def _years(years: float | None) -> str:
    return "" if years is None else show(years, "years")


def _cost(cost: float | None, currency: str) -> str:
    return "" if cost is None else money_text(Money.exact(cost, currency, as_typed=True))


def _weight(weight: float | None, units: str) -> str:
    return "" if weight is None else figure(weight, "t", units)


def _space(space: float | None, units: str) -> str:
    """A space [m³]; a US reader counts gallons only of liquids."""
    if space is None:
        return ""
    # The general table of US units gives gallons, which fit tanks and not rooms.
    return show(convert(space, "m³", "ft³"), "ft³", 0) if units == "us" else show(space, "m³")
