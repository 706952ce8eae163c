"""State and checklists -> the whole assessment: every unit and system with condition, facts, proposal and the surveyor's own word."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from inspector.assess import gather
from inspector.assess.agreement import agreements
from inspector.assess.certificates import against_law
from inspector.assess.condition import of_results
from inspector.assess.limits import profiles_of
from inspector.assess.settings import Settings, read_settings
from inspector.assess.shapes import Assessment, CheckResult, Facts, Finding, Part, Photo, SystemPart, WorkLine
from inspector.assess.verdict import propose, unseen_of
from inspector.checklists import Library, System
from inspector.criteria.profiles import Profile
from inspector.record.state import State

DECISIONS = ("retain", "refurbish", "remove")


def assess(state: State, library: Library, settings: Settings | None = None) -> Assessment:
    """Assess one inspection by the settings and limits recorded with it (`settings` overrides them). Never raises for recorded data.

    Systems are those with at least one unit that the library knows, in the library's order.
    """
    read, faults = read_settings(gather.texts(state, "settings"))
    settings = settings or read
    profiles, more = profiles_of(state)
    papers = against_law(state, visit) if (visit := day_of_visit(state)) else {}
    named = gather.units(state)
    findings = gather.findings(state, named, library)
    photos = gather.photos(state, library, named, findings)
    lines = gather.work_lines(state)
    return Assessment(
        vessel=gather.texts(state, "vessel"), brief=gather.texts(state, "brief"), inspection=gather.texts(state, "inspection"),
        systems=tuple(
            _system(state, system, named[one], settings, lines, findings, photos, profiles, papers.get(one, ()))
            for one, system in library.systems.items() if one in named
        ),
        findings=findings, photos=photos, disputes=sum(1 for _ in state.disputes()), settings=settings,
        profiles=profiles, agreements=agreements(state), currency=_currency(state), faults=(*faults, *more),
    )


def day_of_visit(state: State) -> date | None:
    """The date of the inspection, None where none was typed that can be read."""
    try:
        return date.fromisoformat(gather.texts(state, "inspection").get("date", ""))
    except ValueError:
        return None


def _currency(state: State) -> str:
    return gather.texts(state, "row/prices/one").get("currency", "")


def _system(
    state: State, system: System, named: Mapping[str, str], settings: Settings,
    lines: tuple[WorkLine, ...], findings: tuple[Finding, ...], photos: tuple[Photo, ...], profiles: Mapping[str, Profile],
    papers: tuple[str, ...],
) -> SystemPart:
    # a line for a unit that was taken out again is no longer work on this ship
    lines = tuple(line for line in lines if line.system == system.id and (line.unit == "all" or line.unit in named))
    units = []
    for unit, name in named.items():
        found = gather.results(state, system, unit, name, photos, profiles)
        units.append(_part(state, system, unit, name, gather.facts(state, system.id, unit, found, lines, findings), found, settings))
    facts = gather.facts_of_whole(state, system.id, [unit.facts for unit in units], lines, findings)
    facts = replace(facts, units=tuple(unit.verdict for unit in units), law=(*facts.law, *papers))
    whole = _part(state, system, "all", system.name, facts, tuple(one for unit in units for one in unit.results), settings)
    return SystemPart(system, whole, tuple(units), lines)


def _part(
    state: State, system: System, unit: str, name: str, facts: Facts, results: tuple[CheckResult, ...], settings: Settings
) -> Part:
    condition = of_results(results)
    said = gather.texts(state, f"verdict/{system.id}/{unit}")
    decision = said.get("decision", "")
    return Part(
        id=unit, name=name, condition=condition, facts=facts, proposal=propose(facts, condition, unseen_of(results), settings, _currency(state)),
        decision=decision if decision in DECISIONS else "", reason=said.get("reason", ""), results=results,
    )

