"""An engine's crankcase and its hours: pressure, what its size asks to be fitted, and hours against overhaul intervals."""

from collections.abc import Mapping

from inspector.criteria.exact import share
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to, watch_and_act
from inspector.criteria.profiles import Limit, Profile, chosen, key
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import difference, show

PRESSURE = Source("Crankcase pressure of trunk engines", "no publisher", "3 and 5 mbar, or twice the baseline", "common practice")
RELIEF = Source("SOLAS II-1/27.4 (high-speed craft code 9.4.3 alike: seen)", "consolidated text", "bore of 200 mm or crankcase volume of 0.6 m³", "memory")
MIST = Source("SOLAS II-1/47.2", "consolidated text", "unattended engines of 2250 kW or bore above 300 mm", "memory")
MAKER = Source("The engine maker's overhaul schedule", "as typed by the surveyor", "interval of the part", "common practice")
PRACTICE = Source("Overhaul intervals by speed class", "no publisher", "hours, medium and wide ranges", "common practice")
PRESSURE_PROFILE = Profile(
    "Usual limits of crankcase pressure",
    (
        Limit("watch", "watch above", "mbar", 3.0, 0.1, 50),
        Limit("act", "act above", "mbar", 5.0, 0.1, 100),
    ),
    PRESSURE,
)
NEARLY = 90  # % of an interval after which little is left: our own cut
LEAST_BORE, LEAST_VOLUME = 200.0, 0.6  # mm, m³
MIST_POWER, MIST_BORE = 2250.0, 300.0  # kW, mm
# speed class -> part -> hours from and to which the trade overhauls
HOURS = {
    "high speed": {"injectors": (3000, 6000), "top end": (6000, 12_000), "pistons or major": (12_000, 24_000), "bearings": (12_000, 24_000)},
    "medium speed": {"injectors": (2000, 6000), "top end": (12_000, 18_000), "pistons or major": (16_000, 36_000), "bearings": (24_000, 48_000)},
    "low speed": {"injectors": (6000, 8000), "top end": (12_000, 16_000), "pistons or major": (16_000, 24_000), "bearings": (32_000, 48_000)},
}
PARTS = ("injectors", "top end", "pistons or major", "bearings", "turbocharger")
TURBOCHARGER = (12_000, 16_000)
HOURS_PROFILE = Profile(
    "Usual overhaul hours",
    tuple(
        Limit(f"{key(speed)}_{key(name)}_{end}", f"{speed}, {name}, {end}", "h", float(value), 100, 100_000)
        for speed, parts in HOURS.items()
        for name, pair in {**parts, "turbocharger": TURBOCHARGER}.items()
        for end, value in zip(("from", "to"), pair, strict=True)
    ),
    PRACTICE,
)
PAPER = ("A meter without a log is unverified: ask for the book, the invoices and the meter's own history.",)


def pressure_ladder(baseline: float | None, limits: Mapping[str, float]) -> Ladder:
    """The bands of crankcase pressure [mbar]; a doubled baseline acts by itself."""
    cause = "so high that blow-by past rings or the turbocharger is to be looked for"
    act = limits["act"]
    double = None if baseline is None or baseline <= 0 else 2 * baseline
    if double is None or double > act:
        return watch_and_act("mbar", limits["watch"], act, cause)
    if double <= limits["watch"]:
        return stairs("mbar", below(double, "good", "good", "in order"), beyond("act", "poor", cause))
    return watch_and_act("mbar", limits["watch"], double, cause, act_from=True)


def judge_pressure(pressure: float, limits: Mapping[str, float], baseline: float | None = None) -> Judgement:
    """Judge the pressure in an engine's crankcase.

    Parameters: pressure [mbar], slight suction where a fan is fitted; baseline [mbar] when sound, if known; limits : watch and act [mbar].

    References: 3 and 5 mbar, or twice the baseline (common practice); the maker's chart wins.
    """
    limit = limits["act"] if not baseline or baseline < 0 else min(limits["act"], 2 * baseline)
    said = f"{show(pressure, 'mbar')} in the crankcase, against {show(limits['watch'], 'mbar')} and {show(limit, 'mbar')},"
    notes = (
        "10 mm of water are 0.981 mbar. At full load and warm; a blocked breather looks like blow-by.",
        "After an oil-mist alarm nobody opens the engine for 20 minutes or more.",
    )
    return told("crankcase-pressure", pressure_ladder(baseline, limits).step(pressure), said, (pressure, "mbar", limit), PRESSURE, notes)


def relief_ladder(volume: float, valves: str) -> Ladder:
    """The bands of the cylinder bore [mm] by what they ask of a crankcase of this volume [m³]. SOLAS II-1/27.4 (memory)."""
    if valves == "fitted":
        return stairs("mm", beyond("fitted", "good", "fitted with explosion relief valves"))
    missing = ("missing", "failed", "without explosion relief valves, which its size asks for")
    if volume >= LEAST_VOLUME:
        return stairs("mm", beyond(*missing))
    return stairs("mm", below(LEAST_BORE, "not asked", "good", "too small to ask for explosion relief valves"), beyond(*missing))


def judge_relief(bore: float, volume: float, valves: str) -> Judgement:
    """Judge whether an engine's crankcase has the explosion relief valves its size asks for.

    Parameters: bore [mm]; volume [m³] of the crankcase; valves : fitted or not fitted.

    References: SOLAS II-1/27.4 (memory); high-speed craft code 9.4.3 gives the same sizes (seen).
    """
    said = f"An engine of {show(bore, 'mm')} bore and {show(volume, 'm³')} of crankcase"
    limit = None if valves == "fitted" or volume >= LEAST_VOLUME else LEAST_BORE
    return told(
        "crankcase-relief",
        relief_ladder(volume, valves).step(bore),
        said,
        (bore, "mm", limit),
        RELIEF,
        ("Asked from 200 mm of bore or 0.6 m³ of crankcase, whichever comes first.",),
    )


def mist_ladder(power: float, watch: str, detector: str) -> Ladder:
    """The bands of the cylinder bore [mm] by what they ask of an engine of this power [kW]. SOLAS II-1/47.2 (memory)."""
    if detector == "fitted":
        return stairs("mm", beyond("fitted", "good", "fitted with oil-mist detection or its like"))
    if watch == "manned":
        return stairs("mm", beyond("not asked", "good", "in a manned space, where none is asked"))
    missing = ("missing", "failed", "without oil-mist detection, which its size asks for where nobody stands watch")
    if power >= MIST_POWER:
        return stairs("mm", beyond(*missing))
    return stairs("mm", to(MIST_BORE, "not asked", "good", "too small to ask for oil-mist detection"), beyond(*missing))


def judge_mist(bore: float, power: float, watch: str, detector: str) -> Judgement:
    """Judge whether an engine has the oil-mist detection (or bearing temperature monitors) its size asks for.

    Parameters: bore [mm]; power [kW]; watch : manned or unmanned; detector : fitted or not fitted.

    References: SOLAS II-1/47.2 (memory): unattended, from 2250 kW or above 300 mm of bore.
    """
    said = f"An engine of {show(bore, 'mm')} bore and {show(power, 'kW')} ({watch})"
    plain = detector == "fitted" or watch == "manned" or power >= MIST_POWER
    return told("oil-mist-detection", mist_ladder(power, watch, detector).step(bore), said, (bore, "mm", None if plain else MIST_BORE), MIST)


def interval_ladder(at_overhaul: float, interval: float) -> Ladder:
    """The bands of the hour meter [h] after an overhaul at this reading and with this interval of the maker."""
    return stairs(
        "h",
        below(at_overhaul, "meter replaced", None, "less than at the overhaul, so the meter was replaced and the hours are unknown"),
        to(difference(at_overhaul, -share(NEARLY, interval)), "in its interval", "good", "inside the interval"),
        to(difference(at_overhaul, -interval), "nearly due", "fair", "near the end of the interval"),
        beyond("overdue", "poor", "past the interval: the overhaul belongs into the budget"),
    )


def judge_interval(meter: float, at_overhaul: float, interval: float) -> Judgement:
    """Judge the hours since an overhaul against the maker's own interval.

    Parameters: meter [h] now; at_overhaul [h], the meter then; interval [h] by the maker's schedule.

    References: the maker's schedule as typed; nearly due from 90 % is our own cut.
    """
    step, since = interval_ladder(at_overhaul, interval).step(meter), difference(meter, at_overhaul)
    if step.rating is None:
        return told("overhaul-interval", step, f"A meter of {show(meter, 'h')}", (None, "h", None), MAKER, PAPER)
    said = f"{show(since, 'h')} since the overhaul of an interval of {show(interval, 'h')}, {show(difference(interval, since), 'h')} left,"
    return told("overhaul-interval", step, said, (since, "h", interval), MAKER, PAPER)


def speed_class(speed: float) -> str:
    """Return the speed class of a rated speed [rpm]; the cuts at 300 and 1000 are our own.

    Examples
    --------
    >>> speed_class(299), speed_class(300), speed_class(1000), speed_class(1001)
    ('low speed', 'medium speed', 'medium speed', 'high speed')
    """
    return "low speed" if speed < 300 else "medium speed" if speed <= 1000 else "high speed"


def hours_ladder(speed: float, part: str, limits: Mapping[str, float]) -> Ladder:
    """The bands of the hours [h] since a part was overhauled, by speed class."""
    first, last = chosen(limits, f"{speed_class(speed)} {part}", "from", "to")
    return stairs(
        "h",
        below(min(first, last), "not due", "good", "short of any usual interval"),
        to(last, "due by practice", "fair", "inside the usual range, so it may be due"),
        beyond("past the range", "poor", "past the usual range: take an overhaul into the budget"),
    )


def judge_hours(hours: float, speed: float, part: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the hours since a part was overhauled where the maker's interval is not known.

    Parameters: hours [h]; speed [rpm], rated; part : one of PARTS; limits : from and to [h] by speed class and part.

    References: common practice, wide ranges; the maker's schedule wins.
    """
    first, last = chosen(limits, f"{speed_class(speed)} {part}", "from", "to")
    said = f"{show(hours, 'h')} on {part} of a {speed_class(speed)} engine, overhauled at {show(first, 'h')} to {show(last, 'h')} by practice,"
    return told("overhaul-hours", hours_ladder(speed, part, limits).step(hours), said, (hours, "h", last), PRACTICE, PAPER)


def _number(name: str, label: str, unit: str, low: float, high: float, optional: bool = False) -> Input:
    return Input(name, label, "number", unit, optional=optional, low=low, high=high)


_BORE, _FITTED = _number("bore", "Cylinder bore", "mm", 50, 1100), ("fitted", "not fitted")
CRITERIA = (
    Criterion(
        "crankcase-pressure",
        "Pressure in the crankcase",
        (_number("pressure", "Crankcase pressure", "mbar", -50, 500), _number("baseline", "Baseline when sound", "mbar", -50, 500, True)),
        PRESSURE,
        judge_pressure,
        "Trunk-piston engines, −50 to 500 mbar.",
        "Both limits from both sides; trade guidance.",
        profile=PRESSURE_PROFILE,
        ladder=pressure_ladder,
    ),
    Criterion(
        "crankcase-relief",
        "Explosion relief valves of a crankcase",
        (_BORE, _number("volume", "Volume of the crankcase", "m³", 0.01, 100), Input("valves", "Relief valves", "choice", choices=_FITTED)),
        RELIEF,
        judge_relief,
        "Engines of 50 to 1100 mm bore.",
        "Both sizes from both sides; seen in the text for high-speed craft only.",
        ladder=relief_ladder,
    ),
    Criterion(
        "oil-mist-detection",
        "Oil-mist detection of an engine",
        (
            _BORE,
            _number("power", "Power", "kW", 5, 50_000),
            Input("watch", "Machinery space", "choice", choices=("manned", "unmanned")),
            Input("detector", "Oil-mist detection or its like", "choice", choices=_FITTED),
        ),
        MIST,
        judge_mist,
        "Engines of 50 to 1100 mm bore.",
        "Both recalled sizes from both sides.",
        ladder=mist_ladder,
    ),
    Criterion(
        "overhaul-interval",
        "Hours since an overhaul, by the maker's interval",
        (
            _number("meter", "Hour meter now", "h", 0, 1_000_000),
            _number("at_overhaul", "Hour meter at the overhaul", "h", 0, 1_000_000),
            _number("interval", "The maker's interval", "h", 100, 200_000),
        ),
        MAKER,
        judge_interval,
        "Parts with an interval of 100 to 200 000 h in the maker's schedule.",
        "One engine by our own arithmetic, every end from both sides.",
        ladder=interval_ladder,
    ),
    Criterion(
        "overhaul-hours",
        "Hours since an overhaul, by usual practice",
        (
            _number("hours", "Hours since the overhaul", "h", 0, 500_000),
            _number("speed", "Rated speed", "rpm", 50, 4000),
            Input("part", "Which part", "choice", choices=PARTS),
        ),
        PRACTICE,
        judge_hours,
        "Diesel engines of 50 to 4000 r/min where the maker's interval is not known.",
        "Both ends of each row from both sides; trade guidance.",
        profile=HOURS_PROFILE,
        ladder=hours_ladder,
    ),
)
