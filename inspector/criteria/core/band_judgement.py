"""A judgement by a band: a number, the limit it is compared with, the margin and the sentence."""

from inspector.criteria.core.bands import Band
from inspector.criteria.core.decimals import nearer_end
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.numbers import difference


def judge_by_band(
    band: Band,
    subject: str,
    reading: tuple[float | None, str | None, float | None],
    notes: tuple[str, ...] = (),
    *,
    source: Source | None = None,
    at_least: bool = False,
    verb: str = "is",
) -> Judgement:
    """Return the judgement of a number that is compared with one limit.

    Parameters
    ----------
    band : Band
        The band in which the number lies.
    subject : str
        The sentence up to the verb; the band's meaning finishes it.
    reading : tuple of (float or None, str or None, float or None)
        The value, its unit, and the limit in that unit; None where there is no number.
    notes : tuple of str
    source : Source, optional
        Where the criterion's own source is not the one that decides here.
    at_least : bool
        True where the limit is the least that will do, so that the margin is positive above it.
    verb : str

    Returns
    -------
    Judgement
    """
    value, unit, limit = reading
    margin = None
    # A count or a class has a band and no distance to a limit.
    if value is not None and limit is not None:
        margin = difference(value, limit) if at_least else difference(limit, value)
    sentence = f"{subject} {verb} {band.meaning}."
    return Judgement(band.band, band.rating, value, unit, limit, margin, sentence, notes, source)


def judge_between(
    band: Band,
    subject: str,
    reading: tuple[float, str | None],
    ends: tuple[float, float],
    notes: tuple[str, ...] = (),
    *,
    source: Source | None = None,
) -> Judgement:
    """Return the judgement of a number that is compared with a least and a most.

    Parameters
    ----------
    band, subject, notes, source
        As for ``judge_by_band``; the verb is "is".
    reading : tuple of (float, str or None)
        The value and its unit.
    ends : tuple of (float, float)
        The least and the most; the nearer one is the limit, and the margin is positive between
        them.

    Returns
    -------
    Judgement
    """
    value, unit = reading
    # Of two ends the nearer one says how much is left.
    limit, margin = nearer_end(value, *ends)
    sentence = f"{subject} is {band.meaning}."
    return Judgement(band.band, band.rating, value, unit, limit, margin, sentence, notes, source)
