"""What thrusters, propellers and rudders can give together in one direction, within their power.

A wrench is (force ahead [kN], force to starboard [kN], turning moment [kN·m]); a direction weighs
its three parts. What can be given for every direction describes the whole body of attainable
wrenches.

A propeller pushes across only by its rudder, and only while it drives ahead: side thrust comes
with ahead thrust in the same share, which other units must take. Each propeller with a rudder
therefore goes either ahead or astern, and every choice of these is a case of its own.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import product
from math import hypot, inf
from typing import NamedTuple

Wrench = tuple[float, float, float]
# A gain so small is a rounding error, whose cube would be nothing at all.
LEAST_GAIN = 1e-9
# Two, three and four propellers with rudders are tried in every choice; more never occur.
MOST_RUDDERS = 5


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit in one scenario, and in one choice of ahead and astern.

    Parameters
    ----------
    name : str
    x, y : float
        Forward of midship, and to starboard of the centreline [m].
    rated : float
        Shaft power at full thrust [kW].
    ahead, astern : float
        Full thrust along [kN].
    side : float
        Full thrust across [kN]: of its own, or by the rudder at full ahead.
    all_round : bool
        Whether one thrust may point anywhere.
    rudder : bool
        Whether its side thrust comes with its ahead thrust.
    """

    name: str
    x: float
    y: float
    rated: float
    ahead: float = 0.0
    astern: float = 0.0
    side: float = 0.0
    all_round: bool = False
    rudder: bool = False

    def most(self, direction: Wrench) -> tuple[float, float, float]:
        """Return what it gives at full in a direction, with its forces ahead and to starboard.

        Parameters
        ----------
        direction : tuple of float

        Returns
        -------
        tuple of (float, float, float)
            Weighted gain, force ahead and force to starboard [kN].

        References
        ----------
        Plain mechanics: the moment is x × force across − y × force ahead.
        """
        along = direction[0] - direction[2] * self.y
        across = direction[1] + direction[2] * self.x
        if self.all_round:
            length = hypot(along, across)
            if length == 0:
                return 0.0, 0.0, 0.0
            return self.side * length, self.side * along / length, self.side * across / length
        side = self.side if across >= 0 else -self.side
        # With a rudder the forces come together, without one each for itself.
        if self.rudder:
            gain = self.ahead * along + side * across
            return (gain, self.ahead, side) if gain > 0 else (0.0, 0.0, 0.0)
        push = self.ahead if along >= 0 else -self.astern
        return push * along + side * across, push, side

    def share_of(self, ahead: float, starboard: float) -> float:
        """Return the share of full thrust that forces ahead and to starboard take.

        Parameters
        ----------
        ahead, starboard : float
            Forces [kN].

        Returns
        -------
        float

        References
        ----------
        Plain mechanics; see ``most``.
        """
        if self.all_round:
            return hypot(ahead, starboard) / self.side if self.side else 0.0
        along = self.ahead if ahead >= 0 else self.astern
        parts = ((abs(ahead), along), (abs(starboard), self.side))
        return max(part / full if full else 0.0 for part, full in parts)


@dataclass(frozen=True, slots=True)
class Group:
    """The units of one supply.

    Parameters
    ----------
    name : str
        Of the supply.
    power : float
        Shaft power that it has for all of them [kW].
    units : tuple of Unit
    """

    name: str
    power: float
    units: tuple[Unit, ...]


class Push(NamedTuple):
    """What one unit gives: share of full thrust, gain, forces ahead and to starboard [kN]."""

    group: Group
    unit: Unit
    share: float
    gain: float
    ahead: float
    starboard: float


@dataclass(frozen=True)
class Most:
    """The most in one direction.

    Parameters
    ----------
    gain : float
        The weighted sum.
    wrench : tuple of float
    pushes : tuple of Push
        What each unit gives to it.
    """

    gain: float
    wrench: Wrench
    pushes: tuple[Push, ...]


def most_in(groups: Iterable[Group], direction: Wrench) -> Most:
    """Return the most that all units give together in a direction, within the power they have.

    Parameters
    ----------
    groups : iterable of Group
    direction : tuple of float

    Returns
    -------
    Most

    References
    ----------
    Support function of a convex body; the power of a group is divided by equal marginal gain
    (Lagrange), shaft power as thrust to the power of 1.5 (common practice, no source).
    """
    gain = ahead = starboard = moment = 0.0
    pushes = []
    for group in groups:
        full = [unit.most(direction) for unit in group.units]
        for unit, most, share in zip(group.units, full, _shares(group, full), strict=True):
            push = Push(group, unit, share, *(share * part for part in most))
            gain += push.gain
            ahead += push.ahead
            starboard += push.starboard
            moment += unit.x * push.starboard - unit.y * push.ahead
            pushes.append(push)
    return Most(gain, (ahead, starboard, moment), tuple(pushes))


def _shares(group: Group, pushes: Sequence[tuple[float, float, float]]) -> list[float]:
    """Return the share of full thrust of each unit, such that the power of the group suffices."""
    units = group.units
    shares = [1.0 if push[0] > LEAST_GAIN else 0.0 for push in pushes]
    if sum(unit.rated * share for unit, share in zip(units, shares, strict=True)) <= group.power:
        return shares
    if group.power <= 0:
        return [0.0] * len(units)
    # Each unit's share goes as (gain / rating) squared until it is at full; those that are at full
    # leave the rest of the power to the others.
    free = [at for at, push in enumerate(pushes) if push[0] > LEAST_GAIN]
    power = group.power
    while free:
        whole = sum(pushes[at][0] ** 3 / units[at].rated ** 2 for at in free)
        scale = (power / whole) ** (2 / 3)
        wanted = {at: scale * (pushes[at][0] / units[at].rated) ** 2 for at in free}
        full = [at for at in free if wanted[at] >= 1]
        if not full:
            for at in free:
                shares[at] = wanted[at]
            break
        power -= sum(units[at].rated for at in full)
        free = [at for at in free if at not in full]
    return shares


# A unit as plain numbers: x, y, rating, full ahead, full astern, full across, and how it pushes.
_Numbers = tuple[float, float, float, float, float, float, int]
_EACH_WAY, _ANYWHERE, _BY_RUDDER = range(3)
# Of each group its power, and its units as plain numbers.
Compiled = tuple[tuple[float, tuple[_Numbers, ...]], ...]


def compiled(groups: Iterable[Group]) -> Compiled:
    """Return groups as plain numbers, for ``furthest_in``.

    Parameters
    ----------
    groups : iterable of Group

    Returns
    -------
    tuple

    References
    ----------
    Model of our own.
    """
    return tuple(_compiled(group) for group in groups)


def _compiled(group: Group) -> tuple[float, tuple[_Numbers, ...]]:
    """A group as plain numbers; what one unit alone gives of its power is the same each way."""
    share, power = 1.0, group.power
    if len(group.units) == 1 and group.power < group.units[0].rated:
        share = (max(group.power, 0.0) / group.units[0].rated) ** (2 / 3)
        power = inf
    return power, tuple(_numbers(unit, share) for unit in group.units)


def _numbers(unit: Unit, share: float) -> _Numbers:
    way = _ANYWHERE if unit.all_round else _BY_RUDDER if unit.rudder else _EACH_WAY
    full = (share * thrust for thrust in (unit.ahead, unit.astern, unit.side))
    return unit.x, unit.y, unit.rated, *full, way


def furthest_in(groups: Compiled, direction: Wrench) -> Wrench:
    """Return the wrench of ``most_in``, and nothing else of it.

    The search for the most wind asks thousands of times where the body of attainable wrenches ends,
    and who gives how much only at its end: this is the same sum without a name for each part.

    Parameters
    ----------
    groups : tuple
        Of ``compiled``.
    direction : tuple of float

    Returns
    -------
    tuple of float

    References
    ----------
    As ``most_in``; a test compares the two.
    """
    weigh_ahead, weigh_starboard, weigh_moment = direction
    ahead = starboard = moment = 0.0
    for power, units in groups:
        pushes, asked = [], 0.0
        for x, y, rated, full_ahead, full_astern, full_side, way in units:
            along = weigh_ahead - weigh_moment * y
            across = weigh_starboard + weigh_moment * x
            if way == _ANYWHERE:
                length = hypot(along, across)
                if length == 0:
                    continue
                push, side = full_side * along / length, full_side * across / length
                gain = full_side * length
            else:
                side = full_side if across >= 0 else -full_side
                push = full_ahead if along >= 0 or way == _BY_RUDDER else -full_astern
                gain = push * along + side * across
            if gain > LEAST_GAIN:
                pushes.append((gain, push, side, rated, x, y))
                asked += rated
        if asked > power:
            pushes = _within(power, pushes)
        for _, push, side, _, x, y in pushes:
            ahead += push
            starboard += side
            moment += x * side - y * push
    return ahead, starboard, moment


_Pushing = tuple[float, float, float, float, float, float]


def _within(power: float, pushes: list[_Pushing]) -> list[_Pushing]:
    """The pushes as far as their power suffices, divided as ``_shares`` does."""
    if power <= 0:
        return []
    made, free = [], pushes
    while free:
        whole = sum(gain**3 / rated**2 for gain, _, _, rated, _, _ in free)
        scale = (power / whole) ** (2 / 3)
        limited, power_left = [], power
        for each in free:
            if scale * (each[0] / each[3]) ** 2 >= 1:
                made.append(each)
                power_left -= each[3]
            else:
                limited.append(each)
        if len(limited) == len(free):
            for gain, push, side, rated, x, y in free:
                share = scale * (gain / rated) ** 2
                made.append((gain, share * push, share * side, rated, x, y))
            break
        free, power = limited, power_left
    return made


def rudder_choices(groups: Sequence[Group]) -> list[tuple[Group, ...]]:
    """Return the groups in every choice of ahead or astern for propellers with rudders.

    Parameters
    ----------
    groups : sequence of Group

    Returns
    -------
    list of tuple of Group

    References
    ----------
    Model of our own.
    """
    rudders = [unit.name for group in groups for unit in group.units if unit.rudder][:MOST_RUDDERS]
    made = []
    for choice in product((True, False), repeat=len(rudders)):
        ahead = dict(zip(rudders, choice, strict=True))
        made.append(
            tuple(
                Group(group.name, group.power, tuple(_going(unit, ahead) for unit in group.units))
                for group in groups
            )
        )
    return made


def _going(unit: Unit, ahead: dict[str, bool]) -> Unit:
    """Return a unit as it goes in one choice: ahead with its rudder, or astern without."""
    if not unit.rudder:
        return unit
    if ahead.get(unit.name, False):
        return unit
    return Unit(unit.name, unit.x, unit.y, unit.rated, astern=unit.astern)
