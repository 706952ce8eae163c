"""Loads on deck against what the deck is declared for, at rest and in a seaway."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.conversion.core.bounds import or_default, plain, within
from inspector.conversion.core.figure import Default
from inspector.conversion.core.span import Span
from inspector.criteria.core.decimals import exact

ACCELERATION = Default(
    "vertical acceleration on a deck load", 0.5, "As a share of gravity, in a seaway."
)


@dataclass(frozen=True)
class DeckLoad:
    """One load on deck as calculated.

    Parameters
    ----------
    name : str
    mass : float
        Mass [t].
    mean : float
        Mean load at rest [t/m²].
    moving : float
        Mean load in a seaway [t/m²].
    line : float or None
        Line load under its walls [t/m]; None where their length is not given.
    share : Span or None
        Share of what is declared [%], from rest to seaway; None where nothing is declared.
    total : float or None
        Greatest deck cargo by the booklet, for all loads together [t]; None where not given.
    defaults : tuple of Default
    """

    name: str
    mass: float
    mean: float
    moving: float
    line: float | None
    share: Span | None
    total: float | None
    defaults: tuple[Default, ...]


def load_limit(area: float, rated: float) -> float:
    """Return the greatest load on an area of a deck.

    Parameters
    ----------
    area : float
        Area it rests on [m²].
    rated : float
        Declared load [t/m²].

    Returns
    -------
    float
        Greatest load [t].

    References
    ----------
    Load per area times area (common practice, no source).

    Examples
    --------
    >>> load_limit(468, 5)
    2340.0
    """
    # By decimals as typed, so that a load at the limit is not over it by a binary fraction.
    return float(exact(area) * exact(rated))


@dataclass(frozen=True)
class DeckCargo:
    """All loads on deck together against the greatest deck cargo of the booklet.

    Parameters
    ----------
    mass, total : float
        Sum of the loads, and the greatest deck cargo [t].
    share : float
        The sum as a share of the greatest [%].
    """

    mass: float
    total: float
    share: float


def deck_cargo(loads: Sequence[DeckLoad]) -> DeckCargo | None:
    """Return all loads on deck against the booklet's greatest deck cargo.

    Parameters
    ----------
    loads : sequence of DeckLoad

    Returns
    -------
    DeckCargo or None
        None where no greatest deck cargo is typed; the least where several are.

    References
    ----------
    Sum of masses against the booklet's limit, which is one for the ship.
    """
    totals = [load.total for load in loads if load.total is not None]
    if not totals:
        return None
    mass, total = float(sum(exact(load.mass) for load in loads)), min(totals)
    return DeckCargo(mass, total, 100 * mass / total)


def deck_load(
    name: str,
    mass: float,
    area: float,
    *,
    rated: float | None = None,
    total: float | None = None,
    walls: float | None = None,
    acceleration: float | None = None,
) -> DeckLoad:
    """Return a load on deck against what the deck is declared for.

    Whether a declared load includes motion, the ship's plan says; the share spans both.

    Parameters
    ----------
    name : str
    mass : float
        Mass [t].
    area : float
        Area under it [m²].
    rated : float, optional
        Declared load of the deck [t/m²].
    total : float, optional
        Greatest deck cargo by the booklet, for all loads together [t].
    walls : float, optional
        Length of its walls or supports on deck [m].
    acceleration : float, optional
        Vertical acceleration as a share of gravity; without it, 0.5 is a listed default.

    Returns
    -------
    DeckLoad

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.

    References
    ----------
    Mass / area against the ship's declared load, plain mechanics; 0.5 of gravity (common practice,
    no source).
    """
    plain(f"{name}: mass", mass, 0, 20_000, "t")
    plain(f"{name}: area", area, 0.01, 20_000, "m²")
    given, defaults = or_default(acceleration, ACCELERATION)
    # Gravity itself, and the ship's motion on top of it.
    factor = 1 + within(f"{name}: acceleration", given, 0, 3).middle
    mean, line, share = mass / area, None, None
    if walls is not None:
        line = mass / plain(f"{name}: length of walls", walls, 0.1, 2000, "m")
    if total is not None:
        plain(f"{name}: greatest deck cargo", total, 0.1, 20_000, "t")
    if rated is not None:
        plain(f"{name}: declared load", rated, 0.05, 200, "t/m²")
        at_rest = 100 * mass / load_limit(area, rated)
        # Whether the declared load includes motion is not known here, so both are ends.
        share = Span(at_rest, at_rest, at_rest * factor)
    return DeckLoad(name, mass, mean, mean * factor, line, share, total, defaults)
