"""A data folder, open: its catalogue, its inspections and the checklists.

What judges and assesses is imported when something is judged: the first page needs none of it.
"""

import os
import re
import secrets
import shutil
import socket
import tempfile
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any
from weakref import WeakKeyDictionary

from inspector import places
from inspector.record import durable
from inspector.record.catalogue import Catalogue
from inspector.record.inspection import Inspection
from inspector.record.inspections import Inspections
from inspector.record.typed_values import typed_text

if TYPE_CHECKING:
    from inspector.assess.model import Assessment
    from inspector.checklists.model import Library


@dataclass
class DataFolder:
    """One data folder, open.

    Parameters
    ----------
    path : Path
    catalogue : Catalogue
    inspections : Inspections
    host : str
        The name under which this computer writes.
    """

    path: Path
    catalogue: Catalogue
    inspections: Inspections
    host: str
    # What is made of an inspection is forgotten together with it.
    _remembered: WeakKeyDictionary[Inspection, dict[str, tuple]] = field(
        default_factory=WeakKeyDictionary
    )

    @property
    def library(self) -> "Library":
        """The checklists with which a new inspection begins."""
        return self._of_new_inspections[0]

    @property
    def own_faults(self) -> tuple[str, ...]:
        """Mistakes in the surveyor's own checklists, which are then not used."""
        return self._of_new_inspections[1] if _has_own_checklists(self.path) else ()

    @cached_property
    def _of_new_inspections(self) -> "tuple[Library, tuple[str, ...]]":
        return _library(self.path)

    def library_of(self, inspection: Inspection) -> "Library":
        """Return the checklists as they were when an inspection began."""
        # Whatever is recorded later, an inspection keeps the checklists with which it began.
        of_this = self._remembered.setdefault(inspection, {})
        if "checklists" not in of_this:
            of_this["checklists"] = ((), self._library_in(inspection.folder))
        return of_this["checklists"][1]

    def _library_in(self, folder: Path) -> "Library":
        """The checklists in an inspection's folder, shared with those that have the same ones."""
        from inspector.checklists.shared_libraries import SHARED

        return SHARED.of(folder / "checklists")

    def assessment_of(self, inspection: Inspection) -> "Assessment":
        """Return the inspection assessed as it is now."""
        from inspector.assess.assessment import assess
        from inspector.assess.from_state import read_inspection

        def make() -> "Assessment":
            return assess(read_inspection(inspection.state), self.library_of(inspection))

        return self.remember("assessment", inspection, make)

    def remember(self, what: str, inspection: Inspection, make: Callable[[], Any]) -> Any:
        """Return what is made of an inspection, made again only once more is recorded in it.

        Parameters
        ----------
        what : str
            A name for what is made.
        inspection : Inspection
        make : callable
            Makes it from nothing but the inspection's entries.

        Returns
        -------
        object
        """
        inspection.refresh()
        # Entries are only ever added, so their number tells whether anything is new.
        mark = (inspection.epoch, len(inspection.entries))
        of_this = self._remembered.setdefault(inspection, {})
        kept = of_this.get(what)
        if kept is None or kept[0] != mark:
            kept = of_this[what] = (mark, make())
        return kept[1]

    def begin(self) -> Inspection:
        """Begin an inspection with today's checklists, the surveyor's own over the shipped ones."""
        # Gathered anew each time: the surveyor may have edited his own since the start.
        folder = self.path / "derived" / "checklists"
        shutil.rmtree(folder, ignore_errors=True)
        gather_checklists(self.path, folder, own=not self.own_faults)
        return self.inspections.create(folder)

    def close(self) -> None:
        """Close the journals."""
        self.inspections.close()


def open_folder(path: Path) -> DataFolder:
    """Open a data folder, or begin one.

    Parameters
    ----------
    path : Path

    Returns
    -------
    DataFolder

    Raises
    ------
    InspectorError
        With one sentence.
    """
    try:
        # Here and not where it is first written, so that a wrong path is refused before anything is
        # typed.
        path.mkdir(parents=True, exist_ok=True)
    except OSError as problem:
        raise durable.NotWritten(
            f"The data folder {path} cannot be made: {problem.strerror}. "
            "Name another one with --data."
        ) from problem
    catalogue = Catalogue(path / "catalogue.json")
    numbers = places.numbers_given()
    host = _host_name(catalogue, numbers)
    inspections = Inspections(path / "inspections", host, numbers / host)
    return DataFolder(path, catalogue, inspections, host)


def gather_checklists(data: Path, folder: Path, own: bool = True) -> None:
    """Copy the shipped checklists to a folder, the surveyor's own over them, his criteria beside.

    Parameters
    ----------
    data : Path
        The data folder, in which his own are in ``checklists/`` and ``checklists/criteria/``.
    folder : Path
        Where the copies go; a file of the same name replaces a system, a new name adds one.
    own : bool
        Whether his own are taken.
    """
    from inspector.checklists.criteria_files import kept_name, own_files

    folder.mkdir(parents=True, exist_ok=True)
    sources = [places.shipped("checklists")]
    if own:
        sources.append(data / "checklists")
        for path in own_files(data / "checklists"):
            (folder / kept_name(path)).write_bytes(path.read_bytes())
    for source in sources:
        for path in sorted(source.glob("*.toml")):
            (folder / path.name).write_bytes(path.read_bytes())


def _has_own_checklists(data: Path) -> bool:
    return any((data / "checklists").rglob("*.toml"))


def _library(data: Path) -> "tuple[Library, tuple[str, ...]]":
    """The checklists of a new inspection, and the mistakes in the surveyor's own.

    Where these have mistakes, the shipped ones are used alone.
    """
    from inspector.checklists.loader import ChecklistFaults
    from inspector.checklists.shared_libraries import SHARED

    shipped = SHARED.of(places.shipped("checklists"), check_criteria=True)
    if not _has_own_checklists(data):
        return shipped, ()
    with tempfile.TemporaryDirectory() as made:
        gather_checklists(data, Path(made))
        try:
            return SHARED.of(Path(made), check_criteria=True), ()
        except ChecklistFaults as problem:
            # An inspection in progress must not wait for a comma in the next one's file.
            return shipped, tuple(problem.faults)


def _host_name(catalogue: Catalogue, numbers: Path) -> str:
    """The name under which this computer writes in this data folder."""
    # A name is made once and kept: a journal file must never get a second writer because a
    # computer was renamed. A folder that comes from another computer, or from one that does not
    # remember its numbers, may be an older copy: it is written under another name.
    kept = [name for name in (catalogue.setting("host"), *catalogue.setting("hosts", [])) if name]
    own = [name for name in kept if (numbers / name).is_dir()]
    if not own:
        own = [_new_host_name()]
        try:
            (numbers / own[0]).mkdir(parents=True)
        except OSError:
            # Where nothing can be remembered, the name would be another one at every start.
            own = kept or own
    if own[0] != catalogue.setting("host"):
        catalogue.set("hosts", list(dict.fromkeys([own[0], *kept])))
        catalogue.set("host", own[0])
    return own[0]


def _new_host_name() -> str:
    name = re.sub(r"[^a-z0-9]+", "-", socket.gethostname().lower()).strip("-")[:24] or "computer"
    return f"{name}-{secrets.token_hex(2)}"


def secret_key(data: Path) -> str:
    """Return the key that signs sessions: made once, readable by its owner only.

    Parameters
    ----------
    data : Path
        The data folder.

    Returns
    -------
    str
    """
    path = data / "secret"
    # A new key would end every session and every device's cookie.
    if not path.exists():
        durable.replace(path, secrets.token_hex(32).encode(), mode=0o600)
        os.chmod(path, 0o600)
    return path.read_text()


def title_of(inspection: Inspection) -> str:
    """Return what an inspection is called on screens.

    Parameters
    ----------
    inspection : Inspection

    Returns
    -------
    str
        The vessel's name, else the inspection's own title, else the day on which it was begun, with
        the rest of its id.
    """
    state = inspection.state
    return (
        typed_text(state.value("vessel", "name"))
        or typed_text(state.value("inspection", "title"))
        or f"Vessel without a name yet{_begun(inspection.id)}"
    )


def _begun(inspection_id: str) -> str:
    """Return when an inspection was begun and what tells it from others, as its id says both."""
    found = re.fullmatch(r"(\d{4}-\d{2}-\d{2})-(.+)", inspection_id)
    return f", begun {found[1]} ({found[2]})" if found else f" ({inspection_id})"
