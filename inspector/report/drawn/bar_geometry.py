"""Spans side by side on one axis: the label beside its bar, or above it where room is narrow."""

from collections.abc import Iterator

from inspector.conversion.core.drawing import Bar, Bars
from inspector.report.drawn.picture import (
    NARROW,
    Mark,
    Scale,
    box,
    line,
    number,
    scale,
    shortened,
    text,
    ticks,
)

ROW, TALL_ROW = 24.0, 38.0
LABEL_SHARE = 0.34
FOOT = 20.0
# Room on both sides of values that do not begin at zero, as a share of their reach.
AROUND = 0.15


def bars(drawing: Bars, width: float) -> tuple[float, list[Mark]]:
    """Return the height and the marks of a drawing of bars.

    Parameters
    ----------
    drawing : Bars
    width : float
        Points.

    Returns
    -------
    tuple of (float, list of Mark)
    """
    narrow = width < NARROW
    row = TALL_ROW if narrow else ROW
    left, right = (4.0 if narrow else width * LABEL_SHARE), width - 4
    low, high = _ends(drawing)
    across = scale(low, high, left, right)
    # Labels above their bars leave the numbers of the axis a line of their own.
    height = row * len(drawing.bars) + FOOT + (14.0 if narrow else 0.0)
    foot = height - (18.0 if narrow else 4.0)
    steps = ticks(low, high, 4 if narrow else 5)
    marks = [line("faint", (across(at), 0), (across(at), foot - 12)) for at in steps]
    for place, bar in enumerate(drawing.bars):
        marks += _bar(bar, row * place, row, across, left if not narrow else 0.0, width)
    marks += [_tick(at, across(at), foot, width) for at in steps]
    stroke = f"; stroke: {drawing.limit_label}" if drawing.limit_label else ""
    marks.append(text("small", 0, height - 4, shortened(drawing.unit + stroke, width + 8)))
    return height, marks


def _ends(drawing: Bars) -> tuple[float, float]:
    """The ends of the axis."""
    values = [
        end
        for bar in drawing.bars
        for end in (bar.low, bar.high, bar.point, bar.limit)
        if end is not None
    ]
    if not drawing.from_zero and values:
        reach = (max(values) - min(values)) or abs(values[0]) or 1.0
        return min(values) - AROUND * reach, max(values) + AROUND * reach
    # Zero belongs to the axis, so that lengths of bars can be compared.
    return min([0.0, *values]), max([0.0, *values]) or 1.0


def _tick(at: float, x: float, foot: float, width: float) -> Mark:
    """The number of a tick, kept inside the box at both ends."""
    words = number(at)
    half = len(words) * 3.2
    anchor = "start" if x - half < 0 else "end" if x + half > width else "middle"
    place = {"start": max(x - half, 0.0), "end": min(x + half, width), "middle": x}[anchor]
    return text("small", place, foot, words, anchor)


def _bar(
    bar: Bar, top: float, row: float, across: Scale, left: float, width: float
) -> Iterator[Mark]:
    """The label, the span, its point and its limit."""
    narrow = row == TALL_ROW
    middle = top + (row - 12.0 if narrow else row / 2)
    if narrow:
        yield text("label", 0, top + 13, shortened(bar.label, width))
    else:
        yield text("label", left - 8, middle + 3, shortened(bar.label, left), "end")
    # An exact value is a bar of no width, which a printer would leave out.
    wide = max(across(bar.high) - across(bar.low), 1.0)
    yield box("reach", across(bar.low), middle - 5, wide, 10.0)
    if bar.point is not None:
        # Higher than the bar, so that the likely value is seen in a copy without colour.
        yield box("ink", across(bar.point) - 1, middle - 8, 2.0, 16.0)
    if bar.limit is not None:
        at = across(bar.limit)
        yield line("accent", (at, middle - 9), (at, middle + 9))
