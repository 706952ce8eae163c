"""The rules as a decision table, one changed input per row; their order; and that every stated change really flips."""

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import settings as effort
from hypothesis import strategies as st

from inspector.assess.shapes import NEEDS, VERDICTS, Condition, Facts
from inspector.assess.verdict import RULES, Case, Settings, Unseen, fired, flips, propose

LAW = ("It may not stay.",)
ORDER = {"remove": 0, "refurbish": 1, "retain": 2}


def at(points, coverage=1.0, low=None, high=None):
    return Condition(points, points if low is None else low, points if high is None else high, coverage, 9, 10)


GOOD, WORN, WRECK = at(85.0), at(50.0), at(20.0)


@pytest.mark.parametrize(("verdict", "rule", "facts", "condition"), [
    ("retain", "good", Facts(), GOOD),
    ("retain", "good", Facts(), at(70.0)),
    ("refurbish", "worn", Facts(), at(69.9)),
    ("refurbish", "worn", Facts(), at(25.0)),
    ("remove", "beyond repair", Facts(), at(24.9)),
    ("refurbish", "worn", Facts(refurbish_cost=60, replace_cost=100), WRECK),
    ("remove", "too dear", Facts(refurbish_cost=60.01, replace_cost=100), WRECK),
    ("remove", "too dear", Facts(refurbish_cost=61, replace_cost=100), WORN),
    ("refurbish", "worn", Facts(refurbish_cost=60, replace_cost=100), WORN),
    ("retain", "good", Facts(refurbish_cost=90, replace_cost=100), GOOD),
    ("remove", "not wanted", Facts(need="unwanted"), GOOD),
    ("refurbish", "law", Facts(law=LAW), GOOD),
    ("remove", "law, no way back", Facts(law=LAW, parts="no longer made"), GOOD),
    ("remove", "law, no way back", Facts(law=LAW, refurbish_cost=61, replace_cost=100), GOOD),
    ("refurbish", "law", Facts(law=LAW), at(None, 0.0, 0, 100)),
    ("remove", "no parts", Facts(parts="no longer made"), WORN),
    ("remove", "no parts", Facts(parts="no longer made"), GOOD),
    ("retain", "good", Facts(parts="no longer made", life_years=12, horizon=10), GOOD),
    ("retain", "good", Facts(parts="hard to get"), GOOD),
    ("refurbish", "short-lived", Facts(life_years=9.9, horizon=10), GOOD),
    ("retain", "good", Facts(life_years=10, horizon=10), GOOD),
    ("refurbish", "danger open", Facts(danger=("Live parts open",)), GOOD),
    ("undecided", "too little seen", Facts(), at(85.0, 0.59, 50, 90)),
    ("retain", "good", Facts(), at(85.0, 0.6, 50, 90)),
    ("remove", "beyond repair", Facts(), at(10.0, 0.3, 5, 24)),
    ("undecided", "too little seen", Facts(), at(None, 0.0, 0, 100)),
    ("undecided", "too little seen", Facts(units=("remove", "undecided")), at(24.0, 0.3, 5, 24)),
    ("refurbish", "worn", Facts(units=("remove", "retain")), WRECK),
    ("remove", "beyond repair", Facts(units=("remove", "remove")), WRECK),
    ("undecided", "nothing applies", Facts(), Condition(None, 0, 100, 0, 0, 0)),
])
def test_each_rule_gives_its_verdict(verdict, rule, facts, condition):
    """One row, one case: the verdict and the rule that gave it."""
    proposal = propose(facts, condition)

    assert (verdict, rule) == (proposal.verdict, proposal.rule)


def test_what_looks_good_stays_undecided_while_a_critical_check_is_unseen():
    """An unseen critical check withholds retain and is named, unless the settings say otherwise."""
    unseen = (Unseen("Bow: noise", 5), Unseen("Bow: oil", 3, True))

    proposal = propose(Facts(), GOOD, unseen)

    assert ("undecided", ("Bow: oil",)) == (proposal.verdict, proposal.deciding)
    assert propose(Facts(), GOOD, unseen, Settings(critical_seen=False)).verdict == "retain"


def test_seeing_the_critical_checks_is_told_as_a_change():
    """One or several critical checks not seen: seeing them all, with the condition as it is, would retain."""
    one, two = (Unseen("Bow: oil", 3, True),), (Unseen("Bow: oil", 3, True), Unseen("Aft: oil", 3, True))

    assert "Seeing the critical check not yet seen, with the condition as it is now" in [change.fact for change in propose(Facts(), GOOD, one).changes]
    assert "Seeing the 2 critical checks not yet seen, with the condition as it is now" in [change.fact for change in propose(Facts(), GOOD, two).changes]


def test_undecided_names_the_heaviest_checks_up_to_the_asked_coverage():
    """Half of 20 weights seen: the next ten per cent are named by weight, no more."""
    unseen = (Unseen("a", 1), Unseen("b", 4), Unseen("c", 2), Unseen("d", 3))

    assert propose(Facts(), at(80.0, 0.5, 40, 90), unseen).deciding == ("b",)
    assert propose(Facts(), at(80.0, 0.5, 40, 90), unseen, Settings(coverage=0.8)).deciding == ("b", "d")


def test_a_decided_verdict_names_no_deciding_checks():
    """Where the rules decide, there is nothing to go back for."""
    assert propose(Facts(need="unwanted"), GOOD, (Unseen("a", 5, True),)).deciding == ()


def test_settings_are_read_out_in_the_rule():
    """The text that a surveyor reads aloud carries the figures that were used."""
    assert "80 of 100" in propose(Facts(), WORN, (), Settings(retain_from=80)).rule_text
    assert "45 %" in propose(Facts(refurbish_cost=50, replace_cost=100), WORN, (), Settings(cost_share=0.45)).rule_text


def test_the_reasons_tell_law_danger_cap_and_cost():
    """Every fact that the rules know is said in one sentence."""
    capped = Condition(59.0, 59.0, 59.0, 1.0, 3, 3, ("Water in the oil",))

    said = " ".join(propose(Facts("required", LAW, 5, 10, "hard to get", 30, 100, danger=("Live parts",)), capped).reasons)

    for part in ("calls it required", "may not stay", "Live parts", "59 of 100", "Water in the oil", "short of", "hard to get", "not more than 60 %"):
        assert part in said


def test_a_condition_is_never_rounded_up_to_a_level_it_missed():
    """69.99 of 100 is shown as 69, since the rule asks for 70."""
    assert "69 of 100" in " ".join(propose(Facts(), at(69.99)).reasons)


def test_the_cost_limit_is_told_to_the_hundredth():
    """With replacing at 333.33, refurbishing becomes too dear from 200.00: a share of exactly 199.998."""
    changes = propose(Facts(refurbish_cost=100, replace_cost=333.33), WORN).changes

    assert "Refurbishing at 200 or more" in [change.fact for change in changes if change.verdict == "remove"]


@pytest.mark.parametrize(("fact", "verdict", "facts", "condition"), [
    ("The condition reaching 70 of 100", "retain", Facts(), WORN),
    ("The condition reaching 70 of 100, once its cap is lifted", "retain", Facts(), replace(at(59.0), capped_by=("Oil",))),
    ("The condition falling below 70 of 100", "refurbish", Facts(), GOOD),
    ("Parts that are no longer made", "remove", Facts(), GOOD),
    ("A brief that calls it unwanted", "remove", Facts(), GOOD),
    ("A brief that calls it required, useful or neutral", "retain", Facts(need="unwanted"), GOOD),
    ("A remaining life of less than 10 years", "refurbish", Facts(horizon=10), GOOD),
    ("A horizon of 7.3 years or less", "retain", Facts(life_years=7.349, horizon=10), GOOD),
    ("A ruling by flag or class that it may stay as it is", "retain", Facts(law=LAW), GOOD),
    ("The danger put right", "retain", Facts(danger=("x",)), GOOD),
    ("60 % of the weight seen, with the condition as it is now", "retain", Facts(), at(85.0, 0.3, 20, 90)),
    ("Refurbishing at 60 or less", "refurbish", Facts(replace_cost=100), WRECK),
    ("Replacing at 100 or more", "refurbish", Facts(refurbish_cost=60), WRECK),
])
def test_the_nearest_change_is_told(fact, verdict, facts, condition):
    """A single fact that would flip the verdict stands among the changes, with the verdict it gives."""
    assert (fact, verdict) in [(one.fact, one.verdict) for one in propose(facts, condition).changes]


def test_nothing_is_claimed_where_no_single_fact_flips():
    """What is unwanted goes at any condition, life, parts or cost: only the brief could change that."""
    changes = propose(Facts("unwanted", LAW, 3, 10, "no longer made", 90, 100), WRECK).changes

    assert all(change.fact.startswith("A brief") for change in changes)


money = st.none() | st.integers(0, 10**9).map(lambda cents: cents / 100)
years = st.none() | st.floats(0, 60)
facts_of_any_kind = st.builds(
    Facts, need=st.sampled_from(NEEDS), law=st.sampled_from(((), LAW)), life_years=years, horizon=years,
    parts=st.sampled_from(("", "made", "hard to get", "no longer made")), refurbish_cost=money, replace_cost=money, danger=st.sampled_from(((), ("x",))),
    units=st.lists(st.sampled_from(VERDICTS), max_size=3).map(tuple),
    life_refurbished=st.none() | st.floats(1, 40), life_new=st.none() | st.floats(1, 40), yearly_refurbished=money, yearly_new=money,
)


@st.composite
def conditions(draw, least=0.0):
    low, points, high = sorted(draw(st.tuples(*[st.floats(0, 100)] * 3)))
    return Condition(points, low, high, draw(st.floats(least, 1)), 3, 5)


unseen_of_any_kind = st.lists(st.builds(Unseen, st.just("u"), st.floats(1, 5), st.booleans()), max_size=3).map(tuple)


@given(facts_of_any_kind, conditions(), unseen_of_any_kind)
@effort(max_examples=400, deadline=None)
def test_every_stated_change_flips_the_verdict_to_what_it_says(facts, condition, unseen):
    """Each flip's varied case differs in one input only and, put through the rules again, gives the stated other verdict."""
    case = Case(facts, condition, unseen)

    for flip in flips(case):
        assert flip.verdict == fired(flip.case).verdict != fired(case).verdict
        assert 1 == _differences(case, flip.case)


def _differences(one, other):
    facts = sum(getattr(one.facts, name) != getattr(other.facts, name) for name in vars(one.facts))
    return facts + (one.condition != other.condition) + (one.unseen != other.unseen) + (one.settings != other.settings)


@given(facts_of_any_kind, conditions())
@effort(max_examples=300, deadline=None)
def test_the_words_of_a_change_are_true_by_themselves(facts, condition):
    """A number read out of the sentence and put into the input flips; one hundredth before the stated cost does not."""
    case = Case(facts, condition)
    now = fired(case).verdict
    for flip in flips(case):
        found = re.fullmatch(r"(Refurbishing|Replacing) at (.+) or (more|less)", flip.fact)
        if found:
            field = "replace_cost" if found[1] == "Replacing" else "refurbish_cost"
            cents = round(float(found[2].replace("\u00a0", "")) * 100)
            before = cents - 1 if found[3] == "more" else cents + 1
            assert fired(replace(case, facts=replace(facts, **{field: cents / 100}))).verdict == flip.verdict
            assert fired(replace(case, facts=replace(facts, **{field: before / 100}))).verdict == now
        found = re.fullmatch(r"A (life after refurbishing|life of the new one|discount rate) of (\S+) (?:years|%) or (more|less)", flip.fact)
        if found:
            nearer = float(found[2]) + (-0.1 if found[3] == "more" else 0.1)
            field = {"life after refurbishing": "life_refurbished", "life of the new one": "life_new"}.get(found[1])
            def with_it(value, field=field):
                return replace(case, facts=replace(facts, **{field: value})) if field else replace(case, settings=Settings(discount_rate=value / 100))
            typed = getattr(facts, field) if field else 8
            assert fired(with_it(float(found[2]))).verdict == flip.verdict
            # one tenth nearer nothing has flipped yet
            assert (nearer > typed) != (found[3] == "more") or fired(with_it(nearer)).verdict == now
        found = re.fullmatch(r"A (remaining life|horizon) of (?:(more than|less than) )?(\S+) years.*", flip.fact)
        if found:
            step = {"more than": 1e-6, "less than": -1e-6, None: 0}[found[2]]
            field = "horizon" if found[1] == "horizon" else "life_years"
            assert fired(replace(case, facts=replace(facts, **{field: float(found[3]) + step}))).verdict == flip.verdict


@given(facts_of_any_kind, conditions(least=0.6), st.floats(0, 100))
def test_a_better_condition_never_moves_towards_removal(facts, condition, more):
    """With enough seen, more points never make a verdict worse."""
    better = replace(condition, points=min(100.0, condition.points + more), high=100.0)

    assert ORDER[propose(facts, condition).verdict] <= ORDER[propose(facts, better).verdict]


@given(facts_of_any_kind, conditions(), unseen_of_any_kind)
@effort(deadline=None)
def test_a_proposal_is_complete_and_the_same_each_time(facts, condition, unseen):
    """Whatever the facts, a known verdict of a known rule comes back with reasons, and twice the same."""
    proposal = propose(facts, condition, unseen)

    assert proposal == propose(facts, condition, unseen)
    assert proposal.verdict in VERDICTS
    assert proposal.rule in {rule.name for rule in RULES}
    assert all(reason.endswith(".") for reason in proposal.reasons)


def test_the_last_rule_always_applies():
    """No case can fall through the list."""
    assert RULES[-1].applies(Case(Facts(), GOOD))
