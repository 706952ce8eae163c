"""Coating of tanks: condition in three words by the worst measure, and the film that a new coating must have.

Breakdown counts the whole area (general), edges and welds count by their length (local): both are asked, because a
tank that is sound at large fails first along its edges.
"""

from collections.abc import Mapping

from inspector.criteria.exact import exact, share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.quantities import difference, show

SOURCE = Source(
    "MSC.1/Circ.1330, Guidelines for maintenance and repair of protective coatings",
    "2009 (Rev.1 of 2024 not compared)", "4.1", "seen",
)
OIL_TANKS = Source("MSC.1/Circ.1399, Guidelines on procedures for in-service maintenance and repair of coatings of cargo oil tanks",
                   "edition as circulated", "4.1", "seen")
NEW_COATING = Source("PSPC, resolution MSC.215(82), performance standard for protective coatings", "2006, recalled", "nominal dry film and the 90/10 rule",
                     "memory")
FILM = Profile("New coating of ballast tanks", (Limit("nominal", "nominal dry film", "µm", 320, 100, 1000),), NEW_COATING)
NINETY, TEN = 90, 10  # %: a reading may not fall below 90 % of nominal, and not more than 10 % of readings may lie below nominal
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


def spots_band(spots: float) -> int:
    """Return 0 (good) under 5 % of the area in spots, 1 (fair) under 20 %, 2 (poor) from 20 %. MSC.1/Circ.1399 (seen)."""
    return 0 if spots < 5 else 1 if spots < 20 else 2


def total_band(total: float) -> int:
    """Return 0 (good) without total failure, 1 (fair) under 10 % of the area, 2 (poor) from 10 %. MSC.1/Circ.1399 (seen)."""
    return 0 if total == 0 else 1 if total < 10 else 2


def judge_oil_tank(spots: float, total: float) -> Judgement:
    """Judge the coating of an oil cargo tank.

    Parameters
    ----------
    spots [%] of the area with spot breakdown, total [%] of the area with total coating failure.

    References
    ----------
    MSC.1/Circ.1399, 4.1 (seen). That good allows no total failure is our own reading.
    """
    if exact(spots) + exact(total) > 100:
        refuse("oil-tank-coating", "total", total, "spots and total failure together exceed the whole area")
    told = {"spot breakdown": (spots, 20, spots_band(spots)), "total coating failure": (total, 10, total_band(total))}
    label = max(told, key=lambda name: (told[name][2], told[name][0] / told[name][1]))
    value, fair, step = told[label]
    sentence = f"{label.capitalize()} of {show(value, '%')} governs, where fair ends at {show(fair, '%')}: the coating is in {BANDS[step].upper()} condition."
    notes = ("Written for cargo tanks of crude oil tankers; for this vessel's tanks it is a comparison.",)
    return Judgement("oil-tank-coating", BANDS[step], BANDS[step], value, "%", fair, difference(fair, value), sentence, OIL_TANKS, notes)


def judge_film(least: float, below: float, limits: Mapping[str, float]) -> Judgement:
    """Judge the dry film of a new coating by its least reading and by how many readings lie below nominal.

    Parameters
    ----------
    least [µm], below [%] of all readings that lie below nominal; limits : those of FILM.

    References
    ----------
    PSPC, MSC.215(82), 90/10 rule (memory).
    """
    floor = share(NINETY, limits["nominal"])
    meets = least >= floor and below <= TEN
    band, rating = ("meets the rule", "good") if meets else ("short of the rule", "poor")
    told = "meets the rule" if meets else "falls short of it"
    sentence = (f"A least film of {show(least, 'µm')} with {show(below, '%')} of the readings below {show(limits['nominal'], 'µm')}, against at least "
                f"{show(floor, 'µm')} and at most {TEN} %, {told}.")
    notes = ("Asked of new coatings in ballast tanks of ships contracted from 1 July 2008 (memory); an old coating is judged by its condition.",)
    return Judgement("dry-film", band, rating, least, "µm", floor, difference(least, floor), sentence, NEW_COATING, notes)


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
    Criterion(
        "oil-tank-coating", "Coating condition of an oil cargo tank",
        (Input("spots", "Spot breakdown", "number", "%", low=0, high=100), Input("total", "Total coating failure", "number", "%", low=0, high=100)),
        OIL_TANKS, judge_oil_tank, "Shares of area, together not above 100 %; oil cargo tanks, elsewhere by comparison.",
        "Each boundary of the circular from each side, by our own reading of it.",
    ),
    Criterion(
        "dry-film", "Dry film of a new tank coating",
        (Input("least", "Least reading of dry film", "number", "µm", low=0, high=5000),
         Input("below", "Readings below nominal", "number", "%", low=0, high=100)),
        NEW_COATING, judge_film, "New coatings of ballast tanks, nominal film of 100 to 1000 µm.",
        "Both limits from both sides by our own arithmetic on the recalled rule.", profile=FILM,
    ),
)
