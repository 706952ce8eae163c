"""Several people: stretches of the walk, compared with trying every division."""

import random
from itertools import combinations_with_replacement

import pytest

from inspector.assess.round.priced_time import Option
from inspector.assess.round.shared_walk import Station, divided, rooms_of
from tests.assess.round.test_best_choice import enumerated


def drawn(seed: int, count: int = 4) -> list[Station]:
    """Stations of one or two looks, some of them in one space."""
    luck = random.Random(seed)
    spaces = sorted(luck.choice("abcdefgh") for _ in range(count))
    return [
        Station(
            space,
            f"system-{number}",
            60,
            tuple(
                (Option(5 * luck.randint(2, 40), luck.random() + 0.1),)
                for _ in range(luck.randint(1, 2))
            ),
        )
        for number, space in enumerate(spaces)
    ]


def worth(stations: list[Station], seconds: int, people: int) -> float:
    """What a round is worth."""
    return sum(stretch.worth for stretch in divided(stations, seconds, people))


def every_division(stations: list[Station], seconds: int, people: int) -> float:
    """The greatest worth of all divisions of the walk."""
    found = []
    for borders in combinations_with_replacement(range(len(stations) + 1), people - 1):
        ends = zip((0, *borders), (*borders, len(stations)), strict=True)
        parts = [rooms_of(stations[first:last]) for first, last in ends]
        found.append(sum(enumerated(rooms, seconds) for rooms in parts))
    return max(found)


@pytest.mark.parametrize("people", [1, 2, 3])
@pytest.mark.parametrize("seed", range(12))
def test_few_stations_are_divided_exactly(seed, people):
    """As good as the best of all divisions and all combinations."""
    stations = drawn(seed)

    best = every_division(stations, 240, people)
    assert best == pytest.approx(worth(stations, 240, people), abs=1e-7)


@pytest.mark.parametrize("seed", range(6))
def test_more_time_never_makes_it_worth_less(seed):
    """Whatever the number of people."""
    stations = drawn(seed, count=40)
    for people in (1, 2, 3):
        worths = [worth(stations, seconds, people) for seconds in range(0, 1500, 115)]
        assert all(less <= more + 1e-9 for less, more in zip(worths, worths[1:], strict=False))


@pytest.mark.parametrize("seed", range(6))
def test_more_people_never_make_it_worth_less(seed):
    """Whatever the time; also from few divisions, which are all tried, to many."""
    for count in (5, 40):
        stations = drawn(seed, count)
        for seconds in (200, 700):
            worths = [worth(stations, seconds, people) for people in range(1, 6)]
            assert all(less <= more + 1e-9 for less, more in zip(worths, worths[1:], strict=False))


def test_everybody_has_one_stretch_and_together_they_have_all():
    """No station is forgotten, and none is walked twice."""
    stretches = divided(drawn(3, count=40), 900, 3)
    ends = [(stretch.first, stretch.last) for stretch in stretches]

    assert 0 == ends[0][0]
    assert 40 == ends[-1][1]
    assert all(before[1] == after[0] for before, after in zip(ends, ends[1:], strict=False))


def test_a_space_of_two_systems_is_entered_once_by_one_person():
    """The way is counted by the door and not by the system."""
    look = (Option(60, 1.0),)
    stations = [Station("engine-room", name, 60, (look,)) for name in ("pumps", "engines")]

    assert 180 == divided(stations, 600, 1)[0].seconds


def test_of_equal_divisions_the_one_that_is_done_first_is_taken():
    """Two people who have time for everything share it, instead of one waiting for the other."""
    look = (Option(300, 1.0),)
    stations = [Station(name, "hull", 0, (look,)) for name in "abcd"]

    assert [600, 600] == [stretch.seconds for stretch in divided(stations, 3600, 2)]
