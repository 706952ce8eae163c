"""Reads and checks the checklists (TOML, one file per system): every fault in one list, each with file, check and key.

Knows the format, the spaces and the cautions. Which criteria exist is told by the caller, because criteria lie above this module.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inspector.checklist_criteria import KnownCriteria
from inspector.checklist_rules import faults_of_caution, faults_of_space, faults_of_system
from inspector.errors import InspectorError

APART = ("spaces.toml", "cautions.toml")


@dataclass(frozen=True)
class Reading:
    """One value that a check asks for; `kind` is number, whole, choice, date or text; `unit` is set for numbers."""

    id: str
    label: str
    kind: str = "number"
    unit: str = ""
    choices: tuple[str, ...] = ()
    optional: bool = False


@dataclass(frozen=True)
class Check:
    """One thing to look at on one unit, with the briefing, the weight and the readings it asks for."""

    id: str
    title: str
    ask: str
    look: str
    bad: str
    space: str
    minutes: float
    weight: float
    critical: bool = False
    photo: bool = False
    enclosed: bool = False
    caution: str = ""
    criterion: str = ""
    given: Mapping[str, Any] = field(default_factory=dict)
    taken: Mapping[str, str] = field(default_factory=dict)
    kinds: tuple[str, ...] = ()                            # TOML `for`: the kinds of unit it is meant for; empty: all
    readings: tuple[Reading, ...] = ()


@dataclass(frozen=True)
class System:
    """One system of the ship with its checks, which repeat for each of its units."""

    id: str
    name: str
    order: int
    unit: str
    units: tuple[str, ...]
    about: str
    retain: str
    refurbish: str
    remove: str
    cautions: tuple[str, ...]
    checks: tuple[Check, ...]
    home: str = ""                                         # the space where it is mainly walked
    unit_homes: Mapping[str, str] = field(default_factory=dict)   # proposed unit -> the space it stands in, where not `home`
    kinds: Mapping[str, str] = field(default_factory=dict)        # where its units are unlike: kind -> what one of that kind is called
    unit_kinds: Mapping[str, str] = field(default_factory=dict)   # proposed unit -> its kind

    def checks_for(self, kind: str) -> tuple[Check, ...]:
        """The checks that a unit of that kind is asked; all of them where its kind is not known."""
        return tuple(check for check in self.checks if not check.kinds or kind not in self.kinds or kind in check.kinds)

    def minutes(self, kind: str = "", critical: bool = False) -> float:
        """How long one unit of that kind takes, walking apart; the critical checks alone where that is asked."""
        return sum(check.minutes for check in self.checks_for(kind) if check.critical or not critical)

    def check(self, check_id: str) -> Check | None:
        """The check of that id, or None."""
        return next((check for check in self.checks if check.id == check_id), None)


@dataclass(frozen=True)
class Caution:
    """A caution by its signal word: what hurts, what to do instead, who decides."""

    id: str
    signal: str
    hurts: str
    instead: str
    decides: str


@dataclass(frozen=True)
class Library:
    """All that the checklist folder says: systems in order, spaces (id -> name, in walking order) and cautions."""

    systems: Mapping[str, System]
    spaces: Mapping[str, str]
    cautions: Mapping[str, Caution]


class ChecklistFaults(InspectorError):
    """A checklist folder that cannot be used; `faults` holds one sentence per mistake."""

    def __init__(self, faults: list[str]):
        super().__init__("The checklists have mistakes:\n" + "\n".join(faults))
        self.faults = faults


def read_library(folder: Path, criteria: KnownCriteria | None = None) -> Library:
    """Read a whole checklist folder.

    criteria: name of each known criterion -> what it asks for each input; None leaves the criteria unchecked (an inspection's own old copy).
    Raises ChecklistFaults with every mistake of every file at once.
    """
    files = sorted(folder.glob("*.toml"))
    faults: list[str] = [] if files else [f"{folder}: no checklist files are here; expected one .toml file per system."]
    raw = {path.name: _parse(path, faults) for path in files}
    spaces_raw, cautions_raw = _apart(raw, "spaces.toml", "space"), _apart(raw, "cautions.toml", "caution")
    faults += faults_of_space("spaces.toml", spaces_raw) + faults_of_caution("cautions.toml", cautions_raw)
    named: dict[str, Any] = {name: data for name, data in raw.items() if name not in APART and data is not None}
    for name, data in named.items():
        faults += faults_of_system(name, data, spaces=spaces_raw, cautions=cautions_raw, criteria=criteria)
    if faults:
        raise ChecklistFaults(faults)
    systems = sorted((_system(data) for data in named.values()), key=lambda one: (one.order, one.id))
    return Library(
        systems={one.id: one for one in systems},
        spaces={key: value["name"] for key, value in sorted(spaces_raw.items(), key=lambda kv: kv[1].get("order", 0))},
        cautions={key: Caution(id=key, **value) for key, value in cautions_raw.items()},
    )


def _apart(raw: Mapping[str, dict | None], file: str, key: str) -> dict:
    found = (raw.get(file) or {}).get(key)
    return found if isinstance(found, dict) else {}


def _parse(path: Path, faults: list[str]) -> dict | None:
    try:
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as problem:
        faults.append(f"{path.name}: not readable as TOML: {problem}.")
        return None


def _system(data: dict) -> System:
    head = data["system"]
    return System(
        id=head["id"], name=head["name"], order=head["order"], unit=head["unit"], units=tuple(head["units"]),
        about=head["about"], retain=head["retain"], refurbish=head["refurbish"], remove=head["remove"],
        cautions=tuple(head.get("cautions", ())), checks=tuple(_check(one) for one in data["check"]),
        home=head.get("home", ""), unit_homes=head.get("unit_homes", {}),
        kinds=head.get("kinds", {}), unit_kinds=head.get("unit_kinds", {}),
    )


def _check(data: dict) -> Check:
    plain = {key: value for key, value in data.items() if key not in ("readings", "from", "for")}
    return Check(**plain, taken=data.get("from", {}), kinds=tuple(data.get("for", ())), readings=tuple(_reading(one) for one in data.get("readings", ())))


def _reading(data: dict) -> Reading:
    choices = tuple(str(choice) for choice in data.get("choices", ()))
    kind = data.get("kind", "choice" if choices else "number")
    return Reading(data["id"], data["label"], kind, data.get("unit", ""), choices, data.get("optional", False))
