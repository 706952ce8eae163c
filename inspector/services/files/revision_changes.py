"""What changed in a record between two of its states, in words."""

from collections.abc import Iterator
from typing import Any

from inspector.assess.model import Assessment
from inspector.record.inspection import Inspection
from inspector.record.state import State
from inspector.record.typed_values import typed_text, typed_unit
from inspector.report.sections.changes_section import Changes, RecordChange
from inspector.services.files.revisions import SUBJECT, CannotSign, Revision, state_of
from inspector.values.text import capital

# Whole subjects, as the reader calls them.
_ONE_OF_A_KIND = {
    "vessel": "Vessel",
    "brief": "Brief",
    "inspection": "Inspection",
    "settings": "Settings",
}


def changes_since(
    inspection: Inspection, before: Revision | None, after: State, assessment: Assessment
) -> Changes | None:
    """Return what changed since a revision.

    Parameters
    ----------
    inspection : Inspection
    before : Revision or None
    after : State
    assessment : Assessment
        Of the later state.

    Returns
    -------
    Changes or None
        None where there was no revision, or its state cannot be put together any more.
    """
    if before is None:
        return None
    try:
        state = state_of(inspection, before)
    except CannotSign:
        return None
    return Changes(before.title, tuple(record_changes(state, after, assessment)))


def record_changes(before: State, after: State, assessment: Assessment) -> list[RecordChange]:
    """Return every field that has another value.

    Parameters
    ----------
    before, after : State
    assessment : Assessment
        Of the later state, for the names of units, checks and findings.

    Returns
    -------
    list of RecordChange
        Subject by subject; notes that the program keeps for itself are left out.
    """
    return list(_changes(before, after, _names_of(assessment)))


def _changes(before: State, after: State, names: dict[str, str]) -> Iterator[RecordChange]:
    for subject in sorted({*before.subjects(), *after.subjects()}):
        if subject.startswith(SUBJECT):
            continue
        fields = {*before.fields(subject), *after.fields(subject)}
        for field in sorted(field for field in fields if not field.startswith("unseen/")):
            was, now = before.value(subject, field), after.value(subject, field)
            if was != now:
                where = names.get(subject) or _where(subject)
                yield RecordChange(where, _what(field), _text(was), _text(now))


def _names_of(assessment: Assessment) -> dict[str, str]:
    """Subject -> its name in words, as far as the assessment knows it."""
    names = dict(_ONE_OF_A_KIND)
    for part in assessment.systems:
        system = part.system
        names[f"verdict/{system.id}/all"] = f"Decision, {system.name}"
        for unit in part.units:
            names[f"unit/{system.id}/{unit.id}"] = unit.name
            names[f"verdict/{system.id}/{unit.id}"] = f"Decision, {unit.name}"
            for result in unit.results:
                names[result.subject] = f"{unit.name}: {result.check.title}"
        for line in part.lines:
            names[f"scope/{line.id}"] = f"Work line {line.number}: {line.text}"
    for finding in assessment.findings:
        names[f"finding/{finding.id}"] = f"Finding {finding.number}: {finding.title}"
    for photo in assessment.photos:
        names[f"photo/{photo.sha}"] = f"Photo {photo.number}: {photo.caption}".removesuffix(": ")
    return names


def _where(subject: str) -> str:
    """A subject without a name of its own: "row/tanks/one" is "Row of tanks"."""
    kind, _, rest = subject.partition("/")
    if kind == "row":
        return f"Row of {rest.partition('/')[0].replace('-', ' ')}"
    return f"{capital(kind)} {rest}".strip()


def _what(field: str) -> str:
    if field == "gone":
        return "taken out"
    return field.removeprefix("reading/").replace("_", " ")


def _text(value: Any) -> str:
    if value in (None, ""):
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, dict) and "value" not in value:
        return ", ".join(f"{name}: {typed_text(answer)}" for name, answer in value.items())
    return f"{typed_text(value)} {typed_unit(value)}".strip()
