"""Readings and limits in the reader's units, and what a table says of their conversion."""

import dataclasses

import pytest

from inspector.assess.checked import Typed
from inspector.report.reading_text import (
    conversion_note,
    limit_text,
    readings_note,
    readings_text,
    typed_value,
)
from tests.report.conftest import results


@pytest.mark.parametrize(
    ("expected", "text", "unit", "units"),
    [
        ("9.60 mm", "9.60", "mm", "si"),
        ("0.378 in", "9.60", "mm", "us"),
        ("8.66 mm", "0.341", "in", "si"),
        ("−18.6 °C", "-18.6", "°C", "si"),
        ("−1.48 °F", "-18.6", "°C", "us"),
        ("0,42 %", "0,42", "%", "us"),
        ("35°", "35", "deg", "us"),
        ("9.6 mm", " 9.6 mm ", "mm", "si"),
        ("18/16/13", "18/16/13", "", "us"),
    ],
)
def test_a_typed_value_is_printed_in_the_readers_unit(expected, text, unit, units):
    """Typed digits stay where the unit does, and a minus is a minus."""
    assert typed_value(text, unit, units) == expected


@pytest.mark.parametrize("text", ["", "wet", "about 9", "1.200", "1,200", "nan", "9..6"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_what_is_no_number_is_printed_as_typed(text, units):
    """Nothing is guessed and nothing is lost, also where a number could mean two things."""
    assert typed_value(text, "mm", units) == text
    assert conversion_note([(text, "mm")], units) == ""


def test_a_unit_that_we_do_not_know_stays():
    """A surveyor's own unit is printed with what he typed."""
    assert typed_value("12", "furlongs", "us") == "12 furlongs"
    assert conversion_note([("12", "furlongs")], "us") == ""


def test_the_note_names_each_typed_unit_once_in_their_order():
    """Units that stay are not named."""
    typed = [("4", "°C"), ("9.6", "mm"), ("5", "°C"), ("40", "%"), ("wet", "bar"), ("2", "m")]

    note = conversion_note(typed, "us")

    assert note == "Converted from the units that the values were typed in: °C, mm and m."
    assert conversion_note(typed, "si") == ""


def test_the_note_of_several_checks_covers_all_their_readings():
    """One note serves a whole table."""
    note = readings_note(results("one", "One", []), "us")

    assert note.endswith(": mm and °C.")


def test_several_readings_have_their_labels():
    """A single one has its label only where it is asked for."""
    plate, _, coil, *_ = results("one", "One", [])

    assert readings_text(plate, "si") == "9.6 mm"
    assert readings_text(plate, "si", labelled=True) == "Thickness: 9.6 mm"
    assert readings_text(coil, "us") == "Resistance: 212 MΩ; Winding temperature: 104 °F"


def test_an_empty_reading_is_left_out():
    """What was not filled in is not printed."""
    plate = results("one", "One", [])[0]
    readings = (*plate.readings, Typed("p", "Pit", "", "mm"))

    assert readings_text(dataclasses.replace(plate, readings=readings), "si").count(":") == 1


def test_equal_reading_and_limit_look_equal():
    """A reading at its limit has the same digits as the limit, in both systems of units."""
    plate = results("one", "One", [])[0]
    at_limit = dataclasses.replace(plate, judgement=dataclasses.replace(plate.judgement, limit=9.6))

    for units in ("si", "us"):
        assert limit_text(at_limit, units) == readings_text(at_limit, units)


def test_a_limit_that_is_not_known_is_a_dash():
    """Without judgement, and where the judgement has no limit."""
    plate = results("one", "One", [])[0]
    no_limit = dataclasses.replace(plate.judgement, limit=None)

    assert limit_text(dataclasses.replace(plate, judgement=None), "us") == "–"
    assert limit_text(dataclasses.replace(plate, judgement=no_limit), "us") == "–"


def test_a_limit_in_a_unit_of_a_surveyors_own_stays():
    """It is printed as his criterion gives it."""
    plate = results("one", "One", [])[0]
    own = dataclasses.replace(plate.judgement, limit=3.0, unit="turns")

    assert limit_text(dataclasses.replace(plate, judgement=own), "us") == "3.0 turns"
