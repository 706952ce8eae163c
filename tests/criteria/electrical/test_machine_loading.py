"""Loads of sets, transformers and breakers.

Each limit from both sides, and sharing that cannot be judged.
"""

import pytest

from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "rating", "power"),
    [
        ("light", "fair", 101.9),
        ("usual", "good", 102),
        ("usual", "good", 289),
        ("high", "fair", 289.1),
        ("high", "fair", 306),
        ("no margin", "poor", 306.1),
        ("no margin", "poor", 340),
        ("overloaded", "poor", 340.1),
    ],
)
def test_a_set_of_340_kilowatts_changes_band_at_its_shares(judge, band, rating, power):
    """30, 85, 90 and 100 % of 340 kW; the trade's figures never fail."""
    judgement = judge("generator-loading", power=power)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("band", "current"), [("overloaded", 555.1), ("no margin", 511.2), ("high", 450)]
)
def test_a_current_may_say_more_than_the_power(judge, band, current):
    """300 kW of 340 kW are high; at a poor power factor the current is past its rating already."""
    assert band == judge("generator-loading", power=300, current=current, rated_current=511.2).band


def test_a_small_current_does_not_hide_the_power(judge):
    """The worse of the two counts."""
    assert (
        "no margin" == judge("generator-loading", power=320, current=100, rated_current=511.2).band
    )


@pytest.mark.parametrize("half", [{"current": 100}, {"rated_current": 511.2}])
def test_a_current_without_its_rating_is_refused(judge, half):
    """And a rating without its current."""
    with pytest.raises(CannotJudge, match="a current needs its rating"):
        judge("generator-loading", **half)
