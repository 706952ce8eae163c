"""How well one candidate does in each aspect of the comparison, as a span from 0 to 100.

The ends are fixed, so that a score does not depend on the other candidates. What is not known
counts as anything between.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from inspector.assess.model import Assessment
from inspector.assess.papers.surveys_due import due_list
from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.span import Span
from inspector.record.typed_values import typed_number
from inspector.values.vocabulary import NEEDS

ASPECTS = {
    "condition": "Condition of what the brief needs, 0 to 100",
    "requirements": (
        "Share of the brief's requirements met; what is not known counts as anything from none "
        "to all"
    ),
    "cost": (
        "Cost to reach the brief against the budget: 100 at nothing, 0 at the budget and beyond"
    ),
    "surveys": (
        "Days to the next survey that falls due: 100 at two years and beyond, 0 when overdue"
    ),
}
WEIGHTS = {"condition": 40.0, "requirements": 30.0, "cost": 20.0, "surveys": 10.0}
# Days beyond which a survey does not press.
FAR = 730
# How a system's condition counts by the brief's need for it: our own choice.
WEIGHT_OF_NEED = {"required": 3.0, "useful": 1.5, "neutral": 0.5, "unwanted": 0.0}
NOT_KNOWN = Span(0.0, None, 100.0)


@dataclass(frozen=True)
class NextSurvey:
    """The survey that falls due first.

    Parameters
    ----------
    name : str
        Certificate and survey.
    closes : date
        The last day for it.
    days : int
        From the day of the comparison until then, minus where it is overdue [days].
    """

    name: str
    closes: date
    days: int


def next_survey(case: Case) -> NextSurvey | None:
    """Return the survey that falls due first, overdue ones included.

    Parameters
    ----------
    case : Case

    Returns
    -------
    NextSurvey or None
        None where no certificate with a date is recorded.

    References
    ----------
    Windows by the harmonised system of survey, as in ``criteria.papers.survey_windows``.
    """
    due = [
        entry
        for entry in due_list(case.recorded.certificates, case.today)
        if entry.survey is not None and (entry.survey.left >= 0 or entry.survey.state == "overdue")
    ]
    if not due:
        return None
    # An overdue survey has the earliest last day, so it comes first by itself.
    first = min(due, key=lambda entry: entry.survey.closes)
    name = f"{first.certificate.kind}: {first.survey.name}"
    return NextSurvey(name, first.survey.closes, first.survey.left)


def scores(
    case: Case,
    requirements: Sequence[Requirement],
    cost: Span | None,
    survey: NextSurvey | None,
) -> dict[str, Span]:
    """Return the score of one candidate in each aspect.

    Parameters
    ----------
    case : Case
    requirements : sequence of Requirement
    cost : Span or None
        Cost to reach the brief [currency].
    survey : NextSurvey or None

    Returns
    -------
    dict of str to Span
        Aspect -> score [0 to 100].

    References
    ----------
    Model of our own.
    """
    budget = typed_number(case.assessment.brief.get("budget"), 0)
    return {
        "condition": condition_score(case.assessment),
        "requirements": requirements_score(requirements),
        "cost": cost_score(cost, budget),
        "surveys": survey_score(survey),
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
    total = sum(weight for weight, _ in weighted)
    if not total:
        return NOT_KNOWN
    low = sum(weight * condition.low for weight, condition in weighted) / total
    high = sum(weight * condition.high for weight, condition in weighted) / total
    point = sum(weight * _points(condition) for weight, condition in weighted) / total
    return Span(min(low, point), point, max(high, point))


def _points(condition) -> float:
    """The points, or the middle of what they could be where nothing was seen."""
    if condition.points is None:
        # Nothing seen: the middle of what is possible, which is no praise and no blame.
        return (condition.low + condition.high) / 2
    return min(max(condition.points, condition.low), condition.high)


def requirements_score(requirements: Sequence[Requirement]) -> Span:
    """Return the share of requirements that are met.

    Parameters
    ----------
    requirements : sequence of Requirement

    Returns
    -------
    Span
        Score [0 to 100]; what is not known may be met or not.

    References
    ----------
    Model of our own.
    """
    # A brief that asks nothing is met by every vessel and tells them apart by nothing.
    if not requirements:
        return NOT_KNOWN
    met = sum(requirement.met is True for requirement in requirements)
    unknown = sum(requirement.met is None for requirement in requirements)
    # An open requirement counts half at the point, and the sum may not pass 100 by rounding.
    each = 100 / len(requirements)
    return Span(met * each, (met + unknown / 2) * each, min((met + unknown) * each, 100.0))


def cost_score(cost: Span | None, budget: float | None) -> Span:
    """Return the cost to reach the brief against the budget.

    Parameters
    ----------
    cost : Span or None
        [currency]; None where no work is priced.
    budget : float or None
        [currency]

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
    return cost.apply(lambda value: _within_scale(100 * (1 - value / budget)))


def survey_score(survey: NextSurvey | None) -> Span:
    """Return how far away the next survey is.

    Parameters
    ----------
    survey : NextSurvey or None

    Returns
    -------
    Span
        Score [0 to 100]: 100 at two years and beyond, 0 when overdue.

    References
    ----------
    Model of our own.
    """
    if survey is None:
        return NOT_KNOWN
    return Span.exact(_within_scale(100 * survey.days / FAR))


def _within_scale(score: float) -> float:
    return min(max(score, 0.0), 100.0)
