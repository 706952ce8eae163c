"""Three-phase arithmetic of a board: currents, how hard a set works by power and by current, transformers, and a shore supply that does not match.

Plain arithmetic of balanced three-phase circuits; rated figures come from plates. kVA are not kW: a set may be full by current while its power is not.
"""

from dataclasses import dataclass
from math import sqrt

from inspector.conversion.inputs import plain
from inspector.criteria.loading import set_load, transformer_current

MOST_POWER, MOST_VOLTAGE = 100_000.0, 15_000.0  # kW or kVA; V


@dataclass(frozen=True)
class Flow:
    """A balanced three-phase load: power [kW], apparent [kVA], reactive [kvar], current [A] in each line."""

    power: float
    apparent: float
    reactive: float
    current: float


@dataclass(frozen=True)
class Mismatch:
    """Ship's machines on another supply: flux, speed and fan power as shares of their own (1.09 is 9 % more)."""

    flux: float
    speed: float
    fan_power: float


def three_phase(power: float, voltage: float, power_factor: float) -> Flow:
    """The flow of a load: power [kW], voltage [V] line to line, power factor (0.1 to 1).

    Errors
    ------
    BadInput : a value outside what a board can have; the field is named.

    Examples
    --------
    >>> round(three_phase(340, 480, 0.8).current, 2), round(three_phase(340, 480, 0.8).reactive, 2)
    (511.2, 255.0)
    """
    plain("power", power, 0, MOST_POWER, "kW")
    plain("voltage", voltage, 12, MOST_VOLTAGE, "V")
    plain("power factor", power_factor, 0.1, 1)
    apparent = power / power_factor
    return Flow(power, apparent, sqrt(max(apparent**2 - power**2, 0.0)), current(apparent, voltage))


def current(apparent: float, voltage: float) -> float:
    """Line current [A] of an apparent power [kVA] at a voltage [V] line to line."""
    return transformer_current(plain("apparent power", apparent, 0, MOST_POWER, "kVA"), plain("voltage", voltage, 12, MOST_VOLTAGE, "V"))


def loading(power: float, rated: float, power_factor: float, rated_power_factor: float) -> float:
    """Load of a set, or of several alike, as a share of its rating: the greater of power and current.

    Parameters: power, rated [kW]; power_factor of the load, and rated_power_factor of the plate.

    Examples
    --------
    >>> round(loading(300, 340, 0.65, 0.8), 3)
    1.086
    """
    plain("rated power", rated, 0.1, MOST_POWER, "kW")
    at_load, at_rating = (three_phase(kilowatts, 480, factor).current for kilowatts, factor in ((power, power_factor), (rated, rated_power_factor)))
    return set_load(power, rated, at_load, at_rating) / 100


def usable_power(rated: float, rated_power_factor: float, power_factor: float) -> float:
    """Power [kW] that a set of a rating [kW] may give at the power factor of the load: less than its rating where the current is full before."""
    plain("rated power", rated, 0.1, MOST_POWER, "kW")
    plain("rated power factor", rated_power_factor, 0.1, 1)
    plain("power factor of the load", power_factor, 0.1, 1)
    return min(rated, rated / rated_power_factor * power_factor)


def transformer_loading(rating: float, load: float | None = None, amperes: float | None = None, voltage: float | None = None) -> float:
    """Load of a transformer of a rating [kVA] as a share, from its load [kVA], or from a current [A] at a voltage [V] on the same side.

    Errors
    ------
    BadInput : neither a load, nor a current with its voltage; or a value that cannot be.

    Examples
    --------
    >>> round(transformer_loading(75, amperes=244.92, voltage=208), 3)
    1.176
    """
    plain("rating of the transformer", rating, 0.1, MOST_POWER, "kVA")
    if load is not None:
        return plain("load of the transformer", load, 0, MOST_POWER, "kVA") / rating
    plain("current of the transformer", amperes, 0, 1e5, "A")
    return amperes / current(rating, plain("voltage of the transformer", voltage, 12, MOST_VOLTAGE, "V"))


def shore_power(amperes: float, voltage: float, power_factor: float) -> float:
    """Power [kW] of a shore connection: breaker [A], voltage [V] line to line, power factor.

    Examples
    --------
    >>> round(shore_power(125, 400, 0.85), 2)
    73.61
    """
    plain("shore current", amperes, 0, 1e5, "A")
    plain("shore voltage", voltage, 12, MOST_VOLTAGE, "V")
    return sqrt(3) * voltage * amperes * plain("power factor", power_factor, 0.1, 1) / 1000


def mismatch(voltage: float, frequency: float, supply_voltage: float, supply_frequency: float) -> Mismatch:
    """What machines of a voltage [V] and frequency [Hz] make of a supply [V, Hz]; flux goes as V/Hz, speed as Hz, fan power as Hz³.

    Examples
    --------
    >>> round(mismatch(440, 60, 400, 50).flux, 3), round(mismatch(480, 60, 400, 50).speed, 3)
    (1.091, 0.833)
    """
    for field, volts in (("ship's voltage", voltage), ("supply voltage", supply_voltage)):
        plain(field, volts, 12, MOST_VOLTAGE, "V")
    for field, hertz in (("ship's frequency", frequency), ("supply frequency", supply_frequency)):
        plain(field, hertz, 40, 70, "Hz")
    speed = supply_frequency / frequency
    return Mismatch(supply_voltage / supply_frequency / (voltage / frequency), speed, speed**3)
