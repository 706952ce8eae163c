"""Entries and photos in and out, as the walk page hands them over. JSON and raw bodies only; every answer is a sentence or data."""

import hashlib
import hmac
import re

from flask import Blueprint, abort, jsonify, request, send_file
from flask_wtf.csrf import generate_csrf

from inspector import __version__
from inspector.assess.judging import judge_sheet
from inspector.assess.limits import profiles_of
from inspector.record import copies, photos, strict_json
from inspector.record.entry import Entry, now, to_dict
from inspector.record.store import Inspection
from inspector.web.desk import desk, open_inspection
from inspector.web.security import caller

pages = Blueprint("exchange", __name__)
MOST_ENTRIES = 200
_SHA = re.compile(r"[0-9a-f]{64}")
_FILES = {"thumb": "thumb", "copy": "report"}


@pages.get("/session")
def session_facts():
    """Which computer this is, its clock (UTC) and version; a fresh form token for this computer's own pages ("" for a device, which has its pass)."""
    return jsonify(csrf=generate_csrf() if caller().here else "", host=desk().host, now=now(), version=__version__)


@pages.get("/exchange/<inspection_id>/entries")
def entries_out(inspection_id: str):
    """The entries after a position (all of them where the epoch is another one), with the judgements that stand."""
    inspection = open_inspection(inspection_id)
    after = request.args.get("after", "0")
    if not after.isascii() or not after.isdigit() or len(after) > 9:
        abort(400, "The position 'after' must be a whole number, 0 or more.")
    position = int(after) if request.args.get("epoch") == inspection.epoch else 0
    found = inspection.since(position)
    return jsonify(entries=[to_dict(entry) for entry in found], position=position + len(found), epoch=inspection.epoch,
                   judgements=judgements(inspection, found), held=inspection.held(), missing=inspection.missing())


@pages.post("/exchange/<inspection_id>/entries")
def entries_in(inspection_id: str):
    """Take a batch; the reply names the fate of each entry and judges the sheets that were touched."""
    inspection = open_inspection(inspection_id)
    body = strict_json.loads(request.get_data(cache=False))
    batch = body.get("entries") if isinstance(body, dict) else None
    if not isinstance(batch, list) or len(batch) > MOST_ENTRIES:
        abort(400, f'The body must be JSON such as {{"entries": [...]}} with at most {MOST_ENTRIES} entries.')
    device = caller().device
    taken = inspection.take_in(batch, only=device["id"] if device else "", origin=device["id"] if device else "this computer")
    return jsonify(fates=taken.fates, judgements=judgements(inspection, taken.stored), held=inspection.held(), missing=inspection.missing())


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
    judgement, cannot = judge_sheet(
        check, values, state.values("vessel"), state.values("brief"), profiles_of(state)[0], state.values("inspection")
    )
    if judgement is None:
        return {"cannot": cannot}
    source = judgement.source
    cited = ", ".join(part for part in (source.title, source.edition, source.clause, source.mark if source.mark != "seen" else "") if part)
    return {"rating": judgement.rating, "band": judgement.band, "sentence": judgement.sentence, "source": cited,
            "limit": judgement.limit, "notes": list(judgement.notes)}


@pages.put("/exchange/<inspection_id>/photo/<sha>")
def photo_in(inspection_id: str, sha: str):
    """Take the bytes of one photo's original, or of a device's copy of it (?size=copy); the digest of the bytes must be the one that was said."""
    inspection = open_inspection(inspection_id)
    size = request.args.get("size", "original")
    if size not in ("original", "copy") or not _SHA.fullmatch(sha):
        abort(400, "A photo is handed over under its SHA-256, with ?size=original or ?size=copy.")
    data = request.get_data(cache=False)
    _refuse_altered(data, sha if size == "original" else "")
    taken = photos.take_in(inspection.folder, data) if size == "original" else photos.take_in_copy(inspection.folder, sha, data)
    return jsonify(sha=taken.sha, kind=taken.kind, width=taken.width, height=taken.height, size=size)


def _refuse_altered(data: bytes, sha: str) -> None:
    stated = request.headers.get("X-Digest", f"sha256={sha}").lower()
    found = hashlib.sha256(data).hexdigest()
    fits = hmac.compare_digest(stated.encode(), f"sha256={found}".encode())
    if not fits or (sha and found != sha):
        abort(400, "The photo arrived incomplete or altered: its digest is not the one named. Send it again.")


@pages.get("/exchange/<inspection_id>/photo/<sha>")
def photo_there(inspection_id: str, sha: str):
    """Whether the original and a copy are here, whole: a device may let go of its own only when this says so."""
    inspection = open_inspection(inspection_id)
    path = photos.original(inspection.folder, sha)
    whole = path is not None and hashlib.sha256(path.read_bytes()).hexdigest() == sha
    return jsonify(original=whole, copy=bool(_SHA.fullmatch(sha)) and copies.copy(inspection.folder, sha) is not None)


@pages.get("/inspection/<inspection_id>/photo/<sha>/<size>")
def photo_out(inspection_id: str, sha: str, size: str):
    """A photo by digest as "thumb" or "copy": always a JPEG of our own making, never the bytes somebody sent."""
    inspection = open_inspection(inspection_id)
    makers = {"thumb": photos.thumbnail, "copy": photos.report_copy}
    if size not in makers or not _SHA.fullmatch(sha):
        abort(404)
    path = makers[size](inspection.folder, sha)
    if path is None:
        abort(404)
    # What was made of a device's copy gives way once the original is here, so it is not kept by browsers.
    return send_file(path.resolve(), mimetype="image/jpeg", max_age=31_536_000 if path.name == f"{sha}.{_FILES[size]}.jpg" else 0)
