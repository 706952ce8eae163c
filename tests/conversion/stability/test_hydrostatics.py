"""Hydrostatics, righting levers and deck loads: what they refuse, and spans that only narrow."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.stability.booklet.hydrostatics import (
    end_draughts,
    fluid_gm,
    free_surface_moment,
    list_angle,
    parallel_sinkage,
    tonnes_per_cm,
    trim_change,
)
from inspector.conversion.stability.deck_loads import ACCELERATION, deck_load
from inspector.conversion.stability.levers.cross_curves import CrossCurve, CrossCurves
from inspector.conversion.stability.levers.intact_criteria import intact_criteria
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.lightship_changes import (
    BOOKLET_AMENDED,
    BOOKLET_UNCHANGED,
    INCLINING_TEST,
    consequences,
)
from inspector.conversion.stability.roll_period import ANY_LOADING, gm_from_roll, with_spread
from inspector.criteria.hull.lightship_and_roll import ROLL_FACTORS
from tests.conversion.conftest import nested, spans

CURVE = RightingLevers((0, 10, 20, 30, 40), (0, 0.17, 0.36, 0.52, 0.55))
KNOWN = LeverSpan.exact(CURVE)
CURVES = CrossCurves((CrossCurve(3000, {10: 1.3, 20: 2.6}), CrossCurve(3400, {10: 1.2, 20: 2.5})))
SHARE = "centre of flotation, share of the length"
WIDE = "righting levers: angle"


@pytest.mark.parametrize(
    ("make", "field"),
    [
        (lambda: free_surface_moment(144, -850), "tank: density"),
        (lambda: free_surface_moment(144, 0.85), "tank: density"),
        (lambda: free_surface_moment(-1, 850), "tank: free-surface inertia"),
        (lambda: tonnes_per_cm(884, 1.025), "water: density"),
        (lambda: parallel_sinkage(Span.exact(10), 0), "TPC"),
        (lambda: trim_change(Span.exact(10), 0), "MCTC"),
        (lambda: fluid_gm(7.5, 6.5, 10, 0), "displacement"),
        (lambda: list_angle(10, 3000, Span(-0.1, 0.2, 0.3)), "GM"),
        (lambda: gm_from_roll(0, 14, with_spread(0.78)), "roll period"),
        (lambda: RightingLevers((0, 10), (0, 0.1)), "righting levers"),
        (lambda: RightingLevers((10, 20, 30), (0.1, 0.2, 0.3)), "righting levers"),
        (lambda: RightingLevers((0, 20, 20), (0, 0.2, 0.3)), "righting levers"),
        (lambda: CURVE.lever_at(41), "righting levers: angle"),
        (lambda: CURVE.area_to(41), "righting levers: angle"),
        (lambda: CURVE.until(5), "righting levers"),
        (lambda: RightingLevers((0, 5, 30, 40), (0, 0.1, 0.5, 0.6)).area_to(40), WIDE),
        (lambda: end_draughts((5, 5), Span.exact(0), Span.exact(0), 1.1), SHARE),
        (lambda: CrossCurves(()), "cross curves"),
        (lambda: CURVES.at(Span(2999, 3100, 3200)), "cross curves"),
        (lambda: CURVES.at(Span(3100, 3200, 3401)), "cross curves"),
        (lambda: deck_load("house", -1, 10), "house: mass"),
        (lambda: deck_load("house", 1, 0), "house: area"),
        (lambda: deck_load("house", 1, 10, rated=5, walls=0), "house: length of walls"),
    ],
)
def test_what_cannot_be_is_refused_by_its_field(make, field):
    """A density in the wrong unit, a list at no positive GM and a broken curve are refused."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field


@given(nested(7, 9), nested(5, 6.5), nested(0, 300), nested(2000, 4000))
def test_gm_narrows_with_each_of_its_parts(km, kg, moment, mass):
    """The fluid GM of narrower parts is inside that of wider ones."""
    wide, narrow = (fluid_gm(km[at], kg[at], moment[at], mass[at]) for at in (0, 1))

    assert wide.contains(narrow)


@given(spans(-0.3, 0.3), st.floats(0, 90))
def test_every_criterion_contains_its_likely_value(rise, flooding):
    """Over any rise of the centre of gravity, the likely value is between the ends."""
    for result in intact_criteria(KNOWN.lowered(rise), Span.exact(1.0), flooding):
        value = result.value
        assert value is None or value.point is None or value.low <= value.point <= value.high


@given(spans(-0.3, 0.3))
def test_a_smaller_rise_leaves_no_smaller_area(rise):
    """The area under the curve falls as the centre of gravity rises."""
    most, least = (CURVE.lowered(metres).area_to(30) for metres in (rise.low, rise.high))

    assert least <= most + 1e-12


@given(nested(-0.3, 0.3))
def test_a_better_known_rise_never_widens_a_criterion(pair):
    """Areas and levers of a narrower rise are inside those of a wider one."""
    wide, narrow = (intact_criteria(KNOWN.lowered(rise), None)[:4] for rise in pair)
    for outer, inner in zip(wide, narrow, strict=True):
        room = Span(outer.value.low - 1e-9, None, outer.value.high + 1e-9)
        assert room.contains(inner.value)


def test_levers_that_end_too_soon_leave_criteria_open():
    """A curve to 30° gives no value at 40°, and no curve gives none; neither is met nor failed."""
    short = LeverSpan.exact(RightingLevers((0, 10, 20, 30), (0, 0.17, 0.36, 0.52)))
    by_short = [result.met for result in intact_criteria(short, None)]
    without = [result.met for result in intact_criteria(None, Span.exact(0.1))]

    assert [True, None, None, True, None, None] == by_short
    assert [None] * 5 + [False] == without


def test_flooding_before_thirty_degrees_fails_what_asks_thirty():
    """The area ends at the flooding angle; all that asks 30° fails there, with the angle named."""
    results = intact_criteria(KNOWN, None, 26.0)

    assert CURVE.area_to(26) == pytest.approx(results[1].value.point)
    assert [False, None, False, False] == [results[at].met for at in (0, 4, 2, 3)]
    assert [26.0, None, 26.0, 26.0] == [results[at].floods_at for at in (0, 1, 2, 3)]


def test_no_lever_beyond_flooding_is_the_greatest():
    """A curve that rises to 40° has its greatest lever at the flooding angle of 33°."""
    results = intact_criteria(KNOWN, None, 33.0)

    assert CURVE.lever_at(33) == pytest.approx(results[3].value.point)
    assert 33.0 == results[4].value.high


def test_every_loading_counts_where_none_is_given():
    """The factor of an unknown loading contains each known one with its spread."""
    assert all(ANY_LOADING.value.contains(with_spread(factor)) for factor in ROLL_FACTORS.values())


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (Span.exact(0.99), (BOOKLET_UNCHANGED,)),
        (Span.exact(-1.0), (BOOKLET_AMENDED,)),
        (Span.exact(2.0), (BOOKLET_AMENDED,)),
        (Span.exact(-2.01), (INCLINING_TEST,)),
        (Span(-0.5, 0.2, 1.5), (BOOKLET_UNCHANGED, BOOKLET_AMENDED)),
    ],
)
def test_a_change_of_lightship_is_compared_with_both_limits(share, words):
    """From 1 % the booklet is amended, above 2 % the vessel is inclined; a span may give both."""
    assert words == consequences(share, 1.0, 2.0)


def test_a_deck_load_spans_from_rest_to_seaway():
    """The default acceleration is listed, a given one is not; nothing declared gives no share."""
    assert (ACCELERATION,) == deck_load("house", 86, 108, rated=5).defaults
    assert () == deck_load("house", 86, 108, rated=5, acceleration=0.3).defaults
    assert deck_load("house", 86, 108).share is None
