"""What a running instance works on: data folder, catalogue, inspections, checklists; and the loaders that own their 404."""

import os
import re
import secrets
import shutil
import socket
import tempfile
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from flask import current_app

from inspector import places
from inspector.assess.assessment import assess
from inspector.assess.shapes import Assessment
from inspector.checklist_criteria import KnownInput
from inspector.checklists import ChecklistFaults, Library, read_library
from inspector.criteria.registry import CRITERIA
from inspector.record import durable
from inspector.record.catalogue import Catalogue
from inspector.record.store import Inspection, Inspections


@dataclass
class Desk:
    """One data folder, open."""

    data: Path
    catalogue: Catalogue
    inspections: Inspections
    library: Library
    host: str
    own_faults: tuple[str, ...] = ()   # mistakes in the surveyor's own checklists, which then wait unused
    _libraries: dict[str, Library] = field(default_factory=dict)
    _made: dict[tuple[str, str], tuple[tuple[str, int], Any]] = field(default_factory=dict)

    def library_of(self, inspection: Inspection) -> Library:
        """The checklists as they were when that inspection began."""
        if inspection.id not in self._libraries:
            self._libraries[inspection.id] = read_library(inspection.folder / "checklists")
        return self._libraries[inspection.id]

    def assessment_of(self, inspection: Inspection) -> Assessment:
        """The inspection assessed as it stands now."""
        return self.remember("assessment", inspection, lambda: assess(inspection.state, self.library_of(inspection)))

    def remember(self, what: str, inspection: Inspection, make: Callable[[], Any]) -> Any:
        """What was made of an inspection, made anew only once something more was recorded in it. Only for what rests on its entries alone."""
        inspection.refresh()
        mark = (inspection.epoch, len(inspection.entries))
        kept = self._made.get((what, inspection.id))
        if kept is None or kept[0] != mark:
            kept = self._made[what, inspection.id] = (mark, make())
        return kept[1]

    def begin(self) -> Inspection:
        """Begin an inspection with the checklists as they are today: the shipped ones, and the surveyor's own over them."""
        folder = self.data / "derived" / "checklists"
        shutil.rmtree(folder, ignore_errors=True)
        gather_checklists(self.data, folder, own=not self.own_faults)
        return self.inspections.create(folder)

    def close(self) -> None:
        self.inspections.close()


def known_inputs() -> dict[str, dict[str, KnownInput]]:
    """Name of each criterion -> what it asks for each of its inputs, as the checklist reader wants it."""
    return {
        name: {one.name: KnownInput(one.kind, one.unit, one.choices, one.optional) for one in criterion.inputs} for name, criterion in CRITERIA.items()
    }


def open_desk(data: Path) -> Desk:
    """Open (or begin) a data folder; errors are InspectorError with one sentence."""
    try:
        data.mkdir(parents=True, exist_ok=True)
    except OSError as problem:
        raise durable.NotWritten(f"The data folder {data} cannot be made: {problem.strerror}. Name another one with --data.") from problem
    catalogue = Catalogue(data / "catalogue.json")
    host = _host_name(catalogue)
    library, own_faults = _library(data)
    return Desk(data, catalogue, Inspections(data / "inspections", host), library, host, own_faults)


def gather_checklists(data: Path, folder: Path, own: bool = True) -> None:
    """Copy the shipped checklists to `folder`, then the surveyor's own over them: a file of the same name replaces a system, a new name adds one."""
    folder.mkdir(parents=True, exist_ok=True)
    for source in (places.shipped("checklists"), *([data / "checklists"] if own else [])):
        for path in sorted(source.glob("*.toml")) if source.is_dir() else ():
            (folder / path.name).write_bytes(path.read_bytes())


def _library(data: Path) -> tuple[Library, tuple[str, ...]]:
    """The checklists of a new inspection; where the surveyor's own have mistakes, the shipped ones and a sentence for each mistake."""
    shipped = read_library(places.shipped("checklists"), known_inputs())
    if not any((data / "checklists").glob("*.toml")):
        return shipped, ()
    with tempfile.TemporaryDirectory() as made:
        gather_checklists(data, Path(made))
        try:
            return read_library(Path(made), known_inputs()), ()
        except ChecklistFaults as problem:
            # an inspection in progress must not wait for a comma in a file that the next one would use
            return shipped, tuple(problem.faults)


def _host_name(catalogue: Catalogue) -> str:
    # The name is made once and kept: a journal file must never get a second writer because a computer was renamed.
    kept = catalogue.setting("host")
    if kept:
        return kept
    name = re.sub(r"[^a-z0-9]+", "-", socket.gethostname().lower()).strip("-")[:24] or "computer"
    host = f"{name}-{secrets.token_hex(2)}"
    catalogue.set("host", host)
    return host


def secret_key(data: Path) -> str:
    """The key that signs sessions: made once, readable by its owner only."""
    path = data / "secret"
    if not path.exists():
        durable.replace(path, secrets.token_hex(32).encode(), mode=0o600)
        os.chmod(path, 0o600)
    return path.read_text()


def desk() -> Desk:
    """The running instance's desk."""
    return current_app.extensions["desk"]


def title_of(inspection: Inspection) -> str:
    """What an inspection is called on screens: the vessel's name, else its own title."""
    state = inspection.state
    return state.value("vessel", "name") or state.value("inspection", "title") or f"Vessel without a name yet ({inspection.id})"


def open_inspection(inspection_id: str) -> Inspection:
    """The inspection of that id; NoSuchInspection becomes a 404 with its sentence."""
    return desk().inspections.get(inspection_id)
