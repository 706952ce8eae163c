"""Ladders from rows of bands, and the judgement of one number that lies in one of them."""

from inspector.criteria.judgement import Judgement
from inspector.criteria.ladder import Ladder, Step
from inspector.criteria.source import Source
from inspector.quantities import difference, show

# (upper end or None, band, rating, what finishes "... is")
Band = tuple[float | None, str, str | None, str]


def up_to(unit: str, *bands: Band) -> Ladder:
    """Bands by rising value, each with its upper end inside; the last one has no end."""
    return Ladder(unit, tuple(Step(end, end is not None, *rest) for end, *rest in bands))


def below(unit: str, *bands: Band) -> Ladder:
    """Bands by rising value, each without its upper end, which belongs to the next; the last one has no end."""
    return Ladder(unit, tuple(Step(end, False, *rest) for end, *rest in bands))


def between(unit: str, low: float, high: float, under: Band, inside: Band, over: Band) -> Ladder:
    """Three bands: under low, low to high with both ends inside, and over high."""
    return Ladder(unit, (Step(low, False, *under[1:]), Step(high, True, *inside[1:]), Step(None, False, *over[1:])))


def nearer(value: float, low: float, high: float) -> tuple[float, float]:
    """Return the nearer end of a band and the margin to it, positive inside the band."""
    to_low, to_high = difference(value, low), difference(high, value)
    return (low, to_low) if to_low <= to_high else (high, to_high)


def told(
    name: str,
    ladder: Ladder,
    value: float,
    subject: str,
    against: str,
    limit: float,
    source: Source,
    *,
    at_least: bool = False,
    notes: tuple[str, ...] = (),
    margin: float | None = None,
) -> Judgement:
    """Return the judgement of a value by its ladder: "<subject>, against <against>, is <meaning>."

    subject : holds {} where the value shall stand, else the value follows it ("A gap" becomes "A gap of 4.8 mm").
    at_least : True where the limit is the least that will do. margin : where it is not the plain distance to the limit.
    """
    step = ladder.step(value)
    if margin is None:
        margin = difference(value, limit) if at_least else difference(limit, value)
    said = (subject if "{}" in subject else subject + " of {}").replace("{}", show(value, ladder.unit))
    sentence = f"{said}, against {against}, is {step.meaning}."
    return Judgement(name, step.band, step.rating, value, ladder.unit, limit, margin, sentence, source, notes)
