"""Azimuth units: both rates from both sides."""

import pytest

from inspector.criteria.azimuth import turning_limit
from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(("expected", "angle", "gear"), [(100, 230, "main"), (60, 30, "auxiliary"), (50, 115, "main")])
def test_the_time_follows_angle_and_rate(expected, angle, gear):
    """2.3° a second for the main, 0.5 for the auxiliary gear."""
    assert expected == turning_limit(angle, gear)


@pytest.mark.parametrize(
    ("expected", "time", "gear"), [("good", 50, "main"), ("poor", 50.01, "main"), ("good", 230, "auxiliary"), ("poor", 230.1, "auxiliary")]
)
def test_a_slow_unit_is_poor_since_the_rate_is_only_recalled(judge, expected, time, gear):
    """Over the time the rule would fail it, and its mark holds it at poor."""
    assert expected == judge("azimuth-turning-time", time=time, angle=115, gear=gear).rating


def test_the_rate_is_told(judge):
    """The note gives degrees a second."""
    assert any("6.5° a second" in note for note in judge("azimuth-turning-time", time=10, angle=65).notes)


@pytest.mark.parametrize("changes", [{"angle": 9}, {"angle": 361}, {"time": 0.4}, {"gear": "emergency"}])
def test_what_lies_outside_is_refused(judge, changes):
    """Small turns say nothing about a rate."""
    with pytest.raises(CannotJudge):
        judge("azimuth-turning-time", **changes)
