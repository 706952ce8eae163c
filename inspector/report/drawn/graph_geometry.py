"""Curves over one axis: their names at their ends, or below the graph where room is narrow."""

from collections.abc import Callable, Iterable, Iterator

from inspector.conversion.core.drawing import AskedPoint, Curve, Graph
from inspector.report.drawn.picture import (
    LETTER,
    NARROW,
    SMALL,
    Mark,
    Scale,
    apart,
    axis_label,
    box,
    line,
    number,
    scale,
    shortened,
    text,
    ticks,
)

HEIGHT, LEFT, BOTTOM, TOP = 210.0, 46.0, 176.0, 22.0
# Beside the last point of each curve is its name, or its number where room is narrow.
ROOM_FOR_NAMES, ROOM_FOR_NUMBERS = 110.0, 16.0
NAME_LINE = 16.0

Place = Callable[[float, float], tuple[float, float]]


def graph(drawing: Graph, width: float) -> tuple[float, list[Mark]]:
    """Return the height and the marks of a graph.

    Parameters
    ----------
    drawing : Graph
    width : float
        Points.

    Returns
    -------
    tuple of (float, list of Mark)
    """
    points = [point for curve in drawing.curves for point in curve.points]
    # A curve outside what its method covers has no points.
    if not points:
        return 20.0, [text("small", 0, 14, "Nothing to draw yet.")]
    narrow = width < NARROW
    x_ends, y_ends = _ends(drawing, points)
    right = width - (ROOM_FOR_NUMBERS if narrow else ROOM_FOR_NAMES)
    across, up = scale(*x_ends, LEFT, right), scale(*y_ends, BOTTOM, TOP)

    def place(x: float, y: float) -> tuple[float, float]:
        return across(x), up(y)

    marks = [*_grid(x_ends, y_ends, across, up), *_marked(drawing, across, width)]
    drawn = [curve for curve in drawing.curves if curve.points]
    names = [str(at + 1) for at in range(len(drawn))] if narrow and len(drawn) > 1 else None
    if not narrow:
        names = [curve.label for curve in drawn]
    marks += _curves(drawn, place, names or [""] * len(drawn))
    for asked in drawing.asked:
        marks += _asked(asked, place, width, below=_curve_is_above(asked, drawn))
    marks += [
        text("small", LEFT, BOTTOM + 28, axis_label(drawing.x)),
        text("small", 0, 11, axis_label(drawing.y)),
    ]
    if not narrow:
        return HEIGHT, marks
    legend = list(_legend(drawn, names, width))
    return HEIGHT + NAME_LINE * len(drawn), [*marks, *legend]


def _ends(
    drawing: Graph, points: list[tuple[float, float]]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """The ends of both axes."""
    xs, ys = [x for x, _ in points], [y for _, y in points]
    if drawing.mark_x is not None:
        # The marked place belongs to the drawing, also where no curve reaches it.
        xs.append(drawing.mark_x)
    xs += [asked.x for asked in drawing.asked]
    ys += [asked.y for asked in drawing.asked]
    # From zero upward, so that twice the height is twice the power.
    return (min(xs), max(xs)), (min(0.0, *ys), max(ys))


def _grid(
    x_ends: tuple[float, float], y_ends: tuple[float, float], across: Scale, up: Scale
) -> Iterator[Mark]:
    """The lines across and the numbers of both axes."""
    left, right = across(x_ends[0]), across(x_ends[1])
    for at in ticks(*y_ends):
        yield line("faint", (left, up(at)), (right, up(at)))
        yield text("small", LEFT - 6, up(at) + 3, number(at), "end")
    for at in ticks(*x_ends):
        yield text("small", across(at), BOTTOM + 13, number(at), "middle")


def _marked(drawing: Graph, across: Scale, width: float) -> Iterator[Mark]:
    """Yield the line that marks one place across the graph, and its label."""
    if drawing.mark_x is not None:
        at = across(drawing.mark_x)
        yield line("accent", (at, TOP), (at, BOTTOM))
        yield _beside(at, 11, drawing.mark_label, width)


def _beside(x: float, y: float, words: str, width: float) -> Mark:
    """A label beside a place, on the side where it finds room."""
    to_the_left = x + 3 + len(words) * LETTER > width
    return text(
        "accent", x - 3 if to_the_left else x + 3, y, words, "end" if to_the_left else "start"
    )


def _curve_is_above(asked: AskedPoint, curves: Iterable[Curve]) -> bool:
    """Whether the curves pass above what is asked, where its name would cross them."""
    nearest = [min(curve.points, key=lambda point: abs(point[0] - asked.x)) for curve in curves]
    return any(y >= asked.y for _, y in nearest)


def _asked(asked: AskedPoint, place: Place, width: float, *, below: bool) -> Iterator[Mark]:
    """What is asked, as a ring that no curve can hide, with its name."""
    x, y = place(asked.x, asked.y)
    yield line("accent", (x - 5, y), (x, y - 5), (x + 5, y), (x, y + 5), (x - 5, y))
    yield box("accent", x - 1.5, y - 1.5, 3.0, 3.0)
    side = 5 if x + 8 + len(asked.label) * LETTER <= width else -5
    yield _beside(x + side, y + (14 if below else -6), asked.label, width)


def _curves(curves: Iterable[Curve], place: Place, names: list[str]) -> Iterator[Mark]:
    """The curves, each with its name beside its last point."""
    paths = [(curve, tuple(place(x, y) for x, y in curve.points)) for curve in curves]
    heights = apart([path[-1][1] for _, path in paths], SMALL + 2, 12.0, BOTTOM - 4)
    for (curve, path), height, name in zip(paths, heights, names, strict=True):
        if len(path) > 1:
            yield line("dashed" if curve.dashed else "ink", *path)
        if curve.dots or len(path) == 1:
            yield from (Mark("dot", "ink", (point,)) for point in path)
        if name:
            yield text("small", path[-1][0] + 5, height + 3, name)


def _legend(curves: list[Curve], names: list[str] | None, width: float) -> Iterator[Mark]:
    """The names of the curves, one line each below the graph."""
    for at, curve in enumerate(curves):
        y = HEIGHT + NAME_LINE * at + 8
        yield line("dashed" if curve.dashed else "ink", (4, y - 4), (28, y - 4))
        lead = f"{names[at]} " if names else ""
        yield text("small", 34, y, shortened(lead + curve.label, width - 34))
