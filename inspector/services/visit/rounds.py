"""The round of a visit for pages: how much time is left, what is chosen, what cannot be had."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from inspector.record.inspection import Inspection
from inspector.record.state import State
from inspector.record.typed_values import texts
from inspector.services.data_folder import DataFolder
from inspector.values.clock_time import read_time
from inspector.values.errors import InspectorError
from inspector.values.numbers import NotANumber, parse_number
from inspector.values.vocabulary import not_seen

# What a round is composed for while nobody has said how long the visit is.
USUAL_MINUTES, USUAL_PEOPLE = 45.0, 1
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


def made_round(
    data: DataFolder, inspection: Inspection, minutes: float, people: int, here: str | None = None
):
    """Compose the round of an inspection as it is now.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    minutes : float
        That each of the people has [min].
    people : int
    here : str, optional
        Id of the space where they are; None before they come aboard.

    Returns
    -------
    Round
        Of ``assess.round``.

    Raises
    ------
    InspectorError
        Where the minutes are less than none or more than ten days.
    """
    # Slow to import, and not needed by the first page.
    from inspector.assess.round.composition import compose_round

    if not 0 <= minutes <= LONGEST:
        raise InspectorError(f"The minutes must be 0 to {LONGEST}, and not {minutes:g}.")
    assessment = data.assessment_of(inspection)
    return compose_round(assessment, [*data.library_of(inspection).spaces], minutes, people, here)


def outlook(data: DataFolder, inspection: Inspection, made):
    """Return what a round of an inspection will and will not decide.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    made : Round

    Returns
    -------
    tuple of Outlook
    """
    from inspector.assess.round.outlook import outlook_of

    recorded = data.assessment_of(inspection).recorded
    return outlook_of(recorded, data.library_of(inspection), made)


def put_away(inspection: Inspection, who: str, not_had: Mapping[str, str]) -> tuple[str, ...]:
    """Record what cannot be had as not seen, with the reason, in one act.

    Parameters
    ----------
    inspection : Inspection
    who : str
    not_had : mapping of str to str
        Sheet -> reason.

    Returns
    -------
    tuple of str
        Ids of the first and the last entry, by which ``taken_back`` finds the act; empty where
        nothing was recorded.
    """
    changes = [(subject, _RATING, not_seen(reason)) for subject, reason in not_had.items()]
    entries = inspection.record(who, changes)
    return (entries[0].id, entries[-1].id) if entries else ()


def acted_on(inspection: Inspection, first: str, last: str) -> list[str]:
    """Return the sheets of an act of ``put_away`` that nobody has answered again since.

    Parameters
    ----------
    inspection : Inspection
    first, last : str
        Ids of its first and last entry.

    Returns
    -------
    list of str
    """
    numbers = _between(inspection.host, first, last)
    if not numbers:
        return []
    subjects = inspection.state.subjects(_SHEET)
    return [subject for subject in subjects if _is_of(inspection, subject, numbers)]


def _between(host: str, first: str, last: str) -> range:
    """The numbers of an act of this computer; none where the ids are no such act."""
    ends = [each.rpartition(":") for each in (first, last)]
    if any(device != host or not number.isdecimal() for device, _, number in ends):
        return range(0)
    return range(int(ends[0][2]), int(ends[1][2]) + 1)


def _is_of(inspection: Inspection, subject: str, numbers: range) -> bool:
    heads = inspection.state.heads(subject, _RATING)
    if len(heads) != 1 or heads[0].device != inspection.host or heads[0].value is None:
        return False
    return int(heads[0].id.rpartition(":")[2]) in numbers


def take_back(inspection: Inspection, who: str, first: str, last: str) -> int:
    """Undo an act of ``put_away``, in one act.

    Parameters
    ----------
    inspection : Inspection
    who : str
    first, last : str
        Ids of its first and last entry.

    Returns
    -------
    int
        How many checks are open again.
    """
    subjects = acted_on(inspection, first, last)
    return len(inspection.record(who, [(subject, _RATING, None) for subject in subjects]))
