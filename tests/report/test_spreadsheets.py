"""The exported tables: complete, numbers as numbers, nothing that a spreadsheet would run."""

import csv
import io
import json
from datetime import datetime

import jsonschema
import openpyxl
import pytest

from inspector import places
from inspector.conversion.core.chapter import Chapter, FigureTable, TableColumn
from inspector.report.data_files import spreadsheets as sheets
from inspector.report.data_files.json_schema import FILE, schema_text
from inspector.report.data_files.table_sheets import Sheet
from inspector.values.quantity import Money, Quantity

NAMES = (
    "Checks",
    "Readings",
    "Verdicts",
    "Findings",
    "Work lines",
    "Photos",
    "Agreement",
    "Figures",
    "Chapter tables",
)


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

    assert list(NAMES) == book.sheetnames
    assert limits
    assert all(isinstance(limit, float | int) for limit in limits)


@pytest.mark.parametrize(
    "text", ["=1+1", "+cmd", "-2+3", "@SUM(A1)", "\t=1", " =HYPERLINK(1)", "＝1"]
)
def test_a_text_that_a_spreadsheet_would_run_stays_text(text):
    """In CSV and workbook alike it begins with an apostrophe and is no formula."""
    table = (Sheet("Checks", ("note",), ((text,),)),)
    line = list(csv.reader(io.StringIO(sheets.as_csv(table[0]).decode("utf-8-sig"))))[1][0]
    cell = openpyxl.load_workbook(io.BytesIO(sheets.as_workbook(table)))["Checks"]["A2"]

    assert line.startswith("'")
    assert cell.data_type == "s"
    assert str(cell.value).startswith("'")


def test_json_holds_every_table_by_name(full):
    """Rows as objects, keyed by the heads."""
    found = json.loads(sheets.as_json(sheets.sheets(full)))

    assert set(NAMES) == set(found)
    assert "rating counted" in found["Checks"][0]


@pytest.mark.parametrize("name", ["report.doc", "report", "report.xls"])
def test_an_ending_that_is_not_written_is_refused(full, tmp_path, name):
    """The sentence names the endings that are."""
    (folder := tmp_path / "out").mkdir()
    with pytest.raises(sheets.UnknownFormat, match="xlsx"):
        sheets.write(sheets.sheets(full), folder / name)
    assert not list(folder.iterdir())


def test_figures_in_the_tables_of_a_chapter_stay_numbers_with_their_unit(full):
    """Each cell is a line of its own: a span in three numbers, a sum with its currency, or text."""
    table = FigureTable(
        "Sets",
        (TableColumn("name"), TableColumn("mass", "t"), TableColumn("cost"), TableColumn("age")),
        (("=port", Quantity(1, 1.5, 2, "t"), Money(5, None, 7, "EUR"), 4), ("aft", None, None, 9)),
    )
    chapters = [Chapter("power", "Power", "", figure_tables=(table,))]
    book = openpyxl.load_workbook(
        io.BytesIO(sheets.as_workbook(sheets.sheets(full, chapters))), read_only=True
    )
    heads, *rows = book["Chapter tables"].values

    assert ("low", "likely", "high", "unit", "text") == heads[-5:]
    assert [
        ("name", None, None, None, None, "'=port"),
        ("mass", 1, 1.5, 2, "t", None),
        ("cost", 5, None, 7, "EUR", None),
        ("age", 4, 4, 4, None, None),
        ("name", None, None, None, None, "aft"),
        ("age", 9, 9, 9, None, None),
    ] == [row[3:] for row in rows]


def test_a_text_longer_than_a_cell_says_what_is_left_out():
    """Nothing is cut in silence: the workbook counts what it cannot hold, and JSON holds it all."""
    table = (Sheet("Checks", ("note",), (("n" * 40_000,),)),)
    cell = openpyxl.load_workbook(io.BytesIO(sheets.as_workbook(table)))["Checks"]["A2"].value

    assert cell.startswith("n" * 32_000)
    assert "8000 more characters" in cell
    assert json.loads(sheets.as_json(table))["Checks"][0]["note"] == "n" * 40_000


def test_a_reading_is_a_row_with_its_number_limit_margin_and_source(full):
    """What nobody judged says why."""
    found = {sheet.name: sheet for sheet in sheets.sheets(full)}["Readings"]
    rows = [dict(zip(found.heads, row, strict=True)) for row in found.rows]
    thickness, water, resistance = rows[0], rows[1], rows[2]

    assert len(rows) == sum(
        len(result.readings)
        for part in full.systems
        for unit in part.units
        for result in unit.results
    )
    assert (9.6, 9.0, "seen") == (thickness["value"], thickness["limit"], thickness["mark"])
    assert ("%", 0.2, "common practice") == (water["unit of value"], water["limit"], water["mark"])
    assert "insulation class" in resistance["not judged because"]


def test_days_are_days_in_a_workbook_and_columns_have_filters():
    """A date can be sorted and counted on; what is no date stays text."""
    table = Sheet("Checks", ("on", "by"), (("2026-05-02", "K. T."), ("", "")), dates={"on"})
    page = openpyxl.load_workbook(io.BytesIO(sheets.as_workbook((table,))))["Checks"]

    assert datetime(2026, 5, 2) == page["A2"].value
    assert page["A3"].value is None
    assert "A1:B3" == page.auto_filter.ref


def test_any_table_can_be_written_as_csv(full, tmp_path):
    """By its name, in capitals or not; an unknown name is refused with those there are."""
    sheets.write(sheets.sheets(full), tmp_path / "readings.csv", "readings")
    first = (tmp_path / "readings.csv").read_text("utf-8-sig").splitlines()[0]

    assert first.startswith("system,unit,check,reading,as typed,value")
    with pytest.raises(sheets.UnknownTable, match="Readings"):
        sheets.write(sheets.sheets(full), tmp_path / "no.csv", "prices")


def test_the_json_is_valid_by_its_published_schema(full):
    """Checked by an independent library; the schema in static/ is the one of these tables."""
    published = json.loads((places.shipped("static") / FILE).read_text("utf-8"))
    written = json.loads(sheets.as_json(sheets.sheets(full)))

    jsonschema.Draft202012Validator.check_schema(published)
    jsonschema.validate(written, published)
    assert json.loads(schema_text()) == published
    written["Readings"][0]["value"] = "9.6"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(written, published)
