"""Noise: every limit at the end of its rounding, whom the code binds, and the day of one person."""

from datetime import date

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.noise import LIMITS, binding


@pytest.mark.parametrize("space", LIMITS)
def test_each_space_complies_up_to_its_rounded_limit(judge, space):
    """60.4 rounds to 60 and complies, 60.5 to 61 and does not; in both columns."""
    for tonnage, limit in zip((9999, 10_000), LIMITS[space], strict=True):
        found = [judge("noise-level", level=limit + more, space=space, tonnage=tonnage).rating for more in (0, 0.4, 0.5)]
        assert ["good", "good", "poor"] == found


@pytest.mark.parametrize(
    ("expected", "tonnage", "built"),
    [(True, 1600, date(2015, 1, 1)), (False, 1599, date(2015, 1, 1)), (False, 1600, date(2014, 12, 31)), (False, 900, date(1998, 5, 31))],
)
def test_the_code_binds_by_tonnage_and_keel(expected, tonnage, built):
    """From 1600 GT and, without a contract date, from keels of 2015."""
    assert expected is binding(tonnage, built)


def test_an_older_vessel_is_compared_and_not_held_against_it(judge):
    """A cabin of 70 dB(A) in a vessel of 1998 is over in comparison, and fair."""
    judgement = judge("noise-level", level=70, built="1998-05-31")
    assert ("over in comparison", "fair") == (judgement.band, judgement.rating)
    assert "does not bind" in judgement.sentence


@pytest.mark.parametrize(("expected", "level", "watch"), [("good", 90, "manned"), ("poor", 90.1, "manned"), ("good", 110, "unmanned"),
    ("poor", 110.1, "unmanned")])
def test_a_machinery_space_is_limited_by_its_watch(judge, expected, level, watch):
    """90 dB(A) manned, 110 unmanned."""
    assert expected == judge("machinery-space-noise", level=level, watch=watch).rating


@pytest.mark.parametrize(("expected", "level"), [("good", 84.7), ("poor", 84.75), ("poor", 85)])
def test_a_day_is_over_just_above_84_7_for_eight_hours(judge, expected, level):
    """Eight hours at 84.7 beside sixteen at 60 stay within 80 dB(A), at 84.75 no longer."""
    assert expected == judge("noise-exposure", level=level).rating


@pytest.mark.parametrize("changes", [{"hours": 7}, {"hours": 9}, {"third_level": 70, "third_hours": 1}])
def test_a_day_has_24_hours(judge, changes):
    """Hours that do not make a day are refused with their sum."""
    with pytest.raises(CannotJudge, match="a day has 24 h"):
        judge("noise-exposure", **changes)


@pytest.mark.parametrize("changes", [{"third_level": 70}, {"fourth_hours": 2}])
def test_a_level_without_its_hours_is_refused(judge, changes):
    """Half a part is no part."""
    with pytest.raises(CannotJudge, match="without the other"):
        judge("noise-exposure", **changes)


@pytest.mark.parametrize(
    ("band", "level"),
    [("none asked", 80), ("advised", 80.1), ("advised", 85), ("protection", 85.1), ("protection", 120), ("stay out", 120.1)],
)
def test_ears_are_told_and_never_rated(judge, band, level):
    """Protection begins above 85; the level speaks of people and not of the vessel."""
    judgement = judge("hearing-protection", level=level)
    assert (band, None) == (judgement.band, judgement.rating)


@pytest.mark.parametrize("changes", [{"level": 141}, {"tonnage": 0}, {"space": "cabin"}])
def test_what_lies_outside_is_refused(judge, changes):
    """No level above 140, no ship without tonnage, no space of another name."""
    with pytest.raises(CannotJudge):
        judge("noise-level", **changes)
