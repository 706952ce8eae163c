"""Ages of tests: in date, due and overdue from both sides, by the interval of each test."""

from datetime import date, timedelta

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge

# test, last day on which a test of 14 March 2021 is in date; intervals of 1, 12, 24 and 60 months,
# common practice
IN_DATE = [
    ("emergency start and changeover", "2021-04-14"),
    ("breaker by hand", "2022-03-14"),
    ("thermal survey", "2022-03-14"),
    ("reverse power and overcurrent function", "2022-03-14"),
    ("air breaker service", "2023-03-14"),
    ("trip injection", "2026-03-14"),
    ("relay injection", "2026-03-14"),
    ("moulded-case trip", "2026-03-14"),
]


@pytest.mark.parametrize(
    ("band", "rating", "on"),
    [
        ("in date", "good", "2026-03-14"),
        ("due", "fair", "2026-03-15"),
        ("due", "fair", "2026-11-25"),
        ("due", "fair", "2027-06-14"),
        ("overdue", "poor", "2027-06-15"),
    ],
)
def test_an_injection_test_is_due_at_60_and_overdue_after_75_months(judge, band, rating, on):
    """Last on 14 March 2021."""
    judgement = judge("protection-test-age", last="2021-03-14", on=on)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_the_days_past_due_are_the_margin(judge):
    """256 days past due on 25 November 2026."""
    assert -256 == judge("protection-test-age", last="2021-03-14", on="2026-11-25").margin


@pytest.mark.parametrize(("test", "last_day"), IN_DATE)
def test_each_test_has_its_interval(judge, test, last_day):
    """In date to the day on which the interval ends, due from the next day on."""
    next_day = date.fromisoformat(last_day) + timedelta(days=1)
    found = [
        judge("protection-test-age", last="2021-03-14", on=on, test=test).band
        for on in (last_day, next_day)
    ]
    assert ["in date", "due"] == found


def test_a_test_of_tomorrow_is_refused(judge):
    """A slip in the year does not make a test in date."""
    with pytest.raises(CannotJudge, match="2026-11-26 is after .*2026-11-25"):
        judge("protection-test-age", last="2026-11-26", on="2026-11-25")


def test_the_owners_plan_replaces_the_usual_interval():
    """With 36 months by the plan, a test of March 2022 is overdue in November 2026."""
    rule = criterion("protection-test-age")
    own = rule.limit_set.with_limits({"trip_injection": "36"}, "Owner's maintenance plan, sheet 7")
    assert (
        "overdue"
        == rule.apply(
            {"last": "2022-03-14", "on": "2026-11-25", "test": "trip injection"}, own
        ).band
    )
