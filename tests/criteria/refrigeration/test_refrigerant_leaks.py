"""Leak checks in date, and charges against rooms."""

import pytest

from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("expected", "on"), [("good", "2026-11-25"), ("good", "2027-02-01"), ("poor", "2027-02-02")]
)
def test_a_check_is_in_date_through_its_last_day(judge, expected, on):
    """60 kg of R-404A every six months: checked on 1 August, due by 1 February."""
    assert expected == judge("refrigerant-leak-check", on=on).rating


def test_fixed_detection_doubles_the_interval(judge):
    """Six months become twelve."""
    assert judge("refrigerant-leak-check", on="2027-08-01", detection="yes").rating == "good"
    assert judge("refrigerant-leak-check", on="2027-08-01", detection="no").rating == "poor"


def test_a_small_charge_asks_for_no_check(judge):
    """1.27 kg of R-404A are under 5 t of CO2, and ammonia is outside the scheme."""
    assert judge("refrigerant-leak-check", charge=1.27, last="2010-01-01").band == "none asked"
    assert (
        judge("refrigerant-leak-check", refrigerant="R-717", charge=500, last="2010-01-01").band
        == "none asked"
    )


def test_the_source_of_hfo_is_only_recalled(judge):
    """Its thresholds were not read."""
    marks = [
        judge("refrigerant-leak-check", refrigerant=gas).source.mark
        for gas in ("R-404A", "R-1234yf")
    ]
    assert marks == ["seen", "seen"]


@pytest.mark.parametrize(
    ("expected", "volume"), [("poor", 85), ("poor", 115), ("good", 116), ("good", 300)]
)
def test_a_charge_is_compared_with_the_room(judge, expected, volume):
    """60 kg of R-404A at 0.52 kg/m³ need 115.4 m³."""
    assert expected == judge("refrigerant-practical-limit", volume=volume).rating


@pytest.mark.parametrize(
    ("name", "changes"),
    [
        ("refrigerant-leak-check", {"last": "2026-11-26"}),
        ("refrigerant-leak-check", {"refrigerant": "R-999"}),
        ("refrigerant-practical-limit", {"volume": 0}),
        ("refrigerant-practical-limit", {"refrigerant": "R-22"}),
    ],
)
def test_what_lies_outside_is_refused(judge, name, changes):
    """Checks to come, unknown gases and rooms without volume."""
    with pytest.raises(CannotJudge):
        judge(name, **changes)
