"""The side area in the wind after the changes: one area for stability and for holding station."""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.conversion.core.particulars import Row
from inspector.conversion.core.things import Thing, without_named
from inspector.values.quantity import Cell, Quantity, sentence

# Two areas that differ by less are one area read twice.
SAME = 0.03


@dataclass(frozen=True)
class Size:
    """The outside of what is built on deck.

    Parameters
    ----------
    length, breadth, height : float
        [m]; 0 where not given.
    lcg, vcg : float or None
        Its centre forward of the after perpendicular and above the keel [m].
    """

    length: float
    breadth: float
    height: float
    lcg: float | None = None
    vcg: float | None = None

    @property
    def side(self) -> float:
        """Length × height [m²]."""
        return self.length * self.height

    @property
    def front(self) -> float:
        """Breadth × height [m²]."""
        return self.breadth * self.height


@dataclass(frozen=True)
class SideArea:
    """The side area in the wind after the changes.

    Parameters
    ----------
    area : float or None
        [m²]; None where no table gives one.
    beyond : float
        What of it is beyond the area of the booklet's table [m²].
    told : tuple of Cell
        Where the tables disagree.
    """

    area: float | None
    beyond: float = 0.0
    told: tuple[Cell, ...] = ()


def sizes_built(things: Iterable[Thing], enclosures: Iterable[Row]) -> tuple[Size, ...]:
    """Return what is built on deck, each once.

    Parameters
    ----------
    things : iterable of Thing
        What comes off and goes on.
    enclosures : iterable of Row
        What is added and removed for the tonnage alone.

    Returns
    -------
    tuple of Size
        Nothing is taken off for what is removed, nor for what stands in the lee of the old house:
        the cautious side.
    """
    built = [thing for thing in things if thing.goes_on and thing.in_the_wind and thing.side]
    rows = [(thing.row, "long", "wide", "high") for thing in built]
    added = [row for row in enclosures if row.text("act") == "added"]
    rows += [(row, "length", "breadth", "height") for row in without_named(built, added)]
    return tuple(
        Size(*((row.number(side) or 0.0) for side in sides), row.number("lcg"), row.number("vcg"))
        for row, *sides in rows
    )


def side_area(booklet: Row, exposure: Row, built: Iterable[Size]) -> SideArea:
    """Return the side area in the wind after the changes.

    Parameters
    ----------
    booklet : Row
        The row of hydrostatics, with an area after the changes.
    exposure : Row
        The row of wind and current, with the area as she is.
    built : iterable of Size

    Returns
    -------
    SideArea
        The greater where the two tables differ, and a sentence about it.
    """
    after, lateral = booklet.number("wind_area"), exposure.number("lateral")
    house = 0.0 if exposure.text("with_house") == "yes" else sum(size.side for size in built)
    if lateral is None:
        return SideArea(after)
    summed = lateral + house
    if after is None:
        return SideArea(summed)
    area, told = max(after, summed), ()
    if abs(after - summed) > SAME * area:
        told = (
            sentence(
                "The side area in the wind is {after} by the booklet's table and {summed} by that "
                "of wind and current{house}; the greater counts in both chapters.",
                after=Quantity.exact(after, "m²", 0),
                summed=Quantity.exact(summed, "m²", 0),
                house=" with what is built" if house else "",
            ),
        )
    return SideArea(area, max(0.0, summed - after), told)
