"""How a criterion with one deciding number builds its ladder and tells its judgement, written once for all of them."""

from collections.abc import Mapping

from inspector.criteria.judgement import Judgement
from inspector.criteria.ladder import Ladder, Step
from inspector.criteria.source import Source
from inspector.quantities import difference


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


def watch_and_act(unit: str, watch: float, act: float, cause: str, *, act_from: bool = False) -> Ladder:
    """Three bands of a number that is worse the higher it is: good up to watch, fair up to act, poor above.

    An act limit at or below the watch limit leaves no fair band: the stricter one counts. ``act_from`` makes the act limit itself a case
    for action. cause: what to do or think of when it acts.
    """
    end = below if act_from else to
    good = to(watch, "good", "good", "in order") if watch < act else end(act, "good", "good", "in order")
    return stairs(unit, good, end(act, "watch", "fair", "to be watched, and read again"), beyond("act", "poor", cause))


def told(
    name: str,
    step: Step,
    said: str,
    reading: tuple[float | None, str | None, float | None],
    source: Source,
    notes: tuple[str, ...] = (),
    *,
    high_is_bad: bool = True,
) -> Judgement:
    """The judgement of a step. said: the sentence up to "is"; reading: value, its unit, the limit it is held against."""
    value, unit, limit = reading
    margin = None
    if value is not None and limit is not None:
        margin = difference(limit, value) if high_is_bad else difference(value, limit)
    return Judgement(name, step.band, step.rating, value, unit, limit, margin, f"{said} is {step.meaning}.", source, notes)


def chosen(limits: Mapping[str, float], choice: str, *ends: str) -> tuple[float, ...]:
    """The limits of a choice: those named "<choice with underscores>_<end>" for each end.

    Examples
    --------
    >>> chosen({"stern_tube_watch": 0.5, "stern_tube_act": 1.0}, "stern tube", "watch", "act")
    (0.5, 1.0)
    """
    return tuple(limits[f"{key(choice)}_{end}"] for end in ends)


def key(choice: str) -> str:
    """A choice as the first part of a limit's name."""
    return choice.replace(",", "").replace(" ", "_").replace("-", "_")
