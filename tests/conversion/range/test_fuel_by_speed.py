"""Fuel per day at a speed is a point of its own; shaft generators and days on station count."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.range.chapter import chapter
from inspector.conversion.range.economical_speed import economical_speed
from inspector.conversion.range.engines import ConsumptionPoint, Engine
from inspector.conversion.range.fuel.fuel_by_speed import (
    EVERYTHING,
    MAIN_ONLY,
    Plant,
    point_of_burn,
    power_of_burn,
)
from inspector.conversion.range.hotel_load import Hotel
from inspector.conversion.range.passages import hotel_burn, passage
from inspector.conversion.range.speed_points import SpeedPoint
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import BOOKLET, case
from tests.conversion.test_order import TABLES

RATES = tuple(ConsumptionPoint(load, 200, measured=True) for load in (0.5, 0.75, 1.0))
MAIN = Engine("main", 1500, 2, points=RATES)
SETS = Engine(
    "sets",
    300,
    3,
    kind="auxiliary",
    points=tuple(ConsumptionPoint(load, 220, measured=True) for load in (0.5, 0.75, 1.0)),
)
PLANT = Plant(MAIN, SETS, Hotel(220, measured_at="engine"))
LOG = [
    {"speed": speed, "fuel": fuel, "burns": EVERYTHING, "displacement": "3200"}
    for speed, fuel in (("9", "4.6"), ("10", "5.9"), ("11.5", "8.4"))
]
TYPED = {
    **{name: rows for name, rows in TABLES.items() if name != "speeds"},
    "hydrostatics": [BOOKLET],
    "weights": [],
    "speeds": LOG,
    "engines": [
        {
            "name": name,
            "drives": drives,
            "power": power,
            "count": count,
            "measured": "measured on board",
            **dict.fromkeys(("rate_50", "rate_75", "rate_100"), rate),
        }
        for name, drives, power, count, rate in (
            ("main", "propeller", "1500", "2", "200"),
            ("sets", "generator", "300", "3", "220"),
        )
    ],
    "propulsion": [{"id": "one", "hotel_sea": "220", "hotel_at": "engine"}],
}
BRIEF = {"speed": "10", "range": "3000", "endurance": "30", "persons": "20"}


def figure(found, name):
    """The span of a figure."""
    return next(one.span for one in found.figures if one.name == name)


def test_the_power_of_a_burn_burns_that():
    """At 200 g/kWh from half load on, 9 t a day are 1875 kW of 3000."""
    assert 9e6 / 24 / 200 == pytest.approx(power_of_burn(PLANT, 9.0))


@given(st.floats(1.5, 12))
def test_power_rises_with_the_burn(fuel):
    """More fuel a day is more power, whatever the load does to the consumption."""
    assert power_of_burn(PLANT, fuel) < power_of_burn(PLANT, fuel * 1.01)


def test_what_the_sets_burn_is_taken_off():
    """220 kW at 220 g/kWh are 1.16 t a day: of 9 t the main engines have 7.84 t."""
    point = SpeedPoint(10, 1.0)
    whole, main = (point_of_burn(point, PLANT, 9.0, burns) for burns in (EVERYTHING, MAIN_ONLY))

    hotel = 220 * 220 * 24 / 1e6
    assert (9 - hotel) * 1e6 / 24 / 200 == pytest.approx(whole.power)
    assert 9e6 / 24 / 200 == pytest.approx(main.power)


@pytest.mark.parametrize(("plant", "fuel"), [(None, 5.0), (PLANT, 0.9), (PLANT, -1.0)])
def test_a_burn_that_cannot_be_is_refused(plant, fuel):
    """Without main engines, or with less than the hotel load burns; the field is named."""
    with pytest.raises(BadInput) as refused:
        point_of_burn(SpeedPoint(10, 1.0), plant, fuel, EVERYTHING)

    assert "speed point: fuel" == refused.value.field


def test_a_passage_at_a_speed_of_the_log_burns_what_the_log_says():
    """The fit goes through nearly exact points, so that burn and fuel agree within its scatter."""
    found = chapter(case(TYPED, brief=BRIEF))
    burn = figure(found, "Fuel burned at 10 kn")

    assert burn.point == pytest.approx(5.9, rel=0.03)
    # Consumption is not known to 5 % here: its error must not be in the burn twice.
    narrow = (burn.high - burn.low) / burn.point
    assert narrow < 0.2


def test_a_row_with_neither_fuel_nor_power_is_a_fault():
    """It is told with its speed, and the others count."""
    found = chapter(case({**TYPED, "speeds": [*LOG, {"speed": "13"}]}, brief=BRIEF))

    assert any("13 kn: give fuel a day or shaft power" in fault for fault in found.faults)


def test_a_shaft_generator_moves_the_hotel_load_to_the_main_engines(ship):
    """No set runs at sea, the load of the main engines rises; beyond its rating the sets help."""
    by_shaft = replace(ship, shaft_generator=1000.0)
    small = replace(ship, shaft_generator=100.0)
    before, after = (passage(one, 11) for one in (ship, by_shaft))

    assert 0 == hotel_burn(by_shaft).span.high
    assert after.load.point > before.load.point
    assert 0 < hotel_burn(small).span.point < hotel_burn(ship).span.point
    assert hotel_burn(by_shaft, "anchor").span == hotel_burn(ship, "anchor").span


@settings(max_examples=60)
@given(
    load=st.floats(1, 600),
    speed=st.floats(9, 13),
    shaft=st.none() | st.floats(50, 800),
    station=st.none() | st.floats(0.5, 20),
)
def test_adding_hotel_load_never_lengthens_a_range(ship_of, load, speed, shaft, station):
    """By sets or by shaft generator, with fuel on station typed or not, at any speed."""
    base = replace(ship_of, shaft_generator=shaft, station_fuel=station)
    hotel = replace(base.hotel, added_sea=Span.exact(load), added_anchor=Span.exact(load))
    before, after = (passage(one, speed).range.span for one in (base, replace(base, hotel=hotel)))

    assert after.low <= before.low + 1e-9
    assert after.point <= before.point + 1e-9
    assert after.high <= before.high + 1e-9


@pytest.fixture(scope="module")
def ship_of():
    """The workboat of the room, made once: nothing in a test changes it."""
    from inspector.conversion.range.fuel.fuel_on_board import FuelTank, usable_fuel
    from inspector.conversion.range.own_speed_power import PointsCurve
    from inspector.conversion.range.sea_power import Ship

    points = tuple(
        SpeedPoint(speed, power, 3500, "log", True)
        for speed, power in ((8, 760), (10, 1480), (12, 2590), (13.5, 3720))
    )
    fuel = usable_fuel((FuelTank("tank", 400, "calibrated capacity"),))
    return Ship(PointsCurve(points, 3500), Engine("main", 2200, 2, 1000, 2008), Hotel(300), fuel)


def test_days_on_station_take_from_the_range():
    """Ten days at 3 t leave 30 t less, and the requirement is what remains."""
    passages = [{**TYPED["propulsion"][0], "station_fuel": "3"}]
    typed = {**TYPED, "propulsion": passages}
    without = chapter(case(typed, brief=BRIEF))
    with_them = chapter(case(typed, brief={**BRIEF, "station": "10"}))
    per_mile = figure(without, "Fuel per mile at 10 kn").point
    name = "Range beside the days on station"

    lost = figure(without, "Range at 10 kn").point - figure(with_them, name).point
    assert 10 * 3 * 1000 / per_mile == pytest.approx(lost)
    (asked,) = (one for one in with_them.requirements if one.id == "range")
    assert figure(with_them, name) == asked.offered


def test_station_without_its_fuel_counts_the_hotel_load_and_says_so():
    """What thrusters burn there is named as a gap."""
    found = chapter(case(TYPED, brief={**BRIEF, "station": "10"}))

    assert "fuel a day on station" in [gap.name for gap in found.all_gaps]


def test_the_span_does_not_jump_where_the_points_end(ship):
    """A hundredth of a knot past the last point is hardly wider than at it."""
    at, past = (ship.curve.at(speed).span for speed in (13.5, 13.51))

    assert past.width / past.point == pytest.approx(at.width / at.point, rel=0.02)
    assert ship.curve.at(14.49).span.width > 1.5 * at.width


def test_the_speed_of_greatest_range_does_not_reach_to_where_points_end(ship):
    """Its span is that of dear and cheap propulsion, not of the scatter at the edge."""
    span = economical_speed(ship).speed.span

    assert span.low <= span.point <= span.high
    assert span.high < 12


def test_a_load_read_otherwise_than_listed_is_named():
    """311 kW at the switchboard against a list of a few loads."""
    typed = {**TYPED, "propulsion": [{"id": "one", "hotel_sea": "3000"}]}
    found = chapter(case(typed, brief=BRIEF))

    assert any("as read at the switchboard" in cell_text(text) for text in found.warnings)
