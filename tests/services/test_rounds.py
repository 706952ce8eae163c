"""The act that records what cannot be had."""

import pytest

from inspector.services.data_folder import open_folder
from inspector.services.units_on_board import units_of
from inspector.services.visit.rounds import (
    acted_on,
    made_round,
    put_away,
    take_back,
)
from inspector.values.errors import InspectorError


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
