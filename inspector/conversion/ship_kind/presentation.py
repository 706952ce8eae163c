"""The wording of the chapter on the kind of ship: its answer, figures and tables."""

from collections.abc import Iterator

from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.figure import Figure, unique
from inspector.conversion.core.span import Span
from inspector.conversion.ship_kind import rule_sources as sources
from inspector.conversion.ship_kind.calculation import ShipKind
from inspector.conversion.ship_kind.existing_items import ExistingItem
from inspector.conversion.ship_kind.rule_sources import Cited
from inspector.conversion.ship_kind.ship_kinds import (
    CARGO,
    KINDS,
    MOST_PASSENGERS,
    PASSENGER,
    SPECIAL,
    required_index,
)
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.text import counted, listed, with_article

NOT_NAMED = (
    "The brief names no number of persons, and by them a vessel is a cargo ship, a special "
    "purpose ship or a passenger ship."
)
DECIDES = (
    "Subdivision and damage stability decide which of them she can be; a naval architect "
    "calculates them, and they are not calculated here."
)
VERIFY = (
    "Verify before you rely on it: who is a passenger, special personnel or crew, which edition of "
    "each rule applies, and what may stay as it is, is decided by the flag and its recognised "
    "organisation, in writing, before a price is agreed."
)
# Rating -> what is printed of an item.
FAILS = {True: "fails", False: "passes", None: "not judged"}


def answer(found: ShipKind) -> Cell:
    """Return the chapter in a few sentences.

    Parameters
    ----------
    found : ShipKind

    Returns
    -------
    Cell
    """
    if found.aboard.persons is None:
        return NOT_NAMED
    return joined((_what_she_is(found), DECIDES, *_failing(found)))


def _what_she_is(found: ShipKind) -> str:
    """What the persons make of her."""
    persons = counted(found.aboard.persons, "person")
    passengers = found.aboard.likely_passengers
    if not found.kind:
        return (
            f"Of the {persons} of the brief nobody has said who are passengers: more than "
            f"{MOST_PASSENGERS} passengers make her a passenger ship, more than {MOST_PASSENGERS} "
            "special personnel a special purpose ship, fewer of both a cargo ship."
        )
    return (
        f"With {persons}, {counted(passengers, 'passenger')} among them, she is "
        f"{with_article(found.kind)}."
    )


def _failing(found: ShipKind) -> Iterator[str]:
    """How many of the items that were read fail as each kind."""
    if not found.items.items:
        return
    told = [f"{len(found.items.failing(kind))} as {with_article(kind)}" for kind in KINDS]
    items = counted(len(found.items.items), "existing item")
    yield f"Of {items} judged by what was read aboard, {listed(told)} fail."


def figures(found: ShipKind) -> tuple[Figure, ...]:
    """Return the index that is required of each kind, and the damage to be survived.

    Parameters
    ----------
    found : ShipKind

    Returns
    -------
    tuple of Figure
    """
    return tuple(_figures(found))


def _figures(found: ShipKind) -> Iterator[Figure]:
    persons = found.aboard.persons
    if persons is None:
        return
    used: dict[str, tuple[str, Cited]] = {
        CARGO: ("by length", sources.INDEX),
        SPECIAL: ("0.8 to 1 of a passenger ship's, by persons", sources.SPECIAL_DAMAGE),
        PASSENGER: ("by persons", sources.INDEX),
    }
    for kind in KINDS:
        index = required_index(kind, persons, found.length)
        if index is not None:
            formula, source = used[kind]
            name = f"Required subdivision index, {kind}"
            yield Figure(name, Span.exact(index), "", formula, source=source.source)
    if found.damage is not None:
        for name, value in zip(("length", "depth inboard"), found.damage, strict=True):
            yield Figure(
                f"Damage to her side to be survived by a passenger ship, {name}",
                Span.exact(value),
                "m",
                "between the shares of length and breadth for 36 and for 400 persons",
                source=sources.SIDE_DAMAGE.source,
            )


def tables(found: ShipKind) -> tuple[FigureTable, ...]:
    """Return the kinds side by side, the items that fail, and what the architect needs.

    Parameters
    ----------
    found : ShipKind

    Returns
    -------
    tuple of FigureTable
    """
    made = []
    if found.lines:
        made += [_kinds_table(found), _sources_table(found)]
    if found.items.items:
        made.append(_items_table(found))
    made.append(_needed_table(found))
    if found.compartments:
        made.append(_compartments_table(found))
    return tuple(made)


def _kinds_table(found: ShipKind) -> FigureTable:
    """The three kinds side by side, each line with its sources."""
    rows = tuple(
        (line.subject, line.cargo, line.special, line.passenger, _cited(line.sources))
        for line in found.lines
    )
    note: Cell = (
        "Each line as far as its source was read; what is from memory says so. Editions age: flag "
        "and recognised organisation name the text that applies on the day."
    )
    if found.length is not None:
        note = joined(
            (
                sentence(
                    "Length: {length}, from {place}.",
                    length=Quantity.exact(found.length, "m"),
                    place=found.length_from,
                ),
                note,
            )
        )
    return FigureTable(
        f"What each means for {counted(found.aboard.persons, 'person')}",
        table_columns("subject", *KINDS, "sources"),
        rows,
        note,
    )


def _cited(cited: tuple[Cited, ...]) -> str:
    """The short names, and which of them were not read."""
    return "; ".join(
        f"{each.short} (from memory)" if each.source.mark == "memory" else each.short
        for each in cited
    )


def _sources_table(found: ShipKind) -> FigureTable:
    """Every source once: instrument, edition, clause, and whether it was read."""
    cited = unique(*(line.sources for line in found.lines))
    rows = tuple(
        (
            each.short,
            each.source.title,
            each.source.edition,
            each.source.clause,
            "from memory" if each.source.mark == "memory" else "read",
        )
        for each in cited
    )
    return FigureTable(
        "Sources of these lines",
        table_columns("called", "instrument", "edition", "clause", "how known"),
        rows,
        "Read: the text or an extract of it, at the place named under edition.",
    )


def _items_table(found: ShipKind) -> FigureTable:
    """What was read aboard, judged as each kind."""
    # What fails as a passenger ship comes first: it is the longest list of work.
    items = sorted(
        found.items.items, key=lambda item: -sum(bool(item.fails(kind)) for kind in KINDS)
    )
    rows = tuple((item.name, *(_judged(item, kind) for kind in KINDS)) for item in items)
    unread = found.items.unread
    note = "Judged by the criteria of the checks, each with its own source, from what was read."
    if unread:
        note += f" Not read yet: {listed(list(unread))}."
    return FigureTable("Existing items", table_columns("item", *KINDS), rows, note)


def _judged(item: ExistingItem, kind: str) -> str:
    """Whether an item passes as a kind of ship, and by how much it misses."""
    judgement, word = item.judged.get(kind), FAILS[item.fails(kind)]
    if judgement is None or not item.fails(kind) or judgement.band in ("", word):
        return word
    return f"{word}: {judgement.band}"


def _needed_table(found: ShipKind) -> FigureTable:
    """What the architect needs, and what of it is here."""
    rows = tuple((each.name, each.here or "missing", each.source) for each in found.needed)
    return FigureTable(
        "What the naval architect needs",
        table_columns("what", "here", "from"),
        rows,
        "Collected here and handed over with the tables of particulars; common practice, no "
        "source.",
    )


def _compartments_table(found: ShipKind) -> FigureTable:
    """The compartments with their length."""
    least = found.damage[0] if found.damage else None
    rows = tuple(
        (
            each.row.text("name"),
            None if each.length is None else Quantity.exact(each.length, "m", 2),
            each.row.text("contents"),
            each.row.text("proof") or "not said",
            _bulkheads(each.length, least),
        )
        for each in found.compartments
    )
    note = (
        "Two bulkheads nearer to each other than the damage is long count as one: SOLAS II-1/8.3.3."
        if least
        else ""
    )
    return FigureTable(
        "Watertight compartments",
        table_columns("compartment", ("length", "m"), "contents", "watertight by", "bulkheads"),
        rows,
        note,
    )


def _bulkheads(length: float | None, least: float | None) -> str:
    """Whether both bulkheads of a compartment count."""
    if length is None or least is None:
        return ""
    return "count as one" if length < least else "both count"
