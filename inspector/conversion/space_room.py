"""Space and tonnage of one inspection reckoned from its tables: balances, berths and gross tonnage, before they are put into words."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import floor

from inspector.assess.gather import number
from inspector.conversion.book import Case
from inspector.conversion.cabins import HEADROOM
from inspector.conversion.shapes import Span
from inspector.conversion.space import Balance, Space, summed
from inspector.conversion.space_tables import ENCLOSURES, SPACES, WANTS, Want, enclosed, space_of, want_of
from inspector.conversion.tables import Row
from inspector.conversion.tonnage import Line, behind, changed, lines
from inspector.errors import InspectorError

LIVING_FLOOR = f"Living floor inside ({HEADROOM:g} m)"


@dataclass(frozen=True)
class Tonnage:
    """Gross tonnage before (None: not given) and after (None: not known), the volume added [m³], and the lines."""

    before: int | None
    added: Span | None
    after: Span | None
    lines: tuple[Line, ...] = ()
    volume: Span | None = None


@dataclass(frozen=True)
class Room:
    """All of the chapter that is reckoned, before it is put into words."""

    spaces: tuple[Space, ...]
    wants: tuple[Want, ...]
    tonnage: Tonnage
    balances: tuple[Balance, ...]
    berthed: int
    offered: Span | None       # persons for whom cabins find their place
    faults: tuple[str, ...]


def room(case: Case) -> Room:
    """Everything reckoned from one inspection's tables. Never raises for recorded data."""
    faults: list[str] = []
    spaces = [*_each(case.rows(SPACES), space_of, SPACES.title, faults), *_deck(case)]
    tonnage = _tonnage(case, faults)
    wants = _each(case.rows(WANTS), lambda row: want_of(row, tonnage.after), WANTS.title, faults)
    balances = tuple(_balances(spaces, wants))
    berthed = sum(one.persons for one in wants)
    return Room(tuple(spaces), tuple(wants), tonnage, balances, berthed, _offered(wants, balances, berthed), tuple(faults))


def _each(rows: Sequence[Row], make: Callable[[Row], object], title: str, faults: list[str]) -> list:
    """What each row makes; a row that cannot be used is told by its name and left out."""
    made = []
    for row in rows:
        try:
            made.append(make(row))
        except InspectorError as problem:
            told = str(problem)
            faults.append(f"{title}: {told}" if told.casefold().startswith(row.text("name").casefold()) else f"{title}: {row.text('name')}: {told}")
    return made


def _deck(case: Case) -> list[Space]:
    """The open deck of the vessel's particulars, where no row of the table gives one."""
    area = number(case.assessment.vessel.get("deck_area"), 0)
    given = any(row.text("kind") == "open deck" and row.text("act") == "given" for row in case.rows(SPACES))
    return [] if given or not area or area > 20_000 else [Space("open deck by the vessel's papers", "open deck", "given", area)]


def _tonnage(case: Case, faults: list[str]) -> Tonnage:
    typed = number(case.assessment.vessel.get("tonnage"), 1)
    before = None if typed is None or typed >= 99_999 else int(typed)
    changes = _each(case.rows(ENCLOSURES), enclosed, ENCLOSURES.title, faults)
    added = Span.exact(sum(changes)) if changes else None
    if before is None:
        return Tonnage(None, added, None)
    try:
        volume = behind(before)
        if added is None:
            return Tonnage(before, None, Span.exact(before), (), volume)
        return Tonnage(before, added, changed(volume, added), lines(before, volume, added), volume)
    except InspectorError as problem:
        faults.append(f"{ENCLOSURES.title}: {problem}")
        return Tonnage(before, added, None)


def _balances(spaces: list[Space], wants: list[Want]) -> Iterator[Balance]:
    deck, inside = ([one for one in spaces if (one.kind == "open deck") is outside] for outside in (True, False))
    build = [one for one in wants if one.built]
    on_deck, within = ([one for one in build if one.row.text("place") == place] for place in ("open deck", "inside"))
    living = [one for one in inside if one.livable is not False]
    live = [one for one in within if one.living]
    groups = [("Open deck", "m²", deck, on_deck, "area"), ("Floor inside", "m²", inside, within, "area"), (LIVING_FLOOR, "m²", living, live, "area"),
              ("Volume inside", "m³", inside, within, "volume")]
    if live == within and living == inside:   # with headroom everywhere and nothing but living wanted, both floors are the same
        del groups[1]
    for name, unit, spaces_of, wanted, measure in groups:
        there = summed(spaces_of, f"usable_{measure}")
        amounts = [getattr(one, measure) for one in wanted if getattr(one, measure) is not None]
        if there is not None or amounts:
            yield Balance(name, unit, there, sum(amounts, Span.exact(0.0)))


def _offered(wants: list[Want], balances: tuple[Balance, ...], berthed: int) -> Span | None:
    """Persons for whom cabins find room: all where the living floor is enough, else the built ones in proportion to it; None where no cabin is listed."""
    if not berthed:
        return None
    floors = next((one for one in balances if one.name == LIVING_FLOOR), None)
    new = sum(one.persons for one in wants if one.built)
    if not new or floors is None or floors.wanted.high <= 0:
        return Span.exact(berthed)
    if floors.there is None:
        return Span(berthed - new, None, berthed)
    def fitting(there: float, wanted: float) -> int:
        return berthed - new + floor(new * min(1.0, max(0.0, there / wanted)) + 1e-9) if wanted > 0 else berthed
    point = None if floors.there.point is None or floors.wanted.point is None else fitting(floors.there.point, floors.wanted.point)
    return Span(fitting(floors.there.low, floors.wanted.high), point, fitting(floors.there.high, floors.wanted.low))
