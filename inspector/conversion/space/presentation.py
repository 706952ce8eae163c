"""The tables and the drawing of the chapter on space and tonnage."""

from collections.abc import Iterator, Sequence

from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.drawing import Bar, Bars
from inspector.conversion.core.span import Span
from inspector.conversion.space.areas import LIMITS, Balance, Space
from inspector.conversion.space.cabins import HEADROOM, MESS_SEAT, MLC, PER_SANITARY, Services
from inspector.conversion.space.particulars import Want
from inspector.conversion.space.tonnage import certificate_tonnage
from inspector.conversion.space.tonnage_thresholds import THRESHOLDS_SOURCE, Threshold
from inspector.values.quantity import Cell, Quantity, joined, sentence

TAKES_CABINS = {True: "yes", False: "stores and technical rooms only", None: "height not measured"}
HOSPITAL = {True: "yes", False: "no", None: "by the days of the voyage"}


def tonnage_cell(tonnage: Span) -> Cell:
    """Return gross tonnage as a certificate would give it, both ends where they differ.

    Parameters
    ----------
    tonnage : Span
        With its decimals [-].

    Returns
    -------
    int or Sentence
    """
    low, high = certificate_tonnage(tonnage.low), certificate_tonnage(tonnage.high)
    return low if low == high else sentence("between {low} and {high}", low=low, high=high)


def spaces_table(spaces: Sequence[Space]) -> FigureTable:
    """Return the spaces with what can be used of them.

    Parameters
    ----------
    spaces : sequence of Space

    Returns
    -------
    FigureTable
    """
    columns = table_columns(
        "space",
        "kind",
        "act",
        ("net area", "m²"),
        ("height", "m"),
        ("usable area", "m²"),
        ("usable volume", "m³"),
        "takes cabins",
    )
    headroom = sentence(
        "Cabins need a headroom of {headroom}.", headroom=Quantity.exact(HEADROOM, "m")
    )
    rows = tuple(
        (
            space.name,
            space.kind,
            space.act if space.state is None else f"{space.act}, {space.state}",
            _exact(space.area, "m²", 2),
            _exact(space.height, "m", 2),
            _quantity(space.usable_area, "m²"),
            _quantity(space.usable_volume, "m³"),
            None if space.is_open_deck else TAKES_CABINS[space.livable],
        )
        for space in spaces
    )
    return FigureTable("Spaces", columns, rows, joined((headroom, *LIMITS)))


def wants_table(wants: Sequence[Want]) -> FigureTable:
    """Return what is wanted, with the least floor where the labour convention asks one.

    Parameters
    ----------
    wants : sequence of Want

    Returns
    -------
    FigureTable
    """
    columns = table_columns(
        "what",
        "kind",
        "where",
        "count",
        "persons",
        ("floor", "m²"),
        ("least floor of each", "m²"),
        ("volume", "m³"),
        "plan",
    )
    rows = tuple(
        (
            want.name,
            want.kind,
            want.place,
            want.count,
            # A galley berths nobody, and a 0 would look like a cabin without beds.
            want.persons or None,
            _quantity(want.area, "m²"),
            _quantity(want.least, "m²"),
            _quantity(want.volume, "m³"),
            "to be built" if want.built else "there already",
        )
        for want in wants
    )
    note = f"Least floor: {MLC}. A cabin without a floor of its own counts with the least."
    return FigureTable("What is wanted", columns, rows, note)


def thresholds_table(thresholds: Sequence[Threshold]) -> FigureTable:
    """Return the thresholds of gross tonnage after the changes.

    Parameters
    ----------
    thresholds : sequence of Threshold

    Returns
    -------
    FigureTable
    """
    columns = table_columns("from GT", "what begins", "after the changes", ("left below it", "m³"))
    rows = tuple(
        (
            threshold.tonnage,
            threshold.begins,
            threshold.state,
            # Above it, what is left below it is no room but a debt that nobody asks for.
            None if threshold.state == "above already" else _quantity(threshold.room, "m³", 0),
        )
        for threshold in thresholds
    )
    note = (
        f"{THRESHOLDS_SOURCE}. Reducing tonnage rarely helps: date of build and old certificates "
        "still count. Open-sided spaces that are glazed later count as enclosed."
    )
    return FigureTable("Thresholds of gross tonnage", columns, rows, note)


def services_table(persons: int, services: Services) -> FigureTable:
    """Return what a number of persons needs beside cabins.

    Parameters
    ----------
    persons : int
        Persons on board [-].
    services : Services

    Returns
    -------
    FigureTable
    """
    sanitary = sentence(
        "sets of toilet, basin and shower, one to {persons} persons", persons=PER_SANITARY
    )
    mess = sentence(
        "mess for all at once, {seat} a seat (a guideline)", seat=Quantity.exact(MESS_SEAT, "m²")
    )
    rows = (
        (sanitary, services.sanitary),
        (mess, Quantity.exact(services.mess, "m²")),
        ("hospital, from 15 crew on more than 3 days", HOSPITAL[services.hospital]),
    )
    return FigureTable(
        sentence("What {persons} persons need beside cabins", persons=persons),
        table_columns("what", "at least"),
        rows,
        f"{MLC}; the hospital counts crew, and here all persons are counted.",
    )


def drawings(balances: Sequence[Balance]) -> Iterator[Bars]:
    """Yield the drawing of available floor against what is wanted, where any is known.

    Parameters
    ----------
    balances : sequence of Balance

    Yields
    ------
    Bars
    """
    known = [
        # One axis has one unit, and floor is what a layout is drawn by.
        balance
        for balance in balances
        if balance.available is not None and balance.unit == "m²"
    ]
    if not known:
        return
    bars = tuple(
        Bar(
            balance.name,
            balance.available.low,
            balance.available.point,
            balance.available.high,
            balance.wanted.middle,
        )
        for balance in known
    )
    first = known[0]
    described = sentence(
        "{name}: {available} available, {wanted} wanted.",
        name=first.name,
        available=_quantity(first.available, "m²", 0),
        wanted=_quantity(first.wanted, "m²", 0),
    )
    yield Bars("Floor available and wanted", "m²", bars, described, "wanted")


def _quantity(span: Span | None, unit: str, digits: int = 1) -> Quantity | None:
    return None if span is None else span.quantity(unit, digits)


def _exact(value: float | None, unit: str, digits: int) -> Quantity | None:
    return None if value is None else Quantity.exact(value, unit, digits)
