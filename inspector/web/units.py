"""The units counted on board, per system, and how a unit's name becomes its id."""

import re

from inspector.checklists import Library
from inspector.record.state import State


def units_of(state: State, library: Library) -> dict[str, list[dict[str, str]]]:
    """System id -> its units ({id, name}) in the order they were counted; every system of the library has a key."""
    found: dict[str, list[tuple[tuple, dict[str, str]]]] = {system_id: [] for system_id in library.systems}
    for subject in state.subjects("unit/"):
        _, system_id, unit_id = subject.split("/")
        name = state.value(subject, "name")
        if system_id in found and name and not state.value(subject, "gone"):
            first = state.history(subject, "name")[0]
            found[system_id].append(((first.at, first.device, first.number), {"id": unit_id, "name": name}))
    return {system_id: [unit for _, unit in sorted(units, key=lambda pair: pair[0])] for system_id, units in found.items()}


def unit_id(name: str, taken: set[str]) -> str:
    """An id for a unit's name: lower case with hyphens, made unique among `taken`; never "all", which means the whole system."""
    base = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:40] or "unit"
    candidate, count = base, 1
    while candidate in taken or candidate == "all":
        count += 1
        candidate = f"{base}-{count}"
    return candidate
