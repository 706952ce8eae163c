"""Each rule of a unit's word, a test named after it; the situations are recorded and assessed."""

import pytest

from inspector.assess.verdict.settings import Settings
from inspector.assess.verdict.unit_rules import RULES
from tests.assess.verdict.a_case import GOOD, UNSEEN, Situation, all_of, assessed, words

CERTAIN = all_of("good", but={"inside": "failed"})
LAW = {"law": "a ban of the flag"}
# 69 of 100 over what was seen, and up to 74 with what was not.
WORN = all_of("good", but={"plate": "failed", "hours": "failed", "smoke": "fair", "leaks": None})


def one(tmp_path, unit=GOOD, system="sets", **known):
    """The proposal for a single unit."""
    found = assessed(tmp_path, Situation(system, units=(unit,), **known))
    (part,) = found.systems[0].units
    return part.proposal


def priced(refurbish, replace):
    return {"lines": (("u1", "refurbish", refurbish), ("u1", "replace", replace))}


def test_not_wanted(tmp_path):
    """What the brief does not want goes, good or bad, seen or not."""
    found = one(tmp_path, UNSEEN, need="unwanted")

    assert ("not wanted", "remove, firm") == (found.rule, found.spoken)


def test_not_looked_at(tmp_path):
    """What nobody looked at has no word."""
    found = one(tmp_path, UNSEEN)

    assert ("not looked at", "not looked at") == (found.rule, found.spoken)


def test_law_named_counts_as_a_look(tmp_path):
    """A law named on the thing needs no other look to have a word."""
    found = one(tmp_path, UNSEEN, facts=LAW)

    assert "refurbish or remove: price both" == found.spoken


def test_beyond_repair(tmp_path):
    """The surveyor says so and why: remove, and replace what is needed."""
    found = one(tmp_path, facts={"beyond_repair": "the crankcase is holed"})

    assert ("beyond repair", "remove and replace, firm") == (found.rule, found.spoken)
    assert "the crankcase is holed" in found.reasons[0]
    assert "Beyond repair: the crankcase is holed." == found.sentence


def test_law_too_dear(tmp_path):
    """The way back costs over its share: remove and replace."""
    found = one(tmp_path, facts=LAW, **priced(61, 100))

    assert ("law, too dear", "remove and replace, firm") == (found.rule, found.spoken)


@pytest.mark.parametrize(("unit", "firmness"), [(GOOD, "firm"), (UNSEEN, "at least")])
def test_law_way_back_priced(tmp_path, unit, firmness):
    """Within its share it is brought within the law, with parts or without."""
    found = one(tmp_path, unit, facts=LAW | {"parts": "no longer made"}, **priced(60, 100))

    assert ("law, way back priced", f"refurbish, {firmness}") == (found.rule, found.spoken)


def test_law_no_parts(tmp_path):
    """A banned medium in a plant without parts: a new plant."""
    found = one(tmp_path, facts=LAW | {"parts": "no longer made"})

    assert ("law, no parts", "remove and replace, firm") == (found.rule, found.spoken)


def test_law_not_priced(tmp_path):
    """Only prices can say."""
    found = one(tmp_path, facts=LAW)

    assert ("law, not priced", "refurbish or remove: price both") == (found.rule, found.spoken)
    assert ("refurbish", "remove") == found.open_words


@pytest.mark.parametrize("prices", [{}, priced(1, 100)])
def test_not_worth_repair(tmp_path, prices):
    """Work is certain and the brief is neutral: it goes, at whatever price."""
    found = one(tmp_path, CERTAIN, need="neutral", **prices)

    assert ("not worth repair", "remove, firm") == (found.rule, found.spoken)


def test_too_dear(tmp_path):
    """Work is certain, both prices on its own scope, over its share."""
    found = one(tmp_path, CERTAIN, **priced(60.01, 100))

    assert ("too dear", "remove and replace, firm") == (found.rule, found.spoken)
    assert any("more than 60 %" in reason for reason in found.reasons)


@pytest.mark.parametrize("parts", ["", "made", "no longer made"])
def test_worth_repair(tmp_path, parts):
    """Priced and not too dear, parts or no parts: exactly the share is not too dear."""
    found = one(tmp_path, CERTAIN, facts={"parts": parts}, **priced(60, 100))

    assert ("worth repair", "refurbish, firm") == (found.rule, found.spoken)


def test_worth_repair_while_a_critical_look_is_open(tmp_path):
    """More may be found: at least."""
    unit = all_of("good", but={"inside": "failed", "run": None})

    assert "refurbish, at least" == one(tmp_path, unit, **priced(30, 100)).spoken


def test_not_priced_without_parts(tmp_path):
    """No parts and no price: price both."""
    found = one(tmp_path, CERTAIN, facts={"parts": "no longer made"})

    assert ("not priced", "refurbish or remove: price both") == (found.rule, found.spoken)


def test_not_priced_with_nothing_critical_in_order(tmp_path):
    """What fails in every critical look is a choice that only prices can make."""
    found = one(tmp_path, all_of("good", but={"inside": "failed", "run": "failed"}))

    assert ("not priced", "refurbish or remove: price both") == (found.rule, found.spoken)


def test_work_certain_by_a_critical_look(tmp_path):
    """Refurbish at least, and the failed look is the first reason."""
    found = one(tmp_path, CERTAIN)

    assert ("work certain", "refurbish, at least") == (found.rule, found.spoken)
    assert "Inside: failed." == found.reasons[0]


def test_work_certain_by_what_was_lost_already(tmp_path):
    """Even all good in the unseen would leave it below the level of retain."""
    found = one(tmp_path, all_of("poor", but={"inside": None, "run": None}))
    alike = all_of("fair", depth="sighted", but={"run": None})

    assert "work certain" == found.rule
    assert "work so far" == one(tmp_path / "more", alike).rule


@pytest.mark.parametrize(
    ("unit", "facts"),
    [
        (GOOD, {"life_years": "4"}),
        (GOOD, {"parts": "no longer made"}),
        (WORN, {}),
    ],
)
def test_not_worth_an_overhaul(tmp_path, unit, facts):
    """Due for work within the horizon, and refurbishing costs over its share: a new one."""
    found = one(tmp_path, unit, facts=facts, **priced(61, 100))

    assert ("not worth an overhaul", "remove and replace, firm") == (found.rule, found.spoken)
    assert "refurbish" == one(tmp_path / "cheap", unit, facts=facts, **priced(60, 100)).verdict


def test_worn(tmp_path):
    """Enough seen, worn, and the unseen could still lift it: refurbish."""
    found = one(tmp_path, WORN)

    assert ("worn", "refurbish, firm") == (found.rule, found.spoken)
    assert "Worn: Plate: failed." == found.sentence


def test_short_lived(tmp_path):
    """Good, and its life ends before the buyer's horizon of 15 years."""
    found = one(tmp_path, facts={"life_years": "14.9"})

    assert ("short-lived", "refurbish, firm") == (found.rule, found.spoken)
    assert "short of the buyer's horizon of 15 years" in found.reasons[0]


def test_no_parts(tmp_path):
    """Good and without parts: only a life beyond the horizon saves it."""
    without = {"parts": "no longer made"}

    assert "no parts" == one(tmp_path, facts=without).rule
    assert "sound" == one(tmp_path / "long", facts=without | {"life_years": "15"}).rule


def test_sound(tmp_path):
    """Every critical look at its depth, and enough of the weight good: it stays."""
    found = one(tmp_path, all_of("good", looks=("inside", "run")))

    assert ("sound", "retain, firm") == (found.rule, found.spoken)


def test_sound_with_small_work(tmp_path):
    """What failed beside it is named, and offered as a work line."""
    found = assessed(tmp_path, Situation(units=(all_of("good", but={"plate": "failed"}),)))
    system = found.systems[0]

    assert "retain, with work, firm" == system.whole.spoken
    assert "Plate: failed." == system.whole.proposal.reasons[0]
    assert [("plate", "refurbish")] == [(line.check, line.act) for line in system.offered]


@pytest.mark.parametrize(
    "unit",
    [
        all_of("poor", looks=("plate",)),
        all_of("failed", looks=("inside",), depth="reported"),
        UNSEEN | {"walked_past": "something"},
        all_of("good", looks=("plate",)) | {"walked_past": "something"},
    ],
)
def test_work_so_far(tmp_path, unit):
    """What was seen, said or passed speaks for work; nothing of it is certain."""
    found = one(tmp_path, unit)

    assert ("work so far", "refurbish, so far") == (found.rule, found.spoken)


def test_too_dear_so_far(tmp_path):
    """What speaks for work is not certain yet, but refurbishing would cost over its share."""
    found = one(tmp_path, UNSEEN | {"walked_past": "something"}, **priced(90, 100))

    assert ("too dear so far", "remove and replace, so far") == (found.rule, found.spoken)


@pytest.mark.parametrize(
    ("unit", "why"),
    [
        (all_of("good", looks=("plate",)), "Sound as far as seen; open: Inside; Load run."),
        (UNSEEN | {"walked_past": "nothing"}, "Walked past, nothing seen against it; open:"),
        (all_of("good", depth="reported"), "Sound by word and paper; open: Inside (only reported)"),
        (all_of("good", depth="sighted"), "Sound as far as seen; open: Load run (only sighted)."),
    ],
)
def test_sound_so_far(tmp_path, unit, why):
    """Something was seen, and it is sound; the sentence says what is open."""
    found = one(tmp_path, unit)

    assert ("sound so far", "retain, so far") == (found.rule, found.spoken)
    assert found.sentence.startswith(why)


def test_tested_counts_only_with_its_load(tmp_path):
    """A load run without the load written down counts as sighted."""
    run = "sheet/sets/u1/run"
    more = ((run, "rating", "good"), (run, "depth", "tested"))
    found = one(tmp_path, all_of("good", but={"run": None}), more=more)

    assert ("retain, so far", True) == (found.spoken, "only sighted" in found.sentence)


@pytest.mark.parametrize(
    "known",
    [
        {"unit": CERTAIN} | priced(90, 100),
        {"unit": all_of("failed")},
        {"unit": UNSEEN | {"walked_past": "something"}} | priced(90, 100),
        {"facts": {"life_years": "4"}} | priced(90, 100),
        {"facts": LAW},
        {"facts": LAW} | priced(90, 100),
        {"facts": LAW | {"parts": "no longer made"}},
        {"facts": {"beyond_repair": "her back is broken"}},
    ],
)
def test_decides_the_vessel(tmp_path, known):
    """A hull is never removed, whatever is found and whatever it costs, and no sentence says so."""
    found = one(tmp_path, system="hull", **known)

    assert ("refurbish", "decides the vessel") == (found.verdict, found.detail)
    assert "decides whether she is worth buying" in found.sentence
    for phrase in ("too dear", "new one", "remove", "replace"):
        assert phrase not in found.sentence


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_each_rule_has_a_test_named_after_it(rule):
    """No rule is in use that nobody has tried on a recorded situation."""
    named = "test_" + rule.name.replace(",", "").replace(" ", "_").replace("-", "_")

    assert any(name.startswith(named) for name in globals())


def test_a_hull_that_the_brief_does_not_want_is_still_judged(tmp_path):
    """Nobody converts a ship without one."""
    assert "retain, firm" == one(tmp_path, system="hull", need="unwanted").spoken


def test_the_settings_are_read_out_in_the_rule():
    """The text that a surveyor reads aloud carries the figures that were used."""
    texts = " ".join(rule.read(Settings(0.3, 80, 0.45)) for rule in RULES)

    assert all(figure in texts for figure in ("30 %", "80 of 100", "45 %"))
    assert "{" not in texts


def test_a_whole_vessel_s_words_are_of_its_units(tmp_path):
    """A system of one unit reads as that unit."""
    found = assessed(tmp_path, Situation(units=(CERTAIN,)))

    assert words(found.systems[0].whole) == words(found.systems[0].units[0])
