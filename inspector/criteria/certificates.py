"""Criteria for certificates: is a survey in its window, done or overdue on the day, and when is the bottom due again.

KINDS lists the papers of a workboat with the surveys that keep each alive; thresholds of tonnage are reminders and stand in the report, not here.
"""

from dataclasses import dataclass
from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.months import add_months
from inspector.criteria.source import Source
from inspector.criteria.survey_windows import MARGIN, SOON, SURVEYS, Placed, bottom_due, extensions, governing, placed, renewal_state, windows

HARMONISED = Source(
    "SOLAS I/7 to I/10 and I/14, harmonised system of survey",
    "survey guidelines A.1104(29), extracts read in public copies",
    "windows of three months, renewal and extension",
    "seen",
)
MANAGEMENT = Source(
    "ISM Code 13, ISPS Code A/19, labour convention 5.1.3",
    "ISM read in a public copy, the others recalled",
    "verification between the 2nd and 3rd anniversary",
    "memory",
)
CLASS = Source("IACS UR Z7, hull classification surveys", "recalled", "intermediate at or between the 2nd and 3rd annual", "memory")
BOTTOM = Source("SOLAS I/10(a)(v), inspections of the outside of the bottom", "recalled", "two in five years, not more than 36 months apart", "memory")
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
TOLD = {
    "overdue": "overdue",
    "no evidence": "without evidence that it was done",
    "due": "due within a month",
    "in window": "in its window",
    "postponed": "postponed",
    "done late": "done, but late: ask how the gap was settled",
    "not yet": "not yet in its window",
    "done": "done",
}
REMINDER = "A reminder: flag, class and recognised organisation decide. Missed surveys end a certificate before its date; so does a change of flag."


@dataclass(frozen=True)
class Kind:
    """A paper: the surveys that keep it alive, months of validity (0: no date of expiry), and whether the bottom belongs to it."""

    surveys: tuple[str, ...] = ("renewal",)
    validity: int = 60
    bottom: str = ""  # "", "cargo" or "passenger"


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


def judge_survey(expires: date, survey: str, on: date, last: date | None = None, postponed_until: date | None = None) -> Judgement:
    """Judge one survey of a five-year certificate on a day.

    Parameters
    ----------
    expires : of the certificate; survey : one of SURVEYS; on : the day; last : when a survey of this kind was last done; postponed_until : an
    extension that the flag has granted.

    Returns
    -------
    Judgement : value the days left until the window closes [days], negative where past; limit 0.

    Errors
    ------
    CannotJudge : the last survey lies after the day, an extension before the expiry, or the day before the certificate's five years.

    References
    ----------
    SOLAS I/8 to I/10, I/14 (seen in extracts); ISM, ISPS, labour and class windows (memory), by the source named.
    """
    _check_dates(expires, on, last, postponed_until)
    found = renewal_state(expires, on, last, postponed_until) if survey == "renewal" else governing(placed(windows(survey, expires), on, last))
    window, left = found.window, (found.window.closes - on).days
    span = f"{window.opens.isoformat()} to {window.closes.isoformat()}"
    done = f", last on {last.isoformat()}" if last else ""
    sentence = f"On {on.isoformat()} the survey ({survey}{done}) with its window of {span} is {TOLD[found.state]}."
    return Judgement(
        "survey-window",
        found.state,
        RATED[found.state],
        left,
        "days",
        0,
        left,
        sentence,
        SOURCES.get(survey, HARMONISED),
        _survey_notes(found, expires, survey, on, last, postponed_until),
    )


def _check_dates(expires: date, on: date, last: date | None, postponed_until: date | None) -> None:
    begins = add_months(expires, -60)
    if on < begins:
        refuse("survey-window", "on", on, f"{on.isoformat()} lies before the five years that end on {expires.isoformat()}")
    if last is not None and last > on:
        refuse("survey-window", "last", last, f"a survey of {last.isoformat()} lies after the day, {on.isoformat()}")
    if postponed_until is not None and postponed_until < expires:
        refuse(
            "survey-window", "postponed_until", postponed_until, f"an extension to {postponed_until.isoformat()} ends before the expiry, {expires.isoformat()}"
        )


def _survey_notes(found: Placed, expires: date, survey: str, on: date, last: date | None, postponed_until: date | None) -> tuple[str, ...]:
    notes = []
    if found.window.held:
        notes.append("A day was held at the end of a shorter month: take the window as three days shorter at each end.")
    if survey == "renewal" and postponed_until is not None:
        farthest = extensions(expires)
        notes.append(
            f"Extensions end at most on {farthest['short voyages']} (short voyages), {farthest['voyage to a port of survey']} (to a port of survey), "
            f"{farthest['renewed, paper not aboard']} (renewed, paper not aboard)."
        )
    if last is not None and survey == "annual" and found.state in ("overdue", "due", "in window") and last < found.window.opens <= add_months(last, MARGIN):
        notes.append(
            f"A survey before its window may have moved the anniversary, to {add_months(last, MARGIN).isoformat()} at the latest: see the endorsement (memory)."
        )
    return (*notes, REMINDER)


def judge_bottom(
    last: date, on: date, ship: str, before_that: date | None = None, expires: date | None = None, postponed_until: date | None = None
) -> Judgement:
    """Judge when the outside of the bottom is due for inspection again.

    Parameters
    ----------
    last : last inspection, docked or in water; on : the day; ship : cargo or passenger; before_that : the one before; expires : of the safety or class
    certificate; postponed_until : an extension of it.

    Returns
    -------
    Judgement : value the days left [days], negative where overdue; limit 0.

    References
    ----------
    SOLAS I/10(a)(v): two in any five years, not more than 36 months apart; yearly on passenger ships (memory).
    """
    if last > on:
        refuse("bottom-inspection", "last", last, f"an inspection of {last.isoformat()} lies after the day, {on.isoformat()}")
    if before_that is not None and before_that > last:
        refuse("bottom-inspection", "before_that", before_that, f"{before_that.isoformat()} lies after the last inspection, {last.isoformat()}")
    due, why = bottom_due(last, before_that, expires, postponed_until, ship == "passenger")
    left = (due - on).days
    band, rating = ("overdue", "failed") if left < 0 else ("due", "fair") if left <= SOON else ("not yet", "good")
    words = {"overdue": "overdue", "due": "due within three months", "not yet": "not yet due"}[band]
    sentence = (
        f"The bottom, last inspected on {last.isoformat()}, is {words}: next by {due.isoformat()} ({why}), {abs(left)} days {'past' if left < 0 else 'away'}."
    )
    wide = ()
    if before_that is not None and ship == "cargo" and add_months(before_that, 36) < last:
        wide = (f"Between {before_that.isoformat()} and {last.isoformat()} lie more than 36 months: ask how that was settled.",)
    notes = (*wide, "One of the two is normally out of water, at the renewal; an inspection in water needs class and flag to agree.", REMINDER)
    return Judgement("bottom-inspection", band, rating, left, "days", 0, left, sentence, BOTTOM, notes)


_EARLIEST, _LATEST = date(1970, 1, 1), date(2200, 12, 31)


def _date(name: str, label: str, optional: bool = False) -> Input:
    return Input(name, label, "date", optional=optional, low=_EARLIEST, high=_LATEST)


CRITERIA = (
    Criterion(
        "survey-window",
        "Survey of a certificate on a day",
        (
            _date("expires", "Certificate expires"),
            Input("survey", "Which survey", "choice", choices=SURVEYS),
            _date("on", "Day"),
            _date("last", "Last survey of this kind", True),
            _date("postponed_until", "Postponed until", True),
        ),
        HARMONISED,
        judge_survey,
        "Five-year certificates of the harmonised system, days within their life and after it.",
        "Every window of a dated certificate, month ends and leap days, against an independent calendar library.",
    ),
    Criterion(
        "bottom-inspection",
        "Next inspection of the outside of the bottom",
        (
            _date("last", "Last inspection"),
            _date("on", "Day"),
            Input("ship", "Kind of ship", "choice", choices=("cargo", "passenger")),
            _date("before_that", "The inspection before", True),
            _date("expires", "Certificate expires", True),
            _date("postponed_until", "Postponed until", True),
        ),
        BOTTOM,
        judge_bottom,
        "Cargo and passenger ships whose last inspection is known.",
        "Dated cases from both sides of each bound; the rule is recalled.",
    ),
)
