"""Cross curves KN of the booklet, by displacement and heel."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.span import Span
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.values.formatting import show

FIELD = "cross curves"


@dataclass(frozen=True)
class CrossCurve:
    """KN at one displacement.

    Parameters
    ----------
    displacement : float
        Displacement [t].
    levers : mapping of float to float
        Heel [deg] -> KN [m].
    """

    displacement: float
    levers: Mapping[float, float]


@dataclass(frozen=True)
class CrossCurves:
    """KN at several displacements, which rise.

    Parameters
    ----------
    rows : tuple of CrossCurve

    Raises
    ------
    BadInput
        No row, or one displacement typed twice.
    """

    rows: tuple[CrossCurve, ...]

    def __post_init__(self) -> None:
        masses = [row.displacement for row in self.rows]
        # Two rows of one displacement contradict each other, or one is superfluous.
        if not masses or any(low >= high for low, high in pairwise(masses)):
            raise BadInput(
                "Cross curves: each displacement may be typed once.", field=FIELD, value=masses
            )

    def at(self, mass: Span) -> LeverSpan:
        """Return KN at a displacement, on a straight line between the two rows around it.

        Parameters
        ----------
        mass : Span
            Displacement [t].

        Returns
        -------
        LeverSpan
            KN [m] at both ends of the displacement and at every row between them.

        Raises
        ------
        BadInput
            The displacement is outside the rows, or fewer than two angles are in all of them.

        References
        ----------
        Linear interpolation, as booklets prescribe between their rows (common practice).
        """
        first, last = self.rows[0].displacement, self.rows[-1].displacement
        # KN beyond the table would be a guess, and could meet what the vessel does not.
        if mass.low < first or mass.high > last:
            raise BadInput(
                f"KN is typed for {show(first, 't')} to {show(last, 't')}, and the displacement "
                f"after the changes is {show(mass.low, 't')} to {show(mass.high, 't')}.",
                field=FIELD,
                value=mass.middle,
            )
        masses = {mass.low, mass.high}
        masses |= {row.displacement for row in self.rows if mass.contains(row.displacement)}
        angles = _common_angles([row for one in masses for row in self._around(one)])
        ends = tuple(self._curve(one, angles) for one in sorted(masses))
        return LeverSpan(ends, None if mass.point is None else self._curve(mass.point, angles))

    def _around(self, mass: float) -> tuple[CrossCurve, CrossCurve]:
        """Return the rows on either side of a displacement [t]; twice one row that is there."""
        below = max((row for row in self.rows if row.displacement <= mass), key=_by_mass)
        above = min((row for row in self.rows if row.displacement >= mass), key=_by_mass)
        return below, above

    def _curve(self, mass: float, angles: Sequence[float]) -> RightingLevers:
        """Return KN [m] at a displacement [t] and at these heels [deg]."""
        below, above = self._around(mass)
        step = above.displacement - below.displacement
        share = (mass - below.displacement) / step if step else 0.0
        levers = (
            below.levers[angle] + share * (above.levers[angle] - below.levers[angle])
            for angle in angles
        )
        # Upright there is no lever, so booklets leave that column out.
        return RightingLevers((0.0, *angles), (0.0, *levers))


def _by_mass(row: CrossCurve) -> float:
    return row.displacement


def _common_angles(rows: Sequence[CrossCurve]) -> tuple[float, ...]:
    """Return the heels [deg] above upright at which each of the rows has a KN."""
    common = set.intersection(*(set(row.levers) for row in rows))
    return tuple(sorted(common - {0.0}))
