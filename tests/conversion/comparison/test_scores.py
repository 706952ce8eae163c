"""Scores run on fixed ends, and what is not known counts as anything between."""

from datetime import date

import pytest

from inspector.assess.checked import Condition
from inspector.assess.model import Assessment, Facts, Part, SystemPart
from inspector.assess.verdict.word import Proposal
from inspector.conversion.comparison.scores import (
    NOT_KNOWN,
    Ahead,
    SurveysAhead,
    condition_score,
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


def test_what_no_chapter_could_calculate_is_asked_all_the_same():
    """One of two met is half, whether the other is not met or not known."""
    assert Span(50, 75, 100) == requirements_score([requirement(Span.exact(12)), None])


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
    assert expected == cost_score(cost, budget, is_open=False)


def test_a_cost_that_is_open_assures_nothing():
    """What has no price may cost all that is left; at best it costs nothing."""
    assert Span(0, None, 60) == cost_score(Span(4, 5, 6), 10, is_open=True)


@pytest.mark.parametrize(
    ("renewal", "docking", "score"),
    [(-1, -1, 0), (0, 0, 0), (2.5, 1.5, 50), (5, 3, 100), (9, 9, 100), (5, -1, 50), (0, 3, 50)],
)
def test_the_years_to_renewal_and_docking(renewal, docking, score):
    """Half of the score each: full at five and three years, nothing when overdue."""
    day = date(2031, 5, 4)
    surveys = SurveysAhead(Ahead(day, renewal), Ahead(day, docking))

    assert Span.exact(score) == survey_score(surveys)


def test_a_survey_that_no_paper_tells_counts_as_anything_between():
    """A vessel without papers is assured of nothing, and may be as good as any."""
    one = SurveysAhead(renewal=Ahead(date(2036, 5, 4), 5.0))

    assert (Span(50, None, 100), NOT_KNOWN) == (survey_score(one), survey_score(SurveysAhead()))


def test_what_the_brief_needs_and_nobody_counted_is_not_known():
    """A good hull beside thrusters that are not on the list: three parts of four and a half."""

    class Hull:
        id, name = "hull", "Hull"

    good = Condition(100.0, 100.0, 100.0, 1.0, seen=2, applicable=2)
    part = Part("all", "Hull", good, Facts("required"), Proposal("retain", "condition", "Stays."))
    brief = {"need/hull": "required", "need/thrusters": "useful", "need/reefers": "unwanted"}
    found = condition_score(Assessment(brief=brief, systems=(SystemPart(Hull(), part, ()),)))

    assert [pytest.approx(100 * 3 / 4.5), pytest.approx(100)] == [found.low, found.high]
