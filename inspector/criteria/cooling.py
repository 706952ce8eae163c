"""Jacket water of engines: how warm it leaves, and how much it takes up. Guidance of the trade: the maker's figure wins."""

from collections.abc import Mapping

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told_between
from inspector.quantities import difference, show

SOURCE = Source("Jacket water of marine diesel engines at steady load", "no publisher", "75 to 90 °C out, 5 to 10 K across the engine", "common practice")
OUTLET = Profile("Jacket water out of the engine", (Limit("coolest", "from", "°C", 75, 40, 82), Limit("warmest", "to", "°C", 90, 82, 120)), SOURCE)
RISE = Profile("Jacket water across the engine", (Limit("least", "from", "K", 5, 1, 7), Limit("most", "to", "K", 10, 7, 25)), SOURCE)
LOAD = "Worth something only at steady load, warm, with load and sea temperature noted beside it."


def outlet_ladder(limits: Mapping[str, float]) -> Ladder:
    """Three bands of jacket water temperature out of the engine [°C]."""
    return stairs(
        "°C",
        below(limits["coolest"], "cool", "fair", "cool: low load, or a thermostat that stays open"),
        to(limits["warmest"], "normal", "good", "as usual"),
        beyond("hot", "poor", "hot: look at coolers, pumps, thermostat and sea water"),
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
    return told_between(
        "jacket-temperature",
        outlet_ladder(limits).step(outlet),
        f"Jacket water of {show(outlet, '°C')}, against {show(low, '°C')} to {show(high, '°C')},",
        (outlet, "°C"),
        (low, high),
        SOURCE,
        (LOAD,),
    )


def rise_ladder(limits: Mapping[str, float]) -> Ladder:
    """Three bands of the rise of jacket water across an engine [K]."""
    return stairs(
        "K",
        below(limits["least"], "small rise", "fair", "small: low load, or more flow than usual"),
        to(limits["most"], "normal rise", "good", "as usual"),
        beyond("large rise", "poor", "large: little flow, or fouled jackets and pump"),
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
    return told_between(
        "cooling-water-rise",
        rise_ladder(limits).step(rise),
        f"A rise of {show(rise, 'K')} across the engine, against {show(low, 'K')} to {show(high, 'K')},",
        (rise, "K"),
        (low, high),
        SOURCE,
        (LOAD,),
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
