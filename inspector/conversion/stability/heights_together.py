"""Fluid KG and GM over all that the masses may be, each mass being one and the same in all of it.

Displacement, KM, KG and the rise by free surfaces all hang on the same few masses. Spread as if
each were a span of its own, a heavy house would be taken with the KM of a light one.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import sqrt

from inspector.conversion.core.figure import Figure
from inspector.conversion.core.span import Span, span
from inspector.conversion.stability.booklet.hydrostatic_table import HydrostaticTable
from inspector.conversion.stability.metacentric_height import ANY_HEIGHT
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.weights import Weight, total_change

# Two displacements that differ by less [t] are one.
SAME = 1e-9


@dataclass(frozen=True)
class Loading:
    """A displacement with its height, and what changes it.

    Parameters
    ----------
    mass, kg : float
        Before the changes [t] and [m].
    weights : tuple of Weight
    surfaces : Span
        Moment of free surfaces after [t·m].
    """

    mass: float
    kg: float
    weights: tuple[Weight, ...]
    surfaces: Span


def heights_together(
    loading: Loading, km: Callable[[float], float], knots: Iterable[float] = ()
) -> tuple[float, float]:
    """Return the least and the greatest of KM less fluid KG over all masses and heights.

    Parameters
    ----------
    loading : Loading
    km : callable
        Height of the metacentre [m] at a displacement [t], straight between knots.
    knots : iterable of float
        Displacements at which it bends [t].

    Returns
    -------
    tuple of (float, float)
        [m]

    References
    ----------
    Sums of masses and moments; for each displacement the extreme moment is found exactly by filling
    up the weights in the order of their heights. Between two places where anything bends the height
    is a + b M − c / M, which is least at an end and greatest there or at M = √(−c / b).
    """
    change = total_change(loading.weights)
    low, high = loading.mass + change.low, loading.mass + change.high
    ends = []
    for highest, moment in ((True, loading.surfaces.high), (False, loading.surfaces.low)):
        spans, heights = _parts(loading.weights, highest)
        least = loading.mass + sum(part.low for part in spans)
        places = sorted({low, high, *_full(least, spans, heights, highest), *knots})
        places = [place for place in places if low <= place <= high]

        def height(mass: float, *known, extra: float = moment) -> float:
            up = loading.mass * loading.kg + _moment(mass - loading.mass, *known)
            return km(mass) - (up + extra) / mass

        at = [(mass, height(mass, spans, heights, highest)) for mass in places]
        if not highest:
            at += _tops(at, lambda mass, known=(spans, heights, highest): height(mass, *known))
        values = [value for _, value in at]
        ends.append(min(values) if highest else max(values))
    return ends[0], ends[1]


def _parts(weights: Sequence[Weight], highest: bool) -> tuple[list[Span], list[float]]:
    """Return the change of each weight [t] and the height [m] at which it raises most, or least."""
    spans, heights = [], []
    for weight in weights:
        anywhere = ANY_HEIGHT.value if weight.vcg is None else span(weight.vcg)
        # What comes off raises most where it comes off lowest.
        spans.append(weight.change)
        heights.append(anywhere.high if (weight.act == "on") == highest else anywhere.low)
    return spans, heights


def _order(heights: Sequence[float], highest: bool) -> list[int]:
    return sorted(range(len(heights)), key=lambda at: heights[at], reverse=highest)


def _full(
    least: float, spans: Sequence[Span], heights: Sequence[float], highest: bool
) -> list[float]:
    """Return the displacements [t] at which one weight after the other is at its upper end."""
    found = [least]
    for at in _order(heights, highest):
        found.append(found[-1] + spans[at].width)
    return found


def _moment(change: float, spans: Sequence[Span], heights: Sequence[float], highest: bool) -> float:
    """Return the greatest or least moment [t·m] of weights that add up to a change [t]."""
    moment = sum(part.low * height for part, height in zip(spans, heights, strict=True))
    left = change - sum(part.low for part in spans)
    for at in _order(heights, highest):
        taken = min(max(left, 0.0), spans[at].width)
        moment += taken * heights[at]
        left -= taken
    return moment


def _tops(
    at: Sequence[tuple[float, float]], height: Callable[[float], float]
) -> list[tuple[float, float]]:
    """Return where the height is greatest inside each stretch between two places."""
    found = []
    for (low, first), (high, last) in pairwise(at):
        if high - low < SAME:
            continue
        # a + b M − c / M through three places of the stretch.
        middle = (low + high) / 2
        value = height(middle)
        left = (value - first) / (middle - low)
        right = (last - value) / (high - middle)
        # Divided differences: left = b + c / (low middle), right = b + c / (middle high).
        c = (left - right) / (1 / (low * middle) - 1 / (middle * high))
        b = left - c / (low * middle)
        if b < 0 < c and low < sqrt(-c / b) < high:
            top = sqrt(-c / b)
            found.append((top, height(top)))
    return found


def together(
    start: StartingCondition,
    weights: Sequence[Weight],
    table: HydrostaticTable | None,
    figures: tuple[Figure, Figure, Figure, Figure],
) -> tuple[Figure, Figure]:
    """Return fluid KG and GM with the ends that the masses allow together.

    Parameters
    ----------
    start : StartingCondition
    weights : sequence of Weight
    table : HydrostaticTable or None
        KM by displacement of the booklet.
    figures : tuple of Figure
        KM [m], moment of free surfaces [t·m], fluid KG [m] and GM [m], each spread by itself.

    Returns
    -------
    tuple of (Figure, Figure)
        Fluid KG and GM [m]; never wider than they were.

    References
    ----------
    See ``heights_together``.
    """
    metacentre, surfaces, fluid, gm = figures
    if surfaces.span is None or fluid.span is None or not weights:
        return fluid, gm
    loading = Loading(start.number("displacement"), start.kg, tuple(weights), surfaces.span)
    height = None if gm.span is None else metacentre.span
    low, high = spans_together(loading, table, height, (fluid.span, gm.span))
    return replace(fluid, span=low), replace(gm, span=high)


def spans_together(
    loading: Loading,
    table: HydrostaticTable | None,
    metacentre: Span | None,
    apart: tuple[Span, Span | None],
) -> tuple[Span, Span | None]:
    """Return fluid KG and GM with the ends that the masses allow together.

    Parameters
    ----------
    loading : Loading
    table : HydrostaticTable or None
        KM by displacement of the booklet.
    metacentre : Span or None
        KM [m]; None where there is no GM.
    apart : tuple of (Span, Span or None)
        Fluid KG and GM as each part spread by itself gives them [m].

    Returns
    -------
    tuple of (Span, Span or None)
        [m]; never wider than apart.

    References
    ----------
    See ``heights_together``.
    """
    fluid, gm = apart
    low, high = heights_together(loading, lambda mass: 0.0)
    fluid = _narrowed(fluid, -high, -low)
    if gm is None or metacentre is None:
        return fluid, gm
    if metacentre.is_exact:
        height = metacentre.low
        return fluid, _narrowed(gm, *heights_together(loading, lambda mass: height))
    # KM that is no one number was read between the rows of the booklet.
    knots = [row.number("displacement") for row in table.rows if row["km"] is not None]
    return fluid, _narrowed(gm, *heights_together(loading, table.reader("km"), knots))


def _narrowed(apart: Span, low: float, high: float) -> Span:
    """Return a span with the ends that the masses together allow, never wider than before."""
    ends = (max(apart.low, low), min(apart.high, high))
    known = ends if apart.point is None else (*ends, apart.point)
    return Span(min(known), apart.point, max(known))
