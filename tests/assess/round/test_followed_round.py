"""The round as it is followed: when it is composed again, and what stays as it was."""

from datetime import UTC, datetime, timedelta

import pytest

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.round.followed_round import (
    AHEAD,
    BEHIND,
    CHANGED,
    composed,
    minutes_ahead,
    out_of_step,
)
from inspector.assess.round.time_left import visit_of
from inspector.record.entry import from_dict
from inspector.record.state import State
from tests.assess.round.vessels import entries_before_the_visit, shipped_library

BEGUN = datetime(2026, 5, 2, 9, 0, tzinfo=UTC)


@pytest.fixture(scope="module")
def library():
    return shipped_library()


class Walk:
    """A vessel of the demo that is walked for an hour, and the clock beside it."""

    def __init__(self, library, **visit):
        self.library, self.now, self.number = library, BEGUN, 100_000
        facts = {"date": "2026-05-02", "off": "10:00", "people": "1", **visit}
        self.state = State(map(from_dict, entries_before_the_visit(library, **facts)))

    def record(self, subject, field, value):
        self.number += 1
        replaces = [head.id for head in self.state.heads(subject, field)]
        entry = {
            "id": f"phone:{self.number}",
            "at": self.now.isoformat(timespec="milliseconds").replace("+00:00", "Z"),
            "device": "phone",
            "who": "QX",
            "subject": subject,
            "field": field,
            "value": value,
            "replaces": replaces,
        }
        self.state.add(from_dict(entry))

    @property
    def visit(self):
        return visit_of(self.state, self.now)

    def composed(self, before=None, person=0):
        assessment = assess(read_inspection(self.state), self.library)
        spaces = [*self.library.spaces]
        return composed(assessment, self.state, spaces, self.visit, self.now, None, before, person)

    def look(self, data, minutes, person=1):
        """Follow the round at its own speed for some minutes."""
        spent = 0
        for stop in data["stops"]:
            if stop["person"] != person:
                continue
            spent += stop["entering"]
            for look in stop["looks"]:
                if spent + look["seconds"] > 60 * minutes:
                    return
                spent += look["seconds"]
                for sheet in look["sheets"]:
                    self.record(f"sheet/{sheet}", "rating", "good")

    def wait(self, minutes):
        self.now += timedelta(minutes=minutes)


@pytest.fixture
def walk(library):
    return Walk(library)


def sheets(data, person=None):
    return [
        sheet
        for stop in data["stops"]
        if person in (None, stop["person"])
        for look in stop["looks"]
        for sheet in look["sheets"]
    ]


def test_who_follows_it_at_its_own_speed_keeps_his_round(walk):
    """Twenty minutes of looks in twenty minutes: nothing has to be composed again."""
    data = walk.composed()
    walk.look(data, 20)
    walk.wait(20)

    assert abs(minutes_ahead(data, walk.state, walk.visit.minutes)) < 2
    assert "" == out_of_step(data, walk.state, walk.visit)


def test_time_that_runs_away_leaves_a_shorter_round(walk):
    """Twenty minutes of looks took half an hour: the rest is composed for what is left."""
    data = walk.composed()
    walk.look(data, 20)
    walk.wait(30)

    assert BEHIND == out_of_step(data, walk.state, walk.visit)
    again = walk.composed(data)
    assert sum(again["seconds"]) <= 60 * walk.visit.minutes
    assert len(sheets(again)) < len(set(sheets(data)) - set(answered(walk)))


def test_time_that_is_won_is_filled(walk):
    """Thirty minutes of looks took twenty: more is looked at than was planned."""
    data = walk.composed()
    walk.look(data, 30)
    walk.wait(20)

    assert AHEAD == out_of_step(data, walk.state, walk.visit)
    again = walk.composed(data)
    assert set(sheets(again)) - set(sheets(data))
    assert again["left"] < data["left"]


def answered(walk):
    return [
        subject.removeprefix("sheet/")
        for subject in walk.state.subjects("sheet/")
        if walk.state.value(subject, "rating")
    ]


@pytest.mark.parametrize(
    ("subject", "field", "value"),
    [
        ("inspection", "state", "dead"),
        ("inspection", "running", "no"),
        ("brief", "need/steering", "unwanted"),
        ("unit/thrusters/another", "name", "Another thruster"),
    ],
)
def test_what_is_said_anew_of_the_visit_changes_it(walk, subject, field, value):
    """At once, whatever the time."""
    data = walk.composed()
    walk.record(subject, field, value)

    assert CHANGED == out_of_step(data, walk.state, walk.visit)


@pytest.mark.parametrize(
    ("subject", "field"),
    [
        ("unit/thrusters/bow-thruster-1", "walked_past"),
        ("inspection", "unseen/phone_1"),
        ("sheet/hull/shell/fairness", "note"),
    ],
)
def test_what_concerns_no_round_changes_none(walk, subject, field):
    """A mark of the walk, a note of the computer, a text."""
    data = walk.composed()
    walk.record(subject, field, "nothing")

    assert "" == out_of_step(data, walk.state, walk.visit)


def test_what_is_left_out_and_what_is_looked_at_are_all_that_is_open(walk):
    """Nothing is hidden: the count is of every open check that is in no stop."""
    walk.look(walk.composed(), 10)
    data = walk.composed()
    assessment = assess(read_inspection(walk.state), walk.library)
    is_open = [
        result.subject
        for system in assessment.systems
        for result in system.whole.results
        if not result.answer and result.rating is None and not result.check.optional
    ]

    assert len(is_open) == data["left"] + len(sheets(data))


def test_of_several_people_one_part_is_composed_again_within_its_borders(library):
    """What the others have answered may not be known here, so that their parts stay."""
    walk = Walk(library, people="3")
    data = walk.composed()
    walk.look(data, 10, person=2)
    walk.wait(30)
    assert BEHIND == out_of_step(data, walk.state, walk.visit, person=2)

    again = walk.composed(data, person=2)

    for person in (1, 3):
        assert sheets(data, person) == sheets(again, person)
        assert data["seconds"][person - 1] == again["seconds"][person - 1]
    stations = {
        (stop["space"], sheet.split("/")[0])
        for stop in again["stops"]
        if stop["person"] == 2
        for sheet in stop["looks"][0]["sheets"][:1]
    }
    assert stations <= {tuple(one.split("/")) for one in data["shares"][1]}
    assert again["seconds"][1] <= 60 * walk.visit.minutes
    assert len(sheets(again)) == len(set(sheets(again)))


def test_with_another_number_of_people_all_parts_are_drawn_anew(library):
    """The borders of two are not those of three."""
    walk = Walk(library, people="2")
    data = walk.composed()
    walk.record("inspection", "people", "3")

    assert 3 == len(walk.composed(data, person=1)["seconds"])
