"""From what was typed to a judgement, or to a sentence where there can be none."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given
from hypothesis import settings as effort
from hypothesis import strategies as st

from inspector.assess.judging import Basis, judge_sheet
from inspector.checklists.model import Check
from inspector.record.typed_values import typed_text
from inspector.values.field import Field


def make(criterion, readings=(), given=None, taken=None):
    return Check(
        "c",
        "The check",
        "",
        "",
        "",
        "room",
        1,
        1,
        criterion=criterion,
        readings=readings,
        given=given or {},
        taken=taken or {},
    )


OIL = make(
    "oil-water",
    (Field("water", "Water content", "number", "%"), Field("sampled", "Sampled", "date")),
    {"service": "thruster"},
)
TIER = make(
    "nox-tier",
    (
        Field("speed", "Rated speed", "number", "rpm"),
        Field("certificate", "Certificate", "choice", "", ("none", "I")),
    ),
    taken={"built": "vessel.built"},
)
STORE = make(
    "cold-store-temperature",
    (
        Field("temperature", "Temperature", "number", "°C"),
        Field("store", "Store", "choice", "", ("frozen", "chilled")),
    ),
)


def typed(**values):
    return {
        name: {"value": value[0], "unit": value[1]}
        if isinstance(value, tuple)
        else {"value": value}
        for name, value in values.items()
    }


def test_a_reading_is_judged_with_the_checklist_s_constant():
    """The service comes from `given`, the number from the surveyor."""
    judgement, sentence = judge_sheet(OIL, typed(water=("0,01", "%")), Basis())

    assert ("oil-water", "") == (judgement.criterion, sentence)
    assert judgement.value == 0.01


def test_a_reading_in_another_unit_is_converted():
    """5000 ppm of water is 0.5 %, and is judged the same."""
    assert judge_sheet(OIL, typed(water=("0.5", "%")), Basis()) == judge_sheet(
        OIL, typed(water=("5000", "ppm")), Basis()
    )


def test_a_temperature_in_fahrenheit_is_judged_in_celsius():
    """0 °F is −17.8 °C: short of −18 °C for a frozen store."""
    judgement, _ = judge_sheet(STORE, typed(temperature=("0", "°F"), store="frozen"), Basis())

    assert "fair" == judgement.rating
    assert judgement.value == pytest.approx(-17.78, abs=0.01)


def test_a_reading_without_a_unit_is_taken_in_the_checklist_s_unit():
    """A bare number means what the sheet asked for."""
    assert judge_sheet(OIL, {"water": {"value": "0.5"}}, Basis()) == judge_sheet(
        OIL, typed(water=("0.5", "%")), Basis()
    )


def test_an_input_is_taken_from_the_vessel():
    """The keel date comes from the particulars: a tier I engine under a keel of 2012 has failed."""
    judgement, _ = judge_sheet(
        TIER, typed(speed=("1800", "rpm"), certificate="I"), Basis({"built": "2012-03-01"})
    )

    assert "failed" == judgement.rating


@pytest.mark.parametrize(
    "readings",
    [{}, {"water": None}, {"water": {"value": "  ", "unit": "%"}}, typed(sampled="2026-01-01")],
)
def test_nothing_typed_for_the_criterion_gives_nothing(readings):
    """No judgement and no complaint where nothing was typed; constants alone are no reading."""
    assert (None, "") == judge_sheet(OIL, readings, Basis())


def test_a_check_without_a_criterion_is_not_judged():
    """Readings alone are only recorded."""
    assert (None, "") == judge_sheet(replace(OIL, criterion=""), typed(water=("1", "%")), Basis())


def test_a_missing_input_is_named_with_the_place_it_belongs_to():
    """What is still missing is named by its label, and where it is to be filled in."""
    judgement, sentence = judge_sheet(TIER, typed(speed=("1800", "rpm")), Basis())

    assert judgement is None
    assert (
        "The check cannot be judged yet: 'Keel laid' (from the vessel's particulars) and "
        "'Certificate' are missing." == sentence
    )


@pytest.mark.parametrize(
    ("readings", "part"),
    [
        (typed(water=("a lot", "%")), "not a number"),
        (typed(water=("1,200", "ppm")), "two ways"),
        (typed(water=("1", "bar")), "cannot become"),
        (typed(water=("1", "furlong")), "not known"),
        (typed(water=("150", "%")), "above"),
        (typed(water=("9" * 90, "%")), "above"),
    ],
)
def test_what_cannot_be_judged_comes_back_as_a_sentence(readings, part):
    """Bad numbers, unlike units and values out of range are told, not raised."""
    judgement, sentence = judge_sheet(OIL, readings, Basis())

    assert judgement is None
    assert part in sentence


def test_an_unknown_criterion_comes_back_as_a_sentence():
    """An old checklist may name a rule that is gone."""
    judgement, sentence = judge_sheet(make("no-such-rule"), typed(x="1"), Basis())

    assert judgement is None
    assert "no-such-rule" in sentence


json_values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False)
    | st.text(max_size=9)
    | st.text("0123456789.,-", max_size=60),
    lambda inner: (
        st.lists(inner, max_size=2)
        | st.dictionaries(st.sampled_from(("value", "unit")), inner, max_size=2)
    ),
    max_leaves=4,
)


@given(
    st.dictionaries(
        st.sampled_from(("water", "speed", "certificate", "temperature", "store")), json_values
    ),
    st.text(max_size=12),
    st.sampled_from((OIL, TIER, STORE)),
)
@effort(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_no_user_data_ever_raises(readings, built, check):
    """Whatever JSON stands in the readings: a judgement, or nothing, or one sentence."""
    judgement, sentence = judge_sheet(check, readings, Basis({"built": built}))

    assert judgement is None or sentence == ""


@pytest.mark.parametrize(
    ("expected", "reading"),
    [
        ("9.6", {"value": " 9.6 "}),
        ("", {"value": None}),
        ("", None),
        ("3", 3),
        ("", {"value": {"a": 1}}),
    ],
)
def test_typed_text_is_what_was_typed(expected, reading):
    """Only plain values count as typed."""
    assert expected == typed_text(reading)
