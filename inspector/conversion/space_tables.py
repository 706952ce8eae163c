"""The tables of space, of what is wanted there and of what is enclosed, and each row as the pure modules need it."""

from dataclasses import dataclass
from functools import cached_property

from inspector.conversion.cabins import LIVERS, Fault, faults, least_over
from inspector.conversion.inputs import BadInput
from inspector.conversion.shapes import Span
from inspector.conversion.space import ACTS, KINDS, Space, length_of, rectangle
from inspector.conversion.tables import Column, Row, Table

SPACES = Table("spaces", "Spaces", "What the vessel gives, what removal wins and what the changes lose: by frames or length, breadth and clear height.", (
    Column("name", "Space", kind="text", needed=True),
    Column("kind", "Kind", kind="choice", choices=KINDS, needed=True),
    Column("act", "Given, won or lost", kind="choice", choices=ACTS, needed=True),
    Column("frames", "Frame spaces or deck fittings counted", high=1000),
    Column("pitch", "From one to the next", "m", low=0.1, high=10),
    Column("length", "Clear length", "m", high=200),
    Column("breadth", "Clear breadth", "m", high=80),
    Column("deducted", "Taken up by what stays in it", "m²", high=20_000),
    Column("height", "Clear height", "m", high=40),
    Column("area", "Area, if known by itself", "m²", high=20_000),
    Column("volume", "Volume, if known by itself", "m³", high=100_000),
    Column("share", "Share that can be used", "%", high=100),
))
WANT_KINDS = ("cabin", "mess", "galley", "sanitary", "hospital", "laundry", "corridors and stairs", "store", "workshop", "tender bay", "laboratory", "other")
LIVING = ("cabin", "mess", "galley", "sanitary", "hospital", "laundry", "corridors and stairs")
WANTS = Table("wants", "What the brief wants to put there", "Cabins with persons in each, stores, workshop, tender bay and the rest, with floor and height.", (
    Column("name", "What", kind="text", needed=True),
    Column("kind", "Kind", kind="choice", choices=WANT_KINDS, needed=True),
    Column("place", "Where", kind="choice", choices=("inside", "open deck"), needed=True),
    Column("count", "How many", kind="whole", low=1, high=500),
    Column("persons", "Persons in each cabin", kind="whole", low=1, high=50),
    Column("who", "Who lives in it", kind="choice", choices=LIVERS),
    Column("area", "Floor of each", "m²", high=5000),
    Column("height", "Clear height", "m", high=20),
    Column("volume", "Volume of each, if known by itself", "m³", high=20_000),
    Column("plan", "There already, or to be built", kind="choice", choices=("build", "there already")),
))
ENCLOSURES = Table("enclosures", "Enclosed volume for tonnage", "Deckhouses and other enclosed space that is added or removed, by its inner sides.", (
    Column("name", "What", kind="text", needed=True),
    Column("act", "Added or removed", kind="choice", choices=("added", "removed"), needed=True),
    Column("length", "Length", "m", high=200), Column("breadth", "Breadth", "m", high=80), Column("height", "Height", "m", high=40),
    Column("volume", "Volume, if known by itself", "m³", high=100_000),
))


def space_of(row: Row) -> Space:
    """A row of spaces. BadInput, with the field, where neither area nor volume can be told."""
    name, area, share = row.text("name"), row.number("area"), row.number("share")
    sides = any(row[one] is not None for one in ("frames", "length", "breadth"))
    if area is None and sides:
        if row["breadth"] is None:
            raise BadInput(f"{name}: breadth is missing beside its length.", field=f"{name}: breadth", value=None)
        length = length_of(name, row.number("frames"), row.number("pitch"), row.number("length"))
        area = rectangle(name, length, row.number("breadth"), row.number("deducted") or 0.0)
    return Space(name, row.text("kind"), row.text("act"), area, row.number("height"), row.number("volume"), None if share is None else share / 100)


def enclosed(row: Row) -> float:
    """The volume of a row [m³], minus where it is removed. BadInput where it cannot be told."""
    name, volume = row.text("name"), row.number("volume")
    if volume is None:
        sides = [row.number(one) for one in ("length", "breadth", "height")]
        if None in sides:
            raise BadInput(f"{name}: volume is missing; give it, or length, breadth and height.", field=f"{name}: volume", value=None)
        volume = sides[0] * sides[1] * sides[2]
    return volume if row.text("act") == "added" else -volume


@dataclass(frozen=True)
class Want:
    """One thing wanted: how many, its floor [m²] and volume [m³] each; least: the labour convention's floor [m²] (None: it asks none)."""

    row: Row
    least: Span | None

    @property
    def name(self) -> str:
        return self.row.text("name")

    @property
    def kind(self) -> str:
        return self.row.text("kind")

    @property
    def count(self) -> int:
        return self.row["count"] or 1

    @property
    def persons(self) -> int:
        """Persons berthed in all of them."""
        return self.count * (self.row["persons"] or 0) if self.kind == "cabin" else 0

    @property
    def built(self) -> bool:
        """Whether it still has to find a place."""
        return self.row.text("plan", "build") == "build"

    @property
    def living(self) -> bool:
        return self.kind in LIVING

    @cached_property
    def area(self) -> Span | None:
        """Floor of all of them [m²]: as given, else the least by the convention; None where neither is known."""
        given = self.row.number("area")
        return self.count * Span.exact(given) if given is not None else None if self.least is None else self.count * self.least

    @cached_property
    def volume(self) -> Span | None:
        """Volume of all of them [m³]."""
        given, height = self.row.number("volume"), self.row.number("height")
        if given is not None:
            return Span.exact(self.count * given)
        return None if self.area is None or height is None else self.area * height

    @property
    def faults(self) -> tuple[Fault, ...]:
        """What surely falls short of the convention."""
        return faults(self.row.number("area"), self.row.number("height"), self.least) if self.kind == "cabin" else ()


def want_of(row: Row, tonnage: Span | None) -> Want:
    """A row of wants at a gross tonnage (None: not known). BadInput where so many may not share a cabin."""
    cabin = row.text("kind") == "cabin"
    if cabin and row["persons"] is None:
        raise BadInput(f"{row.text('name')}: persons in each cabin are missing.", field=f"{row.text('name')}: persons", value=None)
    if not cabin:
        return Want(row, None)
    return Want(row, least_over(row["persons"], row.text("who", "crew"), tonnage))
