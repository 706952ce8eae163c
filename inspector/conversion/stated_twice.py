"""What was read on the walk and typed again for the conversion, where the two do not agree.

Whoever reads one page would never learn that the other says something else. Nothing is corrected
here: both figures are named, and which of them counts for the chapter.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.span import Span
from inspector.conversion.power.electrical_loads import demand
from inspector.conversion.power.particulars import BOARD, EXPOSURE
from inspector.conversion.power.plant_rows import read_plant
from inspector.conversion.space.particulars import WANTS
from inspector.record.typed_values import typed_text, typed_unit
from inspector.values.errors import InspectorError
from inspector.values.measures import parse_measure
from inspector.values.quantity import Cell, Quantity, sentence
from inspector.values.units import convert

# What two figures of one thing may differ by and still be the same (our own choice).
SAME = 0.02
THERE = "there already"


def with_contradictions(case: Case, chapter: Chapter) -> Chapter:
    """Return a chapter that also warns of what was stated otherwise on the walk.

    Parameters
    ----------
    case : Case
    chapter : Chapter

    Returns
    -------
    Chapter

    References
    ----------
    Model of our own.
    """
    told = tuple(said for find in _OF_CHAPTER.get(chapter.id, ()) for said in find(case, chapter))
    return replace(chapter, warnings=(*chapter.warnings, *told)) if told else chapter


def _readings(case: Case, system: str, check: str, name: str, unit: str = "") -> Iterator[float]:
    """Yield a reading of every unit's sheet of a check, in a unit."""
    for subject, sheet in case.recorded.sheets.items():
        _, of_system, _, of_check = subject.split("/")
        typed = sheet.readings.get(name)
        if (of_system, of_check) != (system, check) or not typed_text(typed):
            continue
        try:
            value, typed_in = parse_measure(typed_text(typed), typed_unit(typed) or unit)
            yield convert(value, typed_in, unit) if unit else value
        # A slip of the finger is told where it was typed.
        except InspectorError:
            continue


def _differ(first: float, second: float) -> bool:
    return abs(first - second) > SAME * max(abs(first), abs(second))


def _said(what: str, walked: Quantity, typed: Quantity, counts: str) -> Cell:
    """The sentence on two figures of one thing."""
    return sentence(
        "{what}: {walked} on the walk, and {typed} {counts}: settle which is right.",
        what=what,
        walked=walked,
        typed=typed,
        counts=counts,
    )


def _cabins(case: Case, *, who: str = "", there: bool = False) -> float:
    """Persons in the cabins that are listed, of one kind of inhabitant, or in those that stay."""
    return sum(
        (row["count"] or 1) * (row["persons"] or 0)
        for row in case.rows(WANTS)
        if row.text("kind") == "cabin"
        and (not who or row.text("who") == who)
        and (not there or row.text("plan") == THERE)
    )


def _berths(case: Case, _: Chapter) -> Iterator[Cell]:
    """Berths counted aboard against those in cabins that are there already."""
    listed = _cabins(case, there=True)
    for counted in _readings(case, "accommodation", "berths", "berths"):
        if listed and _differ(counted, listed):
            counts = "in the cabins listed as there already, which count"
            yield _said("Berths", Quantity.exact(counted), Quantity.exact(listed), counts)


def _mess(case: Case, _: Chapter) -> Iterator[Cell]:
    """The floor of mess and day rooms by tape against what is listed as there already."""
    listed = sum(
        (row["count"] or 1) * (row.number("area") or 0.0)
        for row in case.rows(WANTS)
        if row.text("kind") == "mess" and row.text("plan") == THERE
    )
    for floor in _readings(case, "accommodation", "day-rooms", "floor", "m²"):
        if listed and _differ(floor, listed):
            counts = "among the rooms listed as there already, which counts"
            walked, typed = Quantity.exact(floor, "m²"), Quantity.exact(listed, "m²")
            yield _said("Floor of mess and day rooms", walked, typed, counts)


def _passengers(case: Case, _: Chapter) -> Iterator[Cell]:
    """Guests on the sheet of the fire plan against those who have a cabin."""
    listed = _cabins(case, who="guest")
    for guests in _readings(case, "fire-protection", "guests", "passengers"):
        if listed and _differ(guests, listed):
            counts = "in the cabins listed for guests, which count"
            yield _said("Passengers", Quantity.exact(guests), Quantity.exact(listed), counts)


def _night_load(case: Case, _: Chapter) -> Iterator[Cell]:
    """The night load as read against the list of loads in harbour."""
    present = read_plant(case).present_consumers
    listed = demand(present, "harbour").span if present else None
    for read in _readings(case, "power-generation", "harbour-load", "power", "kW"):
        if listed is not None and not _near(listed, read):
            counts = "by the list of electrical loads, which counts"
            walked = Quantity.exact(read, "kW", 0)
            yield _said("Load of a night in harbour", walked, listed.quantity("kW", 0), counts)


def _near(span: Span, value: float) -> bool:
    """Whether a value is in a span, or so near that both are the same."""
    return span.low * (1 - SAME) <= value <= span.high * (1 + SAME)


# Reading of the sheet -> what it is, the column of the board, and the unit of both.
_SHORE = {
    "voltage": ("Shore voltage", "shore_voltage", "V"),
    "frequency": ("Shore frequency", "shore_frequency", "Hz"),
    "current": ("Current of the shore connection", "shore_current", "A"),
    "ship_voltage": ("Ship's voltage", "voltage", "V"),
    "ship_frequency": ("Ship's frequency", "frequency", "Hz"),
}


def _shore(case: Case, _: Chapter) -> Iterator[Cell]:
    """The plate of the shore connection against the table of board and shore connection."""
    board = case.one(BOARD)
    for reading, (what, column, unit) in _SHORE.items():
        typed = board.number(column)
        for read in _readings(case, "power-generation", "shore-connection", reading, unit):
            if typed is not None and _differ(read, typed):
                counts = "in the table of the main board, which counts"
                walked, listed = Quantity.exact(read, unit), Quantity.exact(typed, unit)
                yield _said(what, walked, listed, counts)


def _side_area(case: Case, _: Chapter) -> Iterator[Cell]:
    """The side area of the capability plots against the one that forces are calculated with."""
    typed = case.one(EXPOSURE).number("lateral")
    for area in _readings(case, "dynamic-positioning", "capability-and-manual", "side_area", "m²"):
        if typed is not None and _differ(area, typed):
            counts = "in the table of wind and current, which counts"
            walked, listed = Quantity.exact(area, "m²"), Quantity.exact(typed, "m²")
            yield _said("Side area of the capability plots", walked, listed, counts)


def _holding(case: Case, chapter: Chapter) -> Iterator[Cell]:
    """The wind of the capability plots after the worst failure against the calculated one."""
    held = next((one for one in chapter.requirements if one.id == "wind-after-failure"), None)
    for wind in _readings(case, "dynamic-positioning", "capability-and-manual", "wind_limit", "kn"):
        if held is not None and held.offered is not None and not _near(held.offered, wind):
            counts = "by the balance of thrust and power below"
            walked, found = Quantity.exact(wind, "kn"), held.offered.quantity("kn", 1)
            yield _said("Wind held after the worst failure", walked, found, counts)


Finder = Callable[[Case, Chapter], Iterator[Cell]]
_OF_CHAPTER: dict[str, tuple[Finder, ...]] = {
    "power": (_night_load, _shore, _side_area, _holding),
    "space": (_berths, _mess, _passengers),
}
