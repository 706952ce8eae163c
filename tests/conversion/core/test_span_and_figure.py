"""Spans hold every value that their parts could give, and a figure carries all it rests on."""

import operator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.figure import (
    Default,
    Figure,
    Gap,
    no_figure,
    rest_on,
    unique,
)
from inspector.conversion.core.span import NotASpan, Span, span
from inspector.criteria.core.source import Source
from tests.conversion.conftest import nested, spans

SOURCE = Source.recalled("Somebody's table", "page 1", edition="2020")
BASIC = (operator.add, operator.sub, operator.mul)
SHARES = st.lists(st.floats(0, 1), min_size=2, max_size=2)


def inside(a, share):
    """A value somewhere in a span, never beyond its ends."""
    return min(max(a.low + share * (a.high - a.low), a.low), a.high)


@given(spans(-1e6, 1e6), spans(-1e6, 1e6), SHARES, st.sampled_from(BASIC))
def test_a_result_holds_the_result_of_every_pair(a, b, shares, operation):
    """Whatever the true values are inside their spans, the result is inside the result."""
    found = operation(a, b)

    assert found.contains(operation(inside(a, shares[0]), inside(b, shares[1])))
    assert found.low <= found.point <= found.high


@given(spans(-1e6, 1e6), spans(1e-3, 1e6), SHARES, st.sampled_from((1, -1)))
def test_a_quotient_holds_every_quotient(a, b, shares, sign):
    """Also where the divisor is negative."""
    divisor = b * sign

    assert (a / divisor).contains(inside(a, shares[0]) / inside(divisor, shares[1]))


@given(nested(-1e6, 1e6), nested(-1e6, 1e6), st.sampled_from(BASIC))
def test_more_knowledge_never_widens(a, b, operation):
    """A narrower part gives a result inside that of the wider one."""
    assert operation(a[0], b[0]).contains(operation(a[1], b[1]))


@given(nested(1e-3, 1e6), nested(1e-3, 1e6))
def test_more_knowledge_never_widens_a_quotient(a, b):
    """The same for division."""
    assert (a[0] / b[0]).contains(a[1] / b[1])


@given(st.floats(-1e6, 1e6), st.floats(0, 1), st.floats(0, 1))
def test_around_a_value_holds_the_value(point, below, above):
    """Whatever its sign."""
    assert Span.around(point, below, above).contains(point)


def test_numbers_take_part_on_both_sides():
    """A plain number is an exact span."""
    a = Span(2.0, 3.0, 4.0)

    assert [
        Span(3.0, 4.0, 5.0),
        Span(-3.0, -2.0, -1.0),
        Span(4.0, 6.0, 8.0),
        Span(0.25, 1 / 3, 0.5),
    ] == [1 + a, 1 - a, 2 * a, 1 / a]


def test_a_point_is_known_only_where_all_points_are():
    """No middle is made up."""
    assert (Span(1, None, 2) + Span.exact(1)).point is None


def test_the_middle_is_the_point_or_halfway():
    """For choices only; a span without a point keeps none."""
    assert [3, 3.0] == [Span(1, 3, 9).middle, Span(1, None, 5).middle]


def test_whether_it_is_enough_may_be_unknown():
    """Yes and no only where the whole span agrees."""
    assert [True, True, None, False] == [Span(2, 3, 4).at_least(limit) for limit in (1, 2, 3, 4.5)]


def test_a_falling_function_turns_the_ends():
    """apply puts the ends in order again."""
    assert Span(0.25, 0.5, 1.0) == Span(1.0, 2.0, 4.0).apply(lambda x: 1 / x)


def test_a_hull_holds_both():
    """The hull reaches from the lower to the higher end and keeps its own point."""
    assert Span(1, 3, 9) == Span(2, 3, 4).hull(Span(1, None, 9))


@pytest.mark.parametrize(
    "ends",
    [
        (2, 1, 3),
        (1, 4, 3),
        (3, None, 1),
        (float("nan"), None, 1),
        (0, None, float("inf")),
        (None, 1, 2),
        ("1", None, 2),
        (True, None, 2),
    ],
)
def test_ends_out_of_order_or_not_numbers_are_refused(ends):
    """The sentence names what was given."""
    with pytest.raises(NotASpan, match="finite numbers in order"):
        Span(*ends)


def test_a_span_around_zero_divides_nothing():
    """A divisor that may be nothing is refused."""
    with pytest.raises(NotASpan, match="zero lies in it"):
        span(1) / Span(-1, 0, 1)


def test_a_sum_beyond_all_numbers_is_refused():
    """An overflow never becomes a result."""
    with pytest.raises(NotASpan):
        Span.exact(1e308) * 10


def test_a_figure_carries_what_its_parts_rest_on():
    """Assumptions, defaults and gaps of parts are joined, each once."""
    default, gap = (
        Default("density", 850.0, "no note", unit="kg/m³", source=SOURCE),
        Gap("draught", "not read"),
    )
    one, other = (
        Figure("a", None, "t", "", ("calm",), (default,)),
        Figure("b", None, "t", "", ("calm", "deep"), (default,), (gap,)),
    )

    assert {"assumptions": ("calm", "deep"), "defaults": (default,), "gaps": (gap,)} == rest_on(
        one, other
    )


def test_a_figure_without_a_span_is_not_known():
    """What cannot be calculated is a figure all the same, with its gap."""
    figures = (Figure("a", Span.exact(1), "t", ""), no_figure("b", "t", (Gap("c", "d"),)))

    assert [True, False] == [figure.known for figure in figures]


def test_unique_keeps_the_first():
    """Order of first appearance."""
    assert (1, 2, 3) == unique((1, 2), (2, 3, 1))
