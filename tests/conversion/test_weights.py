"""Weights: every way of telling a mass, common centres with honest spans, and refusals that name the field."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.inputs import BadInput
from inspector.conversion.shapes import Span
from inspector.conversion.tables import Row
from inspector.conversion.weights import FITTINGS, NO_BASIS, STIFFENERS, Weight, centre, contents, of_lightship, pipe, plate, raised_by, stated, total
from inspector.conversion.weights_table import listed, mass_of, weight_of
from tests.conversion.a_case import WEIGHTS, case
from tests.conversion.conftest import nested, spans

UP = Span(0.0, None, 30.0)


@pytest.mark.parametrize(("make", "field"), [
    (lambda: plate("bulkhead", -5, 8), "bulkhead: area"), (lambda: plate("bulkhead", 5, 0), "plate: thickness"),
    (lambda: plate("bulkhead", 5, 8, 300), "bulkhead: addition"),
    (lambda: pipe("main", 20, "7 in, schedule 40"), "pipe: size and schedule"), (lambda: pipe("main", float("nan"), "4 in, schedule 40"), "main: length"),
    (lambda: contents("tank 3", 20, -850), "tank 3: density"), (lambda: contents("tank 3", 20, 0.85), "tank 3: density"),
    (lambda: stated("winch", -1), "winch: mass"),
    (lambda: stated("winch", 1, "hearsay"), "winch: basis"), (lambda: Weight("winch", "away", Span.exact(1)), "winch: act"),
    (lambda: Weight("winch", "on", Span.exact(1), vcg=700), "winch: vcg"), (lambda: total([]), "weights"),
    (lambda: centre(100, 5, [Weight("all", "off", Span.exact(100), vcg=1)], "vcg", UP), "weights"),
])
def test_what_cannot_be_is_refused_by_its_field(make, field):
    """Negative, not a number, the wrong unit, an unknown word, an empty list, more off than there is."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field


@pytest.mark.parametrize(("values", "field"), [
    ({}, "grab: mass"), ({"mass": 2.0, "area": 3.0}, "grab: mass"), ({"area": 3.0}, "grab: thickness"), ({"thickness": 3.0}, "grab: area"),
    ({"length": 3.0}, "grab: pipe"), ({"density": 900.0}, "grab: volume"),
])
def test_a_mass_is_told_in_one_whole_way(values, field):
    """None, two ways at once, or half of one: one sentence that names what is missing."""
    with pytest.raises(BadInput) as refused:
        mass_of(Row("1", {"name": "grab", "act": "off", **values}))

    assert field == refused.value.field


def test_defaults_are_listed_and_given_values_are_not():
    """An addition or a basis that nobody gave stands beside the mass; a given one leaves nothing to list."""
    assert (STIFFENERS,) == plate("a", 10, 8).defaults
    assert (FITTINGS,) == pipe("a", 10, "4 in, schedule 40").defaults
    assert (NO_BASIS,) == stated("a", 10).defaults
    assert () == plate("a", 10, 8, 25).defaults + pipe("a", 10, "4 in, schedule 40", 0).defaults + stated("a", 10, "weighed").defaults


def test_a_better_basis_narrows_a_mass():
    """Weighed lies inside drawing, drawing inside computed, computed inside a rule of thumb, which is what counts untold."""
    found = [stated("winch", 40, basis).span for basis in ("weighed", "drawing", "computed", "rule of thumb")]

    assert all(wide.contains(narrow) for narrow, wide in zip(found, found[1:], strict=False))
    assert found[-1] == stated("winch", 40).span


def test_contents_are_deadweight_and_the_rest_is_lightship():
    """Liquids never count for the lightship, unless the row says so."""
    fuel = weight_of(Row("1", {"name": "fuel", "act": "off", "volume": 10.0, "density": 850.0}), contents("fuel", 10, 850))
    winch = weight_of(Row("2", {"name": "winch", "act": "off", "mass": 10.0}), stated("winch", 10))

    assert (winch,) == of_lightship([fuel, winch])


WEIGHT = st.builds(lambda act, mass, vcg: Weight("w", act, mass, vcg=vcg), st.sampled_from(["off", "on"]), spans(0, 60), st.none() | st.floats(0, 30))


@given(st.lists(WEIGHT, min_size=1, max_size=4), st.floats(3, 9))
def test_the_common_centre_is_bounded_exactly(weights, kg):
    """The ends are the least and greatest over all corners, reckoned one by one, and the point lies between them."""
    found = centre(3000, kg, weights, "vcg", UP)
    corners = []
    for masses in product(*((one.change.low, one.change.high) for one in weights)):
        for heights in product(*(((0.0, 30.0) if one.vcg is None else (one.vcg,)) for one in weights)):
            corners.append((3000 * kg + sum(m * z for m, z in zip(masses, heights, strict=True))) / (3000 + sum(masses)))

    assert min(corners) == pytest.approx(found.low, abs=1e-9)
    assert max(corners) == pytest.approx(found.high, abs=1e-9)
    assert (found.point is None) == any(one.vcg is None for one in weights)


@given(nested(0, 200), st.floats(0, 30), st.floats(3, 9), st.sampled_from(["off", "on"]))
def test_more_knowledge_never_widens_a_centre(pair, vcg, kg, act):
    """A narrower mass, and a centre that becomes known, give a span inside the one before."""
    wide, narrow = pair
    found = [centre(3000, kg, [Weight("w", act, mass, vcg=at)], "vcg", UP) for mass, at in ((wide, None), (wide, vcg), (narrow, vcg))]

    assert Span(found[0].low - 1e-9, None, found[0].high + 1e-9).contains(found[1])
    assert Span(found[1].low - 1e-9, None, found[1].high + 1e-9).contains(found[2])


def test_a_low_weight_off_raises_the_centre():
    """What is taken off below the centre of gravity raises it; a weight without a height moves it by nobody knows how much."""
    assert 0 < raised_by(3200, 6.4, Weight("tanks", "off", Span.exact(72), vcg=3.2)).low
    assert raised_by(3200, 6.4, Weight("tanks", "off", Span.exact(72))) is None


def test_a_row_that_cannot_be_used_is_told_and_left_out():
    """The other rows still count."""
    found = listed(case({"weights": [*WEIGHTS, {"name": "crane", "act": "on", "area": "12"}]}))

    assert ["towing winch", "bulk tanks", "landing deck"] == [one.name for one in found.weights]
    assert ("Weights off and on: crane: thickness is missing, and steel is reckoned from area and thickness.",) == found.faults


def test_tanks_that_are_planned_away_are_asked_for():
    """Whether their contents are in the starting condition only the surveyor knows; a row of the same name answers."""
    tanks = [{"name": "mud 1", "capacity": "60", "fill": "50", "kind": "wet cargo", "plan": "remove"}]
    answered = [{"name": "Mud 1", "act": "off", "volume": "30", "density": "1700"}]

    assert ["Tank mud 1 (remove)"] == [gap.name for gap in listed(case({"tanks": tanks})).gaps]
    assert () == listed(case({"tanks": tanks, "weights": answered})).gaps
