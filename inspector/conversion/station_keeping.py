"""Wind and current on a hull that keeps station, thrust by kind of thruster, and how the force falls to bow and stern. A screen, not a capability plot.

Static balance only: no sea, no dynamics, no thruster-hull maps; waves stand in as a share on top. Forces in kN, speeds
in m/s, lengths in m from midship, forward positive.
"""

from dataclasses import dataclass

from inspector.conversion.inputs import PRACTICE, BadInput, or_default, plain, within
from inspector.conversion.plant import Thruster
from inspector.conversion.shapes import Default, Figure, Span
from inspector.criteria.source import Source

AIR, WATER = 1.225, 1025.0  # kg/m³
FASTEST = 100.0  # m/s, where the search for the wind ends
SCREEN = Source(
    "Static balance of wind and current, by plain mechanics", "no edition", "0.5 x density x coefficient x area x speed²", "common practice"
)
LAW = Source(
    "Thrust at zero speed by power and diameter, station-keeping standards",
    "not read",
    "T = K (D P)^2/3: K 800 open, 900 tunnel, 1200 in nozzle",
    "memory",
)
PER_KILOWATT = {"tunnel": 0.11, "azimuth in nozzle": 0.16, "propeller in nozzle": 0.15, "open propeller": 0.13}  # kN/kW
BY_DIAMETER = {"tunnel": 900.0, "azimuth in nozzle": 1200.0, "propeller in nozzle": 1200.0, "open propeller": 800.0}  # N/(m kW)^(2/3)
HULL_LOSS = 0.85  # of the law's thrust, for hull, inflow and interaction
FLAT = {
    kind: Default(f"thrust per kW, {kind}", rate, "", f"{rate} kN for each kW where thrust was not measured", PRACTICE)
    for kind, rate in PER_KILOWATT.items()
}
LAWS = {
    kind: Default(
        f"thrust by power and diameter, {kind}", f"{factor:g} N/(m kW)^(2/3) x {HULL_LOSS}", "", "0.85 for hull, inflow and interaction", LAW
    )
    for kind, factor in BY_DIAMETER.items()
}
WIND_BEAM = Default("wind coefficient on the beam", Span(0.8, 0.9, 1.0), "", "usual for such a screen", PRACTICE)
WIND_HEAD = Default("wind coefficient from ahead", Span(0.6, 0.7, 0.8), "", "usual for such a screen", PRACTICE)
CURRENT_BEAM = Default("current coefficient on the beam", Span(0.6, 0.7, 1.0), "", "usual for such a screen", PRACTICE)
CURRENT_HEAD = Default("current coefficient from ahead", Span(0.05, 0.10, 0.15), "", "usual for such a screen", PRACTICE)
CURRENT = Default("current", Span.exact(1.0), "kn", "what such a screen mostly takes where no place was named", PRACTICE)
WAVES = Default("waves, on top of wind and current", 1.25, "", "25 % of their sum; waves are not reckoned", PRACTICE)
WIND_CENTRE = Default("centre of the side wind area, forward of midship", 0.05, "", "share of the length: house forward", PRACTICE)
DRIVE = Default("efficiency of a thruster's electric drive", 0.92, "", "motor and drive together", PRACTICE)


@dataclass(frozen=True)
class Force:
    """Wind and current from one side: wind [kN per (m/s)²], current [kN], where they act [m], and what waves add (1.25 is a quarter)."""

    wind: float
    current: float
    x_wind: float = 0.0
    x_current: float = 0.0
    waves: float = 1.25

    def total(self, speed: float) -> float:
        """The whole force [kN] at a wind [m/s]."""
        return self.waves * (self.wind * speed**2 + self.current)

    def shares(self, speed: float, x_bow: float, x_stern: float) -> tuple[float, float]:
        """What bow and stern must give [kN] so that neither force nor moment is left.

        Wind and current are shared by their own centres; where one lies beyond a group, the sizes are added: never less than needed.

        Errors
        ------
        BadInput : the bow group does not stand forward of the stern group.
        """
        if x_bow <= x_stern:
            raise BadInput(
                f"Thrusters: the bow group at {x_bow:g} m must stand forward of the stern group at {x_stern:g} m.",
                field="thrusters: position",
                value=x_bow,
            )
        parts = ((self.wind * speed**2, self.x_wind), (self.current, self.x_current))
        bow = sum(force * abs(x - x_stern) for force, x in parts) / (x_bow - x_stern)
        stern = sum(force * abs(x_bow - x) for force, x in parts) / (x_bow - x_stern)
        return self.waves * bow, self.waves * stern


@dataclass(frozen=True)
class Exposure:
    """What wind and current find. lateral, frontal: areas [m²]; length, draught [m]; x_wind, x_current [m]; current [m/s]; coefficients as spans.

    None is not known: coefficients, waves, x_wind and current then take listed defaults; a missing frontal area leaves the head untold.
    """

    length: float
    draught: float
    lateral: float
    frontal: float | None = None
    breadth: float | None = None
    x_wind: float | None = None
    x_current: float = 0.0
    current: float | None = None
    wind_beam: float | None = None
    wind_head: float | None = None
    current_beam: float | None = None
    current_head: float | None = None
    waves: float | None = None

    def __post_init__(self) -> None:
        limits = {
            "length": (5, 400, "m"),
            "draught": (0.5, 30, "m"),
            "lateral": (1, 20_000, "m²"),
            "frontal": (1, 5000, "m²"),
            "breadth": (2, 80, "m"),
            "x_wind": (-200, 200, "m"),
            "x_current": (-200, 200, "m"),
            "current": (0, 6, "m/s"),
            "waves": (1, 2, ""),
            **dict.fromkeys(("wind_beam", "wind_head", "current_beam", "current_head"), (0.01, 3, "")),
        }
        for name, (low, high, unit) in limits.items():
            if getattr(self, name) is not None:
                plain(f"exposure: {name.replace('_', ' ')}", getattr(self, name), low, high, unit)


def wind_force(coefficient: float, area: float, speed: float) -> float:
    """Wind force [kN] on an area [m²] at a speed [m/s]."""
    return (
        0.5
        * AIR
        * plain("wind coefficient", coefficient, 0, 3)
        * plain("wind area", area, 0, 20_000, "m²")
        * plain("wind", speed, 0, 150, "m/s") ** 2
        / 1000
    )


def current_force(coefficient: float, area: float, speed: float) -> float:
    """Current force [kN] on an area under water [m²] at a speed [m/s]."""
    return (
        0.5
        * WATER
        * plain("current coefficient", coefficient, 0, 3)
        * plain("area under water", area, 0, 20_000, "m²")
        * plain("current", speed, 0, 10, "m/s") ** 2
        / 1000
    )


def beam(exposure: Exposure) -> tuple[tuple[Force, Force, Force], tuple[Default, ...]]:
    """The least, likely and greatest force on the beam, and the defaults that they rest on."""
    given = ((exposure.wind_beam, WIND_BEAM), (exposure.current_beam, CURRENT_BEAM))
    centre, told = (exposure.x_wind, ()) if exposure.x_wind is not None else (WIND_CENTRE.value * exposure.length, (WIND_CENTRE,))
    forces, defaults = _forces(exposure, given, exposure.lateral, exposure.length * exposure.draught, (centre, exposure.x_current))
    return forces, (*defaults, *told)


def head(exposure: Exposure) -> tuple[tuple[Force, Force, Force], tuple[Default, ...]] | None:
    """The same from ahead; None where the frontal area or the breadth is not known."""
    if exposure.frontal is None or exposure.breadth is None:
        return None
    given = ((exposure.wind_head, WIND_HEAD), (exposure.current_head, CURRENT_HEAD))
    return _forces(exposure, given, exposure.frontal, exposure.breadth * exposure.draught, (0.0, 0.0))


def _forces(
    exposure: Exposure, given, above: float, below: float, centres: tuple[float, float]
) -> tuple[tuple[Force, Force, Force], tuple[Default, ...]]:
    (wind, from_wind), (water, from_water) = (or_default(value, default) for value, default in given)
    waves, from_waves = or_default(exposure.waves, WAVES)
    speed, from_speed = (exposure.current, ()) if exposure.current is not None else (CURRENT.value.point * 1852 / 3600, (CURRENT,))
    made = tuple(
        Force(wind_force(getattr(wind, end), above, 1.0), current_force(getattr(water, end), below, speed), *centres, waves.middle)
        for end in ("low", "point", "high")
    )
    return made, (*from_wind, *from_water, *from_waves, *from_speed)


def by_diameter(kind: str, power: float, diameter: float) -> float:
    """Nominal thrust [kN] by K (D P)^(2/3): power [kW, shaft], diameter [m]; before any loss.

    Examples
    --------
    >>> round(by_diameter("tunnel", 500, 1.6), 2), round(by_diameter("azimuth in nozzle", 1000, 2.2), 2)
    (77.56, 202.98)
    """
    return BY_DIAMETER[kind] * (diameter * power) ** (2 / 3) / 1000


def thrust_of(unit: Thruster, sideways: bool) -> Figure:
    """The full thrust of a unit [kN], across or along: measured where it was, else by kW alone, and by diameter too where that is known.

    A propeller with its rudder pushes sideways only as far as ``side`` says.
    """
    name = f"thrust of {unit.name}"
    if sideways and unit.acts == "along":
        return Figure(name, Span.exact(unit.side or 0.0), "kN", "as typed for propeller with rudder")
    if unit.thrust is not None:
        return Figure(name, Span.exact(unit.thrust), "kN", "as measured")
    flat = PER_KILOWATT[unit.kind] * unit.rated
    if unit.diameter is None:
        return Figure(name, Span.around(flat, 0.15), "kN", "kN per kW, off by 15 % either way", defaults=(FLAT[unit.kind],))
    law = HULL_LOSS * by_diameter(unit.kind, unit.rated, unit.diameter)
    return Figure(
        name,
        Span(min(flat, law), law, max(flat, law)),
        "kN",
        "K (D P)^(2/3) x loss, and kN per kW",
        defaults=(FLAT[unit.kind], LAWS[unit.kind]),
        source=LAW,
    )


def power_for(thrust: float, full: float, rated: float) -> float:
    """Shaft power [kW] for less than the full thrust [kN]: rated x (T / T full)^1.5.

    Examples
    --------
    >>> round(power_for(50.49, 77.0, 700), 1)
    371.7
    """
    if not 0 <= thrust <= full:  # looked at many times in one search, so refused only where it must be
        within("thrust", thrust, 0, full, "kN")
    return rated * (thrust / full) ** 1.5
