"""Oily water, sewage, incinerator, sludge: each limit and each date from both sides."""

import pytest

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.pollution import sludge_volume


@pytest.mark.parametrize(("expected", "content"), [("good", 0), ("good", 14.9), ("good", 15), ("failed", 15.1)])
def test_fifteen_parts_may_go_overboard(judge, expected, content):
    """And not one tenth more."""
    assert expected == judge("oily-water-content", content=content).rating


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


@pytest.mark.parametrize(("expected", "on"), [("good", "2026-02-28"), ("poor", "2026-03-01")])
def test_the_alarm_is_calibrated_within_five_years(judge, expected, on):
    """The day itself is still in date."""
    assert expected == judge("oily-water-equipment", calibrated="2021-02-28", on=on).rating


def test_a_calibration_of_tomorrow_is_refused(judge):
    """A date after the day was misread."""
    with pytest.raises(CannotJudge, match="lies after the day"):
        judge("oily-water-equipment", calibrated="2026-11-26", on="2026-11-25")


@pytest.mark.parametrize(
    ("expected", "installed", "standard"),
    [
        ("fair", "2009-12-31", "MEPC.2(VI)"),
        ("poor", "2010-01-01", "MEPC.2(VI)"),
        ("fair", "2010-01-01", "MEPC.159(55)"),
        ("fair", "2015-12-31", "MEPC.159(55)"),
        ("poor", "2016-01-01", "MEPC.159(55)"),
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
    ("expected", "temperature", "kind"), [("poor", 849.9, "continuous"), ("good", 850, "continuous"), ("poor", 599, "batch"), ("good", 600, "batch")]
)
def test_an_incinerator_is_hot_enough(judge, expected, temperature, kind):
    """850 °C fed continuously, 600 in batches."""
    assert expected == judge("incinerator-temperature", temperature=temperature, kind=kind).rating


@pytest.mark.parametrize(("expected", "volume"), [("poor", 1.49), ("good", 1.5)])
def test_a_sludge_tank_holds_what_comes_between_two_disposals(judge, expected, volume):
    """10 t a day over 30 days of distillate give 1.5 m³."""
    assert sludge_volume(10, 30, "distillate") == 1.5
    assert expected == judge("sludge-tank", volume=volume).rating


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("oily-water-content", {"content": 10_001}),
        ("oily-water-equipment", {"standard": "plate"}),
        ("sewage-plant", {"installed": "1969-12-31"}),
        ("sewage-plant", {"persons": 0}),
        ("incinerator-temperature", {"temperature": -1}),
        ("sludge-tank", {"days": 0}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Beyond the range of each input nothing is told."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)
