"""The chapters of the conversion and their tables of particulars, as page and report show them."""

from datetime import date

from inspector.assess.model import Assessment
from inspector.conversion.core import claims
from inspector.conversion.core.case import Case, Writer, case_of
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.particulars import Table
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.money import chapter as money_chapter
from inspector.conversion.money import particulars as money_particulars
from inspector.conversion.papers import chapter as papers_chapter
from inspector.conversion.papers import particulars as papers_particulars
from inspector.conversion.power import chapter as power_chapter
from inspector.conversion.power import particulars as power_particulars
from inspector.conversion.range import chapter as range_chapter
from inspector.conversion.range import range_tables
from inspector.conversion.rule_book import chapter as rule_book_chapter
from inspector.conversion.rule_book import particulars as rule_book_particulars
from inspector.conversion.ship_kind import chapter as ship_kind_chapter
from inspector.conversion.ship_kind import particulars as ship_kind_particulars
from inspector.conversion.space import chapter as space_chapter
from inspector.conversion.space import particulars as space_particulars
from inspector.conversion.stability import chapter as stability_chapter
from inspector.conversion.stability import particulars as stability_particulars
from inspector.conversion.stability.loading.particulars import LOADING
from inspector.conversion.stated_twice import with_contradictions

# In the order in which an owner asks: how far, how stable, what runs, what fits, what it costs.
# Id of a chapter -> what it is called in a list, and what makes it.
CHAPTERS: dict[str, tuple[str, Writer]] = {
    "range": ("range and endurance", range_chapter.chapter),
    "stability": ("weight and stability", stability_chapter.chapter),
    "power": ("power and station", power_chapter.chapter),
    "space": ("space and tonnage", space_chapter.chapter),
    "money": ("money", money_chapter.chapter),
    "ship-kind": ("cargo, special purpose or passenger ship", ship_kind_chapter.chapter),
    "rule-book": ("the rule book by date", rule_book_chapter.chapter),
    "papers": ("certificates", papers_chapter.chapter),
}
TABLES: tuple[Table, ...] = (
    HYDROSTATICS,
    TANKS,
    *range_tables.TABLES,
    *stability_particulars.TABLES,
    LOADING,
    *power_particulars.TABLES,
    *space_particulars.TABLES,
    *money_particulars.TABLES,
    *ship_kind_particulars.TABLES,
    *rule_book_particulars.TABLES,
    *papers_particulars.TABLES,
    *claims.TABLES,
)


def read_case(assessment: Assessment, today: date) -> Case:
    """Return what all chapters are calculated from, with every table read once.

    Parameters
    ----------
    assessment : Assessment
    today : date
        The day on which the question is asked.

    Returns
    -------
    Case
    """
    return case_of(assessment, today, TABLES)


def chapters_of(case: Case) -> tuple[Chapter, ...]:
    """Return every chapter.

    Parameters
    ----------
    case : Case

    Returns
    -------
    tuple of Chapter
        Recorded data that cannot be used never raises: it is reported in its chapter.
    """
    return tuple(chapter_of(case, chapter_id) for chapter_id in CHAPTERS)


def chapter_of(case: Case, chapter_id: str) -> Chapter:
    """Return one chapter, without calculating any other.

    Parameters
    ----------
    case : Case
    chapter_id : str
        A key of CHAPTERS.

    Returns
    -------
    Chapter
    """
    _, write = CHAPTERS[chapter_id]
    return with_contradictions(case, write(case))


def convert(assessment: Assessment, today: date) -> tuple[Chapter, ...]:
    """Return every chapter of one inspection as it is known on a day.

    Parameters
    ----------
    assessment : Assessment
    today : date

    Returns
    -------
    tuple of Chapter
    """
    return chapters_of(read_case(assessment, today))
