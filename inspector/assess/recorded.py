"""An inspection as it was recorded.

Everything that assessment, conversion and report calculate is a function of this record.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from inspector.record.typed_values import as_texts, typed_text

READING = "reading/"
SHEET = "sheet/"
LIMITS = "profile/"
# Certificates have subjects of their own; conversion shows them as one of its tables.
CERTIFICATES = "certificates"

Texts = Mapping[str, str]


@dataclass(frozen=True)
class Unit:
    """One unit on board: bow thruster 1.

    Parameters
    ----------
    system, id : str
        Its system in the checklists, and its own id.
    name : str
        As the surveyor calls it.
    kind : str
        One of the kinds of its system; "" where none is recorded, and then every check is asked.
    space : str
        The space it is in; "" for the usual one of its system.
    walked_past : str
        What was seen against it in passing: "nothing", "something", or "" where nobody said.
    """

    system: str
    id: str
    name: str
    kind: str = ""
    space: str = ""
    walked_past: str = ""


@dataclass(frozen=True)
class Answered:
    """One of several answers to one field of a check that were given without seeing each other.

    Parameters
    ----------
    field : str
        "rating", "note" or "reading/<id>".
    text : str
        The answer as text, "cleared" for an emptied field.
    who : str
        Who gave it.
    at : str
        ISO time by the clock of that device.
    """

    field: str
    text: str
    who: str
    at: str


@dataclass(frozen=True)
class RecordedSheet:
    """What was recorded for one check of one unit.

    Parameters
    ----------
    answer : str
        A rating, "not seen: <reason>", "not fitted", or "" where none of these was given.
    readings : mapping of str to Any
        Reading id -> as typed, a text or ``{"value": ..., "unit": ...}``.
    depth : str
        How the answer is known, of DEPTHS; "" where that was not recorded.
    note : str
        The surveyor's note.
    overruled_because : str
        Why the surveyor rates otherwise than the reading is judged; "" where nobody said.
    as_unit : str
        Name of the sister unit whose answer was taken over; "" for an answer of its own.
    gate : mapping of str to str
        What was answered before an enclosed space was entered.
    who : str
        Who gave the rating, else who wrote last.
    when : str
        ISO time of that, by the clock of that device.
    answers : tuple of Answered
        Every answer of each field on which people differ, until it is settled.
    heads : mapping of str to tuple
        Field on which people differ -> every value given, as recorded.
    """

    answer: str = ""
    readings: Mapping[str, Any] = field(default_factory=dict)
    depth: str = ""
    note: str = ""
    overruled_because: str = ""
    as_unit: str = ""
    gate: Texts = field(default_factory=dict)
    who: str = ""
    when: str = ""
    answers: tuple[Answered, ...] = ()
    heads: Mapping[str, tuple[Any, ...]] = field(default_factory=dict)

    @property
    def has_something(self) -> bool:
        """Whether anything of it is recorded and was not cleared again."""
        return bool(self.answer or self.readings or self.note or self.gate)


@dataclass(frozen=True)
class RecordedInspection:
    """All of an inspection that something is calculated from, without what was taken out.

    Mappings by id are in the order of the first entry, the oldest first.

    Parameters
    ----------
    vessel, brief, inspection, settings : mapping of str to str
        Field -> text.
    limits : mapping of str to mapping
        Criterion -> field -> text, of the limits that the surveyor set.
    units : tuple of Unit
        In the order in which they were entered.
    sheets : mapping of str to RecordedSheet
        By subject, "sheet/<system>/<unit>/<check>".
    findings, photos, work_lines : mapping of str to mapping
        Id -> field -> text; the id of a photo is its digest.
    line_numbers : mapping of str to int
        Id of a work line -> its number, which it keeps for good.
    photographers : mapping of str to str
        Digest of a photo -> who wrote last about it.
    decisions : mapping of str to mapping
        "<system>/<unit>" -> the decision and the facts beside it, field -> text.
    rows : mapping of str to mapping
        Table -> row id -> field -> value as typed.
    ratings_by_person : mapping of str to mapping
        Sheet -> person -> the last rating that this person gave independently.
    disputes : int
        How many fields have unlike answers that nobody has settled.
    """

    vessel: Texts = field(default_factory=dict)
    brief: Texts = field(default_factory=dict)
    inspection: Texts = field(default_factory=dict)
    settings: Texts = field(default_factory=dict)
    limits: Mapping[str, Texts] = field(default_factory=dict)
    units: tuple[Unit, ...] = ()
    sheets: Mapping[str, RecordedSheet] = field(default_factory=dict)
    findings: Mapping[str, Texts] = field(default_factory=dict)
    photos: Mapping[str, Texts] = field(default_factory=dict)
    work_lines: Mapping[str, Texts] = field(default_factory=dict)
    line_numbers: Mapping[str, int] = field(default_factory=dict)
    photographers: Texts = field(default_factory=dict)
    decisions: Mapping[str, Texts] = field(default_factory=dict)
    rows: Mapping[str, Mapping[str, Mapping[str, Any]]] = field(default_factory=dict)
    ratings_by_person: Mapping[str, Texts] = field(default_factory=dict)
    disputes: int = 0

    @property
    def certificates(self) -> dict[str, dict[str, str]]:
        """Id of each certificate -> field -> text."""
        rows = self.rows.get(CERTIFICATES, {})
        return {row_id: as_texts(row) for row_id, row in rows.items()}

    @property
    def currency(self) -> str:
        """What all amounts are in, "" where none is recorded."""
        return typed_text(self.rows.get("prices", {}).get("one", {}).get("currency"))

    @property
    def day(self) -> date | None:
        """The day of the inspection, None where no date was typed that can be read."""
        try:
            return date.fromisoformat(self.inspection.get("date", ""))
        except ValueError:
            return None
