"""Claims beside what was found, and conditions of class with their days."""

from datetime import date

import pytest

from inspector.conversion.core.claims import open_conditions
from inspector.conversion.core.particulars import Row
from inspector.conversion.papers.chapter import chapter as papers
from inspector.conversion.range.chapter import chapter as range_
from inspector.conversion.space.chapter import chapter as space
from inspector.conversion.stability.chapter import chapter as stability
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import BOOKLET, case
from tests.conversion.test_order import BRIEF, TABLES

TITLE = "Claims beside what was found"
BY_DRAUGHT = [
    {"draught": draught, "displacement": mass} for draught, mass in (("5", "3150"), ("7", "4962"))
]


def rows(chapter):
    """The rows of the table of claims: claim -> the rest; empty without it."""
    found = [table for table in chapter.figure_tables if table.title == TITLE]
    return {row[0]: row[1:] for row in found[0].rows} if found else {}


def claimed(**claims):
    """A whole case with claims."""
    tables = {**TABLES, "hydrostatics": [BOOKLET], "hydrostatics_by_draught": BY_DRAUGHT}
    return case({**tables, "claims": [{"id": "one", **claims}]}, brief=BRIEF)


@pytest.mark.parametrize(("claim", "word"), [("2050", "agrees"), ("2600", "claims more")])
def test_a_deadweight_is_held_against_booklet_and_load_line(claim, word):
    """At 6.10 m she displaces 3150 + 0.55 × 1812 t; less 2100 t of lightship are 2047 t."""
    row = rows(stability(claimed(deadweight=claim)))["Deadweight"]

    assert 3150 + 1812 * 1.10 / 2 - 2100 == pytest.approx(row[1].likely)
    assert word == row[2]


def test_speed_fuel_and_tanks_are_held_against_her_own_figures():
    """Own points give the speed of 80 to 90 % load and the burn at the speed claimed."""
    found = rows(range_(claimed(service_speed="12", fuel_a_day="3", fuel="340", fresh_water="90")))

    assert "claims less" == found["Service speed"][2]
    assert "claims less" == found["Fuel a day at that speed, everything aboard"][2]
    # 190 m³ of a tank typed twice, and 150 m³.
    assert 340 == found["Own fuel"][1].likely
    assert "agrees" == found["Own fuel"][2]
    assert "not known" == found["Fresh water"][2]


def test_a_speed_within_her_points_is_found():
    """At 13 kn two engines of 1500 kW carry 77 %, at 13.5 kn 88 %: 85 % is between them."""
    row = rows(range_(claimed(service_speed="13.3")))["Service speed"]

    assert 13 < row[1].low < row[1].likely < 13.5 < row[1].high < 14
    assert "agrees" == row[2]


def test_berths_are_those_in_cabins_that_are_there():
    """Six singles against eight claimed."""
    cabins = {
        "name": "cabins",
        "kind": "cabin",
        "place": "inside",
        "count": "6",
        "persons": "1",
        "area": "7",
        "plan": "there already",
    }
    found = case({"wants": [cabins], "claims": [{"id": "one", "berths": "8"}]})

    assert ("claims more", 6) == (
        rows(space(found))["Berths"][2],
        rows(space(found))["Berths"][1].likely,
    )


def test_without_a_claim_there_is_no_table():
    """Nothing is compared with nothing."""
    assert {} == rows(stability(claimed()))


def test_conditions_of_class_are_warned_of_until_they_are_met():
    """Overdue, to come and without a date; what is met is silent."""
    typed = [
        {"name": "hose", "due": "2031-05-01", "memo": "condition of class"},
        {"name": "ladder", "due": "2031-06-03", "memo": "memorandum"},
        {"name": "pump", "met": "yes"},
        {"name": "plate"},
    ]
    found = [cell_text(text) for text in papers(case({"class_conditions": typed})).warnings]

    assert "Condition of class: plate; no date is given." == found[0]
    assert "Condition of class: hose; by 2031-05-01, 3 days ago." == found[1]
    assert "Memorandum: ladder; by 2031-06-03, in 30 days." == found[2]
    assert not any("pump" in text for text in found)


def test_an_empty_list_has_no_open_conditions():
    """No row, no word."""
    assert [] == list(open_conditions([Row("r", {"met": "yes"})], date(2031, 5, 4)))
