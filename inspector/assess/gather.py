"""State -> the plain pieces an assessment is made of: units, check results, work lines, findings, photos and facts.

Entries may come from another device or an older version, so whatever does not fit is passed over here and never raises.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from inspector.assess.judging import judge_sheet, typed_text, typed_unit
from inspector.assess.shapes import NEEDS, RATINGS, URGENCIES, Answered, CheckResult, Facts, Finding, Photo, Typed, WorkLine
from inspector.checklists import Check, Library, System
from inspector.criteria.profiles import Profile
from inspector.errors import InspectorError
from inspector.quantities import parse_number
from inspector.record.state import State

LAW_CRITERIA = ("refrigerant-status", "nox-tier", "oily-water-equipment", "ballast-treatment", "sewage-plant", "foam-pfos", "organotin",
                "cybutryne", "ozone-depleting", "halon")
PARTS = ("made", "hard to get", "no longer made")
ACTS = ("refurbish", "replace", "remove")
YEARLY = ("life_refurbished", "life_new", "yearly_refurbished", "yearly_new", "residual_refurbished", "residual_new")
_LARGEST = 1e12  # money, tonnes or years beyond this are slips of the finger


def texts(state: State, subject: str) -> dict[str, str]:
    """Field -> value of a subject as text, without what is empty or no plain value."""
    return {field: typed_text(value) for field, value in state.values(subject).items() if typed_text(value)}


def number(text: Any, least: float = -_LARGEST) -> float | None:
    """The number typed, None where there is none or it is outside `least` to 10^12."""
    try:
        value = parse_number(typed_text(text))
    except InspectorError:
        return None
    return value if least <= value <= _LARGEST else None


def gone(state: State, subject: str) -> bool:
    """True where the subject was taken out again."""
    return state.value(subject, "gone") in (True, "true", "yes")


def by_age(state: State, prefix: str) -> list[str]:
    """Subjects that begin with `prefix` and are not gone, by the time of their first entry, then by name."""
    return sorted((one for one in state.subjects(prefix) if not gone(state, one)), key=lambda one: (_first_at(state, one), one))


def _first_at(state: State, subject: str) -> tuple[str, str, int]:
    # Entries made in one act share a millisecond; the device's own count still tells their order.
    first = min((state.history(subject, field)[0] for field in state.fields(subject)), key=lambda entry: (entry.at, entry.device, entry.number))
    return first.at, first.device, first.number


def units(state: State) -> dict[str, dict[str, str]]:
    """System id -> unit id -> name, of the units that exist, in the order in which they were entered."""
    found: dict[str, dict[str, str]] = {}
    for subject in by_age(state, "unit/"):
        _, system, unit = subject.split("/")
        name = texts(state, subject).get("name")
        if name:
            found.setdefault(system, {})[unit] = name
    return found


def results(
    state: State, system: System, unit: str, name: str, photos: Iterable[Photo] = (), profiles: Mapping[str, Profile] | None = None
) -> tuple[CheckResult, ...]:
    """One result per check that the unit is asked, in the order of the checklist; profiles: limits that the surveyor set."""
    known = {"vessel": texts(state, "vessel"), "brief": texts(state, "brief"), "profiles": profiles or {}, "visit": texts(state, "inspection")}
    home = space_of(state, system, unit)
    shown: dict[str, list[str]] = {}
    for photo in photos:
        shown.setdefault(photo.on, []).append(photo.sha)
    made = (_result(state, f"sheet/{system.id}/{unit}/{check.id}", check, known) for check in system.checks_for(kind_of(state, system, unit)))
    return tuple(
        replace(one, unit=unit, unit_name=name, photos=tuple(shown.get(one.subject, ())), space=home if one.check.space == system.home else one.check.space)
        for one in made
    )


def space_of(state: State, system: System, unit: str) -> str:
    """The space a unit stands in: as recorded for it, else the system's home."""
    return typed_text(state.value(f"unit/{system.id}/{unit}", "space")) or system.home


def kind_of(state: State, system: System, unit: str) -> str:
    """The kind of a unit as recorded, "" where none is: then every check of its system is asked."""
    return typed_text(state.value(f"unit/{system.id}/{unit}", "kind"))


def _result(state: State, subject: str, check: Check, known: Mapping[str, Any]) -> CheckResult:
    answer = _answer(state.value(subject, "rating"))
    recorded = {one.id: state.value(subject, f"reading/{one.id}") for one in check.readings}
    judgement, sentence = judge_sheet(check, recorded, known["vessel"], known["brief"], known["profiles"], known["visit"])
    proposed = judgement.rating if judgement and not answer else None
    return CheckResult(
        subject=subject, check=check, unit="", unit_name="", answer=answer, rating=answer if answer in RATINGS else proposed,
        readings=tuple(Typed(one.id, one.label, typed_text(recorded[one.id]), typed_unit(recorded[one.id]) or one.unit)
                       for one in check.readings if typed_text(recorded[one.id])),
        judgement=judgement, cannot_judge=sentence, note=typed_text(state.value(subject, "note")),
        disputed=bool(answers := _answers(state, subject)), answers=answers, who=_who(state, subject), gate=_gate(state.value(subject, "gate")),
    )


def _answers(state: State, subject: str) -> tuple[Answered, ...]:
    """Every standing answer of the fields where two people differ."""
    return tuple(Answered(field, _told(head.value), head.who, head.at) for field in state.fields(subject) if state.disputed(subject, field)
                 for head in state.heads(subject, field))


def _told(value: Any) -> str:
    if isinstance(value, Mapping) and "value" not in value:
        return ", ".join(f"{key} {typed_text(one)}" for key, one in value.items())
    return f"{typed_text(value)} {typed_unit(value)}".strip() or "cleared"


def _gate(value: Any) -> dict[str, str]:
    return {str(key): typed_text(one) for key, one in value.items() if typed_text(one)} if isinstance(value, Mapping) else {}


def _answer(value: Any) -> str:
    text = typed_text(value)
    return text if text in (*RATINGS, "not fitted") or text.startswith("not seen") else ""


def _who(state: State, subject: str) -> str:
    """Who gave the standing rating, else who wrote last."""
    heads = state.heads(subject, "rating") or [head for field in state.fields(subject) for head in state.heads(subject, field)]
    return max(heads, key=lambda head: (head.at, head.id)).who if heads else ""


def work_lines(state: State) -> tuple[WorkLine, ...]:
    """The scope's lines that stand and name a known act, in the order in which they were entered."""
    made = ((subject.partition("/")[2], texts(state, subject)) for subject in by_age(state, "scope/"))
    return tuple(
        WorkLine(id=one, system=has.get("system", ""), unit=has.get("unit", "all"), act=has["act"], text=has.get("text", ""),
                 low=number(has.get("low")), likely=number(has.get("likely")), high=number(has.get("high")), weight=number(has.get("weight")),
                 sequence=_whole(has.get("sequence")), rate=has.get("rate", ""))
        for one, has in made if has.get("act") in ACTS
    )


def _whole(text: Any) -> int | None:
    found = number(text, 1)
    return int(found) if found is not None and found <= 9999 else None


def photos(state: State, library: Library, named: Mapping[str, Mapping[str, str]], findings: Iterable[Finding] = ()) -> tuple[Photo, ...]:
    """The register of photos, numbered by the time of their first entry, then by digest."""
    numbers = {f"finding/{finding.id}": f"Finding {finding.number}: {finding.title}" for finding in findings}
    made = []
    for count, subject in enumerate(by_age(state, "photo/"), 1):
        has = texts(state, subject)
        on = has.get("on", "")
        made.append(Photo(
            number=count, sha=subject.partition("/")[2], caption=has.get("caption", ""), on=on, taken=has.get("taken", ""), who=_who(state, subject),
            kind=has.get("kind", "jpeg"), place=numbers.get(on) or _place(on, library, named),
        ))
    return tuple(made)


def _place(on: str, library: Library, named: Mapping[str, Mapping[str, str]]) -> str:
    room, *rest = on.split("/")
    if room in ("vessel", "inspection"):
        return room.capitalize()
    if room not in ("unit", "sheet") or len(rest) < 2:
        return ""
    unit = named.get(rest[0], {}).get(rest[1], "")
    system = library.systems.get(rest[0])
    check = system.check(rest[2]) if system and len(rest) > 2 else None
    return f"{unit}: {check.title}" if unit and check else unit


def findings(state: State, named: Mapping[str, Mapping[str, str]], library: Library | None = None) -> tuple[Finding, ...]:
    """The findings that stand, numbered by the time of their first entry, then by id; an unknown urgency counts as before purchase."""
    pictures: dict[str, list[str]] = {}
    for subject in by_age(state, "photo/"):
        pictures.setdefault(texts(state, subject).get("on", ""), []).append(subject.partition("/")[2])
    made: list[Finding] = []
    for subject in by_age(state, "finding/"):
        has = texts(state, subject)
        if not (has.get("title") or has.get("text")):
            continue
        system, _, unit = has.get("on", "").partition("/")
        urgency = has.get("urgency", "")
        made.append(Finding(
            id=subject.partition("/")[2], number=len(made) + 1, title=has.get("title", ""), text=has.get("text", ""),
            urgency=urgency if urgency in URGENCIES else "before purchase", action=has.get("action", ""), system=system, unit=unit,
            unit_name=named.get(system, {}).get(unit, ""), photos=tuple(pictures.get(subject, ())), check=_title(library, system, has.get("check", "")),
        ))
    return tuple(made)


def _title(library: Library | None, system: str, check: str) -> str:
    found = library.systems.get(system) if library else None
    one = found.check(check) if found else None
    return one.title if one else ""


def facts(state: State, system: str, unit: str, results: Iterable[CheckResult], lines: Iterable[WorkLine], findings: Iterable[Finding]) -> Facts:
    """What the rules need of one unit, beside its condition; costs are the likely ones, summed by act over its own lines."""
    results, brief, said = tuple(results), texts(state, "brief"), texts(state, f"verdict/{system}/{unit}")
    own = [line for line in lines if line.system == system and line.unit == unit]
    need = brief.get(f"need/{system}", "")
    return Facts(
        need=need if need in NEEDS else "neutral", law=(*_law(results), *_own_law(said)),
        life_years=_life(said, results), horizon=number(brief.get("horizon"), 0),
        parts=said.get("parts", "") if said.get("parts") in PARTS else "",
        refurbish_cost=_total(own, "refurbish"), replace_cost=_total(own, "replace"),
        weight_won=number(said.get("weight_won")), space_won=number(said.get("space_won")),
        **{name: number(said.get(name), 0 if name.startswith("life") else -_LARGEST) for name in YEARLY},
        danger=tuple(one.title or one.text for one in findings if one.urgency == "danger now" and one.system == system and one.unit == unit),
    )


def facts_of_whole(state: State, system: str, of_units: Iterable[Facts], lines: Iterable[WorkLine], findings: Iterable[Finding]) -> Facts:
    """What the rules need of a whole system: its own word first, else the shortest life, the summed costs and what all units share."""
    of_units = tuple(of_units)
    own = facts(state, system, "all", (), lines, (one for one in findings if one.unit in ("", "all")))
    lives = [one.life_years for one in of_units if one.life_years is not None]
    parts = {one.parts for one in of_units}
    return replace(
        own, law=tuple(dict.fromkeys(sentence for one in of_units for sentence in one.law)),
        life_years=own.life_years if own.life_years is not None else min(lives, default=None),
        parts=own.parts or (parts.pop() if len(parts) == 1 else ""),
        refurbish_cost=_added(own.refurbish_cost, *(one.refurbish_cost for one in of_units)),
        replace_cost=_added(own.replace_cost, *(one.replace_cost for one in of_units)),
        weight_won=own.weight_won if own.weight_won is not None else _added(*(one.weight_won for one in of_units)),
        space_won=own.space_won if own.space_won is not None else _added(*(one.space_won for one in of_units)),
        danger=(*own.danger, *(title for one in of_units for title in one.danger)),
    )


def _law(results: Iterable[CheckResult]) -> tuple[str, ...]:
    """Sentences of judgements by law that failed; a limit that is only remembered never makes law."""
    judged = (one.judgement for one in results if one.applicable and one.judgement)
    return tuple(dict.fromkeys(
        one.sentence for one in judged if one.criterion in LAW_CRITERIA and one.rating == "failed" and one.source.mark == "seen"
    ))


def _own_law(said: Mapping[str, str]) -> tuple[str, ...]:
    """The rule that the surveyor names himself: asbestos where it must go, a ban of the flag."""
    text = said.get("law", "").strip().rstrip(".")
    return (f"The surveyor names a law against it: {text}.",) if text else ()


def _life(said: Mapping[str, str], results: Iterable[CheckResult]) -> float | None:
    """The surveyor's own figure, else the least that a plate's loss leaves."""
    own = number(said.get("life_years"), 0)
    plates = [one.judgement.value for one in results if one.applicable and one.judgement and one.judgement.criterion == "plate-remaining-life"]
    return own if own is not None else min((life for life in plates if life is not None), default=None)


def _total(lines: Iterable[WorkLine], act: str) -> float | None:
    return _added(*(line.likely for line in lines if line.act == act))


def _added(*amounts: float | None) -> float | None:
    known = [amount for amount in amounts if amount is not None]
    return sum(known) if known else None
