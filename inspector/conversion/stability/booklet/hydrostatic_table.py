"""Hydrostatics of the booklet at several draughts, between its rows and never beyond them."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.values.formatting import show

FIELD = "hydrostatics by draught"


@dataclass(frozen=True)
class HydrostaticTable:
    """What the booklet prints by draught: displacement, KM and the greatest KG.

    Parameters
    ----------
    rows : tuple of Row
        By rising displacement.

    Raises
    ------
    BadInput
        Displacement and draught do not rise together.
    """

    rows: tuple[Row, ...]

    def __post_init__(self) -> None:
        for low, high in pairwise(self.rows):
            same_mass = high.number("displacement") <= low.number("displacement")
            if same_mass or high.number("draught") <= low.number("draught"):
                raise BadInput(
                    "Hydrostatics by draught: displacement and draught must rise together, each "
                    "typed once.",
                    field=FIELD,
                    value=high.number("draught"),
                )

    def has(self, name: str) -> bool:
        """Return whether a column has a value at two displacements or more.

        Parameters
        ----------
        name : str
            Name of the column.

        Returns
        -------
        bool

        References
        ----------
        As typed from the booklet.
        """
        return len(self._points("displacement", name)) > 1

    def at_displacement(self, name: str, mass: Span) -> Span:
        """Return a column at a displacement.

        Parameters
        ----------
        name : str
            Name of the column.
        mass : Span
            Displacement [t].

        Returns
        -------
        Span
            In the column's unit; its ends are the least and the greatest in between.

        Raises
        ------
        BadInput
            The displacement is outside the rows that have the column.

        References
        ----------
        Linear interpolation, as booklets prescribe between their rows (common practice).
        """
        points = self._points("displacement", name)
        read = _reader(points, "t")
        knots = [value for at, value in points if mass.low < at < mass.high]
        values = [read(mass.low), read(mass.high), *knots]
        if mass.point is None:
            return Span(min(values), None, max(values))
        likely = read(mass.point)
        return Span(min(*values, likely), likely, max(*values, likely))

    def reader(self, name: str) -> Callable[[float], float]:
        """Return a function that reads a column at a displacement [t].

        Parameters
        ----------
        name : str
            Name of the column.

        Returns
        -------
        callable
            It refuses a displacement outside the rows that have the column.

        References
        ----------
        Linear interpolation, as booklets prescribe between their rows (common practice).
        """
        return _reader(self._points("displacement", name), "t")

    def displacement_at(self, draught: float) -> float:
        """Return the displacement at a draught.

        Parameters
        ----------
        draught : float
            Draught [m].

        Returns
        -------
        float
            Displacement [t].

        Raises
        ------
        BadInput
            The draught is outside the rows.

        References
        ----------
        Linear interpolation (common practice).
        """
        return _reader(self._points("draught", "displacement"), "m")(draught)

    def _points(self, along: str, name: str) -> list[tuple[float, float]]:
        """Return the rows that have a column as pairs of (along, column)."""
        return [(row.number(along), row.number(name)) for row in self.rows if row[name] is not None]


def _reader(points: Sequence[tuple[float, float]], unit: str) -> Callable[[float], float]:
    """Return a function that reads between points and refuses to go beyond them."""

    def read(at: float) -> float:
        # Past the last row every slope is a guess.
        if not points or not points[0][0] <= at <= points[-1][0]:
            raise BadInput(_outside(points, at, unit), field=FIELD, value=at, unit=unit)
        for (low, first), (high, last) in pairwise(points):
            if at <= high:
                return first + (last - first) * (at - low) / (high - low)
        return points[0][1]

    return read


def _outside(points: Sequence[tuple[float, float]], at: float, unit: str) -> str:
    """Return the sentence about a place where the booklet's rows do not reach."""
    if not points:
        return "Hydrostatics by draught are not typed."
    first, last = (show(place, unit) for place in (points[0][0], points[-1][0]))
    return f"Hydrostatics are typed for {first} to {last}, and {show(at, unit)} is outside."
