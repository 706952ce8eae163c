"""The chapter on stability: its answer, what it names as missing, and that it never raises."""

import pytest

from inspector.conversion.core.span import Span
from inspector.conversion.stability.chapter import chapter
from inspector.values.cell_text import cell_text
from inspector.values.quantity import Quantity
from tests.conversion.a_case import BOOKLET, LEVERS, WEIGHTS, case

HOUSE = {"name": "house", "load": "86", "area": "108", "rated": "5", "walls": "42"}
FUEL_TANK = {
    "name": "fuel 1",
    "kind": "fuel",
    "capacity": "80",
    "fill": "50",
    "free_surface": "144",
}
CRANE = {
    "name": "crane",
    "act": "on",
    "mass": "20",
    "basis": "weighed",
    "lcg": "20",
    "tcg": "5",
    "vcg": "9",
}
LANDING_DECK = {**CRANE, "name": "landing deck", "mass": "400", "lcg": "30", "tcg": "0"}


def of_booklet(change=None, **tables):
    """The chapter of the booklet with changed cells, and of other tables."""
    return chapter(case({"hydrostatics": [{**BOOKLET, **(change or {})}], **tables}))


def warnings(found):
    """The warnings of a chapter as text."""
    return [cell_text(warning) for warning in found.warnings]


def figure(found, name):
    """The figure of a chapter by its name."""
    return next(figure for figure in found.figures if figure.name == name)


def table(found, title):
    """The table of a chapter by its title."""
    return next(table for table in found.figure_tables if table.title == title)


def met(found):
    """Each requirement of a chapter and whether it is met."""
    return {asked.id: asked.met for asked in found.requirements}


def test_nothing_typed_is_one_sentence():
    """An empty inspection shows no figure and no table; only the load line is asked of it."""
    found = chapter(case())

    assert "Neither the starting condition nor a weight is given" in found.answer
    assert ((), ()) == (found.figures, found.figure_tables)
    assert [("load-line", None)] == [(asked.id, asked.met) for asked in found.requirements]


def test_a_whole_case_has_every_table_and_requirement():
    """With booklet, weights, levers and a deck load, GM and the deck load are offered as met."""
    found = of_booklet(weights=WEIGHTS, levers=LEVERS, decks=[HOUSE])

    assert [
        "Weights off and on",
        "General intact criteria",
        "Changes of the lightship",
        "Loads on deck",
    ] == [table.title for table in found.figure_tables]
    assert {"load-line": True, "gm": True, "deck-load": True, "loading": None} == met(found)
    assert "inclining test" in found.verify


def test_a_low_weight_taken_off_is_warned_of():
    """It raises the centre of gravity as a high weight put on does."""
    found = of_booklet(weights=WEIGHTS)

    assert any(text.startswith("Bulk tanks, taken off below") for text in warnings(found))


def test_masses_and_rises_are_quantities():
    """A table of weights has figures with units, and no text in their place."""
    found = of_booklet(weights=WEIGHTS)
    row = next(row for row in table(found, "Weights off and on").rows if row[0] == "towing winch")

    assert Quantity(133.0, 140.0, 147.0, "t", 1) == row[2]
    assert Quantity.exact(8.2, "m", 2) == row[5]
    assert ("m", 3) == (row[6].unit, row[6].digits)


def test_a_us_reader_sees_long_tons():
    """The answer is formatted only where it is read, in the reader's units."""
    assert " long ton" in cell_text(of_booklet(weights=WEIGHTS).answer, "us")
    assert " t (" in cell_text(of_booklet(weights=WEIGHTS).answer)


def test_without_free_surfaces_no_height_is_offered():
    """A solid GM is an upper end: it is named so, and offered to no requirement."""
    found = of_booklet({"free_surface": ""}, weights=WEIGHTS)

    assert "before any free surface" in cell_text(found.answer)
    assert {"load-line": True, "gm": None, "loading": None} == met(found)
    assert "Free surfaces" in [gap.name for gap in found.gaps]


def test_only_slack_tanks_have_a_free_surface():
    """Slack tanks count with the density of their contents; an assumed density is listed."""
    tanks = [
        FUEL_TANK,
        {**FUEL_TANK, "name": "fuel 2", "fill": "98"},
        {**FUEL_TANK, "name": "mud", "kind": "wet cargo", "plan": "remove"},
        {**FUEL_TANK, "name": "dry", "kind": "void"},
        {**FUEL_TANK, "name": "store", "plan": "convert", "becomes": "void"},
    ]
    moment = figure(of_booklet({"free_surface": ""}, tanks=tanks), "Free-surface moment")

    assert 122.4 == pytest.approx(moment.span.point)
    assert ["density in fuel 1"] == [default.name for default in moment.defaults]


@pytest.mark.parametrize(("becomes", "density"), [("fresh water", 1.0), ("", 1.03)])
def test_a_tank_to_be_converted_has_a_free_surface(becomes, density):
    """Empty now, it will be slack: 144 m⁴ of what it becomes, else of the heaviest it may hold."""
    tank = {**FUEL_TANK, "fill": "0", "plan": "convert", "becomes": becomes}
    moment = figure(of_booklet({"free_surface": ""}, tanks=[tank]), "Free-surface moment")

    assert 144 * density == pytest.approx(moment.span.high)


def test_a_gm_below_the_least_is_warned_of():
    """A landing deck too heavy for the vessel: in the answer, a warning, a requirement not met."""
    found = of_booklet(weights=[{**LANDING_DECK, "vcg": "15.5"}])

    assert "below the least" in cell_text(found.answer)
    assert any("naval architect" in text for text in warnings(found))
    assert not met(found)["gm"]


@pytest.mark.parametrize(
    ("change", "name"),
    [
        ({"displacement": ""}, "Displacement"),
        ({"kg": ""}, "KG"),
        ({"km_after": ""}, "KM at the new draught"),
        ({"greatest_draught": ""}, "Greatest draught by the load line"),
        ({"tpc": ""}, "TPC"),
        ({"lpp": ""}, "Length between perpendiculars"),
        ({"lightship": ""}, "Lightship"),
        ({"booklet": ""}, "Stability booklet"),
    ],
)
def test_each_missing_figure_is_named(change, name):
    """What the booklet would give is among what is missing, and nothing raises."""
    assert name in [gap.name for gap in of_booklet(change, weights=WEIGHTS).gaps]


def test_a_given_gm_that_disagrees_is_warned_of():
    """KM less KG less free surface is 1.11 m; a typed 0.80 m is a misreading of one of them."""
    found = of_booklet({"gm": "0.80"})

    assert any("differs by 0.31 m from the GM" in text for text in warnings(found))


def test_wrong_cells_are_named_with_their_table():
    """An unknown act, a repeated angle and a negative deck load are sentences; the rest counts."""
    found = of_booklet(
        weights=[{"name": "winch", "act": "away", "mass": "3"}],
        levers=[*LEVERS, {"angle": "10", "gz": "0.2"}],
        decks=[{"name": "house", "load": "-3", "area": "20"}],
    )

    titles = ("What comes off and goes on", "Righting levers", "Loads on deck, house")
    assert 3 == len([fault for fault in found.faults if fault.startswith(titles)])


def test_the_list_needs_every_side():
    """One weight off the centreline and another without a side: no list, and the gap is named."""
    box = {"name": "box", "act": "on", "mass": "2", "vcg": "8"}

    assert "Side of box" in [gap.name for gap in of_booklet(weights=[CRANE, box]).gaps]
    assert 0 < figure(of_booklet(weights=[CRANE]), "List (plus to starboard)").span.low


def test_a_tank_without_inertia_keeps_the_booklets_moment():
    """Where one slack tank lacks its inertia, the moment is not less than the booklet's."""
    known = {**FUEL_TANK, "free_surface": "50", "density": "850"}
    unknown = {"name": "fuel 2", "kind": "fuel", "capacity": "80", "fill": "50"}
    moment = figure(of_booklet(tanks=[known, unknown]), "Free-surface moment")

    assert Span(122.4, None, 122.4) == moment.span
    assert ["Free surface of fuel 2"] == [gap.name for gap in moment.gaps]


@pytest.mark.parametrize(
    ("change", "warned"),
    [
        ({"roll_period": "11.5"}, False),
        ({"roll_period": "20"}, True),
        ({"roll_period": "12.5", "lwl": "80"}, False),
    ],
)
def test_a_timed_roll_is_compared_with_the_booklet(change, warned):
    """A GM of 1.11 m may roll in 11.5 s and not in 20 s; above 70 m another factor is used."""
    found = of_booklet(change)

    assert warned == any(text.startswith("The timed roll shows") for text in warnings(found))
    assert figure(found, "GM of the day by its roll period").known


def test_a_roll_above_seventy_metres_needs_a_draught():
    """The factor of a long hull depends on breadth over draught, so its absence is named."""
    change = {"roll_period": "12.5", "lwl": "80", "draught_fore": "", "draught_aft": ""}

    assert "Mean draught" in [gap.name for gap in of_booklet(change).gaps]


KN = [
    {"displacement": "3000", "kn_10": "1.32", "kn_20": "2.70", "kn_30": "3.93", "kn_40": "4.90"},
    {"displacement": "3400", "kn_10": "1.28", "kn_20": "2.60", "kn_30": "3.81", "kn_40": "4.76"},
]


def test_cross_curves_are_lowered_by_the_whole_height():
    """KN halfway between two rows less KG with free surface is the lever of the graph."""
    drawings = of_booklet(cross_curves=KN).drawings
    graph = next(drawing for drawing in drawings if drawing.title == "Righting levers")

    assert ["after, estimate"] == [curve.label for curve in graph.curves]
    assert 3.87 - (6.40 + 122.4 / 3200) * 0.5 == pytest.approx(dict(graph.curves[0].points)[30])
    assert ("deg", "m") == (graph.x.unit, graph.y.unit)


def test_a_load_line_under_water_is_warned_of_and_not_met():
    """1,900 t more sink her by 2.10 m, past a load line at 6.10 m, at any GM."""
    heavy = {**CRANE, "tcg": "0", "vcg": "5", "lcg": "32.5", "mass": "1900"}
    found = of_booklet(weights=[heavy])

    assert not met(found)["load-line"]
    assert any("against 6.10 m by the load line" in text for text in warnings(found))
    left = figure(found, "Deadweight left to the load line")
    assert left.span.high < 0


def test_a_limit_of_kg_is_asked_of_the_fluid_kg():
    """KG of 6.40 m with 122.4 t·m on 3200 t is 6.44 m: above 6.42 m, though solid it is below."""
    fluid, solid = (of_booklet({"limit_kg": "6.42", "limit_is": what}) for what in ("", "solid"))

    assert (False, True) == (met(fluid)["kg-limit"], met(solid)["kg-limit"])
    assert any(text.startswith("KG after, fluid may come to") for text in warnings(fluid))
    assert not any("allowed by the booklet" in text for text in warnings(solid))
    listed = "what the greatest KG of the booklet means"
    assert listed in [default.name for default in fluid.all_defaults]
    assert listed not in [default.name for default in solid.all_defaults]


def results(found):
    """Criterion -> its result as a word."""
    return {row[0]: row[1] for row in table(found, "General intact criteria").rows}


def test_levers_of_the_booklet_end_at_two_per_cent():
    """63 t on 3200 t are within 2 %, 65 t are not: the lines then say that they are not known."""
    on = {**CRANE, "tcg": "0", "vcg": "6.4", "basis": "weighed"}
    small = of_booklet({"tpc": "90"}, weights=[{**on, "mass": "62"}], levers=LEVERS)
    great = of_booklet({"tpc": "90"}, weights=[{**on, "mass": "65"}], levers=LEVERS)

    assert "met" == results(small)["area to 30°"]
    assert "not known" == results(great)["area to 30°"]
    assert any("more than 2 % of displacement" in gap.why for gap in great.gaps)


def test_levers_of_the_booklet_end_at_a_tenth_of_a_metre():
    """50 t are 1.6 % of displacement and yet sink a narrow waterplane by 0.17 m."""
    on = {**CRANE, "tcg": "0", "vcg": "6.4", "mass": "50"}
    found = of_booklet({"tpc": "3"}, weights=[on], levers=LEVERS)

    assert "not known" == results(found)["area to 30°"]


def test_cross_curves_are_not_carried_beyond_their_rows():
    """1,000 t more than the last row: the range typed is named, and no criterion has a value."""
    heavy = {**CRANE, "tcg": "0", "vcg": "6.4", "mass": "1000"}
    found = of_booklet(weights=[heavy], levers=LEVERS, cross_curves=KN)

    assert "not known" == results(found)["lever at 30° or more"]
    (why,) = [gap.why for gap in found.gaps if gap.name.startswith("Righting levers")]
    assert "KN is typed for 3000 t to 3400 t" in why


def test_a_displacement_typed_twice_is_a_fault_of_the_cross_curves():
    """Two rows of one displacement contradict each other; nothing is chosen."""
    found = of_booklet(cross_curves=[*KN, KN[0]])

    assert any(fault.startswith("Cross curves KN:") for fault in found.faults)


WIND = {
    "lwl": "67",
    "depth": "7.5",
    "cb": "0.62",
    "wind_area": "600",
    "wind_height": "6",
}


def test_severe_wind_is_asked_where_the_windage_is_typed():
    """Steady wind, roll and gust have their table; the ratio of areas is a requirement."""
    found = of_booklet(WIND, levers=LEVERS)

    assert "wind" in met(found)
    assert 4 == len(table(found, "Severe wind and rolling").rows)
    lever = table(found, "Severe wind and rolling").rows[0][2]
    assert 504 * 600 * 6 / (9810 * 3200) == pytest.approx(lever.likely)


def test_a_great_windage_is_warned_of_and_not_met():
    """3,000 m² high above the water: she heels too far, and the areas do not balance."""
    found = of_booklet({**WIND, "wind_area": "3000", "wind_height": "12"}, levers=LEVERS)

    assert not met(found)["wind"]
    assert any("may not come back from a gust" in text for text in warnings(found))
    assert any("Under steady wind she may heel by more" in text for text in warnings(found))


@pytest.mark.parametrize("name", WIND)
def test_what_severe_wind_lacks_is_named(name):
    """Without one of its sizes there is no table, and the gap names it."""
    found = of_booklet({**WIND, name: ""}, levers=LEVERS)

    assert "wind" not in met(found)
    assert "Severe wind and rolling" in [gap.name for gap in found.gaps]


def test_a_vessel_that_is_not_upright_has_no_roll():
    """A GM below zero is refused by the roll alone; the chapter remains."""
    found = of_booklet({**WIND, "km_after": "6.0"}, levers=LEVERS)

    assert any(fault.startswith("Severe wind and rolling: GM") for fault in found.faults)
    assert not met(found)["gm"]


def test_water_that_comes_in_before_thirty_degrees_is_warned_of():
    """A flooding angle of 25° fails the area to 30°, in table and warning."""
    found = of_booklet({"flooding": "25"}, levers=LEVERS)

    assert "not met: floods at 25°" in cell_text(results(found)["area to 30°"])
    assert any("water comes in at 25" in text for text in warnings(found))


@pytest.mark.parametrize("value", ["0", "-5", "1e9", "many", "7,55", "999999"])
@pytest.mark.parametrize(
    "field",
    [
        "displacement",
        "draught_fore",
        "lpp",
        "breadth",
        "kg",
        "km",
        "gm",
        "tpc",
        "mctc",
        "lcf",
        "lightship",
        "free_surface",
        "flooding",
    ],
)
def test_no_typed_figure_raises(field, value):
    """Whatever is typed into a cell of the booklet, there is a chapter."""
    assert of_booklet({field: value}, weights=WEIGHTS, levers=LEVERS).verify


@pytest.mark.parametrize(
    ("change", "name"),
    [
        ({"lpp": "60", "lcf": "-1"}, None),
        ({"roll_period": "12", "breadth": ""}, "Breadth"),
        ({"roll_period": "12", "roll_loading": "upside down"}, None),
    ],
)
def test_a_roll_or_a_centre_that_cannot_be_used_leaves_the_rest(change, name):
    """What is missing is named among the gaps; what cannot be is a fault."""
    found = of_booklet(change, weights=WEIGHTS)

    assert found.faults or name in [gap.name for gap in found.gaps]
    assert figure(found, "Displacement after").known


def test_a_deck_load_without_a_declared_load_is_a_gap():
    """Its share is not known, nor is whether the heaviest load is within what is declared."""
    found = of_booklet(decks=[HOUSE, {"name": "crate", "load": "8", "area": "10"}])

    assert "Declared load under crate" in [gap.name for gap in found.gaps]
    assert {"load-line": True, "gm": True, "deck-load": None, "loading": None} == met(found)
    assert "not declared" == table(found, "Loads on deck").rows[1][5]


def test_the_loading_of_a_timed_roll_chooses_its_factor():
    """Light or in ballast the factor is 0.88 ± 0.05, and nothing is assumed."""
    rolled = figure(
        of_booklet({"roll_period": "12", "roll_loading": "light or ballast"}),
        "GM of the day by its roll period",
    )

    assert (0.88 * 16 / 12) ** 2 == pytest.approx(rolled.span.point)
    assert () == rolled.defaults


def test_a_list_of_weights_without_a_displacement_is_still_summed():
    """The change is known, what floats after it is not."""
    found = chapter(case({"weights": WEIGHTS}))

    assert "changes the displacement by" in cell_text(found.answer)
    assert ["Comes off", "Goes on"] == [figure.name for figure in found.figures[:2]]


def test_a_hull_too_small_for_the_formula_is_a_gap_of_the_sinkage():
    """A waterplane of 4 m² has no TPC that a vessel can have: the refusal is named, nothing
    raises."""
    tiny = {"tpc": "", "lpp": "5", "breadth": "2", "cw": "0.4"}
    sinkage = figure(of_booklet(tiny, weights=WEIGHTS), "Mean draught, change")

    assert not sinkage.known
    assert "TPC is" in sinkage.gaps[0].why
