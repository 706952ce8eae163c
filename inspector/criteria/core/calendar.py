"""Months added to a date, always from the date itself and never in a chain."""

import calendar
from datetime import date


def add_months(start: date, months: int) -> date:
    """Return the date so many months later (earlier where negative), clamped to the month's end.

    No convention says how to hold a day at the end of a shorter month; clamping it is our choice.
    OverflowError beyond the years 1 to 9999.

    Examples
    --------
    >>> add_months(date(2025, 1, 31), 1), add_months(date(2024, 2, 29), 12)
    (datetime.date(2025, 2, 28), datetime.date(2025, 2, 28))
    >>> add_months(date(2025, 1, 31), 3)
    datetime.date(2025, 4, 30)
    """
    # From the date itself: January 31 plus one and one month is March 31, and a chain gives March
    # 28.
    year, month = divmod(start.year * 12 + start.month - 1 + months, 12)
    if not date.min.year <= year <= date.max.year:
        raise OverflowError(f"{months} months from {start.isoformat()} leave the calendar.")
    return date(year, month + 1, min(start.day, calendar.monthrange(year, month + 1)[1]))


def clipped(start: date, months: int) -> bool:
    """Return whether adding months had to hold the day at the end of a shorter month.

    Examples
    --------
    >>> clipped(date(2025, 8, 31), 6), clipped(date(2025, 8, 15), 6)
    (True, False)
    """
    return add_months(start, months).day != start.day
