"""Weight and stability as calculated from the particulars of one inspection."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Figure, Gap, no_figure
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.core.side_area import SideArea, side_area, sizes_built
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.core.tank_rows import tanks_once
from inspector.conversion.core.things import read_things
from inspector.conversion.power.particulars import EXPOSURE
from inspector.conversion.space.particulars import ENCLOSURES
from inspector.conversion.stability import floating_condition as floating
from inspector.conversion.stability.booklet.booklet_tables import (
    LEVERS,
    cross_curves,
    hydrostatic_table,
    typed_levers,
)
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.compared.contents_and_displacement import unexplained
from inspector.conversion.stability.compared.work_line_weights import work_lines_that_differ
from inspector.conversion.stability.deck_loads import DeckLoad
from inspector.conversion.stability.free_surfaces import free_surfaces
from inspector.conversion.stability.heights_together import together
from inspector.conversion.stability.kg_limit import is_fluid, kg_limit
from inspector.conversion.stability.levers.intact_criteria import (
    INITIAL_GM,
    LEAST,
    CriterionResult,
    intact_criteria,
)
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.levers_after import LeversAfter, levers_after
from inspector.conversion.stability.levers.severe_wind import SevereWind, severe_wind
from inspector.conversion.stability.load_line import (
    AMIDSHIPS,
    DEADWEIGHT,
    deadweight_left,
    draught_amidships,
    draught_left,
)
from inspector.conversion.stability.metacentric_height import (
    FLUID_KG,
    KG,
    KM,
    LIST,
    angle_of_list,
    fluid_height_of_gravity,
    height_of_gravity,
    height_of_metacentre,
    metacentric_height,
)
from inspector.conversion.stability.particulars import WeightList, read_weights
from inspector.conversion.stability.roll_period import ROLL_GM, gm_by_roll_period
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.things_on_deck import loads_on_deck
from inspector.conversion.stability.weights import Weight, kg_rise
from inspector.values.errors import InspectorError
from inspector.values.quantity import Cell


@dataclass(frozen=True)
class Condition:
    """The figures of the condition after the changes.

    Parameters
    ----------
    mass : Figure
        Displacement [t].
    sinkage, trim, fore, aft : Figure
        Changes of mean draught and trim, and draughts at the ends [m].
    amidships, draught_left : Figure
        Draught at the load-line mark, and what is left to the greatest one [m].
    deadweight_left : Figure
        What may still be loaded [t].
    kg : Figure
        Height of the centre of gravity, solid [m].
    surfaces : Figure
        Moment of all free surfaces [t·m].
    fluid_kg : Figure
        Height of the centre of gravity with free surfaces [m].
    kg_limit : Figure or None
        The greatest KG that the booklet allows [m]; None where none is typed.
    km : Figure
        Height of the metacentre [m].
    gm : Figure
        Metacentric height [m].
    list_angle : Figure or None
        Angle of list [deg]; None where no weight is off the centreline.
    roll_gm : Figure or None
        GM by a timed roll [m]; None where none was timed.
    """

    mass: Figure
    sinkage: Figure
    trim: Figure
    fore: Figure
    aft: Figure
    amidships: Figure
    draught_left: Figure
    deadweight_left: Figure
    kg: Figure
    surfaces: Figure
    fluid_kg: Figure
    kg_limit: Figure | None
    km: Figure
    gm: Figure
    list_angle: Figure | None
    roll_gm: Figure | None

    @property
    def figures(self) -> tuple[Figure, ...]:
        """All figures that there are, in the order in which they are shown."""
        return tuple(figure for figure in vars(self).values() if figure is not None)


@dataclass(frozen=True)
class Stability:
    """All that is calculated, before it is put into words.

    Parameters
    ----------
    weight_list : WeightList
    start : StartingCondition
    condition : Condition
    levers : LeversAfter
    criteria : tuple of CriterionResult
    wind : SevereWind or None
        Severe wind and rolling; None where it is not known.
    deck_loads : tuple of DeckLoad
    side : SideArea
        In the wind after the changes.
    disagreements : tuple of Cell
        Where what was typed contradicts itself, one sentence each.
    faults : tuple of str
        What could not be used, one sentence each.
    """

    weight_list: WeightList
    start: StartingCondition
    condition: Condition
    levers: LeversAfter
    criteria: tuple[CriterionResult, ...]
    wind: SevereWind | None
    deck_loads: tuple[DeckLoad, ...]
    side: SideArea
    disagreements: tuple[Cell, ...]
    faults: tuple[str, ...]

    @property
    def limited_kg(self) -> Figure:
        """The KG that the booklet's limit is for: fluid, unless it says solid."""
        return self.condition.fluid_kg if is_fluid(self.start) else self.condition.kg

    @property
    def known_start(self) -> bool:
        """Whether the displacement of the starting condition is given."""
        return self.start.number("displacement") is not None

    @property
    def has_input(self) -> bool:
        """Whether anything is typed that the chapter calculates from."""
        return bool(
            self.weight_list.weights or self.deck_loads or self.start.number("displacement")
        )

    @property
    def kg_rises(self) -> list[tuple[Weight, Span | None]]:
        """Each weight with how far it alone raises KG [m], greatest first; None where unknown."""
        mass, kg = self.start.number("displacement"), self.start.kg
        rises = [(weight, _kg_rise(mass, kg, weight)) for weight in self.weight_list.weights]
        return sorted(rises, key=_by_size)


def _by_size(pair: tuple[Weight, Span | None]) -> tuple[float, str]:
    """Return the order of rises of KG: the greatest first, unknown ones last, like ones by name."""
    weight, rise = pair
    # To a micrometre: the same house typed before or after another is the same house.
    return (1.0 if rise is None else -round(abs(rise.middle), 6), weight.name)


def _kg_rise(mass: float | None, kg: float | None, weight: Weight) -> Span | None:
    """Return by how much one weight alone raises KG [m]; None where that is not known."""
    if mass is None or kg is None:
        return None
    try:
        return kg_rise(mass, kg, weight)
    except ConversionError:
        # It alone takes off more than the displacement, which the displacement after shows already.
        return None


def calculate(case: Case) -> Stability:
    """Return weight and stability of one inspection. Never raises for recorded data.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Stability

    References
    ----------
    See the modules of this chapter; each figure names its own source.
    """
    weight_list, start = read_weights(case), StartingCondition(case.one(HYDROSTATICS))
    faults = [*weight_list.faults]
    table = hydrostatic_table(case, faults)
    condition = _condition(weight_list.weights, start, table, case)
    loads, told = loads_on_deck(case, weight_list, faults)
    side = _side(case)
    levers = levers_after(
        typed_levers(case, faults),
        cross_curves(case, faults),
        start,
        condition.mass,
        condition.sinkage,
        condition.fluid_kg,
    )
    criteria = _criteria(levers.levers, condition, start, faults)
    wind = _wind(levers.levers, condition, start, side, faults)
    tanks, _ = tanks_once(case.rows(TANKS))
    lines = work_lines_that_differ(case, weight_list)
    told = (*unexplained(start, tanks), *told, *side.told, *lines)
    shown = (weight_list, start, condition, levers, criteria, wind, loads, side, told)
    return Stability(*shown, tuple(faults))


def _side(case: Case) -> SideArea:
    """Return the side area in the wind after the changes."""
    built = sizes_built(read_things(case), case.rows(ENCLOSURES))
    return side_area(case.one(HYDROSTATICS), case.one(EXPOSURE), built)


def weight_changes(weights: Sequence[Weight]) -> tuple[Figure, ...]:
    """Return the masses of what comes off and of what goes on.

    Parameters
    ----------
    weights : sequence of Weight

    Returns
    -------
    tuple of Figure
        Masses [t]; only for an act of which there is a weight.

    References
    ----------
    Sum of masses, plain mechanics.
    """
    figures = []
    for act, name in (("off", "Comes off"), ("on", "Goes on")):
        masses = [weight.mass for weight in weights if weight.act == act]
        if masses:
            formula = f"sum of {len(masses)} of the list"
            figures.append(Figure(name, sum(masses, Span.exact(0.0)), "t", formula))
    return tuple(figures)


def _condition(
    weights: tuple[Weight, ...],
    start: StartingCondition,
    table: HydrostaticTable | None,
    case: Case,
) -> Condition:
    """Return every figure after the changes; a refusal becomes the gap of its own figure."""
    mass = _or_gap(floating.DISPLACEMENT, "t", floating.displacement, start, weights)
    sinkage = _or_gap(floating.SINKAGE, "m", floating.sinkage, start, weights)
    trim = _or_gap(floating.TRIM, "m", floating.trim, start, weights)
    fore, aft = _draughts(start, sinkage, trim)
    amidships = _or_gap(AMIDSHIPS, "m", draught_amidships, start, sinkage, trim)
    left = draught_left(start, amidships)
    deadweight = _or_gap(DEADWEIGHT, "t", deadweight_left, start, table, mass, left)
    kg = _or_gap(KG, "m", height_of_gravity, start, weights)
    km = _or_gap(KM, "m", height_of_metacentre, start, table, mass)
    tanks, _ = tanks_once(case.rows(TANKS))
    surfaces = free_surfaces(tanks, start.number("free_surface"))
    fluid_kg = _or_gap(FLUID_KG, "m", fluid_height_of_gravity, kg, surfaces, mass)
    limit = kg_limit(start, table, mass)
    gm = _or_gap("GM after", "m", metacentric_height, km, kg, surfaces, mass)
    fluid_kg, gm = together(start, weights, table, (km, surfaces, fluid_kg, gm))
    listing = _or_gap(LIST, "deg", angle_of_list, weights, mass, gm)
    roll_gm = _or_gap(ROLL_GM, "m", gm_by_roll_period, start)
    afloat = (mass, sinkage, trim, fore, aft, amidships, left, deadweight)
    return Condition(*afloat, kg, surfaces, fluid_kg, limit, km, gm, listing, roll_gm)


def _or_gap(
    name: str, unit: str, calculation: Callable[..., Figure | None], *given: object
) -> Figure | None:
    """Return a figure, or the refusal as its gap."""
    try:
        return calculation(*given)
    except InspectorError as problem:
        return no_figure(name, unit, (Gap(name, str(problem)),))


def _draughts(start: StartingCondition, sinkage: Figure, trim: Figure) -> tuple[Figure, Figure]:
    """Return the draughts at the ends, or why they are not known."""
    try:
        return floating.draughts(start, sinkage, trim)
    except InspectorError as problem:
        gaps = (Gap("Draughts after", str(problem)),)
        return no_figure(floating.FORWARD, "m", gaps), no_figure(floating.AFT, "m", gaps)


def _criteria(
    levers: LeverSpan | None,
    condition: Condition,
    start: StartingCondition,
    faults: list[str],
) -> tuple[CriterionResult, ...]:
    """Return the general criteria on the levers after, as far as they reach."""
    gm, flooding = condition.gm.span, start.number("flooding")
    is_solid = condition.surfaces.span is None
    if is_solid and gm is not None and gm.high >= LEAST[INITIAL_GM]:
        # Free surfaces only lower GM, so that a solid one can fail the criterion and never meet it.
        gm = None
    try:
        return intact_criteria(levers, gm, flooding)
    except ConversionError as problem:
        faults.append(f"{LEVERS.title}: {problem}")
        # The initial GM is judged all the same: it needs no curve.
        return intact_criteria(None, gm, flooding)


def _wind(
    levers: LeverSpan | None,
    condition: Condition,
    start: StartingCondition,
    side: SideArea,
    faults: list[str],
) -> SevereWind | None:
    """Return severe wind and rolling; a refusal becomes a fault."""
    # A GM before free surfaces is no GM to roll with, and then there are no levers either.
    afloat = (condition.mass, condition.amidships, condition.fluid_kg, condition.gm)
    try:
        return severe_wind(start, levers, afloat, side)
    except ConversionError as problem:
        faults.append(f"Severe wind and rolling: {problem}")
        return None
