"""Pits, edges and grooves: corrosion that a mean thickness does not show.

These rules were written for tankers and bulk carriers under enhanced survey. For another ship the society's own figures
count, so the limits of pits are a profile; the others ask for the renewal thickness that the gauging report prints.
"""

from collections.abc import Mapping

from inspector.criteria.exact import exact, percent_of, share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs, to
from inspector.criteria.profiles import Limit, Profile
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

PITS = Source("IACS UR Z10.5, hull surveys of double skin bulk carriers; ESP Code A.1049(27) annex A part B", "Rev.13; 2011", "8.2, pitting", "seen")
EDGES = Source("ESP Code A.1049(27) annex A part B, edge and groove corrosion", "2011, recalled", "8.3 and 8.4", "memory")
DEPTH = Profile("Pits in side structure", (Limit("remaining", "thickness left in a pit, more than", "%", 70, 50, 95),), PITS)
INTENSITY = Profile("Pitting intensity", (
    Limit("measure_above", "measure the deepest pits above an intensity of", "%", 15, 1, 20),
    Limit("ends_at", "judge as general corrosion from an intensity of", "%", 20, 20, 50),
), PITS)
OTHERS = "Written for bulk carriers and tankers under enhanced survey; the society on this vessel's certificate decides."
WELD = "Scattered pits to about a third of the plate are often built up by weld or filler, if class agrees in writing (common practice)."
PIT_SHARE, PIT_LESS = 70, 1  # % of as built, mm under renewal
GROOVE_SHARE, GROOVE_LESS, GROOVE_LEAST = 75, exact(0.5), 6  # %, mm, mm
LARGEST = 20  # %: the pit rule speaks of plates pitted on less than this share


def depth_limit(as_built: float, limits: Mapping[str, float] = DEPTH.values) -> float:
    """Return the depth [mm] at which a pit leaves too little of a plate of as_built [mm]. UR Z10.5 8.2 (seen)."""
    return share(100 - exact(limits["remaining"]), as_built)


def depth_ladder(as_built: float, limits: Mapping[str, float]) -> Ladder:
    """Bands of the depth of one pit [mm] in a plate of as_built [mm]; the split at half of the limit is our own."""
    limit = depth_limit(as_built, limits)
    return stairs(
        "mm",
        to(limit / 2, "shallow pit", "good", "shallow"),
        below(limit, "inside the limit", "fair", "inside the limit"),
        beyond("deeper than the limit", "failed", "too deep: the plate is to be repaired there"),
    )


def judge_pit(depth: float, as_built: float, limits: Mapping[str, float]) -> Judgement:
    """Judge one isolated pit by what it leaves of the plate.

    Parameters
    ----------
    depth [mm] from the surface as built, as_built [mm], limits : those of DEPTH.

    References
    ----------
    IACS UR Z10.5 Rev.13, 8.2 (seen): more than 70 % of the thickness as built must be left.
    """
    if depth > as_built:
        refuse("pit-depth", "depth", depth, f"a pit of {show(depth, 'mm')} is deeper than the plate of {show(as_built, 'mm')}; a hole is no pit")
    limit = depth_limit(as_built, limits)
    of_built = show(percent_of(depth, as_built), "%")
    said = f"A pit of {show(depth, 'mm')} in {show(as_built, 'mm')} as built ({of_built} of it), against less than {show(limit, 'mm')},"
    own = "Good to half of the limit, then fair: our own split."
    return told("pit-depth", depth_ladder(as_built, limits).step(depth), said, (depth, "mm", limit), PITS, (OTHERS, WELD, own))


def intensity_ladder(limits: Mapping[str, float]) -> Ladder:
    """Bands of the share of a plate's area that is pitted [%]."""
    above, ends = limits["measure_above"], limits["ends_at"]
    return stairs(
        "%",
        to(0, "no pits", "good", "a plate without pits"),
        to(above, "scattered pits", "fair", "scattered pitting: judge the single pits"),
        below(ends, "many pits", "poor", "dense pitting: clean 300 mm at the worst spot and measure the five deepest pits"),
        beyond("pitted all over", "poor", "pitting all over: no allowance for pits is left, so judge as general corrosion"),
    )


def judge_intensity(intensity: float, limits: Mapping[str, float]) -> Judgement:
    """Judge how much of a plate is pitted.

    Parameters
    ----------
    intensity [%] of the plate's area, by comparison with standard diagrams; limits : those of INTENSITY.

    References
    ----------
    IACS UR Z10.5 Rev.13 and ESP Code annex A part B, 8.2 (seen): above 15 % measure the deepest; the pit allowance below 20 %.
    """
    said = f"{show(intensity, '%')} of the area pitted, against {show(limits['measure_above'], '%')} above which pits are measured,"
    return told("pitting-intensity", intensity_ladder(limits).step(intensity), said, (intensity, "%", limits["measure_above"]), PITS, (OTHERS,))


def _least_ladder(limit: float, meaning: str, rating: str) -> Ladder:
    return stairs("mm", below(limit, "below the limit", rating, meaning), beyond("at or above the limit", "fair", "enough left there"))


def _check_renewal(name: str, as_built: float, renewal: float) -> None:
    if renewal >= as_built:
        refuse(name, "renewal", renewal, f"a renewal thickness of {show(renewal, 'mm')} must lie below the {show(as_built, 'mm')} as built")


def pitted_limit(as_built: float, renewal: float, voluntary: float | None = None) -> float:
    """Return the least thickness [mm] of single readings: the lesser of 70 % as built and 1 mm under renewal. UR Z10.5 8.2 (seen).

    Examples
    --------
    >>> pitted_limit(14, 11)
    9.8
    """
    return float(min((exact(as_built) - exact(voluntary or 0)) * PIT_SHARE / 100, exact(renewal) - PIT_LESS))


def pitted_ladder(as_built: float, renewal: float, intensity: float, voluntary: float | None = None) -> Ladder:
    """Bands of the least reading [mm] in a pitted plate."""
    _check_pitted(as_built, renewal, intensity)
    return _least_ladder(pitted_limit(as_built, renewal, voluntary), "too thin: renew or build up there as class decides", "failed")


def _check_pitted(as_built: float, renewal: float, intensity: float) -> None:
    _check_renewal("pitted-plate", as_built, renewal)
    if intensity >= LARGEST:
        refuse("pitted-plate", "intensity", intensity, f"the pit rule ends at an intensity of {LARGEST} %; judge the mean thickness instead")


def judge_pitted(least: float, as_built: float, renewal: float, intensity: float, voluntary: float | None = None) -> Judgement:
    """Judge the least single reading in a plate that is pitted on less than a fifth of its area.

    Parameters
    ----------
    least, as_built, renewal, voluntary [mm] : renewal thickness by class, voluntary addition if any; intensity [%] under 20.

    References
    ----------
    IACS UR Z10.5 Rev.13, 8.2 (seen): each reading at least the lesser of 0.7 of as built (less voluntary addition) and renewal less 1 mm.
    """
    ladder = pitted_ladder(as_built, renewal, intensity, voluntary)
    limit = pitted_limit(as_built, renewal, voluntary)
    said = f"A least reading of {show(least, 'mm')} in a plate pitted on {show(intensity, '%')}, against at least {show(limit, 'mm')},"
    return told("pitted-plate", ladder.step(least), said, (least, "mm", limit), PITS, (OTHERS, WELD), at_least=True)


def edge_ladder(as_built: float, renewal: float, band_share: float) -> Ladder:
    """Bands of the least reading [mm] in a corroded edge of a flange or web."""
    _check_renewal("edge-corrosion", as_built, renewal)
    if band_share >= 25:
        refuse("edge-corrosion", "band_share", band_share, "the rule speaks of edges under 25 % of the width; judge the mean thickness instead")
    return _least_ladder(pitted_limit(as_built, renewal), "too thin: the edge is to be renewed", "poor")


def judge_edge(least: float, as_built: float, renewal: float, band_share: float) -> Judgement:
    """Judge the least reading in the corroded edge of a flange or web.

    Parameters
    ----------
    least, as_built, renewal [mm]; band_share [%] of the flange's width or the web's height, under 25.

    References
    ----------
    ESP Code A.1049(27) annex A part B, 8.3 (memory).
    """
    ladder, limit = edge_ladder(as_built, renewal, band_share), pitted_limit(as_built, renewal)
    said = f"A least reading of {show(least, 'mm')} in an edge of {show(band_share, '%')} of the width, against at least {show(limit, 'mm')},"
    return told("edge-corrosion", ladder.step(least), said, (least, "mm", limit), EDGES, (OTHERS,), at_least=True)


def groove_limit(as_built: float, renewal: float) -> float:
    """Return the least thickness [mm] in a groove: the lesser of 75 % as built and 0.5 mm under renewal, yet 6 mm. ESP Code 8.4 (memory)."""
    return float(max(min(exact(as_built) * GROOVE_SHARE / 100, exact(renewal) - GROOVE_LESS), GROOVE_LEAST))


def groove_ladder(as_built: float, renewal: float, width: float, height_share: float) -> Ladder:
    """Bands of the least reading [mm] in a groove along a weld."""
    _check_renewal("groove-corrosion", as_built, renewal)
    if width > 30 or height_share > 15:
        refuse("groove-corrosion", "width", width, "the rule speaks of grooves to 30 mm and 15 % of the web's height; judge the mean thickness instead")
    return _least_ladder(groove_limit(as_built, renewal), "too thin: the groove is to be repaired", "poor")


def judge_groove(least: float, as_built: float, renewal: float, width: float, height_share: float) -> Judgement:
    """Judge the least reading in a groove along a weld.

    Parameters
    ----------
    least, as_built, renewal, width [mm] : width of the groove, to 30; height_share [%] : width as share of the web's height, to 15.

    References
    ----------
    ESP Code A.1049(27) annex A part B, 8.4 (memory).
    """
    ladder, limit = groove_ladder(as_built, renewal, width, height_share), groove_limit(as_built, renewal)
    said = f"A least reading of {show(least, 'mm')} in a groove {show(width, 'mm')} wide, against at least {show(limit, 'mm')},"
    return told("groove-corrosion", ladder.step(least), said, (least, "mm", limit), EDGES, (OTHERS,), at_least=True)


_BUILT = Input("as_built", "Thickness as built", "number", "mm", low=5, high=50)
_LEAST = Input("least", "Least reading", "number", "mm", low=0, high=55)
_RENEWAL = Input("renewal", "Renewal thickness in the gauging report", "number", "mm", low=2, high=50)
_OWN = "Each limit from both sides by our own arithmetic on the rule; no published example exists."

CRITERIA = (
    Criterion(
        "pit-depth", "Depth of an isolated pit", (Input("depth", "Depth of the pit", "number", "mm", low=0, high=50), _BUILT),
        PITS, judge_pit, "Isolated pits in plates of 5 to 50 mm as built.", _OWN, profile=DEPTH, ladder=depth_ladder,
    ),
    Criterion(
        "pitting-intensity", "Share of a plate's area that is pitted", (Input("intensity", "Pitted share of the area", "number", "%", low=0, high=100),),
        PITS, judge_intensity, "Shares of the area of one plate, by comparison with standard diagrams, 0 to 100 %.",
        "Each boundary from both sides; the two shares as the published clause prints them.", profile=INTENSITY, ladder=intensity_ladder,
    ),
    Criterion(
        "pitted-plate", "Least reading in a pitted plate",
        (_LEAST, _BUILT, _RENEWAL, Input("intensity", "Pitted share of the area", "number", "%", low=0, high=100),
         Input("voluntary", "Voluntary addition", "number", "mm", optional=True, low=0, high=5)),
        PITS, judge_pitted, "Plates pitted on less than 20 % of their area, 5 to 50 mm as built, with a renewal thickness by class.", _OWN,
        ladder=pitted_ladder,
    ),
    Criterion(
        "edge-corrosion", "Least reading in a corroded edge",
        (_LEAST, _BUILT, _RENEWAL, Input("band_share", "Corroded share of the width", "number", "%", low=0, high=100)),
        EDGES, judge_edge, "Edges of flanges and webs corroded on less than 25 % of their width.", _OWN, ladder=edge_ladder,
    ),
    Criterion(
        "groove-corrosion", "Least reading in a groove along a weld",
        (_LEAST, _BUILT, _RENEWAL, Input("width", "Width of the groove", "number", "mm", low=0, high=200),
         Input("height_share", "Groove as share of the web's height", "number", "%", low=0, high=100)),
        EDGES, judge_groove, "Grooves to 30 mm and 15 % of the web's height, renewal thickness by class.", _OWN, ladder=groove_ladder,
    ),
)
