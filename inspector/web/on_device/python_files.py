"""Python for the walk page, under addresses that name their content: the runtime, our own modules,
and the checklists of an inspection.

A device keeps each of them for good, and takes another one only under another address.
"""

import hashlib
from functools import cache

from flask import Blueprint, Response, abort, request

from inspector.checklists.model import Library
from inspector.services import browser_python
from inspector.web.current import data_folder, open_inspection
from inspector.web.on_device.compression import compressed, gzipped, ready_compressed

pages = Blueprint("python_files", __name__)
_KINDS = {
    "mjs": "text/javascript",
    "wasm": "application/wasm",
    "zip": "application/zip",
    "json": "application/json",
}
FOREVER = "max-age=31536000, immutable"


@cache
def assets() -> list[tuple[str, str]]:
    """Return address and SHA-256 of what every inspection needs of it."""
    root = runtime_address()
    found = [(f"{root}{name}", digest) for name, digest in browser_python.runtime().items()]
    return [*found, (modules_address(), _digest(browser_python.modules()))]


def runtime_address() -> str:
    """Return the folder in which the runtime's files are."""
    return f"/shipped/python/{browser_python.runtime_digest()}/"


def modules_address() -> str:
    """Return where our own modules are."""
    return f"/shipped/modules/{_digest(browser_python.modules())}.zip"


def addresses(inspection_id: str, library: Library) -> dict[str, str]:
    """Return what the page of an inspection hands to its worker.

    Parameters
    ----------
    inspection_id : str
    library : Library
        The checklists of that inspection.

    Returns
    -------
    dict of str to str
        ``runtime`` (a folder), ``modules`` and ``checklists``.
    """
    digest = _digest(library.tables_json)
    return {
        "runtime": runtime_address(),
        "modules": modules_address(),
        "checklists": f"/shipped/checklists/{inspection_id}/{digest}.json",
    }


def _digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


@pages.get("/shipped/python/<digest>/<name>")
def runtime_file(digest: str, name: str):
    """A file of the runtime that is shipped now; 404 for any other."""
    if digest != browser_python.runtime_digest() or name not in browser_python.runtime():
        abort(404)
    kind = _KINDS[name.rpartition(".")[2]]
    if name.endswith(".zip") or "gzip" not in request.accept_encodings:
        path = browser_python.runtime_folder() / name
        return _kept(Response(path.read_bytes(), mimetype=kind))
    return _kept(ready_compressed(_gzipped_runtime(name), kind))


@cache
def _gzipped_runtime(name: str) -> bytes:
    # Ten megabytes take half a second to compress: once, and not for every phone.
    return gzipped((browser_python.runtime_folder() / name).read_bytes())


@pages.get("/shipped/modules/<digest>.zip")
def modules(digest: str):
    """Our own modules as they are on this computer; 404 for any other."""
    if digest != _digest(browser_python.modules()):
        abort(404)
    return _kept(Response(browser_python.modules(), mimetype=_KINDS["zip"]))


@pages.get("/shipped/checklists/<inspection_id>/<digest>.json")
def checklists(inspection_id: str, digest: str):
    """The checklists of an inspection, as they are now; 404 for any other."""
    data = data_folder().library_of(open_inspection(inspection_id)).tables_json
    if digest != _digest(data):
        abort(404)
    return _kept(compressed(data, _KINDS["json"]))


def _kept(response: Response) -> Response:
    """The response, kept by the browser as long as it can: its address names its content."""
    response.headers["Cache-Control"] = FOREVER
    return response
