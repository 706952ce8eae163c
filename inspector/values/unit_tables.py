"""The units that exist, by quantity, with their factors, other spellings and counterparts.

Factors are exact by definition: the international yard and pound of 1959, the nautical mile of
1929, standard gravity and the US gallon of 231 cubic inches (SI brochure, 9th edition; NIST SP
811:2008, appendix B). They are kept as fractions, so that a conversion is rounded once, at its end.
tests/published/test_units.py compares them with a reference library.
"""

from fractions import Fraction

_INCH = Fraction("0.0254")
_FOOT = 12 * _INCH
_POUND = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_LONG_TON = 2240 * _POUND
_SHORT_TON = 2000 * _POUND
_US_GALLON = 231 * _INCH**3
_KNOT = Fraction(1852, 3600)
_HP = 550 * _FOOT * _POUND * _GRAVITY
_METRIC_HP = 75 * _GRAVITY

# Quantity -> unit -> how many of the quantity's base unit it is worth (temperature has an offset
# as well, below).
UNITS: dict[str, dict[str, Fraction | int]] = {
    "length": {
        "m": 1,
        "mm": Fraction(1, 1000),
        "µm": Fraction(1, 10**6),
        "cm": Fraction(1, 100),
        "km": 1000,
        "in": _INCH,
        "mil": _INCH / 1000,
        "ft": _FOOT,
        "nmi": 1852,
    },
    "area": {"m²": 1, "ft²": _FOOT**2},
    "volume": {
        "m³": 1,
        "l": Fraction(1, 1000),
        "US gal": _US_GALLON,
        "bbl": 42 * _US_GALLON,
        "ft³": _FOOT**3,
    },
    "mass": {
        "kg": 1,
        "t": 1000,
        "g": Fraction(1, 1000),
        "lb": _POUND,
        "long ton": _LONG_TON,
        "short ton": _SHORT_TON,
    },
    "density": {
        "kg/m³": 1,
        "t/m³": 1000,
        "lb/ft³": _POUND / _FOOT**3,
        "lb/US gal": _POUND / _US_GALLON,
    },
    "immersion": {"t/cm": 100_000, "long ton/in": _LONG_TON / _INCH},
    "line load": {"t/m": 1000 * _GRAVITY, "lb/ft": _POUND * _GRAVITY / _FOOT},
    "trim moment": {"t·m/cm": 100_000, "long ton·ft/in": _LONG_TON * _FOOT / _INCH},
    "second moment of area": {"m⁴": 1, "ft⁴": _FOOT**4},
    "area under righting levers": {"m·rad": 1, "ft·rad": _FOOT},
    "mass moment": {"t·m": 1000, "long ton·ft": _LONG_TON * _FOOT},
    "speed": {"m/s": 1, "mm/s": Fraction(1, 1000), "in/s": _INCH, "kn": _KNOT},
    "acceleration": {"m/s²": 1, "ft/s²": _FOOT},
    "force": {"kN": 1000, "N": 1, "lbf": _POUND * _GRAVITY},
    "pressure": {
        "bar": 100_000,
        "mbar": 100,
        "Pa": 1,
        "kPa": 1000,
        "MPa": 10**6,
        "psi": _POUND * _GRAVITY / _INCH**2,
        "kN/m²": 1000,
        "t/m²": 1000 * _GRAVITY,
        "lb/ft²": _POUND * _GRAVITY / _FOOT**2,
    },
    "temperature": {"°C": 1, "°F": Fraction(5, 9)},
    "temperature difference": {"K": 1, "F°": Fraction(5, 9)},
    "power": {"kW": 1000, "W": 1, "MW": 10**6, "hp": _HP, "metric hp": _METRIC_HP},
    "apparent power": {"kVA": 1, "MVA": 1000},
    "reactive power": {"kvar": 1},
    "energy": {"kWh": 1, "MWh": 1000},
    "specific consumption": {"g/kWh": Fraction(1, 1000), "lb/hp·h": _POUND / (_HP / 1000)},
    "flow": {
        "m³/h": 1,
        "l/h": Fraction(1, 1000),
        "l/min": Fraction(60, 1000),
        "m³/day": Fraction(1, 24),
        "l/day": Fraction(1, 24_000),
        "US gal/h": _US_GALLON,
        "US gal/min": 60 * _US_GALLON,
        "US gal/day": _US_GALLON / 24,
    },
    "mass per distance": {"kg/nmi": 1, "lb/nmi": _POUND},
    "mass flow": {
        "kg/h": 1,
        "t/day": Fraction(1000, 24),
        "kg/day": Fraction(1, 24),
        "lb/h": _POUND,
        "lb/day": _POUND / 24,
        "long ton/day": _LONG_TON / 24,
    },
    "resistance": {"MΩ": 10**6, "kΩ": 1000, "GΩ": 10**9, "Ω": 1},
    "voltage": {"V": 1, "kV": 1000, "mV": Fraction(1, 1000)},
    "current": {"A": 1, "kA": 1000, "mA": Fraction(1, 1000)},
    "frequency": {"Hz": 1},
    "speed of rotation": {"rpm": 1},
    "duration": {"h": 3600, "min": 60, "s": 1, "days": 86400},
    "age": {"years": 12, "months": 1},
    "share": {"%": Fraction(1, 100), "ppm": Fraction(1, 10**6)},
    "noise": {"dB(A)": 1},
    "kinematic viscosity": {"mm²/s": 1},
    "base number": {"mgKOH/g": 1},
    "particle count": {"per ml": 100, "per 100 ml": 1},
    "angle": {"deg": 1},
    "count": {"": 1},
}
QUANTITY = {unit: quantity for quantity, units in UNITS.items() for unit in units}
# base = value × factor + offset. Only temperatures have an offset, and a difference of temperatures
# never has one.
OFFSET = {"°F": Fraction(-160, 9)}

# Two code points look like a micro sign, two like an ohm sign.
LOOKALIKES = str.maketrans({"\u03bc": "µ", "\u2126": "Ω"})
# Our one name -> what else people type for it.
_SPELLINGS = {
    "µm": "um micron",
    "in": 'inch "',
    "mil": "mils",
    "nmi": "nm NM",
    "°C": "C degC",
    "°F": "F degF",
    "MΩ": "Mohm MOhm",
    "kΩ": "kohm kOhm",
    "Ω": "ohm Ohm",
    "l": "L",
    "US gal": "gal",
    "m²": "m2",
    "m³": "m3",
    "ft²": "ft2",
    "ft³": "ft3",
    "t/m²": "t/m2",
    "kN/m²": "kN/m2",
    "kg/m³": "kg/m3",
    "t/m³": "t/m3",
    "kn": "kt kts",
    "rpm": "r/min",
    "h": "hours",
    "years": "year",
    "days": "day",
    "deg": "°",
    "dB(A)": "dBA",
    "long ton": "LT",
    "mm²/s": "cSt mm2/s",
}
ALIASES = {typed: name for name, spellings in _SPELLINGS.items() for typed in spellings.split()}

# The units that a gauge or a paper may show where the checklist asks for the first; any other unit
# is offered alone.
GAUGES = {
    unit: units
    for units in (
        ("mm", "in", "mil", "µm"),
        ("µm", "mil", "mm"),
        ("cm", "in", "mm"),
        ("m", "ft", "in"),
        ("in", "mm", "mil"),
        ("ft", "m", "in"),
        ("nmi", "km"),
        ("m²", "ft²"),
        ("m³", "l", "US gal", "bbl", "ft³"),
        ("l", "US gal", "m³"),
        ("kg", "lb", "t", "long ton"),
        ("t", "long ton", "short ton", "kg", "lb"),
        ("mm/s", "in/s"),
        ("kn", "m/s"),
        ("m/s", "kn"),
        ("bar", "kPa", "psi", "MPa"),
        ("kPa", "bar", "psi"),
        ("mbar", "kPa", "psi"),
        ("°C", "°F"),
        ("K", "F°"),
        ("kW", "hp", "metric hp"),
        ("MΩ", "kΩ", "GΩ"),
        ("kΩ", "MΩ", "Ω"),
        ("V", "kV"),
        ("h", "days", "min"),
        ("days", "h"),
        ("min", "s", "h"),
        ("s", "min"),
        ("years", "months"),
        ("%", "ppm"),
        ("ppm", "%"),
        ("t/m²", "kN/m²", "lb/ft²"),
        ("kN/m²", "t/m²", "lb/ft²"),
        ("kg/m³", "t/m³", "lb/ft³", "lb/US gal"),
        ("t/m³", "kg/m³", "lb/ft³", "lb/US gal"),
        ("g/kWh", "lb/hp·h"),
        ("l/h", "US gal/h"),
        ("per ml", "per 100 ml"),
    )
    for unit in units[:1]
}

# What a US reader of the report expects; what is missing here stays as it is (%, kn, nmi, h, V).
TO_US = {
    "mm": "in",
    "cm": "in",
    "µm": "mil",
    "m": "ft",
    "m²": "ft²",
    "m³": "US gal",
    "l": "US gal",
    "kg": "lb",
    "t": "long ton",
    "kg/m³": "lb/ft³",
    "t/m³": "lb/ft³",
    "t/cm": "long ton/in",
    "t/m": "lb/ft",
    "t·m": "long ton·ft",
    "t·m/cm": "long ton·ft/in",
    "m⁴": "ft⁴",
    "m·rad": "ft·rad",
    "mm/s": "in/s",
    "m/s²": "ft/s²",
    "kN": "lbf",
    "bar": "psi",
    "mbar": "psi",
    "kPa": "psi",
    "MPa": "psi",
    "kN/m²": "lb/ft²",
    "t/m²": "lb/ft²",
    "°C": "°F",
    "K": "F°",
    "kW": "hp",
    "g/kWh": "lb/hp·h",
    "l/h": "US gal/h",
    "l/min": "US gal/min",
    "m³/h": "US gal/min",
    "m³/day": "US gal/day",
    "l/day": "US gal/day",
    "kg/day": "lb/day",
    "kg/h": "lb/h",
    "kg/nmi": "lb/nmi",
    "t/day": "long ton/day",
}
# The way back. Where several units become one, the first of them above is meant; what an SI reader
# is given for units that no US report prints is added.
TO_SI = {us: si for si, us in reversed(TO_US.items())} | {
    "lb/ft²": "t/m²",
    "bbl": "m³",
    "ft³": "m³",
    "short ton": "t",
    "lb/US gal": "kg/m³",
    "metric hp": "kW",
}
