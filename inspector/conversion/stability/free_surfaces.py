"""Free surfaces: which tanks are slack, and what their moments add up to."""

from collections.abc import Sequence

from inspector.conversion.core.figure import Default, Figure, Gap, unique
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError, Span, span
from inspector.conversion.core.tank_rows import CONVERTED, REMOVED
from inspector.conversion.stability.booklet.hydrostatics import CHANGES, free_surface_moment
from inspector.conversion.stability.tanks_given_up import assumed_density
from inspector.values.text import counted

# A void is empty by its name, and dry bulk does not run to the low side like a liquid.
DRY = ("void", "dry bulk")
# Filled to so many per cent and more, a tank counts as pressed up: IS Code 2008 part B 3.1.2
# (seen).
PRESSED_UP = 98.0
# kg/m³ of the liquids that a converted tank may hold.
ANY_LIQUID = Span(840.0, 1000.0, 1030.0)
NAME = "Free-surface moment"
BOOKLET = (
    "The booklet's free-surface moment of the starting condition is also used after the changes."
)
SLACK = (
    "Every tank that is not empty or pressed up counts as slack, and so does each converted one."
)


def _is_slack(tank: Row) -> bool:
    """Return whether a tank has a free surface after the changes; an unknown filling may."""
    plan = tank["plan"]
    if plan == REMOVED:
        return False
    # Whatever it holds now, a converted tank will be filled and emptied.
    if plan == CONVERTED:
        return tank.text("becomes") not in DRY
    fill = tank.number("fill")
    # A filling that nobody recorded counts as slack: the careful side.
    partly_filled = fill is None or 0 < fill < PRESSED_UP
    return tank.text("kind") not in DRY and partly_filled


def free_surfaces(tanks: Sequence[Row], booklet: float | None) -> Figure:
    """Return the moment of all free surfaces after the changes.

    Parameters
    ----------
    tanks : sequence of Row
        The rows of the table of tanks.
    booklet : float or None
        Free-surface moment of the starting condition by the booklet [t·m].

    Returns
    -------
    Figure
        Moment [t·m]: of the tanks, and not less than the booklet's where a tank lacks its inertia;
        without a span where neither tanks nor booklet give a moment.

    References
    ----------
    Sum of density × inertia, textbooks of ship stability (seen).
    """
    # A full and an empty tank have no surface to run; all others count, however little is in them.
    slack = [tank for tank in tanks if _is_slack(tank)]
    measured = [tank for tank in slack if tank["free_surface"] is not None]
    lacking = [tank for tank in slack if tank["free_surface"] is None]
    gaps = tuple(_inertia_gap(tank) for tank in lacking)
    # With no inertia at all the booklet's moment is the only figure there is.
    if not measured:
        return _by_booklet(booklet, gaps)
    moment, defaults, refused = _tank_moments(measured)
    formula = f"sum of density × inertia of {counted(len(measured), 'tank')}"
    # The booklet counts all tanks, so a sum that lacks some is never taken below it.
    if lacking and booklet is not None:
        moment = Span(max(moment.low, booklet), None, max(moment.high, booklet))
        formula = f"{formula}, and not less than the booklet's"
    return Figure(NAME, moment, "t·m", formula, (SLACK,), defaults, (*gaps, *refused), CHANGES)


def _inertia_gap(tank: Row) -> Gap:
    """Return the gap of a slack tank whose inertia [m⁴] is not given."""
    return Gap(
        f"Free surface of {tank.text('name')}",
        "Its inertia is in the capacity plan; without it the metacentric height is too high.",
    )


def _by_booklet(booklet: float | None, gaps: tuple[Gap, ...]) -> Figure:
    """Return the booklet's moment, else the gap that leaves only the solid GM."""
    if booklet is not None:
        moment = Span.exact(booklet)
        return Figure(
            NAME, moment, "t·m", "as in the booklet", (BOOKLET,), gaps=gaps, source=CHANGES
        )
    missing = Gap(
        "Free surfaces",
        "Give the inertia of each slack tank, or the booklet's moment; "
        "without them only the solid GM is known.",
    )
    return Figure(NAME, None, "t·m", "sum of density × inertia", gaps=(missing,))


def _tank_moments(
    tanks: Sequence[Row],
) -> tuple[Span, tuple[Default, ...], tuple[Gap, ...]]:
    """Return the sum of the moments [t·m], the densities assumed, and what could not be used."""
    total, defaults, refused = Span.exact(0.0), [], []
    for tank in tanks:
        density, assumed = _density_after(tank)
        defaults += assumed
        try:
            total = total + free_surface_moment(tank.number("free_surface"), density)
        except ConversionError as problem:
            # One tank that was mistyped does not take the others with it.
            refused.append(Gap(f"Free surface of {tank.text('name')}", str(problem)))
    return total, unique(defaults), tuple(refused)


def _density_after(tank: Row) -> tuple[Span, tuple[Default, ...]]:
    """Return the density [kg/m³] of what a tank holds after the changes, and what was assumed."""
    given = tank.number("density")
    if tank["plan"] != CONVERTED:
        if given is not None:
            return span(given), ()
        assumed = assumed_density(tank.text("name"), tank.text("kind"))
        return assumed.value, (assumed,)
    becomes = tank.text("becomes")
    if becomes:
        assumed = assumed_density(tank.text("name"), becomes)
        return assumed.value, (assumed,)
    why = "It is to be converted, and nobody said to what: any liquid is possible."
    any_liquid = Default(f"density in {tank.text('name')}", ANY_LIQUID, why, unit="kg/m³")
    return ANY_LIQUID, (any_liquid,)
