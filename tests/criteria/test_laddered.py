"""The parts that ladders are made of: which band an end belongs to, and how a judgement is told."""

import pytest

from inspector.criteria.laddered import below, between, nearer, told, up_to
from inspector.criteria.source import Source

SOURCE = Source("A text", "an edition", "a clause", "seen")
GOOD, POOR = ("within", "good", "within it"), ("over", "poor", "over it")


@pytest.mark.parametrize(("expected", "value"), [("within", 4.9), ("within", 5), ("over", 5.1)])
def test_up_to_gives_an_end_to_its_own_band(expected, value):
    """At most five."""
    assert expected == up_to("mm", (5, *GOOD), (None, *POOR)).step(value).band


@pytest.mark.parametrize(("expected", "value"), [("over", 4.9), ("within", 5), ("within", 5.1)])
def test_below_gives_an_end_to_the_next_band(expected, value):
    """At least five."""
    assert expected == below("mm", (5, *POOR), (None, *GOOD)).step(value).band


@pytest.mark.parametrize(("expected", "value"), [("low", 1.9), ("within", 2), ("within", 3), ("over", 3.1)])
def test_between_gives_both_ends_to_the_middle(expected, value):
    """Two to three."""
    ladder = between("mm", 2, 3, (None, "low", "fair", "low"), (None, *GOOD), (None, *POOR))
    assert expected == ladder.step(value).band


@pytest.mark.parametrize(("limit", "margin", "value"), [(2, 0.1, 2.1), (3, 0.1, 2.9), (2, -0.5, 1.5), (3, -0.5, 3.5)])
def test_the_nearer_end_gives_limit_and_margin(limit, margin, value):
    """Positive inside, negative outside, in exact decimals."""
    assert (limit, margin) == nearer(value, 2, 3)


def test_a_judgement_is_told_in_one_sentence():
    """Value, what it is held against, meaning; the margin on the good side is positive."""
    ladder = up_to("mm", (5, *GOOD), (None, *POOR))
    judgement = told("a-rule", ladder, 4.8, "A gap", "at most 5 mm", 5, SOURCE)
    assert judgement.sentence == "A gap of 4.8 mm, against at most 5 mm, is within it."
    assert (4.8, 5, 0.2, "good") == (judgement.value, judgement.limit, judgement.margin, judgement.rating)
    assert told("a-rule", below("mm", (5, *POOR), (None, *GOOD)), 4.8, "A gap", "at least 5 mm", 5, SOURCE, at_least=True).margin == -0.2


def test_the_value_may_stand_inside_its_phrase():
    """Where the phrase holds a place for it."""
    judgement = told("a-rule", up_to("mm", (5, *GOOD), (None, *POOR)), 4.8, "A gap of {} on a shaft", "at most 5 mm", 5, SOURCE)
    assert judgement.sentence.startswith("A gap of 4.8 mm on a shaft, against")
