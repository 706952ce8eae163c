"""How well one candidate does in each aspect of the comparison, as a span from 0 to 100.

The ends are fixed, so that a score does not depend on the other candidates. What is not known
counts as anything between.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from inspector.assess.model import Assessment
from inspector.assess.papers.certificates import Survey
from inspector.assess.papers.surveys_due import due_list
from inspector.conversion.comparison.asked_of_all import answers, asked_by
from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.span import Span
from inspector.conversion.money.calculation import Sums
from inspector.values.vocabulary import NEEDS

ASPECTS = {
    "condition": "Condition of what the brief needs, 0 to 100",
    "requirements": (
        "Share of what is asked of every vessel that is met; what is not known counts as anything "
        "from none to all"
    ),
    "cost": (
        "All of the money against the budget: 100 at nothing, 0 at the budget and beyond; where "
        "anything has no price it may be beyond"
    ),
    "surveys": (
        "Years to class renewal, 100 at five, and to docking, 100 at three, each half; 0 when "
        "overdue"
    ),
}
WEIGHTS = {"condition": 40.0, "requirements": 30.0, "cost": 20.0, "surveys": 10.0}
DAYS_IN_A_YEAR = 365.25
# Years beyond which renewal and docking do not press: as far apart as they may be.
FAR_RENEWAL, FAR_DOCKING = 5.0, 3.0
# How a system's condition counts by the brief's need for it: our own choice.
WEIGHT_OF_NEED = {"required": 3.0, "useful": 1.5, "neutral": 0.5, "unwanted": 0.0}
# What a brief needs and a vessel lacks, or nobody counted, is not known of her.
MISSED = ("required", "useful")
NOT_KNOWN = Span(0.0, None, 100.0)


@dataclass(frozen=True)
class Ahead:
    """A survey ahead.

    Parameters
    ----------
    closes : date
        The last day for it.
    years : float
        From the day of the comparison until then, minus where it is overdue [years].
    """

    closes: date
    years: float


@dataclass(frozen=True)
class SurveysAhead:
    """The two surveys that cost a buyer most; None where no paper tells.

    Parameters
    ----------
    renewal : Ahead or None
        Of class.
    docking : Ahead or None
        The next inspection of the bottom.
    """

    renewal: Ahead | None = None
    docking: Ahead | None = None


def surveys_ahead(case: Case) -> SurveysAhead:
    """Return class renewal and docking, overdue ones included.

    Parameters
    ----------
    case : Case

    Returns
    -------
    SurveysAhead

    References
    ----------
    Windows by the harmonised system of survey, as in ``criteria.papers.survey_windows``.
    """
    due = [entry for entry in due_list(case.recorded.certificates, case.today) if entry.survey]
    renewals = [
        entry.survey
        for entry in due
        if entry.certificate.kind == "class" and entry.survey.name == "renewal"
    ]
    bottoms = [entry.survey for entry in due if entry.survey.name == "bottom"]
    return SurveysAhead(_first(renewals), _first(bottoms))


def _first(surveys: Sequence[Survey]) -> Ahead | None:
    """The survey that closes first, None where there is none."""
    if not surveys:
        return None
    first = min(surveys, key=lambda survey: survey.closes)
    return Ahead(first.closes, first.left / DAYS_IN_A_YEAR)


def scores(
    case: Case, requirements: Sequence[Requirement], money: Sums, surveys: SurveysAhead
) -> dict[str, Span]:
    """Return the score of one candidate in each aspect.

    Parameters
    ----------
    case : Case
    requirements : sequence of Requirement
        Of her chapters.
    money : Sums
        All of the money.
    surveys : SurveysAhead

    Returns
    -------
    dict of str to Span
        Aspect -> score [0 to 100].

    References
    ----------
    Model of our own.
    """
    asked = asked_by(case.assessment.brief)
    cost = None if money.total is None else money.total.span
    return {
        "condition": condition_score(case.assessment),
        "requirements": requirements_score(answers(asked, requirements)),
        "cost": cost_score(cost, money.budget, is_open=bool(money.open)),
        "surveys": survey_score(surveys),
    }


def condition_score(assessment: Assessment) -> Span:
    """Return the systems' conditions weighted by the brief's need for them.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    Span
        Score [0 to 100].

    References
    ----------
    Model of our own.
    """
    weighted = []
    for system in assessment.systems:
        need = system.whole.facts.need
        # A need in a surveyor's own word says neither yes nor no.
        weight = WEIGHT_OF_NEED[need if need in NEEDS else "neutral"]
        weighted.append((weight, system.whole.condition))
    # Otherwise a vessel of which nobody counted a bad system would stand before one that shows it.
    missed = sum(WEIGHT_OF_NEED[need] for need in _needs_not_met(assessment) if need in MISSED)
    total = sum(weight for weight, _ in weighted) + missed
    if not total:
        return NOT_KNOWN
    low = sum(weight * condition.low for weight, condition in weighted) / total
    high = (sum(weight * condition.high for weight, condition in weighted) + 100 * missed) / total
    middles = sum(weight * _points(condition) for weight, condition in weighted)
    point = (middles + 50 * missed) / total
    return Span(min(low, point), point, max(high, point))


def _needs_not_met(assessment: Assessment) -> Iterator[str]:
    """Yield the brief's need for each system that is not on board, or was not counted."""
    on_board = {system.system.id for system in assessment.systems}
    for field, need in assessment.brief.items():
        system = field.removeprefix("need/")
        if field != system and system not in on_board:
            yield need


def _points(condition) -> float:
    """The points, or the middle of what they could be where nothing was seen."""
    if condition.points is None:
        # Nothing seen: the middle of what is possible, which is no praise and no blame.
        return (condition.low + condition.high) / 2
    return min(max(condition.points, condition.low), condition.high)


def requirements_score(answered: Sequence[Requirement | None]) -> Span:
    """Return the share of what is asked that is met.

    Parameters
    ----------
    answered : sequence of Requirement or None
        One for each thing asked, None where nobody could calculate it.

    Returns
    -------
    Span
        Score [0 to 100]; what is not known may be met or not.

    References
    ----------
    Model of our own.
    """
    # A brief that asks nothing is met by every vessel and tells them apart by nothing.
    if not answered:
        return NOT_KNOWN
    met = [None if requirement is None else requirement.met for requirement in answered]
    sure, unknown = met.count(True), met.count(None)
    # An open requirement counts half at the point, and the sum may not pass 100 by rounding.
    each = 100 / len(met)
    return Span(sure * each, (sure + unknown / 2) * each, min((sure + unknown) * each, 100.0))


def cost_score(cost: Span | None, budget: float | None, *, is_open: bool) -> Span:
    """Return all of the money against the budget.

    Parameters
    ----------
    cost : Span or None
        P10, P50 and P90 of what is priced [currency]; None where nothing is.
    budget : float or None
        [currency]
    is_open : bool
        Whether anything has no price, so that the cost is so much at least.

    Returns
    -------
    Span
        Score [0 to 100]: 100 at no cost, 0 at the budget and beyond.

    References
    ----------
    Model of our own.
    """
    # Without a budget there is no end to measure a cost against.
    if cost is None or not budget:
        return NOT_KNOWN
    found = cost.apply(lambda value: _within_scale(100 * (1 - value / budget)))
    # What has no price may cost all that is left.
    return Span(0.0, None, found.high) if is_open else found


def survey_score(surveys: SurveysAhead) -> Span:
    """Return how far away class renewal and docking are.

    Parameters
    ----------
    surveys : SurveysAhead

    Returns
    -------
    Span
        Score [0 to 100], half of it for each: full at five years to renewal and three to docking.

    References
    ----------
    Model of our own.
    """
    return _half(surveys.renewal, FAR_RENEWAL) + _half(surveys.docking, FAR_DOCKING)


def _half(ahead: Ahead | None, far: float) -> Span:
    """Half a score for one survey; anything between where no paper tells."""
    if ahead is None:
        return Span(0.0, None, 50.0)
    return Span.exact(_within_scale(100 * ahead.years / far) / 2)


def _within_scale(score: float) -> float:
    return min(max(score, 0.0), 100.0)
