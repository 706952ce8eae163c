"""Drawings of the conversion as plain marks in a box: SVG on a page, shapes in the report.

Coordinates run from the top left, in points; a mark says what it is (``tone``), not what colour it
has.
"""

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import date

from inspector.conversion.core.drawing import (
    Axis,
    Bar,
    Bars,
    Curve,
    Drawing,
    Graph,
    Period,
    Timeline,
)
from inspector.report.drawing_units import in_system
from inspector.values.cell_text import cell_text
from inspector.values.formatting import grouped

ROW = 24.0
LABEL_SHARE = 0.34
SMALL = 9.0
# The width of a letter of a label, on the average.
LETTER = 5.7

GRAPH_HEIGHT, GRAPH_LEFT, GRAPH_BOTTOM, GRAPH_TOP = 210.0, 46.0, 176.0, 22.0
# Beside the last point of each curve is its name.
ROOM_FOR_NAMES = 110.0
# The states of a period that a reader must act on.
_URGENT = ("due", "overdue")

Scale = Callable[[float], float]
Place = Callable[[float, float], tuple[float, float]]


@dataclass(frozen=True)
class Mark:
    """One mark of a picture.

    Parameters
    ----------
    kind : str
        "box" (x, y, then width, height), "line" (its points), "dot" (one point) or "text" (one
        point).
    tone : str
        What it is, from which page and report choose their ink.
    points : tuple of (float, float)
        In points of print, from the top left.
    text : str
    anchor : str
        "start", "middle" or "end".
    """

    kind: str
    tone: str
    points: tuple[tuple[float, float], ...]
    text: str = ""
    anchor: str = "start"


@dataclass(frozen=True)
class Picture:
    """Marks in a box of that size; ``described`` is the drawing in one sentence."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    title: str
    described: str


def draw(drawing: Drawing, width: float = 460.0, system: str = "si") -> Picture:
    """Return any drawing of a chapter as marks.

    Parameters
    ----------
    drawing : Drawing
    width : float
        Points.
    system : str
        "si" or "us": the units of its values.

    Returns
    -------
    Picture
    """
    makers = {Bars: _bars, Graph: _graph, Timeline: _timeline}
    height, marks = makers[type(drawing)](in_system(drawing, system), width)
    described = cell_text(drawing.described, system)
    return Picture(width, height, tuple(marks), drawing.title, described)


def ticks(low: float, high: float, about: int = 5) -> list[float]:
    """Return round values from low to high, about so many.

    Parameters
    ----------
    low, high : float
        In the unit of the axis.
    about : int
        The most of them, give or take.

    Returns
    -------
    list of float

    Examples
    --------
    >>> ticks(0, 9)
    [0, 2, 4, 6, 8]
    """
    reach = high - low
    # One value, or several that differ by rounding only, has one tick; also where it is not a
    # number.
    if not reach > 1e-12:
        return [low]
    step = 10 ** math.floor(math.log10(reach / about))
    # 1, 2 and 5 are the steps that a reader counts on without thinking.
    step *= next(factor for factor in (1, 2, 5, 10) if reach / (step * factor) <= about)
    # The small share keeps a tick that only a rounding puts beyond the end.
    first = math.ceil(low / step - 1e-9)
    return [round(step * n, 10) for n in range(first, math.floor(high / step + 1e-9) + 1)]


def _short(label: str, room: float) -> str:
    """A label cut to the room that it has, with a sign that it was."""
    # The width of letters is known on the average only, so some points are kept free.
    most = max(int((room - 8) / LETTER), 4)
    return label if len(label) <= most else label[: most - 1].rstrip() + "…"


def _number(value: float) -> str:
    return grouped(value, ",.10g")


def _text(tone: str, x: float, y: float, text: str, anchor: str = "start") -> Mark:
    return Mark("text", tone, ((x, y),), text, anchor)


def _line(tone: str, *points: tuple[float, float]) -> Mark:
    return Mark("line", tone, points)


def _box(tone: str, left: float, top: float, width: float, height: float) -> Mark:
    return Mark("box", tone, ((left, top), (width, height)))


def _scale(low: float, high: float, left: float, right: float) -> Scale:
    """Values from low to high onto points from left to right."""
    # A scale of one value has no length; any will do.
    reach = high - low or 1
    return lambda value: left + (value - low) / reach * (right - left)


def _bars(drawing: Bars, width: float) -> tuple[float, list[Mark]]:
    """Return the height and the marks of a drawing of bars."""
    left, right = width * LABEL_SHARE, width - 4
    values = [0.0]
    for bar in drawing.bars:
        values += [end for end in (bar.low, bar.high, bar.point, bar.limit) if end is not None]
    # Zero belongs to the axis, so that lengths of bars can be compared.
    low, high = min(values), max(values) or 1.0
    across = _scale(low, high, left, right)
    height = ROW * len(drawing.bars) + 20
    steps = ticks(low, high)
    marks = [_line("faint", (across(at), 0), (across(at), height - 16)) for at in steps]
    for number, bar in enumerate(drawing.bars):
        marks += _bar(bar, ROW * number + ROW / 2, across, left)
    marks += [_text("small", across(at), height - 4, _number(at), "middle") for at in steps]
    stroke = f"; stroke: {drawing.limit_label}" if drawing.limit_label else ""
    marks.append(_text("small", 0, height - 4, drawing.unit + stroke))
    return height, marks


def _bar(bar: Bar, middle: float, across: Scale, left: float) -> Iterator[Mark]:
    """The label, the span, its point and its limit."""
    yield _text("label", left - 8, middle + 3, _short(bar.label, left), "end")
    # An exact value is a bar of no width, which a printer would leave out.
    wide = max(across(bar.high) - across(bar.low), 1.0)
    yield _box("reach", across(bar.low), middle - 5, wide, 10.0)
    if bar.point is not None:
        # Higher than the bar, so that the likely value is seen in a copy without colour.
        yield _box("ink", across(bar.point) - 1, middle - 8, 2.0, 16.0)
    if bar.limit is not None:
        at = across(bar.limit)
        yield _line("accent", (at, middle - 9), (at, middle + 9))


def _graph(drawing: Graph, width: float) -> tuple[float, list[Mark]]:
    """Return the height and the marks of a graph."""
    points = [point for curve in drawing.curves for point in curve.points]
    # A curve outside what its method covers has no points.
    if not points:
        return 20.0, [_text("small", 0, 14, "Nothing to draw yet.")]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    if drawing.mark_x is not None:
        # The marked place belongs to the drawing, also where no curve reaches it.
        xs.append(drawing.mark_x)
    # From zero upward, so that twice the height is twice the power.
    x_ends, y_ends = (min(xs), max(xs)), (min(0.0, *ys), max(ys))
    across = _scale(*x_ends, GRAPH_LEFT, width - ROOM_FOR_NAMES)
    up = _scale(*y_ends, GRAPH_BOTTOM, GRAPH_TOP)
    marks = [*_grid(x_ends, y_ends, across, up), *_marked(drawing, across)]
    marks += _labelled(drawing.curves, lambda x, y: (across(x), up(y)), GRAPH_BOTTOM)
    marks += [
        _text("small", GRAPH_LEFT, GRAPH_BOTTOM + 28, _axis_label(drawing.x)),
        _text("small", 0, 11, _axis_label(drawing.y)),
    ]
    return GRAPH_HEIGHT, marks


def _axis_label(axis: Axis) -> str:
    """The label with its unit, which is the reader's own already."""
    return f"{axis.label}, {axis.unit}" if axis.unit else axis.label


def _grid(
    x_ends: tuple[float, float], y_ends: tuple[float, float], across: Scale, up: Scale
) -> Iterator[Mark]:
    """The lines across and the numbers of both axes."""
    left, right = across(x_ends[0]), across(x_ends[1])
    for at in ticks(*y_ends):
        yield _line("faint", (left, up(at)), (right, up(at)))
        yield _text("small", GRAPH_LEFT - 6, up(at) + 3, _number(at), "end")
    for at in ticks(*x_ends):
        yield _text("small", across(at), GRAPH_BOTTOM + 13, _number(at), "middle")


def _marked(drawing: Graph, across: Scale) -> Iterator[Mark]:
    """Yield the line that marks one place across the graph, and its label."""
    if drawing.mark_x is not None:
        at = across(drawing.mark_x)
        yield _line("accent", (at, GRAPH_TOP), (at, GRAPH_BOTTOM))
        yield _text("accent", at + 3, 11, drawing.mark_label)


def _labelled(curves: Iterable[Curve], place: Place, bottom: float) -> Iterator[Mark]:
    """The curves, each with its name beside its last point."""
    paths = [(curve, tuple(place(x, y) for x, y in curve.points)) for curve in curves]
    paths = [(curve, path) for curve, path in paths if path]
    heights = _apart([path[-1][1] for _, path in paths], SMALL + 2, 12.0, bottom - 4)
    for (curve, path), height in zip(paths, heights, strict=True):
        if len(path) > 1:
            yield _line("dashed" if curve.dashed else "ink", *path)
        if curve.dots or len(path) == 1:
            yield from (Mark("dot", "ink", (point,)) for point in path)
        yield _text("small", path[-1][0] + 5, height + 3, curve.label)


def _apart(wanted: list[float], gap: float, top: float, bottom: float) -> list[float]:
    """Heights near those wanted, in their order, a gap apart and within the room there is."""
    # Down once to part them, then up again to bring the last ones back into the box.
    order = sorted(range(len(wanted)), key=lambda index: wanted[index])
    found, last = list(wanted), top - gap
    for index in order:
        found[index] = last = max(wanted[index], last + gap, top)
    last = bottom + gap
    for index in reversed(order):
        found[index] = last = max(min(found[index], last - gap), top)
    return found


def _timeline(drawing: Timeline, width: float) -> tuple[float, list[Mark]]:
    """Return the height and the marks of a timeline."""
    if not drawing.periods:
        return 20.0, [_text("small", 0, 14, "No dates are known.")]
    first = min(drawing.today, *(period.start for period in drawing.periods))
    last = max(drawing.today, *(period.end for period in drawing.periods))
    left, height = width * LABEL_SHARE, ROW * len(drawing.periods) + 34
    scale = _scale(first.toordinal(), last.toordinal(), left, width - 8)
    marks: list[Mark] = []
    # Each first of January is a line: years are what surveys are planned by.
    for year in range(first.year + 1, last.year + 1):
        at = scale(date(year, 1, 1).toordinal())
        marks.append(_line("faint", (at, 12), (at, height - 18)))
        marks.append(_text("small", at, height - 6, str(year), "middle"))
    for number, period in enumerate(drawing.periods):
        marks += _period(period, 14 + ROW * number, scale, left)
    today = scale(drawing.today.toordinal())
    marks.append(_line("accent", (today, 10), (today, height - 18)))
    marks.append(_text("accent", today, 8, "today", "middle"))
    return height, marks


def _period(period: Period, top: float, scale: Scale, left: float) -> Iterator[Mark]:
    """Yield the label and the bar of one stretch of time."""
    label = f"{_short(period.label, left - LETTER * len(period.state))}: {period.state}"
    yield _text("label", left - 8, top + 12, label, "end")
    start, end = scale(period.start.toordinal()), scale(period.end.toordinal())
    # A day is a stroke wide enough for a printer.
    yield _box(_tone_of(period.state), start, top + 3, max(end - start, 1.5), 10.0)


def _tone_of(state: str) -> str:
    """Return the tone of a survey's state: what is urgent stands out."""
    if state in _URGENT:
        return "accent"
    return "ink" if state == "in window" else "reach"
