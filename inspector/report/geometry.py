"""Drawings of the conversion as plain marks in a box, computed once: the pages set them as SVG, the report as shapes of its own.

Coordinates run from the top left, in points; a mark says what it is (`tone`), not what colour it has.
"""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date

from inspector.conversion.chapters import Bars, Curve, Drawing, Graph, Timeline
from inspector.words import grouped

ROW = 24.0
LABEL_SHARE = 0.34
SMALL = 9.0
LETTER = 5.7    # width of a letter of a label, on the average


@dataclass(frozen=True)
class Mark:
    """One mark: kind is "box" (x, y, width, height), "line" (points), "dot" (one point) or "text" (one point, `text`, `anchor` start|middle|end)."""

    kind: str
    tone: str
    points: tuple[tuple[float, float], ...]
    text: str = ""
    anchor: str = "start"


@dataclass(frozen=True)
class Picture:
    """Marks in a box of that size; `described` is the drawing in a sentence."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    title: str
    described: str


def draw(drawing: Drawing, width: float = 460.0) -> Picture:
    """Any drawing of a chapter as marks."""
    makers = {Bars: _bars, Graph: _graph, Timeline: _timeline}
    height, marks = makers[type(drawing)](drawing, width)
    return Picture(width, height, tuple(marks), drawing.title, drawing.described)


def ticks(low: float, high: float, about: int = 5) -> list[float]:
    """Round values from low to high, about so many.

    Examples
    --------
    >>> ticks(0, 9)
    [0.0, 2.0, 4.0, 6.0, 8.0]
    """
    reach = high - low
    if not reach > 1e-12:
        return [low]
    step = 10 ** math.floor(math.log10(reach / about))
    step *= next(factor for factor in (1, 2, 5, 10) if reach / (step * factor) <= about)
    first = math.ceil(low / step - 1e-9)
    return [round(step * n, 10) for n in range(first, math.floor(high / step + 1e-9) + 1)]


def _short(label: str, room: float) -> str:
    """A label cut to the room that it has, with a sign that it was."""
    most = max(int((room - 8) / LETTER), 4)
    return label if len(label) <= most else label[: most - 1].rstrip() + "…"


def _text(value: float) -> str:
    return grouped(value, ",.10g")


def _bars(drawing: Bars, width: float) -> tuple[float, list[Mark]]:
    left, right = width * LABEL_SHARE, width - 4
    values = [value for bar in drawing.bars for value in (bar.low, bar.high, bar.point, bar.limit) if value is not None]
    low, high = min([0.0, *values]), max([0.0, *values]) or 1.0
    def across(value: float) -> float:
        return left + (value - low) / (high - low or 1) * (right - left)
    height = ROW * len(drawing.bars) + 20
    marks = [Mark("line", "faint", ((across(at), 0), (across(at), height - 16))) for at in ticks(low, high)]
    for number, bar in enumerate(drawing.bars):
        middle = ROW * number + ROW / 2
        marks.append(Mark("text", "label", ((left - 8, middle + 3),), _short(bar.label, left), "end"))
        marks.append(Mark("box", "reach", ((across(bar.low), middle - 5), (max(across(bar.high) - across(bar.low), 1.0), 10.0))))
        if bar.point is not None:
            marks.append(Mark("box", "ink", ((across(bar.point) - 1, middle - 8), (2.0, 16.0))))
        if bar.limit is not None:
            marks.append(Mark("line", "accent", ((across(bar.limit), middle - 9), (across(bar.limit), middle + 9))))
    marks += [Mark("text", "small", ((across(at), height - 4),), _text(at), "middle") for at in ticks(low, high)]
    marks.append(Mark("text", "small", ((0, height - 4),), drawing.unit + (f"; stroke: {drawing.limit_label}" if drawing.limit_label else "")))
    return height, marks


def _graph(drawing: Graph, width: float) -> tuple[float, list[Mark]]:
    height, left, bottom = 210.0, 46.0, 176.0
    points = [point for curve in drawing.curves for point in curve.points]
    if not points:
        return 20.0, [Mark("text", "small", ((0, 14),), "Nothing to draw yet.")]
    xs = [x for x, _ in points] + ([drawing.mark_x] if drawing.mark_x is not None else [])
    x_low, x_high, y_high = min(xs), max(xs), max(y for _, y in points)
    y_low = min(0.0, min(y for _, y in points))
    def place(x: float, y: float) -> tuple[float, float]:
        return left + (x - x_low) / (x_high - x_low or 1) * (width - left - 110), bottom - (y - y_low) / (y_high - y_low or 1) * (bottom - 14)
    marks = [Mark("line", "faint", (place(x_low, at), place(x_high, at))) for at in ticks(y_low, y_high)]
    marks += [Mark("text", "small", ((left - 6, place(x_low, at)[1] + 3),), _text(at), "end") for at in ticks(y_low, y_high)]
    marks += [Mark("text", "small", ((place(at, y_low)[0], bottom + 13),), _text(at), "middle") for at in ticks(x_low, x_high)]
    if drawing.mark_x is not None:
        at = place(drawing.mark_x, y_low)[0]
        marks += [Mark("line", "accent", ((at, 14), (at, bottom))), Mark("text", "accent", ((at + 3, 11),), drawing.mark_label)]
    marks += _labelled(drawing.curves, place, bottom)
    marks += [Mark("text", "small", ((left, bottom + 28),), drawing.x_label), Mark("text", "small", ((0, 11),), drawing.y_label)]
    return height, marks


def _labelled(curves: Iterable[Curve], place, bottom: float) -> Iterator[Mark]:
    paths = [(curve, tuple(place(x, y) for x, y in curve.points)) for curve in curves]
    heights = _apart([path[-1][1] for _, path in paths], SMALL + 2, 12.0, bottom - 4)
    for (curve, path), height in zip(paths, heights, strict=True):
        if len(path) > 1:
            yield Mark("line", "dashed" if curve.dashed else "ink", path)
        if curve.dots or len(path) == 1:
            yield from (Mark("dot", "ink", (point,)) for point in path)
        yield Mark("text", "small", ((path[-1][0] + 5, height + 3),), curve.label)


def _apart(wanted: list[float], gap: float, top: float, bottom: float) -> list[float]:
    """Heights near those wanted, in the same order, at least `gap` apart and between top and bottom as far as there is room."""
    order = sorted(range(len(wanted)), key=lambda index: wanted[index])
    found, last = list(wanted), top - gap
    for index in order:
        found[index] = last = max(wanted[index], last + gap, top)
    last = bottom + gap
    for index in reversed(order):
        found[index] = last = max(min(found[index], last - gap), top)
    return found


def _timeline(drawing: Timeline, width: float) -> tuple[float, list[Mark]]:
    if not drawing.periods:
        return 20.0, [Mark("text", "small", ((0, 14),), "No dates are known.")]
    first = min([drawing.today, *(one.start for one in drawing.periods)]).toordinal()
    last = max([drawing.today, *(one.end for one in drawing.periods)]).toordinal()
    left, height = width * LABEL_SHARE, ROW * len(drawing.periods) + 34
    def across(day: date) -> float:
        return left + (day.toordinal() - first) / (last - first or 1) * (width - left - 8)
    marks: list[Mark] = []
    for year in range(date.fromordinal(first).year + 1, date.fromordinal(last).year + 1):
        at = across(date(year, 1, 1))
        marks += [Mark("line", "faint", ((at, 12), (at, height - 18))), Mark("text", "small", ((at, height - 6),), str(year), "middle")]
    for number, one in enumerate(drawing.periods):
        top = 14 + ROW * number
        tone = "accent" if one.state in ("due", "overdue") else "ink" if one.state == "in window" else "reach"
        marks.append(Mark("text", "label", ((left - 8, top + 12),), f"{_short(one.label, left - LETTER * len(one.state))}: {one.state}", "end"))
        marks.append(Mark("box", tone, ((across(one.start), top + 3), (max(across(one.end) - across(one.start), 1.5), 10.0))))
    today = across(drawing.today)
    return height, [*marks, Mark("line", "accent", ((today, 10), (today, height - 18))), Mark("text", "accent", ((today, 8),), "today", "middle")]
