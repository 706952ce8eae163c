"""Free surfaces from the table of tanks: which tanks count, with which density, and what their moments sum to."""

from collections.abc import Sequence

from inspector.conversion.inputs import PRACTICE
from inspector.conversion.shapes import ConversionError, Default, Figure, Gap, Span
from inspector.conversion.stability import CHANGES, SLACK_FROM, free_surface_moment
from inspector.conversion.tables import Row

DRY = ("void", "dry bulk")
# kg/m³ where the table of tanks names none
DENSITIES = {
    "fuel": Span(840.0, 850.0, 900.0), "fresh water": Span.exact(1000.0), "sewage": Span(1000.0, 1000.0, 1025.0), "grey water": Span(1000.0, 1000.0, 1025.0),
    "lubricating oil": Span(880.0, 900.0, 920.0), "ballast": Span(1000.0, 1025.0, 1030.0), "wet cargo": Span(800.0, 1500.0, 2500.0),
}
BOOKLET = "The booklet's free-surface moment of the starting condition holds after the changes too."


def counted(row: Row) -> bool:
    """Whether a tank has a free surface after the changes: a liquid, not removed or turned to another use, and neither empty nor filled to 98 %."""
    fill = row.number("fill")
    slack = fill is None or 0 < fill < SLACK_FROM
    return row.text("kind") not in DRY and row["plan"] not in ("remove", "convert") and slack


def free_surfaces(tanks: Sequence[Row], booklet: float | None) -> Figure:
    """Moment of all free surfaces after the changes [t·m]: the tanks', and not less than the booklet's where a tank lacks its inertia.

    Tanks whose filling is not told count as slack. No figure where neither tanks nor booklet tell a moment.
    """
    name = "Free-surface moment"
    slack = [row for row in tanks if counted(row)]
    told, lacking = ([row for row in slack if (row["free_surface"] is not None) is has] for has in (True, False))
    gaps = tuple(Gap(f"Free surface of {row.text('name')}", "Its inertia stands in the capacity plan (m⁴); without it the metacentric height reads too high.")
                 for row in lacking)
    if not told:
        if booklet is None:
            missing = Gap("Free surfaces", "Give the inertia of each slack tank, or the booklet's moment; without them only the solid GM is told.")
            return Figure(name, None, "t·m", "sum of density x inertia", gaps=(missing,))
        return Figure(name, Span.exact(booklet), "t·m", "as in the booklet", (BOOKLET,), gaps=gaps, source=CHANGES)
    total, defaults = Span.exact(0.0), []
    for row in told:
        density = row.number("density")
        given = DENSITIES.get(row.text("kind"), DENSITIES["wet cargo"]) if density is None else density
        if density is None:
            defaults.append(Default(f"density in {row.text('name')}", given, "kg/m³", f"None is given for {row.text('kind', 'its contents')}.", PRACTICE))
        try:
            total = total + free_surface_moment(row.number("free_surface"), given)
        except ConversionError as problem:
            gaps = (*gaps, Gap(f"Free surface of {row.text('name')}", str(problem)))
    text = f"sum of density x inertia of {len(told)} {'tank' if len(told) == 1 else 'tanks'}"
    if lacking and booklet is not None:
        total, text = Span(max(total.low, booklet), None, max(total.high, booklet)), f"{text}, and not less than the booklet's"
    return Figure(name, total, "t·m", text, ("Every tank that is not empty or pressed up counts as slack.",), tuple(defaults), gaps, CHANGES)
