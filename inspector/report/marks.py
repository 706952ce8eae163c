"""What is drawn: level marks, verdict squares, spans, margin notes, page numbers, photos."""

import math
from pathlib import Path

from PIL import Image as Picture
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Image, Paragraph

from inspector.assess.checked import Condition
from inspector.assess.model import Part
from inspector.report.theme import (
    ACCENT,
    DEEP,
    INK,
    LINE,
    PLAIN,
    SLANTED,
    SOFT,
    STYLES,
    WHITE,
    Page,
)
from inspector.values.cell_text import DASH
from inspector.values.vocabulary import FIRM, PRICE_BOTH

# How far the square of a rating is filled.
LEVELS = {"good": 1.0, "fair": 0.6, "poor": 0.25, "failed": 0.0}


class LevelMark(Flowable):
    """A rating as a small square filled to its level; failed is empty and struck through."""

    def __init__(self, rating: str, side: float = 3 * mm):
        super().__init__()
        self.rating, self.width, self.height = rating, side, side

    def draw(self) -> None:
        """Draw at the origin."""
        pen, side = self.canv, self.width
        pen.setStrokeColor(INK)
        pen.setFillColor(INK)
        pen.setLineWidth(0.8)
        if self.rating == "failed":
            pen.line(0, 0, side, side)
        # Without colour: the level alone shows the rating in a copy.
        elif self.rating in LEVELS:
            pen.rect(0, 0, side, side * LEVELS[self.rating], stroke=0, fill=1)
        pen.rect(0, 0, side, side, stroke=1, fill=0)


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


class SideNote(Flowable):
    """A short note in the margin column, beside what follows; takes no room in the text column."""

    def __init__(self, markup: str, page: Page):
        super().__init__()
        self.note, self.page = Paragraph(markup, STYLES["side"]), page
        self.keepWithNext = 1

    def wrap(self, _width: float, _height: float) -> tuple[float, float]:
        """No room at all."""
        return 0, 0

    def draw(self) -> None:
        """Draw left of the column, downwards from here."""
        # Drawn downwards from the line that it belongs to, whatever the note's length.
        _, height = self.note.wrapOn(self.canv, self.page.note, self.page.height)
        self.note.drawOn(self.canv, self.page.margin - self.page.left, -height)


class PageOf(Flowable):
    """The number of the page on which a section begins, as the layout before this one found it."""

    def __init__(self, key: str):
        super().__init__()
        self.key, self.width, self.height = key, 8 * mm, 3.2 * mm

    def draw(self) -> None:
        """Draw at the right, and make it a link."""
        # "" in the first pass, in which no section has been placed yet.
        number = self.canv._doctemplate.places.get(self.key, "")
        self.canv.setFont(PLAIN, 8.4)
        self.canv.setFillColor(SOFT)
        self.canv.drawRightString(self.width, 0.8, str(number))
        self.canv.linkRect("", self.key, (0, -2, self.width, self.height), relative=1, thickness=0)


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


class NoPicture(Flowable):
    """An empty frame where a photo is registered but its file is not here."""

    def __init__(self, width: float, height: float):
        super().__init__()
        self.width, self.height = width, height

    def draw(self) -> None:
        """Draw the frame with its sentence."""
        self.canv.setStrokeColor(LINE)
        self.canv.setFillColor(WHITE)
        self.canv.setLineWidth(0.5)
        self.canv.rect(0, 0, self.width, self.height, stroke=1, fill=0)
        self.canv.setFillColor(ACCENT)
        self.canv.setFont(PLAIN, 7.8)
        self.canv.drawCentredString(
            self.width / 2, self.height / 2, "The picture itself is not on this computer."
        )


def picture(path: Path | None, width: float, height: float) -> Flowable:
    """Return a photo that fits into a room; a frame where there is none that can be read.

    Parameters
    ----------
    path : Path or None
        Drawn by its path, so that its bytes go in unchanged and once.
    width, height : float
        The room, points.

    Returns
    -------
    Flowable
    """
    try:
        with Picture.open(path) as opened:
            across, down = opened.size
    # None has no `seek`, a damaged file raises either of the others: the report goes on without it.
    except (OSError, AttributeError, ValueError, Picture.DecompressionBombError):
        return NoPicture(width, height / 2)
    scale = min(width / across, height / down)
    # Lazy: with hundreds of photos the open files would run out.
    return Image(str(path), width=across * scale, height=down * scale, lazy=2, hAlign="LEFT")
