"""Closed curves around the vessel: rings of equal value, ahead at the top, names below."""

import math
from collections.abc import Iterator

from inspector.conversion.core.drawing import Curve, Polar
from inspector.report.drawn.picture import Mark, line, number, shortened, text, ticks

# Points from the centre to the outermost ring, and around it for the names of the sides.
RADIUS, AROUND = 112.0, 22.0
LEGEND_LINE, SAMPLE = 17.0, 26.0
# Degrees between two points of a ring, and where its number stands, clear of the four sides.
STEP, NUMBERS_AT = 6, 45.0
SIDES = ((0, "ahead"), (90, "starboard"), (180, "astern"), (270, "port"))

# Below this a curve is a point in the middle.
LEAST = 1e-6


def polar(drawing: Polar, width: float) -> tuple[float, list[Mark]]:
    """Return the height and the marks of a polar drawing.

    Parameters
    ----------
    drawing : Polar
    width : float
        Points.

    Returns
    -------
    tuple of (float, list of Mark)
    """
    curves = [curve for curve in drawing.curves if curve.points]
    if not curves:
        return 20.0, [text("small", 0, 14, "Nothing to draw yet.")]
    values = [value for curve in curves for _, value in curve.points]
    # What is no wind at all makes no scale: a ring of less than the least would be none.
    most = max([*values, drawing.asked or 0.0])
    most = most if most > LEAST else 1.0
    rose = _Rose(width / 2, AROUND + RADIUS, RADIUS / most)
    marks = [*_rings(rose, most), *_sides(rose)]
    if drawing.asked:
        marks.append(rose.ring("accent", drawing.asked))
    marks += [
        line("dashed" if curve.dashed else "ink", *(rose.place(*point) for point in curve.points))
        for curve in curves
    ]
    below = 2 * (AROUND + RADIUS) + 4
    named = [(_tone(curve), curve.label) for curve in curves]
    if drawing.asked:
        named.append(("accent", f"{drawing.asked_label}, {number(round(drawing.asked, 1))}"))
    marks += _legend(named, below, width)
    height = below + LEGEND_LINE * len(named) + 16
    marks.append(text("small", 0, height - 4, f"rings: {drawing.unit}"))
    return height, marks


class _Rose:
    """The centre of the drawing, and how many points one unit is."""

    def __init__(self, x: float, y: float, scale: float):
        self.x, self.y, self.scale = x, y, scale

    def place(self, side: float, value: float) -> tuple[float, float]:
        """The point of a value from one side, clockwise from ahead [deg]."""
        reach, angle = max(value, 0.0) * self.scale, math.radians(side)
        return self.x + reach * math.sin(angle), self.y - reach * math.cos(angle)

    def ring(self, tone: str, value: float) -> Mark:
        """A ring of one value from every side."""
        return line(tone, *(self.place(side, value) for side in range(0, 361, STEP)))


def _rings(rose: _Rose, most: float) -> Iterator[Mark]:
    """Yield the rings of round values, each with its number."""
    for value in ticks(0.0, most, 4):
        if value > 0:
            yield rose.ring("faint", value)
            x, y = rose.place(NUMBERS_AT, value)
            yield text("small", x + 2, y - 2, number(value))


def _sides(rose: _Rose) -> Iterator[Mark]:
    """Yield the cross through the centre, and the names of the four sides."""
    out = RADIUS / rose.scale
    for side, name in SIDES:
        yield line("faint", (rose.x, rose.y), rose.place(side, out))
        x, y = rose.place(side, out)
        if side in (0, 180):
            yield text("small", x, y + (14.0 if side else -6.0), name, "middle")
        else:
            yield text("small", x + (5 if side == 90 else -5), y - 4, name, _outward(side))


def _outward(side: int) -> str:
    return "start" if side == 90 else "end"


def _tone(curve: Curve) -> str:
    return "dashed" if curve.dashed else "ink"


def _legend(named: list[tuple[str, str]], below: float, width: float) -> Iterator[Mark]:
    """Yield a sample of each line with its name."""
    for at, (tone, name) in enumerate(named):
        y = below + LEGEND_LINE * (at + 0.5)
        yield line(tone, (0.0, y), (SAMPLE, y))
        yield text("label", SAMPLE + 6, y + 4, shortened(name, width - SAMPLE - 6))
