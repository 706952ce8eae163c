"""Draught, trim, list and metacentric height after weights come off and go on, free surfaces, and what a timed roll tells.

All of it is a first check from the surveyor's figures: only an approved stability booklet and an inclining test decide.
"""

from math import atan, degrees

from inspector.conversion.inputs import PRACTICE, BadInput, plain, within
from inspector.conversion.shapes import Default, Span, span
from inspector.criteria.floating import AMEND, FACTOR_SPREAD, INCLINE, LCG_AMEND, LCG_INCLINE, ROLL_FACTORS, rolling_gm
from inspector.criteria.source import Source
from inspector.quantities import show

CHANGES = Source("Ship stability by textbooks", "plain mechanics", "w/TPC, moment/MCTC, sum of moments, free-surface moment/displacement", "seen")
ROLLED = Source("Resolution A.749(18), annex 3, rolling test", "as adopted", "GM = (f B / T)², f ± 0.05", "seen")
WEATHER = Source("IS Code 2008, resolution MSC.267(85), part A", "2008, read in extracts", "2.3.4, roll period: f = 2 C", "seen")
ROUGH = Source("Approximate hydrostatics for general cargo forms", "no publisher", "MCTC = 7.31 TPC² / B", "memory")
SLACK_FROM = 98.0     # % filled from which no free surface counts (IS Code part B 3.1.2, seen)
VCG_AMEND, VCG_INCLINE = 0.5, 1.0    # % of the lightship's height (the first from memory)
ANY_LOADING = Default("rolling factor f", Span(min(ROLL_FACTORS.values()) - FACTOR_SPREAD, None, max(ROLL_FACTORS.values()) + FACTOR_SPREAD), "",
                      "The loading when the roll was timed is not told, so every factor counts.", ROLLED)
FLOTATION = Default("centre of flotation as a share of the length from aft", Span(0.44, 0.48, 0.52), "",
                    "Usual for workboats, whose waterplane is full aft.", PRACTICE)
MCTC_SPREAD = 0.15
CARRIED = Default("KM at the new draught", "KM before, carried over", "",
                  "KB is taken to grow by half of the sinkage, and BM to fall by 1.0 to 1.4 of its share; the booklet's own is better.", PRACTICE)
KB_GROWS = 0.5                     # m per m of sinkage
BM_FALLS = (1.0, 1.2, 1.4)         # waterplane over block coefficient
KB_SHARE = (0.60, 0.55, 0.50)      # KB over draught


def free_surface_moment(inertia: float, density: float | Span) -> Span:
    """Moment [t·m] of an inertia [m⁴] of a liquid of a density [kg/m³]; how much stands in the tank does not enter."""
    plain("tank: free-surface inertia", inertia, 0, 1e6)
    return within("tank: density", density, 300, 4000, "kg/m³") * inertia / 1000


def tonnes_per_cm(area: float, density: float = 1025.0) -> float:
    """TPC [t/cm] of a waterplane area [m²] in water of a density [kg/m³]."""
    return plain("waterplane area", area, 1, 50_000, "m²") * plain("water: density", density, 980, 1040, "kg/m³") / 100_000


def rough_mctc(tpc: float, breadth: float) -> Span:
    """MCTC [t·m/cm] guessed from TPC [t/cm] and breadth [m], ± 15 %. Memory: an approved booklet always comes first."""
    return Span.around(7.31 * plain("TPC", tpc, 0.1, 200, "t/cm") ** 2 / plain("breadth", breadth, 2, 80, "m"), MCTC_SPREAD)


def sinkage(change: Span, tpc: float) -> Span:
    """How much deeper she floats in the mean [m] for a mass added [t] at a TPC [t/cm]; minus where she rises."""
    return span(change) / plain("TPC", tpc, 0.1, 200, "t/cm") / 100


def trimmed(moment: Span, mctc: Span | float) -> Span:
    """Change of trim [m], plus by the head, for a moment about the centre of flotation [t·m] at an MCTC [t·m/cm]."""
    return moment / within("MCTC", mctc, 0.1, 20_000) / 100


def ends(draught_fore: float, draught_aft: float, sinking: Span, trim: Span, lcf: Span | float, length: float) -> tuple[Span, Span]:
    """Draughts forward and aft [m] after a sinkage and a change of trim [m]; lcf [m from aft], length [m] between perpendiculars."""
    share = within("centre of flotation", lcf, 0, length, "m") / plain("length between perpendiculars", length, 5, 400, "m")
    return draught_fore + sinking + trim * (1 - share), draught_aft + sinking - trim * share


def km_at(km: float, draught: float, sinking: Span) -> Span:
    """KM [m] after a small sinkage [m], from KM and draught before [m]: KB grows, BM falls with the volume (CARRIED)."""
    falls = sorted(KB_GROWS - share * max(km - kb * draught, 0.0) / draught for share, kb in zip(BM_FALLS, KB_SHARE, strict=True))
    return km + span(sinking) * Span(*falls)


def fluid_gm(km: Span | float, kg: Span | float, moment: Span | float, displacement: Span | float) -> Span:
    """GM [m] less the rise of all free surfaces: KM - KG - moment [t·m] / displacement [t]."""
    return span(km) - kg - span(moment) / within("displacement", displacement, 1, 500_000, "t")


def heel(moment: Span | float, displacement: Span | float, gm: Span | float) -> Span:
    """Angle of list [deg], plus to starboard, of a transverse moment [t·m]; BadInput where GM is not surely above zero."""
    gm = span(gm)
    if gm.low <= 0:
        raise BadInput(f"GM: {show(gm.low, 'm')} at its low end, and a list can be told only for a GM above zero.", field="GM", value=gm.low, unit="m")
    return (span(moment) / (displacement * gm)).apply(lambda tangent: degrees(atan(tangent)))


def roll_constant(breadth: float, draught: float, length: float) -> float:
    """C of the weather criterion's roll period T = 2 C B / √GM: breadth, draught, length of the waterline [m]. Half of the rolling test's f."""
    return 0.373 + 0.023 * breadth / draught - 0.043 * length / 100


def rolled_gm(period: float, breadth: float, factor: Span) -> Span:
    """GM [m] that a natural roll period [s, over and back] tells for a breadth [m] and a span of the factor f."""
    plain("roll period", period, 1, 60, "s")
    plain("breadth", breadth, 2, 80, "m")
    return within("rolling factor f", factor, 0.1, 2).apply(lambda one: rolling_gm(breadth, period, one))


def around_factor(factor: float) -> Span:
    """A rolling factor with its spread of ± 0.05."""
    return Span(factor - FACTOR_SPREAD, factor, factor + FACTOR_SPREAD)


def lightship_word(percent: Span, amend: float, incline: float) -> str:
    """What a change of the lightship asks for, in words; where the span reaches over a limit, that is said."""
    size = Span(0.0 if percent.low <= 0 <= percent.high else min(abs(percent.low), abs(percent.high)), None, max(abs(percent.low), abs(percent.high)))
    words = [_word(one, amend, incline) for one in (size.low, size.high)]
    return words[0] if words[0] == words[1] else f"between {words[0]} and {words[1]}"


def _word(percent: float, amend: float, incline: float) -> str:
    return "new inclining test" if percent > incline else "booklet to be amended" if percent >= amend else "booklet stands"


LIGHTSHIP_LIMITS = {"mass": (AMEND, INCLINE), "centre along the length": (LCG_AMEND, LCG_INCLINE), "centre in height": (VCG_AMEND, VCG_INCLINE)}
