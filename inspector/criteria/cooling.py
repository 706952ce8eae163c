"""Jacket water of engines: how warm it leaves, and how much it takes up. Guidance of the trade: the maker's figure wins."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement, Ladder, Source, refuse
from inspector.criteria.laddered import between, nearer, told
from inspector.criteria.profiles import Limit, Profile
from inspector.quantities import difference, show

SOURCE = Source("Jacket water of marine diesel engines at steady load", "no publisher", "75 to 90 °C out, 5 to 10 K across the engine", "common practice")
OUTLET = Profile("Jacket water out of the engine", (Limit("coolest", "from", "°C", 75, 40, 82), Limit("warmest", "to", "°C", 90, 82, 120)), SOURCE)
RISE = Profile("Jacket water across the engine", (Limit("least", "from", "K", 5, 1, 7), Limit("most", "to", "K", 10, 7, 25)), SOURCE)
LOAD = "Worth something only at steady load, warm, with load and sea temperature noted beside it."


def outlet_ladder(limits: Mapping[str, float]) -> Ladder:
    """Three bands of jacket water temperature out of the engine [°C]."""
    return between(
        "°C",
        limits["coolest"],
        limits["warmest"],
        (None, "cool", "fair", "cool: low load, or a thermostat that stays open"),
        (None, "normal", "good", "as usual"),
        (None, "hot", "poor", "hot: look at coolers, pumps, thermostat and sea water"),
    )


def judge_outlet(outlet: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the temperature of jacket water out of an engine.

    Parameters
    ----------
    outlet [°C], 0 to 150; limits : the profile.

    References
    ----------
    Common practice: 75 to 90 °C. The maker's figure wins.
    """
    low, high = limits["coolest"], limits["warmest"]
    limit, margin = nearer(outlet, low, high)
    return told(
        "jacket-temperature",
        outlet_ladder(limits),
        outlet,
        "Jacket water",
        f"{show(low, '°C')} to {show(high, '°C')}",
        limit,
        SOURCE,
        notes=(LOAD,),
        margin=margin,
    )


def rise_ladder(limits: Mapping[str, float]) -> Ladder:
    """Three bands of the rise of jacket water across an engine [K]."""
    return between(
        "K",
        limits["least"],
        limits["most"],
        (None, "small rise", "fair", "small: low load, or more flow than usual"),
        (None, "normal rise", "good", "as usual"),
        (None, "large rise", "poor", "large: little flow, or fouled jackets and pump"),
    )


def judge_rise(outlet: float, inlet: float, limits: Mapping[str, float]) -> Judgement:
    """Judge how much warmer jacket water leaves an engine than it entered.

    Parameters
    ----------
    outlet, inlet [°C], 0 to 150, outlet not the cooler; limits : the profile.

    Returns
    -------
    Judgement : value, limit and margin in K.

    References
    ----------
    Common practice: 5 to 10 K. The maker's figure wins.
    """
    if outlet < inlet:
        refuse("cooling-water-rise", "outlet", outlet, "water leaves an engine no cooler than it entered: the two readings may be swapped")
    rise, low, high = difference(outlet, inlet), limits["least"], limits["most"]
    limit, margin = nearer(rise, low, high)
    return told(
        "cooling-water-rise",
        rise_ladder(limits),
        rise,
        "A rise of {} across the engine",
        f"{show(low, 'K')} to {show(high, 'K')}",
        limit,
        SOURCE,
        notes=(LOAD,),
        margin=margin,
    )


_OUTLET = Input("outlet", "Jacket water out", "number", "°C", low=0, high=150)

CRITERIA = (
    Criterion(
        "jacket-temperature",
        "Jacket water temperature out of an engine",
        (_OUTLET,),
        SOURCE,
        judge_outlet,
        "Water-cooled marine diesel engines at steady load, 0 to 150 °C.",
        "Both ends from both sides; trade guidance, no published example exists.",
        profile=OUTLET,
        ladder=outlet_ladder,
    ),
    Criterion(
        "cooling-water-rise",
        "Rise of jacket water across an engine",
        (_OUTLET, Input("inlet", "Jacket water in", "number", "°C", low=0, high=150)),
        SOURCE,
        judge_rise,
        "Water-cooled marine diesel engines at steady load, 0 to 150 °C.",
        "Both ends from both sides; trade guidance, no published example exists.",
        profile=RISE,
    ),
)
