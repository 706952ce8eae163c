"""A walk over all ladders: the bands that a phone applies alone are those that the rule itself gives."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import CRITERIA
from tests.criteria.conftest import VALID

WITH_LADDER = [rule for rule in CRITERIA.values() if rule.ladder]
NEARLY_NOTHING = 1e-6
everyone = pytest.mark.parametrize("rule", WITH_LADDER, ids=[rule.name for rule in WITH_LADDER])


def constants_of(rule):
    """Every value but the deciding one, from the valid ones."""
    return {name: value for name, value in VALID[rule.name].items() if name != rule.ladder_input}


def values_of(rule, ladder):
    """Numbers over the whole range of the deciding input, many of them at the ends of bands and right beside them."""
    asked = rule.inputs[0]
    if asked.kind == "whole":
        return st.integers(asked.low, asked.high)
    ends = [step.upto for step in ladder.steps if step.upto is not None]
    beside = [end + change for end in ends for change in (-NEARLY_NOTHING, 0, NEARLY_NOTHING) if asked.low <= end + change <= asked.high]
    anywhere = st.floats(asked.low, asked.high, allow_nan=False)
    return st.one_of(st.sampled_from(beside), anywhere) if beside else anywhere


def agree(rule, constants, ladder, value):
    """Hold one value by the ladder against the rule."""
    step, judgement = ladder.step(value), rule.apply({**constants, rule.ladder_input: value})
    assert (step.band, step.rating) == (judgement.band, judgement.rating)


@everyone
@given(data=st.data())
def test_the_ladder_gives_the_band_and_rating_of_the_rule(rule, data):
    """Over the whole range, at every end of a band and beside it, with every choice of the other inputs."""
    constants = constants_of(rule)
    constants |= {asked.name: data.draw(st.sampled_from(asked.choices),
                                        asked.name) for asked in rule.inputs[1:] if asked.kind == "choice" and not asked.optional}
    try:
        ladder = rule.ladder_for(constants)
    except CannotJudge:
        return
    value = data.draw(values_of(rule, ladder), rule.ladder_input)
    try:
        rule.apply({**constants, rule.ladder_input: value})
    except CannotJudge:
        return
    agree(rule, constants, ladder, value)


@everyone
def test_the_ladder_holds_for_the_valid_values(rule):
    """At least one value of each criterion is judged by both, and refused by neither."""
    constants = constants_of(rule)
    agree(rule, constants, rule.ladder_for(constants), VALID[rule.name][rule.ladder_input])


@everyone
def test_a_ladder_rises_and_its_last_band_has_no_end(rule):
    """The ends of the bands rise, so that every number lies in one band only."""
    steps = rule.ladder_for(constants_of(rule)).steps
    assert steps[-1].upto is None
    ends = [(step.upto, step.closed) for step in steps[:-1]]
    assert ends == sorted(ends)


@everyone
def test_without_the_other_inputs_there_is_no_ladder(rule):
    """A ladder needs every required input but the deciding one; a missing one gives None and no guess."""
    for asked in rule.inputs[1:]:
        if not asked.optional:
            assert rule.ladder_for({name: value for name, value in constants_of(rule).items() if name != asked.name}) is None
