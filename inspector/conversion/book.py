"""All chapters of the conversion and all tables of particulars, in the order in which they are shown and printed."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from inspector.assess.shapes import Assessment
from inspector.conversion.chapters import Chapter
from inspector.conversion.tables import Row, Rows, Table, read_rows
from inspector.record.state import State


@dataclass(frozen=True)
class Case:
    """What a chapter is computed from: the assessment, the tables of particulars as typed rows, and the day on which it is asked."""

    assessment: Assessment
    tables: dict[str, Rows]
    today: date
    state: State

    def rows(self, table: Table) -> tuple[Row, ...]:
        """The usable rows of a table."""
        return self.tables[table.id].rows

    def one(self, table: Table) -> Row:
        """The row of a single table."""
        return self.tables[table.id].one

    def faults(self, *tables: Table) -> tuple[str, ...]:
        """The sentences about cells that cannot be used, of these tables."""
        return tuple(sentence for table in tables for sentence in self.tables[table.id].faults)


Writer = Callable[[Case], Chapter]


def case_of(state: State, assessment: Assessment, today: date, tables: tuple[Table, ...]) -> Case:
    """Read every table once."""
    return Case(assessment, {table.id: read_rows(table, state) for table in tables}, today, state)
