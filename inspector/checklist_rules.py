"""What a checklist file must satisfy, as functions from raw TOML data to sentences: file, check, key, what is wrong, what would be right."""

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from inspector.checklist_criteria import KnownCriteria, faults_of_criterion, reading_kind
from inspector.errors import InspectorError
from inspector.quantities import known_unit

ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
SIGNALS = ("danger", "warning", "caution", "notice")
KINDS = ("number", "whole", "choice", "date", "text")
TAKEN_FROM = ("vessel.", "brief.", "inspection.")

Rule = tuple[Callable[[Any], bool], str]

_text: Rule = (lambda v: isinstance(v, str) and bool(v.strip()), "a text that is not empty")
_flag: Rule = (lambda v: isinstance(v, bool), "true or false")
_id: Rule = (lambda v: isinstance(v, str) and bool(ID.fullmatch(v)), "lower case letters, digits and hyphens")
_texts: Rule = (lambda v: isinstance(v, list) and all(isinstance(x, str) and x.strip() for x in v), "a list of texts")
_table: Rule = (lambda v: isinstance(v, dict), "a table { name = value }")
_tables: Rule = (lambda v: isinstance(v, list) and all(isinstance(x, dict) for x in v), "a list of tables")


def _between(low: float, high: float) -> Rule:
    # bool is an int in Python, and `weight = true` is a mistake, not a 1.
    return (lambda v: isinstance(v, int | float) and not isinstance(v, bool) and low <= v <= high, f"a number from {low:g} to {high:g}")


def _one_of(words: Iterable[str]) -> Rule:
    words = tuple(words)
    return (lambda v: v in words, "one of " + ", ".join(words))


SYSTEM_KEYS = {
    "id": _id, "name": _text, "order": _between(1, 999), "unit": _text, "units": _texts, "about": _text,
    "retain": _text, "refurbish": _text, "remove": _text,
}
SYSTEM_OPTIONS = {"cautions": _texts, "home": _text, "unit_homes": _table, "kinds": _table, "unit_kinds": _table}
CHECK_KEYS = {
    "id": _id, "title": _text, "ask": _text, "look": _text, "bad": _text, "space": _text,
    "minutes": _between(0.5, 240), "weight": _between(1, 5),
}
CHECK_OPTIONS = {
    "critical": _flag, "photo": _flag, "enclosed": _flag, "caution": _text, "criterion": _text,
    "given": _table, "from": _table, "for": _texts, "readings": _tables,
}
READING_KEYS = {"id": (lambda v: isinstance(v, str) and bool(re.fullmatch(r"[a-z][a-z0-9_]*", v)), "lower case letters, digits and _"), "label": _text}
READING_OPTIONS = {"kind": _one_of(KINDS), "unit": _text, "choices": _texts, "optional": _flag}
CAUTION_KEYS = {"signal": _one_of(SIGNALS), "hurts": _text, "instead": _text, "decides": _text}


def _keys(where: str, data: Any, needed: Mapping[str, Rule], options: Mapping[str, Rule]) -> list[str]:
    if not isinstance(data, Mapping):
        return [f"{where}: is {data!r}; expected a table with {', '.join(needed)}."]
    faults = [f"{where}, key {key}: is missing; expected {rule[1]}." for key, rule in needed.items() if key not in data]
    known = {**needed, **options}
    for key, value in data.items():
        if key not in known:
            faults.append(f"{where}, key {key}: is not known; known keys are {', '.join(known)}.")
        elif not known[key][0](value):
            faults.append(f"{where}, key {key}: is {value!r}; expected {known[key][1]}.")
    return faults


def faults_of_space(file: str, spaces: Mapping) -> list[str]:
    """Mistakes in spaces.toml; `spaces` maps id to its table."""
    if not isinstance(spaces, Mapping) or not spaces:
        return [f"{file}, key space: is missing; expected at least one [space.<id>] table."]
    rules = {"name": _text, "order": _between(1, 999)}
    return [fault for key, value in spaces.items() for fault in _keys(f"{file}, space {key}", value, rules, {})]


def faults_of_caution(file: str, cautions: Mapping) -> list[str]:
    """Mistakes in cautions.toml; `cautions` maps id to its table."""
    if not isinstance(cautions, Mapping) or not cautions:
        return [f"{file}, key caution: is missing; expected at least one [caution.<id>] table."]
    return [fault for key, value in cautions.items() for fault in _keys(f"{file}, caution {key}", value, CAUTION_KEYS, {})]


def faults_of_system(
    file: str, data: Mapping, *, spaces: Mapping, cautions: Mapping, criteria: KnownCriteria | None
) -> list[str]:
    """Every mistake of one system file, as sentences naming file, check and key."""
    head = data.get("system")
    if not isinstance(head, dict):
        return [f"{file}, key system: is missing; expected a [system] table."]
    faults = _keys(f"{file}, system", head, SYSTEM_KEYS, SYSTEM_OPTIONS)
    if head.get("id") and f"{head['id']}.toml" != file:
        faults.append(f"{file}, system, key id: is {head['id']!r}; expected the file's own name, {file.removesuffix('.toml')!r}.")
    faults += [f"{file}, system, key cautions: {one!r} is not in cautions.toml." for one in _listed(head.get("cautions")) if _unknown(one, cautions)]
    faults += _faults_of_homes(file, head, spaces) + _faults_of_kinds(file, head, _listed(data.get("check")))
    checks = data.get("check")
    if not isinstance(checks, list) or not checks or not all(isinstance(check, dict) for check in checks):
        return [*faults, f"{file}, key check: is missing or no list of tables; expected at least one [[check]]."]
    ids, titles = [check.get("id") for check in checks], [_plain(check.get("title")) for check in checks]
    for number, check in enumerate(checks):
        where = f"{file}, check {check.get('id') or f'number {number + 1}'}"
        faults += _faults_of_check(where, check, spaces, cautions, criteria)
        if check.get("id") is not None and check["id"] in ids[:number]:
            faults.append(f"{where}, key id: stands twice in this file; expected each id once.")
        if titles[number] and titles[number] in titles[:number]:
            faults.append(f"{where}, key title: {check['title']!r} stands twice in this file; expected each title once.")
    return faults


def _plain(title: Any) -> str:
    return " ".join(re.findall(r"\w+", title.casefold())) if isinstance(title, str) else ""


def _faults_of_homes(file: str, head: Mapping, spaces: Mapping) -> list[str]:
    homes = [("home", head.get("home")), *((f"unit_homes.{unit}", space) for unit, space in _items(head.get("unit_homes")))]
    unknown = [f"{file}, system, key {key}: {space!r} is not in spaces.toml." for key, space in homes if _unknown(space, spaces)]
    unknown += [f"{file}, system, key {key}: is {space!r}; expected the id of a space." for key, space in homes[1:] if not isinstance(space, str)]
    strangers = [unit for unit, _ in _items(head.get("unit_homes")) if unit not in _listed(head.get("units"))]
    known = ", ".join(map(str, _listed(head.get("units"))))
    return unknown + [f"{file}, system, key unit_homes.{unit}: is none of the units; expected one of {known}." for unit in strangers]


def _faults_of_kinds(file: str, head: Mapping, checks: list) -> list[str]:
    kinds, given = [kind for kind, _ in _items(head.get("kinds"))], _items(head.get("unit_kinds"))
    known = ", ".join(kinds) or "none, since the system has no kinds"
    strangers = [f"{file}, system, key unit_kinds.{unit}: is none of the units." for unit, _ in given if unit not in _listed(head.get("units"))]
    unknown = [f"{file}, system, key unit_kinds.{unit}: is {kind!r}; known kinds are {known}." for unit, kind in given if kind not in kinds]
    return strangers + unknown + [
        f"{file}, check {check.get('id')}, key for: {kind!r} is no kind of unit; known are {known}."
        for check in checks if isinstance(check, dict) for kind in _listed(check.get("for")) if kind not in kinds
    ]


def _faults_of_check(where: str, check: Mapping, spaces: Mapping, cautions: Mapping, criteria: KnownCriteria | None) -> list[str]:
    faults = _keys(where, check, CHECK_KEYS, CHECK_OPTIONS)
    if _unknown(check.get("space"), spaces):
        faults.append(f"{where}, key space: {check['space']!r} is not in spaces.toml.")
    if _unknown(check.get("caution"), cautions):
        faults.append(f"{where}, key caution: {check['caution']!r} is not in cautions.toml.")
    for name, origin in _items(check.get("from")):
        if not str(origin).startswith(TAKEN_FROM):
            faults.append(f"{where}, key from.{name}: is {origin!r}; expected vessel.<field>, brief.<field> or inspection.<field>.")
    readings = [one for one in _listed(check.get("readings")) if isinstance(one, dict)]
    for reading in readings:
        faults += _faults_of_reading(where, reading)
    ids = [reading.get("id") for reading in readings]
    faults += [f"{where}, reading {one}: stands twice; expected each id once." for one in sorted({str(i) for i in ids if ids.count(i) > 1})]
    return faults + faults_of_criterion(where, check, readings, criteria)


def _faults_of_reading(where: str, reading: Mapping) -> list[str]:
    where = f"{where}, reading {reading.get('id', '?')}"
    faults = _keys(where, reading, READING_KEYS, READING_OPTIONS)
    kind = reading_kind(reading)
    if kind == "number" and "unit" not in reading:
        faults.append(f"{where}, key unit: is missing; expected the unit of the number.")
    if isinstance(reading.get("unit"), str):
        faults += _faults_of_unit(where, reading["unit"])
    if kind == "choice" and not reading.get("choices"):
        faults.append(f"{where}, key choices: is missing; expected the list to choose from.")
    return faults


def _faults_of_unit(where: str, unit: str) -> list[str]:
    try:
        known_unit(unit)
    except InspectorError:
        return [f"{where}, key unit: {unit!r} is not known; expected a unit that `inspector` can convert, such as mm, °C, bar, h or years."]
    return []


def _unknown(value: Any, names: Iterable[str]) -> bool:
    # A list or table at the place of an id is told by its own rule, and cannot be looked up.
    return isinstance(value, str) and value not in names


def _listed(value: Any) -> list:
    return value if isinstance(value, list) else []


def _items(value: Any) -> list[tuple]:
    return list(value.items()) if isinstance(value, dict) else []
