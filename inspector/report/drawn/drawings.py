"""A drawing of the conversion as a flowable: the marks of geometry.py in the report's ink."""

from reportlab.platypus import Flowable

from inspector.conversion.core.drawing import Drawing
from inspector.report.drawn.geometry import draw
from inspector.report.drawn.picture import Mark
from inspector.report.theme import ACCENT, BOLD, DEEP, INK, LINE, PLAIN, SOFT, plain

_INKS = {
    "ink": INK,
    "reach": DEEP,
    "faint": LINE,
    "accent": ACCENT,
    "label": INK,
    "small": SOFT,
    "dashed": SOFT,
}
_SIZES = {"label": 8.4, "small": 7.4, "accent": 7.4}
# Laid out for a wider column and made smaller: as usual, and at least where it then fits the page.
_SCALE, _LEAST = 0.86, 0.75


class Drawn(Flowable):
    """One drawing as wide as the text column."""

    def __init__(self, drawing: Drawing, width: float, units: str = "si"):
        super().__init__()
        self.picture = draw(drawing, width / _SCALE, units)
        self.width, self.scale = width, _SCALE
        self.height = (self.picture.height + 4) * _SCALE
        self.spaceBefore = self.spaceAfter = 4

    def fit(self, room: float) -> None:
        """Take the size at which it fits a room, or its usual one where none does.

        Parameters
        ----------
        room : float
            How much height there is, points.
        """
        high = self.picture.height + 4
        self.scale = _SCALE if room < high * _LEAST else min(_SCALE, room / high)
        self.height = high * self.scale

    def draw(self) -> None:
        """Draw every mark; the page's origin is at the bottom."""
        self.canv.scale(self.scale, self.scale)
        for mark in self.picture.marks:
            ink = _INKS[mark.tone]
            self.canv.setStrokeColor(ink)
            self.canv.setFillColor(ink)
            # Kinds are those of Mark: line, box, dot and text.
            getattr(self, "_" + mark.kind)(mark)

    def _up(self, y: float) -> float:
        # The PDF counts from the bottom upward, the drawing from its top downward as the page does.
        return self.picture.height - y

    def _box(self, mark: Mark) -> None:
        """Draw a filled box; its points are the corner and the size."""
        (x, y), (width, height) = mark.points
        self.canv.rect(x, self._up(y + height), width, height, stroke=0, fill=1)

    def _line(self, mark: Mark) -> None:
        """Draw a polyline; thin where it is only a guide."""
        self.canv.setLineWidth(0.4 if mark.tone == "faint" else 1.2)
        # Dashes tell curves apart in a copy without colour.
        self.canv.setDash(*((3, 2) if mark.tone == "dashed" else ()))
        path = self.canv.beginPath()
        path.moveTo(mark.points[0][0], self._up(mark.points[0][1]))
        for x, y in mark.points[1:]:
            path.lineTo(x, self._up(y))
        self.canv.drawPath(path, stroke=1, fill=0)
        self.canv.setDash()

    def _dot(self, mark: Mark) -> None:
        """Draw a dot of a measured point."""
        x, y = mark.points[0]
        self.canv.circle(x, self._up(y), 2.2, stroke=0, fill=1)

    def _text(self, mark: Mark) -> None:
        """Draw a line of text at its anchor."""
        x, y = mark.points[0]
        self.canv.setFont(BOLD if mark.tone == "accent" else PLAIN, _SIZES.get(mark.tone, 8.4))
        put = {
            "start": self.canv.drawString,
            "middle": self.canv.drawCentredString,
            "end": self.canv.drawRightString,
        }[mark.anchor]
        put(x, self._up(y), plain(mark.text, 60))


class Titled(Flowable):
    """A drawing with its title above and its sentence below, which never leave it.

    Parameters
    ----------
    title : Flowable
    drawn : Drawn
    caption : Flowable
    """

    def __init__(self, title: Flowable, drawn: Drawn, caption: Flowable):
        super().__init__()
        self.title, self.drawn, self.caption = title, drawn, caption
        self.spaceBefore, self.spaceAfter = 6, 4

    def wrap(self, width: float, height: float) -> tuple[float, float]:
        """Return the room that it takes, smaller where it then still fits on this page.

        Parameters
        ----------
        width, height : float
            The room there is, points.

        Returns
        -------
        tuple of float
            Width and height, points.
        """
        words = sum(each.wrap(width, height)[1] for each in (self.title, self.caption))
        self.drawn.fit(height - words - 6)
        self.width, self.height = width, words + self.drawn.height + 6
        return self.width, self.height

    def draw(self) -> None:
        """Draw the three below each other."""
        below = self.height
        for each, gap in ((self.title, 3), (self.drawn, 3), (self.caption, 0)):
            below -= each.height
            each.drawOn(self.canv, 0, below)
            below -= gap
