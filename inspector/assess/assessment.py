"""The recorded inspection and its checklists -> the whole assessment.

Every unit and system has its condition, facts and proposed word, the papers beside it, and the
surveyor's own decision.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from inspector.assess import registers
from inspector.assess.agreement import agreements
from inspector.assess.check_results import results_of
from inspector.assess.checked import CheckResult, Condition
from inspector.assess.condition import of_results
from inspector.assess.judging import Basis
from inspector.assess.limit_settings import limit_sets_of
from inspector.assess.model import Assessment, Facts, Part, SystemPart
from inspector.assess.papers.certificates import certificate_of_bottom
from inspector.assess.papers.surveys_due import papers_due
from inspector.assess.recorded import SHEET, RecordedInspection, Unit
from inspector.assess.registers import Finding, Photo, WorkLine
from inspector.assess.verdict.evidence import evidence_of
from inspector.assess.verdict.offered_lines import offered_lines
from inspector.assess.verdict.proposal import Judged, propose
from inspector.assess.verdict.settings import Settings, read_settings
from inspector.assess.verdict.system_proposal import propose_system
from inspector.assess.verdict.unit_case import Case
from inspector.assess.verdict.word import OfferedLine, Paper
from inspector.assess.verdict_facts import facts_of_system, facts_of_unit
from inspector.assess.work_cost import counted_lines, lines_against, work_cost
from inspector.checklists.asked import asked_of
from inspector.checklists.model import Check, Library, System
from inspector.values.vocabulary import VERDICTS


def assess(
    recorded: RecordedInspection, library: Library, settings: Settings | None = None
) -> Assessment:
    """Assess one inspection by the settings and limits that were recorded with it.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection; whatever it holds, nothing is raised.
    library : Library
        Its checklists.
    settings : Settings, optional
        To be used in place of the recorded ones.

    Returns
    -------
    Assessment
        Its systems are those with at least one unit that the library knows, in the library's order.
    """
    recorded_settings, faults = read_settings(recorded.settings)
    limits, limit_faults = limit_sets_of(recorded.limits, library.criteria)
    findings = registers.findings(recorded, library)
    work = _Work(
        recorded=recorded,
        settings=settings or recorded_settings,
        basis=Basis(
            recorded.vessel,
            recorded.brief,
            recorded.inspection,
            limits,
            library.criteria,
            certificate_of_bottom(recorded.certificates),
        ),
        lines=registers.work_lines(recorded),
        findings=findings,
        photos=registers.photos(recorded, library, findings),
        # Without a day no survey can be late.
        papers=papers_due(recorded.certificates, recorded.day) if recorded.day else {},
    )
    # A system without a unit on board is not assessed: the vessel does not have it.
    on_board = {unit.system for unit in recorded.units}
    systems = [system for name, system in library.systems.items() if name in on_board]
    parts = tuple(_assessed_system(work, system) for system in systems)
    return Assessment(
        vessel=recorded.vessel,
        brief=recorded.brief,
        inspection=recorded.inspection,
        systems=parts,
        findings=work.findings,
        photos=work.photos,
        disputes=recorded.disputes,
        settings=work.settings,
        profiles=limits,
        agreements=agreements(recorded.ratings_by_person, _checks_of(parts)),
        currency=recorded.currency,
        faults=(*faults, *limit_faults),
        recorded=recorded,
        own_criteria=library.criteria,
        trials=library.trials,
    )


def _checks_of(parts: Iterable[SystemPart]) -> dict[str, tuple[str, bool]]:
    """Sheet -> what it is about, and whether it is critical."""
    return {
        result.subject: (f"{result.unit_name}: {result.check.title}", result.check.critical)
        for part in parts
        for result in part.whole.results
    }


@dataclass(frozen=True)
class _Work:
    """What every system of one inspection is assessed with."""

    recorded: RecordedInspection
    settings: Settings
    basis: Basis
    lines: tuple[WorkLine, ...]
    findings: tuple[Finding, ...]
    photos: tuple[Photo, ...]
    papers: Mapping[str, tuple[str, ...]]


def _assessed_system(work: _Work, system: System) -> SystemPart:
    on_board = [unit for unit in work.recorded.units if unit.system == system.id]
    lines = _lines_of(work, system, on_board)
    asked = _asked_by_unit(work.recorded, system, on_board)
    judged = [_judged_unit(work, system, unit, lines, asked.get(unit.id, [])) for unit in on_board]
    units = tuple(unit.part for unit in judged)
    recorded = work.recorded
    results = tuple(result for unit in units for result in unit.results)
    typed = recorded.decisions.get(f"{system.id}/all", {})
    papers = tuple(Paper(sentence) for sentence in work.papers.get(system.id, ()))
    whole = Part(
        id="all",
        name=system.name,
        condition=_condition_of(units, results, work.settings),
        facts=facts_of_system(
            recorded, system.id, [unit.facts for unit in units], lines, work.findings
        ),
        proposal=propose_system(judged),
        decision=_decision(typed),
        reason=typed.get("reason", ""),
        results=results,
        papers=(*papers, *(paper for unit in units for paper in unit.papers)),
    )
    whole = replace(whole, let_go=_whole_is_let_go(whole, units, lines))
    found = SystemPart(system, whole, units, lines, _offered(recorded, system, judged))
    whole = replace(whole, cost=work_cost(found))
    found = _with_work_named(replace(found, whole=whole))
    return replace(found, against=lines_against(found))


def _with_work_named(found: SystemPart) -> SystemPart:
    """The system and its units, each knowing whether something is done on it where it stays."""
    gone = {unit.id for unit in found.units if unit.let_go}
    lines = (*counted_lines(found), *found.offered)
    # What is let go is taken out, which is no work on what stays.
    at_work = {line.unit for line in lines if line.unit not in gone}
    only = len(found.units) == 1
    units = tuple(
        replace(unit, with_work=bool(at_work) if only else unit.id in at_work)
        for unit in found.units
    )
    return replace(found, units=units, whole=replace(found.whole, with_work=bool(at_work)))


def _whole_is_let_go(whole: Part, units: Sequence[Part], lines: Sequence[WorkLine]) -> bool:
    if whole.decision:
        return _decided_to_go(whole.decision, whole.facts, "all", lines)
    return bool(units) and all(unit.let_go for unit in units)


def _decided_to_go(decision: str, facts: Facts, unit: str, lines: Sequence[WorkLine]) -> bool:
    """Whether nothing takes the place of what the surveyor removes: no need, and no line for it."""
    if decision != "remove" or facts.need == "required":
        return False
    # Of what the brief has no use for a priced new one was only weighed.
    useless = facts.need in ("neutral", "unwanted")
    return useless or not any(line.unit == unit and line.act == "replace" for line in lines)


def _condition_of(
    units: tuple[Part, ...], results: tuple[CheckResult, ...], settings: Settings
) -> Condition:
    """The condition of a system; only a single unit has a figure, several are counted."""
    found = of_results(results, settings)
    # A figure over several units would hide a bad one among good ones: it is given for each unit
    # only.
    return found if len(units) == 1 else replace(found, enough=False)


def _asked_by_unit(
    recorded: RecordedInspection, system: System, on_board: list[Unit]
) -> dict[str, list[Check]]:
    """Unit -> the checks that it is asked."""
    answered = {
        tuple(subject.split("/")[2:4])
        for subject, sheet in recorded.sheets.items()
        if subject.startswith(f"{SHEET}{system.id}/") and sheet.has_something
    }
    found: dict[str, list[Check]] = {}
    for one in asked_of(system, {unit.id: unit.kind for unit in on_board}, answered):
        found.setdefault(one.unit, []).append(one.check)
    return found


def _lines_of(work: _Work, system: System, on_board: list[Unit]) -> tuple[WorkLine, ...]:
    # A line for a unit that was taken out again is no longer work on this vessel.
    targets = {"all", *(unit.id for unit in on_board)}
    own = [line for line in work.lines if line.system == system.id]
    return tuple(line for line in own if line.unit in targets)


def _offered(
    recorded: RecordedInspection, system: System, judged: Sequence[Judged]
) -> tuple[OfferedLine, ...]:
    """The work lines that follow from what was found, for each unit in turn."""
    found: list[OfferedLine] = []
    for unit in judged:
        own = {
            line_id: fields
            for line_id, fields in recorded.work_lines.items()
            if fields.get("system") == system.id and fields.get("unit", "all") == unit.part.id
        }
        found += offered_lines(unit.part, unit.part.let_go, own)
    return tuple(found)


def _judged_unit(
    work: _Work, system: System, unit: Unit, lines: tuple[WorkLine, ...], checks: list[Check]
) -> Judged:
    """A unit with condition, proposal and decision."""
    recorded, settings = work.recorded, work.settings
    results = results_of(recorded, system, unit, work.photos, work.basis, checks)
    facts = facts_of_unit(recorded, system.id, unit.id, results, lines, work.findings)
    evidence = evidence_of(results, unit.walked_past, settings)
    case = Case(facts, evidence, settings)
    proposal, word, changes = propose(case, unit.name, recorded.currency)
    typed = _decided(recorded, system.id, unit.id)
    decision = _decision(typed)
    let_go = _decided_to_go(decision, facts, unit.id, lines) if decision else word.let_go
    part = Part(
        id=unit.id,
        name=unit.name,
        condition=evidence.condition,
        facts=facts,
        proposal=proposal,
        decision=decision,
        reason=typed.get("reason", ""),
        results=results,
        walked_past=unit.walked_past,
        papers=tuple(_services(results, unit)),
        let_go=let_go,
    )
    own = recorded.decisions.get(f"{system.id}/{unit.id}", {})
    return Judged(part, case, word, changes, bool(_decision(own)))


def _services(results: tuple[CheckResult, ...], unit: Unit) -> Iterator[Paper]:
    """The services and papers of a unit that are due: beside its word, and never in it."""
    for result in results:
        if result.applicable and result.is_service and result.bad:
            sentence = result.judgement.sentence if result.judgement else f"{result.rating}."
            yield Paper(f"{unit.name}, {result.check.title}: {sentence}", unit.id)


def _decided(recorded: RecordedInspection, system: str, unit: str) -> Mapping[str, str]:
    """What the surveyor decided of a unit; that all stays or goes holds for each without its own.

    That the whole is refurbished says nothing of a single unit: its own word says which.
    """
    own = recorded.decisions.get(f"{system}/{unit}", {})
    whole = recorded.decisions.get(f"{system}/all", {})
    holds = whole.get("decision") in ("retain", "remove")
    return own if own.get("decision") or not holds else whole


def _decision(typed: Mapping[str, str]) -> str:
    decision = typed.get("decision", "")
    # A word of a newer program is no decision that this one could print.
    return decision if decision in VERDICTS else ""
