"""Five made vessels, everything of them invented: what is true of each check is drawn and hidden.

The truth of a word is the word that the same rules give when every check was seen at its depth.
"""

import random
from dataclasses import dataclass, replace
from pathlib import Path

from inspector.assess.assessment import assess
from inspector.assess.model import Assessment
from inspector.assess.recorded import RecordedInspection, RecordedSheet, Unit
from inspector.checklists.model import Check, Library
from inspector.values.vocabulary import PRICE_BOTH, RATINGS, TESTED, not_seen

ROOT = Path(__file__).resolve().parents[2]
# Rating of one check by the state of its unit (our own): good, fair, poor, failed. What wears a
# unit wears all of it, critical or not.
BY_STATE = {
    "sound": (0.88, 0.11, 0.01, 0.0),
    "middling": (0.55, 0.35, 0.08, 0.02),
    "worn": (0.20, 0.40, 0.30, 0.10),
    "broken": (0.10, 0.20, 0.35, 0.35),
}
# Share of the units in each state; None: all good.
VESSELS = {
    "flawless": None,
    "well kept": (0.85, 0.12, 0.03, 0.0),
    "tired": (0.30, 0.30, 0.30, 0.10),
    "half dead": (0.10, 0.15, 0.35, 0.40),
    "mixed": (0.55, 0.10, 0.15, 0.20),
}
# What nobody can do at a quay.
NOT_AT_A_QUAY = ("sea", "dock", "laboratory")


@dataclass
class Vessel:
    """A made vessel with what is true of each of its checks, and what the surveyor has recorded."""

    library: Library
    units: tuple[Unit, ...]
    truth: dict[str, str]
    sheets: dict[str, RecordedSheet]

    def recorded(self, sheets: dict[str, RecordedSheet] | None = None) -> RecordedInspection:
        """The inspection with what was recorded so far, or with other sheets."""
        needs = {f"need/{system}": "required" for system in self.library.systems}
        return RecordedInspection(
            brief={"horizon": "12", **needs},
            inspection={"date": "2026-05-02"},
            units=self.units,
            sheets=self.sheets if sheets is None else sheets,
        )

    def assessed(self) -> Assessment:
        """What the rules say of what was recorded so far."""
        return assess(self.recorded(), self.library)

    def true_words(self) -> Assessment:
        """What they say when every check was seen at its depth."""
        sheets = {subject: RecordedSheet(answer=rating) for subject, rating in self.truth.items()}
        return assess(replace(self.recorded(sheets)), self.library)

    def answer(self, subject: str, check: Check) -> RecordedSheet:
        """What a surveyor records of one check at a quay, with the machinery running."""
        if check.needs in NOT_AT_A_QUAY:
            return RecordedSheet(answer=not_seen("not run"))
        rating = self.truth[subject]
        proved = check.proof == TESTED
        readings = {reading.name: "1" for reading in check.readings} if proved else {}
        return RecordedSheet(answer=rating, depth=check.proof, readings=readings)


def made(library: Library, name: str, luck: random.Random) -> Vessel:
    """Draw one of VESSELS with the units that the checklists propose."""
    units, truth = [], {}
    for system in library.systems.values():
        for number, title in enumerate(system.units):
            kind = system.unit_kinds.get(title, "")
            unit = Unit(system.id, f"u{number}", title, kind, system.unit_homes.get(title, ""))
            units.append(unit)
            shares = VESSELS[name]
            state = luck.choices(tuple(BY_STATE), shares)[0] if shares else None
            for check in system.checks_for(kind):
                subject = f"sheet/{system.id}/{unit.id}/{check.id}"
                truth[subject] = luck.choices(RATINGS, BY_STATE[state])[0] if state else "good"
    return Vessel(library, tuple(units), truth, {})


def agrees(word: str, true: str) -> bool:
    """Whether a word is the true one; what only prices can say is right with either of its two."""
    return word == true or (true == PRICE_BOTH and word in PRICE_BOTH.split(" or "))
