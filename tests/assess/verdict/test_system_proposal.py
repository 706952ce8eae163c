"""Reasons and changes of a system of several units: what they share is said once."""

from tests.assess.verdict.a_case import GOOD, Situation, all_of, assessed

INSIDE_FAILED = all_of("good", but={"inside": "failed"})
OPEN = all_of("good", but={"inside": None})


def proposal(tmp_path, *units, **known):
    (system,) = assessed(tmp_path, Situation(units=units, **known)).systems
    return system.whole.proposal


def test_a_reason_that_units_share_is_said_once_with_their_names(tmp_path):
    """Four sound sets have one reason, not four."""
    assert (
        "All 4: Every critical check was seen at its depth, and nothing is poor."
        == (proposal(tmp_path, *(GOOD,) * 4).reasons[0])
    )


def test_units_with_something_to_put_right_come_before_the_sound_ones(tmp_path):
    """A poor plate is read before what is in order."""
    found = proposal(tmp_path, GOOD, all_of("good", but={"plate": "poor"}))

    assert "Unit 2: Plate: poor." == found.reasons[0]


def test_what_the_surveyor_decided_of_a_unit_is_its_reason(tmp_path):
    """Not what the rules would have said of it."""
    decided = GOOD | {"facts": {"decision": "remove", "reason": "In the way of the new house."}}

    assert "Unit 2: remove, by the surveyor: In the way of the new house." in (
        proposal(tmp_path, GOOD, decided).reasons
    )


def test_one_failed_look_is_enough_to_turn_the_system(tmp_path):
    """Whichever of the units it happens to."""
    found = [(one.fact, one.verdict) for one in proposal(tmp_path, OPEN, OPEN, OPEN).changes]

    assert ("One of the 3: Inside found failed", "refurbish, at least (1 of 3)") in found


def test_a_price_for_all_turns_the_system_only_for_all(tmp_path):
    """One of three priced too dear is another count; all of them are another word, said first."""
    found = proposal(tmp_path, *(INSIDE_FAILED,) * 3).changes

    assert ("All 3: Refurbishing priced at more than 60 % of a new one", "remove") == (
        found[0].fact,
        found[0].verdict.split(" ")[0],
    )


def test_the_sentence_names_what_is_open(tmp_path):
    """So that a client knows what to ask for."""
    found = proposal(tmp_path, OPEN, GOOD)

    assert "All sound as far as seen; open: Inside." == found.sentence
