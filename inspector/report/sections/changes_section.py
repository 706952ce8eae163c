"""What was recorded, changed or taken out since the last signed revision."""

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


@dataclass(frozen=True)
class Changes:
    """What changed since a revision.

    Parameters
    ----------
    since : str
        That revision in words: "revision 1".
    fields : tuple of RecordChange
    """

    since: str
    fields: tuple[RecordChange, ...]


def changes_section(changes: Changes, issue: Issue) -> list[Flowable]:
    """Return the list of changes since a revision.

    Parameters
    ----------
    changes : Changes
    issue : Issue

    Returns
    -------
    list of Flowable
    """
    fields = changes.fields
    how_many = counted(len(fields), "field")
    lead = f"{how_many} of the record changed since {changes.since} was signed."
    width = issue.page.column
    columns = (width * 0.36, 26 * mm, width * 0.32 - 13 * mm, width * 0.32 - 13 * mm)
    rows = [[each.where, each.what, each.before or "–", each.after or "–"] for each in fields]
    table = [rows_table(("on", "what", "before", "after"), rows, columns)] if rows else []
    return section(f"Changes since {changes.since}", "changes", lead, *table)
