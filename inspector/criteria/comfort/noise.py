"""The noise that one person gets in a day."""

import math

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import bands_of, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

DAY = Source.seen(
    "Code on noise levels on board ships, MSC.337(91)", "2012", "chapter 5, level of 24 hours"
)

MOST_DAY = 80.0  # dB(A)


def day_level(parts: list[tuple[float, float]]) -> float:
    """Return the level of 24 hours.

    Parameters
    ----------
    parts : list[tuple[float, float]]
        Levels [dB(A)] and their hours [h].

    Returns
    -------
    float
        Level [dB(A)].

    References
    ----------
    MSC.337(91), chapter 5 (seen).

    Examples
    --------
    >>> round(day_level([(85, 8), (60, 16)]), 2)
    80.26
    """
    # Energies are averaged and not decibels: an hour at 90 dB(A) weighs as much as ten at 80.
    return 10 * math.log10(math.fsum(hours * 10 ** (level / 10) for level, hours in parts) / 24)


def judge_exposure(
    level: float,
    hours: float,
    second_level: float,
    second_hours: float,
    third_level: float | None = None,
    third_hours: float | None = None,
    fourth_level: float | None = None,
    fourth_hours: float | None = None,
) -> Judgement:
    """Judge the noise that one person gets in a day of 24 hours.

    Parameters
    ----------
    level : float
        Sound level [dB(A)].
    hours : float
        Hours there [h].
    second_level : float
        Second part's level [dB(A)].
    second_hours : float
        Second part's hours [h].
    third_level : float, optional
        Third part's level [dB(A)].
    third_hours : float, optional
        Third part's hours [h].
    fourth_level : float, optional
        Fourth part's level [dB(A)].
    fourth_hours : float, optional
        Fourth part's hours [h].

    Returns
    -------
    Judgement

    References
    ----------
    MSC.337(91), 5.1 (seen): space limits are set so that 24 hours stay at 80 dB(A) or less.
    """
    parts = _parts_of_day(
        ("level", level, hours),
        ("second", second_level, second_hours),
        ("third", third_level, third_hours),
        ("fourth", fourth_level, fourth_hours),
    )
    total = math.fsum(duration for _, duration in parts)
    # hours typed as fractions may miss the sum by a rounding
    if abs(total - 24) > 1e-6:
        refuse("hours", hours, f"the hours make {show(total, 'h')}, and a day has 24 h")
    mean_level = day_level(parts)
    bands = bands_of(
        "dB(A)",
        to(MOST_DAY, "within the limit", "good", "within it"),
        beyond("over the limit", "poor", "over it"),
    )
    listed = ", ".join(f"{show(time, 'h')} at {show(loud, 'dB(A)')}" for loud, time in parts)
    subject = (
        f"A day of {listed} makes {show(mean_level, 'dB(A)')}, "
        f"which, against {show(MOST_DAY, 'dB(A)')},"
    )
    notes = ("Unprotected ears are meant; local law on work may ask less.",)
    return judge_by_band(bands.band_of(mean_level), subject, (mean_level, "dB(A)", MOST_DAY), notes)


def _parts_of_day(
    *asked: tuple[str, float | None, float | None],
) -> list[tuple[float, float]]:
    """Return level and hours of each part that was given; refuse half a part."""
    # Half of a pair would drop out of the sum without a word.
    for part, level, hours in asked:
        if (level is None) != (hours is None):
            missing = f"{part}_level" if level is None else f"{part}_hours"
            refuse(missing, None, f"the {part} part has a level or hours without the other")
    return [(level, hours) for _, level, hours in asked if level is not None]


def _level(name: str = "level", label: str = "Sound level", optional: bool = False) -> Field:
    return number_field(name, label, "dB(A)", 20, 140, optional=optional)


def _hours(name: str, optional: bool = False) -> Field:
    """Return the field of the hours of a part; the first part has no name in its label."""
    return number_field(
        name,
        f"{name.partition('_')[0].capitalize()} part's hours" if "_" in name else "Hours there",
        "h",
        0,
        24,
        optional=optional,
    )


def _part(name: str, optional: bool = False) -> tuple[Field, Field]:
    """Return the level and the hours of a further part of the day."""
    label = f"{name.capitalize()} part's level"
    return _level(f"{name}_level", label, optional), _hours(f"{name}_hours", optional)


CRITERIA = (
    Criterion(
        "noise-exposure",
        "Noise of a day for one person",
        (
            _level(),
            _hours("hours"),
            *_part("second"),
            *_part("third", optional=True),
            *_part("fourth", optional=True),
        ),
        DAY,
        judge_exposure,
        "Two to four parts of a day that make 24 hours; 20 to 140 dB(A).",
        "Four days by our own arithmetic.",
    ),
)
