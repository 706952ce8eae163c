"""Gauging reports: rates, the area of a zone and the number of points, at their limits and what is
refused.
"""

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.hull.gauging import least_points


@pytest.mark.parametrize(
    ("rating", "gauged", "zone"),
    [
        ("good", 0.3708, "deck or bottom"),
        ("failed", 0.3707, "deck or bottom"),
        ("good", 0.3502, "neutral axis"),
        ("poor", 0.3501, "neutral axis"),
    ],
)
def test_a_zone_keeps_its_share(judge, rating, gauged, zone):
    """Of 0.412 m², 90 % are 0.3708 and 85 % are 0.3502.

    The recalled figure may warn and not fail.
    """
    assert rating == judge("girder-zone", gauged=gauged, zone=zone).rating


def test_a_zone_larger_than_built_is_refused(judge):
    """More area than as built is another section."""
    with pytest.raises(CannotJudge, match="no steel grows") as caught:
        judge("girder-zone", gauged=0.413)

    assert "gauged" == caught.value.input


@pytest.mark.parametrize(
    ("rating", "points", "plates", "extent"),
    [
        ("good", 10, 30, "selected plates"),
        ("poor", 9, 30, "selected plates"),
        ("good", 60, 30, "all plates"),
        ("poor", 59, 30, "all plates"),
        ("good", 11, 31, "selected plates"),
        ("poor", 10, 31, "selected plates"),
        ("good", 1, 1, "selected plates"),
    ],
)
def test_a_report_needs_points_enough(judge, rating, points, plates, extent):
    """One point on one plate in three, rounded up, or two on each."""
    assert rating == judge("gauging-points", points=points, plates=plates, extent=extent).rating


def test_a_third_is_rounded_up():
    """31 plates need 11 points, not 10."""
    assert 11 == least_points(31, "selected plates")
