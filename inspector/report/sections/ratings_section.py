"""What was measured in a system, beside its limits, and the ratings and notes of each unit."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Paragraph

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment, Part, SystemPart
from inspector.report.document import heading
from inspector.report.marks import LevelMark
from inspector.report.reading_text import limit_text, readings_note, readings_text
from inspector.report.sections.findings_photos import photos_named
from inspector.report.sections.front_matter import Issue
from inspector.report.tables import Cell, Run, rows_table
from inspector.report.theme import STYLES, txt
from inspector.report.wording import (
    ACT_ON,
    all_results,
    disputed_text,
    gate_text,
    rating_runs,
    rating_text,
)
from inspector.values.text import capital

_MARK = 5 * mm


def measured(part: SystemPart, issue: Issue, key: str) -> list[Flowable]:
    """Return every reading that a criterion judges, beside its limit.

    Parameters
    ----------
    part : SystemPart
    issue : Issue
    key : str
        Of the system's section in the outline.

    Returns
    -------
    list of Flowable
    """
    results = [result for result in all_results(part) if _is_measured(result)]
    top = heading("What was measured", f"{key}-measured", 1)
    if not results:
        none = "No readings were taken that a criterion judges; others are listed with the ratings."
        return [top, Paragraph(none, STYLES["body"])]
    lead = "The last column names the source by its number in the list of sources."
    note = readings_note(results, issue.units)
    rest = issue.page.column - (20 + 46 + 17) * mm - _MARK
    table = rows_table(
        ("unit, check, reading", "limit", "", "judged", "source"),
        [_measured_row(result, issue) for result in results],
        (rest, 20 * mm, _MARK, 46 * mm, 17 * mm),
        right=(1,),
    )
    # A heading with its note alone at the end of a page would say that nothing was measured.
    room = CondPageBreak(60 * mm)
    return [room, top, Paragraph(txt(f"{lead} {note}"), STYLES["small"]), table]


def _is_measured(result: CheckResult) -> bool:
    return bool(result.readings and (result.judgement or result.cannot_judge))


def _measured_row(result: CheckResult, issue: Issue) -> list[Cell]:
    """Return the row of a check with readings, and the limit they were judged by."""
    judged = result.judgement
    name: list[Run] = [
        (f"{result.unit_name}:", "soft"),
        (f"{result.check.title}:", ""),
        (readings_text(result, issue.units), "b"),
    ]
    mark = LevelMark(judged.rating) if judged and judged.rating else ""
    return [
        name,
        limit_text(result, issue.units),
        mark,
        _judged_runs(result),
        _source_runs(result, issue),
    ]


def _judged_runs(result: CheckResult) -> list[Run]:
    """The band that a reading falls in, or why it cannot be judged."""
    judged = result.judgement
    # Why nothing was judged takes the place of the judgement.
    runs: list[Run] = [(result.cannot_judge, "soft")]
    if judged:
        rating = f"{judged.rating}," if judged.rating else ""
        runs = [(rating, "now" if judged.rating in ACT_ON else ""), (judged.band, "")]
    if result.overruled:
        runs.append((f"(surveyor: {result.answer})", "i"))
    return runs


def _source_runs(result: CheckResult, issue: Issue) -> list[Run]:
    """Return the number of a source in the list at the end, and its mark."""
    judged = result.judgement
    # Without a judgement no source was used, and none is claimed.
    if not judged:
        return []
    number = issue.cites.get((judged.criterion, judged.source))
    return [(f"S{number}" if number else str(judged.source), ""), (judged.source.mark, "i")]


def ratings(part: SystemPart, assessment: Assessment, issue: Issue, key: str) -> list[Flowable]:
    """Return each unit's checks with rating and note.

    Parameters
    ----------
    part : SystemPart
    assessment : Assessment
    issue : Issue
    key : str
        Of the system's section in the outline.

    Returns
    -------
    list of Flowable
    """
    body: list[Flowable] = [heading("Ratings and notes", f"{key}-ratings", 1)]
    for unit in part.units or (part.whole,):
        body += _unit_ratings(unit, assessment, issue)
    return body + _answered_elsewhere(part, assessment)


def _answered_elsewhere(part: SystemPart, assessment: Assessment) -> list[Flowable]:
    """The checks of other systems that are about this one too, each with its answer."""
    lines = [
        f"{result.check.title} ({other.system.name}, {result.unit_name}): {rating_text(result)}"
        for other in assessment.systems
        for result in all_results(other)
        # A check is answered on one sheet only; the other one shows where.
        if part.system.id in result.check.also
    ]
    if not lines:
        return []
    line = f"<b>Answered on another sheet</b>: {txt('; '.join(lines))}."
    return [Paragraph(line, STYLES["cell"])]


def _unit_ratings(unit: Part, assessment: Assessment, issue: Issue) -> list[Flowable]:
    """A table of the checks of which there is something to say, and the others by rating."""
    body: list[Flowable] = [Paragraph(txt(unit.name, 120), STYLES["h3"])]
    if not unit.results:
        return [*body, Paragraph("No checks.", STYLES["body"])]
    noted = [result for result in unit.results if not _is_bare(result)]
    if noted:
        rest = issue.page.column - (50 + 36) * mm - _MARK
        rows = [_rating_row(result, assessment, issue) for result in noted]
        widths = (50 * mm, _MARK, 36 * mm, rest)
        body.append(rows_table(("check", "", "rating", "note"), rows, widths))
    note = readings_note([result for result in noted if not _is_measured(result)], issue.units)
    if note:
        body.append(Paragraph(txt(note), STYLES["small"]))
    for reason, titles in _bare_titles(unit.results).items():
        line = f"<b>{txt(capital(reason))}</b>: {txt('; '.join(titles))}."
        body.append(Paragraph(line, STYLES["cell"]))
    return body


def _is_bare(result: CheckResult) -> bool:
    """Whether there is nothing to say of a check but its rating, or why there is none."""
    # What somebody must act on has a row of its own, however little there is to say of it.
    if result.rating in ACT_ON:
        return False
    return not (
        result.note
        or result.photos
        or result.disputed
        or result.gate
        or result.overruled
        or result.as_unit
        or (result.readings and not _is_measured(result))
    )


def _bare_titles(results: Sequence[CheckResult]) -> dict[str, list[str]]:
    """Rating, or why there is none -> titles of the checks of which there is no more to say."""
    titles: dict[str, list[str]] = {}
    for result in results:
        if _is_bare(result):
            titles.setdefault(rating_text(result), []).append(result.check.title)
    return titles


def _rating_row(result: CheckResult, assessment: Assessment, issue: Issue) -> list[Cell]:
    """Return the row of a check with its rating and its note."""
    mark = LevelMark(result.rating) if result.rating else ""
    note = _note_runs(result, assessment, issue)
    return [result.check.title, mark, rating_runs(result), note]


def _note_runs(result: CheckResult, assessment: Assessment, issue: Issue) -> list[Run]:
    """Return all that was said of a check: entry, dispute, note, readings, photos."""
    texts = [gate_text(result), disputed_text(result), result.note]
    read = "" if _is_measured(result) else readings_text(result, issue.units, labelled=True)
    if read:
        texts.append(f"{read}.")
    runs = [(text, "") for text in texts if text]
    named = photos_named(result.photos, assessment)
    return [*runs, (f"See {named}." if named else "", "soft")]
