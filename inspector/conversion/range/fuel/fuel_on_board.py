"""Fuel on board: its mass in the tanks, and what of it can be used.

Tank volumes are corrected to 15 °C with the generalized products table. Nothing here is a bunker
certificate.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import product

from inspector.conversion.core.bounds import (
    BadInput,
    check_ranges,
    one_of,
    or_default,
    within,
)
from inspector.conversion.core.figure import Default, Figure, Gap, rest_on, unique
from inspector.conversion.core.span import Span, span
from inspector.criteria.core.source import Source
from inspector.criteria.tanks.tank_contents import COLDEST, FUELS, WARMEST, factor_15

TABLE_54B = Source.seen(
    "ASTM D1250 / API MPMS 11.1, table 54B, generalized products",
    "1980",
    "volume correction to 15 °C",
)
# What can be burnt in such engines, kg/m³.
LEAST_DENSITY, GREATEST_DENSITY = 770.0, 1010.0
DENSITY = Default(
    "fuel density at 15 °C",
    Span(845.0, 850.0, 855.0),
    "marine gas oil without a bunker note",
    unit="kg/m³",
)
TEMPERATURE = Default(
    "fuel temperature",
    Span(10.0, 20.0, 35.0),
    "tanks from cold water to a warm engine room",
    unit="°C",
)
STRUCTURE = Default(
    "share of a moulded volume not taken by structure", 0.98, "frames, pipes and coils"
)
FILL = Default("fill", Span(0.95, 0.96, 0.98), "room for expansion, no tank above 98 %")
SUCTION = Default(
    "share above the suction",
    Span(0.95, 0.96, 0.98),
    "0.95 for broad shallow tanks to 0.98 for narrow deep ones",
)
BASES = ("contents", "calibrated capacity", "moulded capacity")


@dataclass(frozen=True)
class FuelTank:
    """One fuel tank. None is not known.

    Parameters
    ----------
    name : str
    volume : float or Span
        0 to 20 000 [m³].
    basis : str
        What the volume is: the "contents" as sounded, a "calibrated capacity" from the tank table,
        or a "moulded capacity" from the drawings.
    density : float or Span or None
        770 to 1010 [kg/m³ at 15 °C].
    temperature : float or Span or None
        [°C]
    fill : float or Span or None
        0 to 1 [fraction of the capacity].
    suction : float or Span or None
        0 to 1 [fraction above the suction].

    Raises
    ------
    BadInput
        A value is outside its range.
    """

    name: str
    volume: float | Span
    basis: str
    density: float | Span | None = None
    temperature: float | Span | None = None
    fill: float | Span | None = None
    suction: float | Span | None = None

    def __post_init__(self) -> None:
        within(f"{self.name}: volume", self.volume, 0, 20_000, "m³")
        one_of(f"{self.name}: what the volume is", self.basis, BASES)
        limits = {
            "density": (LEAST_DENSITY, GREATEST_DENSITY, "kg/m³"),
            "temperature": (COLDEST, WARMEST, "°C"),
            "fill": (0, 1, ""),
            "suction": (0, 1, ""),
        }
        check_ranges(self.name, self, limits, spans=True)


def density_at(density: float | Span, temperature: float | Span) -> Span:
    """Return the density of a fuel at a temperature.

    Parameters
    ----------
    density : float or Span
        [kg/m³ at 15 °C]
    temperature : float or Span
        [°C]

    Returns
    -------
    Span
        [kg/m³]

    References
    ----------
    ASTM D1250 / API MPMS 11.1, table 54B, 1980 (seen), see ``tank_contents.factor_15``.
    """
    density, temperature = span(density), span(temperature)
    # The bands of the table meet with small steps: both sides of a step inside count as ends.
    sides = [side for band in FUELS for side in (band.low - 1e-9, band.low)]
    steps = [side for side in sides if density.low < side < density.high]
    densities = (density.low, density.high, *steps)
    ends = [
        found * factor_15(found, degrees)
        for found, degrees in product(densities, (temperature.low, temperature.high))
    ]
    # A point of a product needs a point of both.
    if density.point is None or temperature.point is None:
        return Span(min(ends), None, max(ends))
    point = density.point * factor_15(density.point, temperature.point)
    return Span(min(*ends, point), point, max(*ends, point))


def mass_of(tank: FuelTank) -> Figure:
    """Return the fuel in one tank: what is in it, or what it takes when bunkered.

    Parameters
    ----------
    tank : FuelTank

    Returns
    -------
    Figure
        [t]

    References
    ----------
    ASTM D1250 / API MPMS 11.1, table 54B, 1980 (seen); fill of 95 to 98 % and structure of 2 %
    (common practice).
    """
    density, from_density = or_default(tank.density, DENSITY)
    temperature, from_temperature = or_default(tank.temperature, TEMPERATURE)
    volume, defaults = span(tank.volume), (*from_density, *from_temperature)
    # What was sounded is there; a capacity is first filled, and never to the brim.
    if tank.basis != "contents":
        fill, from_fill = or_default(tank.fill, FILL)
        volume, defaults = volume * fill, (*defaults, *from_fill)
    # A calibrated table has the frames taken off already.
    if tank.basis == "moulded capacity":
        volume, defaults = volume * STRUCTURE.value, (*defaults, STRUCTURE)
    return Figure(
        f"fuel in {tank.name}",
        volume * density_at(density, temperature) / 1000,
        "t",
        "volume × VCF × density at 15 °C",
        (f"{tank.name}: {tank.basis}.",),
        defaults,
        (),
        TABLE_54B,
    )


def usable_fuel(tanks: Iterable[FuelTank]) -> Figure:
    """Return the fuel of all tanks above their suctions, before any reserve.

    Parameters
    ----------
    tanks : iterable of FuelTank

    Returns
    -------
    Figure
        [t]

    Raises
    ------
    BadInput
        There is no tank.

    References
    ----------
    Share above the suction 0.95 to 0.98 (common practice); masses see ``mass_of``.
    """
    tanks = tuple(tanks)
    if not tanks:
        sentence = "Fuel tanks: there is none, so there is no fuel; give one tank at least."
        raise BadInput(sentence, field="fuel tanks", value=())
    total, parts = Span.exact(0.0), []
    for tank in tanks:
        mass = mass_of(tank)
        suction, from_suction = or_default(tank.suction, SUCTION)
        # By mass and after the temperature: what stays below the suction is as warm as the rest.
        total = total + mass.span * suction
        parts.append(replace(mass, defaults=(*mass.defaults, *from_suction)))
    formula = "sum of mass × share above the suction"
    return Figure("usable fuel", total, "t", formula, source=TABLE_54B, **rest_on(*parts))


def tank_gaps(tanks: Iterable[FuelTank]) -> tuple[Gap, ...]:
    """Return what would narrow the spans of tanks.

    Parameters
    ----------
    tanks : iterable of FuelTank

    Returns
    -------
    tuple of Gap
        One for each density and temperature that is not known.

    References
    ----------
    Model of our own.
    """
    pairs = product(tanks, ("density", "temperature"))
    missing = [(tank.name, name) for tank, name in pairs if getattr(tank, name) is None]
    # Listed even where a default stands in: a bunker note narrows the span more than anything else
    # here.
    return unique(_tank_gap(tank, name) for tank, name in missing)


def _tank_gap(tank: str, name: str) -> Gap:
    """Return the gap of a tank without density or temperature."""
    why = f"{name} from the bunker note or the sounding would narrow the mass"
    return Gap(f"{tank}: {name}", why)
