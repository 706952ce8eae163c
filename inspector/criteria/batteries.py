"""Batteries: capacity by a discharge test, age, ohmic rise, float voltage, density of the acid."""

from collections.abc import Mapping

from inspector.criteria.exact import percent_of, share
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to, watch_and_act
from inspector.criteria.profiles import Limit, Profile, chosen, key
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import difference, show

VENTED = Source("IEEE 450, vented lead-acid batteries", "2002 (by a guide that repeats it)", "replacement at 80 % of rated capacity", "seen")
SEALED = Source("IEEE 1188, valve-regulated lead-acid batteries", "edition not read", "replacement at 80 % of rated capacity", "memory")
AGE = Source("Age of valve-regulated batteries", "no publisher", "budget to replace above 5 years", "common practice")
OHMIC = Source("Ohmic rise of battery cells", "no publisher", "30 to 50 % over the baseline", "common practice")
FLOAT = Source("Float voltage of lead-acid cells at 25 °C", "no publisher", "by kind of cell; the maker's figure wins", "common practice")
GRAVITY = Source("Density of the acid of a charged vented cell", "no publisher", "10 and 40 kg/m³ under the maker's figure", "common practice")
REPLACE_AT, WATCH_BELOW = 80, 90  # % of rated capacity
AGE_PROFILE = Profile("Usual life of a valve-regulated battery", (Limit("budget", "budget to replace above", "years", 5.0, 1, 25),), AGE)
OHMIC_PROFILE = Profile(
    "Usual limits of ohmic rise",
    (
        Limit("watch", "watch above", "%", 30.0, 5, 100),
        Limit("act", "act above", "%", 50.0, 5, 200),
    ),
    OHMIC,
)
FLOAT_PROFILE = Profile(
    "Usual float voltage of one cell",
    tuple(
        Limit(f"{key(kind)}_{end}", f"{kind}, {label}", "V", value, 1.9, 2.5)
        for kind, ends in (("vented", (2.17, 2.26)), ("valve-regulated", (2.23, 2.30)))
        for end, label, value in zip(("low", "high"), ("at least", "at most"), ends, strict=True)
    ),
    FLOAT,
)
GRAVITY_PROFILE = Profile(
    "Usual fall of density under that of a charged cell",
    (
        Limit("watch", "watch from", "kg/m³", 10.0, 1, 100),
        Limit("act", "act from", "kg/m³", 40.0, 1, 200),
    ),
    GRAVITY,
)
TEST = (
    "At the reference temperature and the rated current of the test; a warm room flatters a battery.",
    "Tests and work on cells are for qualified persons; cells give off explosive gas.",
)


def capacity(duration: float, rated_duration: float) -> float:
    """Return the capacity [%] by the time a discharge test lasted.

    Examples
    --------
    >>> capacity(6.2, 8), capacity(7.4, 8)
    (77.5, 92.5)
    """
    return percent_of(duration, rated_duration)


def capacity_ladder(rated_duration: float) -> Ladder:
    """The bands of the time [h] that a discharge test lasted: replace at 80 %, test each year under 90 %."""
    replace, watch = (share(percent, rated_duration) for percent in (REPLACE_AT, WATCH_BELOW))
    return stairs(
        "h",
        to(replace, "replace", "failed", "due for replacement"),
        below(watch, "degraded", "fair", "degraded: to be tested each year"),
        beyond("sound", "good", "sound"),
    )


def _judge_capacity(name: str, duration: float, rated_duration: float, source: Source) -> Judgement:
    found = capacity(duration, rated_duration)
    said = f"{show(duration, 'h')} of a test rated {show(rated_duration, 'h')} is {show(found, '%')} of rated capacity, which, against {show(80, '%')},"
    return told(name, capacity_ladder(rated_duration).step(duration), said, (found, "%", 80.0), source, TEST, at_least=True)


def judge_vented(duration: float, rated_duration: float) -> Judgement:
    """Judge the capacity of a vented lead-acid battery by a discharge test.

    Parameters: duration, rated_duration [h] to the same end voltage, at the reference temperature.

    References: IEEE 450 (seen in a guide that repeats it): replace at 80 %, test each year below 90 %.
    """
    return _judge_capacity("battery-capacity", duration, rated_duration, VENTED)


def judge_sealed(duration: float, rated_duration: float) -> Judgement:
    """Judge the capacity of a valve-regulated lead-acid battery by a discharge test.

    Parameters: duration, rated_duration [h] to the same end voltage, at the reference temperature.

    References: IEEE 1188 (memory): replace at 80 %.
    """
    return _judge_capacity("sealed-battery-capacity", duration, rated_duration, SEALED)


def age_ladder(limits: Mapping[str, float]) -> Ladder:
    """The bands of a battery's age [years]."""
    return stairs(
        "years",
        to(limits["budget"], "in its usual life", "good", "within its usual life"),
        beyond("past its usual life", "fair", "past its usual life: put a replacement into the budget"),
    )


def judge_age(age: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the age of a valve-regulated battery (radio, emergency, control supply).

    Parameters: age [years] by the date on its label; limits : budget [years].

    References: common practice.
    """
    said = f"{show(age, 'years')} of age, against {show(limits['budget'], 'years')},"
    return told(
        "battery-age", age_ladder(limits).step(age), said, (age, "years", limits["budget"]), AGE, ("A date without a paper is a label only; ask for a test.",)
    )


def ohmic_ladder(limits: Mapping[str, float]) -> Ladder:
    """The bands of ohmic rise [%] over the baseline."""
    return watch_and_act("%", limits["watch"], limits["act"], "so high that only a discharge test can clear it")


def judge_ohmic(rise: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the rise of a cell's internal resistance over its baseline.

    Parameters: rise [%], the worst cell; limits : watch and act [%].

    References: 30 to 50 % (common practice).
    """
    said = f"A rise of {show(rise, '%')} over the baseline, against {show(limits['watch'], '%')} and {show(limits['act'], '%')},"
    return told("battery-ohmic-rise", ohmic_ladder(limits).step(rise), said, (rise, "%", limits["act"]), OHMIC, TEST[1:])


def float_ladder(kind: str, limits: Mapping[str, float]) -> Ladder:
    """The bands of one cell's float voltage [V]."""
    low, high = chosen(limits, kind, "low", "high")
    return stairs(
        "V",
        below(low, "undercharged", "poor", "too low: such a cell sulphates"),
        to(high, "charged", "good", "in the usual band"),
        beyond("overcharged", "poor", "too high: such a cell loses water"),
    )


def judge_float(voltage: float, kind: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the float voltage of one lead-acid cell.

    Parameters: voltage [V] of one cell (a block of six divided by six); kind : vented or valve-regulated; limits : low and high [V].

    References: common practice at 25 °C; the maker's figure wins.
    """
    low, high = chosen(limits, kind, "low", "high")
    under = difference(voltage, low) <= difference(high, voltage)
    said = f"{show(voltage, 'V')} on one {kind} cell, against {show(low, 'V')} to {show(high, 'V')},"
    notes = ("Read at 25 °C after a day on float; a cold room asks for more and a warm one for less.",)
    return told("cell-float-voltage", float_ladder(kind, limits).step(voltage), said, (voltage, "V", low if under else high), FLOAT, notes, at_least=under)


def gravity_ladder(full: float, limits: Mapping[str, float]) -> Ladder:
    """The bands of the acid's density [kg/m³] beside that of a charged cell."""
    return stairs(
        "kg/m³",
        to(difference(full, limits["act"]), "low", "poor", "low: charge and test again, or the cell is spent"),
        to(difference(full, limits["watch"]), "watch", "fair", "not fully charged"),
        beyond("charged", "good", "that of a charged cell"),
    )


def judge_gravity(density: float, full: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the density of the acid of a vented cell.

    Parameters: density [kg/m³], the lowest cell, at the reference temperature; full [kg/m³], charged, by the maker; limits : watch and act [kg/m³].

    References: common practice (a density of 1.240 is 1240 kg/m³).
    """
    said = f"{show(density, 'kg/m³')} where a charged cell has {show(full, 'kg/m³')}"
    limit = difference(full, limits["act"])
    return told("cell-gravity", gravity_ladder(full, limits).step(density), said, (density, "kg/m³", limit), GRAVITY, TEST[1:], at_least=True)


_HOURS = (
    Input("duration", "How long the test lasted", "number", "h", low=0, high=200),
    Input("rated_duration", "Rated duration of the test", "number", "h", low=0.1, high=100),
)
CRITERIA = (
    Criterion(
        "battery-capacity",
        "Capacity of a vented lead-acid battery",
        _HOURS,
        VENTED,
        judge_vented,
        "Vented lead-acid batteries, discharge test at rated current and reference temperature.",
        "Two tests by our own arithmetic, both limits from both sides.",
        ladder=capacity_ladder,
    ),
    Criterion(
        "sealed-battery-capacity",
        "Capacity of a valve-regulated battery",
        _HOURS,
        SEALED,
        judge_sealed,
        "Valve-regulated lead-acid batteries, discharge test at rated current and reference temperature.",
        "Two tests by our own arithmetic, both limits from both sides.",
        ladder=capacity_ladder,
    ),
    Criterion(
        "battery-age",
        "Age of a valve-regulated battery",
        (Input("age", "Age", "number", "years", low=0, high=60),),
        AGE,
        judge_age,
        "Valve-regulated batteries of 0 to 60 years.",
        "The limit from both sides.",
        profile=AGE_PROFILE,
        ladder=age_ladder,
    ),
    Criterion(
        "battery-ohmic-rise",
        "Rise of a cell's internal resistance",
        (Input("rise", "Rise over the baseline", "number", "%", low=-90, high=1000),),
        OHMIC,
        judge_ohmic,
        "Cells with a baseline taken when new or when first fully charged.",
        "Both limits from both sides.",
        profile=OHMIC_PROFILE,
        ladder=ohmic_ladder,
    ),
    Criterion(
        "cell-float-voltage",
        "Float voltage of one lead-acid cell",
        (Input("voltage", "Voltage of one cell", "number", "V", low=0, high=4), Input("kind", "Kind of cell", "choice", choices=("vented", "valve-regulated"))),
        FLOAT,
        judge_float,
        "One lead-acid cell on float, 0 to 4 V.",
        "Both ends of each kind from both sides.",
        profile=FLOAT_PROFILE,
        ladder=float_ladder,
    ),
    Criterion(
        "cell-gravity",
        "Density of the acid of a vented cell",
        (
            Input("density", "Density of the lowest cell", "number", "kg/m³", low=1000, high=1400),
            Input("full", "Density when charged", "number", "kg/m³", low=1150, high=1350),
        ),
        GRAVITY,
        judge_gravity,
        "Vented lead-acid cells, 1000 to 1400 kg/m³ at the reference temperature.",
        "Both limits from both sides.",
        profile=GRAVITY_PROFILE,
        ladder=gravity_ladder,
    ),
)
