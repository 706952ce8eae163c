"""Around the readings of an enclosed space: order, age, instrument, calibration."""

from itertools import permutations

import pytest

from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.safety.enclosed_space_entry import ORDER


@pytest.mark.parametrize("tested", list(permutations(ORDER)))
def test_one_order_of_six_is_that_of_the_rule(judge, tested):
    """Oxygen, then flammable gas, then toxic gas."""
    judgement = judge("test-order", **dict(zip(("first", "second", "third"), tested, strict=True)))
    assert ("in the order of the rule" if tested == ORDER else "out of order") == judgement.band
    assert judgement.rating is None


def test_an_order_that_tests_one_gas_twice_is_refused(judge):
    """Then another was not tested at all."""
    with pytest.raises(CannotJudge, match="oxygen is named twice"):
        judge("test-order", second="oxygen")


@pytest.mark.parametrize(
    "lacking", ["oxygen", "flammable", "hydrogen_sulphide", "carbon_monoxide", "remote"]
)
def test_an_instrument_that_lacks_one_thing_is_short(judge, lacking):
    """Four gases, and reach from outside."""
    assert "poor" == judge("entry-instrument", **{lacking: "no"}).rating


def test_an_instrument_with_everything_is_as_asked(judge):
    """The four gases of SOLAS XI-1/7 (seen) and carbon dioxide of MSC.581(110) (seen)."""
    assert "good" == judge("entry-instrument").rating


def test_an_instrument_without_carbon_dioxide_is_not_good(judge):
    """MSC.581(110) has a limit for it since December 2025 (seen in circulars)."""
    judgement = judge("entry-instrument", carbon_dioxide="no")
    assert ("without carbon dioxide", "fair") == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("rating", "calibrated", "used"),
    [
        ("good", "2026-01-01", "2026-06-30"),
        ("failed", "2026-01-01", "2026-07-01"),
        ("failed", None, "2026-07-01"),
    ],
)
def test_calibration_holds_to_its_last_day_and_an_unknown_one_not_at_all(
    judge, rating, calibrated, used
):
    """180 days from 1 January 2026 end on 30 June."""
    assert rating == judge("meter-calibration", calibrated=calibrated, used=used).rating


def test_a_calibration_after_the_reading_is_refused(judge):
    """One of the two dates is wrong."""
    with pytest.raises(CannotJudge, match="is after 'Day of the readings'"):
        judge("meter-calibration", calibrated="2026-11-26")


@pytest.mark.parametrize(
    "name", ["test-order", "reading-age", "entry-instrument", "meter-calibration"]
)
def test_it_says_that_it_decides_no_entry(judge, name):
    """Permit and people decide."""
    assert any("It decides no entry" in note for note in judge(name).notes)
