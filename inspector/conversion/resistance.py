"""Resistance of a hull in calm water by the regression of Holtrop and Mennen (1982, and Holtrop 1984), and of its upper works in the wind.

A hull is one set of exact numbers here; what is uncertain about a hull is spread in hull_form.py. The ships behind the
regression are known as boxes of form; a hull or speed outside every box is computed and flagged, one outside the
formulas is refused.
"""

from dataclasses import dataclass
from math import exp, pi, sqrt

from inspector.conversion import resistance_coefficients as c
from inspector.conversion.hull import Hull
from inspector.conversion.inputs import BadInput, plain
from inspector.criteria.source import Source

HOLTROP_1982 = Source("Holtrop and Mennen, An approximate power prediction method, International Shipbuilding Progress 29 (335)", "1982",
                      "formulas and printed example", "memory")
HOLTROP_1984 = Source("Holtrop, A statistical re-analysis of resistance and propulsion data, International Shipbuilding Progress 31 (363)", "1984",
                      "formulas and printed example", "memory")
EDITIONS = {1982: HOLTROP_1982, 1984: HOLTROP_1984}
KNOT = 1852 / 3600  # m/s
SLOWEST, FASTEST = 0.5, 60.0  # kn, beyond which a number was mistyped
TOP_FROUDE = {1982: 0.5, 1984: 1.0}


@dataclass(frozen=True)
class Box:
    """The ships of one type behind the regression: greatest Froude number, and ranges of C_P, L/B and B/T."""

    name: str
    froude: float
    c_p: tuple[float, float]
    length_to_breadth: tuple[float, float]
    breadth_to_draught: tuple[float, float]


BOXES = (
    Box("tugs, trawlers and coasters", 0.38, (0.55, 0.65), (3.9, 6.3), (2.1, 3.0)),
    Box("tankers and bulk carriers", 0.24, (0.73, 0.85), (5.1, 7.1), (2.4, 3.2)),
    Box("general cargo ships", 0.30, (0.58, 0.72), (5.3, 8.0), (2.4, 4.0)),
    Box("container ships and naval ships", 0.45, (0.55, 0.67), (6.0, 9.5), (3.0, 4.0)),
)


@dataclass(frozen=True)
class Water:
    """density [kg/m³] and kinematic viscosity [m²/s]; as given here, sea water of 15 °C."""

    density: float = 1025.0
    viscosity: float = 1.18831e-6

    def __post_init__(self) -> None:
        plain("water: density", self.density, 990, 1035, "kg/m³")
        plain("water: viscosity", self.viscosity, 0.5e-6, 2e-6)


@dataclass(frozen=True)
class Resistance:
    """The parts of resistance [kN] at a speed [kn]; friction is the flat plate's, to be taken form_factor times in the total."""

    speed: float
    edition: int
    froude: float
    friction_coefficient: float
    form_factor: float
    friction: float
    appendages: float
    wave: float
    bulb: float
    transom: float
    correlation: float

    @property
    def total(self) -> float:
        """[kN]"""
        return self.friction * self.form_factor + self.appendages + self.wave + self.bulb + self.transom + self.correlation

    @property
    def effective_power(self) -> float:
        """P_E [kW]."""
        return self.total * self.speed * KNOT


def froude(speed: float, length: float) -> float:
    """Froude number of a speed [kn] on a length [m]."""
    return speed * KNOT / sqrt(c.G * length)


def resistance(hull: Hull, speed: float, edition: int = 1984, water: Water | None = None) -> Resistance:
    """Resistance in calm, deep water by the 1982 or the 1984 formulas.

    Parameters: speed [kn], 0.5 to 60; edition, 1982 or 1984; water, sea water of 15 °C if none is given.

    Errors
    ------
    BadInput : the speed cannot be meant or lies above the edition's Froude numbers, or the edition does not exist.

    Notes
    -----
    The 1982 formulas are refused above a Froude number of 0.5, where the 1984 paper calls them often wrong. The
    allowance works on hull and appendages, as both printed examples show. Ask ``outside_boxes`` how far to trust it.

    References: Holtrop and Mennen 1982; Holtrop 1984.
    """
    plain("speed", speed, SLOWEST, FASTEST, "kn")
    if edition not in EDITIONS:
        raise BadInput(f"Edition is {edition!r}, and the formulas exist as of 1982 and of 1984.", field="edition", value=edition)
    fn = froude(speed, hull.length)
    if fn > TOP_FROUDE[edition]:
        sentence = f"Speed of {speed} kn is a Froude number of {fn:.2f} for {hull.length} m, and the {edition} formulas end at {TOP_FROUDE[edition]}."
        raise BadInput(sentence, field="speed", value=speed)
    water = water or Water()
    v = speed * KNOT
    head = 0.5 * water.density * v**2 / 1000  # kN/m²
    c_f = c.friction_ittc57(v * hull.length / water.viscosity)
    openings = sum(2 * head * pi * tunnel.diameter**2 * tunnel.coefficient for tunnel in hull.tunnels)
    return Resistance(
        speed, edition, fn, c_f, hull.form_factor(edition),
        friction=head * hull.surface * c_f,
        appendages=head * c_f * sum(part.area * part.factor for part in hull.appendages) + openings,
        wave=_wave(hull, fn, edition) * hull.c2 * hull.c5 * hull.volume * water.density * c.G / 1000,
        bulb=_bulb(hull, v) * water.density * c.G / 1000,
        transom=head * hull.transom_area * c.c6(c.transom_froude(v, hull.transom_area, hull.breadth, hull.waterplane)) if hull.transom_area else 0.0,
        correlation=head * (hull.surface + hull.appendage_area) * hull.allowance,
    )


def _wave(hull: Hull, fn: float, edition: int) -> float:
    if edition == 1982 or fn <= 0.40:
        return _slow_wave(hull, fn, edition)
    if fn >= 0.55:
        return _fast_wave(hull, fn)
    slow, fast = _slow_wave(hull, 0.40, edition), _fast_wave(hull, 0.55)
    return slow + (10 * fn - 4) * (fast - slow) / 1.5


def _slow_wave(hull: Hull, fn: float, edition: int) -> float:
    size = c.c1(hull.breadth / hull.length, hull.draught / hull.breadth, hull.angle)
    decay = c.m1(hull.length, hull.breadth, hull.draught, hull.volume, hull.c_p)
    c15 = c.c15(hull.length, hull.volume)
    hump = c.m2_1982(c15, hull.c_p, fn) if edition == 1982 else c.m4_1984(c15, fn)
    return c.wave_share(size, decay, hump, c.wave_length(hull.c_p, hull.length / hull.breadth), fn)


def _fast_wave(hull: Hull, fn: float) -> float:
    size = c.c17(hull.length, hull.breadth, hull.volume, hull.midship)
    hump = c.m4_1984(c.c15(hull.length, hull.volume), fn)
    decay = c.m3(hull.length, hull.breadth, hull.draught)
    return c.wave_share(size, decay, hump, c.wave_length(hull.c_p, hull.length / hull.breadth), fn)


def _bulb(hull: Hull, v: float) -> float:
    if not hull.bulb_area:
        return 0.0
    emergence = c.bulb_emergence(hull.bulb_area, hull.bulb_height, hull.draught_fore)
    fni = c.bulb_froude(v, hull.bulb_area, hull.bulb_height, hull.draught_fore)
    return 0.11 * exp(-3 * emergence**-2) * fni**3 * hull.bulb_area**1.5 / (1 + fni**2)


def outside_boxes(hull: Hull, speed: float) -> tuple[str, ...]:
    """Return nothing if some type of ship behind the regression holds this hull at this speed [kn]; else what lies outside the nearest type.

    References: ranges by ship type (memory).
    """
    misses = [(_misses(hull, froude(speed, hull.length), box), box.name) for box in BOXES]
    if any(not found for found, _ in misses):
        return ()
    found, name = min(misses, key=lambda miss: len(miss[0]))
    return tuple(f"{miss} of the {name} behind the formulas" for miss in found)


def _misses(hull: Hull, fn: float, box: Box) -> list[str]:
    values = (
        ("Froude number", fn, (0, box.froude)), ("C_P", hull.c_p, box.c_p), ("L/B", hull.length / hull.breadth, box.length_to_breadth),
        ("B/T", hull.breadth / hull.draught, box.breadth_to_draught),
    )
    return [f"{name} {value:.2f} outside {low} to {high}" for name, value, (low, high) in values if not low <= value <= high]
