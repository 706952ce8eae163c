"""The units counted on board, per system of the checklists, how a unit's name becomes its id, and what hangs on a unit that is to be taken out."""

import re
from collections.abc import Mapping

from inspector.assess.gather import by_age, gone, kind_of, space_of, texts, units
from inspector.assess.judging import typed_text
from inspector.checklists import Library, System
from inspector.record.state import State

Changes = list[tuple[str, str, str | bool | None]]
LONGEST = 80


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


def hanging(state: State) -> dict[str, dict[str, int]]:
    """"<system>/<unit>" -> how many answers, photos, findings and work lines hang on that unit; nothing for a unit on which none does."""
    found: dict[str, dict[str, int]] = {}
    for subject in state.subjects("sheet/"):
        if state.values(subject):
            _count(found, subject.removeprefix("sheet/"), "answer")
    for subject in by_age(state, "photo/"):
        _count(found, texts(state, subject).get("on", "").removeprefix("unit/").removeprefix("sheet/"), "photo")
    for subject in by_age(state, "finding/"):
        _count(found, texts(state, subject).get("on", ""), "finding")
    for subject in by_age(state, "scope/"):
        has = texts(state, subject)
        _count(found, f"{has.get('system', '')}/{has.get('unit', 'all')}", "work line")
    return found


def _count(found: dict[str, dict[str, int]], place: str, what: str) -> None:
    system, unit, *_ = [*place.split("/"), "", ""]
    if system and unit:
        counts = found.setdefault(f"{system}/{unit}", {})
        counts[what] = counts.get(what, 0) + 1


def told_hanging(counts: Mapping[str, int]) -> str:
    """What hangs on a unit as a clause: "12 answers, 1 photo and 1 finding hang on it"."""
    parts = [f"{count} {what if count == 1 else what + 's'}" for what, count in counts.items()]
    if not parts:
        return "nothing hangs on it"
    said = f"{', '.join(parts[:-1])} and {parts[-1]}" if len(parts) > 1 else parts[0]
    return f"{said} {'hangs' if sum(counts.values()) == 1 else 'hang'} on it"


def counted(form: Mapping[str, str], state: State, library: Library, system: System) -> tuple[Changes, list[str], list[str]]:
    """What a posted count changes -> (changes, faults, what to tell); where there is a fault, nothing of it may be recorded.

    `unit-<id>` renames; `out-<id>`, ticked, takes out; `add` brings a new unit, or back the one of that name which was taken out.
    """
    changes: Changes = []
    faults, told, out = [], [], set()
    for unit in units_of(state, library)[system.id]:
        subject = f"unit/{system.id}/{unit['id']}"
        if form.get(f"out-{unit['id']}"):
            changes.append((subject, "gone", True))
            out.add(_alike(unit["name"]))
            told.append(f"{unit['name']} is taken out. To bring it back with all that hangs on it, add the same name again.")
            continue
        name = form.get(f"unit-{unit['id']}")
        if name is not None and not name.strip():
            faults.append(f"{unit['name']}: a unit needs a name. To take it out, tick \"take out\" beside it; nothing was changed.")
        elif name is not None:
            changes.append((subject, "name", name.strip()[:LONGEST]))
        for field, known in (("space", library.spaces), ("kind", system.kinds)):
            value = form.get(f"{field}-{unit['id']}")
            if value is not None and (value == "" or value in known):
                changes.append((subject, field, value or None))
    added = form.get("add", "").strip()[:LONGEST]
    if added and _alike(added) in out:
        faults.append(f"{added} is ticked to be taken out and typed to be added: do one of both; nothing was changed.")
    elif added:
        changes += _added(form, state, system, added, told)
    return changes, faults, told


def _added(form: Mapping[str, str], state: State, system: System, name: str, told: list[str]) -> Changes:
    """The changes that bring a unit: the one of that name which was taken out (the fullest, where there are several), else a new one."""
    prefix = f"unit/{system.id}/"
    before = [one for one in state.subjects(prefix) if gone(state, one) and _alike(typed_text(state.value(one, "name"))) == _alike(name)]
    if before:
        counts = hanging(state)
        subject = max(before, key=lambda one: sum(counts.get(one.removeprefix("unit/"), {}).values()))
        told.append(f"{name} had been taken out and is back, with all that hangs on it.")
        return [(subject, "gone", None)]
    subject = prefix + unit_id(name, {one.removeprefix(prefix) for one in state.subjects(prefix)})
    kind = form.get("kind", "")
    return [(subject, "name", name), *([(subject, "kind", kind)] if kind in system.kinds else [])]


def _alike(name: str) -> str:
    return " ".join(name.split()).casefold()
