"""Coating of tanks: its condition by the worst measure.

Breakdown counts the whole area (general), edges and welds count by their length (local): both are
required, because a tank that is sound at large fails first along its edges.
"""

from collections.abc import Callable

from inspector.criteria.core.bands import Band, Bands, bands_of, below, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

SOURCE = Source.seen(
    "MSC.1/Circ.1330, Guidelines for maintenance and repair of protective coatings",
    "2009; Rev.1 of 28 June 2024 changes the references to inspectors, by its cover text",
    "4.1, spots under 3 % for good",
)
OIL_TANKS = Source.seen(
    "MSC.1/Circ.1399, Guidelines on procedures for in-service maintenance and "
    "repair of coatings of cargo oil tanks",
    "10 June 2011",
    "4.1.3, spots under 5 % for good",
)
BANDS = ("good", "fair", "poor")


def _condition(
    good: Callable[..., Band], good_to: float, fair: Callable[..., Band], fair_to: float
) -> Bands:
    """Return the bands of a share [%] by where good and fair end, and whether with their ends."""
    return bands_of(
        "%",
        good(good_to, "good", "good", "good"),
        fair(fair_to, "fair", "fair", "fair"),
        beyond("poor", "poor", "poor"),
    )


# measure -> label and bands, by MSC.1/Circ.1330, 4.1 (seen): % of area, or of edge and weld length
MEASURES = {
    "breakdown": ("coating breakdown", _condition(below, 3, to, 20)),
    "scale": ("hard rust scale", _condition(to, 0, below, 10)),
    "edges": ("breakdown on edges and welds", _condition(below, 20, to, 50)),
}
# by MSC.1/Circ.1399, 4.1.3 (seen): % of area, or of edge and weld length; that fair ends at half of
# the edges is read in MSC.1/Circ.1330 only, whose sentence is otherwise the same
OIL_TANK_MEASURES = {
    "spots": ("spot breakdown", _condition(below, 5, below, 20)),
    "total": ("total coating failure", _condition(to, 0, below, 10)),
    "edges": ("breakdown on edges and welds", _condition(below, 20, to, 50)),
}
TWO_CIRCULARS = (
    "Two circulars differ: good ends at 3 % of spots in ballast tanks (MSC.1/Circ.1330) and at "
    "5 % in cargo oil tanks (MSC.1/Circ.1399)."
)


def judge_coating(breakdown: float, scale: float, edges: float) -> Judgement:
    """Judge the coating of a tank or of a part of it.

    Parameters
    ----------
    breakdown : float
        Coating breakdown or rusted area [%].
    scale : float
        Hard rust scale [%].
    edges : float
        Breakdown on edges and welds [%].

    Returns
    -------
    Judgement
        The worst of the three measures; value and limit [%] of the one that governs. Never failed.

    References
    ----------
    MSC.1/Circ.1330, 4.1 (seen); good also demands no visible failure other than spots.
    """
    values = {"breakdown": breakdown, "scale": scale, "edges": edges}
    notes = (
        "Good also demands no visible coating failure other than spots.",
        "Written for ballast tanks of ships; for other tanks it is a comparison.",
        TWO_CIRCULARS,
    )
    return _worst_measure(values, MEASURES, notes)


def _worst_measure(
    values: dict[str, float], measures: dict[str, tuple[str, Bands]], notes: tuple[str, ...]
) -> Judgement:
    """Return the judgement of the worst of several measures [%]."""

    def badness(name: str) -> tuple[int, float]:
        """Return the place of the band and the part of its limit that is used up."""
        # of equal bands the measure that has used up most of its fair band governs
        bands = measures[name][1]
        return BANDS.index(bands.band_of(values[name]).band), values[name] / bands.bands[1].upto

    governing = max(values, key=badness)
    (label, bands), value = measures[governing], values[governing]
    band, fair = bands.band_of(value).band, bands.bands[1].upto
    sentence = (
        f"{label.capitalize()} of {show(value, '%')} governs, where fair ends at "
        f"{show(fair, '%')}: the coating is in {band.upper()} condition."
    )
    return Judgement(band, band, value, "%", fair, difference(fair, value), sentence, notes)


def judge_oil_tank(spots: float, total: float, edges: float) -> Judgement:
    """Judge the coating of an oil cargo tank.

    Parameters
    ----------
    spots : float
        Spot breakdown [%].
    total : float
        Total coating failure [%].
    edges : float
        Breakdown on edges and welds [%].

    Returns
    -------
    Judgement
        The worst of the three measures; never failed.

    References
    ----------
    MSC.1/Circ.1399, 4.1.3 (seen): good asks for spots under 5 % and edges under 20 %. That good
    allows no total failure is our own reading.
    """
    # A square metre is counted as spots or as failed, never as both.
    if exact(spots) + exact(total) > 100:
        refuse("total", total, "spots and total failure together exceed the whole area")
    values = {"spots": spots, "total": total, "edges": edges}
    notes = (
        "Good also demands no visible failure and no blister that is broken through.",
        "Written for cargo tanks of crude oil tankers; for this vessel's tanks it is a comparison.",
        TWO_CIRCULARS,
    )
    return _worst_measure(values, OIL_TANK_MEASURES, notes)


CRITERIA = (
    Criterion(
        "coating-condition",
        "Coating condition of a tank",
        (
            number_field("breakdown", "Coating breakdown or rusted area", "%", 0, 100),
            number_field("scale", "Hard rust scale", "%", 0, 100),
            number_field("edges", "Breakdown on edges and welds", "%", 0, 100),
        ),
        SOURCE,
        judge_coating,
        "Shares of area or of length, 0 to 100 %; ballast tanks, elsewhere by comparison.",
        "Each boundary of the circular's table, from each side; six mixed cases by "
        "our own reading of it.",
        orders=(
            Order("scale", AT_MOST, "breakdown", "hard rust scale is part of the rusted area"),
        ),
    ),
    Criterion(
        "oil-tank-coating",
        "Coating condition of an oil cargo tank",
        (
            number_field("spots", "Spot breakdown", "%", 0, 100),
            number_field("total", "Total coating failure", "%", 0, 100),
            number_field("edges", "Breakdown on edges and welds", "%", 0, 100),
        ),
        OIL_TANKS,
        judge_oil_tank,
        "Shares of area, together not above 100 %, and of edge and weld length; oil cargo tanks, "
        "elsewhere by comparison.",
        "Each boundary of the circular from each side, by our own reading of it; a tank with sound "
        "faces and broken edges.",
    ),
)
