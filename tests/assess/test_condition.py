"""Condition against figures calculated by hand (no published table exists), and properties."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.assess.condition import Item, condition

RATINGS = ("good", "fair", "poor", "failed")
BASE = (
    Item(5, True, "good"),
    Item(4, True, "fair"),
    Item(3, False, "good"),
    Item(3, False, "poor"),
    Item(2, False, "failed"),
    Item(3, False, None),
)
items = st.builds(
    Item,
    weight=st.floats(0.1, 10),
    critical=st.booleans(),
    rating=st.sampled_from((*RATINGS, None)),
    proved=st.booleans(),
)
several = st.lists(items, min_size=1, max_size=8)


def changed(index, **fields):
    return tuple(
        replace(item, **fields) if number == index else item for number, item in enumerate(BASE)
    )


@pytest.mark.parametrize(
    ("points", "low", "high", "these"),
    [
        (65.588, 55.75, 70.75, BASE),
        (65.588, 55.75, 70.75, changed(5, critical=True)),
        (57.353, 48.75, 63.75, changed(1, rating="poor")),
        (51.471, 43.75, 58.75, changed(1, rating="failed")),
        (53.824, 30.75, 70.75, changed(0, proved=False)),
        (70.75, 70.75, 70.75, changed(5, rating="good")),
        (64.75, 64.75, 64.75, changed(5, rating="fair")),
        (59.5, 59.5, 59.5, changed(5, rating="poor")),
        (55.75, 55.75, 55.75, changed(5, rating="failed")),
        (65.588, 65.588, 65.588, BASE[:5]),
    ],
)
def test_condition_gives_the_figures_calculated_by_hand(points, low, high, these):
    """Points, low and high agree with an independent calculation to a thousandth."""
    found = condition(these)

    assert (points, low, high) == pytest.approx((found.points, found.low, found.high), abs=1e-3)


@pytest.mark.parametrize(("rating", "points"), [("poor", 81.25), ("failed", 75)])
def test_a_critical_check_does_not_crush_the_points(rating, points):
    """All good but one critical check of a quarter of the weight: it falls by that."""
    these = (Item(5, True, rating), *[Item(5, False, "good")] * 3)

    assert points == condition(these).points


def test_a_critical_check_without_its_proof_counts_as_fair_and_stays_open():
    """Sighted where a test is asked: fair in the figure, and anything from failed to good."""
    found = condition([Item(1, True, "good", proved=False)])

    assert (60, 0, 100, False) == (found.points, found.low, found.high, found.enough)


def test_what_was_seen_to_be_bad_needs_no_deeper_proof():
    """A critical check that is seen to be poor is closed, at whatever depth it was seen."""
    found = condition([Item(1, True, "poor", proved=False)])

    assert (25, 0, 25, True) == (found.points, found.low, found.high, found.enough)


@pytest.mark.parametrize(
    ("enough", "these"),
    [
        (False, [Item(1, False, "good"), Item(3)]),
        (True, [Item(4.5, False, "good"), Item(5.5)]),
        (True, [Item(4.5, True, "good"), Item(5.5)]),
        (False, [Item(4.49, True, "good"), Item(5.51)]),
        # What was only fair shows nothing of the rest, however much of it was seen ...
        (False, [Item(3, True, "good"), Item(6, False, "fair"), Item(1)]),
        # ... until all of it was, or too much is lost for the level of retain.
        (True, [Item(3, True, "good"), Item(7, False, "fair")]),
        (True, [Item(6, False, "poor"), Item(4)]),
        (False, [Item(9, False, "good"), Item(1, True)]),
        (False, [Item(6, False, "failed"), Item(4, True)]),
        (False, [Item(1), Item(3)]),
    ],
)
def test_a_figure_is_shown_only_where_enough_was_seen(enough, these):
    """Every critical check at its depth, and 45 % of the weight good, or all seen, or too much
    lost."""
    found = condition(these)

    assert (enough, enough) == (found.enough, found.shown is not None)


def test_nothing_seen_gives_no_points():
    """Without a rating there is no figure, and everything is still possible."""
    found = condition([Item(2), Item(1, True)])

    assert (None, 0, 100, 0) == (found.points, found.low, found.high, found.coverage)


def test_nothing_applicable_gives_no_figure_at_all():
    """An empty set has neither points nor coverage and divides by nothing."""
    found = condition([])

    assert (None, 0, 0) == (found.points, found.coverage, found.applicable)


def test_coverage_is_by_weight():
    """17 of 20 weights were seen in the base case: 85 %."""
    assert condition(BASE).coverage == 0.85


@given(several)
def test_low_points_and_high_stand_in_order(these):
    """The condition never leaves its interval, nor the interval 0 to 100."""
    found = condition(these)
    middle = found.low if found.points is None else found.points

    assert 0 <= found.low <= middle <= found.high <= 100


@given(several, st.integers(0, 7), st.sampled_from(RATINGS))
def test_seeing_more_never_widens_the_interval(these, index, rating):
    """To see one more check, with whatever rating and depth, neither lowers low nor raises high."""
    index %= len(these)
    if these[index].rating is not None:
        return
    before, after = (
        condition(these),
        condition([*these[:index], replace(these[index], rating=rating), *these[index + 1 :]]),
    )

    assert before.low <= after.low <= after.high <= before.high


@given(several, st.integers(0, 7), st.sampled_from(RATINGS))
def test_seeing_more_never_takes_back_that_enough_was_seen(these, index, rating):
    """What was enough stays enough, whatever the next look finds."""
    index %= len(these)
    if these[index].rating is not None:
        return
    seen = replace(these[index], rating=rating, proved=True)
    more = condition([*these[:index], seen, *these[index + 1 :]])

    assert more.enough or not condition(these).enough


@given(several, st.integers(0, 7))
def test_looking_deeper_never_widens_the_interval(these, index):
    """The proof of what was sighted leaves no more open than before."""
    index %= len(these)
    deeper = [*these[:index], replace(these[index], proved=True), *these[index + 1 :]]
    before, after = condition(these), condition(deeper)

    assert after.high - after.low <= before.high - before.low


@given(several, st.integers(0, 7))
def test_a_better_rating_never_costs_points(these, index):
    """From failed over poor and fair to good, low, points and high only rise."""
    index %= len(these)
    steps = [
        condition([*these[:index], replace(these[index], rating=rating), *these[index + 1 :]])
        for rating in reversed(RATINGS)
    ]

    for worse, better in zip(steps, steps[1:], strict=False):
        assert (worse.low, worse.points, worse.high) <= (better.low, better.points, better.high)
        assert worse.low <= better.low
        assert worse.points <= better.points
        assert worse.high <= better.high


@given(several, st.sampled_from((2.0, 8.0, 0.5)))
def test_only_the_proportion_of_weights_counts(these, factor):
    """All weights times the same factor leave the condition as it is."""
    assert condition(these) == condition(
        [replace(item, weight=item.weight * factor) for item in these]
    )
