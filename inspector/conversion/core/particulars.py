"""The tables of particulars that a conversion is calculated from, and their recorded rows as typed.

A row is a subject ``row/<table>/<id>``; each of its columns is one field of the record, kept as
typed, with its unit. A table marked ``single`` has one row only, ``row/<table>/one``. Whatever was
typed wrongly comes back as one sentence that names the column; it is never guessed and never lost.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from inspector.record.typed_values import typed_text
from inspector.values.field import Field, FieldRefused, Value

# The ends of a number for which a table names none: nothing below zero, and no slip of the finger.
LEAST, MOST = 0.0, 1e9


def column(
    name: str,
    label: str,
    unit: str = "",
    kind: str = "number",
    choices: tuple[str, ...] = (),
    *,
    low: float = LEAST,
    high: float = MOST,
    needed: bool = False,
) -> Field:
    """Return one column of a table of particulars.

    Parameters
    ----------
    name, label : str
    unit : str
        The unit in which it is read; "" for a plain number.
    kind : str
        One of ``inspector.values.field.KINDS``.
    choices : tuple of str
    low, high : float
        The ends of what a number may be [unit].
    needed : bool
        True where a row has no meaning without it.

    Returns
    -------
    Field
    """
    # Only numbers have ends; a text with a least value would be refused whatever it says.
    ends = {"low": low, "high": high} if kind in ("number", "whole") else {}
    return Field(name, label, kind, unit, choices, optional=not needed, **ends)


@dataclass(frozen=True)
class Table:
    """A table of particulars.

    Parameters
    ----------
    id, title : str
    about : str
        What a row of it is, or where it comes from.
    columns : tuple of Field
    single : bool
        Whether it has one row only.
    subject : str
        Where its rows are subjects of their own, the first part of these: "certificate".
    superseded_by : str
        The id of the table in which the same is typed now; its own rows of older inspections are
        read on, and it is offered only where it has any.
    groups : tuple of (str, tuple of str)
        What of a long row belongs together: a heading and its columns. Columns in no group come
        before all of them.
    """

    id: str
    title: str
    about: str
    columns: tuple[Field, ...]
    single: bool = False
    subject: str = ""
    superseded_by: str = ""
    groups: tuple[tuple[str, tuple[str, ...]], ...] = ()

    def column(self, name: str) -> Field | None:
        """Return a column by its name.

        Parameters
        ----------
        name : str

        Returns
        -------
        Field or None
            None where there is none of that name.
        """
        return next((found for found in self.columns if found.name == name), None)

    @property
    def prefix(self) -> str:
        """What the subjects of its rows begin with."""
        return f"{self.subject}/" if self.subject else f"row/{self.id}/"


@dataclass(frozen=True)
class Row:
    """One typed row: column name -> value in the column's own unit; not typed is absent."""

    id: str
    values: Mapping[str, Value] = field(default_factory=dict)

    def __getitem__(self, name: str) -> Any:
        return self.values.get(name)

    def number(self, name: str) -> float | None:
        """Return a number of the row.

        Parameters
        ----------
        name : str
            The name of its column.

        Returns
        -------
        float or None
            In the column's unit; None where it was not typed.
        """
        found = self.values.get(name)
        # Whole numbers too: a count is calculated with as any other number.
        return float(found) if isinstance(found, int | float) else None

    def text(self, name: str, default: str = "") -> str:
        """Return a text of the row.

        Parameters
        ----------
        name : str
            The name of its column.
        default : str
            What is returned where it was not typed.

        Returns
        -------
        str
        """
        found = self.values.get(name)
        return default if found is None else str(found)


@dataclass(frozen=True)
class Rows:
    """The rows of one table that can be used, and one sentence for each cell that cannot."""

    table: Table
    rows: tuple[Row, ...] = ()
    faults: tuple[str, ...] = ()

    def __iter__(self) -> Iterator[Row]:
        return iter(self.rows)

    def __len__(self) -> int:
        return len(self.rows)

    @property
    def one(self) -> Row:
        """The row of a single table; an empty one where nothing was typed."""
        return self.rows[0] if self.rows else Row("one")


def read_rows(table: Table, recorded_rows: Mapping[str, Mapping[str, Any]]) -> Rows:
    """Return the rows of a table as recorded, in their order.

    Parameters
    ----------
    table : Table
    recorded_rows : mapping of str to mapping
        Row id -> column name -> as typed.

    Returns
    -------
    Rows
        A row that lacks a needed cell, or has a faulty one there, is only in the faults.
    """
    rows, faults = [], []
    for row_id, recorded in recorded_rows.items():
        # An older record may hold more rows of what has become one; the first form wins.
        if table.single and row_id != "one":
            continue
        values, sentences = cells(table, recorded)
        name = table.title if table.single else f"{table.title}, {values.get('name') or row_id}"
        faults += [f"{name}: {sentence}" for sentence in sentences]
        # A tank without a capacity would count as one of nothing, so it does not count at all.
        if not _lacks(table, values):
            rows.append(Row(row_id, values))
    return Rows(table, tuple(rows), tuple(faults))


def _lacks(table: Table, values: Mapping[str, Value]) -> bool:
    """Whether a needed cell of a row is missing."""
    return any(not found.optional and found.name not in values for found in table.columns)


def cells(table: Table, recorded: Mapping[str, Any]) -> tuple[dict[str, Value], list[str]]:
    """Read the cells of one row, with every fault at once.

    Parameters
    ----------
    table : Table
    recorded : mapping of str to Any
        What was typed for each column.

    Returns
    -------
    tuple of (dict, list of str)
        The values in their columns' units, and the sentences about what cannot be used. A needed
        cell that is empty is a fault only where anything else was typed.
    """
    values: dict[str, Value] = {}
    faults: list[str] = []
    # An empty row is one that somebody added and left: it lacks nothing.
    filled = any(typed_text(typed) for typed in recorded.values())
    for found in table.columns:
        typed = typed_text(recorded.get(found.name))
        if typed:
            try:
                values[found.name] = found.parse(recorded[found.name] if found.is_number else typed)
            except FieldRefused as problem:
                faults.append(str(problem))
        elif filled and not found.optional:
            faults.append(_missing(table, found))
    return values, faults


def _missing(table: Table, needed: Field) -> str:
    return f"{needed.label} is missing; a row of {table.title.lower()} means nothing without it."
