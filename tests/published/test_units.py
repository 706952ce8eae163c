"""Our units against pint, an independent library, and against printed definitions."""

import pint
import pytest

from inspector.values.unit_tables import UNITS
from inspector.values.units import convert

# ours -> pint's name for the same unit; what pint does not have stands in OWN below
PINT = {
    "m": "m",
    "mm": "mm",
    "µm": "um",
    "cm": "cm",
    "km": "km",
    "in": "inch",
    "mil": "thou",
    "ft": "ft",
    "nmi": "nmi",
    "m²": "m**2",
    "ft²": "ft**2",
    "m³": "m**3",
    "l": "l",
    "US gal": "gallon",
    "bbl": "oil_bbl",
    "ft³": "ft**3",
    "kg": "kg",
    "t": "tonne",
    "g": "g",
    "lb": "lb",
    "long ton": "long_ton",
    "short ton": "short_ton",
    "kg/m³": "kg/m**3",
    "t/m³": "tonne/m**3",
    "lb/ft³": "lb/ft**3",
    "lb/US gal": "lb/gallon",
    "t/cm": "tonne/cm",
    "long ton/in": "long_ton/inch",
    "t/m": "tonne*g_0/m",
    "lb/ft": "lbf/ft",
    "t·m/cm": "tonne*m/cm",
    "long ton·ft/in": "long_ton*ft/inch",
    "m⁴": "m**4",
    "ft⁴": "ft**4",
    "m·rad": "m*rad",
    "ft·rad": "ft*rad",
    "t·m": "tonne*m",
    "long ton·ft": "long_ton*ft",
    "m/s": "m/s",
    "mm/s": "mm/s",
    "in/s": "inch/s",
    "kn": "knot",
    "m/s²": "m/s**2",
    "ft/s²": "ft/s**2",
    "kN": "kN",
    "N": "N",
    "lbf": "lbf",
    "bar": "bar",
    "mbar": "mbar",
    "Pa": "Pa",
    "kPa": "kPa",
    "MPa": "MPa",
    "psi": "psi",
    "kN/m²": "kN/m**2",
    "t/m²": "tonne*g_0/m**2",
    "lb/ft²": "lbf/ft**2",
    "kW": "kW",
    "W": "W",
    "MW": "MW",
    "hp": "hp",
    "metric hp": "metric_horsepower",
    "kVA": "kVA",
    "MVA": "MVA",
    "kWh": "kWh",
    "MWh": "MWh",
    "g/kWh": "g/kWh",
    "kg/nmi": "kg/nautical_mile",
    "lb/nmi": "pound/nautical_mile",
    "lb/hp·h": "lb/hp/hour",
    "m³/h": "m**3/hour",
    "l/h": "l/hour",
    "l/min": "l/minute",
    "m³/day": "m**3/day",
    "US gal/h": "gallon/hour",
    "US gal/min": "gallon/minute",
    "US gal/day": "gallon/day",
    "kg/h": "kg/hour",
    "t/day": "tonne/day",
    "kg/day": "kg/day",
    "lb/day": "lb/day",
    "l/day": "l/day",
    "lb/h": "lb/hour",
    "long ton/day": "long_ton/day",
    "MΩ": "Mohm",
    "kΩ": "kohm",
    "GΩ": "Gohm",
    "Ω": "ohm",
    "V": "V",
    "kV": "kV",
    "mV": "mV",
    "A": "A",
    "kA": "kA",
    "mA": "mA",
    "h": "hour",
    "min": "minute",
    "s": "s",
    "days": "day",
    "%": "percent",
    "ppm": "ppm",
}
TEMPERATURES = {"°C": "degC", "°F": "degF", "K": "delta_degC", "F°": "delta_degF"}
OWN = {
    "kvar",
    "Hz",
    "rpm",
    "dB(A)",
    "deg",
    "",
    "years",
    "months",
    "mm²/s",
    "mgKOH/g",
    "per ml",
    "per 100 ml",
}  # nothing to compare, or alone in their quantity
PAIRS = [
    (unit, to)
    for units in UNITS.values()
    for unit in units
    for to in units
    if unit in PINT and to in PINT and unit != to
]


@pytest.fixture(scope="module")
def registry():
    """One pint registry for the module; it takes a second to build."""
    return pint.UnitRegistry()


@pytest.mark.parametrize(("unit", "to"), PAIRS)
def test_a_factor_agrees_with_pint(registry, unit, to):
    """Every pair of like units converts as in pint (metric horsepower is 75 kgf m/s in both)."""
    expected = registry.Quantity(7.3, PINT[unit]).to(PINT[to]).magnitude
    assert expected == pytest.approx(convert(7.3, unit, to), rel=1e-12)


@pytest.mark.parametrize("value", [-40.0, -18.0, 0.0, 37.0, 212.0])
@pytest.mark.parametrize(("unit", "to"), [("°C", "°F"), ("°F", "°C"), ("K", "F°"), ("F°", "K")])
def test_temperatures_and_their_differences_agree_with_pint(registry, unit, to, value):
    """Readings carry the offset and differences do not, as in pint."""
    expected = registry.Quantity(value, TEMPERATURES[unit]).to(TEMPERATURES[to]).magnitude
    assert expected == pytest.approx(convert(value, unit, to), rel=1e-12, abs=1e-9)


def test_no_unit_escapes_the_comparison():
    """A unit added to the table must be added to the comparison or be named as having none."""
    known = {unit for units in UNITS.values() for unit in units}
    assert known == set(PINT) | set(TEMPERATURES) | OWN


# value, unit, to, expected, source
DEFINITIONS = [
    (1, "in", "mm", 25.4, "NIST SP 811:2008, B.6: exact since 1959"),
    (1, "lb", "kg", 0.45359237, "NIST SP 811:2008, B.6: exact since 1959"),
    (1, "nmi", "m", 1852.0, "SI brochure, 9th edition, table 8 notes: 1929 conference"),
    (1, "kn", "m/s", 1852 / 3600, "NIST SP 811:2008, table 9"),
    (1, "US gal", "l", 3.785411784, "NIST SP 811:2008, B.6: 231 cubic inches"),
    (1, "bbl", "l", 158.987294928, "42 US gallons; NIST SP 811:2008 prints 0.1589873 m3"),
    (1, "hp", "W", 745.6998715822702, "NIST SP 811:2008 prints 745.6999 (550 ft lbf/s)"),
    (1, "psi", "kPa", 6.894757293168361, "NIST SP 811:2008 prints 6.894757"),
    (1, "long ton", "kg", 1016.0469088, "NIST SP 811:2008 prints 1016.047 (2240 lb)"),
    (1, "t/m²", "lb/ft²", 204.8161436, "own calculation, from exact definitions"),
    (2100, "long ton", "t", 2133.69850848, "own calculation, from exact definitions"),
    (23, "long ton/in", "t/cm", 9.2004247, "own calculation, from exact definitions"),
]


@pytest.mark.parametrize(("value", "unit", "to", "expected", "source"), DEFINITIONS)
def test_printed_definitions_are_met(value, unit, to, expected, source):
    """A factor equals the one its definition prints."""
    assert expected == pytest.approx(convert(value, unit, to), rel=1e-8), source
