"""The chapter on power: never raises, names what is missing, lists what was made up, and tells the worst single failure."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion import chapter_power
from inspector.conversion.plant_tables import TABLES
from tests.conversion.a_case import case

SETS = [{"name": name, "bus": bus, "rated": "600", "power_factor": "0.8"} for name, bus in (("G1", "A"), ("G2", "A"), ("G3", "B"), ("G4", "B"))]
LOADS = [
    {"name": f"hotel {bus}", "bus": bus, "harbour": "100", "sea": "200", "manoeuvring": "300", "station_keeping": power}
    for bus, power in (("A", "180"), ("B", "120"))
]
UNITS = [
    {"name": name, "kind": kind, "feed": bus, "rated": rated, "x": x, "acts": acts, "thrust": thrust}
    for name, kind, bus, rated, x, acts, thrust in (
        ("T1", "tunnel", "A", "500", "27", "across", "65.93"),
        ("T2", "tunnel", "B", "500", "27", "across", "65.93"),
        ("T3", "azimuth in nozzle", "A", "1000", "-27", "both", "172.54"),
        ("T4", "azimuth in nozzle", "B", "1000", "-27", "both", "172.54"),
    )
]
WIND = [
    {
        "id": "one",
        "length": "65",
        "breadth": "16",
        "draught": "4.5",
        "lateral": "520",
        "frontal": "210",
        "x_wind": "3",
        "x_current": "3",
        "wind": "10",
        "current": "1",
        "wind_beam": "0.9",
        "wind_head": "0.7",
        "current_beam": "0.7",
        "current_head": "0.1",
        "waves": "1.25",
        "efficiency": "0.92",
        "limit": "0.95",
    }
]
WHOLE = {
    "plant_generators": SETS,
    "plant_ties": [{"name": "tie", "one": "A", "other": "B", "normally": "open"}],
    "plant_loads": LOADS,
    "plant_thrusters": UNITS,
    "plant_exposure": WIND,
    "plant_board": [{"id": "one", "power_factor": "0.8"}],
}


def chapter(tables=None, **vessel):
    """The chapter of these rows."""
    return chapter_power.chapter(case(tables, vessel))


def table(found, title):
    """The rows of a printed table."""
    return next(one.rows for one in found.lines if one.title.startswith(title))


def test_nothing_typed_is_one_sentence_and_a_gap():
    """No figure, no drawing, no requirement comes from nothing."""
    found = chapter()

    assert ((), (), (), (), 1) == (found.figures, found.lines, found.drawings, found.requirements, len(found.gaps))
    assert "Nothing is typed" in found.answer


def test_the_worst_failure_and_its_wind_are_told():
    """Losing a bus leaves 29.8 kn, by the bow thrust: the plant that was worked by hand."""
    found = chapter(WHOLE)

    assert "the worst single failure is bus A, after which 29.8 kn" in found.answer.replace("bus B", "bus A")
    assert "bow thrust gives way first" in found.answer
    assert () == found.faults


def test_one_bus_is_told_with_its_loads():
    """Without bus A, T2 and T4 work on bus B; 1.25 x (28.67 + 27.77) x 30 / 54 = 39.2 kN are needed at the bow."""
    row = next(row for row in table(chapter(WHOLE), "Single failures") if row[0] == "bus A")

    assert ("G1, G2, T1, T3", "65.9 / 39.2") == (row[1], row[2])
    assert (True, "yes") == (row[4].startswith("bus B"), row[5])


@pytest.mark.parametrize(
    ("table_id", "row", "told"),
    [
        ("plant_generators", {"name": "G9", "bus": "A", "rated": "0"}, "Rated power"),
        ("plant_generators", {"name": "G9", "bus": "A"}, "Rated power is missing"),
        ("plant_engines", {"name": "port engine"}, "Rated power is missing"),
        ("plant_thrusters", {**UNITS[0], "name": "T9", "feed": "C"}, "T9: fed by is 'C'"),
        ("plant_thrusters", UNITS[0], "T1: this name is used twice"),
        ("plant_loads", {"name": "pump", "bus": "C", "sea": "1"}, "pump: bus is 'C'"),
        ("plant_ties", {"name": "tie 2", "one": "A", "other": "A", "normally": "open"}, "tie 2: second bus"),
        ("plant_needs", {"element": "T1", "on": "T1"}, "T1: needs"),
        ("plant_engines", {"name": "A", "rated": "900"}, "A: a bus bears the same name"),
        ("plant_loads", {"name": "pump", "sea": "-1"}, "cannot be"),
    ],
)
def test_a_row_that_cannot_be_used_is_told_in_one_sentence(table_id, row, told):
    """It is left out, and the chapter stands."""
    tables = {**WHOLE, table_id: [*WHOLE.get(table_id, []), row]}
    found = chapter(tables)

    assert any(told in fault for fault in found.faults), found.faults


def test_a_negative_area_is_told_and_is_no_area():
    """The wind then is a gap, not a guess."""
    found = chapter({**WHOLE, "plant_exposure": [{**WIND[0], "lateral": "-520"}]})

    assert any("Side area in the wind" in fault for fault in found.faults)
    assert "side area in the wind" in {gap.name for gap in found.gaps}
    assert all(figure.unit != "kn" for figure in found.figures)


def test_the_emergency_set_alone_is_no_plant():
    """It gives no balance, and no fault either."""
    found = chapter({"plant_generators": [{**SETS[0], "emergency": "yes"}], "plant_loads": [{"name": "hotel", "sea": "10"}]})

    assert ((), ()) == (found.faults, found.requirements)


def test_what_was_typed_is_no_default():
    """With everything typed only accuracy and ceiling are left."""
    found = chapter(WHOLE)
    names = {default.name for figure in found.figures for default in figure.defaults} | {default.name for default in found.defaults}

    assert {"accuracy of a load list", "most that the remaining sets are planned for"} == names


def test_sizes_come_from_the_vessel_where_the_table_lacks_them():
    """Length, breadth and draught of the particulars are not asked twice."""
    bare = {key: value for key, value in WIND[0].items() if key not in ("length", "breadth", "draught")}
    found, empty = (chapter({**WHOLE, "plant_exposure": [bare]}, **vessel) for vessel in ({"length": "65", "breadth": "16", "draught": "4,5"}, {}))

    assert chapter(WHOLE).answer == found.answer
    assert {"length", "draught"} <= {gap.name for gap in empty.gaps}


def test_requirements_carry_the_sea_and_the_wind():
    """At sea 440 kW are asked at the upper end; 1800 are left."""
    asked = {one.id: one for one in chapter(WHOLE).requirements}

    assert (440, 1800, True) == (
        asked["power-one-set-out-sea"].asked,
        asked["power-one-set-out-sea"].offered.point,
        asked["power-one-set-out-sea"].met,
    )
    assert True is asked["wind-after-failure"].met


def test_class_two_is_not_met_by_one_closed_unproven_tie():
    """A warning says so, and that all thrust goes at once."""
    found = chapter(
        {**WHOLE, "plant_ties": [{"name": "tie", "one": "A", "other": "B", "normally": "closed", "proven": "no"}]}, dp_class="2", built="2008-03-14"
    )

    assert any("takes all thrust across" in warning for warning in found.warnings)
    assert any(warning.startswith("DP class: not met: Closed ties") for warning in found.warnings)
    assert "645" in next(one.note for one in found.lines if one.title.startswith("What the DP"))


def test_a_broken_thruster_is_the_starting_case():
    """T1 out of order, then bus B: nothing is left at the bow."""
    found = chapter({**WHOLE, "plant_thrusters": [{**UNITS[0], "out": "yes"}, *UNITS[1:]]})
    row = next(row for row in table(found, "Single failures") if row[0] == "bus B")

    assert ("0.0 / 39.2", "no") == (row[2], row[5])


def test_the_page_says_that_it_is_a_screen():
    """It must be verified before anybody relies on it."""
    assert "screen, not a capability plot" in chapter(WHOLE).verify
    assert "verify before you rely on it" in chapter(WHOLE).verify


TYPED = st.sampled_from(["", "0", "1", "-5", "600", "A", "B", "T1", "yes", "open", "tunnel", "both", "1e9", "x or y", "closed", "across", "½"])


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_nothing_that_is_typed_can_stop_the_chapter(data):
    """Any text in any cell gives a chapter."""
    tables = {}
    for one in TABLES:
        rows = [{column.name: data.draw(TYPED) for column in one.columns} for _ in range(1 if one.single else 2)]
        tables[one.id] = [{**WHOLE.get(one.id, [{}])[0], **{key: value for key, value in row.items() if data.draw(st.booleans())}} for row in rows]
        if one.single:
            tables[one.id][0]["id"] = "one"

    assert chapter(tables).answer
