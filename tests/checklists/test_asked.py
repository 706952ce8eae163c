"""Which unit is asked what, and how long it takes: once, within a trial, only offered."""

from dataclasses import replace

import pytest

from inspector.checklists.asked import Asked, asked_of, minutes_of
from inspector.checklists.loader import read_library
from inspector.checklists.model import Trial
from inspector.places import shipped

RUN = Trial("run", "Run", 20, "unit", "running")
SEA = Trial("sea", "Sea trial", 180, "vessel", "sea")
TRIALS = {"run": RUN, "sea": SEA}


@pytest.fixture(scope="module")
def one_check():
    system = read_library(shipped("checklists")).systems["thrusters"]
    return replace(
        system.checks[0], kinds=(), once=False, optional=False, together="", scan=False, minutes=3
    )


@pytest.fixture(scope="module")
def make(one_check):
    """A system of named checks, each with what is changed in it."""
    system = read_library(shipped("checklists")).systems["thrusters"]

    def made(**checks):
        own = tuple(replace(one_check, id=name, **more) for name, more in checks.items())
        return replace(system, kinds={"tunnel": "Tunnel", "azimuth": "Azimuth"}, checks=own)

    return made


def places(asked):
    return [(one.unit, one.check.id) for one in asked]


def test_what_is_asked_once_is_on_the_first_sheet_only(make):
    """A shared thing is asked on the first unit, everything else on each."""
    system = make(shared={"once": True}, own={})

    assert [("a", "shared"), ("a", "own"), ("b", "own")] == places(
        asked_of(system, {"a": "tunnel", "b": "tunnel"})
    )


def test_once_goes_to_the_first_unit_of_its_kinds(make):
    """A unit of the right kind comes before one whose kind is not known."""
    system = make(shared={"once": True, "kinds": ("azimuth",)})

    assert [("c", "shared")] == places(
        asked_of(system, {"a": "tunnel", "b": "", "c": "azimuth", "d": "azimuth"})
    )
    assert [("b", "shared")] == places(asked_of(system, {"a": "tunnel", "b": ""}))
    assert [] == places(asked_of(system, {"a": "tunnel"}))


def test_what_is_answered_stays_where_it_was_answered(make):
    """A unit that is counted, or comes back, before it does not take the answer out of sight."""
    system = make(shared={"once": True})

    assert [("b", "shared")] == places(
        asked_of(system, {"a": "tunnel", "b": "tunnel"}, answered={("b", "shared")})
    )


def test_the_minutes_of_a_trial_count_once_for_each_unit(make):
    """Two checks in a run of 20 minutes on two units: 2 x (20 + 3 + 3)."""
    system = make(one={"together": "run"}, two={"together": "run"})

    assert 52 == minutes_of(asked_of(system, {"a": "tunnel", "b": "tunnel"}), TRIALS)


def test_the_minutes_of_a_vessels_trial_count_once_over_all_systems(make, one_check):
    """A sea trial of 180 minutes is one, whatever number of units and systems is read off in it."""
    system = make(one={"together": "sea"})
    other = Asked("hull", "shell", replace(one_check, together="sea"))

    both = [*asked_of(system, {"a": "tunnel", "b": "tunnel"}), other]

    assert 180 + 3 * 3 == minutes_of(both, TRIALS)


def test_what_is_optional_takes_no_minutes(make):
    """Nobody has to do it, and a trial that only optional checks name is not run."""
    system = make(needed={}, offered={"optional": True, "together": "run"})

    assert 3 == minutes_of(asked_of(system, {"a": "tunnel"}), TRIALS)


def test_a_trial_that_is_not_known_adds_nothing(make):
    """Checklists that lost their file of trials still give minutes."""
    assert 3 == minutes_of(asked_of(make(one={"together": "gone"}), {"a": ""}), {})
