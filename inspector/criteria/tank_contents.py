"""What is in a tank, as pure formulas: volume from soundings, fuel volume at 15 °C and at 60 °F, mass, room to expand.

The two families of the volume factor have constants of their own and never mix: ``factor_15`` takes a density at 15 °C and
°C, ``factor_60`` a density at 60 °F and °F. Everything is refused outside the range for which its source speaks.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from inspector.errors import InspectorError
from inspector.quantities import show

AIR_BUOYANCY = 1.1  # kg/m³ that a mass weighed in air falls short of the density: ASTM D1250 practice (seen in public sources)
COEFFICIENT_SECOND_ORDER = 0.8


class OutsideRange(InspectorError):
    """A value for which the formula does not speak. Attributes: ``input``, ``received``."""


@dataclass(frozen=True)
class Product:
    """Constants of one product: valid from ``low`` up to ``high`` [kg/m³]; K0, K1 and K2 of the expansion coefficient."""

    low: float
    high: float
    k0: float
    k1: float
    k2: float = 0.0


# density at 15 °C [kg/m³]; ASTM D1250-80 / API MPMS 11.1, table 54B (constants seen in several public sources)
GENERALIZED_15 = (Product(653, 770, 346.4228, 0.4388), Product(770, 787.5, 2680.3206, 0.0, -0.00336312), Product(787.5, 839, 594.5418, 0.0),
                  Product(839, 1075, 186.9696, 0.4862))
CRUDE_15 = (Product(610.5, 1075, 613.9723, 0.0),)          # table 54A
LUBRICATING_15 = (Product(800, 1164, 0.0, 0.6278),)        # table 54D
# density at 60 °F [kg/m³]; tables 6A, 6B, 6D (constants seen); the outer ends of 6B are those of 54B, at 15 °C, to the last digit used
GENERALIZED_60 = (Product(653, 770.352, 192.4571, 0.2438), Product(770.352, 787.5195, 1489.0670, 0.0, -0.00186840),
                  Product(787.5195, 838.3127, 330.3010, 0.0), Product(838.3127, 1075, 103.8720, 0.2701))
CRUDE_60 = (Product(610.5, 1075, 341.0957, 0.0),)
LUBRICATING_60 = (Product(800, 1164, 0.0, 0.34878),)
COLDEST, WARMEST = -18.0, 90.0  # °C: ends that all bands of table 54B share (memory)


def rectangular_volume(length: float, breadth: float, depth: float) -> float:
    """Return the volume [m³] of a box tank filled to a depth, all [m]. Plain geometry."""
    return length * breadth * depth


def depth_from_ullage(height: float, ullage: float) -> float:
    """Return the depth of liquid [m] from the reference height and the ullage [m], at the same datum. Plain geometry."""
    if not 0 <= ullage <= height:
        raise OutsideRange(f"An ullage of {show(ullage, 'm')} must lie between 0 and the height of {show(height, 'm')}.", input="ullage", received=ullage)
    return height - ullage


def wing_volume(length: float, bottom: float, top: float, height: float, depth: float) -> float:
    """Return the volume [m³] of a tank whose breadth goes evenly from bottom to top [m] over its height [m], filled to depth [m]."""
    if not 0 <= depth <= height:
        raise OutsideRange(f"A depth of {show(depth, 'm')} must lie between 0 and the height of {show(height, 'm')}.", input="depth", received=depth)
    surface = bottom + (top - bottom) * depth / height
    return length * depth * (bottom + surface) / 2


def corrugated_area(length: float, breadth: float, pitches: int, depth: float, flange: float, web_run: float) -> float:
    """Return the plan area [m²] of a tank measured to the inner face of a corrugated bulkhead; all lengths [m]. Plain geometry."""
    return length * breadth + pitches * depth * (flange + web_run)


def cylinder_volume(radius: float, length: float, depth: float) -> float:
    """Return the volume [m³] in a lying cylinder with flat ends, filled to depth [m] above its lowest line. Plain geometry.

    Examples
    --------
    >>> round(cylinder_volume(1.5, 6, 1.0), 3)
    12.375
    """
    if not 0 <= depth <= 2 * radius:
        raise OutsideRange(f"A depth of {show(depth, 'm')} must lie between 0 and the diameter of {show(2 * radius, 'm')}.", input="depth", received=depth)
    segment = radius**2 * math.acos((radius - depth) / radius) - (radius - depth) * math.sqrt(max(0.0, 2 * radius * depth - depth**2))
    return length * segment


def table_volume(sounding: float, rows: Sequence[tuple[float, float]]) -> float:
    """Return the volume [m³] at a sounding [m] between rows (sounding, volume) of a tank table, in a straight line; refused outside them."""
    ordered = sorted(rows)
    if len(ordered) < 2 or not ordered[0][0] <= sounding <= ordered[-1][0]:
        ends = f"{show(ordered[0][0], 'm')} to {show(ordered[-1][0], 'm')}" if ordered else "no rows"
        raise OutsideRange(f"A sounding of {show(sounding, 'm')} lies outside the table ({ends}).", input="sounding", received=sounding)
    for (low, less), (high, more) in zip(ordered, ordered[1:], strict=False):
        if sounding <= high:
            return _straight(sounding, low, less, high, more)
    raise AssertionError("a sounding inside the table lies between two rows")


def _straight(sounding: float, low: float, less: float, high: float, more: float) -> float:
    # as fractions of the numbers as written, so that 13.17 m³ is not its binary neighbour
    at, start, base, end, top = (Fraction(repr(float(value))) for value in (sounding, low, less, high, more))
    return float(base + (top - base) * (at - start) / (end - start)) if end > start else less


def trim_correction(trim: float, distance: float, length: float) -> float:
    """Return how much a sounding is off [m] by trim [m], with the pipe at a distance [m] from the tank's centroid, on a length [m]."""
    return trim * distance / length


def heel_correction(heel: float, distance: float) -> float:
    """Return how much a sounding is off [m] by heel [deg], with the pipe at a distance [m] from the tank's centroid."""
    return distance * math.tan(math.radians(heel))


def _expansion(density: float, products: Sequence[Product], reference: str) -> float:
    # where two bands meet, the heavier one holds; the last band holds its own end
    for product in reversed(products):
        if product.low <= density <= product.high:
            return product.k0 / density**2 + product.k1 / density + product.k2
    ends = f"{show(products[0].low, 'kg/m³')} to {show(products[-1].high, 'kg/m³')}"
    raise OutsideRange(f"A density of {show(density, 'kg/m³')} at {reference} lies outside {ends}, where the table ends.", input="density", received=density)


def _factor(coefficient: float, warmer: float) -> float:
    rise = coefficient * warmer
    return math.exp(-rise * (1 + COEFFICIENT_SECOND_ORDER * rise))


def factor_15(density: float, temperature: float, products: Sequence[Product] = GENERALIZED_15) -> float:
    """Return by what a volume at a temperature [°C] is multiplied to be the volume at 15 °C.

    Parameters
    ----------
    density [kg/m³] at 15 °C; products : GENERALIZED_15 (fuels), CRUDE_15 or LUBRICATING_15.

    Errors
    ------
    OutsideRange : density beyond the table, or a temperature outside -18 to 90 °C.

    References
    ----------
    ASTM D1250-80 / API MPMS 11.1, tables 54A, 54B, 54D (constants seen in public sources).

    Examples
    --------
    >>> round(factor_15(845, 35), 4)
    0.9832
    """
    if not COLDEST <= temperature <= WARMEST:
        raise OutsideRange(f"{show(temperature, '°C')} lies outside {show(COLDEST, '°C')} to {show(WARMEST, '°C')}.", input="temperature", received=temperature)
    return _factor(_expansion(density, products, "15 °C"), temperature - 15)


def factor_60(density: float, temperature: float, products: Sequence[Product] = GENERALIZED_60) -> float:
    """Return by what a volume at a temperature [°F] is multiplied to be the volume at 60 °F; density [kg/m³] at 60 °F.

    Errors: OutsideRange. References: ASTM D1250-80, tables 6A, 6B, 6D (constants seen).
    """
    if not 0 <= temperature <= 194:
        raise OutsideRange(f"{show(temperature, '°F')} lies outside 0 °F to 194 °F.", input="temperature", received=temperature)
    return _factor(_expansion(density, products, "60 °F"), temperature - 60)


def density_of_gravity(gravity: float) -> float:
    """Return the density [kg/m³] at 60 °F of an API gravity [degrees]. ASTM D1250 (seen)."""
    return 999.016 * 141.5 / (gravity + 131.5)


def density_at_15(observed: float, temperature: float, products: Sequence[Product] = GENERALIZED_15) -> float:
    """Return the density [kg/m³] at 15 °C from one observed at a temperature [°C]; the glass of a hydrometer is not corrected for.

    Errors: OutsideRange, also where the search would leave the table. References: ASTM D1250-80, table 53B by iteration (method seen).
    """
    low, high = products[0].low, products[-1].high
    density = min(max(observed, low), high)
    for _ in range(100):
        nearer = observed / factor_15(density, temperature, products)
        kept = min(max(nearer, low), high)
        if abs(kept - density) < 1e-9:
            if abs(nearer - kept) > 1e-6:
                break
            return kept
        density = kept
    raise OutsideRange(f"No density at 15 °C was found for {show(observed, 'kg/m³')} at {show(temperature, '°C')}.", input="observed", received=observed)


def volume_at_15(volume: float, temperature: float, density: float, products: Sequence[Product] = GENERALIZED_15) -> float:
    """Return the volume at 15 °C [m³] of a volume [m³] at a temperature [°C], density [kg/m³] at 15 °C. Errors: OutsideRange."""
    return volume * factor_15(density, temperature, products)


def mass_in_vacuum(volume_15: float, density: float) -> float:
    """Return the mass [t] of a volume [m³] at 15 °C with its density [kg/m³] at 15 °C."""
    return volume_15 * density / 1000


def mass_in_air(volume_15: float, density: float) -> float:
    """Return the commercial mass, weighed in air [t], of a volume [m³] at 15 °C with its density [kg/m³] at 15 °C (seen)."""
    return volume_15 * (density - AIR_BUOYANCY) / 1000


def greatest_fill(density: float, temperature: float, warmest: float, limit: float = 98.0, products: Sequence[Product] = GENERALIZED_15) -> float:
    """Return the fill [%] at a temperature [°C] from which fuel reaches the limit [%] at its warmest [°C]. Errors: OutsideRange.

    Examples
    --------
    >>> round(greatest_fill(845, 15, 45), 2)
    95.52
    """
    return limit * factor_15(density, warmest, products) / factor_15(density, temperature, products)
