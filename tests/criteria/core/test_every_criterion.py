"""A walk over all criteria: none may lack what a reader of the report needs to check it."""

import inspect
from pathlib import Path

import pytest

import inspector.criteria
from inspector.checklists.registry import CRITERIA, calculated_criteria
from inspector.criteria.core.judgement import CannotJudge
from inspector.criteria.core.source import MARKS
from inspector.values.field import KINDS
from inspector.values.units import known_unit
from inspector.values.vocabulary import RATINGS

CALCULATED = {rule.name: rule for rule in calculated_criteria()}
everyone = pytest.mark.parametrize("rule", CRITERIA.values(), ids=list(CRITERIA))
# What is declared as data has no function and no test file of its own: its worked examples are its
# test.
calculated = pytest.mark.parametrize("rule", CALCULATED.values(), ids=list(CALCULATED))


@everyone
def test_a_criterion_has_its_source_range_and_check(rule):
    """Title, source with edition and clause, range and how it was checked are all written."""
    for text in (
        rule.title,
        rule.source.title,
        rule.source.edition,
        rule.source.clause,
        rule.range_text,
        rule.checked,
    ):
        assert len(text) >= 3
    assert rule.source.mark in MARKS
    assert rule.range_text.endswith(".")
    assert rule.checked.endswith(".")


@everyone
def test_an_input_has_a_label_a_kind_and_where_it_is_a_number_a_unit_and_a_range(rule):
    """A number has a range and a known unit, a whole a range, a choice two choices or more."""
    for asked in rule.inputs:
        assert asked.label
        assert asked.kind in KINDS
        assert bool(asked.choices) == (asked.kind == "choice")
        if asked.kind == "number":
            assert known_unit(asked.unit)
        if asked.kind in ("number", "whole"):
            assert asked.low < asked.high


@calculated
def test_the_rule_takes_exactly_the_declared_inputs(rule):
    """The parameters of the function are the input names, and limits where it has some."""
    parameters = inspect.signature(rule.judge).parameters
    assert set(parameters) == {asked.name for asked in rule.inputs} | (
        {"limits"} if rule.limit_set else set()
    )
    for asked in rule.inputs:
        default = parameters[asked.name].default
        assert default is (None if asked.optional else inspect.Parameter.empty)


@calculated
def test_the_docstring_names_every_input_unit_and_reference(rule):
    """The documentation of a rule cannot drift from its inputs."""
    described = inspect.getdoc(rule.judge)
    assert "Parameters" in described
    assert "References" in described
    for asked in rule.inputs:
        assert asked.name in described
        assert not asked.unit or f"[{asked.unit}" in described


@everyone
def test_valid_values_give_a_complete_judgement(rule, valid):
    """Every criterion judges its valid values, in a sentence, with the limits it used."""
    judgement = rule.apply(valid(rule.name))
    assert judgement.criterion == rule.name
    assert judgement.band
    assert judgement.rating in (*RATINGS, None)
    assert judgement.sentence.endswith(".")
    assert len(judgement.sentence) > 20
    assert any(
        note.startswith("Limits used: ") and judgement.source.title in note
        for note in judgement.notes
    )
    assert judgement.value is None or isinstance(judgement.value, int | float)
    assert all(len(note) > 10 for note in judgement.notes)


@everyone
def test_a_judgement_names_its_reading_and_its_limit(rule, valid):
    """Where a judgement has a margin, it is the distance from value to limit, either side."""
    judgement = rule.apply(valid(rule.name))
    if judgement.margin is not None:
        assert abs(judgement.value - judgement.limit) == pytest.approx(abs(judgement.margin))


@everyone
def test_every_missing_value_is_refused_by_name(rule, valid):
    """A required input that is absent, None or blank is refused with its name and its label."""
    for asked in rule.inputs:
        if asked.optional:
            continue
        for nothing in (None, "", "  "):
            with pytest.raises(CannotJudge, match=f"'{asked.name}'.* is missing") as caught:
                rule.apply({**valid(rule.name), asked.name: nothing})
            assert (caught.value.criterion, caught.value.input) == (rule.name, asked.name)


@everyone
def test_an_unknown_value_is_refused(rule, valid):
    """A value under a name that the criterion does not ask for is never ignored."""
    with pytest.raises(CannotJudge, match="does not ask for 'colour'") as caught:
        rule.apply({**valid(rule.name), "colour": "red"})

    assert (caught.value.input, caught.value.received) == ("colour", "red")


@everyone
def test_no_criterion_judges_outside_its_range(rule, valid):
    """Just below and just above the range of every number, nothing is judged."""
    for asked in rule.inputs:
        if asked.kind not in ("number", "whole"):
            continue
        step = 1 if asked.kind == "whole" else 0.0005
        for beyond in (asked.low - step, asked.high + step):
            with pytest.raises(CannotJudge, match="is accepted") as caught:
                rule.apply({**valid(rule.name), asked.name: beyond})
            assert caught.value.input == asked.name


@everyone
def test_a_choice_outside_the_list_is_refused_with_the_list(rule, valid):
    """The sentence names what could have been chosen."""
    for asked in rule.inputs:
        if asked.kind == "choice":
            with pytest.raises(CannotJudge, match="is not one of") as caught:
                rule.apply({**valid(rule.name), asked.name: "purple"})
            sentence = str(caught.value)
            assert asked.choices[0] in sentence or f"the {len(asked.choices)} choices" in sentence
            assert len(sentence) < 500


@everyone
def test_no_judgement_calls_anything_safe(rule, valid):
    """The word is in no sentence, band or note of any criterion."""
    judgement = rule.apply(valid(rule.name))
    for text in (judgement.band, judgement.sentence, *judgement.notes):
        assert "safe" not in text.lower().replace("safety", "")


@calculated
def test_a_criterion_that_calculates_is_tried_in_the_tests_of_its_room(rule):
    """A file of tests in the folder of its room names it and tries its limits."""
    room = rule.judge.__module__.split(".")[-2]
    texts = (Path(__file__).parents[1] / room).glob("test_*.py")
    assert any(f'"{rule.name}"' in path.read_text(encoding="utf-8") for path in texts)


@everyone
def test_a_criterion_is_held_against_the_outside_world(rule):
    """Some test in tests/published names it, so that none rests on its own arithmetic unseen."""
    texts = (Path(__file__).parents[2] / "published").rglob("test_*.py")
    assert any(f'"{rule.name}"' in path.read_text(encoding="utf-8") for path in texts)


def test_no_rule_reads_the_clock():
    """A day is always given, so that a judgement of today is the judgement of next year."""
    for path in Path(inspector.criteria.__file__).parent.rglob("*.py"):
        source = path.read_text(encoding="utf-8")
        assert ".today(" not in source, path.name
        assert ".now(" not in source, path.name
