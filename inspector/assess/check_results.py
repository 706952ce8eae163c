"""The results of one unit's checks: what was answered, and what the readings say."""

from collections.abc import Iterable

from inspector.assess.checked import CheckResult, Typed
from inspector.assess.depth import counted_depth
from inspector.assess.from_state import answer_of, depth_of
from inspector.assess.judging import Basis, judge_sheet
from inspector.assess.recorded import READING, RecordedInspection, RecordedSheet, Unit
from inspector.assess.registers import Photo
from inspector.checklists.model import Check, System
from inspector.criteria.core.judgement import Judgement
from inspector.record.typed_values import typed_text, typed_unit
from inspector.values.vocabulary import DEPTHS, RATINGS

_NOTHING = RecordedSheet()


def results_of(
    recorded: RecordedInspection,
    system: System,
    unit: Unit,
    photos: Iterable[Photo],
    basis: Basis,
    checks: Iterable[Check],
) -> tuple[CheckResult, ...]:
    """Collect one result per check that a unit is asked.

    Parameters
    ----------
    recorded : RecordedInspection
        The inspection.
    system : System
        The checklist of the unit's system.
    unit : Unit
        The unit.
    photos : iterable of Photo
        The register of photos.
    basis : Basis
        What the readings are judged on.
    checks : iterable of Check
        Those that the unit is asked.

    Returns
    -------
    tuple of CheckResult
        In the order of the checklist.
    """
    shown: dict[str, list[str]] = {}
    for photo in photos:
        shown.setdefault(photo.on, []).append(photo.sha)
    results = []
    for check in checks:
        subject = f"sheet/{system.id}/{unit.id}/{check.id}"
        sheet = recorded.sheets.get(subject, _NOTHING)
        # A unit that is elsewhere takes along the checks of its system's usual space, no others.
        space = (unit.space or system.home) if check.space == system.home else check.space
        result = _result(subject, check, unit, sheet, basis, tuple(shown.get(subject, ())), space)
        results.append(result)
    return tuple(results)


def _result(
    subject: str,
    check: Check,
    unit: Unit,
    sheet: RecordedSheet,
    basis: Basis,
    photos: tuple[str, ...],
    space: str,
) -> CheckResult:
    judgement, sentence = _worst_judgement(check, sheet, basis)
    # A reading alone rates the check; a surveyor's "not seen" is not overruled by it.
    proposed = judgement.rating if judgement and not sheet.answer else None
    given = _ratings_given(check, sheet, basis)
    answer = max(given, key=RATINGS.index) if given and sheet.answer else sheet.answer
    readings = _readings(check, sheet)
    rating = answer if answer in RATINGS else proposed
    better = min(given, key=RATINGS.index, default=None)
    return CheckResult(
        subject=subject,
        check=check,
        unit=unit.id,
        unit_name=unit.name,
        answer=answer,
        rating=rating,
        readings=readings,
        judgement=judgement,
        cannot_judge=sentence,
        note=sheet.note,
        overruled_because=sheet.overruled_because,
        as_unit=sheet.as_unit,
        photos=photos,
        disputed=bool(sheet.answers),
        who=sheet.who,
        when=sheet.when,
        answers=sheet.answers,
        space=space,
        gate=sheet.gate,
        depth=counted_depth(check, _depth(sheet), {reading.id for reading in readings}),
        better=None if better == rating else better,
    )


def _depth(sheet: RecordedSheet) -> str:
    """The depth of the answer; of two that differ the lesser one."""
    given = {depth_of(value) for value in sheet.heads.get("depth", ())}
    return next((depth for depth in DEPTHS if depth in given), sheet.depth)


def _ratings_given(check: Check, sheet: RecordedSheet, basis: Basis) -> list[str]:
    """The ratings between which people differ; empty where they do not."""
    heads = [answer_of(value) for value in sheet.heads.get("rating", ())]
    if any(heads):
        return [answer for answer in heads if answer in RATINGS]
    if sheet.answer:
        return []
    judged = [judgement for judgement, _ in _judgements(check, sheet, basis) if judgement]
    found = [judgement.rating for judgement in judged if judgement.rating]
    return found if len(set(found)) > 1 else []


def _worst_judgement(
    check: Check, sheet: RecordedSheet, basis: Basis
) -> tuple[Judgement | None, str]:
    """The judgement; of readings on which people differ the one that rates worst."""
    judged = _judgements(check, sheet, basis)
    rated = [one for one in judged if one[0] and one[0].rating]
    return max(rated, key=lambda one: RATINGS.index(one[0].rating), default=judged[0])


def _judgements(
    check: Check, sheet: RecordedSheet, basis: Basis
) -> list[tuple[Judgement | None, str]]:
    """The judgement of what is shown, then of each other reading that somebody gave."""
    found = [judge_sheet(check, sheet.readings, basis)]
    for asked in check.readings:
        for value in sheet.heads.get(f"{READING}{asked.name}", ()):
            found.append(judge_sheet(check, {**sheet.readings, asked.name: value}, basis))
    return found


def _readings(check: Check, sheet: RecordedSheet) -> tuple[Typed, ...]:
    """The readings that were typed; one without a unit is in the unit that the check asks for."""
    made = []
    for asked in check.readings:
        reading = sheet.readings.get(asked.name)
        text, unit = typed_text(reading), typed_unit(reading) or asked.unit
        if text:
            made.append(Typed(asked.name, asked.label, text, unit))
    return tuple(made)
