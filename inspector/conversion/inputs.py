"""The refusals of the conversion: every number that comes in is checked here, and the sentence names its field."""

import math

from inspector.conversion.shapes import ConversionError, Default, Span, span
from inspector.criteria.source import Source
from inspector.quantities import show
from inspector.words import capital

PRACTICE = Source("Common practice", "no publisher", "guidance", "common practice")


class BadInput(ConversionError):
    """A value that cannot be meant. Attributes: ``field``, ``value``, ``low``, ``high``, ``unit`` (where they apply)."""


def within(field: str, value: float | Span, low: float, high: float, unit: str = "") -> Span:
    """Return the value as a span if the whole of it lies from low to high, all in one unit; else BadInput names the field.

    Parameters: field, such as "fuel tank 3: density at 15 °C"; value, low, high [unit].
    """
    ends = (value.low, value.high) if isinstance(value, Span) else (value,)
    for end in ends:
        if isinstance(end, bool) or not isinstance(end, int | float) or not math.isfinite(end):
            raise BadInput(f"{capital(field)} is {end!r}, and it must be a finite number in {unit or 'plain numbers'}.", field=field, value=end, unit=unit)
        if not low <= end <= high:
            sentence = f"{capital(field)} is {show(end, unit)}, and it must lie between {show(low, unit)} and {show(high, unit)}."
            raise BadInput(sentence, field=field, value=end, low=low, high=high, unit=unit)
    return span(value)


def plain(field: str, value: float, low: float, high: float, unit: str = "") -> float:
    """Return one plain number from low to high; a span or anything else is a BadInput that names the field."""
    if isinstance(value, Span):
        raise BadInput(f"{capital(field)} must be one number here, not a span.", field=field, value=value, unit=unit)
    within(field, value, low, high, unit)
    return value


def one_of(field: str, value: str, choices: tuple[str, ...]) -> str:
    """Return a word that is one of the choices, else BadInput names them."""
    if value not in choices:
        raise BadInput(f"{capital(field)} is {value!r}, and it must be one of: {', '.join(choices)}.", field=field, value=value)
    return value


def or_default(value: float | Span | None, default: Default) -> tuple[Span, tuple[Default, ...]]:
    """The given value and no default, or the default's value and the default itself, so that it is listed wherever it is used."""
    return (span(value), ()) if value is not None else (span(default.value), (default,))
