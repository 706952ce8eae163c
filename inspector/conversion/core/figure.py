"""Figures of all chapters: what is not known is a span or a named gap, every default is listed."""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.conversion.core.span import Span
from inspector.criteria.core.source import Source
from inspector.values.quantity import Cell, Money, Quantity

PRACTICE = Source.common_practice("Common practice", "guidance")


@dataclass(frozen=True)
class Default:
    """A value that nobody gave and that was used: printed with every result that depends on it.

    Parameters
    ----------
    name : str
    value : float or Span or str
        What was used [unit], or a word.
    why : Cell
        One sentence.
    unit : str
        "" for shares and words.
    source : Source
        Common practice where none is given.
    """

    name: str
    value: float | Span | str
    why: Cell
    unit: str = ""
    source: Source = PRACTICE

    @property
    def cell(self) -> Cell:
        """The value as a figure."""
        if isinstance(self.value, str):
            return self.value
        if isinstance(self.value, Span):
            return self.value.quantity(self.unit)
        return Quantity.exact(self.value, self.unit)


@dataclass(frozen=True)
class Gap:
    """What is missing, and in one sentence what needs it or where to get it."""

    name: str
    why: Cell


@dataclass(frozen=True)
class Figure:
    """One result, how it was calculated and what it depends on: a first check, no promise.

    Parameters
    ----------
    name : str
    span : Span or None
        The result [unit]; None where a gap forbids one.
    unit : str
        A unit of ``inspector.values.units``, or the currency of a sum of money.
    formula_text : Cell
        How it was calculated.
    assumptions : tuple of Cell
    defaults : tuple of Default
    gaps : tuple of Gap
    source : Source or None
    is_money : bool
        Whether ``unit`` is a currency.
    """

    name: str
    span: Span | None
    unit: str
    formula_text: Cell
    assumptions: tuple[Cell, ...] = ()
    defaults: tuple[Default, ...] = ()
    gaps: tuple[Gap, ...] = ()
    source: Source | None = None
    is_money: bool = False

    @property
    def known(self) -> bool:
        """Whether there is a result."""
        return self.span is not None

    @property
    def cell(self) -> Quantity | Money | None:
        """The result as one figure, None where there is none."""
        if self.span is None:
            return None
        return self.span.money(self.unit) if self.is_money else self.span.quantity(self.unit)

    @property
    def ends(self) -> tuple[Cell, Cell, Cell]:
        """Low, likely and high as three figures, None for each that is not known."""
        if self.span is None:
            return None, None, None
        return tuple(
            None if value is None else self._exact(value)
            for value in (self.span.low, self.span.point, self.span.high)
        )

    def _exact(self, value: float) -> Quantity | Money:
        """Return an end of the span in the figure's unit or currency."""
        kind = Money if self.is_money else Quantity
        return kind.exact(value, self.unit)


def no_figure(name: str, unit: str, gaps: Iterable[Gap], formula_text: Cell = "") -> Figure:
    """Return the figure that cannot be calculated, and why.

    Parameters
    ----------
    name : str
    unit : str
        The unit that the result would have.
    gaps : iterable of Gap
        What is missing.
    formula_text : Cell
        How it would be calculated.

    Returns
    -------
    Figure
        Its span is None.
    """
    return Figure(name, None, unit, formula_text, gaps=tuple(gaps))


def unique(*groups: Iterable) -> tuple:
    """Return all items of the groups in order of first appearance, each once.

    Parameters
    ----------
    *groups : iterable
        The assumptions, defaults or gaps of several figures.

    Returns
    -------
    tuple
    """
    # A dict keeps the order of first mention, which a set would lose.
    return tuple(dict.fromkeys(item for group in groups for item in group))


def rest_on(*figures: Figure) -> dict[str, tuple]:
    """Return the keywords of a figure that is made of others: ``Figure(..., **rest_on(a, b))``.

    Parameters
    ----------
    *figures : Figure

    Returns
    -------
    dict
        assumptions, defaults and gaps, each item once.
    """
    parts = ("assumptions", "defaults", "gaps")
    return {part: unique(*(getattr(figure, part) for figure in figures)) for part in parts}
