"""The particulars as they were typed, so that a reader can check every figure made of them."""

from collections.abc import Mapping

from reportlab.platypus import Flowable, Paragraph

from inspector.conversion.core.particulars import Row, Rows
from inspector.report.column_widths import fitted_widths
from inspector.report.document import section, small_heading
from inspector.report.issue import Issue
from inspector.report.tables import rows_table
from inspector.report.theme import STYLES, txt
from inspector.values.cell_text import DASH, figure, reader_unit
from inspector.values.field import Field

# Rows of so few columns are pairs, and of more than so many no table has room.
_FEW, _MANY = 3, 8


def typed_particulars(tables: Mapping[str, Rows], issue: Issue) -> list[Flowable]:
    """Return every table of particulars in which something was typed.

    Parameters
    ----------
    tables : mapping of str to Rows
    issue : Issue

    Returns
    -------
    list of Flowable
        Empty where nothing was typed.
    """
    body: list[Flowable] = []
    for rows in tables.values():
        columns = [each for each in rows.table.columns if any(row[each.name] for row in rows)]
        if not columns:
            continue
        body += _printed(rows, columns, issue)
    if not body:
        return []
    lead = "What the chapters above are calculated from, in the reader's units."
    return section("Particulars as typed", "particulars", lead, *body)


def _printed(rows: Rows, columns: list[Field], issue: Issue) -> list[Flowable]:
    """A table by its shape: in a sentence, as rows of values, or as a table with heads."""
    if rows.table.single:
        return [_sentence(rows, columns, issue)]
    if len(columns) <= _FEW:
        return [_in_pairs(rows, columns, issue)]
    if len(columns) > _MANY:
        return _in_lines(rows, columns, issue)
    return [_table(rows, columns, issue)]


def _in_pairs(rows: Rows, columns: list[Field], issue: Issue) -> Paragraph:
    """Rows of two or three values behind each other."""
    heads = ", ".join(column.label.lower() for column in columns)
    said = "; ".join(
        ": ".join(_value(row, column, issue, with_unit=True) or DASH for column in columns)
        for row in rows
    )
    title = f"<b>{txt(rows.table.title)}</b> ({txt(heads)})"
    return Paragraph(f"{title}: {txt(said)}.", STYLES["line"])


def _in_lines(rows: Rows, columns: list[Field], issue: Issue) -> list[Flowable]:
    """Rows of more values than a page has columns for: the heads once, then a line for each row."""
    heads = " · ".join(_heading(column, issue) for column in columns[1:])
    top = small_heading(rows.table.title)
    legend = Paragraph(txt(f"Each: {heads}."), STYLES["small"])
    lines = []
    for row in rows:
        first, *rest = (_value(row, column, issue, with_unit=False) or DASH for column in columns)
        # What is not typed at the end of a row needs no sign.
        while rest and rest[-1] == DASH:
            rest.pop()
        lines.append(Paragraph(f"<b>{txt(first)}</b>: {txt(' · '.join(rest))}", STYLES["tight"]))
    return [top, legend, *lines]


def _sentence(rows: Rows, columns: list[Field], issue: Issue) -> Paragraph:
    """A table of one row in a line: its names with their values."""
    said = "; ".join(
        f"{column.label.lower()} {_value(rows.one, column, issue, with_unit=True)}"
        for column in columns
        if rows.one[column.name] is not None
    )
    return Paragraph(f"<b>{txt(rows.table.title)}.</b> {txt(said)}.", STYLES["line"])


def _table(rows: Rows, columns: list[Field], issue: Issue) -> Flowable:
    heads = [_heading(column, issue) for column in columns]
    made = [[_value(row, column, issue, with_unit=False) for column in columns] for row in rows]
    widths = fitted_widths(heads, made, issue.page.column)
    numeric = [at for at, column in enumerate(columns) if column.kind in ("number", "whole")]
    return rows_table(heads, made, widths, right=numeric, tight=True, title=rows.table.title)


def _heading(column: Field, issue: Issue) -> str:
    unit = reader_unit(column.unit or "", issue.units)
    return f"{column.label.lower()}, {unit}" if unit else column.label.lower()


def _value(row: Row, column: Field, issue: Issue, *, with_unit: bool) -> str:
    """What was typed, in the reader's units; nothing where nothing was."""
    value = row[column.name]
    if value is None or value == "":
        return ""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return figure(float(value), column.unit or "", issue.units, with_unit=with_unit)
    return str(value)
