"""The chapters of the conversion in the report: answer, figures, tables, drawings and gaps."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Paragraph

from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.figure import Figure, Gap
from inspector.report import figure_text
from inspector.report.document import heading
from inspector.report.drawn.drawings import Drawn
from inspector.report.sections.front_matter import Issue
from inspector.report.tables import Cell, fitted_widths, rows_table
from inspector.report.theme import STYLES, txt
from inspector.values.cell_text import NOT_KNOWN, cell_text
from inspector.values.quantity import sentence

INTRODUCTION = (
    "First checks by a surveyor from what was recorded on this visit. Every figure is a span with "
    "what it depends on; a naval architect, class and flag confirm what lives depend on."
)


def conversion_sections(chapters: Sequence[Chapter], issue: Issue) -> list[Flowable]:
    """Return all chapters that have content, after one introduction; nothing where none has.

    Parameters
    ----------
    chapters : sequence of Chapter
    issue : Issue
        The page and the reader's units.

    Returns
    -------
    list of Flowable
    """
    filled = [chapter for chapter in chapters if _has_content(chapter)]
    if not filled:
        return []
    body: list[Flowable] = [
        heading("What the conversion does", "conversion"),
        Paragraph(INTRODUCTION, STYLES["body"]),
    ]
    for chapter in filled:
        body += chapter_section(chapter, issue)
    return body


def _has_content(chapter: Chapter) -> bool:
    return bool(chapter.figures or chapter.figure_tables or chapter.gaps or chapter.warnings)


def chapter_section(chapter: Chapter, issue: Issue) -> list[Flowable]:
    """Return one chapter.

    Parameters
    ----------
    chapter : Chapter
    issue : Issue
        The page and the reader's units.

    Returns
    -------
    list of Flowable
    """
    width, units = issue.page.column, issue.units
    body: list[Flowable] = [
        # A chapter's title with its answer and the first figures stay together.
        CondPageBreak(70 * mm),
        heading(chapter.title, f"chapter-{chapter.id}", 1),
        Paragraph(_text(chapter.answer, units), STYLES["body"]),
        *(_bold(warning, units) for warning in chapter.warnings),
    ]
    if chapter.figures:
        body.append(_figures(chapter.figures, width, units))
    for table in chapter.figure_tables:
        body += _table(table, width, units)
    for drawing in chapter.drawings:
        body += [
            Paragraph(txt(drawing.title), STYLES["h3"]),
            Drawn(drawing, width, units),
            Paragraph(_text(drawing.described, units), STYLES["caption"]),
        ]
    body += _lists(chapter, width, units)
    if chapter.verify:
        body.append(_bold(chapter.verify, units))
    return body


def _text(cell, units: str) -> str:
    return txt(cell_text(cell, units))


def _bold(cell, units: str) -> Paragraph:
    return Paragraph(f"<b>{_text(cell, units)}</b>", STYLES["body"])


def _figures(figures: Sequence[Figure], width: float, units: str) -> Flowable:
    """Return the table of figures, low, likely and high."""
    widths = (46 * mm, 21 * mm, 21 * mm, 21 * mm, width - 109 * mm)
    rows = [_figure(figure, units) for figure in figures]
    return rows_table(("figure", "low", "likely", "high", "from"), rows, widths, right=(1, 2, 3))


def _figure(figure: Figure, units: str) -> list[Cell]:
    """Return the row of one figure."""
    name: Cell = [(figure.name, "")]
    if not figure.known:
        # What would make it known is worth more in the last column than an empty cell.
        missing = "; ".join(gap.name for gap in figure.gaps)
        return [name, "", [(NOT_KNOWN, "soft")], "", [(missing, "soft")]]
    ends = figure_text.ends_printed(figure, units)
    return [name, *ends, [(cell_text(figure.formula_text, units), "soft")]]


def _table(table: FigureTable, width: float, units: str) -> list[Flowable]:
    """Return a table of a chapter with its title and its note."""
    heads, rows = figure_text.headings(table, units), figure_text.rows_printed(table, units)
    note = [Paragraph(_text(table.note, units), STYLES["small"])] if table.note else []
    return [
        Paragraph(_text(table.title, units), STYLES["h3"]),
        rows_table(heads, rows, fitted_widths(heads, rows, width), right=table.numeric),
        *note,
    ]


def _lists(chapter: Chapter, width: float, units: str) -> list[Flowable]:
    """What was assumed, not given, missing or typed wrongly: each a list of sentences."""
    defaults = [figure_text.default_sentence(default) for default in chapter.all_defaults]
    gaps = [_gap(gap) for gap in chapter.all_gaps]
    return [
        *_list("Assumed", chapter.assumptions, "", width, units),
        *_list("Nobody gave, so this was used", defaults, "", width, units),
        *_list("Missing", gaps, "", width, units),
        *_list("Typed, but not usable", chapter.faults, "now", width, units),
    ]


def _gap(gap: Gap):
    return sentence("{name}: {why}", name=gap.name, why=gap.why)


def _list(title: str, items: Sequence, tone: str, width: float, units: str) -> list[Flowable]:
    """Return a titled list of sentences, nothing where there are none."""
    # An empty list would print a title that promises something.
    if not items:
        return []
    rows = [[[(cell_text(item, units), tone)]] for item in items]
    return [Paragraph(txt(title), STYLES["h3"]), rows_table(("",), rows, (width,))]
