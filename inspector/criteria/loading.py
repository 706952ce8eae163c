"""How hard a generator, a transformer or a breaker works against the figure on its plate, and how sets share a load."""

import math
from collections.abc import Mapping
from dataclasses import replace

from inspector.criteria.exact import exact, share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told, told_between
from inspector.quantities import difference, show

SETS = Source("Loading of diesel generating sets", "no publisher", "30, 85 and 90 % of rating", "common practice")
SHARING = Source("IACS UR M3, speed governors of engines", "edition not read", "sharing of load in parallel, 20 to 100 %", "memory")
TRANSFORMER = Source("Loading of a transformer against its plate", "no publisher", "rated current from rated kVA", "common practice")
BREAKER = Source("Continuous loading of circuit breakers", "no publisher", "80 % for breakers not marked for 100 %, a US practice", "memory")
SET_PROFILE = Profile(
    "Usual loading of a generating set",
    (
        Limit("light", "light below", "%", 30.0, 0, 60),
        Limit("high", "high above", "%", 85.0, 50, 100),
        Limit("most", "no margin above", "%", 90.0, 50, 110),
    ),
    SETS,
)
TRANSFORMER_PROFILE = Profile("Usual loading of a transformer", (Limit("most", "at most", "%", 100.0, 50, 130),), TRANSFORMER)
BREAKER_PROFILE = Profile(
    "Usual loading of a breaker",
    (
        Limit("continuous", "continuous up to", "%", 80.0, 50, 100),
        Limit("most", "at most", "%", 100.0, 80, 120),
    ),
    BREAKER,
)
OF_LARGEST, OF_OWN = 15, 25  # % of rated power by which a share may miss, the less of the two
LEAST_TOTAL, FULL = 20.0, 100.0  # % of all ratings between which sharing is judged


def set_load(power: float, rated_power: float, current: float | None = None, rated_current: float | None = None) -> float:
    """Return the load of a set [%]: the greater of its power and its current.

    Examples
    --------
    >>> round(set_load(300, 340), 1), round(set_load(300, 340, 555.1, 511.2), 1)
    (88.2, 108.6)
    """
    by_power = 100 * power / rated_power
    return by_power if current is None or rated_current is None else max(by_power, 100 * current / rated_current)


def set_ladder(rated_power: float, current: float | None, rated_current: float | None, limits: Mapping[str, float]) -> Ladder:
    """The bands of the power [kW] of a set; where a current is given too, none lighter than the current already says."""
    if (current is None) != (rated_current is None):
        refuse("generator-loading", "current" if current is None else "rated_current", None, "a current needs its rating beside it, and a rating its current")
    steps = (
        below(limits["light"], "light", "fair", "light: long running at such a load fouls a diesel"),
        to(min(limits["high"], limits["most"]), "usual", "good", "in the usual range"),
        to(limits["most"], "high", "fair", "high: little is left for a step of load"),
        to(FULL, "no margin", "poor", "without margin for a step of load"),
        beyond("overloaded", "failed", "above the rating"),
    )
    carried = 0.0 if current is None else 100 * current / rated_current
    kept = [step for step in steps if step.holds(carried) or step.upto is None or step.upto > carried]
    return stairs("kW", *(replace(step, upto=share(step.upto, rated_power)) for step in kept[:-1]), kept[-1])


def judge_set(power: float, rated_power: float, limits: Mapping[str, float], current: float | None = None, rated_current: float | None = None) -> Judgement:
    """Judge the load of one generating set.

    Parameters: power, rated_power [kW]; current, rated_current [A], both or neither; limits : light, high and most [%].

    References: common practice; 30, 85 and 90 %, and 100 % as the plate's own figure.
    """
    load = set_load(power, rated_power, current, rated_current)
    step = set_ladder(rated_power, current, rated_current, limits).step(power)
    amps = "" if current is None else f" and {show(current, 'A')} of {show(rated_current, 'A')}"
    said = f"{show(power, 'kW')} of {show(rated_power, 'kW')}{amps} is a load of {show(load, '%')}, which, against {show(limits['most'], '%')},"
    notes = ("kVA are not kW: at a poor power factor the current reaches its rating before the power does.",)
    return told("generator-loading", step, said, (load, "%", limits["most"]), SETS, notes)


def fair_share(rated_power: float, total_power: float, total_rated: float) -> float:
    """Return the power [kW] that a set should carry: the total in proportion to its rating.

    Examples
    --------
    >>> fair_share(340, 564, 940), fair_share(600, 564, 940)
    (204.0, 360.0)
    """
    return float(exact(total_power) * exact(rated_power) / exact(total_rated))


def allowed_miss(rated_power: float, largest_rated: float) -> float:
    """Return by how much [kW] a set may miss its share: 15 % of the largest set or 25 % of its own, the less. IACS UR M3 (memory).

    Examples
    --------
    >>> allowed_miss(340, 600), allowed_miss(600, 600)
    (85.0, 90.0)
    """
    return min(share(OF_LARGEST, largest_rated), share(OF_OWN, rated_power))


def sharing_ladder(rated_power: float, total_power: float, total_rated: float, largest_rated: float) -> Ladder:
    """The band of the power [kW] of one of several sets in parallel. IACS UR M3 (memory)."""
    load = 100 * total_power / total_rated
    if not LEAST_TOTAL <= load <= FULL:
        refuse("load-sharing", "total_power", total_power, f"the sets together run at {show(load, '%')}, and sharing is judged from 20 to 100 %")
    if largest_rated < rated_power or total_rated < largest_rated:
        refuse("load-sharing", "largest_rated", largest_rated, "the largest set is at least this one and at most all of them")
    ideal, miss = fair_share(rated_power, total_power, total_rated), allowed_miss(rated_power, largest_rated)
    short = ("misses its share", "poor", "further from its share than it may be")
    return stairs("kW", below(difference(ideal, miss), *short), to(difference(ideal, -miss), "shares", "good", "near enough to its share"), beyond(*short))


def judge_sharing(power: float, rated_power: float, total_power: float, total_rated: float, largest_rated: float) -> Judgement:
    """Judge whether one of several sets in parallel carries its share.

    Parameters: power [kW] and rated_power [kW] of this set; total_power, total_rated [kW] of all that run; largest_rated [kW].

    References: IACS UR M3 (memory): within 15 % of the largest set's rating and 25 % of its own, at 20 to 100 % load.
    """
    ladder = sharing_ladder(rated_power, total_power, total_rated, largest_rated)
    low, high = (step.upto for step in ladder.steps[:2])
    ideal = fair_share(rated_power, total_power, total_rated)
    said = f"{show(power, 'kW')} on a set whose share would be {show(ideal, 'kW')}, within {show(allowed_miss(rated_power, largest_rated), 'kW')},"
    return told_between("load-sharing", ladder.step(power), said, (power, "kW"), (low, high), SHARING, ("Read all meters at the same moment.",))


def transformer_current(rated_power: float, voltage: float) -> float:
    """Return the rated current [A] of a three-phase transformer of so many kVA on the side of this voltage [V].

    Examples
    --------
    >>> round(transformer_current(75, 208), 2), round(transformer_current(75, 480), 2)
    (208.18, 90.21)
    """
    return 1000 * rated_power / (math.sqrt(3) * voltage)


def transformer_ladder(voltage: float, rated_power: float, limits: Mapping[str, float]) -> Ladder:
    """The bands of a transformer's current [A]."""
    most = limits["most"] / 100 * transformer_current(rated_power, voltage)
    return stairs("A", to(most, "within the plate", "good", "within it"), beyond("overloaded", "poor", "over it"))


def judge_transformer(current: float, voltage: float, rated_power: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the load of a three-phase transformer.

    Parameters: current [A] and voltage [V], line to line, on the same side; rated_power [kVA]; limits : most [%].

    References: the plate's own rating (common practice); rated current is plain arithmetic.
    """
    load = 100 * current / transformer_current(rated_power, voltage)
    step = transformer_ladder(voltage, rated_power, limits).step(current)
    said = (
        f"{show(current, 'A')} at {show(voltage, 'V')} is {show(load, '%')} of a transformer of {show(rated_power, 'kVA')}, which, against "
        f"{show(limits['most'], '%')} at most,"
    )
    return told("transformer-loading", step, said, (load, "%", limits["most"]), TRANSFORMER, ("Name the load: hotel at night, galley, or all.",))


def breaker_ladder(rating: float, limits: Mapping[str, float]) -> Ladder:
    """The bands of a feeder's current [A]."""
    return stairs(
        "A",
        to(share(min(limits["continuous"], limits["most"]), rating), "spare", "good", "with something to spare"),
        to(share(limits["most"], rating), "full", "fair", "full for a continuous load, unless the breaker is marked for 100 %"),
        beyond("over the rating", "poor", "over the breaker's rating"),
    )


def judge_breaker(current: float, rating: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the steady current of a feeder against its breaker.

    Parameters: current, rating [A]; limits : continuous and most [%].

    References: 80 % for breakers not marked for 100 % (memory, a US practice).
    """
    loaded, step = 100 * current / rating, breaker_ladder(rating, limits).step(current)
    said = f"{show(current, 'A')} on a breaker of {show(rating, 'A')}, which is {show(loaded, '%')},"
    spare = difference(rating, current)
    notes = (
        f"Spare at 100 %: {show(spare, 'A')}; at {show(limits['continuous'], '%')}: {show(difference(share(limits['continuous'], rating), current), 'A')}.",
    )
    return told("breaker-loading", step, said, (loaded, "%", limits["continuous"]), BREAKER, notes)


def _kilowatts(name: str, label: str, low: float = 0.1) -> Input:
    return Input(name, label, "number", "kW", low=low, high=100_000)


CRITERIA = (
    Criterion(
        "generator-loading",
        "Load of a generating set",
        (
            _kilowatts("power", "Power carried", 0),
            _kilowatts("rated_power", "Rated power"),
            Input("current", "Current", "number", "A", optional=True, low=0, high=20_000),
            Input("rated_current", "Rated current", "number", "A", optional=True, low=0.1, high=20_000),
        ),
        SETS,
        judge_set,
        "Diesel generating sets of 0.1 kW to 100 MW, steady load.",
        "One overload by current by our own arithmetic, each limit from both sides.",
        profile=SET_PROFILE,
        ladder=set_ladder,
    ),
    Criterion(
        "load-sharing",
        "Sharing of load between sets in parallel",
        (
            _kilowatts("power", "Power of this set", 0),
            _kilowatts("rated_power", "Rated power of this set"),
            _kilowatts("total_power", "Power of all sets that run"),
            _kilowatts("total_rated", "Rated power of all sets that run"),
            _kilowatts("largest_rated", "Rated power of the largest set"),
        ),
        SHARING,
        judge_sharing,
        "Sets in parallel at 20 to 100 % of their common rating.",
        "Two sets by our own arithmetic on the recalled shares, both ends from both sides.",
        ladder=sharing_ladder,
    ),
    Criterion(
        "transformer-loading",
        "Load of a three-phase transformer",
        (
            Input("current", "Line current", "number", "A", low=0, high=50_000),
            Input("voltage", "Voltage on the same side, line to line", "number", "V", low=24, high=15_000),
            Input("rated_power", "Rated power", "number", "kVA", low=0.1, high=20_000),
        ),
        TRANSFORMER,
        judge_transformer,
        "Three-phase transformers of 0.1 kVA to 20 MVA.",
        "Rated currents of five sizes and one overload by our own arithmetic.",
        profile=TRANSFORMER_PROFILE,
        ladder=transformer_ladder,
    ),
    Criterion(
        "breaker-loading",
        "Load of a feeder against its breaker",
        (Input("current", "Steady current", "number", "A", low=0, high=10_000), Input("rating", "Rating of the breaker", "number", "A", low=1, high=10_000)),
        BREAKER,
        judge_breaker,
        "Low-voltage breakers of 1 to 10 000 A, steady current.",
        "One feeder by our own arithmetic, both limits from both sides.",
        profile=BREAKER_PROFILE,
        ladder=breaker_ladder,
    ),
)
