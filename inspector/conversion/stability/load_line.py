"""The load line: the draught at the mark amidships against the greatest one, and what is left."""

from inspector.conversion.core.figure import Figure, Gap, no_figure, rest_on, unique
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.booklet.hydrostatics import CHANGES
from inspector.conversion.stability.floating_condition import (
    EVEN_KEEL,
    flotation_share,
    immersion,
    start_draughts,
)
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.criteria.hull.draughts import LOADLINE

AMIDSHIPS = "Draught amidships after, at the mark"
LEFT = "Draught left to the load line"
DEADWEIGHT = "Deadweight left to the load line"
NO_SAG = "The hull is taken as straight: hog and sag are read at the marks."
BY_TPC = "TPC is taken as it is at the starting draught; hydrostatics by draught are better."
NO_MARK = Gap(
    "Greatest draught by the load line",
    "It is on the load line certificate or follows from its freeboard: without it nobody knows "
    "whether she may float so deep.",
)


def draught_amidships(start: StartingCondition, sunk: Figure, trimmed: Figure) -> Figure:
    """Return the draught halfway between the perpendiculars after the changes.

    Parameters
    ----------
    start : StartingCondition
    sunk : Figure
        Change of the mean draught [m].
    trimmed : Figure
        Change of trim [m].

    Returns
    -------
    Figure
        Draught [m].

    Raises
    ------
    BadInput
        A length that cannot be.

    References
    ----------
    Mean of the draughts at the ends, trim shared by the centre of flotation, textbooks of ship
    stability (seen).
    """
    ends, even_keel = start_draughts(start)
    no_draught = Gap("Draughts of the starting condition", "Give them forward and aft.")
    missing = unique(
        sunk.gaps if sunk.span is None else (),
        trimmed.gaps if trimmed.span is None else (),
        () if ends else (no_draught,),
    )
    if missing:
        return no_figure(AMIDSHIPS, "m", missing)
    # Both ends move by one trim: half of their sum, and not the sum of two spans, is amidships.
    moved = trimmed.span * (0.5 - flotation_share(start))
    draught = sum(ends) / 2 + sunk.span + moved
    rest = rest_on(sunk, trimmed)
    kept = (EVEN_KEEL, NO_SAG) if even_keel else (NO_SAG,)
    rest["assumptions"] = (*rest["assumptions"], *kept)
    formula = "mean of the draughts at the ends + sinkage, and its share of the trim"
    return Figure(AMIDSHIPS, draught, "m", formula, source=CHANGES, **rest)


def draught_left(start: StartingCondition, amidships: Figure) -> Figure:
    """Return how far the load-line mark is above the water after the changes.

    Parameters
    ----------
    start : StartingCondition
    amidships : Figure
        Draught amidships after [m].

    Returns
    -------
    Figure
        Greatest draught less draught [m]; minus where the mark is under water.

    References
    ----------
    International Convention on Load Lines, article 12 (seen as a national act repeats it).
    """
    greatest = start.number("greatest_draught")
    missing = () if greatest else (NO_MARK,)
    if missing or amidships.span is None:
        return no_figure(LEFT, "m", unique(missing, amidships.gaps))
    formula = "greatest draught − draught amidships"
    rest = rest_on(amidships)
    return Figure(LEFT, greatest - amidships.span, "m", formula, source=LOADLINE, **rest)


def deadweight_left(
    start: StartingCondition, table: HydrostaticTable | None, mass: Figure, left: Figure
) -> Figure:
    """Return what may still be loaded before the load line is under water.

    Parameters
    ----------
    start : StartingCondition
    table : HydrostaticTable or None
        Displacement by draught of the booklet.
    mass : Figure
        Displacement after [t].
    left : Figure
        Draught left to the load line [m].

    Returns
    -------
    Figure
        Mass [t]: displacement at the greatest draught less displacement, else draught left × TPC.

    Raises
    ------
    BadInput
        A TPC that cannot be.

    References
    ----------
    Displacement by draught as the booklet prints it; mass = draught × TPC, textbooks of ship
    stability (seen).
    """
    greatest = start.number("greatest_draught")
    if greatest and table is not None and mass.span is not None:
        try:
            deepest = table.displacement_at(greatest)
        except ConversionError:
            # Past the last row the coarser way by TPC is left.
            pass
        else:
            formula = "displacement at the greatest draught − displacement after"
            rest = rest_on(mass)
            return Figure(DEADWEIGHT, deepest - mass.span, "t", formula, source=CHANGES, **rest)
    tpc = immersion(start)
    if left.span is None or tpc.span is None:
        return no_figure(DEADWEIGHT, "t", unique(left.gaps, tpc.gaps))
    rest = rest_on(left, tpc)
    rest["assumptions"] = (*rest["assumptions"], BY_TPC)
    mass_left: Span = left.span * tpc.span.middle * 100
    return Figure(DEADWEIGHT, mass_left, "t", "draught left × TPC", source=CHANGES, **rest)
