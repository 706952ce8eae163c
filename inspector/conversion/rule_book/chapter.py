"""The chapter on the rules by date."""

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.figure import Gap
from inspector.conversion.rule_book import presentation
from inspector.conversion.rule_book.calculation import rule_book
from inspector.conversion.rule_book.particulars import TABLES
from inspector.conversion.rule_book.rule_line import WAITS

TITLE = "The rule book by date"


def chapter(case: Case) -> Chapter:
    """Return the chapter on the rules by date. Never raises for recorded data.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
    """
    book = rule_book(case)
    return Chapter(
        "rule-book",
        TITLE,
        presentation.answer(book),
        book.figures,
        presentation.tables(book),
        warnings=tuple(presentation.warnings(book)),
        gaps=tuple(Gap(line.rule, line.for_her) for line in book.lines if line.state == WAITS),
        faults=(*case.faults(*TABLES), *book.faults),
        verify=presentation.VERIFY,
        particulars=tuple(table.id for table in TABLES),
    )
