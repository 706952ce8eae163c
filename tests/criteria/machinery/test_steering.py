"""Steering: times under each condition, turning rates, bearing play, indicator."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge

FULL, LESS, ALONGSIDE = "trial draught, full ahead", "under way, less", "alongside"


@pytest.mark.parametrize(
    ("rating", "time", "condition"),
    [
        ("good", 26.4, FULL),
        ("good", 28, FULL),
        ("failed", 28.1, FULL),
        ("failed", 29.1, FULL),
        (None, 20, ALONGSIDE),
        (None, 28, ALONGSIDE),
        ("failed", 28.1, ALONGSIDE),
        (None, 20, LESS),
    ],
)
def test_the_main_gear_has_28_seconds(judge, rating, time, condition):
    """Without the load of the sea a quick time proves nothing, and a slow one everything."""
    assert rating == judge("steering-main-time", time=time, condition=condition).rating


@pytest.mark.parametrize(
    ("rating", "time", "service_speed", "trial_speed"),
    [
        ("good", 58, None, None),
        ("good", 60, 14, 7),
        ("failed", 60.1, 14, 7),
        (None, 58, 14, 6.9),
        (None, 58, 16, 7.9),
        ("good", 58, 16, 8),
        (None, 58, None, 6),
        ("failed", 61, 16, 5),
    ],
)
def test_the_auxiliary_gear_has_60_seconds_at_half_speed_or_7_knots(
    judge, rating, time, service_speed, trial_speed
):
    """A trial below the asked speed counts as one with less load."""
    assert (
        rating
        == judge(
            "steering-auxiliary-time",
            time=time,
            service_speed=service_speed,
            trial_speed=trial_speed,
        ).rating
    )


@pytest.mark.parametrize(("expected", "service"), [(7, 10), (7, 14), (7.05, 14.1), (8, 16)])
def test_the_asked_speed_is_the_greater_of_the_two(judge, expected, service):
    """Half of the service speed, at least 7 kn."""
    judgement = judge("steering-auxiliary-time", service_speed=service)
    assert f"The trial speed asked for is {expected} kn." == judgement.notes[0]


def test_the_sentence_says_how_a_time_was_taken(judge):
    """Alongside is written beside the figure."""
    assert "alongside" in judge("steering-main-time", condition=ALONGSIDE).sentence


@pytest.mark.parametrize(
    ("expected", "clearance", "diameter"),
    [
        ("good", 5.6, 300),
        ("poor", 5.61, 300),
        ("good", 6, 500),
        ("poor", 6.01, 500),
        ("good", 5.1, 50),
    ],
)
def test_rudder_play_is_held_against_five_and_two_thousandths(judge, expected, clearance, diameter):
    """5 + 0.002 D mm, exactly."""
    assert (
        expected == judge("rudder-bearing-clearance", clearance=clearance, diameter=diameter).rating
    )


def test_the_makers_figure_replaces_the_guide():
    """A limit set with other numbers moves the limit."""
    rule = criterion("rudder-bearing-clearance")
    own = rule.limit_set.with_limits({"base": 1.5, "share": 0.1}, "maker's manual")
    assert 1.9 == rule.apply({"clearance": 1, "diameter": 400}, own).limit


@pytest.mark.parametrize(
    ("expected", "error", "position"),
    [
        ("good", 1, "amidships"),
        ("poor", 1.1, "amidships"),
        ("good", 2.5, "elsewhere"),
        ("poor", 2.6, "elsewhere"),
        ("good", 0, "elsewhere"),
    ],
)
def test_an_indicator_is_true_within_one_degree_amidships(judge, expected, error, position):
    """And within 2.5 elsewhere."""
    assert expected == judge("rudder-indicator", error=error, position=position).rating


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("steering-main-time", {"time": 0.5}),
        ("steering-main-time", {"condition": "in dock"}),
        ("steering-auxiliary-time", {"trial_speed": 41}),
        ("rudder-bearing-clearance", {"diameter": 49}),
        ("rudder-indicator", {"error": -1}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """No instant rudder, no unknown condition, no sign."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)


@pytest.mark.parametrize(
    ("expected", "angle", "gear"), [(100, 230, "main"), (60, 30, "auxiliary"), (50, 115, "main")]
)
def test_the_time_follows_angle_and_rate(judge, expected, angle, gear):
    """2.3° a second for the main, 0.5 for the auxiliary gear."""
    assert expected == judge("azimuth-turning-time", time=10, angle=angle, gear=gear).limit


@pytest.mark.parametrize(
    ("expected", "time", "gear"),
    [
        ("good", 50, "main"),
        ("poor", 50.01, "main"),
        ("good", 230, "auxiliary"),
        ("poor", 230.1, "auxiliary"),
    ],
)
def test_a_slow_unit_is_poor_since_the_rate_is_only_recalled(judge, expected, time, gear):
    """Over the time the rule would fail it, and its mark holds it at poor."""
    assert expected == judge("azimuth-turning-time", time=time, angle=115, gear=gear).rating


def test_the_rate_is_in_the_note(judge):
    """The note gives degrees a second."""
    assert any(
        "6.5° a second" in note for note in judge("azimuth-turning-time", time=10, angle=65).notes
    )


@pytest.mark.parametrize(
    "changes", [{"angle": 9}, {"angle": 361}, {"time": 0.4}, {"gear": "emergency"}]
)
def test_a_small_turn_and_an_unknown_gear_are_refused(judge, changes):
    """Small turns say nothing about a rate."""
    with pytest.raises(CannotJudge):
        judge("azimuth-turning-time", **changes)
