"""KG, KM, GM and list after the changes."""

from collections.abc import Sequence

from inspector.conversion.core.figure import Default, Figure, Gap, no_figure, rest_on, unique
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.booklet.hydrostatics import CHANGES, fluid_gm, list_angle
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.weights import Weight, common_centre

ANY_HEIGHT = Default(
    "height of a weight without a centre",
    Span(0.0, None, 30.0),
    "It may be anywhere from the keel to high on a mast.",
    unit="m",
)
NO_KM = Gap(
    "KM at the new draught",
    "Give hydrostatics by draught from the booklet, around the draught after the changes; KM is "
    "not carried from one draught to another.",
)
KG, KM, LIST = "KG after, solid", "KM after", "List (plus to starboard)"
FLUID_KG = "KG after, fluid"
SOLID_GM, FLUID_GM = "GM after, solid, before any free surface", "GM after, with free surface"


def height_of_gravity(start: StartingCondition, weights: Sequence[Weight]) -> Figure:
    """Return KG after the changes, solid.

    Parameters
    ----------
    start : StartingCondition
    weights : sequence of Weight
        One without a height may be anywhere from the keel to 30 m above it, a listed default.

    Returns
    -------
    Figure
        KG [m].

    References
    ----------
    Sum of moments / sum of masses, textbooks of ship stability (seen).
    """
    before, mass = start.kg, start.number("displacement")
    if before is None or mass is None:
        why = "Give KG, or KM and GM, of the starting condition from the booklet."
        return no_figure(KG, "m", (Gap("KG", why),))
    unplaced = [weight for weight in weights if weight.vcg is None]
    why = "It is taken as anywhere from the keel to 30 m above."
    gaps = tuple(Gap(f"Height of the centre of {weight.name}", why) for weight in unplaced)
    try:
        after = _centre_of_gravity(mass, before, weights)
    except ConversionError as problem:
        return no_figure(KG, "m", (Gap("KG", str(problem)),))
    defaults = (ANY_HEIGHT,) if unplaced else ()
    return Figure(KG, after, "m", "sum of moments / sum of masses", (), defaults, gaps, CHANGES)


def _centre_of_gravity(mass: float, kg: float, weights: Sequence[Weight]) -> Span:
    """Return KG [m] of the ship with its weights moved on and off."""
    # Without weights the search for the ends has nothing to search, and KG is exactly as before.
    return common_centre(mass, kg, weights, "vcg", ANY_HEIGHT.value) if weights else Span.exact(kg)


def fluid_height_of_gravity(gravity: Figure, surfaces: Figure, mass: Figure) -> Figure:
    """Return KG after the changes, raised by all free surfaces.

    Parameters
    ----------
    gravity : Figure
        KG after, solid [m].
    surfaces : Figure
        Moment of all free surfaces [t·m].
    mass : Figure
        Displacement after [t].

    Returns
    -------
    Figure
        Fluid KG [m]; without a span where no free surface is known.

    References
    ----------
    KG + free-surface moment / displacement, textbooks of ship stability (seen).
    """
    parts = (gravity, surfaces, mass)
    missing = unique(*(figure.gaps for figure in parts if figure.span is None))
    formula = "KG, solid + free-surface moment / displacement"
    if missing:
        return no_figure(FLUID_KG, "m", missing, formula)
    height = gravity.span + surfaces.span / mass.span
    return Figure(FLUID_KG, height, "m", formula, source=CHANGES, **rest_on(*parts))


def height_of_metacentre(
    start: StartingCondition, table: HydrostaticTable | None, mass: Figure
) -> Figure:
    """Return KM at the draught after the changes.

    Parameters
    ----------
    start : StartingCondition
    table : HydrostaticTable or None
        KM by displacement of the booklet.
    mass : Figure
        Displacement after [t].

    Returns
    -------
    Figure
        KM [m]: of the table, else as given; it is never carried to another draught.

    References
    ----------
    The booklet's own KM, interpolated on a straight line between its rows (common practice).
    """
    refused = NO_KM
    if table is not None and table.has("km") and mass.span is not None:
        try:
            km = table.at_displacement("km", mass.span)
            return Figure(KM, km, "m", "hydrostatics at the displacement after", **rest_on(mass))
        except ConversionError as problem:
            refused = Gap(NO_KM.name, str(problem))
    given = start.number("km_after")
    if given:
        return Figure(KM, Span.exact(given), "m", "as given")
    # Where nothing changes the KM of the starting condition holds.
    before = start.number("displacement")
    if start.km is not None and mass.span is not None and mass.span == Span.exact(before):
        formula = "as before: the displacement does not change"
        return Figure(KM, Span.exact(start.km), "m", formula)
    return no_figure(KM, "m", (refused,))


def metacentric_height(
    metacentre: Figure, gravity: Figure, surfaces: Figure, mass: Figure
) -> Figure:
    """Return GM after the changes.

    Parameters
    ----------
    metacentre : Figure
        KM after [m].
    gravity : Figure
        KG after, solid [m].
    surfaces : Figure
        Moment of all free surfaces [t·m].
    mass : Figure
        Displacement after [t].

    Returns
    -------
    Figure
        GM [m]: KM less KG less free surface. Solid, as its name then says, where no free surface is
        known.

    Raises
    ------
    BadInput
        A displacement that cannot be.

    References
    ----------
    KM − KG − free-surface moment / displacement, textbooks of ship stability (seen).
    """
    unknown = [figure.gaps for figure in (metacentre, gravity, mass) if figure.span is None]
    missing = unique(*unknown)
    if missing:
        return no_figure("GM after", "m", missing)
    # A solid GM is an upper end: better than nothing as long as its name says what it is.
    if surfaces.span is None:
        solid = metacentre.span - gravity.span
        rest = rest_on(metacentre, gravity, surfaces)
        return Figure(SOLID_GM, solid, "m", "KM − KG", source=CHANGES, **rest)
    fluid = fluid_gm(metacentre.span, gravity.span, surfaces.span, mass.span)
    rest = rest_on(metacentre, gravity, surfaces, mass)
    formula = "KM − KG − free-surface moment / displacement"
    return Figure(FLUID_GM, fluid, "m", formula, source=CHANGES, **rest)


def angle_of_list(weights: Sequence[Weight], mass: Figure, gm: Figure) -> Figure | None:
    """Return the list from upright.

    Parameters
    ----------
    weights : sequence of Weight
    mass : Figure
        Displacement after [t].
    gm : Figure
        GM after [m].

    Returns
    -------
    Figure or None
        List [deg], plus to starboard; None where no weight is off the centreline.

    References
    ----------
    tan(list) = moment / (displacement × GM), textbooks of ship stability (seen).
    """
    # Where no weight is off the centreline, a list is no question and no gap.
    # 0 is on the centreline, and None is not known.
    off_centre = any(weight.tcg for weight in weights)
    if not off_centre or mass.span is None or gm.span is None:
        return None
    why = "Its centre off the centreline is not given, so no list can be calculated."
    # One weight of unknown side could list the ship either way.
    unplaced = [weight for weight in weights if weight.tcg is None]
    if unplaced:
        gaps = tuple(Gap(f"Side of {weight.name}", why) for weight in unplaced)
        return no_figure(LIST, "deg", gaps)
    moment = sum((weight.change * weight.tcg for weight in weights), Span.exact(0.0))
    try:
        angle = list_angle(moment, mass.span, gm.span)
    except ConversionError as problem:
        return no_figure(LIST, "deg", (Gap("List", str(problem)),))
    formula = "moment / (displacement × GM), from upright"
    return Figure(LIST, angle, "deg", formula, source=CHANGES)
