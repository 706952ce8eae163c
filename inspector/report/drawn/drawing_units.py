"""A chapter's drawing in the reader's units, before it is scaled: ticks are round in them."""

from dataclasses import replace

from inspector.conversion.core.drawing import AskedPoint, Axis, Bar, Bars, Drawing, Graph, Polar
from inspector.values.cell_text import reader_unit
from inspector.values.units import convert


def in_system(drawing: Drawing, system: str) -> Drawing:
    """Return a drawing with its values and units in a system of units.

    Parameters
    ----------
    drawing : Drawing
    system : str
        "si" or "us".

    Returns
    -------
    Drawing
        Units without a counterpart, and currencies, stay.
    """
    if isinstance(drawing, Bars):
        bars = tuple(_bar_in(bar, drawing.unit, system) for bar in drawing.bars)
        return replace(drawing, unit=reader_unit(drawing.unit, system), bars=bars)
    if isinstance(drawing, Graph):
        return _graph_in(drawing, system)
    if isinstance(drawing, Polar):
        return _polar_in(drawing, system)
    return drawing


def _bar_in(bar: Bar, unit: str, system: str) -> Bar:
    """Return a bar in the reader's units."""
    low, point, high, limit = (
        _value_in(value, unit, system) for value in (bar.low, bar.point, bar.high, bar.limit)
    )
    return Bar(bar.label, low, point, high, limit)


def _graph_in(graph: Graph, system: str) -> Graph:
    """Return a graph with its points, axes and mark in a system of units."""
    curves = tuple(
        replace(curve, points=tuple(_point_in(point, graph, system) for point in curve.points))
        for curve in graph.curves
    )
    return replace(
        graph,
        x=Axis(graph.x.label, reader_unit(graph.x.unit, system)),
        y=Axis(graph.y.label, reader_unit(graph.y.unit, system)),
        curves=curves,
        mark_x=_value_in(graph.mark_x, graph.x.unit, system),
        asked=tuple(_asked_in(asked, graph, system) for asked in graph.asked),
    )


def _polar_in(polar: Polar, system: str) -> Polar:
    """Return a polar drawing with its values in a system of units; directions stay."""
    curves = tuple(
        replace(
            curve,
            points=tuple(
                (side, _value_in(value, polar.unit, system)) for side, value in curve.points
            ),
        )
        for curve in polar.curves
    )
    asked = _value_in(polar.asked, polar.unit, system)
    return replace(polar, unit=reader_unit(polar.unit, system), curves=curves, asked=asked)


def _asked_in(asked: AskedPoint, graph: Graph, system: str) -> AskedPoint:
    """Return what is asked in the reader's units."""
    x, y = _point_in((asked.x, asked.y), graph, system)
    return replace(asked, x=x, y=y)


def _point_in(point: tuple[float, float], graph: Graph, system: str) -> tuple[float, float]:
    """Return a point of a graph in the reader's units."""
    x, y = point
    return _value_in(x, graph.x.unit, system), _value_in(y, graph.y.unit, system)


def _value_in(value: float | None, unit: str, system: str) -> float | None:
    """Return a value in the reader's unit; None stays None."""
    target = reader_unit(unit, system)
    return value if value is None or target == unit else convert(value, unit, target)
