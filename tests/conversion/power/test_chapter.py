"""The chapter on power: what it answers, names as missing and lists, and that it never raises."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.conversion.power.chapter import chapter as chapter_of
from inspector.conversion.power.particulars import TABLES
from inspector.values.cell_text import cell_text
from inspector.values.quantity import Quantity
from tests.conversion.a_case import case

SETS = [
    {"name": name, "bus": bus, "rated": "600", "power_factor": "0.8"}
    for name, bus in (("G1", "A"), ("G2", "A"), ("G3", "B"), ("G4", "B"))
]
LOADS = [
    {
        "name": f"hotel {bus}",
        "bus": bus,
        "harbour": "100",
        "sea": "200",
        "manoeuvring": "300",
        "station_keeping": power,
    }
    for bus, power in (("A", "180"), ("B", "120"))
]
UNITS = [
    {
        "name": name,
        "kind": kind,
        "feed": bus,
        "rated": rated,
        "x": x,
        "acts": acts,
        "thrust": thrust,
    }
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
    return chapter_of(case(tables, vessel))


def table(found, title):
    """The table of a chapter by the start of its title."""
    return next(table for table in found.figure_tables if table.title.startswith(title))


def row(found, title, name):
    """A row of a table as heading -> cell, by its first cell."""
    cells = next(cells for cells in table(found, title).rows if cells[0] == name)
    headings = [column.heading for column in table(found, title).columns]
    return dict(zip(headings, cells, strict=True))


def answer(found):
    """The answer of a chapter as text."""
    return cell_text(found.answer)


def test_nothing_typed_is_one_sentence_and_a_gap():
    """No figure, no drawing, no requirement comes from nothing."""
    found = chapter()

    assert ((), (), (), (), 1) == (
        found.figures,
        found.figure_tables,
        found.drawings,
        found.requirements,
        len(found.gaps),
    )
    assert "Nothing is typed" in answer(found)


def test_the_worst_failure_and_its_wind_are_in_the_answer():
    """Losing a bus leaves 29.8 kn, by the bow thrust: the plant that was worked by hand."""
    found = chapter(WHOLE)

    worst = "the worst single failure is bus A, after which 29.8 kn"
    assert worst in answer(found).replace("bus B", "bus A")
    assert "bow thrust falls short first" in answer(found)
    assert () == found.faults


def test_a_failure_is_shown_with_its_loads():
    """Without bus A one tunnel and one azimuth are left; the wind from every side is named."""
    cells = row(chapter(WHOLE), "Single failures", "bus A")

    assert "G1, G2, T1, T3" == cells["takes with it"]
    assert "65.9 kN" == cell_text(cells["bow, left"])
    assert "172.5 kN" == cell_text(cells["stern, left"])
    assert "29.8 kn" == cell_text(cells["on the beam"])
    assert "yes" == cells["station kept"]


def test_a_us_reader_sees_pounds_and_horsepower():
    """Thrusts and powers are quantities, so that they follow the reader's units."""
    cells = row(chapter(WHOLE), "Full thrust taken", "T1")
    balance = row(chapter(WHOLE), "Power with one set out", "sea, bus A")

    assert Quantity.exact(65.93, "kN", 1) == cells["thrust"]
    assert cell_text(balance["demand"], "us").endswith(" hp")


def test_the_table_of_balances_names_its_units_once():
    """The headings have the units, and every quantity below is in them."""
    columns = table(chapter(WHOLE), "Power with one set out").columns

    assert ["", "kW", "", "kW", "kW", "", "A"] == [column.unit for column in columns]


@pytest.mark.parametrize(
    ("table_id", "typed", "problem"),
    [
        ("plant_generators", {"name": "G9", "bus": "A", "rated": "0"}, "Rated power"),
        ("plant_generators", {"name": "G9", "bus": "A"}, "Rated power is missing"),
        ("plant_engines", {"name": "port engine"}, "Rated power is missing"),
        ("plant_thrusters", {**UNITS[0], "name": "T9", "feed": "C"}, "T9: fed by is 'C'"),
        ("plant_thrusters", UNITS[0], "T1: this name is used twice"),
        ("plant_loads", {"name": "pump", "bus": "C", "sea": "1"}, "pump: bus is 'C'"),
        (
            "plant_ties",
            {"name": "tie 2", "one": "A", "other": "A", "normally": "open"},
            "tie 2: second bus",
        ),
        ("plant_needs", {"element": "T1", "on": "T1"}, "T1: needs"),
        ("plant_engines", {"name": "A", "rated": "900"}, "A: a bus has the same name"),
        ("plant_loads", {"name": "pump", "sea": "-1"}, "is below"),
    ],
)
def test_a_row_that_cannot_be_used_is_named_in_one_sentence(table_id, typed, problem):
    """It is left out, and the rest of the chapter remains."""
    found = chapter({**WHOLE, table_id: [*WHOLE.get(table_id, []), typed]})

    assert any(problem in fault for fault in found.faults), found.faults


def test_a_negative_area_is_refused_and_is_no_area():
    """The wind then is a gap, not a guess."""
    found = chapter({**WHOLE, "plant_exposure": [{**WIND[0], "lateral": "-520"}]})

    assert any("Side area in the wind" in fault for fault in found.faults)
    assert "side area in the wind" in {gap.name for gap in found.gaps}
    assert all(figure.unit != "kn" for figure in found.figures)


def test_the_emergency_set_alone_is_no_plant():
    """It gives no balance, and no fault either."""
    emergency = [{**SETS[0], "emergency": "yes"}]
    loads = [{"name": "hotel", "sea": "10"}]
    found = chapter({"plant_generators": emergency, "plant_loads": loads})

    assert ((), ()) == (found.faults, found.requirements)


def test_what_was_typed_is_no_default():
    """With everything typed only accuracy and ceiling are left."""
    names = {default.name for default in chapter(WHOLE).all_defaults}

    assert {"accuracy of a load list", "most that the remaining sets are planned for"} == names


def test_sizes_come_from_the_vessel_where_the_table_lacks_them():
    """Length, breadth and draught of the particulars are not asked for twice."""
    sizes = ("length", "breadth", "draught")
    bare = {key: value for key, value in WIND[0].items() if key not in sizes}
    tables = {**WHOLE, "plant_exposure": [bare]}

    of_vessel = chapter(tables, length="65", breadth="16", draught="4,5")
    assert answer(chapter(WHOLE)) == answer(of_vessel)
    assert {"length", "draught"} <= {gap.name for gap in chapter(tables).gaps}


def test_requirements_carry_the_sea_and_the_wind():
    """At sea 220 kW are asked of each bus at the upper end; one set of 600 is left on it."""
    asked = {requirement.id: requirement for requirement in chapter(WHOLE).requirements}
    sea = asked["power-one-set-out-sea"]

    assert (220, 600, True) == (sea.asked, sea.offered.point, sea.met)
    assert True is asked["wind-after-failure"].met


def test_class_two_is_not_met_by_a_closed_unproven_tie():
    """A warning says so, and that all thrust is lost at once."""
    tie = {"name": "tie", "one": "A", "other": "B", "normally": "closed", "proven": "no"}
    found = chapter({**WHOLE, "plant_ties": [tie]}, dp_class="2", built="2008-03-14")
    warnings = [cell_text(warning) for warning in found.warnings]

    assert any("takes all thrust across" in text for text in warnings)
    assert any(text.startswith("DP class, not met: Closed ties") for text in warnings)
    assert "645" in cell_text(table(found, "What the DP").note)


def test_a_broken_thruster_is_the_starting_case():
    """T1 out of order, then bus B: nothing is left at the bow."""
    found = chapter({**WHOLE, "plant_thrusters": [{**UNITS[0], "out": "yes"}, *UNITS[1:]]})
    cells = row(found, "Single failures", "bus B")

    assert 0 == cells["bow, left"].high
    assert "no" == cells["station kept"]


def test_an_overloaded_transformer_is_warned_of():
    """244 A on 75 kVA at 208 V are 117 % of its rating."""
    transformer = {"name": "TR1", "rating": "75", "current": "244", "voltage": "208"}
    found = chapter({**WHOLE, "plant_transformers": [transformer]})

    texts = [cell_text(warning) for warning in found.warnings]
    assert "Transformer TR1 carries 117 % of its rating." in texts


def test_the_page_says_that_it_is_a_screen():
    """It must be verified before anybody relies on it."""
    assert "screen, not a capability plot" in chapter(WHOLE).verify
    assert "verify before you rely on it" in chapter(WHOLE).verify


TYPED = st.sampled_from(
    [
        "",
        "0",
        "1",
        "-5",
        "600",
        "A",
        "B",
        "T1",
        "yes",
        "open",
        "tunnel",
        "both",
        "1e9",
        "x or y",
        "closed",
        "across",
        "½",
    ]
)


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_nothing_that_is_typed_can_stop_the_chapter(data):
    """Any text in any cell gives a chapter."""
    tables = {}
    for kind in TABLES:
        rows = [
            {column.name: data.draw(TYPED) for column in kind.columns}
            for _ in range(1 if kind.single else 2)
        ]
        tables[kind.id] = [
            {
                **WHOLE.get(kind.id, [{}])[0],
                **{key: value for key, value in row.items() if data.draw(st.booleans())},
            }
            for row in rows
        ]
        if kind.single:
            tables[kind.id][0]["id"] = "one"

    assert chapter(tables).answer
