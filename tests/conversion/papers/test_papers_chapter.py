"""The chapter on papers: windows are dates, and days are figures."""

from datetime import date

import pytest

from inspector.assess.papers.certificates import Survey
from inspector.conversion.papers.calculation import Service
from inspector.conversion.papers.chapter import chapter
from inspector.conversion.papers.presentation import service_drawing, services_table, window
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import case

DAY = date(2031, 5, 4)


def test_no_certificate_is_one_sentence_and_a_gap():
    """Nothing is known of the next surveys, and what to enter is named."""
    found = chapter(case())

    assert "No certificate is recorded" in found.answer
    assert ["Certificates"] == [gap.name for gap in found.gaps]
    assert () == found.figure_tables


@pytest.mark.parametrize(
    ("opens", "expected"),
    [
        (None, "by 2031-08-04"),
        (date(2031, 2, 4), "2031-02-04 to 2031-08-04"),
    ],
)
def test_a_window_has_one_end_or_two(opens, expected):
    """Where only a last day exists, no first one is made up."""
    survey = Survey("annual", 1, opens, date(2031, 8, 4), "in window", 92)

    assert expected == cell_text(window(survey))


@pytest.mark.parametrize(("persons", "warned"), [("12", False), ("13", True), ("many", False)])
def test_more_than_twelve_persons_are_warned_of(persons, warned):
    """12 is on this side of the limit, 13 is not, and a word is no number."""
    found = chapter(case(brief={"persons": persons}))

    assert warned == any("passenger ship" in warning for warning in found.warnings)


def test_services_are_listed_and_drawn_by_their_dates():
    """The date stays a date until it is read."""
    service = Service("Rafts: service", date(2031, 7, 1), "due")
    (drawn,) = service_drawing([service], DAY)

    assert (("Rafts: service", date(2031, 7, 1), "due"),) == services_table([service]).rows
    assert "Rafts: service due, 2031-07-01" == cell_text(drawn.described)
    assert [] == list(service_drawing([], DAY))
