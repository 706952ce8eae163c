"""Righting levers after the changes, as far as masses and heights are known."""

from dataclasses import dataclass

from inspector.conversion.core.span import Span
from inspector.conversion.stability.levers.righting_levers import RightingLevers


@dataclass(frozen=True)
class LeverSpan:
    """The curves between which the true one is.

    Parameters
    ----------
    ends : tuple of RightingLevers
        One or more; every lever of the true curve is between theirs.
    likely : RightingLevers or None
        The likely curve; None where there is none.
    """

    ends: tuple[RightingLevers, ...]
    likely: RightingLevers | None

    @classmethod
    def exact(cls, curve: RightingLevers) -> "LeverSpan":
        """Return the span of one known curve.

        Parameters
        ----------
        curve : RightingLevers

        Returns
        -------
        LeverSpan

        References
        ----------
        Plain arithmetic.
        """
        return cls((curve,), curve)

    @property
    def middle(self) -> RightingLevers:
        """The likely curve, else the mean of the ends: for a drawing, never a result."""
        if self.likely is not None:
            return self.likely
        levers = zip(*(curve.levers for curve in self.ends), strict=True)
        means = tuple(sum(column) / len(column) for column in levers)
        return RightingLevers(self.ends[0].angles, means)

    @property
    def reach(self) -> float:
        """The greatest angle of heel that the curves have [deg]."""
        return self.ends[0].angles[-1]

    def lowered(self, rise: Span) -> "LeverSpan":
        """Return the curves after the centre of gravity rises.

        Parameters
        ----------
        rise : Span
            Rise of the centre of gravity [m].

        Returns
        -------
        LeverSpan

        References
        ----------
        Each lever less rise × sin of its angle, plain mechanics.
        """
        ends = (curve.lowered(metres) for curve in self.ends for metres in {rise.low, rise.high})
        likely = None
        if self.likely is not None and rise.point is not None:
            likely = self.likely.lowered(rise.point)
        return LeverSpan(tuple(ends), likely)
