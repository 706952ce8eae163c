"""Marks in a box, and what every kind of drawing makes them with.

Coordinates run from the top left, in points; a mark says what it is (``tone``), not what colour it
has.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from inspector.conversion.core.drawing import Axis
from inspector.values.formatting import grouped

# The width of a letter of a label, on the average.
LETTER = 5.7
# Below this width labels are above what they name, and names of curves below the graph.
NARROW = 400.0
SMALL = 9.0

Scale = Callable[[float], float]


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


def shortened(label: str, room: float) -> str:
    """Return a label cut to the room that it has, with a sign that it was.

    Parameters
    ----------
    label : str
    room : float
        Points.

    Returns
    -------
    str
    """
    # The width of letters is known on the average only, so some points are kept free.
    most = max(int((room - 8) / LETTER), 4)
    return label if len(label) <= most else label[: most - 1].rstrip() + "…"


def number(value: float) -> str:
    """Return the number of a tick as it is printed.

    Parameters
    ----------
    value : float

    Returns
    -------
    str
    """
    return grouped(value, ",.10g")


def axis_label(axis: Axis) -> str:
    """Return the label of an axis with its unit, which is the reader's own already.

    Parameters
    ----------
    axis : Axis

    Returns
    -------
    str
    """
    return f"{axis.label}, {axis.unit}" if axis.unit else axis.label


def text(tone: str, x: float, y: float, words: str, anchor: str = "start") -> Mark:
    """Return a line of text at a point.

    Parameters
    ----------
    tone : str
    x, y : float
        Points.
    words : str
    anchor : str

    Returns
    -------
    Mark
    """
    return Mark("text", tone, ((x, y),), words, anchor)


def line(tone: str, *points: tuple[float, float]) -> Mark:
    """Return a line through points.

    Parameters
    ----------
    tone : str
    *points : tuple of (float, float)

    Returns
    -------
    Mark
    """
    return Mark("line", tone, points)


def box(tone: str, left: float, top: float, width: float, height: float) -> Mark:
    """Return a filled box.

    Parameters
    ----------
    tone : str
    left, top, width, height : float
        Points.

    Returns
    -------
    Mark
    """
    return Mark("box", tone, ((left, top), (width, height)))


def scale(low: float, high: float, left: float, right: float) -> Scale:
    """Return values from low to high onto points from left to right.

    Parameters
    ----------
    low, high : float
        In the unit of the axis.
    left, right : float
        Points.

    Returns
    -------
    callable
    """
    # A scale of one value has no length; any will do.
    reach = high - low or 1
    return lambda value: left + (value - low) / reach * (right - left)


def apart(wanted: list[float], gap: float, top: float, bottom: float) -> list[float]:
    """Return heights near those wanted, in their order, a gap apart and within the room there is.

    Parameters
    ----------
    wanted : list of float
    gap, top, bottom : float
        Points.

    Returns
    -------
    list of float
    """
    # Down once to part them, then up again to bring the last ones back into the box.
    order = sorted(range(len(wanted)), key=lambda index: wanted[index])
    found, last = list(wanted), top - gap
    for index in order:
        found[index] = last = max(wanted[index], last + gap, top)
    last = bottom + gap
    for index in reversed(order):
        found[index] = last = max(min(found[index], last - gap), top)
    return found
