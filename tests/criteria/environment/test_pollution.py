"""Oily water, sewage, incinerator, sludge: each limit and each date from both sides."""

import pytest

from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("expected", "installed", "standard"),
    [
        ("fair", "2004-12-31", "MEPC.60(33)"),
        ("failed", "2005-01-01", "MEPC.60(33)"),
        ("failed", "2005-01-01", "A.393(X)"),
        ("good", "2005-01-01", "MEPC.107(49)"),
        ("good", "2003-01-01", "MEPC.107(49)"),
        ("poor", "2003-01-01", "none shown"),
        ("poor", "2010-01-01", "none shown"),
    ],
)
def test_equipment_of_2005_and_later_has_the_present_standard(judge, expected, installed, standard):
    """Older equipment stays lawful, a missing plate is to be found."""
    assert expected == judge("oily-water-equipment", installed=installed, standard=standard).rating


@pytest.mark.parametrize(
    ("name", "changes", "said"),
    [
        (
            "oily-water-equipment",
            {"installed": "2009-06-01", "calibrated": "2009-05-31", "on": "2010-01-01"},
            "2009-05-31 is before .*2009-06-01",
        ),
        (
            "sewage-plant",
            {"installed": "2009-06-01", "standard": "MEPC.227(64)"},
            "adopted in 2012.*fitted on 2009-06-01",
        ),
        (
            "oily-water-equipment",
            {"installed": "2002-12-31", "standard": "MEPC.107(49)"},
            "adopted in 2003.*fitted on 2002-12-31",
        ),
    ],
)
def test_papers_that_contradict_each_other_are_refused_with_both(judge, name, changes, said):
    """The years of adoption are from memory: MEPC.227(64) is of October 2012."""
    with pytest.raises(CannotJudge, match=said):
        judge(name, **changes)


@pytest.mark.parametrize(("expected", "on"), [("good", "2026-02-28"), ("poor", "2026-03-01")])
def test_the_alarm_is_calibrated_within_five_years(judge, expected, on):
    """The day itself is still in date."""
    assert expected == judge("oily-water-equipment", calibrated="2021-02-28", on=on).rating


def test_a_calibration_of_tomorrow_is_refused(judge):
    """A date after the day was misread."""
    with pytest.raises(CannotJudge, match="is after 'Day' of 2026-11-25"):
        judge("oily-water-equipment", calibrated="2026-11-26", on="2026-11-25")


@pytest.mark.parametrize(
    ("expected", "installed", "standard"),
    [
        ("fair", "2009-12-31", "MEPC.2(VI)"),
        ("failed", "2010-01-01", "MEPC.2(VI)"),
        ("fair", "2010-01-01", "MEPC.159(55)"),
        ("fair", "2015-12-31", "MEPC.159(55)"),
        ("failed", "2016-01-01", "MEPC.159(55)"),
        ("good", "2016-01-01", "MEPC.227(64)"),
        ("poor", "2016-01-01", "none shown"),
    ],
)
def test_a_sewage_plant_follows_the_day_it_was_fitted(judge, expected, installed, standard):
    """The dates are recalled, so that nothing fails."""
    assert expected == judge("sewage-plant", installed=installed, standard=standard).rating


@pytest.mark.parametrize(("expected", "persons"), [("fair", 30), ("poor", 31)])
def test_a_plant_is_large_enough_for_those_on_board(judge, expected, persons):
    """Thirty for thirty."""
    assert expected == judge("sewage-plant", capacity=30, persons=persons).rating


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("oily-water-equipment", {"standard": "plate"}),
        ("sewage-plant", {"installed": "1969-12-31"}),
        ("sewage-plant", {"persons": 0}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Beyond the range of each input nothing is judged."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)
