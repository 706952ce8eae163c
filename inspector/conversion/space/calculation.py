"""Space and tonnage of one inspection: balances, berths and gross tonnage."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import floor

from inspector.conversion.core.case import Case
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.conversion.core.things import Thing, read_things, without_named
from inspector.conversion.space.areas import OPEN_DECK, Balance, Space, total
from inspector.conversion.space.particulars import (
    ENCLOSURES,
    SPACES,
    WANTS,
    Want,
    enclosed_volume_change,
    space_of,
    want_of,
)
from inspector.conversion.space.tonnage import enclosed_volume_of_certificate, gross_tonnage_after
from inspector.conversion.space.tonnage_thresholds import Threshold, thresholds_after
from inspector.record.typed_values import typed_number
from inspector.values.errors import InspectorError

# Floor of the spaces that have the headroom for cabins.
LIVING_FLOOR = "Living floor inside"
# m², more than any deck of this kind of vessel.
MOST_DECK = 20_000


@dataclass(frozen=True)
class Tonnage:
    """Gross tonnage before and after the changes.

    Parameters
    ----------
    before : int or None
        Of the certificate [-]; None where it is not given.
    added : Span or None
        Enclosed volume added [m³]; None where nothing is.
    after : Span or None
        With its decimals [-]; None where it is not known.
    thresholds : tuple of Threshold
    """

    before: int | None
    added: Span | None
    after: Span | None
    thresholds: tuple[Threshold, ...] = ()


@dataclass(frozen=True)
class Layout:
    """All that is calculated for the chapter.

    Parameters
    ----------
    spaces : tuple of Space
    wants : tuple of Want
    tonnage : Tonnage
    balances : tuple of Balance
    berthed : int
        Persons whom the listed cabins berth [-].
    offered : Span or None
        Persons for whose cabins there is room [-]; None where no cabin is listed.
    faults : tuple of str
        Rows that cannot be used, one sentence each.
    """

    spaces: tuple[Space, ...]
    wants: tuple[Want, ...]
    tonnage: Tonnage
    balances: tuple[Balance, ...]
    berthed: int
    offered: Span | None
    faults: tuple[str, ...]

    @property
    def is_empty(self) -> bool:
        """Whether nothing was given that a figure could come from."""
        return not (self.spaces or self.wants or self.tonnage.added is not None)


def layout(case: Case) -> Layout:
    """Return everything that is calculated from one inspection's tables; never raises for them.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Layout

    References
    ----------
    Model of our own; tonnage by ITC 1969, floors of cabins by MLC 2006.
    """
    faults: list[str] = []
    things = read_things(case)
    typed = without_named([thing for thing in things if thing.footprint], case.rows(SPACES))
    spaces = [*_usable_rows(typed, space_of, SPACES.title, faults), *_deck(case)]
    spaces += _spaces_of(things)
    tonnage = _tonnage(case, faults)

    def want(row: Row) -> Want:
        return want_of(row, tonnage.after)

    wants = _usable_rows(case.rows(WANTS), want, WANTS.title, faults)
    balances = tuple(_balances(spaces, wants))
    berthed = sum(want.persons for want in wants)
    return Layout(
        tuple(spaces),
        tuple(wants),
        tonnage,
        balances,
        berthed,
        _offered(wants, balances, berthed),
        tuple(faults),
    )


def _usable_rows(
    rows: Sequence[Row], make: Callable[[Row], object], title: str, faults: list[str]
) -> list:
    """What each row makes; a row that cannot be used becomes a sentence with its name."""
    made = []
    for row in rows:
        try:
            made.append(make(row))
        except InspectorError as problem:
            faults.append(f"{title}: {_with_name(row.text('name'), str(problem))}")
    return made


def _with_name(name: str, sentence: str) -> str:
    """Return a refusal that begins with the name of its row, once."""
    named = sentence.casefold().startswith(name.casefold())
    return sentence if named else f"{name}: {sentence}"


def _deck(case: Case) -> list[Space]:
    """The open deck of the vessel's papers, where no row of the table gives one."""
    area = typed_number(case.assessment.vessel.get("deck_area"), 0)
    # The papers give the deck as built; a row of the table is measured and replaces it.
    given = any(
        row.text("kind") == OPEN_DECK and row.text("act") == "given" for row in case.rows(SPACES)
    )
    # An area in square feet typed as square metres is beyond any deck of this kind.
    if given or not area or area > MOST_DECK:
        return []
    return [Space("open deck by the vessel's papers", OPEN_DECK, "given", area)]


def _spaces_of(things: Sequence[Thing]) -> Iterator[Space]:
    """Yield the deck that things stand on or leave, and the floors inside them."""
    for thing in things:
        area = thing.footprint
        if not area:
            continue
        if thing.on_open_deck:
            act = "lost" if thing.goes_on else "won"
            yield Space(f"open deck under {thing.name}", OPEN_DECK, act, area)
        if thing.has_rooms:
            act = "won" if thing.goes_on else "lost"
            yield Space(thing.name, "accommodation", act, area, thing.row.number("high"))


def _tonnage(case: Case, faults: list[str]) -> Tonnage:
    """Return gross tonnage before and after, as far as certificate and volumes are known."""
    typed = typed_number(case.assessment.vessel.get("tonnage"), 1)
    # The volume behind a certificate needs the next whole tonnage too, hence the upper end.
    before = None if typed is None or typed >= 99_999 else int(typed)
    built = [thing for thing in read_things(case) if thing.has_rooms and thing.volume]
    rows = without_named(built, case.rows(ENCLOSURES))
    changes = _usable_rows(rows, enclosed_volume_change, ENCLOSURES.title, faults)
    changes += [thing.volume if thing.goes_on else -thing.volume for thing in built]
    added = Span.exact(sum(changes)) if changes else None
    if before is None:
        return Tonnage(None, added, None)
    # Nothing is enclosed, so the tonnage stays that of the certificate.
    if added is None:
        return Tonnage(before, None, Span.exact(before))
    try:
        volume = enclosed_volume_of_certificate(before)
        after = gross_tonnage_after(volume, added)
        return Tonnage(before, added, after, thresholds_after(before, volume, added))
    except InspectorError as problem:
        faults.append(f"{ENCLOSURES.title}: {problem}")
        return Tonnage(before, added, None)


def _balances(spaces: list[Space], wants: list[Want]) -> Iterator[Balance]:
    """Open deck, floor, living floor and volume, each where anything is known of it."""
    deck = [space for space in spaces if space.is_open_deck]
    inside = [space for space in spaces if not space.is_open_deck]
    to_build = [want for want in wants if want.built]
    wanted_on_deck = [want for want in to_build if want.place == OPEN_DECK]
    wanted_inside = [want for want in to_build if want.place == "inside"]
    # A space whose height was not measured counts as if it had the headroom; a gap names it.
    living = [space for space in inside if space.livable is not False]
    wanted_living = [want for want in wanted_inside if want.living]
    groups = [
        _balance("Open deck", "area", deck, wanted_on_deck),
        _balance("Floor inside", "area", inside, wanted_inside),
        _balance(LIVING_FLOOR, "area", living, wanted_living),
        _balance("Volume inside", "volume", inside, wanted_inside),
    ]
    # With headroom everywhere and only living space wanted, both floors are the same.
    if wanted_living == wanted_inside and living == inside:
        del groups[1]
    yield from (group for group in groups if group is not None)


def _balance(name: str, measure: str, spaces: list[Space], wants: list[Want]) -> Balance | None:
    """Return one measure of spaces against wants; None where nothing is known of either."""
    available = total(spaces, f"usable_{measure}")
    measured = [getattr(want, measure) for want in wants]
    amounts = [amount for amount in measured if amount is not None]
    if available is None and not amounts:
        return None
    unit = "m²" if measure == "area" else "m³"
    return Balance(name, unit, available, sum(amounts, Span.exact(0.0)))


def _offered(wants: list[Want], balances: tuple[Balance, ...], berthed: int) -> Span | None:
    """Persons for whose cabins there is room.

    All of them where the living floor is enough, else those to be built in proportion to it.
    """
    if not berthed:
        return None
    floors = next((balance for balance in balances if balance.name == LIVING_FLOOR), None)
    new = sum(want.persons for want in wants if want.built)
    # What is there already needs no room.
    if not new or floors is None or floors.wanted.high <= 0:
        return Span.exact(berthed)
    # Without a space to build in, all of the new berths are uncertain.
    if floors.available is None:
        return Span(berthed - new, None, berthed)
    return _berths_that_fit(berthed, new, floors.available, floors.wanted)


def _berths_that_fit(berthed: int, new: int, available: Span, wanted: Span) -> Span:
    """Return for how many persons the floor suffices, at both ends."""

    def fitting(there: float, asked: float) -> int:
        # Cabins without a floor of their own ask for nothing, so all of them fit.
        if asked <= 0:
            return berthed
        share = min(1.0, max(0.0, there / asked))
        # A whole person must not be lost to a binary fraction.
        return berthed - new + floor(new * share + 1e-9)

    # Least floor against most wanted is the low end, and the other way round the high one.
    known = available.point is not None and wanted.point is not None
    point = fitting(available.point, wanted.point) if known else None
    return Span(fitting(available.low, wanted.high), point, fitting(available.high, wanted.low))
