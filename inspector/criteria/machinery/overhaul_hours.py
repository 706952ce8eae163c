"""Hours since a part of an engine was overhauled, against usual practice by speed class."""

from collections.abc import Iterator, Mapping

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.limit_sets import (
    Limit,
    LimitSet,
    limit_prefix,
    limits_of_choice,
    settable_limit,
)
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

PRACTICE = Source.common_practice(
    "Overhaul intervals by speed class", "hours, medium and wide ranges"
)
PARTS = ("injectors", "top end", "pistons or major", "bearings", "turbocharger")
# Speed class -> for each of PARTS the hours from and to which the trade overhauls.
HOURS = {
    "high speed": (
        (3000, 6000),
        (6000, 12_000),
        (12_000, 24_000),
        (12_000, 24_000),
        (12_000, 16_000),
    ),
    "medium speed": (
        (2000, 6000),
        (12_000, 18_000),
        (16_000, 36_000),
        (24_000, 48_000),
        (12_000, 16_000),
    ),
    "low speed": (
        (6000, 8000),
        (12_000, 16_000),
        (16_000, 24_000),
        (32_000, 48_000),
        (12_000, 16_000),
    ),
}
# The fastest of the low and of the medium speed engines in r/min, our own cuts.
SLOW_BELOW, MEDIUM_TO = 300, 1000
NOTES = (
    "A meter without a log is unverified: ask for the book, the invoices and the meter's own "
    "history.",
)


def _limits() -> Iterator[Limit]:
    """Yield both ends of the usual hours of each part in each speed class."""
    # A limit for each end of each cell, so that a surveyor can set the maker's own.
    for speed, ranges in HOURS.items():
        for part, hours in zip(PARTS, ranges, strict=True):
            for end, value in zip(("from", "to"), hours, strict=True):
                name = f"{limit_prefix(speed)}_{limit_prefix(part)}_{end}"
                label = f"{speed}, {part}, {end}"
                yield settable_limit(name, label, "h", float(value), 100, 100_000)


HOURS_LIMITS = LimitSet("Usual overhaul hours", tuple(_limits()), PRACTICE)


def speed_class(speed: float) -> str:
    """Return the speed class of an engine.

    Parameters
    ----------
    speed : float
        Rated speed [rpm].

    Returns
    -------
    str
        low speed, medium speed or high speed.

    References
    ----------
    Model of our own: cuts at 300 and 1000 r/min.

    Examples
    --------
    >>> speed_class(299), speed_class(300), speed_class(1000), speed_class(1001)
    ('low speed', 'medium speed', 'medium speed', 'high speed')
    """
    if speed < SLOW_BELOW:
        return "low speed"
    return "medium speed" if speed <= MEDIUM_TO else "high speed"


def _usual_hours(speed: float, part: str, limits: Mapping[str, float]) -> tuple[float, ...]:
    return limits_of_choice(limits, f"{speed_class(speed)} {part}", "from", "to")


def hours_bands(speed: float, part: str, limits: Mapping[str, float]) -> Bands:
    """Return the bands of the hours since a part was overhauled.

    Parameters
    ----------
    speed : float
        Rated speed [rpm].
    part : str
        One of PARTS.
    limits : mapping of str to float
        From and to [h], by speed class and part.

    Returns
    -------
    Bands
        In h.
    """
    first, last = _usual_hours(speed, part, limits)
    return bands_of(
        "h",
        below(min(first, last), "not due", "good", "short of any usual interval"),
        to(last, "due by practice", "fair", "inside the usual range, so it may be due"),
        beyond("past the range", "poor", "past the usual range: take an overhaul into the budget"),
    )


def judge_hours(hours: float, speed: float, part: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the hours since a part was overhauled where the maker's interval is not known.

    Parameters
    ----------
    hours : float
        Hours since the overhaul [h].
    speed : float
        Rated speed [rpm].
    part : str
        One of PARTS.
    limits : mapping of str to float
        From and to [h], by speed class and part.

    Returns
    -------
    Judgement

    References
    ----------
    Common practice, no source; wide ranges, and the maker's schedule wins.
    """
    first, last = _usual_hours(speed, part, limits)
    engine = f"{show(hours, 'h')} on {part} of a {speed_class(speed)} engine"
    subject = f"{engine}, overhauled at {show(first, 'h')} to {show(last, 'h')} by practice,"
    band = hours_bands(speed, part, limits).band_of(hours)
    return judge_by_band(band, subject, (hours, "h", last), NOTES)


CRITERIA = (
    Criterion(
        "overhaul-hours",
        "Hours since an overhaul, by usual practice",
        (
            number_field("hours", "Hours since the overhaul", "h", 0, 500_000),
            number_field("speed", "Rated speed", "rpm", 50, 4000),
            Field("part", "Which part", "choice", choices=PARTS),
        ),
        PRACTICE,
        judge_hours,
        "Diesel engines of 50 to 4000 r/min where the maker's interval is not known.",
        "Both ends of each row from both sides; trade guidance.",
        limit_set=HOURS_LIMITS,
        bands=hours_bands,
    ),
)
