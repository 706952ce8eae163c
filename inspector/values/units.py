"""The one place that knows units: which are alike, how they convert, what a reader expects."""

from fractions import Fraction

from inspector.values.errors import InspectorError
from inspector.values.numbers import parse_number
from inspector.values.unit_tables import (
    ALIASES,
    GAUGES,
    LOOKALIKES,
    OFFSET,
    QUANTITY,
    TO_SI,
    TO_US,
    UNITS,
)


class WrongUnit(InspectorError):
    """The unit is unknown, or the two units measure unlike things. Attributes: ``unit``, ``to``."""


def known_unit(unit: str | None) -> str:
    """Return our one name for a unit.

    Parameters
    ----------
    unit : str or None
        As typed, such as "um"; None or "" for a plain count.

    Returns
    -------
    str
        Such as "µm"; "" for a plain count.

    Raises
    ------
    WrongUnit
        The unit is not known.
    """
    name = "" if unit is None else unit.strip().translate(LOOKALIKES)
    name = ALIASES.get(name, name)
    if name not in QUANTITY:
        raise WrongUnit(f"The unit '{unit}' is not known here.", unit=unit, to=None)
    return name


def known_units() -> tuple[str, ...]:
    """Return our one name for every unit that is known, without the plain count, which has none."""
    return tuple(unit for unit in QUANTITY if unit)


def convert(value: float, unit: str, to: str) -> float:
    """Convert a number from one unit to another of the same quantity.

    A temperature (°C, °F) and a difference of temperatures (K, F°) are two quantities, as are kW
    and kVA, or Hz and rpm.

    Parameters
    ----------
    value : float
        The number [unit].
    unit, to : str

    Returns
    -------
    float
        The number [to].

    Raises
    ------
    WrongUnit
        A unit is unknown or the two are unlike; with ``unit`` and ``to``.
    NotANumber
        The value is not finite.

    Examples
    --------
    >>> convert(1, "in", "mm"), convert(-18, "°C", "°F"), convert(10, "K", "F°")
    (25.4, -0.4, 18.0)
    """
    source, target = known_unit(unit), known_unit(to)
    quantity, other = QUANTITY[source], QUANTITY[target]
    if quantity != other:
        sentence = (
            f"'{unit}' measures {quantity} and '{to}' measures {other}, "
            "so one cannot become the other."
        )
        raise WrongUnit(sentence, unit=unit, to=to)
    number = parse_number(value)
    if source == target:
        return number
    # repr, because a typed 0.1 means one tenth and not the binary fraction next to it.
    base = Fraction(repr(number)) * UNITS[quantity][source] + OFFSET.get(source, 0)
    return float((base - OFFSET.get(target, 0)) / UNITS[quantity][target])


def units_like(unit: str) -> tuple[str, ...]:
    """Return the units that a gauge may show for the same quantity, the asked one first."""
    name = known_unit(unit)
    # A unit that no gauge shows otherwise is offered alone, without a list to choose from.
    return GAUGES.get(name, (name,))


def in_units(value: float, unit: str, system: str) -> tuple[float, str]:
    """Return a value and its unit as the report prints them in a system of units.

    Parameters
    ----------
    value : float
        The number [unit].
    unit : str
    system : str
        "si" or "us".

    Returns
    -------
    tuple of (float, str)
        Unchanged where the unit has no counterpart.

    Raises
    ------
    WrongUnit
        The unit or the system is not known.
    """
    tables = {"si": TO_SI, "us": TO_US}
    if system not in tables:
        sentence = f"The system of units '{system}' is not known: it is 'si' or 'us'."
        raise WrongUnit(sentence, unit=unit, to=system)
    name = known_unit(unit)
    target = tables[system].get(name, name)
    return convert(value, name, target), target
