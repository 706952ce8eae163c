"""Recorded rows of the power plant as its elements; a row that cannot be used is left out."""

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from inspector.conversion.core.case import Case
from inspector.conversion.core.engine_rows import ENGINES as ALL_ENGINES
from inspector.conversion.core.engine_rows import sets_of, shaft_engines_of, without_typed
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError
from inspector.conversion.core.tank_rows import name_key
from inspector.conversion.core.things import Thing, read_things
from inspector.conversion.power.electrical_loads import STATION_KEEPING, Consumer
from inspector.conversion.power.particulars import (
    DEMAND_COLUMNS,
    DEPENDENCIES,
    ENGINES,
    GENERATORS,
    LOADS,
    THRUSTERS,
    TIE_COLUMNS,
    TIES,
)
from inspector.conversion.power.plant import Plant, check_bus, check_feed
from inspector.conversion.power.plant_elements import (
    Dependency,
    GeneratorSet,
    MainEngine,
    Thruster,
    Tie,
    alternatives,
)

Element = TypeVar("Element")


@dataclass(frozen=True)
class PlantParticulars:
    """The power plant as read from its tables.

    Parameters
    ----------
    plant : Plant
    consumers : tuple of Consumer
    faults : tuple of str
        One sentence for each row that could not be used.
    leaving : frozenset of str
        The names of the loads that come off with the conversion.
    """

    plant: Plant
    consumers: tuple[Consumer, ...]
    faults: tuple[str, ...]
    leaving: frozenset[str] = frozenset()

    @property
    def present_consumers(self) -> tuple[Consumer, ...]:
        """The loads that are there now."""
        return tuple(consumer for consumer in self.consumers if not consumer.new)

    @property
    def new_consumers(self) -> tuple[Consumer, ...]:
        """The loads that come with the conversion."""
        return tuple(consumer for consumer in self.consumers if consumer.new)

    @property
    def consumers_after(self) -> tuple[Consumer, ...]:
        """The loads after the conversion: those that stay and those that come."""
        return tuple(each for each in self.consumers if name_key(each.name) not in self.leaving)

    @property
    def engine_names(self) -> frozenset[str]:
        """The names of the engines that drive by shaft."""
        return frozenset(engine.name for engine in self.plant.engines)


def read_plant(case: Case) -> PlantParticulars:
    """Return the plant and its loads from the tables of an inspection.

    Parameters
    ----------
    case : Case

    Returns
    -------
    PlantParticulars

    References
    ----------
    As typed by the surveyor.
    """
    reader = _Reader()
    typed_sets, typed_engines = case.rows(GENERATORS), case.rows(ENGINES)
    among, refused = sets_of(case.rows(ALL_ENGINES))
    reader.faults += refused
    sets = reader.named((*typed_sets, *without_typed(among, typed_sets)), _generator)
    ties = reader.named(case.rows(TIES), _tie)
    # Only engines that turn a thruster or propeller of the plant belong to it.
    feeds = {name for row in case.rows(THRUSTERS) for name in alternatives(row.text("feed"))}
    turning = [row for row in shaft_engines_of(case.rows(ALL_ENGINES)) if row["name"] in feeds]
    engines = reader.named((*typed_engines, *without_typed(turning, typed_engines)), _engine)
    buses = {generator.bus for generator in sets} | {bus for tie in ties for bus in tie.buses}
    clash = sorted(reader.taken & buses)
    # A failure is named by its element, so that a name must not mean two of them.
    if clash:
        reader.faults.append(
            f"{clash[0]}: a bus has the same name as a set, an engine or a tie; give each its own."
        )
        return PlantParticulars(Plant(), (), tuple(reader.faults))
    main_buses = Plant(sets=sets, ties=ties).buses
    # From here on a thruster must not take the name of a bus either.
    reader.taken.update(main_buses)
    # After sets, ties and engines, since a thruster names what feeds it.
    thrusters = reader.named(case.rows(THRUSTERS), lambda row: _thruster(row, main_buses, engines))
    dependencies = reader.rows(case.rows(DEPENDENCIES), _dependency)
    consumers = reader.rows(case.rows(LOADS), lambda row: _consumer(row, main_buses))
    things = read_things(case)
    consumers += reader.things(things, consumers, main_buses)
    leaving = frozenset(thing.key for thing in things if not thing.goes_on)
    # What no single row shows, such as loads that add up to more than any board, is refused here.
    try:
        hotel = _hotel_loads(consumers, main_buses)
        plant = Plant(sets, ties, thrusters, engines, dependencies, hotel)
    except ConversionError as problem:
        return PlantParticulars(Plant(), consumers, (*reader.faults, str(problem)), leaving)
    return PlantParticulars(plant, consumers, tuple(reader.faults), leaving)


@dataclass
class _Reader:
    """Collects the names that are taken and the sentences about rows that cannot be used."""

    faults: list[str] = field(default_factory=list)
    taken: set[str] = field(default_factory=set)

    def rows(self, rows: Iterable[Row], make: Callable[[Row], Element]) -> tuple[Element, ...]:
        """Return the elements of the rows that can be used, by their names."""
        made = []
        for row in sorted(rows, key=_natural_order):
            try:
                made.append(make(row))
            except ConversionError as problem:
                self.faults.append(str(problem))
        return tuple(made)

    def named(self, rows: Iterable[Row], make: Callable[[Row], Element]) -> tuple[Element, ...]:
        """Return the elements of the rows that can be used and whose names are their own."""
        kept = []
        for element in self.rows(rows, make):
            if element.name in self.taken:
                self.faults.append(
                    f"{element.name}: this name is used twice in the tables of the plant; "
                    "give each element its own."
                )
                continue
            self.taken.add(element.name)
            kept.append(element)
        return tuple(kept)

    def things(
        self, things: Iterable[Thing], typed: Iterable[Consumer], buses: Sequence[str]
    ) -> tuple[Consumer, ...]:
        """Return the loads of what goes on, without those that the table of loads has."""
        names, made = {name_key(consumer.name) for consumer in typed}, []
        for thing in things:
            if not thing.goes_on or not thing.takes or thing.key in names:
                continue
            try:
                made.append(_load_of(thing, buses))
            except ConversionError as problem:
                self.faults.append(str(problem))
        return tuple(made)


def _load_of(thing: Thing, buses: Sequence[str]) -> Consumer:
    """Return what a thing takes as a load that comes with the conversion."""
    consumer = Consumer(thing.name, thing.row.text("bus"), thing.takes, new=True)
    if consumer.bus:
        check_bus(consumer.name, consumer.bus, buses)
    return consumer


def _natural_order(row: Row) -> list[tuple[int, str]]:
    """Return the key that sorts G2 before G10, whatever the order in which they were typed."""
    # Numbers within names count as numbers, so that set 10 comes behind set 9.
    parts = re.split(r"(\d+)", row.text("name") or row.text("element"))
    return [(int(part), "") if part.isdecimal() else (-1, part) for part in parts]


def _generator(row: Row) -> GeneratorSet:
    """Return the generator set of a row, with its rating [kW]."""
    return GeneratorSet(
        row.text("name"),
        row.text("bus"),
        row.number("rated"),
        row.number("power_factor"),
        row.text("emergency") == "yes",
        row.text("out") == "yes",
    )


def _engine(row: Row) -> MainEngine:
    return MainEngine(row.text("name"), row.number("rated"), row.text("out") == "yes")


def _tie(row: Row) -> Tie:
    """Return the bus tie of a row; each of its states is "open" or "closed"."""
    modes = TIE_COLUMNS.items()
    return Tie(
        row.text("name"),
        row.text("one"),
        row.text("other"),
        row.text("normally") == "closed",
        row.text("proven") == "yes",
        tuple(
            (condition, row.text(name) == "closed") for condition, name in modes if row.text(name)
        ),
    )


def _thruster(row: Row, buses: Sequence[str], engines: Sequence[MainEngine]) -> Thruster:
    """Return the thruster of a row; what feeds it must exist."""
    thruster = Thruster(
        row.text("name"),
        row.text("kind"),
        row.text("feed"),
        row.number("rated"),
        row.number("x"),
        row.text("acts"),
        row.number("thrust"),
        row.number("side"),
        row.number("diameter"),
        row.text("control"),
        row.text("out") == "yes",
        row.number("y") or 0.0,
        row.number("astern"),
    )
    check_feed(thruster, buses, engines)
    return thruster


def _dependency(row: Row) -> Dependency:
    return Dependency(row.text("element"), row.text("on"))


def _consumer(row: Row, buses: Sequence[str]) -> Consumer:
    """Return the load of a row; its bus must exist where one is named."""
    demands = [(condition, row.number(name)) for condition, name in DEMAND_COLUMNS.items()]
    # A demand that was not typed is not known, and never nothing.
    given = tuple((condition, power) for condition, power in demands if power is not None)
    consumer = Consumer(
        row.text("name"),
        row.text("bus"),
        given,
        row.text("kind") == "new",
        # What nobody marked stays on: to shed it by default would make every plant look stronger.
        row.text("essential") != "no",
        row.text("runs") == "by turns",
        row.number("connected"),
        row.number("factor"),
        row.number("simultaneity"),
    )
    if consumer.bus:
        check_bus(consumer.name, consumer.bus, buses)
    return consumer


def _hotel_loads(consumers: Iterable[Consumer], buses: Sequence[str]) -> dict[str, float]:
    """Return the essential loads by bus while keeping station [kW].

    A load without a bus is spread over all buses alike.
    """
    loads = dict.fromkeys(buses, 0.0)
    for consumer in consumers:
        power = consumer.demand_in(STATION_KEEPING)
        if power and consumer.essential:
            # A load whose board nobody named is shared out, so that none of it is lost.
            fed = (consumer.bus,) if consumer.bus else buses
            for bus in fed:
                loads[bus] += power / len(fed)
    return loads
