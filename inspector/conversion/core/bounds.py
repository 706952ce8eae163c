"""Refusals of the conversion: every number is checked, and the sentence names its field."""

import math
from collections.abc import Mapping

from inspector.conversion.core.figure import Default
from inspector.conversion.core.span import ConversionError, Span, span
from inspector.values.formatting import show
from inspector.values.text import capital


class BadInput(ConversionError):
    """A value that cannot be meant.

    Attributes: ``field``, ``value``, ``low``, ``high``, ``unit`` (where they apply).
    """


def within(field: str, value: float | Span, low: float, high: float, unit: str = "") -> Span:
    """Return a value as a span if the whole of it is in a range.

    Parameters
    ----------
    field : str
        What it is, such as "fuel tank 3: density at 15 °C".
    value : float or Span
        [unit]
    low, high : float
        The ends of the range, which belong to it [unit].
    unit : str
        The unit of all three; "" for a plain number.

    Returns
    -------
    Span

    Raises
    ------
    BadInput
        It is no finite number, or a part of it is outside the range.
    """
    ends = (value.low, value.high) if isinstance(value, Span) else (value,)
    # Both ends of a span, since a formula is as wrong beyond its range at one of them.
    for end in ends:
        _check_finite(field, end, unit)
        if not low <= end <= high:
            name, shown = capital(field), show(end, unit)
            limits = f"{show(low, unit)} and {show(high, unit)}"
            sentence = f"{name} is {shown}, and it must lie between {limits}."
            raise BadInput(sentence, field=field, value=end, low=low, high=high, unit=unit)
    return span(value)


def _check_finite(field: str, value: object, unit: str) -> None:
    """Refuse what is no number, and the numbers without a value: NaN and infinity."""
    # True is an int in Python, and no measurement.
    number = isinstance(value, int | float) and not isinstance(value, bool)
    if not number or not math.isfinite(value):
        expected = f"a finite number in {unit or 'plain numbers'}"
        sentence = f"{capital(field)} is {value!r}, and it must be {expected}."
        raise BadInput(sentence, field=field, value=value, unit=unit)


def plain(field: str, value: float, low: float, high: float, unit: str = "") -> float:
    """Return one plain number if it is in a range.

    Parameters
    ----------
    field : str
        What it is, such as "speed".
    value : float
        [unit]
    low, high : float
        The ends of the range, which belong to it [unit].
    unit : str
        The unit of all three; "" for a plain number.

    Returns
    -------
    float

    Raises
    ------
    BadInput
        It is a span, no finite number, or outside the range.
    """
    # Some formulas need one number; a middle taken silently would hide that it is uncertain.
    if isinstance(value, Span):
        sentence = f"{capital(field)} must be one number here, not a span."
        raise BadInput(sentence, field=field, value=value, unit=unit)
    within(field, value, low, high, unit)
    return value


def check_ranges(
    what: str,
    owner: object,
    ranges: Mapping[str, tuple[float, float, str]],
    *,
    spans: bool = False,
) -> None:
    """Refuse a typed attribute outside its range; one that is None is not known, and passes.

    Parameters
    ----------
    what : str
        What the owner is, at the start of the sentence: "brief", or the name of a tank.
    owner : object
        It has an attribute of each name.
    ranges : mapping of str to tuple
        Attribute -> least, greatest and unit.
    spans : bool
        Whether a value may be a span.

    Raises
    ------
    BadInput
        The first attribute that cannot be meant.
    """
    check = within if spans else plain
    for name, (low, high, unit) in ranges.items():
        value = getattr(owner, name)
        if value is not None:
            check(f"{what}: {name.replace('_', ' ')}", value, low, high, unit)


def one_of(field: str, value: str, choices: tuple[str, ...]) -> str:
    """Return a word if it is one of the choices.

    Parameters
    ----------
    field : str
        What it is, such as "hotel load: where".
    value : str
    choices : tuple of str

    Returns
    -------
    str

    Raises
    ------
    BadInput
        It is none of them.
    """
    if value not in choices:
        names = ", ".join(choices)
        sentence = f"{capital(field)} is {value!r}, and it must be one of: {names}."
        raise BadInput(sentence, field=field, value=value)
    return value


def or_default(value: float | Span | None, default: Default) -> tuple[Span, tuple[Default, ...]]:
    """Return a value, or a default where none was given.

    Parameters
    ----------
    value : float or Span or None
        In the unit of the default.
    default : Default
        Its value is a number or a span.

    Returns
    -------
    tuple of (Span, tuple of Default)
        The default itself is in the second part where it was used, so that it is listed with every
        result.
    """
    # Only what nobody gave: a 0 that was typed is a 0.
    if value is None:
        return span(default.value), (default,)
    return span(value), ()
