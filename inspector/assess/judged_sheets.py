"""The sheets that something recorded affects, judged: what the computer and a device both answer.

The computer's exchange and the walk's own Python (``inspector/in_browser``) call this one function,
so that a device below deck and the computer cannot differ.
"""

from collections.abc import Iterable
from typing import Any

from inspector.assess.affected_sheets import affected_sheets, basis_of
from inspector.assess.from_state import read_readings
from inspector.assess.judging import judge_sheet
from inspector.checklists.model import Library
from inspector.criteria.core.judgement import Judgement
from inspector.record.entry import Entry
from inspector.record.state import State


def judged_sheets(
    state: State, library: Library, entries: Iterable[Entry]
) -> dict[str, dict[str, Any] | None]:
    """Judge the sheets that entries affect, whether by a reading, by limits or by particulars.

    Parameters
    ----------
    state : State
        What is recorded of the inspection, the entries included.
    library : Library
        The checklists of the inspection.
    entries : iterable of Entry
        What was recorded since judgements were last asked for.

    Returns
    -------
    dict of str to (dict or None)
        Subject of each sheet -> its judgement as the walk page shows it, ``{"cannot": sentence}``,
        or None where every reading was cleared, so that nothing is judged any more.
    """
    affected = affected_sheets(state, library, entries)
    if not affected:
        return {}
    basis = basis_of(state, library)
    return {
        subject: _as_data(*judge_sheet(check, read_readings(state, subject), basis))
        for subject, check in affected.items()
    }


def _as_data(judgement: Judgement | None, cannot: str) -> dict[str, Any] | None:
    """A judgement as plain data."""
    if judgement is None:
        return {"cannot": cannot} if cannot else None
    return {
        "rating": judgement.rating,
        "band": judgement.band,
        "sentence": judgement.sentence,
        "source": judgement.source.as_cited(),
        "limit": judgement.limit,
        "notes": list(judgement.notes),
    }
