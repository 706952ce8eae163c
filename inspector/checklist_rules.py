"""What a checklist file must satisfy, as functions from raw TOML data to sentences: file, check, key, what is wrong, what would be right."""

import re
from collections.abc import Callable, Iterable, Mapping
from typing import Any

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


def _keys(where: str, data: Mapping, needed: Mapping[str, Rule], options: Mapping[str, Rule]) -> list[str]:
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
    if not spaces:
        return [f"{file}, key space: is missing; expected at least one [space.<id>] table."]
    rules = {"name": _text, "order": _between(1, 999)}
    return [fault for key, value in spaces.items() for fault in _keys(f"{file}, space {key}", value, rules, {})]


def faults_of_caution(file: str, cautions: Mapping) -> list[str]:
    """Mistakes in cautions.toml; `cautions` maps id to its table."""
    if not cautions:
        return [f"{file}, key caution: is missing; expected at least one [caution.<id>] table."]
    return [fault for key, value in cautions.items() for fault in _keys(f"{file}, caution {key}", value, CAUTION_KEYS, {})]


def faults_of_system(
    file: str, data: Mapping, *, spaces: Mapping, cautions: Mapping, criteria: Mapping[str, Iterable[str]] | None
) -> list[str]:
    """Every mistake of one system file, as sentences naming file, check and key."""
    head = data.get("system")
    if not isinstance(head, dict):
        return [f"{file}, key system: is missing; expected a [system] table."]
    faults = _keys(f"{file}, system", head, SYSTEM_KEYS, SYSTEM_OPTIONS)
    if head.get("id") and f"{head['id']}.toml" != file:
        faults.append(f"{file}, system, key id: is {head['id']!r}; expected the file's own name, {file.removesuffix('.toml')!r}.")
    faults += [f"{file}, system, key cautions: {one!r} is not in cautions.toml." for one in _listed(head.get("cautions")) if one not in cautions]
    faults += _faults_of_homes(file, head, spaces) + _faults_of_kinds(file, head, _listed(data.get("check")))
    checks = data.get("check")
    if not isinstance(checks, list) or not checks:
        return [*faults, f"{file}, key check: is missing; expected at least one [[check]]."]
    seen: set[str] = set()
    for number, check in enumerate(checks, 1):
        where = f"{file}, check {check.get('id') or f'number {number}'}"
        faults += _faults_of_check(where, check, spaces, cautions, criteria)
        if check.get("id") in seen:
            faults.append(f"{where}, key id: stands twice in this file; expected each id once.")
        seen.add(check.get("id"))
    return faults


def _faults_of_homes(file: str, head: Mapping, spaces: Mapping) -> list[str]:
    homes = [("home", head.get("home")), *((f"unit_homes.{unit}", space) for unit, space in _items(head.get("unit_homes")))]
    unknown = [f"{file}, system, key {key}: {space!r} is not in spaces.toml." for key, space in homes if space is not None and space not in spaces]
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


def _faults_of_check(where: str, check: Mapping, spaces: Mapping, cautions: Mapping, criteria: Mapping | None) -> list[str]:
    faults = _keys(where, check, CHECK_KEYS, CHECK_OPTIONS)
    if isinstance(check.get("space"), str) and check["space"] not in spaces:
        faults.append(f"{where}, key space: {check['space']!r} is not in spaces.toml.")
    if check.get("caution") and check["caution"] not in cautions:
        faults.append(f"{where}, key caution: {check['caution']!r} is not in cautions.toml.")
    for name, origin in _items(check.get("from")):
        if not str(origin).startswith(TAKEN_FROM):
            faults.append(f"{where}, key from.{name}: is {origin!r}; expected vessel.<field>, brief.<field> or inspection.<field>.")
    readings = [one for one in _listed(check.get("readings")) if isinstance(one, dict)]
    for reading in readings:
        faults += _faults_of_reading(where, reading)
    ids = [reading.get("id") for reading in readings]
    faults += [f"{where}, reading {one}: stands twice; expected each id once." for one in sorted({str(i) for i in ids if ids.count(i) > 1})]
    return faults + _faults_of_criterion(where, check, ids, criteria)


def _faults_of_reading(where: str, reading: Mapping) -> list[str]:
    where = f"{where}, reading {reading.get('id', '?')}"
    faults = _keys(where, reading, READING_KEYS, READING_OPTIONS)
    kind = reading.get("kind", "choice" if reading.get("choices") else "number")
    if kind == "number" and "unit" not in reading:
        faults.append(f"{where}, key unit: is missing; expected the unit of the number.")
    if kind == "choice" and not reading.get("choices"):
        faults.append(f"{where}, key choices: is missing; expected the list to choose from.")
    return faults


def _faults_of_criterion(where: str, check: Mapping, ids: list, criteria: Mapping | None) -> list[str]:
    name = check.get("criterion")
    if name is None or criteria is None:
        return []
    if name not in criteria:
        return [f"{where}, key criterion: {name!r} is not known; known are {', '.join(sorted(criteria))}."]
    inputs = set(criteria[name])
    supplied = {"given": _items(check.get("given")), "from": _items(check.get("from"))}
    return [
        f"{where}, key {key}.{one}: is no input of {name}; its inputs are {', '.join(sorted(inputs))}."
        for key, pairs in supplied.items() for one, _ in pairs if one not in inputs
    ] + ([] if inputs & set(ids) else [f"{where}, key readings: none of them is an input of {name} ({', '.join(sorted(inputs))})."])


def _listed(value: Any) -> list:
    return value if isinstance(value, list) else []


def _items(value: Any) -> list[tuple]:
    return list(value.items()) if isinstance(value, dict) else []
