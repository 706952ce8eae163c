"""Two answers given on devices that had not seen each other: one is kept, or both texts."""

from typing import Any

from flask import Blueprint, abort, redirect, request, url_for

from inspector.checklists.model import Library
from inspector.record.entry import FIELD, SUBJECTS, Entry
from inspector.record.inspection import Inspection
from inspector.record.typed_values import typed_text, typed_unit
from inspector.web.current import data_folder, open_inspection, surveyor_name

pages = Blueprint("settle", __name__)
JOINED = ("note", "text", "particulars")  # fields whose answers may be kept both
NOBODY = "nobody named"


@pages.post("/inspection/<inspection_id>/settle")
def settle(inspection_id: str):
    """Keep the answer with the id `keep`, or "both" texts, in place of the entries in `seen`."""
    inspection = open_inspection(inspection_id)
    subject, name, keep = (request.form.get(part, "") for part in ("subject", "field", "keep"))
    if not SUBJECTS.fullmatch(subject) or not FIELD.fullmatch(name):
        abort(400, "Which answer is meant is not known; load the page again.")
    # Only what is a head now can be settled; an id from elsewhere is not one.
    heads = inspection.state.heads(subject, name)
    # An answer that came in since the page was made was not seen: it stays, and so does the
    # disagreement.
    seen = [head.id for head in heads if head.id in request.form.getlist("seen")]
    changes = [(subject, name, _kept(heads, name, keep))]
    # Even where the kept answer is one of them: an entry says that the disagreement is over, and by
    # whom.
    inspection.record(surveyor_name(), changes, seen=lambda *_: seen, settles=True)
    return redirect(url_for("decide.decide", inspection_id=inspection.id) + "#differing")


def _kept(heads: list[Entry], name: str, keep: str) -> Any:
    """The value that is kept: that of one answer, or both texts, each with its author."""
    if keep == "both" and name in JOINED:
        texts = [f"{typed_text(head.value)} ({head.who or NOBODY})" for head in heads]
        # The same text of the same author is kept once.
        return "\n".join(dict.fromkeys(texts))
    for head in heads:
        if head.id == keep:
            return head.value
    abort(409, "That answer was replaced meanwhile; load the page again.")


def differing(inspection: Inspection) -> list[dict[str, Any]]:
    """Return every disagreement as the pages show it.

    Parameters
    ----------
    inspection : Inspection

    Returns
    -------
    list of dict
        Subject and field, what it is about, whether both may be kept, and the answers with who
        gave them and when.
    """
    library = data_folder().library_of(inspection)
    return [
        {
            "subject": subject,
            "field": name,
            "about": _about(inspection, library, subject, name),
            "joined": name in JOINED,
            "answers": [_answer(head) for head in heads],
        }
        for subject, name, heads in inspection.state.disputes()
    ]


def _answer(head: Entry) -> dict[str, str]:
    """Return one of the answers that disagree, as the page shows it."""
    return {
        "id": head.id,
        "text": _text(head.value),
        "who": head.who or NOBODY,
        "at": head.at[:16].replace("T", " "),
    }


def _text(value: Any) -> str:
    """Return a recorded value as text; an empty one was cleared."""
    text = f"{typed_text(value)} {typed_unit(value)}".strip()
    return text or ("cleared" if value in (None, "") else str(value))


def _about(inspection: Inspection, library: Library, subject: str, name: str) -> str:
    """What a disagreement is about: for a sheet its unit, check and reading by their names."""
    kind, *place = subject.split("/")
    if kind != "sheet" or len(place) != 3:
        return f"{kind}: {name.replace('_', ' ')}"
    system_id, unit_id, check_id = place
    unit = typed_text(inspection.state.value(f"unit/{system_id}/{unit_id}", "name")) or unit_id
    system = library.systems.get(system_id)
    check = system.check(check_id) if system else None
    if check is None:
        return f"{unit}: {check_id}, {name}"
    labels = {f"reading/{reading.name}": reading.label for reading in check.readings}
    return f"{unit}: {check.title}, {labels.get(name) or name}"
