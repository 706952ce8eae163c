"""The parts of a total: triangles from tenths, the class of the work, and weeks in the yard."""

from itertools import count

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.assess.registers import WorkLine
from inspector.conversion.core.span import Span
from inspector.conversion.money.cost_line import CostLine, from_tenths
from inspector.conversion.money.total_spread import Terms, all_of_it
from inspector.conversion.money.yard_time import yard_time

NUMBERS = count()
rising = st.lists(st.integers(1, 10_000), min_size=3, max_size=3).map(sorted)


@given(rising)
def test_a_triangle_of_tenths_has_the_tenths_where_they_were_typed(ends):
    """One case in ten below the low and above the high end, unless it would cost less than 0."""
    low, likely, high = map(float, ends)
    line = from_tenths("steel", low, likely, high)

    assert (line.low, line.high) == (pytest.approx(line.low), pytest.approx(line.high))
    assert line.low <= low
    assert high <= line.high
    if line.low > 0:
        assert [low, high] == pytest.approx([line.quantile(0.1), line.quantile(0.9)], rel=1e-6)


def test_ends_that_are_tenths_widen_a_line():
    """A symmetric triangle: with half its width w, a tenth is w (1 - sqrt(0.2)) from the peak."""
    line = from_tenths("steel", 90, 100, 110)
    half = 10 / (1 - 0.2**0.5)

    assert (100 - half, 100 + half) == (pytest.approx(line.low), pytest.approx(line.high))


def test_a_wide_line_is_wider_than_its_class_and_stays_as_it_is():
    """Class 1 claims less than this line, so that nothing is stretched."""
    line = CostLine("steel", 0, 100, 400)
    found = all_of_it((line,), (), (), Terms(0.3, 1))

    assert [found.lines.p10, found.lines.p90] == pytest.approx([found.work.p10, found.work.p90])


def test_a_fixed_price_is_as_uncertain_as_its_class():
    """Class 4 at its widest: a tenth of the cases below 70 and above 150 of 100."""
    fixed = CostLine("paint", 100, 100, 100)
    work = all_of_it((fixed,), (), (), Terms(0.3, 4)).work

    assert (70, 100, 150) == (
        pytest.approx(work.p10, rel=0.01),
        pytest.approx(work.p50, rel=0.01),
        pytest.approx(work.p90, rel=0.01),
    )


@given(st.lists(rising, min_size=1, max_size=4), st.integers(1, 5))
def test_work_is_never_narrower_than_lines_or_class(rows, number):
    """Whichever is wider counts, on each side of the middle."""
    lines = tuple(CostLine(str(at), *map(float, row)) for at, row in enumerate(rows))
    found = all_of_it(lines, (), (), Terms(0.3, number))

    assert found.work.p10 <= found.lines.p10 + 1e-6
    assert found.work.p90 >= found.lines.p90 - 1e-6


@given(st.lists(rising, min_size=2, max_size=4), st.randoms())
def test_the_order_of_the_lines_decides_nothing(rows, luck):
    """Typed in another order, or found in another: the same sums to the last digit."""
    lines = [CostLine(str(at), *map(float, row)) for at, row in enumerate(rows)]
    mixed = luck.sample(lines, len(lines))
    terms = Terms(0.3, 5, asking=100.0)

    assert all_of_it(tuple(lines), (), (), terms) == all_of_it(tuple(mixed), (), (), terms)


def test_shares_others_and_rise_join_by_hand():
    """Fixed costs of class 1 at their middle: 50 + 1.1 × (100 × 1.2 + 30) = 215."""
    fixed = (CostLine("work", 100, 100, 100),)
    share = (CostLine("growth", 0.2, 0.2, 0.2),)
    other = (CostLine("design", 30, 30, 30),)
    found = all_of_it(fixed, share, other, Terms(0.3, 1, asking=50, rise=1.1, budget=215))

    assert 215 == pytest.approx(found.total.p50, rel=1e-3)
    assert 0.5 == pytest.approx(found.within, abs=0.02)


def line(weeks, sequence=None, identity="", after=""):
    return WorkLine(
        identity or f"line {next(NUMBERS)}",
        "hull",
        "all",
        "refurbish",
        "Steel",
        sequence=sequence,
        weeks=weeks,
        after=after,
    )


@pytest.mark.parametrize(
    ("lines", "weeks", "without"),
    [
        ([], None, 0),
        ([line(None, 1)], None, 1),
        ([line(4, 1), line(6, 1), line(3, 2)], Span(9, 9, 9), 0),
        ([line(4, 1), line(3), line(5)], Span(5, None, 12), 0),
        ([line(4, 1), line(None, 2)], Span(4, 4, 4), 1),
        ([line(4, 1), line(2, 2, "dock"), line(3, 1, after="dock")], Span(9, 9, 9), 0),
        ([line(4, 1, "a", "b"), line(3, 1, "b", "a")], Span(7, 7, 7), 0),
        ([line(4, 1, "a", "a"), line(3, 1, after="gone")], Span(4, 4, 4), 0),
    ],
)
def test_weeks_follow_the_sequence(lines, weeks, without):
    """Side by side in one place, one place after the other; loose lines beside or after them.

    A line that names the one before waits for it alone; two that wait for each other are no knot.
    """
    found = yard_time(lines)

    assert (weeks, without) == (found.weeks, len(found.without))


@given(st.lists(st.tuples(st.integers(0, 9), st.none() | st.integers(1, 4)), max_size=6))
def test_one_more_line_never_shortens_the_time(rows):
    """Work takes time; a line more takes none away."""
    lines = [line(float(weeks), sequence) for weeks, sequence in rows]
    for number in range(1, len(lines)):
        fewer, more = yard_time(lines[:number]).weeks, yard_time(lines[: number + 1]).weeks
        assert fewer.low <= more.low
        assert fewer.high <= more.high
