"""How much of a visit is left, and the act that records what cannot be had."""

from datetime import UTC, datetime

import pytest

from inspector.record.entry import from_dict
from inspector.record.state import State
from inspector.services.data_folder import open_folder
from inspector.services.units_on_board import units_of
from inspector.services.visit.rounds import (
    USUAL_MINUTES,
    acted_on,
    made_round,
    put_away,
    take_back,
    visit_of,
)
from inspector.values.errors import InspectorError

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


@pytest.fixture
def data(tmp_path):
    opened = open_folder(tmp_path / "data")
    yield opened
    opened.close()


@pytest.fixture
def inspection(data):
    """With one generator set on board, met in cold lay-up."""
    begun = data.begin()
    facts = [("inspection", "state", "cold lay-up"), ("unit/power-generation/one", "name", "Set 1")]
    begun.record("QX", facts)
    assert units_of(begun.state, data.library_of(begun))["power-generation"]
    return begun


def test_what_cannot_be_had_is_recorded_and_taken_back_in_one_act(data, inspection):
    """Each with its reason; afterwards all of it is as it was."""
    before = made_round(data, inspection, 60, 1)
    first, last = put_away(inspection, "QX", before.not_had)
    recorded = {subject: inspection.state.value(subject, "rating") for subject in before.not_had}

    assert {f"not seen: {reason}" for reason in before.not_had.values()} == set(recorded.values())
    assert {} == made_round(data, inspection, 60, 1).not_had
    assert len(before.not_had) == take_back(inspection, "QX", first, last)
    assert before == made_round(data, inspection, 60, 1)


def test_what_somebody_answered_since_is_not_taken_back(data, inspection):
    """The undo is of the act, and of nothing that came after it."""
    not_had = made_round(data, inspection, 60, 1).not_had
    first, last = put_away(inspection, "QX", not_had)
    answered = next(iter(not_had))
    inspection.record("AB", [(answered, "rating", "poor")])

    assert len(not_had) - 1 == take_back(inspection, "QX", first, last)
    assert "poor" == inspection.state.value(answered, "rating")


@pytest.mark.parametrize(("first", "last"), [("", ""), ("other:1", "other:9"), ("x", "y:z")])
def test_what_is_no_act_of_this_computer_takes_nothing_back(inspection, first, last):
    """An address can be typed by anybody."""
    assert [] == acted_on(inspection, first, last)


@pytest.mark.parametrize("minutes", [-1, 1e9])
def test_minutes_that_nobody_has_are_refused(data, inspection, minutes):
    """With a sentence."""
    with pytest.raises(InspectorError, match="must be 0 to"):
        made_round(data, inspection, minutes, 1)
