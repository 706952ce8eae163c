"""Entries and photos in and out, as the walk page hands them over. JSON and raw bodies only; every answer is a sentence or data."""

import hashlib

from flask import Blueprint, abort, jsonify, request, send_file
from flask_wtf.csrf import generate_csrf

from inspector.assess.judging import judge_sheet
from inspector.record import photos
from inspector.record.entry import Entry, to_dict
from inspector.record.store import Inspection
from inspector.web.desk import desk, open_inspection

pages = Blueprint("exchange", __name__)
MOST_ENTRIES = 200
LARGEST_BATCH = 1_000_000


@pages.get("/session")
def session_facts():
    """A fresh token for writes, and which computer this is."""
    return jsonify(csrf=generate_csrf(), host=desk().host)


@pages.get("/exchange/<inspection_id>/entries")
def entries_out(inspection_id: str):
    """The entries after a position (all of them where the epoch is another one), with the judgements that stand."""
    inspection = open_inspection(inspection_id)
    after = request.args.get("after", "0")
    if not after.isascii() or not after.isdigit() or len(after) > 9:
        abort(400, "The position 'after' must be a whole number, 0 or more.")
    position = int(after) if request.args.get("epoch") == inspection.epoch else 0
    found = inspection.since(position)
    return jsonify(
        entries=[to_dict(entry) for entry in found], position=position + len(found), epoch=inspection.epoch, judgements=judgements(inspection, found)
    )


@pages.post("/exchange/<inspection_id>/entries")
def entries_in(inspection_id: str):
    """Take a batch; the reply names the fate of each entry and judges the sheets that were touched."""
    inspection = open_inspection(inspection_id)
    if (request.content_length or 0) > LARGEST_BATCH:
        abort(413, "A batch of entries is at most 1 MB; send fewer at a time.")
    try:
        body = request.get_json(silent=True)
    except RecursionError:
        body = None
    batch = body.get("entries") if isinstance(body, dict) else None
    if not isinstance(batch, list) or len(batch) > MOST_ENTRIES:
        abort(400, f'The body must be JSON such as {{"entries": [...]}} with at most {MOST_ENTRIES} entries.')
    taken = inspection.take_in(batch)
    return jsonify(fates=taken.fates, judgements=judgements(inspection, taken.stored))


def judgements(inspection: Inspection, entries: list[Entry]) -> dict[str, dict]:
    """Judge the sheets whose readings these entries touch: subject -> judgement or {"cannot": sentence}."""
    touched = {entry.subject for entry in entries if entry.subject.startswith("sheet/") and entry.field.startswith("reading/")}
    found = {subject: _judged(inspection, subject) for subject in touched}
    return {subject: judged for subject, judged in found.items() if judged is not None}


def _judged(inspection: Inspection, subject: str) -> dict | None:
    _, system_id, _, check_id = subject.split("/")
    system = desk().library_of(inspection).systems.get(system_id)
    check = system.check(check_id) if system else None
    if check is None or not check.criterion:
        return None
    state = inspection.state
    values = {field.removeprefix("reading/"): value for field, value in state.values(subject).items() if field.startswith("reading/")}
    judgement, cannot = judge_sheet(check, values, state.values("vessel"), state.values("brief"))
    if judgement is None:
        return {"cannot": cannot}
    source = judgement.source
    cited = ", ".join(part for part in (source.title, source.edition, source.clause, source.mark if source.mark != "seen" else "") if part)
    return {"rating": judgement.rating, "band": judgement.band, "sentence": judgement.sentence, "source": cited,
            "limit": judgement.limit, "notes": list(judgement.notes)}


@pages.put("/exchange/<inspection_id>/photo/<sha>")
def photo_in(inspection_id: str, sha: str):
    """Take one photo's bytes; they must have the digest that the address names."""
    inspection = open_inspection(inspection_id)
    data = request.get_data(cache=False)
    if hashlib.sha256(data).hexdigest() != sha:
        abort(400, "The photo arrived incomplete or altered: its digest is not the one named. Send it again.")
    taken = photos.take_in(inspection.folder, data)
    return jsonify(sha=taken.sha, kind=taken.kind, width=taken.width, height=taken.height)


@pages.get("/inspection/<inspection_id>/photo/<sha>/<size>")
def photo_out(inspection_id: str, sha: str, size: str):
    """A photo by digest as "thumb" or "copy": always a JPEG of our own making, never the bytes somebody sent."""
    inspection = open_inspection(inspection_id)
    makers = {"thumb": photos.thumbnail, "copy": photos.report_copy}
    if size not in makers or len(sha) != 64 or not set(sha) <= set("0123456789abcdef"):
        abort(404)
    path = makers[size](inspection.folder, sha)
    if path is None:
        abort(404)
    return send_file(path.resolve(), mimetype="image/jpeg", max_age=31_536_000)
