"""Candidates against one brief: what each offers, what it costs to reach the brief, their order."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from inspector.assess.model import Assessment
from inspector.conversion.comparison.ranking import Ranking, Scored, rank
from inspector.conversion.comparison.scores import WEIGHTS, NextSurvey, next_survey, scores
from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, Requirement
from inspector.conversion.core.span import Span
from inspector.conversion.money.calculation import Sums, sums_of
from inspector.conversion.money.particulars import PRICES
from inspector.values.text import counted


@dataclass(frozen=True)
class Candidate:
    """One inspection as the comparison needs it.

    Parameters
    ----------
    id, name : str
    assessment : Assessment
    requirements : tuple of Requirement
        The brief's requirements against what this vessel offers.
    cost : Span or None
        P10, P50 and P90 of all that is priced [currency]; None where no work is priced.
    currency : str
    unpriced : int
        Work lines without a price [-].
    next_survey : NextSurvey or None
    scores : mapping of str to Span
        Aspect -> score [0 to 100].
    gaps : tuple of str
        What is missing for the comparison.
    """

    id: str
    name: str
    assessment: Assessment
    requirements: tuple[Requirement, ...]
    cost: Span | None
    currency: str
    unpriced: int
    next_survey: NextSurvey | None
    scores: Mapping[str, Span]
    gaps: tuple[str, ...] = ()


@dataclass(frozen=True)
class Comparison:
    """All candidates in the order of their ranking, and what keeps it from being firm."""

    candidates: tuple[Candidate, ...]
    ranking: Ranking
    warnings: tuple[str, ...]


def candidate(case: Case, inspection_id: str, name: str, chapters: Sequence[Chapter]) -> Candidate:
    """Return one inspection made ready for comparison.

    Parameters
    ----------
    case : Case
    inspection_id, name : str
    chapters : sequence of Chapter
        Of the same case.

    Returns
    -------
    Candidate

    References
    ----------
    Model of our own.
    """
    # The same sums as the chapter on money shows, so that both say one price.
    sums, prices = sums_of(case), case.one(PRICES)
    asking = prices.number("asking")
    # Without any priced work the price alone would make the least known vessel the cheapest.
    cost = None if sums.spread is None else sums.total.span
    requirements = tuple(
        requirement for chapter in chapters for requirement in chapter.requirements
    )
    survey = next_survey(case)
    return Candidate(
        inspection_id,
        name,
        case.assessment,
        requirements,
        cost,
        prices.text("currency"),
        len(sums.unpriced),
        survey,
        scores(case, requirements, cost, survey),
        tuple(_gaps(sums, asking, survey)),
    )


def _gaps(sums: Sums, asking: float | None, survey: NextSurvey | None) -> Iterator[str]:
    """Yield what keeps the cost or the surveys of a candidate from being whole."""
    if asking is None:
        yield "the asking price is not given, so its cost is that of the work alone"
    if sums.spread is None:
        yield "no work line is priced"
    if sums.unpriced:
        lines = counted(len(sums.unpriced), "work line carries", "work lines carry")
        yield f"{lines} no price"
    if survey is None:
        yield "no certificate with a date is recorded"


def compare(
    candidates: Sequence[Candidate], weights: Mapping[str, float] | None = None
) -> Comparison:
    """Return the candidates ranked.

    Parameters
    ----------
    candidates : sequence of Candidate
    weights : mapping of str to float, optional
        Aspect -> weight [-]; WEIGHTS where none are given.

    Returns
    -------
    Comparison

    Raises
    ------
    BadWeights
        A weight cannot be used.

    References
    ----------
    Simple additive weighting, as in any handbook of multi-criteria decisions.
    """
    # Everything below is by name: two vessels of one name would become one.
    names = _distinct([candidate.name for candidate in candidates])
    by_name = {
        name: replace(candidate, name=name)
        for name, candidate in zip(names, candidates, strict=True)
    }
    scored = [Scored(name, candidate.scores) for name, candidate in by_name.items()]
    ranking = rank(scored, weights or WEIGHTS)
    ordered = tuple(by_name[place.name] for place in ranking.places)
    return Comparison(ordered, ranking, tuple(_warnings(candidates)))


def _distinct(names: list[str]) -> list[str]:
    """Two vessels of the same name are told apart by a number."""
    return [
        # Two hulls of a series often have one name in the papers of a seller.
        name if names.count(name) == 1 else f"{name} ({place})"
        for place, name in enumerate(names, 1)
    ]


def _warnings(candidates: Sequence[Candidate]) -> Iterator[str]:
    """Yield what keeps the candidates from being compared fairly."""
    currencies = {candidate.currency for candidate in candidates if candidate.currency}
    if len(currencies) > 1:
        yield (
            f"The costs are in different currencies ({', '.join(sorted(currencies))}): they are "
            "not comparable until they are brought to one."
        )
    # Candidates carry copies of the brief, which may have been changed since.
    briefs = {tuple(sorted(candidate.assessment.brief.items())) for candidate in candidates}
    if len(briefs) > 1:
        yield "The candidates carry different briefs: each is compared with its own."
    for candidate in candidates:
        if candidate.gaps:
            yield f"{candidate.name}: {'; '.join(candidate.gaps)}."
