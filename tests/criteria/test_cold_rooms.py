"""Cold rooms at work: each limit from both sides."""

import pytest

from inspector.criteria.cold_rooms import PULL_DOWN
from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import criterion


@pytest.mark.parametrize(
    ("expected", "time", "store"),
    [("good", 12, "frozen"), ("fair", 12.1, "frozen"), ("fair", 24, "frozen"), ("poor", 24.1, "frozen"), ("good", 6, "chilled"), ("poor", 6.1, "chilled")],
)
def test_a_room_pulls_down_in_its_time(judge, expected, time, store):
    """12 h as designed and 24 acceptable for a freezer, 6 for a chill room."""
    assert expected == judge("pull-down-time", time=time, store=store).rating


@pytest.mark.parametrize(("expected", "hours"), [("good", 16), ("fair", 16.1), ("fair", 18), ("poor", 18.1), ("poor", 24)])
def test_a_unit_keeps_a_reserve_of_hours(judge, expected, hours):
    """16 to 18 of 24."""
    assert expected == judge("cooling-run-hours", hours=hours).rating


@pytest.mark.parametrize(("expected", "duration"), [("good", 30), ("poor", 30.5)])
def test_a_defrost_ends_in_half_an_hour(judge, expected, duration):
    """Common practice, from both sides."""
    assert expected == judge("defrost-duration", duration=duration).rating


@pytest.mark.parametrize(("expected", "ice"), [("good", 6.35), ("poor", 6.36), ("good", 0)])
def test_a_quarter_inch_of_ice_is_allowed(judge, expected, ice):
    """6.35 mm."""
    assert expected == judge("coil-ice", ice=ice).rating


@pytest.mark.parametrize(("expected", "duration", "store"), [("good", 1, "frozen"), ("poor", 1.1, "frozen"), ("good", 4, "chilled"), ("poor", 4.1, "chilled")])
def test_goods_may_be_warm_for_a_while(judge, expected, duration, store):
    """One hour frozen, four chilled."""
    assert expected == judge("store-excursion", duration=duration, store=store).rating


@pytest.mark.parametrize(("band", "reading"), [("reads low", -1.1), ("true enough", -1), ("true enough", 1), ("reads high", 1.1)])
def test_a_thermometer_reads_zero_in_ice(judge, band, reading):
    """Within one kelvin either way."""
    assert band == judge("thermometer-check", reading=reading).band


def test_the_surveyors_own_time_is_used():
    """A maker who promises eight hours is held to eight."""
    own = PULL_DOWN.with_limits({"frozen": 8}, "maker's manual")
    assert criterion("pull-down-time").apply({"time": 9, "store": "frozen"}, own).rating == "fair"


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("pull-down-time", {"time": 0}),
        ("cooling-run-hours", {"hours": 24.1}),
        ("defrost-duration", {"duration": -1}),
        ("coil-ice", {"ice": 201}),
        ("store-excursion", {"store": "dry"}),
        ("thermometer-check", {"reading": 32}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """A day has 24 hours, and melting ice does not read 32."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)
