"""Fuel: mass in the tanks, what of it can be used, and what engines and hotel burn.

Tank volumes are corrected to 15 °C with the generalized products table; consumption comes from the engine's own points or
from a published curve, listed as a default. Nothing here is a bunker certificate.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.conversion.inputs import PRACTICE, BadInput, one_of, or_default, within
from inspector.conversion.shapes import Default, Figure, Gap, Span, rest_on, span, unique
from inspector.criteria.source import Source
from inspector.criteria.tank_contents import COLDEST, FUELS, WARMEST, factor_15

TABLE_54B = Source("ASTM D1250 / API MPMS 11.1, table 54B, generalized products", "1980", "volume correction to 15 °C", "seen")
LEAST_DENSITY, GREATEST_DENSITY = 770.0, 1010.0  # kg/m³, what can be burnt in such engines
DENSITY = Default("fuel density at 15 °C", Span(845.0, 850.0, 855.0), "kg/m³", "marine gas oil without a bunker note", PRACTICE)
TEMPERATURE = Default("fuel temperature", Span(10.0, 20.0, 35.0), "°C", "tanks from cold water to a warm engine room", PRACTICE)
STRUCTURE = Default("share of a moulded volume not taken by structure", 0.98, "", "frames, pipes and coils", PRACTICE)
FILL = Default("fill", Span(0.95, 0.96, 0.98), "", "room for expansion, no tank above 98 %", PRACTICE)
SUCTION = Default("share above the suction", Span(0.95, 0.96, 0.98), "", "0.95 for broad shallow tanks to 0.98 for narrow deep ones", PRACTICE)
BASES = ("contents", "calibrated capacity", "moulded capacity")


@dataclass(frozen=True)
class FuelTank:
    """One fuel tank. None is not known.

    volume [m³] (number or span), and what it is (``basis``): the "contents" as sounded, a "calibrated capacity" from the
    tank table, or a "moulded capacity" from the drawings; density [kg/m³ at 15 °C]; temperature [°C]; fill and suction
    (shares of a capacity, and above the suction).
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
        limits = {"density": (LEAST_DENSITY, GREATEST_DENSITY, "kg/m³"), "temperature": (COLDEST, WARMEST, "°C"), "fill": (0, 1, ""), "suction": (0, 1, "")}
        for field, (low, high, unit) in limits.items():
            if getattr(self, field) is not None:
                within(f"{self.name}: {field}", getattr(self, field), low, high, unit)


def density_at(density: float | Span, temperature: float | Span) -> Span:
    """Density [kg/m³] at a temperature [°C] of a fuel of a density [kg/m³ at 15 °C]; both may be spans."""
    density, temperature = span(density), span(temperature)
    # the bands of the table meet with small steps, so that the sides of a step inside the span count as ends
    edges = [side for band in FUELS for side in (band.low - 1e-9, band.low) if density.low < side < density.high]
    ends = [rho * factor_15(rho, t) for rho in (density.low, density.high, *edges) for t in (temperature.low, temperature.high)]
    if density.point is None or temperature.point is None:
        return Span(min(ends), None, max(ends))
    point = density.point * factor_15(density.point, temperature.point)
    return Span(min(*ends, point), point, max(*ends, point))


def mass_of(tank: FuelTank) -> Figure:
    """The fuel in one tank [t]: all that is in it, or that it takes when bunkered."""
    density, from_density = or_default(tank.density, DENSITY)
    temperature, from_temperature = or_default(tank.temperature, TEMPERATURE)
    volume, defaults = span(tank.volume), (*from_density, *from_temperature)
    if tank.basis != "contents":
        fill, from_fill = or_default(tank.fill, FILL)
        volume, defaults = volume * fill, (*defaults, *from_fill)
    if tank.basis == "moulded capacity":
        volume, defaults = volume * STRUCTURE.value, (*defaults, STRUCTURE)
    mass = volume * density_at(density, temperature) / 1000
    return Figure(f"fuel in {tank.name}", mass, "t", "volume x VCF x density at 15 °C", (f"{tank.name}: {tank.basis}.",), defaults, (), TABLE_54B)


def usable_fuel(tanks: Iterable[FuelTank]) -> Figure:
    """The fuel of all tanks above their suctions [t], before any reserve.

    Errors
    ------
    BadInput : there is no tank.
    """
    tanks = tuple(tanks)
    if not tanks:
        raise BadInput("Fuel tanks: there is none, so no fuel can be told; give one tank at least.", field="fuel tanks", value=())
    total, parts = Span.exact(0.0), []
    for tank in tanks:
        mass = mass_of(tank)
        suction, from_suction = or_default(tank.suction, SUCTION)
        total = total + mass.span * suction
        parts.append(Figure(tank.name, None, "t", "", mass.assumptions, (*mass.defaults, *from_suction)))
    return Figure("usable fuel", total, "t", "sum of mass x share above the suction", source=TABLE_54B, **rest_on(*parts))


def volume_of(mass: Span, density: float | Span | None = None) -> Figure:
    """The volume [m³ at 15 °C] of a mass of fuel [t]."""
    density, defaults = or_default(density, DENSITY)
    volume = mass * 1000 / within("fuel density", density, LEAST_DENSITY, GREATEST_DENSITY, "kg/m³")
    return Figure("volume of fuel", volume, "m³", "mass / density at 15 °C", defaults=defaults)


def tank_gaps(tanks: Iterable[FuelTank]) -> tuple[Gap, ...]:
    """What would close the spans of these tanks: the tanks without a density or temperature of their own."""
    missing = [(tank.name, field) for tank in tanks for field in ("density", "temperature") if getattr(tank, field) is None]
    return unique(Gap(f"{name}: {field}", f"{field} from the bunker note or the sounding would narrow the mass") for name, field in missing)
