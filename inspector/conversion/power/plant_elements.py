"""The elements of a power plant: sets, engines, ties, thrusters, and what they depend on."""

import re
from dataclasses import dataclass
from functools import lru_cache

from inspector.conversion.core.bounds import BadInput, check_ranges, one_of, plain
from inspector.conversion.power.three_phase import MOST_POWER

KINDS = ("tunnel", "azimuth in nozzle", "propeller in nozzle", "open propeller")
# These push across by a rudder only, whatever they give ahead.
PROPELLERS = ("propeller in nozzle", "open propeller")
ACTS = ("across", "along", "both")
_OR = re.compile(r"\s+or\s+|\s*\|\s*", re.IGNORECASE)


@lru_cache(maxsize=4096)
def alternatives(text: str) -> tuple[str, ...]:
    """Return the names in "pump 1 or pump 2", of which any is enough.

    Parameters
    ----------
    text : str
        Names joined by "or" or by "|".

    Returns
    -------
    tuple of str

    References
    ----------
    Model of our own.
    """
    return tuple(name for name in (part.strip() for part in _OR.split(text)) if name)


@dataclass(frozen=True)
class GeneratorSet:
    """A generating set.

    Parameters
    ----------
    name, bus : str
    rated : float
        Rated power [kW].
    power_factor : float, optional
        Power factor on the plate; None where it is not known.
    emergency : bool
        Whether it is the emergency set, which never counts as main plant.
    out : bool
        Whether it is out of order.

    Raises
    ------
    BadInput
        A value that no set can have; the field is named.
    """

    name: str
    bus: str
    rated: float
    power_factor: float | None = None
    emergency: bool = False
    out: bool = False

    def __post_init__(self) -> None:
        _require_name(self.name, "A generating set")
        _require_text(f"{self.name}: bus", self.bus)
        plain(f"{self.name}: rated power", self.rated, 0.1, MOST_POWER, "kW")
        if self.power_factor is not None:
            plain(f"{self.name}: power factor", self.power_factor, 0.1, 1)

    @property
    def counts(self) -> bool:
        """Whether it may feed the main board as inspected."""
        # An emergency set supplies the emergency board alone, however large it is.
        return not (self.emergency or self.out)


@dataclass(frozen=True)
class MainEngine:
    """An engine that drives a propeller or thruster by a shaft.

    Parameters
    ----------
    name : str
    rated : float
        Rated power [kW].
    out : bool
        Whether it is out of order.

    Raises
    ------
    BadInput
        A value that no engine can have; the field is named.
    """

    name: str
    rated: float
    out: bool = False

    def __post_init__(self) -> None:
        _require_name(self.name, "An engine")
        plain(f"{self.name}: rated power", self.rated, 0.1, MOST_POWER, "kW")


@dataclass(frozen=True)
class Tie:
    """A breaker between two buses.

    Parameters
    ----------
    name, first_bus, second_bus : str
    closed : bool
        Whether it is closed while keeping station.
    proven : bool
        Whether trials have shown that it opens on a fault before the fault passes.
    other_modes : tuple of (str, bool)
        Condition -> whether it is closed then; a condition that is absent is as keeping station.

    Raises
    ------
    BadInput
        A name is missing, or both buses are the same.
    """

    name: str
    first_bus: str
    second_bus: str
    closed: bool = False
    proven: bool = False
    other_modes: tuple[tuple[str, bool], ...] = ()

    def __post_init__(self) -> None:
        _require_name(self.name, "A tie")
        _require_text(f"{self.name}: first bus", self.first_bus)
        _require_text(f"{self.name}: second bus", self.second_bus)
        # A row filled in twice by mistake would make a bus depend on itself.
        if self.first_bus == self.second_bus:
            raise BadInput(
                f"{self.name}: second bus is {self.second_bus!r} as is the first, "
                "and a tie joins two buses.",
                field=f"{self.name}: second bus",
                value=self.second_bus,
            )

    @property
    def buses(self) -> tuple[str, str]:
        """The two buses that it joins."""
        return self.first_bus, self.second_bus

    def is_closed(self, condition: str) -> bool:
        """Return whether it is closed in a condition.

        Parameters
        ----------
        condition : str
            One of ``electrical_loads.CONDITIONS``.

        Returns
        -------
        bool
            As while keeping station where nothing else was typed.

        References
        ----------
        As typed by the surveyor.
        """
        return dict(self.other_modes).get(condition, self.closed)


# One row may be several things: a propeller with a rudder pushes along and, if somebody measured
# it, across.
@dataclass(frozen=True)
class Thruster:
    """A thruster or propeller.

    Parameters
    ----------
    name : str
    kind : str
        One of KINDS.
    feed : str
        The bus or engine that feeds it; several with "or".
    rated : float
        Rated power at the shaft [kW].
    x : float
        Position, forward of midship is plus [m].
    acts : str
        One of ACTS.
    thrust : float, optional
        Full thrust as measured [kN].
    side : float, optional
        Side thrust of a propeller with its rudder [kN].
    diameter : float, optional
        Diameter [m].
    y : float
        Position off the centreline, starboard is plus [m].
    astern : float, optional
        Full thrust astern as measured [kN].
    control : str
        The position it is controlled from; several with "or".
    out : bool
        Whether it is out of order.

    Raises
    ------
    BadInput
        A value that no thruster can have; the field is named.
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
    y: float = 0.0
    astern: float | None = None

    def __post_init__(self) -> None:
        _require_name(self.name, "A thruster")
        one_of(f"{self.name}: kind", self.kind, KINDS)
        one_of(f"{self.name}: acts", self.acts, ACTS)
        _require_text(f"{self.name}: fed by", self.feed)
        plain(f"{self.name}: rated power", self.rated, 0.1, MOST_POWER, "kW")
        plain(f"{self.name}: position", self.x, -200, 200, "m")
        plain(f"{self.name}: off the centreline", self.y, -40, 40, "m")
        thrusts = dict.fromkeys(("thrust", "side", "astern"), (0.1, 5000, "kN"))
        ranges = {**thrusts, "diameter": (0.3, 8, "m")}
        check_ranges(self.name, self, ranges)

    @property
    def across(self) -> bool:
        """Whether it pushes sideways at all."""
        # A propeller pushes sideways only where somebody measured what its rudder gives.
        if self.is_propeller:
            return self.side is not None
        return self.acts != "along" or self.side is not None

    @property
    def along(self) -> bool:
        """Whether it pushes ahead."""
        return self.acts != "across" or self.is_propeller

    @property
    def is_propeller(self) -> bool:
        """Whether it is a propeller on a fixed shaft."""
        return self.kind in PROPELLERS


@dataclass(frozen=True)
class Dependency:
    """An element, and what it does not work without.

    Parameters
    ----------
    element, needs : str
        Either may be a name of no other table, such as a day tank, a cooling pump or a room.

    Raises
    ------
    BadInput
        A name is missing, or the element needs itself.
    """

    element: str
    needs: str

    def __post_init__(self) -> None:
        _require_name(self.element, "A dependency")
        _require_text(f"{self.element}: needs", self.needs)
        # Among several it may name itself: it lives as long as any other of them does.
        if alternatives(self.needs) == (self.element,):
            raise BadInput(
                f"{self.element}: needs is {self.needs!r}, and nothing depends on itself; "
                "name another element.",
                field=f"{self.element}: needs",
                value=self.needs,
            )


def _require_name(name: str, what: str) -> None:
    """Refuse an element without a name, since failures and feeds refer to it by that."""
    if not name.strip():
        sentence = f"{what} has no name; give it the name on its plate or board."
        raise BadInput(sentence, field="name", value=name)


def _require_text(name: str, value: str) -> None:
    """Refuse a reference to another element that is left empty."""
    if not value.strip():
        raise BadInput(f"{name} is missing; name it as the board does.", field=name, value=value)
