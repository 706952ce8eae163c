"""What engines burn, from their own points or a published curve, and the hotel load.

Loads are shares of rated power (0.85 is 85 %); powers in kW at the engine's coupling; rates in
g/kWh.
"""

from collections.abc import Callable, Iterable
from dataclasses import replace
from itertools import pairwise

from inspector.conversion.core.bounds import within
from inspector.conversion.core.figure import Default, Figure, rest_on
from inspector.conversion.core.span import Span, span
from inspector.conversion.range.engines import HIGHEST_LOAD, LOWEST_LOAD, ConsumptionPoint, Engine
from inspector.criteria.core.source import Source
from inspector.values.formatting import show

GHG_STUDY = Source.seen(
    "Fourth IMO GHG Study", "2020", "table 19 and load correction, as reproduced in an open model"
)
TOLERANCE_SOURCE = Source.recalled(
    "ISO 3046-1", "tolerance of 5 % on a declared consumption", edition="edition not read"
)
# The load at which the published correction is least.
LEAST_BURNING = 0.710 / (2 * 0.455)
LOW_LOAD = 0.30
# Speed class -> g/kWh for engines built before 1984, 1984 to 2000, after 2000.
BASE = {
    "medium speed": (200.0, 185.0, 175.0),
    "high speed": (210.0, 190.0, 185.0),
    "auxiliary": (210.0, 190.0, 185.0),
}
# Above it an engine is a high-speed one, rpm.
HIGH_SPEED = 900.0
USED = Default(
    "used engine over the published rate",
    Span(1.0, 1.05, 1.15),
    "5 % tolerance and up to 10 % for age",
)
DECLARED = Default(
    "measured over declared consumption",
    Span(1.0, 1.0, 1.05),
    "a declared consumption carries a tolerance of 5 %",
    source=TOLERANCE_SOURCE,
)
SHAPE = Default(
    "shape of the consumption curve",
    "0.455 L² − 0.710 L + 1.280",
    "beyond her own points the published shape is laid through the nearest",
    source=GHG_STUDY,
)


def load_factor(load: float) -> float:
    """Return the rate at a load over the base rate: 0.455 L² − 0.710 L + 1.280.

    Parameters
    ----------
    load : float
        L [fraction of rated power].

    Returns
    -------
    float

    References
    ----------
    Fourth IMO GHG Study, 2020, load correction (seen, as reproduced in an open model).
    """
    return 0.455 * load**2 - 0.710 * load + 1.280


def base_rate(kind: str, rpm: float | None, built: int | None) -> Default:
    """Return the published base rate of an engine, as a default.

    Parameters
    ----------
    kind : str
        "main" or "auxiliary".
    rpm : float or None
        Rated speed [rpm].
    built : int or None
        Year.

    Returns
    -------
    Default
        [g/kWh]; a span over all classes that the engine may belong to.

    References
    ----------
    Fourth IMO GHG Study, 2020, table 19 (seen, as reproduced in an open model).
    """
    classes, ages = _classes(kind, rpm), _ages(built)
    # What is not known of the engine widens the span instead of being guessed.
    rates = sorted(BASE[name][age] for name in classes for age in ages)
    year = "year not known" if built is None else f"built {built}"
    why = f"{' or '.join(classes)}, {year}: no consumption of her own was given"
    found = Span(rates[0], rates[len(rates) // 2], rates[-1])
    return Default("base consumption", found, why, unit="g/kWh", source=GHG_STUDY)


def _classes(kind: str, rpm: float | None) -> tuple[str, ...]:
    """The speed classes that an engine may belong to."""
    if kind == "auxiliary":
        return ("auxiliary",)
    if rpm is None:
        return ("medium speed", "high speed")
    return ("medium speed",) if rpm <= HIGH_SPEED else ("high speed",)


def _ages(built: int | None) -> tuple[int, ...]:
    """The columns of the table that an engine may belong to."""
    if built is None:
        return (0, 1, 2)
    if built < 1984:
        return (0,)
    # The years are those of the table's columns.
    return (1,) if built <= 2000 else (2,)


def rate(engine: Engine, load: float | Span) -> Figure:
    """Return the specific consumption of an engine at a load.

    Parameters
    ----------
    engine : Engine
    load : float or Span
        0.05 to 1.1 [fraction of rated power].

    Returns
    -------
    Figure
        [g/kWh]

    Raises
    ------
    BadInput
        The load is outside its range.

    References
    ----------
    The engine's own points; without them the Fourth IMO GHG Study, 2020 (seen), with 5 % tolerance
    (ISO 3046-1, memory) and up to 10 % for age (common practice).
    """
    load = within(f"{engine.name}: load", load, LOWEST_LOAD, HIGHEST_LOAD)
    low_load = ()
    if load.low < LOW_LOAD:
        name = f"{engine.name} may run below {show(100 * LOW_LOAD, '%')} load"
        low_load = (f"{name}, where deposits form and rates are uncertain.",)
    found = _rate_by_points(engine, load) if engine.points else _published_rate(engine, load)
    return replace(found, assumptions=low_load)


def _published_rate(engine: Engine, load: Span) -> Figure:
    """Return the rate by the published base and curve, widened for a used engine."""
    default = base_rate(engine.kind, engine.rpm, engine.built)
    # The study corrects no auxiliary for load.
    factor = Span.exact(1.0)
    if engine.kind != "auxiliary":
        factor = _over(load_factor, load, (LEAST_BURNING,))
    return Figure(
        f"consumption of {engine.name}",
        default.value * factor * USED.value,
        "g/kWh",
        "base × (0.455 L² − 0.710 L + 1.280) × used engine",
        defaults=(default, USED),
        source=GHG_STUDY,
    )


def _rate_by_points(engine: Engine, load: Span) -> Figure:
    """Return the rate between the engine's own points."""
    points = sorted(engine.points, key=lambda point: point.load)
    knots = (LEAST_BURNING, *(point.load for point in points))
    found = _over(lambda share: _between(points, share), load, knots)
    # Only then is the published shape used, and listed.
    beyond = load.low < points[0].load or load.high > points[-1].load
    declared = not all(point.measured for point in points)
    return Figure(
        f"consumption of {engine.name}",
        found * (DECLARED.value if declared else 1.0),
        "g/kWh",
        "between the engine's own points",
        defaults=(*((SHAPE,) if beyond else ()), *((DECLARED,) if declared else ())),
    )


def _between(points: list[ConsumptionPoint], load: float) -> float:
    """The rate at a load: straight between two points, and by the published shape beyond them."""
    for lower, upper in pairwise(points):
        if lower.load <= load <= upper.load:
            share = (load - lower.load) / (upper.load - lower.load)
            return lower.rate + (upper.rate - lower.rate) * share
    nearest = points[0] if load < points[0].load else points[-1]
    return nearest.rate * load_factor(load) / load_factor(nearest.load)


def _over(function: Callable[[float], float], load: Span, knots: Iterable[float]) -> Span:
    """The span of a function that only rises or only falls between its knots."""
    point = None if load.point is None else function(load.point)
    # The curve turns at its knots, so ends alone would miss the least consumption.
    inside = [knot for knot in knots if load.low < knot < load.high]
    values = [function(share) for share in (load.low, load.high, *inside)]
    values += [] if point is None else [point]
    return Span(min(values), point, max(values))


def burn_per_day(parts: Iterable[tuple[Figure, Figure]]) -> Figure:
    """Return the fuel burnt: 24 h × sum of power × rate.

    Parameters
    ----------
    parts : iterable of (Figure, Figure)
        Pairs of power [kW] and rate [g/kWh].

    Returns
    -------
    Figure
        [t/day]

    References
    ----------
    Power times specific consumption (common practice).
    """
    parts = tuple(parts)
    total = span(0.0)
    for power, specific in parts:
        total = total + power.span * specific.span
    known = rest_on(*(figure for pair in parts for figure in pair))
    formula = "24 h × sum of power × rate"
    return Figure("burn per day", total * 24 / 1e6, "t/day", formula, **known)
