"""The yard's list: items that keep their number, prices that add up to the report's total."""

import io
from dataclasses import replace

import openpyxl
import pypdf
import pytest

from inspector.assess.from_state import read_inspection
from inspector.assess.registers import work_lines
from inspector.assess.work_cost import counted_lines
from inspector.record.entry import Entry
from inspector.record.state import State
from inspector.report.yard.scope_items import scope_items, scope_sums
from inspector.report.yard.scope_report import build_scope
from inspector.report.yard.scope_workbook import scope_workbook


@pytest.fixture
def priced(full):
    """The hand-made inspection, with the second line supplied by the owner, after the first."""
    thrusters, *others = full.systems
    first, second = thrusters.lines
    lines = (
        replace(first, number=1, quantity="2", quantity_unit="=seals", finding="a"),
        replace(second, number=4, likely=30000, supplied_by="owner", after="1", place="frame 12"),
    )
    return replace(full, systems=(replace(thrusters, lines=lines), *others))


def rows_of(content, name="Scope"):
    """The rows of a workbook's sheet, as an independent library reads them."""
    heads, *rows = openpyxl.load_workbook(io.BytesIO(content))[name].values
    return [dict(zip(heads, row, strict=True)) for row in rows]


def test_the_sum_is_that_of_the_counted_lines(priced):
    """By hand: 110 000 by the yard and 30 000 supplied by the owner."""
    sums = scope_sums(scope_items(priced))
    counted = [line.likely for part in priced.systems for line in counted_lines(part)]

    assert [110_000, 30_000, 140_000] == [each.likely for each in sums]
    assert sum(counted) == sums[-1].likely


def test_an_unpriced_item_is_counted_and_not_taken_for_nothing(full):
    """The sum says how many items it lacks."""
    total = scope_sums(scope_items(full))[-1]

    assert (110_000, 1) == (total.likely, total.unpriced)


def test_of_a_unit_priced_two_ways_one_item_is_an_alternative(full):
    """Both are listed, and one of them is in the sum."""
    thrusters, *others = full.systems
    first = thrusters.lines[0]
    lines = (first, replace(first, id="3", act="replace", likely=500_000))
    items = scope_items(replace(full, systems=(replace(thrusters, lines=lines), *others)))

    assert ["alternative", "counted"] == sorted(item.status for item in items)


def test_an_item_names_finding_photos_and_the_item_before(priced):
    """By their numbers in the report; the finding's photo is not filed under it in this record."""
    first, second = scope_items(priced)

    assert (12, None) == (first.finding, first.after)
    assert 1 == second.after


def test_the_workbook_holds_numbers_and_adds_up_what_is_typed(priced):
    """The yard's columns are empty, sums are our own formulas, and no text becomes one."""
    first, second, total = rows_of(scope_workbook(priced))
    cells = openpyxl.load_workbook(io.BytesIO(scope_workbook(priced)))["Scope"]
    formulas = [cell.value for row in cells for cell in row if cell.data_type == "f"]

    assert (2, "'=seals", None, None) == (
        first["quantity"],
        first["unit of quantity"],
        first["unit price"],
        first["price"],
    )
    assert "frame 12" == second["frame or place"]
    assert "estimate, likely" not in first
    assert [total["price"]] == formulas
    assert '"counted"' in formulas[0]


def test_with_the_estimate_the_workbook_comes_to_the_report_s_total(priced):
    """The values that a reader without a calculating program sees."""
    content = io.BytesIO(scope_workbook(priced, with_estimate=True))
    page = openpyxl.load_workbook(content, data_only=True)["Scope"]
    heads, *rows = page.values
    total = dict(zip(heads, rows[-1], strict=True))

    assert 140_000 == total["estimate, likely"]
    assert [110_000, 30_000] == [row[heads.index("estimate, likely")] for row in rows[:-1]]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_pdf_holds_every_item_and_prices_only_for_the_owner(priced, tmp_path, paper):
    """In landscape; the yard's copy has no amount of ours."""
    texts = {}
    for estimate in (False, True):
        out = tmp_path / f"{estimate}.pdf"
        build_scope(priced, out, paper=paper, made_at="2026", revision="1", with_estimate=estimate)
        page = pypdf.PdfReader(out).pages[0]
        assert page.mediabox.width > page.mediabox.height
        texts[estimate] = page.extract_text()

    for text in texts.values():
        assert "New seals and bearings, in dock" in text
        assert "Fair and plate the tunnels" in text
    assert "140000" in "".join(texts[True].split())
    assert "140000" not in "".join(texts[False].split())


def test_an_item_keeps_its_number_when_another_is_taken_out():
    """A yard may have priced the list already."""

    def entries(*more):
        said = [("scope/x", "act", "replace"), ("scope/y", "act", "remove"), *more]
        return [
            Entry(f"a:{n}", f"2026-01-01T00:00:{n:02}.000Z", "a", "K. T.", *each)
            for n, each in enumerate(said, 1)
        ]

    before = work_lines(read_inspection(State(entries())))
    after = work_lines(read_inspection(State(entries(("scope/x", "gone", True)))))

    assert [("x", 1), ("y", 2)] == [(line.id, line.number) for line in before]
    assert [("y", 2)] == [(line.id, line.number) for line in after]
