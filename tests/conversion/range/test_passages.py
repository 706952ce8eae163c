"""Range, days and economical speed against the brief: enough, not enough, or not known."""

from dataclasses import replace

import pytest
from hypothesis import given, settings

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.figure import Gap, no_figure
from inspector.conversion.core.span import Span
from inspector.conversion.hull.hull_form import Particulars, hull_forms
from inspector.conversion.range.economical_speed import (
    BriefBox,
    economical_speed,
    fuel_for,
    fuel_margin,
)
from inspector.conversion.range.engines import ConsumptionPoint, Engine
from inspector.conversion.range.fuel.fuel_on_board import FuelTank, usable_fuel
from inspector.conversion.range.hotel_load import Hotel
from inspector.conversion.range.own_speed_power import PointsCurve
from inspector.conversion.range.passages import available, hotel_burn, passage
from inspector.conversion.range.sea_power import IN_SERVICE, RESERVE, SEA_MARGIN, Ship, sea_power
from inspector.conversion.range.speed_points import SpeedPoint
from inspector.conversion.range.speed_power import HoltropCurve
from tests.conversion.conftest import nested


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"speed": 400}, "brief: speed"),
        ({"range": -4000}, "brief: range"),
        ({"endurance": 0}, "brief: endurance"),
        ({"persons": 0}, "brief: persons"),
    ],
)
def test_a_brief_that_cannot_be_is_refused(change, field):
    """The error names the field."""
    with pytest.raises(BadInput) as refused:
        BriefBox(**change)

    assert field == refused.value.field


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"running": 3}, "main engines running"),
        ({"sea_margin": 0.15}, "sea margin"),
        ({"reserve": 10}, "reserve"),
    ],
)
def test_a_plan_that_cannot_be_is_refused(ship, change, field):
    """A margin of 0.15 means 1.15, and a reserve of 10 means 0.10: neither is guessed."""
    with pytest.raises(BadInput) as refused:
        replace(ship, **change)

    assert field == refused.value.field


def test_the_weather_is_counted_once(ship, points):
    """Points of a log carry it already, those of a trial do not."""
    trial = replace(
        ship, curve=PointsCurve(tuple(replace(point, kind="trial") for point in points), 3500)
    )

    assert IN_SERVICE in sea_power(ship, 10).defaults
    assert SEA_MARGIN in sea_power(trial, 10).defaults
    assert 1.15 == pytest.approx(sea_power(trial, 10).span.point / sea_power(ship, 10).span.point)


def test_every_default_of_a_range_is_listed(ship):
    """Fuel, margin, consumption, hotel and reserve."""
    names = {default.name for default in passage(ship, 10).range.defaults}

    assert {
        "fuel density at 15 °C",
        "fuel temperature",
        "fill",
        "share above the suction",
        "sea margin",
        "base consumption",
        "reserve",
        "generator efficiency",
    } <= names


def test_a_given_reserve_and_margin_are_no_defaults(ship, points):
    """What the client decided is not assumed; a margin is of calm water, so of a trial."""
    trial = PointsCurve(tuple(replace(point, kind="trial") for point in points), 3500)
    given = replace(ship, curve=trial, reserve=0.2, sea_margin=1.15)
    names = {default.name for default in passage(given, 10).range.defaults}

    assert not {"reserve", "sea margin"} & names
    assert RESERVE in available(ship).defaults


def test_a_speed_that_nothing_tells_is_a_gap_all_the_way(ship):
    """No burn, no range, no days; the reason goes along."""
    found = passage(ship, 20)

    assert [False] * 4 == [
        figure.known for figure in (found.burn, found.per_mile, found.range, found.days)
    ]
    assert "20 kn lies outside" in found.range.gaps[0].why


def test_unknown_fuel_leaves_the_burn(ship):
    """Burn per mile is told without tanks; range is not."""
    found = passage(
        replace(
            ship, fuel=no_figure("usable fuel", "t", (Gap("fuel tanks", "no tank was recorded"),))
        ),
        10,
    )

    assert found.per_mile.known
    assert "no tank was recorded" == found.range.gaps[0].why


@pytest.mark.parametrize(("power", "reached"), [(2200, True), (1300, None), (700, False)])
def test_whether_the_engines_give_the_speed(ship, power, reached):
    """At 12 kn she asks for some 2500 to 3100 kW of two engines."""
    found = passage(replace(ship, main=Engine("main engines", power, 2)), 12)

    assert reached is found.reached
    assert (reached is not True) == any(
        "more than their rated power" in sentence for sentence in found.range.assumptions
    )


def test_running_fewer_engines_loads_them_more(ship):
    """The load of one engine is twice that of two."""
    one, two = passage(replace(ship, running=1), 9).load, passage(ship, 9).load

    assert 2 == pytest.approx(one.point / two.point)


def test_generator_sets_are_taken_on_as_the_load_asks(ship):
    """Two sets of 250 kW carry 319 kW, and the sentence says so."""
    points = (ConsumptionPoint(0.4, 240, True), ConsumptionPoint(1.0, 220, True))
    sets = Engine("sets", 250, 3, points=points, kind="auxiliary")
    found = hotel_burn(replace(ship, generator=sets))

    assert any(
        sentence.startswith("2 of 3 generator sets running") for sentence in found.assumptions
    )


def test_a_hotel_load_beyond_all_sets_is_told(ship):
    """One set of 250 kW cannot carry 319 kW."""
    found = hotel_burn(replace(ship, generator=Engine("sets", 250, 1, kind="auxiliary")))

    assert "The hotel load may be more than all generator sets give." in found.assumptions


def test_the_economical_speed_of_a_workboat_is_slow(ship):
    """Her points end at 8 kn: the best known speed is the lowest known, and the figure says so."""
    found = economical_speed(ship)

    assert 7 == pytest.approx(found.speed.span.point)
    assert any(
        "lowest speed at which power is known" in sentence for sentence in found.speed.assumptions
    )


def test_more_hotel_load_makes_the_best_speed_faster(ship, particulars):
    """By the regression, which reaches down to 3 kn."""
    slow = replace(ship, curve=HoltropCurve(hull_forms(particulars)))
    speeds = [
        economical_speed(replace(slow, hotel=Hotel(load))).speed.span for load in (150, 300, 500)
    ]

    assert speeds[0].point < speeds[1].point < speeds[2].point
    assert all(span.low <= span.point <= span.high for span in speeds)


def test_no_speed_within_reach_is_a_gap(ship):
    """Engines too small for any known speed."""
    found = economical_speed(replace(ship, main=Engine("main engines", 50, 1)))

    assert (False, None) == (found.speed.known, found.passage)


def test_a_margin_needs_a_range(ship):
    """Without one there is no mission."""
    with pytest.raises(BadInput, match="^Brief: range is not given"):
        fuel_margin(ship, passage(ship, 10), BriefBox(speed=10))


def test_time_at_anchor_costs_fuel(ship):
    """60 days leave less than the voyage alone."""
    at = passage(ship, 10)
    alone, sixty = (fuel_margin(ship, at, BriefBox(10, 4000, days)).span for days in (None, 60))

    assert sixty.point < alone.point


@pytest.mark.parametrize("legs", [[], [("under way", -1, None)]])
def test_a_mission_that_cannot_be_is_refused(ship, legs):
    """No leg, or less than no days."""
    with pytest.raises(BadInput, match="^Mission: it has no leg|^Under way: days is"):
        fuel_for([(name, days, passage(ship, 10).burn) for name, days, _ in legs])


@settings(max_examples=40, deadline=None)
@given(nested(150, 400), nested(845, 855), nested(1.0, 1.25), nested(0.05, 0.2))
def test_knowing_more_never_widens_the_range(hotel, density, margin, reserve):
    """Narrower hotel load, density, margin and reserve give a range and days inside."""
    curve = PointsCurve(
        tuple(SpeedPoint(v, p, 3500, "log", True) for v, p in ((8, 760), (10, 1480), (12, 2590))),
        3500,
    )

    def found(i):
        fuel = usable_fuel([FuelTank("tank", 400, "contents", density[i], 20)])
        return passage(
            Ship(
                curve,
                Engine("main engines", 2200, 2, 1000, 2008),
                Hotel(hotel[i]),
                fuel,
                sea_margin=margin[i],
                reserve=reserve[i],
            ),
            10,
        )

    wide, narrow = found(0), found(1)
    for one, other in ((wide.range.span, narrow.range.span), (wide.days.span, narrow.days.span)):
        assert one.low <= other.low * (1 + 1e-9)
        assert other.high <= one.high * (1 + 1e-9)
        assert other.low <= other.point <= other.high


def test_own_points_narrow_what_the_regression_tells(ship):
    """The range by her own points is known closer than by the formulas."""
    wide = passage(
        replace(ship, curve=HoltropCurve(hull_forms(Particulars(16, 5, 5, 3500, 64)))), 10
    ).range.span

    assert passage(ship, 10).range.span.width < wide.width
    assert isinstance(wide, Span)
