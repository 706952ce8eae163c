"""A whole table of passages calculated by other hands.

P = 1.485 V³ kW, sea margin 1.15, 210 and 225 g/kWh, hotel load 150 to 500 kW.

Own arithmetic on the plain formulas (common practice).
"""

from dataclasses import dataclass

import pytest

from inspector.conversion.core.figure import Figure
from inspector.conversion.core.span import Span
from inspector.conversion.range.economical_speed import BriefBox, economical_speed, fuel_for
from inspector.conversion.range.engine_consumption import LEAST_BURNING, load_factor
from inspector.conversion.range.engine_consumption import rate as consumption_rate
from inspector.conversion.range.engines import ConsumptionPoint, Engine
from inspector.conversion.range.hotel_load import Hotel
from inspector.conversion.range.passages import passage, propulsion_burn
from inspector.conversion.range.sea_power import Ship, main_load, sea_power


@dataclass(frozen=True)
class Cube:
    """A ship whose power is exactly k V³ at every speed."""

    k: float = 1.485
    method: str = "cube"
    kind: str = "trial"
    low_speed: float = 1.0
    high_speed: float = 16.0
    from_fuel: bool = False

    def at(self, speed):
        return Figure("power", Span.exact(self.k * speed**3), "kW", "k V³")


def flat(rate):
    """Points that give one consumption at every load."""
    return tuple(ConsumptionPoint(load, rate, measured=True) for load in (0.05, 1.1))


def ship(hotel, fuel=337.84, reserve=0.10):
    """The ship of the table, all inputs exact."""
    generator = Engine("sets", 400, 4, points=flat(225), kind="auxiliary")
    figure = Figure("usable fuel", Span.exact(fuel), "t", "given")
    return Ship(
        Cube(),
        Engine("main engines", 5000, 2, points=flat(210)),
        Hotel(hotel, measured_at="engine"),
        figure,
        generator,
        sea_margin=1.15,
        reserve=reserve,
    )


# hotel kW, kn, t/day, kg/nmi, burn over 4000 / 6000 / 8000 nmi
TABLE = [
    (150, 8, 5.22, 27.17, 108.7, 163.0, 217.4),
    (150, 10, 9.42, 39.24, 157.0, 235.4, 313.9),
    (300, 8, 6.03, 31.39, 125.6, 188.3, 251.1),
    (300, 10, 10.23, 42.61, 170.5, 255.7, 340.9),
    (300, 12, 16.49, 57.27, 229.1, 343.6, 458.1),
    (300, 14, 25.24, 75.11, 300.4, 450.7, 600.9),
    (500, 10, 11.31, 47.11, 188.5, 282.7, 376.9),
    (500, 14, 26.32, 78.33, 313.3, 470.0, 626.6),
]


@pytest.mark.parametrize(("hotel", "speed", "daily", "per_mile", "short", "middle", "long"), TABLE)
def test_burn_per_day_and_per_mile(hotel, speed, daily, per_mile, short, middle, long):
    """Every row of the table, to its digits."""
    found = passage(ship(hotel), speed)

    assert daily == pytest.approx(found.burn.span.point, abs=0.006)
    assert per_mile == pytest.approx(found.per_mile.span.point, abs=0.006)
    assert (short, middle, long) == pytest.approx(
        tuple(found.per_mile.span.point * miles / 1000 for miles in (4000, 6000, 8000)), abs=0.06
    )


@pytest.mark.parametrize(
    ("hotel", "speed", "share"),
    [
        (300, 8, 26.9),
        (300, 10, 15.8),
        (300, 14, 6.4),
        (500, 8, 38.0),
        (500, 10, 23.9),
        (500, 14, 10.3),
    ],
)
def test_the_share_of_the_hotel(hotel, speed, share):
    """The hotel's part of the daily burn in percent."""
    burn = passage(ship(hotel), speed).burn.span.point

    assert share == pytest.approx(100 * hotel * 225 * 24 / 1e6 / burn, abs=0.06)


def test_from_tanks_to_range():
    """337.84 t usable, 10 % reserve, 10 kn and 300 kW of hotel: 7135 nmi and 29.7 days."""
    found = passage(ship(300), 10)

    assert 7135 == pytest.approx(found.range.span.point, abs=2)
    assert 29.7 == pytest.approx(found.days.span.point, abs=0.05)


@pytest.mark.parametrize(
    ("hotel", "speed", "per_mile"), [(150, 3.61, 14.02), (300, 4.55, 22.26), (500, 5.39, 31.29)]
)
def test_the_speed_of_greatest_range(hotel, speed, per_mile):
    """V* = (P_h SFC_h / (2 k m SFC_p))^(1/3): the search finds what calculus gives."""
    found = economical_speed(ship(hotel))

    assert speed == pytest.approx(found.speed.span.point, abs=0.02)
    assert per_mile == pytest.approx(found.passage.per_mile.span.point, abs=0.01)
    assert speed == pytest.approx((hotel * 225 / (2 * 1.485 * 1.15 * 210)) ** (1 / 3), abs=0.005)


def test_sixty_days_away():
    """30 days at 10 kn and 30 at anchor on 250 kW burn 347.3 t; 60 days at anchor burn 81 t."""
    way = passage(ship(300), 10).burn
    anchor = Figure("burn at anchor", Span.exact(250 * 225 * 24 / 1e6), "t/day", "given")

    assert 347.3 == pytest.approx(
        fuel_for([("under way", 30, way), ("at anchor", 30, anchor)]).span.point, abs=0.06
    )
    assert 81.0 == pytest.approx(fuel_for([("at anchor", 60, anchor)]).span.point, abs=0.05)


@pytest.mark.parametrize(
    ("speed", "miles", "days"),
    [(8, 4000, 20.8), (10, 8000, 33.3), (12, 6000, 20.8), (14, 4000, 11.9), (14, 8000, 23.8)],
)
def test_the_days_of_a_voyage(speed, miles, days):
    """A long-range brief is far shorter under way than its 60 days: fuel seldom binds."""
    brief = BriefBox(speed, miles, 60)

    assert days == pytest.approx(brief.range / speed / 24, abs=0.05)


@pytest.mark.parametrize(
    ("running", "load", "rate", "daily"), [(1, 85.4, 186.0, 7.62), (2, 42.7, 196.1, 8.04)]
)
def test_one_engine_or_two(running, load, rate, daily):
    """1708 kW from one engine of 2000 kW burn 5 % less than from two.

    Fourth IMO GHG Study 2020, base 185 g/kWh, load correction (seen).
    """
    point = ConsumptionPoint(LEAST_BURNING, 185 * load_factor(LEAST_BURNING), measured=True)
    engine = Engine("main engines", 2000, 2, points=(point,))
    vessel = Ship(
        Cube(1.708),
        engine,
        Hotel(0),
        Figure("usable fuel", None, "t", ""),
        running=running,
        sea_margin=1.0,
    )
    power = sea_power(vessel, 10)

    assert load == pytest.approx(100 * main_load(vessel, power.span).point, abs=0.06)
    assert rate == pytest.approx(
        consumption_rate(engine, main_load(vessel, power.span)).span.point, abs=0.06
    )
    assert daily == pytest.approx(propulsion_burn(vessel, power).span.point, abs=0.006)
