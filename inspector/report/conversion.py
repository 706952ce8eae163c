"""The chapters of the conversion in the report: the answer, the figures with their spans, tables, drawings, and all that was assumed or is missing."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Paragraph

from inspector.conversion.chapters import Chapter, Lines
from inspector.conversion.shapes import Default, Figure, Span
from inspector.errors import InspectorError
from inspector.quantities import in_units, show
from inspector.report.drawings import Drawn
from inspector.report.front import Issue
from inspector.report.pages import heading
from inspector.report.tables import Cell, fitted_widths, rows_table
from inspector.report.theme import STYLES, txt
from inspector.words import grouped


def conversion_sections(chapters: Sequence[Chapter], issue: Issue) -> list[Flowable]:
    """All chapters that have anything to say; one sentence where none has."""
    told = [one for one in chapters if one.figures or one.lines or one.gaps or one.warnings]
    if not told:
        return []
    body: list[Flowable] = [heading("What the conversion does", "conversion"), Paragraph(
        "First checks by a surveyor from what was recorded on this visit. Every figure is a span with what it rests on; a naval architect, class and "
        "flag confirm what lives hang on.", STYLES["body"])]
    for one in told:
        body += chapter_section(one, issue)
    return body


def chapter_section(chapter: Chapter, issue: Issue) -> list[Flowable]:
    """One chapter."""
    width = issue.page.column
    body: list[Flowable] = [CondPageBreak(70 * mm), heading(chapter.title, f"chapter-{chapter.id}", 1), Paragraph(txt(chapter.answer), STYLES["body"])]
    body += [Paragraph(f"<b>{txt(warning)}</b>", STYLES["body"]) for warning in chapter.warnings]
    if chapter.figures:
        rows = [_figure(one, issue) for one in chapter.figures]
        body.append(rows_table(("figure", "low", "likely", "high", "from"), rows, (46 * mm, 21 * mm, 21 * mm, 21 * mm, width - 109 * mm), right=(1, 2, 3)))
    for lines in chapter.lines:
        body += _lines(lines, width)
    for drawing in chapter.drawings:
        body += [Paragraph(txt(drawing.title), STYLES["h3"]), Drawn(drawing, width), Paragraph(txt(drawing.described), STYLES["caption"])]
    body += _rest(chapter, issue)
    if chapter.verify:
        body.append(Paragraph(f"<b>{txt(chapter.verify)}</b>", STYLES["body"]))
    return body


def _figure(one: Figure, issue: Issue) -> list[Cell]:
    name: Cell = [(one.name, "")]
    if one.span is None:
        return [name, "", [("not known", "soft")], "", [("; ".join(gap.name for gap in one.gaps), "soft")]]
    return [name, *(amount(value, one.unit, issue.units) for value in (one.span.low, one.span.point, one.span.high)), [(one.formula_text, "soft")]]


def amount(value: float | None, unit: str, units: str) -> str:
    """A value with its unit in the report's system of units; a dash where there is none."""
    if value is None:
        return "–"
    try:
        return show(*in_units(value, unit, units))
    except InspectorError:  # a currency is no unit of ours
        return f"{grouped(value)} {unit}".strip() if abs(value) >= 100 else f"{value:.4g} {unit}".strip()


def _lines(lines: Lines, width: float) -> list[Flowable]:
    note = [Paragraph(txt(lines.note), STYLES["small"])] if lines.note else []
    widths = fitted_widths(lines.headings, lines.rows, width)
    return [Paragraph(txt(lines.title), STYLES["h3"]), rows_table(lines.headings, lines.rows, widths, right=lines.numeric), *note]


def _rest(chapter: Chapter, issue: Issue) -> list[Flowable]:
    """What was assumed, which values nobody gave, what is missing, and what was typed wrongly: each a list of sentences."""
    assumed = tuple(dict.fromkeys(text for one in chapter.figures for text in one.assumptions))
    defaults = tuple(dict.fromkeys((*chapter.defaults, *(default for one in chapter.figures for default in one.defaults))))
    gaps = tuple(dict.fromkeys((*chapter.gaps, *(gap for one in chapter.figures for gap in one.gaps))))
    groups = (("Assumed", [(text, "") for text in assumed]), ("Nobody gave, so this was used", [(_default(one, issue), "") for one in defaults]),
              ("Missing", [(f"{gap.name}: {gap.why}", "") for gap in gaps]), ("Typed, but not usable", [(text, "now") for text in chapter.faults]))
    return [piece for title, items in groups if items
            for piece in (Paragraph(txt(title), STYLES["h3"]), rows_table(("",), [[[item]] for item in items], (issue.page.column,)))]


def _default(one: Default, issue: Issue) -> str:
    value = one.value
    if isinstance(value, Span):
        shown = " to ".join(amount(end, one.unit, issue.units) for end in (value.low, value.high))
    else:
        shown = value if isinstance(value, str) else amount(value, one.unit, issue.units)
    return f"{one.name}: {shown}. {one.why} ({one.source})"
