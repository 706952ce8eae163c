"""Where an act is stopped, kept from, or put back: words that no later edit may take away."""

import re

import pytest

from inspector.checklists.loader import read_library
from inspector.places import shipped

# Check -> words of its ask or look, and cautions right before the act. Common practice, no
# source: each stands for a way to be hurt that was found by reading the sheets as a stranger.
RULES = {
    "hull/pitting": ("well back from edge", "over-water quay-traffic"),
    "hull/marks": ("behind the rail", "over-water boat-transfer"),
    "hull/draughts": ("never over the edge", "over-water boat-transfer"),
    "hull/rails-and-ladders": ("no rail is pushed", "over-water"),
    "hull/ventilators": ("both open again", "turning-parts"),
    "hull/sea-valves": ("each put back as it was", "overboard-discharge"),
    "hull/spot-gauging": ("open, ventilated rooms", "enclosed-space"),
    "tanks/air-pipes": ("low-flash heads stay shut", "fuel-vapour foul-gas"),
    "tanks/vent-valves": ("else it is not worked", "fuel-vapour"),
    "tanks/sample": ("a stiff one stays shut", "hot-surface"),
    "tanks/coating-inside": ("class pictures only", "enclosed-space fuel-vapour"),
    "tanks/level-alarms": ("no cover is opened", "foul-gas"),
    "propulsion/crankcase-pressure": ("leave the room", "turning-parts"),
    "propulsion/stern-tube-oil": ("stopped and locked", "turning-parts"),
    "thrusters/starter-or-drive": ("never before the cabinet", "live-panel"),
    "steering/oil-and-leaks": ("both pumps off and tagged", "turning-parts"),
    "power-generation/emergency-room": ("may start any moment", "turning-parts"),
    "switchboards/two-halves": ("hands off the front", "live-panel"),
    "switchboards/board-front": ("nobody goes behind", "live-panel"),
    "switchboards/ups": ("not that of fire panel", "live-panel"),
    "pumps-and-piping/pipe-wear": ("not where it weeps", "stored-pressure"),
    "pumps-and-piping/emergency-suction": ("its sea suction shut", "overboard-discharge"),
    "pumps-and-piping/bilge-suction": ("stop, shut", "enclosed-space foul-gas"),
    "alarm-and-control/ten-by-lot": ("lets go", "turning-parts"),
    "alarm-and-control/control-room-noise": ("with what runs today", ""),
    "deck-machinery/fittings": ("no line is tight", "tight-lines"),
    "open-deck/wet-deck": ("never at the open stern", "over-water"),
    "fire-protection/fan-stops": ("nobody closes the engine room", "turning-parts"),
    "fire-protection/cylinder-tests": ("oxygen read by the crew", "co2-space"),
    "fire-protection/extinguishers": ("hands off", ""),
    "landing-and-boarding/shell-doors": ("door pinned", "over-water"),
    "dynamic-positioning/stations": ("stopped and locked", "tight-lines divers-and-boats"),
    "dynamic-positioning/under-water-references": ("no valve, drain", "enclosed-space"),
    "accommodation/hearing-the-neighbour": ("no tap", ""),
    "propulsion/leaks-and-lagging": ("mist or spray: out", "hot-surface"),
    "power-generation/set-leaks": ("mist or spray: out", "hot-surface"),
    "thrusters/oil-metal": ("where the maker lets it", "turning-parts"),
    "switchboards/dc-network": ("fixed meters", "live-panel"),
    "tanks/waste-holding": ("gas meter read by the crew first", "enclosed-space foul-gas"),
    "deck-machinery/crane-bearing": ("no hand there", "turning-parts"),
    "fire-protection/monitors": ("low pressure", "tight-lines divers-and-boats"),
    "reefers/leaks": ("locked by the engineer", "turning-parts"),
    "spares-and-papers/lay-up": ("open and aired rooms", "enclosed-space"),
    "switchboards/traction-health": ("the open door", "battery-gas"),
    "pumps-and-piping/control-air": ("that nobody holds", "stored-pressure"),
    "pumps-and-piping/remote-valves": ("hands clear", "stored-pressure"),
    "fire-protection/dampers": ("engines of that room at rest", "turning-parts"),
    "tanks/quick-closing": ("hands clear", "stored-pressure"),
    "pumps-and-piping/hoses": ("back off", "stored-pressure"),
    "pumps-and-piping/cargo-manifold": ("no phone", "fuel-vapour"),
    "pumps-and-piping/cargo-hydraulics": ("no phone", "fuel-vapour"),
    "deck-machinery/power-pack": ("empty hook", "overhead-load tight-lines"),
    "deck-machinery/frame-run": ("not tried", "overhead-load"),
    "power-generation/set-turbocharger": ("at rest and locked", "hot-surface"),
    "thrusters/full-run": ("on the gangway", "tight-lines divers-and-boats"),
    "tanks/gauges": ("on open deck", "fuel-vapour foul-gas"),
    "switchboards/thermography": ("nothing is started for it", "live-panel"),
    "reefers/trapped-person": ("door open first", "alone"),
}
# Claimed harmless once, and were not.
NOT_HARMLESS = [
    "hull/ventilators",
    "pumps-and-piping/pipe-wear",
    "dynamic-positioning/equipment-count",
    "switchboards/dc-network",
]
# Trials whose machine moves water or the ship, under which somebody may swim.
UNDER_WATER = ["thruster-run", "steering-run", "windlass-run", "boat-lowering", "position-trial"]


@pytest.fixture(scope="module")
def library():
    return read_library(shipped("checklists"))


def shipped_check(library, name):
    system, _, check_id = name.partition("/")
    return library.systems[system].check(check_id)


@pytest.mark.parametrize("name", RULES)
def test_a_rule_that_keeps_people_whole_is_in_the_words_before_the_act(library, name):
    """The rule is read before the act and its cautions are right beside it."""
    check = shipped_check(library, name)
    words, cautions = RULES[name]

    assert words in f"{check.ask} {check.look}".casefold()
    assert set(cautions.split()) <= set(check.cautions)


@pytest.mark.parametrize("name", NOT_HARMLESS)
def test_an_act_with_a_hazard_is_not_called_harmless(library, name):
    """It has cautions instead."""
    check = shipped_check(library, name)

    assert not check.harmless
    assert check.cautions


@pytest.mark.parametrize("name", UNDER_WATER)
def test_a_trial_that_moves_something_under_water_asks_for_divers(library, name):
    """The caution on divers and boats is read before the trial."""
    assert "divers-and-boats" in library.trials[name].cautions


def test_no_surveyor_is_asked_to_feel_lean_or_smell(library):
    """A hand, a nose or a body's weight is not an instrument."""
    asked = re.compile(r"\b(lean (over|out)|smell at|feel (for|with)|put your (hand|head))\b", re.I)
    refused = re.compile(r"\b(no|not|never|nobody)\b[^.]*$", re.I)
    found = [
        f"{system.id}/{check.id}: {hit.group()}"
        for system in library.systems.values()
        for check in system.checks
        for text in (check.ask, check.look)
        for hit in asked.finditer(text)
        if not refused.search(text[: hit.start()])
    ]

    assert [] == found


@pytest.mark.parametrize("system", ["propulsion", "power-generation", "pumps-and-piping"])
def test_whoever_works_in_an_engine_room_knows_the_gas_alarm(library, system):
    """An engine room is a gas-protected space, so its sheets warn of the gas."""
    assert "co2-space" in library.systems[system].cautions
