"""Situations written down with the word an experienced conversion surveyor would give (common
practice, no source), before any rule was read; each is recorded and assessed as in the field."""

import pytest

from tests.assess.verdict.a_case import CRITICAL, GOOD, UNSEEN, Situation, all_of, assessed, words

FIRM, SO_FAR, AT_LEAST = "firm", "so far", "at least"
LOAD_RUN_FAILED = all_of("good", but={"run": "failed"})
INSIDE_FAILED = all_of("good", but={"inside": "failed"})
INSIDE_POOR = all_of("good", but={"inside": "poor"})
DEAD = all_of("failed")
FIRST_LOOK = all_of("good", looks=("plate", "hours", "leaks"))
CRITICAL_OPEN = all_of("good", but=dict.fromkeys(CRITICAL, None))
BOTH_WAYS = (("all", "refurbish", 30), ("all", "replace", 100))
RETAIN, SOUND_SO_FAR = ("retain", FIRM, ""), ("retain", SO_FAR, "")
AT_WORK, REMOVED = ("refurbish", AT_LEAST, ""), ("remove", FIRM, "")
REPLACED = ("remove", FIRM, "and replace")
PRICE = ("refurbish or remove", "", "price both")
BLIND_POOR = (("sheet/steering/u1/inside", "rating", "poor"),)

# case: situation, word of the system, words of its units, entries that another device made blind
CASES = {
    "1 four sets, all good under load": (
        Situation(units=(GOOD,) * 4, facts={"life_years": "15"}),
        RETAIN,
        [RETAIN] * 4,
    ),
    "2 set 4 fails its load run, unpriced": (
        Situation(units=(GOOD, GOOD, GOOD, LOAD_RUN_FAILED)),
        ("refurbish", AT_LEAST, "1 of 4"),
        [RETAIN, RETAIN, RETAIN, AT_WORK],
    ),
    "4 all fair, overhaul due at 15 % of new": (
        Situation(
            units=(all_of("fair"),) * 4,
            lines=(("all", "refurbish", 15), ("all", "replace", 100)),
        ),
        ("refurbish", FIRM, "4 of 4"),
        [("refurbish", FIRM, "")] * 4,
    ),
    "6 45 minutes, nothing critical seen": (
        Situation(units=(FIRST_LOOK,) * 4),
        SOUND_SO_FAR,
        [SOUND_SO_FAR] * 4,
    ),
    "8 good, of an older tier that may stay": (Situation(units=(GOOD,)), RETAIN, [RETAIN]),
    "9 law against the whole, way back 30 %": (
        Situation(
            units=(GOOD,) * 4,
            facts={"law": "no engine of this tier in the brief's waters"},
            lines=BOTH_WAYS,
        ),
        ("refurbish", FIRM, "4 of 4"),
        [("refurbish", FIRM, "")] * 4,
    ),
    "10 positioning unwanted, all good": (
        Situation("positioning", need="unwanted"),
        REMOVED,
        [REMOVED],
    ),
    "11 controllers poor, no parts, 30 %": (
        Situation(
            "positioning",
            units=(INSIDE_POOR,),
            need="useful",
            facts={"parts": "no longer made"},
            lines=BOTH_WAYS,
        ),
        ("refurbish", FIRM, ""),
        [("refurbish", FIRM, "")],
    ),
    "13 controllers failed, 90 %": (
        Situation(
            "positioning",
            units=(INSIDE_FAILED,),
            lines=(("all", "refurbish", 90), ("all", "replace", 100)),
        ),
        REPLACED,
        [REPLACED],
    ),
    "14 one of twenty tanks fails a critical look": (
        Situation(units=(*(GOOD,) * 19, INSIDE_FAILED), need=""),
        ("refurbish", AT_LEAST, "1 of 20"),
        [*[RETAIN] * 19, AT_WORK],
    ),
    "16 mud tanks unwanted, good": (
        Situation(units=(GOOD, GOOD), need="unwanted"),
        REMOVED,
        [REMOVED] * 2,
    ),
    "18 banned gas, change at 30 %": (
        Situation(units=(GOOD,), facts={"law": "the gas may not be topped up"}, lines=BOTH_WAYS),
        ("refurbish", FIRM, ""),
        [("refurbish", FIRM, "")],
    ),
    "19 banned gas, worn plant at 70 %, rooms good": (
        Situation(
            units=(
                all_of("fair") | {"name": "Plant", "facts": {"law": "the gas is banned"}},
                GOOD | {"name": "Freezer room"},
            ),
            lines=(("u1", "refurbish", 70), ("u1", "replace", 100)),
        ),
        ("refurbish", FIRM, "replace 1 of 2"),
        [REPLACED, RETAIN],
    ),
    "20 three thrusters, one dead, unpriced": (
        Situation("thrusters", units=(GOOD, DEAD, GOOD), need=""),
        ("refurbish", AT_LEAST, "1 of 3"),
        [RETAIN, PRICE, RETAIN],
    ),
    "21 water in one hub": (
        Situation("thrusters", units=(GOOD, INSIDE_FAILED, GOOD), need=""),
        ("refurbish", AT_LEAST, "1 of 3"),
        [RETAIN, AT_WORK, RETAIN],
    ),
    "22 one patch of the hull poor": (
        Situation("hull", units=(INSIDE_POOR, GOOD, GOOD), need=""),
        ("refurbish", AT_LEAST, "1 of 3"),
        [AT_WORK, RETAIN, RETAIN],
    ),
    "24 healthy, parts hard to get": (
        Situation(units=(GOOD,) * 3, facts={"parts": "hard to get"}),
        RETAIN,
        [RETAIN] * 3,
    ),
    "26 all good, two critical looks open": (
        Situation(units=(CRITICAL_OPEN,)),
        SOUND_SO_FAR,
        [SOUND_SO_FAR],
    ),
    "27 rudder play failed on one of two": (
        Situation("steering", units=(GOOD, INSIDE_FAILED)),
        ("refurbish", AT_LEAST, "1 of 2"),
        [RETAIN, AT_WORK],
    ),
    "28 two surveyors differ on rudder play": (
        Situation("steering", units=(GOOD, GOOD)),
        ("refurbish", SO_FAR, "1 of 2"),
        [("refurbish", SO_FAR, ""), RETAIN],
        BLIND_POOR,
    ),
    "29 services overdue, gear good": (
        Situation(units=(all_of("good", but={"service": "failed"}),) * 2),
        RETAIN,
        [RETAIN] * 2,
    ),
    "31 fixed gas banned, no parts": (
        Situation(
            units=(
                GOOD | {"facts": {"law": "the gas is banned", "parts": "no longer made"}},
                GOOD,
                GOOD,
            ),
        ),
        ("refurbish", FIRM, "replace 1 of 3"),
        [REPLACED, RETAIN, RETAIN],
    ),
    "34b crane bearing failed": (
        Situation(units=(GOOD, INSIDE_FAILED | {"name": "Crane"}, GOOD), need=""),
        ("refurbish", AT_LEAST, "1 of 3"),
        [RETAIN, AT_WORK, RETAIN],
    ),
    "35 towing gear unwanted and poor": (
        Situation(
            units=(
                GOOD,
                GOOD,
                all_of("poor") | {"name": "Towing gear", "facts": {"need": "unwanted"}},
            ),
        ),
        ("retain", FIRM, "Towing gear removed"),
        [RETAIN, RETAIN, REMOVED],
    ),
    "36 accommodation poor throughout, 80 %": (
        Situation(
            units=(all_of("poor"),) * 3,
            lines=(("all", "refurbish", 80), ("all", "replace", 100)),
        ),
        REPLACED,
        [REPLACED] * 3,
    ),
    "38 one box darkens several screens": (
        Situation(units=(INSIDE_POOR,), need="useful"),
        AT_WORK,
        [AT_WORK],
    ),
    "39 nothing seen": (
        Situation("thrusters", units=(UNSEEN,) * 3),
        ("not looked at", "", ""),
        [("not looked at", "", "")] * 3,
    ),
    "40 good by the crew's word only": (
        Situation(units=(all_of("good", depth="reported"),) * 4),
        SOUND_SO_FAR,
        [SOUND_SO_FAR] * 4,
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_the_word_is_the_one_a_surveyor_gives(tmp_path, case):
    """The system has the written word and firmness, and so has each of its units."""
    situation, of_system, of_units, *blind = CASES[case]

    found = assessed(tmp_path, situation, blind=blind[0] if blind else ())

    (system,) = found.systems
    assert of_units == [words(unit) for unit in system.units]
    assert of_system == words(system.whole)


@pytest.mark.parametrize("case", CASES)
def test_every_case_reads_well(tmp_path, case):
    """At most four reasons and three changes, each a sentence, and a sentence for the client."""
    situation, _, _, *blind = CASES[case]

    (system,) = assessed(tmp_path, situation, blind=blind[0] if blind else ()).systems

    for part in (system.whole, *system.units):
        proposal = part.proposal
        assert len(proposal.reasons) <= 4
        assert len(proposal.changes) <= 3
        assert all(reason.endswith(".") for reason in proposal.reasons)
        assert proposal.sentence.endswith(".")
        # No figure in place of what was found.
        assert "of 100" not in " ".join((proposal.sentence, *proposal.reasons))
        assert "None" not in f"{proposal}".replace("=None", "")


def overdue_class(system):
    fields = {"kind": "class", "issued": "2020-01-01", "expires": "2025-01-01"}
    return tuple((f"certificate/{system}", name, value) for name, value in fields.items())


def test_a_paper_is_beside_the_word_of_a_hull_that_nobody_saw(tmp_path):
    """39b: nothing seen, class overdue: not looked at, with the paper beside it."""
    situation = Situation("hull", units=(UNSEEN,) * 3, more=overdue_class("c"))

    (hull,) = assessed(tmp_path, situation).systems

    assert "not looked at" == hull.whole.verdict
    assert "class certificate" in hull.whole.papers[0].sentence


def test_services_are_beside_the_word_with_their_cost(tmp_path):
    """29: the services that are due are named with the unit, and their cost is known."""
    situation = Situation(
        units=(all_of("good", but={"service": "failed"}),), facts={"services_cost": "4000"}
    )

    (system,) = assessed(tmp_path, situation).systems

    assert ["Unit 1, Yearly service: failed."] == [one.sentence for one in system.whole.papers]
    assert 4000 == system.whole.facts.services_cost


def test_the_sentence_of_a_failed_set_names_it_and_what_failed(tmp_path):
    """2: three sets stay, set 4 and its load run are named."""
    (system,) = assessed(tmp_path, Situation(units=(GOOD, GOOD, GOOD, LOAD_RUN_FAILED))).systems

    assert system.whole.proposal.sentence.startswith("3 of 4 seen and sound. Unit 4: Load run")
    assert "3 sound, Unit 4 needs work." == system.whole.proposal.counts


def test_the_worst_is_named_first_critical_before_the_rest(tmp_path):
    """Critical, then failed before poor, then what else decides: life, parts, price."""
    unit = all_of("good", but={"plate": "failed", "leaks": "poor", "inside": "poor"})
    known = {
        "facts": {"life_years": "4"},
        "lines": (("u1", "refurbish", 30), ("u1", "replace", 99)),
    }
    (system,) = assessed(tmp_path, Situation(units=(unit,), **known)).systems

    assert [
        "Inside: poor.",
        "Plate: failed.",
        "Leaks: poor.",
        "Refurbishing at 30 is not more than 60 % of replacing at 99.",
    ] == [reason.replace("\u00a0", " ") for reason in system.whole.proposal.reasons]


def test_the_reason_in_a_dispute_says_that_the_worse_answer_counts(tmp_path):
    """28: good against poor: the reason names both answers, and settling it would change the
    word."""
    (system,) = assessed(
        tmp_path, Situation("steering", units=(GOOD, GOOD)), blind=BLIND_POOR
    ).systems
    unit = system.units[0].proposal

    assert "the worse answer counts until it is settled" in unit.reasons[0]
    assert ("Inside settled as good", "retain, firm") in [
        (change.fact, change.verdict) for change in unit.changes
    ]
