"""The shapes that every module of the conversion shares: what is not known stays an interval or a named gap, and every default is listed.

A ``Span`` is an interval that always contains its point. A ``Figure`` is one result with all that was assumed for it; it is a
first check (``FIRST_CHECK``), never a promise. A ``Default`` says which value nobody gave; a ``Gap`` says what is missing altogether.
"""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from inspector.criteria.source import Source
from inspector.errors import InspectorError

FIRST_CHECK = "First check: verify before you rely on it."


class ConversionError(InspectorError):
    """The root of all refusals of the conversion: one sentence that names the field. Attribute: ``field``."""


class NotASpan(ConversionError):
    """The ends are not in order, not finite, or the point lies outside. Attributes: ``field``, ``low``, ``point``, ``high``."""


@dataclass(frozen=True)
class Span:
    """An interval low..high in one unit (which the owner names), with the best single value if there is one.

    Arithmetic with spans and plain numbers combines ends so that the result holds every value that its parts could
    give; parts are taken as independent (``a - a`` is not zero). The point of a result is known only where the points of
    both parts are known.

    Errors
    ------
    NotASpan : an end is not finite, low > high, or the point lies outside.

    Examples
    --------
    >>> Span(2, 3, 4) * Span.exact(10)
    Span(low=20, point=30, high=40)
    >>> 1 - Span(0.1, None, 0.2)
    Span(low=0.8, point=None, high=0.9)
    """

    low: float
    point: float | None
    high: float

    def __post_init__(self) -> None:
        given = [value for value in (self.low, self.point, self.high) if value is not None]
        numbers = all(isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value) for value in given)
        if not numbers or self.low is None or self.high is None or given != sorted(given):
            sentence = f"A span needs finite numbers in order, low, point, high, and not {self.low}, {self.point}, {self.high}."
            raise NotASpan(sentence, field="span", low=self.low, point=self.point, high=self.high)

    @classmethod
    def exact(cls, value: float) -> "Span":
        """The span of one known value."""
        return cls(value, value, value)

    @classmethod
    def around(cls, point: float, share: float, above: float | None = None) -> "Span":
        """The span of a value that may be off by a share of itself downwards and (same, or ``above``) upwards.

        Parameters: point [any unit]; share, above [fraction, 0.25 is a quarter].
        """
        ends = sorted((point * (1 - share), point * (1 + (share if above is None else above))))
        return cls(min(ends[0], point), point, max(ends[1], point))

    @property
    def width(self) -> float:
        """high - low, same unit."""
        return self.high - self.low

    @property
    def middle(self) -> float:
        """The point, or halfway between the ends where there is none: for a choice among spans, never to be shown as a result."""
        return (self.low + self.high) / 2 if self.point is None else self.point

    @property
    def is_exact(self) -> bool:
        return self.low == self.high

    def contains(self, other: "Span | float") -> bool:
        """Whether a number, or the whole of another span, lies inside (ends belong to it)."""
        other = span(other)
        return self.low <= other.low and other.high <= self.high

    def at_least(self, limit: float) -> bool | None:
        """Whether it is limit or more: True or False where the whole span agrees, None where that is not known."""
        if self.low >= limit:
            return True
        return False if self.high < limit else None

    def hull(self, other: "Span | float") -> "Span":
        """The smallest span that holds both; keeps its own point."""
        other = span(other)
        return Span(min(self.low, other.low), self.point, max(self.high, other.high))

    def apply(self, function: Callable[[float], float]) -> "Span":
        """The span of a function that only rises or only falls between low and high; the caller answers for that."""
        point = None if self.point is None else function(self.point)
        values = [function(self.low), function(self.high), *([] if point is None else [point])]
        return Span(min(values), point, max(values))

    def __add__(self, other: "Span | float") -> "Span":
        return _corners(self, other, lambda a, b: a + b)

    def __sub__(self, other: "Span | float") -> "Span":
        return _corners(self, other, lambda a, b: a - b)

    def __mul__(self, other: "Span | float") -> "Span":
        return _corners(self, other, lambda a, b: a * b)

    def __truediv__(self, other: "Span | float") -> "Span":
        divisor = span(other)
        if divisor.low <= 0 <= divisor.high:
            sentence = f"A value cannot be divided by {divisor.low} to {divisor.high}, because zero lies in it."
            raise NotASpan(sentence, field="divisor", low=divisor.low, point=divisor.point, high=divisor.high)
        return _corners(self, divisor, lambda a, b: a / b)

    def __radd__(self, other: float) -> "Span":
        return span(other) + self

    def __rsub__(self, other: float) -> "Span":
        return span(other) - self

    def __rmul__(self, other: float) -> "Span":
        return span(other) * self

    def __rtruediv__(self, other: float) -> "Span":
        return span(other) / self


def span(value: "Span | float") -> Span:
    """A span as it is, and a plain number as an exact span."""
    return value if isinstance(value, Span) else Span.exact(value)


def _corners(one: "Span | float", other: "Span | float", operation: Callable[[float, float], float]) -> Span:
    # + - * / are monotone in each part, and floats round monotonely, so the corners hold every result and the point
    one, other = span(one), span(other)
    corners = [operation(a, b) for a in (one.low, one.high) for b in (other.low, other.high)]
    point = None if one.point is None or other.point is None else operation(one.point, other.point)
    return Span(min(corners), point, max(corners))


@dataclass(frozen=True)
class Default:
    """A value that nobody gave and that was used: printed with every result that rests on it.

    value: number, span or word; unit: "" for shares and words; why: one sentence; source: with its mark.
    """

    name: str
    value: "float | Span | str"
    unit: str
    why: str
    source: Source


@dataclass(frozen=True)
class Gap:
    """What is missing, and in one sentence what cannot be told without it or where to get it."""

    name: str
    why: str


@dataclass(frozen=True)
class Figure:
    """One result: a span in a unit, how it was reckoned and what it rests on. ``span`` is None where a gap forbids a result."""

    name: str
    span: Span | None
    unit: str
    formula_text: str
    assumptions: tuple[str, ...] = ()
    defaults: tuple[Default, ...] = ()
    gaps: tuple[Gap, ...] = ()
    source: Source | None = None

    @property
    def caution(self) -> str:
        """The sentence that stands beside every result."""
        return FIRST_CHECK

    @property
    def known(self) -> bool:
        return self.span is not None


def no_figure(name: str, unit: str, gaps: Iterable[Gap], formula_text: str = "") -> Figure:
    """The figure that cannot be told, and why."""
    return Figure(name, None, unit, formula_text, gaps=tuple(gaps))


def unique(*groups: Iterable) -> tuple:
    """All items of the groups in order of first appearance, each once: joins assumptions, defaults or gaps of several figures."""
    return tuple(dict.fromkeys(item for group in groups for item in group))


def rest_on(*figures: Figure) -> dict[str, tuple]:
    """The keywords assumptions, defaults and gaps of a figure that is made of others: ``Figure(..., **rest_on(a, b))``."""
    parts = ("assumptions", "defaults", "gaps")
    return {part: unique(*(getattr(figure, part) for figure in figures)) for part in parts}
