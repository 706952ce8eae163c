"""Candidates against one brief: side by side per system and per requirement, what it costs to reach the brief, the next survey, and a weighted score."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from inspector.assess.certificates import due_list
from inspector.assess.gather import number
from inspector.assess.shapes import NEEDS, Assessment, CheckResult, Part
from inspector.conversion.book import Case
from inspector.conversion.chapters import Chapter, Requirement
from inspector.conversion.money import PRICES, money
from inspector.conversion.ranking import Ranking, Scored, rank
from inspector.conversion.shapes import Span

ASPECTS = {
    "condition": "Condition of what the brief needs, 0 to 100",
    "requirements": "Share of the brief's requirements met; what is not known counts as anything from none to all",
    "cost": "Cost to reach the brief against the budget: 100 at nothing, 0 at the budget and beyond",
    "surveys": "Days to the next survey that falls due: 100 at two years and beyond, 0 when overdue",
}
WEIGHTS = {"condition": 40.0, "requirements": 30.0, "cost": 20.0, "surveys": 10.0}
FAR = 730                       # days beyond which a survey does not press
WANTED = {"required": 3.0, "useful": 1.5, "neutral": 0.5, "unwanted": 0.0}   # how a system's condition counts by the brief's need: our own choice
NOTHING = Span(0.0, None, 100.0)


@dataclass(frozen=True)
class Candidate:
    """One inspection as the comparison needs it."""

    id: str
    name: str
    assessment: Assessment
    requirements: tuple[Requirement, ...]
    cost: Span | None               # P10, P50, P90 of the priced work plus the asking price; None where no work is priced
    currency: str
    unpriced: int                   # work lines without a price
    asking: float | None
    next_survey: tuple[str, date, int] | None   # what, when, days from the day asked
    scores: Mapping[str, Span]
    gaps: tuple[str, ...] = ()


@dataclass(frozen=True)
class Comparison:
    """All candidates in the order of their ranking, and what keeps it from being firm."""

    candidates: tuple[Candidate, ...]
    ranking: Ranking
    warnings: tuple[str, ...]


def candidate(case: Case, inspection_id: str, name: str, chapters: Sequence[Chapter]) -> Candidate:
    """One inspection made ready for comparison."""
    sums, prices = money(case), case.one(PRICES)
    asking, currency = prices.number("asking"), prices.text("currency")
    # without any priced work the price alone would make the least known vessel look the cheapest
    cost = Span(sums.spread.p10, sums.spread.p50, sums.spread.p90) + (asking or 0.0) if sums.spread else None
    requirements = tuple(one for chapter in chapters for one in chapter.requirements)
    upcoming = _next_survey(case)
    gaps = [] if asking is not None else ["the asking price is not given, so its cost is that of the work alone"]
    gaps += ["no work line is priced"] if sums.spread is None else []
    gaps += [f"{len(sums.unpriced)} work {'line carries' if len(sums.unpriced) == 1 else 'lines carry'} no price"] if sums.unpriced else []
    gaps += [] if upcoming else ["no certificate with a date is recorded"]
    return Candidate(inspection_id, name, case.assessment, requirements, cost, currency, len(sums.unpriced), asking, upcoming,
                     _scores(case, requirements, cost, upcoming), tuple(gaps))


def compare(candidates: Sequence[Candidate], weights: Mapping[str, float] | None = None) -> Comparison:
    """Rank the candidates; weights by aspect (WEIGHTS where none are given). Raises BadWeights."""
    names = _unlike([one.name for one in candidates])
    by_name = {name: replace(one, name=name) for name, one in zip(names, candidates, strict=True)}
    ranking = rank([Scored(name, one.scores) for name, one in by_name.items()], weights or WEIGHTS)
    return Comparison(tuple(by_name[place.name] for place in ranking.places), ranking, tuple(_warnings(candidates)))


def _unlike(names: list[str]) -> list[str]:
    """Two vessels of the same name stay apart."""
    return [name if names.count(name) == 1 else f"{name} ({at + 1})" for at, name in enumerate(names)]


def _warnings(candidates: Sequence[Candidate]):
    currencies = {one.currency for one in candidates if one.currency}
    if len(currencies) > 1:
        yield f"The costs are in different currencies ({', '.join(sorted(currencies))}): they are not comparable until they are brought to one."
    briefs = {tuple(sorted((key, value) for key, value in one.assessment.brief.items())) for one in candidates}
    if len(briefs) > 1:
        yield "The candidates carry different briefs: each stands against its own."
    for one in candidates:
        if one.gaps:
            yield f"{one.name}: {'; '.join(one.gaps)}."


def _next_survey(case: Case) -> tuple[str, date, int] | None:
    due = [one for one in due_list(case.state, case.today) if one.survey is not None and (one.survey.left >= 0 or one.survey.state == "overdue")]
    if not due:
        return None
    first = min(due, key=lambda one: one.survey.closes)
    return f"{first.certificate.kind}: {first.survey.name}", first.survey.closes, first.survey.left


def _scores(case: Case, requirements: Sequence[Requirement], cost: Span | None, upcoming: tuple[str, date, int] | None) -> dict[str, Span]:
    return {"condition": _condition(case.assessment), "requirements": _met(requirements), "cost": _cost(case, cost), "surveys": _surveys(upcoming)}


def _condition(assessment: Assessment) -> Span:
    """The systems' conditions weighted by the brief's need for them."""
    weighed = [(WANTED[system.whole.facts.need if system.whole.facts.need in NEEDS else "neutral"], system.whole.condition) for system in assessment.systems]
    total = sum(weight for weight, _ in weighed)
    if not total:
        return NOTHING
    low = sum(weight * one.low for weight, one in weighed) / total
    high = sum(weight * one.high for weight, one in weighed) / total
    point = sum(weight * (one.points if one.points is not None else (one.low + one.high) / 2) for weight, one in weighed) / total
    return Span(min(low, point), point, max(high, point))


def _met(requirements: Sequence[Requirement]) -> Span:
    if not requirements:
        return NOTHING
    met, unknown = (sum(1 for one in requirements if one.met is word) for word in (True, None))
    share = 100 / len(requirements)
    return Span(met * share, (met + unknown / 2) * share, min((met + unknown) * share, 100.0))


def _cost(case: Case, cost: Span | None) -> Span:
    budget = number(case.assessment.brief.get("budget"), 0)
    if cost is None or not budget:
        return NOTHING
    def score(value: float) -> float:
        return min(max(100 * (1 - value / budget), 0.0), 100.0)
    return cost.apply(score)


def _surveys(upcoming: tuple[str, date, int] | None) -> Span:
    if upcoming is None:
        return NOTHING
    return Span.exact(min(max(100 * upcoming[2] / FAR, 0.0), 100.0))


@dataclass(frozen=True)
class SystemRow:
    """One system over all candidates: its part in each, None where it is not on board or not counted."""

    id: str
    name: str
    parts: tuple[Part | None, ...]


def by_system(candidates: Sequence[Candidate]) -> tuple[SystemRow, ...]:
    """The systems of all candidates, in the order of the checklists."""
    found: dict[str, tuple[int, str]] = {}
    for one in candidates:
        for system in one.assessment.systems:
            found.setdefault(system.system.id, (system.system.order, system.system.name))
    def part(one: Candidate, system_id: str) -> Part | None:
        return next((system.whole for system in one.assessment.systems if system.system.id == system_id), None)
    return tuple(SystemRow(key, name, tuple(part(one, key) for one in candidates)) for key, (_, name) in sorted(found.items(), key=lambda pair: pair[1]))


def by_requirement(candidates: Sequence[Candidate]) -> tuple[tuple[str, tuple[Requirement | None, ...]], ...]:
    """The brief's requirements over all candidates."""
    labels: dict[str, str] = {}
    for one in candidates:
        for requirement in one.requirements:
            labels.setdefault(requirement.id, requirement.label)
    return tuple(
        (label, tuple(next((asked for asked in one.requirements if asked.id == key), None) for one in candidates)) for key, label in labels.items()
    )


@dataclass(frozen=True)
class CheckRow:
    """One check over all candidates: every unit's result in each."""

    title: str
    results: tuple[tuple[CheckResult, ...], ...]


def by_check(candidates: Sequence[Candidate], system_id: str) -> tuple[CheckRow, ...]:
    """The identical checks of one system side by side, those with photos or unlike ratings first."""
    rows: dict[str, list[list[CheckResult]]] = {}
    titles: dict[str, str] = {}
    for at, one in enumerate(candidates):
        for system in one.assessment.systems:
            if system.system.id == system_id:
                for result in system.whole.results:
                    titles.setdefault(result.check.id, result.check.title)
                    rows.setdefault(result.check.id, [[] for _ in candidates])[at].append(result)
    made = [CheckRow(titles[key], tuple(map(tuple, results))) for key, results in rows.items()]
    return tuple(sorted(made, key=lambda row: (not _telling(row), row.title)))


def _telling(row: CheckRow) -> bool:
    ratings = {result.rating for results in row.results for result in results}
    return len(ratings) > 1 or any(result.photos for results in row.results for result in results)
