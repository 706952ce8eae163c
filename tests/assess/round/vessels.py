"""The demo's vessels before their visit, as they are recorded."""

from dataclasses import replace

from inspector.assess.assessment import assess
from inspector.assess.from_state import read_inspection
from inspector.assess.model import Assessment
from inspector.checklists.loader import read_library
from inspector.checklists.model import Library
from inspector.demo.prepared import PREPARED, counted_units
from inspector.demo.scenario import BRIEF
from inspector.places import shipped
from inspector.record.entry import from_dict
from inspector.record.state import State

IN_SERVICE, LAID_UP = "demo-tolvenish-reed", "demo-quenmarra-fell"


def shipped_library() -> Library:
    """The checklists as they are shipped."""
    return read_library(shipped("checklists"))


def entries_before_the_visit(library: Library, name: str = IN_SERVICE, **visit: str) -> list[dict]:
    """What is recorded of a prepared vessel of the demo, and facts of the visit."""
    prepared = next(one for one in PREPARED if one.id == name)
    facts = {"inspection": {**prepared.visit, **visit}, "vessel": prepared.vessel, "brief": BRIEF}
    written = [
        (subject, field, value)
        for subject, values in facts.items()
        for field, value in values.items()
        if field != "id"
    ]
    written += list(counted_units(prepared, library))
    return [_entry(*one) for one in enumerate(written, 1)]


def before_the_visit(library: Library, name: str = IN_SERVICE, **visit: str) -> Assessment:
    """A prepared vessel of the demo with nothing looked at, and facts of the visit."""
    entries = entries_before_the_visit(library, name, **visit)
    recorded = read_inspection(State(map(from_dict, entries)))
    return assess(replace(recorded, sheets={}), library)


def _entry(number: int, written: tuple[str, str, str]) -> dict:
    subject, field, value = written
    return {
        "id": f"tablet:{number}",
        "at": "2026-05-02T09:14:07.512Z",
        "device": "tablet",
        "who": "QX",
        "subject": subject,
        "field": field,
        "value": value,
        "replaces": [],
    }
