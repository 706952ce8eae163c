"""What is asked before the walk: the fields of the visit, the vessel and the brief."""

from collections.abc import Iterable
from typing import TYPE_CHECKING

from inspector.values.clock_time import time_fault
from inspector.values.vocabulary import ASKED_OF_CREW, BERTHS, NEEDS, NO, VESSEL_STATES, YES
from inspector.web.forms.form_fields import FormField

if TYPE_CHECKING:
    from inspector.checklists.model import System


def _text(name: str, label: str, longest: int = 0) -> FormField:
    return FormField(name, label, "text", longest=longest)


def _date(name: str, label: str) -> FormField:
    return FormField(name, label, "date")


def _number(name: str, label: str, unit: str, high: float, low: float = 0) -> FormField:
    return FormField(name, label, "number", unit, low=low, high=high)


def imo_sentence(number: str) -> str:
    """Return what the check digit says of an IMO number, "" for none."""
    return _imo_judged(number)[0] if number else ""


def _imo_fault(number: str) -> str:
    """What is wrong with the form of an IMO number; a wrong check digit is shown, not refused."""
    sentence, can_be_judged = _imo_judged(number)
    return "" if can_be_judged else f"IMO number: {sentence}"


def _imo_judged(number: str) -> tuple[str, bool]:
    """What is said of an IMO number, and whether it has the form of one."""
    # Imported when a number is judged: the first page needs no criterion.
    from inspector.checklists.registry import criterion
    from inspector.criteria.core.judgement import CannotJudge

    try:
        return criterion("imo-number").apply({"number": number}).sentence, True
    except CannotJudge as problem:
        return str(problem), False


def _crew(name: str) -> FormField:
    """A question to the crew about what they show, open or run."""
    label, _ = ASKED_OF_CREW[name]
    answers = {"": "not known yet"}
    return FormField(name, label, "choice", choices=("", YES, NO), names=answers)


VISIT = (
    _text("title", "What you call this inspection", 120),
    _text("place", "Place and berth"),
    _date("date", "Date of the visit"),
    _text("attending", "Who attended"),
    _text("weather", "Weather, light and water"),
    FormField(
        "state",
        "State of the vessel",
        "choice",
        choices=("", *VESSEL_STATES),
        names={"": "not known yet"},
    ),
    FormField(
        "berth", "Where she is", "choice", choices=("", *BERTHS), names={"": "not known yet"}
    ),
    _number("aboard", "Hours aboard", "h", 240),
    FormField(
        "off",
        "Or the time to be off",
        "text",
        longest=5,
        placeholder="16:30",
        rule=lambda text: time_fault("Time to be off", text),
    ),
    FormField("people", "How many people look", "whole", low=1, high=9),
    *map(_crew, ASKED_OF_CREW),
)
VESSEL = (
    _text("name", "Name", 120),
    FormField("imo", "IMO number", "text", longest=40, rule=_imo_fault),
    _text("flag", "Flag", 120),
    _text("class", "Class and notations"),
    _date("built", "Keel laid"),
    FormField("year", "Year of build", "whole", low=1900, high=2100),
    _text("yard", "Yard"),
    _number("length", "Length over all", "m", 500),
    _number("breadth", "Breadth", "m", 100),
    _number("depth", "Depth", "m", 60),
    _number("draught", "Draught", "m", 30),
    _number("tonnage", "Gross tonnage", "", 300_000),
    _number("deck_area", "Open deck area", "m²", 20_000),
    FormField("dp_class", "DP class", "choice", choices=("", "1", "2", "3")),
    FormField("particulars", "Other particulars", "text", longest=4000, lines=2),
)
_WATERS = (
    "",
    "open sea",
    "North America and US Caribbean",
    "Baltic and North Sea",
    "Canadian Arctic",
    "Norwegian Sea",
)
# As the criteria of safety gear name them: what she is to be decides what they ask for.
_SHIPS = (
    "",
    "cargo",
    "passenger",
    "special purpose, up to 60 persons",
    "special purpose, over 60 persons",
)
BRIEF = (
    _text("client", "For whom", 120),
    _number("speed", "Speed", "kn", 60),
    _number("range", "Range", "nmi", 40_000),
    _number("endurance", "Endurance", "days", 400),
    _number("station", "Of these, days on station", "days", 400),
    _number("persons", "Persons on board", "", 2000),
    _number("horizon", "How long she is to be kept", "years", 60),
    _number("budget", "Budget for vessel and work", "", 1e12),
    FormField("waters", "Waters with their own emission rules", "choice", choices=_WATERS),
    FormField(
        "ship",
        "Kind of ship she is to be",
        "choice",
        choices=_SHIPS,
        names={"": "not decided: asked at each check"},
    ),
)


def brief_fields(systems: "Iterable[System]") -> tuple[FormField, ...]:
    """Return the fields of a brief.

    Parameters
    ----------
    systems : iterable of System
        For each of which the brief has a need.

    Returns
    -------
    tuple of FormField
    """
    names = {"": "nothing said: neutral"}
    needs = [
        FormField(
            f"need/{system.id}", f"Need: {system.name}", "choice", choices=("", *NEEDS), names=names
        )
        for system in systems
    ]
    return (*BRIEF, *needs)
