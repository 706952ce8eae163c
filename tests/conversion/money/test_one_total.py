"""One total: chapter, comparison, first page, tables and the yard's list say the same."""

import pytest

from inspector.assess.work_cost import counted_lines
from inspector.conversion.contents import read_case
from inspector.report.client.all_in_cost import all_in_cost
from inspector.report.data_files.spreadsheets import sheets
from inspector.report.yard.scope_items import scope_items, scope_sums
from tests.published.a_worked_case import DAY, Worked, typed

P80 = "All of it, as far as priced, to plan with (P80)"


@pytest.fixture(scope="module")
def worked(tmp_path_factory):
    """The worked case with a line that has a likely cost only, one without, and one that falls."""
    lines = {
        "likely-only": {"likely": "7000"},
        "no-price": {},
        "falls": {"low": "9000", "likely": "8000", "high": "7000"},
    }
    more = [
        (f"scope/{line}", field, value)
        for line, costs in lines.items()
        for field, value in (
            ("system", "hull"),
            ("unit", "whole"),
            ("act", "refurbish"),
            ("text", line),
            *costs.items(),
        )
    ]
    return Worked(tmp_path_factory.mktemp("one"), [*typed(), *more])


def test_whoever_shows_the_total_shows_the_same(worked):
    """The chapter's figure and table, the comparison, the client's page and the spreadsheet."""
    case = read_case(worked.assessment, DAY)
    planned = worked.span("money", P80)[1]
    table = worked.rows("money", "All of the money")
    figures = next(
        sheet
        for sheet in sheets(worked.assessment, tuple(worked.chapters.values()))
        if sheet.name == "Figures"
    )
    printed = [row for row in figures.rows if P80 in row]

    assert planned == worked.candidate("she").money.total.p80
    assert planned == all_in_cost(case).planned
    assert planned == table["to plan with (P80)"][0].likely
    assert planned in printed[0]


def test_the_work_lines_have_one_sum(worked):
    """The chapter, the words of the systems and the yard's list count the same lines."""
    likely = worked.span("money", "Sum of the likely costs")[1]
    counted = [
        line.likely
        for system in worked.assessment.systems
        for line in counted_lines(system)
        if line.is_priced
    ]

    assert 1000 * (90 + 260 + 60 + 7) == likely
    assert likely == sum(counted)
    assert likely == sum(
        system.whole.cost.likely for system in worked.assessment.systems if system.whole.cost
    )
    assert likely == scope_sums(scope_items(worked.assessment))[-1].likely


def test_what_is_in_no_sum_is_named_everywhere(worked):
    """A line without a price and one whose amounts fall keep the total open on every page."""
    case = read_case(worked.assessment, DAY)
    named = {"no-price", "falls"}

    assert named <= set(worked.candidate("she").money.open)
    assert named <= set(all_in_cost(case).open)
    assert named <= set(worked.rows("money", "All of the money"))
