"""Stability after changes: refusals, spans that hold the point and never widen with knowledge, and a chapter that says what it does not know."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.conversion.chapter_stability import chapter
from inspector.conversion.deck_loads import ACCELERATION, deck_load
from inspector.conversion.inputs import BadInput
from inspector.conversion.levers import Levers, held
from inspector.conversion.shapes import Span
from inspector.conversion.stability import (
    ANY_LOADING,
    around_factor,
    fluid_gm,
    free_surface_moment,
    heel,
    km_at,
    lightship_word,
    rolled_gm,
    sinkage,
    tonnes_per_cm,
    trimmed,
)
from inspector.criteria.floating import ROLL_FACTORS
from tests.conversion.a_case import BOOKLET, LEVERS, WEIGHTS, case
from tests.conversion.conftest import nested, spans

CURVE = Levers((0, 10, 20, 30, 40), (0, 0.17, 0.36, 0.52, 0.55))


@pytest.mark.parametrize(("make", "field"), [
    (lambda: free_surface_moment(144, -850), "tank: density"), (lambda: free_surface_moment(144, 0.85), "tank: density"),
    (lambda: free_surface_moment(-1, 850), "tank: free-surface inertia"),
    (lambda: tonnes_per_cm(884, 1.025), "water: density"), (lambda: sinkage(Span.exact(10), 0), "TPC"),
    (lambda: trimmed(Span.exact(10), 0), "MCTC"), (lambda: fluid_gm(7.5, 6.5, 10, 0), "displacement"), (lambda: heel(10, 3000, Span(-0.1, 0.2, 0.3)), "GM"),
    (lambda: rolled_gm(0, 14, around_factor(0.78)), "roll period"), (lambda: Levers((0, 10), (0, 0.1)), "righting levers"),
    (lambda: Levers((10, 20, 30), (0.1, 0.2, 0.3)), "righting levers"), (lambda: Levers((0, 20, 20), (0, 0.2, 0.3)), "righting levers"),
    (lambda: CURVE.at(41), "righting levers: angle"), (lambda: deck_load("house", -1, 10), "house: mass"), (lambda: deck_load("house", 1, 0), "house: area"),
    (lambda: deck_load("house", 1, 10, 5, walls=0), "house: length of walls"),
])
def test_what_cannot_be_is_refused_by_its_field(make, field):
    """Densities in the wrong unit, a height below zero where a list is asked, curves that are none."""
    with pytest.raises(BadInput) as refused:
        make()

    assert field == refused.value.field


@given(nested(-200, 200), st.floats(5, 12), st.floats(3, 6))
def test_more_knowledge_of_the_mass_never_widens_km(pair, km, draught):
    """A narrower change of draught gives a KM inside the one before, with its point inside."""
    wide, narrow = (km_at(km, draught, sinkage(one, 9)) for one in pair)

    assert Span(wide.low - 1e-9, None, wide.high + 1e-9).contains(narrow)
    assert narrow.low <= narrow.point <= narrow.high


@given(nested(7, 9), nested(5, 6.5), nested(0, 300), nested(2000, 4000))
def test_gm_narrows_with_each_of_its_parts(km, kg, moment, mass):
    """The fluid GM of narrower parts lies inside that of wider ones."""
    wide, narrow = (fluid_gm(km[at], kg[at], moment[at], mass[at]) for at in (0, 1))

    assert wide.contains(narrow)


@given(spans(-0.3, 0.3), st.floats(0, 90))
def test_every_criterion_holds_its_point(rise, flooding):
    """Over any rise of the centre of gravity, what is found lies between its ends; a curve that rises less has no smaller area."""
    for one in held(CURVE, rise, Span.exact(1.0), flooding):
        assert one.found is None or one.found.point is None or one.found.low <= one.found.point <= one.found.high

    assert CURVE.lowered(rise.high).area(30) <= CURVE.lowered(rise.low).area(30) + 1e-12


@given(nested(-0.3, 0.3))
def test_a_better_known_rise_never_widens_a_criterion(pair):
    """Areas and levers of a narrower rise lie inside those of a wider one."""
    wide, narrow = (held(CURVE, one, None) for one in pair)
    for one, other in zip(wide[:4], narrow[:4], strict=True):
        assert Span(one.found.low - 1e-9, None, one.found.high + 1e-9).contains(other.found)


def test_levers_that_end_too_soon_tell_less():
    """A curve to 30 deg knows nothing of 40 deg, and no curve knows nothing; neither is counted as kept or not kept."""
    short = Levers((0, 10, 20, 30), (0, 0.17, 0.36, 0.52))

    assert [True, None, None, True, None, None] == [one.met for one in held(short, Span.exact(0), None)]
    assert [None] * 5 + [False] == [one.met for one in held(None, Span.exact(0), Span.exact(0.1))]


def test_flooding_before_thirty_degrees_leaves_nothing_between():
    """The area is taken to the flooding angle, and the one from 30 deg on is not told."""
    rows = held(CURVE, Span.exact(0), None, 25.0)

    assert CURVE.area(25) == pytest.approx(rows[1].found.point)
    assert rows[2].found is None


def test_every_loading_counts_where_none_is_told():
    """The factor of an untold loading holds each told one with its spread."""
    assert all(ANY_LOADING.value.contains(around_factor(one)) for one in ROLL_FACTORS.values())


@pytest.mark.parametrize(("share", "word"), [
    (Span.exact(0.99), "booklet stands"), (Span.exact(-1.0), "booklet to be amended"), (Span.exact(2.0), "booklet to be amended"),
    (Span.exact(-2.01), "new inclining test"), (Span(-0.5, 0.2, 1.5), "between booklet stands and booklet to be amended"),
])
def test_a_change_of_lightship_is_told_at_both_limits(share, word):
    """From 1 % the booklet is amended, above 2 % she is inclined; a span over a limit says both."""
    assert word == lightship_word(share, 1.0, 2.0)


def test_a_deck_load_spans_from_rest_to_seaway():
    """The default acceleration is listed, a given one is not; without a declared load there is no share."""
    assert (ACCELERATION,) == deck_load("house", 86, 108, 5).defaults
    assert () == deck_load("house", 86, 108, 5, acceleration=0.3).defaults
    assert deck_load("house", 86, 108).share is None


def test_nothing_typed_is_one_sentence():
    """An empty inspection says what is missing and shows no figure, no requirement and no verdict of its own."""
    told = chapter(case())

    assert "Neither the starting condition nor a weight is given, so nothing can be told of weight and stability." == told.answer
    assert ((), (), ()) == (told.figures, told.lines, told.requirements)


def test_the_chapter_tells_height_and_who_decides():
    """With a booklet, weights and levers: a GM that is kept, every criterion, the lightship, and the sentence on approval and inclining."""
    told = chapter(case({"hydrostatics": [BOOKLET], "weights": WEIGHTS, "levers": LEVERS, "decks": [
        {"name": "house", "load": "86", "area": "108", "rated": "5", "walls": "42"}]}))

    assert ["Weights off and on", "General intact criteria", "The lightship changes", "Loads on deck"] == [one.title for one in told.lines]
    assert {"gm": True, "deck-load": True} == {one.id: one.met for one in told.requirements}
    assert "inclining test" in told.verify
    assert any(warning.startswith("Bulk tanks, taken off below") for warning in told.warnings)


def test_without_free_surfaces_no_height_is_offered():
    """A solid GM is an upper end: it is shown as such, and Compare is told nothing."""
    told = chapter(case({"hydrostatics": [{**BOOKLET, "free_surface": ""}], "weights": WEIGHTS}))

    assert "before any free surface" in told.answer
    assert [None] == [one.met for one in told.requirements]
    assert "Free surfaces" in [gap.name for gap in told.gaps]


def test_a_removed_tank_has_no_free_surface():
    """Slack tanks count with the density of their contents, full, removed and dry ones do not; a density that nobody gave is listed."""
    tank = {"name": "fuel 1", "kind": "fuel", "capacity": "80", "fill": "50", "free_surface": "144"}
    tanks = [tank, {**tank, "name": "fuel 2", "fill": "98"},
             {**tank, "name": "mud", "kind": "wet cargo", "plan": "remove"}, {**tank, "name": "dry", "kind": "void"}]
    told = chapter(case({"hydrostatics": [{**BOOKLET, "free_surface": ""}], "tanks": tanks}))
    moment = next(one for one in told.figures if one.name == "Free-surface moment")

    assert 122.4 == pytest.approx(moment.span.point)
    assert ["density in fuel 1"] == [one.name for one in moment.defaults]


def test_a_height_below_the_least_is_loud():
    """A landing deck too heavy for her: a warning with the figure, a requirement not met, a word in the answer."""
    heavy = [{"name": "landing deck", "act": "on", "mass": "400", "basis": "weighed", "lcg": "30", "tcg": "0", "vcg": "15.5"}]
    told = chapter(case({"hydrostatics": [BOOKLET], "weights": heavy}))

    assert "below the least" in told.answer
    assert any("naval architect" in warning for warning in told.warnings)
    assert not told.requirements[0].met


@pytest.mark.parametrize(("change", "name"), [
    ({"displacement": ""}, "Displacement"), ({"kg": ""}, "KG"), ({"km": ""}, "KM at the new draught"), ({"tpc": ""}, "TPC"),
    ({"lpp": ""}, "Length between perpendiculars"),
    ({"lightship": ""}, "Lightship"), ({"booklet": ""}, "Stability booklet"),
])
def test_each_missing_figure_is_named(change, name):
    """What the booklet would have told stands among what is missing, and nothing raises."""
    assert name in [gap.name for gap in chapter(case({"hydrostatics": [{**BOOKLET, **change}], "weights": WEIGHTS})).gaps]


def test_a_given_gm_that_disagrees_is_told():
    """KM less KG less free surface is 1.11 m; a typed 0.80 m is a misreading of one of them."""
    told = chapter(case({"hydrostatics": [{**BOOKLET, "gm": "0.80"}]}))

    assert any("one of them was misread" in warning for warning in told.warnings)


def test_wrong_cells_are_told_with_their_table():
    """A weight of an unknown act, a curve that begins twice, a negative deck load: sentences, and the rest stands."""
    told = chapter(case({"hydrostatics": [BOOKLET], "weights": [{"name": "winch", "act": "away", "mass": "3"}],
                         "levers": [*LEVERS, {"angle": "10", "gz": "0.2"}], "decks": [{"name": "house", "load": "-3", "area": "20"}]}))

    assert 3 == len([one for one in told.faults if one.startswith(("Weights off and on", "Righting levers", "Loads on deck, house"))])


def test_the_list_needs_every_side():
    """One weight off the centreline and another without a side: no list is told, and the missing one is named."""
    aside = [{"name": "crane", "act": "on", "mass": "20", "basis": "weighed", "lcg": "20", "tcg": "5", "vcg": "9"},
             {"name": "box", "act": "on", "mass": "2", "vcg": "8"}]

    assert "Side of box" in [gap.name for gap in chapter(case({"hydrostatics": [BOOKLET], "weights": aside})).gaps]
    figures = {one.name: one.span for one in chapter(case({"hydrostatics": [BOOKLET], "weights": aside[:1]})).figures}
    assert 0 < figures["List (plus to starboard)"].low


def test_a_tank_without_inertia_keeps_the_booklets_moment():
    """Where one slack tank lacks its inertia, the moment is not less than the booklet's, and the tank is named."""
    tank = {"name": "fuel 1", "kind": "fuel", "capacity": "80", "fill": "50", "free_surface": "50", "density": "850"}
    tanks = [tank, {"name": "fuel 2", "kind": "fuel", "capacity": "80", "fill": "50"}]
    moment = next(one for one in chapter(case({"hydrostatics": [BOOKLET], "tanks": tanks})).figures if one.name == "Free-surface moment")

    assert Span(122.4, None, 122.4) == moment.span
    assert ["Free surface of fuel 2"] == [gap.name for gap in moment.gaps]


@pytest.mark.parametrize(("change", "warned"), [({"roll_period": "11.5"}, False), ({"roll_period": "20"}, True), ({"roll_period": "12.5", "lwl": "80"}, False)])
def test_a_timed_roll_is_held_against_the_booklet(change, warned):
    """11.5 s is what 1.11 m may roll in, 20 s is not; above 70 m of length the factor comes from breadth and draught."""
    told = chapter(case({"hydrostatics": [{**BOOKLET, **change}]}))

    assert warned == any(one.startswith("The timed roll tells") for one in told.warnings)
    assert any(one.name == "GM of the day by its roll period" and one.span for one in told.figures)


def test_cross_curves_are_lowered_by_the_whole_height():
    """KN at the new displacement less KG with free surface gives the same lever as GZ would, and no curve before is drawn."""
    kn = [{"angle": str(angle), "kn": str(value)} for angle, value in ((10, 1.30), (20, 2.65), (30, 3.87), (40, 4.83))]
    told = chapter(case({"hydrostatics": [BOOKLET], "levers": kn}))
    curves = next(one for one in told.drawings if one.title == "Righting levers").curves

    assert ["after, estimate"] == [one.label for one in curves]
    assert 3.87 - (6.40 + 122.4 / 3200) * 0.5 == pytest.approx(dict(curves[0].points)[30])


@pytest.mark.parametrize("value", ["0", "-5", "1e9", "many", "7,55", "999999"])
@pytest.mark.parametrize("field", ["displacement", "draught_fore", "lpp", "breadth", "kg", "km", "gm", "tpc", "mctc", "lcf", "lightship",
                                   "free_surface", "flooding"])
def test_no_typed_figure_raises(field, value):
    """Whatever is typed into a cell of the booklet, the chapter is told in sentences."""
    assert chapter(case({"hydrostatics": [{**BOOKLET, field: value}], "weights": WEIGHTS, "levers": LEVERS})).verify
