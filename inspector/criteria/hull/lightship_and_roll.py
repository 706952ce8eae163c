"""The lightship against the booklet, and the metacentric height that a timed roll shows."""

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact, percent_of
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.orders import BELOW, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

LIGHTSHIP = Source.seen(
    "SOLAS II-1/5.4 and 5.5 with explanatory notes", "as amended", "deviation of the lightship"
)


ROLLING = Source.seen(
    "Resolution A.749(18), annex 3, rolling test, with the least GM of IS Code 2008 part A 2.2",
    "as adopted in 1993, superseded by the IS Code 2008, whose annex 1 was not compared; 2008",
    "GM = (f B / T)²; GM at least 0.15 m",
)


AMEND, INCLINE = 1.0, 2.0  # % of lightship


LCG_AMEND, LCG_INCLINE = 0.5, 1.0  # % of length


# loading -> f; 2 C of the weather criterion is another thing and never enters here
ROLL_FACTORS = {
    "light or ballast": 0.88,
    "loaded, liquids 20 % of load": 0.78,
    "loaded, liquids 10 % of load": 0.75,
    "loaded, liquids 5 % of load": 0.73,
}


FACTOR_SPREAD = 0.05


LEAST_GM = 0.15  # m


def judge_lightship(
    booklet: float, found: float, lcg_shift: float | None = None, length: float | None = None
) -> Judgement:
    """Judge a lightship found by weighing against the one in the stability booklet.

    Parameters
    ----------
    booklet : float
        Lightship in the booklet [t].
    found : float
        Lightship found [t].
    lcg_shift : float, optional
        Shift of the centre along the ship [m].
    length : float, optional
        Length [m].

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS II-1/5.4, 5.5 (seen): new inclining above 2 % of displacement or 1 % of length; the
    booklet amended from 1 % or 0.5 %.
    """
    # A shift counts as a share of the length, which is known of most vessels without one.
    if lcg_shift is not None and length is None:
        refuse("length", None, "a shift of the centre needs the length as well")
    name, share, amend, incline = _governing_share(booklet, found, lcg_shift, length)
    if share > incline:
        band, rating, outcome = "new inclining due", "poor", "so a new inclining test is due"
    elif share >= amend:
        band, rating, outcome = "booklet to be amended", "fair", "so the booklet is to be amended"
    else:
        band, rating, outcome = "as in the booklet", "good", "so the booklet is still right in this"
    sentence = (
        f"The lightship's {name} differs by {show(share, '%')}, where amending begins at "
        f"{show(amend, '%')} and inclining above {show(incline, '%')}, {outcome}."
    )
    notes = (
        (
            "A change of height counts too (1 % of the centre's height), "
            "and only an inclining finds it."
        ),
        "Small ships: 2 % or 2 t, whichever is greater (MSC/Circ.1158).",
    )
    return Judgement(band, rating, share, "%", incline, difference(incline, share), sentence, notes)


def _governing_share(
    booklet: float, found: float, lcg_shift: float | None, length: float | None
) -> tuple[str, float, float, float]:
    """Return the measure nearest to a new inclining: its name, share, and both limits [%]."""
    # Either way: a ship that became lighter floats otherwise than its booklet as well.
    displacement = percent_of(abs(exact(found) - exact(booklet)), booklet)
    if lcg_shift is None:
        return "displacement", displacement, AMEND, INCLINE
    centre = percent_of(abs(lcg_shift), length)
    # the two measures have different limits, so that they are compared by the part used up
    if centre / LCG_INCLINE > displacement / INCLINE:
        return "centre along the length", centre, LCG_AMEND, LCG_INCLINE
    return "displacement", displacement, AMEND, INCLINE


def rolling_gm(breadth: float, period: float, factor: float) -> float:
    """Return the metacentric height [m] from breadth [m], roll period [s] and the rolling factor f.

    Parameters
    ----------
    breadth : float
        Breadth [m].
    period : float
        Roll period, there and back [s].
    factor : float
        Rolling factor f, one of ``ROLL_FACTORS``.

    Returns
    -------
    float
        Metacentric height [m].

    References
    ----------
    A.749(18) annex 3 (seen).

    Examples
    --------
    >>> round(rolling_gm(14, 9.5, 0.78), 3)
    1.321
    """
    return (factor * breadth / period) ** 2


def judge_roll(period: float, breadth: float, length: float, condition: str) -> Judgement:
    """Estimate the metacentric height of a vessel up to 70 m from a timed roll.

    Parameters
    ----------
    period : float
        Roll period, there and back [s].
    breadth : float
        Breadth [m].
    length : float
        Length [m].
    condition : str
        Loading, one of ``ROLL_FACTORS``.

    Returns
    -------
    Judgement

    References
    ----------
    A.749(18) annex 3 (seen); least GM 0.15 m by IS Code 2008 part A 2.2 (seen in extracts).
    """
    factor = ROLL_FACTORS[condition]
    gm = rolling_gm(breadth, period, factor)
    low = rolling_gm(breadth, period, factor - FACTOR_SPREAD)
    high = rolling_gm(breadth, period, factor + FACTOR_SPREAD)
    # the factor is known to 0.05 only, so that a figure within that spread is not trusted
    if gm < LEAST_GM:
        band, rating = "below the least", "poor"
        outcome = "below it: have the stability looked at before she sails"
    elif low < LEAST_GM:
        band, rating, outcome = "near the least", "poor", "too near it for this test to tell"
    else:
        # Never good: a timed roll proves no stability, it can only cast doubt.
        band, rating, outcome = "above the least", None, "above it, as an indication only"
    sentence = (
        f"A roll of {show(period, 's')} on {show(breadth, 'm')} breadth gives a metacentric "
        f"height near {show(gm, 'm')} ({show(low, 'm')} to {show(high, 'm')}), against at least "
        f"{show(LEAST_GM, 'm')}: {outcome}."
    )
    notes = (
        "Timed alongside with slack lines and deep water, as the mean of several rolls.",
        "It replaces no inclining test and no booklet.",
    )
    return Judgement(band, rating, gm, "m", LEAST_GM, difference(gm, LEAST_GM), sentence, notes)


_TONNES = {"kind": "number", "unit": "t", "low": 50, "high": 20_000}


CRITERIA = (
    Criterion(
        "lightship-change",
        "Lightship found against the booklet",
        (
            Field("booklet", "Lightship in the booklet", **_TONNES),
            Field("found", "Lightship found", **_TONNES),
            number_field(
                "lcg_shift", "Shift of the centre along the ship", "m", -20, 20, optional=True
            ),
            number_field("length", "Length", "m", 24, 150, optional=True),
        ),
        LIGHTSHIP,
        judge_lightship,
        "Ships with an approved booklet, lightships of 50 to 20 000 t.",
        "Both limits of both measures from both sides by our own arithmetic.",
    ),
    Criterion(
        "rolling-test",
        "Metacentric height from a timed roll",
        (
            number_field("period", "Roll period, there and back", "s", 1, 60),
            number_field("breadth", "Breadth", "m", 4, 30),
            number_field("length", "Length", "m", 10, 70),
            Field("condition", "Loading", "choice", choices=tuple(ROLL_FACTORS)),
        ),
        ROLLING,
        judge_roll,
        "Ships up to 70 m, upright, free to roll.",
        "Two cases by our own arithmetic and the least height from both sides.",
        orders=(
            Order(
                "breadth",
                BELOW,
                "length",
                "the two were taken from the certificate in the wrong order",
            ),
        ),
    ),
)
