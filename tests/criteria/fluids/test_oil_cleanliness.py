"""Cleanliness codes: counts to codes, codes to a target, and what is no code."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.checklists.registry import criterion
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.fluids.oil_cleanliness import UPPER, code, parse_code, written
from inspector.values.units import convert


@pytest.mark.parametrize(
    ("band", "rating", "text"),
    [
        ("clean enough", "good", "18/16/13"),
        ("clean enough", "good", "17/16/12"),
        ("one step over", "fair", "19/16/13"),
        ("one step over", "fair", "18/16/14"),
        ("over the target", "poor", "20/16/13"),
        ("over the target", "poor", "15/15/15"),
        ("clean enough", "good", "-/16/13"),
        ("over the target", "poor", "> 28/16/13"),
    ],
)
def test_the_worst_size_decides_against_the_target(judge, band, rating, text):
    """18/16/13 for proportional valves; one step over is fair, more is poor."""
    judgement = judge("oil-cleanliness-code", code=text)
    assert (band, rating) == (judgement.band, judgement.rating)


@pytest.mark.parametrize(
    "text", ["18", "16/18", "18-16-13", "18/16/13/10", "clean", "30/16/13", "16/18/13", "-/13/16"]
)
def test_what_is_no_code_is_refused(judge, text):
    """One size, other strokes, a code above the table, more large particles than small ones."""
    with pytest.raises(CannotJudge):
        judge("oil-cleanliness-code", code=text)


@pytest.mark.parametrize(
    ("band", "larger_6"),
    [
        ("clean enough", 640),
        ("one step over", 640.1),
        ("one step over", 1280),
        ("over the target", 1301),
    ],
)
def test_counts_are_coded_and_held_against_the_target(judge, band, larger_6):
    """640 particles of 6 µm are still code 16."""
    assert band == judge("oil-cleanliness", larger_4=2500, larger_6=larger_6, larger_14=60).band


def test_a_microscope_counts_two_sizes(judge):
    """Without the smallest size the code has a dash."""
    assert "code -/16/13" in judge("oil-cleanliness", larger_4=None).sentence


def test_counts_that_rise_with_size_are_refused(judge):
    """Each count includes all larger particles."""
    with pytest.raises(CannotJudge, match="count includes all larger particles"):
        judge("oil-cleanliness", larger_14=501)


def test_a_count_in_100_ml_becomes_a_hundredth():
    """Forgetting the factor would shift the code by 6 or 7."""
    assert (16, 23) == (code(convert(64_000, "per 100 ml", "per ml")), code(64_000))


@given(st.floats(0, 1e8), st.floats(0, 1e8))
def test_more_particles_never_make_a_lower_code(one, other):
    """The code rises with the count."""
    fewer, more = sorted((one, other))
    assert code(fewer) <= code(more) <= len(UPPER)


@given(st.lists(st.integers(0, 28), min_size=3, max_size=3))
def test_a_written_code_reads_back(codes):
    """What is printed can be typed in again."""
    falling = tuple(sorted(codes, reverse=True))
    assert falling == parse_code(written(falling))


def test_a_code_of_two_parts_is_that_of_the_two_larger_sizes(judge):
    """16/13 as older reports print it is -/16/13."""
    judgement = judge("oil-cleanliness-code", code="16/13", service="proportional valves")
    assert "clean enough" == judgement.band
    assert "-/16/13" in judgement.sentence


def test_the_makers_target_wins():
    """A looser target of the maker passes what the usual one does not."""
    rule = criterion("oil-cleanliness-code")
    own = rule.limit_set.with_limits({"proportional_valves_4": "20"}, "Winch maker's manual, 7.3")
    assert (
        "clean enough"
        == rule.apply({"code": "20/16/13", "service": "proportional valves"}, own).band
    )
