"""Load balances: what they refuse and leave open, and that more sets never leave less."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.power.electrical_loads import (
    ACCURACY,
    CONDITIONS,
    DIVERSITY,
    SIMULTANEITY,
    Consumer,
    demand,
    diversified,
)
from inspector.conversion.power.load_balance import (
    CEILING,
    LOAD_FACTOR,
    RATED_FACTOR,
    largest_set_out,
    set_capacity,
    spare_for_new,
)
from inspector.conversion.power.plant_elements import GeneratorSet
from inspector.conversion.power.sets_running import loading_word, sets_running

EXACT = Span.exact(1)
SETS = tuple(
    GeneratorSet(name, "A", rated, 0.8) for name, rated in (("G1", 340), ("G2", 340), ("G3", 150))
)
HOTEL = Consumer(
    "hotel", "A", (("harbour", 100), ("sea", 200), ("manoeuvring", 250), ("station keeping", 200))
)
RATINGS = st.lists(st.floats(10, 2000), min_size=1, max_size=6)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"demand": (("sea", -5),)}, "pump: sea"),
        ({"demand": (("moored", 5),)}, "pump: condition"),
        ({"connected": -1}, "pump: connected power"),
        ({"factor": 1.2}, "pump: factor"),
        ({"simultaneity": -0.1}, "pump: simultaneity"),
    ],
)
def test_a_load_that_cannot_be_is_refused(change, field):
    """The error names load and field."""
    with pytest.raises(BadInput) as refused:
        Consumer("pump", "A", **change)

    assert field == refused.value.field


@pytest.mark.parametrize(
    "sets",
    [(), (GeneratorSet("E", "A", 99, emergency=True),), (GeneratorSet("G", "A", 340, out=True),)],
)
def test_no_set_in_order_is_refused(sets):
    """The emergency set and a broken one are no main plant."""
    with pytest.raises(BadInput, match="^Generating sets"):
        largest_set_out(sets, demand([HOTEL], "sea"), "sea")
    with pytest.raises(BadInput, match="^Generating sets"):
        sets_running(sets, 100)


@pytest.mark.parametrize("diversity", [0.5, 0, float("inf")])
def test_a_diversity_below_one_is_refused(diversity):
    """Loads never take more than all together."""
    with pytest.raises(BadInput, match="^Diversity"):
        diversified(100, 50, diversity)


def test_a_condition_that_was_not_given_is_a_gap_and_never_nothing():
    """One load without a figure leaves the demand unknown, and is named."""
    found = demand([HOTEL, Consumer("crane", "A", (("sea", 0),))], "harbour")

    assert found.span is None
    assert "crane" in found.gaps[0].why


def test_no_load_is_a_gap():
    """An empty list is no demand of zero."""
    assert demand([], "sea").span is None


def test_a_demand_of_zero_is_kept():
    """Typed 0 is known."""
    assert 0 == demand([Consumer("crane", "A", (("sea", 0),))], "sea").span.point


def test_every_default_is_listed():
    """Accuracy, diversity, simultaneity, ceiling and power factors are listed where not given."""
    loads = [Consumer("galley", "A", connected=60, factor=0.5, intermittent=True)]
    found = largest_set_out(
        [GeneratorSet("G1", "A", 100), GeneratorSet("G2", "A", 100)], demand(loads, "sea"), "sea"
    )

    assert {ACCURACY, DIVERSITY, SIMULTANEITY, CEILING, RATED_FACTOR, LOAD_FACTOR} == set(
        found.spare.defaults
    )


def test_what_was_given_is_no_default():
    """Plate and board read: only the ceiling is left."""
    found = largest_set_out(SETS, demand([HOTEL], "sea", accuracy=EXACT), "sea", load_factor=0.85)

    assert (CEILING,) == found.spare.defaults


def test_a_poor_power_factor_takes_power_from_a_set():
    """340 kW at 0.8 are 425 kVA: at 0.65 no more than 276.25 kW."""
    assert (276.25, 340) == pytest.approx(
        (set_capacity(SETS[0], 0.65), set_capacity(SETS[0], 0.95))
    )


def test_unknown_margins_are_none_and_not_false():
    """Demand between 480 and 520 of 490 kW: not known."""
    found = largest_set_out(
        SETS,
        demand([Consumer("all", "A", (("sea", 500),))], "sea", accuracy=Span(0.96, 1, 1.04)),
        "sea",
    )

    assert (490, None) == (found.remaining, found.carried)


def test_spare_is_the_least_of_the_conditions():
    """250 kW when manoeuvring bind: 0.9 x 490 - 250."""
    found = spare_for_new(
        [
            largest_set_out(SETS, demand([HOTEL], condition, accuracy=EXACT), condition)
            for condition in CONDITIONS
        ]
    )

    assert (191, "manoeuvring") == (
        pytest.approx(found.span.point),
        found.formula_text.rpartition(": ")[2],
    )


def test_spare_without_any_known_condition_is_a_gap():
    """No loads, no spare."""
    assert spare_for_new([largest_set_out(SETS, demand([], "sea"), "sea")]).span is None


@pytest.mark.parametrize(
    ("power", "count", "word"),
    [
        (50, 1, "light"),
        (289, 1, "usual"),
        (290, 2, "usual"),
        (800, 3, "high"),
        (900, 3, "overloaded"),
    ],
)
def test_the_fewest_sets_that_carry_a_load(power, count, word):
    """85 % of 340 kW is 289 kW: one more kilowatt takes on a second set."""
    found = sets_running(SETS, power, 0.8)

    assert (count, word) == (found.count, found.word)


@pytest.mark.parametrize(
    ("load", "word"),
    [
        (0.2999, "light"),
        (0.30, "usual"),
        (0.85, "usual"),
        (0.8501, "high"),
        (1.0, "high"),
        (1.0001, "overloaded"),
    ],
)
def test_words_at_their_edges(load, word):
    """Both sides of each limit."""
    assert word == loading_word(load)


@given(RATINGS, st.floats(10, 2000), st.floats(0, 3000))
def test_a_further_set_never_leaves_less(ratings, more, power):
    """With the largest out, one set more leaves at least as much."""
    need = demand([Consumer("all", "A", (("sea", power),))], "sea")
    sets = [GeneratorSet(f"G{n}", "A", rated) for n, rated in enumerate(ratings)]
    before, after = (
        largest_set_out(all_sets, need, "sea")
        for all_sets in (sets, [*sets, GeneratorSet("further", "A", more)])
    )

    assert after.remaining >= before.remaining - 1e-6
    assert after.margin.span.low >= before.margin.span.low - 1e-6


@given(st.lists(st.tuples(st.floats(0, 500), st.booleans()), min_size=1, max_size=6))
def test_the_span_of_a_demand_holds_its_point_and_every_diversity(loads):
    """With any diversity from 2 to 3, exact loads are inside."""
    consumers = [
        Consumer(f"load {n}", "A", (("sea", power),), intermittent=by_turns)
        for n, (power, by_turns) in enumerate(loads)
    ]
    found = demand(consumers, "sea").span
    steady, by_turns = (
        sum(power for power, turns in loads if turns is which) for which in (False, True)
    )

    assert found.low <= found.point <= found.high
    assert all(found.low - 1e-6 <= steady + by_turns / d <= found.high + 1e-6 for d in (2, 2.5, 3))
