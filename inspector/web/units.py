"""The units counted on board, per system of the checklists, and how a unit's name becomes its id."""

import re

from inspector.assess.gather import kind_of, space_of, units
from inspector.checklists import Library
from inspector.record.state import State


def units_of(state: State, library: Library) -> dict[str, list[dict[str, str]]]:
    """System id -> its units ({id, name, space, kind}) in the order they were counted; every system of the library has a key."""
    counted = units(state)
    return {
        system.id: [{"id": one, "name": name, "space": space_of(state, system, one), "kind": kind_of(state, system, one)}
                    for one, name in counted.get(system.id, {}).items()]
        for system in library.systems.values()
    }


def unit_id(name: str, taken: set[str]) -> str:
    """An id for a unit's name: lower case with hyphens, made unique among `taken`; never "all", which means the whole system."""
    base = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:40] or "unit"
    candidate, count = base, 1
    while candidate in taken or candidate == "all":
        count += 1
        candidate = f"{base}-{count}"
    return candidate
