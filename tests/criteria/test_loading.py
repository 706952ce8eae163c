"""Loads of sets, transformers and breakers: each limit from both sides, and sharing that cannot be judged."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.loading import transformer_current
from inspector.criteria.registry import criterion


@pytest.mark.parametrize(
    ("band", "rating", "power"),
    [("light", "fair", 101.9), ("usual", "good", 102), ("usual", "good", 289), ("high", "fair", 289.1), ("high", "fair", 306), ("no margin", "poor", 306.1),
     ("no margin", "poor", 340), ("overloaded", "poor", 340.1)],
)
def test_a_set_of_340_kilowatts_changes_band_at_its_shares(judge, band, rating, power):
    """30, 85, 90 and 100 % of 340 kW; the trade's figures never fail."""
    judgement = judge("generator-loading", power=power)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(("band", "current"), [("overloaded", 555.1), ("no margin", 511.2), ("high", 450)])
def test_a_current_may_say_more_than_the_power(judge, band, current):
    """300 kW of 340 kW are high; at a poor power factor the current is past its rating already."""
    assert band == judge("generator-loading", power=300, current=current, rated_current=511.2).band


def test_a_small_current_does_not_hide_the_power(judge):
    """The worse of the two counts."""
    assert "no margin" == judge("generator-loading", power=320, current=100, rated_current=511.2).band


@pytest.mark.parametrize("half", [{"current": 100}, {"rated_current": 511.2}])
def test_a_current_without_its_rating_is_refused(judge, half):
    """And a rating without its current."""
    with pytest.raises(CannotJudge, match="a current needs its rating"):
        judge("generator-loading", **half)


@pytest.mark.parametrize(("expected", "power"), [("good", 119), ("poor", 118.9), ("good", 289), ("poor", 289.1)])
def test_a_set_may_miss_its_share_by_the_lesser_of_two(judge, expected, power):
    """204 kW by rights, 85 kW either way: 25 % of its own rating, less than 15 % of the largest."""
    assert expected == judge("load-sharing", power=power).rating


@pytest.mark.parametrize(("total", "found"), [(187, "19.89"), (941, "100.1")])
def test_sharing_is_judged_from_20_to_100_per_cent(judge, total, found):
    """Below and above, the rule does not speak."""
    with pytest.raises(CannotJudge, match=f"run at {found} %"):
        judge("load-sharing", total_power=total)


def test_the_largest_set_is_not_smaller_than_this_one(judge):
    """A slip of the pen is named."""
    with pytest.raises(CannotJudge, match="largest set"):
        judge("load-sharing", largest_rated=300)


def test_a_transformer_is_full_at_its_rated_current(judge):
    """75 kVA at 208 V carry 208.2 A."""
    full = transformer_current(75, 208)
    assert ["good", "poor"] == [judge("transformer-loading", current=current).rating for current in (full, full + 0.1)]


@pytest.mark.parametrize(("band", "current"), [("spare", 320), ("full", 320.1), ("full", 400), ("over the rating", 400.1)])
def test_a_breaker_is_full_at_80_per_cent_and_over_at_100(judge, band, current):
    """320 A and 400 A of a breaker of 400 A."""
    assert band == judge("breaker-loading", current=current).band


def test_spare_is_told_for_both_figures(judge):
    """310 A of 400 A leave 90 A at 100 % and 10 A at 80 %."""
    assert any("90 A; at 80 %: 10 A" in note for note in judge("breaker-loading").notes)


def test_a_breaker_marked_for_full_load_gets_its_own_limit():
    """A breaker marked for 100 % keeps its spare to the rating."""
    rule = criterion("breaker-loading")
    own = rule.profile.with_limits({"continuous": "100"}, "Breaker's own label")
    assert "spare" == rule.apply({"current": 400, "rating": 400}, own).band
