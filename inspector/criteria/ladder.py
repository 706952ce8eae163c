"""Bands of one number as data: what a judging function applies here and a phone applies alone, by the same numbers."""

from dataclasses import dataclass, replace


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
