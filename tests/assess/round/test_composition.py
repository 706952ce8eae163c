"""The round of a whole vessel of the demo: its value, its people, and what it leaves out."""

import random
import time
from dataclasses import replace

import pytest

from inspector.assess.assessment import assess
from inspector.assess.recorded import RecordedSheet
from inspector.assess.round.composition import compose_round, round_of, stations_of
from inspector.assess.round.look_ways import FULL, GLANCE, visit_looks
from inspector.assess.round.priced_time import lowest_bound
from inspector.assess.round.shared_walk import rooms_of
from tests.assess.round.vessels import LAID_UP, before_the_visit, shipped_library

# Of the bound that no round exceeds.
MOST_LOST = 0.03
# Seconds of the processor for a whole vessel.
MOST_SECONDS = 1.0


@pytest.fixture(scope="module")
def library():
    return shipped_library()


@pytest.fixture(scope="module")
def vessel(library):
    return before_the_visit(library)


@pytest.fixture(scope="module")
def looks(vessel):
    return visit_looks(vessel)


def systems_of(made):
    return {subject.split("/")[1] for subject in made.subjects}


@pytest.mark.parametrize(("minutes", "least", "systems"), [(45, 60, 18), (240, 220, 18)])
def test_the_time_is_filled_with_looks_in_nearly_every_system(
    library, looks, minutes, least, systems
):
    """Three quarters of an hour are sixty looks and not seven of six minutes each."""
    made = round_of(looks, [*library.spaces], minutes)

    assert len(made.subjects) >= least
    assert len(systems_of(made)) >= systems
    assert made.seconds[0] <= 60 * minutes


@pytest.mark.parametrize("people", [1, 2, 3])
@pytest.mark.parametrize("minutes", [20, 45, 240, 1440])
def test_it_is_within_a_few_per_cent_of_what_no_round_exceeds(library, looks, minutes, people):
    """People who share one sum of minutes and pay each door once could not do better."""
    made = round_of(looks, [*library.spaces], minutes, people)
    rooms = rooms_of(stations_of(looks, [*library.spaces]))

    assert made.worth >= (1 - MOST_LOST) * lowest_bound(rooms, 60 * minutes * people)


@pytest.mark.parametrize("people", [2, 3, 4])
@pytest.mark.parametrize("minutes", [45, 240])
def test_people_finish_together(library, looks, minutes, people):
    """Nobody waits on the quay for more than a twentieth of the time."""
    made = round_of(looks, [*library.spaces], minutes, people)

    assert people == len(made.seconds)
    assert max(made.seconds) <= 60 * minutes
    assert min(made.seconds) >= 0.95 * 60 * minutes


def test_more_minutes_and_more_people_never_lower_its_worth(library, looks):
    """Quarter of an hour by quarter of an hour, and one person after the other."""
    spaces = [*library.spaces]
    for people in (1, 2):
        worths = [round_of(looks, spaces, at, people).worth for at in range(15, 160, 15)]
        assert worths == sorted(worths)
    by_people = [round_of(looks, spaces, 45, people).worth for people in range(1, 6)]
    assert by_people == sorted(by_people)


@pytest.mark.parametrize("people", [1, 2, 3])
def test_a_whole_vessel_is_composed_in_a_second(library, looks, people):
    """By the time of the processor, since other work must not fail it."""
    start = time.process_time()
    round_of(looks, [*library.spaces], 240, people)

    assert time.process_time() - start <= MOST_SECONDS


def test_stops_are_in_walking_order_for_each_person(library, looks):
    """Nobody goes back and forth."""
    made = round_of(looks, [*library.spaces], 240, 2)
    order = [*library.spaces]
    places = [(stop.person, order.index(stop.space)) for stop in made.stops]

    assert places == sorted(places)
    assert len(places) == len(set(places))


def test_every_open_check_is_looked_at_or_counted_as_left_out(library, looks):
    """Nothing disappears because there is no time for it."""
    made = round_of(looks, [*library.spaces], 45)

    assert set(looks.still_open) == set(made.left_out) | set(made.subjects)
    assert not set(made.left_out) & set(made.subjects)


def test_a_look_is_taken_once(library, looks):
    """In full or in passing, and by one of the people."""
    made = round_of(looks, [*library.spaces], 600, 3)

    assert len(made.subjects) == len(set(made.subjects))


def test_answered_looks_leave_and_the_rest_is_composed_for_the_time_that_is_left(library, vessel):
    """What is answered is not looked at again; what was left out comes back."""
    spaces = [*library.spaces]
    first = compose_round(vessel, spaces, 45)
    answered = first.subjects[: len(first.subjects) // 2]
    after = _answered(vessel, library, answered)
    second = compose_round(after, spaces, 25, here=first.stops[-1].space)

    assert not set(answered) & set(second.subjects)
    assert second.subjects
    assert set(first.left_out) <= set(second.left_out) | set(second.subjects)


def test_the_same_answers_in_any_order_give_the_same_round(library, vessel):
    """Two devices that have the same entries send nobody two ways."""
    spaces = [*library.spaces]
    answered = list(compose_round(vessel, spaces, 45).subjects)
    one_way = compose_round(_answered(vessel, library, answered), spaces, 45, 2)
    random.Random(4).shuffle(answered)

    assert one_way == compose_round(_answered(vessel, library, answered), spaces, 45, 2)


def _answered(vessel, library, subjects):
    sheets = {subject: RecordedSheet(answer="good", depth="sighted") for subject in subjects}
    return assess(replace(vessel.recorded, sheets=sheets), library)


def test_where_one_stands_costs_no_way(library, looks):
    """The same time is worth more where the work is."""
    spaces = [*library.spaces]
    made = round_of(looks, spaces, 10, here="engine-room")

    assert 0 == next(stop for stop in made.stops if stop.space == "engine-room").entering


def test_what_cannot_be_had_is_in_no_round_but_in_passing(library):
    """A cold vessel runs nothing for us; what a glance shows of it is looked at all the same."""
    found = visit_looks(before_the_visit(library, LAID_UP))
    made = round_of(found, [*library.spaces], 100_000)
    needs = {
        subject: library.systems[subject.split("/")[1]].check(subject.split("/")[3]).needs
        for stop in made.stops
        for one in stop.chosen
        if one.way.kind == FULL
        for subject in one.way.subjects
    }

    assert not {"power", "running", "sea"} & set(needs.values())
    assert set(found.not_had.values()) == {"not run", "no access"}
    assert not set(found.not_had) & set(made.subjects)
    assert any(one.way.kind == GLANCE for stop in made.stops for one in stop.chosen)


def test_a_person_less_than_one_and_minutes_less_than_none_compose_nothing_wrong(library, looks):
    """Whatever was typed, a round is made or is empty."""
    spaces = [*library.spaces]

    assert () == round_of(looks, spaces, -5, 0).stops
    assert 9 == len(round_of(looks, spaces, 5, 40).seconds)
