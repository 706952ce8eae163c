"""The working deck: load, counted length and area at their limits."""

import pytest

from inspector.criteria.core.judgement import CannotJudge


@pytest.mark.parametrize(
    ("rating", "mass", "total"),
    [
        ("good", 2340, None),
        ("poor", 2340.1, None),
        ("good", 1200, 1200),
        ("poor", 1200.1, 1200),
        ("good", 2340, 5000),
        ("poor", 2341, 5000),
    ],
)
def test_the_smaller_of_plan_and_booklet_counts(judge, rating, mass, total):
    """468 m² at 5 t/m² are 2340 t; a booklet's total of 1200 t comes first."""
    assert rating == judge("deck-load", mass=mass, total=total).rating


def test_without_the_booklet_s_total_the_note_asks_for_it(judge):
    """The plan alone often says too much."""
    assert any("look for both" in note for note in judge("deck-load").notes)
    assert not any("look for both" in note for note in judge("deck-load", total=1200).notes)


@pytest.mark.parametrize(
    ("rating", "claimed"), [("good", 42.7), ("poor", 42.69), ("good", 48.8), ("poor", 48.81)]
)
def test_a_counted_length_agrees_within_one_pitch(judge, rating, claimed):
    """15 pitches of 3.05 m are 45.75 m, 3.05 m either way."""
    assert rating == judge("deck-pitch", claimed=claimed).rating


@pytest.mark.parametrize(
    ("rating", "claimed"), [("good", 430.825), ("fair", 430.8), ("good", 476.175), ("poor", 476.2)]
)
def test_an_area_agrees_within_five_per_cent(judge, rating, claimed):
    """36.0 by 13.0 m less 14.5 m² are 453.5 m²; more on paper is the worse of the two."""
    assert rating == judge("deck-area", claimed=claimed).rating


def test_more_deducted_than_there_is_is_refused(judge):
    """Winch and hatches cannot take more than the deck."""
    with pytest.raises(CannotJudge, match="leaves nothing"):
        judge("deck-area", deducted=468)
