"""The round as it is followed on the walk page: plain data, and whether it still fits the time.

The computer and a device compose it by this one module: what a device makes below deck is what the
computer would make of the same entries. It begins with what is left of the time; after that it is
composed again whenever time runs ahead or behind, or what was said of the visit has changed.
"""

import hashlib
import json
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any

from inspector.assess.model import Assessment
from inspector.assess.round.composition import Round, round_of, within
from inspector.assess.round.look_ways import visit_looks
from inspector.assess.round.time_left import LONGEST, Visit
from inspector.record.state import State

# Our own choice: composed again once a tenth of what is left is gained or lost, and not for less
# than this, since nobody can follow a list that changes after every look.
SHARE_OF_LEFT, LEAST_MINUTES = 0.10, 3.0
AHEAD, BEHIND, CHANGED = "ahead", "behind", "changed"
# What decides a round beside answers and time: facts of the visit, the brief, the units on board.
_ALONE = ("inspection", "brief", "settings")
_UNITS, _UNIT_FIELDS = "unit/", ("name", "kind", "space", "gone")
# The computer's own notes of what was not seen by whom, which concern no round.
_NOTE = "unseen/"

RoundData = dict[str, Any]


def composed(
    assessment: Assessment,
    state: State,
    spaces: Sequence[str],
    visit: Visit,
    now: datetime,
    here: str | None = None,
    before: Mapping[str, Any] | None = None,
    person: int = 0,
) -> RoundData:
    """Compose the round for what is left of a visit, as the walk's scripts receive it.

    Parameters
    ----------
    assessment : Assessment
        Of the state as it is now.
    state : State
        What is recorded of the inspection.
    spaces : sequence of str
        Ids of the spaces in walking order.
    visit : Visit
        The minutes that are left, and how many people look.
    now : datetime
        With its zone.
    here : str, optional
        Where the person is; None before anybody comes aboard.
    before : mapping, optional
        The round that was followed so far.
    person : int
        Whose part alone is composed again, counted from 1; 0 for everybody's. What the others
        have answered may not be known here, so that their parts and the borders between them are
        left as they were.

    Returns
    -------
    dict
        ``at``: when it was composed; ``minutes``: for which time [min]; ``stops``: in walking
        order, each with its space, the person who looks there, what it takes to come there [s] and
        its looks, each with the sheets that it answers without "sheet/", its way and its seconds;
        ``seconds``: what each of the people needs; ``left``: how many checks are left out;
        ``shares``: for each of the people the "<space>/<system>" that are his part; ``basis``: the
        facts that it rests on, as a digest.
    """
    minutes = min(visit.minutes, LONGEST)
    found, basis = visit_looks(assessment), basis_of(state)
    data: RoundData = {"at": now.isoformat(), "minutes": minutes, "basis": basis}
    share = _share(before, person, visit.people, basis)
    if before is None or share is None:
        made = round_of(found, spaces, minutes, visit.people, here)
        shares = [[f"{space}/{system}" for space, system in own] for own in made.shares]
        data |= {"stops": list(_stops(made)), "seconds": list(made.seconds), "shares": shares}
    else:
        made = round_of(within(found, share), spaces, minutes, 1, here)
        data |= _with_part(before, person, made)
    looked_at = set(_sheets(data["stops"]))
    left = sum(subject.removeprefix("sheet/") not in looked_at for subject in found.still_open)
    return data | {"left": left}


def _share(
    before: Mapping[str, Any] | None, person: int, people: int, basis: str
) -> set[tuple[str, str]] | None:
    """The stations of one person; None where the whole round is composed."""
    if before is None or people < 2 or not 1 <= person <= len(before["shares"]):
        return None
    # With other people, units or needs the borders are drawn anew.
    if before["basis"] != basis or len(before["shares"]) != people:
        return None
    return {tuple(station.split("/")) for station in before["shares"][person - 1]}


def _with_part(before: Mapping[str, Any], person: int, made: Round) -> RoundData:
    """The round that was followed with the part of one person composed again."""
    others = [stop for stop in before["stops"] if stop["person"] != person]
    own = [{**stop, "person": person} for stop in _stops(made)]
    seconds = list(before["seconds"])
    seconds[person - 1] = made.seconds[0]
    stops = sorted([*others, *own], key=lambda stop: stop["person"])
    return {"stops": stops, "seconds": seconds, "shares": before["shares"]}


def _stops(made: Round) -> Iterator[RoundData]:
    for stop in made.stops:
        yield {
            "space": stop.space,
            "person": stop.person,
            "entering": stop.entering,
            "looks": [
                {
                    "sheets": [subject.removeprefix("sheet/") for subject in one.way.subjects],
                    "way": one.way.kind,
                    "seconds": one.way.seconds,
                }
                for one in stop.chosen
            ],
        }


def _sheets(stops: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    for stop in stops:
        for look in stop["looks"]:
            yield from look["sheets"]


def basis_of(state: State) -> str:
    """Return a digest of what a round rests on beside answers and time.

    Parameters
    ----------
    state : State

    Returns
    -------
    str
        Sixteen characters that change with the facts of the visit, the brief, the settings and the
        units on board.
    """
    facts = [
        [subject, field, state.value(subject, field)]
        for subject in _ALONE
        for field in state.fields(subject)
        if not field.startswith(_NOTE)
    ]
    units = [
        [subject, field, value]
        for subject in state.subjects(_UNITS)
        for field in _UNIT_FIELDS
        if (value := state.value(subject, field)) is not None
    ]
    text = json.dumps([facts, units], ensure_ascii=False, sort_keys=True)
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def minutes_ahead(data: Mapping[str, Any], state: State, minutes: float, person: int = 0) -> float:
    """Return how many minutes the walk is ahead of its round.

    Parameters
    ----------
    data : mapping
        The round that is followed, as ``composed`` returns it.
    state : State
        With the answers given so far.
    minutes : float
        What is left of the visit [min].
    person : int
        Whose part is walked here, counted from 1; 0 for everybody's.

    Returns
    -------
    float
        The spare time there is now, less what there was when the round was composed; below 0 where
        the walk is behind. Of several people the mean [min].
    """
    people = [person] if 1 <= person <= len(data["seconds"]) else range(1, len(data["seconds"]) + 1)
    planned = sum(data["seconds"][one - 1] for one in people)
    rest = sum(_seconds_left(stop, state) for stop in data["stops"] if stop["person"] in people)
    return minutes - data["minutes"] + (planned - rest) / 60 / max(len(people), 1)


def _seconds_left(stop: Mapping[str, Any], state: State) -> int:
    """What is left of a stop; who has begun with it is there already."""
    times = [look["seconds"] for look in stop["looks"] if not _is_answered(look, state)]
    has_begun = len(times) < len(stop["looks"])
    return sum(times) + (0 if has_begun else stop["entering"])


def _is_answered(look: Mapping[str, Any], state: State) -> bool:
    return all(_has_answer(state, f"sheet/{sheet}") for sheet in look["sheets"])


def _has_answer(state: State, subject: str) -> bool:
    """Whether somebody was there: a rating, or a reading, whatever it is judged."""
    values = state.values(subject)
    return "rating" in values or any(name.startswith("reading/") for name in values)


def out_of_step(data: Mapping[str, Any], state: State, visit: Visit, person: int = 0) -> str:
    """Return why a round should be composed again.

    Parameters
    ----------
    data : mapping
        The round that is followed, as ``composed`` returns it.
    state : State
    visit : Visit
        What is left of it now.
    person : int
        Whose part is walked here; 0 for everybody's.

    Returns
    -------
    str
        CHANGED where what was said of the visit or the units is no longer what it rests on, AHEAD
        or BEHIND where the time has run away from it, "" where it still fits.
    """
    if data["basis"] != basis_of(state):
        return CHANGED
    ahead = minutes_ahead(data, state, visit.minutes, person)
    if abs(ahead) < max(SHARE_OF_LEFT * visit.minutes, LEAST_MINUTES):
        return ""
    return AHEAD if ahead > 0 else BEHIND
