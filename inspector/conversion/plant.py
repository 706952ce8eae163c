"""The power plant as elements that hang on each other: generating sets, engines, ties between buses, thrusters, and what else each of them needs.

A bus exists where a set stands on it or a tie ends on it. Where a name may be one of several ("pump 1 or pump 2"), any one of them will do.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache

from inspector.conversion.inputs import BadInput, one_of, plain

KINDS = ("tunnel", "azimuth in nozzle", "propeller in nozzle", "open propeller")
ACTS = ("across", "along", "both")
MOST_POWER = 100_000.0  # kW
_SAID = re.compile(r"bus|board", re.IGNORECASE)
_OR = re.compile(r"\s+or\s+|\s*\|\s*", re.IGNORECASE)


@lru_cache(maxsize=4096)
def alternatives(text: str) -> tuple[str, ...]:
    """The names in "pump 1 or pump 2", of which one is enough."""
    return tuple(name for name in (part.strip() for part in _OR.split(text)) if name)


@dataclass(frozen=True)
class GeneratorSet:
    """One set: its bus, rated [kW] and power factor as on the plate (None: not known); emergency sets never count as main plant; out: out of order."""

    name: str
    bus: str
    rated: float
    power_factor: float | None = None
    emergency: bool = False
    out: bool = False

    def __post_init__(self) -> None:
        _named(self.name, "A generating set")
        _given(f"{self.name}: bus", self.bus)
        plain(f"{self.name}: rated power", self.rated, 0.1, MOST_POWER, "kW")
        if self.power_factor is not None:
            plain(f"{self.name}: power factor", self.power_factor, 0.1, 1)

    @property
    def counts(self) -> bool:
        """Whether it may feed the main board as found."""
        return not (self.emergency or self.out)


@dataclass(frozen=True)
class MainEngine:
    """An engine that drives a propeller or thruster by a shaft: rated [kW]."""

    name: str
    rated: float
    out: bool = False

    def __post_init__(self) -> None:
        _named(self.name, "An engine")
        plain(f"{self.name}: rated power", self.rated, 0.1, MOST_POWER, "kW")


@dataclass(frozen=True)
class Tie:
    """A breaker between two buses; proven: trials have shown that it opens on a fault before the fault passes."""

    name: str
    one: str
    other: str
    closed: bool = False
    proven: bool = False

    def __post_init__(self) -> None:
        _named(self.name, "A tie")
        _given(f"{self.name}: first bus", self.one)
        _given(f"{self.name}: second bus", self.other)
        if self.one == self.other:
            raise BadInput(
                f"{self.name}: second bus is {self.other!r} as is the first, and a tie joins two buses.",
                field=f"{self.name}: second bus",
                value=self.other,
            )


@dataclass(frozen=True)
class Thruster:
    """One thruster or propeller.

    feed: bus or engine (several with "or"); rated [kW, shaft]; x [m, forward of midship positive]; acts: across, along or
    both; thrust [kN] as measured, side [kN] of a propeller with its rudder, diameter [m]: None where not known;
    control: the position it is steered from.
    """

    name: str
    kind: str
    feed: str
    rated: float
    x: float
    acts: str
    thrust: float | None = None
    side: float | None = None
    diameter: float | None = None
    control: str = ""
    out: bool = False

    def __post_init__(self) -> None:
        _named(self.name, "A thruster")
        one_of(f"{self.name}: kind", self.kind, KINDS)
        one_of(f"{self.name}: acts", self.acts, ACTS)
        _given(f"{self.name}: fed by", self.feed)
        plain(f"{self.name}: rated power", self.rated, 0.1, MOST_POWER, "kW")
        plain(f"{self.name}: position", self.x, -200, 200, "m")
        for name, low, high, unit in (("thrust", 0.1, 5000, "kN"), ("side", 0.1, 5000, "kN"), ("diameter", 0.3, 8, "m")):
            if getattr(self, name) is not None:
                plain(f"{self.name}: {name}", getattr(self, name), low, high, unit)

    @property
    def across(self) -> bool:
        """Whether it pushes sideways at all."""
        return self.acts != "along" or self.side is not None

    @property
    def along(self) -> bool:
        return self.acts != "across"


@dataclass(frozen=True)
class Need:
    """An element, and what it cannot do without; either may be a name that stands in no other table (a day tank, a cooling pump, a room)."""

    element: str
    on: str

    def __post_init__(self) -> None:
        _named(self.element, "A need")
        _given(f"{self.element}: needs", self.on)
        if alternatives(self.on) == (self.element,):
            raise BadInput(
                f"{self.element}: needs is {self.on!r}, and nothing is its own need; name another element.",
                field=f"{self.element}: needs",
                value=self.on,
            )


@dataclass(frozen=True)
class Plant:
    """All elements together; hotel: bus -> kW of what must stay on while keeping station.

    Errors
    ------
    BadInput : two elements share a name; a thruster or a load is fed from a bus or engine that is not there.
    """

    sets: tuple[GeneratorSet, ...] = ()
    ties: tuple[Tie, ...] = ()
    thrusters: tuple[Thruster, ...] = ()
    engines: tuple[MainEngine, ...] = ()
    needs: tuple[Need, ...] = ()
    hotel: Mapping[str, float] = field(default_factory=dict)

    def __post_init__(self) -> None:
        taken: set[str] = set(self.buses)
        for one in (*self.sets, *self.ties, *self.thrusters, *self.engines):
            if one.name in taken:
                raise BadInput(
                    f"{one.name}: this name is used twice among buses, sets, engines, ties and thrusters; give each its own.",
                    field="name",
                    value=one.name,
                )
            taken.add(one.name)
        for one in self.thrusters:
            check_feed(one, self.buses, self.engines)
        for bus, power in self.hotel.items():
            check_bus("load", bus, self.buses)
            plain(f"{bus}: load", power, 0, MOST_POWER, "kW")

    @property
    def buses(self) -> tuple[str, ...]:
        """The buses, in order of first mention."""
        named = [one.bus for one in self.sets if not one.emergency] + [bus for tie in self.ties for bus in (tie.one, tie.other)]
        return tuple(dict.fromkeys(named))


def spoken(name: str, buses: Iterable[str]) -> str:
    """An element as it is spoken of: "A" and "A + B" are told as buses, unless the name says so itself."""
    known = tuple(buses)
    return " + ".join(f"bus {part}" if part in known and not _SAID.search(part) else part for part in name.split(" + "))


def check_feed(thruster: Thruster, buses: Iterable[str], engines: Iterable[MainEngine]) -> None:
    """Refuse a thruster fed from what is not there."""
    places = {*buses, *(engine.name for engine in engines)}
    for name in alternatives(thruster.feed):
        if name not in places:
            known = ", ".join(sorted(places)) or "none yet"
            raise BadInput(
                f"{thruster.name}: fed by is {name!r}, and no such bus or engine is there; known are: {known}.",
                field=f"{thruster.name}: fed by",
                value=name,
            )


def check_bus(name: str, bus: str, buses: Iterable[str]) -> None:
    """Refuse a load on a bus that is not there."""
    if bus not in (known := tuple(buses)):
        raise BadInput(
            f"{name}: bus is {bus!r}, and no such bus is there; known are: {', '.join(known) or 'none yet'}.", field=f"{name}: bus", value=bus
        )


def _named(name: str, what: str) -> None:
    if not name.strip():
        raise BadInput(f"{what} has no name; give it the one on its plate or board.", field="name", value=name)


def _given(name: str, value: str) -> None:
    if not value.strip():
        raise BadInput(f"{name} is missing; name it as the board does.", field=name, value=value)
