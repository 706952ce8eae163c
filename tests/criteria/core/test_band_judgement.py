"""How a judgement follows from a band: its ends, the limit, the margin and the sentence."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.core.band_judgement import judge_between, judge_by_band
from inspector.criteria.core.bands import bands_of, below, beyond, to, watch_and_act
from inspector.criteria.core.decimals import (
    around,
    exact,
    nearer_end,
    percent_of,
    share,
    to_hundredths,
)
from inspector.criteria.core.source import Source

SOURCE = Source.seen("A text", "an edition", "a clause")
GOOD, POOR = ("within", "good", "within it"), ("over", "poor", "over it")
AT_MOST = bands_of("mm", to(5, *GOOD), beyond(*POOR))
AT_LEAST = bands_of("mm", below(5, *POOR), beyond(*GOOD))
INSIDE = bands_of("mm", below(2, *POOR), to(3, *GOOD), beyond(*POOR))


@pytest.mark.parametrize(
    ("expected", "bands", "value"),
    [
        ("within", AT_MOST, 4.9),
        ("within", AT_MOST, 5),
        ("over", AT_MOST, 5.1),
        ("over", AT_LEAST, 4.9),
        ("within", AT_LEAST, 5),
        ("within", AT_LEAST, 5.1),
        ("over", INSIDE, 1.9),
        ("within", INSIDE, 2),
        ("within", INSIDE, 3),
        ("over", INSIDE, 3.1),
    ],
)
def test_an_end_belongs_to_its_own_band_or_to_the_next(expected, bands, value):
    """A most and a least are met on the figure itself, and so are both ends of a band between."""
    assert expected == bands.band_of(value).band


@given(st.lists(st.tuples(st.floats(-1e6, 1e6), st.booleans()), max_size=6), st.floats(-1e6, 1e6))
def test_ends_in_any_order_give_every_value_the_first_band_that_holds_it(ends, value):
    """A band that holds nothing is left out and changes no value's band."""
    steps = [
        (to if closed else below)(upto, f"band {place}", None, "")
        for place, (upto, closed) in enumerate(ends)
    ]
    first = next((step for step in steps if step.includes(value)), beyond("last", None, ""))
    bands = bands_of("mm", *steps, beyond("last", None, ""))
    assert first == bands.band_of(value)
    assert sorted(bands.bands[:-1], key=lambda step: (step.upto, step.closed)) == list(
        bands.bands[:-1]
    )


@pytest.mark.parametrize(
    ("expected", "watch", "act"),
    [(["good", "watch", "act"], 3, 5), (["good", "act"], 5, 5), (["good", "act"], 6, 5)],
)
def test_an_act_limit_at_or_below_the_watch_limit_leaves_no_band_to_watch(expected, watch, act):
    """The stricter of the two counts."""
    assert expected == [step.band for step in watch_and_act("mm", watch, act, "too much").bands]


@pytest.mark.parametrize(
    ("margin", "bands", "at_least"), [(0.2, AT_MOST, False), (-0.2, AT_LEAST, True)]
)
def test_a_judgement_is_one_sentence(margin, bands, at_least):
    """Reading, limit and meaning; the margin is exact, and positive on the good side."""
    judgement = judge_by_band(
        bands.band_of(4.8),
        "A gap of 4.8 mm, against 5 mm,",
        (4.8, "mm", 5),
        ("a note",),
        source=SOURCE,
        at_least=at_least,
    )
    assert f"A gap of 4.8 mm, against 5 mm, is {bands.band_of(4.8).meaning}." == judgement.sentence
    assert (4.8, "mm", 5, margin) == (
        judgement.value,
        judgement.unit,
        judgement.limit,
        judgement.margin,
    )
    assert (SOURCE, ("a note",)) == (judgement.source, judgement.notes)


def test_another_verb_may_carry_the_meaning():
    """For a subject in the plural."""
    assert (
        judge_by_band(AT_MOST.band_of(6), "Six points", (6, "", 5), verb="are").sentence
        == "Six points are over it."
    )


@pytest.mark.parametrize("reading", [(None, "mm", 5), (4.8, "mm", None)])
def test_without_a_value_or_a_limit_there_is_no_margin(reading):
    """Nothing is held against nothing."""
    assert judge_by_band(AT_MOST.band_of(4.8), "It", reading).margin is None


@pytest.mark.parametrize(
    ("limit", "margin", "value"), [(2, 0.1, 2.1), (3, 0.1, 2.9), (2, -0.5, 1.5), (3, -0.5, 3.5)]
)
def test_between_two_ends_the_nearer_one_is_the_limit(limit, margin, value):
    """The margin is positive inside, negative outside."""
    judgement = judge_between(INSIDE.band_of(value), "It", (value, "mm"), (2, 3))
    assert (limit, margin) == (judgement.limit, judgement.margin) == nearer_end(value, 2, 3)


def test_shares_lie_where_a_pencil_finds_them():
    """Binary arithmetic would miss each of these by its last digit."""
    assert (0.106, 7.0, (0.63, 0.77)) == (share(106, 0.1), percent_of(0.021, 0.3), around(0.7, 10))
    assert 0.3 == float(exact(0.1) + exact(0.2))
    assert 1.01 == to_hundredths(exact(1.005))


def test_a_percentage_of_nothing_is_refused():
    """No share of zero is calculated."""
    with pytest.raises(ArithmeticError):
        percent_of(0.3, 0)
