"""The registry: every criterion once, by its name, with the nearest names for a slip."""

from collections import Counter
from pathlib import Path

import pytest

from inspector.checklists.criteria_files import shipped_criteria
from inspector.checklists.registry import (
    CRITERIA,
    NoSuchCriterion,
    calculated_criteria,
    criterion,
    mark_table,
)


def test_no_name_is_used_twice():
    """Two modules or files that use one name would hide one rule without a word."""
    counted = Counter(rule.name for rule in (*calculated_criteria(), *shipped_criteria()))
    assert [] == [name for name, count in counted.items() if count > 1]


def test_the_names_are_sorted():
    """A list of all criteria reads the same, wherever one of them is written."""
    assert sorted(CRITERIA) == list(CRITERIA)


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
    """Where nothing is near, every name is listed."""
    with pytest.raises(NoSuchCriterion, match="the names are alternator-vibration"):
        criterion("zzzz")
