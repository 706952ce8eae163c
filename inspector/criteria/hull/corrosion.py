"""How fast a plate wastes, and how many years it has until its renewal thickness.

Years are calculated as exact fractions and compared unrounded: only what is shown is rounded.
"""

from collections.abc import Mapping
from fractions import Fraction

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.orders import ABOVE, BELOW, Order
from inspector.criteria.core.source import Source
from inspector.criteria.hull.thickness import (
    AS_BUILT,
    BINDING,
    MEASURED,
    MEMBER,
    PROFILE,
    allowances,
    gain_notes,
)
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

REMAINING = Source.seen(
    "API 510, 570 and 653 corrosion rate and remaining life, with the hull renewal "
    "thickness as required thickness",
    "as worked in an inspector's answer key, 2003 figures",
    "exercises 1 to 10",
)


STEADY = "Corrosion is taken to go on as it did; the greater of the known rates counts."


LONGEST_INTERVAL = (
    10  # years between looks, however long the life: the answer key's own figure (seen)
)


def _governing_rate(
    as_built: float,
    built_year: int,
    measured: float,
    measured_year: int,
    previous: float | None,
    previous_year: int | None,
) -> tuple[Fraction, str]:
    """Return the greater of the known rates and since when it is counted."""
    if (previous is None) != (previous_year is None):
        missing = "previous" if previous is None else "previous_year"
        refuse(missing, None, "a previous gauging needs both its thickness and its year")
    # In fractions, so that a life of exactly the horizon is one.
    since_new = (corrosion_rate(as_built, measured, measured_year - built_year), "since new")
    # One gauging gives the mean since new, which hides whether it has become faster.
    if previous_year is None:
        return since_new
    lately = corrosion_rate(previous, measured, measured_year - previous_year)
    return max(since_new, (lately, f"since {previous_year}"))


def corrosion_rate(earlier: float, later: float, years: float) -> Fraction:
    """Return the loss per year between two readings, exactly.

    Parameters
    ----------
    earlier, later : float
        The two readings [mm].
    years : float
        Years between them.

    Returns
    -------
    Fraction
        Loss [mm per year].

    References
    ----------
    API 510, 570, 653 (seen).
    """
    return Fraction(exact(earlier) - exact(later)) / Fraction(years)


def remaining_life(now: float, required: float, rate: Fraction | float) -> Fraction | None:
    """Return the years until the required thickness is reached.

    Parameters
    ----------
    now, required : float
        Present and required thickness [mm].
    rate : Fraction or float
        Loss [mm per year].

    Returns
    -------
    Fraction or None
        Years; 0 where it is reached already, None where nothing is lost.

    References
    ----------
    API 510, 570, 653 (seen).
    """
    # Before the rate is asked: a plate below its limit has no life left, however slowly it rusts.
    if now <= required:
        return Fraction(0)
    return Fraction(exact(now) - exact(required)) / Fraction(rate) if rate > 0 else None


def judge_remaining_life(
    as_built: float,
    built_year: int,
    measured: float,
    measured_year: int,
    member: str,
    limits: Mapping[str, float],
    previous: float | None = None,
    previous_year: int | None = None,
    horizon: float | None = None,
) -> Judgement:
    """Judge the years until the renewal thickness by the greater of two corrosion rates.

    Parameters
    ----------
    as_built : float
        Thickness as built [mm].
    built_year : int
        Year built.
    measured : float
        Measured thickness [mm].
    measured_year : int
        Year of this gauging.
    member : str
        Kind of member, one of ``MEMBERS``.
    limits : mapping of str to float
        The limits of ``PROFILE``.
    previous : float, optional
        Previous thickness [mm].
    previous_year : int, optional
        Year of the previous gauging.
    horizon : float, optional
        Buyer's horizon [years].

    Returns
    -------
    Judgement

    Notes
    -----
    No life left: poor at the renewal thickness, failed below it. Otherwise good where half the life
    covers the horizon (the next look at half the life), fair where the whole does, poor where it
    does not. Without a horizon no rating.

    References
    ----------
    API 510, 570 and 653, as quoted in an answer key (seen); renewal thickness as in judge_plate.
    """
    notes = gain_notes(as_built, measured)
    renewal = allowances(as_built, member, limits)[1]
    rate, since = _governing_rate(
        as_built, built_year, measured, measured_year, previous, previous_year
    )
    life = remaining_life(measured, renewal, rate)
    band, rating, meaning = _life_band(life, measured < renewal, horizon)
    years = None if life is None else float(life)
    if years is None:
        outcome = (
            f"{show(measured, 'mm')} shows no measurable loss {since}, so no end can be computed"
        )
    else:
        outcome = (
            f"{show(measured, 'mm')} with a loss of "
            f"{show(float(max(rate, 0)), 'mm', 3)} a year {since} reaches the "
            f"renewal thickness of {show(renewal, 'mm')} in {show(years, 'years')}"
        )
        # an answer key of inspectors never leaves more than ten years between two looks
        soon = round(min(years / 2, LONGEST_INTERVAL), 1)
        when = f"within {show(soon, 'years')}" if soon > 0 else "now"
        notes = (*notes, f"Gauge again {when}: half of the life, at most ten years.")
    margin = None if years is None or horizon is None else difference(years, horizon)
    return Judgement(
        band,
        rating,
        years,
        "years",
        horizon,
        margin,
        f"{outcome}: {meaning}.",
        (*notes, BINDING, STEADY),
    )


def _life_band(
    life: Fraction | None, below: bool, horizon: float | None
) -> tuple[str, str | None, str]:
    """Return band, rating and meaning of a remaining life for the years that a buyer plans."""
    # Exactly at the renewal thickness nothing is left, and nothing is below it either.
    if life == 0:
        return "no life left", "failed" if below else "poor", "no life is left in this plate"
    if horizon is None:
        return (
            "no horizon given",
            None,
            "without the buyer's horizon there is nothing to hold it against",
        )
    years, wanted = f"the horizon of {show(horizon, 'years')}", Fraction(exact(horizon))
    if life is None or life >= 2 * wanted:
        return (
            "covers the horizon twice",
            "good",
            f"enough for {years} with a gauging at half the life",
        )
    if life >= wanted:
        return "covers the horizon", "fair", f"enough for {years}, but gauge again at half the life"
    return "ends before the horizon", "poor", f"short of {years}: count the plate as steel work"


CRITERIA = (
    Criterion(
        "plate-remaining-life",
        "Years until the renewal thickness",
        (
            AS_BUILT,
            Field("built_year", "Year built", "whole", low=1900, high=2100),
            MEASURED,
            Field("measured_year", "Year of this gauging", "whole", low=1900, high=2100),
            MEMBER,
            number_field("previous", "Previous thickness", "mm", 0, 55, optional=True),
            Field(
                "previous_year",
                "Year of the previous gauging",
                "whole",
                optional=True,
                low=1900,
                high=2100,
            ),
            number_field("horizon", "Buyer's horizon", "years", 0, 60, optional=True),
        ),
        REMAINING,
        judge_remaining_life,
        "As plate-thickness; build, previous and present gauging in this order, whole years.",
        "Rates and lives against the published answers of the key; the hull cases "
        "are our own arithmetic.",
        limit_set=PROFILE,
        orders=(
            Order("measured_year", ABOVE, "built_year", "a gauging lies after the build"),
            Order("previous_year", ABOVE, "built_year", "a gauging lies after the build"),
            Order(
                "previous_year", BELOW, "measured_year", "the previous gauging lies before this one"
            ),
        ),
    ),
)
