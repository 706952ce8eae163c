"""The list of weights as typed: its table, and each row as a weight with what its mass rests on."""

from dataclasses import dataclass

from inspector.conversion.book import Case
from inspector.conversion.inputs import BadInput
from inspector.conversion.shapes import ConversionError, Figure, Gap
from inspector.conversion.ship_tables import TANKS
from inspector.conversion.tables import Column, Row, Table
from inspector.conversion.weights import ACTS, BASES, PARTS, PIPES, Weight, contents, pipe, plate, stated

WEIGHTS = Table("weights", "Weights off and on", "What comes off and what goes on, with its mass told in one way: as a mass, as steel by area and thickness, "
                "as pipe by length, or as contents by volume and density.", (
    Column("name", "What", kind="text", needed=True),
    Column("act", "Off or on", kind="choice", choices=ACTS, needed=True),
    Column("mass", "Mass", "t", high=20_000),
    Column("basis", "What the mass rests on", kind="choice", choices=tuple(BASES)),
    Column("area", "Steel: area", "m²", high=20_000),
    Column("thickness", "Steel: thickness", "mm", low=0.5, high=300),
    Column("length", "Pipe: length", "m", high=20_000),
    Column("pipe", "Pipe: size and schedule", kind="choice", choices=tuple(PIPES)),
    Column("extra", "Added for stiffeners or fittings", "%", high=200),
    Column("volume", "Contents: volume", "m³", high=20_000),
    Column("density", "Contents: density", "kg/m³", low=300, high=4000),
    Column("lcg", "Centre from the after perpendicular, forward is plus", "m", low=-200, high=200),
    Column("tcg", "Centre off the centreline, starboard is plus", "m", low=-50, high=50),
    Column("vcg", "Centre above the keel", "m", low=-5, high=80),
    Column("part", "Part of", kind="choice", choices=PARTS),
))
_WAYS = {"mass": ("mass",), "steel": ("area", "thickness"), "pipe": ("length", "pipe"), "contents": ("volume", "density")}
_CALLED = {"mass": "mass", "area": "area", "thickness": "thickness", "length": "length", "pipe": "size and schedule", "volume": "volume", "density": "density"}


@dataclass(frozen=True)
class Listed:
    """The weights that can be used, the figure of each one's mass, what is wrong with the others, and what the list lacks."""

    weights: tuple[Weight, ...]
    masses: tuple[Figure, ...]
    faults: tuple[str, ...]
    gaps: tuple[Gap, ...]


def listed(case: Case) -> Listed:
    """The list of weights of one inspection; a row whose mass cannot be told is told and left out."""
    weights, masses, faults = [], [], []
    for row in case.rows(WEIGHTS):
        try:
            mass = mass_of(row)
            weights.append(weight_of(row, mass))
            masses.append(mass)
        except ConversionError as problem:
            faults.append(f"{WEIGHTS.title}: {problem}")
    return Listed(tuple(weights), tuple(masses), tuple(faults), (*_work_gaps(case, weights), *_tank_gaps(case, weights)))


def mass_of(row: Row) -> Figure:
    """The mass of a row [t], told in exactly one way. BadInput, with the field, for none, for two, or for half of one."""
    name = row.text("name")
    told = [way for way, columns in _WAYS.items() if any(row[column] is not None for column in columns)]
    if len(told) != 1:
        found = "is told in " + " and in ".join(f"{way}" for way in told) if told else "is missing"
        raise BadInput(f"{name}: mass {found}; give it in one way: mass, steel, pipe or contents.", field=f"{name}: mass", value=None)
    columns = _WAYS[told[0]]
    lacking = [column for column in columns if row[column] is None]
    if lacking:
        sentence = f"{name}: {_CALLED[lacking[0]]} is missing, and {told[0]} is reckoned from {' and '.join(_CALLED[one] for one in columns)}."
        raise BadInput(sentence, field=f"{name}: {lacking[0]}", value=None)
    if told == ["steel"]:
        return plate(name, row.number("area"), row.number("thickness"), row.number("extra"))
    if told == ["pipe"]:
        return pipe(name, row.number("length"), row.text("pipe"), row.number("extra"))
    if told == ["contents"]:
        return contents(name, row.number("volume"), row.number("density"))
    return stated(name, row.number("mass"), row.text("basis") or None)


def weight_of(row: Row, mass: Figure) -> Weight:
    """A row as a weight: contents belong to the deadweight and the rest to the lightship, unless it says otherwise."""
    usual = "deadweight" if row["volume"] is not None else "lightship"
    return Weight(row.text("name"), row.text("act"), mass.span, row.number("lcg"), row.number("tcg"), row.number("vcg"), row.text("part", usual))


def _work_gaps(case: Case, weights: list[Weight]):
    """Weights of work lines have no centre, so they count in no sum until a row of the list carries them by the same name."""
    names = {one.name.strip().casefold() for one in weights}
    for system in case.assessment.systems:
        for line in system.lines:
            if line.weight and line.text.strip().casefold() not in names:
                where = f"{system.system.name}: {line.text or line.act}"
                yield Gap(f"{where}, {line.weight:+g} t", "This work line gives a weight and no centre, so it is in no sum here; "
                          "enter it in the list of weights under the same name, with its centre.")


def _tank_gaps(case: Case, weights: list[Weight]):
    """Contents of tanks that are planned away: whether they are in the starting condition, only the surveyor knows."""
    names = {one.name.strip().casefold() for one in weights}
    for row in case.rows(TANKS):
        fill = row.number("fill")
        if fill == 0 and row["plan"] == "convert":
            continue
        if row["plan"] in ("convert", "remove") and row.text("name").strip().casefold() not in names:
            holds = "nothing in it now" if fill == 0 else f"{row.number('capacity') * fill / 100:,.1f} m³ in it now" if fill else "its contents not told"
            yield Gap(f"Tank {row.text('name')} ({row['plan']})", f"With {holds}: if the starting condition counts them, or its steel goes, "
                      "enter that in the list of weights under the same name.")
