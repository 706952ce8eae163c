"""What the comparison shows, as figures and sentences: the same on the page and in the PDF."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.assess.model import Part
from inspector.conversion.comparison.calculation import Candidate
from inspector.conversion.comparison.ranking import LEAST_KNOWN, Place, Ranking, Swap
from inspector.conversion.comparison.scores import Ahead
from inspector.conversion.comparison.side_by_side import by_requirement
from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.drawing import Bar, Bars
from inspector.values.quantity import Cell, Money, Quantity, Sentence, joined, sentence
from inspector.values.text import counted

LIMITS = (
    "Scores run on fixed ends and depend on what was seen; candidates stand by what is assured of "
    "them. They order candidates for a discussion, they do not choose one."
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
    """Return what is assured of the score of a place.

    Parameters
    ----------
    place : Place

    Returns
    -------
    Quantity
        0 to 100 [-].
    """
    return Quantity.exact(place.total.low, "", 1)


def known(place: Place) -> Quantity:
    """Return how much is known of what is weighed.

    Parameters
    ----------
    place : Place

    Returns
    -------
    Quantity
        [%]
    """
    return _percent(place.known, 0)


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


def remarks(ranking: Ranking) -> list[Cell]:
    """Return how firm the order is: who leads whatever the weights, who is not separable or ranked.

    Parameters
    ----------
    ranking : Ranking

    Returns
    -------
    list of Cell
    """
    found: list[Cell] = []
    if ranking.dominant:
        leads = "is no worse in any aspect: it leads whatever the weights."
        found.append(f"{ranking.dominant} {leads}")
    for first, second in ranking.open_pairs:
        found.append(f"{first} and {second} are not separable with what was seen.")
    found += [
        sentence(
            "{name} is not rankable: {known} of what is weighed is known, and a place needs "
            "{least}.",
            name=place.name,
            known=known(place),
            least=_percent(LEAST_KNOWN, 0),
        )
        for place in ranking.places
        if place.rank is None
    ]
    return found


def ranking_bars(ranking: Ranking) -> Bars:
    """Return the scores of all candidates as overlapping spans on one axis.

    Parameters
    ----------
    ranking : Ranking

    Returns
    -------
    Bars
        [0 to 100]
    """
    bars = tuple(
        Bar(_label(place), place.total.low, place.total.point, place.total.high)
        for place in ranking.places
    )
    parts = [
        sentence(
            "{label} {low}, at most {high}",
            label=_label(place),
            low=Quantity.exact(place.total.low, "", 0),
            high=Quantity.exact(place.total.high, "", 0),
        )
        for place in ranking.places
    ]
    described = sentence("Assured of 100: {parts}.", parts=joined(parts, "; "))
    return Bars("What is assured, and how far it may reach", "of 100", bars, described)


def _label(place: Place) -> str:
    # A label is cut where it is long; the sentences below say why one has no place.
    return f"– {place.name}" if place.rank is None else f"{place.rank}. {place.name}"


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
        Row(row.label, tuple(map(_requirement, row.requirements)))
        for row in by_requirement(candidates)
    ]
    # An empty table would look as if every requirement were met.
    if not rows:
        rows = [Row(NOTHING_ASKED, (None,) * len(candidates))]
    renewals = tuple(_ahead(candidate.surveys.renewal) for candidate in candidates)
    dockings = tuple(_ahead(candidate.surveys.docking) for candidate in candidates)
    return [
        *rows,
        Row("All of the money", tuple(map(_cost, candidates))),
        Row("Years to class renewal", renewals),
        Row("Years to docking", dockings),
    ]


def _requirement(requirement: Requirement | None) -> Entry:
    """Return whether a requirement is met, with what is offered and what is lacking."""
    # Asked of every vessel: what nobody could calculate is not known of her.
    if requirement is None:
        return Entry(None)
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
    """Return all of the money with its span, and how many things have no price."""
    money = candidate.money
    if money.total is None:
        return Entry(None)
    likely: Cell = Money.exact(money.total.p50, candidate.currency)
    parts: list[Cell] = [Money(money.total.p10, None, money.total.p90, candidate.currency)]
    if money.open:
        likely = sentence("at least {likely}", likely=likely)
        parts.append(f"{counted(len(money.open), 'thing')} without a price")
    return Entry(likely, joined(parts, "; "))


def _ahead(survey: Ahead | None) -> Entry:
    """Return the years to a survey, with its last day."""
    if survey is None:
        return Entry(None)
    return Entry(Quantity.exact(survey.years, "", 1), sentence("by {day}", day=survey.closes))


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
