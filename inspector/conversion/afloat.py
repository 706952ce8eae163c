"""How she floats after the changes: displacement, draughts, trim, KG, KM and GM as figures, from the booklet's starting condition and the list of weights."""

from collections.abc import Sequence
from dataclasses import dataclass

from inspector.conversion.inputs import PRACTICE, plain
from inspector.conversion.shapes import ConversionError, Default, Figure, Gap, Span, no_figure, rest_on, span, unique
from inspector.conversion.stability import (
    ANY_LOADING,
    CARRIED,
    CHANGES,
    FLOTATION,
    ROLLED,
    ROUGH,
    WEATHER,
    around_factor,
    ends,
    fluid_gm,
    heel,
    km_at,
    roll_constant,
    rolled_gm,
    rough_mctc,
    sinkage,
    tonnes_per_cm,
    trimmed,
)
from inspector.conversion.tables import Row
from inspector.conversion.weights import Weight, centre, total
from inspector.criteria.floating import ROLL_FACTORS

ANYWHERE_UP = Default("height of a weight without a centre", Span(0.0, None, 30.0), "m", "It may lie anywhere from the keel to high on a mast.", PRACTICE)
ROLL_LENGTH = 70.0   # m, to which the rolling test holds


@dataclass(frozen=True)
class Start:
    """The starting condition as typed, with what follows from it: kg, km and gm complete one another where two of them are given."""

    row: Row

    def get(self, name: str) -> float | None:
        """A number of the table of hydrostatics [in its column's unit]."""
        return self.row.number(name)

    @property
    def draught(self) -> float | None:
        """Mean draught [m]: as given, else the mean of fore and aft."""
        fore, aft = self.get("draught_fore"), self.get("draught_aft")
        return self.get("draught") or (None if fore is None or aft is None else (fore + aft) / 2)

    @property
    def surface_rise(self) -> float:
        """What the booklet's free surfaces take from GM before [m]; 0 where it tells none."""
        moment, mass = self.get("free_surface"), self.get("displacement")
        return moment / mass if moment and mass else 0.0

    @property
    def kg(self) -> float | None:
        """KG, solid, before [m]."""
        km, gm = self.get("km"), self.get("gm")
        return self.get("kg") if self.get("kg") is not None else None if km is None or gm is None else km - gm - self.surface_rise

    @property
    def km(self) -> float | None:
        """KM before [m]."""
        kg, gm = self.get("kg"), self.get("gm")
        return self.get("km") if self.get("km") is not None else None if kg is None or gm is None else kg + gm + self.surface_rise

    @property
    def gm(self) -> float | None:
        """GM before [m]: as given, else from KM, KG and free surface."""
        given, km, kg = self.get("gm"), self.get("km"), self.get("kg")
        return given if given is not None else None if km is None or kg is None else km - kg - self.surface_rise

    @property
    def disagreement(self) -> float:
        """How far a given GM lies from KM - KG - free surface [m]; 0 where not all are given."""
        if None in (self.get("kg"), self.get("km"), self.get("gm")):
            return 0.0
        return self.get("km") - self.get("kg") - self.surface_rise - self.get("gm")


def displacement(start: Start, weights: Sequence[Weight]) -> Figure:
    """Displacement after the changes [t]."""
    mass = start.get("displacement")
    if mass is None:
        missing = Gap("Displacement", "Give it from the booklet or the draught marks: nothing afloat can be told without it.")
        return no_figure("Displacement after", "t", (missing,))
    after = mass + (total(weights) if weights else Span.exact(0.0))
    if after.low < 1:
        return no_figure("Displacement after", "t", (Gap("Displacement", "The list takes off more than she displaces; check both."),))
    return Figure("Displacement after", after, "t", "displacement + what goes on - what comes off", source=CHANGES)


def tpc(start: Start) -> Figure:
    """Tonnes per centimetre: as given, else from length, breadth and waterplane coefficient."""
    if start.get("tpc"):
        return Figure("TPC", Span.exact(start.get("tpc")), "t/cm", "as given")
    sides = (start.get("lpp"), start.get("breadth"), start.get("cw"))
    if None in sides:
        return no_figure("TPC", "t/cm", (Gap("TPC", "Give it from the booklet; without it no change of draught can be told."),))
    area = sides[0] * sides[1] * sides[2]
    return Figure("TPC", Span.exact(tonnes_per_cm(area, start.get("density") or 1025.0)), "t/cm", "length x breadth x waterplane coefficient x density",
                  ("Waterplane area estimated from the coefficient; the booklet's TPC is better.",), source=CHANGES)


def sinking(start: Start, weights: Sequence[Weight]) -> Figure:
    """How much deeper she floats in the mean [m], minus where she rises."""
    per_cm = tpc(start)
    if per_cm.span is None:
        return no_figure("Mean draught, change", "m", per_cm.gaps)
    change = total(weights) if weights else Span.exact(0.0)
    return Figure("Mean draught, change", sinkage(change, per_cm.span.middle), "m", "mass added / TPC", source=CHANGES, **rest_on(per_cm))


def trim(start: Start, weights: Sequence[Weight]) -> Figure:
    """Change of trim [m], plus by the head."""
    name, length, per_cm, lcf = "Trim, change (plus by the head)", start.get("lpp"), start.get("mctc"), start.get("lcf")
    defaults, gaps = [], []
    if length is None:
        gaps.append(Gap("Length between perpendiculars", "Trim cannot be told without it."))
    if not per_cm:
        rough = tpc(start)
        if rough.span is None or start.get("breadth") is None:
            gaps.append(Gap("MCTC", "Give it from the booklet; trim cannot be told without it."))
        else:
            per_cm = rough_mctc(rough.span.middle, start.get("breadth"))
            defaults.append(Default("MCTC, t·m/cm", per_cm, "", "None is given; it is guessed from TPC and breadth.", ROUGH))
    if gaps:
        return no_figure(name, "m", gaps)
    if lcf is None:
        defaults.append(FLOTATION)
    about = FLOTATION.value * length if lcf is None else span(lcf)
    unknown = tuple(Gap(f"Centre along the ship of {one.name}", "It is taken as anywhere between the perpendiculars.") for one in weights if one.lcg is None)
    moment = Span.exact(0.0)
    for one in weights:
        where = Span(0.0, None, length) if one.lcg is None else span(one.lcg)
        moment = moment + one.change * (where - about)
    return Figure(name, trimmed(moment, per_cm), "m", "sum of masses x lever about the centre of flotation / MCTC", (), tuple(defaults), unknown, CHANGES)


def draughts(start: Start, sunk: Figure, trimming: Figure) -> tuple[Figure, Figure]:
    """Draughts forward and aft after the changes [m]; from an even keel where only a mean draught is given."""
    names = ("Draught forward after", "Draught aft after")
    fore, aft = start.get("draught_fore"), start.get("draught_aft")
    even = fore is None or aft is None
    if even:
        fore = aft = start.draught
    missing = unique(sunk.gaps if sunk.span is None else (), trimming.gaps if trimming.span is None else (),
                     () if fore else (Gap("Draughts of the starting condition", "Give them forward and aft."),))
    if missing:
        return no_figure(names[0], "m", missing), no_figure(names[1], "m", missing)
    length, lcf = start.get("lpp"), start.get("lcf")
    about = FLOTATION.value * length if lcf is None else span(min(lcf, length))
    rest = rest_on(sunk, trimming)
    rest["assumptions"] = (*rest["assumptions"], *(("She starts on an even keel, as only a mean draught is given.",) if even else ()))
    found = ends(fore, aft, sunk.span, trimming.span, about, length)
    return tuple(Figure(name, one, "m", "draught + sinkage, and its share of the trim", source=CHANGES, **rest)
                 for name, one in zip(names, found, strict=True))


def kg(start: Start, weights: Sequence[Weight]) -> Figure:
    """KG after the changes, solid [m]."""
    before, mass = start.kg, start.get("displacement")
    if before is None or mass is None:
        return no_figure("KG after, solid", "m", (Gap("KG", "Give KG, or KM and GM, of the starting condition from the booklet."),))
    unknown = [one for one in weights if one.vcg is None]
    gaps = tuple(Gap(f"Height of the centre of {one.name}", "It is taken as anywhere from the keel to 30 m above.") for one in unknown)
    try:
        after = centre(mass, before, weights, "vcg", ANYWHERE_UP.value) if weights else Span.exact(before)
    except ConversionError as problem:
        return no_figure("KG after, solid", "m", (Gap("KG", str(problem)),))
    return Figure("KG after, solid", after, "m", "sum of moments / sum of masses", (), (ANYWHERE_UP,) if unknown else (), gaps, CHANGES)


def km(start: Start, sunk: Figure) -> Figure:
    """KM at the draught after the changes [m]: as given, else carried over from KM before."""
    if start.get("km_after"):
        return Figure("KM after", Span.exact(start.get("km_after")), "m", "as given")
    if start.km is None or not start.draught or sunk.span is None:
        gap = Gap("KM at the new draught", "Give it from the booklet; or KM (or KG and GM), mean draught and TPC of the starting condition.")
        return no_figure("KM after", "m", (gap,))
    if sunk.span == Span.exact(0.0):
        return Figure("KM after", Span.exact(start.km), "m", "as before: the draught does not change")
    after = km_at(plain("KM", start.km, 0, 100, "m"), start.draught, sunk.span)
    return Figure("KM after", after, "m", "KM before, with KB and BM of the new draught estimated", sunk.assumptions, (*sunk.defaults, CARRIED), (), CHANGES)


def gm(high: Figure, low: Figure, surfaces: Figure, mass: Figure) -> Figure:
    """GM after the changes [m]: KM less KG less free surface; where no free surface is told, solid, and it says so in its name."""
    missing = unique(*(one.gaps for one in (high, low, mass) if one.span is None))
    if missing:
        return no_figure("GM after", "m", missing)
    if surfaces.span is None:
        return Figure("GM after, solid, before any free surface", high.span - low.span, "m", "KM - KG", source=CHANGES, **rest_on(high, low, surfaces))
    return Figure("GM after, with free surface", fluid_gm(high.span, low.span, surfaces.span, mass.span), "m", "KM - KG - free-surface moment / displacement",
                  source=CHANGES, **rest_on(high, low, surfaces, mass))


def listing(weights: Sequence[Weight], mass: Figure, height: Figure) -> Figure | None:
    """List [deg], plus to starboard, from upright; None where no weight names a side."""
    if not any(one.tcg for one in weights) or mass.span is None or height.span is None:
        return None
    unknown = tuple(Gap(f"Side of {one.name}", "Its centre off the centreline is not given, so a list cannot be told.") for one in weights if one.tcg is None)
    if unknown:
        return no_figure("List", "deg", unknown)
    try:
        moment = sum((one.change * one.tcg for one in weights), Span.exact(0.0))
        return Figure("List (plus to starboard)", heel(moment, mass.span, height.span), "deg", "moment / (displacement x GM), from upright", source=CHANGES)
    except ConversionError as problem:
        return no_figure("List", "deg", (Gap("List", str(problem)),))


def rolled(start: Start) -> Figure | None:
    """GM of the day that a timed roll tells [m]; None where none was timed."""
    period, breadth = start.get("roll_period"), start.get("breadth")
    if period is None:
        return None
    name, length = "GM of the day by its roll period", start.get("lwl") or start.get("lpp")
    if breadth is None:
        return no_figure(name, "m", (Gap("Breadth", "A roll period tells nothing without it."),))
    loading = start.row.text("roll_loading")
    if length is not None and length > ROLL_LENGTH:
        if not start.draught:
            return no_figure(name, "m", (Gap("Mean draught", "Above 70 m the roll period is reckoned with breadth over draught."),))
        factor, defaults, source = around_factor(2 * roll_constant(breadth, start.draught, length)), (), WEATHER
    else:
        factor, defaults = (around_factor(ROLL_FACTORS[loading]), ()) if loading else (ANY_LOADING.value, (ANY_LOADING,))
        source = ROLLED
    text = f"(f B / T)², f {factor.low:.2f} to {factor.high:.2f}"
    assumed = ("The roll period is the mean of several rolls, lines slack, in deep water; it replaces no inclining test.",)
    return Figure(name, rolled_gm(period, breadth, factor), "m", text, assumed, defaults, (), source)
