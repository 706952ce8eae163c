"""Stretches of time, one line each, with today marked."""

from collections.abc import Iterator
from datetime import date

from inspector.conversion.core.drawing import Period, Timeline
from inspector.report.drawn.picture import (
    LETTER,
    NARROW,
    Mark,
    Scale,
    box,
    line,
    scale,
    shortened,
    text,
)

ROW, TALL_ROW = 24.0, 36.0
LABEL_SHARE = 0.34
# The states of a period that a reader must act on.
_URGENT = ("due", "overdue")
# Years nearer to each other than this would be printed over each other.
YEAR_WIDTH = 34.0


def timeline(drawing: Timeline, width: float) -> tuple[float, list[Mark]]:
    """Return the height and the marks of a timeline.

    Parameters
    ----------
    drawing : Timeline
    width : float
        Points.

    Returns
    -------
    tuple of (float, list of Mark)
    """
    if not drawing.periods:
        return 20.0, [text("small", 0, 14, "No dates are known.")]
    narrow = width < NARROW
    row, left = (TALL_ROW, 4.0) if narrow else (ROW, width * LABEL_SHARE)
    first = min(drawing.today, *(period.start for period in drawing.periods))
    last = max(drawing.today, *(period.end for period in drawing.periods))
    height = row * len(drawing.periods) + 34
    across = scale(first.toordinal(), last.toordinal(), left, width - 8)
    marks = list(_years(first, last, across, height))
    for place, period in enumerate(drawing.periods):
        marks += _period(period, 14 + row * place, across, left, width)
    today = across(drawing.today.toordinal())
    marks.append(line("accent", (today, 10), (today, height - 18)))
    anchor = "start" if today < 20 else "end" if today > width - 20 else "middle"
    marks.append(text("accent", today, 9, "today", anchor))
    return height, marks


def _years(first: date, last: date, across: Scale, height: float) -> Iterator[Mark]:
    """Each first of January is a line: years are what surveys are planned by."""
    printed = float("-inf")
    for year in range(first.year + 1, last.year + 1):
        at = across(date(year, 1, 1).toordinal())
        yield line("faint", (at, 12), (at, height - 18))
        if at - printed >= YEAR_WIDTH:
            printed = at
            yield text("small", at, height - 6, str(year), "middle")


def _period(period: Period, top: float, across: Scale, left: float, width: float) -> Iterator[Mark]:
    """Yield the label and the bar of one stretch of time."""
    narrow = width < NARROW
    room = (width if narrow else left) - LETTER * len(period.state)
    label = f"{shortened(period.label, room)}: {period.state}"
    if narrow:
        yield text("label", 0, top + 11, label)
    else:
        yield text("label", left - 8, top + 12, label, "end")
    start, end = across(period.start.toordinal()), across(period.end.toordinal())
    # A day is a stroke wide enough for a printer.
    below = 17.0 if narrow else 3.0
    yield box(_tone_of(period.state), start, top + below, max(end - start, 1.5), 10.0)


def _tone_of(state: str) -> str:
    """Return the tone of a survey's state: what is urgent stands out."""
    if state in _URGENT:
        return "accent"
    return "ink" if state == "in window" else "reach"
