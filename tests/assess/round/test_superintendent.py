"""The round beside what a superintendent would look at in the same time."""

import pytest

from inspector.assess.round.composition import round_of
from inspector.assess.round.look_ways import visit_looks
from tests.assess.round.superintendent import LONG, SHORT, chosen_for, compared
from tests.assess.round.vessels import before_the_visit, shipped_library


@pytest.fixture(scope="module")
def library():
    return shipped_library()


@pytest.fixture(scope="module")
def looks(library):
    return visit_looks(before_the_visit(library))


# With little time the two differ most: the superintendent goes round the shell first, and the model
# takes the critical checks of every system first, since each later look at one unit adds less.
@pytest.mark.parametrize(("minutes", "least"), [(SHORT, 0.45), (LONG, 0.80)])
def test_the_round_agrees_with_the_superintendent(library, looks, minutes, least):
    """Half of it in three quarters of an hour, four fifths in four hours."""
    made = round_of(looks, [*library.spaces], minutes)

    assert compared(made, looks, minutes).share >= least


def test_even_the_shortest_round_looks_at_what_the_superintendent_would_in_the_end(library, looks):
    """Six of seven looks of the short round are among those of the long list."""
    made = round_of(looks, [*library.spaces], SHORT)
    only_round = compared(made, looks, SHORT).only_round - chosen_for(LONG)

    assert len(only_round) <= len(made.subjects) / 7


def test_the_list_names_checks_that_there_are(library):
    """A check that was renamed would silently count as a difference."""
    known = {
        f"{system.id}/{check.id}" for system in library.systems.values() for check in system.checks
    }

    assert set() == chosen_for(LONG) - known
