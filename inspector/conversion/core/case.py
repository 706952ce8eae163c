"""What a chapter of the conversion is calculated from, read once for all chapters."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from inspector.assess.model import Assessment
from inspector.assess.recorded import RecordedInspection
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.particulars import Row, Rows, Table, read_rows


@dataclass(frozen=True)
class Case:
    """What a chapter is calculated from.

    Parameters
    ----------
    assessment : Assessment
    tables : dict of str to Rows
        Id of a table of particulars -> its typed rows.
    today : date
        The day on which the question is asked.
    """

    assessment: Assessment
    tables: dict[str, Rows]
    today: date

    @property
    def recorded(self) -> RecordedInspection:
        """What was recorded, as it was read once."""
        return self.assessment.recorded

    def rows(self, table: Table) -> tuple[Row, ...]:
        """Return the usable rows of a table.

        Parameters
        ----------
        table : Table

        Returns
        -------
        tuple of Row
        """
        return self.tables[table.id].rows

    def one(self, table: Table) -> Row:
        """Return the row of a table that has one row only.

        Parameters
        ----------
        table : Table

        Returns
        -------
        Row
            An empty one where nothing was typed.
        """
        return self.tables[table.id].one

    def faults(self, *tables: Table) -> tuple[str, ...]:
        """Return the sentences about cells that cannot be used.

        Parameters
        ----------
        *tables : Table

        Returns
        -------
        tuple of str
        """
        return tuple(sentence for table in tables for sentence in self.tables[table.id].faults)


Writer = Callable[[Case], Chapter]


def case_of(assessment: Assessment, today: date, tables: tuple[Table, ...]) -> Case:
    """Return a case with every table read once.

    Parameters
    ----------
    assessment : Assessment
    today : date
    tables : tuple of Table

    Returns
    -------
    Case
    """
    recorded = assessment.recorded.rows
    read = {table.id: read_rows(table, recorded.get(table.id, {})) for table in tables}
    return Case(assessment, read, today)
