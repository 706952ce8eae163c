"""The power plant as elements that depend on each other.

A bus exists where a set feeds it or a tie ends at it. Where a name may be one of several
("pump 1 or pump 2"), any of them is enough.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from inspector.conversion.core.bounds import BadInput, plain
from inspector.conversion.power.plant_elements import (
    Dependency,
    GeneratorSet,
    MainEngine,
    Thruster,
    Tie,
    alternatives,
)
from inspector.conversion.power.three_phase import MOST_POWER

_NAMES_A_BUS = re.compile(r"bus|board", re.IGNORECASE)


@dataclass(frozen=True)
class Plant:
    """All elements together.

    Parameters
    ----------
    sets : tuple of GeneratorSet
    ties : tuple of Tie
    thrusters : tuple of Thruster
    engines : tuple of MainEngine
    dependencies : tuple of Dependency
    hotel : mapping of str to float
        Bus -> loads that must stay on while keeping station [kW].

    Raises
    ------
    BadInput
        Two elements share a name, or a thruster or a load is fed from what does not exist.
    """

    sets: tuple[GeneratorSet, ...] = ()
    ties: tuple[Tie, ...] = ()
    thrusters: tuple[Thruster, ...] = ()
    engines: tuple[MainEngine, ...] = ()
    dependencies: tuple[Dependency, ...] = ()
    hotel: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        # A failure, a feed and a dependency all point by name, so a name may mean one thing only.
        taken: set[str] = set(self.buses)
        for element in (*self.sets, *self.ties, *self.thrusters, *self.engines):
            if element.name in taken:
                raise BadInput(
                    f"{element.name}: this name is used twice among buses, sets, engines, ties and "
                    "thrusters; give each its own.",
                    field="name",
                    value=element.name,
                )
            taken.add(element.name)
        for thruster in self.thrusters:
            check_feed(thruster, self.buses, self.engines)
        for bus, power in self.hotel.items():
            check_bus("load", bus, self.buses)
            plain(f"{bus}: load", power, 0, MOST_POWER, "kW")

    @property
    def buses(self) -> tuple[str, ...]:
        """The buses, in order of first mention."""
        # The emergency board has its own bus, which feeds no thruster.
        fed = [generator.bus for generator in self.sets if not generator.emergency]
        tied = [bus for tie in self.ties for bus in tie.buses]
        return tuple(dict.fromkeys((*fed, *tied)))


def with_bus(name: str, buses: Iterable[str]) -> str:
    """Return an element's name for a sentence: "A + B" as "bus A + bus B".

    Parameters
    ----------
    name : str
        An element, or buses joined by " + ".
    buses : iterable of str
        All buses of the plant.

    Returns
    -------
    str
        A bus whose name says already what it is stays as it is.

    References
    ----------
    Model of our own.
    """
    known = tuple(buses)
    parts = []
    for part in name.split(" + "):
        # "bus A" and "main board" say already what they are.
        is_bare_bus = part in known and not _NAMES_A_BUS.search(part)
        parts.append(f"bus {part}" if is_bare_bus else part)
    return " + ".join(parts)


def check_feed(thruster: Thruster, buses: Iterable[str], engines: Iterable[MainEngine]) -> None:
    """Refuse a thruster that is fed from what does not exist.

    Parameters
    ----------
    thruster : Thruster
    buses : iterable of str
    engines : iterable of MainEngine

    Raises
    ------
    BadInput
        One of its feeds is neither a bus nor an engine.

    References
    ----------
    Model of our own.
    """
    places = {*buses, *(engine.name for engine in engines)}
    for name in alternatives(thruster.feed):
        if name not in places:
            known = ", ".join(sorted(places)) or "none yet"
            raise BadInput(
                f"{thruster.name}: fed by is {name!r}, and there is no such bus or engine; "
                f"known are: {known}.",
                field=f"{thruster.name}: fed by",
                value=name,
            )


def check_bus(name: str, bus: str, buses: Iterable[str]) -> None:
    """Refuse a load on a bus that does not exist.

    Parameters
    ----------
    name : str
        The load.
    bus : str
    buses : iterable of str

    Raises
    ------
    BadInput
        The bus is not among the buses.

    References
    ----------
    Model of our own.
    """
    known = tuple(buses)
    if bus not in known:
        raise BadInput(
            f"{name}: bus is {bus!r}, and there is no such bus; "
            f"known are: {', '.join(known) or 'none yet'}.",
            field=f"{name}: bus",
            value=bus,
        )
