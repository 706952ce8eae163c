"""Every shipped look says what it needs and what proves it, warns where it acts, and asks nothing
twice.
"""

import itertools
import re
import tomllib
from pathlib import Path

import pytest

from inspector.checklists.loader import read_library
from inspector.places import shipped
from tests.checklists.reading_ease import FLOOR, reading_ease

IDS_BEFORE = Path(__file__).parent / "older" / "ids.txt"
ACT = re.compile(
    r"\b(starts?|runs?|opens?(?! (deck|water|sea))|lifts?|lowers?|climbs?|turns?|tests?"
    r"|transfers?|discharges?)\b",
    re.IGNORECASE,
)
# A glance may find a critical check poor or failed; these words would call it good.
GOOD = re.compile(r"\b(good|sound|fine|healthy|all right|in order|as new|nothing wrong)\b", re.I)
# Checks of older checklists that are asked no more, since no answer to them decides a purchase.
DROPPED = {
    "reefers/defrost": "a trial of it spoils the one temperature that is measured",
    "reefers/recovery": "the same",
    "reefers/lamps-and-shelves": "seen in passing",
    "reefers/condenser": "its pressures are read with those of the plant",
    "environment/treatment-sample": "a laboratory's, and the treatment goes with the plant",
    "environment/garbage-book": "the last owner's waste",
    "spares-and-papers/lubricants": "bought anew",
    "spares-and-papers/safety-management": "the last operator's own",
}
# Pairs that ask the same of unlike machines, each of which is priced by itself.
UNLIKE_MACHINES = {
    frozenset(pair.split())
    for pair in (
        "propulsion/propeller thrusters/tunnel-outside",
        "propulsion/emission-certificate power-generation/set-emission",
        "propulsion/cold-start power-generation/set-start",
        "thrusters/motor-insulation power-generation/alternator-insulation",
        "propulsion/motor-insulation thrusters/motor-insulation",
        "propulsion/azimuth-oil thrusters/hub-oil",
        "propulsion/azimuth-plate thrusters/plate",
        "propulsion/azimuth-overhaul thrusters/overhaul-reports",
        "propulsion/azimuth-room thrusters/hull-seal",
        "propulsion/load-run propulsion/motor-load",
        "propulsion/engine-vibration power-generation/set-vibration",
        "propulsion/crankcase-pressure power-generation/set-blow-by",
        "propulsion/turbocharger power-generation/set-turbocharger",
        "propulsion/overhaul-reports power-generation/set-overhaul",
        "propulsion/oil-mist power-generation/set-oil-mist",
        "reefers/refrigerant accommodation/gas",
        "hull/spot-gauging tanks/wall-gauging",
    )
}
# Words that any two questions share.
COMMON = frozenset(
    re.findall(
        "[a-z]+",
        "a an the and or of to in on at for with from by is are be it its as what which who when "
        "where how ask look write no not one each whether than that this you your into out up "
        "only also if any",
    )
)
MOST_ALIKE = 0.4


@pytest.fixture(scope="module")
def library():
    return read_library(shipped("checklists"), check_criteria=True)


@pytest.fixture(scope="module")
def checks(library):
    """ "<system>/<check>" -> the check."""
    return {
        f"{system.id}/{check.id}": check
        for system in library.systems.values()
        for check in system.checks
    }


def test_every_check_says_what_it_needs_and_what_proves_it(library):
    """Needs, proof and minutes are written in the file, not left to the defaults."""
    lacking = [
        (system, check["id"], key)
        for system in library.systems
        for check in tomllib.loads(
            (shipped("checklists") / f"{system}.toml").read_text(encoding="utf-8")
        )["check"]
        for key in ("needs", "proof", "minutes")
        if key not in check
    ]

    assert [] == lacking


def test_needs_and_proof_agree(checks):
    """Papers alone prove nothing by a trial, and what must run is not proved by being told."""
    assert [] == [
        name for name, check in checks.items() if check.needs == "paper" and check.proof == "tested"
    ]
    assert [] == [
        name
        for name, check in checks.items()
        if check.needs in ("running", "sea") and check.proof == "reported"
    ]


def test_what_is_read_from_scans_needs_nothing_of_her(checks):
    """What is done before the visit needs no power and nothing that runs; an eye may confirm it."""
    demanding = ("hand", "power", "running", "sea", "dock")
    assert [] == [name for name, check in checks.items() if check.scan and check.needs in demanding]


def test_passing_by_tells_something_of_many_checks(checks):
    """At least two hundred checks have a glance, of seconds, that names what makes one stop."""
    glances = [check.glance for check in checks.values() if check.glance]

    assert len(glances) >= 200
    assert all(glance.seconds <= 180 for glance in glances)


def test_every_critical_check_tells_something_in_passing(checks):
    """Whoever has minutes only still learns something of each check that decides alone."""
    assert [] == [name for name, check in checks.items() if check.critical and not check.glance]


def test_no_glance_calls_a_critical_check_good(checks):
    """A glance may say poor or failed of a critical check, never good."""
    assert [] == [
        name
        for name, check in checks.items()
        if check.critical and check.glance and GOOD.search(check.glance.bad)
    ]


def test_every_act_has_its_caution_or_a_reason(library, checks):
    """Whoever starts, opens, lifts or transfers is warned, or the text says why nobody need be."""
    bare = []
    for name, check in checks.items():
        trial = library.trials.get(check.together)
        warned = check.cautions or check.harmless or (trial and trial.cautions)
        glance = check.glance.look if check.glance else ""
        if ACT.search(f"{check.ask} {check.look} {glance}") and not warned:
            bare.append(name)

    assert [] == bare


def test_every_trial_is_used(library, checks):
    """Each trial has checks that are read off in it."""
    used = {check.together for check in checks.values() if check.together}

    assert set() == set(library.trials) - used


def words(check):
    text = f"{check.title} {check.ask} {check.look}".casefold()
    return frozenset(re.findall(r"[a-z]+", text)) - COMMON


def test_nothing_is_asked_twice(checks):
    """No two checks of any two sheets share most of their words, but for unlike machines."""
    asked = {name: words(check) for name, check in checks.items()}
    alike = {
        frozenset((one, other))
        for one, other in itertools.combinations(asked, 2)
        if len(asked[one] & asked[other]) > MOST_ALIKE * len(asked[one] | asked[other])
    }

    assert [] == sorted(map(sorted, alike - UNLIKE_MACHINES))


def test_the_list_of_unlike_machines_has_no_ghosts(checks):
    """A pair that is allowed is there."""
    assert [] == sorted(set().union(*UNLIKE_MACHINES) - set(checks))


def test_older_ids_stay_or_are_replaced(checks):
    """An id of older checklists is there, named as replaced, or dropped with a reason."""
    before = set(IDS_BEFORE.read_text(encoding="utf-8").split())
    replaced = {old for check in checks.values() for old in check.replaces}

    assert 565 == len(before)
    assert set() == before - set(checks) - replaced - set(DROPPED)
    assert set() == replaced - before, "what is replaced was there"
    assert set() == replaced & set(checks), "what is replaced is gone"
    assert set() == set(DROPPED) & (set(checks) | replaced), "what was dropped is gone"


def test_every_check_reads_easily(checks):
    """Each check's text is plain English by its reading ease (Flesch 1948: 60 and more)."""
    found = {
        name: round(reading_ease(f"{check.ask} {check.look} {check.bad}"))
        for name, check in checks.items()
    }

    assert {} == {name: ease for name, ease in found.items() if ease < FLOOR}


def test_every_caution_and_trial_reads_easily(library):
    """The same for what is read before one acts."""
    texts = {
        one.id: f"{one.hurts} {one.instead} {one.decides}" for one in library.cautions.values()
    }
    texts |= {one.id: f"{one.name}. {one.about}" for one in library.trials.values() if one.about}
    found = {name: round(reading_ease(text)) for name, text in texts.items()}

    assert {} == {name: ease for name, ease in found.items() if ease < FLOOR}
