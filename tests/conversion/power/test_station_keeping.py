"""Wind, current and thrust: refusals, spans, and that more plant never withstands less."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.power.cascade_failure import single_failures
from inspector.conversion.power.holding.failure_case import LoadLimits, Scenario
from inspector.conversion.power.holding.holding_power import outcome, power_limited
from inspector.conversion.power.holding.station_keeping import (
    CURRENT,
    CURRENT_BEAM,
    WAVES,
    WIND_BEAM,
    WIND_CENTRE,
    Exposure,
    beam_forces,
    head_forces,
)
from inspector.conversion.power.holding.steady_forces import current_force, wind_force
from inspector.conversion.power.holding.thruster_thrust import LAWS, RATES, full_thrust, shaft_power
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_elements import GeneratorSet, Thruster, Tie

HULL = Exposure(length=65, draught=4.5, lateral=520)
UNIT = Thruster("T1", "tunnel", "A", 500, 27, "across")


def plant(power=600, more=()):
    """Two buses with a bow and a stern unit each."""
    return Plant(
        sets=(GeneratorSet("G1", "A", power), GeneratorSet("G2", "B", power), *more),
        ties=(Tie("tie", "A", "B"),),
        hotel={"A": 100, "B": 100},
        thrusters=(
            UNIT,
            replace(UNIT, name="T2", feed="B"),
            replace(UNIT, name="T3", x=-27),
            replace(UNIT, name="T4", feed="B", x=-27),
        ),
    )


def scenarios(scale=1.0):
    """Worst, likely and best; scale on the thrusts."""
    forces = beam_forces(replace(HULL, x_wind=3, x_current=3))[0]
    return tuple(
        Scenario(dict.fromkeys(("T1", "T2", "T3", "T4"), scale * thrust), {}, force)
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
        (lambda: shaft_power(80, 77, 700), "Thrust"),
        (lambda: LoadLimits(efficiency=0), "Efficiency"),
        (lambda: LoadLimits(share=1.5), "Load limit"),
        (lambda: power_limited(100, 0), "Power at full"),
        (lambda: outcome(plant(), scenarios(), (), -1), "Wind to be withstood"),
    ],
)
def test_what_cannot_be_is_refused_in_one_sentence(make, word):
    """It begins with the field."""
    with pytest.raises(BadInput, match=f"^{word}"):
        make()


def test_defaults_of_a_bare_hull_are_listed():
    """Coefficients, current, waves and the centre of the wind were assumed, so they are listed."""
    assert {WIND_BEAM, CURRENT_BEAM, WAVES, CURRENT, WIND_CENTRE} == set(beam_forces(HULL)[1])


def test_what_was_given_is_not_listed():
    """Nothing was assumed."""
    assert (
        ()
        == beam_forces(
            replace(HULL, wind_beam=0.9, current_beam=0.7, waves=1.25, current=0.5, x_wind=3)
        )[1]
    )


def test_the_head_needs_its_area_and_the_breadth():
    """Neither is assumed."""
    assert (
        head_forces(HULL)
        is None
        is head_forces(replace(HULL, frontal=200))
        is head_forces(replace(HULL, breadth=16))
    )
    assert head_forces(replace(HULL, frontal=200, breadth=16)) is not None


def test_a_measured_thrust_comes_first():
    """It takes no default, whatever diameter is given beside it."""
    found = full_thrust(replace(UNIT, thrust=70, diameter=1.6), True)

    assert (70, True, ()) == (found.span.point, found.span.is_exact, found.defaults)


def test_a_thrust_by_power_is_off_by_a_share_and_listed():
    """0.11 kN per kW."""
    found = full_thrust(UNIT, True)

    assert (55, (RATES["tunnel"],)) == (pytest.approx(found.span.point), found.defaults)
    assert found.span.low < 55 < found.span.high


def test_a_diameter_brings_a_second_estimate():
    """Both are in the span, and both are listed."""
    found = full_thrust(replace(UNIT, diameter=1.6), True)

    assert found.span.contains(55)
    assert (RATES["tunnel"], LAWS["tunnel"]) == found.defaults


def test_a_propeller_pushes_sideways_only_as_far_as_was_given():
    """Nothing given is none."""
    propeller = Thruster("port", "propeller in nozzle", "A", 2000, -30, "along", thrust=300)

    assert (0, 90, 300) == tuple(
        full_thrust(unit, way).span.point
        for unit, way in (
            (propeller, True),
            (replace(propeller, side=90), True),
            (propeller, False),
        )
    )
    assert not propeller.across


def test_nothing_known_of_the_wind_leaves_thrust_only():
    """No force, no need, no wind, and no verdict on station keeping."""
    bare = tuple(replace(each, beam=None) for each in scenarios())
    found = outcome(plant(), bare, ("A",), 10)

    assert (60, 60, None, None) == (
        found.bow,
        found.stern,
        found.keeps_station,
        found.wind,
    )


def test_no_thruster_at_the_bow_withstands_nothing():
    """Zero, with the reason."""
    aft = replace(plant(), thrusters=tuple(unit for unit in plant().thrusters if unit.x < 0))
    found = outcome(aft, scenarios(), (), 10)

    assert (0, 0, "no thrust across at the bow", False) == (
        found.bow,
        found.wind.point,
        found.shortfall,
        found.keeps_station,
    )


def test_whether_station_is_kept_is_not_known_between_the_scenarios():
    """At the likely limit the worst scenario fails and the best withstands."""
    likely = outcome(plant(), scenarios()).wind

    assert (True, None, False) == tuple(
        outcome(plant(), scenarios(), (), wind).keeps_station
        for wind in (likely.low - 0.1, likely.point, likely.high + 0.1)
    )


@given(st.data(), st.floats(200, 2000))
def test_the_span_of_the_wind_holds_its_point(data, power):
    """Low, likely and high in order after any failure."""
    whole = plant(power)
    found = outcome(whole, scenarios(), (data.draw(st.sampled_from(single_failures(whole))),)).wind

    assert found.low <= found.point <= found.high


@given(st.data(), st.floats(200, 2000), st.floats(10, 1000))
def test_a_further_set_never_withstands_less_after_any_failure(data, power, more):
    """One set more on either bus: at least the same wind, low, likely and high."""
    whole = plant(power)
    bigger = plant(power, (GeneratorSet("further", data.draw(st.sampled_from("AB")), more),))
    failed = data.draw(st.sampled_from(single_failures(whole)))
    before, after = (outcome(each, scenarios(), (failed,)).wind for each in (whole, bigger))

    assert all(
        getattr(after, end) >= getattr(before, end) - 1e-6 for end in ("low", "point", "high")
    )


@given(st.data(), st.floats(1, 3))
def test_more_thrust_never_withstands_less_after_any_failure(data, scale):
    """Stronger thrusters of the same power."""
    whole = plant(800)
    failed = data.draw(st.sampled_from(single_failures(whole)))
    before, after = (outcome(whole, scenarios(factor), (failed,)).wind for factor in (1.0, scale))

    assert after.point >= before.point - 1e-6


@given(st.data(), st.sampled_from([27, -27]))
def test_a_further_thruster_never_leaves_less_thrust_nor_wind_where_power_is_ample(data, x):
    """Where no bus is short, one unit more only helps."""
    whole = plant(20_000)
    bigger = replace(whole, thrusters=(*whole.thrusters, replace(UNIT, name="further", x=x)))
    further = tuple(replace(each, across={**each.across, "further": 60}) for each in scenarios())
    failed = data.draw(st.sampled_from(single_failures(whole)))
    before, after = outcome(whole, scenarios(), (failed,)), outcome(bigger, further, (failed,))

    assert (after.bow, after.stern) >= (before.bow, before.stern)
    assert after.wind.point >= before.wind.point - 1e-6
