"""Cascade failure: what is lost with one element, and which buses stay alive.

A bus lives while a set in order feeds it or a bus that is tied to it. Until a closed tie is proven
to part on a fault, it and both its buses depend on each other: a fault on one takes all three.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.power.electrical_loads import STATION_KEEPING
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_elements import alternatives

# Element -> the sets of names of each of which at least one must work.
Requirements = Mapping[str, tuple[frozenset[str], ...]]


@dataclass(frozen=True)
class Remaining:
    """What works after a failure.

    Parameters
    ----------
    alive : frozenset of str
        The elements that work.
    lost : frozenset of str
        The elements that do not.
    islands : tuple of frozenset of str
        The live buses, in groups that are tied together.
    """

    alive: frozenset[str]
    lost: frozenset[str]
    islands: tuple[frozenset[str], ...]

    def island(self, bus: str) -> frozenset[str]:
        """Return the buses that are tied to a bus, a model of our own.

        Parameters
        ----------
        bus : str

        Returns
        -------
        frozenset of str
            The bus itself among them; empty where it is dead.
        """
        return next((island for island in self.islands if bus in island), frozenset())


class _Builder:
    """Collects what each element of a plant depends on."""

    def __init__(self) -> None:
        self.requirements: dict[str, list[frozenset[str]]] = {}

    def add_element(self, name: str) -> None:
        self.requirements.setdefault(name, [])

    def add(self, element: str, needs: str) -> None:
        names = alternatives(needs)
        self.requirements.setdefault(element, []).append(frozenset(names))
        for name in names:
            self.add_element(name)


def _requirements_of(plant: Plant) -> dict[str, tuple[frozenset[str], ...]]:
    """Return what each element of a plant depends on."""
    builder = _Builder()
    for bus in plant.buses:
        builder.add_element(bus)
    for generator in plant.sets:
        # The emergency set is on its own board and never feeds the main one.
        if not generator.emergency:
            # A set needs its bus as well: on a dead board it trips, and cannot feed itself.
            builder.add(generator.name, generator.bus)
    for engine in plant.engines:
        builder.add_element(engine.name)
    for thruster in plant.thrusters:
        builder.add(thruster.name, thruster.feed)
        if thruster.control.strip():
            # A thruster that nobody can command is lost, however well it is fed.
            builder.add(thruster.name, thruster.control)
    _add_ties(plant, builder)
    # What the emergency set needs takes nothing of the main plant with it.
    emergency = {generator.name for generator in plant.sets if generator.emergency}
    for dependency in plant.dependencies:
        if dependency.element not in emergency:
            builder.add(dependency.element, dependency.needs)
    return {element: tuple(needs) for element, needs in builder.requirements.items()}


def _add_ties(plant: Plant, builder: _Builder) -> None:
    """Let a closed tie that is not proven depend on both its buses, and they on it."""
    for tie in plant.ties:
        builder.add_element(tie.name)
        # Until trials prove that it opens in time, a fault on one side takes the other side too.
        if tie.closed and not tie.proven:
            for bus in tie.buses:
                builder.add(bus, tie.name)
                # Both ways, so that a fault on either bus goes through the tie.
                builder.add(tie.name, bus)


def single_failures(plant: Plant) -> tuple[str, ...]:
    """Return every element that can fail alone.

    Parameters
    ----------
    plant : Plant

    Returns
    -------
    tuple of str
        Without what is out of order already, and without open ties, which have nothing to lose.

    References
    ----------
    Model of our own.
    """
    # An open tie carries nothing that its failure could take away.
    open_ties = {tie.name for tie in plant.ties if not tie.closed}
    excluded = out_of_order(plant) | open_ties
    return tuple(name for name in _requirements_of(plant) if name not in excluded)


def out_of_order(plant: Plant) -> frozenset[str]:
    """Return what was broken at the inspection: the starting case of every failure.

    Parameters
    ----------
    plant : Plant

    Returns
    -------
    frozenset of str

    References
    ----------
    As typed by the surveyor.
    """
    elements = (*plant.sets, *plant.engines, *plant.thrusters)
    # Lost already as inspected: never counted as a failure of its own.
    return frozenset(element.name for element in elements if element.out)


def cascade(requirements: Requirements, removed: Iterable[str]) -> frozenset[str]:
    """Return all that is lost when elements are removed.

    Parameters
    ----------
    requirements : mapping of str to tuple of frozenset of str
        Element -> the sets of names of each of which at least one must work.
    removed : iterable of str

    Returns
    -------
    frozenset of str
        All but the greatest set of elements in which every requirement is met.

    References
    ----------
    Model of our own: elements are lost step by step until nothing more is.
    """
    # Until nothing more falls: a pump takes an engine, the engine a bus, the bus the next pump.
    lost = set(removed)
    while True:
        next_lost = {
            name for name, needs in requirements.items() if name not in lost and _lacks(needs, lost)
        }
        if not next_lost:
            return frozenset(lost)
        lost |= next_lost


def _lacks(needs: tuple[frozenset[str], ...], lost: set[str]) -> bool:
    """Whether any need of an element can no longer be met by what is left."""
    # An element with a choice fails only when all that it may choose from are lost.
    return any(choice <= lost for choice in needs)


def after_failure(plant: Plant, removed: Iterable[str] = ()) -> Remaining:
    """Return what works in a plant as inspected when elements fail besides.

    Parameters
    ----------
    plant : Plant
    removed : iterable of str
        The elements that fail.

    Returns
    -------
    Remaining

    Raises
    ------
    BadInput
        An element is not part of the plant.

    References
    ----------
    Model of our own.
    """
    requirements, failed = _requirements_of(plant), frozenset(removed)
    for name in failed:
        if name not in requirements:
            sentence = f"Failure: {name!r} is no element of this plant."
            raise BadInput(sentence, field="failure", value=name)
    lost = cascade(requirements, failed | out_of_order(plant))
    # A dead bus takes its consumers with it, which may take the last set of another bus.
    while dead := _dead_buses(plant, lost):
        lost = cascade(requirements, lost | dead)
    return Remaining(frozenset(requirements) - lost, lost, islands_of(plant, lost))


def _dead_buses(plant: Plant, lost: frozenset[str]) -> frozenset[str]:
    """Return the buses that are whole, but that no set in order can feed any more."""
    working = [
        generator for generator in plant.sets if generator.counts and generator.name not in lost
    ]
    # A set in order feeds its own bus, and through it every bus that is tied to it.
    fed = {generator.bus for generator in working}
    return frozenset().union(*(island for island in islands_of(plant, lost) if not island & fed))


def islands_of(
    plant: Plant, lost: frozenset[str] = frozenset(), condition: str = STATION_KEEPING
) -> tuple[frozenset[str], ...]:
    """Return the groups of live buses that closed ties join.

    Parameters
    ----------
    plant : Plant
    lost : frozenset of str
        The elements that do not work.
    condition : str
        One of ``electrical_loads.CONDITIONS``: a tie may be open in one and closed in another.

    Returns
    -------
    tuple of frozenset of str

    References
    ----------
    Model of our own: connected components of the one-line diagram.
    """
    islands = [frozenset((bus,)) for bus in plant.buses if bus not in lost]
    for tie in plant.ties:
        ends = set(tie.buses)
        # A tie joins two buses only while both work.
        if tie.is_closed(condition) and tie.name not in lost and not ends & lost:
            joined = [island for island in islands if ends & island]
            apart = [island for island in islands if island not in joined]
            islands = [*apart, frozenset().union(*joined)]
    return tuple(sorted(islands, key=sorted))
