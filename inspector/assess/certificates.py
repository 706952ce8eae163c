"""Certificates as recorded -> when each survey is open, due or overdue, for the report and the screens.

Rows are entries `certificate/<id>`; a bad date never stops a report: it comes back as one sentence that names the field.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from inspector.assess.gather import by_age, texts
from inspector.criteria.certificates import KINDS, Kind
from inspector.criteria.survey_windows import SOON, STATES, Placed, bottom_due, placed, renewal_state, windows
from inspector.errors import InspectorError
from inspector.record.state import State
from inspector.words import capital

DATES = {
    "issued": "Issued",
    "expires": "Expires",
    "last_annual": "Last annual survey",
    "last_intermediate": "Last intermediate survey",
    "last_bottom": "Last bottom inspection",
    "bottom_before_that": "Bottom inspection before that",
    "postponed_until": "Postponed until",
}
YEAR = 365  # days: what a buyer asks about first


class BadCertificate(InspectorError):
    """A row that cannot be read. Attributes: ``field``, ``received``."""


@dataclass(frozen=True)
class Certificate:
    """One paper as recorded; a date that was not recorded is None. `kind` as typed, known or not."""

    id: str
    kind: str
    number: str = ""
    issued: date | None = None
    expires: date | None = None
    last_annual: date | None = None
    last_intermediate: date | None = None
    last_bottom: date | None = None
    bottom_before_that: date | None = None
    postponed_until: date | None = None

    @property
    def rules(self) -> Kind:
        """The surveys that keep this kind alive; an unknown kind has only its renewal."""
        return KINDS.get(self.kind, KINDS["other"])


@dataclass(frozen=True)
class Survey:
    """One survey of a certificate: its window (`opens` None where only a last day exists), its state on the day, days left until it closes."""

    name: str
    number: int
    opens: date | None
    closes: date
    state: str
    left: int
    held: bool = False
    why: str = ""


@dataclass(frozen=True)
class Timeline:
    """A certificate with all its surveys until it expires, by date; `state` is the worst of them; `problem` says in one sentence what cannot be told."""

    certificate: Certificate
    surveys: tuple[Survey, ...] = ()
    state: str = "no evidence"
    problem: str = ""


@dataclass(frozen=True)
class Due:
    """One line of the list of what comes due: a survey that is not done, or a row that cannot be told (`survey` None)."""

    certificate: Certificate
    survey: Survey | None
    sentence: str
    within_a_year: bool = False


def read_certificate(id: str, row: Mapping[str, str]) -> Certificate:
    """Read one row; a date is ISO text or empty. Raises BadCertificate with one sentence that names the field."""
    found = {name: _date(name, row.get(name)) for name in DATES}
    issued, expires = found["issued"], found["expires"]
    if issued and expires and expires < issued:
        raise BadCertificate(
            f"{DATES['expires']} is {expires.isoformat()}, before the issue on {issued.isoformat()}: read the certificate again.",
            field="expires",
            received=row.get("expires"),
        )
    if found["postponed_until"] and expires and found["postponed_until"] < expires:
        raise BadCertificate(
            f"{DATES['postponed_until']} is {found['postponed_until'].isoformat()}, before the expiry on {expires.isoformat()}.",
            field="postponed_until",
            received=row.get("postponed_until"),
        )
    return Certificate(id=id, kind=str(row.get("kind") or "other").strip(), number=str(row.get("number") or "").strip(), **found)


def _date(name: str, text: object) -> date | None:
    plain = str(text or "").strip()
    if not plain:
        return None
    try:
        found = date.fromisoformat(plain)
    except ValueError:
        found = None
    if found is None or not 1970 <= found.year <= 2200:
        raise BadCertificate(f"{DATES[name]} must be a date like 2027-05-31, not '{plain[:40]}'.", field=name, received=text)
    return found


def timeline(row: Mapping[str, str], on: date, id: str = "") -> Timeline:
    """Return a certificate with every survey until its expiry and its state on a day; what cannot be told stands in `problem`."""
    try:
        certificate = read_certificate(id, row)
    except BadCertificate as bad:
        plain = {name: str(row.get(name) or "").strip() for name in ("kind", "number")}
        return Timeline(Certificate(id, plain["kind"] or "other", plain["number"]), problem=str(bad))
    return _timeline(certificate, on)


def _timeline(certificate: Certificate, on: date) -> Timeline:
    late = next((name for name in DATES if name.startswith("last_") and (getattr(certificate, name) or on) > on), None)
    if late:
        return Timeline(certificate, problem=f"{DATES[late]} is {getattr(certificate, late).isoformat()}, after the day of the inspection, {on.isoformat()}.")
    if certificate.expires is None and certificate.rules.validity:
        return Timeline(
            certificate, (*_bottom(certificate, on),), problem=f"{DATES['expires']} is not recorded for {certificate.kind}: nothing is told without it."
        )
    surveys = (*(_surveys(certificate, on) if certificate.expires else ()), *_bottom(certificate, on))
    states = [one.state for one in surveys] or ["done"]
    return Timeline(certificate, tuple(sorted(surveys, key=lambda one: (one.closes, one.name))), min(states, key=STATES.index))


def _surveys(certificate: Certificate, on: date) -> list[Survey]:
    found: list[Placed] = []
    for name in certificate.rules.surveys:
        if name == "renewal":
            found.append(renewal_state(certificate.expires, on, None, certificate.postponed_until))
            continue
        begun = certificate.issued or date.min
        # a certificate issued late in its period owes nothing for windows that had closed before it
        made = [one for one in windows(name, certificate.expires, certificate.rules.validity) if one.closes >= begun]
        found += _credited(name, certificate, placed(made, on, _last(certificate, name)))
    return [
        Survey(one.window.survey, one.window.number, one.window.opens, one.window.closes, one.state, (one.window.closes - on).days, one.window.held)
        for one in found
    ]


def _credited(name: str, certificate: Certificate, found: tuple[Placed, ...]) -> list[Placed]:
    """An intermediate or periodical survey stands in for the annual of its own window."""
    other = certificate.last_intermediate
    if name != "annual" or other is None:
        return list(found)
    return [Placed(one.window, "done") if one.window.opens <= other <= one.window.closes else one for one in found]


def _last(certificate: Certificate, survey: str) -> date | None:
    if survey != "annual" and survey != "periodical, radio":
        return certificate.last_intermediate
    known = [one for one in (certificate.last_annual, certificate.last_intermediate if survey == "annual" else None) if one]
    return max(known, default=None)


def _bottom(certificate: Certificate, on: date) -> list[Survey]:
    if not certificate.rules.bottom or certificate.last_bottom is None:
        return []
    due, why = bottom_due(
        certificate.last_bottom, certificate.bottom_before_that, certificate.expires, certificate.postponed_until, certificate.rules.bottom == "passenger"
    )
    left = (due - on).days
    return [Survey("bottom", 0, None, due, "overdue" if left < 0 else "due" if left <= SOON else "not yet", left, why=why)]


# the system that a paper lets sail or trade; what is not named here belongs to the ship's papers
SYSTEM_OF = {
    "class": "hull", "load line": "hull", "safety construction": "hull", "safety equipment": "life-saving", "safety radio": "bridge",
    "oil pollution prevention": "environment", "air pollution prevention": "environment", "ballast water management": "environment",
    "sewage pollution prevention": "environment", "anti-fouling": "hull", "inventory of hazardous materials": "hazardous-materials",
    "dynamic positioning statement": "dynamic-positioning", "engine air pollution prevention": "propulsion",
}
PAPERS = "spares-and-papers"


def against_law(state: State, on: date) -> dict[str, tuple[str, ...]]:
    """System -> a sentence for each of its papers that is missing on board, or overdue on the day: rule and date named."""
    found: dict[str, list[str]] = {}
    for subject, line in zip(by_age(state, "certificate/"), timelines(state, on), strict=True):
        row, kind = texts(state, subject), line.certificate.kind
        late = min((one for one in line.surveys if one.state == "overdue"), key=lambda one: one.closes, default=None)
        if row.get("on_board") == "no":
            sentence = f"The {kind} certificate is not on board, and without it she may not trade as certificated."
        elif late is not None:
            sentence = f"The {kind} certificate: its {late.name} survey had to be held by {late.closes.isoformat()} (SOLAS I/7 to I/14, or class) and was not."
        else:
            continue
        found.setdefault(SYSTEM_OF.get(kind, PAPERS), []).append(sentence)
    return {system: tuple(sentences) for system, sentences in found.items()}


def timelines(state: State, on: date) -> tuple[Timeline, ...]:
    """The timelines of all certificates that stand, in the order in which they were entered."""
    return tuple(timeline(texts(state, subject), on, subject.partition("/")[2]) for subject in by_age(state, "certificate/"))


def due_list(state: State, on: date) -> tuple[Due, ...]:
    """What comes due: of each certificate the survey of each kind that tells its state, unless done; by the day its window closes.

    A row that cannot be told stands at the head with its sentence.
    """
    found = [due for one in timelines(state, on) for due in _dues(one)]
    return tuple(sorted(found, key=lambda due: (due.survey is not None, due.survey.closes if due.survey else date.min, due.certificate.kind)))


def _dues(line: Timeline) -> list[Due]:
    certificate = line.certificate
    made = [Due(certificate, None, line.problem)] if line.problem else []
    by_name: dict[str, list[Survey]] = {}
    for survey in line.surveys:
        by_name.setdefault(survey.name, []).append(survey)
    for surveys in by_name.values():
        survey = _telling(surveys)
        if survey is not None:
            made.append(Due(certificate, survey, _sentence(certificate, survey), survey.left <= YEAR))
    return made


def _telling(surveys: list[Survey]) -> Survey | None:
    """Of one kind of survey the window to name: the worst of those still to be done, of equals the first."""
    open_ones = [one for one in surveys if one.state not in ("done", "done late", "not needed", "past")]
    return min(open_ones, key=lambda one: (STATES.index(one.state), one.closes), default=None)


def _sentence(certificate: Certificate, survey: Survey) -> str:
    name = f"{capital(certificate.kind)}{f' {certificate.number}' if certificate.number else ''}"
    span = f"by {survey.closes.isoformat()}" if survey.opens is None else f"from {survey.opens.isoformat()} to {survey.closes.isoformat()}"
    left = f"{survey.left} days left" if survey.left >= 0 else f"{-survey.left} days past"
    return f"{name}: {survey.name} {span}, {survey.state}, {left}."
