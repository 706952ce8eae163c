"""How long a visit still is, and how many people look: from what was said of it, and the clock."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from inspector.record.state import State
from inspector.record.typed_values import texts
from inspector.values.clock_time import read_time
from inspector.values.numbers import NotANumber, parse_number

# What a round is composed for while nobody has said how long the visit is.
USUAL_MINUTES, USUAL_PEOPLE = 45.0, 1
# A round's table grows with the minutes, and no visit is longer than ten days.
LONGEST = 240 * 60  # minutes
_SHEET, _RATING = "sheet/", "rating"


@dataclass(frozen=True)
class Visit:
    """The time and the people of a visit.

    Parameters
    ----------
    minutes : float
        What is left for each of them [min].
    people : int
    known : bool
        Whether somebody said how long it is.
    """

    minutes: float
    people: int
    known: bool


def visit_of(state: State, now: datetime) -> Visit:
    """Return how long the visit still is, and how many look.

    Parameters
    ----------
    state : State
    now : datetime
        With its zone, in which the time to be off was written.

    Returns
    -------
    Visit
        The time to be off counts on the day of the visit, or on any day where that is not known.
        Of the hours aboard, what has passed since today's first answer is over.
    """
    facts = texts(state, "inspection")
    people = _whole(facts.get("people", ""), USUAL_PEOPLE)
    off = read_time(facts.get("off", ""))
    if off and facts.get("date", "") in ("", now.date().isoformat()):
        until = now.replace(hour=off.hour, minute=off.minute, second=0, microsecond=0)
        return Visit(max((until - now).total_seconds() / 60, 0.0), people, True)
    hours = _number(facts.get("aboard", ""))
    if hours is None:
        return Visit(USUAL_MINUTES, people, False)
    return Visit(max(60 * hours - _minutes_since_first(state, now), 0.0), people, True)


def _number(text: str) -> float | None:
    try:
        return parse_number(text)
    except NotANumber:
        return None


def _whole(text: str, otherwise: int) -> int:
    number = _number(text)
    return int(number) if number and number >= 1 else otherwise


def _minutes_since_first(state: State, now: datetime) -> float:
    """Since today's first answer; what was answered on other days was another visit."""
    since = now - timedelta(hours=now.hour, minutes=now.minute, seconds=now.second)
    times = [
        at
        for subject in state.subjects(_SHEET)
        for head in state.heads(subject, _RATING)
        if (at := datetime.fromisoformat(head.at)) >= since
    ]
    return max((now - min(times)).total_seconds() / 60, 0.0) if times else 0.0
