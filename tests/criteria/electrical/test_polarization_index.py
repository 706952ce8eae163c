"""The polarization index: each minimum from both sides, and where it says nothing."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("expected", "ten_minutes", "thermal_class"),
    [
        ("good", 150, "A"),
        ("poor", 149, "A"),
        ("good", 200, "B"),
        ("poor", 199, "B"),
        ("good", 200, "F"),
        ("poor", 199, "F"),
        ("good", 200, "H"),
        ("poor", 199, "H"),
        ("poor", 0, "H"),
    ],
)
def test_the_index_is_compared_with_its_class(judge, expected, ten_minutes, thermal_class):
    """1.5 for class A and 2.0 for the others, themselves enough.

    A low index alone is poor and never failed.
    """
    judgement = judge(
        "polarization-index", one_minute=100, ten_minutes=ten_minutes, thermal_class=thermal_class
    )
    assert expected == judgement.rating


@pytest.mark.parametrize(("rating", "one_minute"), [("poor", 5000), (None, 5001)])
def test_above_five_gigaohms_the_index_says_nothing(judge, rating, one_minute):
    """Then it is not assessed rather than failed."""
    judgement = judge("polarization-index", one_minute=one_minute, ten_minutes=7000)
    assert rating == judgement.rating
    assert (judgement.band == "not assessed") == (rating is None)


@pytest.mark.parametrize(
    ("one_minute", "least", "band", "rating"),
    [
        (0.002, None, "below the minimum resistance", "poor"),
        (4.99, None, "below the minimum resistance", "poor"),
        (5, None, "at or above the minimum", "good"),
        (5.01, None, "at or above the minimum", "good"),
        (99.9, 100, "below the minimum resistance", "poor"),
        (100, 100, "at or above the minimum", "good"),
        (100.1, 100, "at or above the minimum", "good"),
    ],
)
def test_a_dead_winding_is_not_good_by_its_index(judge, one_minute, least, band, rating):
    """IEEE 43-2013 (memory): a machine is fit for service where resistance and index both reach
    their minima; 5 MΩ under 1 kV, 100 MΩ form-wound above it (table 3).
    """
    judgement = judge(
        "polarization-index", one_minute=one_minute, ten_minutes=5 * one_minute, least=least
    )
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(("flagged", "ten_minutes"), [(False, 500), (True, 501)])
def test_a_very_high_index_is_flagged(judge, flagged, ten_minutes):
    """Above 5 an old winding may be dried out."""
    notes = judge("polarization-index", one_minute=100, ten_minutes=ten_minutes).notes
    assert flagged == any("brittle" in note for note in notes)


@pytest.mark.parametrize("missing", ["one_minute", "ten_minutes"])
def test_an_index_needs_both_readings(judge, missing):
    """One reading makes no ratio."""
    with pytest.raises(CannotJudge, match=f"'{missing}'"):
        judge("polarization-index", **{missing: ""})


def test_the_ladder_of_the_index_ends_where_the_index_says_nothing():
    """Beside 12 000 MΩ after ten minutes, any one-minute reading from 5 to 5000 MΩ is good."""
    ladder = criterion("polarization-index").bands_for(
        {"ten_minutes": 12_000, "thermal_class": "F"}
    )
    assert [(5, "poor"), (5000, "good"), (None, None)] == [
        (step.upto, step.rating) for step in ladder.bands
    ]
