"""Every criterion judges something that is asked, and every gauge that has a figure is judged.

A reading is looked at here where its check's own text names a figure for it: a number with a unit
that converts to the reading's. Such a reading is an input of the check's criterion, or its table
says under `unjudged` why it is none.
"""

import re
from dataclasses import replace

import pytest

from inspector.checklists.loader import read_library
from inspector.checklists.registry import CRITERIA
from inspector.places import shipped
from inspector.values.units import WrongUnit, convert, known_unit

NUMBER = (
    r"\d[\d.,]*|half an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen"
    r"|twenty|thirty|forty|fifty|sixty|ninety"
)
FIGURE = re.compile(rf"\b(?:{NUMBER})[ -]?(%|°C|°|[a-zµω²³/()]+)", re.IGNORECASE)
SHARE = re.compile(
    r"\b(a|one|two) (third|quarter|tenth|half|halves)s?\b|\bhalf the\b", re.IGNORECASE
)
# Units as a text writes them in words.
IN_WORDS = {
    "millimetre": "mm",
    "millimetres": "mm",
    "centimetres": "cm",
    "metre": "m",
    "metres": "m",
    "second": "s",
    "seconds": "s",
    "minute": "min",
    "minutes": "min",
    "hour": "h",
    "hours": "h",
    "day": "days",
    "week": "days",
    "weeks": "days",
    "month": "months",
    "year": "years",
    "degree": "deg",
    "degrees": "deg",
    "°": "deg",
    "kelvin": "K",
    "volt": "V",
    "volts": "V",
    "hertz": "Hz",
    "litre": "l",
    "litres": "l",
    "kilogram": "kg",
    "kilograms": "kg",
    "tonne": "t",
    "tonnes": "t",
}


@pytest.fixture(scope="module")
def library():
    return read_library(shipped("checklists"), check_criteria=True)


def units_of_figures(text):
    """The unit of each figure that a text names; a third or a quarter counts as a percentage."""
    found = {"%"} if SHARE.search(text) else set()
    for word in FIGURE.findall(text):
        try:
            found.add(known_unit(IN_WORDS.get(word.casefold(), word)))
        except WrongUnit:
            continue
    return found


def has_figure(reading, units):
    for unit in units:
        try:
            convert(1, unit, reading.unit)
        except WrongUnit:
            continue
        return True
    return False


def unjudged_with_figure(check):
    """The readings of a check that its text names a figure for and that nothing judges."""
    units = units_of_figures(f"{check.look} {check.bad}")
    inputs = CRITERIA[check.criterion].inputs if check.criterion else ()
    judged = {one.name for one in inputs}
    return [
        one.name
        for one in check.readings
        if one.kind == "number" and one.name not in judged and has_figure(one, units)
    ]


def test_no_criterion_is_idle(library):
    """Each criterion judges the readings of at least one shipped check."""
    used = {check.criterion for system in library.systems.values() for check in system.checks}

    assert set() == set(CRITERIA) - used


def test_no_gauge_with_a_figure_is_left_unjudged(library):
    """Where a text names a figure, a criterion judges the reading or its table says why none."""
    found = [
        f"{system.id}/{check.id}/{name}"
        for system in library.systems.values()
        for check in system.checks
        for name in unjudged_with_figure(check)
        if name not in check.unjudged
    ]

    assert [] == found


def test_no_reason_is_left_over(library):
    """A reason stands only where the text names a figure, and it is a sentence's worth."""
    reasons = {
        (f"{system.id}/{check.id}", name): reason
        for system in library.systems.values()
        for check in system.checks
        for name, reason in check.unjudged.items()
        if name not in unjudged_with_figure(check) or len(reason) < 15
    }

    assert {} == reasons


def test_a_gauge_with_a_figure_is_found(library):
    """The guard above bites: without its criterion a door's time would be named."""
    doors = library.systems["hull"].check("watertight-doors")

    assert [] == unjudged_with_figure(doors)
    assert ["time"] == unjudged_with_figure(replace(doors, criterion=""))


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("Under 20 s by power.", "s"),
        ("Over two minutes.", "min"),
        ("Half a metre short.", "m"),
        ("A third gone.", "%"),
        ("Over 55 degrees.", "deg"),
        ("Grown 0.3 to 0.5 mm since new.", "mm"),
    ],
)
def test_a_figure_is_found_as_people_write_it(text, unit):
    """The guard above sees digits, words and shares."""
    assert unit in units_of_figures(text)


def test_a_text_without_a_figure_has_none():
    """A number without a unit is no figure of a gauge."""
    assert set() == units_of_figures("Three doors of ten do not latch, form 2.")
