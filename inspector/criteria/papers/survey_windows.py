"""Survey windows of certificates by the harmonised system, always counted from the date of expiry.

The anniversary is the day and month of expiry, whatever the day of issue. The ends of a window
count as inside. No convention says what becomes of the day at the end of a shorter month: clamping
it is our choice, and a window made by it says so. The tool reminds; flag, class and recognised
organisation decide.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import zip_longest

from inspector.criteria.core.calendar import add_months, clipped

MARGIN = 3  # months either side of an anniversary
VALIDITY, BOTTOM_GAP, BOTTOM_PERIOD, PASSENGER_GAP = 60, 36, 60, 12  # months
SOON = 90  # days before a single date from which it is called due: our own choice
NEARLY = 30  # days before a window closes from which it is called due: our own choice
SURVEYS = (
    "annual",
    "intermediate",
    "periodical, safety equipment",
    "periodical, radio",
    "verification, SMC ISSC MLC",
    "intermediate, class",
    "renewal",
)
# worst first: the state of a certificate is the first that any of its surveys has
STATES = (
    "overdue",
    "no evidence",
    "due",
    "in window",
    "postponed",
    "done late",
    "not yet",
    "done",
    "not needed",
    "past",
)


@dataclass(frozen=True)
class Window:
    """When one survey may be done.

    Parameters
    ----------
    survey : str
        One of ``SURVEYS``.
    number : int
        The anniversary, 0 for a renewal.
    opens, closes : date
        Both are inside.
    clamped : bool
        Whether a shorter month moved a day.
    """

    survey: str
    number: int
    opens: date
    closes: date
    clamped: bool = False


@dataclass(frozen=True)
class Placed:
    """A window and its state on a day, one of STATES."""

    window: Window
    state: str


def anniversary(expires: date, number: int, validity: int = VALIDITY) -> date:
    """Return the first, second ... anniversary of a certificate, counted back from its expiry.

    Parameters
    ----------
    expires : date
        Expiry of the certificate.
    number : int
        1 for the first anniversary.
    validity : int, optional
        Validity of the certificate [months].

    Returns
    -------
    date

    Examples
    --------
    >>> anniversary(date(2028, 2, 29), 1), anniversary(date(2028, 2, 29), 3)
    (datetime.date(2024, 2, 29), datetime.date(2026, 2, 28))
    """
    # Counted back from the expiry, by which the anniversary date is defined.
    return add_months(expires, 12 * number - validity)


# two windows, of which one is used
ALTERNATIVES = ("intermediate", "periodical, safety equipment")


def windows(survey: str, expires: date, validity: int = VALIDITY) -> tuple[Window, ...]:
    """Return the windows of a survey until a certificate expires.

    Intermediate and periodical windows are two, of which one is used.

    Parameters
    ----------
    survey : str
        One of ``SURVEYS``.
    expires : date
        Expiry of the certificate.
    validity : int, optional
        Validity of the certificate [months].

    Returns
    -------
    tuple of (Window, ...)

    References
    ----------
    SOLAS I/8 to I/10 and I/14, survey guidelines of 2015, A.1104(29) (seen in part; A.1186(33)
    of 2023 not compared); verification
    between the 2nd and 3rd anniversary without months outside, by the ISM Code (seen), the ISPS
    Code and the labour convention (from memory); intermediate of class at or between the 2nd and
    3rd annual (UR Z7, memory).
    """
    if survey == "renewal":
        opens, clamped = add_months(expires, -MARGIN), clipped(expires, -MARGIN)
        return (Window(survey, 0, opens, expires, clamped),)
    if survey == "verification, SMC ISSC MLC":
        opens, closes = (anniversary(expires, number, validity) for number in (2, 3))
        return (Window(survey, 2, opens, closes, opens.day != expires.day),)
    around = [_around(survey, number, expires, validity) for number in range(1, validity // 12)]
    # of a certificate of a year or two nothing is left between the second and third anniversary
    second_and_third = around[1:3]
    if survey == "intermediate, class":
        if len(second_and_third) < 2:
            return ()
        second, third = second_and_third
        clamped = second.clamped or third.clamped
        return (Window(survey, 2, second.opens, third.closes, clamped),)
    if survey in ALTERNATIVES:
        return tuple(second_and_third)
    return tuple(around)


def _around(survey: str, number: int, expires: date, validity: int) -> Window:
    """Return the window around an anniversary."""
    middle = anniversary(expires, number, validity)
    clamped = middle.day != expires.day or clipped(middle, -MARGIN) or clipped(middle, MARGIN)
    return Window(survey, number, add_months(middle, -MARGIN), add_months(middle, MARGIN), clamped)


def placed(
    survey_windows: Sequence[Window], on: date, last: date | None = None
) -> tuple[Placed, ...]:
    """Return every window with its state on a day.

    Of two windows of which one is used, the other is not needed, or past once its second chance is
    all that is left.

    Parameters
    ----------
    survey_windows : sequence of Window
        Windows of one survey.
    on : date
        Day.
    last : date, optional
        Last survey of this kind.

    Returns
    -------
    tuple of (Placed, ...)
    """
    if len(survey_windows) == 2 and survey_windows[0].survey in ALTERNATIVES:
        return _placed_alternatives(*survey_windows, on, last)
    following = [window.opens for window in survey_windows[1:]]
    return tuple(
        Placed(window, _state(window, on, last, next_opens))
        for window, next_opens in zip_longest(survey_windows, following)
    )


def _placed_alternatives(
    first: Window, second: Window, on: date, last: date | None
) -> tuple[Placed, ...]:
    """Return two windows, of which one is used, with their states."""
    # Done at the second anniversary, the third one owes nothing.
    if last is not None and first.opens <= last <= first.closes:
        return Placed(first, "done"), Placed(second, "not needed")
    if last is not None and last >= second.opens:
        return Placed(first, "not needed"), Placed(second, _state(second, on, last, None))
    early = "past" if on > first.closes else _state(first, on, None, None)
    return Placed(first, early), Placed(second, _state(second, on, last, None))


def _state(window: Window, on: date, last: date | None, next_opens: date | None) -> str:
    """Return the state of one window on a day, one of ``STATES``."""
    if last is not None and last >= window.opens:
        if last <= window.closes:
            return "done"
        return "done late" if next_opens is None or last < next_opens else "past"
    # A survey before its window does not count for it, so it is not asked about yet.
    if on < window.opens:
        return "not yet"
    if on <= window.closes:
        return "due" if (window.closes - on).days <= NEARLY else "in window"
    # Nobody recorded a survey, which is not the same as none having been held.
    return "no evidence" if last is None else "overdue"


def governing(candidates: Sequence[Placed]) -> Placed:
    """Return the window that decides the state of a survey.

    It is the worst; of equals the earliest yet to come, or else the latest.

    Parameters
    ----------
    candidates : sequence of Placed
        Windows with their states.

    Returns
    -------
    Placed
    """
    worst = min(STATES.index(candidate.state) for candidate in candidates)
    same = [candidate for candidate in candidates if STATES.index(candidate.state) == worst]
    return same[0] if same[0].state in ("not yet", "in window", "due") else same[-1]


def renewal_state(
    expires: date, on: date, last: date | None = None, postponed_until: date | None = None
) -> Placed:
    """Return the state of the renewal on a day.

    After its expiry a certificate counts only until the end of an extension, whatever survey was
    done: a completed renewal is proved by the new certificate.

    Parameters
    ----------
    expires : date
        Expiry of the certificate.
    on : date
        Day.
    last : date, optional
        Last survey of this kind.
    postponed_until : date, optional
        End of an extension.

    Returns
    -------
    Placed
    """
    window = windows("renewal", expires)[0]
    if on <= expires:
        return Placed(window, _state(window, on, last, None))
    # Five months are for a ship whose new paper is only not aboard yet.
    renewed = last is not None and last >= window.opens
    return Placed(
        window, "postponed" if extended(expires, on, postponed_until, renewed) else "overdue"
    )


def extended(expires: date, on: date, postponed_until: date | None, renewed: bool) -> bool:
    """Return whether an extension keeps a certificate valid on a day after its expiry.

    Parameters
    ----------
    expires : date
        Expiry of the certificate.
    on : date
        Day.
    postponed_until : date or None
        End of an extension.
    renewed : bool
        Whether the renewal survey of this certificate is completed.

    Returns
    -------
    bool
        False beyond three months, or five with the renewal survey completed.

    References
    ----------
    SOLAS I/14(d), (e) (seen).

    Examples
    --------
    >>> extended(date(2029, 11, 30), date(2030, 3, 1), date(2030, 4, 30), renewed=False)
    False
    """
    limit = "renewed, paper not aboard" if renewed else "voyage to a port of survey"
    return postponed_until is not None and on <= min(postponed_until, extensions(expires)[limit])


def extensions(expires: date) -> dict[str, date]:
    """Return the farthest day of each extension that a flag may give.

    SOLAS I/14(d), (e), (f) (seen).

    Parameters
    ----------
    expires : date
        Expiry of the certificate.

    Returns
    -------
    dict of str to date
        Last day by kind of extension.

    References
    ----------
    SOLAS I/14(d), (e), (f) (seen).

    Examples
    --------
    >>> extensions(date(2029, 11, 30))["voyage to a port of survey"]
    datetime.date(2030, 2, 28)
    """
    return {
        "short voyages": add_months(expires, 1),
        "voyage to a port of survey": add_months(expires, 3),
        "renewed, paper not aboard": add_months(expires, 5),
    }
