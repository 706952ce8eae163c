"""Coating condition of tanks in three words, by the worst of three measures."""

from inspector.criteria.judgement import Criterion, Input, Judgement, Source
from inspector.quantities import difference, show

SOURCE = Source(
    "MSC.1/Circ.1330, Guidelines for maintenance and repair of protective coatings",
    "2009 (Rev.1 of 2024 not compared)", "4.1", "seen",
)
BANDS = ("good", "fair", "poor")

# measure -> (label, where fair ends), % of area or of edge and weld length; the bands are the functions below
LIMITS = {
    "breakdown": ("coating breakdown", 20),
    "scale": ("hard rust scale", 10),
    "edges": ("breakdown on edges and welds", 50),
}


def breakdown_band(breakdown: float) -> int:
    """Return 0 (good) under 3 % of the area broken down or rusted, 1 (fair) to 20 %, 2 (poor) above."""
    return 0 if breakdown < 3 else 1 if breakdown <= 20 else 2


def scale_band(scale: float) -> int:
    """Return 0 (good) without hard rust scale, 1 (fair) under 10 % of the area, 2 (poor) from 10 %."""
    return 0 if scale == 0 else 1 if scale < 10 else 2


def edge_band(edges: float) -> int:
    """Return 0 (good) under 20 % of the edge and weld length broken down, 1 (fair) to 50 %, 2 (poor) above."""
    return 0 if edges < 20 else 1 if edges <= 50 else 2


def judge_coating(breakdown: float, scale: float, edges: float) -> Judgement:
    """Judge the coating of a tank or of a part of it.

    Parameters
    ----------
    breakdown [%] of the area, scale [%] of the area, edges [%] of edge and weld length: each 0 to 100.

    Returns
    -------
    Judgement : the worst of the three measures; value and limit [%] of the one that governs. Never failed.

    References
    ----------
    MSC.1/Circ.1330, 4.1 (seen); good also demands no visible failure other than spots.
    """
    values = {"breakdown": breakdown, "scale": scale, "edges": edges}
    bands = {"breakdown": breakdown_band(breakdown), "scale": scale_band(scale), "edges": edge_band(edges)}
    governing = max(values, key=lambda name: (bands[name], values[name] / LIMITS[name][1]))
    label, fair = LIMITS[governing]
    band = BANDS[bands[governing]]
    sentence = (f"{label.capitalize()} of {show(values[governing], '%')} governs, where fair ends at "
                f"{show(fair, '%')}: the coating is in {band.upper()} condition.")
    notes = ("Good also demands no visible coating failure other than spots.",
             "Written for ballast tanks of ships; for other tanks it is a comparison.")
    margin = difference(fair, values[governing])
    return Judgement("coating-condition", band, band, values[governing], "%", fair, margin, sentence, SOURCE, notes)


CRITERIA = (
    Criterion(
        "coating-condition", "Coating condition of a tank",
        (Input("breakdown", "Coating breakdown or rusted area", "number", "%", low=0, high=100),
         Input("scale", "Hard rust scale", "number", "%", low=0, high=100),
         Input("edges", "Breakdown on edges and welds", "number", "%", low=0, high=100)),
        SOURCE, judge_coating,
        "Shares of area or of length, 0 to 100 %; ballast tanks, elsewhere by comparison.",
        "Each boundary of the circular's table, from each side; six mixed cases by our own reading of it.",
    ),
)
