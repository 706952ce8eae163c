"""Entries and photos in and out, as the walk page hands them over.

Bodies are JSON or raw bytes; every answer is a sentence or data.
"""

import hashlib
import hmac
import re

from flask import Blueprint, abort, jsonify, request, send_file
from flask_wtf.csrf import generate_csrf

from inspector import __version__
from inspector.record import photos, strict_json
from inspector.record.entry import Entry, EntryRefused, now, to_dict
from inspector.record.inspection import Inspection
from inspector.record.photos.camera_time import keep_camera_time
from inspector.record.photos.device_copies import device_copy
from inspector.web.current import data_folder, open_inspection, sharing
from inspector.web.on_device import offline
from inspector.web.security import caller, give_cookie

pages = Blueprint("exchange", __name__)
# A bound for one request; a device that has more hands over in several.
MOST_ENTRIES = 200
_SHA = re.compile(r"[0-9a-f]{64}")
_FILES = {"thumb": "thumb", "copy": "report"}
_YEAR = 31_536_000  # seconds
# What the walk writes, and so all that a joined device may write: the fields of each kind of
# subject. Brief, vessel, units, settings, profiles, verdicts and signatures are the laptop's.
DEVICE_MAY_WRITE = {
    "sheet": re.compile(r"rating|depth|note|gate|reading/[a-z0-9_-]+"),
    # What was seen of a unit in passing, and nothing else of it.
    "unit": re.compile(r"walked_past"),
    "finding": re.compile(r"title|text|action|urgency|on|check|gone"),
    "photo": re.compile(r"on|kind|taken|name|caption"),
    # How she is met changes during a visit: a set is started, she leaves the quay.
    "inspection": re.compile(r"state|berth|running|tanks|panels|papers"),
}


@pages.get("/session")
def session_facts():
    """Which computer this is, its clock (UTC), version and walk page, and a token for its pages."""
    # A device gets no form token: its pass takes the place of one.
    facts = jsonify(
        csrf=generate_csrf() if caller().here else "",
        host=data_folder().host,
        now=now(),
        version=__version__,
        # A page that was kept open across an update compares this with its own edition.
        edition=offline.edition(),
    )
    device = caller().device
    if caller().by_token and device:
        # Where the browser's data were cleared under an open page, the page has its pass yet, and
        # without the cookie it could not be loaded again.
        give_cookie(facts, device["id"])
    return facts


@pages.get("/exchange/<inspection_id>/entries")
def entries_out(inspection_id: str):
    """The entries after a position, or all of them in another epoch, with their judgements."""
    inspection = open_inspection(inspection_id, refresh=False)
    after = request.args.get("after", "0")
    if not after.isascii() or not after.isdigit() or len(after) > 9:
        abort(400, "The position 'after' must be a whole number, 0 or more.")
    # Another epoch means another process, which may have read the journals in another order.
    position = int(after) if request.args.get("epoch") == inspection.epoch else 0
    found = inspection.since(position)
    return jsonify(
        entries=[to_dict(entry) for entry in found],
        position=position + len(found),
        epoch=inspection.epoch,
        judgements=judgements(inspection, found),
        held=inspection.complete_up_to(),
        missing=inspection.missing(),
    )


@pages.post("/exchange/<inspection_id>/entries")
def entries_in(inspection_id: str):
    """Take a batch; the reply has the outcome of each entry and judges the affected sheets."""
    inspection = open_inspection(inspection_id, refresh=False)
    body = strict_json.loads(request.get_data(cache=False))
    batch = body.get("entries") if isinstance(body, dict) else None
    if not isinstance(batch, list) or len(batch) > MOST_ENTRIES:
        abort(
            400,
            'The body must be JSON such as {"entries": [...]} '
            f"with at most {MOST_ENTRIES} entries.",
        )
    # A device hands over its own entries only, whatever names it had; this computer takes any.
    device = (caller().device or {}).get("id", "")
    names = sharing().devices.names_of(device, _authors(batch), _proofs(body)) if device else ()
    # This computer's own pages may record everything.
    check = refuse_beyond_walk if device else None
    taken = inspection.take_in(batch, names, device or "this computer", check=check)
    return jsonify(
        fates=taken.outcomes,
        judgements=judgements(inspection, taken.stored),
        held=inspection.complete_up_to(),
        missing=inspection.missing(),
    )


def _authors(batch: list) -> set[str]:
    """The devices that a batch names, whatever else is in it."""
    named = (entry.get("device") for entry in batch if isinstance(entry, dict))
    return {name for name in named if isinstance(name, str)}


def _proofs(body: dict) -> dict[str, str]:
    """The token of an earlier name of the browser, by which it proves that the name was its own."""
    name, proof = body.get("device"), body.get("proof")
    return {name: proof} if isinstance(name, str) and isinstance(proof, str) else {}


def refuse_beyond_walk(entry: Entry) -> None:
    """Refuse an entry that the walk page of a joined device does not write.

    Raises
    ------
    EntryRefused
        With what the device may write.
    """
    fields = DEVICE_MAY_WRITE.get(entry.subject.partition("/")[0])
    if fields is None or not fields.fullmatch(entry.field):
        raise EntryRefused(
            f"A joined device records checks, findings, photos and her state; {entry.field!r} of "
            f"{entry.subject} is recorded on the computer itself.",
            entry.id,
        )


def judgements(inspection: Inspection, entries: list[Entry]) -> dict[str, dict | None]:
    """Judge the sheets that entries affect, as ``judged_sheets`` does."""
    # What judges is imported by the first answer: the first page needs none of it.
    from inspector.assess.judged_sheets import judged_sheets

    return judged_sheets(inspection.state, data_folder().library_of(inspection), entries)


@pages.put("/exchange/<inspection_id>/photo/<sha>")
def photo_in(inspection_id: str, sha: str):
    """Take a photo's original, or a device's copy of it (?size=copy), if its digest fits."""
    inspection = open_inspection(inspection_id)
    size = request.args.get("size", "original")
    if size not in ("original", "copy") or not _SHA.fullmatch(sha):
        abort(400, "A photo is handed over under its SHA-256, with ?size=original or ?size=copy.")
    # The place is taken before the bytes are read: where one server thread reads them, a slow
    # device must not take them all.
    with photos.place_for_request():
        data = request.get_data(cache=False)
        _refuse_altered(data, sha if size == "original" else "")
        if size == "original":
            taken = photos.take_in(inspection.folder, data)
        else:
            taken = photos.take_in_copy(inspection.folder, sha, data)
    if size == "original":
        keep_camera_time(inspection, taken)
    return jsonify(
        sha=taken.sha,
        kind=taken.kind,
        width=taken.width,
        height=taken.height,
        taken_at=taken.taken_at,
        size=size,
    )


def _refuse_altered(data: bytes, sha: str) -> None:
    """Refuse bytes whose digest is not the one stated, nor that of the original ("" for a copy)."""
    # Compared in constant time, as every digest is.
    stated = request.headers.get("X-Digest", f"sha256={sha}").lower()
    found = hashlib.sha256(data).hexdigest()
    fits = hmac.compare_digest(stated.encode(), f"sha256={found}".encode())
    if not fits or (sha and found != sha):
        abort(
            400,
            "The photo arrived incomplete or altered: its digest is not the one named. "
            "Send it again.",
        )


@pages.get("/exchange/<inspection_id>/photo/<sha>")
def photo_there(inspection_id: str, sha: str):
    """Whether the original and a copy are here, whole."""
    # A device deletes its own only once this says so.
    inspection = open_inspection(inspection_id)
    path = photos.original(inspection.folder, sha)
    whole = path is not None and hashlib.sha256(path.read_bytes()).hexdigest() == sha
    return jsonify(
        original=whole,
        copy=bool(_SHA.fullmatch(sha)) and device_copy(inspection.folder, sha) is not None,
    )


@pages.get("/inspection/<inspection_id>/photo/<sha>/<size>")
def photo_out(inspection_id: str, sha: str, size: str):
    """A photo by its digest as "thumb" or "copy"."""
    # Always a JPEG of our own making, never the bytes that somebody sent.
    inspection = open_inspection(inspection_id)
    makers = {"thumb": photos.thumbnail, "copy": photos.report_copy}
    if size not in makers or not _SHA.fullmatch(sha):
        abort(404)
    with photos.place_for_request():
        path = makers[size](inspection.folder, sha)
    if path is None:
        abort(404)
    # What was made of a device's copy is replaced once the original is here: browsers do not keep
    # it.
    of_original = path.name == f"{sha}.{_FILES[size]}.jpg"
    return send_file(path.resolve(), mimetype="image/jpeg", max_age=_YEAR if of_original else 0)
