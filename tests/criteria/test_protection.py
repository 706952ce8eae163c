"""Ages of tests: in date, due and overdue from both sides, by the interval of each test."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.protection import INTERVALS
from inspector.criteria.registry import criterion


@pytest.mark.parametrize(
    ("band", "rating", "on"),
    [("in date", "good", "2026-03-14"), ("due", "fair", "2026-03-15"), ("due", "fair", "2026-11-25"), ("due", "fair", "2027-06-14"),
        ("overdue", "poor", "2027-06-15")],
)
def test_an_injection_test_is_due_at_60_and_overdue_after_75_months(judge, band, rating, on):
    """Last on 14 March 2021."""
    judgement = judge("protection-test-age", last="2021-03-14", on=on)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_the_days_past_due_are_the_margin(judge):
    """256 days past due on 25 November 2026."""
    assert -256 == judge("protection-test-age", last="2021-03-14", on="2026-11-25").margin


@pytest.mark.parametrize("test", INTERVALS)
def test_each_test_has_its_interval(judge, test):
    """A test of today is in date, one of 1990 overdue."""
    found = [judge("protection-test-age", last=last, on="2026-11-25", test=test).band for last in ("2026-11-25", "1990-01-01")]
    assert ["in date", "overdue"] == found


def test_a_test_of_tomorrow_is_refused(judge):
    """A slip in the year does not make a test in date."""
    with pytest.raises(CannotJudge, match="lies after the visit"):
        judge("protection-test-age", last="2026-11-26", on="2026-11-25")


def test_the_owners_plan_replaces_the_usual_interval():
    """With 36 months by the plan, a test of March 2022 is overdue in November 2026."""
    rule = criterion("protection-test-age")
    own = rule.profile.with_limits({"trip_injection": "36"}, "Owner's maintenance plan, sheet 7")
    assert "overdue" == rule.apply({"last": "2022-03-14", "on": "2026-11-25", "test": "trip injection"}, own).band
