"""The tables of spaces, of what is wanted and of what is enclosed, and what their rows mean."""

from dataclasses import dataclass
from functools import cached_property

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.particulars import Row, Table, column
from inspector.conversion.core.span import Span
from inspector.conversion.core.things import LIST
from inspector.conversion.space.areas import (
    ACTS,
    KINDS,
    STATES,
    Space,
    clear_length,
    net_area,
)
from inspector.conversion.space.cabins import OCCUPANTS, Shortfall, least_floor_over, shortfalls

SPACES = Table(
    "spaces",
    "Spaces",
    "What the vessel gives, what removal wins and what the changes lose: by frames or length, "
    "breadth and clear height.",
    (
        column("name", "Space", kind="text", needed=True),
        column("kind", "Kind", kind="choice", choices=KINDS, needed=True),
        column("act", "Given, won or lost", kind="choice", choices=ACTS, needed=True),
        column("frames", "Frame spaces or deck fittings counted", high=1000),
        column("pitch", "From one to the next", "m", low=0.1, high=10),
        column("length", "Clear length", "m", high=200),
        column("breadth", "Clear breadth", "m", high=80),
        column("deducted", "Taken up by what stays in it", "m²", high=20_000),
        column("height", "Clear height", "m", high=40),
        column("area", "Area, if known by itself", "m²", high=20_000),
        column("volume", "Volume, if known by itself", "m³", high=100_000),
        column("share", "Share that can be used", "%", high=100),
        column("state", "If given: is it", kind="choice", choices=STATES),
    ),
)
WANT_KINDS = (
    "cabin",
    "mess",
    "galley",
    "sanitary",
    "hospital",
    "laundry",
    "corridors and stairs",
    "store",
    "workshop",
    "tender bay",
    "laboratory",
    "other",
)
# What needs the headroom of living spaces; the rest may be in lower ones.
LIVING = ("cabin", "mess", "galley", "sanitary", "hospital", "laundry", "corridors and stairs")
WANTS = Table(
    "wants",
    "What the brief wants to put there",
    "Cabins with persons in each, stores, workshop, tender bay and the rest, with floor and "
    "height.",
    (
        column("name", "What", kind="text", needed=True),
        column("kind", "Kind", kind="choice", choices=WANT_KINDS, needed=True),
        column("place", "Where", kind="choice", choices=("inside", "open deck"), needed=True),
        column("count", "How many", kind="whole", low=1, high=500),
        column("persons", "Persons in each cabin", kind="whole", low=1, high=50),
        column("who", "Who lives in it", kind="choice", choices=OCCUPANTS),
        column("area", "Floor of each", "m²", high=5000),
        column("height", "Clear height", "m", high=20),
        column("volume", "Volume of each, if known by itself", "m³", high=20_000),
        column(
            "plan",
            "There already, or to be built",
            kind="choice",
            choices=("build", "there already"),
        ),
    ),
)
ENCLOSURES = Table(
    "enclosures",
    "Enclosed volume for tonnage",
    "As typed before; a house is typed once now, with its outside size, among what comes off and "
    "goes on.",
    (
        column("name", "What", kind="text", needed=True),
        column("act", "Added or removed", kind="choice", choices=("added", "removed"), needed=True),
        column("length", "Length", "m", high=200),
        column("breadth", "Breadth", "m", high=80),
        column("height", "Height", "m", high=40),
        column("volume", "Volume, if known by itself", "m³", high=100_000),
    ),
    superseded_by=LIST,
)
TABLES = (SPACES, WANTS, ENCLOSURES)


def space_of(row: Row) -> Space:
    """Return the space of a row.

    Parameters
    ----------
    row : Row
        A row of SPACES.

    Returns
    -------
    Space

    Raises
    ------
    BadInput
        Neither area nor volume is given; with the field.
    """
    share = row.number("share")
    return Space(
        row.text("name"),
        row.text("kind"),
        row.text("act"),
        _area(row),
        row.number("height"),
        row.number("volume"),
        None if share is None else share / 100,
        row["state"],
    )


def _area(row: Row) -> float | None:
    """The area [m²] as given, else by the sides; None where no side is given either."""
    given = row.number("area")
    sides = (row["frames"], row["length"], row["breadth"])
    if given is not None or all(side is None for side in sides):
        return given
    name = row.text("name")
    # A length alone was begun and not finished; guessing the other side would invent an area.
    if row["breadth"] is None:
        raise BadInput(
            f"{name}: breadth is missing beside its length.", field=f"{name}: breadth", value=None
        )
    length = clear_length(name, row.number("frames"), row.number("pitch"), row.number("length"))
    return net_area(name, length, row.number("breadth"), row.number("deducted") or 0.0)


def enclosed_volume_change(row: Row) -> float:
    """Return the enclosed volume that a row adds.

    Parameters
    ----------
    row : Row
        A row of ENCLOSURES.

    Returns
    -------
    float
        Volume [m³], minus where it is removed.

    Raises
    ------
    BadInput
        Neither the volume nor all three sides are given.

    References
    ----------
    Plain geometry.
    """
    name, volume = row.text("name"), row.number("volume")
    if volume is None:
        sides = [row.number(side) for side in ("length", "breadth", "height")]
        # Two of three sides are no volume.
        if None in sides:
            raise BadInput(
                f"{name}: volume is missing; give it, or length, breadth and height.",
                field=f"{name}: volume",
                value=None,
            )
        volume = sides[0] * sides[1] * sides[2]
    return volume if row.text("act") == "added" else -volume


@dataclass(frozen=True)
class Want:
    """One thing that is wanted on board, any number of times.

    Parameters
    ----------
    row : Row
        A row of WANTS.
    least : Span or None
        The labour convention's least floor of each [m²]; None where it asks none.
    """

    row: Row
    least: Span | None

    @property
    def name(self) -> str:
        """What it is called."""
        return self.row.text("name")

    @property
    def kind(self) -> str:
        """One of WANT_KINDS."""
        return self.row.text("kind")

    @property
    def place(self) -> str:
        """Where it is to be, inside or on the open deck."""
        return self.row.text("place")

    @property
    def count(self) -> int:
        """How many of them."""
        return self.row["count"] or 1

    @property
    def persons(self) -> int:
        """Persons berthed in all of them."""
        return self.count * (self.row["persons"] or 0) if self.kind == "cabin" else 0

    @property
    def built(self) -> bool:
        """Whether it is to be built, so that it needs room."""
        return self.row.text("plan", "build") == "build"

    @property
    def living(self) -> bool:
        """Whether it needs the headroom of living spaces."""
        return self.kind in LIVING

    @cached_property
    def area(self) -> Span | None:
        """Floor of all of them [m²]: as given, else the least; None where neither is known."""
        given = self.row.number("area")
        # Without a floor of its own a cabin counts with the least that is asked.
        each = self.least if given is None else Span.exact(given)
        return None if each is None else self.count * each

    @cached_property
    def volume(self) -> Span | None:
        """Volume of all of them [m³]."""
        given, height = self.row.number("volume"), self.row.number("height")
        if given is not None:
            return Span.exact(self.count * given)
        return None if self.area is None or height is None else self.area * height

    @property
    def shortfalls(self) -> tuple[Shortfall, ...]:
        """What surely falls short of the convention."""
        if self.kind != "cabin":
            return ()
        return shortfalls(self.row.number("area"), self.row.number("height"), self.least)


def want_of(row: Row, tonnage: Span | None) -> Want:
    """Return what a row wants.

    Parameters
    ----------
    row : Row
        A row of WANTS.
    tonnage : Span or None
        Gross tonnage [-], by which floors of cabins are asked; None where it is not known.

    Returns
    -------
    Want

    Raises
    ------
    BadInput
        A cabin has no persons, or so many may not share it.

    References
    ----------
    MLC 2006, Standard A3.1 (*from memory*).
    """
    if row.text("kind") != "cabin":
        return Want(row, None)
    # The least floor depends on who sleeps there, so a cabin without persons says nothing.
    if row["persons"] is None:
        raise BadInput(
            f"{row.text('name')}: persons in each cabin are missing.",
            field=f"{row.text('name')}: persons",
            value=None,
        )
    return Want(row, least_floor_over(row["persons"], row.text("who", "crew"), tonnage))
