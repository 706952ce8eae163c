"""Check numbers of speed, fuel, range and stores, with the publication or the calculation beside
each; unit factors against pint."""

import math

import pint
import pytest

from inspector.conversion.core.span import Span
from inspector.conversion.hull.resistance import KNOT, froude
from inspector.conversion.range import consumables
from inspector.conversion.range import engine_consumption as consumption
from inspector.conversion.range.engines import brake_efficiency
from inspector.conversion.range.fuel import fuel_on_board as fuel
from inspector.conversion.range.sea_power import MARGIN_SOURCE
from inspector.conversion.range.speed_points import (
    admiralty_coefficient,
    admiralty_power,
    power_law,
)
from inspector.values.units import convert

POINTS = [(8, 760), (10, 1480), (12, 2590), (13.5, 3720)]


def test_the_admiralty_coefficient():
    """3500 t, 12.5 kn and 2900 kW: C 155.25, 1484.8 kW at 10 kn, 2710.3 kW at 3800 t and 12 kn
    (own arithmetic on the textbook formula)."""
    c = admiralty_coefficient(3500, 12.5, 2900)

    assert (155.25, 1484.8, 2710.3) == pytest.approx(
        (c, admiralty_power(3500, 10, c), admiralty_power(3800, 12, c)), rel=5e-5
    )


def test_a_fit_through_four_points():
    """Least squares by second calculation: n 3.0362, a 1.37093; 1990 kW at 11 kn."""
    fit = power_law(POINTS)

    assert (3.0362, 1.37093) == pytest.approx((fit.n, fit.a), rel=2e-5)
    assert 1990 == pytest.approx(fit.a * 11**fit.n, abs=0.5)


@pytest.mark.parametrize(
    ("length", "speed", "number"),
    [
        (65, 10, 0.204),
        (65, 12, 0.244),
        (65, 14, 0.285),
        (55, 13.55, 0.30),
        (65, 14.73, 0.30),
        (75, 15.82, 0.30),
        (85, 16.84, 0.30),
    ],
)
def test_froude_numbers(length, speed, number):
    """V / sqrt(g L) by second calculation."""
    assert number == pytest.approx(froude(speed, length), abs=5e-4)


# load, g/kWh on a base of 185; Fourth IMO GHG Study 2020, load correction (seen as reproduced in an
# open model)
LOADS = [(0.20, 213.9), (0.40, 197.7), (0.50, 192.2), (0.70, 186.1), (0.80, 185.6), (1.00, 189.6)]


@pytest.mark.parametrize(("load", "rate"), LOADS)
def test_the_load_correction(load, rate):
    """0.455 L² - 0.710 L + 1.280 times 185 g/kWh."""
    assert rate == pytest.approx(185 * consumption.load_factor(load), abs=0.06)


def test_the_load_of_least_consumption():
    """The least factor is 1.0030 at a load of 0.780 (calculus)."""
    assert 0.780 == pytest.approx(0.710 / (2 * 0.455), abs=5e-4)
    assert 1.0030 == pytest.approx(consumption.load_factor(consumption.LEAST_BURNING), abs=5e-5)


# kind, rpm, built -> g/kWh; Fourth IMO GHG Study 2020, table 19 (seen as reproduced in an open
# model)
RATES = [
    ("main", 720, 1980, 200),
    ("main", 720, 1984, 185),
    ("main", 900, 2000, 185),
    ("main", 720, 2001, 175),
    ("main", 1800, 1983, 210),
    ("main", 1000, 1990, 190),
    ("main", 1600, 2010, 185),
    ("auxiliary", 1800, 1980, 210),
    ("auxiliary", None, 1990, 190),
    ("auxiliary", None, 2008, 185),
]


@pytest.mark.parametrize(("kind", "rpm", "built", "rate"), RATES)
def test_the_published_base_rates(kind, rpm, built, rate):
    """Each class and age has its rate, and nothing is spread where both are known."""
    assert Span.exact(float(rate)) == consumption.base_rate(kind, rpm, built).value


@pytest.mark.parametrize(("rate", "efficiency"), [(210, 0.4015), (200, 0.4215)])
def test_the_efficiency_of_a_consumption(rate, efficiency):
    """3600 / (rate x 42.7 MJ/kg); heat value of MEPC.364(79) (memory)."""
    assert efficiency == pytest.approx(brake_efficiency(rate), abs=5e-5)


# density at 15 °C, °C, VCF; ASTM D1250-80 table 54B, own runs; 840.10 with 15 K more is a printed
# example of a public document (seen)
FACTORS = [
    (845, 35, 0.983174),
    (845, 5, 1.008351),
    (860, 40, 0.979426),
    (830, 30, 0.987006),
    (780, 30, 0.984293),
    (960, 50, 0.974998),
    (840.10, 30, 0.987298),
]


@pytest.mark.parametrize(("density", "temperature", "factor"), FACTORS)
def test_the_density_of_warm_fuel(density, temperature, factor):
    """Density falls with the volume correction of table 54B."""
    assert density * factor == pytest.approx(fuel.density_at(density, temperature).point, rel=1e-6)


def test_the_mass_of_a_sounded_tank():
    """250 m³ at 35 °C of 845 kg/m³ are 207.70 t (own, in vacuum); 0.855 at 15 °C is 0.841 t/m³
    at 35 °C."""
    tank = fuel.FuelTank("tank", 250, "contents", density=845, temperature=35)

    assert 207.70 == pytest.approx(fuel.mass_of(tank).span.point, abs=0.005)
    assert 841 == pytest.approx(fuel.density_at(855, 35).point, abs=0.5)


def test_usable_fuel_of_all_tanks():
    """420 m³ x 0.98 x 0.855 x 0.96 = 337.84 t (own arithmetic), at 15 °C and full."""
    tank = fuel.FuelTank(
        "all tanks",
        420,
        "calibrated capacity",
        density=855,
        temperature=15,
        fill=0.98,
        suction=0.96,
    )

    assert 337.84 == pytest.approx(fuel.usable_fuel([tank]).span.point, abs=0.005)


def test_the_sea_margin_is_told_as_recalled():
    """No edition was read for the margin, so it says memory."""
    assert "memory" == MARGIN_SOURCE.mark


def test_sewage_and_grey_for_thirty():
    """25 l x 30 x 14 days = 10.5 m³ of sewage; 150 l x 30 = 4.5 m³ of grey water a day (own
    arithmetic)."""
    stores = consumables.Stores(sewage=10.5, sewage_per_head=25, grey=22.5, grey_per_head=150)

    assert 14 == pytest.approx(consumables.sewage_days(stores, 30).span.point)
    assert 5 == pytest.approx(consumables.grey_days(stores, 30).span.point)


def test_the_band_of_sewage_reaches_over_the_published_rates():
    """EPA 2008 gives 8.4 US gal (31.8 l) of sewage and 67 US gal (254 l) of grey water per
    person and day (memory)."""
    assert (
        31.8
        == pytest.approx(convert(8.4, "US gal", "l"), abs=0.05)
        == consumables.SEWAGE[None].value.point
    )
    assert 254 == pytest.approx(convert(67, "US gal", "l"), abs=0.5) == consumables.GREY.value.high


def test_waste_for_thirty():
    """EMSA and CE Delft 2017: 1.8 + 1.8 + 1.8 to 14.4 + 5.4 + 36 m³ in 60 days (memory)."""
    stores = consumables.Stores(waste=5.4, compactor=False)
    most = consumables.Stores(waste=14.4 + 5.4 + 36, compactor=False)

    assert 60 == pytest.approx(consumables.waste_days(stores, 30).span.high)
    assert 60 == pytest.approx(consumables.waste_days(most, 30).span.low)


@pytest.mark.parametrize(
    ("kind", "room", "per_head"), [("frozen", 7.2, 1.0), ("chilled", 10.8, 1.2)]
)
def test_food_by_weight(kind, room, per_head):
    """30 persons and 60 days: 1.8 t frozen in 7.2 m³, 2.16 t chilled in 10.8 m³ (common
    practice)."""
    found = consumables.food_days(consumables.Stores(**{kind: room}), 30, kind)

    assert per_head == consumables.FOOD[kind][0].value.point
    assert 60 == pytest.approx(found.span.point)


@pytest.fixture(scope="module")
def registry():
    """One pint registry for the module; it takes a second to build."""
    return pint.UnitRegistry()


UNITS = [
    ("hp", "kW", "hp", "kW"),
    ("US gal", "m³", "gallon", "m**3"),
    ("long ton", "t", "long_ton", "tonne"),
    ("lb/hp·h", "g/kWh", "lb/hp/hour", "g/kWh"),
    ("ft", "m", "ft", "m"),
    ("m/s", "kn", "m/s", "knot"),
    ("lb/US gal", "kg/m³", "lb/gallon", "kg/m**3"),
    ("US gal/day", "m³/day", "gallon/day", "m**3/day"),
]


@pytest.mark.parametrize(("unit", "to", "theirs", "their_to"), UNITS)
def test_typed_units_against_pint(registry, unit, to, theirs, their_to):
    """Whatever a surveyor types becomes the unit of the field as an independent library has it."""
    assert registry.Quantity(12.5, theirs).to(their_to).magnitude == pytest.approx(
        convert(12.5, unit, to), rel=1e-9
    )


def test_fahrenheit_against_pint(registry):
    """A fuel temperature in °F becomes °C."""
    assert registry.Quantity(95, "degF").to("degC").magnitude == pytest.approx(
        convert(95, "°F", "°C")
    )


def test_the_knot_against_pint(registry):
    """The formulas' knot is the international one."""
    assert registry.Quantity(1, "knot").to("m/s").magnitude == pytest.approx(KNOT, rel=1e-12)
    assert math.isclose(KNOT, convert(1, "kn", "m/s"))
