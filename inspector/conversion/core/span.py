"""A span: an interval in one unit, with its best single value where there is one."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from inspector.values.errors import InspectorError
from inspector.values.quantity import Money, Quantity


class ConversionError(InspectorError):
    """The root of all refusals of the conversion: one sentence that names the field.

    Attribute: ``field``.
    """


class NotASpan(ConversionError):
    """The ends are not in order or not finite, or the point is outside.

    Attributes: ``field``, ``low``, ``point``, ``high``.
    """


@dataclass(frozen=True)
class Span:
    """An interval in one unit, which its owner names, with the best single value if there is one.

    Arithmetic with spans and plain numbers combines ends so that the result holds every value that
    its parts could give; parts are taken as independent (``a - a`` is not zero). The point of a
    result is known only where the points of both parts are known.

    Parameters
    ----------
    low, high : float
        The ends, which belong to it.
    point : float or None
        The best single value.

    Raises
    ------
    NotASpan
        An end is not finite, low > high, or the point is outside.

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
        complete = self.low is not None and self.high is not None
        # Whatever is wrong with a span is a mistake in our formulas, and must not reach a report.
        if not complete or not all(map(_is_finite, given)) or given != sorted(given):
            sentence = (
                "A span needs finite numbers in order, low, point, high, "
                f"and not {self.low}, {self.point}, {self.high}."
            )
            raise NotASpan(sentence, field="span", low=self.low, point=self.point, high=self.high)

    @classmethod
    def exact(cls, value: float) -> "Span":
        """Return the span of one known value.

        Parameters
        ----------
        value : float
            In any unit.

        Returns
        -------
        Span
        """
        return cls(value, value, value)

    @classmethod
    def around(cls, point: float, share: float, above: float | None = None) -> "Span":
        """Return the span of a value that may be off by a share of itself.

        Parameters
        ----------
        point : float
            The best single value, in any unit.
        share : float
            How far it may be off downwards [fraction of the point: 0.25 is a quarter].
        above : float, optional
            How far it may be off upwards [fraction of the point]; without it as far as downwards.

        Returns
        -------
        Span
        """
        # Of a negative point the greater share is the lower end.
        ends = sorted((point * (1 - share), point * (1 + (share if above is None else above))))
        return cls(min(ends[0], point), point, max(ends[1], point))

    @property
    def width(self) -> float:
        """high - low, same unit."""
        return self.high - self.low

    @property
    def middle(self) -> float:
        """The point, or halfway between the ends: for a choice among spans, never a result."""
        return (self.low + self.high) / 2 if self.point is None else self.point

    @property
    def is_exact(self) -> bool:
        """Whether both ends are the same."""
        return self.low == self.high

    def quantity(
        self, unit: str = "", digits: int | None = None, *, signed: bool = False
    ) -> Quantity:
        """Return the span as a figure for tables and sentences.

        Parameters
        ----------
        unit : str
            The unit of its ends; "" for a plain number.
        digits : int, optional
            Decimals in which it is shown; without it as many as it can claim.
        signed : bool
            Whether a plus is shown as well.

        Returns
        -------
        Quantity
        """
        return Quantity(self.low, self.point, self.high, unit, digits, signed)

    def money(self, currency: str, *, as_typed: bool = False) -> Money:
        """Return the span as a sum of money.

        Parameters
        ----------
        currency : str
            The currency of its ends, "" where none was named.
        as_typed : bool
            True for a sum that a person typed, which is not rounded.

        Returns
        -------
        Money
        """
        return Money(self.low, self.point, self.high, currency, as_typed)

    def contains(self, other: "Span | float") -> bool:
        """Return whether a number, or the whole of another span, is inside.

        Parameters
        ----------
        other : Span or float
            In the same unit.

        Returns
        -------
        bool
            The ends are inside.
        """
        other = span(other)
        return self.low <= other.low and other.high <= self.high

    def at_least(self, limit: float) -> bool | None:
        """Return whether it is a limit or more.

        Parameters
        ----------
        limit : float
            In the same unit.

        Returns
        -------
        bool or None
            None where not the whole span agrees.
        """
        if self.low >= limit:
            return True
        return False if self.high < limit else None

    def at_most(self, limit: float) -> bool | None:
        """Return whether it is a limit or less.

        Parameters
        ----------
        limit : float
            In the same unit.

        Returns
        -------
        bool or None
            None where not the whole span agrees.
        """
        if self.high <= limit:
            return True
        return False if self.low > limit else None

    def hull(self, other: "Span | float") -> "Span":
        """Return the smallest span that holds both, with the point of this one.

        Parameters
        ----------
        other : Span or float
            In the same unit.

        Returns
        -------
        Span
        """
        other = span(other)
        # The other's point is no better known, and two points would need a choice.
        return Span(min(self.low, other.low), self.point, max(self.high, other.high))

    def apply(self, function: Callable[[float], float]) -> "Span":
        """Return the span of a function of it.

        Parameters
        ----------
        function : callable
            Takes and returns a float, and only rises or only falls from low to high; the caller
            answers for that.

        Returns
        -------
        Span
        """
        # Right for functions that rise or fall all the way; others are spread by their own knots.
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
        # A quotient over zero has no ends at all.
        if divisor.low <= 0 <= divisor.high:
            ends = f"{divisor.low} to {divisor.high}"
            sentence = f"A value cannot be divided by {ends}, because zero lies in it."
            low, point, high = divisor.low, divisor.point, divisor.high
            raise NotASpan(sentence, field="divisor", low=low, point=point, high=high)
        return _corners(self, divisor, lambda a, b: a / b)

    def __radd__(self, other: float) -> "Span":
        return span(other) + self

    def __rsub__(self, other: float) -> "Span":
        return span(other) - self

    def __rmul__(self, other: float) -> "Span":
        return span(other) * self

    def __rtruediv__(self, other: float) -> "Span":
        return span(other) / self


def _is_finite(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)


def span(value: "Span | float") -> Span:
    """Return a span as it is, and a plain number as an exact span.

    Parameters
    ----------
    value : Span or float
        In any unit.

    Returns
    -------
    Span
    """
    return value if isinstance(value, Span) else Span.exact(value)


def _corners(
    first: "Span | float", second: "Span | float", operation: Callable[[float, float], float]
) -> Span:
    """Return the span of an operation over all corners of two spans."""
    # + - * / are monotone in each part, and floats round monotonely: the corners hold every result.
    first, second = span(first), span(second)
    corners = [operation(a, b) for a in (first.low, first.high) for b in (second.low, second.high)]
    # A result has a likely value only where both parts have one.
    known = first.point is not None and second.point is not None
    point = operation(first.point, second.point) if known else None
    return Span(min(corners), point, max(corners))
