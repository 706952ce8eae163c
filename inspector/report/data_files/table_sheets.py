"""A table of the exported data: its name, headings and rows, and which columns hold what."""

from dataclasses import dataclass

Cell = str | float | int | None


@dataclass(frozen=True)
class Sheet:
    """One table.

    Parameters
    ----------
    name : str
        At most 31 letters, as a workbook allows.
    heads : tuple of str
    rows : tuple of tuple of Cell
    numbers : frozenset of str
        Headings of the columns that hold numbers, None where there is none.
    dates : frozenset of str
        Headings of the columns that hold ISO dates, "" where there is none.
    """

    name: str
    heads: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]
    numbers: frozenset[str] = frozenset()
    dates: frozenset[str] = frozenset()
