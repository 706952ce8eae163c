"""Service dates of fire and life-saving gear: due, due soon or overdue on the day, and printed dates of expiry."""

from datetime import date, timedelta

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.months import add_months, clipped
from inspector.criteria.service_intervals import AGED_SUIT, AGED_SUIT_MONTHS, AGED_SUIT_YEARS, INTERVALS, PRINTED, Interval
from inspector.criteria.source import Source
from inspector.criteria.survey_windows import SOON
from inspector.words import capital

SUIT_TEST = "immersion suit, pressure test"
TABLE = Source(
    "Intervals of service of fire and life-saving appliances", "editions as named by each kind", "the longest interval that each text allows", "seen"
)
DATES = Source("Printed dates of life-saving appliances", "editions as named by each kind", "date of expiry", "seen")
STAMPS = "A stamp of month and year: take the first of the month for a service, the last for an expiry."
COSTS = "Whatever falls due within a year of delivery is the buyer's cost."


def due_date(last: date, interval: Interval) -> date:
    """Return the day a service falls due, counted from the last one.

    Examples
    --------
    >>> due_date(date(2025, 8, 31), Interval(6, TABLE)), due_date(date(2025, 1, 31), Interval(0, TABLE, days=30))
    (datetime.date(2026, 2, 28), datetime.date(2025, 3, 2))
    """
    return last + timedelta(days=interval.days) if interval.days else add_months(last, interval.months)


def interval_of(kind: str, on: date, made: date | None) -> Interval:
    """Return the interval of a kind; the suit's test is shortened above ten years of age."""
    if kind == SUIT_TEST and made is not None and on > add_months(made, AGED_SUIT_YEARS * 12):
        return Interval(AGED_SUIT_MONTHS, AGED_SUIT, note="Shortened, since the suit is more than ten years old.")
    return INTERVALS[kind]


def date_band(left: int, in_window: bool = False) -> tuple[str, str, str]:
    """Return band, rating and words for the days left until a date."""
    if left > SOON:
        return "in date", "good", f"{left} days away"
    if left >= 0:
        return "due soon", "fair", "today" if left == 0 else f"{left} days away"
    if in_window:
        return "in its window", "fair", f"{-left} days past, within the months that the text allows after it"
    return "overdue", "failed", f"{-left} days past"


def judge_service(last: date, kind: str, on: date, made: date | None = None) -> Judgement:
    """Judge whether a service or test is in date.

    Parameters
    ----------
    last : date of the last accepted service (of making, where never serviced); kind : one of INTERVALS; on : the day; made : date of making.

    Returns
    -------
    Judgement : value the days left [days], negative where overdue; limit 0.

    Errors
    ------
    CannotJudge : the last service lies after the day, or before the making.

    References
    ----------
    Each kind carries its own source and mark (service_intervals.py). Due on the day itself is still in date; due within 90 days is fair.
    """
    if last > on:
        refuse("service-due", "last", last, f"a service of {last.isoformat()} lies after the day, {on.isoformat()}")
    if made is not None and made > last:
        refuse("service-due", "made", made, f"an item made on {made.isoformat()} cannot have been serviced on {last.isoformat()}")
    interval = interval_of(kind, on, made)
    due = due_date(last, interval)
    left = (due - on).days
    band, rating, words = date_band(left, bool(interval.grace) and on <= add_months(due, interval.grace))
    sentence = f"{capital(kind)}: last on {last.isoformat()}, due by {due.isoformat()}, {words} on {on.isoformat()}."
    held = ("The day was held at the end of a shorter month.",) if not interval.days and clipped(last, interval.months) else ()
    notes = (*((interval.note,) if interval.note else ()), *held, STAMPS, COSTS)
    return Judgement("service-due", band, rating, left, "days", 0, left, sentence, interval.source, notes)


def judge_expiry(expires: date, kind: str, on: date) -> Judgement:
    """Judge a printed date of expiry.

    Parameters
    ----------
    expires : as printed, the last of the month where no day is given; kind : one of PRINTED; on : the day.

    Returns
    -------
    Judgement : value the days left [days], negative where expired; limit 0.

    References
    ----------
    The maker's printed date; battery of the EPIRB by SOLAS IV/15.9, dated contents of rafts by MSC.388(94) (seen), the others memory.
    """
    left = (expires - on).days
    band, rating, words = date_band(left)
    band = "expired" if band == "overdue" else band
    sentence = f"{capital(kind)}: printed {expires.isoformat()}, {words} on {on.isoformat()}."
    return Judgement("printed-expiry", band, rating, left, "days", 0, left, sentence, PRINTED[kind], (STAMPS, COSTS))


def earliest(dates: dict[str, date]) -> tuple[str, date]:
    """Return which of several due dates governs a unit, and the date; a raft is only as good as its release, gas and rations.

    Examples
    --------
    >>> earliest({"raft": date(2027, 3, 1), "release": date(2026, 12, 1), "rations": date(2027, 1, 31)})
    ('release', datetime.date(2026, 12, 1))
    """
    name = min(dates, key=lambda one: dates[one])
    return name, dates[name]


_SPAN = {"low": date(1960, 1, 1), "high": date(2200, 12, 31)}

CRITERIA = (
    Criterion(
        "service-due",
        "Is a service or test in date",
        (
            Input("last", "Last service or test", "date", **_SPAN),
            Input("kind", "What was serviced", "choice", choices=tuple(INTERVALS)),
            Input("on", "Day", "date", **_SPAN),
            Input("made", "Made", "date", optional=True, **_SPAN),
        ),
        TABLE,
        judge_service,
        "The kinds of service listed, dates from 1960 to 2200.",
        "Due dates at month ends and leap days, each state from both sides; each kind's interval against its text where seen.",
    ),
    Criterion(
        "printed-expiry",
        "Has a printed date passed",
        (
            Input("expires", "Printed date", "date", **_SPAN),
            Input("kind", "On what", "choice", choices=tuple(PRINTED)),
            Input("on", "Day", "date", **_SPAN),
        ),
        DATES,
        judge_expiry,
        "Dated life-saving items, dates from 1960 to 2200.",
        "Each state from both sides.",
    ),
)
