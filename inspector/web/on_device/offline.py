"""The app on a device: the service worker, and the walk's files under an address of their edition.

The edition is a digest of everything the walk page is made of. A page of one edition therefore
never runs scripts of another one, whatever a browser keeps.
"""

import hashlib
import json
from functools import cache
from pathlib import Path

from flask import Blueprint, Response, abort, url_for

from inspector import places
from inspector.web.on_device import python_files
from inspector.web.on_device.compression import compressed
from inspector.web.security import POLICY_OF_PYTHON

pages = Blueprint("offline", __name__)
_PAGE = ("walk/walk.html", "walk/check.html", "base.html")
_PLAIN = ("css/base.css", "css/pages.css", "js/light.js")
_PYTHON_WORKER = "js/walk/python/python_worker.js"


@cache
def edition() -> str:
    """Return what the walk page is made of, as twelve characters that change with any file."""
    found = hashlib.sha256()
    templates = [places.shipped("templates") / name for name in _PAGE]
    for path in [*templates, _static() / "js/worker.js", *_own(), *_shared()]:
        found.update(f"{path.name}\0".encode() + hashlib.sha256(path.read_bytes()).digest())
    # The page names them, and judges by them.
    found.update(json.dumps(python_files.assets()).encode())
    # An edition is the content of all that the walk page needs: the worker's cache is renewed with
    # it.
    return found.hexdigest()[:12]


def address() -> str:
    """Return where the walk's own files of this edition are, for the page's template."""
    return f"/shipped/{edition()}"


def _static() -> Path:
    return places.shipped("static")


def _name(path: Path) -> str:
    """A static file's name in addresses."""
    return path.relative_to(_static()).as_posix()


def _own() -> list[Path]:
    """The walk's own files, which have an address of their edition."""
    styles = [_static() / "css/walk.css", *sorted((_static() / "css/walk").glob("*.css"))]
    return [*styles, *sorted((_static() / "js/walk").rglob("*.js"))]


def _shared() -> list[Path]:
    """The files that other pages use as well."""
    styles = sorted((_static() / "css/pages").glob("*.css"))
    fonts = sorted((_static() / "fonts/screen").glob("*.woff2"))
    return [*(_static() / name for name in _PLAIN), *styles, *fonts]


def assets() -> list[tuple[str, str]]:
    """Return address and SHA-256 of every file that the walk page needs."""
    # Under the edition, so that one page never runs with the scripts of two.
    places_of = {f"{address()}/{_name(path)}": path for path in _own()}
    places_of |= {url_for("static", filename=_name(path)): path for path in _shared()}
    return [
        (place, hashlib.sha256(path.read_bytes()).hexdigest()) for place, path in places_of.items()
    ]


@pages.get("/worker.js")
def worker():
    """The service worker."""
    # At the root, because a service worker may only keep what is beside or below it.
    lists = {"EDITION": edition(), "ASSETS": assets(), "PYTHON": python_files.assets()}
    head = "".join(f"const {name} = {json.dumps(value)};\n" for name, value in lists.items())
    response = Response(
        head + (_static() / "js/worker.js").read_text(encoding="utf-8"), mimetype="text/javascript"
    )
    # Asked for anew each time: a worker that the browser kept would hide every later edition.
    response.headers["Cache-Control"] = "no-cache"
    return response


@pages.get("/shipped/<asked>/<path:name>")
def shipped(asked: str, name: str):
    """A file of the walk, of the edition that is shipped now; 404 for any other."""
    path = {_name(path): path for path in _own()}.get(name)
    # An older page must not get the scripts of a newer one.
    if path is None or asked != edition():
        abort(404)
    kind = "text/css" if path.suffix == ".css" else "text/javascript"
    # A tablet's hotspot is slow, and scripts and styles are a third of their size compressed.
    response = compressed(path.read_bytes(), kind)
    response.headers["Cache-Control"] = python_files.FOREVER
    # A worker has the policy of its own file: the page itself may compile nothing.
    if name == _PYTHON_WORKER:
        response.headers["Content-Security-Policy"] = POLICY_OF_PYTHON
    return response
