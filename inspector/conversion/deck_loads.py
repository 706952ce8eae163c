"""Loads on deck against what the deck is declared for: mean load, with a share of gravity on top, and the line load under the walls of a house."""

from dataclasses import dataclass

from inspector.conversion.inputs import PRACTICE, or_default, plain, within
from inspector.conversion.shapes import Default, Span
from inspector.conversion.tables import Column, Table
from inspector.criteria.deck import LOAD, load_limit

ACCELERATION = Default("vertical acceleration on a deck load", 0.5, "", "As a share of gravity, in a seaway.", PRACTICE)
SOURCE = LOAD
DECKS = Table("decks", "Loads on deck", "What will stand on a deck, and what that deck is declared for by the ship's own plan and booklet.", (
    Column("name", "Load", kind="text", needed=True),
    Column("load", "Mass", "t", needed=True, high=20_000),
    Column("area", "Area it stands on", "m²", needed=True, low=0.01, high=20_000),
    Column("rated", "Declared load of that deck", "t/m²", low=0.05, high=200),
    Column("total", "Greatest deck cargo by the booklet", "t", low=0.1, high=20_000),
    Column("walls", "Length of its walls or supports on deck", "m", low=0.1, high=2000),
    Column("acceleration", "Vertical acceleration, share of gravity", high=3),
))


@dataclass(frozen=True)
class DeckLoad:
    """One load on deck, reckoned. mean, moving [t/m²] at rest and in a seaway; line [t/m] under walls; share [% of what is allowed], None undeclared."""

    name: str
    mass: float
    mean: float
    moving: float
    line: float | None
    share: Span | None
    defaults: tuple[Default, ...]


def deck_load(name: str, mass: float, area: float, rated: float | None = None, total: float | None = None, walls: float | None = None,
              acceleration: float | None = None) -> DeckLoad:
    """Reckon one load: mass [t] on area [m²]; rated [t/m²] and total [t] as declared; walls [m]; acceleration [share of g, default 0.5].

    The share spans from the load at rest to the load in a seaway: whether a declared load includes motion, the ship's plan says.

    Errors
    ------
    BadInput : a value that cannot be meant, with ``field``.
    """
    plain(f"{name}: mass", mass, 0, 20_000, "t")
    plain(f"{name}: area", area, 0.01, 20_000, "m²")
    given, defaults = or_default(acceleration, ACCELERATION)
    share_of_g = within(f"{name}: acceleration", given, 0, 3).middle
    line = None if walls is None else mass / plain(f"{name}: length of walls", walls, 0.1, 2000, "m")
    share = None
    if total is not None:
        plain(f"{name}: greatest deck cargo", total, 0.1, 20_000, "t")
    if rated is not None:
        plain(f"{name}: declared load", rated, 0.05, 200, "t/m²")
        at_rest = 100 * mass / load_limit(area, rated, total)
        share = Span(at_rest, at_rest, at_rest * (1 + share_of_g))
    return DeckLoad(name, mass, mass / area, mass / area * (1 + share_of_g), line, share, defaults)
