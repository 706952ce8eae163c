"""What a round will and will not decide, said before it."""

import pytest

from inspector.assess.round.composition import Round, round_of
from inspector.assess.round.look_ways import visit_looks
from inspector.assess.round.outlook import DECIDES, LEAVES_OPEN, POINTS, outlook_of
from tests.assess.round.vessels import before_the_visit, shipped_library


@pytest.fixture(scope="module")
def library():
    return shipped_library()


@pytest.fixture(scope="module")
def vessel(library):
    return before_the_visit(library)


def outcomes(vessel, library, minutes):
    made = round_of(visit_looks(vessel), [*library.spaces], minutes)
    return {one.system: one.outcome for one in outlook_of(vessel.recorded, library, made)}


def test_without_a_round_everything_is_left_open(vessel, library):
    """Nobody looks, and no word comes of it."""
    found = outlook_of(vessel.recorded, library, Round())

    assert {LEAVES_OPEN} == {one.outcome for one in found}
    assert {0} == {one.looks for one in found}
    assert len(visit_looks(vessel).still_open) == sum(one.left_out for one in found)


def test_a_longer_round_never_decides_less(vessel, library):
    """Each system gets as far or farther."""
    rank = [LEAVES_OPEN, POINTS, DECIDES]
    short, long = (outcomes(vessel, library, minutes) for minutes in (45, 2400))

    assert all(rank.index(short[system]) <= rank.index(long[system]) for system in short)
    assert list(long.values()).count(DECIDES) > list(short.values()).count(DECIDES)


def test_a_short_round_decides_next_to_nothing_and_says_so(vessel, library):
    """Three quarters of an hour make no word firm where critical checks stay open."""
    made = round_of(visit_looks(vessel), [*library.spaces], 45)
    for one in outlook_of(vessel.recorded, library, made):
        assert not (one.outcome == DECIDES and one.critical_open)


def test_nothing_of_it_is_recorded(vessel, library):
    """What would be is no answer."""
    before = dict(vessel.recorded.sheets)
    made = round_of(visit_looks(vessel), [*library.spaces], 45)
    outlook_of(vessel.recorded, library, made)

    assert before == vessel.recorded.sheets
