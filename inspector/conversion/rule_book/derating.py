"""What a diesel gives in hot air and warm water: power adjusted from its reference conditions."""

from inspector.conversion.core.bounds import plain
from inspector.criteria.core.source import Source

ISO_3046 = Source.recalled(
    "ISO 3046-1, reciprocating engines, performance",
    "10.3, power adjustment; exponents recalled",
    edition="2002",
)
TROPICAL = Source.recalled(
    "IACS UR M28, ambient reference conditions",
    "45 °C air, 32 °C sea water, 60 % humidity",
)
# Reference conditions: air and coolant of the charge air [K].
REFERENCE_AIR = REFERENCE_COOLANT = 298.15
ZERO = 273.15
# Exponents of a turbocharged engine with and without a charge-air cooler: air, coolant.
COOLED, UNCOOLED = (1.2, 1.0), (2.0, 0.0)
MECHANICAL_EFFICIENCY = 0.85


def adjusted_share(
    air: float, coolant: float, *, cooled: bool = True, efficiency: float = MECHANICAL_EFFICIENCY
) -> float:
    """Return the share of its rated power that a turbocharged engine gives at a temperature.

    Parameters
    ----------
    air : float
        At the intake, -60 to 60 [°C].
    coolant : float
        Of the charge air at its cooler, 0 to 60 [°C].
    cooled : bool
        Whether the charge air is cooled.
    efficiency : float
        Mechanical efficiency, 0.5 to 1 [-].

    Returns
    -------
    float
        [-]; 1 where the conditions are milder than the reference: nothing is promised beyond.

    Raises
    ------
    BadInput
        A value that cannot be.

    References
    ----------
    ISO 3046-1: alpha = k - 0.7 (1 - k) (1 / eta - 1), k = (298 / T air)^n (298 / T coolant)^s, at
    100 kPa (formula seen in an extract, exponents from memory).

    Examples
    --------
    >>> round(adjusted_share(45, 32), 3), round(adjusted_share(45, 32, cooled=False), 3)
    (0.892, 0.863)
    >>> adjusted_share(10, 10)
    1.0
    """
    plain("air temperature", air, -60, 60, "°C")
    plain("coolant temperature", coolant, 0, 60, "°C")
    plain("mechanical efficiency", efficiency, 0.5, 1)
    of_air, of_coolant = COOLED if cooled else UNCOOLED
    ratio = (REFERENCE_AIR / (air + ZERO)) ** of_air
    ratio *= (REFERENCE_COOLANT / (coolant + ZERO)) ** of_coolant
    return min(1.0, ratio - 0.7 * (1 - ratio) * (1 / efficiency - 1))
