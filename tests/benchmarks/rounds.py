"""Rounds of a whole vessel: what composing costs, how near it is to a bound that no round exceeds,
and how it agrees with the looks that a superintendent would choose.
"""

import time
from pathlib import Path

from inspector.assess.model import Assessment
from inspector.assess.round.composition import compose_round, round_of, stations_of
from inspector.assess.round.look_ways import visit_looks
from inspector.assess.round.outlook import outlook_of
from inspector.assess.round.priced_time import lowest_bound
from inspector.assess.round.shared_walk import rooms_of
from inspector.checklists.model import Library
from tests.assess.round.superintendent import LONG, SHORT, compared
from tests.assess.round.vessels import IN_SERVICE, LAID_UP, before_the_visit, shipped_library
from tests.benchmarks.common import median_of, say

WHY = """\
  why they differ: the superintendent goes round the shell first, from the quay and before the hours
  aboard; the round counts each later look at one unit for less and spends short hours on what is
  critical in other systems. Dates of certificates and tests change no word and are in no round;
  they are read from the papers. Where four hours leave time, the round looks at some things in
  full that the list passes by."""


def rounds(_folder: Path) -> None:
    """Print minutes, people, looks, the gap to the bound, the cost and the agreement."""
    library = shipped_library()
    for name in (IN_SERVICE, LAID_UP):
        vessel = before_the_visit(library, name)
        print(f"rounds of {name}:")
        for people in (1, 2, 3):
            for minutes in (SHORT, LONG, 1440):
                _measured(vessel, library, minutes, people)
        for minutes in (SHORT, LONG):
            _agreement(vessel, library, minutes)
    print(WHY)
    spaces = [*library.spaces]
    vessel = before_the_visit(library)
    made = compose_round(vessel, spaces, LONG)
    listed, composed, outlook = median_of(
        lambda: visit_looks(vessel),
        lambda: compose_round(vessel, spaces, LONG, 3),
        lambda: outlook_of(vessel.recorded, library, made),
        rounds=5,
    )
    say("a round for three people composed", composed, "listing its looks", listed, "at most 1 s")
    say("what it will decide", outlook, "listing its looks", listed, "at most 1 s")


def _measured(vessel: Assessment, library: Library, minutes: int, people: int) -> None:
    spaces = [*library.spaces]
    found = visit_looks(vessel)
    start = time.process_time()
    made = round_of(found, spaces, minutes, people)
    spent = time.process_time() - start
    limit = lowest_bound(rooms_of(stations_of(found, spaces)), 60 * minutes * people)
    systems = {subject.split("/")[1] for subject in made.subjects}
    print(
        f"  {people} x {minutes:4} min: {len(made.subjects):3} looks in {len(systems)} systems, "
        f"{len(made.left_out)} left out, {1 - made.worth / limit:.2%} below the bound, "
        f"{spent * 1000:.0f} ms; goal 3 %",
        flush=True,
    )


def _agreement(vessel: Assessment, library: Library, minutes: int) -> None:
    found = visit_looks(vessel)
    beside = compared(round_of(found, [*library.spaces], minutes), found, minutes)
    print(
        f"  {minutes} min beside a superintendent's list: {beside.share:.0%} of the "
        f"{len(beside.asked)} looks of the list, {len(beside.no_word)} of the others change no word"
    )
    for title, checks in (
        ("only the list", beside.only_list),
        ("only the round", beside.only_round),
    ):
        print(f"    {title}: {', '.join(sorted(checks))}", flush=True)
