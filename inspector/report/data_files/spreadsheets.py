"""The record as plain tables for those who calculate on, as JSON, CSV or a workbook.

Numbers stay numbers; a text that a spreadsheet would run as a formula is made plain text.
"""

import csv
import io
import json
from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import Path

import xlsxwriter

from inspector.assess.model import Assessment
from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.figure import Figure
from inspector.report.data_files.record_tables import record_sheets
from inspector.report.data_files.spreadsheet_text import safe_cell
from inspector.report.data_files.table_sheets import Cell, Sheet
from inspector.report.document import whole_file
from inspector.values.cell_text import cell_text
from inspector.values.errors import InspectorError
from inspector.values.quantity import Cell as FigureCell
from inspector.values.quantity import Money, Quantity
from inspector.values.text import listed

WRITERS = ("csv", "json", "xlsx")
# A cell of a workbook holds 32 767 characters; what is left out of a longer text is counted.
_MOST_LETTERS = 32_000
PLAIN_TEXTS = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
}


_SPAN = frozenset({"low", "likely", "high"})
# A column is as wide as its widest text, within these, in letters.
_NARROWEST, _WIDEST = 7, 60


class UnknownTable(InspectorError):
    """A table that no inspection has. Attribute: ``table``."""


class UnknownFormat(InspectorError):
    """A file name whose ending is none that is written. Attribute: ``ending``."""


def sheets(assessment: Assessment, chapters: Sequence[Chapter] = ()) -> tuple[Sheet, ...]:
    """Return every table of one inspection.

    Parameters
    ----------
    assessment : Assessment
    chapters : sequence of Chapter
        The conversion.

    Returns
    -------
    tuple of Sheet
        The checks first.
    """
    return (*record_sheets(assessment), _figures(chapters), _chapter_tables(chapters))


def _figures(chapters: Sequence[Chapter]) -> Sheet:
    """Return the sheet of all figures of the chapters, in SI."""
    heads = ("chapter", "figure", "low", "likely", "high", "unit", "from")
    rows = [
        (chapter.title, figure.name, *_ends(figure), figure.unit, cell_text(figure.formula_text))
        for chapter in chapters
        for figure in chapter.figures
    ]
    return Sheet("Figures", heads, tuple(rows), _SPAN)


def _ends(figure: Figure) -> tuple[Cell, Cell, Cell]:
    """Return low, likely and high as numbers; None where not known."""
    span = figure.span
    return (None, None, None) if span is None else (span.low, span.point, span.high)


def _chapter_tables(chapters: Sequence[Chapter]) -> Sheet:
    """The chapters' tables, a cell a line, so that figures stay numbers with their unit."""
    # Tables of all shapes fit into one sheet this way, and can be filtered by chapter.
    heads = ("chapter", "table", "row", "column", "low", "likely", "high", "unit", "text")
    rows: list[tuple[Cell, ...]] = []
    for chapter in chapters:
        for table in chapter.figure_tables:
            rows += _table_rows(chapter.title, table)
    return Sheet("Chapter tables", heads, tuple(rows), _SPAN | {"row"})


def _table_rows(chapter: str, table: FigureTable) -> Iterator[tuple[Cell, ...]]:
    """Yield the cells of one table, each as numbers with its unit or as text."""
    title = cell_text(table.title)
    for number, row in enumerate(table.rows, 1):
        for column, cell in zip(table.columns, row, strict=True):
            # Empty cells make no row, so that a filter shows figures only.
            if cell is not None and cell != "":
                yield chapter, title, number, column.heading, *_as_numbers(cell)


def _as_numbers(cell: FigureCell) -> tuple[Cell, ...]:
    """Low, likely, high, unit and text of a cell."""
    if isinstance(cell, Quantity):
        return cell.low, cell.likely, cell.high, cell.unit, ""
    if isinstance(cell, Money):
        return cell.low, cell.likely, cell.high, cell.currency, ""
    if isinstance(cell, int):
        return cell, cell, cell, "", ""
    return None, None, None, "", cell_text(cell)


def write(found: Sequence[Sheet], out: Path, table: str = "") -> None:
    """Write the tables to a file by its ending.

    Parameters
    ----------
    found : sequence of Sheet
    out : Path
        .json and .xlsx hold all tables, .csv one.
    table : str
        The name of the table for .csv; "" for the first one, the checks.

    Raises
    ------
    UnknownFormat
        The ending is none of these.
    UnknownTable
        There is no such table.
    """
    ending = out.suffix.lower().removeprefix(".")
    makers = {
        "json": as_json,
        "csv": lambda tables: as_csv(_named(tables, table)),
        "xlsx": as_workbook,
    }
    if ending not in makers:
        endings = ".zip, .xlsx, .csv and .json"
        sentence = f"A file ending in '{out.suffix}' is not written; the endings are {endings}."
        raise UnknownFormat(sentence, ending=ending)
    with whole_file(out) as part:
        part.write_bytes(makers[ending](found))


def as_json(found: Sequence[Sheet]) -> bytes:
    """Return all tables as JSON: name -> list of rows as objects.

    Parameters
    ----------
    found : sequence of Sheet

    Returns
    -------
    bytes
    """
    tables = {
        sheet.name: [dict(zip(sheet.heads, row, strict=True)) for row in sheet.rows]
        for sheet in found
    }
    # NaN is no JSON, and would break the program that reads it.
    return json.dumps(tables, ensure_ascii=False, indent=1, allow_nan=False).encode()


def _named(found: Sequence[Sheet], table: str) -> Sheet:
    """The table of that name, the first one for ""."""
    for sheet in found:
        if table.lower() in ("", sheet.name.lower()):
            return sheet
    names = listed([sheet.name for sheet in found], "or")
    raise UnknownTable(f"There is no table '{table}'; the tables are {names}.", table=table)


def as_csv(sheet: Sheet) -> bytes:
    """Return one table as CSV, UTF-8 with the mark that spreadsheets know it by.

    Parameters
    ----------
    sheet : Sheet

    Returns
    -------
    bytes
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(sheet.heads)
    for row in sheet.rows:
        writer.writerow([safe_cell(cell) if isinstance(cell, str) else cell for cell in row])
    # With a byte order mark, without which a spreadsheet reads UTF-8 as something older.
    return out.getvalue().encode("utf-8-sig")


def as_workbook(found: Sequence[Sheet]) -> bytes:
    """Return all tables as a workbook, a sheet each; texts are never formulas or links.

    Parameters
    ----------
    found : sequence of Sheet

    Returns
    -------
    bytes
    """
    out = io.BytesIO()
    with xlsxwriter.Workbook(out, PLAIN_TEXTS) as book:
        for sheet in found:
            _write_sheet(book, sheet)
    return out.getvalue()


def _write_sheet(book: xlsxwriter.Workbook, sheet: Sheet) -> None:
    """Write one table, with a filter on each heading and columns as wide as their texts."""
    page = book.add_worksheet(sheet.name)
    day = book.add_format({"num_format": "yyyy-mm-dd"})
    page.write_row(0, 0, sheet.heads, book.add_format({"bold": True}))
    # The heads stay in sight: a sheet of checks has some hundred rows.
    page.freeze_panes(1, 0)
    page.autofilter(0, 0, max(len(sheet.rows), 1), len(sheet.heads) - 1)
    for column, head in enumerate(sheet.heads):
        cells = [row[column] for row in sheet.rows]
        longest = max((len(str(cell)) for cell in (head, *cells) if cell is not None), default=0)
        page.set_column(column, column, min(max(longest + 2, _NARROWEST), _WIDEST))
        is_day = head in sheet.dates
        for row, cell in enumerate(cells, 1):
            if is_day and (date := _day(cell)) is not None:
                page.write_datetime(row, column, date, day)
            else:
                _write_cell(page, row, column, cell)


def _day(cell: Cell) -> datetime | None:
    """The day of an ISO date, None where it is none."""
    try:
        return datetime.fromisoformat(str(cell))
    except ValueError:
        return None


def _write_cell(page, row: int, column: int, cell: Cell) -> None:
    """Write a number as a number and everything else as plain text."""
    if isinstance(cell, int | float):
        page.write_number(row, column, cell)
    elif cell:
        page.write_string(row, column, _that_fits(safe_cell(str(cell))))


def _that_fits(text: str) -> str:
    """A text that a cell of a workbook holds; a longer one says what is missing and where it is."""
    left_out = len(text) - _MOST_LETTERS
    if left_out <= 0:
        return text
    return f"{text[:_MOST_LETTERS]} … ({left_out} more characters: the JSON file holds them all)"
