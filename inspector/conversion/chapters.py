"""What a chapter of the conversion hands to screens and report: figures with their spans, lines of print, drawings as data, cautions and gaps.

One shape for range, weights, stability, power, space, money and certificates, so that each is shown and printed by the same few pieces.
"""

from dataclasses import dataclass, field
from datetime import date

from inspector.conversion.shapes import Default, Figure, Gap, Span


@dataclass(frozen=True)
class Lines:
    """A printed table: headings, rows of texts, and the names of the columns that hold numbers (set flush right)."""

    title: str
    headings: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numeric: tuple[int, ...] = ()
    note: str = ""


@dataclass(frozen=True)
class Bar:
    """One bar of a drawing of spans; `limit` is a mark of its own on that bar."""

    label: str
    low: float
    point: float | None
    high: float
    limit: float | None = None


@dataclass(frozen=True)
class Bars:
    """Spans side by side on one axis, each with its point; `described` is the drawing in one sentence, for those who cannot see it."""

    title: str
    unit: str
    bars: tuple[Bar, ...]
    described: str
    limit_label: str = ""


@dataclass(frozen=True)
class Curve:
    """One line of a graph: its points from left to right; `dashed` where it is an estimate, `dots` where the points are measured."""

    label: str
    points: tuple[tuple[float, float], ...]
    dashed: bool = False
    dots: bool = False


@dataclass(frozen=True)
class Graph:
    """Curves over one axis. `x_label` and `y_label` carry the units; `mark_x` is a line that the reader looks for, such as the brief's speed."""

    title: str
    x_label: str
    y_label: str
    curves: tuple[Curve, ...]
    described: str
    mark_x: float | None = None
    mark_label: str = ""


@dataclass(frozen=True)
class Period:
    """A stretch on a timeline; `state` is a word that is printed with it (due, in window, overdue, postponed, not yet)."""

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
    described: str


Drawing = Bars | Graph | Timeline


@dataclass(frozen=True)
class Requirement:
    """One thing the brief asks for, and what this vessel offers as far as is known; `least`: at least so much is asked, else at most."""

    id: str
    label: str
    asked: float
    unit: str
    offered: Span | None
    least: bool = True

    @property
    def met(self) -> bool | None:
        """True or False where the whole span agrees, None where it is not known."""
        if self.offered is None:
            return None
        if self.least:
            return self.offered.at_least(self.asked)
        return True if self.offered.high <= self.asked else (False if self.offered.low > self.asked else None)

    @property
    def short_by(self) -> float | None:
        """How much the point (else the nearer end) lies on the wrong side; None where it is met or nothing is known."""
        if self.offered is None or self.met:
            return None
        best = self.offered.point if self.offered.point is not None else (self.offered.high if self.least else self.offered.low)
        short = self.asked - best if self.least else best - self.asked
        return short if short > 0 else None


@dataclass(frozen=True)
class Chapter:
    """One chapter: `verify` is the sentence that says who must confirm it before anybody relies on it ("" where nothing hangs on it)."""

    id: str
    title: str
    answer: str                                   # the whole chapter in one or two sentences
    figures: tuple[Figure, ...] = ()
    lines: tuple[Lines, ...] = ()
    drawings: tuple[Drawing, ...] = ()
    warnings: tuple[str, ...] = ()
    gaps: tuple[Gap, ...] = ()
    defaults: tuple[Default, ...] = ()
    faults: tuple[str, ...] = ()                  # cells of the particulars that could not be used, one sentence each
    verify: str = ""
    tables: tuple[str, ...] = field(default_factory=tuple)   # ids of the tables of particulars it is computed from
    requirements: tuple[Requirement, ...] = ()
