"""Loads on deck: what goes on and stands on the open deck, and what the older table names."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from inspector.conversion.core.case import Case
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.core.tank_rows import name_key
from inspector.conversion.core.things import Thing, read_things, without_named
from inspector.conversion.stability.deck_loads import DeckLoad, deck_load
from inspector.conversion.stability.particulars import DECKS, WeightList
from inspector.values.quantity import Cell, Quantity, sentence

DECLARED = ("rated", "total", "walls", "acceleration")


def loads_on_deck(
    case: Case, weights: WeightList, faults: list[str]
) -> tuple[tuple[DeckLoad, ...], tuple[Cell, ...]]:
    """Return every load on deck once, and where two tables disagree about one.

    Parameters
    ----------
    case : Case
    weights : WeightList
        What comes off and goes on, with its masses.
    faults : list of str
        Takes the sentence of each row that cannot be used.

    Returns
    -------
    tuple of (tuple of DeckLoad, tuple of Cell)
        A thing stands on deck with all that belongs to it; its mass is that of the list of things.

    References
    ----------
    Model of our own; each load see ``deck_load``.
    """
    things, rows = read_things(case), case.rows(DECKS)
    carried = carried_by(things, weights)
    standing = [thing for thing in things if thing.goes_on and thing.on_open_deck]
    sized = [thing for thing in standing if thing.footprint and thing.key in carried]
    limits = {name_key(row.text("name")): row for row in rows}
    loads, told = [], []
    for thing in sized:
        row = limits.get(thing.key, Row(""))
        loads += _load(thing.name, carried[thing.key], thing.footprint, thing.row, row, faults)
    for row in without_named(sized, rows):
        mass = carried.get(name_key(row.text("name")))
        given = row.number("load")
        if mass is None and given is None:
            name = row.text("name")
            faults.append(f"{DECKS.title}: {name}: its mass is missing, and no thing is so named.")
            continue
        known = Span.exact(given) if mass is None else mass
        loads += _load(row.text("name"), known, row.number("area"), Row(""), row, faults)
    for row in rows:
        told += _disagreement(row, carried.get(name_key(row.text("name"))))
    return tuple(loads), tuple(told)


def carried_by(things: Sequence[Thing], weights: WeightList) -> dict[str, Span]:
    """Return the mass of each thing that goes on, with all that belongs to it.

    Parameters
    ----------
    things : sequence of Thing
    weights : WeightList

    Returns
    -------
    dict of str to Span
        Name as it is compared -> mass [t].

    References
    ----------
    Sums of masses.
    """
    masses: dict[str, Span] = {}
    for weight in weights.weights:
        if weight.act == "on":
            key = name_key(weight.name)
            masses[key] = masses.get(key, Span.exact(0.0)) + weight.mass
    groups: dict[str, Span] = {}
    for thing in things:
        mass = masses.get(thing.key)
        if thing.goes_on and mass is not None:
            groups[thing.group] = groups.get(thing.group, Span.exact(0.0)) + mass
    return groups


def _load(
    name: str, mass: Span, area: float, thing: Row, row: Row, faults: list[str]
) -> Iterator[DeckLoad]:
    """Yield the load of a mass [t] on an area [m²], spread over what the mass may be."""
    # What the thing itself says of its deck stands before the older table.
    given = {
        column: row.number(column) if thing.number(column) is None else thing.number(column)
        for column in DECLARED
    }
    try:
        load = deck_load(name, mass.middle, area, **given)
    except ConversionError as problem:
        faults.append(f"{DECKS.title}: {problem}")
        return
    if load.share is not None and mass.middle > 0:
        low, high = mass.low / mass.middle, mass.high / mass.middle
        share = Span(load.share.low * low, load.share.point, load.share.high * high)
        load = replace(load, share=share)
    yield load


def _disagreement(row: Row, mass: Span | None) -> Iterator[Cell]:
    """Yield that a load on deck has another mass in the list of things."""
    given = row.number("load")
    if given is None or mass is None or mass.low <= given <= mass.high:
        return
    yield sentence(
        "{name}: {given} among the loads on deck, and {mass} among what goes on, which counts.",
        name=row.text("name"),
        given=Quantity.exact(given, "t"),
        mass=mass.quantity("t", 0),
    )
