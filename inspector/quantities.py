"""The one place that knows units: which exist, which are alike, how they convert, how a number is read and shown.

Factors are exact by definition: the international yard and pound of 1959, the nautical mile of 1929, standard gravity
and the US gallon of 231 cubic inches (SI brochure, 9th edition; NIST SP 811:2008, appendix B). They are kept as
fractions, so a conversion is rounded once, at its end. tests/published/test_units.py compares them with pint.
"""

import math
import re
from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction

from inspector.errors import InspectorError

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

# quantity -> unit -> how many of the quantity's base unit it is worth (temperature also has an offset, below)
_UNITS: dict[str, dict[str, Fraction | int]] = {
    "length": {"m": 1, "mm": Fraction(1, 1000), "µm": Fraction(1, 10**6), "cm": Fraction(1, 100), "km": 1000,
               "in": _INCH, "mil": _INCH / 1000, "ft": _FOOT, "nmi": 1852},
    "area": {"m²": 1, "ft²": _FOOT**2},
    "volume": {"m³": 1, "l": Fraction(1, 1000), "US gal": _US_GALLON, "bbl": 42 * _US_GALLON, "ft³": _FOOT**3},
    "mass": {"kg": 1, "t": 1000, "g": Fraction(1, 1000), "lb": _POUND, "long ton": _LONG_TON,
             "short ton": _SHORT_TON},
    "density": {"kg/m³": 1, "t/m³": 1000, "lb/ft³": _POUND / _FOOT**3, "lb/US gal": _POUND / _US_GALLON},
    "immersion": {"t/cm": 100_000, "long ton/in": _LONG_TON / _INCH},
    "mass moment": {"t·m": 1000, "long ton·ft": _LONG_TON * _FOOT},
    "speed": {"m/s": 1, "mm/s": Fraction(1, 1000), "in/s": _INCH, "kn": _KNOT},
    "acceleration": {"m/s²": 1, "ft/s²": _FOOT},
    "force": {"kN": 1000, "N": 1, "lbf": _POUND * _GRAVITY},
    "pressure": {"bar": 100_000, "mbar": 100, "Pa": 1, "kPa": 1000, "MPa": 10**6,
                 "psi": _POUND * _GRAVITY / _INCH**2, "kN/m²": 1000, "t/m²": 1000 * _GRAVITY,
                 "lb/ft²": _POUND * _GRAVITY / _FOOT**2},
    "temperature": {"°C": 1, "°F": Fraction(5, 9)},
    "temperature difference": {"K": 1, "F°": Fraction(5, 9)},
    "power": {"kW": 1000, "W": 1, "MW": 10**6, "hp": _HP, "metric hp": _METRIC_HP},
    "apparent power": {"kVA": 1, "MVA": 1000},
    "reactive power": {"kvar": 1},
    "energy": {"kWh": 1, "MWh": 1000},
    "specific consumption": {"g/kWh": Fraction(1, 1000), "lb/hp·h": _POUND / (_HP / 1000)},
    "flow": {"m³/h": 1, "l/h": Fraction(1, 1000), "l/min": Fraction(60, 1000), "m³/day": Fraction(1, 24),
             "US gal/h": _US_GALLON, "US gal/min": 60 * _US_GALLON, "US gal/day": _US_GALLON / 24},
    "mass per distance": {"kg/nmi": 1, "lb/nmi": _POUND},
    "mass flow": {"kg/h": 1, "t/day": Fraction(1000, 24), "lb/h": _POUND, "long ton/day": _LONG_TON / 24},
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
_QUANTITY = {unit: quantity for quantity, units in _UNITS.items() for unit in units}
# base = value x factor + offset; only temperatures have an offset, and a difference of temperatures never has one
_OFFSET = {"°F": Fraction(-160, 9)}

# two code points look like a micro sign, two like an ohm sign
_LOOKALIKES = str.maketrans({"\u03bc": "µ", "\u2126": "Ω"})
# what people type -> our one name for it
_ALIASES = {
    "um": "µm", "micron": "µm", "inch": "in", "\"": "in", "mils": "mil", "nm": "nmi", "NM": "nmi",
    "C": "°C", "degC": "°C", "F": "°F", "degF": "°F", "Mohm": "MΩ",
    "MOhm": "MΩ", "kohm": "kΩ", "kOhm": "kΩ", "ohm": "Ω", "Ohm": "Ω", "L": "l", "gal": "US gal", "m2": "m²",
    "m3": "m³", "ft2": "ft²", "ft3": "ft³", "t/m2": "t/m²", "kN/m2": "kN/m²", "kg/m3": "kg/m³", "t/m3": "t/m³",
    "kt": "kn", "kts": "kn", "r/min": "rpm", "hours": "h", "year": "years", "day": "days", "°": "deg", "dBA": "dB(A)",
    "LT": "long ton", "cSt": "mm²/s", "mm2/s": "mm²/s",
}

# the units a gauge or a paper may show where the checklist asks for the first; any other unit is offered alone
_GAUGES = {unit: units for units in (
    ("mm", "in", "mil", "µm"), ("µm", "mil", "mm"), ("cm", "in", "mm"), ("m", "ft", "in"), ("in", "mm", "mil"),
    ("ft", "m", "in"), ("nmi", "km"), ("m²", "ft²"), ("m³", "l", "US gal", "bbl", "ft³"), ("l", "US gal", "m³"),
    ("kg", "lb", "t", "long ton"), ("t", "long ton", "short ton", "kg", "lb"), ("mm/s", "in/s"), ("kn", "m/s"),
    ("m/s", "kn"), ("bar", "kPa", "psi", "MPa"), ("kPa", "bar", "psi"), ("mbar", "kPa", "psi"), ("°C", "°F"),
    ("K", "F°"), ("kW", "hp", "metric hp"), ("MΩ", "kΩ", "GΩ"), ("kΩ", "MΩ", "Ω"), ("V", "kV"), ("h", "days", "min"),
    ("days", "h"), ("min", "s", "h"), ("s", "min"), ("years", "months"), ("%", "ppm"), ("ppm", "%"),
    ("t/m²", "kN/m²", "lb/ft²"), ("kN/m²", "t/m²", "lb/ft²"), ("kg/m³", "t/m³", "lb/ft³", "lb/US gal"),
    ("t/m³", "kg/m³", "lb/ft³", "lb/US gal"), ("g/kWh", "lb/hp·h"), ("l/h", "US gal/h"),
    ("per ml", "per 100 ml"),
) for unit in units[:1]}

# what a US reader of the report expects; whatever is missing here stays as it is (%, kn, nmi, h, V, MΩ ...)
_TO_US = {
    "mm": "in", "cm": "in", "µm": "mil", "m": "ft", "m²": "ft²", "m³": "US gal", "l": "US gal", "kg": "lb",
    "t": "long ton", "kg/m³": "lb/ft³", "t/m³": "lb/ft³", "t/cm": "long ton/in", "t·m": "long ton·ft",
    "mm/s": "in/s", "m/s²": "ft/s²", "kN": "lbf", "bar": "psi", "mbar": "psi", "kPa": "psi", "MPa": "psi",
    "kN/m²": "lb/ft²", "t/m²": "lb/ft²", "°C": "°F", "K": "F°", "kW": "hp", "g/kWh": "lb/hp·h",
    "l/h": "US gal/h", "l/min": "US gal/min", "m³/h": "US gal/min", "m³/day": "US gal/day", "kg/h": "lb/h", "kg/nmi": "lb/nmi",
    "t/day": "long ton/day",
}
_TO_SI = {
    "in": "mm", "mil": "µm", "ft": "m", "ft²": "m²", "US gal": "m³", "bbl": "m³", "ft³": "m³", "lb": "kg",
    "long ton": "t", "short ton": "t", "lb/ft³": "kg/m³", "lb/US gal": "kg/m³", "long ton/in": "t/cm",
    "long ton·ft": "t·m", "in/s": "mm/s", "ft/s²": "m/s²", "lbf": "kN", "psi": "bar", "lb/ft²": "t/m²", "°F": "°C",
    "F°": "K", "hp": "kW", "metric hp": "kW", "lb/hp·h": "g/kWh", "US gal/h": "l/h", "US gal/min": "l/min",
    "US gal/day": "m³/day", "lb/h": "kg/h", "lb/nmi": "kg/nmi", "long ton/day": "t/day",
}

_SIGNIFICANT = 4
_MINUS = "−"
_NUMBER = re.compile(r"[+-]?(?:[0-9]+|[0-9]{1,3}(?: [0-9]{3})+)?(?:[.,][0-9]+)?")
_THOUSANDS_OR_DECIMAL = re.compile(r"[+-]?[1-9][0-9]{0,2},[0-9]{3}")


class NotANumber(InspectorError):
    """The text is not a number that can be read in one way only. Attribute: ``text``."""


class WrongUnit(InspectorError):
    """The unit is unknown, or the two units do not measure the same thing. Attributes: ``unit``, ``to``."""


def parse_number(text: str | int | float) -> float:
    """Read a number as a surveyor types it.

    Accepts a decimal point or comma ("9.6", "9,6", ".5"), a sign ("-18", "−18", "+3") and spaces that group thousands
    by three ("1 200", "12 000,5"). Refuses "1,200", which is 1200 in one country and 1.2 in another; exponents, units,
    ">1000", infinities and everything else.

    Errors
    ------
    NotANumber : with ``text``.
    """
    plain = re.sub(r"[\u00a0\u2009\u202f]", " ", str(text)).strip().replace(_MINUS, "-")
    if isinstance(text, int | float) and not isinstance(text, bool):
        return _finite(text, plain)
    if _THOUSANDS_OR_DECIMAL.fullmatch(plain):
        whole, decimals = plain.split(",")
        one, other = f"{whole}{decimals}", f"{float(f'{whole}.{decimals}'):g}"
        sentence = f"'{plain}' can be read in two ways, as {one} or as {other}: write {one} or {other}."
        raise NotANumber(sentence, text=text)
    if not plain or not _NUMBER.fullmatch(plain) or not plain[-1].isdigit():
        shown = plain if len(plain) <= 40 else f"{plain[:40]}..."
        sentence = f"'{shown}' is not a number: write digits with one decimal point or comma, like 9.6."
        raise NotANumber(sentence, text=text)
    return _finite(plain.replace(" ", "").replace(",", "."), plain)


def _finite(number: str | int | float, plain: str) -> float:
    try:
        value = float(number)
    except OverflowError:
        value = math.inf
    if not math.isfinite(value):
        raise NotANumber(f"'{plain[:40]}' is not a finite number, so it cannot be a reading.", text=plain)
    return value


def known_unit(unit: str | None) -> str:
    """Return our one name for a unit ("um" -> "µm"; None -> "" for a plain count), or raise WrongUnit."""
    name = "" if unit is None else unit.strip().translate(_LOOKALIKES)
    name = _ALIASES.get(name, name)
    if name not in _QUANTITY:
        raise WrongUnit(f"The unit '{unit}' is not known here.", unit=unit, to=None)
    return name


def convert(value: float, unit: str, to: str) -> float:
    """Convert a number from one unit to another of the same quantity.

    A temperature (°C, °F) and a difference of temperatures (K, F°) are two quantities, as are kW and kVA, or Hz and
    rpm.

    Errors
    ------
    WrongUnit : a unit is unknown or the two are unlike; with ``unit`` and ``to``.
    NotANumber : the value is not finite.

    Examples
    --------
    >>> convert(1, "in", "mm"), convert(-18, "°C", "°F"), convert(10, "K", "F°")
    (25.4, -0.4, 18.0)
    """
    source, target = known_unit(unit), known_unit(to)
    quantity = _QUANTITY[source]
    if quantity != _QUANTITY[target]:
        raise WrongUnit(
            f"'{unit}' measures {quantity} and '{to}' measures {_QUANTITY[target]}, so one cannot become the other.",
            unit=unit,
            to=to,
        )
    number = parse_number(value)
    if source == target:
        return number
    # repr, because a typed 0.1 means one tenth and not the binary fraction next to it
    base = Fraction(repr(number)) * _UNITS[quantity][source] + _OFFSET.get(source, 0)
    return float((base - _OFFSET.get(target, 0)) / _UNITS[quantity][target])


def exact_factors(unit: str, to: str) -> tuple[Fraction, Fraction]:
    """Return (factor, offset) such that value in ``to`` = value in ``unit`` x factor + offset, exactly; WrongUnit as in convert.

    Examples
    --------
    >>> exact_factors("in", "mm")
    (Fraction(127, 5), Fraction(0, 1))
    """
    convert(0, unit, to)
    source, target = known_unit(unit), known_unit(to)
    worth = _UNITS[_QUANTITY[target]]
    return Fraction(worth[source]) / Fraction(worth[target]), Fraction(_OFFSET.get(source, 0) - _OFFSET.get(target, 0)) / Fraction(worth[target])


def difference(a: float, b: float) -> float:
    """Return a - b of the numbers as they are written, so that 0.3 - 0.1 is 0.2 and not its binary neighbour.

    Examples
    --------
    >>> difference(0.3, 0.1)
    0.2
    """
    return float(Decimal(repr(float(a))) - Decimal(repr(float(b))))


def units_like(unit: str) -> tuple[str, ...]:
    """Return the units a gauge may show for the same quantity, the asked one first; WrongUnit if unknown."""
    name = known_unit(unit)
    return _GAUGES.get(name, (name,))


def in_units(value: float, unit: str, system: str) -> tuple[float, str]:
    """Return value and unit as the report prints them in a system, "si" or "us"; units without a counterpart stay."""
    tables = {"si": _TO_SI, "us": _TO_US}
    if system not in tables:
        raise WrongUnit(f"The system of units '{system}' is not known: it is 'si' or 'us'.", unit=unit, to=system)
    name = known_unit(unit)
    target = tables[system].get(name, name)
    return convert(value, name, target), target


def show(value: float, unit: str | None, digits: int | None = None) -> str:
    """Show a number with its unit: "9.6 mm", "−18 °C", "0.42 %", "12 400 m²".

    Without ``digits``, four significant digits (whole numbers are never cut) and no trailing zeros; with it, exactly
    that many decimals. Half rounds away from zero. Five-digit numbers and longer are grouped by a no-break space.
    """
    name = known_unit(unit)
    number = Decimal(repr(parse_number(value)))
    decimals = max(0, _SIGNIFICANT - 1 - number.adjusted()) if digits is None else digits
    with localcontext() as exact:
        exact.prec = 400  # any float fits, so that no length of number can raise here
        rounded = number.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP)
    text = f"{abs(rounded):f}"
    if digits is None and "." in text:
        text = text.rstrip("0").rstrip(".")
    sign = _MINUS if rounded < 0 else ""
    return f"{sign}{_grouped(text)} {name}".rstrip()


def _grouped(text: str) -> str:
    whole, point, decimals = text.partition(".")
    if len(whole) < 5:
        return text
    return f"{int(whole):,}".replace(",", "\u00a0") + point + decimals
