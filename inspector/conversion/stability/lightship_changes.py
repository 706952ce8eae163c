"""How far the lightship changes, and whether its booklet is amended or the vessel inclined anew."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.weights import (
    Weight,
    common_centre,
    lightship_weights,
    total_change,
)
from inspector.criteria.hull.lightship_and_roll import AMEND, INCLINE, LCG_AMEND, LCG_INCLINE

VCG_AMEND, VCG_INCLINE = 0.5, 1.0  # % of the lightship's height (the first from memory)
MASS, ALONG, HEIGHT = "mass", "centre along the length", "centre in height"
# What changes -> the share from which a booklet is amended, and above which the vessel is inclined
# [%].
LIMITS = {
    MASS: (AMEND, INCLINE),
    ALONG: (LCG_AMEND, LCG_INCLINE),
    HEIGHT: (VCG_AMEND, VCG_INCLINE),
}
BOOKLET_UNCHANGED = "booklet unchanged"
BOOKLET_AMENDED = "booklet to be amended"
INCLINING_TEST = "new inclining test"


@dataclass(frozen=True)
class LightshipChange:
    """One change of the lightship.

    Parameters
    ----------
    name : str
        One of LIMITS.
    percent : Span
        How far it changes [%]: of the lightship's mass, of the length, or of its height.
    """

    name: str
    percent: Span

    @property
    def limits(self) -> tuple[float, float]:
        """From where the booklet is amended, and above what the vessel is inclined [%]."""
        return LIMITS[self.name]

    @property
    def consequences(self) -> tuple[str, ...]:
        """What follows at the least and at the greatest size of the span; one where both agree."""
        return consequences(self.percent, *self.limits)


def lightship_changes(
    weights: Sequence[Weight], start: StartingCondition
) -> tuple[LightshipChange, ...]:
    """Return by how much the lightship changes, as far as the centres are given.

    Parameters
    ----------
    weights : sequence of Weight
    start : StartingCondition

    Returns
    -------
    tuple of LightshipChange
        Empty where no lightship or no change of it is given.

    References
    ----------
    SOLAS II-1/5.4 and 5.5 with explanatory notes (seen; share of the height from memory).
    """
    mass, changing = start.number("lightship"), lightship_weights(weights)
    # Fuel and stores change the loading and never the lightship.
    if not mass or not changing:
        return ()
    by_mass = LightshipChange(MASS, 100 * total_change(changing) / mass)
    try:
        return (by_mass, *_centre_changes(mass, changing, start))
    except ConversionError:
        # The list takes off more than the lightship, which the share of the mass shows already.
        return (by_mass,)


def _centre_changes(
    mass: float, changing: Sequence[Weight], start: StartingCondition
) -> Iterator[LightshipChange]:
    """Yield the shifts of the centre of the lightship as shares of length and height."""
    lcg, vcg, length = (start.number(name) for name in ("lightship_lcg", "lightship_vcg", "lpp"))
    # Only changes whose centres are all known are compared: an unknown one could be anywhere.
    nowhere = Span.exact(0.0)
    if lcg is not None and length and all(weight.lcg is not None for weight in changing):
        shift = common_centre(mass, lcg, changing, "lcg", nowhere) - lcg
        yield LightshipChange(ALONG, 100 * shift / length)
    if vcg and all(weight.vcg is not None for weight in changing):
        shift = common_centre(mass, vcg, changing, "vcg", nowhere) - vcg
        yield LightshipChange(HEIGHT, 100 * shift / vcg)


def consequences(percent: Span, amend: float, incline: float) -> tuple[str, ...]:
    """Return what a change of the lightship requires.

    Parameters
    ----------
    percent : Span
        Change, up or down [%].
    amend : float
        Change from which the booklet is amended [%].
    incline : float
        Change above which the vessel is inclined [%].

    Returns
    -------
    tuple of str
        At the least and at the greatest size of the change; a single one where both agree.

    References
    ----------
    SOLAS II-1/5.4 and 5.5 with explanatory notes (seen).
    """
    # Lighter or heavier is the same to the rule: only the size of the change counts.
    sizes = sorted((abs(percent.low), abs(percent.high)))
    least = 0.0 if percent.low <= 0 <= percent.high else sizes[0]
    found = [_consequence(size, amend, incline) for size in (least, sizes[1])]
    return tuple(dict.fromkeys(found))


def _consequence(percent: float, amend: float, incline: float) -> str:
    """Return what a change of the lightship [%] asks for by its two limits."""
    # Inclining begins above its limit and amending at it: so the text has the two.
    if percent > incline:
        return INCLINING_TEST
    return BOOKLET_AMENDED if percent >= amend else BOOKLET_UNCHANGED
