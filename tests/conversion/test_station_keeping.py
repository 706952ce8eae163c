"""Wind and current, thrust and what is held: refusals, spans, and that more never holds less."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.failure import elements
from inspector.conversion.holding import most_wind, outcome, power_limited
from inspector.conversion.inputs import BadInput
from inspector.conversion.plant import GeneratorSet, Plant, Thruster, Tie
from inspector.conversion.station_keeping import (
    CURRENT,
    CURRENT_BEAM,
    FLAT,
    LAWS,
    WAVES,
    WIND_BEAM,
    WIND_CENTRE,
    Exposure,
    Force,
    beam,
    current_force,
    head,
    power_for,
    thrust_of,
    wind_force,
)
from inspector.conversion.thrust_sharing import Level, Terms

HULL = Exposure(length=65, draught=4.5, lateral=520)
UNIT = Thruster("T1", "tunnel", "A", 500, 27, "across")


def plant(power=600, more=()):
    """Two buses with a bow and a stern unit each."""
    return Plant(
        sets=(GeneratorSet("G1", "A", power), GeneratorSet("G2", "B", power), *more),
        ties=(Tie("tie", "A", "B"),),
        hotel={"A": 100, "B": 100},
        thrusters=(UNIT, replace(UNIT, name="T2", feed="B"), replace(UNIT, name="T3", x=-27), replace(UNIT, name="T4", feed="B", x=-27)),
    )


def levels(scale=1.0):
    """Worst, likely and best; scale on the thrusts."""
    forces = beam(replace(HULL, x_wind=3, x_current=3))[0]
    return tuple(
        Level(dict.fromkeys(("T1", "T2", "T3", "T4"), scale * thrust), {}, force)
        for thrust, force in zip((50, 60, 70), reversed(forces), strict=True)
    )


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"lateral": -520}, "exposure: lateral"),
        ({"lateral": 0}, "exposure: lateral"),
        ({"draught": 0}, "exposure: draught"),
        ({"length": -65}, "exposure: length"),
        ({"frontal": -1}, "exposure: frontal"),
        ({"current": -0.5}, "exposure: current"),
        ({"wind_beam": 0}, "exposure: wind beam"),
        ({"waves": 0.9}, "exposure: waves"),
        ({"lateral": float("inf")}, "exposure: lateral"),
    ],
)
def test_a_hull_that_cannot_be_is_refused(change, field):
    """Negative areas among them; the error names the field."""
    with pytest.raises(BadInput) as refused:
        replace(HULL, **change)

    assert field == refused.value.field


@pytest.mark.parametrize(
    ("make", "word"),
    [
        (lambda: wind_force(0.9, -520, 10), "Wind area"),
        (lambda: wind_force(0.9, 520, -1), "Wind is"),
        (lambda: current_force(9, 300, 1), "Current coefficient"),
        (lambda: power_for(80, 77, 700), "Thrust"),
        (lambda: Force(1, 1).shares(10, -27, 27), "Thrusters"),
        (lambda: Terms(efficiency=0), "Efficiency"),
        (lambda: Terms(limit=1.5), "Load limit"),
        (lambda: power_limited(100, 0), "Power at full"),
        (lambda: outcome(plant(), levels(), (), -1), "Wind to be held"),
    ],
)
def test_what_cannot_be_is_refused_in_one_sentence(make, word):
    """It begins with the field."""
    with pytest.raises(BadInput, match=f"^{word}"):
        make()


def test_defaults_of_a_bare_hull_are_listed():
    """Coefficients, current, waves and the centre of the wind were made up: they are told."""
    assert {WIND_BEAM, CURRENT_BEAM, WAVES, CURRENT, WIND_CENTRE} == set(beam(HULL)[1])


def test_what_was_given_is_not_listed():
    """Nothing was made up."""
    assert () == beam(replace(HULL, wind_beam=0.9, current_beam=0.7, waves=1.25, current=0.5, x_wind=3))[1]


def test_the_head_needs_its_area_and_the_breadth():
    """Neither is made up."""
    assert head(HULL) is None is head(replace(HULL, frontal=200)) is head(replace(HULL, breadth=16))
    assert head(replace(HULL, frontal=200, breadth=16)) is not None


def test_a_measured_thrust_comes_first():
    """It takes no default, whatever diameter stands beside it."""
    found = thrust_of(replace(UNIT, thrust=70, diameter=1.6), True)

    assert (70, True, ()) == (found.span.point, found.span.is_exact, found.defaults)


def test_a_thrust_by_power_is_off_by_a_share_and_listed():
    """0.11 kN per kW."""
    found = thrust_of(UNIT, True)

    assert (55, (FLAT["tunnel"],)) == (pytest.approx(found.span.point), found.defaults)
    assert found.span.low < 55 < found.span.high


def test_a_diameter_brings_a_second_estimate():
    """Both lie in the span, and both are listed."""
    found = thrust_of(replace(UNIT, diameter=1.6), True)

    assert found.span.contains(55)
    assert (FLAT["tunnel"], LAWS["tunnel"]) == found.defaults


def test_a_propeller_pushes_sideways_only_as_far_as_was_said():
    """Nothing said is none."""
    propeller = Thruster("port", "propeller in nozzle", "A", 2000, -30, "along", thrust=300)

    assert (0, 90, 300) == tuple(
        thrust_of(unit, way).span.point for unit, way in ((propeller, True), (replace(propeller, side=90), True), (propeller, False))
    )
    assert not propeller.across


def test_nothing_known_of_the_wind_leaves_thrust_only():
    """No force, no need, no wind, and not "held"."""
    bare = tuple(replace(level, beam=None) for level in levels())
    found = outcome(plant(), bare, ("A",), 10)

    assert (60, 60, None, None, None) == (found.bow, found.stern, found.bow_need, found.holds, found.wind)


def test_no_thruster_at_the_bow_holds_nothing():
    """Zero, and it says why."""
    aft = replace(plant(), thrusters=tuple(unit for unit in plant().thrusters if unit.x < 0))
    found = outcome(aft, levels(), (), 10)

    assert (0, 0, "no thrust across at the bow", False) == (found.bow, found.wind.point, found.limit, found.holds)


def test_whether_it_holds_is_not_known_between_the_levels():
    """At the likely limit the worst case fails and the best holds."""
    likely = outcome(plant(), levels()).wind

    assert (True, None, False) == tuple(outcome(plant(), levels(), (), wind).holds for wind in (likely.low - 0.1, likely.point, likely.high + 0.1))


@given(st.floats(0, 99))
def test_bisection_finds_the_wind(limit):
    """Whatever the limit, to a ten-millionth of a metre per second."""
    assert limit == pytest.approx(most_wind(lambda wind: wind <= limit), abs=1e-7)


@pytest.mark.parametrize(("holds", "found"), [(lambda wind: False, 0), (lambda wind: True, 100)])
def test_bisection_ends_at_its_ends(holds, found):
    """Not even still air, and any wind."""
    assert found == most_wind(holds)


@given(st.data(), st.floats(200, 2000))
def test_the_span_of_the_wind_holds_its_point(data, power):
    """Low, likely and high in order after any failure."""
    standing = plant(power)
    found = outcome(standing, levels(), (data.draw(st.sampled_from(elements(standing))),)).wind

    assert found.low <= found.point <= found.high


@given(st.data(), st.floats(200, 2000), st.floats(10, 1000))
def test_a_further_set_never_holds_less_after_any_failure(data, power, more):
    """One set more on either bus: at least the same wind, low, likely and high."""
    standing = plant(power)
    bigger = plant(power, (GeneratorSet("further", data.draw(st.sampled_from("AB")), more),))
    failed = data.draw(st.sampled_from(elements(standing)))
    before, after = (outcome(one, levels(), (failed,)).wind for one in (standing, bigger))

    assert all(getattr(after, end) >= getattr(before, end) - 1e-6 for end in ("low", "point", "high"))


@given(st.data(), st.floats(1, 3))
def test_more_thrust_never_holds_less_after_any_failure(data, scale):
    """Stronger thrusters of the same power."""
    standing = plant(800)
    failed = data.draw(st.sampled_from(elements(standing)))
    before, after = (outcome(standing, levels(one), (failed,)).wind for one in (1.0, scale))

    assert after.point >= before.point - 1e-6


@given(st.data(), st.sampled_from([27, -27]))
def test_a_further_thruster_never_leaves_less_thrust_nor_wind_where_power_is_ample(data, x):
    """Where no bus is short, one unit more only helps."""
    standing = plant(20_000)
    bigger = replace(standing, thrusters=(*standing.thrusters, replace(UNIT, name="further", x=x)))
    further = tuple(replace(level, across={**level.across, "further": 60}) for level in levels())
    failed = data.draw(st.sampled_from(elements(standing)))
    before, after = outcome(standing, levels(), (failed,)), outcome(bigger, further, (failed,))

    assert (after.bow, after.stern) >= (before.bow, before.stern)
    assert after.wind.point >= before.wind.point - 1e-6


@given(st.floats(-60, 60), st.floats(0, 40))
def test_bow_and_stern_never_share_less_than_the_force(x_wind, speed):
    """Their sum is the force where its centre lies between them, and more where it does not."""
    force = Force(0.3, 20, x_wind)
    bow, stern = force.shares(speed, 27, -27)

    assert bow + stern >= force.total(speed) - 1e-6
    if abs(x_wind) <= 27:
        assert force.total(speed) == pytest.approx(bow + stern)
