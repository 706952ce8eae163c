"""One thing is one item: typed once, read by every chapter, and where two tables disagree it is
named."""

import pytest

from inspector.conversion.money.calculation import sums_of
from inspector.conversion.money.particulars import KINDS
from inspector.conversion.power.chapter import chapter as power
from inspector.conversion.power.plant_rows import read_plant
from inspector.conversion.range.chapter import chapter as range_
from inspector.conversion.space.chapter import chapter as space
from inspector.conversion.stability.chapter import chapter as stability
from inspector.values.cell_text import cell_text
from tests.conversion.a_case import BOOKLET, case
from tests.conversion.power.test_chapter import WHOLE
from tests.conversion.test_order import BRIEF, TABLES

HOUSE = {
    "name": "House",
    "act": "on",
    "mass": "100",
    "basis": "weighed",
    "vcg": "11",
    "lcg": "20",
    "tcg": "0",
    "stands": "open deck",
    "long": "20",
    "wide": "10",
    "high": "3",
    "room": "yes",
    "rated": "5",
    "takes_sea": "90",
    "takes_harbour": "70",
}
LININGS = {"name": "Linings", "act": "on", "mass": "40", "vcg": "11", "belongs_to": "house"}
VESSEL = {"deck_area": "500", "tonnage": "1500"}


def figure(chapter, name):
    """The span of a figure, None where it is not known."""
    return next(one.span for one in chapter.figures if one.name == name)


def told(chapter):
    """The warnings as a reader sees them."""
    return [cell_text(text) for text in chapter.warnings]


def rows(chapter, title):
    """The rows of a table: first cell -> the others."""
    found = next(table for table in chapter.figure_tables if table.title == title)
    return {row[0]: row[1:] for row in found.rows}


def with_house(**more):
    """A whole case in which the house is typed in the one list of things only."""
    tables = {**TABLES, "hydrostatics": [BOOKLET], "weights": [HOUSE], **more}
    return case(tables, vessel=VESSEL, brief=BRIEF)


def test_one_row_is_read_by_every_chapter():
    """Weight, deck, room, tonnage, load and hotel load follow from one row."""
    found, without = with_house(), with_house(weights=[])
    before, after = (figure(stability(one), "Displacement after") for one in (without, found))

    assert 100 == after.point - before.point
    assert 100 / 200 == rows(stability(found), "Loads on deck")["House"][1].likely
    assert 600 == figure(space(found), "Enclosed volume, change").point
    deck = "Open deck: left over"
    assert figure(space(found), deck).point == 500 - 200
    assert "House" in {load.name for load in read_plant(found).new_consumers}
    name = "Range at 11 kn"
    assert figure(range_(found), name).point < figure(range_(without), name).point


def test_its_side_is_in_the_wind_of_both_chapters():
    """20 × 3 m on top of the area typed once, for severe wind and for holding station."""
    booklet = {**BOOKLET, "wind_height": "6"}
    areas = []
    for weights in ([], [HOUSE]):
        tables = {**WHOLE, "hydrostatics": [booklet], "weights": weights}
        found = case(tables)
        lateral = float(WHOLE["plant_exposure"][0]["lateral"])
        areas.append(
            [
                default.value
                for default in power(found).all_defaults
                if default.name == "house to be built, in the side area"
            ]
        )
    assert [[], [60.0]] == areas
    assert lateral > 0


def test_what_belongs_to_a_thing_stands_on_deck_with_it():
    """House and linings are 140 t on 200 m², spread by what their masses may be."""
    row = rows(stability(with_house(weights=[HOUSE, LININGS])), "Loads on deck")["House"]

    assert 140 / 200 == row[1].likely
    share = row[4]
    assert (100 * (98 + 28) / 1000, 100 * 1.5 * (102 + 52) / 1000) == pytest.approx(
        (share.low, share.high)
    )


def test_a_load_on_deck_of_another_mass_is_named_and_the_thing_counts():
    """143 t in one table and 100 t in the other."""
    deck = {"name": "house", "load": "143", "area": "200"}
    found = stability(with_house(decks=[deck]))

    assert any("House" in text or "house: 143 t" in text for text in told(found))
    assert ["House"] == list(rows(found, "Loads on deck"))


def test_an_older_row_of_the_same_name_counts_once():
    """Enclosed volume, floor and load typed before, under its name, add nothing."""
    older = {
        "enclosures": [
            {"name": "house", "act": "added", "length": "20", "breadth": "10", "height": "3"}
        ],
        "spaces": [{"name": "House", "kind": "accommodation", "act": "won", "area": "200"}],
        "plant_loads": [
            *WHOLE["plant_loads"],
            {"name": "House", "kind": "new", "sea": "90", "harbour": "70"},
        ],
    }
    once, twice = with_house(), with_house(**older)

    for name in ("Enclosed volume, change", "Open deck: left over"):
        assert figure(space(once), name) == figure(space(twice), name)
    assert len(read_plant(once).new_consumers) == len(read_plant(twice).new_consumers)


def test_a_planned_away_tank_gives_no_days_of_water():
    """Of 200 m³ typed, half is converted to grey water: days fall by half, and the stores' own
    figure is named."""
    tanks = [
        {"name": "Water 1", "kind": "fresh water", "capacity": "100"},
        {"name": "Water 2", "kind": "fresh water", "capacity": "100"},
    ]
    away = [tanks[0], {**tanks[1], "plan": "convert", "becomes": "grey water"}]
    stores = [{"id": "one", "water": "200", "watermaker": "0", "water_per_head": "150"}]
    days = []
    for rows_ in (tanks, away):
        found = range_(case({"tanks": rows_, "stores": stores}, brief=BRIEF))
        lasting = rows(found, "What lasts how long for 20 persons")
        days.append(lasting["fresh water"][1].likely)

    assert 200 / (20 * 0.150) == pytest.approx(days[0])
    assert days[0] / 2 == pytest.approx(days[1])
    assert any("Fresh water: 200 m³ among the stores" in text for text in told(found))


def test_a_tank_typed_twice_has_one_free_surface():
    """As for range, so for stability; the sentence names it in both chapters."""
    tank = {
        "name": "Fuel",
        "kind": "fuel",
        "capacity": "50",
        "density": "850",
        "free_surface": "90",
    }
    once, twice = (
        stability(case({"hydrostatics": [BOOKLET], "tanks": tanks}))
        for tanks in ([tank], [tank, {**tank, "name": "fuel "}])
    )

    name = "Free-surface moment"
    assert figure(once, name) == figure(twice, name)
    assert any("typed more than once" in fault for fault in twice.faults)


def test_two_side_areas_are_named_and_the_greater_counts():
    """760 m² by the booklet's table, 690 m² and a house of 108 m² by the other."""
    exposure = [{**WHOLE["plant_exposure"][0], "lateral": "690"}]
    house = {**HOUSE, "long": "36"}
    booklet = [{**BOOKLET, "wind_area": "760"}]
    found = case({**WHOLE, "hydrostatics": booklet, "weights": [house], "plant_exposure": exposure})

    assert any("760 m²" in text and "798 m²" in text for text in told(stability(found)))


def test_a_displacement_that_its_parts_do_not_make_is_named():
    """3200 t less 2100 t of lightship and 85 t of fuel leave 1015 t, unless it was cargo."""
    tanks = [{"name": "Fuel", "kind": "fuel", "capacity": "100", "fill": "100", "density": "850"}]
    bare = stability(case({"hydrostatics": [BOOKLET], "tanks": tanks}))
    laden = stability(case({"hydrostatics": [{**BOOKLET, "cargo": "1000"}], "tanks": tanks}))

    assert any("1015 t are not explained" in text for text in told(bare))
    assert not any("not explained" in text for text in told(laden))


def test_sets_and_engines_are_typed_once_for_range_and_plant():
    """With a bus each they are the plant; and a plant alone is what burns the fuel."""
    engines = [
        {"name": "Main", "drives": "propeller", "power": "1500", "count": "2"},
        {
            "name": "Set",
            "drives": "generator",
            "power": "320",
            "electrical": "300",
            "count": "2",
            "bus": "A, B",
        },
    ]
    plant = read_plant(case({"engines": engines})).plant
    assert [("Set 1", "A", 300), ("Set 2", "B", 300)] == [
        (one.name, one.bus, one.rated) for one in plant.sets
    ]
    typed_there = {key: rows_ for key, rows_ in TABLES.items() if key != "engines"}
    there = {"plant_engines": [{"name": "M1", "rated": "1500"}, {"name": "M2", "rated": "1500"}]}
    found = range_(case({**typed_there, **there}, brief=BRIEF))
    assert figure(found, "Range at 11 kn") is not None


def test_a_set_with_a_bus_and_no_rating_is_refused():
    """It is named, and the plant goes without it."""
    engine = {"name": "Set", "drives": "generator", "power": "320", "bus": "A"}
    found = read_plant(case({"engines": [engine]}))

    assert any("electrical rating is missing" in fault for fault in found.faults)
    assert () == found.plant.sets


def test_what_comes_off_takes_its_load_with_it():
    """A load of the same name as a thing that comes off is there before and not after."""
    load = WHOLE["plant_loads"][0]
    found = read_plant(
        case({**WHOLE, "weights": [{"name": load["name"], "act": "off", "mass": "3"}]})
    )

    assert load["name"] in {each.name for each in found.present_consumers}
    assert load["name"] not in {each.name for each in found.consumers_after}


class Line:
    """A work line with a text and a weight [t]."""

    def __init__(self, text, weight):
        self.text, self.weight, self.act = text, weight, "fit"


class Part:
    """A system with its name and its work lines."""

    def __init__(self, *lines):
        self.system = type("System", (), {"name": "Accommodation"})()
        self.lines = lines


@pytest.mark.parametrize(("weight", "said"), [(140, False), (135, False), (180, True), (-20, True)])
def test_a_work_line_of_another_weight_is_named(weight, said):
    """House and linings are 126 to 154 t; a line of 180 t is of another house."""
    tables = {"hydrostatics": [BOOKLET], "weights": [HOUSE, LININGS]}
    found = stability(case(tables, systems=(Part(Line("House", weight)),)))

    assert said == any("its work line gives" in text for text in told(found))
    assert not any("gives a weight of" in cell_text(gap.why) for gap in found.gaps)


def test_what_goes_on_and_is_in_no_work_line_keeps_the_total_open():
    """The house has no line; its linings are paid with it, and stores are no work."""
    stores = {"name": "Stores", "act": "on", "mass": "20", "vcg": "9", "part": "stores"}
    tables = {"weights": [HOUSE, LININGS, stores]}
    without = sums_of(case(tables)).open
    costs = [{"kind": KINDS[-1], "name": "House", "likely": "100"}]
    paid = sums_of(case({**tables, "costs": costs})).open

    assert ["House (goes on, and is in no work line)"] == [
        name for name in without if "goes on" in name
    ]
    assert [] == [name for name in paid if "goes on" in name]


@pytest.mark.parametrize(
    ("passengers", "persons", "said"),
    [("4", "20", ()), ("6", "20", ("berth 4",)), ("6", "5", ("berth 4", "the brief 5"))],
)
def test_passengers_are_told_once_or_named(passengers, persons, said):
    """Two double cabins for guests, the loading and the brief."""
    cabin = {"name": "cabins", "kind": "cabin", "place": "inside", "count": "2", "persons": "2"}
    tables = {
        "wants": [{**cabin, "who": "guest", "area": "15"}],
        "loading": [{"id": "one", "passengers": passengers}],
    }
    found = told(space(case(tables, brief={"persons": persons})))

    for part in ("berth 4", "the brief 5"):
        assert any(part in text for text in found) is (part in said)
