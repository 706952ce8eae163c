"""What she costs until she reaches the brief, as one bar against the budget."""

from reportlab.lib.units import mm
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.platypus import Flowable

from inspector.report.client.all_in_cost import AllIn
from inspector.report.theme import ACCENT, BOLD, DEEP, INK, LINE, PLAIN, SOFT
from inspector.values.cell_text import money_text
from inspector.values.quantity import Money

_SIZE = 7.6
_MILLION = 1e6


def in_millions(cost: AllIn) -> bool:
    """Return whether the bar is labelled in millions.

    Parameters
    ----------
    cost : AllIn
        With a total.

    Returns
    -------
    bool
    """
    return cost.total.high >= _MILLION


class CostBar(Flowable):
    """Low to high of the total, its likely value, and the budget as a dashed line.

    Parameters
    ----------
    cost : AllIn
        With a total.
    width : float
        Points.
    """

    def __init__(self, cost: AllIn, width: float):
        super().__init__()
        self.cost, self.width = cost, width
        self.height = 17 * mm

    def draw(self) -> None:
        """Draw the bar in the middle, its labels above and below."""
        cost, total, pen = self.cost, self.cost.total, self.canv
        ends = [total.low, total.high, *filter(None, (cost.budget, cost.planned))]
        low, high = min(ends), max(ends)
        # Room at both sides, so that nothing stands on the edge.
        reach = (high - low) or max(abs(high), 1.0) * 0.1
        low, high = low - reach * 0.12, high + reach * 0.12
        place = lambda value: (value - low) / (high - low) * self.width  # noqa: E731
        middle = 9.4 * mm
        pen.setStrokeColor(LINE)
        pen.setLineWidth(0.5)
        pen.line(0, middle, self.width, middle)
        pen.setFillColor(DEEP)
        pen.rect(
            place(total.low),
            middle - 2 * mm,
            max(place(total.high) - place(total.low), 1.2),
            4 * mm,
            stroke=0,
            fill=1,
        )
        likely = place(total.middle)
        pen.setFillColor(INK)
        pen.rect(likely - 1, middle - 3.4 * mm, 2, 6.8 * mm, stroke=0, fill=1)
        self._label(f"likely {self._words(total.middle)}", likely, middle + 4.4 * mm, BOLD, INK)
        left = f"{self._words(total.low)} low"
        right = f"{self._words(total.high)} high"
        self._label(left, place(total.low), middle - 5.4 * mm, PLAIN, SOFT, "end")
        self._label(right, place(total.high), middle - 5.4 * mm, PLAIN, SOFT, "start")
        if cost.budget:
            self._budget(place(cost.budget), middle)

    def _budget(self, at: float, middle: float) -> None:
        """The budget as a dashed line, its label in a line of its own."""
        pen = self.canv
        pen.setStrokeColor(ACCENT)
        pen.setLineWidth(1.4)
        pen.setDash(2.4, 1.6)
        pen.line(at, middle - 6 * mm, at, middle + 3.8 * mm)
        pen.setDash()
        words = f"budget {self._words(self.cost.budget)}"
        self._label(words, at, middle - 8.8 * mm, BOLD, ACCENT)

    def _words(self, value: float) -> str:
        if in_millions(self.cost):
            return f"{value / _MILLION:.1f}"
        return money_text(Money.exact(value, ""))

    def _label(
        self, words: str, at: float, y: float, font: str, ink, anchor: str = "middle"
    ) -> None:
        """Draw a label at its place, moved only as far as the edges ask."""
        wide = stringWidth(words, font, _SIZE)
        left = {"middle": at - wide / 2, "end": at - wide, "start": at}[anchor]
        self.canv.setFont(font, _SIZE)
        self.canv.setFillColor(ink)
        self.canv.drawString(min(max(left, 0), self.width - wide), y, words)
