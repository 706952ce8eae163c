"""What the list says of one inspection: names, state, condition, coverage and verdicts."""

from typing import Any

from inspector.record.inspection import Inspection
from inspector.record.typed_values import typed_text
from inspector.services.data_folder import DataFolder, title_of
from inspector.values.errors import InspectorError

# In the order in which an inspection passes through them.
STATES = ("not begun", "in work", "decided")
Row = dict[str, Any]


def summary_of(data: DataFolder, inspection_id: str) -> Row:
    """Open an inspection and sum it up.

    Parameters
    ----------
    data : DataFolder
    inspection_id : str

    Returns
    -------
    dict
        One that cannot be read has the reason in ``wrong`` and no systems.
    """
    try:
        return _summed_up(data, inspection_id)
    # One broken inspection must not hide the others.
    except (InspectorError, OSError) as problem:
        return empty_row(inspection_id) | {"wrong": str(problem)}


def _summed_up(data: DataFolder, inspection_id: str) -> Row:
    """The summary of an inspection that can be read."""
    from inspector.assess.summary_sentences import next_act, summary_sentences

    # The list passes over every inspection once; none of them need stay open for it.
    inspection = data.inspections.get(inspection_id, keep_open=False)
    assessment = data.assessment_of(inspection)
    act = next_act(assessment)
    conditions = [part.whole.condition for part in assessment.systems]
    decided = [bool(part.whole.decision) for part in assessment.systems]
    seen = sum(condition.seen for condition in conditions)
    return empty_row(inspection_id) | {
        **_names(inspection),
        "state": _state(seen, decided),
        "seen": seen,
        "checks": sum(condition.applicable for condition in conditions),
        "findings": len(assessment.findings),
        "damage": [str(damage) for damage in inspection.damage],
        "systems": [_system(part) for part in assessment.systems],
        "sentences": summary_sentences(assessment),
        "next_step": act.step,
        "next_text": act.text,
    }


def empty_row(inspection_id: str) -> Row:
    """Return the row of an inspection of which nothing is known yet.

    Parameters
    ----------
    inspection_id : str

    Returns
    -------
    dict
    """
    texts = dict.fromkeys(("date", "place", "imo", "year", "client", "changed", "state"), "") | {
        "length": "",
        "next_step": "walk",
        "next_text": "open the walk",
    }
    numbers = dict.fromkeys(("seen", "checks", "findings"), 0)
    lists = {"damage": [], "systems": [], "sentences": []}
    return {"id": inspection_id, "title": inspection_id, **texts, **numbers, **lists, "wrong": ""}


def _names(inspection: Inspection) -> dict[str, str]:
    """What an inspection is found by."""
    fields = {
        "date": ("inspection", "date"),
        "place": ("inspection", "place"),
        "imo": ("vessel", "imo"),
        "year": ("vessel", "year"),
        "length": ("vessel", "length"),
        "client": ("brief", "client"),
    }
    found = {name: typed_text(inspection.state.value(*field)) for name, field in fields.items()}
    # By the devices' own clocks, as entries are: good for sorting a list, and for nothing else.
    changed = max((entry.at for entry in inspection.entries), default="")
    return {"title": str(title_of(inspection)), **found, "changed": changed}


def _state(seen: int, decided: list[bool]) -> str:
    if decided and all(decided):
        return "decided"
    # A brief and units alone are preparation: work begins with the first answer.
    return "in work" if seen else "not begun"


def _system(part: Any) -> dict[str, Any]:
    whole = part.whole
    condition = whole.condition
    return {
        "name": part.system.name,
        "verdict": whole.verdict,
        "firmness": whole.firmness,
        "word": whole.spoken,
        "sentence": whole.reason if whole.decision else whole.proposal.sentence,
        "condition": condition.shown,
        "low": condition.low,
        "high": condition.high,
        "coverage": condition.coverage,
    }
