"""What is drawn: level marks, verdict squares, spans, margin notes, page numbers, photos."""

import math

from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable

from inspector.assess.checked import Condition
from inspector.assess.model import Part
from inspector.report.theme import (
    DEEP,
    INK,
    LINE,
    PLAIN,
    SLANTED,
)
from inspector.values.cell_text import DASH
from inspector.values.vocabulary import FIRM, PRICE_BOTH

# How far the square of a rating is filled.
LEVELS = {"good": 1.0, "fair": 0.6, "poor": 0.25, "failed": 0.0}


def draw_level(pen: Canvas, rating: str, x: float, y: float, side: float) -> None:
    """Draw the mark of a rating: a square filled to its level, failed struck through.

    Parameters
    ----------
    pen : Canvas
    rating : str
    x, y, side : float
        Its lower left corner and its size, points.
    """
    pen.setStrokeColor(INK)
    pen.setFillColor(INK)
    pen.setLineWidth(0.8)
    if rating == "failed":
        pen.line(x, y, x + side, y + side)
    # Without colour: the level alone shows the rating in a copy.
    elif rating in LEVELS:
        pen.rect(x, y, side, side * LEVELS[rating], stroke=0, fill=1)
    pen.rect(x, y, side, side, stroke=1, fill=0)
    _say(pen, rating, x, y, side)


def _say(pen: Canvas, word: str, x: float, y: float, size: float) -> None:
    """Put a word at a mark that is read aloud, searched and copied, and not seen."""
    said = pen.beginText(x, y)
    said.setFont(PLAIN, size)
    said.setTextRenderMode(3)
    said.textOut(word)
    # The mode stays with the page, and what is drawn next must be seen.
    said.setTextRenderMode(0)
    pen.drawText(said)


class LevelMark(Flowable):
    """A rating as a small square filled to its level; failed is empty and struck through."""

    def __init__(self, rating: str, side: float = 3 * mm):
        super().__init__()
        self.rating, self.width, self.height = rating, side, side

    def draw(self) -> None:
        """Draw at the origin."""
        draw_level(self.canv, self.rating, 0, 0, self.width)


class VerdictSquare(Flowable):
    """Solid: retain. Half filled: refurbish. Open and struck through: remove.

    The border is whole where the word is firm, and dotted where it is not.
    """

    def __init__(self, part: Part, side: float = 3.4 * mm):
        super().__init__()
        self.verdict, self.width, self.height = part.verdict, side, side
        self.firm = part.firmness == FIRM

    def draw(self) -> None:
        """Draw at the origin."""
        pen, side = self.canv, self.width
        weight = max(0.9, side / 25)
        pen.setStrokeColor(INK)
        pen.setFillColor(INK)
        pen.setLineWidth(weight)
        inset = 0 if self.firm else weight * 1.6
        filled = {"retain": 1, "refurbish": 0.5, PRICE_BOTH: 0.5}.get(self.verdict, 0)
        if filled:
            # A word that is not firm fills within its border, so that the dots stay visible.
            width, height = side * filled - inset, side - 2 * inset
            pen.rect(inset, inset, width - (inset if filled == 1 else 0), height, 0, 1)
        if self.verdict in ("remove", PRICE_BOTH):
            pen.line(0, 0, side, side)
        # What is not firm is dotted, so that it cannot be taken for a word to rely on.
        if not self.firm:
            pen.setDash(weight * 1.2, weight * 1.4)
        pen.rect(0, 0, side, side, stroke=1, fill=0)


class MetMark(Flowable):
    """What is asked is met (solid), not met (struck through) or open (dotted)."""

    def __init__(self, met: bool | None, side: float = 2.9 * mm):
        super().__init__()
        self.met, self.width, self.height = met, side, side

    def draw(self) -> None:
        """Draw at the origin."""
        pen, side = self.canv, self.width
        pen.setStrokeColor(INK)
        pen.setFillColor(INK)
        pen.setLineWidth(0.9)
        if self.met is None:
            pen.setDash(1.1, 1.3)
        elif not self.met:
            pen.line(0, 0, side, side)
        pen.rect(0, 0, side, side, stroke=1, fill=int(self.met is True))
        pen.setDash()


class SpanBar(Flowable):
    """Condition as a span from 0 to 100, with a stroke and a figure where it is.

    The bar is what the unseen could still make of it. The figure slants, as what it says is no
    measurement.

    Parameters
    ----------
    condition : Condition
    width : float
        Of bar and figure, points.
    """

    def __init__(self, condition: Condition, width: float):
        super().__init__()
        self.condition, self.width, self.height = condition, width, 4.2 * mm
        self.points = condition.shown

    def draw(self) -> None:
        """Draw at the origin, the figure at the right."""
        pen, middle, scale = self.canv, 1.7 * mm, (self.width - 8 * mm) / 100
        self._draw_scale(middle, scale)
        low, high = self.condition.low, self.condition.high
        pen.setFillColor(DEEP)
        # A span of nothing is still drawn, or a fully seen system would look empty.
        bar = max(0.8, scale * (high - low))
        pen.rect(scale * low, middle - 1 * mm, bar, 2 * mm, stroke=0, fill=1)
        pen.setFillColor(INK)
        # Too little was seen for a figure: the span alone is shown.
        if self.points is None:
            pen.setFont(PLAIN, 8.4)
            pen.drawRightString(self.width, middle - 1 * mm, DASH)
            return
        at = scale * self.points
        pen.rect(at - 0.8, middle - 1.7 * mm, 1.6, 3.4 * mm, stroke=0, fill=1)
        pen.setFont(SLANTED, 9)
        # Rounded down as in every sentence, so that 69.9 never reads 70.
        pen.drawRightString(self.width, middle - 1.1 * mm, f"{math.floor(self.points)}")

    def _draw_scale(self, middle: float, scale: float) -> None:
        """The line from 0 to 100 with its three marks."""
        pen = self.canv
        pen.setStrokeColor(LINE)
        pen.setLineWidth(0.5)
        pen.line(0, middle, scale * 100, middle)
        for points in (0, 50, 100):
            pen.line(scale * points, middle - 1.2 * mm, scale * points, middle + 1.2 * mm)


class Rule(Flowable):
    """A line across the column.

    Parameters
    ----------
    width, weight : float
        How long and how thick it is, points.
    before, after : float
        The space above and below, points.
    """

    def __init__(self, width: float, weight: float = 0.5, before: float = 0, after: float = 0):
        super().__init__()
        self.width, self.height, self.weight = width, weight, weight
        self.spaceBefore, self.spaceAfter = before, after

    def draw(self) -> None:
        """Draw it."""
        self.canv.setStrokeColor(INK)
        self.canv.setLineWidth(self.weight)
        self.canv.line(0, 0, self.width, 0)
