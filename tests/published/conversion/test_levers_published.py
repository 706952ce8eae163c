"""Righting levers at other draughts: a box and a wall-sided form by closed form, and by clipping.

The wall-sided formula is exact as long as deck edge and bilge stay where they are:
GZ = sin φ (GM + ½ BM tan² φ), with KM = T/2 + I/∇ (textbooks of ship stability, seen). Its area is
GM (1 − cos φ) + ½ BM (sec φ + cos φ − 2). Beyond it a box is cut by its waterline, point by point.
"""

from itertools import pairwise
from math import cos, radians, sin, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion.core.span import Span
from inspector.conversion.stability.levers.cross_curves import CrossCurve, CrossCurves
from inspector.conversion.stability.levers.intact_criteria import intact_criteria
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.righting_levers import RightingLevers

RHO = 1.025  # t/m³
LENGTH, BREADTH, DEPTH = 60.0, 14.0, 12.0  # m, so deep that no deck edge comes into it
# plan of the waterplane -> its area as a share of L B, and its inertia as a share of L B³ / 12
FORMS = {"box": (1.0, 1.0), "two triangles end to end": (0.5, 0.25)}
HEELS = (10.0, 20.0, 30.0, 40.0)


def displacement(form, draught):
    return RHO * LENGTH * BREADTH * draught * FORMS[form][0]


def metacentric_radius(form, draught):
    area, inertia = FORMS[form]
    return BREADTH**2 * inertia / (12 * area * draught)


def kn(form, draught, heel):
    """KN of a form with vertical sides [m]."""
    phi, bm = radians(heel), metacentric_radius(form, draught)
    return sin(phi) * (draught / 2 + bm + bm * tan(phi) ** 2 / 2)


def area(form, draught, kg, heel):
    """Area under GZ from upright [m·rad]."""
    phi, bm = radians(heel), metacentric_radius(form, draught)
    gm = draught / 2 + bm - kg
    return gm * (1 - cos(phi)) + bm / 2 * (1 / cos(phi) + cos(phi) - 2)


def booklet(form, draughts, heels=HEELS):
    """The cross curves of a form as a booklet prints them, to a millimetre."""
    rows = [
        CrossCurve(
            displacement(form, draught),
            {heel: round(kn(form, draught, heel), 3) for heel in heels},
        )
        for draught in draughts
    ]
    return CrossCurves(tuple(rows))


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("draught", [5.9, 6.0, 6.13, 6.3, 6.4])
def test_levers_at_a_draught_between_the_rows(form, draught):
    """Rows every 0.25 m: GZ at the new draught as by closed form, within 5 mm."""
    curves = booklet(form, (5.75, 6.0, 6.25, 6.5))
    mass = displacement(form, draught)
    levers = curves.at(Span.exact(mass)).lowered(Span.exact(4.2)).likely

    for heel in HEELS:
        by_hand = kn(form, draught, heel) - 4.2 * sin(radians(heel))
        assert by_hand == pytest.approx(levers.lever_at(heel), abs=0.005)


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("draught", [5.9, 6.25, 6.4])
def test_areas_at_a_draught_between_the_rows(form, draught):
    """Areas to 30 and 40° by Simpson's rules as by the integral, within 1 %."""
    curves = booklet(form, (5.75, 6.0, 6.25, 6.5))
    levers = curves.at(Span.exact(displacement(form, draught))).lowered(Span.exact(4.2))
    thirty, forty = (result.value.point for result in intact_criteria(levers, None)[:2])

    assert area(form, draught, 4.2, 30) == pytest.approx(thirty, rel=0.01)
    assert area(form, draught, 4.2, 40) == pytest.approx(forty, rel=0.01)


UNEVEN = st.sets(st.sampled_from((5, 12, 15, 20, 25, 30, 35, 45, 50)), min_size=3).map(
    lambda heels: (0, *sorted(heels), 60)
)


@given(UNEVEN, st.floats(3, 8), st.floats(2, 7), st.sampled_from((30.0, 40.0)))
def test_uneven_angles_are_never_integrated_above_the_true_area(heels, draught, kg, end):
    """A wall-sided GZ is hollow at first: trapezia alone would be too great there."""
    levers = [kn("box", draught, heel) - kg * sin(radians(heel)) for heel in heels]
    curve = RightingLevers(heels, tuple(levers))

    steps = [high - low for low, high in pairwise(curve.angles) if low < end]
    # Even steps are for Simpson's rules, which the published criteria are calculated by.
    if max(steps) <= 20 and len(set(steps)) > 1:
        assert curve.area_to(end) <= area("box", draught, kg, end)


def clipped_kn(breadth, depth, draught, heel):
    """KN of a box of any heel: its section is cut at the waterline that leaves its area."""
    phi, steps = radians(heel), 200
    corners = [(-breadth / 2, 0), (breadth / 2, 0), (breadth / 2, depth), (-breadth / 2, depth)]
    # Height over the water's plane; a point to starboard goes down as she heels to starboard.
    heights = [z * cos(phi) - y * sin(phi) for y, z in corners]
    low, high = min(heights), max(heights)
    for _ in range(steps):
        level = (low + high) / 2
        wet = _below(corners, phi, level)
        low, high = (level, high) if _area(wet) < breadth * draught else (low, level)
    y, z = _centroid(_below(corners, phi, (low + high) / 2))
    return y * cos(phi) + z * sin(phi)


def _below(corners, phi, level):
    """The part of a polygon below a waterline."""

    def over(point):
        return point[1] * cos(phi) - point[0] * sin(phi) - level

    kept = []
    for one, other in zip(corners, corners[1:] + corners[:1], strict=True):
        if over(one) <= 0:
            kept.append(one)
        if over(one) * over(other) < 0:
            share = over(one) / (over(one) - over(other))
            kept.append(tuple(a + share * (b - a) for a, b in zip(one, other, strict=True)))
    return kept


def _crosses(polygon):
    pairs = zip(polygon, polygon[1:] + polygon[:1], strict=True)
    return [(a, b, a[0] * b[1] - b[0] * a[1]) for a, b in pairs]


def _area(polygon):
    return sum(cross for _, _, cross in _crosses(polygon)) / 2 if len(polygon) > 2 else 0.0


def _centroid(polygon):
    six = 6 * _area(polygon)
    return tuple(
        sum((a[at] + b[at]) * cross for a, b, cross in _crosses(polygon)) / six for at in (0, 1)
    )


def test_clipping_gives_the_closed_form_before_the_deck_edge():
    """The two ways of the test agree at 20°, so that the clipping may be trusted beyond."""
    assert kn("box", 5.0, 20) == pytest.approx(clipped_kn(BREADTH, DEPTH, 5.0, 20), abs=1e-6)


@settings(max_examples=40)
@given(st.floats(12, 20), st.floats(0.52, 0.9), st.floats(0.005, 0.09), st.floats(3, 8))
def test_more_weight_never_raises_a_lever_beyond_the_wall_sided_range(breadth, share, more, kg):
    """Boxes that float deeper than half their depth, at heels with the deck edge under water.

    Righting moment about the middle of the depth is the same for a draught and for the freeboard
    left, so that beyond half the depth it falls with weight once deck edge or bilge count.
    """
    depth = breadth / 2
    draughts = (share * depth, (share + more) * depth)
    heels = tuple(float(heel) for heel in range(10, 90, 10))
    rows = [
        CrossCurve(
            breadth * draught * LENGTH * RHO,
            {heel: clipped_kn(breadth, depth, draught, heel) for heel in heels},
        )
        for draught in draughts
    ]
    curves = CrossCurves(tuple(rows))
    lighter, deeper = (
        curves.at(Span.exact(row.displacement)).lowered(Span.exact(kg)) for row in rows
    )

    for heel in heels:
        if tan(radians(heel)) > 2 * draughts[1] / breadth:
            assert deeper.likely.lever_at(heel) <= lighter.likely.lever_at(heel) + 1e-9


def test_a_span_of_displacement_holds_every_lever_within_it():
    """Between 5.9 and 6.4 m each curve of the closed form is between the ends of the span."""
    curves = booklet("box", (5.75, 6.0, 6.25, 6.5))
    ends = [displacement("box", draught) for draught in (5.9, 6.4)]
    found = curves.at(Span(ends[0], None, ends[1]))
    for heel in HEELS:
        at = [curve.lever_at(heel) for curve in found.ends]
        assert min(at) - 0.005 <= kn("box", 6.1, heel) <= max(at) + 0.005


def test_the_middle_of_a_span_is_drawn():
    """Where no displacement is likely, the drawing takes the mean of the ends."""
    flat, steep = (RightingLevers((0, 10, 20), (0, y, 2 * y)) for y in (0.1, 0.3))

    assert (0, 0.2, 0.4) == pytest.approx(LeverSpan((flat, steep), None).middle.levers)
