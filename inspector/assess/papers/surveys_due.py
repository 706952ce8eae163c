"""What comes due of the certificates, and which of them are missing or overdue."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from inspector.assess.papers.certificates import Certificate, Rows, Survey, Timeline, timelines
from inspector.criteria.papers.survey_windows import STATES
from inspector.values.text import capital

_NOTHING_TO_DO = ("done", "done late", "not needed", "past")
# The system without which a paper is of no use; what is not named here is about the ship's papers.
SYSTEM_OF = {
    "class": "hull",
    "load line": "hull",
    "safety construction": "hull",
    "safety equipment": "life-saving",
    "safety radio": "bridge",
    "oil pollution prevention": "environment",
    "air pollution prevention": "environment",
    "ballast water management": "environment",
    "sewage pollution prevention": "environment",
    "anti-fouling": "hull",
    "inventory of hazardous materials": "hazardous-materials",
    "dynamic positioning statement": "dynamic-positioning",
    "engine air pollution prevention": "propulsion",
}
PAPERS = "spares-and-papers"


@dataclass(frozen=True)
class Due:
    """One line of the list of what comes due.

    Parameters
    ----------
    certificate : Certificate
    survey : Survey or None
        A survey that is not done; None for a row that cannot be dated.
    sentence : str
    """

    certificate: Certificate
    survey: Survey | None
    sentence: str


def due_list(certificates: Rows, on: date) -> tuple[Due, ...]:
    """List what comes due.

    Parameters
    ----------
    certificates : mapping of str to mapping
        Id -> field -> text.
    on : date
        The day asked.

    Returns
    -------
    tuple of Due
        Of each certificate and kind of survey the one that decides its state, unless done; by the
        day on which its window closes. Rows that cannot be dated come first.
    """
    found = [due for line in timelines(certificates, on) for due in _dues(line)]
    return tuple(sorted(found, key=_place))


def _place(due: Due) -> tuple[bool, date, str]:
    """Rows that cannot be dated first, then by the day."""
    closes = due.survey.closes if due.survey else date.min
    return due.survey is not None, closes, due.certificate.kind


def _dues(line: Timeline) -> Iterator[Due]:
    certificate = line.certificate
    if line.problem:
        yield Due(certificate, None, line.problem)
    by_name: dict[str, list[Survey]] = {}
    for survey in line.surveys:
        by_name.setdefault(survey.name, []).append(survey)
    for surveys in by_name.values():
        survey = _deciding(surveys)
        if survey is not None:
            yield Due(certificate, survey, _sentence(certificate, survey))


def _deciding(surveys: list[Survey]) -> Survey | None:
    """Of one kind of survey the worst of those still to be done, of equals the first."""
    # Worst first: a reader must not miss an overdue window behind one that is merely coming.
    still = [survey for survey in surveys if survey.state not in _NOTHING_TO_DO]
    return min(still, key=lambda one: (STATES.index(one.state), one.closes), default=None)


def _sentence(certificate: Certificate, survey: Survey) -> str:
    name = f"{capital(certificate.kind)} {certificate.number}".rstrip()
    span = f"by {survey.closes.isoformat()}"
    if survey.opens is not None:
        span = f"from {survey.opens.isoformat()} to {survey.closes.isoformat()}"
    left = f"{survey.left} days left" if survey.left >= 0 else f"{-survey.left} days past"
    return f"{name}: {survey.name} {span}, {survey.state}, {left}."


def papers_due(certificates: Rows, on: date) -> dict[str, tuple[str, ...]]:
    """Find the papers that are missing on board, or overdue.

    Parameters
    ----------
    certificates : mapping of str to mapping
        Id -> field -> text.
    on : date
        The day of the inspection.

    Returns
    -------
    dict of str to tuple of str
        System -> a sentence for each of its papers, with rule and date.
    """
    found: dict[str, list[str]] = {}
    for line in timelines(certificates, on):
        on_board = certificates[line.certificate.id].get("on_board") != "no"
        sentence = _paper_due(line, on_board)
        if sentence:
            system = SYSTEM_OF.get(line.certificate.kind, PAPERS)
            found.setdefault(system, []).append(sentence)
    return {system: tuple(sentences) for system, sentences in found.items()}


def _paper_due(line: Timeline, on_board: bool) -> str:
    kind = line.certificate.kind
    if not on_board:
        return (
            f"The {kind} certificate is not on board, and without it she may not trade as "
            "certificated."
        )
    overdue = [survey for survey in line.surveys if survey.state == "overdue"]
    if not overdue:
        return ""
    late = min(overdue, key=lambda survey: survey.closes)
    return (
        f"The {kind} certificate: its {late.name} survey had to be held by "
        f"{late.closes.isoformat()} (SOLAS I/7 to I/14, or class) and was not."
    )
