"""Two answers: where people answered differently without seeing each other, both are shown and one tap settles; notes may keep both texts."""

from typing import Any

from flask import Blueprint, abort, redirect, request, url_for

from inspector.assess.judging import typed_text, typed_unit
from inspector.record.entry import FIELD, SUBJECTS, Entry
from inspector.record.store import Inspection
from inspector.web.desk import desk, open_inspection
from inspector.web.who import who

pages = Blueprint("settle", __name__)
JOINED = ("note", "text", "particulars")   # fields whose answers may be kept both


@pages.post("/inspection/<inspection_id>/settle")
def settle(inspection_id: str):
    """Keep one of the standing answers (`keep` is its entry's id), or "both" of a text; the entry replaces all that were shown (`seen`)."""
    inspection = open_inspection(inspection_id)
    subject, field, keep = (request.form.get(name, "") for name in ("subject", "field", "keep"))
    if not SUBJECTS.fullmatch(subject) or not FIELD.fullmatch(field):
        abort(400, "Which answer is meant is not known; load the page again.")
    heads = inspection.state.heads(subject, field)
    seen = [head.id for head in heads if head.id in request.form.getlist("seen")]
    value = _kept(heads, field, keep)
    # an answer that came in since the page was made was not seen, so it stays standing and the disagreement stays shown
    inspection.say(who(), [(subject, field, value)], seen=lambda *_: seen, settles=True)
    return redirect(url_for("decide.decide", inspection_id=inspection.id) + "#differing")


def _kept(heads: list[Entry], field: str, keep: str) -> Any:
    if keep == "both" and field in JOINED:
        return "\n".join(dict.fromkeys(f"{typed_text(head.value)} ({head.who or 'nobody named'})" for head in heads))
    chosen = next((head for head in heads if head.id == keep), None)
    if chosen is None:
        abort(409, "That answer does not stand any more; load the page again.")
    return chosen.value


def differing(inspection: Inspection) -> list[dict[str, Any]]:
    """Every disagreement as the pages show it: what it is about, and each answer with who and when."""
    library = desk().library_of(inspection)
    return [
        {"subject": subject, "field": field, "about": _about(inspection, library, subject, field), "joined": field in JOINED,
         "answers": [{"id": head.id, "text": _text(head.value), "who": head.who or "nobody named", "at": head.at[:16].replace("T", " ")} for head in heads]}
        for subject, field, heads in inspection.state.disputes()
    ]


def _text(value: Any) -> str:
    return f"{typed_text(value)} {typed_unit(value)}".strip() or ("cleared" if value in (None, "") else str(value))


def _about(inspection: Inspection, library, subject: str, field: str) -> str:
    room, *rest = subject.split("/")
    if room != "sheet" or len(rest) != 3:
        return f"{room}: {field.replace('_', ' ')}"
    system = library.systems.get(rest[0])
    check = system.check(rest[2]) if system else None
    name = inspection.state.value(f"unit/{rest[0]}/{rest[1]}", "name", rest[1])
    reading = next((one.label for one in check.readings if f"reading/{one.id}" == field), "") if check else ""
    return f"{name}: {check.title if check else rest[2]}, {reading or field}"
