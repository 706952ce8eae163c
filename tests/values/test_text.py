"""Small things of language: groups of digits, capitals, names in a row."""

import pytest

from inspector.values.formatting import amount, grouped
from inspector.values.text import capital, listed


@pytest.mark.parametrize(
    ("expected", "value"),
    [("999", 999), ("1 000", 1000), ("1 234 568", 1234567.6), ("−2 900", -2900), ("0", 0.4)],
)
def test_thousands_are_set_apart_by_a_space_that_does_not_break(expected, value):
    """A number is never cut in two at the end of a line."""
    assert expected.replace(" ", "\u00a0") == grouped(value)


@pytest.mark.parametrize(
    ("expected", "value"), [("250", 250), ("250.50", 250.5), ("1\u00a0000", 1000.0), ("0", 0)]
)
def test_a_sum_shows_hundredths_only_where_there_are_any(expected, value):
    """Whole sums stay short."""
    assert expected == amount(value)


@pytest.mark.parametrize(
    ("expected", "text"),
    [("Main engine of the USV", "main engine of the USV"), ("EPIRB", "EPIRB"), ("", "")],
)
def test_only_the_first_letter_changes(expected, text):
    """Abbreviations keep their capitals."""
    assert expected == capital(text)


@pytest.mark.parametrize(
    ("expected", "names"),
    [
        ("", []),
        ("hull", ["hull"]),
        ("hull or deck", ["hull", "deck"]),
        ("a, b or c", ["a", "b", "c"]),
    ],
)
def test_names_stand_in_a_row(expected, names):
    """The word stands before the last one only."""
    assert expected == listed(names, "or")


@pytest.mark.parametrize("value", [None, "many"])
def test_what_is_no_number_is_not_grouped(value):
    """A text or nothing at all is a mistake of the caller's."""
    with pytest.raises((TypeError, ValueError)):
        grouped(value)
