"""How unequal the three phases are: the greatest distance from their mean."""

from collections.abc import Mapping

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import bands_of, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.limit_sets import LimitSet, settable_limit
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

VOLTAGES = Source.common_practice(
    "Unbalance of three line voltages",
    "watch above 2 % of the mean, poor above the 5 % of NEMA MG 1",
)
CURRENTS = Source.common_practice(
    "Unbalance of the three currents of a motor", "watch above 10 % of the mean, poor above 30 %"
)
MOTORS = Source.seen(
    "NEMA MG 1, motors and generators",
    "edition not read, as quoted on an engineers' forum",
    "operation above 5 % unbalance of voltage not recommended",
)
# a reading under this share of the greatest is a phase that is not there: our own
MISSING_SHARE = 0.1
VOLTAGE_PROFILE = LimitSet(
    "Usual limit of voltage unbalance",
    (
        settable_limit("watch", "watch above", "%", 2.0, 0.1, 10),
        settable_limit("most", "not to run above", "%", 5.0, 0.5, 10),
    ),
    VOLTAGES,
)
CURRENT_PROFILE = LimitSet(
    "Usual limit of a motor's current unbalance",
    (
        settable_limit("watch", "watch above", "%", 10.0, 1, 50),
        # six times the 5 % of voltage: a current differs six to ten times as much (memory)
        settable_limit("most", "not to run above", "%", 30.0, 5, 100),
    ),
    CURRENTS,
)


def unbalance(first: float, second: float, third: float) -> float:
    """Return the greatest distance of one of three readings from their mean, in % of the mean.

    Parameters
    ----------
    first : float
        First phase [V].
    second : float
        Second phase [V].
    third : float
        Third phase [V].

    Returns
    -------
    float

    Examples
    --------
    >>> round(unbalance(480, 472, 476), 2), round(unbalance(440, 430, 450), 2)
    (0.84, 2.27)
    """
    mean = (first + second + third) / 3
    # The greatest difference from the mean, as the motor standard has it; other books divide by the
    # least or the greatest.
    return 100 * max(abs(value - mean) for value in (first, second, third)) / mean


def _judge(
    unit: str,
    readings: tuple[float, float, float],
    limits: Mapping[str, float],
    notes: tuple[str, ...],
) -> Judgement:
    """Return the judgement of the unbalance of three readings."""
    # A mean of nothing would divide by zero, and a dead motor is not unbalanced.
    if not any(readings):
        refuse("first", readings[0], "all three readings are zero, so nothing runs")
    percent, watch = unbalance(*readings), limits["watch"]
    # Before any percentage: a dead phase is another fault than an unbalance, and burns a motor in
    # minutes.
    if min(readings) < MISSING_SHARE * max(readings):
        return _missing_phase(unit, readings, percent, limits["most"])
    bands = bands_of(
        "%",
        to(watch, "balanced", "good", "balanced enough"),
        to(limits["most"], "unbalanced", "fair", "to be watched: find the phase that differs"),
        beyond("too unbalanced", "poor", "too much to run a motor on: find the phase that differs"),
    )
    band = bands.band_of(percent)
    # The margin is to the limit that was passed, or that comes next.
    limit = limits["most"] if band.rating == "poor" else watch
    subject = (
        f"{', '.join(show(value, unit) for value in readings)} differ by up to "
        f"{show(percent, '%')} from their mean, which, against {show(limit, '%')},"
    )
    return judge_by_band(band, subject, (percent, "%", limit), notes)


def _missing_phase(
    unit: str, readings: tuple[float, float, float], percent: float, most: float
) -> Judgement:
    """Return the judgement of a phase that is not there, far beyond what a motor may run on."""
    sentence = (
        f"Of {', '.join(show(value, unit) for value in readings)} a phase is missing: a motor "
        "that runs on two phases burns out; find the fuse, contact or cable."
    )
    notes = (
        "A reading under a tenth of the greatest counts as missing: our own choice.",
        "With motors running a lost phase can read nearly right, fed back by their windings.",
    )
    margin = difference(most, percent)
    return Judgement("phase missing", "failed", percent, "%", most, margin, sentence, notes, MOTORS)


def judge_voltages(
    first: float, second: float, third: float, limits: Mapping[str, float]
) -> Judgement:
    """Judge the unbalance of three line voltages.

    Parameters
    ----------
    first : float
        First phase [V].
    second : float
        Second phase [V].
    third : float
        Third phase [V].
    limits : mapping of str to float
        The limits of ``VOLTAGE_PROFILE``.

    Returns
    -------
    Judgement

    References
    ----------
    Above 2 % watch (common practice, no source); motors not to run above 5 % (NEMA MG 1, seen as
    quoted).
    """
    notes = (
        "A small unbalance of voltage makes a many times larger one of current, "
        "and heat, in motors.",
    )
    return _judge("V", (first, second, third), limits, notes)


def judge_currents(
    first: float, second: float, third: float, limits: Mapping[str, float]
) -> Judgement:
    """Judge the unbalance of the three currents of one three-phase motor.

    Parameters
    ----------
    first : float
        First phase [A].
    second : float
        Second phase [A].
    third : float
        Third phase [A].
    limits : mapping of str to float
        The limits of ``CURRENT_PROFILE``.

    Returns
    -------
    Judgement

    References
    ----------
    Above 10 % watch (common practice, no source); above 30 % not to run, six times the 5 % of
    voltage of NEMA MG 1 (factor from memory).
    """
    notes = ("For motors only: a feeder of lights and sockets is never balanced.",)
    return _judge("A", (first, second, third), limits, notes)


def _three(unit: str, high: float) -> tuple[Field, ...]:
    return tuple(
        number_field(name, f"{name.capitalize()} phase", unit, 0, high)
        for name in ("first", "second", "third")
    )


CRITERIA = (
    Criterion(
        "voltage-unbalance",
        "Unbalance of three line voltages",
        _three("V", 20_000),
        VOLTAGES,
        judge_voltages,
        "Three line voltages read together at meters already fitted.",
        "Two cases by our own arithmetic, each limit from both sides, a lost phase.",
        limit_set=VOLTAGE_PROFILE,
    ),
    Criterion(
        "current-unbalance",
        "Unbalance of the currents of a motor",
        _three("A", 10_000),
        CURRENTS,
        judge_currents,
        "The three currents of one three-phase motor under load, read together.",
        "Each limit from both sides by our own arithmetic, a lost phase.",
        limit_set=CURRENT_PROFILE,
    ),
)
