"""Tests of breakers and relays by their age: as often as the trade does them, since no convention gives a number."""

from collections.abc import Mapping
from datetime import date, timedelta

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.months import add_months
from inspector.criteria.profiles import Limit, Profile, key
from inspector.criteria.source import Source

SOURCE = Source("Intervals of tests on switchboards", "no publisher", "owner's plan and class survey govern", "common practice")
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
PROFILE = Profile(
    "Usual intervals of tests on switchboards", tuple(Limit(key(test), test, "months", float(months), 1, 180) for test, months in INTERVALS.items()), SOURCE
)
LATE = 1.25  # times the interval, after which a test is overdue: our own cut
DAYS = 30.4375  # of a mean month, for the part of a month that 1.25 intervals leave


def later(last: date, months: float) -> date:
    """Return the date so many months later; what is left of a whole month is counted in days of a mean month.

    Examples
    --------
    >>> later(date(2021, 3, 14), 60), later(date(2021, 3, 14), 75)
    (datetime.date(2026, 3, 14), datetime.date(2027, 6, 14))
    """
    return add_months(last, int(months)) + timedelta(days=round((months - int(months)) * DAYS))


def judge_test(last: date, on: date, test: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the age of the last test of a breaker, relay or emergency start.

    Parameters: last : its date by the paper; on : date of the visit, not before; test : one of INTERVALS; limits : months by test.

    References: common practice; due after one interval, overdue after one and a quarter (our own cut).
    """
    if last > on:
        refuse("protection-test-age", "last", last, f"a test of {last.isoformat()} lies after the visit on {on.isoformat()}")
    interval = limits[key(test)]
    due, overdue = later(last, interval), later(last, LATE * interval)
    if on <= due:
        band, rating, meaning = "in date", "good", "in date"
    elif on <= overdue:
        band, rating, meaning = "due", "fair", f"due since {due.isoformat()}"
    else:
        band, rating, meaning = "overdue", "poor", f"overdue since {overdue.isoformat()}"
    age, limit = (on - last).days, (due - last).days
    sentence = f"'{test.capitalize()}' last on {last.isoformat()}, every {interval:g} months by usual practice, is {meaning}."
    notes = ("No paper means unproven, never in date: then record what could not be shown instead of a date.",)
    return Judgement("protection-test-age", band, rating, age, "days", limit, limit - age, sentence, SOURCE, notes)


CRITERIA = (
    Criterion(
        "protection-test-age",
        "Age of a test of switchboard protection",
        (Input("last", "Last test", "date"), Input("on", "Date of the visit", "date"), Input("test", "Which test", "choice", choices=tuple(INTERVALS))),
        SOURCE,
        judge_test,
        "Tests shown by a dated paper, not after the visit.",
        "One injection test by our own arithmetic, both ends from both sides.",
        profile=PROFILE,
    ),
)
