"""Supplies that must last: each limit from both sides, and an old keel that is not failed blindly."""

import pytest

from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(("name", "least"), [("ups-endurance", 30), ("transitional-source", 30)])
def test_half_an_hour_is_asked(judge, name, least):
    """Thirty minutes pass, a tenth less does not; recalled, so poor."""
    assert ["good", "poor"] == [judge(name, time=time).rating for time in (least, least - 0.1)]


@pytest.mark.parametrize(("expected", "time"), [("good", 45), ("poor", 45.1)])
def test_the_emergency_board_is_fed_within_45_seconds(judge, expected, time):
    """The limit itself is in time."""
    assert expected == judge("emergency-start", time=time).rating


@pytest.mark.parametrize(
    ("rating", "time", "ship"), [("good", 18, "cargo"), ("failed", 17.9, "cargo"), ("good", 36, "passenger"), ("failed", 35.9, "passenger")]
)
def test_the_emergency_source_lasts_18_or_36_hours(judge, rating, time, ship):
    """Both figures were read, so they may fail."""
    assert rating == judge("emergency-endurance", time=time, ship=ship).rating


@pytest.mark.parametrize(("band", "built"), [("older text may bind", "1984-08-31"), ("too short", "1984-09-01"), ("too short", None)])
def test_an_old_keel_is_not_failed_blindly(judge, band, built):
    """A keel before 1 September 1984 may stand on six hours."""
    assert band == judge("emergency-endurance", time=6, built=built).band


@pytest.mark.parametrize(("name", "changes"), [("emergency-start", {"time": -1}), ("emergency-endurance", {"ship": "yacht"})])
def test_what_lies_outside_is_refused(judge, name, changes):
    """Negative times and other ships are not judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)
