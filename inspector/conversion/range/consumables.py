"""How long water, holding tanks, provisions and waste room last, and which binds.

All figures per head that nobody gave are bands, listed as defaults. Days end at a year. Output of
the watermaker, habits of the galley and fresh produce decide more than any table: these are first
checks.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import one_of, or_default, plain
from inspector.conversion.core.figure import Default, Figure, Gap, no_figure
from inspector.conversion.core.span import Span, span
from inspector.conversion.range.stores import (
    AVAILABILITY,
    COMPACTION,
    FOOD,
    GREY,
    KEPT,
    LOADING,
    MAYBE_COMPACTED,
    SEWAGE,
    WASTE,
    WATER,
    Stores,
)
from inspector.criteria.core.source import Source
from inspector.values.quantity import joined

# Days beyond which no difference is made.
YEAR = 365.0
YEAR_NOTE = "Days are counted to a year at most: 365 is a year or longer."
PRODUCE = "Fresh produce lasts two to four weeks, whatever the room."


@dataclass(frozen=True)
class Limits:
    """How long everything lasts.

    Parameters
    ----------
    figures : tuple of Figure
        [days]
    binding : Figure or None
        The one that ends first; None where none is known.
    may_bind : tuple of Figure
        The others that may end before it.
    gaps : tuple of Gap
        For each that is not known.
    """

    figures: tuple[Figure, ...]
    binding: Figure | None
    may_bind: tuple[Figure, ...]
    gaps: tuple[Gap, ...]


def water_days(stores: Stores, persons: int) -> Figure:
    """Return how long the fresh water lasts, watermaker included.

    Parameters
    ----------
    stores : Stores
    persons : int
        1 to 1000.

    Returns
    -------
    Figure
        [days]
        A year where the watermaker makes as much as is used.

    References
    ----------
    ISO 15748-1, consumption per head (memory); availability of 75 to 95 % (common practice).
    """
    need, defaults = _daily(stores.water_per_head, WATER[stores.toilets], persons)
    if stores.water is None:
        return _unknown("fresh water", "the tank volume")
    # Nobody says that there is none: the tank is the least that can be counted on.
    if stores.watermaker is None:
        figure = _days("fresh water", span(stores.water), need, defaults)
        why = (
            "its output is not known, so the water lasts from as long as the tank does to any time"
        )
        longest, gaps = Span(figure.span.low, None, YEAR), (Gap("watermaker", why),)
        return replace(figure, span=longest, gaps=gaps, assumptions=(YEAR_NOTE,))
    # A plate gives the output of a new unit in clean, warm water.
    made = span(stores.watermaker) * AVAILABILITY.value
    return _days("fresh water", span(stores.water), need - made, (*defaults, AVAILABILITY))


def sewage_days(stores: Stores, persons: int) -> Figure:
    """Return how long it takes to fill the sewage tank, nothing let out.

    Parameters
    ----------
    stores : Stores
    persons : int
        1 to 1000.

    Returns
    -------
    Figure
        [days]

    References
    ----------
    EPA842-R-07-005, 2008, 8.4 US gal per person and day (memory); vacuum and gravity toilets
    (common practice).
    """
    if stores.sewage is None:
        return _unknown("sewage", "the holding tank's volume")
    # Vacuum toilets make about a quarter of what gravity ones do.
    need, defaults = _daily(stores.sewage_per_head, SEWAGE[stores.toilets], persons)
    return _days("sewage", span(stores.sewage), need, defaults)


def grey_days(stores: Stores, persons: int) -> Figure:
    """Return how long it takes to fill the grey-water tank, nothing let out.

    Parameters
    ----------
    stores : Stores
    persons : int
        1 to 1000.

    Returns
    -------
    Figure
        [days]

    References
    ----------
    EPA842-R-07-005, 2008, 67 US gal per person and day (memory).
    """
    if stores.grey is None:
        return _unknown("grey water", "the holding tank's volume")
    need, defaults = _daily(stores.grey_per_head, GREY, persons)
    return _days("grey water", span(stores.grey), need, defaults)


def waste_days(stores: Stores, persons: int) -> Figure:
    """Return how long it takes to fill the waste room, everything kept on board.

    Parameters
    ----------
    stores : Stores
    persons : int
        1 to 1000.

    Returns
    -------
    Figure
        [days]

    References
    ----------
    EMSA / CE Delft, 2017, rates per person and day (memory); compaction (common practice).
    """
    if stores.waste is None:
        return _unknown("waste", "the volume of the waste room")
    need, defaults = _daily(stores.waste_per_head, WASTE, persons)
    room = span(stores.waste)
    # Nobody saying that there is a compactor leaves the span open to it.
    if stores.compactor is not False:
        compaction = COMPACTION if stores.compactor else MAYBE_COMPACTED
        room, defaults = room * compaction.value, (*defaults, compaction)
    return _days("waste", room, need, defaults)


def food_days(stores: Stores, persons: int, kind: str) -> Figure:
    """Return how long a provision room lasts by the weight of food, which is the most it can.

    Parameters
    ----------
    stores : Stores
    persons : int
        1 to 1000.
    kind : str
        "dry", "chilled" or "frozen".

    Returns
    -------
    Figure
        [days]

    Raises
    ------
    BadInput
        The kind is none of these.

    References
    ----------
    Food per person and loading of rooms (common practice).
    """
    room = getattr(stores, one_of("food", kind, tuple(FOOD)))
    if room is None:
        return _unknown(f"{kind} stores", "the volume of the room")
    default, loading = FOOD[kind]
    need = default.value * _persons(persons)
    figure = _days(f"{kind} stores", span(room) * loading, need, (default, LOADING[kind]))
    # Frozen and dry food keep as long as they last; salad does not.
    if kind != "chilled":
        return figure
    return replace(figure, assumptions=(*figure.assumptions, PRODUCE))


def limits(stores: Stores, persons: int, others: Iterable[Figure] = ()) -> Limits:
    """Return how long everything lasts for a number of persons, and what ends first.

    Parameters
    ----------
    stores : Stores
        Holding tanks are limits unless ``discharge`` is "as permitted"; where that is not said, it
        is listed as a default.
    persons : int
        1 to 1000.
    others : iterable of Figure
        Further limits, such as days of fuel [days].

    Returns
    -------
    Limits

    Raises
    ------
    BadInput
        The number of persons cannot be meant.

    References
    ----------
    Model of our own: the least of all days; each of them names its source.
    """
    holding = (
        sewage_days(stores, persons),
        grey_days(stores, persons),
        waste_days(stores, persons),
    )
    # Without a word about discharge the cautious case is taken, and listed.
    if stores.discharge is None:
        holding = tuple(replace(figure, defaults=(*figure.defaults, KEPT)) for figure in holding)
    # Sewage and grey water then go over the side, while waste must always be kept.
    elif stores.discharge == "as permitted":
        holding = holding[2:]
    figures = (
        *others,
        water_days(stores, persons),
        *(food_days(stores, persons, kind) for kind in FOOD),
        *holding,
    )
    return binding(figures)


def binding(figures: Iterable[Figure]) -> Limits:
    """Return which limit ends first.

    Parameters
    ----------
    figures : iterable of Figure
        [days]

    Returns
    -------
    Limits
        By their points (their low ends where they have none), with those whose span begins before
        that of the first one ends.

    References
    ----------
    Model of our own.
    """
    figures = tuple(figures)
    known = sorted((figure for figure in figures if figure.known), key=_order)
    gaps = tuple(_days_gap(figure) for figure in figures if not figure.known)
    if not known:
        return Limits(figures, None, (), gaps)
    first, *rest = known
    # Whatever may end before the first one surely has cannot be left out of the answer.
    others = tuple(figure for figure in rest if figure.span.low < first.span.high)
    return Limits(figures, first, others, gaps)


def _order(figure: Figure) -> tuple[float, float]:
    return _likely(figure.span), figure.span.low


def _days_gap(figure: Figure) -> Gap:
    return Gap(f"days of {figure.name}", joined([gap.why for gap in figure.gaps], "; "))


def _likely(days: Span) -> float:
    """Return the likely number of days, the low end where there is none."""
    # The careful end stands in for a likely value that nobody can name.
    return days.low if days.point is None else days.point


def _persons(persons: int) -> float:
    return plain("persons", persons, 1, 1000)


def _daily(
    given: float | Span | None, default: Default, persons: int
) -> tuple[Span, tuple[Default, ...]]:
    """The need of all persons [m³/day], of a figure per person [l/day]."""
    per_head, defaults = or_default(given, default)
    # Litres a head and day become cubic metres a day, in which tanks are given.
    return per_head * _persons(persons) / 1000, defaults


def _days(
    name: str, amount: Span, need: Span, defaults: tuple[Default, ...], source: Source | None = None
) -> Figure:
    """Return how long an amount [m³] lasts at a daily need [m³], a year at most."""
    # More stock is more days and more need is fewer, up to the year.
    known = amount.point is not None and need.point is not None
    point = _until_a_year(amount.point, need.point) if known else None
    # The least stock against the greatest need, and the other way round.
    shortest, longest = _until_a_year(amount.low, need.high), _until_a_year(amount.high, need.low)
    return Figure(
        name,
        Span(shortest, point, longest),
        "days",
        "stock / daily need of all persons",
        (YEAR_NOTE,) if longest == YEAR else (),
        defaults,
        (),
        source or (defaults[0].source if defaults else None),
    )


def _until_a_year(stock: float, daily: float) -> float:
    """Return the days that a stock lasts at a daily use, a year at most."""
    # A watermaker that gives more than is used would make the days negative.
    return YEAR if daily <= 0 or stock >= YEAR * daily else stock / daily


def _unknown(name: str, what: str) -> Figure:
    return no_figure(name, "days", (Gap(name, f"{what} is not known"),))
