"""The greatest KG that the booklet allows, and the KG that it is compared with."""

from inspector.conversion.core.figure import Default, Figure, Gap, no_figure, rest_on
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.starting_condition import StartingCondition

FLUID, SOLID = "fluid", "solid"
LIMIT = "Greatest KG allowed after"
MOSTLY_FLUID = Default(
    "what the greatest KG of the booklet means",
    FLUID,
    "Booklets mostly print it for KG with free surfaces, and it is the careful reading.",
)


def is_fluid(start: StartingCondition) -> bool:
    """Return whether the booklet's limit is for KG with free surfaces.

    Parameters
    ----------
    start : StartingCondition

    Returns
    -------
    bool
        True also where nobody said: a listed default.

    References
    ----------
    As typed from the booklet.
    """
    return start.row.text("limit_is", FLUID) == FLUID


def kg_limit(
    start: StartingCondition, table: HydrostaticTable | None, mass: Figure
) -> Figure | None:
    """Return the greatest KG that the booklet allows after the changes.

    Parameters
    ----------
    start : StartingCondition
    table : HydrostaticTable or None
        The limit by displacement.
    mass : Figure
        Displacement after [t].

    Returns
    -------
    Figure or None
        Limit [m]; None where the booklet's limit is not typed at all.

    References
    ----------
    As the approved booklet prints it, on a straight line between its rows (common practice).
    """
    defaults = () if start.row.text("limit_is") else (MOSTLY_FLUID,)
    given = start.number("limit_kg")
    if table is not None and table.has("limit_kg") and mass.span is not None:
        try:
            limit = table.at_displacement("limit_kg", mass.span)
        except ConversionError as problem:
            # A limit of another draught is no limit here, unless somebody read it for this one.
            if given is None:
                return no_figure(LIMIT, "m", (Gap(LIMIT, str(problem)),))
        else:
            rest = rest_on(mass)
            rest["defaults"] = (*rest["defaults"], *defaults)
            formula = "limit by the booklet at the displacement after"
            return Figure(LIMIT, limit, "m", formula, **rest)
    if given is None:
        return None
    return Figure(LIMIT, Span.exact(given), "m", "as given", defaults=defaults)
