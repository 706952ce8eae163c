"""Weights: every way of giving a mass, common centres with their spans, and refusals by field."""

from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.conversion.range.fuel.fuel_on_board import usable_fuel
from inspector.conversion.range.particulars import read_inputs
from inspector.conversion.stability.masses import (
    FITTINGS,
    NO_BASIS,
    STIFFENERS,
    contents_mass,
    given_mass,
    pipe_mass,
    plate_mass,
)
from inspector.conversion.stability.particulars import mass_of, read_weights, weight_of
from inspector.conversion.stability.weights import (
    Weight,
    common_centre,
    kg_rise,
    lightship_weights,
    total_change,
)
from tests.conversion.a_case import WEIGHTS, case
from tests.conversion.conftest import nested, spans

UP = Span(0.0, None, 30.0)


@pytest.mark.parametrize(
    ("make", "field"),
    [
        (lambda: plate_mass("bulkhead", -5, 8), "bulkhead: area"),
        (lambda: plate_mass("bulkhead", 5, 0), "plate: thickness"),
        (lambda: plate_mass("bulkhead", 5, 8, 300), "bulkhead: addition"),
        (lambda: pipe_mass("main", 20, "7 in, schedule 40"), "pipe: size and schedule"),
        (lambda: pipe_mass("main", float("nan"), "4 in, schedule 40"), "main: length"),
        (lambda: contents_mass("tank 3", 20, -850), "tank 3: density"),
        (lambda: contents_mass("tank 3", 20, 0.85), "tank 3: density"),
        (lambda: given_mass("winch", -1), "winch: mass"),
        (lambda: given_mass("winch", 1, "hearsay"), "winch: basis"),
        (lambda: Weight("winch", "away", Span.exact(1)), "winch: act"),
        (lambda: Weight("winch", "on", Span.exact(1), vcg=700), "winch: vcg"),
        (
            lambda: common_centre(
                100, 5, [Weight("all", "off", Span.exact(100), vcg=1)], "vcg", UP
            ),
            "weights",
        ),
    ],
)
def test_what_cannot_be_is_refused_by_its_field(make, field):
    """A wrong sign or unit, an unknown word, or more taken off than there is, is refused."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field


@pytest.mark.parametrize(
    ("values", "field"),
    [
        ({}, "grab: mass"),
        ({"mass": 2.0, "area": 3.0}, "grab: mass"),
        ({"area": 3.0}, "grab: thickness"),
        ({"thickness": 3.0}, "grab: area"),
        ({"length": 3.0}, "grab: pipe"),
        ({"density": 900.0}, "grab: volume"),
    ],
)
def test_a_mass_is_given_in_one_whole_way(values, field):
    """None, two ways at once, or half of one: a sentence names what is missing."""
    with pytest.raises(BadInput) as refused:
        mass_of(Row("1", {"name": "grab", "act": "off", **values}))

    assert field == refused.value.field


def test_defaults_are_listed_and_given_values_are_not():
    """An addition or a basis that nobody gave is listed; a given one leaves nothing to list."""
    assert (STIFFENERS,) == plate_mass("a", 10, 8).defaults
    assert (FITTINGS,) == pipe_mass("a", 10, "4 in, schedule 40").defaults
    assert (NO_BASIS,) == given_mass("a", 10).defaults
    assert (
        ()
        == plate_mass("a", 10, 8, 25).defaults
        + pipe_mass("a", 10, "4 in, schedule 40", 0).defaults
        + given_mass("a", 10, "weighed").defaults
    )


def test_a_better_basis_narrows_a_mass():
    """Weighed is inside drawing, that inside computed, that inside a rule of thumb, the default."""
    found = [
        given_mass("winch", 40, basis).span
        for basis in ("weighed", "drawing", "computed", "rule of thumb")
    ]

    assert all(wide.contains(narrow) for narrow, wide in zip(found, found[1:], strict=False))
    assert found[-1] == given_mass("winch", 40).span


def test_contents_are_deadweight_and_the_rest_is_lightship():
    """Liquids do not count for the lightship, unless the row says so."""
    fuel = weight_of(
        Row("1", {"name": "fuel", "act": "off", "volume": 10.0, "density": 850.0}),
        contents_mass("fuel", 10, 850),
    )
    winch = weight_of(
        Row("2", {"name": "winch", "act": "off", "mass": 10.0}), given_mass("winch", 10)
    )

    assert (winch,) == lightship_weights([fuel, winch])


WEIGHT = st.builds(
    lambda act, mass, vcg: Weight("w", act, mass, vcg=vcg),
    st.sampled_from(["off", "on"]),
    spans(0, 60),
    st.none() | st.floats(0, 30),
)


@given(st.lists(WEIGHT, min_size=1, max_size=4), st.floats(3, 9))
def test_the_common_centre_is_bounded_exactly(weights, kg):
    """The ends are the least and greatest over all corners, each calculated."""
    found = common_centre(3000, kg, weights, "vcg", UP)
    corners = []
    for masses in product(*((weight.change.low, weight.change.high) for weight in weights)):
        for heights in product(
            *(((0.0, 30.0) if weight.vcg is None else (weight.vcg,)) for weight in weights)
        ):
            corners.append(
                (3000 * kg + sum(m * z for m, z in zip(masses, heights, strict=True)))
                / (3000 + sum(masses))
            )

    assert min(corners) == pytest.approx(found.low, abs=1e-9)
    assert max(corners) == pytest.approx(found.high, abs=1e-9)
    assert (found.point is None) == any(weight.vcg is None for weight in weights)


@given(nested(0, 200), st.floats(0, 30), st.floats(3, 9), st.sampled_from(["off", "on"]))
def test_more_knowledge_never_widens_a_centre(pair, vcg, kg, act):
    """A narrower mass, and a centre that becomes known, give a span inside the one before."""
    wide, narrow = pair
    found = [
        common_centre(3000, kg, [Weight("w", act, mass, vcg=at)], "vcg", UP)
        for mass, at in ((wide, None), (wide, vcg), (narrow, vcg))
    ]

    assert Span(found[0].low - 1e-9, None, found[0].high + 1e-9).contains(found[1])
    assert Span(found[1].low - 1e-9, None, found[1].high + 1e-9).contains(found[2])


def test_no_weights_change_nothing():
    """The mass added by an empty list is zero."""
    assert Span.exact(0.0) == total_change([])


def test_a_low_weight_off_raises_the_centre():
    """Taken off below the centre of gravity it raises KG; without a height nobody knows."""
    assert 0 < kg_rise(3200, 6.4, Weight("tanks", "off", Span.exact(72), vcg=3.2)).low
    assert kg_rise(3200, 6.4, Weight("tanks", "off", Span.exact(72))) is None


def test_a_row_that_cannot_be_used_is_named_and_left_out():
    """The other rows still count."""
    found = read_weights(
        case({"weights": [*WEIGHTS, {"name": "crane", "act": "on", "area": "12"}]})
    )

    assert ["towing winch", "bulk tanks", "landing deck"] == [
        weight.name for weight in found.weights
    ]
    assert (
        "What comes off and goes on: crane: thickness is missing, "
        "and steel is calculated from area and thickness.",
    ) == found.faults


MUD = {"name": "mud 1", "capacity": "60", "fill": "50", "kind": "wet cargo", "plan": "remove"}


def of_tank(**change):
    """The list of weights where one tank is all there is."""
    return read_weights(case({"tanks": [{**MUD, **change}]}))


def test_what_is_in_a_tank_that_goes_comes_off():
    """30 m³ of 1,700 kg/m³ are 51 t of deadweight, at the place of the tank, no lightship."""
    (weight,) = of_tank(density="1700", lcg="30", tcg="0", vcg="2").weights

    assert ("Contents of mud 1", "off", "deadweight") == (weight.name, weight.act, weight.part)
    assert (51.0, 30, 0, 2) == (weight.mass.point, weight.lcg, weight.tcg, weight.vcg)


def test_an_assumed_density_of_contents_is_listed():
    """Wet cargo may be water or mud: the mass spans both, and the default is named."""
    found = of_tank()

    assert (30 * 0.8, 30 * 2.5) == (found.weights[0].mass.low, found.weights[0].mass.high)
    assert "density in mud 1" in [default.name for default in found.masses[0].defaults]


def test_a_row_of_the_same_name_answers_for_a_tank():
    """Whoever typed what comes off knows better than its filling."""
    answered = [{"name": "Mud 1", "act": "off", "volume": "30", "density": "1700"}]
    found = read_weights(case({"tanks": [MUD], "weights": answered}))

    assert ["Mud 1"] == [weight.name for weight in found.weights]
    assert () == found.gaps


def test_fuel_that_is_lost_for_range_is_lost_for_stability():
    """One truth: what range does not burn any more, stability does not carry any more."""
    fuel = {**MUD, "kind": "fuel", "density": "850", "plan": "convert", "vcg": "1"}
    rows = {"tanks": [fuel, {**fuel, "name": "kept", "plan": "keep"}]}
    on_board = usable_fuel(read_inputs(case(rows)).tanks)
    (off,) = read_weights(case(rows)).weights

    assert 1 == len(read_inputs(case(rows)).tanks)
    assert on_board.span.high <= 60 * 0.850
    assert 30 * 0.850 == pytest.approx(off.mass.point)


def test_contents_that_cannot_be_are_a_fault():
    """A tank of 20,000 m³ of wet cargo at 4,000 kg/m³ is beyond every vessel; nothing raises."""
    found = of_tank(capacity="20000", fill="100", density="4000")

    assert len(found.faults) + len(found.weights) == 1


def test_steel_and_pipe_are_read_from_their_columns():
    """30 m² of 8 mm with 25 % for stiffeners are 2.355 t; 120 m of 6 inch pipe bare are 3.39 t."""
    steel = {"name": "plates", "act": "on", "area": 30.0, "thickness": 8.0, "extra": 25.0}
    run = {"name": "main", "act": "off", "length": 120.0, "extra": 0.0}
    run["pipe"] = "6 in, schedule 40"

    assert 30 * 8 * 7.85 * 1.25 / 1000 == pytest.approx(mass_of(Row("1", steel)).span.point)
    assert 120 * 28.26 / 1000 == pytest.approx(mass_of(Row("2", run)).span.point, rel=1e-3)


@pytest.mark.parametrize(
    ("change", "names"),
    [
        ({}, ["Steel of mud 1"]),
        ({"fill": ""}, ["Filling of mud 1 (remove)", "Steel of mud 1"]),
        ({"plan": "convert"}, ["What mud 1 will hold"]),
        ({"plan": "convert", "becomes": "ballast", "fill": "0"}, []),
        ({"plan": "keep"}, []),
    ],
)
def test_what_is_not_known_of_a_tank_is_a_gap(change, names):
    """Its filling, its steel, what it will hold: each is named where it is missing."""
    assert names == [gap.name for gap in of_tank(**change).gaps]
