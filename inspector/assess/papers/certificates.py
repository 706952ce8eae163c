"""Certificates as recorded -> every survey with its window and its state on a day.

A date that cannot be read never stops a report: it comes back as one sentence that names the field.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from inspector.criteria.papers.bottom_inspection import bottom_due
from inspector.criteria.papers.survey_dates import KINDS, Kind
from inspector.criteria.papers.survey_windows import (
    SOON,
    STATES,
    Placed,
    placed,
    renewal_state,
    windows,
)
from inspector.values.errors import InspectorError

# Certificate id -> field -> text, the oldest first.
Rows = Mapping[str, Mapping[str, str]]

DATES = {
    "issued": "Issued",
    "expires": "Expires",
    "last_annual": "Last annual survey",
    "last_intermediate": "Last intermediate survey",
    "last_bottom": "Last bottom inspection",
    "bottom_before_that": "Bottom inspection before that",
    "postponed_until": "Postponed until",
}
# A year outside these is a slip of the finger.
FIRST_YEAR, LAST_YEAR = 1970, 2200
_LONGEST_SHOWN = 40


class BadCertificate(InspectorError):
    """A row that cannot be read. Attributes: ``field``, ``received``."""


@dataclass(frozen=True)
class Certificate:
    """One paper as recorded; a date that was not recorded is None.

    Parameters
    ----------
    id : str
    kind : str
        As typed, known or not.
    number : str
    issued, expires, last_annual, last_intermediate : date or None
    last_bottom, bottom_before_that, postponed_until : date or None
    """

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
        """The surveys that keep this kind valid; an unknown kind has only its renewal."""
        return KINDS.get(self.kind, KINDS["other"])


@dataclass(frozen=True)
class Survey:
    """One survey of a certificate.

    Parameters
    ----------
    name : str
        "annual", "intermediate", "renewal", "bottom" ...
    number : int
        Which one of its kind, from 1; 0 where it is not counted.
    opens : date or None
        None where only a last day exists.
    closes : date
    state : str
        One of STATES, on the day asked.
    left : int
        Days until it closes.
    why : str
        What sets the last day.
    """

    name: str
    number: int
    opens: date | None
    closes: date
    state: str
    left: int
    why: str = ""


@dataclass(frozen=True)
class Timeline:
    """A certificate with all its surveys until it expires, by date.

    Parameters
    ----------
    certificate : Certificate
    surveys : tuple of Survey
    state : str
        The worst of their states.
    problem : str
        What cannot be dated, in one sentence; "" where all can.
    """

    certificate: Certificate
    surveys: tuple[Survey, ...] = ()
    state: str = "no evidence"
    problem: str = ""


def read_certificate(id: str, row: Mapping[str, str]) -> Certificate:
    """Read one row.

    Parameters
    ----------
    id : str
    row : mapping of str to str
        Field -> text; a date is ISO text or empty.

    Returns
    -------
    Certificate

    Raises
    ------
    BadCertificate
        With one sentence that names the field.
    """
    found = {name: _date(name, row.get(name)) for name in DATES}
    issued, expires, postponed = (found[name] for name in ("issued", "expires", "postponed_until"))
    if issued and expires and expires < issued:
        raise BadCertificate(
            f"{DATES['expires']} is {expires.isoformat()}, before the issue on "
            f"{issued.isoformat()}: read the certificate again.",
            field="expires",
            received=row.get("expires"),
        )
    if postponed and expires and postponed < expires:
        raise BadCertificate(
            f"{DATES['postponed_until']} is {postponed.isoformat()}, before the expiry on "
            f"{expires.isoformat()}.",
            field="postponed_until",
            received=row.get("postponed_until"),
        )
    return Certificate(id, _plain(row, "kind") or "other", _plain(row, "number"), **found)


def _plain(row: Mapping[str, str], name: str) -> str:
    return str(row.get(name) or "").strip()


def _date(name: str, text: object) -> date | None:
    plain = str(text or "").strip()
    if not plain:
        return None
    try:
        found = date.fromisoformat(plain)
    except ValueError:
        found = None
    if found is None or not FIRST_YEAR <= found.year <= LAST_YEAR:
        raise BadCertificate(
            f"{DATES[name]} must be a date like 2027-05-31, not '{plain[:_LONGEST_SHOWN]}'.",
            field=name,
            received=text,
        )
    return found


def timelines(certificates: Rows, on: date) -> tuple[Timeline, ...]:
    """Return the timelines of all certificates.

    Parameters
    ----------
    certificates : mapping of str to mapping
        Id -> field -> text.
    on : date
        The day asked.

    Returns
    -------
    tuple of Timeline
        In the order given.
    """
    return tuple(timeline(row, on, row_id) for row_id, row in certificates.items())


def timeline(row: Mapping[str, str], on: date, id: str = "") -> Timeline:
    """Return a certificate with every survey until its expiry and its state on a day.

    Parameters
    ----------
    row : mapping of str to str
        Field -> text.
    on : date
        The day asked.
    id : str
        Of the certificate.

    Returns
    -------
    Timeline
        With a `problem` where something cannot be dated.
    """
    try:
        certificate = read_certificate(id, row)
    except BadCertificate as bad:
        unread = Certificate(id, _plain(row, "kind") or "other", _plain(row, "number"))
        return Timeline(unread, problem=str(bad))
    problem = _date_to_come(certificate, on)
    # A wrong date of a survey would make every window after it wrong.
    if problem:
        return Timeline(certificate, problem=problem)
    # The bottom has its own interval, which needs no expiry.
    bottom = tuple(_bottom(certificate, on))
    if certificate.expires is None and certificate.rules.validity:
        problem = (
            f"{DATES['expires']} is not recorded for {certificate.kind}: no survey of it can be "
            "dated without it."
        )
        return Timeline(certificate, bottom, problem=problem)
    dated = _surveys(certificate, on) if certificate.expires else []
    surveys = sorted((*dated, *bottom), key=lambda survey: (survey.closes, survey.name))
    # A paper without surveys, such as a registry, is in order as long as it is on board.
    states = [survey.state for survey in surveys] or ["done"]
    return Timeline(certificate, tuple(surveys), min(states, key=STATES.index))


def _date_to_come(certificate: Certificate, on: date) -> str:
    """A sentence for a survey that was done after the day asked, "" where there is none."""
    for name in DATES:
        done = getattr(certificate, name)
        if name.startswith("last_") and done is not None and done > on:
            return (
                f"{DATES[name]} is {done.isoformat()}, after the day of the inspection, "
                f"{on.isoformat()}."
            )
    return ""


def _surveys(certificate: Certificate, on: date) -> list[Survey]:
    """Every survey of a certificate between its issue and its expiry."""
    found: list[Placed] = []
    for name in certificate.rules.surveys:
        if name == "renewal":
            found.append(renewal_state(certificate.expires, on, None, certificate.postponed_until))
        else:
            found += _between_issue_and_expiry(name, certificate, on)
    return [_survey(one, on) for one in found]


def _between_issue_and_expiry(name: str, certificate: Certificate, on: date) -> list[Placed]:
    begun = certificate.issued or date.min
    all_windows = windows(name, certificate.expires, certificate.rules.validity)
    # A certificate issued late in its period owes nothing for windows that had closed before it.
    owed = [window for window in all_windows if window.closes >= begun]
    return _credited(name, certificate, placed(owed, on, _last_done(certificate, name)))


def certificate_of_bottom(certificates: Rows) -> Mapping[str, str]:
    """Find the certificate in whose period the bottom is inspected.

    Parameters
    ----------
    certificates : mapping of str to mapping
        Id -> field -> text.

    Returns
    -------
    mapping of str to str
        Field -> text of the one of these that expires first; empty where none has its date.
    """
    found = []
    for certificate_id, fields in certificates.items():
        try:
            certificate = read_certificate(certificate_id, fields)
        # A date that cannot be read is told where certificates are listed.
        except BadCertificate:
            continue
        if certificate.rules.bottom and certificate.expires is not None:
            found.append((certificate.expires, certificate_id))
    return certificates[min(found)[1]] if found else {}


def _survey(found: Placed, on: date) -> Survey:
    window = found.window
    left = (window.closes - on).days
    return Survey(window.survey, window.number, window.opens, window.closes, found.state, left)


def _credited(name: str, certificate: Certificate, found: tuple[Placed, ...]) -> list[Placed]:
    """The windows; an intermediate or periodical survey fulfils the annual one it is in."""
    other = certificate.last_intermediate
    if name != "annual" or other is None:
        return list(found)
    return [_credited_window(one, other) for one in found]


def _credited_window(found: Placed, done: date) -> Placed:
    inside = found.window.opens <= done <= found.window.closes
    return Placed(found.window, "done") if inside else found


def _last_done(certificate: Certificate, survey: str) -> date | None:
    """When a survey of that kind, or one that fulfils it, was last done."""
    # The radio survey comes every year, and is endorsed where annual ones are.
    if survey == "periodical, radio":
        return certificate.last_annual
    if survey != "annual":
        return certificate.last_intermediate
    # An intermediate survey contains the annual one of its year.
    known = [day for day in (certificate.last_annual, certificate.last_intermediate) if day]
    return max(known, default=None)


def _bottom(certificate: Certificate, on: date) -> Iterator[Survey]:
    """The next inspection of the bottom, where this kind needs one and the last is recorded."""
    if not certificate.rules.bottom or certificate.last_bottom is None:
        return
    due, why = bottom_due(
        certificate.last_bottom,
        certificate.bottom_before_that,
        certificate.expires,
        certificate.postponed_until,
        certificate.rules.bottom == "passenger",
    )
    left = (due - on).days
    # It has a last day and no window: earlier is always allowed.
    yield Survey("bottom", 0, None, due, _state_of_last_day(left), left, why=why)


def _state_of_last_day(left: int) -> str:
    if left < 0:
        return "overdue"
    return "due" if left <= SOON else "not yet"
