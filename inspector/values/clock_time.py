"""A time of the day as people write it: 16:30, 9.05, 7h15."""

import re
from datetime import time

_WRITTEN = re.compile(r"\s*(\d{1,2})\s*[:.hH]\s*(\d{2})\s*")


def read_time(text: str) -> time | None:
    """Read a time of the day.

    Parameters
    ----------
    text : str

    Returns
    -------
    time or None
        None where it is none.

    Examples
    --------
    >>> read_time("16:30")
    datetime.time(16, 30)
    """
    found = _WRITTEN.fullmatch(text)
    if not found:
        return None
    hour, minute = map(int, found.groups())
    return time(hour, minute) if hour < 24 and minute < 60 else None


def time_fault(label: str, text: str) -> str:
    """Return what is wrong with a time of the day.

    Parameters
    ----------
    label : str
        What the time is called.
    text : str

    Returns
    -------
    str
        One sentence; "" where nothing is wrong.
    """
    if read_time(text):
        return ""
    return f"{label}: '{text}' is not a time of the day, such as 16:30."
