"""From effective power to the power of the engines, by the best that is known of the screws."""

from dataclasses import dataclass

from inspector.conversion.core.bounds import BadInput, check_ranges, or_default
from inspector.conversion.core.figure import Default, Gap
from inspector.conversion.core.span import Span, span
from inspector.conversion.hull.hull_geometry import Hull
from inspector.conversion.hull.resistance import HOLTROP_1982, KNOT, Resistance, Water
from inspector.conversion.hull.wake_and_thrust import (
    blade_area_ratio,
    ideal_open_water,
    quasi_propulsive,
    rotative_single,
    rotative_twin,
    thrust_deduction_single,
    thrust_deduction_twin,
    wake_single,
    wake_twin,
)

SHAFT = Default("shaft efficiency", 0.99, "the paper's figure", source=HOLTROP_1982)
GEAR = Default("gearbox efficiency", 0.97, "usual for one reduction gear")
# Whether the propellers are in nozzles (None where nobody said) -> what is usual for them.
WHOLE = {
    nozzles: Default("propulsive and shaft efficiency", usual, why)
    for nozzles, usual, why in (
        (True, Span(0.50, 0.50, 0.54), "usual for propellers in nozzles at free running"),
        (False, Span(0.54, 0.58, 0.58), "usual for open propellers of fixed pitch"),
        (None, Span(0.50, 0.54, 0.58), "usual with or without nozzles, whichever is fitted"),
    )
}
BLADES = Default("propeller blades", 4.0, "for the relative rotative efficiency only")
PITCH = Default("pitch ratio P/D", 1.0, "usual")
TWIN_NOT_PROVED = "The twin-screw formulas were not confirmed on a printed example."


@dataclass(frozen=True)
class Propulsion:
    """What is known of the screws; None is not known.

    Parameters
    ----------
    screws : int or None
        1 or 2.
    diameter : float or None
        0.3 to 12 [m].
    pitch_ratio : float or None
        P/D, 0.3 to 2.
    nozzles : bool or None
        Whether they are fitted.
    open_water, quasi, shaft, gear : float or Span or None
        Efficiencies of the propeller in open water, of the whole behind the ship, of shaft and of
        gear [fraction].

    Raises
    ------
    BadInput
        A value is outside its range.
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
        limits = {
            "screws": (1, 2, ""),
            "diameter": (0.3, 12, "m"),
            "pitch_ratio": (0.3, 2, ""),
            "open_water": (0.2, 0.85, ""),
            "quasi": (0.2, 0.9, ""),
            "shaft": (0.9, 1, ""),
            "gear": (0.85, 1, ""),
        }
        check_ranges("propulsion", self, limits, spans=True)


@dataclass(frozen=True)
class Chain:
    """The propulsive chain from the engine's coupling to the hull.

    Parameters
    ----------
    efficiency : Span
        Effective power over power at the coupling [fraction].
    defaults : tuple of Default
    assumptions : tuple of str
    gaps : tuple of Gap
    """

    efficiency: Span
    defaults: tuple[Default, ...] = ()
    assumptions: tuple[str, ...] = ()
    gaps: tuple[Gap, ...] = ()


def chain(known: Propulsion, hull: Hull, result: Resistance, water: Water | None = None) -> Chain:
    """Return the efficiency from the engine's coupling to the effective power.

    Parameters
    ----------
    known : Propulsion
    hull : Hull
    result : Resistance
        At the speed asked for.
    water : Water or None
        None for sea water of 15 °C.

    Returns
    -------
    Chain
        By a given quasi-propulsive efficiency first; else by the regressions, where screws,
        diameter and open-water efficiency are given; else by the usual band, listed as a default.

    Raises
    ------
    BadInput
        The open-water efficiency is more than momentum allows, or the regressions do not hold for
        this stern.

    References
    ----------
    Holtrop and Mennen, An approximate power prediction method, 1982 (memory);
    usual bands (common practice).
    """
    gear, from_gear = or_default(known.gear, GEAR)
    # The regressions need all three; with fewer the usual range of the whole chain is wide and
    # honest.
    if known.quasi is None and None in (known.screws, known.diameter, known.open_water):
        whole = WHOLE[known.nozzles]
        why = (
            "give screws, diameter and open-water efficiency, or the efficiency of the trial, "
            "for a closer figure"
        )
        gap = Gap("propulsion: efficiency", why)
        return Chain(whole.value * gear, (whole, *from_gear), (), (gap,))
    shaft, from_shaft = or_default(known.shaft, SHAFT)
    defaults = (*from_shaft, *from_gear)
    # A trial of the vessel herself is closer than any regression.
    if known.quasi is not None:
        return Chain(span(known.quasi) * shaft * gear, defaults)
    quasi, assumptions, more = _regression(known, hull, result, water or Water())
    return Chain(quasi * shaft * gear, (*defaults, *more), assumptions)


def _regression(
    known: Propulsion, hull: Hull, result: Resistance, water: Water
) -> tuple[Span, tuple[str, ...], tuple[Default, ...]]:
    """Quasi-propulsive efficiency by the regressions, with its assumptions and defaults."""
    # Water follows the hull, so that the propeller sees less speed; its suction adds resistance.
    wake, deduction = _wake_and_deduction(known, hull, result)
    open_water = span(known.open_water)
    thrust = result.total / (1 - deduction) / known.screws
    advance = result.speed * KNOT * (1 - wake)
    _check_momentum(known, open_water, thrust, advance, result.speed, water)
    if known.screws == 1:
        # Shaft at mid-draught: eta_R moves by less than 0.01 over any depth or number of blades.
        depth = hull.draught_aft / 2
        area = blade_area_ratio(thrust, known.diameter, int(BLADES.value), depth, 1, water.density)
        rotative = rotative_single(hull, min(area, 1.2))
        return quasi_propulsive(wake, deduction, rotative, open_water), (), (BLADES,)
    pitch, from_pitch = or_default(known.pitch_ratio, PITCH)
    rotative = rotative_twin(hull, pitch.middle)
    efficiency = quasi_propulsive(wake, deduction, rotative, open_water)
    return efficiency, (TWIN_NOT_PROVED,), from_pitch


def _wake_and_deduction(known: Propulsion, hull: Hull, result: Resistance) -> tuple[float, float]:
    """Return wake fraction and thrust deduction; refuse what no stern of the papers had."""
    diameter = known.diameter
    # A propeller that is out of the water was mistyped, or the draught was.
    if diameter > hull.draught_aft:
        aft = f"more than the draught aft of {hull.draught_aft} m"
        raise _bad_diameter(diameter, f"is {aft}")
    if known.screws == 1:
        wake = wake_single(hull, result, diameter)
        deduction = thrust_deduction_single(hull, diameter)
    else:
        wake = wake_twin(hull, result, diameter)
        deduction = thrust_deduction_twin(hull, diameter)
    # Far outside the ships of the papers the regressions still give numbers.
    if not (-0.1 < wake < 0.6 and -0.1 < deduction < 0.5):
        found = f"gives wake {wake:.2f} and thrust deduction {deduction:.2f}"
        raise _bad_diameter(diameter, f"{found}, beyond any stern of the papers")
    return wake, deduction


def _bad_diameter(diameter: float, problem: str) -> BadInput:
    """Return the refusal of a propeller diameter [m], with what is wrong about it."""
    sentence = f"Propulsion: diameter of {diameter} m {problem}."
    return BadInput(sentence, field="propulsion: diameter", value=diameter)


def _check_momentum(
    known: Propulsion,
    open_water: Span,
    thrust: float,
    advance: float,
    speed: float,
    water: Water,
) -> None:
    """Refuse an open-water efficiency that no open propeller can have; a nozzle may exceed it."""
    ideal = ideal_open_water(thrust, known.diameter, advance, water.density)
    # No open propeller beats the momentum theory; one in a nozzle may, since the nozzle pushes as
    # well.
    if open_water.low > ideal and not known.nozzles:
        sentence = (
            f"Propulsion: open water efficiency is {open_water.low:.3f} or more, "
            f"and momentum allows {ideal:.3f} at {speed} kn."
        )
        raise BadInput(sentence, field="propulsion: open water", value=open_water.low)
