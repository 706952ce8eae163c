"""Work lines against the word: what counts, what it comes to, and what the word speaks against."""

import pytest

from inspector.assess.work_cost import counted_lines, parts_priced_twice
from tests.assess.verdict.a_case import GOOD, UNSEEN, Situation, all_of, assessed

FAILED = all_of("good", but={"inside": "failed"})
BOTH = (("u1", "refurbish", 30), ("u1", "replace", 100))
DEAR = (("u1", "refurbish", 90), ("u1", "replace", 100))


def system(tmp_path, unit=GOOD, **known):
    (found,) = assessed(tmp_path, Situation(units=(unit,), **known)).systems
    return found


@pytest.mark.parametrize(
    ("unit", "known", "label", "likely"),
    [
        (FAILED, {"lines": BOTH}, "work on it", 30),
        (FAILED, {"lines": DEAR}, "taking out and replacing", 100),
        (GOOD, {"lines": BOTH}, "work beside it", 30),
        (GOOD, {"lines": (*BOTH, ("u1", "remove", 7)), "need": "unwanted"}, "taking it out", 7),
        (all_of("failed"), {"lines": BOTH[:1]}, "as far as priced", 30),
    ],
)
def test_what_counts_is_what_the_word_asks_for(tmp_path, unit, known, label, likely):
    """The sum beside a word is of the lines that go with it."""
    cost = system(tmp_path, unit, **known).whole.cost

    assert (label, likely) == (cost.label, cost.likely)


def test_nothing_priced_has_no_cost(tmp_path):
    """No line, no sum, and not a sum of nothing."""
    assert system(tmp_path).whole.cost is None


def test_what_goes_for_good_is_neither_repaired_nor_replaced(tmp_path):
    """Both prices are left out of the sums, and named."""
    found = system(tmp_path, need="unwanted", lines=BOTH)

    (twice,) = parts_priced_twice(found)
    assert ("", 130) == (twice.counts, twice.left_out_cost)
    assert [] == counted_lines(found)


def test_a_shared_price_of_units_of_which_some_are_replaced_counts_the_dearer(tmp_path):
    """Neither way is that of the whole system."""
    lines = (("all", "refurbish", 30), ("all", "replace", 100))
    gone = GOOD | {"facts": {"beyond_repair": "holed"}}
    (found,) = assessed(tmp_path, Situation(units=(GOOD, gone), lines=lines)).systems

    (twice,) = parts_priced_twice(found)
    assert "refurbish, firm (replace 1 of 2)" == found.whole.spoken
    assert ("replace", True) == (twice.counts, twice.is_the_dearer)


@pytest.mark.parametrize(
    ("unit", "act", "against"),
    [
        (GOOD, "replace", True),
        (GOOD, "remove", True),
        (GOOD, "refurbish", False),
        (FAILED, "remove", True),
        (FAILED, "replace", False),
        (GOOD | {"facts": {"decision": "remove", "need": "neutral"}}, "refurbish", True),
        (GOOD | {"facts": {"decision": "remove", "need": "neutral"}}, "replace", True),
        (GOOD | {"facts": {"decision": "remove", "need": "useful"}}, "replace", False),
        (GOOD | {"facts": {"decision": "remove"}}, "replace", False),
    ],
)
def test_a_line_that_the_word_speaks_against_is_named(tmp_path, unit, act, against):
    """The surveyor decides the word or takes the line out; nothing is left standing in silence."""
    found = system(tmp_path, unit, lines=(("u1", act, 10),))

    assert against == any("Unit 1" in sentence for sentence in found.against)


@pytest.mark.parametrize(
    ("decision", "unit_decision"), [("remove", "remove"), ("retain", "retain"), ("refurbish", "")]
)
def test_what_is_decided_of_the_whole_holds_for_its_units(tmp_path, decision, unit_decision):
    """That all goes, or all stays; that the system is refurbished does not say which unit."""
    situation = Situation(units=(GOOD, FAILED), facts={"decision": decision, "reason": "Why."})
    (found,) = assessed(tmp_path, situation).systems

    assert {unit_decision} == {unit.decision for unit in found.units}
    # What the rules propose stays beside it.
    assert "refurbish, at least (1 of 2)" == found.whole.proposal.spoken


@pytest.mark.parametrize(
    ("decision", "counts", "is_the_dearer"),
    [("", "replace", True), ("refurbish", "refurbish", False), ("remove", "replace", False)],
)
def test_what_is_decided_of_a_system_reaches_its_units(tmp_path, decision, counts, is_the_dearer):
    """A unit that nobody looked at has no word of its own, and follows what the whole has."""
    facts = {"decision": decision} if decision else {}
    found = system(tmp_path, UNSEEN, lines=BOTH, facts=facts)

    assert ("not looked at" == found.units[0].verdict) == (decision != "remove")
    (twice,) = parts_priced_twice(found)
    assert (counts, is_the_dearer) == (twice.counts, twice.is_the_dearer)
