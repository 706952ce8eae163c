"""The door between the walk page and the modules that run beside it on the device.

JSON comes in and JSON goes out. One inspection is open at a time: the page tells what is recorded,
and asks. Whoever adds a question adds a function to QUESTIONS; nothing else of the page's scripts
has to know Python.
"""

import json
from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from typing import TYPE_CHECKING, Any

from inspector.assess.judged_sheets import judged_sheets
from inspector.checklists.library_tables import library_of_tables
from inspector.checklists.model import Library
from inspector.checklists.registry import CRITERIA
from inspector.record.entry import Entry, EntryRefused, from_dict
from inspector.record.state import State
from inspector.values.errors import InspectorError

if TYPE_CHECKING:
    from inspector.assess.model import Assessment


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
        self._taken = 0
        # Good for as many entries as were taken when it was made.
        self._assessed: tuple[int, Assessment] | None = None

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
        self._taken += len(taken)
        return taken

    @property
    def assessment(self) -> "Assessment":
        """The inspection assessed as it is now, made anew only once more is recorded."""
        # Slow to import, and the first judgement should not wait for it.
        from inspector.assess.assessment import assess
        from inspector.assess.from_state import read_inspection

        if self._assessed is None or self._assessed[0] != self._taken:
            self._assessed = self._taken, assess(read_inspection(self.state), self.library)
        return self._assessed[1]


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

    def follow(self, asked: Mapping[str, Any]) -> dict[str, Any]:
        """Say whether the round still fits the time, and compose it again where it does not.

        Parameters
        ----------
        asked : mapping
            ``now``: ISO time with its zone; ``here``: id of the space or None; ``before``: the
            round that is followed, or None; ``person``: whose part is walked, 0 for everybody's;
            ``anew``: whether to compose it in any case.

        Returns
        -------
        dict
            ``known``: whether somebody said how long the visit is; where it is: ``minutes`` left,
            ``ahead`` [min], and the ``round`` where it was composed again, with ``why``.
        """
        from inspector.assess.round.followed_round import composed, minutes_ahead, out_of_step
        from inspector.assess.round.time_left import visit_of

        opened, before, person = self.opened, asked["before"], asked["person"]
        now = datetime.fromisoformat(asked["now"])
        visit = visit_of(opened.state, now)
        if not visit.known:
            return {"known": False}
        why = "asked" if asked["anew"] or before is None else ""
        why = why or out_of_step(before, opened.state, visit, person)
        answer: dict[str, Any] = {"known": True, "minutes": visit.minutes, "why": why, "ahead": 0.0}
        if before is not None:
            answer["ahead"] = minutes_ahead(before, opened.state, visit.minutes, person)
        if why:
            answer["round"] = composed(
                opened.assessment,
                opened.state,
                [*opened.library.spaces],
                visit,
                now,
                asked["here"],
                before,
                person,
            )
        return answer

    def looks(self, asked: Mapping[str, Any]) -> dict[str, Any]:
        """Return the looks worth ``minutes`` from the space ``here``, as the computer does."""
        from inspector.assess.next_look.advice import next_look
        from inspector.assess.next_look.advice_data import advice_data

        assessment = self.opened.assessment
        here = asked["here"] if asked["here"] in self.opened.library.spaces else ""
        found = next_look(assessment, asked["minutes"], here=here, settings=assessment.settings)
        return advice_data(found)

    def words(self, _asked: None) -> dict[str, Any]:
        """Return condition and word of every system as they are now."""
        from inspector.in_browser.words_so_far import words_so_far

        return words_so_far(self.opened.assessment)


QUESTIONS: Mapping[str, Callable[[Door, Any], Any]] = {
    "open": Door.open,
    "add": Door.add,
    "judge": Door.judge,
    "follow": Door.follow,
    "looks": Door.looks,
    "words": Door.words,
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
