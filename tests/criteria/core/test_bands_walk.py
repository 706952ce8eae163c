"""A walk over all bands: those that a phone applies alone are those of the rule itself."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.checklists.registry import CRITERIA
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.core.source import MAY_FAIL
from tests.criteria.conftest import VALID

WITH_BANDS = [rule for rule in CRITERIA.values() if rule.bands]
NEARLY_NOTHING = 1e-6
everyone = pytest.mark.parametrize("rule", WITH_BANDS, ids=[rule.name for rule in WITH_BANDS])


def constants_of(rule):
    """Every value but the deciding one, from the valid ones."""
    return {name: value for name, value in VALID[rule.name].items() if name != rule.deciding_input}


def values_of(rule, bands):
    """Numbers over the whole range of the deciding input, many of them at ends of bands."""
    asked = rule.inputs[0]
    if asked.kind == "whole":
        return st.integers(asked.low, asked.high)
    ends = [step.upto for step in bands.bands if step.upto is not None]
    beside = [
        end + change
        for end in ends
        for change in (-NEARLY_NOTHING, 0, NEARLY_NOTHING)
        if asked.low <= end + change <= asked.high
    ]
    anywhere = st.floats(asked.low, asked.high, allow_nan=False)
    return st.one_of(st.sampled_from(beside), anywhere) if beside else anywhere


def agree(rule, constants, bands, value):
    """Compare the band of a value with what the rule says."""
    step, judgement = bands.band_of(value), rule.apply({**constants, rule.deciding_input: value})
    # A band with a source of its own that nobody read may warn, and not fail.
    may_fail = judgement.source.mark in MAY_FAIL
    expected = "poor" if step.rating == "failed" and not may_fail else step.rating
    assert (step.band, expected) == (judgement.band, judgement.rating)


@everyone
@given(data=st.data())
def test_the_bands_give_the_band_and_rating_of_the_rule(rule, data):
    """Over the whole range, at each end and beside it, with every choice of other inputs."""
    constants = constants_of(rule)
    constants |= {
        asked.name: data.draw(st.sampled_from(asked.choices), asked.name)
        for asked in rule.inputs[1:]
        if asked.kind == "choice" and not asked.optional
    }
    try:
        bands = rule.bands_for(constants)
    except CannotJudge:
        return
    value = data.draw(values_of(rule, bands), rule.deciding_input)
    try:
        rule.apply({**constants, rule.deciding_input: value})
    except CannotJudge:
        return
    agree(rule, constants, bands, value)


@everyone
def test_the_bands_hold_for_the_valid_values(rule):
    """At least one value of each criterion is judged by both, and refused by neither."""
    constants = constants_of(rule)
    agree(rule, constants, rule.bands_for(constants), VALID[rule.name][rule.deciding_input])


@everyone
def test_bands_rise_and_their_last_band_has_no_end(rule):
    """The ends of the bands rise, so that every number lies in one band only."""
    steps = rule.bands_for(constants_of(rule)).bands
    assert steps[-1].upto is None
    ends = [(step.upto, step.closed) for step in steps[:-1]]
    assert ends == sorted(ends)


@everyone
def test_without_the_other_inputs_there_are_no_bands(rule):
    """Bands need every required input but the deciding one; a missing one gives None."""
    for asked in rule.inputs[1:]:
        if not asked.optional:
            assert (
                rule.bands_for(
                    {
                        name: value
                        for name, value in constants_of(rule).items()
                        if name != asked.name
                    }
                )
                is None
            )
