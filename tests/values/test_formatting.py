"""One formatter for all figures: the reader's units, money, dates and what is not known."""

from datetime import date

import pytest

from inspector.values.cell_text import cell_text, figure, heading_text, table_cell_text
from inspector.values.quantity import Money, Quantity, joined, sentence


@pytest.mark.parametrize(
    ("expected", "value", "unit", "digits"),
    [
        ("4971 long ton", 5051.0, "t", 0),
        ("79.8 long ton", 81.05, "t", 1),
        ("0.49 ft", 0.15, "m", 2),
        ("1 535 800 US gal", 5813.8, "m³", 0),
        ("47 200 lbf", 210.0, "kN", 0),
        ("3662 hp", 2731.0, "kW", 0),
        ("12.3 kn", 12.34, "kn", 1),
        ("68 °F", 20.0, "°C", 0),
    ],
)
def test_a_converted_figure_claims_about_as_much_as_before(expected, value, unit, digits):
    """A cubic metre is some hundred gallons, a hundredth of a metre some hundredths of a foot."""
    assert expected == figure(value, unit, "us", digits).replace("\u00a0", " ")


@pytest.mark.parametrize("system", ["si", "us"])
def test_all_cells_of_a_column_have_the_same_decimals(system):
    """A column of one unit and one number of digits lines up in either system."""
    texts = [figure(value, "m", system, 2) for value in (0.5, 12.25, 130.0)]
    assert {2} == {len(text.split()[0].partition(".")[2]) for text in texts}


@pytest.mark.parametrize(
    ("expected", "cell"),
    [
        ("–", None),
        ("", ""),
        ("3", 3),
        ("9.6", Quantity.exact(9.6, "t")),
        ("1 to 2", Quantity(1, None, 2, "t")),
        ("+0.5", Quantity.exact(0.5, "t", signed=True)),
        ("1 200 to 1 500", Money(1234, None, 1456, "EUR")),
        ("2031-05-04", date(2031, 5, 4)),
    ],
)
def test_a_cell_below_a_heading_has_no_unit(expected, cell):
    """The heading names unit or currency, and a figure that is not known is a dash."""
    assert expected == table_cell_text(cell, unit="t").replace("\u00a0", " ")


def test_a_heading_names_the_unit_of_its_reader():
    """A currency stays, degrees are printed by their sign, and no unit adds nothing."""
    assert ["mass, t", "mass, long ton", "cost, EUR", "heel, °", "name"] == [
        heading_text("mass", "t"),
        heading_text("mass", "t", "us"),
        heading_text("cost", "EUR", "us"),
        heading_text("heel", "deg", "us"),
        heading_text("name", ""),
    ]


def test_figures_in_sentences_are_formatted_for_their_reader():
    """Also within sentences within sentences; what a person typed is never taken for a place."""
    inner = sentence("{mass} of steel", mass=Quantity.exact(1.016, "t"))
    outer = sentence("{name}: {inner}.", name="{mass}", inner=inner)

    assert "{mass}: 1.016 t of steel." == cell_text(outer)
    assert "{mass}: 1 long ton of steel." == cell_text(outer, "us")


def test_parts_in_a_row_are_one_cell():
    """Nothing is empty, one part is itself, and several keep their figures."""
    power = Quantity.exact(745.6998715822702, "kW")

    assert "" == joined([])
    assert power is joined([power])
    assert "1000 hp; – and {more}" == cell_text(joined([power, "– and {more}"], "; "), "us")
