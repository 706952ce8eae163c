"""What a checklist file must satisfy: every mistake with file, check, key and what is right."""

import re
from collections.abc import Iterable, Iterator, Mapping

from inspector.checklists.criterion_needs import Raw, faults_of_needs, reading_kind
from inspector.criteria.core.criterion import Criterion
from inspector.values.field import KINDS
from inspector.values.table_rules import (
    FLAG,
    ID,
    NAME,
    TABLE,
    TABLES,
    TEXT,
    TEXT_OR_TEXTS,
    TEXTS,
    any_of,
    between,
    entries_of,
    faults_of_keys,
    faults_of_unit,
    items_of,
)
from inspector.values.vocabulary import DEPTHS, LOOK_NEEDS, SIGNAL_WORDS

# Of like units, which of them a glance is worth.
WHICH = ("each", "worst", "one")
TAKEN_FROM = ("vessel.", "brief.", "inspection.", "certificate.")

SYSTEM_KEYS = {
    "id": ID,
    "name": TEXT,
    "order": between(1, 999),
    "unit": TEXT,
    "units": TEXTS,
    "about": TEXT,
    "retain": TEXT,
    "refurbish": TEXT,
    "remove": TEXT,
}
SYSTEM_OPTIONS = {
    "cautions": TEXTS,
    "home": TEXT,
    "unit_homes": TABLE,
    "kinds": TABLE,
    "unit_kinds": TABLE,
}
CHECK_KEYS = {
    "id": ID,
    "title": TEXT,
    "ask": TEXT,
    "look": TEXT,
    "bad": TEXT,
    "space": TEXT,
    "minutes": between(0.5, 240),
    "weight": between(1, 5),
}
CHECK_OPTIONS = {
    "critical": FLAG,
    "photo": FLAG,
    "enclosed": FLAG,
    "caution": TEXT_OR_TEXTS,
    "harmless": TEXT,
    "criterion": TEXT,
    "given": TABLE,
    "from": TABLE,
    "for": TEXTS,
    "readings": TABLES,
    "needs": any_of(LOOK_NEEDS),
    "proof": any_of(DEPTHS),
    "glance": TABLE,
    "scan": FLAG,
    "together": TEXT,
    "once": FLAG,
    "optional": FLAG,
    "also": TEXTS,
    "replaces": TEXTS,
}
GLANCE_KEYS = {"look": TEXT, "seconds": between(1, 600), "bad": TEXT}
GLANCE_OPTIONS = {"which": any_of(WHICH)}
READING_KEYS = {"id": NAME, "label": TEXT}
READING_OPTIONS = {
    "kind": any_of(KINDS),
    "unit": TEXT,
    "choices": TEXTS,
    "optional": FLAG,
    "unjudged": TEXT,
}
SPACE_KEYS = {"name": TEXT, "order": between(1, 999)}
CAUTION_KEYS = {
    "signal": any_of(SIGNAL_WORDS),
    "hurts": TEXT,
    "instead": TEXT,
    "decides": TEXT,
}


def faults_of_spaces(file: str, spaces: object) -> list[str]:
    """Return every mistake of the table of spaces, which maps each id to its table.

    Parameters
    ----------
    file : str
        At the start of each sentence.
    spaces : object
        What the file has under ``space``.

    Returns
    -------
    list of str
    """
    return _faults_of_tables(file, "space", spaces, SPACE_KEYS)


def faults_of_cautions(file: str, cautions: object) -> list[str]:
    """Return every mistake of the table of cautions, which maps each id to its table.

    Parameters
    ----------
    file : str
        At the start of each sentence.
    cautions : object
        What the file has under ``caution``.

    Returns
    -------
    list of str
    """
    return _faults_of_tables(file, "caution", cautions, CAUTION_KEYS)


def _faults_of_tables(file: str, key: str, tables: object, keys: Mapping) -> list[str]:
    """Return every mistake of the tables below a key, each with the same required keys."""
    if not isinstance(tables, Mapping) or not tables:
        return [f"{file}, key {key}: is missing; expected at least one [{key}.<id>] table."]
    faults: list[str] = []
    for name, table in tables.items():
        faults += faults_of_keys(f"{file}, {key} {name}", table, keys, {})
    return faults


def faults_of_system(
    file: str,
    data: Raw,
    *,
    spaces: Raw,
    cautions: Raw,
    criteria: Mapping[str, Criterion] | None,
) -> list[str]:
    """Return every mistake of the file of one system.

    Parameters
    ----------
    file : str
        Its name, at the start of each sentence.
    data : mapping
        What it holds.
    spaces, cautions : mapping
        Those of the folder, by id.
    criteria : mapping of str to Criterion, optional
        Those that a check may name; None leaves that unchecked.

    Returns
    -------
    list of str
    """
    head = data.get("system")
    if not isinstance(head, dict):
        return [f"{file}, key system: is missing; expected a [system] table."]
    checks = data.get("check")
    faults = [*_faults_of_head(file, head, spaces, cautions)]
    faults += _faults_of_kinds(file, head, entries_of(checks))
    if not TABLES.accepts(checks) or not checks:
        problem = "is missing or no list of tables; expected at least one [[check]]."
        return [*faults, f"{file}, key check: {problem}"]
    for number, check in enumerate(checks):
        where = f"{file}, check {check.get('id') or f'number {number + 1}'}"
        faults += _faults_of_check(where, check, spaces, cautions)
        faults += [] if criteria is None else faults_of_needs(where, check, criteria)
        faults += _faults_of_repetition(where, check, checks[:number])
    return faults


def _faults_of_head(file: str, head: Raw, spaces: Raw, cautions: Raw) -> Iterator[str]:
    where = f"{file}, system"
    yield from faults_of_keys(where, head, SYSTEM_KEYS, SYSTEM_OPTIONS)
    if head.get("id") and f"{head['id']}.toml" != file:
        own = file.removesuffix(".toml")
        yield f"{where}, key id: is {head['id']!r}; expected the file's own name, {own!r}."
    for caution in entries_of(head.get("cautions")):
        if _unknown(caution, cautions):
            yield f"{where}, key cautions: {caution!r} is not in cautions.toml."
    yield from _faults_of_homes(where, head, spaces)


def _faults_of_homes(where: str, head: Raw, spaces: Raw) -> Iterator[str]:
    units = entries_of(head.get("units"))
    homes = [("home", head.get("home"))]
    for unit, space in items_of(head.get("unit_homes")):
        homes.append((f"unit_homes.{unit}", space))
        if unit not in units:
            known = ", ".join(map(str, units))
            problem = f"is none of the units; expected one of {known}."
            yield f"{where}, key unit_homes.{unit}: {problem}"
        if not isinstance(space, str):
            yield f"{where}, key unit_homes.{unit}: is {space!r}; expected the id of a space."
    for key, space in homes:
        if _unknown(space, spaces):
            yield f"{where}, key {key}: {space!r} is not in spaces.toml."


def _faults_of_kinds(file: str, head: Raw, checks: list) -> Iterator[str]:
    kinds = [kind for kind, _ in items_of(head.get("kinds"))]
    known = ", ".join(kinds) or "none, since the system has no kinds"
    for unit, kind in items_of(head.get("unit_kinds")):
        if unit not in entries_of(head.get("units")):
            yield f"{file}, system, key unit_kinds.{unit}: is none of the units."
        if kind not in kinds:
            yield f"{file}, system, key unit_kinds.{unit}: is {kind!r}; known kinds are {known}."
    for check in checks:
        for kind in entries_of(check.get("for")) if isinstance(check, dict) else ():
            if kind not in kinds:
                problem = f"{kind!r} is no kind of unit; known are {known}."
                yield f"{file}, check {check.get('id')}, key for: {problem}"


def _faults_of_repetition(where: str, check: Raw, before: list[Raw]) -> Iterator[str]:
    name, title = check.get("id"), _plain(check.get("title"))
    if name is not None and name in [other.get("id") for other in before]:
        yield f"{where}, key id: is there twice in this file; expected each id once."
    if title and title in [_plain(other.get("title")) for other in before]:
        problem = f"{check['title']!r} is there twice in this file; expected each title once."
        yield f"{where}, key title: {problem}"


def _plain(title: object) -> str:
    """A title without case and punctuation, which a reader does not tell apart."""
    return " ".join(re.findall(r"\w+", title.casefold())) if isinstance(title, str) else ""


def cautions_of(check: Raw) -> list:
    """Return the cautions of a check, which may be written as one id or as a list of ids."""
    written = check.get("caution")
    return [written] if isinstance(written, str) else entries_of(written)


def _faults_of_check(where: str, check: Raw, spaces: Raw, cautions: Raw) -> Iterator[str]:
    yield from faults_of_keys(where, check, CHECK_KEYS, CHECK_OPTIONS)
    if _unknown(check.get("space"), spaces):
        yield f"{where}, key space: {check['space']!r} is not in spaces.toml."
    for caution in cautions_of(check):
        if _unknown(caution, cautions):
            yield f"{where}, key caution: {caution!r} is not in cautions.toml."
    if isinstance(check.get("glance"), dict):
        place = f"{where}, glance"
        yield from faults_of_keys(place, check["glance"], GLANCE_KEYS, GLANCE_OPTIONS)
    for name, origin in items_of(check.get("from")):
        if not str(origin).startswith(TAKEN_FROM):
            expected = "vessel.<field>, brief.<field>, inspection.<field> or certificate.<field>"
            yield f"{where}, key from.{name}: is {origin!r}; expected {expected}."
    readings = [each for each in entries_of(check.get("readings")) if isinstance(each, dict)]
    for reading in readings:
        yield from _faults_of_reading(where, reading)
    names = [str(reading.get("id")) for reading in readings]
    for name in sorted({name for name in names if names.count(name) > 1}):
        yield f"{where}, reading {name}: is there twice; expected each id once."


def _faults_of_reading(where: str, reading: Raw) -> Iterator[str]:
    where, kind = f"{where}, reading {reading.get('id', '?')}", reading_kind(reading)
    yield from faults_of_keys(where, reading, READING_KEYS, READING_OPTIONS)
    if kind == "number" and "unit" not in reading:
        yield f"{where}, key unit: is missing; expected the unit of the number."
    if isinstance(reading.get("unit"), str):
        yield from faults_of_unit(where, reading["unit"])
    if kind == "choice" and not reading.get("choices"):
        yield f"{where}, key choices: is missing; expected the list to choose from."


def _unknown(value: object, names: Iterable[str]) -> bool:
    # A list or table at the place of an id is reported by its own rule, and cannot be looked up.
    return isinstance(value, str) and value not in names
