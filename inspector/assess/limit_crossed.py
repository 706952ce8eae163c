"""The limit that a reading has crossed, or the one that it would cross next.

A criterion names one limit of its own; where it has bands, a reading beyond the first one has
crossed another, and to print the next one beside "poor" would mislead.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from inspector.criteria.core.bands import Bands
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import CannotJudge, Judgement
from inspector.criteria.core.limit_sets import LimitSet
from inspector.values.errors import InspectorError
from inspector.values.numbers import difference, parse_number
from inspector.values.vocabulary import RATINGS


def with_limit_crossed(
    rule: Criterion, values: Mapping[str, Any], limits: LimitSet | None, judged: Judgement
) -> Judgement:
    """Return a judgement whose limit is the one crossed, with the margin from there.

    Parameters
    ----------
    rule : Criterion
    values : mapping of str to Any
        The inputs by which it judged.
    limits : LimitSet or None
        The surveyor's own.
    judged : Judgement

    Returns
    -------
    Judgement
        The same where the criterion has no bands. A limit that contradicts its rating (good beyond
        it, poor within it) was another quantity's, and is left out.
    """
    found = _from_bands(rule, values, limits, judged)
    if found is not None:
        return replace(judged, limit=found[0], margin=found[1])
    if judged.margin is None or judged.rating is None:
        return judged
    # Several quantities judged together: the one that is printed is not the one that decided.
    if judged.rating != "good" and judged.margin > 0:
        return replace(judged, limit=None, margin=None)
    return judged


def _from_bands(
    rule: Criterion, values: Mapping[str, Any], limits: LimitSet | None, judged: Judgement
) -> tuple[float, float] | None:
    """The limit and the margin by the bands of the deciding number, None where there are none."""
    deciding = values.get(rule.deciding_input)
    if judged.value is None or judged.rating is None or deciding in (None, ""):
        return None
    try:
        bands = rule.bands_for(values, limits)
        value = parse_number(deciding)
    except (CannotJudge, InspectorError):
        return None
    # What is compared may be computed from what was typed, and its bands are those of the former.
    if bands is None or bands.unit != (judged.unit or "") or value != judged.value:
        return None
    return _edge(bands, value, judged.rating)


def _edge(bands: Bands, value: float, rating: str) -> tuple[float, float] | None:
    """The nearest end towards what is better; where nothing is, the nearest before what is worse.

    Neighbouring bands may share a rating: an end between them is no limit of it.
    """
    here = _rank(rating)
    at = next(number for number, band in enumerate(bands.bands) if band.includes(value))
    better, worse = [], []
    for number, band in enumerate(bands.bands):
        # A band without a rating (a reading that must be wrong) is neither better nor worse.
        if number == at or _rank(band.rating) in (here, -1):
            continue
        # The end of the other band that is nearer to the value.
        end = band.upto if number < at else bands.bands[number - 1].upto
        distance = difference(max(end, value), min(end, value))
        (better if _rank(band.rating) < here else worse).append((distance, end))
    if better:
        distance, end = min(better)
        return end, -distance
    if worse:
        distance, end = min(worse)
        return end, distance
    return None


def _rank(rating: str | None) -> int:
    return RATINGS.index(rating) if rating in RATINGS else -1
