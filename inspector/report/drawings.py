"""A drawing of the conversion as a flowable: the marks of geometry.py in the report's ink."""

from reportlab.platypus import Flowable

from inspector.conversion.chapters import Drawing
from inspector.report.geometry import Mark, draw
from inspector.report.theme import ACCENT, BOLD, DEEP, INK, LINE, PLAIN, SOFT, plain

_INKS = {"ink": INK, "reach": DEEP, "faint": LINE, "accent": ACCENT, "label": INK, "small": SOFT, "dashed": SOFT}
_SIZES = {"label": 8.4, "small": 7.4, "accent": 7.4}


class Drawn(Flowable):
    """One drawing as wide as the text column."""

    def __init__(self, drawing: Drawing, width: float):
        super().__init__()
        self.picture = draw(drawing, width)
        self.width, self.height = width, self.picture.height + 4
        self.spaceBefore = self.spaceAfter = 4

    def draw(self) -> None:
        """Draw every mark; the page's origin is at the bottom."""
        for mark in self.picture.marks:
            ink = _INKS[mark.tone]
            self.canv.setStrokeColor(ink)
            self.canv.setFillColor(ink)
            getattr(self, "_" + mark.kind)(mark)

    def _up(self, y: float) -> float:
        return self.picture.height - y

    def _box(self, mark: Mark) -> None:
        (x, y), (width, height) = mark.points
        self.canv.rect(x, self._up(y + height), width, height, stroke=0, fill=1)

    def _line(self, mark: Mark) -> None:
        self.canv.setLineWidth(0.4 if mark.tone == "faint" else 1.2)
        self.canv.setDash(*((3, 2) if mark.tone == "dashed" else ()))
        path = self.canv.beginPath()
        path.moveTo(mark.points[0][0], self._up(mark.points[0][1]))
        for x, y in mark.points[1:]:
            path.lineTo(x, self._up(y))
        self.canv.drawPath(path, stroke=1, fill=0)
        self.canv.setDash()

    def _dot(self, mark: Mark) -> None:
        x, y = mark.points[0]
        self.canv.circle(x, self._up(y), 2.2, stroke=0, fill=1)

    def _text(self, mark: Mark) -> None:
        x, y = mark.points[0]
        self.canv.setFont(BOLD if mark.tone == "accent" else PLAIN, _SIZES.get(mark.tone, 8.4))
        put = {"start": self.canv.drawString, "middle": self.canv.drawCentredString, "end": self.canv.drawRightString}[mark.anchor]
        put(x, self._up(y), plain(mark.text, 60))
