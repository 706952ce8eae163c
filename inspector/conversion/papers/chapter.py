"""The chapter on certificates and surveys: what is due, in its window, overdue or postponed."""

from collections.abc import Iterator, Sequence

from inspector.assess.papers.surveys_due import Due
from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter
from inspector.conversion.core.claims import CLASS_CONDITIONS, open_conditions
from inspector.conversion.core.figure import Gap
from inspector.conversion.papers import presentation
from inspector.conversion.papers.calculation import papers_of
from inspector.conversion.papers.particulars import TABLES
from inspector.values.quantity import Cell, joined, sentence

TITLE = "Certificates and surveys"
NO_CERTIFICATES = Gap(
    "Certificates", "None is recorded; enter those of the ship's file with their dates."
)
NOTHING_KNOWN = "No certificate is recorded, so nothing is known of the next surveys."
VERIFY = (
    "Only the survey status printed by class and flag on the day counts; ask for it before you "
    "rely on these dates."
)
# More make a passenger ship under SOLAS.
MOST_PASSENGERS = 12


def chapter(case: Case) -> Chapter:
    """Return the chapter on certificates and surveys.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
    """
    papers = papers_of(case)
    shared = {
        "warnings": (
            *open_conditions(case.rows(CLASS_CONDITIONS), case.today),
            *_warnings(case),
        ),
        "faults": case.faults(*TABLES, CLASS_CONDITIONS),
        "particulars": tuple(table.id for table in (*TABLES, CLASS_CONDITIONS)),
    }
    services = (presentation.services_table(papers.services),) if papers.services else ()
    if not papers.timelines:
        return Chapter(
            "papers",
            TITLE,
            NOTHING_KNOWN,
            figure_tables=services,
            gaps=(NO_CERTIFICATES,),
            **shared,
        )
    # A paper whose dates are not known is a gap and never a survey that is in date.
    unread = [entry for entry in papers.due if entry.survey is None]
    return Chapter(
        "papers",
        TITLE,
        _answer(papers.due),
        figure_tables=(presentation.due_table(papers.due, case.today), *services),
        drawings=(
            *presentation.survey_drawing(papers.timelines, case.today),
            *presentation.service_drawing(papers.services, case.today),
        ),
        gaps=tuple(Gap(entry.certificate.kind, entry.sentence) for entry in unread),
        verify=VERIFY,
        **shared,
    )


def _answer(due: Sequence[Due]) -> Cell:
    """Return what closes next, and how many past surveys nothing proves."""
    known = [entry for entry in due if entry.survey]
    # Not overdue: nobody has shown that it was done, and nobody that it was not.
    without_evidence = sum(entry.survey.state == "no evidence" for entry in known)
    parts = [_next_to_close(known)]
    if without_evidence == 1:
        parts.append("Nothing on board proves that a past survey was held.")
    elif without_evidence:
        parts.append(f"Nothing on board proves that {without_evidence} past surveys were held.")
    return joined(parts)


def _next_to_close(known: Sequence[Due]) -> Cell:
    """Return what is overdue, or else the survey whose window closes first."""
    # One overdue survey may end a certificate, so it comes before whatever is next.
    late = [entry for entry in known if entry.survey.state == "overdue"]
    soon = sum(entry.survey.state in ("due", "in window") for entry in known)
    ahead = [entry for entry in known if entry.survey.left >= 0]
    if late:
        return sentence(
            "{late} overdue, first {kind} ({survey}); {soon} in the window now.",
            late=len(late),
            kind=late[0].certificate.kind,
            survey=late[0].survey.name,
            soon=soon,
        )
    if not ahead:
        return "No survey with a date is ahead."
    first = min(ahead, key=lambda entry: entry.survey.closes)
    return sentence(
        "{now}; the next to close is {kind} ({survey}), by {closes}, {left} days left.",
        now=f"{soon} in the window now" if soon else "Nothing is overdue",
        kind=first.certificate.kind,
        survey=first.survey.name,
        closes=first.survey.closes,
        left=first.survey.left,
    )


def _warnings(case: Case) -> Iterator[str]:
    """Yield what the number of persons in the brief means for the papers."""
    # As typed: a brief may hold any text here.
    persons = case.assessment.brief.get("persons", "").strip()
    if persons.isdigit() and int(persons) > MOST_PASSENGERS:
        yield (
            f"The brief asks for {persons} persons. More than 12 passengers make a passenger ship "
            "under SOLAS; who counts as crew, special personnel or passenger is decided by the "
            "flag, before a contract is signed."
        )
