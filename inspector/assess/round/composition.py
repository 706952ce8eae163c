"""The round: the looks chosen for a visit, in walking order, divided among its people."""

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace

from inspector.assess.model import Assessment
from inspector.assess.round.look_ways import RoundLook, VisitLooks, Way, visit_looks
from inspector.assess.round.priced_time import Option
from inspector.assess.round.shared_walk import Station, Stretch, divided

MOST_PEOPLE = 9


@dataclass(frozen=True)
class Chosen:
    """A look of the round with the way in which it is taken.

    Parameters
    ----------
    look : RoundLook
    way : Way
    """

    look: RoundLook
    way: Way


@dataclass(frozen=True)
class Stop:
    """One space of the round, as one person meets it.

    Parameters
    ----------
    space : str
        Its id.
    person : int
        Who looks here, counted from 1.
    entering : int
        What it takes to come there [s].
    chosen : tuple of Chosen
        In the order of the checklists.
    """

    space: str
    person: int
    entering: int
    chosen: tuple[Chosen, ...]

    @property
    def seconds(self) -> int:
        """What it takes, with the way to it [s]."""
        return self.entering + sum(one.way.seconds for one in self.chosen)


@dataclass(frozen=True)
class Round:
    """The looks chosen for a visit.

    Parameters
    ----------
    stops : tuple of Stop
        In walking order; a stop that two people share is there for each of them.
    seconds : tuple of int
        What each of the people needs, ways included [s].
    worth : float
        By the model of the next look: it ranks, it has no unit.
    left_out : mapping of str to str
        Sheet -> space, of every check without an answer that the round does not look at. It counts
        as not seen, as long as nobody looks.
    not_had : mapping of str to str
        Sheet -> why it cannot be had at this visit; all of them are left out as well.
    shares : tuple of tuple of (str, str)
        For each of the people the spaces and systems that are his stretch of the walk, whether or
        not something is looked at there.
    """

    stops: tuple[Stop, ...] = ()
    seconds: tuple[int, ...] = ()
    worth: float = 0.0
    left_out: Mapping[str, str] = field(default_factory=dict)
    not_had: Mapping[str, str] = field(default_factory=dict)
    shares: tuple[tuple[tuple[str, str], ...], ...] = ()

    @property
    def subjects(self) -> tuple[str, ...]:
        """The sheets that are looked at, in walking order."""
        return tuple(
            subject for stop in self.stops for one in stop.chosen for subject in one.way.subjects
        )


def compose_round(
    assessment: Assessment,
    spaces: Sequence[str],
    minutes: float,
    people: int = 1,
    here: str | None = None,
) -> Round:
    """Compose the round for the time there is.

    Nothing is remembered between calls: asked again after some answers and with the minutes that
    are left, it is the round for the rest of the visit.

    Parameters
    ----------
    assessment : Assessment
    spaces : sequence of str
        Ids of the spaces in walking order.
    minutes : float
        That each of the people has [min].
    people : int
        1 to MOST_PEOPLE; any other number counts as the nearest of these.
    here : str or None
        The space where they are, to which nobody has to walk; None for the first one, past which
        everybody comes aboard.

    Returns
    -------
    Round
    """
    return round_of(visit_looks(assessment), spaces, minutes, people, here)


def round_of(
    found: VisitLooks,
    spaces: Sequence[str],
    minutes: float,
    people: int = 1,
    here: str | None = None,
) -> Round:
    """Compose the round from looks that are listed already; as ``compose_round``."""
    people = min(max(people, 1), MOST_PEOPLE)
    by_station = _by_station(found.looks, spaces)
    stations = stations_of(found, spaces, here)
    stretches = divided(stations, int(60 * max(minutes, 0)), people)
    own_looks = list(by_station.values())
    stops = [
        stop
        for person, stretch in enumerate(stretches, 1)
        for stop in _stops(person, stretch, stations, own_looks)
    ]
    taken = {subject for stop in stops for one in stop.chosen for subject in one.way.subjects}
    left = {subject: at for subject, at in found.still_open.items() if subject not in taken}
    worth = math.fsum(stretch.worth for stretch in stretches)
    seconds = tuple(stretch.seconds for stretch in stretches)
    shares = tuple(_share(stretch, stations) for stretch in stretches)
    return Round(tuple(stops), seconds, worth, left, found.not_had, shares)


def _share(stretch: Stretch, stations: Sequence[Station]) -> tuple[tuple[str, str], ...]:
    own = stations[stretch.first : stretch.last]
    return tuple((station.space, station.system) for station in own)


def within(found: VisitLooks, share: Collection[tuple[str, str]]) -> VisitLooks:
    """Return the looks of one person's share of the walk alone.

    Parameters
    ----------
    found : VisitLooks
    share : collection of (str, str)
        Spaces and systems, as in ``Round.shares``.

    Returns
    -------
    VisitLooks
        What is open, and what cannot be had, is that of the whole vessel all the same.
    """
    own = tuple(look for look in found.looks if (look.space, look.system) in share)
    return replace(found, looks=own)


def stations_of(found: VisitLooks, spaces: Sequence[str], here: str | None = None) -> list[Station]:
    """Return the looks of a visit as stations in walking order; as ``compose_round``."""
    start = next(iter(spaces), "") if here is None else here
    return [
        Station(
            space,
            system,
            0 if space == start else found.entering,
            tuple(map(_options, own)),
        )
        for (space, system), own in _by_station(found.looks, spaces).items()
    ]


def _by_station(
    looks: Sequence[RoundLook], spaces: Sequence[str]
) -> dict[tuple[str, str], list[RoundLook]]:
    """The looks by space and system, in walking order."""
    order = {space: number for number, space in enumerate(spaces)}
    # Looks are listed in the order of the checklists, which a sort leaves as it is.
    systems = list(dict.fromkeys(look.system for look in looks))

    def place(look: RoundLook) -> tuple[int, str, int]:
        # A space that the checklists no longer have is walked last.
        return order.get(look.space, len(order)), look.space, systems.index(look.system)

    found: dict[tuple[str, str], list[RoundLook]] = {}
    for look in sorted(looks, key=place):
        found.setdefault((look.space, look.system), []).append(look)
    return found


def _options(look: RoundLook) -> tuple[Option, ...]:
    return tuple(Option(way.seconds, way.worth) for way in look.ways)


def _stops(
    person: int,
    stretch: Stretch,
    stations: Sequence[Station],
    own_looks: Sequence[Sequence[RoundLook]],
) -> list[Stop]:
    """The stops of one person at which something is looked at."""
    by_space: dict[str, list[Chosen]] = {}
    entering = {station.space: station.entering for station in stations}
    for number, ways in zip(range(stretch.first, stretch.last), stretch.ways, strict=True):
        for look, way in zip(own_looks[number], ways, strict=True):
            if way >= 0:
                own = by_space.setdefault(stations[number].space, [])
                own.append(Chosen(look, look.ways[way]))
    return [
        Stop(space, person, entering[space], tuple(chosen)) for space, chosen in by_space.items()
    ]
