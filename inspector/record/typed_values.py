"""A recorded value as it was typed: plain text, or a mapping of its text and its unit."""

from collections.abc import Mapping
from typing import Any

from inspector.record.state import State
from inspector.values.errors import InspectorError
from inspector.values.measures import parse_in

# Money, tonnes or years beyond this are slips of the finger.
LARGEST = 1e12


def typed_text(recorded: Any) -> str:
    """Return what was typed, without its unit.

    Parameters
    ----------
    recorded : Any
        The value of an entry: text, a number, None, or ``{"value": ..., "unit": ...}``.

    Returns
    -------
    str
        "" where nothing was typed, or where the value is no plain one.
    """
    value = recorded.get("value") if isinstance(recorded, Mapping) else recorded
    return "" if value is None or isinstance(value, Mapping | list) else str(value).strip()


def typed_unit(recorded: Any) -> str:
    """Return the unit that was typed with a value.

    Parameters
    ----------
    recorded : Any
        The value of an entry.

    Returns
    -------
    str
        "" where no unit was typed.
    """
    unit = recorded.get("unit") if isinstance(recorded, Mapping) else None
    return unit.strip() if isinstance(unit, str) else ""


def typed_number(recorded: Any, least: float = -LARGEST) -> float | None:
    """Return the number that was typed.

    Parameters
    ----------
    recorded : Any
        The value of an entry.
    least : float
        The smallest number that can be meant.

    Returns
    -------
    float or None
        In the unit in which it was typed; None where there is no number, or where it is outside
        `least` to LARGEST.
    """
    try:
        number = parse_in(typed_text(recorded), typed_unit(recorded))
    except InspectorError:
        return None
    return number if least <= number <= LARGEST else None


def as_texts(values: Mapping[str, Any]) -> dict[str, str]:
    """Return recorded values as text.

    Parameters
    ----------
    values : mapping of str to Any
        Field -> value.

    Returns
    -------
    dict of str to str
        Field -> text, "" where there is no plain value.
    """
    return {field: typed_text(value) for field, value in values.items()}


def texts(state: State, subject: str) -> dict[str, str]:
    """Return the fields of a subject as text.

    Parameters
    ----------
    state : State
        What is recorded of the inspection.
    subject : str
        For example "vessel" or "finding/f1".

    Returns
    -------
    dict of str to str
        Field -> text, without the fields that are empty or have no plain value.
    """
    found = as_texts(state.values(subject))
    return {field: text for field, text in found.items() if text}
