"""What the walk and the tables of the demo state differently is named, and what agrees is not."""

from dataclasses import replace
from datetime import date

import pytest

from inspector.assess.papers.surveys_due import due_list
from inspector.conversion.contents import CHAPTERS, chapter_of, read_case
from inspector.conversion.space.particulars import WANTS
from inspector.conversion.stated_twice import with_contradictions
from inspector.demo.portfolio import prepare_in
from inspector.services.data_folder import open_folder
from inspector.values.cell_text import cell_text

DAY = date(2026, 11, 30)


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    """The case of the well-kept candidate, and its chapters as written."""
    folder = tmp_path_factory.mktemp("demo") / "data"
    prepare_in(folder)
    data = open_folder(folder)
    case = read_case(data.assessment_of(data.inspections.get("demo-zellowen-tide")), DAY)
    data.close()
    return case, {name: CHAPTERS[name][1](case) for name in ("power", "space")}


def sheet_of(case, check):
    """The subject of the demo's sheet of a check."""
    (subject,) = (one for one in case.recorded.sheets if one.endswith(f"/{check}"))
    return subject


def changed(case, check, reading, value):
    """The case with one reading of the walk typed otherwise."""
    recorded, subject = case.recorded, sheet_of(case, check)
    sheet = recorded.sheets[subject]
    typed = replace(sheet, readings={**sheet.readings, reading: value})
    recorded = replace(recorded, sheets={**recorded.sheets, subject: typed})
    return replace(case, assessment=replace(case.assessment, recorded=recorded))


def told(case, chapter):
    """What a chapter says beyond its own warnings."""
    found = with_contradictions(case, chapter).warnings[len(chapter.warnings) :]
    return [cell_text(one).replace("\u00a0", " ") for one in found]


@pytest.mark.parametrize(
    ("chapter", "check", "reading", "same", "other", "said"),
    [
        ("space", "berths", "berths", "14", "26", "Berths: 26 on the walk, and 14 in"),
        ("space", "guests", "passengers", "24", "18", "Passengers: 18 on the walk, and 24 in"),
        ("power", "harbour-load", "power", "150", "310", "Load of a night in harbour: 310 kW on"),
        (
            "power",
            "shore-connection",
            "current",
            "400",
            "250",
            "Current of the shore connection: 250",
        ),
        ("power", "shore-connection", "voltage", "690", "440", "Shore voltage: 440 V on"),
        ("power", "shore-connection", "frequency", "60", "50", "Shore frequency: 50 Hz on"),
        ("power", "shore-connection", "ship_voltage", "690", "440", "Ship's voltage: 440 V on"),
        ("power", "shore-connection", "ship_frequency", "60", "50", "Ship's frequency: 50 Hz on"),
        (
            "power",
            "capability-and-manual",
            "side_area",
            "690",
            "640",
            "Side area of the capability",
        ),
        ("power", "capability-and-manual", "wind_limit", "", "60", "Wind held after the worst"),
    ],
)
def test_what_is_stated_otherwise_is_named(demo, chapter, check, reading, same, other, said):
    """Both figures in one sentence; none where they agree, or one of them is missing."""
    case, chapters = demo
    agree, differ = (changed(case, check, reading, value) for value in (same, other))

    assert any(one.startswith(said) for one in told(differ, chapters[chapter]))
    assert not any(one.startswith(said) for one in told(agree, chapters[chapter]))


@pytest.mark.parametrize(("floor", "named"), [("72", False), ("34", True)])
def test_the_mess_by_tape_and_on_the_list(demo, floor, named):
    """Where the mess is listed as there already, its floor is what the tape says."""
    case, chapters = demo
    rows = case.tables[WANTS.id]
    stays = tuple(
        replace(row, values={**row.values, "plan": "there already"})
        if row.text("kind") == "mess"
        else row
        for row in rows.rows
    )
    kept = replace(case, tables={**case.tables, WANTS.id: replace(rows, rows=stays)})

    found = told(changed(kept, "day-rooms", "floor", floor), chapters["space"])
    assert named == any(one.startswith("Floor of mess and day rooms: 34 m²") for one in found)


def test_wind_that_the_plots_hold_as_calculated_is_no_contradiction(demo):
    """Inside the calculated span the two agree."""
    case, chapters = demo
    (held,) = (one for one in chapters["power"].requirements if one.id == "wind-after-failure")
    wind = f"{held.offered.middle:.1f}"

    found = told(changed(case, "capability-and-manual", "wind_limit", wind), chapters["power"])
    assert not any(one.startswith("Wind held") for one in found)


def test_a_slip_of_the_finger_is_no_contradiction(demo):
    """What cannot be read is told where it was typed."""
    case, chapters = demo

    found = told(changed(case, "shore-connection", "current", "4oo"), chapters["power"])
    assert not any(one.startswith("Current") for one in found)


def test_the_page_of_a_chapter_shows_them(demo):
    """The demo itself states three figures otherwise."""
    case, _ = demo
    found = [cell_text(warning) for warning in chapter_of(case, "space").warnings]

    assert any(warning.startswith("Berths") for warning in found)


def test_the_docking_of_the_demo_has_one_word(demo):
    """The sheet on the day of the visit, and the certificates on the same day."""
    case, _ = demo
    (result,) = (
        result
        for system in case.assessment.systems
        for result in system.whole.results
        if result.check.id == "docking"
    )
    due = {
        one.certificate.kind: one.survey
        for one in due_list(case.recorded.certificates, case.recorded.day)
        if one.survey and one.survey.name == "bottom"
    }

    assert {"class", "safety construction"} == set(due)
    assert {(result.judgement.band, result.judgement.value)} == {
        (survey.state, survey.left) for survey in due.values()
    }
