"""Unbalance of phases: the limit from both sides, and readings that cannot be."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import criterion


@pytest.mark.parametrize(("expected", "third"), [("good", 102.9), ("fair", 103.3)])
def test_voltages_are_watched_above_two_per_cent(judge, expected, third):
    """100, 100 and 102.9 V differ by 1.9 % from their mean, 103.3 V by 2.2 %."""
    assert expected == judge("voltage-unbalance", first=100, second=100, third=third).rating


@pytest.mark.parametrize(("expected", "third"), [("good", 115.7), ("fair", 115.9)])
def test_currents_are_watched_above_ten_per_cent(judge, expected, third):
    """100, 100 and 115.7 A differ by 9.95 % from their mean, 115.9 A by more than 10 %."""
    assert {"good": "balanced", "fair": "unbalanced"}[expected] == judge("current-unbalance", first=100, second=100, third=third).band


def test_a_lost_phase_is_an_unbalance_and_no_error(judge):
    """Zero on one phase is 100 % from the mean."""
    assert 100 == pytest.approx(judge("voltage-unbalance", first=480, second=0, third=480).value)


def test_three_zeros_are_refused(judge):
    """Nothing runs, so nothing is judged."""
    with pytest.raises(CannotJudge, match="all three readings are zero"):
        judge("voltage-unbalance", first=0, second=0, third=0)


def test_the_surveyors_own_limit_is_used():
    """With 1 % as limit, 1.26 % is watched."""
    rule = criterion("voltage-unbalance")
    own = rule.profile.with_limits({"watch": "1"}, "Maker's manual, 4.2")
    assert "fair" == rule.apply({"first": 480, "second": 472, "third": 482}, own).rating
