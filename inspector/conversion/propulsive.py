"""From effective power to the power of the engines: wake, thrust deduction, relative rotative efficiency, shaft and gear.

The regressions are those of the 1982 paper. The single-screw set comes out on its printed example; the twin-screw set has
no printed example and says so with every result.
"""

from dataclasses import dataclass
from math import pi, sqrt

from inspector.conversion.hull import Hull
from inspector.conversion.inputs import PRACTICE, BadInput, or_default, plain, within
from inspector.conversion.resistance import HOLTROP_1982, KNOT, Resistance, Water
from inspector.conversion.resistance_coefficients import G
from inspector.conversion.shapes import Default, Gap, Span

PRESSURE = 99047  # N/m², air above vapour pressure at 15 °C, of the 1982 paper
SHAFT = Default("shaft efficiency", 0.99, "", "the paper's figure", HOLTROP_1982)
GEAR = Default("gearbox efficiency", 0.97, "", "usual for one reduction gear", PRACTICE)
WHOLE = {
    True: Default("propulsive and shaft efficiency", Span(0.50, 0.50, 0.54), "", "usual for propellers in nozzles at free running", PRACTICE),
    False: Default("propulsive and shaft efficiency", Span(0.54, 0.58, 0.58), "", "usual for open propellers of fixed pitch", PRACTICE),
    None: Default("propulsive and shaft efficiency", Span(0.50, 0.54, 0.58), "", "usual with or without nozzles, whichever is fitted", PRACTICE),
}
TWIN_NOT_PROVED = "The twin-screw formulas were not confirmed on a printed example."


@dataclass(frozen=True)
class Propulsion:
    """What is known of the screws; None is not known.

    screws, 1 or 2; diameter [m]; pitch_ratio P/D; nozzles fitted or not; open_water, quasi, shaft and gear are
    efficiencies (shares, numbers or spans): of the propeller in open water, of the whole behind the ship, of shaft and gear.
    """

    screws: int | None = None
    diameter: float | None = None
    pitch_ratio: float | None = None
    nozzles: bool | None = None
    open_water: float | Span | None = None
    quasi: float | Span | None = None
    shaft: float | Span | None = None
    gear: float | Span | None = None

    def __post_init__(self) -> None:
        limits = {"screws": (1, 2), "diameter": (0.3, 12), "pitch_ratio": (0.3, 2), "open_water": (0.2, 0.85), "quasi": (0.2, 0.9), "shaft": (0.9, 1),
                  "gear": (0.85, 1)}
        for field, (low, high) in limits.items():
            if getattr(self, field) is not None:
                within(f"propulsion: {field.replace('_', ' ')}", getattr(self, field), low, high, "m" if field == "diameter" else "")


@dataclass(frozen=True)
class Chain:
    """Effective power / power at the engine's coupling as a span, with the defaults and assumptions it rests on."""

    efficiency: Span
    defaults: tuple[Default, ...] = ()
    assumptions: tuple[str, ...] = ()
    gaps: tuple[Gap, ...] = ()


def viscous_coefficient(hull: Hull, result: Resistance) -> float:
    """C_V = (1 + k) C_F + C_A, with 1 + k weighted over hull and appendages. References: Holtrop and Mennen 1982."""
    parts = sum(part.area * part.factor for part in hull.appendages)
    form = (hull.surface * result.form_factor + parts) / (hull.surface + hull.appendage_area)
    return form * result.friction_coefficient + hull.allowance


def wake_single(hull: Hull, result: Resistance, diameter: float) -> float:
    """Wake fraction w of a single screw. Parameters: diameter [m]. References: Holtrop and Mennen 1982."""
    aft, c_p, c_v = hull.draught_aft, hull.c_p, viscous_coefficient(hull, result)
    c_p1 = 1.45 * c_p - 0.315 - 0.0225 * hull.lcb
    c9, c11 = _c9(hull, diameter), _c11(aft / diameter)
    first = c9 * c_v * hull.length / aft * (0.0661875 + 1.21756 * c11 * c_v / (1 - c_p1))
    second = 0.24558 * sqrt(hull.breadth / (hull.length * (1 - c_p1))) - 0.09726 / (0.95 - c_p) + 0.11434 / (0.95 - hull.c_b)
    return first + second + 0.75 * hull.stern * c_v + 0.002 * hull.stern


def _c9(hull: Hull, diameter: float) -> float:
    ratio = hull.breadth / hull.draught_aft
    if ratio < 5:
        c8 = hull.breadth * hull.surface / (hull.length * diameter * hull.draught_aft)
    else:
        c8 = hull.surface * (7 * ratio - 25) / (hull.length * diameter * (ratio - 3))
    return c8 if c8 < 28 else 32 - 16 / (c8 - 24)


def _c11(ratio: float) -> float:
    return ratio if ratio < 2 else 0.0833333 * ratio**3 + 1.33333


def thrust_deduction_single(hull: Hull, diameter: float) -> float:
    """Thrust deduction t of a single screw. Parameters: diameter [m]. References: Holtrop and Mennen 1982."""
    c_p1 = 1.45 * hull.c_p - 0.315 - 0.0225 * hull.lcb
    ratio = hull.breadth / hull.length
    c10 = ratio if 1 / ratio > 5.2 else 0.25 - 0.003328402 / (ratio - 0.134615385)
    first = 0.001979 * hull.length / (hull.breadth - hull.breadth * c_p1) + 1.0585 * c10 - 0.00524
    return first - 0.1418 * diameter**2 / (hull.breadth * hull.draught) + 0.0015 * hull.stern


def wake_twin(hull: Hull, result: Resistance, diameter: float) -> float:
    """Wake fraction w of twin screws (memory, not confirmed on an example). Parameters: diameter [m]."""
    c_v = viscous_coefficient(hull, result)
    return 0.3095 * hull.c_b + 10 * c_v * hull.c_b - 0.23 * diameter / sqrt(hull.breadth * hull.draught)


def thrust_deduction_twin(hull: Hull, diameter: float) -> float:
    """Thrust deduction t of twin screws (memory, not confirmed on an example). Parameters: diameter [m]."""
    return 0.325 * hull.c_b - 0.1885 * diameter / sqrt(hull.breadth * hull.draught)


def blade_area_ratio(thrust: float, diameter: float, blades: int, shaft_depth: float, screws: int = 1, density: float = 1025.0) -> float:
    """AE/A0 that avoids cavitation, for the thrust [kN] of one screw, diameter and shaft_depth [m]. References: Keller's formula in the 1982 paper."""
    plain("propeller: blades", blades, 2, 7)
    least = 0.2 if screws == 1 else 0.1
    return least + (1.3 + 0.3 * blades) * thrust * 1000 / (diameter**2 * (PRESSURE + density * G * shaft_depth))


def rotative_single(hull: Hull, area_ratio: float) -> float:
    """Relative rotative efficiency of a single screw. References: Holtrop and Mennen 1982."""
    return 0.9922 - 0.05908 * area_ratio + 0.07424 * (hull.c_p - 0.0225 * hull.lcb)


def rotative_twin(hull: Hull, pitch_ratio: float) -> float:
    """Relative rotative efficiency of twin screws (memory, not confirmed on an example)."""
    return 0.9737 + 0.111 * (hull.c_p - 0.0225 * hull.lcb) - 0.06325 * pitch_ratio


def ideal_open_water(thrust: float, diameter: float, advance: float, density: float = 1025.0) -> float:
    """The efficiency that no open propeller exceeds, by axial momentum: 2 / (1 + sqrt(1 + C_T)), own mechanics.

    Parameters: thrust [kN] of one screw; diameter [m]; advance [m/s], the speed of the water into it; density [kg/m³].
    """
    loading = thrust * 1000 / (0.5 * density * advance**2 * pi * diameter**2 / 4)
    return 2 / (1 + sqrt(1 + loading))


def quasi_propulsive(wake: float, deduction: float, rotative: float, open_water: Span) -> Span:
    """eta_D = eta_R eta_0 (1 - t)/(1 - w)."""
    return open_water * (rotative * (1 - deduction) / (1 - wake))


def chain(known: Propulsion, hull: Hull, result: Resistance, water: Water | None = None) -> Chain:
    """The efficiency from the engine's coupling to the effective power, from the best that is known.

    A given quasi-propulsive efficiency first; else the regressions, where screws, diameter and open-water efficiency are
    given; else the usual band, listed as a default.

    Errors
    ------
    BadInput : the open-water efficiency is more than momentum allows, or the regressions do not hold for this stern.
    """
    gear, from_gear = or_default(known.gear, GEAR)
    if known.quasi is None and None in (known.screws, known.diameter, known.open_water):
        whole = WHOLE[known.nozzles]
        gap = Gap("propulsion: efficiency", "give screws, diameter and open-water efficiency, or the efficiency of the trial, for a closer figure")
        return Chain(whole.value * gear, (whole, *from_gear), (), (gap,))
    shaft, from_shaft = or_default(known.shaft, SHAFT)
    defaults = (*from_shaft, *from_gear)
    if known.quasi is not None:
        quasi, _ = or_default(known.quasi, SHAFT)
        return Chain(quasi * shaft * gear, defaults)
    quasi, assumptions, more = _regression(known, hull, result, water or Water())
    return Chain(quasi * shaft * gear, (*defaults, *more), assumptions)


def _regression(known: Propulsion, hull: Hull, result: Resistance, water: Water) -> tuple[Span, tuple[str, ...], tuple[Default, ...]]:
    if known.diameter > hull.draught_aft:
        sentence = f"Propulsion: diameter of {known.diameter} m is more than the draught aft of {hull.draught_aft} m."
        raise BadInput(sentence, field="propulsion: diameter", value=known.diameter)
    single = known.screws == 1
    wake = (wake_single if single else wake_twin)(hull, result, known.diameter)
    deduction = thrust_deduction_single(hull, known.diameter) if single else thrust_deduction_twin(hull, known.diameter)
    if not (-0.1 < wake < 0.6 and -0.1 < deduction < 0.5):
        sentence = f"Propulsion: diameter of {known.diameter} m gives wake {wake:.2f} and thrust deduction {deduction:.2f}, beyond any stern of the papers."
        raise BadInput(sentence, field="propulsion: diameter", value=known.diameter)
    open_water, _ = or_default(known.open_water, SHAFT)
    advance, thrust = result.speed * KNOT * (1 - wake), result.total / (1 - deduction) / known.screws
    ideal = ideal_open_water(thrust, known.diameter, advance, water.density)
    if open_water.low > ideal and not known.nozzles:
        sentence = f"Propulsion: open water efficiency is {open_water.low:.3f} or more, and momentum allows {ideal:.3f} at {result.speed} kn."
        raise BadInput(sentence, field="propulsion: open water", value=open_water.low)
    if single:
        # shaft at mid-draught aft: eta_R moves by less than 0.01 over any depth or number of blades
        ratio = min(blade_area_ratio(thrust, known.diameter, 4, hull.draught_aft / 2, 1, water.density), 1.2)
        blades = Default("propeller blades", 4.0, "", "for the relative rotative efficiency only", PRACTICE)
        return quasi_propulsive(wake, deduction, rotative_single(hull, ratio), open_water), (), (blades,)
    pitch, from_pitch = or_default(known.pitch_ratio, Default("pitch ratio P/D", 1.0, "", "usual", PRACTICE))
    return quasi_propulsive(wake, deduction, rotative_twin(hull, pitch.point or pitch.low), open_water), (TWIN_NOT_PROVED,), from_pitch
