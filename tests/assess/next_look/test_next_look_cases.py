"""Where a surveyor would look next (common practice, no source): recorded, then asked."""

from dataclasses import replace

from inspector.assess.next_look.advice import next_look
from inspector.assess.next_look.open_looks import open_looks
from tests.assess.verdict.a_case import GOOD, UNSEEN, Situation, all_of, assessed

ALL_FAILED = all_of("failed")
RUN_OPEN = all_of("good", but={"run": None, "smoke": None, "plate": None})
INSIDE_FAILED = all_of("good", but={"inside": "failed"})


def looks(found, minutes=60, **more):
    return [one.look.label for one in next_look(found, minutes, **more).advice]


def test_an_unwanted_system_asks_for_no_look(tmp_path):
    """Nothing was seen of it, and nobody needs to."""
    found = assessed(tmp_path, Situation(units=(UNSEEN,), need="unwanted"))

    answer = next_look(found, 60)

    assert ((), True) == (answer.advice, "could change" in answer.why)


def test_a_fixed_word_asks_for_prices_and_no_look(tmp_path):
    """All criticals failed: price both."""
    found = assessed(tmp_path, Situation(units=(ALL_FAILED,)))

    assert ["Unit 1: price the repair and a new one"] == looks(found)
    assert "only prices can decide" in next_look(found, 60).advice[0].sentence


def test_a_load_run_carries_what_runs_with_it(tmp_path):
    """All good but load run, smoke and plate: the run, and the smoke with it, come first."""
    found = assessed(tmp_path, Situation(units=(RUN_OPEN,)))

    (only,) = looks(found, 40)

    assert "Unit 1: Load run, and with it Smoke" == only
    assert "could turn Unit 1 from retain, so far to refurbish, at least" in (
        next_look(found, 40).advice[0].sentence
    )


def test_a_critical_look_on_each_sister_before_a_second_one(tmp_path):
    """One of three thrusters seen, 14 minutes: the inside of each of the others."""
    run_done = all_of("good", looks=("run",))
    situation = Situation("thrusters", units=(GOOD, run_done, run_done))

    assert ["Unit 2: Inside", "Unit 3: Inside"] == looks(assessed(tmp_path, situation), 14)


def test_required_steering_before_neutral_positioning_whichever_is_priced(tmp_path):
    """Need ranks before price."""
    steering = Situation("steering", units=(UNSEEN,))
    positioning = Situation(
        "positioning",
        units=(UNSEEN | {"name": "Positioning"},),
        need="neutral",
        lines=(("u1", "refurbish", 9000), ("u1", "replace", 90000)),
    )

    (only,) = looks(assessed(tmp_path, steering, positioning), 7)

    assert "Unit 1: Inside" == only


def test_too_dear_and_all_seen_asks_for_no_look(tmp_path):
    """The word is firm: nothing is left to learn."""
    lines = (("u1", "refurbish", 90), ("u1", "replace", 100))

    assert [] == looks(assessed(tmp_path, Situation(units=(INSIDE_FAILED,), lines=lines)))


def test_a_disputed_critical_look_is_settled(tmp_path):
    """Two surveyors differ: they look again together."""
    blind = (("sheet/steering/u1/inside", "rating", "poor"),)
    found = assessed(tmp_path, Situation("steering", units=(GOOD,)), blind=blind)

    (only,) = next_look(found, 60).advice

    assert "Unit 1: settle Inside" == only.look.label
    assert "could turn Unit 1 from refurbish, so far to retain, firm" in only.sentence


def test_every_sentence_says_what_was_tried(tmp_path):
    """Each look turns the word, makes it firm, or is said to do neither."""
    found = assessed(tmp_path, Situation(units=(UNSEEN,) * 20))

    sentences = [one.sentence for one in next_look(found, 600).advice]

    assert 40 < len(sentences)
    tried = ("could turn ", "could make ", "does not turn its word alone", "only prices")
    assert all(any(words in sentence for words in tried) for sentence in sentences)


def test_a_paper_that_informs_several_systems_is_worth_more(tmp_path):
    """The same look on the same unit, once with another system waiting for it."""
    found = assessed(
        tmp_path,
        Situation("sets", units=(UNSEEN,)),
        Situation("thrusters", units=(UNSEEN,)),
    )
    (sets, thrusters) = found.systems
    unit = sets.units[0]
    shared = tuple(
        replace(result, check=replace(result.check, also=("thrusters",)))
        if result.check.id == "hours"
        else result
        for result in unit.results
    )
    informing = replace(sets, units=(replace(unit, results=shared),))
    wider = replace(found, systems=(informing, thrusters))

    def worth(assessment):
        looks = open_looks(assessment, assessment.settings)
        return next(each.look.gain for each in looks if each.look.subject.endswith("u1/hours"))

    assert worth(found) < worth(wider)


def test_a_sighted_critical_look_that_asks_a_test_is_still_a_look(tmp_path):
    """The load run was only watched from the door: it is worth the minutes."""
    found = assessed(tmp_path, Situation(units=(all_of("good", depth="sighted"),)))

    assert any(label.startswith("Unit 1: Load run") for label in looks(found))
