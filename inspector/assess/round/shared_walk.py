"""The looks of a visit divided among its people: each walks one stretch of the way.

Nobody goes back and forth, and a stop with more work than one person can do is divided between two
at the border of two systems. Which borders are tried depends on the looks alone and not on the
time, and one person more always has the borders of one less: therefore neither a minute more nor a
person more ever makes a round worth less.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement, groupby
from math import comb

from inspector.assess.round.best_choice import best_choice
from inspector.assess.round.priced_time import (
    TOLERANCE,
    Choice,
    Option,
    Room,
    bound,
    seconds_at,
)

# So few divisions are all tried, which is exact.
MOST_TRIED = 30
# For more, the way is divided into equal parts at so many prices of a second.
_PRICES = 4

# Where one person ends and the next begins: numbers of stations, in order.
Borders = tuple[int, ...]


@dataclass(frozen=True)
class Station:
    """What one system asks at one stop: the smallest part that is not divided.

    Parameters
    ----------
    space, system : str
        Ids.
    entering : int
        What it takes to come to the space; everybody who comes there takes it once [s].
    looks : tuple of tuple of Option
        For each look its ways.
    """

    space: str
    system: str
    entering: int
    looks: tuple[tuple[Option, ...], ...]


@dataclass(frozen=True)
class Stretch:
    """What one person does.

    Parameters
    ----------
    first, last : int
        The stations from ``first`` up to, and without, ``last``.
    ways : tuple of tuple of int
        For each of them and each of its looks the number of the way, -1 where it is left out.
    seconds : int
        Entering included [s].
    worth : float
    """

    first: int
    last: int
    ways: tuple[tuple[int, ...], ...]
    seconds: int
    worth: float


def divided(stations: Sequence[Station], seconds: int, people: int) -> tuple[Stretch, ...]:
    """Divide the way among people and choose for each what is worth most within the time.

    Parameters
    ----------
    stations : sequence of Station
        In walking order; those of one space are neighbours.
    seconds : int
        The time each of them has [s].
    people : int

    Returns
    -------
    tuple of Stretch
        One for each of the people. The best of the divisions that are tried; each stretch is exact.
    """
    walk = _Walk(stations, seconds)
    best: tuple[Stretch, ...] = ()
    best_rank = (-1.0, 0)
    for limit, borders in walk.by_bound(_divisions(stations, people)):
        # What follows cannot reach the best one any more.
        if limit < best_rank[0] - TOLERANCE:
            break
        found = walk.stretches(borders)
        worth = math.fsum(one.worth for one in found)
        # Of equal ones that in which the last to finish is done first.
        rank = (worth, -max(one.seconds for one in found))
        close = abs(worth - best_rank[0]) <= TOLERANCE
        if worth > best_rank[0] + TOLERANCE or (close and rank[1] > best_rank[1]):
            best, best_rank = found, rank
    return best


class _Walk:
    """The stations with what was calculated of their stretches."""

    def __init__(self, stations: Sequence[Station], seconds: int):
        self.stations = stations
        self.seconds = seconds
        self.prices = _prices(stations)
        self._best: dict[tuple[int, int], Stretch] = {}
        self._limits: dict[tuple[int, int], float] = {}

    def by_bound(self, divisions: list[Borders]) -> list[tuple[float, Borders]]:
        """The divisions with a bound of their worth, the most promising first."""
        ranked = [(math.fsum(map(self._limit, self._ends(one))), one) for one in divisions]
        ranked.sort(key=lambda pair: (-pair[0], pair[1]))
        return ranked

    def _ends(self, borders: Borders) -> list[tuple[int, int]]:
        return list(zip((0, *borders), (*borders, len(self.stations)), strict=True))

    def _limit(self, ends: tuple[int, int]) -> float:
        if ends not in self._limits:
            rooms = rooms_of(self.stations[slice(*ends)])
            bounds = [bound(rooms, self.seconds, price) for price in (0.0, *self.prices)]
            self._limits[ends] = min(bounds)
        return self._limits[ends]

    def stretches(self, borders: Borders) -> tuple[Stretch, ...]:
        """The best stretch between every two borders."""
        return tuple(self._stretch(ends) for ends in self._ends(borders))

    def _stretch(self, ends: tuple[int, int]) -> Stretch:
        if ends not in self._best:
            own = self.stations[slice(*ends)]
            found = best_choice(rooms_of(own), self.seconds)
            ways = _by_station(own, found)
            self._best[ends] = Stretch(*ends, ways, found.seconds, found.worth)
        return self._best[ends]


def rooms_of(stations: Sequence[Station]) -> list[Room]:
    """Return the stations of each space as one room, entered once.

    Parameters
    ----------
    stations : sequence of Station

    Returns
    -------
    list of Room
    """
    found = []
    for _, group in groupby(stations, key=lambda station: station.space):
        own = list(group)
        looks = tuple(options for station in own for options in station.looks)
        found.append(Room(own[0].entering, looks))
    return found


def _by_station(stations: Sequence[Station], found: Choice) -> tuple[tuple[int, ...], ...]:
    """The ways of a choice, by station again."""
    in_order = [way for ways in found.ways for way in ways]
    parts = []
    for station in stations:
        parts.append(tuple(in_order[: len(station.looks)]))
        in_order = in_order[len(station.looks) :]
    return tuple(parts)


def _divisions(stations: Sequence[Station], people: int) -> list[Borders]:
    """Every division that is tried; that of one person more can always be made of one of these."""
    count = len(stations)
    if comb(count + people - 1, people - 1) <= MOST_TRIED:
        return list(combinations_with_replacement(range(count + 1), people - 1))
    prices = _prices(stations)
    found = {_equal_parts(stations, people, price) for price in prices}
    middle = _seconds_by_station(stations, prices[len(prices) // 2])
    for fewer in _divisions(stations, people - 1):
        found.add(_with_one_more(fewer, middle))
    return sorted(found)


def _prices(stations: Sequence[Station]) -> list[float]:
    """Prices of a second at which more and more of the looks are worth it."""
    rates = sorted(
        one.worth / one.seconds
        for station in stations
        for options in station.looks
        for one in options
    )
    if not rates:
        return [0.0]
    return [rates[len(rates) * part // (_PRICES + 1)] for part in range(1, _PRICES + 1)]


def _seconds_by_station(stations: Sequence[Station], price: float) -> list[int]:
    """What each station takes at a price; entering counts at the first one of its space."""
    found = []
    for _, group in groupby(stations, key=lambda station: station.space):
        own = list(group)
        times = seconds_at([Room(0, station.looks) for station in own], price)
        if any(times):
            times[0] += own[0].entering
        found += times
    return found


def _equal_parts(stations: Sequence[Station], people: int, price: float) -> Borders:
    """The borders that give everybody as much to do, as nearly as stations allow."""
    times = _seconds_by_station(stations, price)
    return tuple(_border(times, part / people) for part in range(1, people))


def _border(times: Sequence[int], share: float) -> int:
    """The border before which a share of the time is spent, as nearly as can be."""
    aim, spent, nearest = share * sum(times), 0, 0
    for number, time in enumerate(times):
        if abs(spent + time - aim) < abs(spent - aim):
            nearest = number + 1
        spent += time
        if spent >= aim:
            break
    return nearest


def _with_one_more(borders: Borders, times: Sequence[int]) -> Borders:
    """The borders with the longest part divided in two."""
    ends = list(zip((0, *borders), (*borders, len(times)), strict=True))
    first, last = max(ends, key=lambda pair: (sum(times[slice(*pair)]), -pair[0]))
    middle = first + _border(times[first:last], 0.5)
    return tuple(sorted((*borders, middle)))
