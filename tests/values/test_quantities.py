"""What a typed number means, which units are alike, and how a value is shown."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.values.cell_text import reader_unit, span_text
from inspector.values.errors import InspectorError
from inspector.values.formatting import show
from inspector.values.numbers import NotANumber, difference, parse_number, written_number
from inspector.values.quantity import Quantity
from inspector.values.unit_tables import GAUGES, QUANTITY, TO_SI, TO_US
from inspector.values.units import (
    WrongUnit,
    convert,
    in_units,
    known_unit,
    units_like,
)


@pytest.mark.parametrize(
    ("expected", "text"),
    [
        (9.6, "9,6"),
        (9.6, "9.6"),
        (9.6, " 9.6 "),
        (-18.0, "-18"),
        (-18.0, "−18"),
        (3.0, "+3"),
        (0.5, ".5"),
        (0.125, "0,125"),
        (1200.0, "1 200"),
        (12000.5, "12 000,5"),
        (1200.0, "1\u00a0200"),
        (1200.0, "1\u202f200"),
        (1234.567, "1234,567"),
        (1.025, "1.0250"),
        (7.0, 7),
        (0.0, "0"),
        (1e-7, 1e-7),
    ],
)
def test_a_number_is_read_as_it_is_typed(expected, text):
    """Decimal point or comma, a sign, grouping spaces and plain numbers are all read."""
    assert expected == parse_number(text)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "  ",
        "abc",
        "9.6 mm",
        "1,200",
        "1.200",
        "+1.025",
        "-12,345",
        "1,2,3",
        "1.2.3",
        "1 20",
        "12 0000",
        "1e3",
        ">1000",
        "nan",
        "inf",
        "--5",
        "+",
        ".",
        "5.",
        "٣",
        "９",
        "²",
        True,
        None,
        float("nan"),
        float("inf"),
        10**400,
        "9" * 400,
        "1-2",
    ],
)
def test_anything_else_is_refused_with_a_sentence(text):
    """What is no number, or could be two, raises NotANumber with one short sentence."""
    with pytest.raises(NotANumber) as caught:
        parse_number(text)

    assert str(caught.value).endswith(".")
    assert len(str(caught.value)) < 160


@pytest.mark.parametrize(
    ("text", "meanings"),
    [
        ("1,200", "1200 or 1.2"),
        ("1.200", "1200 or 1.2"),
        ("1.025", "1025 or 1.0250"),
        ("12.000", "12000 or 12"),
    ],
)
def test_one_separator_before_three_digits_is_asked_back(text, meanings):
    """It is thousands in one country and decimals in another: the surveyor is asked which."""
    with pytest.raises(NotANumber, match=rf"two ways: write {meanings}\.") as caught:
        parse_number(text)

    assert text == caught.value.text
    for written in meanings.split(" or "):
        parse_number(written)


@given(st.floats(min_value=-1e6, max_value=1e6))
def test_a_written_number_is_read_back(value):
    """What the program writes into a field can never be asked back."""
    assert parse_number(written_number(value)) == pytest.approx(value, rel=1e-9, abs=1e-300)


@pytest.mark.parametrize(
    ("expected", "value", "unit", "to"),
    [
        (25.4, 1, "in", "mm"),
        (0.3048, 1, "ft", "m"),
        (25.4, 1, "mil", "µm"),
        (-0.4, -18, "°C", "°F"),
        (-40.0, -40, "°F", "°C"),
        (18.0, 10, "K", "F°"),
        (10.0, 18, "F°", "K"),
        (10000.0, 1, "%", "ppm"),
        (1.852, 1, "nmi", "km"),
        (9.80665, 1, "t/m²", "kN/m²"),
        (0.01, 10, "kΩ", "MΩ"),
        (9.6, 9.6, "mm", "mm"),
        (119.826427, 1, "lb/US gal", "kg/m³"),
        (6.289811, 1, "m³", "bbl"),
        (18.0, 1.5, "years", "months"),
        (745.699872, 1, "hp", "W"),
        (735.49875, 1, "metric hp", "W"),
    ],
)
def test_conversion_uses_the_exact_factors(expected, value, unit, to):
    """A conversion gives the number that the definitions of the units give."""
    assert expected == pytest.approx(convert(value, unit, to), rel=1e-7)


def test_a_difference_of_temperatures_never_gets_the_offset():
    """10 K more is 18 F° more, while 10 °C is 50 °F."""
    expected = (18.0, 50.0)
    assert expected == (convert(10, "K", "F°"), convert(10, "°C", "°F"))


@pytest.mark.parametrize(
    ("unit", "to"),
    [
        ("K", "°C"),
        ("°F", "F°"),
        ("mm", "kg"),
        ("kW", "kVA"),
        ("Hz", "rpm"),
        ("years", "h"),
        ("mm", "furlong"),
        ("cubit", "mm"),
        ("dB(A)", "%"),
    ],
)
def test_unlike_or_unknown_units_are_refused(unit, to):
    """A conversion between two quantities, or with an unknown unit, raises WrongUnit."""
    with pytest.raises(WrongUnit) as caught:
        convert(1, unit, to)

    assert isinstance(caught.value, InspectorError)
    assert str(caught.value).endswith(".")


def test_a_value_that_is_no_number_is_not_converted():
    """Not even to its own unit."""
    with pytest.raises(NotANumber):
        convert(float("nan"), "mm", "mm")


@pytest.mark.parametrize(
    ("expected", "unit"),
    [
        (("mm", "in", "mil", "µm"), "mm"),
        (("°C", "°F"), "°C"),
        (("K", "F°"), "K"),
        (("mm/s", "in/s"), "mm/s"),
        (("MΩ", "kΩ", "GΩ"), "MΩ"),
        (("m", "ft", "in"), "m"),
        (("rpm",), "rpm"),
        (("Hz",), "Hz"),
        (("",), None),
        (("%", "ppm"), "%"),
    ],
)
def test_the_asked_unit_leads_its_likes(expected, unit):
    """The units a gauge may show begin with the one the checklist asks for."""
    assert expected == units_like(unit)


def test_every_unit_offered_beside_another_converts_into_it():
    """No list offers a unit that the asked one cannot become."""
    for asked, offered in GAUGES.items():
        assert asked == offered[0]
        for unit in offered:
            assert convert(convert(5, unit, asked), asked, unit) == pytest.approx(5.0)


@pytest.mark.parametrize(
    "unit",
    [
        "mm",
        "µm",
        "m",
        "%",
        "MΩ",
        "kΩ",
        "°C",
        "K",
        "mm/s",
        "V",
        "A",
        "kW",
        "Hz",
        "rpm",
        "bar",
        "h",
        "years",
        "ppm",
        "kg",
        "t",
        "m²",
        "m³",
        "l",
        "dB(A)",
        "kn",
        "days",
        "s",
        "min",
        "deg",
    ],
)
def test_every_unit_a_checklist_may_use_is_known(unit):
    """All units that checklists are allowed to ask for are known."""
    assert unit == units_like(unit)[0]


@pytest.mark.parametrize(
    ("expected", "typed"),
    [
        ("µm", "um"),
        ("µm", "\u03bcm"),
        ("MΩ", "M\u2126"),
        ("°C", "degC"),
        ("", None),
        ("kn", "kts"),
        ("m²", " m2 "),
    ],
)
def test_a_unit_is_known_by_what_people_type(expected, typed):
    """Look-alike code points and plain spellings lead to our one name."""
    assert expected == known_unit(typed)


def test_an_unknown_unit_has_no_likes():
    """An unknown unit is refused rather than offered alone."""
    with pytest.raises(WrongUnit):
        units_like("furlong")


@pytest.mark.parametrize(
    ("expected", "value", "unit", "system"),
    [
        ((1.0, "in"), 25.4, "mm", "us"),
        ((25.4, "mm"), 25.4, "mm", "si"),
        ((25.4, "mm"), 1, "in", "si"),
        ((64.4, "°F"), 18, "°C", "us"),
        ((18.0, "F°"), 10, "K", "us"),
        ((12.5, "%"), 12.5, "%", "us"),
        ((10.0, "kn"), 10, "kn", "us"),
        ((2.0, "MΩ"), 2, "MΩ", "us"),
        ((3.0, ""), 3, None, "us"),
    ],
)
def test_the_report_changes_units_by_system(expected, value, unit, system):
    """Each system shows its own units and leaves alone what has no counterpart."""
    shown, name = in_units(value, unit, system)
    assert (pytest.approx(expected[0]), expected[1]) == (shown, name)


def test_an_unknown_system_is_refused():
    """There are two systems."""
    with pytest.raises(WrongUnit, match="'si' or 'us'"):
        in_units(1, "mm", "imperial")


def test_the_report_never_changes_the_quantity():
    """Every unit of either system's table is alike its counterpart."""
    for table in (TO_SI, TO_US):
        for unit, target in table.items():
            assert QUANTITY[unit] == QUANTITY[target]


@pytest.mark.parametrize(
    ("expected", "value", "unit", "digits"),
    [
        ("9.6 mm", 9.6, "mm", None),
        ("0.42 %", 0.42, "%", None),
        ("−18 °C", -18, "°C", None),
        ("17 %", 17.0, "%", None),
        ("508.8 V", 508.8, "V", None),
        ("9.147 MΩ", 9.1466, "MΩ", None),
        ("8.13 mm", 8.125, "mm", 2),
        ("8.125 mm", 8.125, "mm", None),
        ("7.00 mm", 7, "mm", 2),
        ("0 mm", -0.0, "mm", None),
        ("0 mm", -0.04, "mm", 0),
        ("1000 V", 999.96, "V", None),
        ("12\u00a0346 m²", 12345.6, "m²", None),
        ("3", 3, None, None),
        ("0.00042 mm", 0.00042, "mm", None),
        ("1234.6 kg", 1234.56, "kg", 1),
        ("4.88 mm", 4.875, "mm", 2),
        ("−0.5 mm", -0.46, "mm", 1),
    ],
)
def test_a_value_is_shown_with_its_unit_and_no_rubbish(expected, value, unit, digits):
    """Four digits without trailing zeros, or the decimals asked for, half rounded up."""
    assert expected == show(value, unit, digits)


def test_a_value_in_an_unknown_unit_is_not_shown():
    """Nothing is printed in a unit nobody knows."""
    with pytest.raises(WrongUnit):
        show(1, "furlong")


def test_a_difference_is_exact_in_decimals():
    """0.3 less 0.1 is 0.2, which it is not in binary."""
    decimal, binary = 0.2, 0.3 - 0.1
    assert decimal == difference(0.3, 0.1)
    assert decimal != binary


@given(st.floats(-1e6, 1e6), st.sampled_from(sorted(GAUGES)))
def test_a_value_survives_there_and_back(value, unit):
    """Converting to any like unit and back gives the value to the last digits."""
    for other in units_like(unit):
        assert value == pytest.approx(
            convert(convert(value, unit, other), other, unit), rel=1e-12, abs=1e-9
        )


@given(st.floats(-1e9, 1e9))
def test_what_is_shown_can_be_typed_again(value):
    """A shown number is read back as nearly the same number."""
    text = show(value, None)
    if re.fullmatch(r"−?[1-9]\d{0,2}\.\d{3}", text):
        text += "0"  # three decimals alone would be asked back
    assert parse_number(text) == pytest.approx(value, rel=1e-3)


def test_degrees_of_angle_are_printed_by_their_sign():
    """Degrees follow the number closely, with and without a span, and can be typed back."""
    span = Quantity(25.0, 30.0, 35.5, "deg")

    assert show(-0.25, "deg") == "−0.25°"
    assert span_text(span, "us") == "25 to 35.5°"
    assert span_text(span, with_unit=False) == "25 to 35.5"
    assert reader_unit("deg") == "°"
    assert known_unit("°") == "deg"
