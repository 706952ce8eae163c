"""How long water, holding tanks, provisions and waste room last for a number of persons, and which of them binds.

All per-head figures that nobody gave are bands, listed as defaults. Days are reckoned to a year at most. Reverse-osmosis
output, galley habits and fresh produce decide more than any table: these are first checks.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from inspector.conversion.inputs import PRACTICE, one_of, or_default, plain, within
from inspector.conversion.shapes import Default, Figure, Gap, Span, no_figure, span
from inspector.criteria.source import Source

YEAR = 365.0  # days, beyond which nothing is told
YEAR_TOLD = "Days are reckoned to a year at most: 365 stands for a year or longer."
WATER_SOURCE = Source("ISO 15748-1, potable water supply on ships, as quoted in port-health guides", "2002", "consumption per head", "memory")
EPA = Source("EPA Cruise Ship Discharge Assessment Report, EPA842-R-07-005", "2008", "sewage 8.4 and grey water 67 US gal per person and day", "memory")
EMSA = Source("EMSA / CE Delft, The management of ship-generated waste on board ships", "2017", "rates per person and day", "memory")
WATSON = Source("Watson, Practical Ship Design", "1998",
                "section 5.2, items 37 and 38: refrigerated 0.04 m³ net (0.72 of gross) and general 0.1 m³ per person and day", "seen")
TOILETS = ("vacuum", "gravity")
_PER_HEAD = "no metered figure of her own"
WATER = {
    "vacuum": Default("fresh water per person", Span(100.0, 175.0, 225.0), "l/day", _PER_HEAD, WATER_SOURCE),
    "gravity": Default("fresh water per person", Span(100.0, 220.0, 270.0), "l/day", _PER_HEAD, WATER_SOURCE),
    None: Default("fresh water per person", Span(100.0, 200.0, 300.0), "l/day", _PER_HEAD, PRACTICE),
}
SEWAGE = {
    "vacuum": Default("sewage per person", Span(15.0, 25.0, 37.0), "l/day", "vacuum toilets", PRACTICE),
    "gravity": Default("sewage per person", Span(70.0, 95.0, 120.0), "l/day", "gravity toilets of older workboats", PRACTICE),
    None: Default("sewage per person", Span(10.0, 31.8, 120.0), "l/day", "toilets not known", EPA),
}
GREY = Default("grey water per person", Span(150.0, 188.0, 254.0), "l/day", _PER_HEAD, EPA)
WASTE = Default("waste per person, uncompacted", Span(3.0, 7.7, 31.0), "l/day", "plastics, food and domestic waste together, all kept on board", EMSA)
COMPACTION = Default("compaction", Span(3.0, 4.0, 5.0), "", "usual for a galley compactor", PRACTICE)
MAYBE_COMPACTED = Default("compaction", Span(1.0, 1.0, 5.0), "", "whether a compactor is fitted is not known", PRACTICE)
KEPT = Default("discharge", "nothing", "", "holding tanks must carry all of it, as in areas where no discharge is allowed", PRACTICE)
AVAILABILITY = Default("availability of the watermaker", Span(0.75, 0.83, 0.95), "", "20 hours a day and time for cleaning", PRACTICE)
# kind -> kg per person and day, kg per m³ of room
FOOD = {
    "frozen": (Default("frozen food per person", Span(0.9, 1.0, 1.1), "kg/day", _PER_HEAD, PRACTICE), 250.0),
    "chilled": (Default("chilled food per person", Span(1.0, 1.2, 1.3), "kg/day", _PER_HEAD, PRACTICE), 200.0),
    "dry": (Default("dry food per person", Span(0.8, 0.9, 1.0), "kg/day", _PER_HEAD, PRACTICE), 300.0),
}
LOADING = {kind: Default(f"loading of the {kind} store", loading, "kg/m³", "per m³ of room", PRACTICE) for kind, (_, loading) in FOOD.items()}
NET_SHARE, REFRIGERATED, GENERAL = 0.72, 0.04, 0.1  # of gross; m³ net and m³ per person and day
PRODUCE = "Fresh produce lasts two to four weeks, whatever the room."


@dataclass(frozen=True)
class Stores:
    """Capacities; None is not known (and never taken as nothing).

    water, sewage, grey [m³ of tank]; watermaker [m³/day rated]; dry, chilled, frozen [m³ gross of room]; waste [m³];
    toilets "vacuum" or "gravity"; discharge "nothing" or "as permitted"; compactor fitted; the four per_head figures
    [l/day per person] where they were metered. Capacities may be spans.
    """

    water: float | Span | None = None
    watermaker: float | Span | None = None
    sewage: float | Span | None = None
    grey: float | Span | None = None
    dry: float | Span | None = None
    chilled: float | Span | None = None
    frozen: float | Span | None = None
    waste: float | Span | None = None
    toilets: str | None = None
    discharge: str | None = None
    compactor: bool | None = None
    water_per_head: float | Span | None = None
    sewage_per_head: float | Span | None = None
    grey_per_head: float | Span | None = None
    waste_per_head: float | Span | None = None

    def __post_init__(self) -> None:
        for field in ("water", "watermaker", "sewage", "grey", "dry", "chilled", "frozen", "waste"):
            if getattr(self, field) is not None:
                within(f"stores: {field}", getattr(self, field), 0, 20_000, "m³/day" if field == "watermaker" else "m³")
        for field in ("water", "sewage", "grey", "waste"):
            value = getattr(self, f"{field}_per_head")
            if value is not None:
                within(f"stores: {field} per head", value, 0.5, 1500)
        for field, choices in (("toilets", TOILETS), ("discharge", ("nothing", "as permitted"))):
            if getattr(self, field) is not None:
                one_of(f"stores: {field}", getattr(self, field), choices)


@dataclass(frozen=True)
class Limits:
    """All limits in days, the one that binds, and the others that may bind instead; unknown ones are gaps.

    cautious: what the provision rooms last by liner volumes, printed beside and never binding.
    """

    figures: tuple[Figure, ...]
    binding: Figure | None
    may_bind: tuple[Figure, ...]
    gaps: tuple[Gap, ...]
    cautious: tuple[Figure, ...] = ()


def water_days(stores: Stores, persons: int) -> Figure:
    """Days that fresh water lasts, watermaker included; a year where it makes as much as is used. A tank alone: ``breakdown_days``."""
    need, defaults = _daily(stores.water_per_head, WATER[stores.toilets], persons)
    if stores.water is None:
        return _unknown("fresh water", "the tank volume")
    if stores.watermaker is None:
        figure = _days("fresh water", span(stores.water), need, defaults)
        gap = Gap("watermaker", "its output is not known, so the water lasts from as long as the tank does to any time")
        return replace(figure, span=Span(figure.span.low, None, YEAR), gaps=(gap,), assumptions=(YEAR_TOLD,))
    made = span(stores.watermaker) * AVAILABILITY.value
    return _days("fresh water", span(stores.water), need - made, (*defaults, AVAILABILITY))


def breakdown_days(stores: Stores, persons: int) -> Figure:
    """Days that the fresh water in the tank lasts with the watermaker broken down; five to seven are usual guidance (common practice)."""
    if stores.water is None:
        return _unknown("fresh water without watermaker", "the tank volume")
    need, defaults = _daily(stores.water_per_head, WATER[stores.toilets], persons)
    return _days("fresh water without watermaker", span(stores.water), need, defaults)


def sewage_days(stores: Stores, persons: int) -> Figure:
    """Days until the sewage tank is full, nothing let out."""
    if stores.sewage is None:
        return _unknown("sewage", "the holding tank's volume")
    need, defaults = _daily(stores.sewage_per_head, SEWAGE[stores.toilets], persons)
    return _days("sewage", span(stores.sewage), need, defaults)


def grey_days(stores: Stores, persons: int) -> Figure:
    """Days until the grey-water tank is full, nothing let out."""
    if stores.grey is None:
        return _unknown("grey water", "the holding tank's volume")
    need, defaults = _daily(stores.grey_per_head, GREY, persons)
    return _days("grey water", span(stores.grey), need, defaults)


def waste_days(stores: Stores, persons: int) -> Figure:
    """Days until the waste room is full, everything kept on board."""
    if stores.waste is None:
        return _unknown("waste", "the volume of the waste room")
    need, defaults = _daily(stores.waste_per_head, WASTE, persons)
    room = span(stores.waste)
    if stores.compactor is not False:
        compaction = COMPACTION if stores.compactor else MAYBE_COMPACTED
        room, defaults = room * compaction.value, (*defaults, compaction)
    return _days("waste", room, need, defaults)


def food_days(stores: Stores, persons: int, kind: str) -> Figure:
    """Days that the "dry", "chilled" or "frozen" store lasts, by the weight of food (the most that it can)."""
    room = getattr(stores, one_of("food", kind, tuple(FOOD)))
    if room is None:
        return _unknown(f"{kind} stores", "the volume of the room")
    default, loading = FOOD[kind]
    need = default.value * _persons(persons)
    figure = _days(f"{kind} stores", span(room) * loading, need, (default, LOADING[kind]))
    return replace(figure, assumptions=(*figure.assumptions, PRODUCE)) if kind == "chilled" else figure


def rooms_by_volume(stores: Stores, persons: int) -> tuple[Figure, Figure]:
    """Days of refrigerated and of general stores by the passenger-liner volumes per head (the least that they last).

    References: Watson 1998, items 37 and 38 without the constant of 140 m³ (seen). This and the weight method differ several fold.
    """
    cold = None if stores.chilled is None or stores.frozen is None else span(stores.chilled) + stores.frozen
    people = span(_persons(persons))
    first = _unknown("refrigerated stores by volume", "the volume of both cold rooms")
    second = _unknown("general stores by volume", "the volume of the dry store")
    if cold is not None:
        first = _days("refrigerated stores by volume", cold * NET_SHARE, people * REFRIGERATED, (), WATSON)
    if stores.dry is not None:
        second = _days("general stores by volume", span(stores.dry), people * GENERAL, (), WATSON)
    return first, second


def limits(stores: Stores, persons: int, others: Iterable[Figure] = ()) -> Limits:
    """All limits in days for a number of persons, with others (such as days of fuel), and which binds.

    Holding tanks count as limits unless ``discharge`` is "as permitted"; where that is not said, it is listed as a default.

    Errors
    ------
    BadInput : persons is not 1 to 1000.
    """
    holding = (sewage_days(stores, persons), grey_days(stores, persons), waste_days(stores, persons))
    if stores.discharge is None:
        holding = tuple(replace(figure, defaults=(*figure.defaults, KEPT)) for figure in holding)
    elif stores.discharge == "as permitted":
        holding = holding[2:]
    figures = (*others, water_days(stores, persons), *(food_days(stores, persons, kind) for kind in FOOD), *holding)
    return replace(binding(figures), cautious=tuple(figure for figure in rooms_by_volume(stores, persons) if figure.known))


def binding(figures: Iterable[Figure]) -> Limits:
    """The limit that binds by its point (its low end where it has none), and those whose span begins before that one's ends."""
    figures = tuple(figures)
    known = sorted((figure for figure in figures if figure.known), key=lambda figure: (_likely(figure.span), figure.span.low))
    gaps = tuple(Gap(f"days of {figure.name}", "; ".join(gap.why for gap in figure.gaps)) for figure in figures if not figure.known)
    if not known:
        return Limits(figures, None, (), gaps)
    first = known[0]
    return Limits(figures, first, tuple(figure for figure in known[1:] if figure.span.low < first.span.high), gaps)


def _likely(days: Span) -> float:
    return days.low if days.point is None else days.point


def _persons(persons: int) -> float:
    return plain("persons", persons, 1, 1000)


def _daily(given: float | Span | None, default: Default, persons: int) -> tuple[Span, tuple[Default, ...]]:
    """m³ per day for all persons, of l/day per person."""
    per_head, defaults = or_default(given, default)
    return per_head * _persons(persons) / 1000, defaults


def _days(name: str, amount: Span, need: Span, defaults: tuple[Default, ...], source: Source | None = None) -> Figure:
    def days(stock: float, daily: float) -> float:
        return YEAR if daily <= 0 or stock >= YEAR * daily else stock / daily

    # more stock is more days and more need is fewer, up to the year
    point = None if amount.point is None or need.point is None else days(amount.point, need.point)
    found = Span(days(amount.low, need.high), point, days(amount.high, need.low))
    told = (YEAR_TOLD,) if found.high == YEAR else ()
    return Figure(name, found, "days", "stock / daily need of all persons", told, defaults, (), source or (defaults[0].source if defaults else None))


def _unknown(name: str, what: str) -> Figure:
    return no_figure(name, "days", (Gap(name, f"{what} is not known"),))
