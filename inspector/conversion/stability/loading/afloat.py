"""A loading condition afloat: what it weighs, how it floats, and each check that it must meet."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from inspector.conversion.core.figure import Figure
from inspector.conversion.core.side_area import SideArea
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.booklet.hydrostatics import (
    end_draughts,
    list_angle,
    trim_change,
)
from inspector.conversion.stability.heights_together import Loading, spans_together
from inspector.conversion.stability.levers.cross_curves import CrossCurves
from inspector.conversion.stability.levers.intact_criteria import (
    INITIAL_GM,
    LEAST,
    CriterionResult,
    intact_criteria,
)
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.severe_wind import SevereWind, severe_wind
from inspector.conversion.stability.loading.heeling import (
    MOST_HEEL,
    crowding_lever,
    heel_by,
    turning_lever,
)
from inspector.conversion.stability.metacentric_height import ANY_HEIGHT
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.weights import Weight, common_centre, total_change


@dataclass(frozen=True)
class Vessel:
    """What all conditions of one vessel share.

    Parameters
    ----------
    start : StartingCondition
    table : HydrostaticTable or None
    cross : CrossCurves or None
    side : SideArea
    tip : float or None
        Height of the propeller's upper tip above the keel [m].
    passengers : int
    crowd : float or None
        How far from the centreline passengers can stand [m].
    speed : float or None
        At which she is turned [kn].
    """

    start: StartingCondition
    table: HydrostaticTable | None
    cross: CrossCurves | None
    side: SideArea
    tip: float | None = None
    passengers: int = 0
    crowd: float | None = None
    speed: float | None = None


@dataclass(frozen=True)
class Afloat:
    """One condition with its checks; what is not known is None.

    Parameters
    ----------
    name : str
    ballast : tuple of str
        The tanks that are filled to compensate.
    mass : Span
        Displacement [t].
    fluid_kg, limit_kg, gm : Span or None
        [m]
    amidships, left, aft, trim : Span or None
        Draught at the mark, what is left to the load line, draught aft, and trim, plus by the head
        [m].
    heel : Span or None
        List [deg].
    criteria : tuple of CriterionResult
    wind : SevereWind or None
    heels : tuple of (str, float or None)
        What heels passengers -> heel [deg], None where her levers do not bear it.
    tip_under : Span or None
        How far the propeller's tip is under water [m].
    unknown : tuple of str
        Checks that belong to her and cannot be calculated.
    """

    name: str
    mass: Span
    ballast: tuple[str, ...] = ()
    fluid_kg: Span | None = None
    limit_kg: Span | None = None
    gm: Span | None = None
    amidships: Span | None = None
    left: Span | None = None
    aft: Span | None = None
    trim: Span | None = None
    heel: Span | None = None
    criteria: tuple[CriterionResult, ...] = ()
    wind: SevereWind | None = None
    heels: tuple[tuple[str, float | None], ...] = ()
    tip_under: Span | None = None
    unknown: tuple[str, ...] = field(default=())

    @property
    def checks(self) -> tuple[tuple[str, bool | None], ...]:
        """Each check by its name: True where surely met, False where surely not."""
        kg = None
        if self.fluid_kg is not None and self.limit_kg is not None:
            kg = (self.limit_kg - self.fluid_kg).at_least(0.0)
        levers = _all([result.met for result in self.criteria] or [None])
        wind = None if self.wind is None else _all([self.wind.heel_met, self.wind.ratio_met])
        found = [
            ("load line", None if self.left is None else self.left.at_least(0.0)),
            ("greatest KG", kg),
            ("levers", levers),
            ("severe wind", wind),
        ]
        found += [(name, heel is not None and heel <= MOST_HEEL) for name, heel in self.heels]
        if self.tip_under is not None:
            found.append(("propeller under water", self.tip_under.at_least(0.0)))
        return (*found, *((name, None) for name in self.unknown))

    @property
    def met(self) -> bool | None:
        """Whether every check is met; None where one is not known and none fails."""
        return _all([met for _, met in self.checks])


def _all(verdicts: Sequence[bool | None]) -> bool | None:
    """Return False where one is, else None where one is not known."""
    if False in verdicts:
        return False
    return None if None in verdicts else True


def afloat(
    vessel: Vessel,
    name: str,
    weights: Sequence[Weight],
    surfaces: Span | None,
    ballast: tuple[str, ...] = (),
) -> Afloat:
    """Return a condition made of the lightship and all that is put on her.

    Parameters
    ----------
    vessel : Vessel
    name : str
    weights : sequence of Weight
        What changes the lightship and what is loaded.
    surfaces : Span or None
        Moment of the free surfaces of the tanks that are slack [t·m]; None where one is not known.
    ballast : tuple of str

    Returns
    -------
    Afloat

    Raises
    ------
    BadInput
        Values that contradict each other; the field is named.

    References
    ----------
    Sums of masses and moments, textbooks of ship stability (seen); the checks name their own
    source.
    """
    start = vessel.start
    lightship, height = start.number("lightship"), start.number("lightship_vcg")
    mass = lightship + total_change(weights)
    kg = common_centre(lightship, height, weights, "vcg", ANY_HEIGHT.value)
    fluid = None if surfaces is None else kg + surfaces / mass
    km, limit = _read(vessel, "km", mass), _read(vessel, "limit_kg", mass)
    gm = None if km is None or fluid is None else km - fluid
    if fluid is not None and weights:
        loading = Loading(lightship, height, tuple(weights), surfaces)
        fluid, gm = spans_together(loading, vessel.table, km, (fluid, gm))
    ends = _ends(vessel, weights, mass)
    draught = ends.get("amidships")
    levers = _levers(vessel, mass, fluid)
    greatest = start.number("greatest_draught")
    aft = ends.get("aft")
    return Afloat(
        name,
        mass,
        ballast,
        fluid,
        limit,
        gm,
        draught,
        None if draught is None or not greatest else greatest - draught,
        aft,
        ends.get("trim"),
        _listing(weights, mass, gm),
        intact_criteria(levers, gm, start.number("flooding")),
        _wind(vessel, levers, mass, draught, fluid, gm),
        _heels(vessel, levers, mass, draught, fluid),
        None if aft is None or vessel.tip is None else aft - vessel.tip,
        _unknown(vessel, levers, aft),
    )


def _read(vessel: Vessel, name: str, mass: Span) -> Span | None:
    """Return a column of the booklet at a displacement [t]; None beyond its rows."""
    if vessel.table is None or not vessel.table.has(name):
        return None
    try:
        return vessel.table.at_displacement(name, mass)
    except ConversionError:
        return None


def _ends(vessel: Vessel, weights: Sequence[Weight], mass: Span) -> dict[str, Span]:
    """Return trim and draughts amidships and aft [m]; the draught alone without centres."""
    draught, start = _read(vessel, "draught", mass), vessel.start
    if draught is None:
        return {}
    lcb, lcf, mctc = (_read(vessel, name, mass) for name in ("lcb", "lcf", "mctc"))
    length, along = start.number("lpp"), start.number("lightship_lcg")
    if None in (lcb, lcf, mctc, length, along):
        return {"amidships": draught}
    centre = common_centre(
        start.number("lightship"), along, weights, "lcg", Span(0.0, None, length)
    )
    trim = trim_change(mass * (centre - lcb), mctc)
    share = (lcf / length).apply(lambda value: min(max(value, 0.0), 1.0))
    even = (0.0, 0.0)
    _, aft = end_draughts(even, draught, trim, share)
    return {"amidships": draught + trim * (0.5 - share), "aft": aft, "trim": trim}


def _levers(vessel: Vessel, mass: Span, fluid: Span | None) -> LeverSpan | None:
    """Return GZ of the condition by the booklet's KN; None beyond its rows."""
    if vessel.cross is None or fluid is None:
        return None
    try:
        return vessel.cross.at(mass).lowered(fluid)
    except ConversionError:
        return None


def _listing(weights: Sequence[Weight], mass: Span, gm: Span | None) -> Span | None:
    """Return the list [deg]; None where the side of a weight is not known."""
    if gm is None or gm.low <= 0:
        return None
    moment = Span.exact(0.0)
    for weight in weights:
        # A tank whose side was left out is taken on the centreline, as capacity plans leave it out.
        moment = moment + weight.change * (weight.tcg or 0.0)
    return list_angle(moment, mass, gm)


def _wind(
    vessel: Vessel,
    levers: LeverSpan | None,
    mass: Span,
    draught: Span | None,
    fluid: Span | None,
    gm: Span | None,
) -> SevereWind | None:
    """Return severe wind and rolling; None where a part of it is not known."""
    if gm is None or gm.low <= 0.01:
        return None
    spans = (("displacement", mass, "t"), ("draught", draught, "m"), ("KG", fluid, "m"))
    figures = [Figure(name, value, unit, "") for name, value, unit in (*spans, ("GM", gm, "m"))]
    return severe_wind(vessel.start, levers, tuple(figures), vessel.side)


def _heels(
    vessel: Vessel,
    levers: LeverSpan | None,
    mass: Span,
    draught: Span | None,
    fluid: Span | None,
) -> tuple[tuple[str, float | None], ...]:
    """Return the heel by crowding and by turning, where passengers ask for them."""
    if not vessel.passengers or levers is None or fluid is None:
        return ()
    found = []
    # The weakest of the curves and the least displacement: a first check must not be hopeful.
    if vessel.crowd is not None:
        lever = crowding_lever(vessel.passengers, vessel.crowd, mass.low)
        found.append(("crowding", _most_heel(levers, lever)))
    length = vessel.start.number("lwl")
    if vessel.speed and length and draught is not None:
        lever = turning_lever(vessel.speed, length, fluid.high, draught.low)
        found.append(("turning", _most_heel(levers, lever)))
    return tuple(found)


def _most_heel(levers: LeverSpan, lever: float) -> float | None:
    """Return the greatest heel [deg] of all curves under a lever [m]; None where one fails."""
    heels = [heel_by(curve, lever) for curve in levers.ends]
    return None if None in heels else max(heels)


def _unknown(vessel: Vessel, levers: LeverSpan | None, aft: Span | None) -> tuple[str, ...]:
    """Return the checks that belong to this vessel and cannot be calculated."""
    lacking = []
    if vessel.passengers:
        if vessel.crowd is None or levers is None:
            lacking.append("crowding")
        if not vessel.speed or not vessel.start.number("lwl") or levers is None:
            lacking.append("turning")
    if vessel.tip is None or aft is None:
        lacking.append("propeller under water")
    return tuple(lacking)


def initial_gm_least() -> float:
    """Return the least metacentric height that any condition needs.

    Returns
    -------
    float
        [m]

    References
    ----------
    IS Code 2008, part A, 2.2.4 (seen), see ``intact_criteria``.
    """
    return LEAST[INITIAL_GM]
