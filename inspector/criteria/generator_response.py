"""How a generating set answers: steady voltage at its terminals, a step of load, and how fast it settles again.

Figures for generators are tighter than those for the network that they feed (supply.py).
"""

from inspector.criteria.exact import share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, inside, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.supply import FREQUENCIES
from inspector.criteria.telling import told, told_between
from inspector.quantities import difference, show

REGULATOR = Source("IACS UR E13, test requirements for rotating machines", "edition not read", "voltage regulation", "memory")
GOVERNOR = Source("IACS UR M3, speed governors of engines", "edition not read", "engines driving generators", "memory")

STEADY = {"main": 2.5, "emergency": 3.5}  # % either way
STEP_LOW, STEP_HIGH = -15, 20  # % of rated voltage in a sudden change of load
VOLTAGE_SECONDS, GOVERNOR_SECONDS = 1.5, 5.0
MOST_DROOP = 5.0  # % of rated frequency
FREQUENCY_STEP = 10  # % either way
TRIAL = ("Read on the set's own meter or a recorder during a load trial that the ship's engineer runs.",)


def _judged(name: str, ladder: Ladder, value: float, said: str, source: Source) -> Judgement:
    low, high = (step.upto for step in ladder.steps[:2])
    return told_between(name, ladder.step(value), said, (value, ladder.unit), (low, high), source, TRIAL)


def regulator_ladder(rated: float, service: str) -> Ladder:
    """The band of steady voltage [V] at the terminals. IACS UR E13 (memory)."""
    return inside("V", share(100 - STEADY[service], rated), share(100 + STEADY[service], rated))


def judge_regulator(voltage: float, rated: float, service: str) -> Judgement:
    """Judge the steady voltage that a regulator holds at the generator's terminals.

    Parameters: voltage, rated [V], line to line; service : main (2.5 % either way) or emergency (3.5 %).

    References: IACS UR E13 (memory).
    """
    said = f"A steady {show(voltage, 'V')} at the terminals of a {service} generator rated {show(rated, 'V')}"
    return _judged("regulator-voltage", regulator_ladder(rated, service), voltage, said, REGULATOR)


def step_voltage_ladder(rated: float) -> Ladder:
    """The band of the worst voltage [V] in a step of load. IACS UR E13 (memory)."""
    return inside("V", share(100 + STEP_LOW, rated), share(100 + STEP_HIGH, rated))


def judge_step_voltage(voltage: float, rated: float) -> Judgement:
    """Judge the lowest or highest voltage while a large load is put on or taken off.

    Parameters: voltage [V], the worst moment; rated [V]. Not under 85 % and not over 120 % of rated.

    References: IACS UR E13 (memory).
    """
    said = f"{show(voltage, 'V')} as the worst moment of a step on a generator rated {show(rated, 'V')}"
    return _judged("voltage-transient", step_voltage_ladder(rated), voltage, said, REGULATOR)


def _settling(most: float) -> Ladder:
    return stairs("s", to(most, "in time", "good", "in time"), beyond("too slow", "poor", "too slow"))


def voltage_recovery_ladder() -> Ladder:
    """The bands of the time [s] that the voltage takes to settle. IACS UR E13 (memory)."""
    return _settling(VOLTAGE_SECONDS)


def judge_voltage_recovery(time: float) -> Judgement:
    """Judge how long the voltage takes to come back within 3 % after a step of load.

    Parameters: time [s].

    References: IACS UR E13, 1.5 s (memory).
    """
    said = f"{show(time, 's')} until the voltage is back within 3 %, against {show(VOLTAGE_SECONDS, 's')},"
    return told("voltage-recovery", voltage_recovery_ladder().step(time), said, (time, "s", VOLTAGE_SECONDS), REGULATOR, TRIAL)


def droop(no_load: float, full_load: float, rated: float) -> float:
    """Return the governor's droop [%] of rated frequency.

    Examples
    --------
    >>> droop(62.4, 60, 60)
    4.0
    """
    return 100 * difference(no_load, full_load) / rated


def judge_droop(no_load: float, full_load: float, rated: float) -> Judgement:
    """Judge the permanent droop of a governor between no load and full load.

    Parameters: no_load, full_load, rated [Hz]; rated 50 or 60.

    References: IACS UR M3, 5 % at most (memory); 3 to 5 % is the usual setting (common practice).
    """
    if rated not in FREQUENCIES:
        refuse("governor-droop", "rated", rated, f"the rated frequency is 50 or 60 Hz, not {show(rated, 'Hz')}")
    found = droop(no_load, full_load, rated)
    ladder = stairs(
        "%",
        below(0, "rises under load", "poor", "a speed that rises under load, which cannot run in parallel"),
        to(MOST_DROOP, "within the limit", "good", "within it"),
        beyond("over the limit", "poor", "over it"),
    )
    said = f"From {show(no_load, 'Hz')} to {show(full_load, 'Hz')} the droop of {show(found, '%')}, against {show(MOST_DROOP, '%')} at most,"
    notes = (*TRIAL, "Sets that share load in parallel are usually set to 3 to 5 %, and alike.")
    return told("governor-droop", ladder.step(found), said, (found, "%", MOST_DROOP), GOVERNOR, notes)


def step_frequency_ladder(nominal: float) -> Ladder:
    """The band of the worst frequency [Hz] in a step of load. IACS UR M3 (memory)."""
    if nominal not in FREQUENCIES:
        refuse("frequency-transient", "nominal", nominal, f"the nominal frequency is 50 or 60 Hz, not {show(nominal, 'Hz')}")
    return inside("Hz", share(100 - FREQUENCY_STEP, nominal), share(100 + FREQUENCY_STEP, nominal))


def judge_step_frequency(frequency: float, nominal: float) -> Judgement:
    """Judge the lowest or highest frequency while a large load is put on or taken off.

    Parameters: frequency [Hz], the worst moment; nominal [Hz], 50 or 60. 10 % either way.

    References: IACS UR M3 (memory).
    """
    said = f"{show(frequency, 'Hz')} as the worst moment of a step on a nominal {show(nominal, 'Hz')}"
    return _judged("frequency-transient", step_frequency_ladder(nominal), frequency, said, GOVERNOR)


def governor_recovery_ladder() -> Ladder:
    """The bands of the time [s] that the speed takes to settle. IACS UR M3 (memory)."""
    return _settling(GOVERNOR_SECONDS)


def judge_governor_recovery(time: float) -> Judgement:
    """Judge how long the speed takes to come back within 1 % of its final value after a step of load.

    Parameters: time [s].

    References: IACS UR M3, 5 s (memory).
    """
    said = f"{show(time, 's')} until the speed is back within 1 %, against {show(GOVERNOR_SECONDS, 's')},"
    return told("governor-recovery", governor_recovery_ladder().step(time), said, (time, "s", GOVERNOR_SECONDS), GOVERNOR, TRIAL)


def _volts(name: str, label: str, low: float = 100) -> Input:
    return Input(name, label, "number", "V", low=low, high=20_000)


def _hertz(name: str, label: str, low: float = 0, high: float = 120) -> Input:
    return Input(name, label, "number", "Hz", low=low, high=high)


_TIME = (Input("time", "Time until it settles", "number", "s", low=0, high=600),)
_RECALLED = "Both ends by our own arithmetic on the recalled shares."
CRITERIA = (
    Criterion(
        "regulator-voltage",
        "Steady voltage at a generator's terminals",
        (
            _volts("voltage", "Voltage at the terminals", 0),
            _volts("rated", "Rated voltage"),
            Input("service", "Which generator", "choice", choices=tuple(STEADY)),
        ),
        REGULATOR,
        judge_regulator,
        "AC generators rated 100 V to 20 kV, steady load.",
        _RECALLED,
        ladder=regulator_ladder,
    ),
    Criterion(
        "voltage-transient",
        "Worst voltage in a step of load",
        (_volts("voltage", "Worst voltage", 0), _volts("rated", "Rated voltage")),
        REGULATOR,
        judge_step_voltage,
        "AC generators rated 100 V to 20 kV, the largest step the plant meets.",
        _RECALLED,
        ladder=step_voltage_ladder,
    ),
    Criterion(
        "voltage-recovery",
        "Time until the voltage settles",
        _TIME,
        REGULATOR,
        judge_voltage_recovery,
        "AC generators after a step of load, 0 to 600 s.",
        "The recalled limit from both sides.",
        ladder=voltage_recovery_ladder,
    ),
    Criterion(
        "governor-droop",
        "Droop of a governor",
        (_hertz("no_load", "Frequency at no load"), _hertz("full_load", "Frequency at full load"), _hertz("rated", "Rated frequency", 50, 60)),
        GOVERNOR,
        judge_droop,
        "Sets of 50 or 60 Hz, run from no load to full load.",
        "One case by our own arithmetic, the limit from both sides.",
    ),
    Criterion(
        "frequency-transient",
        "Worst frequency in a step of load",
        (_hertz("frequency", "Worst frequency"), _hertz("nominal", "Nominal frequency", 50, 60)),
        GOVERNOR,
        judge_step_frequency,
        "Sets of 50 or 60 Hz, the largest step the plant meets.",
        _RECALLED,
        ladder=step_frequency_ladder,
    ),
    Criterion(
        "governor-recovery",
        "Time until the speed settles",
        _TIME,
        GOVERNOR,
        judge_governor_recovery,
        "Sets after a step of load, 0 to 600 s.",
        "The recalled limit from both sides.",
        ladder=governor_recovery_ladder,
    ),
)
