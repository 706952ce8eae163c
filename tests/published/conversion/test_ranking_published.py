"""The order of candidates and the weight at which it changes, against figures worked by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.comparison.ranking import BadWeights, Scored, rank, swap_weight
from inspector.conversion.core.span import Span

WEIGHTS = {"one": 0.40, "two": 0.35, "three": 0.25}


def scored(name, *values):
    """A candidate with exact scores for one, two, three."""
    return Scored(
        name, {aspect: Span.exact(value) for aspect, value in zip(WEIGHTS, values, strict=False)}
    )


A, B, C = scored("A", 80, 55, 60), scored("B", 60, 75, 65), scored("C", 50, 60, 90)


def test_the_order_of_three_candidates():
    """Totals 66.25, 66.50 and 63.50 by hand: B, A, C."""
    found = rank([A, B, C], WEIGHTS)

    assert [("B", 66.50), ("A", 66.25), ("C", 63.50)] == [
        (place.name, pytest.approx(place.total.point)) for place in found.places
    ]


@pytest.mark.parametrize(
    ("first", "second", "aspect", "expected"),
    [
        (A, B, "one", 0.4074),
        (A, B, "two", 0.3418),
        (A, B, "three", 0.2105),
        (A, C, "one", 0.3394),
        (A, C, "two", 0.5806),
        (A, C, "three", 0.3130),
        (B, C, "one", 0.1429),
        (B, C, "two", 0.1875),
        (B, C, "three", 0.3304),
    ],
)
def test_the_weight_at_which_two_change_places(first, second, aspect, expected):
    """w* = D / (D - d_k) by hand, the other weights keeping their proportions."""
    difference = {name: first.scores[name].low - second.scores[name].low for name in WEIGHTS}

    assert expected == round(swap_weight(difference, WEIGHTS, aspect), 4)


def test_a_third_candidate_never_turns_two_around():
    """Scores have fixed ends: a third candidate does not turn the order of two."""
    two = [place.name for place in rank([A, B], WEIGHTS).places]
    three = [
        place.name
        for place in rank([A, B, scored("D", 0, 10, 0)], WEIGHTS).places
        if place.name in "AB"
    ]

    assert two == three


spans = (
    st.tuples(st.integers(0, 100), st.integers(0, 100), st.integers(0, 100))
    .map(sorted)
    .map(lambda ends: Span(*map(float, ends)))
)
candidates = st.lists(st.tuples(spans, spans, spans), min_size=2, max_size=5).map(
    lambda rows: [
        Scored(f"c{n}", dict(zip(WEIGHTS, row, strict=True))) for n, row in enumerate(rows)
    ]
)
weights = st.fixed_dictionaries(dict.fromkeys(WEIGHTS, st.integers(0, 10).map(float))).filter(
    lambda found: sum(found.values()) > 0
)


@given(candidates, weights, weights)
def test_weights_moved_and_moved_back_change_nothing(found, here, there):
    """The ranking remembers nothing of other weights."""
    before = rank(found, here)
    rank(found, there)

    assert before == rank(found, here)


@given(candidates, weights, st.randoms())
def test_the_order_does_not_hang_on_the_order_given(found, given_weights, luck):
    """Equal inputs in another order give the same ranks."""
    shuffled = list(found)
    luck.shuffle(shuffled)

    assert rank(found, given_weights).places == rank(shuffled, given_weights).places


@given(candidates, weights)
def test_a_named_swap_ties_the_two_and_beyond_it_they_have_changed(found, given_weights):
    """At the swap weight both totals are equal; a step beyond, the second leads."""
    ranking = rank(found, given_weights)
    totals = {scored.name: scored for scored in found}
    for swap in ranking.swaps:
        rest = 1 - ranking.weights[swap.aspect]

        def at(weight, aspect=swap.aspect, rest=rest):
            return {
                name: weight if name == aspect else share * (1 - weight) / rest
                for name, share in ranking.weights.items()
            }

        first, second = totals[swap.first], totals[swap.second]

        def apart(weights, first=first, second=second):
            return sum(
                share * (first.scores[name].low - second.scores[name].low)
                for name, share in weights.items()
            )

        assert apart(at(swap.weight)) == pytest.approx(0, abs=1e-6)


@given(candidates, weights)
def test_the_span_of_a_total_contains_its_point(found, given_weights):
    """Low, point and high of every total are in order."""
    for place in rank(found, given_weights).places:
        assert place.total.low <= place.total.point <= place.total.high


def blurred(found, luck):
    """The same candidate with less known of her: every span grows, or stays."""
    spans = {}
    for aspect, span in found.scores.items():
        low, high = luck.uniform(0, span.low), luck.uniform(span.high, 100)
        spans[aspect] = Span(low, luck.choice([None, span.point]), high)
    return Scored(found.name, spans)


@given(candidates, weights, st.integers(0, 4), st.randoms())
def test_less_known_of_a_candidate_never_raises_her(found, given_weights, chosen, luck):
    """Over any candidates and weights: a rank no better, or no rank at all; others keep theirs."""
    at = chosen % len(found)
    less = [blurred(one, luck) if place == at else one for place, one in enumerate(found)]
    before, after = (
        {place.name: place.rank for place in rank(of, given_weights).places} for of in (found, less)
    )
    name = found[at].name

    if before[name] is None:
        assert after[name] is None
    elif after[name] is not None:
        assert before[name] <= after[name]


def test_too_little_known_is_no_place():
    """Half of what is weighed must be known; the others do not move up to a place that is hers."""
    dark = Scored("D", dict.fromkeys(WEIGHTS, Span(30.0, None, 81.0)))
    half = Scored("H", dict.fromkeys(WEIGHTS, Span(30.0, None, 80.0)))
    found = rank([dark, half, A], WEIGHTS)

    assert [("A", 1), ("H", 2), ("D", None)] == [(place.name, place.rank) for place in found.places]
    assert (0.49, 0.5) == (
        pytest.approx(found.places[2].known),
        pytest.approx(found.places[1].known),
    )


def test_equal_totals_share_a_rank_and_stand_by_name():
    """Equal totals share a rank."""
    found = rank(
        [scored("Z", 50, 50, 50), scored("Y", 50, 50, 50), scored("X", 10, 10, 10)], WEIGHTS
    )

    assert [(1, "Y"), (1, "Z"), (3, "X")] == [(place.rank, place.name) for place in found.places]


def test_what_spans_cannot_separate_is_told():
    """Overlapping totals are an open pair, apart ones are not."""
    near = Scored("N", dict.fromkeys(WEIGHTS, Span(40.0, 60.0, 80.0)))

    assert (("N", "M"),) == rank(
        [near, Scored("M", dict.fromkeys(WEIGHTS, Span(30.0, 50.0, 70.0)))], WEIGHTS
    ).open_pairs
    assert () == rank([near, scored("L", 10, 10, 10)], WEIGHTS).open_pairs


@pytest.mark.parametrize(
    "bad",
    [{"one": -1, "two": 1, "three": 1}, {"one": 0, "two": 0, "three": 0}, {"one": 1, "two": 1}],
)
def test_weights_that_cannot_be_are_refused(bad):
    """One sentence that names the aspect."""
    with pytest.raises(BadWeights):
        rank([A, B], bad)
