"""Sulphur: both limits and each area's date from both sides."""

import pytest

from inspector.criteria.judgement import CannotJudge


@pytest.mark.parametrize(
    ("expected", "sulphur", "area"),
    [
        ("good", 0.5, "outside"),
        ("failed", 0.501, "outside"),
        ("failed", 0.52, "outside"),
        ("good", 0.1, "Baltic and North Sea"),
        ("failed", 0.12, "Baltic and North Sea"),
        ("good", 0.08, "North America and US Caribbean"),
        ("good", 0.08, "outside"),
    ],
)
def test_half_a_per_cent_outside_and_a_tenth_inside(judge, expected, sulphur, area):
    """The limit itself complies."""
    assert expected == judge("fuel-sulphur", sulphur=sulphur, area=area).rating


@pytest.mark.parametrize(
    ("expected", "area", "on"),
    [
        ("good", "Mediterranean", "2025-04-30"),
        ("failed", "Mediterranean", "2025-05-01"),
        ("good", "Canadian Arctic", "2027-02-28"),
        ("failed", "Canadian Arctic", "2027-03-01"),
        ("good", "Norwegian Sea", "2027-02-28"),
        ("failed", "Norwegian Sea", "2027-03-01"),
    ],
)
def test_an_area_binds_from_its_day(judge, expected, area, on):
    """0.3 % is enough until then."""
    assert expected == judge("fuel-sulphur", sulphur=0.3, area=area, on=on).rating


def test_a_coming_limit_is_announced(judge):
    """The note names the day."""
    assert "2027-03-01" in judge("fuel-sulphur", area="Norwegian Sea").notes[0]


@pytest.mark.parametrize("changes", [{"on": "2019-12-31"}, {"sulphur": 5.1}, {"area": "Pacific"}, {"sulphur": -0.1}])
def test_what_lies_outside_is_refused(judge, changes):
    """Before 2020 other limits held."""
    with pytest.raises(CannotJudge):
        judge("fuel-sulphur", **changes)
