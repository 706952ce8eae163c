"""A check printed in full: what is not good of it, its limit, its margin and its source."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment, SystemPart
from inspector.report.cell_runs import ANCHOR, PAGE, TO, Cell, Run
from inspector.report.check_cells import (
    is_told,
    limit_of,
    source_mark,
)
from inspector.report.document import heading
from inspector.report.issue import Issue
from inspector.report.marks import LevelMark
from inspector.report.page_references import key_of
from inspector.report.reading_text import readings_text
from inspector.report.sections.photo_pages import photo_runs
from inspector.report.tables import rows_table
from inspector.report.wording import (
    ACT_ON,
    all_results,
    disputed_text,
    gate_text,
    rating_runs,
)
from inspector.values.cell_text import figure
from inspector.values.errors import InspectorError
from inspector.values.formatting import show, with_printed_unit
from inspector.values.units import in_units
from inspector.values.vocabulary import RATINGS

MARK_SIZE = 2.5 * mm


def source_runs(result: CheckResult, issue: Issue) -> list[Run]:
    """Return the number of a source in the list at the end, as a link, with its mark.

    Parameters
    ----------
    result : CheckResult
    issue : Issue

    Returns
    -------
    list of Run
    """
    judged = result.judgement
    # Without a judgement no source was used, and none is claimed.
    if not judged or not judged.source:
        return []
    number = issue.cites.get((judged.criterion, judged.source))
    if not number:
        return [(str(judged.source), "soft")]
    mark = source_mark(result)
    runs: list[Run] = [(f"S{number}", f"{TO}source-{number}")]
    return [*runs, (mark, "soft")] if mark else runs


def not_good(part: SystemPart, assessment: Assessment, issue: Issue, key: str) -> list[Flowable]:
    """Return in full every check of a system that is not plainly good, the worst first.

    Parameters
    ----------
    part : SystemPart
    assessment : Assessment
    issue : Issue
    key : str

    Returns
    -------
    list of Flowable
    """
    told = [result for result in all_results(part) if is_told(result)]
    if not issue.whole:
        told = [result for result in told if result.rating in ACT_ON or result.disputed]
    if not told:
        return []
    told.sort(key=_by_rating)
    several = len(part.units) > 1
    rows = [_full_row(result, assessment, issue, several) for result in told]
    widths = (5 * mm, 50 * mm, issue.page.column - 55 * mm)
    return [
        heading("Not good, in full", f"{key}-told", 1),
        rows_table(("", "check, unit", "what was found"), rows, widths, tight=True),
    ]


def _by_rating(result: CheckResult) -> int:
    return -RATINGS.index(result.rating) if result.rating in RATINGS else 1


def _full_row(
    result: CheckResult, assessment: Assessment, issue: Issue, several: bool
) -> list[Cell]:
    """Return a check in full: rating, readings, limit and margin, what was said, where to look."""
    bad = result.rating in ACT_ON
    title: list[Run] = [(result.check.title, "b" if bad else "")]
    title.append((key_of("check", result.subject), ANCHOR))
    if several:
        title.append((result.unit_name, "soft"))
    if result.depth:
        title.append((result.depth, "soft"))
    mark = LevelMark(result.rating, MARK_SIZE) if result.rating else ""
    return [mark, title, full_runs(result, assessment, issue)]


def full_runs(result: CheckResult, assessment: Assessment, issue: Issue) -> list[Run]:
    """Return all that is known of a check: rating, readings, judgement, note, finding, photos.

    Parameters
    ----------
    result : CheckResult
    assessment : Assessment
    issue : Issue

    Returns
    -------
    list of Run
    """
    runs = [*rating_runs(result)]
    read = readings_text(result, issue.units, labelled=True)
    if read:
        runs.append((f"{read}.", ""))
    runs += judgement_runs(result, issue)
    texts = [gate_text(result), disputed_text(result), as_sentence(result.note)]
    runs += [(text, "") for text in texts if text]
    for finding in issue.findings.get(result.subject, ()):
        runs.append((f"Finding {finding.number},", "soft"))
        runs.append((f"finding-{finding.number}", PAGE))
    return [*runs, *photo_runs(result.photos, assessment)]


def judgement_runs(result: CheckResult, issue: Issue) -> list[Run]:
    """Return band, limit, what was computed, the margin, and at what the rating is held.

    Parameters
    ----------
    result : CheckResult
    issue : Issue

    Returns
    -------
    list of Run
    """
    judged = result.judgement
    if judged is None:
        return [(result.cannot_judge, "soft")] if result.cannot_judge else []
    runs: list[Run] = [(f"{judged.band}:", "")]
    parts = []
    if judged.unit == "days" and judged.value is not None:
        days = round(judged.value)
        parts.append(f"{abs(days)} days {'left' if days >= 0 else 'over'}")
    elif judged.value is not None and len(result.readings) > 1:
        parts.append(f"computed {figure(judged.value, judged.unit or '', issue.units)}")
    limit = limit_of(result, issue.units)
    if limit:
        parts.append(f"limit {limit}")
        if judged.margin:
            # A margin is a difference: of two temperatures it has no zero to convert from.
            side = "within it"
            if judged.margin < 0:
                side = "below it" if limit.startswith("≥") else "over it"
            parts.append(f"{margin_text(judged, issue.units)} {side}")
    if parts:
        runs.append((f"{', '.join(parts)}.", ""))
    elif judged.sentence:
        runs.append((judged.sentence, ""))
    held = [note for note in judged.notes if note.startswith("Held at")]
    runs += [(note, "soft") for note in held]
    return [*runs, *source_runs(result, issue)]


def margin_text(judged, units: str) -> str:
    """Return how far a value is from its limit, in the reader's units.

    Parameters
    ----------
    judged : Judgement
        With value, limit and margin.
    units : str

    Returns
    -------
    str
    """
    unit = judged.unit or ""
    try:
        first, target = in_units(judged.value, unit, units)
        other, _ = in_units(judged.limit, unit, units)
    except InspectorError:
        # A surveyor's own criterion may have a unit that nothing converts.
        return with_printed_unit(show(float(f"{abs(judged.margin):.3g}"), ""), unit)
    return show(float(f"{abs(first - other):.3g}"), target)


def as_sentence(text: str) -> str:
    """Return a text that ends like a sentence.

    Parameters
    ----------
    text : str

    Returns
    -------
    str
    """
    words = text.strip()
    return f"{words}." if words and words[-1] not in ".!?…" else words
