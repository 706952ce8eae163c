"""Readings and limits as the report prints them: in the units of its reader.

A reading is kept as it was typed, with the unit on the gauge. Where a report prints it in another
unit, its table says once from which units it was converted.
"""

from collections.abc import Iterable

from inspector.assess.checked import CheckResult, Typed
from inspector.criteria.core.limit_sets import LimitSet
from inspector.values.cell_text import DASH, reader_unit
from inspector.values.errors import InspectorError
from inspector.values.formatting import show, with_printed_unit
from inspector.values.measures import parse_measure
from inspector.values.numbers import MINUS, NotANumber, parse_number
from inspector.values.text import listed
from inspector.values.units import WrongUnit, in_units, known_unit


def typed_value(text: str, unit: str, units: str) -> str:
    """Return a typed value in the reader's units.

    Parameters
    ----------
    text : str
        As typed, with its unit or without.
    unit : str
        The unit that it was typed in; "" for none.
    units : str
        "si" or "us".

    Returns
    -------
    str
        What is in the reader's units already keeps its typed digits; what is no number is as it
        was typed.

    Examples
    --------
    >>> typed_value("9.6 mm", "mm", "us"), typed_value("-4", "°C", "si")
    ('0.378 in', '−4 °C')
    >>> typed_value("wet", "mm", "us")
    'wet'
    """
    # A surveyor may type the unit behind the number as well.
    bare = text.strip()
    # Words such as "illegible" are typed where a number could not be read.
    if not unit or not bare:
        return bare
    # "9.6 mm" typed into a field of millimetres is 9.6.
    number = bare.removesuffix(unit).strip()
    try:
        value, target = in_units(parse_number(number), unit, units)
        if target != known_unit(unit):
            # Three digits: a conversion makes digits that nobody read off a gauge.
            return show(float(f"{value:.3g}"), target)
    except NotANumber:
        return _measure_text(bare, unit, units)
    except WrongUnit:
        target = unit
    # The digits stay as typed ("9.60" was read to a hundredth), only the sign becomes a minus.
    signed = f"{MINUS}{number[1:]}" if number.startswith("-") else number
    return with_printed_unit(signed, target)


def _measure_text(bare: str, unit: str, units: str) -> str:
    """A measure such as 12' 3" in the reader's units; what is none is as it was typed."""
    try:
        value, own = parse_measure(bare, unit)
        shown, target = in_units(value, own, units)
    except InspectorError:
        return bare
    return bare if target == known_unit(own) else show(float(f"{shown:.3g}"), target)


def bare_value(reading: Typed, units: str) -> tuple[str, str]:
    """Return a reading in the reader's units, its unit apart.

    Parameters
    ----------
    reading : Typed
    units : str
        "si" or "us".

    Returns
    -------
    tuple of (str, str)
        The number or the words, and the unit, "" where there is none or it is part of the words.

    Examples
    --------
    >>> bare_value(Typed("t", "Thickness", "9.60", "mm"), "si")
    ('9.60', 'mm')
    """
    text = typed_value(reading.text, reading.unit, units)
    try:
        unit = reader_unit(reading.unit, units)
    except InspectorError:
        unit = ""
    # Words in place of a number ("illegible") carry no unit.
    if not unit or not text.endswith(unit) or not text[:1].strip("+≈~<>≤≥" + MINUS).isdigit():
        return text, ""
    return text.removesuffix(unit).rstrip(), unit


def conversion_note(values: Iterable[tuple[str, str]], units: str) -> str:
    """Return the sentence that says from what typed values were converted, once for a table.

    A report in SI units repeats each value that was typed in another unit, since there are few. In
    a report in US units nearly every value is converted, so the units alone are named.

    Parameters
    ----------
    values : iterable of (str, str)
        Each value as typed, and its unit.
    units : str
        "si" or "us".

    Returns
    -------
    str
        "" where nothing was converted.

    Examples
    --------
    >>> conversion_note([("9.6", "mm"), ("4", "°C"), ("11", "mm"), ("40", "%")], "us")
    'Converted from the units that the values were typed in: mm and °C.'
    >>> conversion_note([("9,6", "in"), ("4", "mm")], "si")
    'Converted from what was typed: 9,6 in.'
    """
    converted = [(text, unit) for text, unit in values if _is_converted(text, unit, units)]
    if not converted:
        return ""
    if units == "si":
        typed = [
            with_printed_unit(text.strip().removesuffix(unit).strip(), unit)
            for text, unit in converted
        ]
        return f"Converted from what was typed: {listed(list(dict.fromkeys(typed)))}."
    # Each unit once, in the order of the table.
    names = listed(list(dict.fromkeys(unit for _, unit in converted)))
    return f"Converted from the units that the values were typed in: {names}."


def _is_converted(text: str, unit: str, units: str) -> bool:
    """Return whether a typed value is printed in another unit than its own."""
    if not unit or not text.strip():
        return False
    try:
        value, own = parse_measure(text.strip().removesuffix(unit).strip(), unit)
        target = in_units(value, own, units)[1]
    except InspectorError:
        return False
    return target != known_unit(own)


def readings_note(results: Iterable[CheckResult], units: str) -> str:
    """Return the sentence of ``conversion_note`` for the readings of several checks.

    Parameters
    ----------
    results : iterable of CheckResult
    units : str
        "si" or "us".

    Returns
    -------
    str
        "" where nothing was converted.
    """
    readings = [reading for result in results for reading in result.readings]
    return conversion_note([(reading.text, reading.unit) for reading in readings], units)


def readings_text(result: CheckResult, units: str, labelled: bool = False) -> str:
    """Return all readings of a check in a row.

    Parameters
    ----------
    result : CheckResult
    units : str
        "si" or "us".
    labelled : bool
        Whether a single reading has its label as well.

    Returns
    -------
    str
    """
    # One reading is named by its check already.
    with_label = labelled or len(result.readings) > 1
    read = [reading for reading in result.readings if reading.text]
    return "; ".join(_reading_text(reading, units, with_label) for reading in read)


def _reading_text(reading: Typed, units: str, with_label: bool) -> str:
    """Return a reading in the reader's units."""
    value = typed_value(reading.text, reading.unit, units)
    return f"{reading.label}: {value}" if with_label else value


def limit_text(result: CheckResult, units: str) -> str:
    """Return the limit that a reading was compared with.

    Parameters
    ----------
    result : CheckResult
    units : str
        "si" or "us".

    Returns
    -------
    str
        A dash where there is none.
    """
    judged = result.judgement
    if judged is None or judged.limit is None:
        return DASH
    try:
        value, target = in_units(judged.limit, judged.unit or "", units)
        # As published in the rule's own unit; converted to no more digits than it can claim.
        own = target == known_unit(judged.unit or "")
        return show(value if own else float(f"{value:.3g}"), target)
    except InspectorError:
        # A surveyor's own criterion may have a unit that we cannot convert.
        return with_printed_unit(str(judged.limit), judged.unit or "")


def limits_text(limits: LimitSet, units: str) -> str:
    """Return the limits that a surveyor set, in one sentence.

    Parameters
    ----------
    limits : LimitSet
    units : str
        "si" or "us".

    Returns
    -------
    str
    """
    named = [
        f"{limit.label} {show(*in_units(limit.value, limit.unit, units))}"
        for limit in limits.limits
    ]
    return f"{limits.title}: {'; '.join(named)}."
