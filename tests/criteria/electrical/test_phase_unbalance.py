"""Unbalance of phases: the limit from both sides, and readings that cannot be."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(("expected", "third"), [("good", 102.9), ("fair", 103.3)])
def test_voltages_are_watched_above_two_per_cent(judge, expected, third):
    """100, 100 and 102.9 V differ by 1.9 % from their mean, 103.3 V by 2.2 %."""
    assert expected == judge("voltage-unbalance", first=100, second=100, third=third).rating


@pytest.mark.parametrize(("expected", "third"), [("good", 115.7), ("fair", 115.9)])
def test_currents_are_watched_above_ten_per_cent(judge, expected, third):
    """100, 100 and 115.7 A differ by 9.95 % from their mean, 115.9 A by more than 10 %."""
    assert {"good": "balanced", "fair": "unbalanced"}[expected] == judge(
        "current-unbalance", first=100, second=100, third=third
    ).band


# mean 100, so that the reading is the percentage: NEMA MG 1 (quoted, seen), 5 % of voltage; six
# times as much of current (factor from memory)
@pytest.mark.parametrize(
    ("name", "away", "band", "rating"),
    [
        ("voltage-unbalance", 4.9, "unbalanced", "fair"),
        ("voltage-unbalance", 5, "unbalanced", "fair"),
        ("voltage-unbalance", 5.1, "too unbalanced", "poor"),
        ("current-unbalance", 29.9, "unbalanced", "fair"),
        ("current-unbalance", 30, "unbalanced", "fair"),
        ("current-unbalance", 30.1, "too unbalanced", "poor"),
    ],
)
def test_above_what_a_motor_may_run_on_it_is_poor(judge, name, away, band, rating):
    """The limit itself is still watched."""
    judgement = judge(name, first=100 - away, second=100, third=100 + away)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize("name", ["voltage-unbalance", "current-unbalance"])
@pytest.mark.parametrize(
    ("third", "band", "rating"),
    [
        (0, "phase missing", "failed"),
        (43.9, "phase missing", "failed"),
        (44, "too unbalanced", "poor"),
        (44.1, "too unbalanced", "poor"),
    ],
)
def test_a_lost_phase_is_failed(judge, name, third, band, rating):
    """440, 440 and 0: a motor on two phases burns out, far above the 5 % of NEMA MG 1 (seen)."""
    judgement = judge(name, first=440, second=440, third=third)
    assert (band, rating) == (judgement.band, judgement.rating)


def test_a_lost_phase_is_100_per_cent_from_the_mean(judge):
    """It is an unbalance and no error."""
    assert 100 == pytest.approx(judge("voltage-unbalance", first=480, second=0, third=480).value)


def test_three_zeros_are_refused(judge):
    """Nothing runs, so nothing is judged."""
    with pytest.raises(CannotJudge, match="all three readings are zero"):
        judge("voltage-unbalance", first=0, second=0, third=0)


def test_the_surveyors_own_limit_is_used():
    """With 1 % as limit, 1.26 % is watched."""
    rule = criterion("voltage-unbalance")
    own = rule.limit_set.with_limits({"watch": "1"}, "Maker's manual, 4.2")
    assert "fair" == rule.apply({"first": 480, "second": 472, "third": 482}, own).rating
