"""Service dates of fire and life-saving gear: due, due soon or overdue, and printed expiries."""

from datetime import date, timedelta

from inspector.criteria.core.calendar import add_months, clipped
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.criteria.papers.survey_windows import SOON
from inspector.criteria.safety.service_intervals import (
    AGED_SUIT,
    AGED_SUIT_MONTHS,
    AGED_SUIT_YEARS,
    INTERVALS,
    PRINTED,
    Interval,
)
from inspector.values.field import Field
from inspector.values.text import capital, counted

SUIT_TEST = "immersion suit, pressure test"
TABLE = Source.seen(
    "Intervals of service of fire and life-saving appliances",
    "editions as named by each kind",
    "the longest interval that each text allows",
)
DATES = Source.seen(
    "Printed dates of life-saving appliances", "editions as named by each kind", "date of expiry"
)
STAMPS = (
    "A stamp of month and year: take the first of the month for a service, the last for an expiry."
)
COSTS = "Whatever falls due within a year of delivery is the buyer's cost."


def due_date(last: date, interval: Interval) -> date:
    """Return the day a service falls due, counted from the last one.

    Parameters
    ----------
    last : date
        Last service or test.
    interval : Interval
        Interval of the service.

    Returns
    -------
    date

    Examples
    --------
    >>> due_date(date(2025, 8, 31), Interval(6, TABLE))
    datetime.date(2026, 2, 28)
    >>> due_date(date(2025, 1, 31), Interval(0, TABLE, days=30))
    datetime.date(2025, 3, 2)
    """
    return (
        # Months by the calendar; days only where the text itself counts days.
        last + timedelta(days=interval.days) if interval.days else add_months(last, interval.months)
    )


def interval_of(kind: str, on: date, made: date | None) -> Interval:
    """Return the interval of a kind; the suit's test is shortened above ten years of age.

    Parameters
    ----------
    kind : str
        What was serviced, one of the choices.
    on : date
        Day.
    made : date or None
        Made.

    Returns
    -------
    Interval
        Interval.
    """
    # the test of an old suit is more frequent by one flag only, which is named as the source
    aged = made is not None and on > add_months(made, AGED_SUIT_YEARS * 12)
    if kind == SUIT_TEST and aged:
        note = "Shortened, since the suit is more than ten years old."
        return Interval(AGED_SUIT_MONTHS, AGED_SUIT, note=note)
    return INTERVALS[kind]


def date_band(left: int, in_window: bool = False) -> tuple[str, str, str]:
    """Return band, rating and words for the days left until a date.

    Parameters
    ----------
    left : int
        Days left; negative where past.
    in_window : bool, optional
        Whether the day is in the months that the text allows after the date.

    Returns
    -------
    tuple of (str, str, str)
        Band, rating and words.
    """
    # Soon is our own choice of three months, in which a service can still be booked.
    if left > SOON:
        return "in date", "good", f"{counted(left, 'day')} away"
    if left >= 0:
        return "due soon", "fair", "today" if left == 0 else f"{counted(left, 'day')} away"
    if in_window:
        return (
            "in its window",
            "fair",
            f"{counted(-left, 'day')} past, within the months that the text allows after it",
        )
    return "overdue", "failed", f"{counted(-left, 'day')} past"


def judge_service(last: date, kind: str, on: date, made: date | None = None) -> Judgement:
    """Judge whether a service or test is in date.

    Parameters
    ----------
    last : date
        Last service or test.
    kind : str
        What was serviced, one of ``INTERVALS``.
    on : date
        Day.
    made : date, optional
        Made.

    Returns
    -------
    Judgement
        Value the days left [days], negative where overdue; limit 0.

    Raises
    ------
    CannotJudge
        Where the last service is after the day, or before the making.

    References
    ----------
    Each kind carries its own source and mark (service_intervals.py). Due on the day itself is still
    in date; due within 90 days is fair.
    """
    interval = interval_of(kind, on, made)
    due = due_date(last, interval)
    left = (due - on).days
    # some texts allow months after the due date, in which nothing is overdue
    in_window = bool(interval.grace) and on <= add_months(due, interval.grace)
    band, rating, words = date_band(left, in_window)
    sentence = (
        f"{capital(kind)}: last on {last.isoformat()}, due by {due.isoformat()}, {words} on "
        f"{on.isoformat()}."
    )
    notes = [STAMPS, COSTS]
    if not interval.days and clipped(last, interval.months):
        notes.insert(0, "The day was held at the end of a shorter month.")
    if interval.note:
        notes.insert(0, interval.note)
    return Judgement(band, rating, left, "days", 0, left, sentence, tuple(notes), interval.source)


def judge_expiry(expires: date, kind: str, on: date) -> Judgement:
    """Judge a printed date of expiry.

    Parameters
    ----------
    expires : date
        Printed date.
    kind : str
        On what, one of ``PRINTED``.
    on : date
        Day.

    Returns
    -------
    Judgement
        Value the days left [days], negative where expired; limit 0.

    References
    ----------
    The maker's printed date; battery of the EPIRB by SOLAS IV/15.9, dated contents of rafts by
    MSC.388(94) (seen), the others memory.
    """
    left = (expires - on).days
    band, rating, words = date_band(left)
    # A printed date is nobody's duty that was missed.
    band = "expired" if band == "overdue" else band
    sentence = f"{capital(kind)}: printed {expires.isoformat()}, {words} on {on.isoformat()}."
    return Judgement(
        band, rating, left, "days", 0, left, sentence, (STAMPS, COSTS), source=PRINTED[kind]
    )


_SPAN = {"low": date(1960, 1, 1), "high": date(2200, 12, 31)}

CRITERIA = (
    Criterion(
        "service-due",
        "Is a service or test in date",
        (
            Field("last", "Last service or test", "date", **_SPAN),
            Field("kind", "What was serviced", "choice", choices=tuple(INTERVALS)),
            Field("on", "Day", "date", **_SPAN),
            Field("made", "Made", "date", optional=True, **_SPAN),
        ),
        TABLE,
        judge_service,
        "The kinds of service listed, dates from 1960 to 2200.",
        "Due dates at month ends and leap days, each state from both sides; each "
        "kind's interval against its text where seen.",
        orders=(
            Order("last", AT_MOST, "on", "a service still to come proves nothing on the day"),
            Order("made", AT_MOST, "last", "nothing is serviced before it is made"),
        ),
    ),
    Criterion(
        "printed-expiry",
        "Has a printed date passed",
        (
            Field("expires", "Printed date", "date", **_SPAN),
            Field("kind", "On what", "choice", choices=tuple(PRINTED)),
            Field("on", "Day", "date", **_SPAN),
        ),
        DATES,
        judge_expiry,
        "Dated life-saving items, dates from 1960 to 2200.",
        "Each state from both sides.",
    ),
)
