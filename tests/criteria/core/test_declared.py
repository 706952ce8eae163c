"""A criterion declared as data: figures, tables, conditions, texts, bands and refusals."""

import copy
import tomllib

import pytest

from inspector.criteria.core.declared import declared_criterion, declared_sources
from inspector.criteria.core.declared_faults import faults_of_file
from inspector.criteria.core.declared_terms import OPERATIONS, Terms
from inspector.criteria.core.judgement import CannotJudge
from inspector.values.field import Field
from tests.criteria.core.declared_example import EXAMPLE


@pytest.fixture(scope="module")
def guide():
    """The example in the description of the format, read as a file."""
    return tomllib.loads(EXAMPLE)


@pytest.fixture
def raw(guide):
    """A copy of the example's criterion, to be changed."""
    return copy.deepcopy(guide["criterion"][0])


@pytest.fixture
def build(guide):
    """Make the criterion of a table."""
    return lambda table: declared_criterion(table, declared_sources(guide["source"]))


STERN = {"clearance": 6, "diameter": 500, "bush": "metal"}


def test_the_description_of_the_format_is_a_file_without_mistakes(guide):
    """What a writer copies works, worked example included."""
    assert [] == faults_of_file("guide.toml", guide, taken={})


def test_the_judgement_names_reading_limit_margin_and_source(raw, build):
    """5 mm and 0.2 % of 500 mm are 6 mm."""
    judgement = build(raw).apply({**STERN, "clearance": "6,5"})

    assert ("over the limit", "poor") == (judgement.band, judgement.rating)
    assert (6.5, "mm", 6.0, -0.5) == (
        judgement.value,
        judgement.unit,
        judgement.limit,
        judgement.margin,
    )
    assert (
        "A clearance of 6.5 mm on 500 mm in dock, against 6 mm, is over it." == judgement.sentence
    )
    assert "The drawing goes first." == judgement.notes[0]
    assert "Afloat it reads low." not in judgement.notes
    assert "rudder-bearing" == judgement.criterion


def test_words_and_notes_depend_on_what_was_given(raw, build):
    """Afloat has its own word and its own note."""
    judgement = build(raw).apply({**STERN, "wet": "yes"})

    assert "on 500 mm afloat, against" in judgement.sentence
    assert "Afloat it reads low." in judgement.notes


def test_a_limit_of_each_choice_may_be_set(raw, build):
    """A limit by choice is one limit a choice, and is used for its own choice only."""
    rule = build(raw)
    own = rule.limit_set.with_limits({"metal_act": "0.4"}, "the maker's drawing")

    assert ["base", "metal_act", "synthetic_act"] == list(rule.limit_set.values)
    assert 7.0 == rule.apply(STERN, own).limit
    assert 6.5 == rule.apply({**STERN, "bush": "synthetic"}, own).limit


def test_what_cannot_be_is_refused_by_the_input_to_blame(raw, build):
    """The sentence is the criterion's own."""
    raw["refused"][0]["when"] = {"clearance": {"above": 30}}
    with pytest.raises(CannotJudge, match="no play is wider than its stock") as caught:
        build(raw).apply({**STERN, "clearance": 31})

    assert "clearance" == caught.value.input


def test_a_phone_has_the_bands_where_no_refusal_needs_the_number(raw, build):
    """A refusal that needs the number itself leaves a phone without bands."""
    assert build(raw).bands is None

    del raw["refused"]
    bands = build(raw).bands_for({"diameter": 500, "bush": "metal"})
    assert ("mm", [6.0, None]) == (bands.unit, [band.upto for band in bands.bands])


@pytest.mark.parametrize(
    ("value", "end"),
    [
        ({"difference": ["clearance", "diameter"], "unit": "mm"}, 16.0),
        ({"sum": ["clearance", 1], "unit": "mm"}, 5.0),
        ({"ratio": ["clearance", "diameter"], "unit": ""}, 60.0),
        ({"percent_of": ["clearance", "diameter"], "unit": "%"}, 0.6),
    ],
)
def test_the_ends_of_a_calculated_value_are_brought_back_to_the_input(raw, build, value, end):
    """A value of 6 is a clearance of 16, 5, 60 or 0.6 mm beside 10 mm, for phone and rule alike."""
    raw |= {"value": value, "bands": [{**raw["bands"][0], "upto": 6}, raw["bands"][1]]}
    raw["inputs"][1] |= {"low": 1}
    raw["inputs"][0] |= {"high": 100}
    del raw["refused"], raw["orders"]
    rule, others = build(raw), {"diameter": 10, "bush": "metal"}

    assert end == rule.bands_for(others).bands[0].upto
    assert "within the limit" == rule.apply({**others, "clearance": end}).band
    assert "over the limit" == rule.apply({**others, "clearance": end + 0.001}).band


def test_a_value_that_a_phone_cannot_bring_back_is_judged_here(raw, build):
    """A difference in the other order has no bands of the input, and is judged all the same."""
    raw |= {"value": {"difference": ["diameter", "clearance"], "unit": "mm"}}
    raw["bands"][0]["upto"] = 400
    del raw["refused"]
    rule = build(raw)

    assert rule.bands is None
    assert "over the limit" == rule.apply(STERN).band
    assert "within the limit" == rule.apply({**STERN, "diameter": 406}).band


def ladder(raw, build, *ends):
    """The ends of three bands, good, fair and poor, in the order in which they are given."""
    raw["figures"] = {"watch": ends[0], "act": ends[1], "most": ends[1]}
    raw["bands"] = [
        {"upto": "watch", "band": "good", "rating": "good", "meaning": "good"},
        {"below": "act", "band": "fair", "rating": "fair", "meaning": "fair"},
        {"band": "poor", "rating": "poor", "meaning": "poor"},
    ]
    del raw["value"], raw["refused"], raw["limits"], raw["limits_title"]
    bands = build(raw).bands_for({"diameter": 500, "bush": "metal"}).bands
    return [(band.band, band.upto, band.closed) for band in bands]


@pytest.mark.parametrize(
    ("ends", "expected"),
    [
        ((3, 5), [("good", 3, True), ("fair", 5, False), ("poor", None, False)]),
        ((5, 5), [("good", 5, False), ("poor", None, False)]),
        ((7, 5), [("good", 5, False), ("poor", None, False)]),
    ],
)
def test_the_stricter_limit_counts_in_an_unusual_order(raw, build, ends, expected):
    """A watch limit at or above the limit for action leaves no fair band."""
    assert expected == ladder(raw, build, *ends)


def test_a_band_for_one_choice_overrides_the_others(raw, build):
    """A band without end for one choice closes the row."""
    over = {"when": {"wet": "yes"}, "band": "afloat", "meaning": "not judged", "without": ["limit"]}
    raw["bands"].insert(0, over)
    judgement = build(raw).apply({**STERN, "wet": "yes"})

    assert ("afloat", None, 6, None, None) == (
        judgement.band,
        judgement.rating,
        judgement.value,
        judgement.limit,
        judgement.margin,
    )
    assert "within the limit" == build(raw).apply(STERN).band


def test_a_limit_that_rests_on_what_was_not_given_leaves_no_margin(raw, build):
    """Neither one limit nor two of them are guessed."""
    raw["inputs"].append(
        {"id": "drawn", "label": "Drawn", "unit": "mm", "optional": True, "low": 0, "high": 40}
    )
    for compared in ({"at_most": "drawn"}, {"between": ["drawn", "most"]}):
        plain = {key: value for key, value in raw.items() if key != "at_most"}
        judgement = build(plain | compared).apply(STERN)
        assert (6, None, None) == (judgement.value, judgement.limit, judgement.margin)


def terms(**values):
    """Terms with plain numbers and texts."""
    made = Terms()
    for name, value in values.items():
        kind = "choice" if isinstance(value, str) else "number"
        made.add(Field(name, name, kind, "" if kind == "choice" else "mm"), value)
    return made


@pytest.mark.parametrize(
    ("expected", "figure"),
    [
        (7, 7),
        (0.3, "a"),
        (0.4, {"sum": ["a", 0.1]}),
        (0.2, {"difference": ["a", 0.1]}),
        (0.03, {"product": ["a", 0.1]}),
        (3.0, {"ratio": ["a", 0.1]}),
        (75.0, {"percent_of": ["a", 0.4]}),
        (0.33, {"share": [110, "a"]}),
        (0.1, {"least": ["a", 0.1, 5]}),
        (5.0, {"greatest": ["a", 0.1, 5]}),
        (2, {"by": "kind", "rows": {"vented": 1, "sealed": 2}}),
        (0.3, {"by": "kind", "rows": {"vented": 1}, "rest": "a"}),
        (4, {"by": ["kind", "size"], "rows": {"sealed": {"big": 4}}, "rest": 9}),
        (1, {"by": "a", "upto": [0.3, 0.5], "cells": [1, 2, 3]}),
        (2, {"by": "a", "below": [0.3, 0.5], "cells": [1, 2, 3]}),
        (3, {"by": "a", "below": [0.1, 0.2], "cells": [1, 2, 3]}),
        (None, {"sum": ["a", "nothing"]}),
        (None, {"ratio": ["a", 0]}),
    ],
)
def test_a_figure_is_one_operation_or_one_cell(expected, figure):
    """Each as a person with a pencil finds it, and nothing where something is missing."""
    made = terms(a=0.3, kind="sealed", size="big", nothing=None)
    assert expected == made.calculated(figure)


def test_every_operation_is_tried_above():
    """An operation that is added is added to the figures above."""
    assert {
        "sum",
        "difference",
        "product",
        "ratio",
        "percent_of",
        "share",
        "least",
        "greatest",
    } == set(OPERATIONS)


@pytest.mark.parametrize(
    ("expected", "conditions"),
    [
        (True, {}),
        (True, {"kind": "sealed"}),
        (False, {"kind": "vented"}),
        (True, {"kind": ["vented", "sealed"]}),
        (True, {"nothing": ["", "no"]}),
        (True, {"a": {"from": 0.3, "upto": 0.3}}),
        (False, {"a": {"above": 0.3}}),
        (False, {"a": {"below": 0.3}}),
        (True, {"a": {"below": "b"}}),
        (True, {"kind": {"unlike": "size"}}),
        (False, {"nothing": {"below": 5}}),
        (False, {"kind": "sealed", "a": {"above": 1}}),
    ],
)
def test_all_conditions_must_hold(expected, conditions):
    """A comparison of what was not given does not hold."""
    made = terms(a=0.3, b=2, kind="sealed", size="big", nothing=None)
    assert expected == made.holds(conditions)


def test_a_placeholder_is_a_value_as_a_reader_sees_it():
    """With its unit, with decimals, converted, and a word for what is not known."""
    made = terms(a=0.3, nothing=None)
    text = made.filled("{a}, {a:2}, {a:µm}, {nothing}, {meaning}.", meaning="good")
    assert "0.3 mm, 0.30 mm, 300 µm, not known, good." == text


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"at_most": "width"}, "'width' is no input"),
        ({"at_least": "diameter"}, "expected one of at_most"),
        ({"at_most": "bush"}, "two inputs of one kind and unit"),
    ],
)
def test_an_order_of_what_is_not_there_is_a_fault(raw, changes, said):
    """Names, one relation, and two inputs that can be compared."""
    raw["orders"][0] |= changes
    sources = {"bearing": {"title": "t", "edition": "e", "clause": "c", "mark": "memory"}}
    found = faults_of_file("own.toml", {"source": sources, "criterion": [raw]}, taken={})

    assert any("orders 1" in fault and said in fault for fault in found)


@pytest.mark.parametrize(("value", "text"), [(0.5, "0.50 %"), (0.502, "0.502 %"), (3, "3.00 %")])
def test_a_placeholder_may_ask_for_so_many_decimals_at_least(value, text):
    """A limit of two decimals beside a value with two, or with more where they are there."""
    made = Terms()
    made.add(Field("a", "A", unit="%"), value)

    assert text == made.filled("{a:+2}")
