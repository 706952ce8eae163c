"""Bands of one number as data: what a judging function applies here and a phone applies alone, by the same numbers."""

from dataclasses import dataclass, replace

from inspector.quantities import show


@dataclass(frozen=True)
class Step:
    """One band: it reaches up to ``upto`` (None: without end), which belongs to it where ``closed``."""

    upto: float | None
    closed: bool
    band: str
    rating: str | None
    meaning: str                       # finishes "9.6 mm is ..."

    def holds(self, value: float) -> bool:
        """True where the value does not lie beyond this band's upper end."""
        return self.upto is None or value < self.upto or (self.closed and value == self.upto)


@dataclass(frozen=True)
class Ladder:
    """Bands by rising value of the criterion's first input, in ``unit``; the last one is without end."""

    unit: str
    steps: tuple[Step, ...]

    def step(self, value: float) -> Step:
        """The band in which a value lies."""
        return next(step for step in self.steps if step.holds(value))

    def held_at_poor(self) -> "Ladder":
        """The same bands where the mark of the source does not let them fail a system."""
        return replace(self, steps=tuple(replace(step, rating="poor") if step.rating == "failed" else step for step in self.steps))

    def as_data(self) -> dict[str, object]:
        """For the page: plain JSON."""
        return {"unit": self.unit, "steps": [[step.upto, step.closed, step.band, step.rating, step.meaning] for step in self.steps]}


def to(upto: float, band: str, rating: str | None, meaning: str) -> Step:
    """The band up to a value that belongs to it."""
    return Step(upto, True, band, rating, meaning)


def below(upto: float, band: str, rating: str | None, meaning: str) -> Step:
    """The band up to a value that belongs to the next band."""
    return Step(upto, False, band, rating, meaning)


def beyond(band: str, rating: str | None, meaning: str) -> Step:
    """The last band, without end."""
    return Step(None, False, band, rating, meaning)


def stairs(unit: str, *steps: Step) -> Ladder:
    """Bands by rising value; one that ends where an earlier one ended holds nothing and is left out.

    So limits that a surveyor sets in an unusual order (an alarm above the watch limit) still give one band for each value. Where low is bad
    the earlier band is the stricter one; where high is bad the caller takes the lesser of two ends.

    Examples
    --------
    >>> [step.band for step in stairs("V", below(5, "low", "poor", "low"), below(3, "odd", "fair", "odd"), beyond("good", "good", "good")).steps]
    ['low', 'good']
    """
    kept: list[Step] = []
    for step in steps:
        if step.upto is None or not kept or (step.upto, step.closed) > (kept[-1].upto, kept[-1].closed):
            kept.append(step)
    return Ladder(unit, tuple(kept))


def inside(unit: str, low: float, high: float) -> Ladder:
    """A band with both ends inside, good, and poor on either side; each meaning names the ends."""
    ends = f"{show(low, unit)} to {show(high, unit)}"
    outside = ("outside the band", "poor", f"outside {ends}")
    return stairs(unit, below(low, *outside), to(high, "inside the band", "good", f"inside {ends}"), beyond(*outside))


def watch_and_act(unit: str, watch: float, act: float, cause: str, *, act_from: bool = False) -> Ladder:
    """Three bands of a number that is worse the higher it is: good up to watch, fair up to act, poor above.

    An act limit at or below the watch limit leaves no fair band: the stricter one counts. ``act_from`` makes the act limit itself a case
    for action. cause: what to do or think of when it acts.
    """
    end = below if act_from else to
    good = to(watch, "good", "good", "in order") if watch < act else end(act, "good", "good", "in order")
    return stairs(unit, good, end(act, "watch", "fair", "to be watched, and read again"), beyond("act", "poor", cause))
