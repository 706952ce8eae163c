"""Saturation pressures of refrigerants, and the temperature that belongs to a pressure.

The table was calculated with CoolProp 8.0.0 every 10 K from -50 to 60 °C, by the reference
equations of state: R-22 Kamei 1995, R-134a Tillner-Roth 1994, blends Lemmon 2003, ammonia Gao 2020.
Between two rows the logarithm of pressure is taken straight over the inverse of absolute
temperature; a test compares that with CoolProp itself to 0.03 K. Outside the table nothing is
calculated.
"""

import math
from bisect import bisect_left
from dataclasses import dataclass

from inspector.values.errors import InspectorError
from inspector.values.formatting import show

LOWEST, STEP = -50, 10  # °C, K
_ZERO = 273.15


class OutsideTable(InspectorError):
    """A pressure for which the table has no temperature.

    Attributes: ``refrigerant``, ``pressure``, ``low``, ``high``.
    """


@dataclass(frozen=True)
class Curves:
    """Absolute pressures [kPa] at -50, -40 ... 60 °C.

    Parameters
    ----------
    bubble, dew : tuple of float
        Of boiling liquid and of dry vapour; the same for a single substance.
    """

    bubble: tuple[float, ...]
    dew: tuple[float, ...]


def _pressures(text: str) -> tuple[float, ...]:
    """Return the row of a table as it is printed."""
    return tuple(map(float, text.split()))


_R22 = _pressures(
    "64.53 105.23 163.89 245.31 354.79 497.99 680.95 910.02 1191.88 1533.58 1942.69 2427.49"
)
_R134A = _pressures(
    "29.45 51.21 84.38 132.73 200.6 292.8 414.61 571.71 770.2 1016.59 1317.91 1681.78"
)
_R717 = _pressures(
    "40.78 71.63 119.38 190.03 290.64 429.25 614.79 857.04 1166.54 1554.53 2032.97 2614.49"
)
# kPa absolute from -50 °C in steps of 10 K; of a pure substance both curves are one.
CURVES = {
    "R-22": Curves(_R22, _R22),
    "R-134a": Curves(_R134A, _R134A),
    "R-404A": Curves(
        _pressures(
            "84.24 135.29 207.78 307.1 439.12 610.18 827.08 1097.15 1428.36 1829.54 2310.87 2885.0"
        ),
        _pressures(
            "81.01 130.98 202.23 300.18 430.73 600.27 815.69 1084.4 1414.49 1814.95 2296.15 2871.22"
        ),
    ),
    "R-407C": Curves(
        _pressures(
            "73.83 120.25 187.13 279.94 404.7 567.89 776.41 1037.55 1358.99 1748.86 2215.88 2769.45"
        ),
        _pressures(
            "50.22 85.67 138.7 214.71 319.8 460.72 644.87 880.29 1175.8 1541.19 1987.62 2528.58"
        ),
    ),
    "R-507A": Curves(
        _pressures(
            "86.38 138.68 212.89 314.52 449.54 624.39 846.01 1121.82 1459.95 1869.5 2361.19 2948.89"
        ),
        _pressures(
            "86.37 138.66 212.83 314.38 449.28 623.97 845.36 1120.9 1458.7 1867.87 2359.22 2946.92"
        ),
    ),
    "R-717": Curves(_R717, _R717),
}


def _temperature(refrigerant: str, pressure: float, curve: tuple[float, ...]) -> float:
    """Return the temperature [°C] of a pressure [kPa] between the rows of one curve."""
    if not curve[0] <= pressure <= curve[-1]:
        raise OutsideTable(
            f"{refrigerant} at {show(pressure, 'kPa')} absolute is outside the table, "
            f"which holds {show(curve[0], 'kPa')} to {show(curve[-1], 'kPa')} (−50 °C to 60 °C).",
            refrigerant=refrigerant,
            pressure=pressure,
            low=curve[0],
            high=curve[-1],
        )
    # At the first row itself there is none before it.
    row = max(1, bisect_left(curve, pressure))
    # a chord of the vapour pressure curve is nearly straight in these coordinates
    share = math.log(pressure / curve[row - 1]) / math.log(curve[row] / curve[row - 1])
    colder = 1 / (LOWEST + STEP * (row - 1) + _ZERO)
    warmer = 1 / (LOWEST + STEP * row + _ZERO)
    return 1 / (colder + share * (warmer - colder)) - _ZERO


def dew_temperature(refrigerant: str, pressure: float) -> float:
    """Return the temperature of dry saturated vapour at an absolute pressure.

    Parameters
    ----------
    refrigerant : str
        One of ``CURVES``.
    pressure : float
        Absolute pressure [kPa].

    Returns
    -------
    float
        Temperature [°C].

    Raises
    ------
    OutsideTable
        Beyond -50 to 60 °C.

    References
    ----------
    CoolProp 8.0.0, interpolated.

    Examples
    --------
    >>> round(dew_temperature("R-407C", 365.025), 1)
    -6.5
    """
    return _temperature(refrigerant, pressure, CURVES[refrigerant].dew)


def bubble_temperature(refrigerant: str, pressure: float) -> float:
    """Return the temperature of boiling liquid at an absolute pressure.

    Parameters
    ----------
    refrigerant : str
        One of ``CURVES``.
    pressure : float
        Absolute pressure [kPa].

    Returns
    -------
    float
        Temperature [°C].

    Raises
    ------
    OutsideTable
        Beyond -50 to 60 °C.

    References
    ----------
    CoolProp 8.0.0, interpolated.
    """
    return _temperature(refrigerant, pressure, CURVES[refrigerant].bubble)
