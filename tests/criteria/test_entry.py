"""Around the readings of an enclosed space: order, age, instrument, calibration."""

from itertools import permutations

import pytest

from inspector.criteria.entry import ORDER
from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import criterion


@pytest.mark.parametrize("tested", list(permutations(ORDER)))
def test_one_order_of_six_is_that_of_the_rule(judge, tested):
    """Oxygen, then flammable gas, then toxic gas."""
    judgement = judge("test-order", **dict(zip(("first", "second", "third"), tested, strict=True)))
    assert ("in the order of the rule" if tested == ORDER else "out of order") == judgement.band
    assert judgement.rating is None


def test_an_order_that_tests_one_gas_twice_is_refused(judge):
    """Then another was not tested at all."""
    with pytest.raises(CannotJudge, match="oxygen stands twice"):
        judge("test-order", second="oxygen")


@pytest.mark.parametrize(("band", "minutes"), [("inside the interval", 0), ("inside the interval", 15), ("test again", 15.1), ("test again", 1440)])
def test_readings_grow_old(judge, band, minutes):
    """Fifteen minutes by common practice."""
    judgement = judge("reading-age", minutes=minutes)
    assert (band, None) == (judgement.band, judgement.rating)


def test_the_ship_s_own_interval_may_be_shorter():
    """The permit may ask for ten minutes."""
    rule = criterion("reading-age")
    assert "test again" == rule.apply({"minutes": 11}, rule.profile.with_limits({"longest": "10"}, "The ship's entry permit")).band


@pytest.mark.parametrize("lacking", ["oxygen", "flammable", "hydrogen_sulphide", "carbon_monoxide", "remote"])
def test_an_instrument_that_lacks_one_thing_is_short(judge, lacking):
    """Four gases, and reach from outside."""
    assert "poor" == judge("entry-instrument", **{lacking: "no"}).rating


def test_an_instrument_with_everything_is_as_asked(judge):
    """Carbon dioxide is told as a note, because the convention does not name it."""
    judgement = judge("entry-instrument")
    assert "good" == judgement.rating
    assert any("Carbon dioxide" in note for note in judgement.notes)


@pytest.mark.parametrize(
    ("rating", "calibrated", "used"), [("good", "2026-01-01", "2026-06-30"), ("failed", "2026-01-01", "2026-07-01"), ("failed", None, "2026-07-01")]
)
def test_calibration_holds_to_its_last_day_and_an_unknown_one_not_at_all(judge, rating, calibrated, used):
    """180 days from 1 January 2026 end on 30 June."""
    assert rating == judge("meter-calibration", calibrated=calibrated, used=used).rating


def test_a_calibration_after_the_reading_is_refused(judge):
    """One of the two dates is wrong."""
    with pytest.raises(CannotJudge, match="lies after the readings"):
        judge("meter-calibration", calibrated="2026-11-26")


@pytest.mark.parametrize("name", ["test-order", "reading-age", "entry-instrument", "meter-calibration"])
def test_it_says_that_it_decides_no_entry(judge, name):
    """Permit and people decide."""
    assert any("It decides no entry" in note for note in judge(name).notes)
