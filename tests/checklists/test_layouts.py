"""Any vessel can be described: no layout is asked of machines that she lacks, none loses its
critical checks, and no machine is rated in two units.
"""

import re
from collections import Counter

import pytest

from inspector.checklists.asked import asked_of
from inspector.checklists.loader import read_library
from inspector.places import shipped
from inspector.services.layouts import units_in

LIBRARY = read_library(shipped("checklists"))
# What a layout lacks, as a title would name it. The shaft generator is asked of every plant.
LACKS = {
    "shafts": r"azimuth|\bpods?\b|traction|retract|converter|A-frame",
    "one-gear": r"positioning|azimuth|\bpods?\b|traction|retract|converter",
    "diesel-electric": r"stern (tube|seal)|gearbox|shaft|rudder|main engine|traction|pods?\b",
    "azimuth-mechanical": r"stern (tube|seal)|rudder|\bpods?\b|traction|converter",
    "hybrid-pods": r"stern (tube|seal)|gearbox|shaft|rudder|main engine|clutch|retract",
}
# A check that says itself when it is not fitted may be answered so on any vessel.
MAY_LACK = re.compile("not fitted", re.IGNORECASE)


def asked_by(layout, system):
    """The checks of a system that a layout's units are asked, and the unit of each."""
    kinds = {unit["name"]: unit.get("kind", "") for unit in units_in(layout, LIBRARY, system)}
    return asked_of(system, kinds)


@pytest.fixture(scope="module", params=sorted(LACKS))
def layout(request):
    return LIBRARY.layouts[request.param]


@pytest.fixture(scope="module")
def asked(layout):
    return [one for system in LIBRARY.systems.values() for one in asked_by(layout, system)]


def test_every_layout_is_tried_here():
    """A new layout needs its line in the table above."""
    assert set(LACKS) == set(LIBRARY.layouts)


def test_kinds_and_spaces_of_a_layout_are_known(layout):
    """Each unit that a layout counts is of a kind of its system and in a space of the folder."""
    for system_id, units in layout.units.items():
        system = LIBRARY.systems[system_id]
        for unit in units:
            assert unit.get("kind", "") in (system.kinds or ("",)), (layout.id, unit)
            assert unit.get("space", system.home) in LIBRARY.spaces, (layout.id, unit)


def test_at_most_a_tenth_is_not_fitted(layout, asked):
    """Of all that is asked, at most a tenth can be about something that she does not have."""
    lacking = re.compile(LACKS[layout.id], re.IGNORECASE)
    absent = [
        f"{one.system}/{one.check.id}"
        for one in asked
        if lacking.search(one.check.title)
        or MAY_LACK.search(f"{one.check.ask} {one.check.look} {one.check.bad}")
    ]

    assert len(absent) <= 0.1 * len(asked), Counter(absent)


def test_nothing_is_asked_of_a_machine_that_she_lacks(layout, asked):
    """In propulsion, thrusters, steering and boards hardly a title names what is not there."""
    lacking = re.compile(LACKS[layout.id], re.IGNORECASE)
    for system in ("propulsion", "thrusters", "steering", "switchboards", "power-generation"):
        own = [one.check for one in asked if one.system == system]
        wrong = {check.title for check in own if lacking.search(check.title)}
        assert sum(check.title in wrong for check in own) <= 0.1 * len(own), (system, wrong)


def test_no_layout_loses_its_critical_checks(layout, asked):
    """Each system with units has a critical check, and so has each unit that drives or steers."""
    critical = {(one.system, one.unit) for one in asked if one.check.critical}
    with_units = {one.system for one in asked}

    assert set() == with_units - {system for system, _ in critical}
    driving = {(one.system, one.unit) for one in asked if one.system in ("propulsion", "thrusters")}
    assert set() == driving - critical


def test_no_machine_is_rated_in_two_units(layout, asked):
    """No check is asked twice of one machine: of unlike kinds of a system each has its own.

    What several kinds are asked alike (plate, overhaul, vibration) is about its own machine;
    gearbox, stern seal and shaft are asked of the gear alone.
    """
    names = [
        unit["name"]
        for system in LIBRARY.systems.values()
        for unit in units_in(layout, LIBRARY, system)
    ]
    assert [] == [name for name, count in Counter(names).items() if count > 1]

    kinds = {
        unit["name"]: unit.get("kind")
        for unit in units_in(layout, LIBRARY, LIBRARY.systems["propulsion"])
    }
    of_gears = re.compile(r"gearbox|stern (tube|seal)|\bshaft", re.IGNORECASE)
    wrong = [
        (one.unit, one.check.title)
        for one in asked
        if one.system == "propulsion"
        and kinds[one.unit] == "engine"
        and of_gears.search(one.check.title)
    ]
    assert [] == wrong


def test_no_layout_asks_more_looks_than_before(asked):
    """Fewer than the 870 looks that a vessel of two shafts was asked by the first checklists."""
    assert len(asked) < 870


def test_the_critical_checks_of_a_layout_are_passed_by_in_45_minutes(asked):
    """A visitor with 45 minutes learns something of each, the ways between them left out."""
    passed, seconds = set(), 0.0
    for one in asked:
        name, glance = (one.system, one.check.id), one.check.glance
        if one.check.critical and (glance.which == "each" or name not in passed):
            seconds += glance.seconds
            passed.add(name)

    assert seconds <= 45 * 60
