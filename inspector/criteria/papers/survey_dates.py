"""Criteria for certificates: is a survey in its window, done or overdue on the day.

``KINDS`` lists the papers of a workboat with the surveys that keep each valid. Thresholds of
tonnage are reminders of the report and are not part of it.
"""

from dataclasses import dataclass
from datetime import date

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.orders import AT_LEAST, AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.criteria.papers.survey_windows import (
    MARGIN,
    SURVEYS,
    Placed,
    extended,
    extensions,
    governing,
    placed,
    renewal_state,
    windows,
)
from inspector.values.field import Field

HARMONISED = Source.seen(
    "SOLAS I/7 to I/10 and I/14, harmonised system of survey",
    "survey guidelines of 2015, A.1104(29), extracts read in public copies; superseded every two "
    "years since, A.1186(33) of 2023 recalled as the latest known: not compared",
    "windows of three months, renewal and extension",
)
EXPIRY = Source.seen(
    "SOLAS I/14, duration and validity of certificates",
    "14(d) and 14(e) as quoted in MSC-MEPC.5/Circ.1 and by a ship inspectors' page",
    "at most three months to reach a port of survey, five with the renewal survey completed",
)
MANAGEMENT = Source.recalled(
    "ISM Code 13, ISPS Code A/19, labour convention 5.1.3",
    "verification between the 2nd and 3rd anniversary",
    edition="ISM read in a public copy, the others recalled",
)
CLASS = Source.recalled(
    "IACS UR Z7, hull classification surveys", "intermediate at or between the 2nd and 3rd annual"
)
SOURCES = {"verification, SMC ISSC MLC": MANAGEMENT, "intermediate, class": CLASS}
RATED = {
    "overdue": "failed",
    "no evidence": "poor",
    "due": "fair",
    "in window": "fair",
    "postponed": "fair",
    "done late": "poor",
    "not yet": "good",
    "done": "good",
}
STATE_WORDS = {
    "overdue": "overdue",
    "no evidence": "without evidence that it was done",
    "due": "due within a month",
    "in window": "in its window",
    "postponed": "postponed",
    "done late": "done, but late: ask how the gap was settled",
    "not yet": "not yet in its window",
    "done": "done",
}
EXPIRED = "expired"
REMINDER = (
    "A reminder: flag, class and recognised organisation decide. Missed surveys end a "
    "certificate before its date; so does a change of flag."
)


@dataclass(frozen=True)
class Kind:
    """A paper: the surveys that keep it valid.

    Parameters
    ----------
    surveys : tuple of str
    validity : int
        Months; 0 where it has no date of expiry.
    bottom : str
        "cargo" or "passenger" where the inspections of the bottom belong to it.
    """

    surveys: tuple[str, ...] = ("renewal",)
    validity: int = 60
    bottom: str = ""


_FULL = ("annual", "intermediate", "renewal")
_VERIFIED = ("verification, SMC ISSC MLC", "renewal")
KINDS: dict[str, Kind] = {
    "class": Kind(("annual", "intermediate, class", "renewal"), bottom="cargo"),
    "load line": Kind(("annual", "renewal")),
    "safety construction": Kind(_FULL, bottom="cargo"),
    "safety equipment": Kind(("annual", "periodical, safety equipment", "renewal")),
    "safety radio": Kind(("periodical, radio", "renewal")),
    "passenger ship safety": Kind(validity=12, bottom="passenger"),
    "special purpose ship safety": Kind(_FULL, bottom="cargo"),
    "industrial personnel safety": Kind(_FULL),
    "polar ship": Kind(_FULL),
    "safety management": Kind(_VERIFIED),
    "ship security": Kind(_VERIFIED),
    "maritime labour": Kind(_VERIFIED),
    "oil pollution prevention": Kind(_FULL),
    "air pollution prevention": Kind(_FULL),
    "ballast water management": Kind(_FULL),
    "sewage pollution prevention": Kind(),
    "inventory of hazardous materials": Kind(),
    "United States certificate of inspection": Kind(("annual", "renewal")),
    "dynamic positioning statement": Kind(("annual", "renewal")),
    "insurance": Kind(validity=12),
    "sanitation": Kind(validity=6),
    "registry": Kind(validity=0),
    "tonnage": Kind(validity=0),
    "energy efficiency": Kind(validity=0),
    "anti-fouling": Kind(validity=0),
    "engine air pollution prevention": Kind(validity=0),
    "minimum safe manning": Kind(validity=0),
    "other": Kind(),
}


def judge_survey(
    expires: date,
    survey: str,
    on: date,
    last: date | None = None,
    postponed_until: date | None = None,
) -> Judgement:
    """Judge one survey of a five-year certificate on a day.

    Parameters
    ----------
    expires : date
        Certificate expires.
    survey : str
        Which survey, one of ``SURVEYS``.
    on : date
        Day.
    last : date, optional
        Last survey of this kind.
    postponed_until : date, optional
        Postponed until.

    Returns
    -------
    Judgement
        Value the days left until the window closes [days], negative where past; limit 0.

    Notes
    -----
    Past its expiry a certificate is expired and failed, whatever survey was done, until the end of
    an extension: three months at most, five with the completed renewal survey.

    Raises
    ------
    CannotJudge
        Where the last survey is after the day, an extension before the expiry, or the day before
        the five years of the certificate.

    References
    ----------
    SOLAS I/8 to I/10, I/14 (seen in extracts); ISM, ISPS, labour and class windows (from memory),
    by the source named.
    """
    _check_within_its_years(expires, on)
    placed_window = _state_on_day(expires, survey, on, last, postponed_until)
    if on > expires and placed_window.state == EXPIRED:
        return _expired(placed_window, expires, survey, on, last, postponed_until)
    state, window = placed_window.state, placed_window.window
    left = (window.closes - on).days
    span = f"{window.opens.isoformat()} to {window.closes.isoformat()}"
    done = f", last on {last.isoformat()}" if last else ""
    sentence = (
        f"On {on.isoformat()} the survey ({survey}{done}) with its window of {span} is "
        f"{STATE_WORDS[state]}."
    )
    notes = _survey_notes(placed_window, expires, survey, last, postponed_until)
    source = SOURCES.get(survey, HARMONISED)
    return Judgement(state, RATED[state], left, "days", 0, left, sentence, notes, source)


def _state_on_day(
    expires: date, survey: str, on: date, last: date | None, postponed_until: date | None
) -> Placed:
    """Return the window that decides, with its state, or EXPIRED past a certificate's validity."""
    if survey == "renewal":
        found = renewal_state(expires, on, last, postponed_until)
        return Placed(found.window, EXPIRED) if on > expires and found.state == "overdue" else found
    found = governing(placed(windows(survey, expires), on, last))
    if on <= expires:
        return found
    # of another survey than the renewal nothing is known of the renewal survey
    if not extended(expires, on, postponed_until, renewed=False):
        return Placed(found.window, EXPIRED)
    # an extended certificate is never better than its extension
    return Placed(found.window, "postponed") if RATED[found.state] == "good" else found


def _expired(
    placed_window: Placed,
    expires: date,
    survey: str,
    on: date,
    last: date | None,
    postponed_until: date | None,
) -> Judgement:
    """Return the judgement of a certificate that is past its expiry and any extension."""
    left = (expires - on).days
    done = f", last on {last.isoformat()}" if last else ""
    sentence = (
        f"On {on.isoformat()} the certificate that expired on {expires.isoformat()} is no longer "
        f"valid, whatever survey was done ({survey}{done}): ask for the one that replaced it."
    )
    notes = _survey_notes(placed_window, expires, survey, last, postponed_until)
    return Judgement(EXPIRED, "failed", left, "days", 0, left, sentence, notes, EXPIRY)


def _check_within_its_years(expires: date, on: date) -> None:
    """Refuse a day on which another certificate was in force."""
    begins = add_months(expires, -60)
    # before its five years another certificate was in force
    if on < begins:
        refuse(
            "on",
            on,
            f"{on.isoformat()} lies before the five years that end on {expires.isoformat()}",
        )


def _survey_notes(
    placed_window: Placed,
    expires: date,
    survey: str,
    last: date | None,
    postponed_until: date | None,
) -> tuple[str, ...]:
    """Return the notes on moved days, extensions and a moved anniversary."""
    window, notes = placed_window.window, []
    if window.clamped:
        notes.append(
            "A day was held at the end of a shorter month: take the window as three days shorter "
            "at each end."
        )
    # The farthest days are printed, since an extension is easily taken for longer than it may be.
    if postponed_until is not None:
        farthest = extensions(expires)
        notes.append(
            f"Extensions end at most on {farthest['short voyages']} (short voyages), "
            f"{farthest['voyage to a port of survey']} (to a port of survey), "
            f"{farthest['renewed, paper not aboard']} (renewed, paper not aboard)."
        )
    still_open = survey == "annual" and placed_window.state in ("overdue", "due", "in window")
    if still_open and last is not None:
        moved = add_months(last, MARGIN)
        if last < window.opens <= moved:
            notes.append(
                "A survey before its window may have moved the anniversary, to "
                f"{moved.isoformat()} at the latest: see the endorsement (memory)."
            )
    return (*notes, REMINDER)


_EARLIEST, _LATEST = date(1970, 1, 1), date(2200, 12, 31)


def date_field(name: str, label: str, optional: bool = False) -> Field:
    """Return the field of a date of surveys, from 1970 to 2200.

    Parameters
    ----------
    name, label : str
    optional : bool, optional

    Returns
    -------
    Field
    """
    return Field(name, label, "date", optional=optional, low=_EARLIEST, high=_LATEST)


CRITERIA = (
    Criterion(
        "survey-window",
        "Survey of a certificate on a day",
        (
            date_field("expires", "Certificate expires"),
            Field("survey", "Which survey", "choice", choices=SURVEYS),
            date_field("on", "Day"),
            date_field("last", "Last survey of this kind", True),
            date_field("postponed_until", "Postponed until", True),
        ),
        HARMONISED,
        judge_survey,
        "Five-year certificates of the harmonised system, days within their life and after it.",
        "Every window of a dated certificate, month ends and leap days, against an "
        "independent calendar library.",
        orders=(
            Order("last", AT_MOST, "on", "a survey still to come proves nothing on the day"),
            Order(
                "postponed_until",
                AT_LEAST,
                "expires",
                "a certificate is not extended to before its expiry",
            ),
        ),
    ),
)
