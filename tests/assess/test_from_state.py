"""The record of an inspection: what it keeps of a state, and in which order."""

from datetime import date

import pytest

from inspector.assess.from_state import read_inspection
from inspector.record.state import State


def test_an_empty_state_is_an_empty_record():
    """Nothing recorded is nothing to calculate from, and no error."""
    recorded = read_inspection(State())

    assert ({}, (), {}, None, "") == (
        recorded.vessel,
        recorded.units,
        recorded.rows,
        recorded.day,
        recorded.currency,
    )


def test_units_are_in_the_order_of_their_first_entry(write):
    """A unit that is renamed later keeps its place; one without a name is none."""
    write("unit/thrusters/bow", "name", "Bow thruster 1")
    write("unit/thrusters/third", "kind", "azimuth")

    units = read_inspection(write.state).units

    assert ["Bow thruster 1", "Aft thruster", "Main engine"] == [unit.name for unit in units]


@pytest.mark.parametrize("mark", [True, "true", "yes"])
def test_what_was_taken_out_is_in_no_list_and_comes_back(write, mark):
    """One meaning of "gone" for units, rows, findings, photos, lines and certificates alike."""
    subjects = {
        "unit/thrusters/bow": "name",
        "row/tanks/a": "name",
        "finding/a": "title",
        f"photo/{'a' * 64}": "caption",
        "scope/a": "act",
        "certificate/a": "kind",
    }
    for subject, field in subjects.items():
        write(subject, field, "x")(subject, "gone", mark)
    removed = read_inspection(write.state)
    for subject in subjects:
        write(subject, "gone", None)
    back = read_inspection(write.state)

    assert ["aft"] == [unit.id for unit in removed.units if unit.system == "thrusters"]
    assert ({}, {}, {}, {}) == (
        removed.rows,
        removed.findings,
        removed.photos,
        removed.work_lines,
    )
    assert {"tanks": {"a": {"name": "x"}}, "certificates": {"a": {"kind": "x"}}} == back.rows
    assert [{"a": {"title": "x"}}, {"a": {"act": "x"}}] == [back.findings, back.work_lines]


def test_rows_are_as_typed_and_oldest_first(write):
    """A value keeps its unit and its spelling; the order is that of the first entries."""
    write("row/tanks/z", "volume", {"value": "9,6", "unit": "m³"})
    write("row/tanks/a", "volume", "12")

    rows = read_inspection(write.state).rows["tanks"]

    assert ["z", "a"] == list(rows)
    assert {"value": "9,6", "unit": "m³"} == rows["z"]["volume"]


def test_a_sheet_keeps_answer_readings_and_unlike_answers(write):
    """A word that is no answer is left out; of a dispute every answer is kept with its author."""
    write.rate("thrusters/bow/oil", "good").rate(
        "thrusters/bow/oil", "poor", device="phone", who="CD", blind=True
    )
    write("sheet/thrusters/bow/oil", "reading/water", {"value": "0.5", "unit": "%"})
    write.rate("thrusters/aft/oil", "splendid")

    sheets = read_inspection(write.state).sheets
    disputed, odd = sheets["sheet/thrusters/bow/oil"], sheets["sheet/thrusters/aft/oil"]

    assert [("good", "AB"), ("poor", "CD")] == [(each.text, each.who) for each in disputed.answers]
    assert {"water": {"value": "0.5", "unit": "%"}} == disputed.readings
    assert ("", ()) == (odd.answer, odd.answers)


@pytest.mark.parametrize(
    ("typed", "day"),
    [("2026-05-02", date(2026, 5, 2)), ("2 May", None), ("", None), ({"a": 1}, None)],
)
def test_the_day_of_an_inspection_is_a_date_or_nothing(write, typed, day):
    """A date that cannot be read is no day, and stops nothing."""
    assert day == read_inspection(write("inspection", "date", typed).state).day


def test_decisions_limits_and_settings_are_kept_as_text(write):
    """By unit, by criterion and by name."""
    write("verdict/thrusters/bow", "life_years", {"value": "12", "unit": "years"})
    write("profile/oil-water", "source", "the maker")
    write("settings", "coverage", "50")
    write("row/prices/one", "currency", "crowns")

    recorded = read_inspection(write.state)

    assert {"thrusters/bow": {"life_years": "12"}} == recorded.decisions
    assert {"oil-water": {"source": "the maker"}} == recorded.limits
    assert ("50", "crowns") == (recorded.settings["coverage"], recorded.currency)
