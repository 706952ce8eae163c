"""The record as plain tables for those who calculate on: checks, verdicts, findings, work lines, photos and figures, as JSON, CSV or a workbook.

Numbers stay numbers; a text that a spreadsheet would run as a formula is made plain text.
"""

import csv
import io
import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import xlsxwriter

from inspector.assess.shapes import Assessment, CheckResult
from inspector.conversion.chapters import Chapter
from inspector.errors import InspectorError
from inspector.record.cells import safe_cell
from inspector.report.pages import whole_file

Cell = str | float | int | None
WRITERS = ("csv", "json", "xlsx")


class UnknownFormat(InspectorError):
    """A file name whose ending is none that is written. Attribute: ``ending``."""


@dataclass(frozen=True)
class Sheet:
    """One table: its name (at most 31 letters), the heads of its columns, and rows."""

    name: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def sheets(assessment: Assessment, chapters: Sequence[Chapter] = ()) -> tuple[Sheet, ...]:
    """Every table of one inspection."""
    return (_checks(assessment), _verdicts(assessment), _findings(assessment), _lines(assessment), _photos(assessment), _figures(chapters))


def _checks(assessment: Assessment) -> Sheet:
    heads = ("system", "unit", "check", "answer", "rating counted", "readings", "judged", "band", "limit", "limit unit", "source", "note", "by", "disputed",
             "photos")
    rows = tuple(_check(system.system.name, result) for system in assessment.systems for unit in system.units for result in unit.results)
    return Sheet("Checks", heads, rows)


def _check(system: str, result: CheckResult) -> tuple[Cell, ...]:
    read = "; ".join(f"{one.label} {one.text} {one.unit}".strip() for one in result.readings)
    judged = result.judgement
    by = (judged.rating or "", judged.band, judged.limit, judged.unit or "", str(judged.source)) if judged else ("", "", None, "", result.cannot_judge)
    disputed = "yes" if result.disputed else ""
    return (system, result.unit_name, result.check.title, result.answer, result.rating or "", read, *by, result.note, result.who, disputed, len(result.photos))


def _verdicts(assessment: Assessment) -> Sheet:
    heads = ("system", "unit", "proposed", "rule", "decided", "reason", "condition", "at least", "at most", "coverage", "refurbish", "replace")
    rows = tuple(
        (system.system.name, part.name if part is not system.whole else "all", part.proposal.verdict, part.proposal.rule, part.decision, part.reason,
         part.condition.points, part.condition.low, part.condition.high, part.condition.coverage, part.facts.refurbish_cost, part.facts.replace_cost)
        for system in assessment.systems for part in (system.whole, *system.units))
    return Sheet("Verdicts", heads, rows)


def _findings(assessment: Assessment) -> Sheet:
    rows = tuple((one.number, one.title, one.text, one.urgency, one.action, one.system, one.unit_name, len(one.photos)) for one in assessment.findings)
    return Sheet("Findings", ("number", "title", "text", "urgency", "action", "system", "unit", "photos"), rows)


def _lines(assessment: Assessment) -> Sheet:
    rows = tuple((line.sequence, system.system.name, line.unit, line.act, line.text, line.low, line.likely, line.high, line.weight, line.rate)
                 for system in assessment.systems for line in system.lines)
    return Sheet("Work lines", ("order", "system", "unit", "act", "what", "low", "likely", "high", "weight, t", "rate"), rows)


def _photos(assessment: Assessment) -> Sheet:
    rows = tuple((one.number, one.sha, one.caption, one.place, one.taken, one.who) for one in assessment.photos)
    return Sheet("Photos", ("number", "sha256", "caption", "place", "taken", "by"), rows)


def _figures(chapters: Sequence[Chapter]) -> Sheet:
    rows = tuple((chapter.title, one.name, *((None,) * 3 if one.span is None else (one.span.low, one.span.point, one.span.high)), one.unit, one.formula_text)
                 for chapter in chapters for one in chapter.figures)
    return Sheet("Figures", ("chapter", "figure", "low", "likely", "high", "unit", "from"), rows)


def write(found: Sequence[Sheet], out: Path) -> None:
    """Write the tables to a file by its ending: .json and .xlsx hold all of them, .csv the checks. Raises UnknownFormat."""
    ending = out.suffix.lower().removeprefix(".")
    makers = {"json": as_json, "csv": as_csv, "xlsx": as_workbook}
    if ending not in makers:
        raise UnknownFormat(f"A file ending in '{out.suffix}' is not written; the endings are .zip, .xlsx, .csv and .json.", ending=ending)
    with whole_file(out) as part:
        part.write_bytes(makers[ending](found))


def as_json(found: Sequence[Sheet]) -> bytes:
    """All tables as JSON: name -> list of rows as objects."""
    tables = {sheet.name: [dict(zip(sheet.heads, row, strict=True)) for row in sheet.rows] for sheet in found}
    return json.dumps(tables, ensure_ascii=False, indent=1, allow_nan=False).encode()


def as_csv(found: Sequence[Sheet]) -> bytes:
    """The first table (checks) as CSV, UTF-8 with a mark that spreadsheets know it by."""
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(found[0].heads)
    writer.writerows([_plain(cell) for cell in row] for row in found[0].rows)
    return out.getvalue().encode("utf-8-sig")


def as_workbook(found: Sequence[Sheet]) -> bytes:
    """All tables as a workbook, a sheet each; texts are written as texts, never as formulas or links."""
    out = io.BytesIO()
    with xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}) as book:
        bold = book.add_format({"bold": True})
        for sheet in found:
            page = book.add_worksheet(sheet.name)
            page.write_row(0, 0, sheet.heads, bold)
            page.freeze_panes(1, 0)
            for number, row in enumerate(sheet.rows, 1):
                for column, cell in enumerate(row):
                    _write(page, number, column, cell)
    return out.getvalue()


def _write(page, row: int, column: int, cell: Cell) -> None:
    if isinstance(cell, int | float):
        page.write_number(row, column, cell)
    elif cell:
        # a cell holds 32 767 characters at most
        page.write_string(row, column, safe_cell(str(cell))[:32_000])


def _plain(cell: Cell) -> Cell:
    return safe_cell(cell) if isinstance(cell, str) else cell
