"""Tables without cages, whose cells may hold any text of any length.

No line of a cell ends within a number, nor between a number and its unit. Where a column is too
narrow for that, in this order: its neighbours give it of their width; the whole table is set
smaller, to `SMALLEST` of its size; a line may end before the unit; that one cell is set smaller
still, until its widest number fits.
"""

from collections.abc import Sequence

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable, Table

from inspector.report.cell_runs import ANCHOR, PAGE, TO, Cell, Content, Run
from inspector.report.column_widths import INNER, fitting_size, table_size, widened
from inspector.report.line_breaks import loosened, unbroken
from inspector.report.page_references import ReferringText, link_to, page_of_key, referring
from inspector.report.theme import ACCENT, INK, LINE, PLAIN, STYLES, plain, txt

_TONES = {
    "": ("", ""),
    "b": ("<b>", "</b>"),
    "i": ("<i>", "</i>"),
    "soft": ('<font color="#47606b">', "</font>"),
    "now": (f'<font color="{ACCENT.hexval().replace("0x", "#")}"><b>', "</b></font>"),
}
# What part of a page must be free before a row is split: an empty page, less a table's margins.
_EMPTY_PAGE = 0.9


class RowTable(Table):
    """A table that splits a row in two only where the row is higher than a page."""

    def split(self, width: float, height: float) -> list[Flowable]:
        """Split between rows, and within a row only on an empty page.

        Parameters
        ----------
        width, height : float
            The room that is left, points.

        Returns
        -------
        list of Flowable
            What goes on this page and what follows; empty where nothing can go on this page.
        """
        # Left to itself the PDF library splits the last row of every page, below a second head.
        page_height = self.canv._doctemplate.frame._height
        self.splitInRow = int(height > page_height * _EMPTY_PAGE)
        return super().split(width, height)


class CellText(ReferringText):
    """The text of a cell, broken into lines once for each width."""

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """Return the room that the text takes.

        Parameters
        ----------
        width, height : float
            The room there is, points.

        Returns
        -------
        tuple of float
            Width and height, points.
        """
        # The PDF library measures a cell eight times for each page that its row goes over.
        if self._resolve() or getattr(self, "_wrapped_at", None) != width:
            self._room = super().wrap(width, height)
            self._wrapped_at = width
        return self._room


def markup(runs: Sequence[Run], loose: bool = False) -> str:
    """Return runs as the content of a Paragraph, with every text escaped.

    Parameters
    ----------
    runs : sequence of Run
    loose : bool
        Whether a line may end between a number and its unit.

    Returns
    -------
    str
    """
    made = []
    for text, tone in runs:
        if tone == ANCHOR:
            continue
        if tone == PAGE:
            made.append(page_of_key(text))
            continue
        if tone.startswith(TO):
            made.append(link_to(tone.removeprefix(TO), txt(text)))
            continue
        before, after = _TONES[tone]
        content = loosened(txt(text)) if loose else txt(text)
        if content:
            made.append(f"{before}{content}{after}")
    return " ".join(made)


def rows_table(
    head: Sequence[Cell],
    rows: Sequence[Sequence[Cell]],
    widths: Sequence[float],
    right: Sequence[int] = (),
    *,
    tight: bool = False,
    fine: bool = False,
    title: str = "",
) -> Table:
    """Return a table with a soft head line on each page and a hairline under each row.

    Parameters
    ----------
    head : sequence of Cell
        The heading of each column; all "" for a table without a head.
    rows : sequence of sequence of Cell
    widths : sequence of float
        The width of each column, points.
    right : sequence of int
        The columns that are set to the right, as numbers are.
    tight : bool
        Whether the rows are set small and close, as in long tables.
    fine : bool
        Whether they are set as small as a reference list, which is looked up and not read.
    title : str
        Printed above the heads, on each page on which the table goes on; "" for none.

    Returns
    -------
    Table
    """
    body = [[_content(cell) for cell in row] for row in rows]
    titles = [_content(title) for title in head]
    # Headings count as well: they too may have a number with its unit.
    widths = widened([*body, titles], widths)
    size = table_size([*body, titles], widths)
    usual = ("tight", "tightnumber") if tight else ("cell", "number")
    usual = ("fine", "finenumber") if fine else usual
    laid_out = [_laid_out(row, widths, _styles(*usual, right, row), size) for row in body]
    # A table of pairs has no heading, and must not repeat an empty one on each page.
    heads = 1 if any(head) else 0
    if heads:
        styles = _styles("column", "columnright", right, titles)
        laid_out.insert(0, _laid_out(titles, widths, styles, size))
    titled = 1 if title else 0
    if titled:
        first = CellText(txt(title), STYLES["h3"])
        laid_out.insert(0, [[first], *([""] * (len(widths) - 1))])
    table = RowTable(
        laid_out,
        colWidths=widths,
        repeatRows=heads + titled,
        hAlign="LEFT",
        spaceBefore=2,
        spaceAfter=4,
    )
    table.setStyle(_lines(heads, titled, *((1.0, 1.4) if tight or fine else (3, 3.4))))
    return table


def pairs_table(
    pairs: Sequence[tuple[str, Cell]], width: float, names: float, *, tight: bool = False
) -> Table:
    """Return a table of names, set softly, and their values.

    Parameters
    ----------
    pairs : sequence of (str, Cell)
    width, names : float
        The width of the whole table and of its first column, points.
    tight : bool
        As in ``rows_table``.

    Returns
    -------
    Table
    """
    rows = [[[(name, "soft")], value] for name, value in pairs]
    return rows_table(("", ""), rows, (names, width - names), tight=tight)


def _lines(heads: int, titled: int, above: float, below: float) -> list[tuple]:
    """The table's commands: paddings, the line under the head, hairlines under the rows."""
    first = heads + titled
    return [
        # Empty cells too have a font, and the PDF library's own is not embedded.
        ("FONTNAME", (0, 0), (-1, -1), PLAIN),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), INNER),
        ("TOPPADDING", (0, 0), (-1, -1), above),
        ("BOTTOMPADDING", (0, 0), (-1, -1), below),
        *([("SPAN", (0, 0), (-1, 0))] if titled else []),
        *([("LINEBELOW", (0, titled), (-1, titled), 0.5, INK)] if heads else []),
        ("LINEBELOW", (0, first), (-1, -1), 0.25, LINE),
    ]


def _content(cell: Cell) -> Content:
    """A cell as runs whose numbers are joined to their units, or as it is where it is drawn."""
    if isinstance(cell, Flowable):
        return cell
    runs = [(cell, "")] if isinstance(cell, str) else cell
    return [
        (text if tone in (PAGE, ANCHOR) else unbroken(plain(text)), tone) for text, tone in runs
    ]


def _anchors(cell: Sequence[Run]) -> tuple[str, ...]:
    """The keys by which a cell is referred to."""
    return tuple(key for key, tone in cell if tone == ANCHOR)


def _styles(
    usual: str, at_right: str, right: Sequence[int], columns: Sequence
) -> list[ParagraphStyle]:
    """The style of each column."""
    return [STYLES[at_right if at in right else usual] for at in range(len(columns))]


def _laid_out(
    row: Sequence[Content], widths: Sequence[float], styles: Sequence[ParagraphStyle], size: float
) -> list[list[Flowable]]:
    """Return the cells of a row as what the PDF library prints."""
    # Each in a list of its own: the PDF library splits lists only, and drops what is in none.
    return [[_flowable(*cell, size)] for cell in zip(row, widths, styles, strict=True)]


def _flowable(cell: Content, width: float, style: ParagraphStyle, size: float) -> Flowable:
    """A cell at the table's size or, where a number asks for it, below."""
    if isinstance(cell, Flowable):
        return cell
    if fitting_size(cell, width, style) >= size:
        return referring(CellText, markup(cell), _scaled(style, size), _anchors(cell))
    # Below the table's size a line may end before a unit, but never within the number.
    loose = [(text if tone in (PAGE, ANCHOR) else loosened(text), tone) for text, tone in cell]
    own_size = min(size, fitting_size(loose, width, style))
    return referring(CellText, markup(cell, loose=True), _scaled(style, own_size), _anchors(cell))


def _scaled(style: ParagraphStyle, size: float) -> ParagraphStyle:
    """Return a style at a share of its size."""
    if size == 1:
        return style
    return ParagraphStyle(
        f"{style.name} {size:.3f}",
        parent=style,
        fontSize=style.fontSize * size,
        leading=style.leading * size,
    )
