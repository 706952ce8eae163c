"""The house to be built in the areas that the wind meets."""

from collections.abc import Sequence
from dataclasses import replace

from inspector.conversion.core.figure import Default
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.side_area import Size
from inspector.conversion.power.holding.station_keeping import WIND_CENTRE, Exposure

HOUSE = "house to be built, in the side area"


def with_house(
    exposure: Exposure, row: Row, built: Sequence[Size], midship: float | None = None
) -> tuple[Exposure, tuple[Default, ...]]:
    """Return a hull with the house to be built in its areas, and what was added.

    Parameters
    ----------
    exposure : Exposure
        With the areas as typed.
    row : Row
        The row of wind and current, which says whether these areas hold the house already.
    built : sequence of Size
        What is built on deck.
    midship : float, optional
        Half of the length between perpendiculars [m], by which a place is told from midship.

    Returns
    -------
    tuple of (Exposure, tuple of Default)

    References
    ----------
    Plain geometry: length × height to the side, breadth × height from ahead.
    """
    side = sum(size.side for size in built)
    if row.text("with_house") == "yes" or not side:
        return exposure, ()
    # Decks stand above each other, so from ahead each has its own height.
    front = sum(size.front for size in built)
    frontal = None if exposure.frontal is None else exposure.frontal + front
    lateral = exposure.lateral + side
    centre, assumed = exposure.x_wind, ()
    if centre is None:
        centre, assumed = WIND_CENTRE.value * exposure.length, (WIND_CENTRE,)
    place = _place(row, built, midship)
    # Without a place it is where the rest of the area is.
    moved = centre if place is None else (centre * exposure.lateral + place * side) / lateral
    found = replace(exposure, lateral=lateral, frontal=frontal, x_wind=moved)
    why = "length × height of what is built, on top of the area as typed"
    return found, (Default(HOUSE, round(side, 1), why, unit="m²"), *assumed)


def _place(row: Row, built: Sequence[Size], midship: float | None) -> float | None:
    """Return the centre of the house forward of midship [m]: as typed, else of its weights."""
    typed, known = row.number("x_house"), all(size.lcg is not None for size in built)
    if typed is not None or midship is None or not known:
        return typed
    moment = sum(size.side * size.lcg for size in built)
    return moment / sum(size.side for size in built) - midship
