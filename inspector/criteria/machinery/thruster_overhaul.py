"""Hours and years of a thruster since its overhaul, against usual practice.

Bearings and gears wear by the hour, seals age by the year: whichever comes first ends the interval.
"""

from collections.abc import Mapping
from datetime import date

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

SOURCE = Source(
    "Interval of a thruster between two overhauls",
    "no publisher",
    "20 000 h or ten years, whichever comes first",
    "common practice",
)
LIMITS = LimitSet(
    "Thruster between two overhauls",
    (
        settable_limit("hours", "bearings and gears within", "h", 20_000.0, 1000, 100_000),
        settable_limit("years", "seals within", "years", 10.0, 1, 25),
    ),
    SOURCE,
)
LATE = 1.25  # times the interval, after which an overhaul is overdue: our own cut
NOTES = (
    "The maker's interval wins. Seals renewed afloat leave bearings and gears as they were: then "
    "the last lift into a shop counts.",
)


def past_by(since: float, overhauled: date, on: date, hours: float, years: float) -> str:
    """Return which end of an interval is past.

    Parameters
    ----------
    since : float
        Running hours since the overhaul [h].
    overhauled, on : date
        Day of the overhaul and of the visit.
    hours : float
        How many the interval has [h].
    years : float
        How many the interval has [years].

    Returns
    -------
    str
        "by its hours", "by its years", "by its hours and years", or "" where none is.

    Examples
    --------
    >>> past_by(9400, date(2012, 4, 3), date(2026, 11, 25), 20_000, 10)
    'by its years'
    """
    ended = []
    if since > hours:
        ended.append("hours")
    if on > add_months(overhauled, round(12 * years)):
        ended.append("years")
    return f"by its {' and '.join(ended)}" if ended else ""


def judge_overhaul(
    since: float, overhauled: date, on: date, limits: Mapping[str, float]
) -> Judgement:
    """Judge how long ago a tunnel or retractable thruster was overhauled.

    Parameters
    ----------
    since : float
        Running hours since the overhaul [h].
    overhauled : date
        Last overhaul in a shop.
    on : date
        Date of the visit.
    limits : mapping of str to float
        The limits of ``LIMITS``.

    Returns
    -------
    Judgement
        Good; fair past either end; poor past one and a quarter of it.

    References
    ----------
    Common practice: 20 000 h or ten years; one and a quarter of it is our own cut.
    """
    if overhauled > on:
        refuse(
            "overhauled",
            overhauled,
            f"an overhaul of {overhauled.isoformat()} lies after the visit on {on.isoformat()}",
        )
    interval = (limits["hours"], limits["years"])
    due = past_by(since, overhauled, on, *interval)
    overdue = past_by(since, overhauled, on, *(LATE * end for end in interval))
    if overdue:
        band, rating, meaning = "overdue", "poor", f"far past it {overdue}"
    elif due:
        band, rating, meaning = "due", "fair", f"past it {due}"
    else:
        band, rating, meaning = "within its interval", "good", "within it"
    sentence = (
        f"{show(since, 'h')} since the overhaul of {overhauled.isoformat()}, against "
        f"{show(limits['hours'], 'h')} or {show(limits['years'], 'years')}, is {meaning}."
    )
    margin = limits["hours"] - since
    return Judgement(band, rating, since, "h", limits["hours"], margin, sentence, NOTES)


CRITERIA = (
    Criterion(
        "thruster-overhaul",
        "Hours and years of a thruster since its overhaul",
        (
            number_field("since", "Hours since that overhaul", "h", 0, 200_000),
            Field("overhauled", "Last overhaul in a shop", "date"),
            Field("on", "Date of the visit", "date"),
        ),
        SOURCE,
        judge_overhaul,
        "Tunnel and retractable thrusters with a dated overhaul, not after the visit.",
        "Both ends from both sides; trade guidance, no published example exists.",
        limit_set=LIMITS,
    ),
)
