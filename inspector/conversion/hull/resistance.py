"""Resistance of a hull in calm water by Holtrop and Mennen (1982) and Holtrop (1984).

A hull is one set of exact numbers here; what is uncertain about it is spread in ``hull_form``. The
ships behind the regression are known as boxes of form: a hull or speed outside every box is
calculated and reported, one outside the formulas is refused.
"""

from dataclasses import dataclass
from math import exp, pi, sqrt

from inspector.conversion.core.bounds import BadInput, plain
from inspector.conversion.hull import bulb_and_transom as ends
from inspector.conversion.hull import form_coefficients as form
from inspector.conversion.hull import wave_coefficients as wave
from inspector.conversion.hull.hull_geometry import Hull
from inspector.criteria.core.source import Source

HOLTROP_1982 = Source.recalled(
    "Holtrop and Mennen, An approximate power prediction method, "
    "International Shipbuilding Progress 29 (335)",
    "formulas and printed example",
    edition="1982",
)
HOLTROP_1984 = Source.recalled(
    "Holtrop, A statistical re-analysis of resistance and propulsion data, "
    "International Shipbuilding Progress 31 (363)",
    "formulas and printed example",
    edition="1984",
)
EDITIONS = {1982: HOLTROP_1982, 1984: HOLTROP_1984}
# m/s
KNOT = 1852 / 3600
# Beyond these a speed was mistyped, kn.
SLOWEST, FASTEST = 0.5, 60.0
TOP_FROUDE = {1982: 0.5, 1984: 1.0}


# Printed with the papers: the ranges of the ships behind the regression, type by type.
@dataclass(frozen=True)
class Box:
    """The ships of one type behind the regression.

    Parameters
    ----------
    name : str
    froude : float
        Their greatest Froude number.
    c_p, length_to_breadth, breadth_to_draught : tuple of (float, float)
        The ranges of C_P, L/B and B/T.
    """

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
    """The water, sea water of 15 °C unless said otherwise.

    Parameters
    ----------
    density : float
        990 to 1035 [kg/m³].
    viscosity : float
        Kinematic [m²/s].

    Raises
    ------
    BadInput
        A value is outside its range.
    """

    # Salt water of 15 °C, as the papers' own examples take it.
    density: float = 1025.0
    viscosity: float = 1.18831e-6

    def __post_init__(self) -> None:
        plain("water: density", self.density, 990, 1035, "kg/m³")
        plain("water: viscosity", self.viscosity, 0.5e-6, 2e-6)


@dataclass(frozen=True)
class Resistance:
    """The parts of resistance at one speed.

    Parameters
    ----------
    speed : float
        [kn]
    edition : int
        1982 or 1984.
    froude : float
        Froude number on the waterline.
    friction_coefficient : float
        C_F of the flat plate.
    form_factor : float
        1 + k1.
    friction : float
        Of the flat plate, without the form factor [kN].
    appendages, wave, bulb, transom, correlation : float
        [kN]
    """

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
        """All parts together [kN]."""
        return (
            self.friction * self.form_factor
            + self.appendages
            + self.wave
            + self.bulb
            + self.transom
            + self.correlation
        )

    @property
    def effective_power(self) -> float:
        """The power to tow the hull, P_E [kW]."""
        return self.total * self.speed * KNOT


def froude(speed: float, length: float) -> float:
    """Return the Froude number.

    Parameters
    ----------
    speed : float
        [kn]
    length : float
        Of the waterline [m].

    Returns
    -------
    float

    References
    ----------
    V / sqrt(g L) (common practice), with g of 9.81 m/s² as in the papers.
    """
    return speed * KNOT / sqrt(form.G * length)


def resistance(
    hull: Hull, speed: float, edition: int = 1984, water: Water | None = None
) -> Resistance:
    """Return the resistance in calm, deep water by the 1982 or the 1984 formulas.

    Parameters
    ----------
    hull : Hull
    speed : float
        0.5 to 60 [kn].
    edition : int
        1982 or 1984.
    water : Water or None
        None for sea water of 15 °C.

    Returns
    -------
    Resistance

    Raises
    ------
    BadInput
        The speed cannot be meant or is above the edition's Froude numbers, or there is no such
        edition.

    Notes
    -----
    The 1982 formulas are refused above a Froude number of 0.5, where the 1984 paper calls them
    often wrong. The allowance works on hull and appendages, as both printed examples show. Ask
    ``outside_boxes`` how far to trust it.

    References
    ----------
    Holtrop and Mennen, International Shipbuilding Progress 29 (335), 1982 (memory). Holtrop,
    International Shipbuilding Progress 31 (363), 1984 (memory).
    """
    plain("speed", speed, SLOWEST, FASTEST, "kn")
    if edition not in EDITIONS:
        problem = f"Edition is {edition!r}, and the formulas exist as of 1982 and of 1984."
        raise BadInput(problem, field="edition", value=edition)
    fn = froude(speed, hull.length)
    # A faster hull planes, of which the ships behind the formulas say nothing.
    if fn > TOP_FROUDE[edition]:
        problem = (
            f"Speed of {speed} kn is a Froude number of {fn:.2f} for {hull.length} m, "
            f"and the {edition} formulas end at {TOP_FROUDE[edition]}."
        )
        raise BadInput(problem, field="speed", value=speed)
    return _resistance(hull, speed, fn, edition, water or Water())


def _resistance(hull: Hull, speed: float, fn: float, edition: int, water: Water) -> Resistance:
    """Return all parts of the resistance [kN] at a speed that was checked."""
    v = speed * KNOT
    # Dynamic pressure and weight of the water, kN/m² and kN/m³.
    head, weight = 0.5 * water.density * v**2 / 1000, water.density * form.G / 1000
    c_f = form.friction_ittc57(v * hull.length / water.viscosity)
    parts = sum(part.area * part.factor for part in hull.appendages)
    # Each tunnel has two openings, whence the 2 below.
    openings = sum(pi * tunnel.diameter**2 * tunnel.coefficient for tunnel in hull.tunnels)
    return Resistance(
        speed,
        edition,
        fn,
        c_f,
        hull.form_factor(edition),
        friction=head * hull.surface * c_f,
        appendages=head * (c_f * parts + 2 * openings),
        wave=_wave(hull, fn, edition) * hull.c2 * hull.c5 * hull.volume * weight,
        bulb=_bulb(hull, v) * weight,
        transom=head * _transom(hull, v),
        # From model to ship: roughness and still air, which no tank measures.
        correlation=head * (hull.surface + hull.appendage_area) * hull.allowance,
    )


def _transom(hull: Hull, v: float) -> float:
    """The transom's resistance over the dynamic pressure [m²]."""
    # A dry transom has no resistance, and its Froude number no meaning.
    if not hull.transom_area:
        return 0.0
    fnt = ends.transom_froude(v, hull.transom_area, hull.breadth, hull.waterplane)
    return hull.transom_area * ends.c6(fnt)


def _wave(hull: Hull, fn: float, edition: int) -> float:
    """Return the wave resistance as a share of the ship's weight, by the regime of its speed."""
    if edition == 1982 or fn <= 0.40:
        return _slow_wave(hull, fn, edition)
    if fn >= 0.55:
        return _fast_wave(hull, fn)
    # Between the two regimes the 1984 paper interpolates.
    slow, fast = _slow_wave(hull, 0.40, edition), _fast_wave(hull, 0.55)
    return slow + (10 * fn - 4) * (fast - slow) / 1.5


def _slow_wave(hull: Hull, fn: float, edition: int) -> float:
    """Return the share of wave resistance up to a Froude number of 0.40."""
    size = wave.c1(hull.breadth / hull.length, hull.draught / hull.breadth, hull.angle)
    decay = wave.m1(hull.length, hull.breadth, hull.draught, hull.volume, hull.c_p)
    c15 = wave.c15(hull.length, hull.volume)
    hump = wave.m2_1982(c15, hull.c_p, fn) if edition == 1982 else wave.m4_1984(c15, fn)
    return wave.wave_share(
        size, decay, hump, wave.wave_length(hull.c_p, hull.length / hull.breadth), fn
    )


def _fast_wave(hull: Hull, fn: float) -> float:
    """Return the share of wave resistance from a Froude number of 0.55."""
    size = wave.c17(hull.length, hull.breadth, hull.volume, hull.midship)
    hump = wave.m4_1984(wave.c15(hull.length, hull.volume), fn)
    decay = wave.m3(hull.length, hull.breadth, hull.draught)
    return wave.wave_share(
        size, decay, hump, wave.wave_length(hull.c_p, hull.length / hull.breadth), fn
    )


def _bulb(hull: Hull, v: float) -> float:
    """Return the resistance of the bulb over the weight of a cubic metre of water [m³]."""
    # Without a bulb its emergence would divide by nothing.
    if not hull.bulb_area:
        return 0.0
    emergence = ends.bulb_emergence(hull.bulb_area, hull.bulb_height, hull.draught_fore)
    fni = ends.bulb_froude(v, hull.bulb_area, hull.bulb_height, hull.draught_fore)
    # kN once multiplied by the weight of the water, which the caller does.
    return 0.11 * exp(-3 * emergence**-2) * fni**3 * hull.bulb_area**1.5 / (1 + fni**2)


def outside_boxes(hull: Hull, speed: float) -> tuple[str, ...]:
    """Return what is outside the nearest type of ship behind the regression.

    Parameters
    ----------
    hull : Hull
    speed : float
        [kn]

    Returns
    -------
    tuple of str
        Nothing where a type has ships like this hull at this speed.

    References
    ----------
    Ranges by ship type, as published with the method (memory).
    """
    # Inside one box is enough: a hull need not resemble every type of ship.
    misses = [(_misses(hull, froude(speed, hull.length), box), box.name) for box in BOXES]
    if any(not found for found, _ in misses):
        return ()
    # Named against the type that it comes nearest to, not against all four.
    found, name = min(misses, key=lambda miss: len(miss[0]))
    return tuple(f"{miss} of the {name} behind the formulas" for miss in found)


def _misses(hull: Hull, fn: float, box: Box) -> list[str]:
    """Return in what a hull is outside one type of ship."""
    values = (
        ("Froude number", fn, (0, box.froude)),
        ("C_P", hull.c_p, box.c_p),
        ("L/B", hull.length / hull.breadth, box.length_to_breadth),
        ("B/T", hull.breadth / hull.draught, box.breadth_to_draught),
    )
    return [
        f"{name} {value:.2f} outside {low} to {high}"
        for name, value, (low, high) in values
        if not low <= value <= high
    ]
