"""The chapters of the conversion in the report: the answer, the figures with their spans, tables, drawings, and all that was assumed or is missing."""

from collections.abc import Sequence
from decimal import Decimal

from reportlab.lib.units import mm
from reportlab.platypus import CondPageBreak, Flowable, Paragraph

from inspector.conversion.chapters import Chapter, Lines
from inspector.conversion.money import rounded
from inspector.conversion.shapes import Default, Figure, Span
from inspector.errors import InspectorError
from inspector.quantities import in_units, show
from inspector.report.drawings import Drawn
from inspector.report.front import Issue
from inspector.report.pages import heading
from inspector.report.reader_units import drawing_in, table_in
from inspector.report.tables import Cell, fitted_widths, rows_table
from inspector.report.theme import STYLES, txt
from inspector.words import grouped

FEW_DIGITS = 4      # a number of no more digits was typed, or is a constant


def conversion_sections(chapters: Sequence[Chapter], issue: Issue) -> list[Flowable]:
    """All chapters that have anything to say; one sentence where none has."""
    told = [one for one in chapters if one.figures or one.lines or one.gaps or one.warnings]
    if not told:
        return []
    body: list[Flowable] = [heading("What the conversion does", "conversion"), Paragraph(
        "First checks by a surveyor from what was recorded on this visit. Every figure is a span with what it rests on; a naval architect, class and "
        "flag confirm what lives hang on.", STYLES["body"])]
    if issue.units == "us":
        body.append(Paragraph("Sentences and the tables marked SI are in SI units.", STYLES["body"]))
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
        body += _lines(table_in(lines, issue.units), width)
    for drawing in (drawing_in(one, issue.units) for one in chapter.drawings):
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
    """A value with its unit in the report's system of units, to three significant digits; a dash where there is none.

    A value of at most four digits was given so and not computed: it is left as it is. Whole counts are never cut. Sums of money go to whole
    hundreds below 100 000 and to whole thousands above.
    """
    if value is None:
        return "–"
    given = _digits(value) <= FEW_DIGITS
    try:
        found, target = in_units(value, unit, units)
    except InspectorError:  # a currency is no unit of ours
        return f"{grouped(value if given else rounded(value)) if abs(value) >= 100 else format(value, '.3g')} {unit}".strip()
    return show(found if (given and target == unit) or not target else _three(found), target)


def _digits(value: float) -> int:
    """How many digits it takes to write the value, without zeros that only hold a place."""
    return len(f"{Decimal(repr(float(value))):f}".lstrip("-").strip("0").replace(".", "").lstrip("0")) if value % 1 else len(str(abs(int(value))))


def _three(value: float) -> float:
    return float(f"{value:.3g}")


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
