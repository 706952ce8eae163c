"""The tables for those who calculate on: complete, numbers as numbers, and nothing that a spreadsheet would run."""

import csv
import io
import json

import openpyxl
import pytest

from inspector.report import sheets


def test_every_check_finding_line_and_photo_is_a_row(full):
    """Nothing is left out of the tables."""
    found = {sheet.name: sheet for sheet in sheets.sheets(full)}
    checks = sum(len(unit.results) for system in full.systems for unit in system.units)

    assert checks == len(found["Checks"].rows)
    assert len(full.findings) == len(found["Findings"].rows)
    assert len(full.photos) == len(found["Photos"].rows)
    assert all(len(row) == len(sheet.heads) for sheet in found.values() for row in sheet.rows)


def test_a_workbook_reads_back_with_numbers_as_numbers(full):
    """Read by an independent library: limits and costs are numbers, texts are texts."""
    book = openpyxl.load_workbook(io.BytesIO(sheets.as_workbook(sheets.sheets(full))))
    heads, *rows = list(book["Checks"].values)
    limits = [row[heads.index("limit")] for row in rows if row[heads.index("limit")] is not None]

    assert ["Checks", "Verdicts", "Findings", "Work lines", "Photos", "Figures"] == book.sheetnames
    assert limits
    assert all(isinstance(limit, float | int) for limit in limits)


@pytest.mark.parametrize("text", ["=1+1", "+cmd", "-2+3", "@SUM(A1)", "\t=1", " =HYPERLINK(1)", "＝1"])
def test_a_text_that_a_spreadsheet_would_run_stays_text(text):
    """In CSV and workbook alike it begins with an apostrophe and is no formula."""
    table = (sheets.Sheet("Checks", ("note",), ((text,),)),)
    line = list(csv.reader(io.StringIO(sheets.as_csv(table).decode("utf-8-sig"))))[1][0]
    cell = openpyxl.load_workbook(io.BytesIO(sheets.as_workbook(table)))["Checks"]["A2"]

    assert line.startswith("'")
    assert cell.data_type == "s"
    assert str(cell.value).startswith("'")


def test_json_holds_every_table_by_name(full):
    """Rows as objects, keyed by the heads."""
    found = json.loads(sheets.as_json(sheets.sheets(full)))

    assert {"Checks", "Verdicts", "Findings", "Work lines", "Photos", "Figures"} == set(found)
    assert "rating counted" in found["Checks"][0]


@pytest.mark.parametrize("name", ["report.doc", "report", "report.xls"])
def test_an_ending_that_is_not_written_is_refused(full, tmp_path, name):
    """The sentence names the endings that are."""
    (folder := tmp_path / "out").mkdir()
    with pytest.raises(sheets.UnknownFormat, match="xlsx"):
        sheets.write(sheets.sheets(full), folder / name)
    assert not list(folder.iterdir())
