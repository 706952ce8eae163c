"""Stores and holding tanks of a vessel, and the usual needs per head."""

from dataclasses import dataclass

from inspector.conversion.core.bounds import check_ranges, one_of
from inspector.conversion.core.figure import PRACTICE, Default
from inspector.conversion.core.span import Span
from inspector.criteria.core.source import Source

WATER_SOURCE = Source.recalled(
    "ISO 15748-1, potable water supply on ships, as quoted in port-health guides",
    "consumption per head",
    edition="2002",
)
EPA = Source.recalled(
    "EPA Cruise Ship Discharge Assessment Report, EPA842-R-07-005",
    "sewage 8.4 and grey water 67 US gal per person and day",
    edition="2008",
)
EMSA = Source.recalled(
    "EMSA / CE Delft, The management of ship-generated waste on board ships",
    "rates per person and day",
    edition="2017",
)
TOILETS = ("vacuum", "gravity")
DISCHARGES = ("nothing", "as permitted")
_PER_HEAD = "no metered figure of her own"
# Kind of toilets (None where nobody said) -> need of a person.
WATER = {
    toilets: Default("fresh water per person", need, _PER_HEAD, unit="l/day", source=source)
    for toilets, need, source in (
        ("vacuum", Span(100.0, 175.0, 225.0), WATER_SOURCE),
        ("gravity", Span(100.0, 220.0, 270.0), WATER_SOURCE),
        (None, Span(100.0, 200.0, 300.0), PRACTICE),
    )
}
SEWAGE = {
    toilets: Default("sewage per person", need, why, unit="l/day", source=source)
    for toilets, need, why, source in (
        ("vacuum", Span(15.0, 25.0, 37.0), "vacuum toilets", PRACTICE),
        ("gravity", Span(70.0, 95.0, 120.0), "gravity toilets of older workboats", PRACTICE),
        (None, Span(10.0, 31.8, 120.0), "toilets not known", EPA),
    )
}
GREY = Default(
    "grey water per person", Span(150.0, 188.0, 254.0), _PER_HEAD, unit="l/day", source=EPA
)
WASTE = Default(
    "waste per person, uncompacted",
    Span(3.0, 7.7, 31.0),
    "plastics, food and domestic waste together, all kept on board",
    unit="l/day",
    source=EMSA,
)
COMPACTION = Default("compaction", Span(3.0, 4.0, 5.0), "usual for a galley compactor")
MAYBE_COMPACTED = Default(
    "compaction", Span(1.0, 1.0, 5.0), "whether a compactor is fitted is not known"
)
KEPT = Default(
    "discharge",
    "nothing",
    "holding tanks must carry all of it, as in areas where no discharge is allowed",
)
AVAILABILITY = Default(
    "availability of the watermaker", Span(0.75, 0.83, 0.95), "20 hours a day and time for cleaning"
)
# Kind -> food per person and day, kg per m³ of room.
FOOD = {
    kind: (Default(f"{kind} food per person", need, _PER_HEAD, unit="kg/day"), loading)
    for kind, need, loading in (
        ("frozen", Span(0.9, 1.0, 1.1), 250.0),
        ("chilled", Span(1.0, 1.2, 1.3), 200.0),
        ("dry", Span(0.8, 0.9, 1.0), 300.0),
    )
}
LOADING = {
    kind: Default(f"loading of the {kind} store", loading, "per m³ of room", unit="kg/m³")
    for kind, (_, loading) in FOOD.items()
}


@dataclass(frozen=True)
class Stores:
    """Capacities. None is not known, and never taken as nothing.

    Parameters
    ----------
    water, sewage, grey : float or Span or None
        Tanks [m³].
    watermaker : float or Span or None
        Rated output [m³/day].
    dry, chilled, frozen : float or Span or None
        Rooms, gross [m³].
    waste : float or Span or None
        [m³]
    toilets : str or None
        "vacuum" or "gravity".
    discharge : str or None
        "nothing" or "as permitted".
    compactor : bool or None
    water_per_head, sewage_per_head, grey_per_head, waste_per_head : float or Span or None
        As metered, per person [l/day].

    Raises
    ------
    BadInput
        A value is outside its range, or a word is none of the choices.
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
        rooms = ("water", "sewage", "grey", "dry", "chilled", "frozen", "waste")
        needs = ("water_per_head", "sewage_per_head", "grey_per_head", "waste_per_head")
        ranges = {
            **dict.fromkeys(rooms, (0, 20_000, "m³")),
            "watermaker": (0, 20_000, "m³/day"),
            **dict.fromkeys(needs, (0.5, 1500, "")),
        }
        check_ranges("stores", self, ranges, spans=True)
        if self.toilets is not None:
            one_of("stores: toilets", self.toilets, TOILETS)
        if self.discharge is not None:
            one_of("stores: discharge", self.discharge, DISCHARGES)
