"""The tables of weights and deck loads, and each row of weights as a weight."""

from collections.abc import Iterator
from dataclasses import dataclass

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Figure, Gap
from inspector.conversion.core.particulars import Row, Table, column
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.core.span import ConversionError
from inspector.conversion.core.tank_rows import name_key, tanks_once
from inspector.conversion.core.things import TAKES, THING_COLUMNS
from inspector.conversion.stability.booklet.booklet_tables import BOOKLET_TABLES
from inspector.conversion.stability.masses import (
    BASES,
    PIPES,
    contents_mass,
    given_mass,
    pipe_mass,
    plate_mass,
)
from inspector.conversion.stability.tanks_given_up import (
    contents_coming_off,
    planned_away,
    steel_coming_off,
    tank_gaps,
)
from inspector.conversion.stability.weights import ACTS, PARTS, Weight
from inspector.values.quantity import Quantity, sentence
from inspector.values.text import listed

WEIGHTS = Table(
    "weights",
    "What comes off and goes on",
    "Each thing once: a house, an engine, a crane, stores. Its weight, the deck that it stands on, "
    "the wind that it meets, the rooms in it and the power that it takes are read from here. A "
    "mass is given in one way: as a mass, as steel by area and thickness, as pipe by length, or as "
    "contents by volume and density; what belongs to another thing may go without.",
    (
        column("name", "What", kind="text", needed=True),
        column("act", "Off or on", kind="choice", choices=ACTS, needed=True),
        column("mass", "Mass", "t", high=20_000),
        column("basis", "What the mass is known from", kind="choice", choices=tuple(BASES)),
        column("area", "Steel: area", "m²", high=20_000),
        column("thickness", "Steel: thickness", "mm", low=0.5, high=300),
        column("length", "Pipe: length", "m", high=20_000),
        column("pipe", "Pipe: size and schedule", kind="choice", choices=tuple(PIPES)),
        column("extra", "Added for stiffeners or fittings", "%", high=200),
        column("volume", "Contents: volume", "m³", high=20_000),
        column("density", "Contents: density", "kg/m³", low=300, high=4000),
        column(
            "lcg", "Centre from the after perpendicular, forward is plus", "m", low=-200, high=200
        ),
        column("tcg", "Centre off the centreline, starboard is plus", "m", low=-50, high=50),
        column("vcg", "Centre above the keel", "m", low=-5, high=80),
        column("part", "Part of", kind="choice", choices=PARTS),
        *THING_COLUMNS,
    ),
    groups=(
        (
            "Mass by steel, pipe or contents",
            ("area", "thickness", "length", "pipe", "extra", "volume", "density"),
        ),
        ("Where its weight is", ("lcg", "tcg", "vcg", "part")),
        (
            "Its size, its deck and its rooms",
            ("belongs_to", "stands", "long", "wide", "high", "room", "rated", "walls"),
        ),
        ("What it takes", ("bus", *TAKES.values())),
    ),
)
DECKS = Table(
    "decks",
    "Loads on deck",
    "What stays or is planned on a deck, and what that deck is declared for by the ship's own plan "
    "and booklet. A thing that goes on gives its mass under the same name.",
    (
        column("name", "Load", kind="text", needed=True),
        column("load", "Mass, where it is no thing that goes on", "t", high=20_000),
        column("area", "Area under it", "m²", needed=True, low=0.01, high=20_000),
        column("rated", "Declared load of that deck", "t/m²", low=0.05, high=200),
        column("total", "Greatest deck cargo by the booklet, all loads", "t", low=0.1, high=20_000),
        column("walls", "Length of its walls or supports on deck", "m", low=0.1, high=2000),
        column("acceleration", "Vertical acceleration, share of gravity", high=3),
    ),
)
TABLES = (WEIGHTS, *BOOKLET_TABLES, DECKS)
READ = (HYDROSTATICS, TANKS, *TABLES)

# How a mass may be given -> the columns that give it, each with its name in a sentence.
_MASS_COLUMNS = {
    "mass": {"mass": "mass"},
    "steel": {"area": "area", "thickness": "thickness"},
    "pipe": {"length": "length", "pipe": "size and schedule"},
    "contents": {"volume": "volume", "density": "density"},
}


@dataclass(frozen=True)
class WeightList:
    """The list of weights as read.

    Parameters
    ----------
    weights : tuple of Weight
    masses : tuple of Figure
        The mass of each weight [t], in the same order.
    faults : tuple of str
        What is wrong with the rows that could not be used.
    gaps : tuple of Gap
        What the list lacks.
    """

    weights: tuple[Weight, ...]
    masses: tuple[Figure, ...]
    faults: tuple[str, ...]
    gaps: tuple[Gap, ...]


def read_weights(case: Case) -> WeightList:
    """Return the list of weights of an inspection; a row whose mass is not clear is left out.

    What is in tanks that are removed or converted comes off with them.

    Parameters
    ----------
    case : Case

    Returns
    -------
    WeightList
    """
    weights, masses, faults = [], [], []
    for row in case.rows(WEIGHTS):
        # The second deck of a house has a size of its own, and its mass is in the house's.
        if _without_mass(row):
            continue
        try:
            mass = mass_of(row)
            weights.append(weight_of(row, mass))
            masses.append(mass)
        except ConversionError as problem:
            faults.append(f"{WEIGHTS.title}: {problem}")
    # A work line of the same name is in the list already, with its centre.
    names = {name_key(weight.name) for weight in weights}
    gaps = [*_work_line_gaps(case, names)]
    tanks, twice = tanks_once(case.rows(TANKS))
    faults += twice
    for tank in planned_away(tanks, names):
        gaps += tank_gaps(tank)
        try:
            coming_off = [contents_coming_off(tank), steel_coming_off(tank)]
        except ConversionError as problem:
            faults.append(f"{TANKS.title}: {problem}")
            continue
        for weight, mass in filter(None, coming_off):
            weights.append(weight)
            masses.append(mass)
    return WeightList(tuple(weights), tuple(masses), tuple(faults), tuple(gaps))


def _without_mass(row: Row) -> bool:
    """Whether a row is a part of another thing and gives no mass of its own."""
    typed = any(_any_typed(row, columns) for columns in _MASS_COLUMNS.values())
    return bool(row.text("belongs_to")) and not typed


def mass_of(row: Row) -> Figure:
    """Return the mass of a row, which is given in exactly one way.

    Parameters
    ----------
    row : Row
        A row of the list of weights.

    Returns
    -------
    Figure
        Mass [t].

    Raises
    ------
    BadInput
        The mass is given in no way, in two, or in half of one; the field is named.
    """
    name, basis = row.text("name"), row.text("basis") or None
    way = _way_of(row)
    if way == "steel":
        return plate_mass(name, row.number("area"), row.number("thickness"), row.number("extra"))
    if way == "pipe":
        return pipe_mass(name, row.number("length"), row.text("pipe"), row.number("extra"))
    if way == "contents":
        return contents_mass(name, row.number("volume"), row.number("density"))
    return given_mass(name, row.number("mass"), basis)


def _way_of(row: Row) -> str:
    """Return the one way in which a row gives its mass."""
    name = row.text("name")
    ways = [way for way, columns in _MASS_COLUMNS.items() if _any_typed(row, columns)]
    # Two ways in one row are two masses, and nobody says which is meant.
    if len(ways) != 1:
        problem = f"is given as {listed(ways)}" if ways else "is missing"
        raise BadInput(
            f"{name}: mass {problem}; give it in one way: mass, steel, pipe or contents.",
            field=f"{name}: mass",
            value=None,
        )
    columns = _MASS_COLUMNS[ways[0]]
    lacking = [key for key in columns if row[key] is None]
    if lacking:
        raise BadInput(
            f"{name}: {columns[lacking[0]]} is missing, "
            f"and {ways[0]} is calculated from {listed(list(columns.values()))}.",
            field=f"{name}: {lacking[0]}",
            value=None,
        )
    return ways[0]


def _any_typed(row: Row, columns: dict[str, str]) -> bool:
    return any(row[key] is not None for key in columns)


def weight_of(row: Row, mass: Figure) -> Weight:
    """Return a row as a weight.

    Parameters
    ----------
    row : Row
        A row of the list of weights.
    mass : Figure
        Its mass [t].

    Returns
    -------
    Weight
        Contents belong to the deadweight and the rest to the lightship, unless the row names its
        part.

    Raises
    ------
    BadInput
        A value that no weight can have; the field is named.
    """
    # Contents are drained or used up; only what stays aboard empty is lightship.
    usual = "deadweight" if row["volume"] is not None else "lightship"
    return Weight(
        row.text("name"),
        row.text("act"),
        mass.span,
        row.number("lcg"),
        row.number("tcg"),
        row.number("vcg"),
        row.text("part", usual),
    )


def _work_line_gaps(case: Case, names: set[str]) -> Iterator[Gap]:
    """Yield the work lines with a weight that the list of weights does not have."""
    # A work line gives no centre, so its weight is in no sum until a row of the same name gives
    # one.
    why = (
        "This work line gives a weight of {weight} and no centre, so it is in no sum here; "
        "enter it in the list of weights under the same name, with its centre."
    )
    for system in case.assessment.systems:
        for line in system.lines:
            if line.weight and name_key(line.text) not in names:
                weight = Quantity.exact(line.weight, "t", signed=True)
                yield Gap(
                    f"{system.system.name}: {line.text or line.act}", sentence(why, weight=weight)
                )
