"""What can be had now, from what a look needs and the state of the vessel: common practice."""

import pytest

from inspector.checklists.attainable import (
    asked_of_crew,
    reason_against,
    reason_against_check,
    reasons_against,
)
from inspector.checklists.loader import read_library
from inspector.places import shipped
from inspector.values.vocabulary import (
    ASKED_OF_CREW,
    BERTHS,
    LOOK_NEEDS,
    NOT_RUN,
    NOT_SEEN_REASONS,
    VESSEL_STATES,
)

IN_SERVICE, WARM, COLD, DEAD = VESSEL_STATES


@pytest.mark.parametrize("needs", LOOK_NEEDS)
def test_what_is_not_known_rules_nothing_out(needs):
    """Nobody is told what cannot be had before somebody said how she was met."""
    assert "" == reason_against(needs, "", "")


@pytest.mark.parametrize("needs", ["paper", "sight", "hand", "laboratory"])
@pytest.mark.parametrize("state", VESSEL_STATES)
@pytest.mark.parametrize("berth", BERTHS)
def test_papers_eyes_hands_and_samples_can_always_be_had(needs, state, berth):
    """A dead ship in dock still has plates to look at, and oil to draw."""
    assert "" == reason_against(needs, state, berth)


@pytest.mark.parametrize(
    ("needs", "state", "berth", "reason"),
    [
        ("power", IN_SERVICE, "in dock", ""),
        ("power", WARM, "alongside", ""),
        ("power", COLD, "alongside", "not run"),
        ("power", DEAD, "alongside", "not run"),
        ("running", IN_SERVICE, "alongside", ""),
        ("running", IN_SERVICE, "in dock", "not run"),
        ("running", WARM, "alongside", "not run"),
        ("sea", IN_SERVICE, "sea trial", ""),
        ("sea", IN_SERVICE, "alongside", "not run"),
        ("sea", COLD, "sea trial", "not run"),
        ("dock", IN_SERVICE, "in dock", ""),
        ("dock", DEAD, "in dock", ""),
        ("dock", IN_SERVICE, "alongside", "no access"),
    ],
)
def test_a_need_is_refused_with_its_reason(needs, state, berth, reason):
    """What cannot run was not run; a bottom under water is no access."""
    assert reason == reason_against(needs, state, berth)


def test_less_of_a_vessel_never_gives_more_looks():
    """From in service to dead, what could not be had does not come back."""
    for berth in BERTHS:
        for needs in LOOK_NEEDS:
            had = [not reason_against(needs, state, berth) for state in VESSEL_STATES]
            assert had == sorted(had, reverse=True), (needs, berth)


def test_a_page_receives_every_answer():
    """The table that the browser gets says what the function says, and only known reasons."""
    table = reasons_against()

    for state in ("", *VESSEL_STATES):
        for berth in ("", *BERTHS):
            for needs in LOOK_NEEDS:
                found = table[state][berth].get(needs, "")
                assert reason_against(needs, state, berth) == found
                assert found in ("", *NOT_SEEN_REASONS)


@pytest.fixture(scope="module")
def checks():
    """ "<system>/<check>" -> the shipped check."""
    library = read_library(shipped("checklists"))
    return {
        f"{system.id}/{check.id}": check
        for system in library.systems.values()
        for check in system.checks
    }


@pytest.mark.parametrize(
    ("name", "asked"),
    [
        ("spares-and-papers/class-status", "papers"),
        ("tanks/coating-inside", "tanks"),
        ("switchboards/board-inside", "panels"),
        ("switchboards/sharing", "running"),
        ("hull/fairness", ""),
    ],
)
def test_a_check_asks_one_thing_of_the_crew(checks, name, asked):
    """What they show, open or run; a look from the quay asks nothing."""
    assert asked == asked_of_crew(checks[name])


@pytest.mark.parametrize("asked", ASKED_OF_CREW)
def test_what_the_crew_will_not_do_cannot_be_had(checks, asked):
    """With the reason of that question, and only for the checks that ask it."""
    found = {
        name: reason_against_check(check, {asked: "no"})
        for name, check in checks.items()
        if asked_of_crew(check) == asked
    }
    others = [check for check in checks.values() if asked_of_crew(check) != asked]

    assert found
    assert {ASKED_OF_CREW[asked][1]} == set(found.values())
    assert {""} == {reason_against_check(check, {asked: "no"}) for check in others}
    assert ASKED_OF_CREW[asked][1] in NOT_SEEN_REASONS


def test_a_promise_of_the_crew_is_worth_more_than_the_lay_up(checks):
    """They run it for us; in dock there is still no water to cool it."""
    sharing = checks["switchboards/sharing"]

    assert "" == reason_against_check(sharing, {"state": COLD, "running": "yes"})
    assert NOT_RUN == reason_against_check(sharing, {"berth": "in dock", "running": "yes"})
