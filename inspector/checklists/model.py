"""What a checklist folder holds: systems, spaces, cautions and a surveyor's own criteria."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from inspector.criteria.core.criterion import Criterion
from inspector.values.field import Field
from inspector.values.vocabulary import SIGHTED


@dataclass(frozen=True)
class Glance:
    """What passing by shows of a check; it may find it bad, never prove it good.

    Parameters
    ----------
    look, bad : str
        What to look at in passing, and what makes one stop.
    seconds : float
        How long it takes [s].
    which : str
        Of like units, "each", "worst" or "one" of them.
    """

    look: str
    seconds: float
    bad: str
    which: str = "each"


@dataclass(frozen=True)
class Check:
    """One thing to look at on one unit, with its briefing, its weight and its readings.

    Parameters
    ----------
    id, title, ask, look, bad : str
        Texts of the file.
    space : str
        Where it is looked at.
    minutes : float
        How long it takes, or, where it is done within a trial, to read it off [min].
    weight : float
        1 nice to know .. 5 the system depends on it.
    critical, photo, enclosed : bool
        Whether it decides alone, a photo is expected, doing it properly needs entry.
    cautions : tuple of str
        Ids of the cautions shown right before it.
    criterion : str
        The criterion that judges its readings; "" for none.
    given, taken : mapping of str to Any
        Constant inputs, and those taken from the particulars.
    kinds : tuple of str
        The kinds of unit that are asked (TOML ``for``); empty for all.
    readings : tuple of Field
    needs : str
        The most demanding thing that the look needs, of LOOK_NEEDS.
    proof : str
        The depth at which it is proved, of DEPTHS.
    glance : Glance or None
        What passing by shows; None where it shows nothing.
    scan : bool
        Whether it can be read from scans before the visit.
    together : str
        The trial within which it is done; "" for none.
    once : bool
        Whether it is asked once per vessel, on the first unit of its kinds.
    optional : bool
        Whether it is offered only, and counts only where it is answered.
    also : tuple of str
        Other systems on whose sheets it is shown as a line.
    replaces : tuple of str
        "<system>/<check>" of older checklists in whose place it is.
    harmless : str
        Why an act in its text needs no caution.
    unjudged : mapping of str to str
        Name of a reading -> why no criterion judges it, where the text names a figure for it.
    """

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
    cautions: tuple[str, ...] = ()
    criterion: str = ""
    given: Mapping[str, Any] = field(default_factory=dict)
    taken: Mapping[str, str] = field(default_factory=dict)
    kinds: tuple[str, ...] = ()
    readings: tuple[Field, ...] = ()
    # An older file, or a surveyor's own, says none of these: a look with the eye proves it.
    needs: str = "sight"
    proof: str = SIGHTED
    glance: Glance | None = None
    scan: bool = False
    together: str = ""
    once: bool = False
    optional: bool = False
    also: tuple[str, ...] = ()
    replaces: tuple[str, ...] = ()
    harmless: str = ""
    unjudged: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class System:
    """One system of the ship with its checks, which repeat for each of its units.

    Parameters
    ----------
    id, name, unit, about, retain, refurbish, remove : str
        Texts of the file; ``unit`` is what one of its units is called.
    order : int
        Its place in the list.
    units : tuple of str
        The units that are proposed for a new inspection.
    cautions : tuple of str
        Ids of cautions.
    checks : tuple of Check
    home : str
        The space where it is mainly walked.
    unit_homes : mapping of str to str
        Proposed unit -> its space, where that is not ``home``.
    kinds : mapping of str to str
        Where its units are unlike: kind -> what a unit of that kind is called.
    unit_kinds : mapping of str to str
        Proposed unit -> its kind.
    """

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
    home: str = ""
    unit_homes: Mapping[str, str] = field(default_factory=dict)
    kinds: Mapping[str, str] = field(default_factory=dict)
    unit_kinds: Mapping[str, str] = field(default_factory=dict)

    def checks_for(self, kind: str) -> tuple[Check, ...]:
        """Return the checks that a unit of a kind is asked; all where its kind is not known."""
        if kind not in self.kinds:
            return self.checks
        return tuple(check for check in self.checks if not check.kinds or kind in check.kinds)

    def check(self, check_id: str) -> Check | None:
        """Return the check of an id, or None."""
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
class Trial:
    """One run of something in which several checks are read off, so that its time counts once.

    Parameters
    ----------
    id, name : str
    minutes : float
        Of the run itself [min].
    per : str
        "unit": once for each unit whose checks are done in it; "vessel": once for all of them.
    needs : str
        What it needs of the vessel, of LOOK_NEEDS.
    cautions : tuple of str
        Ids of cautions.
    about : str
        How it is run; "" where the checks say it.
    """

    id: str
    name: str
    minutes: float
    per: str
    needs: str
    cautions: tuple[str, ...] = ()
    about: str = ""


@dataclass(frozen=True)
class Layout:
    """How a vessel is commonly laid out: the units of every system in one choice.

    Parameters
    ----------
    id, name, about : str
    units : mapping of str to tuple of mapping
        System -> its units, each with name and where known kind and space; a system that is not
        there has the units that its checklist proposes.
    """

    id: str
    name: str
    about: str
    units: Mapping[str, tuple[Mapping[str, str], ...]]


@dataclass(frozen=True)
class Library:
    """All that a checklist folder holds.

    Parameters
    ----------
    systems : mapping of str to System
        In order.
    spaces : mapping of str to str
        Id -> name, in walking order.
    cautions : mapping of str to Caution
    criteria : mapping of str to Criterion
        The surveyor's own, which are looked at before the shipped ones.
    trials : mapping of str to Trial
        Empty in older checklists.
    layouts : mapping of str to Layout
        Empty in older checklists.
    tables : mapping of str to mapping
        File -> what it holds, of which all this was made.
    """

    systems: Mapping[str, System]
    spaces: Mapping[str, str]
    cautions: Mapping[str, Caution]
    criteria: Mapping[str, Criterion] = field(default_factory=dict)
    trials: Mapping[str, Trial] = field(default_factory=dict)
    layouts: Mapping[str, Layout] = field(default_factory=dict)
    tables: Mapping[str, Mapping[str, Any]] = field(default_factory=dict, repr=False)

    @cached_property
    def tables_json(self) -> bytes:
        """The tables as a device reads them: JSON in UTF-8.

        TOML knows dates and JSON does not: they are written as a person types them.
        """
        text = json.dumps(self.tables, ensure_ascii=False, separators=(",", ":"), default=str)
        return text.encode()
