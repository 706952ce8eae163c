"""What is in a tank: volume from a sounding, fuel volume at 15 °C, mass, room to expand.

Each formula is refused outside the range of its source.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from inspector.values.errors import InspectorError
from inspector.values.formatting import show

# kg/m³ by which a mass weighed in air is less than the density: ASTM D1250 practice (seen in public
# sources)
AIR_BUOYANCY = 1.1
COEFFICIENT_SECOND_ORDER = 0.8


class OutsideRange(InspectorError):
    """A value for which the formula does not speak. Attributes: ``input``, ``received``."""


@dataclass(frozen=True)
class Product:
    """Constants of one product.

    Parameters
    ----------
    low, high : float
        Range of densities at 15 °C [kg/m³].
    k0, k1, k2 : float
        Of the coefficient of expansion.
    """

    low: float
    high: float
    k0: float
    k1: float
    k2: float = 0.0


# by density at 15 °C; ASTM D1250-80 / API MPMS 11.1, table 54B (constants seen in several public
# sources)
FUELS = (
    Product(653, 770, 346.4228, 0.4388),
    Product(770, 787.5, 2680.3206, 0.0, -0.00336312),
    Product(787.5, 839, 594.5418, 0.0),
    Product(839, 1075, 186.9696, 0.4862),
)
COLDEST, WARMEST = -18.0, 90.0  # °C: ends that all bands of table 54B share (memory)


def table_volume(sounding: float, rows: Sequence[tuple[float, float]]) -> float:
    """Return the volume at a sounding, in a straight line between the rows of a tank table.

    Parameters
    ----------
    sounding : float
        Sounding [m].
    rows : Sequence[tuple[float, float]]
        Soundings [m] and their volumes [m³], in any order.

    Returns
    -------
    float
        Volume [m³].

    Raises
    ------
    OutsideRange
        Where the sounding is outside the rows.

    References
    ----------
    Plain arithmetic.
    """
    ordered = sorted(rows)
    if len(ordered) < 2 or not ordered[0][0] <= sounding <= ordered[-1][0]:
        ends = (
            f"{show(ordered[0][0], 'm')} to {show(ordered[-1][0], 'm')}" if ordered else "no rows"
        )
        raise OutsideRange(
            f"A sounding of {show(sounding, 'm')} lies outside the table ({ends}).",
            input="sounding",
            received=sounding,
        )
    for (low, less), (high, more) in zip(ordered, ordered[1:], strict=False):
        if sounding <= high:
            return _straight(sounding, low, less, high, more)
    # The callers have refused a sounding outside, so that this is a mistake of ours.
    raise AssertionError("a sounding inside the table lies between two rows")


def _straight(sounding: float, low: float, less: float, high: float, more: float) -> float:
    """Return the volume [m³] at a sounding [m] on the line between two rows."""
    # as fractions of the numbers as written, so that 13.17 m³ is not its binary neighbour
    at, start, base, end, top = (
        Fraction(repr(float(value))) for value in (sounding, low, less, high, more)
    )
    return float(base + (top - base) * (at - start) / (end - start)) if end > start else less


def _expansion(density: float) -> float:
    """Return the coefficient of expansion [1/K] of a density at 15 °C [kg/m³]."""
    # a density where two bands meet belongs to the heavier one, the last end to the last band
    for product in reversed(FUELS):
        if product.low <= density <= product.high:
            return product.k0 / density**2 + product.k1 / density + product.k2
    ends = f"{show(FUELS[0].low, 'kg/m³')} to {show(FUELS[-1].high, 'kg/m³')}"
    raise OutsideRange(
        f"A density of {show(density, 'kg/m³')} at 15 °C lies outside {ends}, "
        "where the table ends.",
        input="density",
        received=density,
    )


def factor_15(density: float, temperature: float) -> float:
    """Return the factor that brings a volume to 15 °C.

    Parameters
    ----------
    density : float
        Density at 15 °C [kg/m³].
    temperature : float
        Temperature of the fuel [°C].

    Returns
    -------
    float
        Factor.

    Raises
    ------
    OutsideRange
        Where the density is beyond the table, or the temperature outside -18 to 90 °C.

    References
    ----------
    ASTM D1250-80 / API MPMS 11.1, table 54B (constants seen in public sources).

    Examples
    --------
    >>> round(factor_15(845, 35), 4)
    0.9832
    """
    if not COLDEST <= temperature <= WARMEST:
        raise OutsideRange(
            f"{show(temperature, '°C')} lies outside {show(COLDEST, '°C')} to "
            f"{show(WARMEST, '°C')}.",
            input="temperature",
            received=temperature,
        )
    rise = _expansion(density) * (temperature - 15)
    return math.exp(-rise * (1 + COEFFICIENT_SECOND_ORDER * rise))


def mass_in_air(volume_15: float, density: float) -> float:
    """Return the commercial mass of a volume at 15 °C, weighed in air.

    Parameters
    ----------
    volume_15 : float
        Volume at 15 °C [m³].
    density : float
        Density at 15 °C [kg/m³].

    Returns
    -------
    float
        Mass [t].

    References
    ----------
    ASTM D1250 practice (seen in public sources).
    """
    return volume_15 * (density - AIR_BUOYANCY) / 1000


def greatest_fill(density: float, temperature: float, warmest: float, limit: float = 98.0) -> float:
    """Return the filling from which fuel reaches a limit at its warmest.

    Parameters
    ----------
    density : float
        Density at 15 °C [kg/m³].
    temperature : float
        Temperature now [°C].
    warmest : float
        Warmest temperature [°C].
    limit : float, optional
        Filling that may not be passed [%].

    Returns
    -------
    float
        Filling [%].

    Raises
    ------
    OutsideRange
        As in ``factor_15``.

    References
    ----------
    ASTM D1250-80, table 54B (constants seen in public sources).

    Examples
    --------
    >>> round(greatest_fill(845, 15, 45), 2)
    95.52
    """
    return limit * factor_15(density, warmest) / factor_15(density, temperature)
