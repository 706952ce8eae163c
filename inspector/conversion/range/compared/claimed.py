"""What the sales papers claim of speed, fuel and tanks, beside what was found."""

from collections.abc import Iterator, Sequence

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import FigureTable
from inspector.conversion.core.claims import CLAIMS, beside_claim, claims_table
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.ship_particulars import TANKS
from inspector.conversion.core.span import Span
from inspector.conversion.core.tank_rows import tanks_once
from inspector.conversion.range.passages import passage
from inspector.conversion.range.sea_power import Ship, main_load, sea_power
from inspector.values.quantity import Cell

# A service speed is mostly meant at such a load of the main engines (common practice, no source).
SERVICE_LOADS = (0.80, 0.85, 0.90)
STEP = 0.05  # kn


def service_speed(ship: Ship) -> Span | None:
    """Return the speed at the usual load of a service speed.

    Parameters
    ----------
    ship : Ship

    Returns
    -------
    Span or None
        [kn], at 80, 85 and 90 % by the likely power; None where power is not known so far.

    References
    ----------
    80 to 90 % of the rated power at sea (common practice, no source).
    """
    low, top = ship.curve.low_speed, ship.curve.high_speed
    loads = []
    for step in range(int((top - low) / STEP) + 1):
        speed = low + step * STEP
        power = sea_power(ship, speed).span if speed > 0 else None
        if power is not None:
            loads.append((speed, main_load(ship, power).middle))
    found = []
    for share in SERVICE_LOADS:
        reached = [speed for speed, load in loads if load <= share]
        # At the end of what is known she is still below that load: the speed is beyond it.
        if not reached or reached[-1] >= loads[-1][0]:
            return None
        found.append(reached[-1])
    return Span(*found)


def claims_of_range(case: Case, ship: Ship | None) -> FigureTable | None:
    """Return the claims that range can be held against.

    Parameters
    ----------
    case : Case
    ship : Ship or None
        None where power or engines are not known.

    Returns
    -------
    FigureTable or None
        None where nothing is claimed.

    References
    ----------
    Each figure as in this chapter.
    """
    return claims_table(_rows(case.one(CLAIMS), tanks_once(case.rows(TANKS))[0], ship))


def _rows(
    claims: Row, tanks: Sequence[Row], ship: Ship | None
) -> Iterator[tuple[Cell, Cell, Cell, Cell]]:
    """Yield each claim with what was found."""
    speed = None if ship is None else service_speed(ship)
    yield from beside_claim(claims, "service_speed", speed, "kn")
    claimed = claims.number("service_speed")
    burn = None if ship is None or claimed is None else passage(ship, claimed).burn.span
    yield from beside_claim(claims, "fuel_a_day", burn, "t/day")
    for name, contents in (("fuel", "fuel"), ("fresh_water", "fresh water")):
        among = [tank.number("capacity") for tank in tanks if tank.text("kind") == contents]
        yield from beside_claim(claims, name, Span.exact(sum(among)) if among else None, "m³")
