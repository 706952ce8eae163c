"""Recorded rows of the power plant -> the elements that the pure modules take; a row that cannot be used is told, and the rest stands."""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Any

from inspector.conversion.book import Case
from inspector.conversion.load_balance import Consumer
from inspector.conversion.plant import GeneratorSet, MainEngine, Need, Plant, Thruster, Tie, check_bus, check_feed
from inspector.conversion.plant_tables import ENGINES, FIELDS, GENERATORS, LOADS, NEEDS, THRUSTERS, TIES
from inspector.conversion.shapes import ConversionError
from inspector.conversion.tables import Row


@dataclass(frozen=True)
class Read:
    """The elements of a case, its consumers, and one sentence for each row that could not be used."""

    plant: Plant
    consumers: tuple[Consumer, ...]
    faults: tuple[str, ...]


def read_plant(case: Case) -> Read:
    """Rows -> elements; a row that cannot be used is told and left out, and the rest stands."""
    faults: list[str] = []
    taken: set[str] = set()
    sets = _each(case.rows(GENERATORS), generator, faults, taken)
    ties = _each(case.rows(TIES), tie, faults, taken)
    engines = _each(case.rows(ENGINES), engine, faults, taken)
    if clash := sorted(taken & _bus_names(sets, ties)):
        faults.append(f"{clash[0]}: a bus bears the same name as a set, an engine or a tie; give each its own.")
        return Read(Plant(), (), tuple(faults))
    buses = Plant(sets=sets, ties=ties).buses
    thrusters = _each(case.rows(THRUSTERS), lambda row: _fed(thruster(row), buses, engines), faults, taken, buses)
    needs = _each(case.rows(NEEDS), lambda row: Need(row.text("element"), row.text("on")), faults, None)
    consumers = _each(case.rows(LOADS), lambda row: _on(consumer(row), row.text("bus"), buses), faults, None)
    try:
        plant = Plant(sets, ties, thrusters, engines, needs, hotel(consumers, buses))
    except ConversionError as problem:
        return Read(Plant(), consumers, (*faults, str(problem)))
    return Read(plant, consumers, tuple(faults))


def _bus_names(sets: Iterable[GeneratorSet], ties: Iterable[Tie]) -> set[str]:
    return {one.bus for one in sets} | {bus for one in ties for bus in (one.one, one.other)}


def _in_order(row: Row) -> list[tuple[int, str]]:
    # G2 before G10, whatever the order in which they were typed
    return [(int(part), "") if part.isdecimal() else (-1, part) for part in re.split(r"(\d+)", row.text("name") or row.text("element"))]


def _each(rows: Iterable[Row], make: Callable[[Row], Any], faults: list[str], taken: set[str] | None, also: Iterable[str] = ()) -> tuple:
    made = []
    for row in sorted(rows, key=_in_order):
        try:
            one = make(row)
        except ConversionError as problem:
            faults.append(str(problem))
            continue
        if taken is not None:
            if one.name in taken or one.name in also:
                faults.append(f"{one.name}: this name is used twice in the tables of the plant; give each element its own.")
                continue
            taken.add(one.name)
        made.append(one)
    return tuple(made)


def generator(row: Row) -> GeneratorSet:
    """A row of the generating sets."""
    return GeneratorSet(
        row.text("name"), row.text("bus"), row.number("rated"), row.number("power_factor"), row.text("emergency") == "yes", row.text("out") == "yes"
    )


def engine(row: Row) -> MainEngine:
    """A row of the engines."""
    return MainEngine(row.text("name"), row.number("rated"), row.text("out") == "yes")


def tie(row: Row) -> Tie:
    """A row of the ties."""
    return Tie(row.text("name"), row.text("one"), row.text("other"), row.text("normally") == "closed", row.text("proven") == "yes")


def thruster(row: Row) -> Thruster:
    """A row of the thrusters."""
    return Thruster(
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
    )


def consumer(row: Row) -> Consumer:
    """A row of the loads; what was not said for a condition stays unsaid."""
    said = tuple((condition, row.number(field)) for condition, field in FIELDS.items() if row.number(field) is not None)
    return Consumer(
        row.text("name"),
        row.text("bus"),
        said,
        row.text("kind") == "new",
        row.text("essential") != "no",
        row.text("runs") == "by turns",
        row.number("connected"),
        row.number("factor"),
        row.number("simultaneity"),
    )


def hotel(consumers: Iterable[Consumer], buses: tuple[str, ...]) -> dict[str, float]:
    """Essential loads by bus while keeping station [kW]; those without a bus are spread over all buses alike."""
    found = dict.fromkeys(buses, 0.0)
    for one in consumers:
        power = one.at("station keeping")
        if power and one.essential:
            for bus in (one.bus,) if one.bus else buses:
                found[bus] += power / (1 if one.bus else len(buses))
    return found


def _fed(unit: Thruster, buses: Iterable[str], engines: Iterable[MainEngine]) -> Thruster:
    check_feed(unit, buses, engines)
    return unit


def _on(one: Consumer, bus: str, buses: Iterable[str]) -> Consumer:
    if bus:
        check_bus(one.name, bus, buses)
    return one
