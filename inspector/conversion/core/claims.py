"""What a broker or an owner says of her, and the conditions that class has set her."""

from collections.abc import Iterable, Iterator
from datetime import date

from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.particulars import Row, Table, column
from inspector.conversion.core.span import Span
from inspector.values.quantity import Cell, Quantity, sentence

CLAIMS = Table(
    "claims",
    "Claims",
    "What the sales papers say of her. Each is set beside what follows from the booklet, the log "
    "and the tanks.",
    (
        column("deadweight", "Deadweight", "t", low=1, high=200_000),
        column("service_speed", "Service speed", "kn", low=1, high=60),
        column("fuel_a_day", "Fuel a day at that speed, everything aboard", "t/day", high=500),
        column("fuel", "Own fuel", "m³", high=20_000),
        column("fresh_water", "Fresh water", "m³", high=20_000),
        column("berths", "Berths", kind="whole", low=1, high=2000),
    ),
    single=True,
)
CLASS_CONDITIONS = Table(
    "class_conditions",
    "Conditions of class",
    "From the survey status of the society: each condition or recommendation, with the day by "
    "which it must be met.",
    (
        column("name", "Condition", kind="text", needed=True),
        column("due", "To be met by", kind="date"),
        column("met", "Met", kind="choice", choices=("no", "yes")),
        column("memo", "Kind", kind="choice", choices=("condition of class", "memorandum")),
    ),
)
TABLES = (CLAIMS, CLASS_CONDITIONS)
# A claim within so much of what follows is not worth a word (a limit of our own).
NEAR = 0.03


def beside_claim(
    row: Row, name: str, found: Span | None, unit: str
) -> Iterator[tuple[Cell, Cell, Cell, Cell]]:
    """Yield a claim as a row of a table: what, as claimed, as found, and the word on it.

    Parameters
    ----------
    row : Row
        The row of CLAIMS.
    name : str
        Name of the column.
    found : Span or None
        What follows from the other tables [unit].
    unit : str

    Yields
    ------
    tuple of Cell
        Nothing where nothing is claimed.
    """
    claimed = row.number(name)
    if claimed is None:
        return
    label = CLAIMS.column(name).label
    shown = None if found is None else found.quantity(unit)
    yield label, Quantity.exact(claimed, unit), shown, _word(claimed, found)


def claims_table(rows: Iterable[tuple[Cell, Cell, Cell, Cell]]) -> FigureTable | None:
    """Return claims beside what was found as a table.

    Parameters
    ----------
    rows : iterable of tuple of Cell

    Returns
    -------
    FigureTable or None
        None where nothing is claimed.
    """
    shown = tuple(rows)
    if not shown:
        return None
    note = "As she is, before the changes of the conversion where these change it."
    columns = table_columns("claim", "as claimed", "as found", "")
    return FigureTable("Claims beside what was found", columns, shown, note)


def _word(claimed: float, found: Span | None) -> str:
    """Return how a claim stands to what was found."""
    if found is None:
        return "not known"
    if found.low * (1 - NEAR) <= claimed <= found.high * (1 + NEAR):
        return "agrees"
    return "claims more" if claimed > found.high else "claims less"


def open_conditions(rows: Iterable[Row], today: date) -> Iterator[Cell]:
    """Yield the conditions of class that are not met, the first due first.

    Parameters
    ----------
    rows : iterable of Row
        The rows of CLASS_CONDITIONS.
    today : date

    Yields
    ------
    Cell
    """
    unmet = [row for row in rows if row.text("met") != "yes"]
    # Without a date nobody knows how soon, so these come first.
    for row in sorted(unmet, key=lambda row: (str(row["due"] or ""), row.text("name"))):
        due, kind = row["due"], row.text("memo", "condition of class")
        when = "no date is given"
        if due is not None:
            days = (due - today).days
            when = f"by {due.isoformat()}, " + (
                f"{-days} days ago" if days < 0 else f"in {days} days"
            )
        yield sentence(
            "{kind}: {name}; {when}.", kind=kind.capitalize(), name=row.text("name"), when=when
        )
