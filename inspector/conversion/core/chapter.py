"""What a chapter of the conversion hands to page, report, command and spreadsheet.

One shape for range, stability, power, space, money and papers, so that each is shown by the same
few pieces. Every figure in it is a number with its unit; only its reader turns it into words, by
``inspector.values.formatting``.
"""

from dataclasses import dataclass

from inspector.conversion.core.drawing import Drawing
from inspector.conversion.core.figure import Default, Figure, Gap, unique
from inspector.conversion.core.span import Span
from inspector.values.quantity import Cell, Money, Quantity


@dataclass(frozen=True)
class TableColumn:
    """One column of a table of figures.

    Parameters
    ----------
    heading : str
        What is in it, without a unit.
    unit : str
        The unit of all its quantities, or the currency of its sums, which the heading then names;
        "" where each cell brings its own.
    """

    heading: str
    unit: str = ""


def table_columns(*columns: str | tuple[str, str]) -> tuple[TableColumn, ...]:
    """Return the columns of a table.

    Parameters
    ----------
    *columns : str or tuple of (str, str)
        A heading, or a heading with the unit of its figures.

    Returns
    -------
    tuple of TableColumn

    Examples
    --------
    >>> [column.unit for column in table_columns("tank", ("capacity", "m³"))]
    ['', 'm³']
    """
    pairs = [(column, "") if isinstance(column, str) else column for column in columns]
    return tuple(TableColumn(heading, unit) for heading, unit in pairs)


@dataclass(frozen=True)
class FigureTable:
    """A table as it is calculated.

    Parameters
    ----------
    title : Cell
    columns : tuple of TableColumn
    rows : tuple of tuple of Cell
        One cell for each column; None where a figure is not known.
    note : Cell
        What is printed below it, "" for nothing.

    Raises
    ------
    ValueError
        A row has not one cell for each column, or a quantity is not in the unit of its column.
    """

    title: Cell
    columns: tuple[TableColumn, ...]
    rows: tuple[tuple[Cell, ...], ...]
    note: Cell = ""

    def __post_init__(self) -> None:
        for row in self.rows:
            for column, cell in zip(self.columns, row, strict=True):
                self._check_unit(column, cell)

    def _check_unit(self, column: TableColumn, cell: Cell) -> None:
        """A figure is printed without its unit below a heading, so another unit would mislead."""
        unit = _unit_of(cell)
        # A cell in another unit than its heading would be printed without either; a mistake of ours
        # and of nobody's typing.
        if column.unit and unit is not None and unit != column.unit:
            raise ValueError(f"'{column.heading}' is in {column.unit}, and a cell is in {unit!r}.")

    @property
    def numeric(self) -> tuple[int, ...]:
        """The positions of the columns that hold nothing but figures."""
        return tuple(
            position
            for position in range(len(self.columns))
            if _holds_figures([row[position] for row in self.rows])
        )


def _unit_of(cell: Cell) -> str | None:
    """The unit or currency of a figure, None for what is no figure."""
    if isinstance(cell, Quantity):
        return cell.unit
    return cell.currency if isinstance(cell, Money) else None


def _holds_figures(cells: list[Cell]) -> bool:
    """Whether every filled cell of a column is a figure, so that it is set to the right."""
    filled = [cell for cell in cells if cell is not None and cell != ""]
    return bool(filled) and all(isinstance(cell, int | Quantity | Money) for cell in filled)


@dataclass(frozen=True)
class Requirement:
    """One thing that the brief asks for, and what this vessel offers as far as is known.

    Parameters
    ----------
    id, label : str
    asked : float
        What the brief asks for [unit].
    unit : str
    offered : Span or None
        What the vessel offers [unit]; None where it is not known.
    least : bool
        True where at least so much is asked for, False where at most.
    binds : Cell
        What decides the offer, in a few words; "" where that needs no word.
    lacks : tuple of Gap
        What is missing where the offer is not known.
    """

    id: str
    label: str
    asked: float
    unit: str
    offered: Span | None
    least: bool = True
    binds: Cell = ""
    lacks: tuple[Gap, ...] = ()

    @property
    def met(self) -> bool | None:
        """True or False where the whole span agrees, None where it is not known."""
        if self.offered is None:
            return None
        if self.least:
            return self.offered.at_least(self.asked)
        return self.offered.at_most(self.asked)

    @property
    def short_by(self) -> float | None:
        """How far the point, else the nearer end, misses what is asked [unit].

        None where it is met or not known.
        """
        if self.offered is None or self.met:
            return None
        # The end that comes closest: even at its best the vessel is short by this much.
        nearer = self.offered.high if self.least else self.offered.low
        best = nearer if self.offered.point is None else self.offered.point
        short = self.asked - best if self.least else best - self.asked
        return short if short > 0 else None


@dataclass(frozen=True)
class Chapter:
    """One chapter of the conversion.

    Parameters
    ----------
    id, title : str
    answer : Cell
        The whole chapter in one or two sentences.
    figures : tuple of Figure
    figure_tables : tuple of FigureTable
    drawings : tuple of Drawing
    warnings : tuple of Cell
    gaps : tuple of Gap
    defaults : tuple of Default
    faults : tuple of str
        The particulars that could not be used, one sentence each.
    verify : Cell
        Who must confirm it before anybody relies on it, "" where nobody relies on it.
    particulars : tuple of str
        The ids of the tables of particulars that it is computed from.
    requirements : tuple of Requirement
    """

    id: str
    title: str
    answer: Cell
    figures: tuple[Figure, ...] = ()
    figure_tables: tuple[FigureTable, ...] = ()
    drawings: tuple[Drawing, ...] = ()
    warnings: tuple[Cell, ...] = ()
    gaps: tuple[Gap, ...] = ()
    defaults: tuple[Default, ...] = ()
    faults: tuple[str, ...] = ()
    verify: Cell = ""
    particulars: tuple[str, ...] = ()
    requirements: tuple[Requirement, ...] = ()

    @property
    def all_gaps(self) -> tuple[Gap, ...]:
        """What is missing for the chapter and for its figures, each once."""
        # Several figures often lack the same thing, which is listed once.
        return unique(self.gaps, *(figure.gaps for figure in self.figures))

    @property
    def all_defaults(self) -> tuple[Default, ...]:
        """The defaults of the chapter and of its figures, each once."""
        return unique(self.defaults, *(figure.defaults for figure in self.figures))

    @property
    def assumptions(self) -> tuple[Cell, ...]:
        """What was assumed for its figures, each once."""
        return unique(*(figure.assumptions for figure in self.figures))
