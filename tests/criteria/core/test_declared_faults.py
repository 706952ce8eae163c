"""Mistakes in a file of declared criteria: each by file, criterion and key, all at once."""

import copy
import tomllib
from datetime import date

import pytest

from inspector.criteria.core.declared_faults import faults_of_file
from tests.criteria.core.declared_example import EXAMPLE

WHERE = "f.toml, criterion rudder-bearing, "


@pytest.fixture
def data():
    """The example of the format, to be spoilt."""
    return copy.deepcopy(tomllib.loads(EXAMPLE))


def faults(data, own=False, taken=None):
    return faults_of_file("f.toml", data, taken or {}, own)


# place in the criterion (keys and numbers), what is written there (None: removed), what the fault
# says
MISTAKES = [
    (["title"], None, "key title: is missing"),
    (["colour"], "red", "key colour: is not known"),
    (["id"], "Rudder", "key id: is 'Rudder'"),
    (["source"], "elsewhere", "key source: 'elsewhere' is no source of this file"),
    (["inputs"], [], "key inputs: is empty"),
    (["inputs", 0, "unit"], "furlong", "input clearance, key unit: 'furlong' is not known"),
    (["inputs", 0, "unit"], None, "input clearance, key unit: is missing"),
    (["inputs", 0, "high"], -1, "input clearance, key low: expected low and high"),
    (["inputs", 1, "id"], "clearance", "input clearance: is there twice"),
    (["inputs", 2, "choices"], ["metal"], "input bush, key choices: expected at least two"),
    (["limits_title"], None, "key limits_title: limits and their title"),
    (["limits", 0, "value"], 99, "limit base: 99 is outside its own range; expected 0.5 to 15"),
    (["limits", 0, "value"], None, "limit base: expected a value, or by with values"),
    (["limits", 0, "id"], "clearance", "limit clearance: 'clearance' is the name of something"),
    (["limits", 1, "by"], "diameter", "limit act: by is 'diameter'; expected inputs with choices"),
    (["limits", 1, "values", "metal"], None, "limit act: has no row for bush 'metal', and no rest"),
    (["limits", 1, "values", "brass"], 1, "limit act: 'brass' is no choice of bush"),
    (
        ["figures", "part"],
        {"share": ["act"]},
        "figure part: share is ['act']; expected a list of two",
    ),
    (["figures", "part"], {"power": [1, 2]}, "figure part: is {'power': [1, 2]}; expected by with"),
    (["figures", "film"], "most", "figure film: 'most' is not known here"),
    (["figures", "most"], {"by": "wet", "rows": {"yes": 1}}, "figure most: has no row for wet ''"),
    (
        ["figures", "most"],
        {"by": "diameter", "upto": [200], "cells": [1]},
        "figure most: expected rows; or upto or below",
    ),
    (["value", "unit"], None, "key value: expected one operation and its unit"),
    (["bands_on"], "diameter", "key bands_on: expected the first input, 'clearance'"),
    (["at_most"], "limit", "key at_most: 'limit' is not known here"),
    (["between"], ["base", "most"], "key between: expected one of at_most"),
    (["bands", 0, "upto"], "more", "bands 1, key upto: 'more' is not known here"),
    (["bands", 0, "below"], 4, "bands 1: has upto and below"),
    (["bands", 0, "rating"], "bad", "bands 1, key rating: is 'bad'"),
    (["bands", 0, "source"], "x", "bands 1, key source: 'x' is no source"),
    (["bands", 0, "when"], {"wet": "maybe"}, "bands 1, key when: 'maybe' is no choice of wet"),
    (["bands", 0, "when"], {"depth": "yes"}, "bands 1, key when: 'depth' is not known here"),
    (["bands", 0, "when"], {"diameter": {"over": 5}}, "bands 1, key when: 'over' is not known"),
    (["bands", 1, "upto"], 9, "bands 2: expected the last band without end"),
    (["refused", 0, "input"], "bulk", "refused 1, key input: 'bulk' is no input"),
    (["refused", 0, "why"], "{bulk}", "refused 1, key why: {bulk} is not known"),
    (["inputs", 0, "optional"], True, "input clearance: expected a number that is always given"),
    (["figures", "band"], 3, "figure band: 'band' is the name of something else"),
    (["figures", "film"], {"sum": ["bush", 1]}, "figure film: 'bush' is a text; expected a number"),
    (
        ["figures", "film"],
        {"by": "bush", "upto": [1], "cells": [1, 2]},
        "figure film: by is 'bush', a text",
    ),
    (
        ["figures", "film"],
        {"by": "diameter", "upto": [date(2020, 1, 1)], "cells": [1, 2]},
        "figure film: datetime.date(2020, 1, 1) is a date; expected a number",
    ),
    (
        ["figures", "film"],
        {"by": "bush", "rows": {"metal": 1, "synthetic": date(2020, 1, 1)}},
        "figure film: datetime.date(2020, 1, 1) is a date; expected a number",
    ),
    (["at_most"], "bush", "key at_most: 'bush' is a text; expected a number"),
    (["bands", 0, "when"], {"bush": {"above": "wet"}}, "bands 1, key when: 'bush' is a text"),
    (["bands", 0, "when"], {"diameter": {"from": date(2020, 1, 1)}}, "bands 1, key when: datetime"),
    (["sentence"], "{clearanse} is {meaning}.", "key sentence: {clearanse} is not known"),
    (["notes", 0], "See {drawing}.", "key notes: {drawing} is not known"),
    (["notes", 1, "when"], None, "key notes, key when: is missing"),
    (["words", "place", "rest"], None, "word place: has no row for wet ''"),
    (["examples"], [], "key examples: is empty"),
    (["examples", 0, "from"], None, "examples 1, key from: is missing"),
    (["examples", 0, "margin"], 0.1, "examples 1: gives the margin 0; expected 0.1"),
    (["examples", 0, "rating"], "fair", "examples 1: gives the rating good; expected fair"),
    (["examples", 0, "band"], "over", "examples 1: gives the band within the limit; expected over"),
    (["examples", 0, "given", "bush"], "brass", "examples 1: is refused: "),
]


def spoil(table, place, value):
    """Write a value at a place of a table, or remove what is there."""
    *way, last = place
    for key in way:
        table = table[key]
    if value is None:
        del table[last]
    else:
        table[last] = value


@pytest.mark.parametrize(("place", "value", "expected"), MISTAKES, ids=str)
def test_a_mistake_is_named_by_file_criterion_and_key(data, place, value, expected):
    """The sentence begins with the place and says what is wrong."""
    spoil(data["criterion"][0], place, value)
    found = faults(data)

    where = f"f.toml, criterion {data['criterion'][0].get('id')}, "
    assert any(fault.startswith(where + expected) for fault in found), found


def test_several_mistakes_are_named_at_once(data):
    """Who mends a file sees all of it, sources and several criteria included."""
    second = copy.deepcopy(data["criterion"][0])
    spoil(data["criterion"][0], ["title"], None)
    spoil(second, ["bands", 0, "upto"], "more")
    spoil(second, ["at_most"], "limit")
    data["criterion"].append(second)
    del data["source"]["bearing"]["clause"]
    found = faults(data)

    assert 5 == len(found), found
    assert found[0].startswith("f.toml, source bearing, key clause: is missing")
    assert any("is in this file already" in fault for fault in found)


def test_a_name_that_is_taken_is_refused(data):
    """A shipped criterion is never replaced in silence."""
    found = faults(data, taken={"rudder-bearing": "shipped, and cannot be replaced"})
    assert [
        f"{WHERE}key id: 'rudder-bearing' is shipped, and cannot be replaced; "
        "expected a name of its own."
    ] == found


def test_a_surveyors_own_source_carries_no_mark_but_his(data):
    """What he cites is cited by him: he needs no mark, and may not call his source seen."""
    assert any("source bearing, key mark" in fault for fault in faults(data, own=True))

    del data["source"]["bearing"]["mark"]
    assert [] == faults(data, own=True)
    assert any("key mark: is missing" in fault for fault in faults(data))


def test_an_example_may_be_of_a_refusal(data):
    """The words of the refusal are compared, and a judgement in its place is a mistake."""
    refusal = {"given": {"clearance": 41}, "refused": "40 mm is accepted", "from": "the range"}
    data["criterion"][0]["examples"].append(refusal)
    assert [] == faults(data)

    refusal["refused"] = "never"
    assert any("examples 2: is refused: " in fault for fault in faults(data))
    refusal |= {"given": {"clearance": 4, "diameter": 500, "bush": "metal"}}
    assert any("examples 2: gives the band" in fault for fault in faults(data))


def test_a_file_of_something_else_says_what_is_missing():
    """Neither an empty file nor a list at the place of a table is a traceback."""
    assert faults({})
    assert faults({"criterion": 3, "source": 4})
    assert faults({"criterion": [3], "source": {"a": 4}})


JUNK = (
    date(2020, 1, 1),
    None,
    3,
    -1.5,
    True,
    "",
    "x",
    [],
    ["x"],
    {},
    {"x": 1},
    {"by": "x"},
    [[1]],
    {"rows": 3},
)


def places_in(table, way=()):
    """Every place of a table, however deep."""
    pairs = table.items() if isinstance(table, dict) else enumerate(table)
    for key, value in pairs:
        yield (*way, key)
        if isinstance(value, dict | list):
            yield from places_in(value, (*way, key))


@pytest.mark.parametrize("junk", JUNK, ids=repr)
def test_junk_at_any_place_is_a_sentence_and_never_a_traceback(data, junk):
    """Whatever is written anywhere in a file, the answer is a list of sentences."""
    for place in list(places_in(data)):
        spoilt = copy.deepcopy(data)
        spoil(spoilt, list(place), junk)
        assert all(fault.startswith("f.toml") for fault in faults(spoilt)), place
