"""Surveys and papers of dynamic positioning by their dates: annual and five-yearly tests, the verification document, the failure analysis."""

from collections.abc import Mapping
from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.months import add_months
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.protection import later
from inspector.criteria.source import Source

SURVEYS = Source(
    "MSC/Circ.645 and MSC.1/Circ.1580, Guidelines for vessels with dynamic positioning",
    "1994 and 2017",
    "surveys and testing: annual within 3 months of the anniversary, complete at 5 years at most",
    "seen",
)
DOCUMENT = Source("MSC/Circ.645, Guidelines for vessels with dynamic positioning systems", "1994", "verification and acceptance document", "seen")
ANALYSIS = Source("Failure analysis of dynamic positioning systems", "no publisher", "kept with the plant, reviewed at five years", "common practice")
ANALYSIS_PROFILE = Profile("Usual review of a failure analysis", (Limit("review", "review after", "months", 60.0, 6, 180),), ANALYSIS)
WINDOW, PERIOD = 3, 60  # months
FLAG_KEPT, FLAG_CHANGED = "unchanged", "changed or to be changed"
NO_ALTERATION, SANCTIONED, UNSANCTIONED = "none", "with sanction", "without sanction"
TRIALS = ("A date alone is not the trial: read its report, count the findings still open, and ask what was changed since.",)


def windows(anniversary: date, on: date) -> tuple[tuple[date, date], tuple[date, date]]:
    """Return the annual window that closed last before the visit and the one after it.

    Examples
    --------
    >>> windows(date(2020, 12, 10), date(2026, 11, 25))[1]
    (datetime.date(2026, 9, 10), datetime.date(2027, 3, 10))
    """
    year = on.year - anniversary.year
    found = [add_months(anniversary, 12 * (year + step)) for step in (-2, -1, 0, 1)]
    last = max(day for day in found if add_months(day, WINDOW) < on)
    following = add_months(anniversary, 12 * (last.year - anniversary.year + 1))
    return tuple((add_months(day, -WINDOW), add_months(day, WINDOW)) for day in (last, following))


def _not_after(name: str, last: date, on: date, what: str) -> None:
    if last > on:
        refuse(name, "last", last, f"{what} of {last.isoformat()} lies after the visit on {on.isoformat()}")


def judge_annual(last: date, anniversary: date, on: date) -> Judgement:
    """Judge whether the annual survey of the positioning system was made in its window.

    Parameters: last : date of the last annual survey; anniversary : day and month of the verification document, in any year; on : date of the visit.

    References: MSC/Circ.645 and MSC.1/Circ.1580 (seen): within three months before or after each anniversary.
    """
    name = "dp-annual-survey"
    _not_after(name, last, on, "a survey")
    (closed_from, closed_to), (open_from, open_to) = windows(anniversary, on)
    if last < closed_from:
        band, rating = "missed", "failed"
        window = f"from {closed_from.isoformat()} to {closed_to.isoformat()}"
        meaning = f"no survey in the window {window}: ask whether the class still stands, and price in a full trial"
    elif open_from <= on and last < open_from:
        band, rating, meaning = (
            "due now",
            "fair",
            f"the window from {open_from.isoformat()} to {open_to.isoformat()} is open and the survey is still to be made",
        )
    else:
        band, rating, meaning = "in date", "good", f"in date; the next window runs from {open_from.isoformat()} to {open_to.isoformat()}"
    sentence = f"Annual survey of the positioning system last on {last.isoformat()}: {meaning}."
    return Judgement(name, band, rating, None, None, None, None, sentence, SURVEYS, TRIALS)


def judge_periodical(last: date, on: date) -> Judgement:
    """Judge the age of the last complete test of the positioning system.

    Parameters: last : its date; on : date of the visit.

    References: MSC/Circ.645 and MSC.1/Circ.1580 (seen): complete test at intervals of five years at most.
    """
    name = "dp-periodical-survey"
    _not_after(name, last, on, "a test")
    due = add_months(last, PERIOD)
    band, rating, meaning = ("in date", "good", f"in date until {due.isoformat()}") if on <= due else ("overdue", "failed", f"overdue since {due.isoformat()}")
    age, limit = (on - last).days, (due - last).days
    sentence = f"Complete test of the positioning system last on {last.isoformat()}, at five years at most, is {meaning}."
    return Judgement(name, band, rating, age, "days", limit, limit - age, sentence, SURVEYS, TRIALS)


def judge_document(flag: str, alteration: str) -> Judgement:
    """Judge whether the verification document of a positioning system still stands.

    Parameters: flag : unchanged, or changed or to be changed; alteration : none, with sanction or without sanction.

    References: MSC/Circ.645 (seen): it lapses on a change of flag and after significant alteration without sanction.
    """
    lapses = [why for why, true in (("on the change of flag", flag == FLAG_CHANGED), ("by the unsanctioned alteration", alteration == UNSANCTIONED)) if true]
    band, rating = ("lapses", "failed") if lapses else ("stands", "good")
    meaning = f"lapses {' and '.join(lapses)}" if lapses else "stands, if its surveys are in date"
    sentence = f"The verification document of the positioning system (flag {flag}, alteration {alteration}) {meaning}."
    notes = ("A buyer who re-flags and strips thrusters keeps equipment, not a class.",)
    return Judgement("dp-document", band, rating, None, None, None, None, sentence, DOCUMENT, notes)


def judge_analysis(dated: date, on: date, limits: Mapping[str, float], changed: date | None = None) -> Judgement:
    """Judge whether the failure analysis still describes the plant.

    Parameters: dated : of the failure analysis; on : date of the visit; changed : last change to the positioning plant, if any;
    limits : review [months].

    References: common practice; that classes 2 and 3 need one stands in MSC.1/Circ.1580 5.1.1 (seen).
    """
    name = "dp-failure-analysis"
    if dated > on:
        refuse(name, "dated", dated, f"an analysis of {dated.isoformat()} lies after the visit on {on.isoformat()}")
    review = later(dated, limits["review"])
    if changed is not None and changed > dated:
        band, rating, meaning = "older than the plant", "poor", f"older than the change of {changed.isoformat()}, so it describes another plant"
    elif on > review:
        band, rating, meaning = "to be reviewed", "fair", f"to be reviewed since {review.isoformat()}"
    else:
        band, rating, meaning = "in date", "good", f"in date until {review.isoformat()}"
    age, limit = (on - dated).days, (review - dated).days
    sentence = f"A failure analysis of {dated.isoformat()}, reviewed every {limits['review']:g} months by usual practice, is {meaning}."
    return Judgement(name, band, rating, age, "days", limit, limit - age, sentence, ANALYSIS, TRIALS)


_ON = Input("on", "Date of the visit", "date")
CRITERIA = (
    Criterion(
        "dp-annual-survey",
        "Annual survey of dynamic positioning",
        (Input("last", "Last annual survey", "date"), Input("anniversary", "Anniversary of the verification document", "date"), _ON),
        SURVEYS,
        judge_annual,
        "Vessels with a verification document; the survey not after the visit.",
        "One window by our own arithmetic, both ends from both sides.",
    ),
    Criterion(
        "dp-periodical-survey",
        "Complete test of dynamic positioning",
        (Input("last", "Last complete test", "date"), _ON),
        SURVEYS,
        judge_periodical,
        "Vessels with a verification document; the test not after the visit.",
        "The five years from both sides by our own arithmetic.",
    ),
    Criterion(
        "dp-document",
        "Verification document of dynamic positioning",
        (
            Input("flag", "Flag", "choice", choices=(FLAG_KEPT, FLAG_CHANGED)),
            Input("alteration", "Significant alteration since", "choice", choices=(NO_ALTERATION, SANCTIONED, UNSANCTIONED)),
        ),
        DOCUMENT,
        judge_document,
        "Vessels with a verification document by MSC/Circ.645; the 2017 text is taken alike.",
        "Both published grounds of lapse, alone and together.",
    ),
    Criterion(
        "dp-failure-analysis",
        "Failure analysis of dynamic positioning",
        (Input("dated", "Date of the analysis", "date"), Input("changed", "Last change to the plant", "date", optional=True), _ON),
        ANALYSIS,
        judge_analysis,
        "Classes 2 and 3; the analysis not after the visit.",
        "Both ends from both sides by our own arithmetic.",
        profile=ANALYSIS_PROFILE,
    ),
)
