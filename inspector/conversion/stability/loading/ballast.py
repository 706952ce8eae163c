"""Which ballast tanks are filled to compensate: the least water that leaves the least unmet."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from math import radians, tan

from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.core.tank_rows import holds_after
from inspector.conversion.stability.loading.afloat import Vessel, initial_gm_least
from inspector.conversion.stability.loading.fillings import BALLAST, FULL, Filling
from inspector.conversion.stability.weights import Weight

# Every choice of so many tanks is tried; of more the largest are taken.
MOST_TANKS = 8
# Limits of our own, by which ballast is chosen: share of the length, and degrees.
MOST_TRIM, MOST_LIST = 0.015, 1.0


@dataclass(frozen=True)
class Loaded:
    """Masses and moments of a condition at its likely values.

    Parameters
    ----------
    mass : float
        [t]
    up, along, off : float
        Moments above the keel, from the after perpendicular and off the centreline [t·m].
    surfaces : float
        Moment of free surfaces [t·m].
    spread : float
        How far KG may be above its likely value [m].
    """

    mass: float
    up: float
    along: float
    off: float
    surfaces: float
    spread: float = 0.0

    def with_tank(self, weight: Weight) -> "Loaded":
        """Return the condition with one more weight in it.

        Parameters
        ----------
        weight : Weight

        Returns
        -------
        Loaded

        References
        ----------
        Sums of masses and moments.
        """
        mass = weight.change.middle
        return Loaded(
            self.mass + mass,
            self.up + mass * (weight.vcg or 0.0),
            self.along + mass * (weight.lcg or 0.0),
            self.off + mass * (weight.tcg or 0.0),
            self.surfaces,
            self.spread,
        )


def loaded(
    vessel: Vessel, weights: Sequence[Weight], surfaces: Span | None, kg: Span | None
) -> Loaded:
    """Return a condition at its likely values.

    Parameters
    ----------
    vessel : Vessel
    weights : sequence of Weight
    surfaces : Span or None
        Moment of free surfaces [t·m].
    kg : Span or None
        Solid or fluid KG [m], for its spread.

    Returns
    -------
    Loaded

    References
    ----------
    Sums of masses and moments.
    """
    start = vessel.start
    lightship = start.number("lightship")
    found = Loaded(
        lightship,
        lightship * start.number("lightship_vcg"),
        lightship * (start.number("lightship_lcg") or 0.0),
        0.0,
        0.0 if surfaces is None else surfaces.middle,
        0.0 if kg is None else kg.high - kg.middle,
    )
    for weight in weights:
        found = found.with_tank(weight)
    return found


def ballast_tanks(tanks: Sequence[Row]) -> tuple[Filling, ...]:
    """Return the ballast tanks that can be chosen, filled, the largest first.

    Parameters
    ----------
    tanks : sequence of Row
        Each tank once.

    Returns
    -------
    tuple of Filling
        Those with a height; at most MOST_TANKS.

    References
    ----------
    Model of our own.
    """
    known = [
        Filling(tank, FULL)
        for tank in tanks
        if holds_after(tank) == BALLAST and tank.number("vcg") is not None
    ]
    known.sort(key=lambda each: (-each.tank.number("capacity"), each.tank.text("name")))
    return tuple(known[:MOST_TANKS])


class Chooser:
    """Chooses ballast for conditions of one vessel, by every combination of its tanks.

    Parameters
    ----------
    vessel : Vessel
    tanks : sequence of Filling
    """

    def __init__(self, vessel: Vessel, tanks: Sequence[Filling]) -> None:
        self.vessel = vessel
        self.tanks = tuple(tanks)
        table = vessel.table
        names = ("draught", "km", "limit_kg", "lcb", "lcf", "mctc")
        self.read = {
            name: table.reader(name) for name in names if table is not None and table.has(name)
        }

    def choose(self, condition: Loaded) -> tuple[Filling, ...]:
        """Return the tanks to be filled.

        Parameters
        ----------
        condition : Loaded
            Without ballast.

        Returns
        -------
        tuple of Filling
            Those with the fewest limits not met, and of these the least water.

        References
        ----------
        Model of our own: every combination is tried.
        """
        best, least = (), None
        for count in range(len(self.tanks) + 1):
            for chosen in combinations(self.tanks, count):
                tried = condition
                for filling in chosen:
                    tried = tried.with_tank(filling.weight)
                score = (self.unmet(tried), tried.mass)
                if least is None or score < least:
                    best, least = chosen, score
            # With nothing unmet more water makes nothing better.
            if least is not None and least[0] == 0:
                break
        return best

    def unmet(self, condition: Loaded) -> int:
        """Return how many limits a condition does not meet.

        Parameters
        ----------
        condition : Loaded

        Returns
        -------
        int
            Beyond the booklet's rows more than any that is within them.

        References
        ----------
        Greatest KG, least GM, load line, propeller under water; trim and list by limits of our own.
        """
        try:
            found = {name: read(condition.mass) for name, read in self.read.items()}
        except ConversionError:
            return 100
        fluid = self.fluid(condition)
        gm = found["km"] - fluid if "km" in found else None
        faults = [
            "limit_kg" in found and fluid > found["limit_kg"],
            gm is not None and gm < initial_gm_least(),
            gm is not None and abs(condition.off) > condition.mass * gm * tan(radians(MOST_LIST)),
            *self._by_draught(condition, found),
        ]
        return sum(map(bool, faults))

    def _by_draught(self, condition: Loaded, found: dict[str, float]) -> list[bool]:
        """Return what of load line, trim and propeller is not met."""
        start, draught = self.vessel.start, found.get("draught")
        greatest, length = start.number("greatest_draught"), start.number("lpp")
        if draught is None:
            return []
        if not length or not {"lcb", "lcf", "mctc"} <= set(found):
            return [bool(greatest) and draught > greatest]
        centre = condition.along / condition.mass
        trim = condition.mass * (centre - found["lcb"]) / found["mctc"] / 100
        share = min(max(found["lcf"] / length, 0.0), 1.0)
        aft, tip = draught - trim * share, self.vessel.tip
        return [
            bool(greatest) and draught + trim * (0.5 - share) > greatest,
            abs(trim) > MOST_TRIM * length,
            tip is not None and aft < tip,
        ]

    def fluid(self, condition: Loaded) -> float:
        """Return the fluid KG of a condition at the upper end of its spread.

        Parameters
        ----------
        condition : Loaded

        Returns
        -------
        float
            [m]

        References
        ----------
        Sum of moments / sum of masses + free surfaces / displacement.
        """
        return (condition.up + condition.surfaces) / condition.mass + condition.spread

    def margin(self, condition: Loaded) -> float:
        """Return by how much a condition is within its limit of KG, else its GM.

        Parameters
        ----------
        condition : Loaded

        Returns
        -------
        float
            [m]; very small beyond the booklet's rows.

        References
        ----------
        Model of our own: the condition with the least margin is the worst.
        """
        name = "limit_kg" if "limit_kg" in self.read else "km"
        try:
            return self.read[name](condition.mass) - self.fluid(condition)
        except (ConversionError, KeyError):
            return -100.0
