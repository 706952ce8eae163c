"""Nothing is judged, and so priced, on two sheets: what one limit judges twice is two things."""

from collections import defaultdict

import pytest

from inspector.checklists.loader import read_library
from inspector.checklists.registry import CRITERIA
from inspector.places import shipped

# Criterion that judges in several checks -> each of them and the thing that it is about.
THINGS = {
    "battery-age": {
        "switchboards/batteries": "batteries of the boards",
        "bridge/radio-reserve": "batteries of the radio",
    },
    "coating-condition": {
        "hull/coating": "paint outside",
        "tanks/coating-inside": "lining of fresh water and ballast tanks",
    },
    "compass-error": {
        "bridge/gyro": "gyro compass",
        "bridge/magnetic-compass": "magnetic compass",
    },
    "crankcase-pressure": {
        "propulsion/crankcase-pressure": "main engine",
        "power-generation/set-blow-by": "generator set",
    },
    "engine-vibration": {
        "propulsion/engine-vibration": "main engine",
        "power-generation/set-vibration": "generator set",
    },
    "exhaust-spread": {
        "propulsion/exhaust-spread": "main engine",
        "power-generation/set-spread": "generator set",
    },
    "hose-age": {
        "steering/hoses": "hoses of the steering gear",
        "pumps-and-piping/hoses": "cargo hoses",
    },
    "hot-surface": {
        "propulsion/leaks-and-lagging": "main engine",
        "power-generation/set-leaks": "generator set",
    },
    "insulation-resistance": {
        "propulsion/motor-insulation": "propulsion motor",
        "thrusters/motor-insulation": "thruster motor",
        "power-generation/alternator-insulation": "alternator",
    },
    "jacket-temperature": {
        "thrusters/diesel-drive": "thruster engine",
        "power-generation/set-cooling": "generator set",
    },
    "machine-vibration": {
        "propulsion/gearbox-vibration": "gearbox",
        "thrusters/vibration": "thruster motor",
    },
    "meter-calibration": {
        "alarm-and-control/gas-meters": "gas meters",
        "spares-and-papers/instruments": "workshop instruments",
    },
    "noise-level": {
        "thrusters/cabin-noise": "thruster, in the nearest cabin",
        "accommodation/noise": "loudest cabin",
        "accommodation/day-room-noise": "mess and day rooms",
        "bridge/bridge-noise": "bridge",
        "alarm-and-control/control-room-noise": "control room",
    },
    "nox-tier": {
        "propulsion/emission-certificate": "main engine",
        "power-generation/set-emission": "generator set",
        "environment/other-engines": "other engines over 130 kW",
    },
    "oil-cleanliness-code": {
        "propulsion/pitch-hydraulics": "pitch of the main propeller",
        "thrusters/hydraulics": "pitch of the thruster",
        "deck-machinery/oil-cleanliness": "power pack on deck",
    },
    "oil-mist-detection": {
        "propulsion/oil-mist": "main engine",
        "power-generation/set-oil-mist": "generator set",
    },
    "oil-water": {
        "propulsion/gearbox-oil": "gearbox",
        "propulsion/stern-tube-oil": "stern tube",
        "propulsion/hub-oil": "propeller hub",
        "propulsion/azimuth-oil": "main azimuth unit",
        "thrusters/hub-oil": "thruster",
        "steering/oil-and-leaks": "steering gear",
        "deck-machinery/oil-wet": "power pack on deck",
    },
    "overhaul-interval": {
        "propulsion/overhaul-reports": "main engine",
        "thrusters/diesel-papers": "thruster engine",
        "power-generation/set-overhaul": "generator set",
    },
    "plate-thickness": {
        "hull/spot-gauging": "plating of the hull",
        "tanks/wall-gauging": "walls of tanks",
    },
    "printed-expiry": {
        "life-saving/raft-contents": "rafts and releases",
        "life-saving/radio-dates": "radio, rockets and lamps",
    },
    "protection-test-age": {
        "power-generation/emergency-book": "emergency start",
        "switchboards/protection-tests": "breakers of the boards",
    },
    "ram-drift": {
        "deck-machinery/crane-rams": "crane",
        "deck-machinery/frame-run": "frame",
        "landing-and-boarding/door-power": "shell doors",
    },
    "refrigerant-leak-check": {
        "reefers/leak-checks": "provision plant",
        "accommodation/leak-record": "air-conditioning plant",
    },
    "refrigerant-status": {
        "reefers/refrigerant": "provision plant",
        "accommodation/gas": "air-conditioning plant",
        "hazardous-materials/small-plants": "small plants that nobody lists",
    },
    "survey-window": {
        "bridge/radio-area": "radio certificate",
        "spares-and-papers/certificates": "certificate due first",
    },
    "weather-height": {
        "hull/ventilators": "ventilators",
        "hull/weather-doors": "sills",
        "hull/hatches": "coamings",
        "tanks/air-pipes": "air pipes",
    },
    "wire-broken": {
        "deck-machinery/broken-wires": "wires of crane and frame",
        "landing-and-boarding/gangway-wires": "wires of the gangway",
    },
    "wire-diameter": {
        "deck-machinery/crane-wire": "wires of crane and frame",
        "life-saving/falls": "boat falls",
    },
}
# Judges by a kind of thing, which must not be offered on two sheets.
BY_KIND = "service-due"
# The deck crane and the crane of the tenders are each examined.
TWO_OF_A_KIND = {"lifting appliance, thorough examination"}


@pytest.fixture(scope="module")
def checks():
    library = read_library(shipped("checklists"), check_criteria=True)
    return {
        f"{system.id}/{check.id}": check
        for system in library.systems.values()
        for check in system.checks
    }


@pytest.fixture(scope="module")
def judged(checks):
    """Criterion -> the checks that name it, where there are several."""
    found = defaultdict(set)
    for name, check in checks.items():
        if check.criterion:
            found[check.criterion].add(name)
    return {name: users for name, users in found.items() if len(users) > 1 and name != BY_KIND}


def test_what_one_limit_judges_twice_is_two_things(judged):
    """Each check that shares its criterion is about a thing of its own, named here."""
    assert {name: set(things) for name, things in THINGS.items()} == judged


def test_no_thing_is_named_twice(judged):
    """Two checks of one criterion and one thing would be one job, priced twice."""
    assert [] == [
        name for name, things in THINGS.items() if len(set(things.values())) < len(things)
    ]


def test_each_kind_of_service_is_asked_on_one_sheet(checks):
    """A service that falls due is looked up once."""
    sheets = defaultdict(list)
    for name, check in checks.items():
        if check.criterion == BY_KIND:
            offered = next((one.choices for one in check.readings if one.name == "kind"), ())
            for kind in offered or (check.given["kind"],):
                sheets[kind].append(name)
    twice = {kind for kind, names in sheets.items() if len(names) > 1}

    assert TWO_OF_A_KIND == twice
    assert set(sheets) <= set(
        next(asked.choices for asked in CRITERIA[BY_KIND].inputs if asked.name == "kind")
    )
