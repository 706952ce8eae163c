"""A walk over all profiles: whatever limits a surveyor sets, the bands a phone applies alone stay those of the rule."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.criteria.judgement import CannotJudge
from inspector.criteria.registry import CRITERIA
from tests.criteria.conftest import VALID

RULES = [rule for rule in CRITERIA.values() if rule.profile]
everyone = pytest.mark.parametrize("rule", RULES, ids=[rule.name for rule in RULES])
with_ladder = pytest.mark.parametrize("rule", [rule for rule in RULES if rule.ladder], ids=[rule.name for rule in RULES if rule.ladder])


@with_ladder
@given(data=st.data())
def test_the_ladder_follows_the_limits_that_a_surveyor_set(rule, data):
    """Any limits inside their ranges, even in an unusual order, and any value at the end of a band or between."""
    limits = tuple(replace(one, value=data.draw(st.floats(one.low, one.high).map(lambda value: round(value, 4)), one.name)) for one in rule.profile.limits)
    own = replace(rule.profile, limits=limits, edited=True)
    constants = {name: value for name, value in VALID[rule.name].items() if name != rule.ladder_input}
    try:
        ladder = rule.ladder_for(constants, own)
    except CannotJudge:
        return
    asked = rule.inputs[0]
    ends = [step.upto for step in ladder.steps if step.upto is not None and asked.low <= step.upto <= asked.high and asked.kind == "number"]
    anywhere = st.integers(asked.low, asked.high) if asked.kind == "whole" else st.floats(asked.low, asked.high)
    value = data.draw(st.one_of(st.sampled_from(ends), anywhere) if ends else anywhere, rule.ladder_input)
    try:
        judgement = rule.apply({**constants, rule.ladder_input: value}, own)
    except CannotJudge:
        return
    step = ladder.step(value)
    assert (step.band, step.rating) == (judgement.band, judgement.rating)


@everyone
def test_a_shipped_limit_lies_inside_its_own_range(rule):
    """What is shipped could be typed in again."""
    for one in rule.profile.limits:
        assert one.low <= one.value <= one.high, one.name


@everyone
def test_a_limit_has_a_name_that_a_form_can_carry(rule):
    """Lower case, digits and underscores, and no two alike."""
    names = [one.name for one in rule.profile.limits]
    assert len(set(names)) == len(names)
    assert all(name.replace("_", "").isalnum() and name == name.lower() and " " not in name for name in names)


@everyone
def test_a_judgement_names_the_profile_it_used(rule):
    """Two reports with different limits can be told apart."""
    notes = rule.apply(VALID[rule.name]).notes
    assert any(note.startswith("Profile used: ") and rule.profile.title in note for note in notes)
