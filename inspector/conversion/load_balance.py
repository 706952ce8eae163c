"""Electrical demand by condition against the sets: what is left with one set out, how hard the sets work, and the spare for new consumers.

Loads are what a list or a meter says. With any one set stopped the rest should carry normal propulsion, safety and
least comfort (SOLAS II-1/41.1.2, recalled); a yacht outside trade is not bound by it, and it is the usual measure all the same.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from inspector.conversion.electric import usable_power
from inspector.conversion.inputs import PRACTICE, BadInput, one_of, or_default, plain
from inspector.conversion.plant import GeneratorSet
from inspector.conversion.shapes import Default, Figure, Gap, Span, no_figure
from inspector.criteria.source import Source

CONDITIONS = ("harbour", "sea", "manoeuvring", "station keeping")
MOST_POWER = 100_000.0  # kW
ONE_SET_OUT = Source(
    "SOLAS II-1/41.1, main source of electrical power", "edition not read", "41.1.1, 41.1.2 and 41.1.4: any one set stopped", "memory"
)
DIVERSITY = Default("diversity of intermittent loads", Span(2.0, 2.0, 3.0), "", "they seldom peak together; 2 is the cautious end", PRACTICE)
SIMULTANEITY = Default("simultaneity", 1.0, "", "taken as all running at once where nothing was said", PRACTICE)
CEILING = Default("most that the remaining sets are planned for", 0.90, "", "above 90 % nothing is left for a step of load", PRACTICE)
RATED_FACTOR = Default("power factor on the plates of the sets", 0.80, "", "usual for marine sets", PRACTICE)
LOAD_FACTOR = Default("power factor of the ship's load", 0.80, "", "motors without a reading at the board", PRACTICE)
ACCURACY = Default("accuracy of a load list", Span(0.90, 1.00, 1.10), "", "lists are seldom nearer to the meters", PRACTICE)
AIM, LIGHT = 0.85, 0.30  # of rating: a further set is taken on above, a diesel fouls below; common practice


@dataclass(frozen=True)
class Consumer:
    """One load: demand by condition [kW], a condition that was not said is absent; new: it comes with the conversion.

    connected [kW], factor and simultaneity (shares) stand in where a condition was not said; intermittent loads take part
    by diversity; essential ones cannot be shed.
    """

    name: str
    bus: str
    demand: tuple[tuple[str, float], ...] = ()
    new: bool = False
    essential: bool = True
    intermittent: bool = False
    connected: float | None = None
    factor: float | None = None
    simultaneity: float | None = None

    def __post_init__(self) -> None:
        for condition, power in self.demand:
            one_of(f"{self.name}: condition", condition, CONDITIONS)
            plain(f"{self.name}: {condition}", power, 0, MOST_POWER, "kW")
        if self.connected is not None:
            plain(f"{self.name}: connected power", self.connected, 0, MOST_POWER, "kW")
        for name in ("factor", "simultaneity"):
            if getattr(self, name) is not None:
                plain(f"{self.name}: {name}", getattr(self, name), 0, 1)

    def at(self, condition: str) -> float | None:
        """What it takes in a condition [kW]: as said, else connected x factor x simultaneity; None where neither is known."""
        said = dict(self.demand).get(condition)
        if said is not None or self.connected is None or self.factor is None:
            return said
        return self.connected * self.factor * (SIMULTANEITY.value if self.simultaneity is None else self.simultaneity)


@dataclass(frozen=True)
class Balance:
    """One condition with the largest set stopped: remaining [kW], demand and margin [kW], spare for new consumers [kW] below the ceiling."""

    condition: str
    out: str
    remaining: float
    demand: Figure
    margin: Figure
    spare: Figure

    @property
    def holds(self) -> bool | None:
        """True or False where the whole span agrees; None where it is not known."""
        return None if self.margin.span is None else self.margin.span.at_least(0)


@dataclass(frozen=True)
class Running:
    """The sets that a demand keeps running: how many, their load as a share, and a word: usual, light, high or overloaded."""

    count: int
    load: float
    word: str


def diversified(continuous: float, intermittent: float, diversity: float | Span) -> Span:
    """Demand [kW] = continuous + intermittent / diversity (a published form of the load analysis; diversity about 2 to 3).

    Examples
    --------
    >>> diversified(220, 140, 2).point
    290.0
    """
    ends = (diversity.low, diversity.high) if isinstance(diversity, Span) else (diversity,)
    for end in ends:
        plain("diversity", end, 1, 10)
    return plain("continuous load", continuous, 0, MOST_POWER, "kW") + plain("intermittent load", intermittent, 0, MOST_POWER, "kW") / (
        diversity if isinstance(diversity, Span) else Span.exact(diversity)
    )


def demand(consumers: Iterable[Consumer], condition: str, extra: Span | None = None, accuracy: Span | None = None) -> Figure:
    """Demand in a condition [kW]; without a span where a load was not said for it, or there is none.

    Parameters: extra [kW], such as thrusters, reckoned elsewhere; accuracy: share by which the list may be off (None: the usual).
    """
    one_of("condition", condition, CONDITIONS)
    consumers, name = tuple(consumers), f"demand, {condition}"
    if not consumers:
        return no_figure(name, "kW", (Gap("loads", "none is typed, so no demand can be told"),))
    missing = [one.name for one in consumers if one.at(condition) is None]
    if missing:
        why = f"not said for {'; '.join(missing[:4])}{' and more' if len(missing) > 4 else ''}; type 0 where it does not run"
        return no_figure(name, "kW", (Gap(f"load, {condition}", why),))
    shares, defaults = or_default(accuracy, ACCURACY)
    steady = sum(one.at(condition) for one in consumers if not one.intermittent)
    by_turns = sum(one.at(condition) for one in consumers if one.intermittent)
    if by_turns:
        defaults += (DIVERSITY,)
    if any(one.simultaneity is None and condition not in dict(one.demand) for one in consumers):
        defaults += (SIMULTANEITY,)
    total = diversified(steady, by_turns, DIVERSITY.value) * shares
    words = "sum of the loads" + (" + intermittent / diversity" if by_turns else "") + (" + thrusters" if extra is not None else "")
    return Figure(name, total if extra is None else total + extra, "kW", words, defaults=defaults)


def main_sets(sets: Iterable[GeneratorSet]) -> tuple[GeneratorSet, ...]:
    """The sets that count: in order, and not the emergency set."""
    return tuple(one for one in sets if one.counts)


@lru_cache(maxsize=1024)   # asked many times in one search for the wind held
def can_give(one: GeneratorSet, load_factor: float | None = None) -> float:
    """Power of one set [kW] at the load's power factor, by current as well as by power."""
    rated = RATED_FACTOR.value if one.power_factor is None else one.power_factor
    return usable_power(one.rated, rated, LOAD_FACTOR.value if load_factor is None else load_factor)


def factors_used(sets: Iterable[GeneratorSet], load_factor: float | None) -> tuple[Default, ...]:
    """The defaults that stand in for power factors nobody gave."""
    missing = any(one.power_factor is None for one in sets)
    return (*((RATED_FACTOR,) if missing else ()), *((LOAD_FACTOR,) if load_factor is None else ()))


def one_out(sets: Iterable[GeneratorSet], need: Figure, condition: str, load_factor: float | None = None, ceiling: float | None = None) -> Balance:
    """A condition with the largest of the main sets in order stopped.

    Parameters: need [kW]; load_factor, power factor of the load; ceiling, share of the remaining sets to plan for (None: the usual).

    Errors
    ------
    BadInput : there is no set in order.
    """
    usable = main_sets(sets)
    if not usable:
        raise BadInput(
            "Generating sets: none that is in order and not for emergency, so no power can be told; give one at least.", field="sets", value=()
        )
    top, least = or_default(None if ceiling is None else plain("ceiling", ceiling, 0.3, 1), CEILING)
    powers = {one.name: can_give(one, load_factor) for one in usable}
    largest = max(powers, key=lambda name: powers[name])
    remaining = sum(powers.values()) - powers[largest]
    defaults, used = (
        (*need.defaults, *factors_used(usable, load_factor)),
        (f"{largest} is the set that is out; sets out of order and for emergency never count.",),
    )
    names = (f"margin with one set out, {condition}", f"spare with one set out, {condition}")
    if need.span is None:
        return Balance(condition, largest, remaining, need, *(no_figure(name, "kW", need.gaps) for name in names))
    margin = Figure(names[0], remaining - need.span, "kW", "sum of the sets − largest − demand", used, defaults, (), ONE_SET_OUT)
    spare = Figure(
        names[1], top.low * remaining - need.span, "kW", "ceiling x (sum of the sets − largest) − demand", used, (*defaults, *least), (), PRACTICE
    )
    return Balance(condition, largest, remaining, need, margin, spare)


def spare_for_new(balances: Iterable[Balance]) -> Figure:
    """Spare for new consumers [kW]: the least over the conditions; those not known are gaps."""
    balances = tuple(balances)
    known = [one.spare for one in balances if one.spare.span is not None]
    gaps = tuple(gap for one in balances if one.spare.span is None for gap in one.spare.gaps)
    if not known:
        return no_figure("spare for new consumers with one set out", "kW", gaps)
    spans = [one.span for one in known]
    points = [one.point for one in spans]
    least = Span(min(one.low for one in spans), None if None in points else min(points), min(one.high for one in spans))
    tightest = min(known, key=lambda one: one.span.middle)
    return Figure(
        "spare for new consumers with one set out",
        least,
        "kW",
        f"least over the conditions: {tightest.name.partition(', ')[2]}",
        tightest.assumptions,
        tuple(dict.fromkeys(default for one in known for default in one.defaults)),
        gaps,
        PRACTICE,
    )


def running(sets: Iterable[GeneratorSet], power: float, load_factor: float | None = None) -> Running:
    """The fewest sets, largest first, that carry a power [kW] at 85 % of what they can give; all where even they cannot.

    Errors
    ------
    BadInput : there is no set in order.
    """
    powers = sorted((can_give(one, load_factor) for one in main_sets(sets)), reverse=True)
    if not powers:
        raise BadInput("Generating sets: none that is in order and not for emergency, so no load of a set can be told.", field="sets", value=())
    enough = (count for count in range(1, len(powers) + 1) if power <= AIM * sum(powers[:count]))
    count = next(enough, len(powers))
    load = power / sum(powers[:count])
    return Running(count, load, loading_word(load))


def loading_word(load: float) -> str:
    """The word for a load of a set (share): light below 30 %, usual to 85 %, high to 100 %, overloaded above (common practice)."""
    if load < LIGHT:
        return "light"
    if load <= AIM:
        return "usual"
    return "high" if load <= 1 else "overloaded"
