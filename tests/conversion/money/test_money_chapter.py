"""The chapter on money: sums are money in one currency, and amounts stay as they were typed."""

import pytest

from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.money.calculation import Sums
from inspector.conversion.money.chapter import chapter
from inspector.conversion.money.cost_line import CostLine
from inspector.conversion.money.cost_spread import spread
from inspector.conversion.money.estimate_class import class_of_visit, estimate_class
from inspector.conversion.money.presentation import classes_table, drawing, figures
from inspector.values.cell_text import cell_text
from inspector.values.quantity import Money
from tests.conversion.a_case import case

LINES = (CostLine("steel", 40_000, 55_000, 95_000), CostLine("paint", 15_000, 18_000, 30_000))


def sums(**more):
    """The sums of two lines."""
    return Sums(LINES, spread(LINES), more.pop("sales", None), (), 4, **more)


def test_nothing_priced_is_one_sentence():
    """Without a priced line there is no figure, and the missing currency is named."""
    found = chapter(case())

    assert "nothing to sum" in found.answer
    assert () == found.figures
    assert "Currency" in [gap.name for gap in found.gaps]


def test_a_sum_without_a_date_cannot_be_moved_to_another_year():
    """A currency alone leaves the date of the prices open."""
    found = chapter(case({"prices": [{"id": "one", "currency": "EUR"}]}))

    assert ["Date of the prices"] == [gap.name for gap in found.gaps]


def test_every_figure_is_money_in_the_currency():
    """The figures hold numbers; whole thousands are made only where they are read."""
    found = list(figures(sums(sales=Span(1000, 2000, 3000)), "EUR", correlation_given=False))

    assert [Money] * len(found) == [type(figure.cell) for figure in found]
    assert {"EUR"} == {figure.unit for figure in found}
    assert "Cost less sales" == found[-1].name


@pytest.mark.parametrize(("given", "listed"), [(False, 1), (True, 0)])
def test_the_common_cause_is_listed_where_nobody_gave_it(given, listed):
    """A default is named with the figure that depends on it."""
    first = next(figures(sums(), "EUR", correlation_given=given))

    assert listed == len(first.defaults)


def test_the_class_of_this_estimate_is_marked():
    """One of the five classes, with signs that a reader sees."""
    table = classes_table(4)
    rows = [[cell_text(cell, with_unit=False) for cell in row] for row in table.rows]

    assert ["4", "1 to 15", "−30 to −15", "+20 to +50", "this one"] == rows[1]
    assert 1 == sum(row[-1] == "this one" for row in rows)


@pytest.mark.parametrize(("definition", "expected"), [(None, 5), (1, 5), (12, 4), (90, 4)])
def test_a_visit_is_no_better_than_class_four(definition, expected):
    """However much of the work is defined, only a yard's quotation claims more."""
    assert expected == class_of_visit(definition)


@pytest.mark.parametrize("definition", [-1, 101])
def test_a_share_of_definition_beyond_its_ends_is_refused(definition):
    """The sentence names what would be right."""
    with pytest.raises(ConversionError, match="must be 0 to 100 %"):
        estimate_class(definition)


def test_a_long_name_is_shortened_in_the_drawing_with_a_sign():
    """Nothing is cut without a word: the mark of omission follows the last whole word."""
    long = CostLine("Deck: renew the whole of the sheathing and its fastenings", 1, 2, 30)
    found = Sums((long,), spread([long]), None, (), 5)

    assert "Deck: renew the whole of the …" == drawing(found, "EUR").bars[1].label
