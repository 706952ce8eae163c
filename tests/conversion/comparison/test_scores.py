"""Scores run on fixed ends, and what is not known counts as anything between."""

from datetime import date

import pytest

from inspector.conversion.comparison.scores import (
    NOT_KNOWN,
    NextSurvey,
    cost_score,
    requirements_score,
    survey_score,
)
from inspector.conversion.core.chapter import Requirement
from inspector.conversion.core.span import Span


def requirement(offered):
    """Ten of something are asked."""
    return Requirement("speed", "Speed", 10, "kn", offered)


@pytest.mark.parametrize(
    ("offered", "expected"),
    [
        ([Span.exact(12), Span.exact(9)], Span(50, 50, 50)),
        ([Span.exact(12), None], Span(50, 75, 100)),
        ([Span(8, 10, 12), None], Span(0, 50, 100)),
        ([], NOT_KNOWN),
    ],
)
def test_what_is_not_known_counts_as_anything_between(offered, expected):
    """A requirement that is open may be met or not, and counts half at the point."""
    assert expected == requirements_score([requirement(span) for span in offered])


@pytest.mark.parametrize(
    ("cost", "budget", "expected"),
    [
        (Span(0, 5, 10), 10, Span(0, 50, 100)),
        (Span.exact(15), 10, Span(0, 0, 0)),
        (None, 10, NOT_KNOWN),
        (Span.exact(5), None, NOT_KNOWN),
        (Span.exact(5), 0, NOT_KNOWN),
    ],
)
def test_the_cost_against_the_budget(cost, budget, expected):
    """100 at no cost, 0 at the budget and beyond; without either nothing is known."""
    assert expected == cost_score(cost, budget)


@pytest.mark.parametrize(("days", "score"), [(-1, 0), (0, 0), (365, 50), (730, 100), (731, 100)])
def test_the_days_to_the_next_survey(days, score):
    """Two years and beyond are 100, an overdue survey is 0."""
    survey = NextSurvey("class: annual", date(2031, 5, 4), days)

    assert Span.exact(score) == survey_score(survey)


def test_no_survey_at_all_is_not_known():
    """A vessel without papers is neither better nor worse than any other."""
    assert NOT_KNOWN == survey_score(None)
