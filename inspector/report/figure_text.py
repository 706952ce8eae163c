"""The figures and tables of a chapter in words, for page and report, and as plain data."""

from datetime import date
from typing import Any

from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.figure import PRACTICE, Default, Figure
from inspector.criteria.core.source import Source
from inspector.report.line_breaks import unbroken
from inspector.values.cell_text import DASH, cell_text, heading_text, table_cell_text
from inspector.values.quantity import Cell, Money, Quantity, Sentence, sentence
from inspector.values.text import capital


def printed(cell: Cell, system: str = "si") -> str:
    """Return a cell as text in which no line ends between a number and its unit.

    Parameters
    ----------
    cell : Cell
    system : str
        "si" or "us": the reader's units.

    Returns
    -------
    str
    """
    return unbroken(cell_text(cell, system))


def ends_printed(figure: Figure, system: str = "si") -> tuple[str, str, str]:
    """Return low, likely and high of a known figure as text.

    Parameters
    ----------
    figure : Figure
    system : str
        "si" or "us".

    Returns
    -------
    tuple of str
        DASH for an end that is not known.
    """
    # A span without a likely value keeps its middle column, empty.
    return tuple(DASH if end is None else printed(end, system) for end in figure.ends)


def named_with_unit(figure: Figure, system: str = "si") -> str:
    """Return the name of a figure with the unit of its ends, for a table that prints it once.

    Parameters
    ----------
    figure : Figure
    system : str
        "si" or "us".

    Returns
    -------
    str
    """
    return heading_text(figure.name, figure.unit, system)


def bare_ends(figure: Figure, system: str = "si") -> tuple[str, str, str]:
    """Return low, likely and high of a known figure without their unit; once where it is certain.

    Parameters
    ----------
    figure : Figure
    system : str
        "si" or "us".

    Returns
    -------
    tuple of str
        "" for the ends of a figure that is certain, DASH for what is not known.
    """
    low, likely, high = (
        table_cell_text(end, system, figure.unit or "plain") for end in figure.ends
    )
    # One value is printed once, in the place of the likely one.
    return ("", low, "") if figure.span.is_exact else (low, likely, high)


def default_sentence(default: Default) -> Sentence:
    """Return a default with its value, why it was used and its source.

    Parameters
    ----------
    default : Default

    Returns
    -------
    Sentence
    """
    why = capital(default.why) if isinstance(default.why, str) else default.why
    return sentence(
        "{name}: {value}. {why} ({source})",
        name=default.name,
        value=default.cell,
        why=why,
        source=_source_text(default.source),
    )


def _source_text(source: Source) -> str:
    """The source of a default; common practice has no title, edition or publisher to name."""
    # "Common practice, no publisher, guidance (common practice)" would say one thing four times.
    return source.mark if source == PRACTICE else str(source)


def headings(table: FigureTable, system: str = "si") -> list[str]:
    """Return the headings of a table with the units that its reader sees.

    Parameters
    ----------
    table : FigureTable
    system : str

    Returns
    -------
    list of str
    """
    return [heading_text(column.heading, column.unit, system) for column in table.columns]


def rows_printed(table: FigureTable, system: str = "si") -> list[list[str]]:
    """Return the cells of a table as text in the reader's units.

    Parameters
    ----------
    table : FigureTable
    system : str
        "si" or "us".

    Returns
    -------
    list of list of str
        DASH for a figure that is not known; without the unit where the heading names it.
    """
    units = [column.unit for column in table.columns]
    return [
        [
            unbroken(table_cell_text(cell, system, unit))
            for cell, unit in zip(row, units, strict=True)
        ]
        for row in table.rows
    ]


# Characters that a row has on a phone, and at most of its first column, whose words may break.
NARROW_ROW, NARROW_NAME = 48, 14


def fits_a_phone(table: FigureTable, system: str = "si") -> bool:
    """Return whether a table finds room on a phone as it is, so that its rows are no blocks.

    Parameters
    ----------
    table : FigureTable
    system : str
        "si" or "us".

    Returns
    -------
    bool
    """
    rows = rows_printed(table, system)
    widths = []
    for place, heading in enumerate(headings(table, system)):
        longest_word = max((len(word) for word in heading.split()), default=0)
        longest_cell = max((len(row[place]) for row in rows), default=0)
        widths.append(max(longest_word, longest_cell))
    if not widths:
        return True
    # Each column but the first takes two characters more, which keep it off its neighbour.
    return min(widths[0], NARROW_NAME) + sum(width + 2 for width in widths[1:]) <= NARROW_ROW


def chapter_data(chapter: Chapter) -> dict[str, Any]:
    """Return a chapter as data for JSON: figures as numbers with their unit, sentences as text.

    Parameters
    ----------
    chapter : Chapter

    Returns
    -------
    dict[str, Any]
    """
    return {name: _data(value) for name, value in vars(chapter).items()}


def _data(value: Any) -> Any:
    """A value of a chapter as dicts, lists, numbers and text."""
    # A figure is a dataclass too, so it is looked at before the others.
    if isinstance(value, Quantity):
        return _span_data(value, unit=value.unit)
    if isinstance(value, Money):
        return _span_data(value, currency=value.currency)
    if isinstance(value, Sentence):
        return cell_text(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, tuple):
        return [_data(item) for item in value]
    # Not `asdict`, which would turn the figures inside into dicts before they are looked at.
    if hasattr(value, "__dataclass_fields__"):
        return {name: _data(item) for name, item in vars(value).items()}
    return value


def _span_data(value: Quantity | Money, **unit: str) -> dict[str, Any]:
    return {"low": value.low, "likely": value.likely, "high": value.high, **unit}
