"""How long the work keeps the vessel in the yard, from the sequence of its lines."""

from collections.abc import Iterable, Mapping
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

    Lines of one place in the sequence are worked on side by side, and the places follow each other;
    a line that names the one before it waits for that one alone. A line with neither may run beside
    all the others, or after them.

    Parameters
    ----------
    lines : iterable of WorkLine
        Those that are done.

    Returns
    -------
    YardTime

    References
    ----------
    Model of our own: the longest path through the order of the work.

    Examples
    --------
    >>> steel = WorkLine("1", "hull", "all", "refurbish", "Steel", sequence=1, weeks=6.0)
    >>> paint = WorkLine("2", "hull", "all", "refurbish", "Paint", sequence=2, weeks=2.0)
    >>> yard_time([steel, paint]).weeks
    Span(low=8.0, point=8.0, high=8.0)
    """
    lines = tuple(lines)
    timed = {line.id: line for line in lines if line.weeks is not None}
    without = tuple(line for line in lines if line.weeks is None)
    if not timed:
        return YardTime(None, without)
    ends = _ends_in_sequence(timed)
    loose = []
    for line in timed.values():
        if _waits(line, timed):
            ends[line.id] = _end(line, timed, ends, frozenset())
        elif line.sequence is None:
            loose.append(line.weeks)
    in_order = max(ends.values(), default=0.0)
    # Beside all the others at best, each after the other at worst.
    low, high = max(in_order, *loose, 0.0), in_order + sum(loose)
    return YardTime(Span(low, low if low == high else None, high), without)


def _waits(line: WorkLine, timed: Mapping[str, WorkLine]) -> bool:
    """Whether a line waits for one that is done and says how long it takes."""
    return line.after in timed and line.after != line.id


def _ends_in_sequence(timed: Mapping[str, WorkLine]) -> dict[str, float]:
    """Return when the lines end that have a place and wait for no single line [weeks]."""
    placed = [
        line for line in timed.values() if line.sequence is not None and not _waits(line, timed)
    ]
    ends, begun = {}, 0.0
    for place in sorted({line.sequence for line in placed}):
        together = [line for line in placed if line.sequence == place]
        ends |= {line.id: begun + line.weeks for line in together}
        begun += max(line.weeks for line in together)
    return ends


def _end(
    line: WorkLine, timed: Mapping[str, WorkLine], ends: Mapping[str, float], seen: frozenset[str]
) -> float:
    """Return when a line ends [weeks], after the one that it waits for."""
    if not _waits(line, timed):
        return ends.get(line.id, line.weeks)
    # Two lines that wait for each other were typed by mistake: neither waits for ever.
    if line.id in seen:
        return 0.0
    return _end(timed[line.after], timed, ends, seen | {line.id}) + line.weeks
