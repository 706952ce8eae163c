"""Cold rooms at work: pull-down, running hours, defrost, ice on the coil, time too warm, and the thermometer itself."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told, told_between
from inspector.quantities import show

PRACTICE = Source("Functional tests of ships' cold rooms", "no publisher", "pull-down, running hours, defrost, time above the limit", "common practice")
ICE = Source("NAVMED P-5010, manual of naval preventive medicine", "chapter 1, as shown by a public training site", "ice on cooling coils, 1/4 inch", "seen")
THERMOMETER = Source("Thermometer in melting ice", "no publisher", "0 °C within 1 K", "common practice")

PULL_DOWN = Profile(
    "Pull-down of an empty room from ambient",
    (
        Limit("frozen", "frozen room, design", "h", 12, 1, 23),
        Limit("frozen_late", "frozen room, acceptable", "h", 24, 23, 72),
        Limit("chilled", "chilled room", "h", 6, 1, 48),
    ),
    PRACTICE,
)
RUNNING = Profile("Running hours of one unit in 24 h", (Limit("usual", "usual up to", "h", 16, 4, 17), Limit("most", "at most", "h", 18, 17, 24)), PRACTICE)
DEFROST = Profile("Length of one defrost", (Limit("longest", "at most", "min", 30, 5, 90),), PRACTICE)
EXCURSION = Profile(
    "Longest time above the limit", (Limit("frozen", "frozen store", "h", 1, 0.1, 24), Limit("chilled", "chilled store", "h", 4, 0.1, 24)), PRACTICE
)
MOST_ICE = 6.35  # mm, a quarter of an inch
ICE_ERROR = 1.0  # K


def pull_down_ladder(store: str, limits: Mapping[str, float]) -> Ladder:
    """Bands of pull-down time [h]."""
    slow = beyond("slow", "poor", "slow: too little cold, too much heat, or a full room")
    quick = to(limits[store], "as designed", "good", "as designed")
    late = [to(limits["frozen_late"], "acceptable", "fair", "acceptable, not as designed")] if store == "frozen" else []
    return stairs("h", quick, *late, slow)


def judge_pull_down(time: float, store: str, limits: Mapping[str, float]) -> Judgement:
    """Judge how long an empty room takes from ambient to its set point.

    Parameters
    ----------
    time [h], 0.1 to 96; store : frozen (to -18 °C) or chilled; limits : the profile.

    References
    ----------
    Common practice: frozen 12 h, acceptable 24 h; chilled 6 h.
    """
    return told(
        "pull-down-time",
        pull_down_ladder(store, limits).step(time),
        f"A pull-down of a {store} room in {show(time, 'h')}, against {show(limits[store], 'h')} as designed,",
        (time, "h", limits[store]),
        PRACTICE,
        ("From +30 °C or ambient, empty, doors shut; note ambient and sea temperature, and which units ran.",),
    )


def running_ladder(limits: Mapping[str, float]) -> Ladder:
    """Three bands of running hours in 24 h."""
    return stairs(
        "h",
        to(limits["usual"], "with reserve", "good", "enough, with reserve"),
        to(limits["most"], "little reserve", "fair", "enough, with little reserve"),
        beyond("no reserve", "poor", "too long: no reserve for the tropics or a full load"),
    )


def judge_running(hours: float, limits: Mapping[str, float]) -> Judgement:
    """Judge how many hours of 24 one unit runs to hold the room.

    Parameters
    ----------
    hours [h] of 24, 0 to 24; limits : the profile.

    References
    ----------
    Common practice: at most 16 to 18 h a day on one unit.
    """
    against = f"{show(limits['usual'], 'h')} usual and {show(limits['most'], 'h')} at most"
    return told(
        "cooling-run-hours",
        running_ladder(limits).step(hours),
        f"A running time of {show(hours, 'h')} in 24 h, against {against},",
        (hours, "h", limits["most"]),
        PRACTICE,
        ("By the hour meter over a day at stable temperature; note ambient temperature.",),
    )


def defrost_ladder(limits: Mapping[str, float]) -> Ladder:
    """Two bands of the length of a defrost [min]."""
    return stairs(
        "min",
        to(limits["longest"], "as usual", "good", "as usual"),
        beyond("long", "poor", "long: the sensor that ends it, or the heaters, want a look"),
    )


def judge_defrost(duration: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the length of one defrost.

    Parameters
    ----------
    duration [min], 0 to 240; limits : the profile.

    References
    ----------
    Common practice: 20 to 30 min, two to six times a day.
    """
    return told(
        "defrost-duration",
        defrost_ladder(limits).step(duration),
        f"A defrost of {show(duration, 'min')}, against at most {show(limits['longest'], 'min')},",
        (duration, "min", limits["longest"]),
        PRACTICE,
        ("Two to six a day; at its end the coil is clear and the drain runs.",),
    )


def ice_ladder() -> Ladder:
    """Two bands of the thickness of ice on a coil [mm]. NAVMED P-5010 (seen)."""
    return stairs(
        "mm",
        to(MOST_ICE, "within the limit", "good", "within it"),
        beyond("over the limit", "poor", "over it: defrost, and find why it builds up"),
    )


def judge_ice(ice: float) -> Judgement:
    """Judge the ice on a cooling coil.

    Parameters
    ----------
    ice [mm], 0 to 200.

    References
    ----------
    NAVMED P-5010 chapter 1: not above 1/4 inch (seen).
    """
    return told(
        "coil-ice",
        ice_ladder().step(ice),
        f"Ice on the coil of {show(ice, 'mm')}, against at most {show(MOST_ICE, 'mm', 2)},",
        (ice, "mm", MOST_ICE),
        ICE,
    )


def excursion_ladder(store: str, limits: Mapping[str, float]) -> Ladder:
    """Two bands of time above the limit [h]."""
    return stairs(
        "h",
        to(limits[store], "short", "good", "short enough"),
        beyond("long", "poor", "long: the goods have suffered, and the plant is short of reserve"),
    )


def judge_excursion(duration: float, store: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the longest time that a log shows above the store's limit.

    Parameters
    ----------
    duration [h], 0 to 240; store : frozen (above -18 °C) or chilled (above 5 °C); limits : the profile.

    References
    ----------
    Common practice: frozen back within 1 h, chilled never above for more than 4 h.
    """
    above = "−18 °C" if store == "frozen" else "5 °C"
    return told(
        "store-excursion",
        excursion_ladder(store, limits).step(duration),
        f"A longest time of {show(duration, 'h')} above {above}, against at most {show(limits[store], 'h')},",
        (duration, "h", limits[store]),
        PRACTICE,
        ("From the recorder over a week, defrosts marked; no recorder, no figure.",),
    )


def ice_point_ladder() -> Ladder:
    """Three bands of a thermometer's reading in melting ice [°C]."""
    return stairs(
        "°C",
        below(-ICE_ERROR, "reads low", "poor", "too low: readings by it are put right or thrown out"),
        to(ICE_ERROR, "true enough", "good", "true enough"),
        beyond("reads high", "poor", "too high: readings by it are put right or thrown out"),
    )


def judge_thermometer(reading: float) -> Judgement:
    """Judge a thermometer by its reading in melting ice.

    Parameters
    ----------
    reading [°C], -20 to 20.

    References
    ----------
    Common practice: 0 °C within 1 K.
    """
    return told_between(
        "thermometer-check",
        ice_point_ladder().step(reading),
        f"A reading in melting ice of {show(reading, '°C')}, against 0 °C within 1 K,",
        (reading, "°C"),
        (-ICE_ERROR, ICE_ERROR),
        THERMOMETER,
        ("Crushed ice with a little fresh water, stirred, five minutes.",),
    )


_STORE = Input("store", "Kind of store", "choice", choices=("frozen", "chilled"))
_GUIDE = "Each limit from both sides; trade guidance, no published example exists."

CRITERIA = (
    Criterion(
        "pull-down-time",
        "Pull-down of an empty cold room",
        (Input("time", "Time to the set point", "number", "h", low=0.1, high=96), _STORE),
        PRACTICE,
        judge_pull_down,
        "Empty cold rooms from ambient, 0.1 to 96 h.",
        _GUIDE,
        profile=PULL_DOWN,
        ladder=pull_down_ladder,
    ),
    Criterion(
        "cooling-run-hours",
        "Running hours of one refrigerating unit in a day",
        (Input("hours", "Running hours of 24", "number", "h", low=0, high=24),),
        PRACTICE,
        judge_running,
        "One unit that holds a room at its set point, 0 to 24 h.",
        _GUIDE,
        profile=RUNNING,
        ladder=running_ladder,
    ),
    Criterion(
        "defrost-duration",
        "Length of a defrost",
        (Input("duration", "Length", "number", "min", low=0, high=240),),
        PRACTICE,
        judge_defrost,
        "Defrosts of air coolers, 0 to 240 min.",
        _GUIDE,
        profile=DEFROST,
        ladder=defrost_ladder,
    ),
    Criterion(
        "coil-ice",
        "Ice on a cooling coil",
        (Input("ice", "Thickness of ice", "number", "mm", low=0, high=200),),
        ICE,
        judge_ice,
        "Cooling coils of food stores, 0 to 200 mm.",
        "The limit from both sides.",
        ladder=ice_ladder,
    ),
    Criterion(
        "store-excursion",
        "Longest time of a store above its limit",
        (Input("duration", "Longest time above", "number", "h", low=0, high=240), _STORE),
        PRACTICE,
        judge_excursion,
        "Logs of food stores, 0 to 240 h.",
        _GUIDE,
        profile=EXCURSION,
        ladder=excursion_ladder,
    ),
    Criterion(
        "thermometer-check",
        "Thermometer in melting ice",
        (Input("reading", "Reading", "number", "°C", low=-20, high=20),),
        THERMOMETER,
        judge_thermometer,
        "Thermometers that can read 0 °C.",
        "Both limits from both sides; trade guidance.",
        ladder=ice_point_ladder,
    ),
)
