"""What the list says of a candidate: the counts, what decides, the money, the next act."""

import pytest

from inspector.assess.model import Assessment
from inspector.assess.summary_sentences import next_act, summary_sentences
from tests.assess.verdict.a_case import GOOD, SYSTEMS, UNSEEN, Situation, all_of, assessed

FAILED = all_of("good", but={"inside": "failed"})
DECIDED = tuple((f"verdict/{system}/all", "decision", "retain") for system, _ in SYSTEMS)


def test_nothing_looked_at_is_one_sentence_and_a_visit_to_plan(tmp_path):
    """A candidate known from papers alone has no words to count."""
    found = assessed(tmp_path, Situation(units=(UNSEEN,)))
    assert ["Nothing is looked at yet."] == summary_sentences(found)
    assert ("prepare", "plan the visit") == (next_act(found).step, next_act(found).text)
    assert [] == summary_sentences(Assessment())


def test_the_ship_herself_decides_before_the_dearest_work(tmp_path):
    """A failed hull is named, although the sets cost more than anything else."""
    sets = Situation(units=(FAILED,), lines=(("u1", "refurbish", 90_000),))
    hull = Situation("hull", units=(FAILED,))
    counts, decides, money = summary_sentences(assessed(tmp_path, sets, hull))
    assert counts.startswith("2 refurbish")
    assert decides.startswith("What decides: Hull; ")
    assert "Inside" in decides
    assert "Work priced so far: likely 90 000." == money.replace("\u00a0", " ")


def test_without_a_fault_of_the_ship_the_dearest_work_is_named(tmp_path):
    """Of two systems with work the one whose priced lines come to more."""
    sets = Situation(units=(FAILED,), lines=(("u1", "refurbish", 90_000),))
    line = {"system": "steering", "unit": "u1", "act": "refurbish", "likely": "40000"}
    cheaper = tuple(("scope/s1", name, value) for name, value in line.items())
    steering = Situation("steering", units=(FAILED,), more=cheaper)
    _, dearest, money = summary_sentences(assessed(tmp_path, sets, steering))
    assert dearest.startswith("Dearest so far: Generating sets, refurbish")
    assert "130 000" in money.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("situation", "step"),
    [
        (Situation(units=(all_of("good", looks=("plate",)),) + (UNSEEN,) * 9), "walk"),
        (Situation(units=(GOOD,)), "decide"),
        (Situation(units=(GOOD,), more=DECIDED), "report"),
    ],
)
def test_the_next_act_follows_what_is_seen_and_decided(tmp_path, situation, step):
    """Barely seen is walked on, seen is decided, decided is reported."""
    assert step == next_act(assessed(tmp_path, situation)).step


def test_a_disagreement_is_settled_first(tmp_path):
    """Two unlike answers that nobody has settled."""
    blind = (("sheet/sets/u1/plate", "rating", "poor"),)
    act = next_act(assessed(tmp_path, Situation(units=(GOOD,)), blind=blind))
    assert ("decide", "settle 1 disagreement") == (act.step, act.text)
