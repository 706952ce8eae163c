"""Reads the files of criteria that only compare: the shipped ones and a surveyor's own.

The form of a file is described in ``inspector/criteria/core/declared.py``. The shipped files are
held to it by a test; a surveyor's own are checked each time they are read, and every mistake is
named.
"""

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path

from inspector import places
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.declared import declared_criterion, declared_sources
from inspector.criteria.core.declared_faults import faults_of_file

FOLDER = "criteria"
# An inspection keeps its checklists in one flat folder, since a bundle takes no other.
KEPT_AS = "criteria-"


def shipped_files() -> list[Path]:
    """Return the shipped files, sorted by name."""
    return sorted((places.shipped("checklists") / FOLDER).glob("*.toml"))


def shipped_criteria() -> Iterator[Criterion]:
    """Yield the criteria of the shipped files."""
    for path in shipped_files():
        yield from _criteria_of(tomllib.loads(path.read_text(encoding="utf-8")))


def _criteria_of(data: Mapping, own: bool = False) -> Iterator[Criterion]:
    sources = declared_sources(data.get("source", {}), own)
    for raw in data["criterion"]:
        yield declared_criterion(raw, sources)


def own_files(folder: Path) -> list[Path]:
    """Return the files of a surveyor's own criteria in a checklist folder.

    Parameters
    ----------
    folder : Path
        A checklist folder as a surveyor makes it (``criteria/x.toml``), or as an inspection keeps
        it (``criteria-x.toml``).

    Returns
    -------
    list of Path
        Without copies of the shipped files, which he may have put beside his own.
    """
    found = [*folder.glob(f"{FOLDER}/*.toml"), *folder.glob(f"{KEPT_AS}*.toml")]
    shipped = {path.name: path for path in shipped_files()}
    return sorted(path for path in found if not _is_copy(path, shipped.get(path.name)))


def _is_copy(path: Path, shipped: Path | None) -> bool:
    return shipped is not None and path.read_bytes() == shipped.read_bytes()


def kept_name(path: Path) -> str:
    """Return the name under which an inspection keeps a file of a surveyor's own criteria."""
    return f"{KEPT_AS}{path.name.removeprefix(KEPT_AS)}"


def own_tables(
    folder: Path, shipped_names: Mapping[str, Criterion], faults: list[str]
) -> dict[str, dict]:
    """Return what a surveyor's own criteria files hold; his mistakes are added to a list.

    Parameters
    ----------
    folder : Path
        As for ``own_files``.
    shipped_names : mapping of str to Criterion
        What is shipped, whose names he may not use again.
    faults : list of str
        Receives a sentence for each mistake: file, criterion, key, what is wrong, what would be
        right.

    Returns
    -------
    dict of str to dict
        Name under which an inspection keeps the file -> its tables, of files without mistakes.
    """
    found: dict[str, dict] = {}
    for path in own_files(folder):
        label = f"{FOLDER}/{path.name.removeprefix(KEPT_AS)}"
        taken = dict.fromkeys(shipped_names, "shipped, and cannot be replaced")
        taken |= dict.fromkeys(criteria_in(found), "in another file of your own already")
        mistakes, data = _read_own(path, label, taken)
        faults += mistakes
        if not mistakes:
            found[kept_name(path)] = data
    return found


def criteria_in(tables: Mapping[str, Mapping]) -> dict[str, Criterion]:
    """Return a surveyor's own criteria by their names, of the tables of his files."""
    return {rule.name: rule for data in tables.values() for rule in _criteria_of(data, own=True)}


def _read_own(path: Path, label: str, taken: Mapping[str, str]) -> tuple[list[str], dict]:
    try:
        data = tomllib.loads(path.read_text(encoding="utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as problem:
        return [f"{label}: not readable as TOML: {problem}."], {}
    return faults_of_file(label, data, taken, own=True), data
