"""What comes off and goes on as things: each typed once, with its weight, its place, its outside
size and its load, read by weights, wind, decks, power, space and tonnage alike.

A thing is a row of the list of weights. What is typed of it in an older table under the same name
counts once, and where the two disagree the disagreement is named.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from inspector.conversion.core.case import Case
from inspector.conversion.core.particulars import Row, column
from inspector.conversion.core.tank_rows import name_key

LIST = "weights"
OPEN_DECK = "open deck"
STANDS = (OPEN_DECK, "on another thing", "inside")
# What stands here is met by the wind.
IN_THE_WIND = STANDS[:2]
CONDITIONS = ("harbour", "sea", "manoeuvring", "station keeping")
# Condition -> the column with what a thing takes in it.
TAKES = {condition: f"takes_{condition.replace(' ', '_')}" for condition in CONDITIONS}
THING_COLUMNS = (
    column("belongs_to", "Belongs to the thing named", kind="text"),
    column("stands", "Stands", kind="choice", choices=STANDS),
    column("long", "Outside length", "m", high=200),
    column("wide", "Outside breadth", "m", high=80),
    column("high", "Outside height", "m", high=40),
    column("room", "Has rooms to use inside", kind="choice", choices=("yes", "no")),
    column("rated", "Declared load of the deck under it", "t/m²", low=0.05, high=200),
    column("walls", "Length of its walls or supports on deck", "m", low=0.1, high=2000),
    column("bus", "Bus that feeds it", kind="text"),
    *(column(name, f"Takes, {condition}", "kW", high=100_000) for condition, name in TAKES.items()),
)


@dataclass(frozen=True)
class Thing:
    """One thing that comes off or goes on, as far as other chapters read it.

    Parameters
    ----------
    row : Row
        Its row in the list of weights.
    """

    row: Row

    @property
    def name(self) -> str:
        """What it is called."""
        return self.row.text("name")

    @property
    def key(self) -> str:
        """Its name as it is compared."""
        return name_key(self.name)

    @property
    def group(self) -> str:
        """The name of the thing that it belongs to, as it is compared; its own where to none."""
        return name_key(self.row.text("belongs_to")) or self.key

    @property
    def goes_on(self) -> bool:
        """Whether it goes on; False where it comes off."""
        return self.row.text("act") == "on"

    @property
    def in_the_wind(self) -> bool:
        """Whether the wind meets it."""
        return self.row.text("stands") in IN_THE_WIND

    @property
    def on_open_deck(self) -> bool:
        """Whether it stands on the open deck itself."""
        return self.row.text("stands") == OPEN_DECK

    @property
    def has_rooms(self) -> bool:
        """Whether it has rooms to use inside, so that it is in the tonnage."""
        return self.row.text("room") == "yes"

    @property
    def is_loaded(self) -> bool:
        """Whether it is loaded and no part of the ship: stores, contents, effects."""
        usual = "deadweight" if self.row["volume"] is not None else "lightship"
        return self.row.text("part", usual) != "lightship"

    @property
    def footprint(self) -> float | None:
        """Length × breadth [m²]; None where one is not given."""
        return self._product("long", "wide")

    @property
    def side(self) -> float | None:
        """Length × height [m²]; None where one is not given."""
        return self._product("long", "high")

    @property
    def front(self) -> float | None:
        """Breadth × height [m²]; None where one is not given."""
        return self._product("wide", "high")

    @property
    def volume(self) -> float | None:
        """Length × breadth × height [m³]; None where one is not given."""
        return self._product("long", "wide", "high")

    @property
    def takes(self) -> tuple[tuple[str, float], ...]:
        """Condition -> what it takes in it [kW], as far as typed."""
        found = ((condition, self.row.number(name)) for condition, name in TAKES.items())
        return tuple((condition, power) for condition, power in found if power is not None)

    def _product(self, *sides: str) -> float | None:
        product = 1.0
        for side in sides:
            length = self.row.number(side)
            if not length:
                return None
            product *= length
        return product


def read_things(case: Case) -> tuple[Thing, ...]:
    """Return what comes off and goes on, by name.

    Parameters
    ----------
    case : Case

    Returns
    -------
    tuple of Thing
    """
    rows = case.tables[LIST].rows if LIST in case.tables else ()
    return tuple(sorted(map(Thing, rows), key=lambda thing: (thing.key, thing.row.id)))


def unpriced_things(things: Sequence[Thing], priced: Iterable[str]) -> tuple[str, ...]:
    """Return what goes on and is in no line of the work and no other cost.

    Parameters
    ----------
    things : sequence of Thing
    priced : iterable of str
        The names of the lines and costs.

    Returns
    -------
    tuple of str
        By name. What belongs to a thing is paid with it; stores and contents are no work.
    """
    named = {name_key(name) for name in priced}
    found = (
        thing
        for thing in things
        if thing.goes_on and thing.group == thing.key and thing.key not in named
    )
    return tuple(thing.name for thing in found if not thing.is_loaded)


def without_named(things: Sequence[Thing], rows: Sequence[Row]) -> tuple[Row, ...]:
    """Return the rows of an older table whose things are not in the list of things with a size.

    Parameters
    ----------
    things : sequence of Thing
        Those that the reader counts already.
    rows : sequence of Row
        Rows with a name.

    Returns
    -------
    tuple of Row
    """
    counted = {thing.key for thing in things}
    return tuple(row for row in rows if name_key(row.text("name")) not in counted)
