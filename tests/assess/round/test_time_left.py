"""How much of a visit is left."""

from datetime import UTC, datetime

import pytest

from inspector.assess.round.time_left import USUAL_MINUTES, visit_of
from inspector.record.entry import from_dict
from inspector.record.state import State

NOW = datetime(2026, 5, 2, 14, 0, tzinfo=UTC)
SHEET = "sheet/hull/shell/fairness"


def state_of(*written, at="2026-05-02T13:30:00.000Z"):
    entries = [
        {
            "id": f"tablet:{number}",
            "at": at,
            "device": "tablet",
            "who": "QX",
            "subject": subject,
            "field": field,
            "value": value,
            "replaces": [],
        }
        for number, (subject, field, value) in enumerate(written, 1)
    ]
    return State(map(from_dict, entries))


def visit(**facts):
    return [("inspection", field, value) for field, value in facts.items()]


def test_where_nothing_is_said_a_usual_visit_is_meant():
    """And it is said that nobody said it."""
    found = visit_of(state_of(), NOW)

    assert (USUAL_MINUTES, 1, False) == (found.minutes, found.people, found.known)


def test_hours_aboard_and_people_are_taken_as_typed():
    """A comma is a decimal point as well."""
    found = visit_of(state_of(*visit(aboard="1,5", people="3")), NOW)

    assert (90, 3, True) == (found.minutes, found.people, found.known)


def test_what_has_passed_since_the_first_answer_of_today_is_over():
    """Half an hour of two."""
    written = [*visit(aboard="2"), (SHEET, "rating", "good")]

    assert 90 == visit_of(state_of(*written), NOW).minutes


def test_an_answer_of_another_day_was_another_visit():
    """The second visit has all of its hours."""
    written = [*visit(aboard="2"), (SHEET, "rating", "good")]

    assert 120 == visit_of(state_of(*written, at="2026-05-01T13:30:00.000Z"), NOW).minutes


@pytest.mark.parametrize(("off", "minutes"), [("16:30", 150), ("13:00", 0)])
@pytest.mark.parametrize("day", [{}, {"date": "2026-05-02"}])
def test_the_time_to_be_off_says_what_is_left(off, minutes, day):
    """It goes before the hours aboard; what is past leaves nothing."""
    assert minutes == visit_of(state_of(*visit(off=off, aboard="8", **day)), NOW).minutes


def test_before_the_day_of_the_visit_the_clock_says_nothing():
    """The hours aboard do."""
    facts = {"off": "16:30", "aboard": "4", "date": "2026-05-09"}

    assert 240 == visit_of(state_of(*visit(**facts)), NOW).minutes
