"""The view from the bridge: how much sea the bow hides from a person at the conning place."""

from decimal import Decimal

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.orders import ABOVE, AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field
from inspector.values.formatting import show

VIEW = Source.seen(
    "SOLAS V/22, navigation bridge visibility",
    "as reprinted in public, 2006 amendments",
    "1.1, ships of 55 m and more built from 1 July 1998",
)
FARTHEST = 500  # m
NOTES = (
    "Every draught, trim and deck load counts: add what the conversion puts on the forward deck.",
    "A ship built before 1 July 1998 meets it where practicable; flag and class decide.",
)


def hidden_sea(eye: float, bow: float, distance: float) -> Decimal:
    """Return how far beyond the bow the water is hidden: the line from eye over rail, drawn on.

    Parameters
    ----------
    eye : float
        Height of the eye above the water [m].
    bow : float
        Height of the bow rail above the water [m].
    distance : float
        From eye to bow rail, level [m].

    Returns
    -------
    Decimal
        Hidden sea forward of the bow rail [m].

    References
    ----------
    Similar triangles, our own drawing.
    """
    return exact(distance) * exact(bow) / (exact(eye) - exact(bow))


def judge_hidden_sea(eye: float, bow: float, distance: float, length: float) -> Judgement:
    """Judge the sea that the bow hides against two ship lengths or 500 m.

    Parameters
    ----------
    eye : float
        Height of the eye above the water [m].
    bow : float
        Height of the bow rail above the water [m].
    distance : float
        From eye to bow rail, level [m].
    length : float
        Length of the ship over all [m].

    Returns
    -------
    Judgement
        Value and limit in metres beyond the bow [m].

    References
    ----------
    SOLAS V/22.1.1: not more than two ship lengths or 500 m, whichever is the less (seen).
    """
    hidden = hidden_sea(eye, bow, distance)
    limit = min(2 * exact(length), exact(FARTHEST))
    band, rating = ("beyond the limit", "poor") if hidden > limit else ("within it", "good")
    found, allowed = float(hidden), float(limit)
    sentence = f"The bow hides {show(found, 'm')} of sea, against {show(allowed, 'm')}: {band}."
    return Judgement(band, rating, found, "m", allowed, float(limit - hidden), sentence, NOTES)


CRITERIA = (
    Criterion(
        "hidden-sea",
        "Sea hidden by the bow from the conning place",
        (
            Field("eye", "Eye above the water", "number", "m", low=2, high=60),
            Field("bow", "Bow rail above the water", "number", "m", low=0.5, high=40),
            Field("distance", "Eye to bow rail", "number", "m", low=1, high=300),
            Field("length", "Length over all", "number", "m", low=55, high=400),
        ),
        VIEW,
        judge_hidden_sea,
        "Ships of 55 to 400 m, with the eye above the bow rail.",
        "Both limits from both sides by our own arithmetic.",
        orders=(
            Order("eye", ABOVE, "bow", "the eye must be higher above the water than the bow rail"),
            Order(
                "distance",
                AT_MOST,
                "length",
                "the bow rail is no further away than the ship is long",
            ),
        ),
    ),
)
