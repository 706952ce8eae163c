"""What worked examples cannot show of declared criteria: a surveyor's own limits, and promises
over many values."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.checklists.registry import CRITERIA, criterion
from tests.criteria.band_ends import band_ends

LANDING = sorted(name for name in CRITERIA if name.startswith("landing-"))


def judged_with(name, values, limits, cited):
    """Judge with limits of the surveyor's own."""
    rule = criterion(name)
    return rule.apply(values, rule.limit_set.with_limits(limits, cited))


def test_a_minimum_of_the_surveyor_with_its_text_may_fail():
    """A cited limit replaces the usual one, and then the judgement names it and may fail."""
    values = {"resistance": 1.5, "voltage": 480}
    judgement = judged_with(
        "circuit-insulation", values, {"least": "2"}, "Class rules, part 4, table 9"
    )
    assert (2.0, "failed") == (judgement.limit, judgement.rating)
    assert "cited by the surveyor" == judgement.source.mark


def test_a_surveyors_alarm_above_the_other_bands_comes_first():
    """With 500 ohms a volt the alarm of 480 V is 240 kΩ, above the usual figure for locating."""
    values = {"resistance": 200, "voltage": 480}
    judgement = judged_with("earth-fault", values, {"alarm": 500}, "maker's manual")
    assert "at the alarm" == judgement.band


@pytest.mark.parametrize(
    ("band", "name", "values", "limits"),
    [
        ("spare", "breaker-loading", {"current": 400, "rating": 400}, {"continuous": "100"}),
        ("acceptable", "pull-down-time", {"time": 9, "store": "frozen"}, {"frozen": 8}),
        ("test again", "reading-age", {"minutes": 11}, {"longest": "10"}),
    ],
)
def test_a_limit_of_the_surveyor_replaces_the_usual_one(band, name, values, limits):
    """A breaker marked for 100 %, a maker who promises eight hours, a permit of ten minutes."""
    assert band == judged_with(name, values, limits, "The text that he cites").band


@given(st.integers(1, 9999), st.integers(1, 9999))
def test_a_greater_rating_never_asks_for_a_smaller_proof_load(first, second):
    """There is no jump at 20 or 50 t."""
    low, high = sorted((first / 10, second / 10))
    assert band_ends("lifting-proof-load", swl=low) <= band_ends("lifting-proof-load", swl=high)


@pytest.mark.parametrize("name", LANDING)
def test_nothing_lets_a_helicopter_land(valid, name):
    """Every judgement says that without certificate there are no operations; none rates good."""
    judgement = criterion(name).apply(valid(name))
    assert any("there are no operations, whatever this says" in note for note in judgement.notes)
    assert "good" != judgement.rating
    assert "fit to land" not in f"{judgement.sentence} {judgement.band}"
