"""The hotel load: the electrical power that the ship needs with way on or at anchor."""

from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import check_ranges, one_of, or_default
from inspector.conversion.core.figure import Default, Figure, Gap
from inspector.conversion.core.span import Span
from inspector.criteria.core.source import Source

HOTEL_SOURCE = Source.seen(
    "Fourth IMO GHG Study",
    "2020",
    "auxiliary power at sea: yacht 130, service 220, offshore 320 kW, "
    "as reproduced in an open model",
)
AT_SEA = Default(
    "hotel load at sea",
    Span(130.0, 220.0, 320.0),
    "no reading of the switchboard over a day",
    unit="kW",
    source=HOTEL_SOURCE,
)
NEW_LOADS = "New loads of the power plant come on top of the hotel load as it was read."
GENERATOR = Default("generator efficiency", Span(0.92, 0.94, 0.96), "usual for such sets")


@dataclass(frozen=True)
class Hotel:
    """The electrical load of the ship, with way on and at anchor.

    Parameters
    ----------
    sea, anchor : float or Span or None
        0 to 20 000 [kW]; None is not known.
    measured_at : str
        "engine" (power of the generator engines) or "switchboard" (electrical: the losses of the
        generators are added).
    added_sea, added_anchor : Span
        What the conversion adds, at the switchboard [kW].

    Raises
    ------
    BadInput
        A value is outside its range, or ``measured_at`` is neither.
    """

    sea: float | Span | None = None
    anchor: float | Span | None = None
    measured_at: str = "switchboard"
    added_sea: Span = Span.exact(0.0)
    added_anchor: Span = Span.exact(0.0)

    def __post_init__(self) -> None:
        loads = dict.fromkeys(("sea", "anchor"), (0, 20_000, "kW"))
        check_ranges("hotel load", self, loads, spans=True)
        one_of("hotel load: measured at", self.measured_at, ("engine", "switchboard"))


def _more(hotel: Hotel) -> Span:
    """Return the greater of what is added at sea and at anchor [kW]."""
    return max(hotel.added_sea, hotel.added_anchor, key=lambda added: added.middle)


def hotel_power(hotel: Hotel, where: str = "sea") -> Figure:
    """Return the power of the generator engines for the hotel load.

    Parameters
    ----------
    hotel : Hotel
    where : str
        "sea" or "anchor". Where the load at anchor is not known, that at sea is taken for it and
        the gap is named.

    Returns
    -------
    Figure
        [kW]

    Raises
    ------
    BadInput
        ``where`` is neither.

    References
    ----------
    Fourth IMO GHG Study, 2020, auxiliary power at sea (seen, as reproduced in an open model), where
    no load is given; efficiency of generators 0.92 to 0.96 (common practice).
    """
    one_of("hotel load: where", where, ("sea", "anchor"))
    # At anchor the load is mostly less, so the load at sea errs on the careful side.
    if where == "anchor" and hotel.anchor is None:
        at_sea = hotel_power(replace(hotel, added_sea=_more(hotel)))
        gap = Gap("hotel load at anchor", "the load at sea is taken for it")
        return replace(at_sea, gaps=(*at_sea.gaps, gap))
    name, given = f"hotel power at {where}", hotel.sea if where == "sea" else hotel.anchor
    load, defaults = or_default(given, AT_SEA)
    added = hotel.added_sea if where == "sea" else hotel.added_anchor
    # What is added is known at the switchboard, and the engines carry the generator's losses too.
    extra, new = Span.exact(0.0), ()
    if added.high:
        extra, new = added / GENERATOR.value, (NEW_LOADS,)
    # The default is power of the engines already.
    if given is None or hotel.measured_at == "engine":
        source = HOTEL_SOURCE if defaults else None
        listed = (*defaults, GENERATOR) if new else defaults
        return Figure(name, load + extra, "kW", "as given", new, listed, source=source)
    # Consumption is by the engine's power, which carries the generator's losses as well.
    power, formula = load / GENERATOR.value + extra, "load / generator efficiency"
    return Figure(name, power, "kW", formula, new, (GENERATOR,))
