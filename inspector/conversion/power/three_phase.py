"""Three-phase arithmetic of a board: currents, loads of transformers, shore supply.

Rated figures come from plates. kVA are not kW: a set may be full by current while its power is not.
"""

from dataclasses import dataclass
from math import sqrt

from inspector.conversion.core.bounds import plain
from inspector.criteria.electrical.machine_loading import transformer_current

MOST_POWER, MOST_VOLTAGE = 100_000.0, 15_000.0  # kW or kVA; V


@dataclass(frozen=True)
class PhaseLoad:
    """A balanced three-phase load.

    Parameters
    ----------
    power : float
        Active power [kW].
    apparent : float
        Apparent power [kVA].
    reactive : float
        Reactive power [kvar].
    current : float
        Current in each line [A].
    """

    power: float
    apparent: float
    reactive: float
    current: float


@dataclass(frozen=True)
class SupplyMismatch:
    """The ship's machines on another supply, as shares of their own values (1.09 is 9 % more).

    Parameters
    ----------
    flux, speed, fan_power : float
    """

    flux: float
    speed: float
    fan_power: float


def three_phase(power: float, voltage: float, power_factor: float) -> PhaseLoad:
    """Return currents and powers of a balanced load.

    Parameters
    ----------
    power : float
        Active power [kW].
    voltage : float
        Voltage, line to line [V].
    power_factor : float
        Power factor, 0.1 to 1.

    Returns
    -------
    PhaseLoad

    Raises
    ------
    BadInput
        A value outside what a board can have; the field is named.

    References
    ----------
    S = P / pf, Q = √(S² − P²), I = S / (√3 V): plain arithmetic of three-phase circuits.

    Examples
    --------
    >>> round(three_phase(340, 480, 0.8).current, 2), round(three_phase(340, 480, 0.8).reactive, 2)
    (511.2, 255.0)
    """
    plain("power", power, 0, MOST_POWER, "kW")
    plain("voltage", voltage, 12, MOST_VOLTAGE, "V")
    plain("power factor", power_factor, 0.1, 1)
    apparent = power / power_factor
    # Rounding may leave the difference of the squares just below zero at a power factor of 1.
    reactive = sqrt(max(apparent**2 - power**2, 0.0))
    return PhaseLoad(power, apparent, reactive, line_current(apparent, voltage))


def line_current(apparent: float, voltage: float) -> float:
    """Return the current in each line of a three-phase load.

    Parameters
    ----------
    apparent : float
        Apparent power [kVA].
    voltage : float
        Voltage, line to line [V].

    Returns
    -------
    float
        Current [A].

    Raises
    ------
    BadInput
        A value outside what a board can have; the field is named.

    References
    ----------
    I = S / (√3 V), plain arithmetic of three-phase circuits.
    """
    return transformer_current(
        plain("apparent power", apparent, 0, MOST_POWER, "kVA"),
        plain("voltage", voltage, 12, MOST_VOLTAGE, "V"),
    )


def usable_power(rated: float, rated_power_factor: float, power_factor: float) -> float:
    """Return what a set can give at the power factor of the load.

    Parameters
    ----------
    rated : float
        Rated power [kW].
    rated_power_factor : float
        Power factor on the plate.
    power_factor : float
        Power factor of the load.

    Returns
    -------
    float
        Power [kW]: less than its rating where the current is full before.

    Raises
    ------
    BadInput
        A value outside what a board can have; the field is named.

    References
    ----------
    Plain arithmetic of three-phase circuits.
    """
    plain("rated power", rated, 0.1, MOST_POWER, "kW")
    plain("rated power factor", rated_power_factor, 0.1, 1)
    plain("power factor of the load", power_factor, 0.1, 1)
    # The engine limits the power, the winding the current: whichever is full first.
    return min(rated, rated / rated_power_factor * power_factor)


def transformer_loading(
    rating: float,
    load: float | None = None,
    amperes: float | None = None,
    voltage: float | None = None,
) -> float:
    """Return the load of a transformer, from its load or from a current with its voltage.

    Parameters
    ----------
    rating : float
        Rating on the plate [kVA].
    load : float, optional
        Load [kVA].
    amperes : float, optional
        Current [A].
    voltage : float, optional
        Voltage on the side of the current, line to line [V].

    Returns
    -------
    float
        Share of its rating.

    Raises
    ------
    BadInput
        Neither a load nor a current with its voltage is given, or a value cannot be.

    References
    ----------
    Plain arithmetic of three-phase circuits.

    Examples
    --------
    >>> round(transformer_loading(75, amperes=244.92, voltage=208), 3)
    1.176
    """
    plain("rating of the transformer", rating, 0.1, MOST_POWER, "kVA")
    # A load in kVA is what a transformer is rated by; amperes need its voltage first.
    if load is not None:
        return plain("load of the transformer", load, 0, MOST_POWER, "kVA") / rating
    plain("current of the transformer", amperes, 0, 1e5, "A")
    plain("voltage of the transformer", voltage, 12, MOST_VOLTAGE, "V")
    # By current: the plate is kVA, and what heats the windings is amperes.
    return amperes / line_current(rating, voltage)


def shore_power(amperes: float, voltage: float, power_factor: float) -> float:
    """Return the power of a shore connection.

    Parameters
    ----------
    amperes : float
        Breaker [A].
    voltage : float
        Voltage, line to line [V].
    power_factor : float
        Power factor of the load.

    Returns
    -------
    float
        Power [kW].

    Raises
    ------
    BadInput
        A value that no shore connection can have; the field is named.

    References
    ----------
    P = √3 V I pf, plain arithmetic of three-phase circuits.

    Examples
    --------
    >>> round(shore_power(125, 400, 0.85), 2)
    73.61
    """
    plain("shore current", amperes, 0, 1e5, "A")
    plain("shore voltage", voltage, 12, MOST_VOLTAGE, "V")
    # Three phases, with the voltage from line to line.
    return sqrt(3) * voltage * amperes * plain("power factor", power_factor, 0.1, 1) / 1000


def supply_mismatch(
    voltage: float, frequency: float, supply_voltage: float, supply_frequency: float
) -> SupplyMismatch:
    """Return how the ship's machines run on another supply.

    Parameters
    ----------
    voltage : float
        Ship's voltage [V].
    frequency : float
        Ship's frequency [Hz].
    supply_voltage : float
        Voltage of the supply [V].
    supply_frequency : float
        Frequency of the supply [Hz].

    Returns
    -------
    SupplyMismatch

    Raises
    ------
    BadInput
        A value outside what a board can have; the field is named.

    References
    ----------
    Flux goes as V/Hz, speed as Hz, fan power as Hz³: plain physics of induction machines.

    Examples
    --------
    >>> mismatch = supply_mismatch(440, 60, 400, 50)
    >>> round(mismatch.flux, 3), round(mismatch.speed, 3)
    (1.091, 0.833)
    """
    for name, volts in (("ship's voltage", voltage), ("supply voltage", supply_voltage)):
        plain(name, volts, 12, MOST_VOLTAGE, "V")
    for name, hertz in (("ship's frequency", frequency), ("supply frequency", supply_frequency)):
        plain(name, hertz, 40, 70, "Hz")
    # Flux above its design saturates the iron, which is what heats machines on a foreign shore.
    speed = supply_frequency / frequency
    flux = supply_voltage / supply_frequency / (voltage / frequency)
    # Fans and pumps take power by the cube of their speed.
    return SupplyMismatch(flux, speed, speed**3)
