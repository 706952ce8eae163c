"""The round of a visit for pages: what is chosen for the time there is, and what cannot be had."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from inspector.assess.round.time_left import LONGEST, visit_of
from inspector.record.inspection import Inspection
from inspector.services.data_folder import DataFolder
from inspector.values.errors import InspectorError
from inspector.values.vocabulary import not_seen

_SHEET, _RATING = "sheet/", "rating"


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


def round_to_follow(
    data: DataFolder, inspection: Inspection, now: datetime
) -> dict[str, Any] | None:
    """Return the round for the time that is left, as the walk page follows it.

    Parameters
    ----------
    data : DataFolder
    inspection : Inspection
    now : datetime
        With its zone.

    Returns
    -------
    dict or None
        None where nobody said how long the visit is: the page would otherwise wait for an
        assessment that nobody asked for.
    """
    visit = visit_of(inspection.state, now)
    if not visit.known:
        return None
    from inspector.assess.round.followed_round import composed

    spaces = [*data.library_of(inspection).spaces]
    return composed(data.assessment_of(inspection), inspection.state, spaces, visit, now)


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
