"""The checks of a system as rows and its units as columns, and in full what is not good."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.lib.utils import simpleSplit
from reportlab.platypus import Flowable, Paragraph

from inspector.assess.checked import CheckResult
from inspector.assess.model import Assessment, Part, SystemPart
from inspector.report.cell_runs import Cell, Run
from inspector.report.check_cells import (
    Row,
    bare_lines,
    cell_words,
    groups_of,
    has_cells,
    is_told,
    limit_words,
    rows_of,
    short_names,
)
from inspector.report.document import heading
from inspector.report.issue import Issue
from inspector.report.marks import draw_level
from inspector.report.reading_text import readings_note, readings_text
from inspector.report.sections.full_checks import MARK_SIZE, as_sentence, not_good, source_runs
from inspector.report.tables import rows_table
from inspector.report.theme import PLAIN, SOFT, STYLES, plain, txt
from inspector.report.wording import (
    ACT_ON,
    all_results,
    gate_text,
    rating_text,
)

_SIZE, _LEADING = 7.6, 9.4
# The most columns of units in one table, and the least width of one.
_MOST_UNITS = 8
_LABEL = 62 * mm
# A longer reading is cut in its cell, and printed whole with the notes.
MOST_IN_CELL = 60


class MarkedValue(Flowable):
    """The level mark of a rating with its value behind it, in as many lines as it takes."""

    def __init__(self, result: CheckResult | None, words: str, width: float):
        super().__init__()
        self.rating = result.rating if result is not None else None
        self.soft = self.rating is None
        room = width - (0 if self.soft else MARK_SIZE + 3)
        self.lines = simpleSplit(plain(words, MOST_IN_CELL), PLAIN, _SIZE, max(room, 12)) or [""]
        self.width, self.height = width, _LEADING * len(self.lines)

    def draw(self) -> None:
        """Draw downwards from the top."""
        pen, top = self.canv, self.height - _SIZE
        indent = 0.0
        if not self.soft:
            draw_level(pen, self.rating, 0, top - 0.6, MARK_SIZE)
            indent = MARK_SIZE + 3
        pen.setFont(PLAIN, _SIZE)
        pen.setFillColor(SOFT if self.soft else STYLES["cell"].textColor)
        if self.rating in ACT_ON:
            pen.setFont(STYLES["verdict"].fontName, _SIZE)
        for number, line in enumerate(self.lines):
            pen.drawString(indent, top - number * _LEADING, line)


def checks_by_unit(
    part: SystemPart, assessment: Assessment, issue: Issue, key: str
) -> list[Flowable]:
    """Return all checks of a system: as tables, in lines, and in full where they are not good.

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
    units = [unit for unit in (part.units or (part.whole,)) if unit.results]
    if not units:
        return []
    body: list[Flowable] = [
        heading("Checks by unit", f"{key}-checks", 1),
    ]
    for group in groups_of(units):
        body += _group(group, issue)
    note = readings_note(all_results(part), issue.units)
    if note:
        body.append(Paragraph(txt(note), STYLES["small"]))
    body += _answered_elsewhere(part, assessment)
    return [*body, *not_good(part, assessment, issue, key), *_notes(part, issue)]


def _group(group: Sequence[Part], issue: Issue) -> list[Flowable]:
    """Return the tables of units that are asked mostly the same, and what has no row."""
    rows = rows_of(group)
    body: list[Flowable] = []
    if len(group) == 1:
        body += _single(group[0], [row for row in rows if has_cells(row)], issue)
    else:
        for first in range(0, len(group), _MOST_UNITS):
            body += _table(group, first, [row for row in rows if has_cells(row)], issue)
    lines = list(bare_lines([row for row in rows if not has_cells(row)], short_names(group)))
    if lines and (len(group) == 1 or not body):
        names = "; ".join(unit.name for unit in group)
        if not body:
            body.append(Paragraph(f"<b>{txt(names, 200)}</b>", STYLES["cell"]))
    for title, titles in lines:
        body.append(Paragraph(f"<b>{txt(title)}</b>: {txt('; '.join(titles))}.", STYLES["line"]))
    return body


def _table(group: Sequence[Part], first: int, rows: Sequence[Row], issue: Issue) -> list[Flowable]:
    """Return the table of at most so many units as fit side by side."""
    units = group[first : first + _MOST_UNITS]
    names = short_names(group)
    width = (issue.page.column - _LABEL) / len(units)
    made = []
    for row in rows:
        results = row.results[first : first + _MOST_UNITS]
        # A check that none of these units is asked has no row here.
        if any(results):
            made.append(_row(row, results, width, issue))
    if not made:
        return []
    # A head is repeated on each page, so it may never grow with what was typed.
    heads = ("check, limit, source", *(plain(names[unit.id], 40) for unit in units))
    return [rows_table(heads, made, (_LABEL, *(width,) * len(units)), tight=True)]


def _row(row: Row, results: Sequence[CheckResult | None], width: float, issue: Issue) -> list[Cell]:
    """Return a row: what is looked at with its limit and source, then a cell for each unit."""
    words = [cell_words(result, issue.units) if result else ("", "") for result in results]
    shared = {unit for value, unit in words if value and unit}
    unit = shared.pop() if len(shared) == 1 else ""
    cells = []
    for result, (value, own) in zip(results, words, strict=True):
        text = value if own in ("", unit) else f"{value} {own}"
        cells.append(MarkedValue(result, text, width - 6) if result else "")
    return [_label(row, unit, issue), *cells]


def _label(row: Row, unit: str, issue: Issue) -> list[Run]:
    """The title with its unit, limit and source."""
    name = f"{row.title}, {unit}" if unit else row.title
    runs: list[Run] = [(name, "")]
    judged = next((result for result in row.asked if result.judgement), None)
    limit = limit_words(row, issue.units)
    if limit:
        runs.append((limit, "soft"))
    if judged is not None:
        runs += source_runs(judged, issue)
    return runs


def _single(unit: Part, rows: Sequence[Row], issue: Issue) -> list[Flowable]:
    """Return the checks of a unit that has no like, two abreast."""
    if not rows:
        return []
    half = issue.page.column / 2
    label, value = half - 31 * mm, 31 * mm
    cells: list[list[Cell]] = []
    for row in rows:
        cells.append(_row(row, row.results, value, issue))
    middle = (len(cells) + 1) // 2
    left, right = cells[:middle], cells[middle:]
    right += [["", ""]] * (middle - len(right))
    made = [[*one, *other] for one, other in zip(left, right, strict=True)]
    heads = ([(plain(unit.name, 40), "b")], "", "", "")
    return [rows_table(heads, made, (label, value, label, value), tight=True)]


def _notes(part: SystemPart, issue: Issue) -> list[Flowable]:
    """What was said of checks that are good, in one paragraph, with their photos."""
    said = []
    for result in all_results(part):
        if is_told(result) or result.rating is None:
            continue
        extra = " ".join(filter(None, (gate_text(result), as_sentence(result.note))))
        taken = f"Taken over from {result.as_unit}." if result.as_unit else ""
        if any(len(reading.text) > MOST_IN_CELL for reading in result.readings):
            extra = f"{readings_text(result, issue.units, labelled=True)}. {extra}".strip()
        if extra or taken:
            where = result.check.title
            if len(part.units) > 1:
                where = f"{where}, {result.unit_name}"
            said.append(f"<i>{txt(where)}</i>: {txt(' '.join(filter(None, (extra, taken))))}")
    if not said:
        return []
    return [Paragraph(f"<b>Notes on what is good.</b> {' '.join(said)}", STYLES["line"])]


def _answered_elsewhere(part: SystemPart, assessment: Assessment) -> list[Flowable]:
    """The checks of other systems that are about this one too, each with its answer."""
    lines = [
        f"{result.check.title} ({other.system.name}, {result.unit_name}): {rating_text(result)}"
        for other in assessment.systems
        for result in all_results(other)
        # A check is answered on one sheet only; the other one shows where.
        if part.system.id in result.check.also and (result.rating or result.answer)
    ]
    if not lines:
        return []
    line = f"<b>Answered on another sheet</b>: {txt('; '.join(lines))}."
    return [Paragraph(line, STYLES["line"])]
