"""Drawings of the conversion as data: bars, graphs and timelines.

Values are in the unit that is named beside them; whoever draws converts both to the reader's units.
"""

from dataclasses import dataclass
from datetime import date

from inspector.values.quantity import Cell


@dataclass(frozen=True)
class Bar:
    """One bar of a drawing of spans.

    Parameters
    ----------
    label : str
    low, high : float
        The ends of the span [unit of the drawing].
    point : float or None
        The best single value [unit of the drawing].
    limit : float or None
        A mark of its own on this bar [unit of the drawing].
    """

    label: str
    low: float
    point: float | None
    high: float
    limit: float | None = None


@dataclass(frozen=True)
class Bars:
    """Spans side by side on one axis, each with its point.

    Parameters
    ----------
    title : str
    unit : str
        The unit of all values, or a currency.
    bars : tuple of Bar
    described : Cell
        The drawing in one sentence, for those who cannot see it.
    limit_label : str
        What the limits of the bars are.
    from_zero : bool
        Whether the axis begins at zero; where it does not, lengths of bars are not compared.
    """

    title: str
    unit: str
    bars: tuple[Bar, ...]
    described: Cell
    limit_label: str = ""
    from_zero: bool = True


@dataclass(frozen=True)
class Axis:
    """What runs along one side of a graph, and its unit ("" for a plain number)."""

    label: str
    unit: str = ""


@dataclass(frozen=True)
class Curve:
    """One line of a graph.

    Parameters
    ----------
    label : str
    points : tuple of (float, float)
        From left to right, each [unit of x, unit of y].
    dashed : bool
        Whether it is an estimate.
    dots : bool
        Whether its points are measured, so that each is marked.
    """

    label: str
    points: tuple[tuple[float, float], ...]
    dashed: bool = False
    dots: bool = False


@dataclass(frozen=True)
class AskedPoint:
    """What is asked of one value at another, such as the brief's range at its speed.

    Parameters
    ----------
    x, y : float
        [unit of x, unit of y of the graph]
    label : str
    """

    x: float
    y: float
    label: str


@dataclass(frozen=True)
class Graph:
    """Curves over one axis.

    Parameters
    ----------
    title : str
    x, y : Axis
    curves : tuple of Curve
    described : Cell
        The drawing in one sentence, for those who cannot see it.
    mark_x : float or None
        A line that the reader looks for, such as the brief's speed [unit of x].
    mark_label : str
        What that line is.
    asked : tuple of AskedPoint
        What is asked, each marked beside the curves.
    """

    title: str
    x: Axis
    y: Axis
    curves: tuple[Curve, ...]
    described: Cell
    mark_x: float | None = None
    mark_label: str = ""
    asked: tuple[AskedPoint, ...] = ()


@dataclass(frozen=True)
class Period:
    """A stretch on a timeline; ``state`` is a word printed with it (due, in window, overdue)."""

    label: str
    start: date
    end: date
    state: str


@dataclass(frozen=True)
class Timeline:
    """Stretches of time, one line each, with today marked."""

    title: str
    today: date
    periods: tuple[Period, ...]
    described: Cell


@dataclass(frozen=True)
class Polar:
    """Closed curves around the vessel, ahead at the top: how much she bears from every side.

    Parameters
    ----------
    title : str
    unit : str
        The unit of all values.
    curves : tuple of Curve
        Points of direction, clockwise from ahead [deg], and value [unit].
    described : Cell
        The drawing in one sentence, for those who cannot see it.
    asked : float or None
        What is asked from every side [unit].
    asked_label : str
        What that is.
    """

    title: str
    unit: str
    curves: tuple[Curve, ...]
    described: Cell
    asked: float | None = None
    asked_label: str = ""


Drawing = Bars | Graph | Polar | Timeline
