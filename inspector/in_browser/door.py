"""The door between the walk page and the modules that run beside it on the device.

JSON comes in and JSON goes out. One inspection is open at a time: the page tells what is recorded,
and asks. Whoever adds a question adds a function to QUESTIONS; nothing else of the page's scripts
has to know Python.
"""

import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any

from inspector.assess.judged_sheets import judged_sheets
from inspector.checklists.library_tables import library_of_tables
from inspector.checklists.model import Library
from inspector.checklists.registry import CRITERIA
from inspector.record.entry import Entry, EntryRefused, from_dict
from inspector.record.state import State
from inspector.values.errors import InspectorError


class Opened:
    """The inspection that is open on the device.

    Parameters
    ----------
    library : Library
        Its checklists.

    Attributes
    ----------
    state : State
        What the page has told so far.
    """

    def __init__(self, library: Library) -> None:
        self.library = library
        self.state = State()

    def add(self, entries: Sequence[Mapping[str, Any]]) -> list[Entry]:
        """Fold entries in; one that the computer would refuse counts here as little as there."""
        taken = []
        for data in entries:
            try:
                entry = from_dict(data)
            except EntryRefused:
                continue
            self.state.add(entry)
            taken.append(entry)
        return taken


class NothingOpened(InspectorError):
    """The page asked before it had named an inspection's checklists."""


class Door:
    """What the page may ask, of one inspection after the other."""

    def __init__(self) -> None:
        self._opened: Opened | None = None

    @property
    def opened(self) -> Opened:
        """The inspection that is open; raises NothingOpened where there is none."""
        if self._opened is None:
            raise NothingOpened("No inspection is open on this device yet.")
        return self._opened

    def open(self, tables: Mapping[str, Mapping[str, Any]]) -> dict[str, int]:
        """Open an inspection by its checklists; returns how many criteria are known here.

        Parameters
        ----------
        tables : mapping of str to mapping
            ``Library.tables``.
        """
        library = library_of_tables(tables)
        self._opened = Opened(library)
        # All are read now: the first judgement should not wait for it.
        return {"criteria": len(CRITERIA) + len(library.criteria)}

    def add(self, entries: Sequence[Mapping[str, Any]]) -> int:
        """Take in what is recorded, without judging; returns how many entries were taken."""
        return len(self.opened.add(entries))

    def judge(self, entries: Sequence[Mapping[str, Any]]) -> dict[str, dict[str, Any] | None]:
        """Take in what was recorded just now, and judge the sheets that it affects."""
        opened = self.opened
        return judged_sheets(opened.state, opened.library, opened.add(entries))


QUESTIONS: Mapping[str, Callable[[Door, Any], Any]] = {
    "open": Door.open,
    "add": Door.add,
    "judge": Door.judge,
}

_DOOR = Door()


def answer(question: str, given: str) -> str:
    """Answer the page.

    Parameters
    ----------
    question : str
        One of QUESTIONS.
    given : str
        What the question is about, as JSON.

    Returns
    -------
    str
        JSON: ``{"answer": ...}``, or ``{"problem": sentence}``.
    """
    try:
        found = {"answer": QUESTIONS[question](_DOOR, json.loads(given))}
    except InspectorError as problem:
        found = {"problem": str(problem)}
    return json.dumps(found)
