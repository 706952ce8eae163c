"""Gauging reports: rates, the area of a zone and the number of points, at their limits and what is refused."""

import pytest

from inspector.criteria.gauging import least_points
from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(
    ("band", "rate", "changes"),
    [("governing rate", 0.12, {}), ("faster than since new", 0.12, {"as_built": 10, "built_year": 2008}),
     ("governing rate", 0.1, {"previous": 8.5, "as_built": 10.1, "built_year": 2008}), ("no measurable loss", 0.0, {"previous": 8.3}),
     ("no measurable loss", 0.0, {"previous": 8.2})],
)
def test_the_greater_rate_governs(judge, band, rate, changes):
    """8.9 mm of 2021 to 8.3 mm of 2026 is 0.12 mm a year; 10.1 of 2008 would be 0.1; a gain is no loss."""
    judgement = judge("corrosion-rate", **changes)
    assert (band, None) == (judgement.band, judgement.rating)
    assert rate == judgement.value


@pytest.mark.parametrize(
    ("input_name", "changes", "said"),
    [("measured_year", {"measured_year": 2021}, "must lie after"), ("built_year", {"as_built": 10}, "needs both"),
     ("as_built", {"built_year": 2008}, "needs both"),
     ("built_year", {"as_built": 10, "built_year": 2021}, "must lie before")],
)
def test_a_rate_without_its_years_is_refused(judge, input_name, changes, said):
    """A rate needs two readings in the order of their years."""
    with pytest.raises(CannotJudge, match=said) as caught:
        judge("corrosion-rate", **changes)

    assert input_name == caught.value.input


@pytest.mark.parametrize(
    ("rating", "gauged", "zone"),
    [("good", 0.3708, "deck or bottom"), ("failed", 0.3707, "deck or bottom"), ("good", 0.3502, "neutral axis"), ("poor", 0.3501, "neutral axis")],
)
def test_a_zone_keeps_its_share(judge, rating, gauged, zone):
    """Of 0.412 m², 90 % are 0.3708 and 85 % are 0.3502; the recalled figure may warn and not fail."""
    assert rating == judge("girder-zone", gauged=gauged, zone=zone).rating


def test_a_zone_larger_than_built_is_refused(judge):
    """More area than as built is another section."""
    with pytest.raises(CannotJudge, match="cannot exceed") as caught:
        judge("girder-zone", gauged=0.413)

    assert "gauged" == caught.value.input


@pytest.mark.parametrize(
    ("rating", "points", "plates", "extent"),
    [("good", 10, 30, "selected plates"), ("poor", 9, 30, "selected plates"), ("good", 60, 30, "all plates"), ("poor", 59, 30, "all plates"),
     ("good", 11, 31, "selected plates"), ("poor", 10, 31, "selected plates"), ("good", 1, 1, "selected plates")],
)
def test_a_report_needs_points_enough(judge, rating, points, plates, extent):
    """One point on one plate in three, rounded up, or two on each."""
    assert rating == judge("gauging-points", points=points, plates=plates, extent=extent).rating


def test_a_third_is_rounded_up():
    """31 plates need 11 points, not 10."""
    assert 11 == least_points(31, "selected plates")
