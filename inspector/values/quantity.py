"""Figures as they are calculated: a quantity, a sum of money, a sentence that carries figures.

A chapter, a table or a judgement holds these and never their text: page, report and spreadsheet
turn them into words by ``inspector.values.formatting``, each in its reader's units.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date


@dataclass(frozen=True)
class Quantity:
    """A value in a unit, as a span where it is not known exactly.

    Parameters
    ----------
    low, high : float
        The ends of the span [unit]; equal where the value is exact.
    likely : float or None
        The best single value [unit]; None where there is none.
    unit : str
        A unit of ``inspector.values.units``; "" for a plain number.
    digits : int or None
        Decimals in which it is shown in this unit; None: as many as it can claim (see formatting).
    signed : bool
        True where a plus is shown as well, as for a change.
    """

    low: float
    likely: float | None
    high: float
    unit: str = ""
    digits: int | None = None
    signed: bool = False

    @classmethod
    def exact(
        cls, value: float, unit: str = "", digits: int | None = None, *, signed: bool = False
    ) -> "Quantity":
        """Return the quantity of one known value [unit]."""
        return cls(value, value, value, unit, digits, signed)

    @property
    def is_exact(self) -> bool:
        """Whether both ends are the same."""
        return self.low == self.high


@dataclass(frozen=True)
class Money:
    """A sum of money, as a span where it is not known exactly.

    Parameters
    ----------
    low, high : float
        The ends of the span, in ``currency``.
    likely : float or None
        The best single value.
    currency : str
        As named for the inspection; "" where none was named.
    as_typed : bool
        True for a sum that somebody typed: it is never rounded. A calculated one is shown only as
        precisely as it can claim.
    """

    low: float
    likely: float | None
    high: float
    currency: str = ""
    as_typed: bool = False

    @classmethod
    def exact(cls, value: float, currency: str = "", *, as_typed: bool = False) -> "Money":
        """Return the sum of one known value."""
        return cls(value, value, value, currency, as_typed)

    @property
    def is_exact(self) -> bool:
        """Whether both ends are the same."""
        return self.low == self.high


@dataclass(frozen=True)
class Sentence:
    """Text with named places for figures, which are formatted only where the sentence is read.

    Parameters
    ----------
    template : str
        Text with ``{name}`` for each figure.
    figures : mapping of str to Quantity or Money or date or str or Sentence or None
        What goes into each place.

    Examples
    --------
    >>> Sentence("At {speed} the range is not known.", {"speed": Quantity.exact(9, "kn")}).template
    'At {speed} the range is not known.'
    """

    template: str
    figures: Mapping[str, "Cell"] = field(default_factory=dict)

    def __hash__(self) -> int:
        # Sentences are keys of dicts, each once, so they are hashable although they hold a mapping.
        return hash((self.template, tuple(self.figures.items())))


def sentence(template: str, **figures: "Cell") -> Sentence:
    """Return a sentence from its template and the figures that it names.

    Parameters
    ----------
    template : str
        Text with ``{name}`` for each figure. Never text that a person typed: that is a figure.
    **figures : Cell
        What goes into each place.

    Returns
    -------
    Sentence

    Examples
    --------
    >>> sentence("At {speed}.", speed=Quantity.exact(9, "kn")).figures["speed"].high
    9
    """
    return Sentence(template, figures)


def joined(parts: Iterable["Cell"], separator: str = " ") -> "Cell":
    """Return several texts and figures in a row as one cell.

    Parameters
    ----------
    parts : iterable of Cell
    separator : str
        What is between two of them.

    Returns
    -------
    Cell
        "" for no parts, the part itself for one.

    Examples
    --------
    >>> joined(["Fuel", "water"], "; ").template
    '{part0}; {part1}'
    """
    # One part stays what it is, so that a figure alone is still a figure and can be set at the
    # right.
    found = list(parts)
    if len(found) < 2:
        return found[0] if found else ""
    names = [f"part{number}" for number in range(len(found))]
    template = separator.join(f"{{{name}}}" for name in names)
    return Sentence(template, dict(zip(names, found, strict=True)))


# What a cell of a table, an answer or a note may be; None is a value that is not known.
Cell = str | int | Quantity | Money | Sentence | date | None
