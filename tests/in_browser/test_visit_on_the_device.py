"""The visit through the door of the device: the same round, looks and words as on the computer."""

import json
from datetime import datetime, timedelta

import pytest

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.next_look.advice import next_look
from inspector.assess.next_look.advice_data import advice_data
from inspector.assess.round.followed_round import BEHIND, composed
from inspector.assess.round.time_left import visit_of
from inspector.in_browser import door
from inspector.record.entry import from_dict
from inspector.record.state import State
from tests.assess.round.vessels import entries_before_the_visit, shipped_library

NOW = datetime.fromisoformat("2026-05-02T09:00:00+02:00")
ASKED = {"now": NOW.isoformat(), "here": None, "before": None, "person": 0, "anew": False}


@pytest.fixture(scope="module")
def library():
    return shipped_library()


@pytest.fixture(scope="module")
def entries(library):
    return entries_before_the_visit(library, date="2026-05-02", off="09:45", people="2")


@pytest.fixture
def opened(library, entries):
    """A device that knows the vessel."""
    asked("open", library.tables)
    asked("add", entries)


def asked(question, given):
    said = json.loads(door.answer(question, json.dumps(given)))
    assert "problem" not in said, said
    return said["answer"]


def plain(data):
    """As it travels."""
    return json.loads(json.dumps(data))


def test_the_round_is_the_computers(opened, library, entries):
    """Two people, three quarters of an hour; nobody has to ask twice for the same."""
    state = State(map(from_dict, entries))
    assessment, visit = assess(read_inspection(state), library), visit_of(state, NOW)
    there = composed(assessment, state, [*library.spaces], visit, NOW)

    here = asked("follow", ASKED)

    assert plain(there) == here["round"]
    assert (True, 45.0, "asked") == (here["known"], here["minutes"], here["why"])
    again = asked("follow", {**ASKED, "before": here["round"]})
    assert ("", 0.0, False) == (again["why"], again["ahead"], "round" in again)


def test_a_round_that_no_longer_fits_comes_composed_again(opened):
    """Ten minutes passed, and nobody looked at anything."""
    first = asked("follow", ASKED)["round"]
    later = {**ASKED, "before": first, "now": (NOW + timedelta(minutes=10)).isoformat()}

    found = asked("follow", later)

    assert (BEHIND, -10.0) == (found["why"], found["ahead"])
    assert max(found["round"]["seconds"]) <= 35 * 60


def test_where_nobody_said_how_long_the_visit_is_there_is_no_round(library, entries):
    """The device says so, and assesses nothing for it."""
    asked("open", library.tables)
    asked("add", [one for one in entries if one["field"] not in ("off", "aboard")])

    assert {"known": False} == asked("follow", ASKED)


def test_the_next_looks_are_the_computers(opened, library, entries):
    """For half an hour from the engine room; an unknown space is no place to start from."""
    assessment = assess(read_inspection(State(map(from_dict, entries))), library)
    for here, from_space in (("engine-room", "engine-room"), ("moon", "")):
        there = advice_data(
            next_look(assessment, 30, here=from_space, settings=assessment.settings)
        )
        assert plain(there) == asked("looks", {"minutes": 30, "here": here})
        assert there["looks"]


def test_condition_and_word_change_with_an_answer(opened, library):
    """Every system has its line; what is recorded meanwhile counts."""
    before = asked("words", None)
    subject = "sheet/steering/steering-gear/oil-and-leaks"
    answer = {
        "id": "phone:1",
        "at": "2026-05-02T07:10:00.000Z",
        "device": "phone",
        "who": "QX",
        "subject": subject,
        "field": "rating",
        "value": "failed",
        "replaces": [],
    }
    unit = {**answer, "id": "phone:2", "subject": "unit/steering/steering-gear", "field": "name"}
    asked("add", [{**unit, "value": "Steering gear"}, answer])
    after = asked("words", None)

    assert {"Nothing is looked at yet."} == set(before["sentences"])
    changed = [
        one["id"]
        for one, other in zip(after["systems"], before["systems"], strict=True)
        if one["seen"] != other["seen"]
    ]
    assert ["steering"] == changed
