"""The record as plain tables for those who calculate on, as JSON, CSV or a workbook.

Numbers stay numbers; a text that a spreadsheet would run as a formula is made plain text.
"""

import csv
import io
import json
from collections.abc import Iterator, Sequence
from pathlib import Path

import xlsxwriter

from inspector.assess.model import Assessment
from inspector.conversion.core.chapter import Chapter, FigureTable
from inspector.conversion.core.figure import Figure
from inspector.report.document import whole_file
from inspector.report.record_tables import Cell, Sheet, record_sheets
from inspector.report.spreadsheet_text import safe_cell
from inspector.values.cell_text import cell_text
from inspector.values.errors import InspectorError
from inspector.values.quantity import Cell as FigureCell
from inspector.values.quantity import Money, Quantity

WRITERS = ("csv", "json", "xlsx")
# A cell of a workbook holds 32 767 characters; what is left out of a longer text is counted.
_MOST_LETTERS = 32_000
PLAIN_TEXTS = {
    "in_memory": True,
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
}


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
    return Sheet("Figures", heads, tuple(rows))


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
    return Sheet("Chapter tables", heads, tuple(rows))


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


def write(found: Sequence[Sheet], out: Path) -> None:
    """Write the tables to a file by its ending.

    Parameters
    ----------
    found : sequence of Sheet
    out : Path
        .json and .xlsx hold all tables, .csv the checks.

    Raises
    ------
    UnknownFormat
        The ending is none of these.
    """
    ending = out.suffix.lower().removeprefix(".")
    makers = {"json": as_json, "csv": as_csv, "xlsx": as_workbook}
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


def as_csv(found: Sequence[Sheet]) -> bytes:
    """Return the first table (checks) as CSV, UTF-8 with the mark that spreadsheets know it by.

    Parameters
    ----------
    found : sequence of Sheet

    Returns
    -------
    bytes
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    # CSV holds one table: that of the checks. The other formats hold all.
    writer.writerow(found[0].heads)
    for row in found[0].rows:
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
        bold = book.add_format({"bold": True})
        for sheet in found:
            page = book.add_worksheet(sheet.name)
            page.write_row(0, 0, sheet.heads, bold)
            # The heads stay in sight: a sheet of checks has some hundred rows.
            page.freeze_panes(1, 0)
            for number, row in enumerate(sheet.rows, 1):
                _write_row(page, number, row)
    return out.getvalue()


def _write_row(page, number: int, row: Sequence[Cell]) -> None:
    """Write numbers as numbers and everything else as plain text."""
    for column, cell in enumerate(row):
        if isinstance(cell, int | float):
            page.write_number(number, column, cell)
        elif cell:
            page.write_string(number, column, _that_fits(safe_cell(str(cell))))


def _that_fits(text: str) -> str:
    """A text that a cell of a workbook holds; a longer one says what is missing and where it is."""
    left_out = len(text) - _MOST_LETTERS
    if left_out <= 0:
        return text
    return f"{text[:_MOST_LETTERS]} … ({left_out} more characters: the JSON file holds them all)"
