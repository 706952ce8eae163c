"""What once could hurt somebody, or break the ship, is asked in the way that cannot."""

import re

import pytest

from inspector.checklists.loader import read_library
from inspector.places import shipped

# Check, the cautions at the act, and what its text must say. Common practice, no source.
ACTS = [
    ("switchboards/bus-tie", "live-panel", "never tried live"),
    ("switchboards/breakers", "live-panel", "No breaker is worked on a live bus"),
    ("switchboards/blackout-recovery", "", "asks for no live blackout"),
    ("switchboards/board-inside", "live-panel dust-and-lagging", "First see the paper on asbestos"),
    ("switchboards/sharing", "live-panel", "only for what they do daily|in daily work"),
    ("power-generation/shore-connection", "live-panel", "interlock is not tried"),
    (
        "power-generation/set-start",
        "turning-parts stagnant-plant",
        "turned by hand with cocks open",
    ),
    ("power-generation/set-fuel", "hot-surface", "not worked for you"),
    ("propulsion/pitch-response", "tight-lines divers-and-boats", "shaft stopped and locked"),
    ("propulsion/hub-oil", "divers-and-boats", "Shaft stopped and locked"),
    ("propulsion/clutch", "divers-and-boats", "At the quay: not run"),
    ("propulsion/cold-start", "turning-parts stagnant-plant", "preheated as always"),
    ("propulsion/control-stations", "divers-and-boats", "never the air flap"),
    ("propulsion/azimuth-unit", "divers-and-boats", "Propeller stopped and locked"),
    ("alarm-and-control/control-lost", "tight-lines", "thruster motors stopped and locked"),
    ("alarm-and-control/stand-by-pumps", "turning-parts", "at rest and stays so"),
    ("thrusters/full-run", "tight-lines divers-and-boats", "well under water"),
    ("thrusters/diesel-drive", "divers-and-boats", "well under water"),
    ("thrusters/hull-seal", "turning-parts", "Only then wipe"),
    ("thrusters/azimuth-and-lift", "divers-and-boats", "Charted depth"),
    ("dynamic-positioning/joystick", "tight-lines", "In open water only"),
    ("dynamic-positioning/thruster-signals", "divers-and-boats", "At the quay: not run"),
    ("pumps-and-piping/pump-run", "overboard-discharge", "own liquid"),
    ("pumps-and-piping/emergency-suction", "overboard-discharge", "Pump stopped"),
    ("pumps-and-piping/ballast-transfer", "overboard-discharge", "GM"),
    ("pumps-and-piping/fuel-transfer", "overboard-discharge", "Never by filling"),
    ("hull/sea-chests", "stored-pressure", "stop, leave it shut"),
    ("hull/spot-gauging", "dust-and-lagging", "no scraping"),
    ("hull/watertight-doors", "watertight-doors", "Two metres off"),
    ("tanks/sounding-pipes", "fuel-vapour", "tries the small cock first"),
    ("tanks/boundaries", "enclosed-space", "open, ventilated rooms"),
    ("pumps-and-piping/way-out", "enclosed-space", "gas meter read by the crew"),
    ("pumps-and-piping/control-air", "stored-pressure", "nothing in use needs the air"),
    ("tanks/full-depth", "fuel-vapour", "not sounded by hand"),
    ("tanks/steel-inside", "enclosed-space", "only under permit"),
    ("propulsion/coolant-salt", "hot-surface", "engine cold"),
    ("propulsion/polarization-index", "live-panel", "isolated, locked and proved dead"),
    ("propulsion/relief-valves", "turning-parts", "Nothing is taken off"),
    ("switchboards/float-voltage", "battery-gas live-panel", "You stand back"),
    ("switchboards/acid-density", "battery-gas", "You stand back"),
    ("switchboards/battery-cells", "battery-gas", "dead ship: stay outside"),
    ("switchboards/terminal-heat", "live-panel", "You open nothing"),
    ("switchboards/touch-heat", "live-panel", "no hand on them"),
    ("switchboards/consumer-voltage", "live-panel turning-parts", "the electrician's own"),
    ("reefers/refrigerant", "refrigerant", "no power: on paper only"),
    ("reefers/leaks", "refrigerant", "no power: no access"),
    ("power-generation/set-settling", "", "nothing is started again"),
    ("reefers/defrost-in-log", "", "No defrost is begun for you"),
    ("reefers/pull-down-log", "", "Nobody warms the room for you"),
]


@pytest.fixture(scope="module")
def library():
    return read_library(shipped("checklists"))


@pytest.mark.parametrize(("name", "cautions", "phrase"), ACTS)
def test_the_act_is_asked_so_that_nobody_is_hurt(library, name, cautions, phrase):
    """The text holds the way that is followed, and its cautions are right before it."""
    system, check_id = name.split("/")
    check = library.systems[system].check(check_id)

    assert re.search(phrase, f"{check.ask} {check.look}", re.IGNORECASE)
    assert set(cautions.split()) <= set(check.cautions)


@pytest.mark.parametrize("name", ["clutch", "pitch-response", "load-run", "gearbox-vibration"])
def test_a_shaft_turns_under_load_at_sea_only(library, name):
    """What needs a turning shaft needs the sea, so at the quay it is proposed as not run."""
    assert "sea" == library.systems["propulsion"].check(name).needs


@pytest.mark.parametrize(
    ("system", "date", "iron"),
    [
        ("switchboards", "batteries", "battery-cells"),
        ("pumps-and-piping", "air-receivers", "receiver-drains"),
        ("hull", "docking", "docking-pictures"),
        ("hull", "antifouling", "growth"),
        ("alarm-and-control", "gas-meters", "gas-panel"),
    ],
)
def test_a_date_does_not_rate_what_one_looks_at(library, system, date, iron):
    """A printed date and the thing beside it are two checks; only the date has the criterion."""
    checks = library.systems[system]

    assert checks.check(date) is not None
    assert "" == checks.check(iron).criterion
