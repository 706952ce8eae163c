"""The table of engines: main engines and generating sets, each typed once for range and power."""

from collections.abc import Iterable

from inspector.conversion.core.particulars import Row, Table, column
from inspector.conversion.core.tank_rows import name_key
from inspector.values.text import listed

YES_NO = ("no", "yes")
PROPELLER, GENERATOR = "propeller", "generator"
# Electrical over mechanical power of a set, where only one of them is on the plate.
SET_EFFICIENCY = 0.94
ENGINES = Table(
    "engines",
    "Engines and generating sets",
    "Each once, from its plate; consumption from the shop trial or the log. With its bus and its "
    "electrical rating a set is in the power plant as well, several with a bus each: A, A, B, B.",
    (
        column("name", "Engine", kind="text", needed=True),
        column("drives", "Drives", kind="choice", choices=(PROPELLER, GENERATOR), needed=True),
        column("power", "Rated power of each", "kW", needed=True, low=1, high=30_000),
        column("count", "How many", kind="whole", low=1, high=12),
        column("rpm", "Rated speed", "rpm", low=300, high=3000),
        column("year", "Year built", kind="whole", low=1930, high=2100),
        column("rate_50", "Consumption at 50 % load", "g/kWh", low=120, high=400),
        column("rate_75", "at 75 %", "g/kWh", low=120, high=400),
        column("rate_100", "at 100 %", "g/kWh", low=120, high=400),
        column(
            "measured", "Consumption is", kind="choice", choices=("measured on board", "declared")
        ),
        column("bus", "Sets: bus that each feeds", kind="text"),
        column("electrical", "Sets: electrical rating of each", "kW", low=0.1, high=30_000),
        column("power_factor", "Sets: power factor on the plate", low=0.1, high=1),
        column("emergency", "Sets: emergency set", kind="choice", choices=YES_NO),
        column("out", "Out of order", kind="choice", choices=YES_NO),
    ),
    groups=(
        ("What it burns", ("rate_50", "rate_75", "rate_100", "measured")),
        ("A set in the power plant", ("bus", "electrical", "power_factor", "emergency")),
    ),
)


def sets_of(engines: Iterable[Row]) -> tuple[tuple[Row, ...], tuple[str, ...]]:
    """Return each generating set that has a bus as a row of the power plant.

    Parameters
    ----------
    engines : iterable of Row
        The rows of ENGINES.

    Returns
    -------
    tuple of (tuple of Row, tuple of str)
        Rows with name, bus, rated [kW], power_factor, emergency and out; and one sentence for each
        row that cannot be used so.
    """
    rows, faults = [], []
    for engine in engines:
        buses = [bus.strip() for bus in engine.text("bus").split(",") if bus.strip()]
        if engine.text("drives") != GENERATOR or not buses:
            continue
        count, name = engine["count"] or 1, engine.text("name")
        rated = engine.number("electrical")
        if rated is None or len(buses) not in (1, count):
            problem = (
                "its electrical rating is missing beside its bus"
                if rated is None
                else f"{count} sets need one bus or {count}, and {listed(buses)} are given"
            )
            faults.append(f"{name}: {problem}; it is not in the power plant.")
            continue
        for at, each in enumerate(_each(name, count)):
            values = {"name": each, "bus": buses[at % len(buses)], "rated": rated}
            for column_name in ("power_factor", "emergency", "out"):
                values[column_name] = engine[column_name]
            rows.append(_row(engine, at, values))
    return tuple(rows), tuple(faults)


def shaft_engines_of(engines: Iterable[Row]) -> tuple[Row, ...]:
    """Return each engine that drives a propeller as a row of the power plant.

    Parameters
    ----------
    engines : iterable of Row
        The rows of ENGINES.

    Returns
    -------
    tuple of Row
        Rows with name, rated [kW] and out.
    """
    rows = []
    for engine in engines:
        if engine.text("drives") == PROPELLER:
            for at, each in enumerate(_each(engine.text("name"), engine["count"] or 1)):
                values = {"name": each, "rated": engine.number("power"), "out": engine["out"]}
                rows.append(_row(engine, at, values))
    return tuple(rows)


def _row(engine: Row, at: int, values: dict) -> Row:
    """Return one of like engines as a row with what is known of it."""
    return Row(f"{engine.id}-{at}", {name: v for name, v in values.items() if v is not None})


def _each(name: str, count: int) -> list[str]:
    """Return the names of like engines that are typed in one row."""
    return [name] if count == 1 else [f"{name} {at}" for at in range(1, count + 1)]


def without_typed(rows: Iterable[Row], typed: Iterable[Row]) -> tuple[Row, ...]:
    """Return the rows whose names are not typed in a table of the power plant itself.

    Parameters
    ----------
    rows : iterable of Row
    typed : iterable of Row

    Returns
    -------
    tuple of Row
    """
    names = {name_key(row.text("name")) for row in typed}
    return tuple(row for row in rows if name_key(row.text("name")) not in names)


def engines_of_plant(sets: Iterable[Row], shafts: Iterable[Row]) -> tuple[Row, ...]:
    """Return the engines of the power plant as rows of ENGINES, for range.

    Parameters
    ----------
    sets : iterable of Row
        Generating sets of the plant; the emergency ones are left out.
    shafts : iterable of Row
        Engines that drive by shaft.

    Returns
    -------
    tuple of Row
        With name, drives and power [kW]: of a set its electrical rating over 0.94.
    """
    found = [
        (row, GENERATOR, row.number("rated") / SET_EFFICIENCY)
        for row in sets
        if row.text("emergency") != "yes"
    ]
    found += [(row, PROPELLER, row.number("rated")) for row in shafts]
    return tuple(
        Row(row.id, {"name": row.text("name"), "drives": drives, "power": power})
        for row, drives, power in found
    )
