"""What is drawn rather than written: level marks, verdict squares, the condition as a span, photos, notes in the margin, page numbers."""

import math
from pathlib import Path

from PIL import Image as Picture
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Image, Paragraph

from inspector.assess.shapes import Condition
from inspector.report.theme import ACCENT, DEEP, INK, LINE, PLAIN, SLANTED, SOFT, STYLES, WHITE, Page
from inspector.report.wording import told_points

LEVELS = {"good": 1.0, "fair": 0.6, "poor": 0.25, "failed": 0.0}


class LevelMark(Flowable):
    """A rating as a small square filled to its level; failed is empty and struck through. The word stands beside it."""

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
        elif self.rating in LEVELS:
            pen.rect(0, 0, side, side * LEVELS[self.rating], stroke=0, fill=1)
        pen.rect(0, 0, side, side, stroke=1, fill=0)


class VerdictSquare(Flowable):
    """Solid: retain. Half filled: refurbish. Open and struck through: remove. Dotted: undecided."""

    def __init__(self, verdict: str, side: float = 3.4 * mm):
        super().__init__()
        self.verdict, self.width, self.height = verdict, side, side

    def draw(self) -> None:
        """Draw at the origin."""
        pen, side = self.canv, self.width
        weight = max(0.9, side / 25)
        pen.setStrokeColor(INK)
        pen.setFillColor(INK)
        pen.setLineWidth(weight)
        filled = {"retain": 1, "refurbish": 0.5}.get(self.verdict, 0)
        if filled:
            pen.rect(0, 0, side * filled, side, stroke=0, fill=1)
        if self.verdict == "remove":
            pen.line(0, 0, side, side)
        if self.verdict not in ("retain", "refurbish", "remove"):
            pen.setDash(weight * 1.2, weight * 1.4)
        pen.rect(0, 0, side, side, stroke=1, fill=0)


class SpanBar(Flowable):
    """Condition as a span from 0 to 100: the bar is what the unseen could still make of it, the stroke is where it stands, the figure slants.

    Below `least` of coverage (0 to 1) it shows the span alone: so little was seen that a figure would mislead.
    """

    def __init__(self, condition: Condition, width: float, least: float = 0.0):
        super().__init__()
        self.condition, self.width, self.height, self.told = condition, width, 4.2 * mm, told_points(condition, least)

    def draw(self) -> None:
        """Draw at the origin, the figure at the right."""
        pen, state = self.canv, self.condition
        track, middle = self.width - 8 * mm, 1.7 * mm
        pen.setStrokeColor(LINE)
        pen.setLineWidth(0.5)
        pen.line(0, middle, track, middle)
        for at in (0, 50, 100):
            pen.line(track * at / 100, middle - 1.2 * mm, track * at / 100, middle + 1.2 * mm)
        pen.setFillColor(DEEP)
        pen.rect(track * state.low / 100, middle - 1 * mm, max(0.8, track * (state.high - state.low) / 100), 2 * mm, stroke=0, fill=1)
        pen.setFillColor(INK)
        if self.told is None:
            pen.setFont(PLAIN, 8.4)
            pen.drawRightString(self.width, middle - 1 * mm, "–")
            return
        pen.rect(track * self.told / 100 - 0.8, middle - 1.7 * mm, 1.6, 3.4 * mm, stroke=0, fill=1)
        pen.setFont(SLANTED, 9)
        # rounded down as in every sentence, so that 69.9 never reads 70
        pen.drawRightString(self.width, middle - 1.1 * mm, f"{math.floor(self.told)}")


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
        _, height = self.note.wrapOn(self.canv, self.page.note, self.page.height)
        self.note.drawOn(self.canv, self.page.margin - self.page.left, -height)


class PageOf(Flowable):
    """The number of the page on which a section begins, as the layout before this one found it."""

    def __init__(self, key: str):
        super().__init__()
        self.key, self.width, self.height = key, 8 * mm, 3.2 * mm

    def draw(self) -> None:
        """Draw at the right, and make it a link."""
        number = self.canv._doctemplate.places.get(self.key, "")
        self.canv.setFont(PLAIN, 8.4)
        self.canv.setFillColor(SOFT)
        self.canv.drawRightString(self.width, 0.8, str(number))
        self.canv.linkRect("", self.key, (0, -2, self.width, self.height), relative=1, thickness=0)


class Rule(Flowable):
    """A line across the column, `weight` points thick."""

    def __init__(self, width: float, weight: float = 0.5, before: float = 0, after: float = 0):
        super().__init__()
        self.width, self.height, self.weight, self.spaceBefore, self.spaceAfter = width, weight, weight, before, after

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
        self.canv.drawCentredString(self.width / 2, self.height / 2, "The picture itself is not on this computer.")


def picture(path: Path | None, width: float, height: float) -> Flowable:
    """The photo in that room, drawn by its path so that its bytes go in unchanged and once; a frame where there is none that can be read."""
    try:
        with Picture.open(path) as opened:
            across, down = opened.size
    except (OSError, AttributeError, ValueError, Picture.DecompressionBombError):
        return NoPicture(width, height / 2)
    scale = min(width / across, height / down)
    return Image(str(path), width=across * scale, height=down * scale, lazy=2, hAlign="LEFT")
