"""A judgement by a band of a ladder: the number, the limit it is held against, the margin, and one sentence that says them all."""

from inspector.criteria.exact import nearer
from inspector.criteria.judgement import Judgement
from inspector.criteria.ladder import Step
from inspector.criteria.source import Source
from inspector.quantities import difference


def told(
    name: str,
    step: Step,
    said: str,
    reading: tuple[float | None, str | None, float | None],
    source: Source,
    notes: tuple[str, ...] = (),
    *,
    at_least: bool = False,
    verb: str = "is",
) -> Judgement:
    """Return the judgement of a number held against one limit.

    said : the sentence up to the verb, which the band's meaning finishes; reading : value, its unit, the limit, either number None where
    there is none. at_least : True where the limit is the least that will do, so that the margin is positive above it.
    """
    value, unit, limit = reading
    margin = None
    if value is not None and limit is not None:
        margin = difference(value, limit) if at_least else difference(limit, value)
    return Judgement(name, step.band, step.rating, value, unit, limit, margin, f"{said} {verb} {step.meaning}.", source, notes)


def told_between(
    name: str, step: Step, said: str, reading: tuple[float, str | None], ends: tuple[float, float], source: Source, notes: tuple[str, ...] = ()
) -> Judgement:
    """Return the judgement of a number held against a least and a most: the nearer end is its limit, the margin positive between them.

    said : the sentence up to "is"; reading : value and its unit.
    """
    value, unit = reading
    limit, margin = nearer(value, *ends)
    return Judgement(name, step.band, step.rating, value, unit, limit, margin, f"{said} is {step.meaning}.", source, notes)
