"""Which sheets must be judged again after something was recorded, and what they are judged on.

An open phone learns a new judgement when its readings, the limits or the particulars changed. Here
the state is asked directly, since reading a whole inspection for every answer would keep the phone
waiting.
"""

from collections.abc import Iterable

from inspector.assess.from_state import read_limits, read_rows
from inspector.assess.judging import Basis
from inspector.assess.limit_settings import limit_sets_of
from inspector.assess.papers.certificates import DATES, certificate_of_bottom
from inspector.assess.recorded import CERTIFICATES, LIMITS, READING, SHEET
from inspector.checklists.model import Check, Library
from inspector.record.entry import Entry
from inspector.record.state import State
from inspector.record.typed_values import as_texts, texts

# The subjects whose fields a check may name under `from` in its checklist.
_PARTICULARS = ("vessel", "brief", "inspection")
_CERTIFICATE = "certificate/"


def basis_of(state: State, library: Library) -> Basis:
    """Collect what judgements depend on beside the readings.

    Parameters
    ----------
    state : State
        What is recorded of the inspection.
    library : Library
        The checklists of the inspection.

    Returns
    -------
    Basis
        Good for any number of sheets until something more is recorded.
    """
    vessel, brief, visit = (texts(state, subject) for subject in _PARTICULARS)
    limits, _ = limit_sets_of(read_limits(state), library.criteria)
    rows = read_rows(state).get(CERTIFICATES, {})
    certificate = certificate_of_bottom({row_id: as_texts(row) for row_id, row in rows.items()})
    return Basis(vessel, brief, visit, limits, library.criteria, certificate)


def check_of(subject: str, library: Library) -> Check | None:
    """Return the check that a sheet answers.

    Parameters
    ----------
    subject : str
        The sheet, "sheet/<system>/<unit>/<check>".
    library : Library
        The checklists of the inspection.

    Returns
    -------
    Check or None
        None where these checklists do not have it.
    """
    _, system_id, _, check_id = subject.split("/")
    system = library.systems.get(system_id)
    return system.check(check_id) if system else None


def affected_sheets(state: State, library: Library, entries: Iterable[Entry]) -> dict[str, Check]:
    """Find the sheets whose judgement these entries may have changed.

    A sheet is affected by its own readings, by the limits set for its criterion, and by the
    particulars that its check takes an input from, such as the year in which the vessel was built.

    Parameters
    ----------
    state : State
        What is recorded of the inspection, the entries included.
    library : Library
        The checklists of the inspection.
    entries : iterable of Entry
        What was recorded since the judgements were last asked for.

    Returns
    -------
    dict of str to Check
        Subject of each sheet and its check; only checks with a criterion, and only sheets that
        ever had a reading.
    """
    entries = tuple(entries)
    own = {entry.subject for entry in entries if _is_reading(entry)}
    origins = {
        f"{entry.subject}.{entry.field}" for entry in entries if entry.subject in _PARTICULARS
    }
    # A certificate that was taken out changes as much as one whose date was typed.
    if any(entry.subject.startswith(_CERTIFICATE) for entry in entries):
        origins |= {f"certificate.{name}" for name in DATES}
    limits = {
        entry.subject.removeprefix(LIMITS) for entry in entries if entry.subject.startswith(LIMITS)
    }
    # Most exchanges carry neither particulars nor limits; the other sheets are then not searched.
    candidates = _sheets_with_readings(state) if origins or limits else own
    found = {}
    for subject in sorted(candidates):
        check = check_of(subject, library)
        if check is None or not check.criterion:
            continue
        if subject in own or check.criterion in limits or origins & set(check.taken.values()):
            found[subject] = check
    return found


def _is_reading(entry: Entry) -> bool:
    return entry.subject.startswith(SHEET) and entry.field.startswith(READING)


def _sheets_with_readings(state: State) -> set[str]:
    """Every sheet for which a reading was recorded, even one that was cleared again."""
    return {subject for subject in state.subjects(SHEET) if _has_reading(state, subject)}


def _has_reading(state: State, subject: str) -> bool:
    return any(name.startswith(READING) for name in state.fields(subject))
