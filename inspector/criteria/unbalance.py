"""How unequal the three phases are, by voltage at a board and by current of a motor: greatest distance from the mean."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

VOLTAGES = Source("Unbalance of three line voltages", "no publisher", "watch above 2 % of the mean", "common practice")
CURRENTS = Source("Unbalance of the three currents of a motor", "no publisher", "watch above 10 % of the mean", "common practice")
VOLTAGE_PROFILE = Profile("Usual limit of voltage unbalance", (Limit("watch", "watch above", "%", 2.0, 0.1, 10),), VOLTAGES)
CURRENT_PROFILE = Profile("Usual limit of a motor's current unbalance", (Limit("watch", "watch above", "%", 10.0, 1, 50),), CURRENTS)


def unbalance(first: float, second: float, third: float) -> float:
    """Return the greatest distance of one of three readings from their mean, in % of the mean.

    Examples
    --------
    >>> round(unbalance(480, 472, 476), 2), round(unbalance(440, 430, 450), 2)
    (0.84, 2.27)
    """
    mean = (first + second + third) / 3
    return 100 * max(abs(value - mean) for value in (first, second, third)) / mean


def _judge(name: str, unit: str, read: tuple[float, float, float], watch: float, source: Source, notes: tuple[str, ...]) -> Judgement:
    if not any(read):
        refuse(name, "first", read[0], "all three readings are zero, so nothing runs")
    found = unbalance(*read)
    ladder = stairs("%", to(watch, "balanced", "good", "balanced enough"), beyond("unbalanced", "fair", "to be watched: find the phase that differs"))
    said = f"{', '.join(show(value, unit) for value in read)} differ by up to {show(found, '%')} from their mean, which, against {show(watch, '%')},"
    return told(name, ladder.step(found), said, (found, "%", watch), source, notes)


def judge_voltages(first: float, second: float, third: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the unbalance of three line voltages.

    Parameters: first, second, third [V], line to line, read together; limits : watch [%].

    References: above 2 % watch (common practice).
    """
    notes = ("A small unbalance of voltage makes a many times larger one of current, and heat, in motors.",)
    return _judge("voltage-unbalance", "V", (first, second, third), limits["watch"], VOLTAGES, notes)


def judge_currents(first: float, second: float, third: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the unbalance of the three currents of one three-phase motor.

    Parameters: first, second, third [A], read together; limits : watch [%].

    References: above 10 % watch (common practice).
    """
    notes = ("For motors only: a feeder of lights and sockets is never balanced.",)
    return _judge("current-unbalance", "A", (first, second, third), limits["watch"], CURRENTS, notes)


def _three(unit: str, high: float) -> tuple[Input, ...]:
    return tuple(Input(name, f"{name.capitalize()} phase", "number", unit, low=0, high=high) for name in ("first", "second", "third"))


CRITERIA = (
    Criterion(
        "voltage-unbalance",
        "Unbalance of three line voltages",
        _three("V", 20_000),
        VOLTAGES,
        judge_voltages,
        "Three line voltages read together at meters already fitted.",
        "Two cases by our own arithmetic, the limit from both sides.",
        profile=VOLTAGE_PROFILE,
    ),
    Criterion(
        "current-unbalance",
        "Unbalance of the currents of a motor",
        _three("A", 10_000),
        CURRENTS,
        judge_currents,
        "The three currents of one three-phase motor under load, read together.",
        "The limit from both sides by our own arithmetic.",
        profile=CURRENT_PROFILE,
    ),
)
