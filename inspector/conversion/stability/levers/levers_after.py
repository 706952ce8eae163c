"""Which righting levers hold after the changes: KN at the new displacement, else the booklet's GZ.

Levers GZ belong to one displacement. Beyond a small change the hull under water is another one,
and lowering them by the rise of the centre of gravity alone would be wrong on the unsafe side.
"""

from dataclasses import dataclass

from inspector.conversion.core.figure import Figure, Gap
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.stability.levers.cross_curves import CrossCurves
from inspector.conversion.stability.levers.lever_span import LeverSpan
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.starting_condition import StartingCondition

# How far displacement and draught may change for GZ of the starting condition to be used, a limit
# of our own: 2 % is also where a changed lightship asks for a new inclining test.
MOST_CHANGE = 0.02  # share of the displacement
MOST_SINKAGE = 0.1  # m
TYPED = "Righting levers"
HERE = "Righting levers at the new displacement"
NONE_TYPED = Gap(
    TYPED,
    "KN by displacement and heel, every 5° or 10° to 40° or more, from the booklet; for a change "
    "of less than 2 % of displacement and 0.1 m of draught GZ of the starting condition will do.",
)
TOO_FAR = (
    "GZ holds at the displacement for which the booklet prints it, and the changes are more than "
    "2 % of displacement or 0.1 m of draught. Type KN by displacement and heel from the booklet."
)


@dataclass(frozen=True)
class LeversAfter:
    """The righting levers after the changes.

    Parameters
    ----------
    levers : LeverSpan or None
        GZ after the changes [m]; None where it is not known.
    before : RightingLevers or None
        GZ before, as typed.
    gap : Gap or None
        Why they are not known.
    """

    levers: LeverSpan | None = None
    before: RightingLevers | None = None
    gap: Gap | None = None


def levers_after(
    typed: RightingLevers | None,
    cross: CrossCurves | None,
    start: StartingCondition,
    mass: Figure,
    sinkage: Figure,
    fluid_kg: Figure,
) -> LeversAfter:
    """Return the righting levers after the changes.

    Parameters
    ----------
    typed : RightingLevers or None
        GZ of the starting condition [m].
    cross : CrossCurves or None
        KN of the booklet [m].
    start : StartingCondition
    mass : Figure
        Displacement after [t].
    sinkage : Figure
        Change of the mean draught [m].
    fluid_kg : Figure
        KG after with free surfaces [m].

    Returns
    -------
    LeversAfter

    References
    ----------
    GZ = KN − KG sin, textbooks of ship stability (seen); the limits of 2 % and 0.1 m are our own.
    """
    if typed is None and cross is None:
        return LeversAfter(gap=NONE_TYPED)
    gap = Gap(HERE, "Displacement and fluid KG after the changes are needed.")
    # Without the fluid KG nobody knows by how much the levers fall; its own gaps say why.
    if mass.span is None or fluid_kg.span is None:
        return LeversAfter(before=typed, gap=gap)
    refused = TOO_FAR
    if cross is not None:
        try:
            # KN is measured from the keel, so that the whole height comes off.
            return LeversAfter(cross.at(mass.span).lowered(fluid_kg.span), typed)
        except ConversionError as problem:
            refused = str(problem)
    if typed is None or not _is_small(start, mass.span, sinkage.span):
        return LeversAfter(before=typed, gap=Gap(HERE, refused))
    # GZ is measured from the old centre of gravity, free surfaces included.
    rise = fluid_kg.span - (start.kg + start.free_surface_rise)
    return LeversAfter(LeverSpan.exact(typed).lowered(rise), typed)


def _is_small(start: StartingCondition, mass: Span, sinkage: Span | None) -> bool:
    """Return whether the hull under water is nearly the one that GZ was calculated for."""
    before = start.number("displacement")
    change = max(abs(mass.low - before), abs(mass.high - before))
    if change > MOST_CHANGE * before:
        return False
    return sinkage is None or max(abs(sinkage.low), abs(sinkage.high)) <= MOST_SINKAGE
