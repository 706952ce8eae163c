"""The best looks of one person within the time, exactly.

A knapsack in which each look may be taken in one of several ways or not at all, and in which
entering a stop takes time once. The bound of Lagrange settles most looks; what it leaves open is a
dynamic programme over the time that is left.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from inspector.assess.round.priced_time import (
    NOT_TAKEN,
    TOLERANCE,
    Choice,
    Option,
    Room,
    best_price,
    bound,
    choice_at,
    filled,
    surplus_of,
)

# A first look at the few that are nearly worth it finds a choice so good that little is open after
# it; the last share is the whole gap, and makes it exact.
_SHARES = (0.1, 1.0)


def best_choice(rooms: Sequence[Room], seconds: int) -> Choice:
    """Find the choice that is worth most within the time.

    Parameters
    ----------
    rooms : sequence of Room
    seconds : int
        The time there is [s].

    Returns
    -------
    Choice
        Exact; of equal ones a shorter one.

    References
    ----------
    S. Martello and P. Toth, Knapsack Problems, Wiley 1990, chapter 2: reduction of a knapsack by
    upper bounds (*from memory*).
    """
    everything = choice_at(rooms, 0.0)
    if everything.seconds <= seconds:
        return everything
    price, found = best_price(rooms, seconds)
    found = filled(rooms, found, seconds)
    limit = bound(rooms, seconds, price)
    for share in _SHARES:
        gap = limit - found.worth
        open_rooms = _reduced(rooms, price, share * gap + TOLERANCE)
        better = _programme(rooms, open_rooms, seconds)
        if better and better.worth > found.worth + TOLERANCE:
            found = better
    return found


@dataclass(frozen=True)
class _OpenRoom:
    """What is not settled of a room: the ways that each look may still be taken in."""

    place: int
    may_be_left: bool
    ways: tuple[tuple[int, ...], ...]


def _reduced(rooms: Sequence[Room], price: float, gap: float) -> list[_OpenRoom]:
    """The rooms and ways that a choice better than the one found could still have."""
    found = []
    for place, room in enumerate(rooms):
        surplus = surplus_of(room, price)
        # To enter it anyway loses so much that nothing else can make up for it.
        if surplus < -gap:
            continue
        spare = gap - max(-surplus, 0.0)
        ways = tuple(_open_ways(options, price, spare) for options in room.looks)
        found.append(_OpenRoom(place, surplus <= gap, ways))
    return found


def _open_ways(options: Sequence[Option], price: float, spare: float) -> tuple[int, ...]:
    surplus = [(NOT_TAKEN, 0.0)]
    surplus += [(way, one.worth - price * one.seconds) for way, one in enumerate(options)]
    best = max(value for _, value in surplus)
    return tuple(way for way, value in surplus if best - value <= spare)


def _programme(rooms: Sequence[Room], open_rooms: list[_OpenRoom], seconds: int) -> Choice | None:
    """The best choice among what is open, by a dynamic programme; None where nothing fits."""
    settled = sum(_settled_seconds(rooms[one.place], one) for one in open_rooms)
    if settled > seconds:
        return None
    tick = _tick(rooms, open_rooms, seconds - settled)
    best = [0.0] * ((seconds - settled) // tick + 1)
    steps = []
    for one in open_rooms:
        best, step = _with_room(best, rooms[one.place], one, tick)
        steps.append(step)
    ways = [[NOT_TAKEN] * len(room.looks) for room in rooms]
    top = max(best)
    at = next(t for t, value in enumerate(best) if value >= top - TOLERANCE)
    for one, step in zip(reversed(open_rooms), reversed(steps), strict=True):
        at = step.back(at, ways[one.place])
    return _counted(rooms, ways)


def _settled_seconds(room: Room, one: _OpenRoom) -> int:
    """What a room takes in any case, which needs no place in the programme."""
    if one.may_be_left:
        return 0
    return room.entering + sum(
        min(_seconds(options, way) for way in ways)
        for options, ways in zip(room.looks, one.ways, strict=True)
    )


def _seconds(options: Sequence[Option], way: int) -> int:
    return options[way].seconds if way >= 0 else 0


def _worth(options: Sequence[Option], way: int) -> float:
    return options[way].worth if way >= 0 else 0.0


def _tick(rooms: Sequence[Room], open_rooms: list[_OpenRoom], left: int) -> int:
    """The longest step of time in which everything that is open is whole."""
    tick = 0
    for one in open_rooms:
        room = rooms[one.place]
        tick = math.gcd(tick, room.entering)
        for options, ways in zip(room.looks, one.ways, strict=True):
            tick = math.gcd(tick, *(_seconds(options, way) for way in ways))
    return tick or max(left, 1)


@dataclass(frozen=True)
class _Step:
    """What was decided for a room, by time, and how to go back through it."""

    entering: int
    entered: bytearray | None
    # Of each look with more than one open way: its number, the ways with their ticks, the marks.
    looks: tuple[tuple[int, tuple[tuple[int, int], ...], bytearray], ...]
    settled: tuple[int, ...]

    def back(self, at: int, ways: list[int]) -> int:
        """Write the ways taken at a time, and return the time before the room."""
        if self.entered is not None and not self.entered[at]:
            return at
        ways[:] = self.settled
        for look, open_ways, marks in reversed(self.looks):
            way, ticks = open_ways[marks[at]]
            ways[look] = way
            at -= ticks
        return at - self.entering


def _with_room(
    before: list[float], room: Room, one: _OpenRoom, tick: int
) -> tuple[list[float], _Step]:
    """The best sums with one more room, by the time spent."""
    # What is settled of a room that is entered in any case is already off the time.
    base = 0 if one.may_be_left else None
    entering = room.entering // tick if one.may_be_left else 0
    settled, gained, looks = [], 0.0, []
    for number, (options, ways) in enumerate(zip(room.looks, one.ways, strict=True)):
        settled.append(ways[0])
        if len(ways) == 1:
            gained += _worth(options, ways[0])
            entering += _seconds(options, ways[0]) // tick if one.may_be_left else 0
            continue
        least = base if base is not None else min(_seconds(options, way) for way in ways)
        looks.append((number, least, options, ways))
    inside = _later(before, entering, gained)
    done = []
    for number, least, options, ways in looks:
        open_ways = tuple((way, (_seconds(options, way) - least) // tick) for way in ways)
        worths = [_worth(options, way) for way in ways]
        inside, marks = _with_look(inside, open_ways, worths)
        done.append((number, open_ways, marks))
    entered = None
    if one.may_be_left:
        pairs = zip(inside, before, strict=True)
        entered = bytearray(new > old + TOLERANCE for new, old in pairs)
        inside = [max(pair) for pair in zip(inside, before, strict=True)]
    return inside, _Step(entering, entered, tuple(done), tuple(settled))


def _with_look(
    before: list[float], open_ways: Sequence[tuple[int, int]], worths: Sequence[float]
) -> tuple[list[float], bytearray]:
    """The best sums with one more look, and by time the number of the way that makes them."""
    best = _later(before, open_ways[0][1], worths[0])
    marks = bytearray(len(before))
    for number in range(1, len(open_ways)):
        other = _later(before, open_ways[number][1], worths[number])
        for at, (new, old) in enumerate(zip(other, best, strict=True)):
            if new > old + TOLERANCE:
                best[at] = new
                marks[at] = number
    return best, marks


def _later(sums: list[float], ticks: int, gain: float) -> list[float]:
    """The sums after something that takes time and brings a gain."""
    size = len(sums)
    moved = [value + gain for value in sums[: max(size - ticks, 0)]]
    return [-math.inf] * min(ticks, size) + moved


def _counted(rooms: Sequence[Room], ways: list[list[int]]) -> Choice:
    """A choice with its seconds and its worth."""
    seconds, worth = 0, 0.0
    for room, own in zip(rooms, ways, strict=True):
        taken = [options[way] for options, way in zip(room.looks, own, strict=True) if way >= 0]
        seconds += sum(one.seconds for one in taken) + (room.entering if taken else 0)
        worth += math.fsum(one.worth for one in taken)
    return Choice(tuple(map(tuple, ways)), seconds, worth)
