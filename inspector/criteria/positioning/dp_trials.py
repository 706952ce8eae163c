"""Surveys and papers of dynamic positioning by their dates.

Annual and five-yearly tests, the verification document, the failure analysis.
"""

from collections.abc import Mapping
from datetime import date

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.criteria.electrical.breaker_tests import later
from inspector.values.field import Field
from inspector.values.formatting import show

SURVEYS = Source.seen(
    "MSC/Circ.645 and MSC.1/Circ.1580, Guidelines for vessels with dynamic positioning",
    "1994 and 2017",
    "surveys and testing: annual within 3 months of the anniversary, complete at 5 years at most",
)
DOCUMENT = Source.seen(
    "MSC/Circ.645, Guidelines for vessels with dynamic positioning systems",
    "1994",
    "verification and acceptance document",
)
ANALYSIS = Source.common_practice(
    "Failure analysis of dynamic positioning systems", "kept with the plant, reviewed at five years"
)
ANALYSIS_PROFILE = LimitSet(
    "Usual review of a failure analysis",
    (settable_limit("review", "review after", "months", 60.0, 6, 180),),
    ANALYSIS,
)
WINDOW, PERIOD = 3, 60  # months
FLAG_KEPT, FLAG_CHANGED = "unchanged", "changed or to be changed"
NO_ALTERATION, SANCTIONED, UNSANCTIONED = "none", "with sanction", "without sanction"
TRIALS = (
    "A date alone is not the trial: read its report, count the findings still "
    "open, and ask what was changed since.",
)


def windows(anniversary: date, on: date) -> tuple[tuple[date, date], tuple[date, date]]:
    """Return the annual window that closed last before the visit and the one after it.

    Parameters
    ----------
    anniversary : date
        Anniversary of the verification document.
    on : date
        Date of the visit.

    Returns
    -------
    tuple of (tuple[date, date], tuple[date, date])
        First and last day of each window.

    Examples
    --------
    >>> windows(date(2020, 12, 10), date(2026, 11, 25))[1]
    (datetime.date(2026, 9, 10), datetime.date(2027, 3, 10))
    """
    # Two windows back and one ahead hold any day, whatever its place in the year.
    year = on.year - anniversary.year
    nearby = [add_months(anniversary, 12 * (year + offset)) for offset in (-2, -1, 0, 1)]
    last = max(day for day in nearby if add_months(day, WINDOW) < on)
    following = add_months(anniversary, 12 * (last.year - anniversary.year + 1))
    return tuple((add_months(day, -WINDOW), add_months(day, WINDOW)) for day in (last, following))


def judge_annual(last: date, anniversary: date, on: date) -> Judgement:
    """Judge whether the annual survey of the positioning system was made in its window.

    Parameters
    ----------
    last : date
        Last annual survey.
    anniversary : date
        Anniversary of the verification document.
    on : date
        Date of the visit.

    Returns
    -------
    Judgement

    References
    ----------
    MSC/Circ.645 and MSC.1/Circ.1580 (seen): within three months before or after each anniversary.
    """
    (closed_from, closed_to), (open_from, open_to) = windows(anniversary, on)
    # a survey made before the window that closed last does not count for it
    if last < closed_from:
        band, rating = "missed", "failed"
        meaning = (
            f"no survey in the window from {closed_from.isoformat()} to {closed_to.isoformat()}: "
            "ask whether the class is still valid, and price in a full trial"
        )
    elif open_from <= on and last < open_from:
        band, rating = "due now", "fair"
        meaning = (
            f"the window from {open_from.isoformat()} to {open_to.isoformat()} is open and the "
            "survey is still to be made"
        )
    else:
        band, rating = "in date", "good"
        meaning = (
            f"in date; the next window runs from {open_from.isoformat()} to {open_to.isoformat()}"
        )
    sentence = f"Annual survey of the positioning system last on {last.isoformat()}: {meaning}."
    return judgement_in_words(band, rating, sentence, TRIALS)


def judge_periodical(last: date, on: date) -> Judgement:
    """Judge the age of the last complete test of the positioning system.

    Parameters
    ----------
    last : date
        Last complete test.
    on : date
        Date of the visit.

    Returns
    -------
    Judgement

    References
    ----------
    MSC/Circ.645 and MSC.1/Circ.1580 (seen): complete test at intervals of five years at most.
    """
    due = add_months(last, PERIOD)
    if on <= due:
        band, rating, meaning = "in date", "good", f"in date until {due.isoformat()}"
    else:
        band, rating, meaning = "overdue", "failed", f"overdue since {due.isoformat()}"
    age, limit = (on - last).days, (due - last).days
    sentence = (
        f"Complete test of the positioning system last on {last.isoformat()}, at five years at "
        f"most, is {meaning}."
    )
    return Judgement(band, rating, age, "days", limit, limit - age, sentence, TRIALS)


def judge_document(flag: str, alteration: str) -> Judgement:
    """Judge whether the verification document of a positioning system is still valid.

    Parameters
    ----------
    flag : str
        Flag: unchanged or changed or to be changed.
    alteration : str
        Significant alteration since: none, with sanction or without sanction.

    Returns
    -------
    Judgement

    References
    ----------
    MSC/Circ.645 (seen): it lapses on a change of flag and after significant alteration without
    sanction.
    """
    # Both grounds may hold together, and the buyer can often avoid one of them.
    lapses = []
    if flag == FLAG_CHANGED:
        lapses.append("on the change of flag")
    if alteration == UNSANCTIONED:
        lapses.append("by the unsanctioned alteration")
    if lapses:
        band, rating, meaning = "lapses", "failed", f"lapses {' and '.join(lapses)}"
    else:
        band, rating, meaning = "valid", "good", "is valid, if its surveys are in date"
    sentence = (
        f"The verification document of the positioning system (flag {flag}, alteration "
        f"{alteration}) {meaning}."
    )
    notes = ("A buyer who re-flags and strips thrusters keeps equipment, not a class.",)
    return judgement_in_words(band, rating, sentence, notes)


def judge_analysis(
    dated: date, on: date, limits: Mapping[str, float], changed: date | None = None
) -> Judgement:
    """Judge whether the failure analysis still describes the plant.

    Parameters
    ----------
    dated : date
        Date of the analysis.
    on : date
        Date of the visit.
    limits : mapping of str to float
        The limits of ``ANALYSIS_PROFILE``.
    changed : date, optional
        Last change to the plant.

    Returns
    -------
    Judgement

    References
    ----------
    Common practice; classes 2 and 3 need one by MSC.1/Circ.1580 5.1.1 (seen).
    """
    review = later(dated, limits["review"])
    # a changed plant outdates its analysis, however young the analysis is
    if changed is not None and changed > dated:
        band, rating = "older than the plant", "poor"
        meaning = f"older than the change of {changed.isoformat()}, so it describes another plant"
    elif on > review:
        band, rating = "to be reviewed", "fair"
        meaning = f"to be reviewed since {review.isoformat()}"
    else:
        band, rating, meaning = "in date", "good", f"in date until {review.isoformat()}"
    age, limit = (on - dated).days, (review - dated).days
    sentence = (
        f"A failure analysis of {dated.isoformat()}, reviewed every "
        f"{show(limits['review'], 'months')} by usual practice, is {meaning}."
    )
    return Judgement(band, rating, age, "days", limit, limit - age, sentence, TRIALS)


_ON = Field("on", "Date of the visit", "date")
CRITERIA = (
    Criterion(
        "dp-annual-survey",
        "Annual survey of dynamic positioning",
        (
            Field("last", "Last annual survey", "date"),
            Field("anniversary", "Anniversary of the verification document", "date"),
            _ON,
        ),
        SURVEYS,
        judge_annual,
        "Vessels with a verification document; the survey not after the visit.",
        "One window by our own arithmetic, both ends from both sides.",
        orders=(
            Order("last", AT_MOST, "on", "a survey still to come proves nothing on the visit"),
        ),
    ),
    Criterion(
        "dp-periodical-survey",
        "Complete test of dynamic positioning",
        (Field("last", "Last complete test", "date"), _ON),
        SURVEYS,
        judge_periodical,
        "Vessels with a verification document; the test not after the visit.",
        "The five years from both sides by our own arithmetic.",
        orders=(Order("last", AT_MOST, "on", "a test still to come proves nothing on the visit"),),
    ),
    Criterion(
        "dp-document",
        "Verification document of dynamic positioning",
        (
            Field("flag", "Flag", "choice", choices=(FLAG_KEPT, FLAG_CHANGED)),
            Field(
                "alteration",
                "Significant alteration since",
                "choice",
                choices=(NO_ALTERATION, SANCTIONED, UNSANCTIONED),
            ),
        ),
        DOCUMENT,
        judge_document,
        "Vessels with a verification document by MSC/Circ.645; the 2017 text is taken alike.",
        "Both published grounds of lapse, alone and together.",
    ),
    Criterion(
        "dp-failure-analysis",
        "Failure analysis of dynamic positioning",
        (
            Field("dated", "Date of the analysis", "date"),
            Field("changed", "Last change to the plant", "date", optional=True),
            _ON,
        ),
        ANALYSIS,
        judge_analysis,
        "Classes 2 and 3; the analysis not after the visit.",
        "Both ends from both sides by our own arithmetic.",
        limit_set=ANALYSIS_PROFILE,
        orders=(
            Order("dated", AT_MOST, "on", "an analysis still to come proves nothing on the visit"),
            Order("changed", AT_MOST, "on", "a change still to come is none yet"),
        ),
    ),
)
