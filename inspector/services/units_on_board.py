"""The units counted on board: listed, named, added and removed."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from inspector.assess.from_state import read_units
from inspector.checklists.model import Library, System
from inspector.record.state import State
from inspector.record.typed_values import texts, typed_text
from inspector.values.text import counted, listed
from inspector.values.typed_text import length_fault, posted_text

Change = tuple[str, str, Any]
LONGEST_NAME = 80
# An id is a part of addresses and subjects; the name is kept whole beside it.
LONGEST_ID = 40


def units_of(state: State, library: Library) -> dict[str, list[dict[str, str]]]:
    """Return the units on board.

    Parameters
    ----------
    state : State
    library : Library

    Returns
    -------
    dict
        System id -> its units, each with id, name, space and kind, in the order in which they were
        counted; every system of the library has a key.
    """
    found: dict[str, list[dict[str, str]]] = {system.id: [] for system in library.systems.values()}
    for unit in read_units(state):
        if unit.system in found:
            space = unit.space or library.systems[unit.system].home
            found[unit.system].append(
                {"id": unit.id, "name": unit.name, "space": space, "kind": unit.kind}
            )
    return found


def proposed_units(library: Library) -> list[Change]:
    """Return the changes that count the units which the checklists propose.

    Parameters
    ----------
    library : Library

    Returns
    -------
    list of (str, str, object)
        Subject, field and value of each change.
    """
    changes: list[Change] = []
    for system in library.systems.values():
        taken: set[str] = set()
        for name in system.units:
            unit = unit_id(name, taken)
            taken.add(unit)
            subject = f"unit/{system.id}/{unit}"
            changes.append((subject, "name", name))
            if name in system.unit_homes:
                changes.append((subject, "space", system.unit_homes[name]))
            if name in system.unit_kinds:
                changes.append((subject, "kind", system.unit_kinds[name]))
    return changes


def unit_id(name: str, taken: set[str]) -> str:
    """Return an id for a unit's name.

    Parameters
    ----------
    name : str
    taken : set of str
        The ids that other units of the system have.

    Returns
    -------
    str
        Lower case with hyphens; never "all", which means the whole system.
    """
    base = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:LONGEST_ID] or "unit"
    candidate, count = base, 1
    # "all" is the whole system in addresses and subjects.
    while candidate in taken or candidate == "all":
        count += 1
        candidate = f"{base}-{count}"
    return candidate


def records_by_unit(state: State) -> dict[str, dict[str, int]]:
    """Return how much is recorded for each unit, so that nobody removes one unaware of it.

    Parameters
    ----------
    state : State

    Returns
    -------
    dict
        "<system>/<unit>" -> how many answers, photos, findings and work lines; a unit for which
        nothing is recorded is not in it.
    """
    found: dict[str, dict[str, int]] = {}
    # A sheet exists in the record once anything of it was answered, also if that was cleared.
    for subject in state.subjects("sheet/"):
        if state.values(subject):
            _count(found, subject.removeprefix("sheet/"), "answer")
    for subject in state.existing("photo/"):
        place = texts(state, subject).get("on", "")
        _count(found, place.removeprefix("unit/").removeprefix("sheet/"), "photo")
    for subject in state.existing("finding/"):
        _count(found, texts(state, subject).get("on", ""), "finding")
    for subject in state.existing("scope/"):
        line = texts(state, subject)
        _count(found, f"{line.get('system', '')}/{line.get('unit', 'all')}", "work line")
    return found


def _count(found: dict[str, dict[str, int]], place: str, what: str) -> None:
    system, unit, *_ = [*place.split("/"), "", ""]
    if system and unit:
        counts = found.setdefault(f"{system}/{unit}", {})
        counts[what] = counts.get(what, 0) + 1


def records_clause(counts: Mapping[str, int]) -> str:
    """Return what is recorded for a unit as a clause.

    Parameters
    ----------
    counts : mapping of str to int
        As ``records_by_unit`` counts for one unit.

    Returns
    -------
    str

    Examples
    --------
    >>> records_clause({"answer": 12, "photo": 1}), records_clause({})
    ('12 answers and 1 photo are recorded for it', 'nothing is recorded for it')
    """
    if not counts:
        return "nothing is recorded for it"
    parts = listed([counted(count, what) for what, count in counts.items()])
    return f"{parts} {'is' if sum(counts.values()) == 1 else 'are'} recorded for it"


@dataclass
class CountResult:
    """What a posted count changes. Where there is a fault, nothing of it may be recorded.

    Parameters
    ----------
    changes : list of (str, str, object)
        Subject, field and value.
    faults : list of str
        A sentence for everything that is wrong.
    notes : list of str
        What to show once the changes are recorded.
    removed : set of str
        Names of the units that are taken out, in a form for comparing.
    """

    changes: list[Change] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    removed: set[str] = field(default_factory=set)


def unit_changes(
    form: Mapping[str, str], state: State, library: Library, system: System
) -> CountResult:
    """Read a posted count of one system's units.

    Parameters
    ----------
    form : mapping of str to str
        ``unit-<id>`` renames; ``out-<id>``, ticked, takes out; ``space-<id>`` and ``kind-<id>``
        change where and what it is; ``add`` brings a new unit, or back the one of that name which
        was taken out.
    state : State
    library : Library
    system : System

    Returns
    -------
    CountResult
    """
    result = CountResult()
    for unit in units_of(state, library)[system.id]:
        if form.get(f"out-{unit['id']}"):
            _take_out(result, system, unit)
        else:
            _rename(result, form, system, unit)
            _place(result, form, library, system, unit)
    _add(result, form, state, system)
    return result


def _take_out(result: CountResult, system: System, unit: dict[str, str]) -> None:
    result.changes.append((f"unit/{system.id}/{unit['id']}", "gone", True))
    result.removed.add(comparable_name(unit["name"]))
    result.notes.append(
        f"{unit['name']} is taken out. To bring it back with all that is recorded for it, "
        "add the same name again."
    )


def _rename(
    result: CountResult, form: Mapping[str, str], system: System, unit: dict[str, str]
) -> None:
    if f"unit-{unit['id']}" not in form:
        return
    name = posted_text(form[f"unit-{unit['id']}"])
    too_long = length_fault(unit["name"], name, LONGEST_NAME)
    if too_long:
        result.faults.append(too_long)
    elif not name:
        # An emptied name alone takes nothing out: it may be a slip of a wet thumb.
        result.faults.append(
            f'{unit["name"]}: a unit needs a name. To take it out, tick "take out" beside it; '
            "nothing was changed."
        )
    else:
        result.changes.append((f"unit/{system.id}/{unit['id']}", "name", name))


def _place(
    result: CountResult,
    form: Mapping[str, str],
    library: Library,
    system: System,
    unit: dict[str, str],
) -> None:
    for name, known in (("space", library.spaces), ("kind", system.kinds)):
        value = form.get(f"{name}-{unit['id']}")
        # A space or kind that the checklist no longer has would be shown nowhere.
        if value is not None and (value == "" or value in known):
            result.changes.append((f"unit/{system.id}/{unit['id']}", name, value or None))


def _add(result: CountResult, form: Mapping[str, str], state: State, system: System) -> None:
    name = posted_text(form.get("add"))
    too_long = length_fault("The name of one more", name, LONGEST_NAME)
    if too_long:
        result.faults.append(too_long)
    # The two would undo each other in an order that nobody sees.
    elif name and comparable_name(name) in result.removed:
        result.faults.append(
            f"{name} is ticked to be taken out and typed to be added: do one of both; "
            "nothing was changed."
        )
    elif name:
        before = _taken_out_before(state, system, name)
        if before:
            result.changes.append((before, "gone", None))
            result.notes.append(
                f"{name} had been taken out and is back, with all that is recorded for it."
            )
        else:
            result.changes += _new_unit(form, state, system, name)


def _taken_out_before(state: State, system: System, name: str) -> str:
    """The subject of the unit of that name which was taken out, "" where there is none.

    Where there are several, the one for which most is recorded.
    """
    found = [
        subject
        for subject in state.subjects(f"unit/{system.id}/")
        if state.removed(subject)
        and comparable_name(typed_text(state.value(subject, "name"))) == comparable_name(name)
    ]
    recorded = records_by_unit(state)

    def amount(subject: str) -> int:
        return sum(recorded.get(subject.removeprefix("unit/"), {}).values())

    # Of several that once had the name, the one of which most was recorded.
    return max(found, key=amount, default="")


def _new_unit(form: Mapping[str, str], state: State, system: System, name: str) -> list[Change]:
    prefix = f"unit/{system.id}/"
    taken = {subject.removeprefix(prefix) for subject in state.subjects(prefix)}
    subject = prefix + unit_id(name, taken)
    changes: list[Change] = [(subject, "name", name)]
    if form.get("kind") in system.kinds:
        changes.append((subject, "kind", form["kind"]))
    return changes


def comparable_name(name: str) -> str:
    """A name without its capitals and double blanks."""
    return " ".join(name.split()).casefold()
