"""Candidates against one brief: what each offers, what it costs to reach the brief, their order."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from inspector.assess.model import Assessment
from inspector.conversion.comparison.ranking import Ranking, Scored, rank
from inspector.conversion.comparison.scores import WEIGHTS, SurveysAhead, scores, surveys_ahead
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
        What this vessel offers for what is asked, as far as it is calculated.
    money : Sums
        All of the money, as the chapter on it shows it.
    currency : str
    surveys : SurveysAhead
    scores : mapping of str to Span
        Aspect -> score [0 to 100].
    gaps : tuple of str
        What is missing for the comparison.
    """

    id: str
    name: str
    assessment: Assessment
    requirements: tuple[Requirement, ...]
    money: Sums
    currency: str
    surveys: SurveysAhead
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
    sums, surveys = sums_of(case), surveys_ahead(case)
    requirements = tuple(
        requirement for chapter in chapters for requirement in chapter.requirements
    )
    return Candidate(
        inspection_id,
        name,
        case.assessment,
        requirements,
        sums,
        case.one(PRICES).text("currency"),
        surveys,
        scores(case, requirements, sums, surveys),
        tuple(_gaps(sums, surveys)),
    )


def _gaps(sums: Sums, surveys: SurveysAhead) -> Iterator[str]:
    """Yield what keeps the cost or the surveys of a candidate from being whole."""
    if sums.spread is None:
        yield "no work line is priced"
    if sums.open:
        things = counted(len(sums.open), "thing has", "things have")
        yield f"{things} no price, so that all of it is so much at least"
    if surveys.renewal is None:
        yield "no paper tells when class is renewed"
    if surveys.docking is None:
        yield "no paper tells when she must dock"


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
