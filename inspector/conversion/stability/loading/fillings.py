"""How full each tank is between departure and arrival, and which of them are slack."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from inspector.conversion.core.figure import Default
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span, span
from inspector.conversion.core.tank_rows import CONVERTED, holds_after
from inspector.conversion.stability.free_surfaces import DRY, PRESSED_UP
from inspector.conversion.stability.tanks_given_up import assumed_density
from inspector.conversion.stability.weights import Weight

# What is used up on passage, and what fills meanwhile.
USED = ("fuel", "fresh water", "lubricating oil")
FILLED = ("sewage", "grey water")
BALLAST = "ballast"
# Shares of a tank: full as a departure has it, and what is left at arrival.
FULL, LEFT = 0.98, 0.10
STANDARD = Default(
    "departure and arrival",
    "98 % and 10 %",
    "Fuel, water and oil leave with 98 % and arrive with 10 %; holding tanks the other way round. "
    "Cargo and void tanks are empty.",
)


@dataclass(frozen=True)
class Filling:
    """One tank in one condition.

    Parameters
    ----------
    tank : Row
    share : float
        Of its capacity [-].
    """

    tank: Row
    share: float

    @property
    def contents(self) -> str:
        """What it holds after the conversion."""
        return holds_after(self.tank)

    @property
    def density(self) -> Span:
        """Of its contents [t/m³]."""
        given = self.tank.number("density")
        # What a converted tank held says nothing of what it will hold.
        if given is None or self.tank["plan"] == CONVERTED:
            given = assumed_density(self.tank.text("name"), self.contents).value
        return span(given) / 1000

    @property
    def weight(self) -> Weight | None:
        """Its contents as a weight; None where it is empty."""
        mass = self.tank.number("capacity") * self.share * self.density
        if not mass.high:
            return None
        places = (self.tank.number(place) for place in ("lcg", "tcg", "vcg"))
        return Weight(self.tank.text("name"), "on", mass, *places, "deadweight")

    @property
    def is_slack(self) -> bool:
        """Whether it has a free surface."""
        # A share that was summed up may miss 98 % by a binary fraction.
        return self.contents not in DRY and 0 < 100 * self.share < PRESSED_UP - 1e-6

    @property
    def full_surface(self) -> Span | None:
        """The moment of its surface where it is slack [t·m]; None without its inertia."""
        inertia = self.tank.number("free_surface")
        return None if inertia is None else self.density * inertia


def fillings(tanks: Sequence[Row], used: float) -> tuple[Filling, ...]:
    """Return how full every tank is after a share of what she carries is used.

    Parameters
    ----------
    tanks : sequence of Row
        Each tank once, without ballast, which is chosen after.
    used : float
        0 at departure, 1 at arrival.

    Returns
    -------
    tuple of Filling
        What is emptied in a numbered order is slack one tank at a time; what has no number falls
        all alike, and all of it is slack: the careful side.

    References
    ----------
    IS Code 2008, part B, 3.4.1 (from memory): full departure, and arrival with 10 % left.
    """
    found: list[Filling] = []
    for contents in USED:
        among = [tank for tank in tanks if holds_after(tank) == contents]
        found += _emptied(among, FULL - (FULL - LEFT) * used)
    for tank in tanks:
        if holds_after(tank) in FILLED:
            found.append(Filling(tank, LEFT + (FULL - LEFT) * used))
    return tuple(found)


def surfaces(filled: Sequence[Filling]) -> Span | None:
    """Return the moment of the free surfaces of tanks as they are filled.

    Parameters
    ----------
    filled : sequence of Filling

    Returns
    -------
    Span or None
        Moment [t·m] of the tanks that are slack; of each liquid that is used up at least of its
        greatest tank, or pair of like ones, also where all are pressed up. None where the inertia
        of a tank that counts is not known.

    References
    ----------
    IS Code 2008, part B, 3.1 (from memory): of each consumable liquid one pair or one tank on the
    centreline, those of the greatest effect.
    """
    counted = [filling for filling in filled if filling.is_slack]
    for contents in USED:
        alike = [filling for filling in filled if filling.contents == contents and filling.share]
        if alike and not any(filling.is_slack for filling in alike):
            counted += _greatest(alike)
    moments = [filling.full_surface for filling in counted]
    return None if None in moments else sum(moments, Span.exact(0.0))


def _greatest(alike: Sequence[Filling]) -> list[Filling]:
    """Return the tank of the greatest inertia and its like; all where one is not known."""
    inertias = [filling.tank.number("free_surface") for filling in alike]
    if None in inertias:
        return list(alike)
    greatest = max(inertias)
    pair = [one for one, inertia in zip(alike, inertias, strict=True) if inertia == greatest]
    return pair[:2]


def _emptied(tanks: Sequence[Row], left: float) -> Iterator[Filling]:
    """Yield like tanks with a share of all their contents left."""
    # Without an order for each of them nobody knows which one is slack.
    if any(tank["used"] is None for tank in tanks):
        yield from (Filling(tank, left) for tank in tanks)
        return
    remaining = left * sum(tank.number("capacity") for tank in tanks)
    numbers = sorted({tank["used"] for tank in tanks}, reverse=True)
    # The last to be emptied is the first to be filled; a pair with one number goes together.
    for number in numbers:
        pair = [tank for tank in tanks if tank["used"] == number]
        capacity = sum(tank.number("capacity") for tank in pair)
        share = min(FULL, max(0.0, remaining / capacity)) if capacity else 0.0
        remaining -= share * capacity
        yield from (Filling(tank, share) for tank in pair)
