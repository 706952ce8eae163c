"""The speed of greatest range, the fuel of a whole voyage, and what the brief leaves of it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import BadInput, check_ranges, plain
from inspector.conversion.core.figure import Figure, Gap, no_figure, rest_on
from inspector.conversion.core.span import Span
from inspector.conversion.range.passages import (
    HOURS,
    Passage,
    available,
    hotel_burn,
    passage,
    propulsion_burn,
)
from inspector.conversion.range.sea_power import Ship, main_load, sea_power
from inspector.values.formatting import show

# The step of the search, refined within by a parabola, kn.
STEP = 0.25


@dataclass(frozen=True)
class BriefBox:
    """What the client asks for; None where it is not said.

    Parameters
    ----------
    speed : float or None
        1 to 60 [kn].
    range : float or None
        1 to 40 000 [nmi].
    endurance : float or None
        0.1 to 1000 [days].
    persons : int or None
        1 to 1000.
    station : float or None
        Of the endurance, spent on station, 0 to 1000 [days].

    Raises
    ------
    BadInput
        A value is outside its range.
    """

    speed: float | None = None
    range: float | None = None
    endurance: float | None = None
    persons: int | None = None
    station: float | None = None

    def __post_init__(self) -> None:
        limits = {
            "speed": (1, 60, "kn"),
            "range": (1, 40_000, "nmi"),
            "endurance": (0.1, 1000, "days"),
            "persons": (1, 1000, ""),
            "station": (0, 1000, "days"),
        }
        check_ranges("brief", self, limits)


@dataclass(frozen=True)
class Economy:
    """The speed of greatest range.

    Parameters
    ----------
    speed : Figure
        [kn], hotel load included.
    passage : Passage or None
        At the point of that speed; None where there is none.
    """

    speed: Figure
    passage: Passage | None


def economical_speed(ship: Ship) -> Economy:
    """Return the speed of least fuel per mile, hotel load included.

    Parameters
    ----------
    ship : Ship

    Returns
    -------
    Economy
        Among the speeds that the curve covers and the engines give. The span reaches from much
        propulsion with little hotel load (slowest) to little with much (fastest).

    References
    ----------
    Model of our own: least of burn over speed on a grid, refined by a parabola.
    """
    hotel = hotel_burn(ship)
    found = [(speed, propulsion_burn(ship, power)) for speed, power in _candidates(ship)]
    if not found:
        gap = Gap("power by speed", "no speed is covered by it that the engines give")
        return Economy(no_figure("speed of greatest range", "kn", (gap,)), None)
    likely = _least(found, lambda drive: drive.span.middle + hotel.span.middle)
    # By how much propulsion may be dearer or cheaper is taken as at that speed: an error that
    # differs from speed to speed would make the least jump to wherever the error is greatest.
    driven = propulsion_burn(ship, sea_power(ship, min(likely, ship.curve.high_speed))).span
    dear, cheap = driven.high / driven.middle, driven.low / driven.middle
    # Dear propulsion and cheap hotel load make her slow, the other way round fast.
    slow = _least(found, lambda drive: dear * drive.span.middle + hotel.span.low)
    fast = _least(found, lambda drive: cheap * drive.span.middle + hotel.span.high)
    span = Span(min(slow, likely, fast), likely, max(slow, likely, fast))
    parts = rest_on(found[len(found) // 2][1], hotel)
    slowest, fastest = found[0][0], found[-1][0]
    # The least lies at the end of what is known, so the true one may be outside.
    if likely in (slowest, fastest):
        end = "lowest" if likely == slowest else "highest"
        note = (
            f"It is the {end} speed at which power is known: "
            "beyond it the range may be greater yet."
        )
        parts["assumptions"] += (note,)
    best = Figure("speed of greatest range", span, "kn", "least of burn / speed", **parts)
    return Economy(best, passage(ship, likely))


def _candidates(ship: Ship) -> list[tuple[float, Figure]]:
    """The speeds of the grid that the engines may give, with their power at sea."""
    low, high = ship.curve.low_speed, ship.curve.high_speed
    steps = max(1, round((high - low) / STEP))
    # A curve may begin below half a knot, where fuel for each mile has no meaning.
    speeds = [max(low + (high - low) * step / steps, 0.5) for step in range(steps + 1)]
    powers = [(speed, sea_power(ship, min(speed, high))) for speed in speeds]
    return [
        (speed, power)
        for speed, power in powers
        if power.span is not None and main_load(ship, power.span).low <= 1
    ]


def _least(found: list[tuple[float, Figure]], burn: Callable[[Figure], float]) -> float:
    """The speed of least burn per mile, by a parabola through the least of the grid."""
    grid = [(speed, burn(drive) / speed) for speed, drive in found]
    at = min(range(len(grid)), key=lambda index: grid[index][1])
    # At the end there is no neighbour to lay a parabola through.
    if at in (0, len(grid) - 1):
        return grid[at][0]
    (x0, y0), (x1, y1), (x2, y2) = grid[at - 1 : at + 2]
    before, after = (x1 - x0) * (y1 - y2), (x1 - x2) * (y1 - y0)
    # Three points on a line have no least between them.
    if before == after:
        return x1
    # The least of the parabola through three neighbours of the grid.
    shift = ((x1 - x0) * before - (x1 - x2) * after) / (2 * (before - after))
    return min(max(x1 - shift, x0), x2)


def fuel_for(legs: Iterable[tuple[str, float, Figure]]) -> Figure:
    """Return the fuel of a voyage of several legs.

    Parameters
    ----------
    legs : iterable of (str, float, Figure)
        The name of each leg, its length 0 to 1000 [days] and what it burns [t/day].

    Returns
    -------
    Figure
        [t]

    Raises
    ------
    BadInput
        There is no leg, or a leg is shorter than no days.

    References
    ----------
    Days times burn per day (common practice).
    """
    legs = tuple(legs)
    if not legs:
        problem = "Mission: it has no leg; give one leg with its days at least."
        raise BadInput(problem, field="mission", value=())
    total = Span.exact(0.0)
    for name, days, burn in legs:
        total = total + burn.span * plain(f"{name}: days", days, 0, 1000, "days")
    formula = " + ".join(f"{show(round(days, 1), 'days')} {name}" for name, days, _ in legs)
    parts = rest_on(*(burn for _, _, burn in legs))
    return Figure("fuel for the mission", total, "t", formula, **parts)


def station_burn(ship: Ship) -> Figure:
    """Return what is burnt on station.

    Parameters
    ----------
    ship : Ship

    Returns
    -------
    Figure
        [t/day]: as typed, else the hotel load at sea alone, which the gap names.

    References
    ----------
    As typed from the log; consumption see ``engine_consumption``.
    """
    if ship.station_fuel is not None:
        return Figure("burn on station", Span.exact(ship.station_fuel), "t/day", "as given")
    by_sets = hotel_burn(replace(ship, shaft_generator=None))
    why = "only the hotel load is counted, and thrusters that hold her burn more"
    return replace(by_sets, gaps=(*by_sets.gaps, Gap("fuel a day on station", why)))


def range_beside_station(ship: Ship, at: Passage, days: float) -> Figure:
    """Return how far she goes on the fuel that days on station leave.

    Parameters
    ----------
    ship : Ship
    at : Passage
        At her passage speed.
    days : float
        On station, 0 to 1000 [days].

    Returns
    -------
    Figure
        [nmi]; nothing where the days on station take all.

    References
    ----------
    (usable fuel × (1 − reserve) − days × burn on station) / fuel per mile (common practice).
    """
    name, fuel = "range beside the days on station", available(ship)
    if at.per_mile.span is None or fuel.span is None:
        return no_figure(name, "nmi", (*at.per_mile.gaps, *fuel.gaps))
    burn = station_burn(ship)
    left = fuel.span - burn.span * plain("days on station", days, 0, 1000, "days")
    reach = left.apply(lambda tonnes: max(tonnes, 0.0)) * 1000 / at.per_mile.span
    formula = "(usable fuel × (1 − reserve) − days × burn on station) / fuel per mile"
    return Figure(name, reach, "nmi", formula, **rest_on(at.per_mile, fuel, burn))


def fuel_margin(ship: Ship, at: Passage, brief: BriefBox) -> Figure:
    """Return the fuel left before the reserve after the brief's range and days.

    Parameters
    ----------
    ship : Ship
    at : Passage
        The range is covered at its speed.
    brief : BriefBox
        Its days on station are counted, and the rest of its endurance is spent at anchor.

    Returns
    -------
    Figure
        [t]; negative where fuel is missing.

    Raises
    ------
    BadInput
        The brief names no range.

    References
    ----------
    Model of our own.
    """
    if brief.range is None:
        problem = "Brief: range is not given, so no fuel for it can be calculated."
        raise BadInput(problem, field="brief: range", value=None)
    fuel = available(ship)
    if at.burn.span is None or fuel.span is None:
        return no_figure("fuel left", "t", (*at.burn.gaps, *fuel.gaps))
    # Whatever of the endurance passage and station do not take is spent at anchor.
    days = brief.range / at.speed / HOURS
    legs = [("under way", days, at.burn)]
    if brief.station:
        legs.append(("on station", brief.station, station_burn(ship)))
        days += brief.station
    # A brief with fewer days than these asks for nothing more at anchor.
    if brief.endurance is not None and brief.endurance > days:
        legs.append(("at anchor", brief.endurance - days, hotel_burn(ship, "anchor")))
    need = fuel_for(legs)
    return Figure(
        "fuel left",
        fuel.span - need.span,
        "t",
        f"usable fuel × (1 − reserve) − ({need.formula_text})",
        **rest_on(need, fuel),
    )
