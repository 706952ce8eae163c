"""Survey windows of certificates by the harmonised system: pure arithmetic of calendar months, always from the date of expiry.

The anniversary is the day and month of expiry, whatever the day of issue. A window's ends count as inside. No convention says how to hold the day at the
end of a shorter month: holding it there is our choice, and a window made by it says so. The tool reminds; flag, class and recognised organisation decide.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from inspector.criteria.months import add_months, clipped

MARGIN = 3  # months either side of an anniversary
VALIDITY, BOTTOM_GAP, BOTTOM_PERIOD, PASSENGER_GAP = 60, 36, 60, 12  # months
SOON = 90  # days before a single date from which it is called due: our own choice
NEARLY = 30  # days before a window closes from which it is called due: our own choice
SURVEYS = ("annual", "intermediate", "periodical, safety equipment", "periodical, radio", "verification, SMC ISSC MLC", "intermediate, class", "renewal")
# worst first, so that a certificate is told by the first that any of its surveys has
STATES = ("overdue", "no evidence", "due", "in window", "postponed", "done late", "not yet", "done", "not needed", "past")


@dataclass(frozen=True)
class Window:
    """When one survey may be done: from `opens` to `closes`, both inside.

    `number` counts the anniversaries, 0 for a renewal; `held` where a month end moved a day.
    """

    survey: str
    number: int
    opens: date
    closes: date
    held: bool = False


@dataclass(frozen=True)
class Placed:
    """A window and its state on a day, one of STATES."""

    window: Window
    state: str


def anniversary(expires: date, number: int, validity: int = VALIDITY) -> date:
    """Return the first, second ... anniversary of a certificate, counted back from its expiry.

    Examples
    --------
    >>> anniversary(date(2028, 2, 29), 1), anniversary(date(2028, 2, 29), 3)
    (datetime.date(2024, 2, 29), datetime.date(2026, 2, 28))
    """
    return add_months(expires, 12 * number - validity)


def windows(survey: str, expires: date, validity: int = VALIDITY) -> tuple[Window, ...]:
    """Return the windows of a survey until a certificate expires.

    survey : one of SURVEYS; validity : months of the certificate, 60 or 12. Intermediate and periodical windows are two, of which one is used.

    References
    ----------
    SOLAS I/8 to I/10 and I/14, survey guidelines A.1104(29) (seen in part); verification between the 2nd and 3rd anniversary without months outside, by
    the ISM Code (seen), the ISPS Code and the labour convention (memory); intermediate of class at or between the 2nd and 3rd annual (UR Z7, memory).
    """
    if survey == "renewal":
        return (Window(survey, 0, add_months(expires, -MARGIN), expires, clipped(expires, -MARGIN)),)
    if survey == "verification, SMC ISSC MLC":
        return (Window(survey, 2, anniversary(expires, 2, validity), anniversary(expires, 3, validity), anniversary(expires, 2, validity).day != expires.day),)
    around = {number: _around(survey, number, expires, validity) for number in range(1, validity // 12)}
    if survey == "intermediate, class":
        return (Window(survey, 2, around[2].opens, around[3].closes, around[2].held or around[3].held),) if len(around) > 2 else ()
    if survey in ("intermediate", "periodical, safety equipment"):
        return tuple(around[number] for number in (2, 3) if number in around)
    return tuple(around.values())


def _around(survey: str, number: int, expires: date, validity: int) -> Window:
    middle = anniversary(expires, number, validity)
    held = middle.day != expires.day or clipped(middle, -MARGIN) or clipped(middle, MARGIN)
    return Window(survey, number, add_months(middle, -MARGIN), add_months(middle, MARGIN), held)


def placed(found: Sequence[Window], on: date, last: date | None = None) -> tuple[Placed, ...]:
    """Return every window with its state on a day, `last` being the last survey of this kind.

    Of two windows of which one is used, the other is not needed, or past once its second chance is all that is left.
    """
    if _alternatives(found):
        return _placed_alternatives(found, on, last)
    return tuple(Placed(one, _state(one, on, last, found[place + 1].opens if place + 1 < len(found) else None)) for place, one in enumerate(found))


def _alternatives(found: Sequence[Window]) -> bool:
    return len(found) == 2 and found[0].survey in ("intermediate", "periodical, safety equipment")


def _placed_alternatives(found: Sequence[Window], on: date, last: date | None) -> tuple[Placed, ...]:
    first, second = found
    if last is not None and first.opens <= last <= first.closes:
        return Placed(first, "done"), Placed(second, "not needed")
    if last is not None and last >= second.opens:
        return Placed(first, "not needed"), Placed(second, _state(second, on, last, None))
    early = "past" if on > first.closes else _state(first, on, None, None)
    return Placed(first, early), Placed(second, _state(second, on, last, None))


def _state(window: Window, on: date, last: date | None, next_opens: date | None) -> str:
    if last is not None and last >= window.opens:
        if last <= window.closes:
            return "done"
        return "done late" if next_opens is None or last < next_opens else "past"
    if on < window.opens:
        return "not yet"
    if on <= window.closes:
        return "due" if (window.closes - on).days <= NEARLY else "in window"
    return "no evidence" if last is None else "overdue"


def governing(found: Sequence[Placed]) -> Placed:
    """Return the window that tells the state of a survey: the worst, and of equals the earliest yet to come or else the latest."""
    worst = min(STATES.index(one.state) for one in found)
    same = [one for one in found if STATES.index(one.state) == worst]
    return same[0] if same[0].state in ("not yet", "in window", "due") else same[-1]


def renewal_state(expires: date, on: date, last: date | None = None, postponed_until: date | None = None) -> Placed:
    """Return the state of the renewal; an extension holds until its own date, and never beyond the farthest that the rules know."""
    window = windows("renewal", expires)[0]
    state = _state(window, on, last, None)
    state = "overdue" if on > expires and state == "no evidence" else state
    if state == "overdue" and postponed_until is not None and on <= min(postponed_until, extensions(expires)["renewed, paper not aboard"]):
        state = "postponed"
    return Placed(window, state)


def extensions(expires: date) -> dict[str, date]:
    """Return the farthest day of each extension that a flag may give. SOLAS I/14(d), (e), (f) (seen).

    Examples
    --------
    >>> extensions(date(2029, 11, 30))["voyage to a port of survey"]
    datetime.date(2030, 2, 28)
    """
    return {"short voyages": add_months(expires, 1), "voyage to a port of survey": add_months(expires, 3), "renewed, paper not aboard": add_months(expires, 5)}


def renewed_expiry(expires: date, completed: date, validity: int = VALIDITY) -> date:
    """Return the farthest expiry of the new certificate for a renewal completed on a day. SOLAS I/14(b) (seen).

    Within the last three months or after expiry it counts from the old expiry, before any extension; earlier than that from its completion.

    Examples
    --------
    >>> renewed_expiry(date(2024, 11, 30), date(2024, 11, 12)), renewed_expiry(date(2024, 11, 30), date(2024, 8, 20))
    (datetime.date(2029, 11, 30), datetime.date(2029, 8, 20))
    """
    return add_months(completed if completed < add_months(expires, -MARGIN) else expires, validity)


def bottom_due(
    last: date, before_that: date | None = None, expires: date | None = None, postponed_until: date | None = None, passenger: bool = False
) -> tuple[date, str]:
    """Return the day by which the outside of the bottom must be inspected again, and why.

    Cargo ship: within 36 months of the last, always; and two in five years, the period being the certificate's where its expiry is known (it may stretch
    with an extension), else counted from the one before. Passenger ship: yearly. References: SOLAS I/10(a)(v) and I/7 (memory).

    Examples
    --------
    >>> bottom_due(date(2027, 6, 10), expires=date(2029, 11, 30))
    (datetime.date(2029, 11, 30), 'two in the five years of the certificate')
    """
    if passenger:
        return add_months(last, PASSENGER_GAP), "yearly on a passenger ship"
    bounds = [(add_months(last, BOTTOM_GAP), "not more than 36 months after the last")]
    if expires is not None:
        end = max(expires, postponed_until or expires)
        # an inspection inside the last three months of the certificate is the one of its renewal
        bounds += [(end, "two in the five years of the certificate")] if last < add_months(expires, -MARGIN) else []
    elif before_that is not None:
        bounds += [(add_months(before_that, BOTTOM_PERIOD), "two in five years, counted from the one before")]
    return min(bounds)
