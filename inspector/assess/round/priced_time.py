"""What one person could take of the looks, if every second had a price.

The price at which the bound of Lagrange is lowest gives a choice that is nearly the best, and a
bound that no choice exceeds.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

# Equal sums must not be taken for better ones.
TOLERANCE = 1e-9
# Halvings of the price of a second: the bound is then as close as floats allow.
_HALVINGS = 40
_CLOSE = 1e-6
NOT_TAKEN = -1


@dataclass(frozen=True)
class Option:
    """One way to take a look.

    Parameters
    ----------
    seconds : int
        What it takes [s]; more than 0.
    worth : float
        More than 0.
    """

    seconds: int
    worth: float


@dataclass(frozen=True)
class Room:
    """One stop of the walk with the looks that could be taken there.

    Parameters
    ----------
    entering : int
        What it takes to come there [s].
    looks : tuple of tuple of Option
        For each look the ways to take it, of which at most one is chosen.
    """

    entering: int
    looks: tuple[tuple[Option, ...], ...]


@dataclass(frozen=True)
class Choice:
    """What one person takes.

    Parameters
    ----------
    ways : tuple of tuple of int
        For each room and look the number of the way, NOT_TAKEN where it is left out.
    seconds : int
        Entering included [s].
    worth : float
    """

    ways: tuple[tuple[int, ...], ...]
    seconds: int
    worth: float


def bound(rooms: Sequence[Room], seconds: int, price: float) -> float:
    """Return a worth that no choice within the time can exceed, by Lagrange's relaxation.

    Parameters
    ----------
    rooms : sequence of Room
    seconds : int
        The time there is [s].
    price : float
        What a second is taken to be worth; every price gives a bound, the best one the lowest.

    Returns
    -------
    float
    """
    return price * seconds + math.fsum(max(surplus_of(room, price), 0.0) for room in rooms)


def lowest_bound(rooms: Sequence[Room], seconds: int) -> float:
    """Return the lowest of the bounds of ``bound``.

    Parameters
    ----------
    rooms : sequence of Room
    seconds : int
        The time there is [s].

    Returns
    -------
    float
    """
    if choice_at(rooms, 0.0).seconds <= seconds:
        return bound(rooms, seconds, 0.0)
    price, _ = best_price(rooms, seconds)
    return bound(rooms, seconds, price)


def seconds_at(rooms: Sequence[Room], price: float) -> list[int]:
    """Return how long each room takes if a second is worth a price [s]; 0 where it is left out.

    Parameters
    ----------
    rooms : sequence of Room
    price : float

    Returns
    -------
    list of int
    """
    return [_room_at(room, price)[1] for room in rooms]


def surplus_of(room: Room, price: float) -> float:
    """What a room is worth above the price of its seconds; it may be negative."""
    inside = 0.0
    for options in room.looks:
        inside += max(0.0, *(one.worth - price * one.seconds for one in options))
    return inside - price * room.entering


def _best_way(options: Sequence[Option], price: float) -> int:
    """The number of the way with the greatest surplus; of equal ones the first."""
    best, way = 0.0, NOT_TAKEN
    for number, one in enumerate(options):
        surplus = one.worth - price * one.seconds
        if surplus > best + TOLERANCE * one.worth:
            best, way = surplus, number
    return way


def _room_at(room: Room, price: float) -> tuple[tuple[int, ...], int, float]:
    """Ways, seconds and worth of a room at a price."""
    ways = tuple(_best_way(options, price) for options in room.looks)
    taken = [options[way] for options, way in zip(room.looks, ways, strict=True) if way >= 0]
    worth = math.fsum(one.worth for one in taken)
    seconds = room.entering + sum(one.seconds for one in taken)
    if not taken or worth <= price * seconds:
        return (NOT_TAKEN,) * len(room.looks), 0, 0.0
    return ways, seconds, worth


def choice_at(rooms: Sequence[Room], price: float) -> Choice:
    found = [_room_at(room, price) for room in rooms]
    return Choice(
        tuple(ways for ways, _, _ in found),
        sum(seconds for _, seconds, _ in found),
        math.fsum(worth for _, _, worth in found),
    )


def best_price(rooms: Sequence[Room], seconds: int) -> tuple[float, Choice]:
    """The price at which the bound is lowest, and the choice at it, which fits."""
    low = 0.0
    high = max(one.worth / one.seconds for room in rooms for each in room.looks for one in each)
    fits = choice_at(rooms, high)
    for _ in range(_HALVINGS):
        price = (low + high) / 2
        found = choice_at(rooms, price)
        if found.seconds > seconds:
            low = price
        else:
            high, fits = price, found
        if high - low < _CLOSE * high:
            break
    return high, fits


def filled(rooms: Sequence[Room], found: Choice, seconds: int) -> Choice:
    """The choice with what still fits, the most worth for its seconds first."""
    ways = [list(each) for each in found.ways]
    left, worth = seconds - found.seconds, found.worth
    for _, place, look, way in _steps(rooms):
        room, before = rooms[place], ways[place][look]
        options = room.looks[look]
        entering = 0 if any(each >= 0 for each in ways[place]) else room.entering
        old = options[before] if before >= 0 else Option(0, 0.0)
        more = options[way].seconds - old.seconds + entering
        gained = options[way].worth - old.worth
        if gained > TOLERANCE and more <= left:
            ways[place][look] = way
            left, worth = left - more, worth + gained
    return Choice(tuple(map(tuple, ways)), seconds - left, worth)


def _steps(rooms: Sequence[Room]) -> list[tuple[float, int, int, int]]:
    """Every way of every look, the most worth for its seconds first."""
    return sorted(
        (-one.worth / one.seconds, place, look, way)
        for place, room in enumerate(rooms)
        for look, options in enumerate(room.looks)
        for way, one in enumerate(options)
    )
