"""What was recorded, changed or taken out since the last signed revision."""

from collections.abc import Sequence
from dataclasses import dataclass

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from inspector.report.document import section
from inspector.report.issue import Issue
from inspector.report.tables import rows_table
from inspector.values.text import counted


@dataclass(frozen=True)
class RecordChange:
    """One field whose value is another one than in the revision before.

    Parameters
    ----------
    where : str
        What it is about, in words: "Bow thruster 1: Water in the hub oil".
    what : str
        The field, in words.
    before, after : str
        As typed; "" where nothing was recorded.
    """

    where: str
    what: str
    before: str
    after: str


def changes_section(title: str, changes: Sequence[RecordChange], issue: Issue) -> list[Flowable]:
    """Return the list of changes since a revision.

    Parameters
    ----------
    title : str
        Of the revision before: "revision 1".
    changes : sequence of RecordChange
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    lead = f"{counted(len(changes), 'field')} of the record changed since {title} was signed."
    width = issue.page.column
    columns = (width * 0.36, 26 * mm, width * 0.32 - 13 * mm, width * 0.32 - 13 * mm)
    rows = [[each.where, each.what, each.before or "–", each.after or "–"] for each in changes]
    table = [rows_table(("on", "what", "before", "after"), rows, columns)] if rows else []
    return section(f"Changes since {title}", "changes", lead, *table)
