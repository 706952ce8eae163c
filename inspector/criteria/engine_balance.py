"""How unequal the cylinders of an engine are: exhaust temperatures, compression and firing pressures, one figure for each cylinder."""

import statistics
from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, watch_and_act
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import NotANumber, parse_number, show

EXHAUST = Source("Spread of exhaust temperatures", "no publisher", "30 and 50 K from the mean", "common practice")
COMPRESSION = Source("Spread of compression pressures", "no publisher", "5 and 10 % from the mean", "common practice")
FIRING = Source("Spread of firing pressures", "no publisher", "3 and 5 % from the mean", "common practice")


def _profile(title: str, source: Source, unit: str, watch: float, act: float, high: float) -> Profile:
    return Profile(title, (Limit("watch", "watch above", unit, watch, 0.5, high), Limit("act", "act above", unit, act, 0.5, high)), source)


EXHAUST_PROFILE = _profile("Usual spread of exhaust temperatures", EXHAUST, "K", 30.0, 50.0, 200)
COMPRESSION_PROFILE = _profile("Usual spread of compression pressures", COMPRESSION, "%", 5.0, 10.0, 50)
FIRING_PROFILE = _profile("Usual spread of firing pressures", FIRING, "%", 3.0, 5.0, 50)
LEAST_LOAD = 75.0  # % below which exhaust temperatures are indicative only
FEWEST, MOST = 2, 20
STEADY = (
    "Read all cylinders within minutes at a steady load and name load and speed; otherwise the figures are indicative.",
    "A gauge that lies looks like a cylinder that is ill: swap the sensors before opening anything.",
)


def cylinders(name: str, asked: str, text: str, low: float, high: float) -> tuple[float, ...]:
    """Read one figure for each cylinder, with blanks or semicolons between them; refuse what is none or lies outside low to high.

    Examples
    --------
    >>> cylinders("exhaust-spread", "temperatures", "392 401; 388,5", 0, 900)
    (392.0, 401.0, 388.5)
    """
    try:
        found = tuple(parse_number(part) for part in text.replace(";", " ").split())
    except NotANumber as problem:
        reason = str(problem).rstrip(".")
    else:
        reason = ""
    if reason:
        refuse(name, asked, text, f"{asked} must be one number for each cylinder with blanks between them; {reason}")
    if not FEWEST <= len(found) <= MOST:
        refuse(name, asked, text, f"{asked} must be {FEWEST} to {MOST} numbers, one for each cylinder, and there are {len(found)}")
    outside = next((one for one in found if not low <= one <= high), None)
    if outside is not None:
        refuse(name, asked, text, f"{asked} must lie between {show(low, '')} and {show(high, '')}, and one is {show(outside, '')}")
    return found


def worst(values: tuple[float, ...]) -> tuple[int, float, float]:
    """Return the cylinder (from 1) farthest from the mean, its distance from the mean and its distance from the median.

    Examples
    --------
    >>> [round(found, 1) for found in worst((392, 401, 388, 455, 397, 390))]
    [4, 51.2, 60.5]
    """
    mean = sum(values) / len(values)
    number, value = max(enumerate(values, 1), key=lambda pair: abs(pair[1] - mean))
    return number, value - mean, value - statistics.median(values)


def _judge(
    name: str, values: tuple[float, ...], unit: str, found: tuple[int, float, float], told_as: str, limits: Mapping[str, float], source: Source, ladder: Ladder
) -> Judgement:
    number, distance, from_median = found
    mean = sum(values) / len(values)
    said = (
        f"Cylinder {number} lies {show(abs(distance), told_as)} {'above' if distance >= 0 else 'below'} the mean of "
        f"{show(mean, unit)}, which, against {show(limits['watch'], told_as)} and {show(limits['act'], told_as)},"
    )
    notes = (f"From the median, which one bad cylinder does not pull, it is {show(from_median, told_as)}.", *STEADY)
    return told(name, ladder.step(abs(distance)), said, (abs(distance), told_as, limits["act"]), source, notes)


def judge_exhaust(temperatures: str, load: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the spread of exhaust temperatures over the cylinders.

    Parameters: temperatures : one for each cylinder in °C, like "392 401 388"; load [%]; limits : watch and act [K].

    References: 30 and 50 K from the mean at a steady 75 % load or more (common practice).
    """
    name = "exhaust-spread"
    values = cylinders(name, "temperatures", temperatures, 20, 900)
    found = worst(values)
    if load < LEAST_LOAD:
        sentence = (
            f"Cylinder {found[0]} lies {show(found[1], 'K')} from the mean at {show(load, '%')} load, which is indicative only: below "
            f"{show(LEAST_LOAD, '%')} the cylinders differ by themselves."
        )
        return Judgement(name, "indicative", None, abs(found[1]), "K", None, None, sentence, EXHAUST, STEADY)
    ladder = watch_and_act("K", limits["watch"], limits["act"], "so far off that injector, valve and gauge are to be looked at")
    return _judge(name, values, "°C", found, "K", limits, EXHAUST, ladder)


def _judge_pressures(name: str, text: str, high: float, limits: Mapping[str, float], source: Source, cause: str) -> Judgement:
    values = cylinders(name, "pressures", text, 1, high)
    mean = sum(values) / len(values)
    number, distance, from_median = worst(values)
    share = (number, 100 * distance / mean, 100 * from_median / statistics.median(values))
    ladder = watch_and_act("%", limits["watch"], limits["act"], cause)
    return _judge(name, values, "bar", share, "%", limits, source, ladder)


def judge_compression(pressures: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the spread of compression pressures over the cylinders.

    Parameters: pressures : one for each cylinder in bar, like "28.1 27.5 28.4"; limits : watch and act [%].

    References: 5 and 10 % from the mean (common practice).
    """
    return _judge_pressures("compression-spread", pressures, 250, limits, COMPRESSION, "so far off that rings, valves and liner are to be looked at")


def judge_firing(pressures: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the spread of firing pressures over the cylinders.

    Parameters: pressures : one for each cylinder in bar; limits : watch and act [%].

    References: 3 to 5 % from the mean (common practice).
    """
    return _judge_pressures("firing-pressure-spread", pressures, 350, limits, FIRING, "so far off that injection and timing are to be looked at")


_PRESSURES = (Input("pressures", "Pressures, one for each cylinder, bar", "text"),)
_BOTH = "Both limits from both sides; trade guidance, cases by our own arithmetic."
CRITERIA = (
    Criterion(
        "exhaust-spread",
        "Spread of exhaust temperatures",
        (Input("temperatures", "Exhaust temperatures, one for each cylinder, °C", "text"), Input("load", "Load", "number", "%", low=0, high=110)),
        EXHAUST,
        judge_exhaust,
        "Engines of 2 to 20 cylinders; below 75 % load indicative only.",
        _BOTH,
        profile=EXHAUST_PROFILE,
    ),
    Criterion(
        "compression-spread",
        "Spread of compression pressures",
        _PRESSURES,
        COMPRESSION,
        judge_compression,
        "Engines of 2 to 20 cylinders, all read at the same speed, oil and jacket warm.",
        _BOTH,
        profile=COMPRESSION_PROFILE,
    ),
    Criterion(
        "firing-pressure-spread",
        "Spread of firing pressures",
        _PRESSURES,
        FIRING,
        judge_firing,
        "Engines of 2 to 20 cylinders at a steady load.",
        _BOTH,
        profile=FIRING_PROFILE,
    ),
)
