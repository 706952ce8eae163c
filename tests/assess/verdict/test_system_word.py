"""The word of a system from those of its units: each rule, and the counts and sentences."""

import pytest

from inspector.assess.verdict.system_sentence import counts_of, system_sentence
from inspector.assess.verdict.system_word import UnitWord, system_word
from inspector.assess.verdict.word import read_aloud

STAYS = UnitWord("Sound", "retain", "firm")
OPEN = UnitWord("Open", "retain", "so far", open_looks=("Inside", "Load run (at sea)"))
WORK = UnitWord("Worked on", "refurbish", "at least", sentence="Load run: failed.")
REPAIRED = UnitWord("Repaired", "refurbish", "firm")
DOUBT = UnitWord("Doubtful", "refurbish", "so far")
NEW = UnitWord("Dead", "remove", "firm", "and replace")
GONE = UnitWord("Towing gear", "remove", "firm", let_go=True)
PRICE = UnitWord("Costly", "refurbish or remove", "", "price both")
UNSEEN = UnitWord("Unseen", "not looked at", "")


@pytest.mark.parametrize(
    ("units", "spoken"),
    [
        ((STAYS, STAYS), "retain, firm"),
        ((STAYS, OPEN), "retain, so far"),
        ((STAYS, UNSEEN), "retain, so far"),
        ((STAYS, GONE), "retain, firm (Towing gear removed)"),
        ((GONE, GONE), "remove, firm"),
        ((NEW, NEW), "remove and replace, firm"),
        ((NEW, GONE), "remove and replace, firm"),
        ((STAYS, NEW), "refurbish, firm (replace 1 of 2)"),
        ((STAYS, REPAIRED), "refurbish, firm (1 of 2)"),
        ((STAYS, WORK), "refurbish, at least (1 of 2)"),
        ((OPEN, REPAIRED), "refurbish, at least (1 of 2)"),
        ((STAYS, DOUBT), "refurbish, so far (1 of 2)"),
        ((UNSEEN, DOUBT), "refurbish, so far (1 of 2)"),
        ((STAYS, PRICE), "refurbish, at least (1 of 2)"),
        ((PRICE, PRICE), "refurbish or remove: price both"),
        (
            (WORK, NEW, STAYS, GONE),
            "refurbish, at least (1 of 3, replace 1 of 3, Towing gear removed)",
        ),
        ((UNSEEN, UNSEEN), "not looked at"),
        ((UNSEEN, GONE), "not looked at (Towing gear removed)"),
        ((PRICE,), "refurbish or remove: price both"),
        ((), "not looked at"),
    ],
)
def test_the_word_of_a_system_follows_from_its_units(units, spoken):
    """What is let go leaves the count; any work makes it refurbished, and it says which."""
    word = system_word(units)

    assert spoken == read_aloud(word.verdict, word.firmness, word.detail)


def test_units_are_told_by_counts():
    """In place of one number: how many are sound, which need something, what is open."""
    units = (STAYS, STAYS, OPEN, OPEN, OPEN, WORK, NEW, GONE, UNSEEN)

    assert (
        "2 sound, 3 sound so far, Worked on needs work, Dead to be replaced, Towing gear let go, "
        "1 not looked at; 6 critical looks open."
    ) == counts_of(units)


def test_what_stays_with_a_job_to_do_is_counted_and_named():
    """A poor check beside the word is neither hidden by it nor in its way."""
    cracked = UnitWord("Decks", "retain", "firm", jobs=("Cracks at corners", "Rails"))
    units = (STAYS, cracked)

    assert "2 sound (1 with a job to do)." == counts_of(units)
    assert "All seen and sound; to put right: Cracks at corners; Rails." == system_sentence(
        units, system_word(units)
    )


def test_what_is_open_is_named_with_where_it_is_to_be_had():
    """The same look on several units is named once."""
    assert "All sound as far as seen; open: Inside; Load run (at sea)." == system_sentence(
        (OPEN, OPEN), system_word((OPEN, OPEN))
    )


def test_names_that_are_lists_themselves_do_not_run_together():
    """Suits, jackets and beacons are one unit."""
    units = tuple(
        UnitWord(name, "refurbish", "firm", sentence="Worn.")
        for name in ("Suits, jackets and beacons", "Rafts")
    )

    assert ("1 of 3 seen and sound. Suits, jackets and beacons; Rafts: Worn.") == system_sentence(
        (*units, STAYS), system_word((*units, STAYS))
    )


def test_a_single_unit_has_no_counts():
    """Its own figure and sentence say more."""
    assert ("", "Load run: failed.") == (
        counts_of((WORK,)),
        system_sentence((WORK,), system_word((WORK,))),
    )


def test_the_sentence_names_what_stays_what_is_worked_on_and_what_goes():
    """As a client reads it beside the word."""
    units = (STAYS, STAYS, WORK, GONE, UNSEEN)

    assert (
        "2 of 5 seen and sound. Worked on: Load run: failed. Removed: Towing gear. Not looked at: "
        "Unseen."
    ) == system_sentence(units, system_word(units))


def test_units_with_the_same_sentence_share_it():
    """A life typed for the whole is said once."""
    units = tuple(
        UnitWord(name, "refurbish", "firm", sentence="Its life ends before the horizon.")
        for name in ("Freezer", "Chill room", "Galley")
    )

    assert "All 3: Its life ends before the horizon." == system_sentence(units, system_word(units))
