"""Fills an empty data folder with the invented portfolio, with the same entries every time."""

from collections.abc import Iterator, Mapping
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

from inspector import places
from inspector.checklists.loader import read_library
from inspector.checklists.model import Library
from inspector.demo.candidate import Candidate
from inspector.demo.pictures import picture
from inspector.demo.prepared import PREPARED, Prepared, counted_units
from inspector.demo.rate_book import RATES
from inspector.demo.scenario import BRIEF, PORTFOLIO, SURVEYORS
from inspector.demo.sheet_lines import FieldValue, kind_of, sheets_of
from inspector.record import photos
from inspector.record.catalogue import Catalogue
from inspector.record.inspection import Inspection
from inspector.record.inspections import Inspections

HOST = "demo-laptop"
DEVICES = ("demo-tablet", "demo-phone")
# From one entry to the next: a surveyor taps about five times a minute.
STEP = timedelta(seconds=12)


def prepare_in(data: Path) -> None:
    """Fill a data folder with one brief, two surveyors, a rate book and six candidates.

    Three of them are walked, three only prepared.

    A folder that has an inspection already is left as it is: the demo never mixes with real work.

    Parameters
    ----------
    data : Path
        The data folder.

    Raises
    ------
    durable.NotWritten
        The disk does not take it.
    """
    # Never into a folder with inspections: a demo among real ones would be taken for one of them.
    if Inspections(data / "inspections", HOST).ids():
        return
    host = _fill_catalogue(Catalogue(data / "catalogue.json"))
    library = read_library(places.shipped("checklists"))
    # Inspections are opened again, now by the name under which this computer writes.
    inspections = Inspections(data / "inspections", host)
    for candidate in PORTFOLIO:
        inspection = inspections.create(places.shipped("checklists"), inspection_id=candidate.id)
        _fill(inspection, candidate, library)
    for prepared in PREPARED:
        inspection = inspections.create(places.shipped("checklists"), inspection_id=prepared.id)
        _fill_prepared(inspection, prepared, library)
    inspections.close()


def _fill_catalogue(catalogue: Catalogue) -> str:
    """Put brief, surveyors and rates into the catalogue; return the name of this computer."""
    host = catalogue.setting("host")
    if not host:
        host = HOST
        catalogue.set("host", host)
    catalogue.put("briefs", BRIEF)
    for number, name in enumerate(SURVEYORS, 1):
        catalogue.put("surveyors", {"id": f"demo-{number}", "name": name})
    for rate in RATES:
        catalogue.put("rates", rate)
    return host


class _EntryWriter:
    """Makes entries with each device's own count and a clock that starts at the visit's morning."""

    def __init__(self, day: str):
        self.at = datetime.fromisoformat(f"{day}T08:30:00")
        self.counts: dict[str, int] = {}
        self.last: dict[tuple[str, str], str] = {}
        self.entries: list[dict[str, Any]] = []

    def write(self, device: str, who: str, record: FieldValue, unseen: bool = False) -> None:
        """Add an entry that replaces the last entry of its field.

        With ``unseen`` it replaces none: its author had not seen that entry.
        """
        subject, field, value = record
        number = self.counts[device] = self.counts.get(device, 0) + 1
        earlier = self.last.get((subject, field))
        entry_id = f"{device}:{number}"
        self.entries.append(
            {
                "id": entry_id,
                "at": self.at.isoformat(timespec="milliseconds") + "Z",
                "device": device,
                "who": who,
                "subject": subject,
                "field": field,
                "value": value,
                # Not having seen the earlier one makes it a dispute, which is shown as such.
                "replaces": [earlier] if earlier and not unseen else [],
            }
        )
        self.last[subject, field] = entry_id
        self.at += STEP


def _fill(inspection: Inspection, candidate: Candidate, library: Library) -> None:
    """Record a candidate: what was prepared, the walk, second opinions, photos, decisions."""
    writer = _EntryWriter(candidate.visit["date"])
    for record in _prepared(candidate, library):
        writer.write(inspection.host, SURVEYORS[0], record)
    _walk(writer, candidate, library)
    _second_opinions(writer, candidate)
    for photo in candidate.photos:
        _photo(writer, inspection, candidate, photo)
    for record in (*candidate.entries, *_limits_of_class()):
        writer.write(inspection.host, SURVEYORS[0], record)
    _take_in(inspection, writer)


def _fill_prepared(inspection: Inspection, prepared: Prepared, library: Library) -> None:
    """Record an inspection before its visit: what is known, and the units counted."""
    writer = _EntryWriter(prepared.visit["date"])
    units = counted_units(prepared, library)
    for record in (*_known_before(prepared.visit, prepared.vessel), *units):
        writer.write(inspection.host, SURVEYORS[0], record)
    _take_in(inspection, writer)


def _take_in(inspection: Inspection, writer: _EntryWriter) -> None:
    """Hand the entries to the recorder, all of which it must take."""
    outcomes = inspection.take_in(writer.entries, made_here=True).outcomes
    # A slip in the scenario must stop the demo, not leave a hole in it.
    refused = {entry: outcome for entry, outcome in outcomes.items() if outcome != "stored"}
    if refused:
        raise ValueError(f"the demo's own entries are refused: {refused}")


def _limits_of_class() -> Iterator[FieldValue]:
    """The allowances of the class on the certificate, in place of the strict end of the tables."""
    for criterion in ("plate-thickness", "plate-remaining-life"):
        subject = f"profile/{criterion}"
        yield subject, "shell_added", "1"
        yield subject, "stiffener_share", "30"
        yield subject, "source", "Table of diminution of the class on the certificate (invented)"


def _known_before(visit: Mapping[str, str], vessel: Mapping[str, str]) -> Iterator[FieldValue]:
    """The visit, the vessel and the brief."""
    groups = {"inspection": visit, "vessel": vessel, "brief": BRIEF}
    for subject, values in groups.items():
        yield from ((subject, field, value) for field, value in values.items() if field != "id")


def _prepared(candidate: Candidate, library: Library) -> Iterator[FieldValue]:
    """What is recorded before the walk: the visit, the vessel, the brief and the units on board."""
    yield from _known_before(candidate.visit, candidate.vessel)
    for system, units in candidate.units.items():
        for unit, name in units:
            yield f"unit/{system}/{unit}", "name", name
            kind = kind_of(library.systems[system], unit)
            if kind:
                yield f"unit/{system}/{unit}", "kind", kind


def _walk(writer: _EntryWriter, candidate: Candidate, library: Library) -> None:
    """Record the answers of all sheets."""
    # Two surveyors with a device each take the systems by turns, as on a real visit.
    for number, (system, units) in enumerate(candidate.units.items()):
        device, who = DEVICES[number % 2], SURVEYORS[number % 2]
        unit_ids = [unit for unit, _ in units]
        sheets = candidate.sheets.get(system, "")
        for record in sheets_of(library.systems[system], unit_ids, sheets):
            writer.write(device, who, record)


def _second_opinions(writer: _EntryWriter, candidate: Candidate) -> None:
    """The second surveyor's ratings of sheets that are rated already."""
    # The disputed one last, since it must be the newest of both.
    for text in (candidate.overruled, *candidate.second_ratings, candidate.disputed):
        subject, _, rating = text.partition("=")
        if subject:
            record = (subject, "rating", rating)
            writer.write(DEVICES[1], SURVEYORS[1], record, unseen=text == candidate.disputed)


def _photo(
    writer: _EntryWriter,
    inspection: Inspection,
    candidate: Candidate,
    photo: tuple[str, str, str],
) -> None:
    """Draw a photo, keep it, and record what it shows."""
    drawing, subject, caption = photo
    title = f"{candidate.vessel['name']}: {caption}"
    taken = photos.take_in(inspection.folder, picture(drawing, title))
    values = {
        "on": subject,
        "caption": caption,
        "name": f"{drawing}.jpg",
        "taken": writer.at.isoformat(timespec="seconds") + "Z",
        "kind": taken.kind,
    }
    for field, value in values.items():
        writer.write(DEVICES[0], SURVEYORS[0], (f"photo/{taken.sha}", field, value))
