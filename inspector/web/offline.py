"""The app itself on a device: the service worker with the list of what it keeps, and the walk's own files under an address that names their edition.

The edition is a digest of everything the walk page is made of. A page of one edition therefore never runs scripts of another one, whatever a browser keeps.
"""

import hashlib
import json
from functools import cache
from pathlib import Path

from flask import Blueprint, Response, abort, url_for

from inspector import places

pages = Blueprint("offline", __name__)
_PAGE = ("walk/walk.html", "walk/check.html", "base.html")
_PLAIN = ("css/base.css", "css/pages.css", "js/light.js")
_YEAR = 31_536_000


@cache
def edition() -> str:
    """What the walk page is made of, as twelve characters; another one after any change of what is shipped."""
    found = hashlib.sha256()
    templates = places.shipped("templates")
    for path in [*(templates / name for name in _PAGE), _static() / "js/worker.js", *_own(), *_shared()]:
        found.update(f"{path.name}\0".encode() + hashlib.sha256(path.read_bytes()).digest())
    return found.hexdigest()[:12]


def address() -> str:
    """Where the walk's own files of this edition lie, for the page's template."""
    return f"/shipped/{edition()}"


def _static() -> Path:
    return places.shipped("static")


def _own() -> list[Path]:
    return [_static() / "css/walk.css", *sorted((_static() / "js/walk").glob("*.js"))]


def _shared() -> list[Path]:
    return [*(_static() / name for name in _PLAIN), *sorted((_static() / "fonts/screen").glob("*.woff2"))]


def assets() -> list[tuple[str, str]]:
    """(address, SHA-256) of every file that the walk page needs."""
    own = [(f"{address()}/{path.relative_to(_static()).as_posix()}", path) for path in _own()]
    shared = [(url_for("static", filename=path.relative_to(_static()).as_posix()), path) for path in _shared()]
    return [(where, hashlib.sha256(path.read_bytes()).hexdigest()) for where, path in own + shared]


@pages.get("/worker.js")
def worker():
    """The service worker; it stands at the root, because it may only keep what lies beside or below it."""
    head = f"const EDITION = {json.dumps(edition())};\nconst ASSETS = {json.dumps(assets())};\n"
    response = Response(head + (_static() / "js/worker.js").read_text(encoding="utf-8"), mimetype="text/javascript")
    response.headers["Cache-Control"] = "no-cache"
    return response


@pages.get("/shipped/<asked>/<path:name>")
def shipped(asked: str, name: str):
    """A file of the walk, of this edition only: 404 for an edition that is no longer shipped, and for any other file."""
    path = {one.relative_to(_static()).as_posix(): one for one in _own()}.get(name)
    if path is None or asked != edition():
        abort(404)
    response = Response(path.read_bytes(), mimetype="text/css" if path.suffix == ".css" else "text/javascript")
    response.headers["Cache-Control"] = f"max-age={_YEAR}, immutable"
    return response
