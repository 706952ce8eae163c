"""Tables without cages, whose cells may hold any text of any length.

No line of a cell ends within a number, nor between a number and its unit. Where a column is too
narrow for that, in this order: its neighbours give it of their width; the whole table is set
smaller, to `SMALLEST` of its size; a line may end before the unit; that one cell is set smaller
still, until its widest number fits.
"""

from collections.abc import Sequence

from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import Flowable, Table

from inspector.report.line_breaks import loosened, numbers_in, unbroken
from inspector.report.page_references import ReferringText, link_to, page_of_key, referring
from inspector.report.theme import ACCENT, BOLD, INK, LINE, PLAIN, SLANTED, STYLES, plain, txt

# A run is a piece of text and its tone: "" plain, "b" bold, "i" slanted, "soft", and "now", the
# accent for what a person must act on. With the tone PAGE the text is the key of a place, of which
# the page is printed; with ANCHOR it is the key of this very place; with "to:<key>" it leads there.
Run = tuple[str, str]
Cell = str | Flowable | list[Run]
# A cell as the layout handles it.
Content = Flowable | list[Run]

_TONES = {
    "": ("", ""),
    "b": ("<b>", "</b>"),
    "i": ("<i>", "</i>"),
    "soft": ('<font color="#47606b">', "</font>"),
    "now": (f'<font color="{ACCENT.hexval().replace("0x", "#")}"><b>', "</b></font>"),
}
PAGE, ANCHOR, TO = "page", "anchor", "to:"
# As wide as any page number will be.
_WIDEST_PAGE = "p\u00a0888"
_FONTS = {"b": BOLD, "now": BOLD, "i": SLANTED}
_INNER = 6
SMALLEST = 0.75
# A column gives at most this share of its width to a neighbour whose numbers need it.
_MOST_GIVEN = 0.25
# A line that fits to the last digit is sometimes broken by a rounding of the PDF library.
_SLACK = 0.5
# Longer words are broken anyway, and measuring them whole takes minutes.
_MOST_MEASURED = 200
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
    widths = _widened([*body, titles], widths)
    size = _table_size([*body, titles], widths)
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


def fitted_widths(head: Sequence[str], rows: Sequence[Sequence[str]], width: float) -> list[float]:
    """Return widths of columns of plain text that together fill a width.

    None is narrower than its longest word, or number with its unit, if that can be; the rest goes
    by how much text a column has.

    Parameters
    ----------
    head : sequence of str
    rows : sequence of sequence of str
    width : float
        Of all columns together, points.

    Returns
    -------
    list of float
        Points.
    """
    columns = [
        [unbroken(plain(text)) for text in column] for column in zip(head, *rows, strict=True)
    ]
    least = [_widest_word(texts) for texts in columns]
    wanted = [
        # No column asks for more than 0.6 of the table: a long sentence would leave nothing to the
        # figures.
        max(low, min(_widest_of(texts), width * 0.6))
        for low, texts in zip(least, columns, strict=True)
    ]
    # No room for every word: all columns shrink alike, and the words are broken.
    if sum(least) >= width:
        return [low * width / sum(least) for low in least]
    if sum(wanted) <= width:
        # What is left over is shared out, so that all tables end at the same edge.
        spare = (width - sum(wanted)) / len(wanted)
        return [high + spare for high in wanted]
    share = (width - sum(least)) / (sum(wanted) - sum(least))
    return [low + (high - low) * share for low, high in zip(least, wanted, strict=True)]


def _widest_word(texts: Sequence[str]) -> float:
    """Return the width of the widest word of some texts [pt]."""
    # Split at ordinary spaces only: a no-break space is within a number and no place to break.
    return _widest_of([word for text in texts for word in text.split(" ")])


def _widest_of(texts: Sequence[str]) -> float:
    """The width of a column in which each text has a line of its own, points."""
    size = STYLES["cell"].fontSize
    return max(stringWidth(text[:_MOST_MEASURED], PLAIN, size) for text in texts) + _INNER + 1


def _lines(heads: int, titled: int, above: float, below: float) -> list[tuple]:
    """The table's commands: paddings, the line under the head, hairlines under the rows."""
    first = heads + titled
    return [
        # Empty cells too have a font, and the PDF library's own is not embedded.
        ("FONTNAME", (0, 0), (-1, -1), PLAIN),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), _INNER),
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


def _measured(runs: Sequence[Run]) -> list[Run]:
    """The runs with what is printed in place of keys."""
    return [
        (_WIDEST_PAGE if tone == PAGE else text, "b" if tone == PAGE else tone)
        for text, tone in runs
        if tone != ANCHOR
    ]


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
    if _fitting_size(cell, width, style) >= size:
        return referring(CellText, markup(cell), _scaled(style, size), _anchors(cell))
    # Below the table's size a line may end before a unit, but never within the number.
    loose = [(text if tone in (PAGE, ANCHOR) else loosened(text), tone) for text, tone in cell]
    own_size = min(size, _fitting_size(loose, width, style))
    return referring(CellText, markup(cell, loose=True), _scaled(style, own_size), _anchors(cell))


def _widened(rows: Sequence[Sequence[Content]], widths: Sequence[float]) -> list[float]:
    """The widths, with points moved to the columns that are too narrow for their numbers."""
    missing, spare = [], []
    for cells, width in zip(zip(*rows, strict=True), widths, strict=True):
        number, word = _column_needs(cells, width)
        missing.append(max(0.0, number - width))
        spare.append(max(0.0, min(width * _MOST_GIVEN, width - word)))
    # No more is moved than is lacking, and no more than can be given.
    moved = min(sum(missing), sum(spare))
    if not moved:
        return list(widths)
    return [
        width + moved * lacks / sum(missing) - moved * spares / sum(spare)
        for width, lacks, spares in zip(widths, missing, spare, strict=True)
    ]


def _column_needs(cells: Sequence[Content], width: float) -> tuple[float, float]:
    """The room that the widest number and the widest word of a column need, points."""
    if any(isinstance(cell, Flowable) for cell in cells):
        # What is drawn was made for this width: the column takes none and gives none.
        return width, width
    needs = [_widest(cell) for cell in cells]
    return max(number for number, _ in needs), max(word for _, word in needs)


def _widest(runs: Sequence[Run]) -> tuple[float, float]:
    """The room that the widest number and the widest word of a cell need, points."""
    # A hair more than `_fitting_size` asks for, so that no rounding sets the table smaller.
    size, room = STYLES["cell"].fontSize, _INNER + _SLACK + 0.01
    numbers, words = [0.0], [0.0]
    for text, tone in _measured(runs):
        font = _FONTS.get(tone, PLAIN)
        numbers += [stringWidth(word, font, size) + room for word in numbers_in(text)]
        measured = [word[:_MOST_MEASURED] for word in text.split(" ")]
        words += [stringWidth(word, font, size) + room for word in measured]
    return max(numbers), max(words)


def _table_size(rows: Sequence[Sequence[Content]], widths: Sequence[float]) -> float:
    """The share of its size, `SMALLEST` to 1, at which the table's numbers fit their columns."""
    sizes = [1.0]
    for row in rows:
        for cell, width in zip(row, widths, strict=True):
            if not isinstance(cell, Flowable):
                sizes.append(_fitting_size(cell, width, STYLES["cell"]))
    return max(SMALLEST, min(sizes))


def _fitting_size(runs: Sequence[Run], width: float, style: ParagraphStyle) -> float:
    """The share of the style's size, at most 1, at which a cell's widest number fits."""
    room = max(width - _INNER - _SLACK, 1)
    widest = 0.0
    for text, tone in _measured(runs):
        font = _FONTS.get(tone, PLAIN)
        for word in numbers_in(text):
            widest = max(widest, stringWidth(word, font, style.fontSize))
    return min(1.0, room / widest) if widest else 1.0


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
