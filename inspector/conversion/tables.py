"""The tables of particulars that a conversion is computed from: what each column is, and recorded rows -> typed rows.

A row is a subject `row/<table>/<id>`; each of its columns is one field of the record, kept as typed, with its unit. A table
marked `single` holds one row only, `row/<table>/one`. Whatever is typed wrongly comes back as one sentence that names the field; it
is never guessed, and never lost.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from inspector.assess.judging import typed_text, typed_unit
from inspector.errors import InspectorError
from inspector.quantities import convert, parse_number, show
from inspector.record.state import State

KINDS = ("number", "whole", "text", "choice", "date")
Value = float | int | str | date


class BadCell(InspectorError):
    """A value that its column cannot hold. Attributes: ``column``, ``received``."""


@dataclass(frozen=True)
class Column:
    """One column: `low` and `high` are the ends of what can be, in `unit`; `needed` where a row means nothing without it."""

    name: str
    label: str
    unit: str = ""
    kind: str = "number"
    choices: tuple[str, ...] = ()
    low: float = 0
    high: float = 1e9
    needed: bool = False

    def read(self, typed: Any) -> Value | None:
        """What was typed ("9,6", or {"value": ..., "unit": ...}) as this column's value in its own unit; None where nothing was.

        Raises BadCell with one sentence: the column, what is wrong, what would be right.
        """
        text = typed_text(typed)
        if not text:
            return None
        if self.kind in ("number", "whole"):
            return self._number(text, typed_unit(typed))
        if self.kind == "date":
            return self._date(text)
        if self.kind == "choice" and text not in self.choices:
            raise BadCell(f"{self.label}: {text!r} is not one of {', '.join(self.choices)}.", column=self.name, received=text)
        return text

    def _number(self, text: str, unit: str) -> float | int:
        try:
            value = parse_number(text)
            value = convert(value, unit, self.unit) if unit and unit != self.unit else value
        except InspectorError as problem:
            raise BadCell(f"{self.label}: {problem}", column=self.name, received=text) from problem
        if not self.low <= value <= self.high:
            expected = f"{show(self.low, self.unit)} to {show(self.high, self.unit)}"
            raise BadCell(f"{self.label}: {show(value, self.unit)} cannot be; expected {expected}.", column=self.name, received=text)
        if self.kind == "whole":
            if value != int(value):
                raise BadCell(f"{self.label}: {text} is not a whole number.", column=self.name, received=text)
            return int(value)
        return value

    def _date(self, text: str) -> date:
        try:
            return date.fromisoformat(text)
        except ValueError as problem:
            raise BadCell(f"{self.label}: {text!r} is not a date; expected year-month-day, such as 2008-03-14.", column=self.name, received=text) from problem


@dataclass(frozen=True)
class Table:
    """A table of particulars: its columns, what a row of it is, and whether it has one row only."""

    id: str
    title: str
    about: str
    columns: tuple[Column, ...]
    single: bool = False
    subject: str = ""            # where its rows are subjects of their own: certificate/<id>

    def column(self, name: str) -> Column | None:
        """The column of that name, or None."""
        return next((one for one in self.columns if one.name == name), None)

    @property
    def prefix(self) -> str:
        """What the subjects of its rows begin with."""
        return f"{self.subject}/" if self.subject else f"row/{self.id}/"


@dataclass(frozen=True)
class Row:
    """One typed row: column name -> value in the column's own unit; what was not typed is absent."""

    id: str
    values: Mapping[str, Value] = field(default_factory=dict)

    def __getitem__(self, name: str) -> Any:
        return self.values.get(name)

    def number(self, name: str) -> float | None:
        """A number of the row, None where it was not typed."""
        found = self.values.get(name)
        return float(found) if isinstance(found, int | float) else None

    def text(self, name: str, default: str = "") -> str:
        """A text of the row."""
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


def read_rows(table: Table, state: State) -> Rows:
    """The rows of a table as recorded, oldest first by id. A row that lacks a needed cell, or has a faulty one, is told and left out where it must be."""
    rows, faults = [], []
    for subject in state.subjects(table.prefix):
        row_id = subject.removeprefix(table.prefix)
        recorded = state.values(subject)
        if recorded.get("gone") in (True, "true", "yes") or (table.single and row_id != "one"):
            continue
        values, wrong = cells(table, recorded)
        called = f"{table.title}, {values.get('name') or row_id}" if not table.single else table.title
        faults += [f"{called}: {sentence}" for sentence in wrong]
        if not any(column.needed and column.name not in values for column in table.columns):
            rows.append(Row(row_id, values))
    return Rows(table, tuple(rows), tuple(faults))


def cells(table: Table, recorded: Mapping[str, Any]) -> tuple[dict[str, Value], list[str]]:
    """Typed cells -> (values, sentences): every fault of a row at once; a needed cell that is empty is a fault where anything else was typed."""
    values: dict[str, Value] = {}
    faults: list[str] = []
    for column in table.columns:
        try:
            value = column.read(recorded.get(column.name))
        except BadCell as problem:
            faults.append(str(problem))
            continue
        if value is not None:
            values[column.name] = value
        elif column.needed and any(typed_text(one) for one in recorded.values()):
            faults.append(f"{column.label} is missing; a row of {table.title.lower()} means nothing without it.")
    return values, faults
