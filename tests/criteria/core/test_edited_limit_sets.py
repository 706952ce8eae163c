"""A walk over all limit sets: whatever a surveyor sets, a phone's bands are the rule's."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.checklists.registry import CRITERIA
from inspector.criteria.core.judgement import CannotJudge
from tests.criteria.conftest import VALID

RULES = [rule for rule in CRITERIA.values() if rule.limit_set]
everyone = pytest.mark.parametrize("rule", RULES, ids=[rule.name for rule in RULES])
with_bands = pytest.mark.parametrize(
    "rule",
    [rule for rule in RULES if rule.bands],
    ids=[rule.name for rule in RULES if rule.bands],
)


@with_bands
@given(data=st.data())
def test_the_bands_follow_the_limits_that_a_surveyor_set(rule, data):
    """Any limits inside their ranges, even in an unusual order, and any value."""
    limits = tuple(
        replace(
            one,
            value=data.draw(
                st.floats(one.field.low, one.field.high).map(lambda value: round(value, 4)),
                one.name,
            ),
        )
        for one in rule.limit_set.limits
    )
    own = replace(rule.limit_set, limits=limits, edited=True)
    constants = {
        name: value for name, value in VALID[rule.name].items() if name != rule.deciding_input
    }
    try:
        bands = rule.bands_for(constants, own)
    except CannotJudge:
        return
    asked = rule.inputs[0]
    ends = [
        step.upto
        for step in bands.bands
        if step.upto is not None and asked.low <= step.upto <= asked.high and asked.kind == "number"
    ]
    anywhere = (
        st.integers(asked.low, asked.high)
        if asked.kind == "whole"
        else st.floats(asked.low, asked.high)
    )
    value = data.draw(
        st.one_of(st.sampled_from(ends), anywhere) if ends else anywhere, rule.deciding_input
    )
    try:
        judgement = rule.apply({**constants, rule.deciding_input: value}, own)
    except CannotJudge:
        return
    step = bands.band_of(value)
    assert (step.band, step.rating) == (judgement.band, judgement.rating)


@everyone
def test_a_shipped_limit_lies_inside_its_own_range(rule):
    """What is shipped could be typed in again."""
    for one in rule.limit_set.limits:
        assert one.field.low <= one.value <= one.field.high, one.name


@everyone
def test_a_limit_has_a_name_that_a_form_can_carry(rule):
    """Lower case, digits and underscores, and no two alike."""
    names = [one.name for one in rule.limit_set.limits]
    assert len(set(names)) == len(names)
    assert all(
        name.replace("_", "").isalnum() and name == name.lower() and " " not in name
        for name in names
    )


@everyone
def test_a_judgement_names_the_profile_it_used(rule):
    """Two reports with different limits can be told apart."""
    notes = rule.apply(VALID[rule.name]).notes
    assert any(note.startswith("Profile used: ") and rule.limit_set.title in note for note in notes)
