"""Power by speed: own points first, and no way tells more than it knows."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.hull.hull_form import HullForms, Particulars, hull_forms
from inspector.conversion.range.own_speed_power import AdmiraltyCurve, PointsCurve
from inspector.conversion.range.speed_points import SpeedPoint, power_law
from inspector.conversion.range.speed_power import HoltropCurve, power_curves
from tests.conversion.conftest import nested

KNOWN = Particulars(16, 5, 5, 3500, 64)


def test_own_points_come_first(points, particulars):
    """The order of trust is the order of the ways."""
    found = power_curves(points, particulars)

    assert ["own points, fitted", "regression of resistance", "own admiralty coefficient"] == [
        curve.method for curve in found.curves
    ]
    assert () == found.gaps


def test_what_keeps_a_way_out_is_told(particulars):
    """Without points the regression is alone, and the gap asks for points."""
    found = power_curves((), particulars)

    assert ["regression of resistance"] == [curve.method for curve in found.curves]
    assert ["speed and power points"] == [gap.name for gap in found.gaps]


def test_nothing_known_is_no_way_at_all():
    """No curve, and a gap for each thing missing."""
    found = power_curves()

    assert () == found.curves
    assert {"speed and power points", "hull: breadth", "hull: displacement"} <= {
        gap.name for gap in found.gaps
    }


def test_the_spread_between_the_ways_is_shown(points, particulars):
    """At 10 kn the largest value is 1.2 to 1.4 times the smallest; one method has no spread."""
    assert 1.2 < power_curves(points, particulars).spread(10) < 1.4
    assert power_curves((), particulars).spread(10) is None


def test_a_fit_goes_through_its_points(points):
    """Every point lies inside the span at its speed."""
    curve = PointsCurve(points, 3500)

    assert all(curve.at(point.speed).span.contains(point.power) for point in points)


def test_a_fit_is_never_stretched_beyond_one_knot(points):
    """7 kn are told with twice the width and a sentence; 6.9 kn are a gap."""
    curve = PointsCurve(points, 3500)
    edge, beyond, inside = curve.at(7.0), curve.at(6.9), curve.at(8.0)

    assert beyond.span is None
    assert "6.9 kn" in beyond.gaps[0].why
    assert 2 == pytest.approx(
        (edge.span.width / edge.span.point) / (inside.span.width / inside.span.point)
    )
    assert any("beyond the points" in sentence for sentence in edge.assumptions)


@pytest.mark.parametrize("few", [(), (10,), (10, 12), (10, 10.5, 11)])
def test_too_few_points_make_no_fit(few):
    """Three points over two knots are the least."""
    with pytest.raises(BadInput, match="^Speed points: a fit needs 3 points over 2 kn"):
        PointsCurve(tuple(SpeedPoint(speed, 1000) for speed in few))


def test_one_speed_makes_no_law():
    """Two powers at one speed tell no slope."""
    with pytest.raises(BadInput, match="two different speeds"):
        power_law([(10, 1000), (10, 1100)])


def test_an_unlikely_exponent_is_flagged():
    """Power that hardly rises with speed is a misread log."""
    flat = PointsCurve(
        tuple(SpeedPoint(speed, power) for speed, power in ((8, 1000), (10, 1050), (12, 1100)))
    )

    assert any("check the points" in sentence for sentence in flat.at(10).assumptions)


def test_speed_over_ground_is_flagged(points):
    """Current is in it."""
    curve = PointsCurve((replace(points[0], through_water=False), *points[1:]), 3500)

    assert any("over ground" in sentence for sentence in curve.at(10).assumptions)


@pytest.mark.parametrize("unknown", [{"kind": None}, {"through_water": None}])
@pytest.mark.parametrize("kind", [PointsCurve, AdmiraltyCurve])
def test_what_is_not_known_of_a_point_is_told(points, unknown, kind):
    """Log or trial, and through the water or over ground: never assumed in silence."""
    curve = kind((replace(points[0], **unknown), *points[1:]), 3500)

    assert any("is not known" in sentence for sentence in curve.at(8.5).assumptions)
    assert not any(
        "is not known" in sentence for sentence in kind(points, 3500).at(8.5).assumptions
    )


def test_points_that_lie_too_well_are_not_believed():
    """A perfect law still carries 3 % of scatter, listed as a default; a poor one has its own."""
    perfect = PointsCurve(tuple(SpeedPoint(v, 1.5 * v**3) for v in (8, 10, 12)))
    poor = PointsCurve(
        tuple(SpeedPoint(v, 1.5 * v**3 * f) for v, f in ((8, 0.8), (10, 1.2), (12, 0.85)))
    )

    assert ["scatter of the points"] == [default.name for default in perfect.at(10).defaults]
    assert () == poor.at(10).defaults


def test_scatter_widens_the_span():
    """A poor log gives a wide answer."""
    exact = PointsCurve(tuple(SpeedPoint(v, 1.5 * v**3) for v in (8, 10, 12, 13)))
    poor = PointsCurve(
        tuple(
            SpeedPoint(v, 1.5 * v**3 * f) for v, f in ((8, 0.8), (10, 1.2), (12, 0.85), (13, 1.1))
        )
    )

    assert 0.06 == pytest.approx(exact.at(10).span.high / exact.at(10).span.point - 1)
    assert poor.at(10).span.width > 3 * exact.at(10).span.width


def test_points_are_carried_to_the_displacement_of_today(points):
    """Power goes with displacement to two thirds; without one the points stay, with a gap."""
    then, now, unknown = (PointsCurve(points, weight).at(10) for weight in (3500, 4000, None))

    assert (4000 / 3500) ** (2 / 3) == pytest.approx(now.span.point / then.span.point)
    assert then.span == unknown.span
    assert ["displacement of the points"] == [gap.name for gap in unknown.gaps]
    assert () == then.gaps


@settings(max_examples=50)
@given(nested(3000, 4000), st.floats(7, 14.5))
def test_knowing_the_displacement_better_never_widens(displacement, speed):
    """A narrower displacement with the same middle gives a power inside the wider one."""
    log = tuple(
        SpeedPoint(v, p, 3500, "log", True)
        for v, p in ((8, 760), (10, 1480), (12, 2590), (13.5, 3720))
    )
    for kind in (PointsCurve, AdmiraltyCurve):
        wide, narrow = (kind(log, weight).at(speed).span for weight in displacement)
        assert wide.low <= narrow.low * (1 + 1e-9)
        assert narrow.high <= wide.high * (1 + 1e-9)


@pytest.mark.parametrize("speed", [400, 0, float("nan")])
def test_speeds_that_cannot_be_are_refused_by_every_way(points, particulars, speed):
    """400 kn is no question."""
    for curve in power_curves(points, particulars).curves:
        with pytest.raises(BadInput, match="^Speed is"):
            curve.at(speed)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"power": -5}, "power"),
        ({"speed": 400}, "speed"),
        ({"displacement": 0}, "displacement"),
        ({"kind": "guess"}, "kind"),
    ],
)
def test_points_that_cannot_be_are_refused(change, field):
    """The error names the field."""
    with pytest.raises(BadInput) as refused:
        SpeedPoint(**{"speed": 10, "power": 1000, "displacement": 3500, **change})

    assert f"speed point: {field}" == refused.value.field


def test_the_admiralty_coefficient_stays_near_its_points():
    """Two knots from the nearest point and no further."""
    curve = AdmiraltyCurve((SpeedPoint(12.5, 2900, 3500),), 3500)

    assert Span.around(1484.8 * (10.5 / 10) ** 3, 0.10).high == pytest.approx(
        curve.at(10.5).span.high, rel=1e-3
    )
    assert curve.at(10.4).span is None


def test_an_admiralty_coefficient_needs_a_displacement_with_its_point():
    """Without it there is no coefficient."""
    with pytest.raises(BadInput, match="with its displacement"):
        AdmiraltyCurve((SpeedPoint(12, 2900),), 3500)


def test_the_regression_lists_its_service_factor():
    """A computed hull is cleaner than any workboat; a given factor takes the default's place."""
    usual, own = (
        HoltropCurve(hull_forms(KNOWN)).at(10),
        HoltropCurve(hull_forms(KNOWN), service=1.8).at(10),
    )

    assert "service factor on the computed power" in [default.name for default in usual.defaults]
    assert "service factor on the computed power" not in [default.name for default in own.defaults]
    assert usual.span.contains(own.span)


def test_the_regression_ends_at_the_fastest_ship_behind_it():
    """Beyond a Froude number of 0.45 it is a gap."""
    curve = HoltropCurve(hull_forms(KNOWN))

    assert 21.9 == pytest.approx(curve.high_speed, abs=0.05)
    assert curve.at(23).span is None


def test_no_hull_is_no_regression():
    """Gaps never become a curve."""
    with pytest.raises(BadInput, match="see the gaps"):
        HoltropCurve(HullForms(None))


@pytest.mark.parametrize(
    ("kinds", "kind"),
    [
        ((None, "log", "log", "log"), "log"),
        (("log",) * 4, "log"),
        (("trial",) * 4, "trial"),
        (("log", "log", "trial", "log"), "log"),
        ((None, "trial", "trial", "trial"), "trial"),
    ],
)
def test_a_curve_knows_whether_weather_is_in_it(points, kinds, kind):
    """With one point of a log all carry weather, since the others take the margin."""
    mixed = tuple(replace(point, kind=name) for point, name in zip(points, kinds, strict=True))

    assert kind == PointsCurve(mixed).kind
