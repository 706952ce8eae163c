"""The chapters of the conversion in the report: answer, figures, tables, drawings and gaps."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.drawing import Drawing, Timeline
from inspector.conversion.core.figure import Figure, Gap
from inspector.report import figure_text
from inspector.report.cell_runs import Cell
from inspector.report.column_widths import fitted_widths
from inspector.report.document import heading
from inspector.report.drawn.drawings import Drawn, Titled
from inspector.report.issue import Issue
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, txt
from inspector.values.cell_text import NOT_KNOWN, cell_text
from inspector.values.quantity import joined, sentence

# The work lines have one table in a report, which is that of the yard's work.
ELSEWHERE = ("Work in its sequence",)
# What falls due later than so many others is in the tables only.
MOST_PERIODS = 22
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
        heading(chapter.title, f"chapter-{chapter.id}", 1),
        Paragraph(_text(chapter.answer, units), STYLES["body"]),
    ]
    if chapter.warnings:
        # One paragraph: bold is for what must not be missed, and a page of bold is missed whole.
        said = " ".join(_text(warning, units) for warning in chapter.warnings)
        body.append(Paragraph(f"<b>{said}</b>", STYLES["line"]))
    if chapter.figures:
        body.append(_figures(chapter.figures, width, units, whole=issue.whole))
    if issue.whole:
        for table in chapter.figure_tables:
            if table.title not in ELSEWHERE:
                body += _table(table, width, units)
    if issue.whole:
        for drawing in joined_timelines(chapter.drawings):
            body += _drawn(drawing, width, units)
        body += _lists(chapter, units)
    if chapter.verify:
        body.append(Paragraph(f"<b>{_text(chapter.verify, units)}</b>", STYLES["line"]))
    return body


def _drawn(drawing: Drawing, width: float, units: str) -> list[Flowable]:
    """Return a drawing with its title above and its sentence below, on one page."""
    title = Paragraph(txt(drawing.title), STYLES["h3"])
    caption = Paragraph(_text(drawing.described, units), STYLES["caption"])
    return [Titled(title, Drawn(drawing, width, units), caption)]


def joined_timelines(drawings: Sequence[Drawing]) -> list[Drawing]:
    """Return drawings with all timelines joined into one, by date.

    Parameters
    ----------
    drawings : sequence of Drawing

    Returns
    -------
    list of Drawing
    """
    lines = [drawing for drawing in drawings if isinstance(drawing, Timeline)]
    if len(lines) < 2:
        return list(drawings)
    periods = sorted((each for line in lines for each in line.periods), key=lambda it: it.end)
    left = len(periods) - MOST_PERIODS
    later = f"; {left} later ones in the tables" if left > 0 else ""
    one = Timeline(
        f"Surveys and services ahead, overdue left of today{later}",
        lines[0].today,
        tuple(periods[:MOST_PERIODS]),
        joined([line.described for line in lines], "; "),
    )
    return [*(drawing for drawing in drawings if drawing not in lines), one]


def _text(cell, units: str) -> str:
    return txt(cell_text(cell, units))


def _figures(figures: Sequence[Figure], width: float, units: str, *, whole: bool) -> Flowable:
    """Return the table of figures, low, likely and high."""
    # What is not known is named with what it lacks in the whole report.
    shown = [figure for figure in figures if whole or figure.known]
    widths = (56 * mm, 22 * mm, 22 * mm, 22 * mm, width - 122 * mm)
    rows = [_figure(figure, units) for figure in shown]
    heads = ("figure", "low", "likely", "high", "from")
    return rows_table(heads, rows, widths, right=(1, 2, 3), fine=True)


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
    widths = fitted_widths(heads, rows, width)
    title = cell_text(table.title, units)
    made = rows_table(heads, rows, widths, right=table.numeric, fine=True, title=title)
    return [made, *note]


def _lists(chapter: Chapter, units: str) -> list[Flowable]:
    """What was assumed, not given, missing or typed wrongly: each a paragraph."""
    defaults = [figure_text.default_sentence(default) for default in chapter.all_defaults]
    gaps = [_gap(gap) for gap in chapter.all_gaps]
    return [
        *_list("Assumed", chapter.assumptions, units),
        *_list("Nobody gave, so this was used", defaults, units),
        *_list("Missing", gaps, units),
        *_list("Typed, but not usable", chapter.faults, units),
    ]


def _gap(gap: Gap):
    return sentence("{name}: {why}", name=gap.name, why=gap.why)


def _list(title: str, items: Sequence, units: str) -> list[Flowable]:
    """Return a titled list of sentences, nothing where there are none."""
    # An empty list would print a title that promises something.
    if not items:
        return []
    said = " ".join(_ended(cell_text(item, units)) for item in items)
    return [Paragraph(f"<b>{txt(title)}.</b> {txt(said)}", STYLES["line"])]


def _ended(text: str) -> str:
    """A sentence that ends as one, since the next one follows on its line."""
    words = text.strip()
    return f"{words}." if words and words[-1] not in ".!?…" else words
