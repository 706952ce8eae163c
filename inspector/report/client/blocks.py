"""What the blocks of the first two pages are made of: titles, lists, columns, figures in words."""

from collections.abc import Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Table

from inspector.conversion.core.chapter import Requirement
from inspector.report.cell_runs import Run
from inspector.report.issue import Issue
from inspector.report.page_references import ReferringText, referring
from inspector.report.sections.photo_pages import BARE_TABLE
from inspector.report.tables import markup
from inspector.report.theme import STYLES, plain, txt
from inspector.values.cell_text import NOT_KNOWN, figure, money_text
from inspector.values.quantity import Money

_MILLION = 1e6


GUTTER = 8 * mm


def half_of(issue: Issue) -> float:
    """Return the width of one of the two columns.

    Parameters
    ----------
    issue : Issue

    Returns
    -------
    float
        Points.
    """
    return (issue.page.column - GUTTER) / 2


def two_columns(left: list[Flowable], right: list[Flowable], issue: Issue) -> Table:
    """Return two columns beside each other.

    Parameters
    ----------
    left : list of Flowable
    right : list of Flowable
    issue : Issue

    Returns
    -------
    Table
    """
    half = half_of(issue)
    columns = Table([[left, "", right]], colWidths=(half, GUTTER, half), hAlign="LEFT")
    columns.setStyle(BARE_TABLE)
    return columns


def text(runs: Sequence[Run], style: str) -> ReferringText:
    """Return runs as a paragraph whose page numbers are found when it is laid out.

    Parameters
    ----------
    runs : sequence of Run
    style : str
        Its name in the theme.

    Returns
    -------
    ReferringText
    """
    return referring(ReferringText, markup(runs), STYLES[style])


def titled(title: str, style: str = "block") -> Paragraph:
    """Return the title of a block.

    Parameters
    ----------
    title : str
    style : str
        Its name in the theme.

    Returns
    -------
    Paragraph
    """
    return Paragraph(txt(title), STYLES[style])


def numbered(items: Sequence[Sequence[Run]], style: str = "point") -> list[Flowable]:
    """Return a numbered list.

    Parameters
    ----------
    items : sequence of sequence of Run
    style : str
        Its name in the theme.

    Returns
    -------
    list of Flowable
    """
    rows = [
        [Paragraph(f"{number}", STYLES[style]), text(runs, style)]
        for number, runs in enumerate(items, 1)
    ]
    table = Table(rows, colWidths=(5 * mm, None), hAlign="LEFT")
    table.setStyle([*BARE_TABLE, ("BOTTOMPADDING", (0, 0), (-1, -1), 2.4)])
    return [table]


def asked_words(asked: Requirement, units: str = "si") -> str:
    """Return what is asked, in words: "at least 9000 nmi".

    Parameters
    ----------
    asked : Requirement
    units : str
        "si" or "us": the reader's units.

    Returns
    -------
    str
    """
    side = "at least" if asked.least else "at most"
    return f"{side} {figure_words(asked.asked, asked.unit, units)}"


def offered_words(asked: Requirement, units: str = "si") -> str:
    """Return what she offers, with its span where it has one.

    Parameters
    ----------
    asked : Requirement
    units : str
        "si" or "us": the reader's units.

    Returns
    -------
    str
    """
    if asked.offered is None:
        return NOT_KNOWN
    point, low, high = asked.offered.point, asked.offered.low, asked.offered.high
    ends = [figure_words(end, asked.unit, units) for end in (low, high)]
    if ends[0] == ends[1]:
        return ends[0]
    span = f"{figure_words(low, asked.unit, units, with_unit=False)} to {ends[1]}"
    return span if point is None else f"{figure_words(point, asked.unit, units)} ({span})"


def figure_words(value: float, unit: str, units: str, *, with_unit: bool = True) -> str:
    """Return a figure in three digits; a whole number that was typed stays whole.

    Parameters
    ----------
    value : float
    unit : str
    units : str
        "si" or "us": the reader's units.
    with_unit : bool
        Whether the unit is printed.

    Returns
    -------
    str
    """
    rounded = value if value == int(value) else float(f"{value:.3g}")
    return figure(rounded, unit, units, with_unit=with_unit)


def money_words(value: float, currency: str) -> str:
    """Return a sum in three digits, in millions where it is that much.

    An estimate claims no more.

    Parameters
    ----------
    value : float
    currency : str
        "" where none was named.

    Returns
    -------
    str
    """
    named = plain(currency, 12)
    if abs(value) >= _MILLION:
        return f"{value / _MILLION:.3g} million {named}".rstrip()
    return money_text(Money.exact(float(f"{value:.3g}"), named))
