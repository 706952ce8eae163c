"""Lengths and times as people write them. Feet, inches and their marks: NIST Handbook 44 (2024),
appendix C (12 inches to the foot); hours, minutes and seconds: ISO 8601-1:2019, 5.3.1."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.values.field import Field, FieldRefused
from inspector.values.measures import parse_in, parse_measure
from inspector.values.numbers import NotANumber


@pytest.mark.parametrize(
    ("expected", "text", "unit"),
    [
        ((12.25, "ft"), "12' 3\"", "m"),
        ((12.25, "ft"), "12'3", "ft"),
        ((12.25, "ft"), "12 ft 3 in", "mm"),
        ((12.25, "ft"), "12′ 3″", "m"),
        ((12.25, "ft"), "12' 3''", "m"),
        ((12.3125, "ft"), "12'-3 3/4\"", "m"),
        ((-2.5, "ft"), "−2' 6\"", "ft"),
        ((3.5, "in"), "3 1/2 in", "mm"),
        ((3.5, "in"), '3-1/2"', "mm"),
        ((3.5, "in"), "3½", "in"),
        ((0.625, "in"), "5/8", "in"),
        ((9.6, "mm"), "9,6 mm", "in"),
        ((5.5, "ft"), "5.5'", "m"),
        ((7 + 35 / 60, "h"), "7:35", "h"),
        ((7 + 35 / 60, "h"), "7:35", "days"),
        ((7 + 35.5 / 60, "h"), "7:35:30", "s"),
        ((7 + 35 / 60, "h"), "7 h 35 min", "min"),
        ((7 + 35 / 60, "h"), "7h35", "h"),
        ((1.5, "min"), "1 min 30 s", "h"),
        ((9.6, "mm"), "9.6", "mm"),
        ((1200.0, "mm"), "1 200", "mm"),
        ((3.0, "bar"), "3", "bar"),
    ],
)
def test_a_measure_is_read_as_people_write_it(expected, text, unit):
    """Its own marks say its unit; without any the field's unit holds."""
    assert expected == parse_measure(text, unit)


@pytest.mark.parametrize(
    ("text", "unit", "ways"),
    [
        ("1,200", "mm", ("1200", "1.2")),
        ("1.025 m", "m", ("1025", "1.0250")),
        ("7:35", "min", ("7 h 35 min", "7 min 35 s")),
        ("31/2", "in", ("3 1/2", "15.5")),
    ],
)
def test_two_meanings_are_asked_back_with_a_way_to_write_each(text, unit, ways):
    """Nobody guesses; both ways can be read."""
    with pytest.raises(NotANumber) as refused:
        parse_measure(text, unit)

    assert ways == refused.value.ways
    assert len({parse_in(way, unit) for way in ways}) == 2


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("12' 15\"", "ft"),
        ("12.5' 3\"", "ft"),
        ("3/0", "in"),
        ("3 5/2", "in"),
        ("7:65", "h"),
        ("12'", "h"),
        ("7 h", "m"),
        ("5 m 3", "m"),
        ("'", "ft"),
        ("", "ft"),
        ("about 3 in", "in"),
        ("3 1/2", "bar"),
        ("7:35", "bar"),
    ],
)
def test_what_is_no_measure_is_refused(text, unit):
    """Too many inches, a broken foot before inches, another quantity's marks, words."""
    with pytest.raises(NotANumber):
        parse_measure(text, unit)


@given(feet=st.integers(0, 400), inches=st.integers(0, 11), sixteenths=st.integers(1, 15))
def test_feet_inches_and_sixteenths_add_up(feet, inches, sixteenths):
    """Twelve inches to the foot, whatever the numbers."""
    text = f"{feet}' {inches} {sixteenths}/16\""
    assert parse_in(text, "in") == pytest.approx(feet * 12 + inches + sixteenths / 16, abs=1e-9)


@given(hours=st.integers(0, 99_999), minutes=st.integers(0, 59))
def test_hours_and_minutes_are_the_same_in_both_spellings(hours, minutes):
    """7:35 and 7 h 35 min are one time."""
    clock = parse_in(f"{hours}:{minutes:02}", "h")
    assert clock == parse_in(f"{hours} h {minutes} min", "h")
    assert clock * 60 == pytest.approx(hours * 60 + minutes)


def test_a_form_reads_a_draught_in_feet_and_inches():
    """Wherever a field asks a length, also on Prepare, in the unit of the field."""
    draught = Field("draught", "Draught", unit="m", low=0.1, high=20)

    assert draught.parse("12' 3\"") == pytest.approx(3.7338)
    assert draught.parse({"value": "3 1/2", "unit": "ft"}) == pytest.approx(1.0668)
    with pytest.raises(FieldRefused, match="two ways"):
        draught.parse("1,200")
