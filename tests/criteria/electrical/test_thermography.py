"""Thermography: the published bands and the gaps between them, and why light load is never good."""

import pytest

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.electrical.thermography import rise_at_full_load

NONE, POSSIBLE, LIKELY, WATCH, SERIOUS = (
    "no rise",
    "possible defect",
    "likely defect",
    "watch until repaired",
    "serious defect",
)


@pytest.mark.parametrize(
    ("expected", "rise"),
    [
        (NONE, -3),
        (NONE, 0),
        (POSSIBLE, 0.1),
        (POSSIBLE, 3),
        (LIKELY, 3.1),
        (LIKELY, 3.5),
        (LIKELY, 15),
        (SERIOUS, 15.1),
    ],
)
def test_bands_over_a_similar_part(judge, expected, rise):
    """The printed 1-3, 4-15 and over 15 K become half-open bands on the cautious side."""
    assert expected == judge("thermographic-rise", over_similar=rise).band


@pytest.mark.parametrize(
    ("expected", "rise"),
    [
        (NONE, 0),
        (POSSIBLE, 10),
        (LIKELY, 10.1),
        (LIKELY, 10.4),
        (LIKELY, 20),
        (WATCH, 20.1),
        (WATCH, 40),
        (SERIOUS, 40.1),
    ],
)
def test_bands_over_the_air(judge, expected, rise):
    """The printed 1-10, 11-20, 21-40 and over 40 K likewise."""
    assert expected == judge("thermographic-rise", over_similar=None, over_ambient=rise).band


@pytest.mark.parametrize(
    ("expected", "similar", "ambient"), [(SERIOUS, 12, 45), (SERIOUS, 21, 27), (WATCH, 2, 30)]
)
def test_the_worse_column_governs(judge, expected, similar, ambient):
    """Both columns are read and the worse answer counts."""
    judgement = judge("thermographic-rise", over_similar=similar, over_ambient=ambient)
    assert expected == judgement.band


@pytest.mark.parametrize(
    ("expected", "load"), [("not conclusive", 0), ("not conclusive", 39.9), (NONE, 40)]
)
def test_under_forty_per_cent_load_nothing_is_concluded(judge, expected, load):
    """A fault stays cool at light load, so the answer carries no rating."""
    judgement = judge("thermographic-rise", over_similar=0, load=load)
    assert expected == judgement.band
    assert (judgement.rating is None) == (load < 40)


@pytest.mark.parametrize("rise", [-1, 0, 3, 50])
def test_light_load_is_never_good(judge, rise):
    """Whatever the rise, under 40 % there is no rating at all."""
    assert judge("thermographic-rise", over_similar=rise, load=39).rating is None


@pytest.mark.parametrize(
    ("expected", "load"), [("fair", 100), ("fair", 97), ("poor", 60), ("poor", 41)]
)
def test_part_load_worsens_the_rating_and_says_what_full_load_would_show(judge, expected, load):
    """2.9 K at full load is a possible defect.

    At part load it means more, and the note gives the range.
    """
    judgement = judge("thermographic-rise", over_similar=2.9 if load > 98 else 2.8, load=load)
    assert (expected, POSSIBLE) == (judgement.rating, judgement.band)
    assert (load < 100) == any("At full load expect" in note for note in judgement.notes)


def test_a_correction_alone_never_fails_a_part(judge):
    """12 K at 50 % is 36 to 48 K at full load.

    Poor and not failed, since the table knows no correction.
    """
    judgement = judge("thermographic-rise", over_similar=12, load=50)
    assert judgement.rating == "poor"
    assert any("36.38 K to 48 K" in note for note in judgement.notes)


def test_a_serious_rise_fails_at_any_conclusive_load(judge):
    """The table's own fourth level is published."""
    assert judge("thermographic-rise", over_similar=15.1, load=50).rating == "failed"


def test_overload_does_not_excuse(judge):
    """Above rated current the rise is taken as measured."""
    judgement = judge("thermographic-rise", over_similar=16, load=150)
    assert judgement.rating == "failed"
    assert rise_at_full_load(16, 150, 2) < 15


def test_without_any_rise_it_cannot_judge(judge):
    """One of the two columns is needed."""
    with pytest.raises(CannotJudge, match="has neither"):
        judge("thermographic-rise", over_similar=None)


def test_without_the_load_it_cannot_judge(judge):
    """A rise without its load says nothing."""
    with pytest.raises(CannotJudge, match="'load'"):
        judge("thermographic-rise", load=None)


@pytest.mark.parametrize("load", [20, 40, 55, 80, 99.9, 100, 120])
@pytest.mark.parametrize("air", [None, -5, 0, 5, 15, 35, 45])
def test_the_ladder_speaks_like_the_rule_at_every_load(judge, load, air):
    """Over a similar part from -1 to 60 K, alone and beside a rise over the air."""
    ladder = criterion("thermographic-rise").bands_for({"load": load, "over_ambient": air})
    for tenths in range(-10, 600, 7):
        judgement = judge(
            "thermographic-rise", over_similar=tenths / 10, over_ambient=air, load=load
        )
        step = ladder.band_of(tenths / 10)
        assert (step.band, step.rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    ("rating", "rise"), [("fair", 0.74), ("fair", 0.75), ("poor", 0.76), ("poor", 15)]
)
def test_under_part_load_a_band_is_split_where_full_load_would_be_worse(judge, rating, rise):
    """At 50 % load 0.75 K become 3 K at full load by the worse exponent, 2 (seen), and 0.76 K are
    3.04 K, a level higher.
    """
    assert rating == judge("thermographic-rise", over_similar=rise, load=50).rating
