"""Tests of breakers and relays by their age: as often as the trade does them.

No convention gives a number.
"""

from collections.abc import Mapping
from datetime import date, timedelta

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.limit_sets import LimitSet, limit_prefix, settable_limit
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field
from inspector.values.formatting import show

SOURCE = Source.common_practice(
    "Intervals of tests on switchboards", "owner's plan and class survey govern"
)
# test -> months between two of them
INTERVALS = {
    "breaker by hand": 12,
    "emergency start and changeover": 1,
    "thermal survey": 12,
    "air breaker service": 24,
    "trip injection": 60,
    "reverse power and overcurrent function": 12,
    "relay injection": 60,
    "moulded-case trip": 60,
}
PROFILE = LimitSet(
    "Usual intervals of tests on switchboards",
    tuple(
        settable_limit(limit_prefix(test), test, "months", float(months), 1, 180)
        for test, months in INTERVALS.items()
    ),
    SOURCE,
)
LATE = 1.25  # times the interval, after which a test is overdue: our own cut
DAYS = 30.4375  # of a mean month, for the part of a month that 1.25 intervals leave


def later(last: date, months: float) -> date:
    """Return the date so many months later; part of a month is counted in days of a mean month.

    Parameters
    ----------
    last : date
        Last test.
    months : float
        Months, whole or not.

    Returns
    -------
    date

    Examples
    --------
    >>> later(date(2021, 3, 14), 60), later(date(2021, 3, 14), 75)
    (datetime.date(2026, 3, 14), datetime.date(2027, 6, 14))
    """
    # Whole months by the calendar, so that the day of the month stays, and only the rest in days.
    return add_months(last, int(months)) + timedelta(days=round((months - int(months)) * DAYS))


def judge_test(last: date, on: date, test: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the age of the last test of a breaker, relay or emergency start.

    Parameters
    ----------
    last : date
        Last test.
    on : date
        Date of the visit.
    test : str
        Which test, one of ``INTERVALS``.
    limits : mapping of str to float
        The limits of ``PROFILE``.

    Returns
    -------
    Judgement

    References
    ----------
    Common practice; due after one interval, overdue after one and a quarter (our own cut).
    """
    # By the surveyor's own plan where he set one: no text gives a number.
    interval = limits[limit_prefix(test)]
    due, overdue = later(last, interval), later(last, LATE * interval)
    if on <= due:
        band, rating, meaning = "in date", "good", "in date"
    elif on <= overdue:
        band, rating, meaning = "due", "fair", f"due since {due.isoformat()}"
    else:
        band, rating, meaning = "overdue", "poor", f"overdue since {overdue.isoformat()}"
    age, limit = (on - last).days, (due - last).days
    sentence = (
        f"'{test.capitalize()}' last on {last.isoformat()}, every {show(interval, 'months')} "
        f"by usual practice, is {meaning}."
    )
    notes = (
        "No paper means unproven, never in date: then record what could not be "
        "shown instead of a date.",
    )
    return Judgement(band, rating, age, "days", limit, limit - age, sentence, notes)


CRITERIA = (
    Criterion(
        "protection-test-age",
        "Age of a test of switchboard protection",
        (
            Field("last", "Last test", "date"),
            Field("on", "Date of the visit", "date"),
            Field("test", "Which test", "choice", choices=tuple(INTERVALS)),
        ),
        SOURCE,
        judge_test,
        "Tests shown by a dated paper, not after the visit.",
        "One injection test by our own arithmetic, both ends from both sides.",
        limit_set=PROFILE,
        orders=(Order("last", AT_MOST, "on", "a test still to come proves nothing on the visit"),),
    ),
)
