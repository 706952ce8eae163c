"""When the outside of the bottom must be inspected again."""

from datetime import date

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.orders import AT_LEAST, AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.criteria.papers.survey_dates import REMINDER, date_field
from inspector.criteria.papers.survey_windows import (
    BOTTOM_GAP,
    BOTTOM_PERIOD,
    MARGIN,
    PASSENGER_GAP,
    SOON,
)
from inspector.values.field import Field
from inspector.values.text import counted

BOTTOM = Source.seen(
    "SOLAS I/10(a)(v), inspections of the outside of the bottom",
    "as public notes on I/10 and on MSN 1751 give it; special purpose ships recalled",
    "two in five years, not more than 36 months apart; yearly on passenger ships",
)

# kind of ship -> whether its bottom is inspected every year; a special purpose ship is certified
# for five years as a cargo ship (memory)
YEARLY = {"cargo": False, "passenger": True, "special purpose": False}
IN_WATER = (
    "One of the two is normally out of water, at the renewal; an inspection in water needs class "
    "and flag to agree."
)


def judge_bottom(
    last: date,
    on: date,
    ship: str,
    before_that: date | None = None,
    expires: date | None = None,
    postponed_until: date | None = None,
) -> Judgement:
    """Judge when the outside of the bottom is due for inspection again.

    Parameters
    ----------
    last : date
        Last inspection.
    on : date
        Day.
    ship : str
        Kind of ship, one of ``YEARLY``.
    before_that : date, optional
        The inspection before.
    expires : date, optional
        Certificate expires.
    postponed_until : date, optional
        Postponed until.

    Returns
    -------
    Judgement
        Value the days left [days], negative where overdue; limit 0.

    References
    ----------
    SOLAS I/10(a)(v): two in any five years, not more than 36 months apart; yearly on passenger
    ships (seen in public notes; that special purpose ships are as cargo ships: memory).
    """
    due, reason = bottom_due(last, before_that, expires, postponed_until, YEARLY[ship])
    left = (due - on).days
    if left < 0:
        band, rating, outcome = "overdue", "failed", "overdue"
    elif left <= SOON:
        band, rating, outcome = "due", "fair", "due within three months"
    else:
        band, rating, outcome = "not yet", "good", "not yet due"
    distance = f"{counted(abs(left), 'day')} {'past' if left < 0 else 'away'}"
    sentence = (
        f"The bottom, last inspected on {last.isoformat()}, is {outcome}: next by "
        f"{due.isoformat()} ({reason}), {distance}."
    )
    notes = (*_wide_gap(before_that, last, ship), IN_WATER, REMINDER)
    return Judgement(band, rating, left, "days", 0, left, sentence, notes)


def _wide_gap(before_that: date | None, last: date, ship: str) -> tuple[str, ...]:
    """Return the note on two inspections further apart than the rule allows."""
    # The gap is a rule of cargo ships, and one inspection alone has none.
    if before_that is None or YEARLY[ship] or add_months(before_that, BOTTOM_GAP) >= last:
        return ()
    note = (
        f"Between {before_that.isoformat()} and {last.isoformat()} are more than 36 months: "
        "ask how that was settled."
    )
    return (note,)


def bottom_due(
    last: date,
    before_that: date | None = None,
    expires: date | None = None,
    postponed_until: date | None = None,
    passenger: bool = False,
) -> tuple[date, str]:
    """Return the day by which the outside of the bottom must be inspected again, and why.

    Cargo ship: within 36 months of the last, always; and two in five years, the period being the
    certificate's where its expiry is known (it may stretch with an extension), else counted from
    the one before. Passenger ship: yearly.

    Parameters
    ----------
    last : date
        Last inspection.
    before_that : date, optional
        The inspection before.
    expires : date, optional
        Expiry of the certificate.
    postponed_until : date, optional
        End of an extension.
    passenger : bool, optional
        Whether a passenger ship.

    Returns
    -------
    tuple of (date, str)
        Date and reason.

    References
    ----------
    SOLAS I/10(a)(v) and I/7 (seen in public notes).

    Examples
    --------
    >>> bottom_due(date(2027, 6, 10), expires=date(2029, 11, 30))
    (datetime.date(2029, 11, 30), 'two in the five years of the certificate')
    """
    # the five-year period is a rule of cargo ships only
    if passenger:
        return add_months(last, PASSENGER_GAP), "yearly on a passenger ship"
    # Two bounds, of which the earlier one counts.
    bounds = [(add_months(last, BOTTOM_GAP), "not more than 36 months after the last")]
    if expires is not None:
        end = max(expires, postponed_until or expires)
        # an inspection inside the last three months of the certificate is the one of its renewal
        bounds += (
            [(end, "two in the five years of the certificate")]
            if last < add_months(expires, -MARGIN)
            else []
        )
    elif before_that is not None:
        bounds += [
            (
                add_months(before_that, BOTTOM_PERIOD),
                "two in five years, counted from the one before",
            )
        ]
    return min(bounds)


CRITERIA = (
    Criterion(
        "bottom-inspection",
        "Next inspection of the outside of the bottom",
        (
            date_field("last", "Last inspection"),
            date_field("on", "Day"),
            Field("ship", "Kind of ship", "choice", choices=tuple(YEARLY)),
            date_field("before_that", "The inspection before", True),
            date_field("expires", "Certificate expires", True),
            date_field("postponed_until", "Postponed until", True),
        ),
        BOTTOM,
        judge_bottom,
        "Cargo, passenger and special purpose ships whose last inspection is known.",
        "Dated cases from both sides of each bound; the rule is recalled.",
        orders=(
            Order("last", AT_MOST, "on", "an inspection still to come proves nothing on the day"),
            Order("before_that", AT_MOST, "last", "the two are in the wrong order"),
            Order(
                "postponed_until",
                AT_LEAST,
                "expires",
                "a certificate is not extended to before its expiry",
            ),
        ),
    ),
)
