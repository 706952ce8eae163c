"""The units of every system counted in one choice, by a common layout; or one more, one less."""

from collections.abc import Iterator, Mapping

from inspector.checklists.model import Layout, Library, System
from inspector.record.state import State
from inspector.record.typed_values import texts
from inspector.services.units_on_board import (
    Change,
    CountResult,
    comparable_name,
    records_by_unit,
    records_clause,
    unit_id,
    units_of,
)
from inspector.values.text import capital, listed


def layout_changes(state: State, library: Library, layout: Layout) -> CountResult:
    """Return what counts the units of a layout, in place of those that are on board.

    Parameters
    ----------
    state : State
    library : Library
    layout : Layout

    Returns
    -------
    CountResult
        A unit for which something is recorded stays, and a note names it. One that the layout has
        too, by its name, stays as it is but for its kind.
    """
    result = CountResult()
    recorded, on_board, kept = records_by_unit(state), units_of(state, library), []
    for system in library.systems.values():
        wanted = list(units_in(layout, library, system))
        names = {comparable_name(unit["name"]) for unit in wanted}
        for unit in on_board[system.id]:
            if comparable_name(unit["name"]) in names:
                continue
            # Never taken out by a count: with the unit would go what was recorded of it.
            if f"{system.id}/{unit['id']}" in recorded:
                kept.append(unit["name"])
            else:
                result.changes.append((f"unit/{system.id}/{unit['id']}", "gone", True))
        for unit in wanted:
            result.changes += _counted_unit(state, system, unit, result.changes)
    result.notes.append(f"Counted as {layout.name.lower()}. Correct it below by plus and minus.")
    if kept:
        result.notes.append(
            f"{listed(kept)} stayed, because something is recorded there. Take out what she does "
            "not have."
        )
    return result


def units_in(layout: Layout, library: Library, system: System) -> Iterator[dict[str, str]]:
    """Yield the units that a layout has of a system, with what these checklists know of them.

    Parameters
    ----------
    layout : Layout
    library : Library
    system : System

    Yields
    ------
    dict of str to str
        Name, and where it has one kind and space.
    """
    for unit in layout.units.get(system.id, tuple(proposed_of(system))):
        known = {"kind": system.kinds, "space": library.spaces}
        yield {
            name: value for name, value in unit.items() if name not in known or value in known[name]
        }


def proposed_of(system: System) -> Iterator[dict[str, str]]:
    """Yield the units that a checklist proposes, each with name, and where known kind and space."""
    for name in system.units:
        found = {"name": name}
        if name in system.unit_kinds:
            found["kind"] = system.unit_kinds[name]
        if name in system.unit_homes:
            found["space"] = system.unit_homes[name]
        yield found


def _counted_unit(
    state: State, system: System, unit: Mapping[str, str], before: list[Change]
) -> Iterator[Change]:
    """What counts one unit: changes of the one that had its name, else a new one."""
    prefix = f"unit/{system.id}/"
    subject = _subject_of_name(state, prefix, unit["name"])
    if not subject:
        taken = {one.removeprefix(prefix) for one in state.subjects(prefix)}
        taken |= {one.removeprefix(prefix) for one, _, _ in before if one.startswith(prefix)}
        subject = prefix + unit_id(unit["name"], taken)
    # A unit of that name that was taken out comes back as itself, with its history.
    elif state.removed(subject):
        yield subject, "gone", None
    for name in ("name", "kind", "space"):
        if name in unit or state.value(subject, name):
            yield subject, name, unit.get(name)


def _subject_of_name(state: State, prefix: str, name: str) -> str:
    """The unit of a name, one on board before one that was taken out; "" where there is none."""
    wanted = comparable_name(name)
    found = [
        subject
        for subject in state.subjects(prefix)
        if comparable_name(texts(state, subject).get("name", "")) == wanted
    ]
    # One on board before one that was taken out.
    return min(found, key=state.removed, default="")


def one_more(state: State, library: Library, system: System, kind: str) -> CountResult:
    """Return what counts one more unit of a kind.

    Parameters
    ----------
    state : State
    library : Library
    system : System
    kind : str
        "" where the system has no kinds, or for a unit of no kind.

    Returns
    -------
    CountResult
        The unit of this kind that was taken out last comes back, else the next one that the
        checklist proposes, else a new one with a number.
    """
    on_board = {comparable_name(unit["name"]) for unit in units_of(state, library)[system.id]}
    away = [
        subject
        for subject in state.subjects(f"unit/{system.id}/")
        if state.removed(subject) and texts(state, subject).get("kind", "") == kind
    ]
    named = [subject for subject in away if texts(state, subject).get("name")]
    if named:
        # The one taken out last comes back first, as a finger that tapped minus once too often
        # expects.
        return CountResult(changes=[(named[-1], "gone", None)])
    proposed = [
        unit
        for unit in proposed_of(system)
        if unit.get("kind", "") == kind and comparable_name(unit["name"]) not in on_board
    ]
    unit = proposed[0] if proposed else {"name": _next_name(system, kind, on_board)}
    if kind:
        unit["kind"] = kind
    return CountResult(changes=list(_counted_unit(state, system, unit, [])))


def _next_name(system: System, kind: str, on_board: set[str]) -> str:
    """The name of the kind, or of any unit, with the first number that is free."""
    base = capital(system.kinds.get(kind, system.unit))
    # Counted from 1, as units are numbered on board.
    number = 1
    while comparable_name(f"{base} {number}") in on_board:
        number += 1
    return f"{base} {number}"


def one_less(state: State, library: Library, system: System, kind: str) -> CountResult:
    """Return what takes out one unit of a kind, the last one for which nothing is recorded.

    Parameters
    ----------
    state : State
    library : Library
    system : System
    kind : str
        As for ``one_more``.

    Returns
    -------
    CountResult
        With a fault where something is recorded for each of them.
    """
    recorded = records_by_unit(state)
    units = [unit for unit in units_of(state, library)[system.id] if unit["kind"] == kind]
    bare = [unit for unit in units if f"{system.id}/{unit['id']}" not in recorded]
    if bare:
        return CountResult(changes=[(f"unit/{system.id}/{bare[-1]['id']}", "gone", True)])
    if not units:
        return CountResult(faults=[f"{system.name}: none is counted, so none can be taken out."])
    last = units[-1]
    clause = records_clause(recorded[f"{system.id}/{last['id']}"])
    return CountResult(
        faults=[
            f"{last['name']}: {clause}. To take it out all the same, tick it under its name; "
            "nothing was changed."
        ]
    )


def counts_by_kind(system: System, on_board: list[dict[str, str]]) -> list[tuple[str, str, int]]:
    """Return how many units of each kind are on board.

    Parameters
    ----------
    system : System
    on_board : list of dict
        Its units, as ``units_of`` lists them.

    Returns
    -------
    list of (str, str, int)
        Kind, what it is called, and the count; units of no kind only where there are any.
    """
    found = [
        (kind, name, sum(unit["kind"] == kind for unit in on_board))
        for kind, name in system.kinds.items()
    ]
    others = sum(unit["kind"] not in system.kinds for unit in on_board)
    if not found or others:
        found.append(("", capital(system.unit) if not found else "of no kind", others))
    return found
