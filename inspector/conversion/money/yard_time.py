"""How long the work keeps the vessel in the yard, from the sequence of its lines."""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.assess.registers import WorkLine
from inspector.conversion.core.span import Span

WEEKS_IN_A_MONTH = 365.25 / 7 / 12


@dataclass(frozen=True)
class YardTime:
    """The time in the yard.

    Parameters
    ----------
    weeks : Span or None
        [weeks]; None where no line says how long it takes.
    without : tuple of WorkLine
        The lines that do not say it: the time is so much at least.
    """

    weeks: Span | None
    without: tuple[WorkLine, ...]

    @property
    def months(self) -> Span | None:
        """The same in months, None where it is not known."""
        return None if self.weeks is None else self.weeks / WEEKS_IN_A_MONTH


def yard_time(lines: Iterable[WorkLine]) -> YardTime:
    """Return how long lines keep a vessel in the yard.

    Lines of one place in the sequence are worked on side by side, and the places follow each other.
    A line without a place may run beside all the others, or after them.

    Parameters
    ----------
    lines : iterable of WorkLine
        Those that are done.

    Returns
    -------
    YardTime

    References
    ----------
    Model of our own: the critical path where each place of the sequence waits for the one before.

    Examples
    --------
    >>> steel = WorkLine("1", "hull", "all", "refurbish", "Steel", sequence=1, weeks=6.0)
    >>> paint = WorkLine("2", "hull", "all", "refurbish", "Paint", sequence=2, weeks=2.0)
    >>> yard_time([steel, paint]).weeks
    Span(low=8.0, point=8.0, high=8.0)
    """
    lines = tuple(lines)
    timed = [line for line in lines if line.weeks is not None]
    without = tuple(line for line in lines if line.weeks is None)
    if not timed:
        return YardTime(None, without)
    longest: dict[int, float] = {}
    for line in timed:
        if line.sequence is not None:
            longest[line.sequence] = max(longest.get(line.sequence, 0.0), line.weeks)
    loose = [line.weeks for line in timed if line.sequence is None]
    in_sequence = sum(longest.values())
    # Beside all the others at best, each after the other at worst.
    low, high = max(in_sequence, *loose, 0.0), in_sequence + sum(loose)
    return YardTime(Span(low, low if low == high else None, high), without)
