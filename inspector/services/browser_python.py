"""What a browser needs to run our own Python: its runtime, our modules, an inspection's checklists.

The modules are packed from the installed package itself, so that there is no second copy that could
differ from what runs on the computer.
"""

import hashlib
import io
import zipfile
from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path

from inspector import places

# Whole rooms, and of the record what neither reads nor writes a file.
ROOMS = ("values", "criteria", "checklists", "assess", "in_browser")
RECORD = ("__init__", "entry", "state", "typed_values", "unseen")
ROOT = ("__init__", "places")
RUNTIME = "vendor/pyodide"
_SUMS = "SHA256SUMS"
# The earliest that a zip can state: the same sources give the same bytes whenever they are packed.
_NO_TIME = (1980, 1, 1, 0, 0, 0)


@cache
def modules() -> bytes:
    """Return our modules and the declared criteria as one zip, the same bytes each time."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as archive:
        for name, path in sorted(_packed()):
            entry = zipfile.ZipInfo(name, _NO_TIME)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, path.read_bytes())
    return packed.getvalue()


def _packed() -> Iterator[tuple[str, Path]]:
    """Name in the archive and file, laid out as in a checkout."""
    yield from _beside(places.PACKAGE, "inspector", _sources())
    criteria = places.shipped("checklists")
    yield from _beside(criteria, "checklists", (criteria / "criteria").glob("*.toml"))


def _sources() -> Iterator[Path]:
    package = places.PACKAGE
    for room in ROOMS:
        yield from (package / room).rglob("*.py")
    yield from (package / "record" / f"{name}.py" for name in RECORD)
    yield from (package / f"{name}.py" for name in ROOT)


def _beside(root: Path, name: str, paths: Iterable[Path]) -> Iterator[tuple[str, Path]]:
    for path in paths:
        yield f"{name}/{path.relative_to(root).as_posix()}", path


@cache
def runtime() -> dict[str, str]:
    """Return the runtime's files, name -> SHA-256 as written down when they were fetched."""
    lines = (runtime_folder() / _SUMS).read_text(encoding="ascii").splitlines()
    pairs = (line.split() for line in lines)
    return {name: digest for digest, name in pairs}


def runtime_folder() -> Path:
    """Return where the runtime's files are."""
    return places.shipped("static") / RUNTIME


@cache
def runtime_digest() -> str:
    """Return twelve characters that change with any file of the runtime."""
    return hashlib.sha256((runtime_folder() / _SUMS).read_bytes()).hexdigest()[:12]
