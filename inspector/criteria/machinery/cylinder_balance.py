"""How unequal the cylinders of an engine are in exhaust temperature and in pressures."""

import math
import re
import statistics
from collections.abc import Mapping
from dataclasses import dataclass

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import watch_and_act
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import NotANumber, parse_number

EXHAUST = Source.common_practice("Spread of exhaust temperatures", "30 and 50 K from the mean")
COMPRESSION = Source.common_practice("Spread of compression pressures", "5 and 10 % from the mean")
FIRING = Source.common_practice("Spread of firing pressures", "3 and 5 % from the mean")


def _limits(
    title: str, source: Source, unit: str, watch: float, act: float, high: float
) -> LimitSet:
    """Return the limits to watch and to act of one kind of spread."""
    limits = (
        settable_limit("watch", "watch above", unit, watch, 0.5, high),
        settable_limit("act", "act above", unit, act, 0.5, high),
    )
    return LimitSet(title, limits, source)


EXHAUST_LIMITS = _limits("Usual spread of exhaust temperatures", EXHAUST, "K", 30.0, 50.0, 200)
COMPRESSION_LIMITS = _limits(
    "Usual spread of compression pressures", COMPRESSION, "%", 5.0, 10.0, 50
)
FIRING_LIMITS = _limits("Usual spread of firing pressures", FIRING, "%", 3.0, 5.0, 50)
LEAST_LOAD = 75.0  # %, below which exhaust temperatures are indicative only
FEWEST, MOST = 2, 20
STEADY = (
    "Read all cylinders within minutes at a steady load and name load and speed; otherwise the "
    "figures are indicative.",
    "A wrong gauge looks like a bad cylinder: swap the sensors before opening anything.",
)
OF_EXHAUST = "so far off that injector, valve and gauge are to be looked at"
OF_COMPRESSION = "so far off that rings, valves and liner are to be looked at"
OF_FIRING = "so far off that injection and timing are to be looked at"


def cylinders(asked: str, text: str, low: float, high: float) -> tuple[float, ...]:
    """Read one figure for each cylinder, with blanks, semicolons or commas and blanks between.

    Parameters
    ----------
    asked : str
        The input, which a refusal names.
    text : str
        As typed.
    low, high : float
        The range of each figure, in its unit.

    Returns
    -------
    tuple of float

    Raises
    ------
    CannotJudge
        A figure cannot be read or is outside the range, or there are too few or too many.

    Examples
    --------
    >>> cylinders("temperatures", "392 401; 388,5, 390", 0, 900)
    (392.0, 401.0, 388.5, 390.0)
    """
    found = _numbers(asked, text)
    if not FEWEST <= len(found) <= MOST:
        needed = f"{FEWEST} to {MOST} numbers, one for each cylinder"
        refuse(asked, text, f"{asked} must be {needed}, and there are {len(found)}")
    for figure in found:
        if not low <= figure <= high:
            ends = f"between {show(low, '')} and {show(high, '')}"
            refuse(asked, text, f"{asked} must lie {ends}, and one is {show(figure, '')}")
    return found


# A comma with a blank behind it parts two figures; one without is a decimal comma.
_BETWEEN = re.compile(r";|,(?=\s|$)")


def _numbers(asked: str, text: str) -> tuple[float, ...]:
    """Read the figures of a text; the first that is no number refuses it."""
    try:
        return tuple(parse_number(part) for part in _BETWEEN.sub(" ", text).split())
    except NotANumber as problem:
        needed = "one number for each cylinder with blanks between them"
        refuse(asked, text, f"{asked} must be {needed}; {str(problem).rstrip('.')}")


def worst(values: tuple[float, ...]) -> tuple[int, float, float]:
    """Return the cylinder that is farthest from the mean.

    Parameters
    ----------
    values : tuple of float
        One figure for each cylinder.

    Returns
    -------
    tuple of (int, float, float)
        Its number from 1, its distance from the mean, and its distance from the median.

    Examples
    --------
    >>> [round(found, 1) for found in worst((392, 401, 388, 455, 397, 390))]
    [4, 51.2, 60.5]
    """
    mean = math.fsum(values) / len(values)
    # Numbered from 1, as on the engine.
    number, value = max(enumerate(values, 1), key=lambda pair: abs(pair[1] - mean))
    return number, value - mean, value - statistics.median(values)


@dataclass(frozen=True)
class _Spread:
    """The worst cylinder, its distances from mean and median [unit], and the mean as text."""

    number: int
    from_mean: float
    from_median: float
    unit: str
    mean: str


def _judge(spread: _Spread, limits: Mapping[str, float], cause: str) -> Judgement:
    """Judge the distance of the worst cylinder from the mean by the limits to watch and to act."""
    distance, unit = abs(spread.from_mean), spread.unit
    # A cold cylinder is as ill as a hot one, of something else.
    side = "above" if spread.from_mean >= 0 else "below"
    cylinder = f"Cylinder {spread.number} is {show(distance, unit)} {side}"
    against = f"{show(limits['watch'], unit)} and {show(limits['act'], unit)}"
    subject = f"{cylinder} the mean of {spread.mean}, which, against {against},"
    from_median = show(spread.from_median, unit)
    median = f"From the median, which one bad cylinder does not pull, it is {from_median}."
    band = watch_and_act(unit, limits["watch"], limits["act"], cause).band_of(distance)
    return judge_by_band(band, subject, (distance, unit, limits["act"]), (median, *STEADY))


def judge_exhaust(temperatures: str, load: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the spread of exhaust temperatures over the cylinders.

    Parameters
    ----------
    temperatures : str
        One for each cylinder in °C, like "392 401 388".
    load : float
        Of the engine [%].
    limits : mapping of str to float
        Watch and act [K].

    Returns
    -------
    Judgement

    Raises
    ------
    CannotJudge
        The temperatures cannot be read.

    References
    ----------
    30 and 50 K from the mean at a steady 75 % load or more: common practice, no source.
    """
    values = cylinders("temperatures", temperatures, 20, 900)
    number, from_mean, from_median = worst(values)
    if load < LEAST_LOAD:
        read = (
            f"Cylinder {number} is {show(from_mean, 'K')} from the mean at {show(load, '%')} load"
        )
        why = f"below {show(LEAST_LOAD, '%')} the cylinders differ by themselves"
        sentence = f"{read}, which is indicative only: {why}."
        return Judgement("indicative", None, abs(from_mean), "K", None, None, sentence, STEADY)
    mean = show(math.fsum(values) / len(values), "°C")
    return _judge(_Spread(number, from_mean, from_median, "K", mean), limits, OF_EXHAUST)


def _pressure_spread(text: str, high: float) -> _Spread:
    """Return the spread of pressures of at most so many bar, in % of their mean and median."""
    values = cylinders("pressures", text, 1, high)
    mean, median = math.fsum(values) / len(values), statistics.median(values)
    number, from_mean, from_median = worst(values)
    shown = show(mean, "bar")
    # In % of the mean, since the pressures themselves depend on load and make.
    return _Spread(number, 100 * from_mean / mean, 100 * from_median / median, "%", shown)


def judge_compression(pressures: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the spread of compression pressures over the cylinders.

    Parameters
    ----------
    pressures : str
        One for each cylinder in bar, like "28.1 27.5 28.4".
    limits : mapping of str to float
        Watch and act [%].

    Returns
    -------
    Judgement

    Raises
    ------
    CannotJudge
        The pressures cannot be read.

    References
    ----------
    5 and 10 % from the mean: common practice, no source.
    """
    return _judge(_pressure_spread(pressures, 250), limits, OF_COMPRESSION)


def judge_firing(pressures: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the spread of firing pressures over the cylinders.

    Parameters
    ----------
    pressures : str
        One for each cylinder in bar.
    limits : mapping of str to float
        Watch and act [%].

    Returns
    -------
    Judgement

    Raises
    ------
    CannotJudge
        The pressures cannot be read.

    References
    ----------
    3 and 5 % from the mean: common practice, no source.
    """
    return _judge(_pressure_spread(pressures, 350), limits, OF_FIRING)


_PRESSURES = (Field("pressures", "Pressures, one for each cylinder, bar", "text"),)
_BOTH = "Both limits from both sides; trade guidance, cases by our own arithmetic."
CRITERIA = (
    Criterion(
        "exhaust-spread",
        "Spread of exhaust temperatures",
        (
            Field("temperatures", "Exhaust temperatures, one for each cylinder, °C", "text"),
            number_field("load", "Load", "%", 0, 110),
        ),
        EXHAUST,
        judge_exhaust,
        "Engines of 2 to 20 cylinders; below 75 % load indicative only.",
        _BOTH,
        limit_set=EXHAUST_LIMITS,
    ),
    Criterion(
        "compression-spread",
        "Spread of compression pressures",
        _PRESSURES,
        COMPRESSION,
        judge_compression,
        "Engines of 2 to 20 cylinders, all read at the same speed, oil and jacket warm.",
        _BOTH,
        limit_set=COMPRESSION_LIMITS,
    ),
    Criterion(
        "firing-pressure-spread",
        "Spread of firing pressures",
        _PRESSURES,
        FIRING,
        judge_firing,
        "Engines of 2 to 20 cylinders at a steady load.",
        _BOTH,
        limit_set=FIRING_LIMITS,
    ),
)
