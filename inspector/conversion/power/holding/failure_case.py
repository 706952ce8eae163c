"""What is left of a plant after a failure, and how far its sets, engines and drives may be used."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass

from inspector.conversion.core.bounds import plain
from inspector.conversion.core.figure import Default
from inspector.conversion.power.cascade_failure import Remaining
from inspector.conversion.power.holding.attainable_thrust import Group, Unit
from inspector.conversion.power.holding.steady_forces import Force
from inspector.conversion.power.load_balance import set_capacity
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_elements import Thruster, alternatives

# A propeller goes astern with less than ahead, since its blades are shaped for ahead.
ASTERN = Default(
    "full thrust astern over ahead",
    0.6,
    "a propeller gives half to two thirds of its thrust astern",
)


@dataclass(frozen=True)
class Scenario:
    """One consistent set of numbers.

    Parameters
    ----------
    across, along : mapping of str to float
        Full thrust by unit [kN].
    beam, head : Force, optional
        Forces; None where they are not known.
    hotel : float
        Factor on the hotel loads.
    """

    across: Mapping[str, float]
    along: Mapping[str, float]
    beam: Force | None = None
    head: Force | None = None
    hotel: float = 1.0


@dataclass(frozen=True)
class LoadLimits:
    """How far sets, engines and drives may be used.

    Parameters
    ----------
    efficiency : float
        Efficiency of electric drives.
    share : float
        Share of what sets and engines can give.
    power_factor : float, optional
        Power factor of the load; None where it was not read, so that sets give their rating.

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.
    """

    efficiency: float = 0.92
    share: float = 0.90
    power_factor: float | None = None

    def __post_init__(self) -> None:
        plain("efficiency of the drives", self.efficiency, 0.5, 1)
        plain("load limit while keeping station", self.share, 0.3, 1)
        if self.power_factor is not None:
            plain("power factor of the load", self.power_factor, 0.1, 1)


@dataclass(frozen=True)
class Supply:
    """A group of buses that are tied together, or an engine.

    Parameters
    ----------
    name : str
        Buses are joined by " + ".
    load : float
        Load [kW].
    capacity : float
        What its sets can give, by power and by current [kW].
    """

    name: str
    load: float
    capacity: float

    @property
    def places(self) -> set[str]:
        """The buses, or the engine."""
        return set(self.name.split(" + "))


@dataclass(frozen=True)
class FailureCase:
    """A plant after a failure, in one scenario.

    Parameters
    ----------
    plant : Plant
    remaining : Remaining
        What works after the failure.
    scenario : Scenario
    limits : LoadLimits
    """

    plant: Plant
    remaining: Remaining
    scenario: Scenario
    limits: LoadLimits

    def feeder(self, unit: Thruster) -> str:
        """Return the first of a unit's feeds that lives, a model of our own.

        Parameters
        ----------
        unit : Thruster

        Returns
        -------
        str
            A bus or an engine; "" where none lives.
        """
        alive = self.remaining.alive
        # In the order in which they are typed: the first is the usual feed.
        return next((name for name in alternatives(unit.feed) if name in alive), "")

    def groups(self) -> tuple[Group, ...]:
        """Return the units that work, by what supplies them, with the power that it has for them.

        Returns
        -------
        tuple of Group

        References
        ----------
        Rating less other loads, at the load limit (common practice).
        """
        fed: dict[str, list[Unit]] = {}
        for unit in self.plant.thrusters:
            if unit.name in self.remaining.alive:
                supply = self.supply_of(self.feeder(unit))
                fed.setdefault(supply, []).append(self._unit(unit))
        return tuple(
            Group(name, max(0.0, self.power_for(name)), tuple(units)) for name, units in fed.items()
        )

    def supply_of(self, feeder: str) -> str:
        """Return the name of the island of a bus, or the engine itself, a model of our own.

        Parameters
        ----------
        feeder : str

        Returns
        -------
        str
        """
        return " + ".join(sorted(self.remaining.island(feeder))) or feeder

    def power_for(self, supply: str) -> float:
        """Return the shaft power that a supply has for its units [kW].

        Parameters
        ----------
        supply : str
            Buses joined by " + ", or an engine.

        Returns
        -------
        float
            Below zero where the other loads are too much already.

        References
        ----------
        Plain arithmetic.
        """
        engine = next((each for each in self.plant.engines if each.name == supply), None)
        if engine is not None:
            return self.limits.share * engine.rated
        buses = supply.split(" + ")
        free = self.limits.share * self.capacity(buses) - self.other_loads(buses)
        return free * self.limits.efficiency

    def capacity(self, buses: Collection[str]) -> float:
        """Return what the sets in order on some buses give [kW], by power and by current.

        Parameters
        ----------
        buses : collection of str

        Returns
        -------
        float

        References
        ----------
        See ``load_balance.set_capacity``.
        """
        factor = self.limits.power_factor
        # Without a power factor that was read, sets give their rating.
        return sum(
            each.rated if factor is None else set_capacity(each, factor)
            for each in self.plant.sets
            if each.counts and each.bus in buses and each.name in self.remaining.alive
        )

    def other_loads(self, buses: Collection[str]) -> float:
        """Return the loads that must stay on [kW].

        Parameters
        ----------
        buses : collection of str

        Returns
        -------
        float

        References
        ----------
        As typed by the surveyor.
        """
        return self.scenario.hotel * sum(self.plant.hotel.get(bus, 0.0) for bus in buses)

    def _unit(self, unit: Thruster) -> Unit:
        """Return a thruster with what it gives in this scenario."""
        along, across = self.scenario.along.get(unit.name, 0.0), self.scenario.across[unit.name]
        place = {"x": unit.x, "y": unit.y, "rated": unit.rated}
        if unit.is_propeller:
            astern = ASTERN.value * along if unit.astern is None else unit.astern
            rudder = bool(across)
            return Unit(unit.name, **place, ahead=along, astern=astern, side=across, rudder=rudder)
        # A tunnel pushes across, whatever was typed.
        if unit.acts == "both" and unit.kind != "tunnel":
            return Unit(unit.name, **place, side=across, all_round=True)
        if unit.acts == "along":
            return Unit(unit.name, **place, ahead=along, astern=along)
        return Unit(unit.name, **place, side=across)
