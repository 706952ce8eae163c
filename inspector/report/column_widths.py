"""How wide the columns of a table are, and how small its numbers must be set to fit."""

from collections.abc import Sequence

from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import Flowable

from inspector.report.cell_runs import ANCHOR, PAGE, Content, Run
from inspector.report.line_breaks import numbers_in, unbroken
from inspector.report.theme import BOLD, PLAIN, SLANTED, STYLES, plain

# As wide as any page number will be.
_WIDEST_PAGE = "p\u00a0888"


_FONTS = {"b": BOLD, "now": BOLD, "i": SLANTED}


INNER = 6


SMALLEST = 0.75


# A column gives at most this share of its width to a neighbour whose numbers need it.
_MOST_GIVEN = 0.25


# A line that fits to the last digit is sometimes broken by a rounding of the PDF library.
_SLACK = 0.5


# Longer words are broken anyway, and measuring them whole takes minutes.
_MOST_MEASURED = 200


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
    return max(stringWidth(text[:_MOST_MEASURED], PLAIN, size) for text in texts) + INNER + 1


def _measured(runs: Sequence[Run]) -> list[Run]:
    """The runs with what is printed in place of keys."""
    return [
        (_WIDEST_PAGE if tone == PAGE else text, "b" if tone == PAGE else tone)
        for text, tone in runs
        if tone != ANCHOR
    ]


def widened(rows: Sequence[Sequence[Content]], widths: Sequence[float]) -> list[float]:
    """Return the widths, with points moved to the columns that are too narrow for their numbers.

    Parameters
    ----------
    rows : sequence of sequence of Content
    widths : sequence of float
        Points.

    Returns
    -------
    list of float
        Points.
    """
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
    # A hair more than `fitting_size` asks for, so that no rounding sets the table smaller.
    size, room = STYLES["cell"].fontSize, INNER + _SLACK + 0.01
    numbers, words = [0.0], [0.0]
    for text, tone in _measured(runs):
        font = _FONTS.get(tone, PLAIN)
        numbers += [stringWidth(word, font, size) + room for word in numbers_in(text)]
        measured = [word[:_MOST_MEASURED] for word in text.split(" ")]
        words += [stringWidth(word, font, size) + room for word in measured]
    return max(numbers), max(words)


def table_size(rows: Sequence[Sequence[Content]], widths: Sequence[float]) -> float:
    """Return the share of its size at which a table's numbers fit their columns.

    Parameters
    ----------
    rows : sequence of sequence of Content
    widths : sequence of float
        Points.

    Returns
    -------
    float
        `SMALLEST` to 1.
    """
    sizes = [1.0]
    for row in rows:
        for cell, width in zip(row, widths, strict=True):
            if not isinstance(cell, Flowable):
                sizes.append(fitting_size(cell, width, STYLES["cell"]))
    return max(SMALLEST, min(sizes))


def fitting_size(runs: Sequence[Run], width: float, style: ParagraphStyle) -> float:
    """Return the share of the style's size at which a cell's widest number fits.

    Parameters
    ----------
    runs : sequence of Run
    width : float
        Of the column, points.
    style : ParagraphStyle

    Returns
    -------
    float
        At most 1.
    """
    room = max(width - INNER - _SLACK, 1)
    widest = 0.0
    for text, tone in _measured(runs):
        font = _FONTS.get(tone, PLAIN)
        for word in numbers_in(text):
            widest = max(widest, stringWidth(word, font, style.fontSize))
    return min(1.0, room / widest) if widest else 1.0
