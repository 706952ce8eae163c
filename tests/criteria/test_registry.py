"""A walk over all criteria: none may lack what a reader of the report needs to check it."""

import inspect
from datetime import date
from pathlib import Path

import pytest

from inspector.criteria import registry
from inspector.criteria.judgement import KINDS, RATINGS, CannotJudge
from inspector.criteria.registry import CRITERIA, NoSuchCriterion, criterion, mark_table
from inspector.criteria.source import MARKS
from inspector.quantities import known_unit
from tests.criteria import promised_hull, promised_plant, promised_systems

# the names and inputs that checklist files rely on; an optional input carries a question mark
PROMISED = {
    "plate-thickness": "as_built measured member",
    "plate-remaining-life": "as_built built_year measured measured_year member previous? previous_year? horizon?",
    "coating-condition": "breakdown scale edges",
    "insulation-resistance": "resistance temperature insulation winding voltage",
    "polarization-index": "one_minute ten_minutes thermal_class",
    "thermographic-rise": "over_similar? over_ambient? load",
    "machine-vibration": "velocity group support",
    "engine-vibration": "velocity machine_class displacement? acceleration?",
    "cold-store-temperature": "temperature store",
    "refrigerant-status": "refrigerant installed charge?",
    "entry-atmosphere": "oxygen? carbon_dioxide? flammable? toxic?",
    "nox-tier": "built speed certificate installed? replacement? area?",
    "dp-equipment": "built class_claimed computers references heading motion wind ups",
    "imo-number": "number",
    "oil-water": "water service salt?",
    "supply-voltage": "voltage nominal",
    "supply-frequency": "frequency nominal",
    "harmonic-distortion": "distortion",
    "earth-fault": "resistance voltage",
}
# the range of every number, whole and date that has one; None for an open end
RANGES = {
    "plate-thickness": {"as_built": (5, 50), "measured": (0, 55)},
    "plate-remaining-life": {
        "as_built": (5, 50), "built_year": (1900, 2100), "measured": (0, 55), "measured_year": (1900, 2100),
        "previous": (0, 55), "previous_year": (1900, 2100), "horizon": (0, 60),
    },
    "coating-condition": {"breakdown": (0, 100), "scale": (0, 100), "edges": (0, 100)},
    "insulation-resistance": {"resistance": (0, 1_000_000), "temperature": (10, 85), "voltage": (24, 15_000)},
    "polarization-index": {"one_minute": (0.001, 1_000_000), "ten_minutes": (0, 1_000_000)},
    "thermographic-rise": {"over_similar": (-50, 500), "over_ambient": (-50, 500), "load": (0, 150)},
    "machine-vibration": {"velocity": (0, 500)},
    "engine-vibration": {"velocity": (0, 500), "displacement": (0, 50_000), "acceleration": (0, 5000)},
    "cold-store-temperature": {"temperature": (-60, 60)},
    "refrigerant-status": {"installed": (date(1930, 1, 1), None), "charge": (0, 10_000)},
    "entry-atmosphere": {
        "oxygen": (0, 100), "carbon_dioxide": (0, 100), "flammable": (0, 1000), "toxic": (0, 100_000),
    },
    "nox-tier": {"built": (date(1900, 1, 1), None), "speed": (10, 4000), "installed": (date(1900, 1, 1), None)},
    "dp-equipment": {
        "built": (date(1994, 7, 1), None),
        **dict.fromkeys(("computers", "references", "heading", "motion", "wind", "ups"), (0, 20)),
    },
    "imo-number": {},
    "oil-water": {"water": (0, 100)},
    "supply-voltage": {"voltage": (0, 20_000), "nominal": (100, 15_000)},
    "supply-frequency": {"frequency": (0, 120), "nominal": (50, 60)},
    "harmonic-distortion": {"distortion": (0, 100)},
    "earth-fault": {"resistance": (0, 1_000_000), "voltage": (12, 1000)},
}
PROMISED |= promised_hull.PROMISED
RANGES |= promised_hull.RANGES
PROMISED |= promised_systems.PROMISED
RANGES |= promised_systems.RANGES
PROMISED |= promised_plant.PROMISED
RANGES |= promised_plant.RANGES
everyone = pytest.mark.parametrize("rule", CRITERIA.values(), ids=list(CRITERIA))


def test_the_names_and_inputs_are_those_that_checklists_rely_on():
    """Every promised criterion exists with its inputs in order, and none besides."""
    found = {
        name: " ".join(asked.name + "?" * asked.optional for asked in rule.inputs) for name, rule in CRITERIA.items()
    }
    assert found == PROMISED


def test_no_name_stands_twice():
    """Two modules that use one name would hide one rule without a word."""
    names = [rule.name for module in registry._MODULES for rule in module.CRITERIA]
    assert sorted(set(names)) == sorted(names)


@everyone
def test_the_ranges_are_those_agreed(rule):
    """A range is part of the rule: widening one is a decision and shows here."""
    found = {asked.name: (asked.low, asked.high) for asked in rule.inputs if asked.low is not None}
    assert RANGES[rule.name] == found


@everyone
def test_a_criterion_tells_its_source_range_and_check(rule):
    """Title, source with edition and clause, range and how it was checked are all written."""
    for text in (rule.title, rule.source.title, rule.source.edition, rule.source.clause, rule.range_text, rule.checked):
        assert len(text) >= 3
    assert rule.source.mark in MARKS
    assert rule.range_text.endswith(".")
    assert rule.checked.endswith(".")


@everyone
def test_an_input_has_a_label_a_kind_and_where_it_is_a_number_a_unit_and_a_range(rule):
    """A number or a whole has both ends of its range, a number a known unit, a choice at least two choices."""
    for asked in rule.inputs:
        assert asked.label
        assert asked.kind in KINDS
        assert bool(asked.choices) == (asked.kind == "choice")
        if asked.kind == "number":
            assert known_unit(asked.unit)
        if asked.kind in ("number", "whole"):
            assert asked.low < asked.high


@everyone
def test_the_rule_takes_exactly_the_declared_inputs(rule):
    """The parameters of the function are the input names, and limits where it has a profile; an optional one defaults to None."""
    parameters = inspect.signature(rule.judge).parameters
    assert set(parameters) == {asked.name for asked in rule.inputs} | ({"limits"} if rule.profile else set())
    for asked in rule.inputs:
        default = parameters[asked.name].default
        assert default is (None if asked.optional else inspect.Parameter.empty)


@everyone
def test_the_docstring_names_every_input_unit_and_reference(rule):
    """The documentation of a rule cannot drift from its inputs."""
    told = inspect.getdoc(rule.judge)
    assert "Parameters" in told
    assert "References" in told
    for asked in rule.inputs:
        assert asked.name in told
        assert not asked.unit or f"[{asked.unit}" in told


@everyone
def test_valid_values_give_a_complete_judgement(rule, valid):
    """Every criterion judges its valid values, in a sentence, with the limits it used among the notes."""
    judgement = rule.apply(valid(rule.name))
    assert judgement.criterion == rule.name
    assert judgement.band
    assert judgement.rating in (*RATINGS, None)
    assert judgement.sentence.endswith(".")
    assert len(judgement.sentence) > 20
    assert any(note.startswith("Limits used: ") and judgement.source.title in note for note in judgement.notes)
    assert judgement.value is None or isinstance(judgement.value, int | float)
    assert all(len(note) > 10 for note in judgement.notes)


@everyone
def test_a_judgement_names_its_reading_and_its_limit(rule, valid):
    """Where a judgement carries a margin, it is the distance from value to limit, on either side."""
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
    """Just below the low end and just above the high end of every number or date, nothing is judged."""
    for asked in rule.inputs:
        if asked.kind not in ("number", "whole"):
            continue
        step = 1 if asked.kind == "whole" else 0.0005
        for beyond in (asked.low - step, asked.high + step):
            with pytest.raises(CannotJudge, match="where the rule ends") as caught:
                rule.apply({**valid(rule.name), asked.name: beyond})
            assert caught.value.input == asked.name


@everyone
def test_a_choice_outside_the_list_is_refused_with_the_list(rule, valid):
    """The sentence names what could have been chosen."""
    for asked in rule.inputs:
        if asked.kind == "choice":
            with pytest.raises(CannotJudge, match="must be one of") as caught:
                rule.apply({**valid(rule.name), asked.name: "purple"})
            assert asked.choices[0] in str(caught.value)


@everyone
def test_no_judgement_calls_anything_safe(rule, valid):
    """The word stands in no sentence, band or note of any criterion."""
    judgement = rule.apply(valid(rule.name))
    for text in (judgement.band, judgement.sentence, *judgement.notes):
        assert "safe" not in text.lower().replace("safety", "")


@everyone
def test_the_subject_of_a_criterion_has_a_test_file_of_its_own(rule):
    """Beside each module of criteria stands a file that tries its boundaries, and it names the criterion."""
    subject = rule.judge.__module__.rpartition(".")[2]
    assert f'"{rule.name}"' in (Path(__file__).parent / f"test_{subject}.py").read_text(encoding="utf-8")


@everyone
def test_a_criterion_is_held_against_the_outside_world(rule):
    """Some test in tests/published names it, so that none rests on its own arithmetic unseen."""
    texts = (Path(__file__).parent.parent / "published").glob("test_*.py")
    assert any(f'"{rule.name}"' in path.read_text(encoding="utf-8") for path in texts)


def test_the_readme_counts_the_criteria_by_mark():
    """The table in README.md is the one that `inspector criteria` prints at its end."""
    assert mark_table() in (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")


def test_a_criterion_is_found_by_its_name():
    """The registry hands out what it lists."""
    assert criterion("oil-water") is CRITERIA["oil-water"]


def test_an_unknown_name_is_answered_with_the_nearest():
    """A slip in a checklist is named together with what was probably meant."""
    with pytest.raises(NoSuchCriterion, match=r"did you mean plate-thickness") as caught:
        criterion("plate-thicknes")

    assert caught.value.nearest[0] == "plate-thickness"


def test_a_name_like_no_other_is_answered_with_the_list():
    """Where nothing is near, every name is told."""
    with pytest.raises(NoSuchCriterion, match="the names are plate-thickness"):
        criterion("zzzz")


def test_no_rule_reads_the_clock():
    """A day is always given, so that a judgement of today is the judgement of next year."""
    for path in Path(registry.__file__).parent.glob("*.py"):
        source = path.read_text(encoding="utf-8")
        assert ".today(" not in source, path.name
        assert ".now(" not in source, path.name
