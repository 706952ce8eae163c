"""Used oil of engines by a laboratory's sheet: viscosity, base number, fuel and soot. Guidance of the trade: the maker's figure wins."""

from collections.abc import Mapping

from inspector.criteria.exact import exact, percent_of, share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to, watch_and_act
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

VISCOSITY = Source("Change of viscosity of used oil", "no publisher", "10 and 20 % thinner, 15 and 25 % thicker", "common practice")
BASE = Source("Base number of used engine oil", "no publisher", "50 and 60 % used up; never below the acid number", "common practice")
FUEL = Source("Fuel in engine oil", "no publisher", "2 and 5 %", "common practice")
SOOT = Source("Soot and insolubles in engine oil", "no publisher", "2 and 3 %", "common practice")
VISCOSITY_PROFILE = Profile(
    "Usual limits of viscosity change",
    (
        Limit("thin_watch", "thinner, watch above", "%", 10.0, 1, 50),
        Limit("thin_act", "thinner, act above", "%", 20.0, 1, 60),
        Limit("thick_watch", "thicker, watch above", "%", 15.0, 1, 80),
        Limit("thick_act", "thicker, act above", "%", 25.0, 1, 100),
    ),
    VISCOSITY,
)
BASE_PROFILE = Profile(
    "Usual limits of base number used up", (Limit("watch", "watch from", "%", 50.0, 10, 90), Limit("act", "act from", "%", 60.0, 10, 95)), BASE
)
FUEL_PROFILE = Profile("Usual limits of fuel in oil", (Limit("watch", "watch above", "%", 2.0, 0.1, 20), Limit("act", "act above", "%", 5.0, 0.1, 30)), FUEL)
SOOT_PROFILE = Profile("Usual limits of soot", (Limit("watch", "watch above", "%", 2.0, 0.1, 10), Limit("act", "act above", "%", 3.0, 0.1, 15)), SOOT)
TEMPERATURES = ("40 °C", "100 °C")
SAMPLE = ("One bottle proves little: ask for the trend, the hours on the oil, and where and how it was drawn.", "The engine maker's sheet wins.")


def change(used: float, new: float) -> float:
    """Return the change [%] of a used figure against the new one.

    Examples
    --------
    >>> round(change(88, 105), 1), round(change(112, 145), 1)
    (-16.2, -22.8)
    """
    return percent_of(exact(used) - exact(new), new)


def _beside(new: float, percent: float) -> float:
    return share(100 + exact(percent), new)


def viscosity_ladder(new: float, used_at: str, new_at: str, limits: Mapping[str, float]) -> Ladder:
    """The bands of the used oil's viscosity [mm²/s] beside the new oil's at the same temperature."""
    if used_at != new_at:
        refuse("oil-viscosity", "used_at", used_at, f"the used oil was read at {used_at} and the new oil at {new_at}; only like temperatures compare")
    thin, thick = ("thinner than it may be: fuel, water or a wrong grade", "thicker than it may be: soot, oxidation or a wrong grade")
    watch = "changed enough to be watched"
    return stairs(
        "mm²/s",
        below(_beside(new, -limits["thin_act"]), "too thin", "poor", thin),
        below(_beside(new, -limits["thin_watch"]), "thinning", "fair", watch),
        to(_beside(new, min(limits["thick_watch"], limits["thick_act"])), "as new", "good", "near enough to new"),
        to(_beside(new, limits["thick_act"]), "thickening", "fair", watch),
        beyond("too thick", "poor", thick),
    )


def judge_viscosity(used: float, new: float, used_at: str, new_at: str, limits: Mapping[str, float]) -> Judgement:
    """Judge the viscosity of a used oil against the new one.

    Parameters: used, new [mm²/s]; used_at, new_at : 40 °C or 100 °C, alike; limits : thin_watch, thin_act, thick_watch and thick_act [%].

    References: common practice.
    """
    ladder, moved = viscosity_ladder(new, used_at, new_at, limits), change(used, new)
    limit = limits["thick_act"] if moved >= 0 else -limits["thin_act"]
    said = f"{show(used, 'mm²/s')} where new oil has {show(new, 'mm²/s')} at {used_at}, a change of {show(moved, '%')} against {show(limit, '%')},"
    return told("oil-viscosity", ladder.step(used), said, (moved, "%", limit), VISCOSITY, SAMPLE, at_least=moved < 0)


def base_ladder(new: float, acid: float | None, limits: Mapping[str, float]) -> Ladder:
    """The bands of the used oil's base number [mgKOH/g]; below the acid number the reserve is gone whatever the share."""
    low = to(_beside(new, -limits["act"]), "used up", "poor", "used up: change the oil")
    spent = () if acid is None else (below(acid, "below the acid number", "poor", "below the acid number: the oil protects no longer"),)
    return stairs(
        "mgKOH/g",
        *sorted((low, *spent), key=lambda step: step.upto),
        to(_beside(new, -limits["watch"]), "half used", "fair", "to be changed before long"),
        beyond("in reserve", "good", "enough in reserve"),
    )


def judge_base(used: float, new: float, limits: Mapping[str, float], acid: float | None = None) -> Judgement:
    """Judge how much of the base number of an engine oil is used up.

    Parameters: used, new [mgKOH/g]; acid [mgKOH/g], the acid number, if reported; limits : watch and act [%] used up.

    References: common practice.
    """
    gone = -change(used, new)
    said = f"A base number of {show(used, 'mgKOH/g')} where new oil has {show(new, 'mgKOH/g')} is {show(gone, '%')} used up and"
    return told("oil-base-number", base_ladder(new, acid, limits).step(used), said, (gone, "%", limits["act"]), BASE, SAMPLE)


def fuel_ladder(limits: Mapping[str, float]) -> Ladder:
    """The bands of fuel [%] in engine oil."""
    return watch_and_act("%", limits["watch"], limits["act"], "so much that injectors and pump seals are to be looked at")


def judge_fuel(fuel: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the fuel in an engine oil.

    Parameters: fuel [%]; limits : watch and act [%].

    References: 2 and 5 % (common practice).
    """
    said = f"{show(fuel, '%')} of fuel in the oil, against {show(limits['watch'], '%')} and {show(limits['act'], '%')},"
    notes = ("A flash point 30 to 50 K lower, and thinner oil, support it.", *SAMPLE)
    return told("fuel-dilution", fuel_ladder(limits).step(fuel), said, (fuel, "%", limits["act"]), FUEL, notes)


def soot_ladder(limits: Mapping[str, float]) -> Ladder:
    """The bands of soot [%] in engine oil."""
    return watch_and_act("%", limits["watch"], limits["act"], "so much that combustion, filters and centrifuge are to be looked at")


def judge_soot(soot: float, limits: Mapping[str, float]) -> Judgement:
    """Judge soot and insolubles in an engine oil.

    Parameters: soot [%] by mass; limits : watch and act [%].

    References: 2 and 3 % (common practice).
    """
    said = f"{show(soot, '%')} of soot and insolubles, against {show(limits['watch'], '%')} and {show(limits['act'], '%')},"
    return told("oil-soot", soot_ladder(limits).step(soot), said, (soot, "%", limits["act"]), SOOT, SAMPLE)


def _viscosity(name: str, label: str) -> Input:
    return Input(name, label, "number", "mm²/s", low=0.5, high=3000)


def _number(name: str, label: str, low: float, optional: bool = False) -> Input:
    return Input(name, label, "number", "mgKOH/g", optional=optional, low=low, high=120)


_BOTH = "Both limits from both sides; trade guidance, no published example exists."
CRITERIA = (
    Criterion(
        "oil-viscosity",
        "Viscosity of a used oil",
        (
            _viscosity("used", "Used oil"),
            _viscosity("new", "New oil"),
            Input("used_at", "Used oil read at", "choice", choices=TEMPERATURES),
            Input("new_at", "New oil read at", "choice", choices=TEMPERATURES),
        ),
        VISCOSITY,
        judge_viscosity,
        "Oils of 0.5 to 3000 mm²/s, both read at the same temperature.",
        "Four samples by our own arithmetic, every limit from both sides.",
        profile=VISCOSITY_PROFILE,
        ladder=viscosity_ladder,
    ),
    Criterion(
        "oil-base-number",
        "Base number of an engine oil",
        (_number("used", "Used oil", 0), _number("new", "New oil", 1), _number("acid", "Acid number of the used oil", 0, True)),
        BASE,
        judge_base,
        "Engine oils of 1 to 120 mgKOH/g when new.",
        "Two samples by our own arithmetic, both limits from both sides.",
        profile=BASE_PROFILE,
        ladder=base_ladder,
    ),
    Criterion(
        "fuel-dilution",
        "Fuel in an engine oil",
        (Input("fuel", "Fuel in the oil", "number", "%", low=0, high=100),),
        FUEL,
        judge_fuel,
        "Engine oils, 0 to 100 %.",
        _BOTH,
        profile=FUEL_PROFILE,
        ladder=fuel_ladder,
    ),
    Criterion(
        "oil-soot",
        "Soot in an engine oil",
        (Input("soot", "Soot and insolubles", "number", "%", low=0, high=100),),
        SOOT,
        judge_soot,
        "Engine oils, 0 to 100 % by mass.",
        _BOTH,
        profile=SOOT_PROFILE,
        ladder=soot_ladder,
    ),
)
