"""What one failure takes with it: remove one element, then all whose needs are gone, until nothing more falls.

A bus lives while a set in order stands on it or on a bus tied to it. A closed tie that has not been proven to part on a
fault is a need of both its buses, and they of it: what strikes one strikes all.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from inspector.conversion.inputs import BadInput
from inspector.conversion.plant import Plant, alternatives

Needs = Mapping[str, tuple[frozenset[str], ...]]


@dataclass(frozen=True)
class Left:
    """What still works: alive elements, those lost, and the live buses in groups that are tied together."""

    alive: frozenset[str]
    lost: frozenset[str]
    islands: tuple[frozenset[str], ...]

    def island(self, bus: str) -> frozenset[str]:
        """The buses tied to this one; empty where it is dead."""
        return next((one for one in self.islands if bus in one), frozenset())


def needs_of(plant: Plant) -> dict[str, tuple[frozenset[str], ...]]:
    """Element -> its needs, each a set of names of which one must live."""
    found: dict[str, list[frozenset[str]]] = {}

    def add(element: str, on: str) -> None:
        found.setdefault(element, []).append(frozenset(alternatives(on)))
        for name in alternatives(on):
            found.setdefault(name, [])

    for bus in plant.buses:
        found.setdefault(bus, [])
    for one in plant.sets:
        if not one.emergency:
            add(one.name, one.bus)
    for engine in plant.engines:
        found.setdefault(engine.name, [])
    for thruster in plant.thrusters:
        add(thruster.name, thruster.feed)
        if thruster.control.strip():
            add(thruster.name, thruster.control)
    for tie in plant.ties:
        found.setdefault(tie.name, [])
        if tie.closed and not tie.proven:
            for bus in (tie.one, tie.other):
                add(bus, tie.name)
                add(tie.name, bus)
    emergency = {one.name for one in plant.sets if one.emergency}
    for need in plant.needs:
        if need.element not in emergency:
            add(need.element, need.on)
    return {element: tuple(on) for element, on in found.items()}


def elements(plant: Plant) -> tuple[str, ...]:
    """Every element that can fail alone, each once; those out of order already, and open ties, have nothing left to fail."""
    out = out_of_order(plant) | {tie.name for tie in plant.ties if not tie.closed}
    return tuple(name for name in needs_of(plant) if name not in out)


def out_of_order(plant: Plant) -> frozenset[str]:
    """What was found broken: the starting case of every failure."""
    return frozenset(one.name for one in (*plant.sets, *plant.engines, *plant.thrusters) if one.out)


def cascade(needs: Needs, removed: Iterable[str]) -> frozenset[str]:
    """All that falls when these are removed: the greatest set of the rest in which every need is met stays."""
    lost = set(removed)
    while more := {name for name, on in needs.items() if name not in lost and any(choice <= lost for choice in on)}:
        lost |= more
    return frozenset(lost)


def after(plant: Plant, removed: Iterable[str] = ()) -> Left:
    """What is left of a plant, as found broken, when these elements fail besides.

    Errors
    ------
    BadInput : an element is not part of the plant.
    """
    needs, removed = needs_of(plant), frozenset(removed)
    for name in removed:
        if name not in needs:
            raise BadInput(f"Failure: {name!r} is no element of this plant.", field="failure", value=name)
    lost = cascade(needs, removed | out_of_order(plant))
    while dark := _dark(plant, lost):
        lost = cascade(needs, lost | dark)
    return Left(frozenset(needs) - lost, lost, _islands(plant, lost))


def _dark(plant: Plant, lost: frozenset[str]) -> frozenset[str]:
    """Buses that are whole, but that no set in order can reach any more."""
    fed = {one.bus for one in plant.sets if one.counts and one.name not in lost}
    return frozenset(bus for island in _islands(plant, lost) if not island & fed for bus in island)


def _islands(plant: Plant, lost: frozenset[str]) -> tuple[frozenset[str], ...]:
    islands = [frozenset((bus,)) for bus in plant.buses if bus not in lost]
    for tie in plant.ties:
        if tie.closed and tie.name not in lost and not {tie.one, tie.other} & lost:
            joined = [island for island in islands if {tie.one, tie.other} & island]
            islands = [island for island in islands if island not in joined] + [frozenset().union(*joined)]
    return tuple(sorted(islands, key=sorted))
