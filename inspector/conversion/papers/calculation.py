"""What comes due of the ship's papers, and the services that were read on board."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from inspector.assess.checked import CheckResult
from inspector.assess.papers.certificates import Timeline, timelines
from inspector.assess.papers.surveys_due import Due, due_list
from inspector.conversion.core.case import Case

# Criteria whose value is the days left on the day of the inspection.
DAYS_LEFT_CRITERIA = ("service-due", "printed-expiry")
# Days before a service counts as due: our own choice.
SOON = 90


@dataclass(frozen=True)
class Service:
    """A service or a printed date that was read on board.

    Parameters
    ----------
    name : str
        Unit and check.
    due : date
    state : str
        "overdue", "due" or "not yet" on the day.
    """

    name: str
    due: date
    state: str


@dataclass(frozen=True)
class Papers:
    """The ship's papers on one day.

    Parameters
    ----------
    timelines : tuple of Timeline
        One for each certificate.
    due : tuple of Due
        What comes due, the first due first, and rows that cannot be read.
    services : tuple of Service
        The first due first.
    """

    timelines: tuple[Timeline, ...]
    due: tuple[Due, ...]
    services: tuple[Service, ...]


def papers_of(case: Case) -> Papers:
    """Return the papers of one inspection on the day of the case.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Papers

    References
    ----------
    Windows by the harmonised system of survey, as in ``criteria.papers.survey_windows``.
    """
    certificates = case.recorded.certificates
    services = sorted(_services(case), key=lambda service: (service.due, service.name))
    return Papers(
        tuple(timelines(certificates, case.today)),
        tuple(due_list(certificates, case.today)),
        tuple(services),
    )


def _services(case: Case) -> Iterator[Service]:
    """Each is due on the day of the inspection plus the days that it had left then."""
    # Without the day of the inspection nobody knows from when the days count.
    visit = case.recorded.day
    if visit is None:
        return
    for system in case.assessment.systems:
        for unit in system.units:
            for result in unit.results:
                left_then = _days_left(result)
                if left_then is not None:
                    due = visit + timedelta(days=left_then)
                    # Days were counted on the day of the visit; the report may be made months
                    # later.
                    state = _state((due - case.today).days)
                    yield Service(f"{unit.name}: {result.check.title}", due, state)


def _days_left(result: CheckResult) -> int | None:
    """Return the days that a service had left when it was read; None for other readings."""
    judged = result.judgement
    if judged is None or judged.value is None or not result.applicable:
        return None
    # Other criteria in days, such as the age of a test, count the other way.
    return round(judged.value) if judged.criterion in DAYS_LEFT_CRITERIA else None


def _state(days: int) -> str:
    """Return how urgent a day is that is so many days ahead."""
    if days < 0:
        return "overdue"
    return "due" if days <= SOON else "not yet"
