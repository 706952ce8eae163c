"""The house to be built, as it is typed for the tonnage, in the areas that the wind meets."""

from collections.abc import Iterable
from dataclasses import replace

from inspector.conversion.core.figure import Default
from inspector.conversion.core.particulars import Row
from inspector.conversion.power.holding.station_keeping import WIND_CENTRE, Exposure

HOUSE = "house to be built, in the side area"


def with_house(
    exposure: Exposure, row: Row, enclosures: Iterable[Row]
) -> tuple[Exposure, tuple[Default, ...]]:
    """Return a hull with the house to be built in its areas, and what was added.

    Parameters
    ----------
    exposure : Exposure
        With the areas as typed.
    row : Row
        The row of wind and current, which says whether these areas hold the house already.
    enclosures : iterable of Row
        What is added and removed for the tonnage, with length, breadth and height.

    Returns
    -------
    tuple of (Exposure, tuple of Default)
        Nothing is taken off for what is removed, nor for what stands in the lee of the old house:
        the cautious side.

    References
    ----------
    Plain geometry: length × height to the side, breadth × height from ahead.
    """
    if row.text("with_house") == "yes":
        return exposure, ()
    sizes = [
        (each.number("length"), each.number("breadth"), each.number("height"))
        for each in enclosures
        if each.text("act") == "added"
    ]
    side = sum(length * height for length, _, height in sizes if length and height)
    if not side:
        return exposure, ()
    # Decks stand above each other, so from ahead each has its own height.
    front = sum(breadth * height for _, breadth, height in sizes if breadth and height)
    frontal = None if exposure.frontal is None else exposure.frontal + front
    lateral = exposure.lateral + side
    centre, assumed = exposure.x_wind, ()
    if centre is None:
        centre, assumed = WIND_CENTRE.value * exposure.length, (WIND_CENTRE,)
    place = row.number("x_house")
    # Without a place it is where the rest of the area is.
    moved = centre if place is None else (centre * exposure.lateral + place * side) / lateral
    found = replace(exposure, lateral=lateral, frontal=frontal, x_wind=moved)
    why = "length × height of what is added for the tonnage, on top of the area as typed"
    return found, (Default(HOUSE, round(side, 1), why, unit="m²"), *assumed)
