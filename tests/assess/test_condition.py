"""Condition against figures calculated by hand for this project (our own arithmetic, no published table exists), and its properties."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.assess.condition import Item, condition

RATINGS = ("good", "fair", "poor", "failed")
BASE = (Item(5, True, "good", "A"), Item(4, True, "fair", "B"), Item(3, False, "good", "C"), Item(3, False, "poor", "D"), Item(2, False, "failed", "E"),
        Item(3, False, None, "F"))
items = st.builds(Item, weight=st.floats(0.1, 10), critical=st.booleans(), rating=st.sampled_from((*RATINGS, None)), title=st.text(max_size=3))
several = st.lists(items, min_size=1, max_size=8)


def changed(index, **fields):
    return tuple(replace(item, **fields) if number == index else item for number, item in enumerate(BASE))


@pytest.mark.parametrize(("points", "low", "high", "these"), [
    (65.588, 55.75, 70.75, BASE),
    (65.588, 24, 70.75, changed(5, critical=True)),
    (57.353, 48.75, 59, changed(1, rating="poor")),
    (24, 24, 24, changed(1, rating="failed")),
    (70.75, 70.75, 70.75, changed(5, rating="good")),
    (64.75, 64.75, 64.75, changed(5, rating="fair")),
    (59.5, 59.5, 59.5, changed(5, rating="poor")),
    (55.75, 55.75, 55.75, changed(5, rating="failed")),
    (65.588, 65.588, 65.588, BASE[:5]),
])
def test_condition_gives_the_figures_calculated_by_hand(points, low, high, these):
    """Points, low and high agree with an independent calculation to a thousandth."""
    found = condition(these)

    assert (points, low, high) == pytest.approx((found.points, found.low, found.high), abs=1e-3)


@pytest.mark.parametrize(("rating", "cap"), [("poor", 59), ("failed", 24)])
def test_a_critical_check_caps_however_good_the_rest_is(rating, cap):
    """All good but one critical check: the condition is exactly the cap, and the check is named."""
    these = tuple(replace(item, rating=rating if number == 0 else "good") for number, item in enumerate(BASE))

    found = condition(these)

    assert (cap, cap, cap, ("A",)) == (found.points, found.low, found.high, found.capped_by)


def test_a_cap_above_every_figure_names_no_check():
    """A critical check rated poor in a condition that is lower anyway sets no cap."""
    assert () == condition([Item(1, True, "poor", "A"), Item(9, False, "failed", "B")]).capped_by


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
    """Revealing one unseen check, with whatever rating, neither lowers low nor raises high, caps included."""
    index %= len(these)
    if these[index].rating is not None:
        return
    before, after = condition(these), condition([*these[:index], replace(these[index], rating=rating), *these[index + 1:]])

    assert before.low <= after.low <= after.high <= before.high


@given(several, st.integers(0, 7))
def test_a_better_rating_never_costs_points(these, index):
    """From failed over poor and fair to good, low, points and high only rise."""
    index %= len(these)
    steps = [condition([*these[:index], replace(these[index], rating=rating), *these[index + 1:]]) for rating in reversed(RATINGS)]

    for worse, better in zip(steps, steps[1:], strict=False):
        assert (worse.low, worse.points, worse.high) <= (better.low, better.points, better.high)
        assert worse.low <= better.low
        assert worse.points <= better.points
        assert worse.high <= better.high


@given(several, st.sampled_from((2.0, 8.0, 0.5)))
def test_only_the_proportion_of_weights_counts(these, factor):
    """All weights times the same factor leave the condition as it is."""
    assert condition(these) == condition([replace(item, weight=item.weight * factor) for item in these])
