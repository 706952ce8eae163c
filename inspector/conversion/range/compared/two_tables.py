"""What two tables say of one thing: tanks and stores, engines and sets, and the hotel load."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from inspector.conversion.core.case import Case
from inspector.conversion.core.engine_rows import (
    ENGINES,
    GENERATOR,
    PROPELLER,
    SET_EFFICIENCY,
)
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.tank_rows import capacity_after
from inspector.conversion.power.electrical_loads import demand
from inspector.conversion.power.particulars import ENGINES as PLANT_ENGINES
from inspector.conversion.power.particulars import GENERATORS as PLANT_SETS
from inspector.conversion.power.plant_rows import read_plant
from inspector.conversion.range.hotel_load import Hotel
from inspector.conversion.range.stores import Stores
from inspector.values.quantity import Cell, Quantity, sentence

# What a volume, a rating and a load may differ by and still be the same (limits of our own).
SAME_VOLUME, SAME_RATING, SAME_LOAD = 0.02, 0.10, 0.15
# What a tank holds -> the field of the stores that it gives.
IN_TANKS = {"fresh water": "water", "sewage": "sewage", "grey water": "grey"}


def stores_in_tanks(typed: Stores, tanks: Sequence[Row]) -> tuple[Stores, tuple[Cell, ...]]:
    """Return the stores with the capacities of the tanks that hold them after the conversion.

    Parameters
    ----------
    typed : Stores
    tanks : sequence of Row
        Each tank once.

    Returns
    -------
    tuple of (Stores, tuple of Cell)
        A tank that is planned away gives nothing; a total that was typed beside the tanks and
        differs is named, and the tanks count.

    References
    ----------
    Model of our own.
    """
    told, found = [], {}
    for contents, name in IN_TANKS.items():
        capacity, given = capacity_after(tanks, contents), getattr(typed, name)
        if capacity is None:
            continue
        found[name] = capacity
        if given is not None and _differ(given, capacity, SAME_VOLUME):
            text = (
                "{contents}: {given} among the stores, and the tanks that hold it after the "
                "conversion have {capacity}; the tanks count."
            )
            told.append(
                sentence(
                    text,
                    contents=contents.capitalize(),
                    given=Quantity.exact(given, "m³"),
                    capacity=Quantity.exact(capacity, "m³"),
                )
            )
    return replace(typed, **found), tuple(told)


def _differ(first: float, second: float, share: float) -> bool:
    return abs(first - second) > share * max(abs(first), abs(second))


def plants_that_differ(case: Case) -> Iterator[Cell]:
    """Yield where engines and sets have other ratings in the two tables that may hold them.

    Parameters
    ----------
    case : Case

    Yields
    ------
    Cell

    References
    ----------
    Sums of ratings; sets by 0.94 of their engines (common practice).
    """
    here = {PROPELLER: 0.0, GENERATOR: 0.0}
    for row in case.rows(ENGINES):
        electrical = row.number("electrical") or SET_EFFICIENCY * row.number("power")
        each = row.number("power") if row.text("drives") == PROPELLER else electrical
        if row.text("emergency") != "yes":
            here[row.text("drives")] += each * (row["count"] or 1)
    sets = [row for row in case.rows(PLANT_SETS) if row.text("emergency") != "yes"]
    there = {
        PROPELLER: ("Main engines", case.rows(PLANT_ENGINES)),
        GENERATOR: ("Generating sets", sets),
    }
    for drives, (name, rows) in there.items():
        # A set with a bus of its own is in both by one row, and the other table adds to it.
        beside = any(row.text("bus") for row in case.rows(ENGINES) if row["drives"] == drives)
        plant = sum(row.number("rated") for row in rows)
        if here[drives] and plant and not beside and _differ(here[drives], plant, SAME_RATING):
            yield sentence(
                "{name}: {here} in the table of engines and {plant} in the power plant; type each "
                "once.",
                name=name,
                here=Quantity.exact(here[drives], "kW", 0),
                plant=Quantity.exact(plant, "kW", 0),
            )


def hotel_loads_that_differ(case: Case, hotel: Hotel) -> Iterator[Cell]:
    """Yield where the hotel load as read and the list of loads disagree.

    Parameters
    ----------
    case : Case
    hotel : Hotel

    Yields
    ------
    Cell

    References
    ----------
    Demand by the load balance, see ``electrical_loads``; the limit is our own.
    """
    present = read_plant(case).present_consumers
    if not present or hotel.measured_at != "switchboard":
        return
    for place, condition, read in (
        ("at sea", "sea", hotel.sea),
        ("at anchor", "harbour", hotel.anchor),
    ):
        listed = demand(present, condition).span
        if read is None or listed is None:
            continue
        if (1 + SAME_LOAD) * listed.high < read or (1 - SAME_LOAD) * listed.low > read:
            yield sentence(
                "Hotel load {place}: {read} as read at the switchboard, and {listed} by the list "
                "of loads; range takes the reading, the power plant the list.",
                place=place,
                read=Quantity.exact(read, "kW", 0),
                listed=listed.quantity("kW", 0),
            )
