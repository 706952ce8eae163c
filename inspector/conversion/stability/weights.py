"""Weights that come off and go on, and where the common centre is after them.

Masses are spans; a centre that is not known may be anywhere in the vessel, and the common centre is
bounded exactly.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from inspector.conversion.core.bounds import BadInput, check_ranges, one_of, within
from inspector.conversion.core.span import Span, span
from inspector.values.formatting import show

ACTS = ("off", "on")
# Stores are the part of the deadweight that is used up on passage.
PARTS = ("lightship", "deadweight", "stores")
# A search that gains at each step ends far sooner; this only keeps rounding from running on.
MOST_STEPS = 60


@dataclass(frozen=True)
class Weight:
    """One weight off or on; a coordinate that is not known is None.

    Parameters
    ----------
    name : str
    act : str
        "off" or "on".
    mass : Span
        Mass [t].
    lcg : float, optional
        Centre from the after perpendicular, forward is plus [m].
    tcg : float, optional
        Centre off the centreline, starboard is plus [m].
    vcg : float, optional
        Centre above the keel [m].
    part : str
        One of PARTS.

    Raises
    ------
    BadInput
        A value that no weight can have; the field is named.
    """

    name: str
    act: str
    mass: Span
    lcg: float | None = None
    tcg: float | None = None
    vcg: float | None = None
    part: str = "lightship"

    def __post_init__(self) -> None:
        one_of(f"{self.name}: act", self.act, ACTS)
        one_of(f"{self.name}: part of", self.part, PARTS)
        within(f"{self.name}: mass", self.mass, 0, 100_000, "t")
        axes = {"lcg": (-200, 200, "m"), "tcg": (-50, 50, "m"), "vcg": (-5, 80, "m")}
        check_ranges(self.name, self, axes)

    @cached_property
    def change(self) -> Span:
        """Mass added [t], minus where it comes off."""
        # Subtracted from zero, which also turns the ends of the span.
        return self.mass if self.act == "on" else 0 - self.mass


def total_change(weights: Iterable[Weight]) -> Span:
    """Return the mass that all weights add together.

    Parameters
    ----------
    weights : iterable of Weight

    Returns
    -------
    Span
        Mass added [t], minus where more comes off; zero without weights.

    References
    ----------
    Sum of masses, plain mechanics.
    """
    return sum((weight.change for weight in weights), Span.exact(0.0))


def common_centre(
    mass: float, position: float, weights: Iterable[Weight], axis: str, anywhere: Span
) -> Span:
    """Return the common centre after weights change a mass.

    Parameters
    ----------
    mass : float
        Mass before [t].
    position : float
        Its centre before along the axis [m].
    weights : iterable of Weight
    axis : str
        "lcg", "tcg" or "vcg".
    anywhere : Span
        Where a weight of unknown centre may be [m].

    Returns
    -------
    Span
        The least and the greatest position [m] that any masses and centres within their spans give.
        The likely value is known only where every part's is.

    Raises
    ------
    BadInput
        Nothing would be left of the mass.

    References
    ----------
    Sum of moments / sum of masses, plain mechanics; the search for the ends is a model of our own.
    """
    parts = []
    for weight in weights:
        coordinate = getattr(weight, axis)
        parts.append((weight.change, anywhere if coordinate is None else span(coordinate)))
    # A quotient by zero or by a negative mass would turn the ends of the span around.
    if mass + sum(change.low for change, _ in parts) <= 0:
        raise BadInput(
            f"Weights: {show(mass, 't')} less what comes off leaves nothing; "
            "check the displacement and the weights.",
            field="weights",
            value=mass,
        )
    low = _extreme(mass, position, parts, greatest=False)
    high = _extreme(mass, position, parts, greatest=True)
    # Without a place for one weight there is no likely centre, only the two ends.
    if any(change.point is None or centre.point is None for change, centre in parts):
        return Span(low, None, high)
    likely = _centre(mass, position, [(change.point, centre.point) for change, centre in parts])
    return Span(min(low, likely), likely, max(high, likely))


def _centre(mass: float, position: float, parts: list[tuple[float, float]]) -> float:
    """Return the common centre [m] of a mass and its changes, given as (mass, centre)."""
    moment = mass * position + sum(change * centre for change, centre in parts)
    return moment / (mass + sum(change for change, _ in parts))


def _extreme(mass: float, position: float, parts: list[tuple[Span, Span]], greatest: bool) -> float:
    """Return the least or greatest centre [m] over all corners of the spans."""
    # A quotient of linear forms has its extremes at corners, and each step to the best corner for
    # the present value gains until none does.
    best = value = position
    for _ in range(MOST_STEPS):
        corner = [_best_corner(change, centre, best, greatest) for change, centre in parts]
        value = _centre(mass, position, corner)
        if abs(value - best) <= 1e-13 * max(1.0, abs(value)):
            break
        best = value
    return value


def _best_corner(
    change: Span, centre: Span, position: float, greatest: bool
) -> tuple[float, float]:
    """Return the mass and centre of a part that move the common centre furthest from a position."""
    sign = 1 if greatest else -1
    # What is in between cannot move the centre further than one of these four.
    corners = [(mass, at) for mass in (change.low, change.high) for at in (centre.low, centre.high)]
    return max(corners, key=lambda corner: sign * corner[0] * (corner[1] - position))


def kg_rise(mass: float, kg: float, weight: Weight) -> Span | None:
    """Return how far one weight alone raises the centre of gravity of a vessel.

    Parameters
    ----------
    mass : float
        Displacement [t].
    kg : float
        Centre of gravity above the keel [m].
    weight : Weight

    Returns
    -------
    Span or None
        Rise [m], minus where KG falls; None where the weight's height is not known.

    Raises
    ------
    BadInput
        The weight takes off more than the displacement.

    References
    ----------
    Sum of moments / sum of masses, plain mechanics.
    """
    if weight.vcg is None:
        return None
    return common_centre(mass, kg, (weight,), "vcg", span(weight.vcg)) - kg


def lightship_weights(weights: Iterable[Weight]) -> tuple[Weight, ...]:
    """Return the weights that change the lightship, a model of our own.

    Contents of tanks and stores are deadweight.

    Parameters
    ----------
    weights : iterable of Weight

    Returns
    -------
    tuple of Weight
    """
    return tuple(weight for weight in weights if weight.part == "lightship")
