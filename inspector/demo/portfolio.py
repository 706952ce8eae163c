"""Fills an empty data folder with the invented portfolio of `inspector demo`: the same entries and the same pictures every time."""

from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

from inspector import places
from inspector.checklists import Library, read_library
from inspector.demo.candidate import Candidate
from inspector.demo.pictures import picture
from inspector.demo.rate_book import RATES
from inspector.demo.scenario import BRIEF, PORTFOLIO, SURVEYORS
from inspector.demo.sheets import Said, kind_of, sheets_of
from inspector.record import photos
from inspector.record.catalogue import Catalogue
from inspector.record.store import Inspection, Inspections

HOST = "demo-laptop"
DEVICES = ("demo-tablet", "demo-phone")
STEP = timedelta(seconds=12)


def prepare_in(data: Path) -> None:
    """Fill `data` with one brief, two surveyors and three candidates, if it has no inspections yet; otherwise change nothing.

    Raises durable.NotWritten where the disk does not take it.
    """
    if Inspections(data / "inspections", HOST).ids():
        return
    catalogue = Catalogue(data / "catalogue.json")
    host = catalogue.setting("host")
    if not host:
        host = HOST
        catalogue.set("host", host)
    catalogue.put("briefs", BRIEF)
    for number, name in enumerate(SURVEYORS, 1):
        catalogue.put("surveyors", {"id": f"demo-{number}", "name": name})
    for rate in RATES:
        catalogue.put("rates", rate)
    library = read_library(places.shipped("checklists"))
    inspections = Inspections(data / "inspections", host)
    for candidate in PORTFOLIO:
        _fill(inspections.create(places.shipped("checklists"), inspection_id=candidate.id), candidate, library)
    inspections.close()


class _Pen:
    """Writes entries with each device's own count and a clock that starts at the visit's morning."""

    def __init__(self, day: str):
        self.at = datetime.fromisoformat(f"{day}T08:30:00")
        self.counts: dict[str, int] = {}
        self.last: dict[tuple[str, str], str] = {}
        self.entries: list[dict[str, Any]] = []

    def write(self, device: str, who: str, said: Said, unseen: bool = False) -> None:
        """One entry that replaces the last word on its field; with `unseen`, none: its author had not seen that word."""
        subject, field, value = said
        number = self.counts[device] = self.counts.get(device, 0) + 1
        earlier = self.last.get((subject, field))
        entry_id, at = f"{device}:{number}", self.at.isoformat(timespec="milliseconds") + "Z"
        self.entries.append({"id": entry_id, "at": at, "device": device, "who": who, "subject": subject, "field": field, "value": value,
                             "replaces": [earlier] if earlier and not unseen else []})
        self.last[subject, field] = entry_id
        self.at += STEP


def _fill(inspection: Inspection, candidate: Candidate, library: Library) -> None:
    pen = _Pen(candidate.visit["date"])
    for said in _prepared(candidate, library):
        pen.write(inspection.host, SURVEYORS[0], said)
    _walk(pen, candidate, library)
    for drawing, subject, caption in candidate.photos:
        _photo(pen, inspection, candidate, (drawing, subject, caption))
    for said in candidate.said:
        pen.write(inspection.host, SURVEYORS[0], said)
    refused = {entry: fate for entry, fate in inspection.take_in(pen.entries).fates.items() if fate != "stored"}
    if refused:
        raise ValueError(f"the demo's own entries are refused: {refused}")


def _prepared(candidate: Candidate, library: Library) -> Iterator[Said]:
    for subject, values in (("inspection", candidate.visit), ("vessel", candidate.vessel), ("brief", BRIEF)):
        yield from ((subject, field, value) for field, value in values.items() if field != "id")
    for system, units in candidate.units.items():
        for unit, name in units:
            yield f"unit/{system}/{unit}", "name", name
            if kind := kind_of(library.systems[system], unit):
                yield f"unit/{system}/{unit}", "kind", kind


def _walk(pen: _Pen, candidate: Candidate, library: Library) -> None:
    for number, (system, units) in enumerate(candidate.units.items()):
        device, who = DEVICES[number % 2], SURVEYORS[number % 2]
        for said in sheets_of(library.systems[system], [unit for unit, _ in units], candidate.sheets.get(system, "")):
            pen.write(device, who, said)
    for text in (candidate.overruled, *candidate.seconded, candidate.disputed):
        subject, _, rating = text.partition("=")
        if subject:
            pen.write(DEVICES[1], SURVEYORS[1], (subject, "rating", rating), unseen=text == candidate.disputed)


def _photo(pen: _Pen, inspection: Inspection, candidate: Candidate, photo: tuple[str, str, str]) -> None:
    drawing, subject, caption = photo
    taken = photos.take_in(inspection.folder, picture(drawing, f"{candidate.vessel['name']}: {caption}"))
    values = {"on": subject, "caption": caption, "name": f"{drawing}.jpg", "taken": pen.at.isoformat(timespec="seconds") + "Z", "kind": taken.kind}
    for field, value in values.items():
        pen.write(DEVICES[0], SURVEYORS[0], (f"photo/{taken.sha}", field, value))
