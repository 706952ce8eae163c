"""What the files of a checklist folder must satisfy together: trials, layouts, and what one check
says of another.
"""

from collections.abc import Iterator, Mapping

from inspector.checklists.criterion_needs import Raw
from inspector.values.table_rules import (
    TABLE,
    TABLES,
    TEXT,
    TEXTS,
    any_of,
    between,
    entries_of,
    faults_of_keys,
    items_of,
)
from inspector.values.vocabulary import LOOK_NEEDS

PER = ("unit", "vessel")
TRIAL_KEYS = {
    "name": TEXT,
    "minutes": between(0.5, 480),
    "per": any_of(PER),
    "needs": any_of(LOOK_NEEDS),
}
TRIAL_OPTIONS = {"cautions": TEXTS, "about": TEXT}
LAYOUT_KEYS = {"name": TEXT, "about": TEXT, "units": TABLE}
UNIT_KEYS = {"name": TEXT}
UNIT_OPTIONS = {"kind": TEXT, "space": TEXT}


def faults_of_trials(file: str, trials: Raw, cautions: Raw) -> list[str]:
    """Return every mistake of the table of trials, which maps each id to its table.

    Parameters
    ----------
    file : str
        At the start of each sentence.
    trials : mapping
        What the file has under ``trial``.
    cautions : mapping
        Those of the folder, by id.

    Returns
    -------
    list of str
    """
    faults: list[str] = []
    for name, table in trials.items():
        where = f"{file}, trial {name}"
        faults += faults_of_keys(where, table, TRIAL_KEYS, TRIAL_OPTIONS)
        for caution in entries_of(dict(items_of(table)).get("cautions")):
            if caution not in cautions:
                faults.append(f"{where}, key cautions: {caution!r} is not in cautions.toml.")
    return faults


def faults_of_layouts(file: str, layouts: Raw) -> list[str]:
    """Return every mistake of the table of layouts, which maps each id to its table.

    Parameters
    ----------
    file : str
        At the start of each sentence.
    layouts : mapping
        What the file has under ``layout``. A kind or a space that the folder lacks is no mistake,
        since a surveyor's own file may have taken the place of the system that had it.

    Returns
    -------
    list of str
    """
    faults: list[str] = []
    for name, table in layouts.items():
        where = f"{file}, layout {name}"
        faults += faults_of_keys(where, table, LAYOUT_KEYS, {})
        for system, units in items_of(dict(items_of(table)).get("units")):
            place = f"{where}, key units.{system}"
            if not TABLES.accepts(units):
                faults.append(f"{place}: is {units!r}; expected {TABLES.expected}.")
            for unit in entries_of(units):
                faults += faults_of_keys(place, unit, UNIT_KEYS, UNIT_OPTIONS)
    return faults


def faults_across(files: Mapping[str, Raw], trials: Raw) -> list[str]:
    """Return every mistake that only the files of all systems together show.

    Parameters
    ----------
    files : mapping of str to mapping
        Name of each system's file -> what it holds.
    trials : mapping
        Those of the folder, by id.

    Returns
    -------
    list of str
    """
    # Across files, so after all have been read: a link may lead to a file that comes later.
    systems = {file.removesuffix(".toml") for file in files}
    faults: list[str] = []
    replaced: dict[str, str] = {}
    for file, data in files.items():
        for check in entries_of(data.get("check")):
            if isinstance(check, dict):
                own = f"{file.removesuffix('.toml')}/{check.get('id')}"
                where = f"{file}, check {check.get('id')}"
                faults += _faults_of_links(where, own, check, systems, trials)
                faults += _faults_of_replaced(where, own, check, replaced)
    return faults


def _faults_of_links(
    where: str, own: str, check: Raw, systems: set[str], trials: Raw
) -> Iterator[str]:
    trial = check.get("together")
    if isinstance(trial, str) and trial not in trials:
        yield f"{where}, key together: {trial!r} is not in trials.toml."
    for system in entries_of(check.get("also")):
        if not isinstance(system, str):
            continue  # its own rule reports it
        if system not in systems:
            known = ", ".join(sorted(systems))
            yield f"{where}, key also: {system!r} is no system; known are {known}."
        elif own.startswith(f"{system}/"):
            yield f"{where}, key also: {system!r} is its own system; expected another one."


def _faults_of_replaced(
    where: str, own: str, check: Raw, replaced: dict[str, str]
) -> Iterator[str]:
    """What it replaces must be an id of the form of one, named by no other check and not its own.

    An id that is still there is no mistake: a surveyor's own file may still have it.
    """
    for old in entries_of(check.get("replaces")):
        if not isinstance(old, str) or old.count("/") != 1:
            yield f"{where}, key replaces: is {old!r}; expected <system>/<check>."
        elif old == own:
            yield f"{where}, key replaces: {old!r} is this check itself; expected an older one."
        elif old in replaced:
            yield f"{where}, key replaces: {old!r} is replaced by {replaced[old]} already."
        else:
            replaced[old] = own
