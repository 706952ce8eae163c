"""What the comparison shows, as figures and sentences: the same on the page and in the PDF."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.assess.model import Part
from inspector.conversion.comparison.calculation import Candidate
from inspector.conversion.comparison.ranking import Place, Ranking, Swap
from inspector.conversion.comparison.side_by_side import by_requirement
from inspector.conversion.core.chapter import Requirement
from inspector.values.quantity import Cell, Money, Quantity, Sentence, joined, sentence
from inspector.values.text import counted

LIMITS = (
    "Scores run on fixed ends and depend on what was seen; they order candidates for a discussion, "
    "they do not choose one."
)
NOTHING_ASKED = "The brief asks for nothing that is calculated yet."
MET = {True: "met", False: "not met", None: None}
# More swaps than these say nothing that the first do not.
MOST_SWAPS = 6


@dataclass(frozen=True)
class Entry:
    """What one candidate has in one row.

    Parameters
    ----------
    main : Cell
        The word or figure that is read first; None where it is not known.
    detail : Cell
        What is behind it, "" for nothing.
    """

    main: Cell
    detail: Cell = ""


@dataclass(frozen=True)
class Row:
    """One row of the comparison; an entry is None where the candidate does not answer it."""

    label: str
    entries: tuple[Entry | None, ...]


def score(place: Place) -> Quantity:
    """Return the score of a place.

    Parameters
    ----------
    place : Place

    Returns
    -------
    Quantity
        0 to 100 [-].
    """
    return Quantity.exact(place.total.middle, "", 1)


def reach(place: Place) -> Quantity:
    """Return the span that what is not known leaves to a score.

    Parameters
    ----------
    place : Place

    Returns
    -------
    Quantity
        0 to 100 [-].
    """
    # No decimals: the span is wide, and a tenth of a point of it means nothing.
    return Quantity(place.total.low, None, place.total.high, "", 0)


def weights_sentence(ranking: Ranking) -> Sentence:
    """Return the weights of a ranking in percent.

    Parameters
    ----------
    ranking : Ranking

    Returns
    -------
    Sentence
    """
    parts = [
        sentence("{aspect} {share}", aspect=aspect, share=_percent(share, 0))
        for aspect, share in ranking.weights.items()
    ]
    return sentence("Weights: {parts}.", parts=joined(parts, "; "))


def remarks(ranking: Ranking) -> list[str]:
    """Return how firm the order is: who leads whatever the weights, and who is not separable.

    Parameters
    ----------
    ranking : Ranking

    Returns
    -------
    list of str
    """
    found = []
    if ranking.dominant:
        leads = "is no worse in any aspect: it leads whatever the weights."
        found.append(f"{ranking.dominant} {leads}")
    for first, second in ranking.open_pairs:
        found.append(f"{first} and {second} are not separable with what was seen.")
    return found


def swap_sentences(ranking: Ranking) -> list[Sentence]:
    """Return at which weights neighbours change places, the nearest first.

    Parameters
    ----------
    ranking : Ranking

    Returns
    -------
    list of Sentence
        At most MOST_SWAPS.
    """
    return [_swap_sentence(swap) for swap in ranking.swaps[:MOST_SWAPS]]


def _swap_sentence(swap: Swap) -> Sentence:
    """Return at which weight of an aspect two candidates change places."""
    return sentence(
        "{first} and {second} change places when {aspect} weighs {weight} (now {now}).",
        first=swap.first,
        second=swap.second,
        aspect=swap.aspect,
        weight=_percent(swap.weight, 1),
        now=_percent(swap.now, 1),
    )


def _percent(share: float, digits: int) -> Quantity:
    return Quantity.exact(100 * share, "%", digits)


def brief_rows(candidates: Sequence[Candidate]) -> list[Row]:
    """Return the brief's requirements, the cost to reach it and the next survey of each candidate.

    Parameters
    ----------
    candidates : sequence of Candidate

    Returns
    -------
    list of Row
    """
    rows = [
        Row(row.label, tuple(_requirement(requirement) for requirement in row.requirements))
        for row in by_requirement(candidates)
    ]
    # An empty table would look as if every requirement were met.
    if not rows:
        rows = [Row(NOTHING_ASKED, (None,) * len(candidates))]
    costs = tuple(_cost(candidate) for candidate in candidates)
    surveys = tuple(_survey(candidate) for candidate in candidates)
    return [*rows, Row("Cost to reach the brief", costs), Row("Days to the next survey", surveys)]


def _requirement(requirement: Requirement | None) -> Entry | None:
    """Return whether a requirement is met, with what is offered and what is lacking."""
    if requirement is None:
        return None
    word = MET[requirement.met]
    if requirement.offered is None:
        return Entry(word)
    offered = requirement.offered
    # Without a point the careful end is shown.
    best = offered.low if offered.point is None else offered.point
    unit = requirement.unit
    parts = [
        sentence(
            "{offered} of {asked} asked",
            offered=Quantity.exact(best, unit),
            asked=Quantity.exact(requirement.asked, unit),
        )
    ]
    if requirement.short_by:
        parts.append(sentence("short by {gap}", gap=Quantity.exact(requirement.short_by, unit)))
    return Entry(word, joined(parts, ", "))


def _cost(candidate: Candidate) -> Entry:
    """Return the likely cost with its span, and how many lines have no price."""
    if candidate.cost is None:
        return Entry(None)
    parts: list[Cell] = [Money(candidate.cost.low, None, candidate.cost.high, candidate.currency)]
    if candidate.unpriced:
        parts.append(f"{counted(candidate.unpriced, 'line')} without a price")
    likely = Money.exact(candidate.cost.middle, candidate.currency)
    return Entry(likely, joined(parts, "; "))


def _survey(candidate: Candidate) -> Entry:
    """Return the days to the next survey, with its name and last day."""
    survey = candidate.next_survey
    if survey is None:
        return Entry(None)
    detail = sentence("{name}, {closes}", name=survey.name, closes=survey.closes)
    return Entry(Quantity.exact(survey.days, "", 0), detail)


def unseen(part: Part) -> str:
    """Return how many checks of a part were not seen.

    Parameters
    ----------
    part : Part

    Returns
    -------
    str
    """
    condition = part.condition
    return f"{condition.applicable - condition.seen} of {condition.applicable} not seen"


def likely_work(part: Part, currency: str) -> Sentence | None:
    """Return what the work on a system likely costs, in words that fit its word.

    Parameters
    ----------
    part : Part
        A whole system.
    currency : str

    Returns
    -------
    Sentence or None
        None where nothing of it is priced.
    """
    if part.cost is None:
        return None
    cost = Money.exact(part.cost.likely, currency, as_typed=True)
    return sentence("{label} likely {cost}", label=part.cost.label, cost=cost)
