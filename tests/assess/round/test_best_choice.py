"""The best looks of one person: exact, compared with trying every combination."""

import random
from itertools import product

import pytest

from inspector.assess.round.best_choice import best_choice
from inspector.assess.round.priced_time import Choice, Option, Room, bound, lowest_bound


def drawn(seed: int) -> tuple[list[Room], int]:
    """Three rooms with up to three looks of one or two ways, and a time for some of them."""
    luck = random.Random(seed)
    rooms = [
        Room(
            luck.choice([0, 30, 60, 120]),
            tuple(
                tuple(
                    # Rounded, so that equal worths occur as often as on a vessel with like units.
                    Option(5 * luck.randint(1, 60), round(luck.random(), luck.choice([1, 3])) + 0.1)
                    for _ in range(luck.randint(1, 2))
                )
                for _ in range(luck.randint(1, 3))
            ),
        )
        for _ in range(3)
    ]
    return rooms, 5 * luck.randint(0, 200)


def totals(rooms: list[Room], ways: tuple[tuple[int, ...], ...]) -> tuple[int, float]:
    """Seconds and worth of a combination."""
    seconds, worth = 0, 0.0
    for room, own in zip(rooms, ways, strict=True):
        taken = [options[way] for options, way in zip(room.looks, own, strict=True) if way >= 0]
        seconds += sum(one.seconds for one in taken) + (room.entering if taken else 0)
        worth += sum(one.worth for one in taken)
    return seconds, worth


def enumerated(rooms: list[Room], seconds: int) -> float:
    """The greatest worth of all combinations that fit."""
    by_room = [
        list(product(*(range(-1, len(options)) for options in room.looks))) for room in rooms
    ]
    all_totals = (totals(rooms, ways) for ways in product(*by_room))
    return max(worth for spent, worth in all_totals if spent <= seconds)


@pytest.mark.parametrize("seed", range(80))
def test_it_is_as_good_as_the_best_of_all_combinations(seed):
    """Exact, within the time, and its own sums are true."""
    rooms, seconds = drawn(seed)
    found = best_choice(rooms, seconds)

    assert enumerated(rooms, seconds) == pytest.approx(found.worth, abs=1e-7)
    assert found.seconds <= seconds
    assert totals(rooms, found.ways) == (found.seconds, pytest.approx(found.worth))


@pytest.mark.parametrize("seed", range(40))
def test_no_choice_exceeds_a_bound(seed):
    """At any price of a second, and so at the best one."""
    rooms, seconds = drawn(seed)
    best = enumerated(rooms, seconds)

    assert lowest_bound(rooms, seconds) >= best - 1e-9
    assert all(bound(rooms, seconds, price) >= best - 1e-9 for price in (0.0, 0.001, 0.01))


def test_without_time_nothing_is_taken():
    """Nobody enters a room to look at nothing."""
    rooms, _ = drawn(1)

    assert 0 == best_choice(rooms, 0).seconds


def test_without_looks_there_is_nothing_to_take():
    """A vessel that is looked at already."""
    assert Choice((), 0, 0.0) == best_choice([], 600)


def test_entering_is_paid_once():
    """Two looks behind one door fit where two doors would not."""
    look = (Option(60, 1.0),)
    behind_one = [Room(60, (look, look))]
    behind_two = [Room(60, (look,)), Room(60, (look,))]

    assert 2.0 == best_choice(behind_one, 180).worth
    assert 1.0 == best_choice(behind_two, 180).worth
