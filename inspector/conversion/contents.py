"""The contents of the conversion: its chapters and the tables of particulars they are computed from, in the order of screens and report."""

from datetime import date

from inspector.assess.shapes import Assessment
from inspector.conversion import chapter_power, chapter_range, chapter_space, chapter_stability, money, papers
from inspector.conversion.book import Case, Writer, case_of
from inspector.conversion.chapters import Chapter
from inspector.conversion.ship_tables import HYDROSTATICS, TANKS
from inspector.conversion.tables import Table
from inspector.record.state import State

WRITERS: tuple[Writer, ...] = (
    chapter_range.chapter, chapter_stability.chapter, chapter_power.chapter, chapter_space.chapter, money.chapter, papers.chapter,
)
TABLES: tuple[Table, ...] = (
    HYDROSTATICS, TANKS, *chapter_range.TABLES, *chapter_stability.TABLES, *chapter_power.TABLES, *chapter_space.TABLES, *money.TABLES, *papers.TABLES,
)


def read_case(state: State, assessment: Assessment, today: date) -> Case:
    """Every table of an inspection read once."""
    return case_of(state, assessment, today, TABLES)


def chapters_of(case: Case) -> tuple[Chapter, ...]:
    """Every chapter. Never raises for recorded data: what cannot be used is told in the chapter."""
    return tuple(write(case) for write in WRITERS)


def convert(state: State, assessment: Assessment, today: date) -> tuple[Chapter, ...]:
    """Every chapter of one inspection as it stands on that day."""
    return chapters_of(read_case(state, assessment, today))
