"""Sulphur in fuel oil, by the area where it is burnt and the day."""

from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

REGULATION_14 = Source(
    "MARPOL Annex VI, regulation 14", "limits from 2015 and 2020, areas to MEPC.392(82)", "14.1 and 14.4, sulphur content of fuel oil", "seen"
)
OUTSIDE, INSIDE = 0.50, 0.10  # % m/m
# area -> from when its limit binds; the older areas had it before this rule's own start
SULPHUR_AREAS = {
    "outside": None,
    "North America and US Caribbean": date(2015, 1, 1),
    "Baltic and North Sea": date(2015, 1, 1),
    "Mediterranean": date(2025, 5, 1),
    "Canadian Arctic": date(2027, 3, 1),
    "Norwegian Sea": date(2027, 3, 1),
}
SULPHUR_NOTES = (
    "The bunker delivery note and its sample prove the content; an approved exhaust cleaning plant may stand in for the limit.",
    "A sample taken on board may read up to 0.53 % or 0.11 % before it is held against her (memory).",
)


def sulphur_limit(area: str, on: date) -> float:
    """Return the limit [% m/m] in an area on a day from 2020-01-01. MARPOL Annex VI reg. 14 (seen)."""
    since = SULPHUR_AREAS[area]
    return OUTSIDE if since is None or on < since else INSIDE


def sulphur_ladder(area: str, on: date) -> Ladder:
    """The two bands of sulphur content [%] in an area on a day. MARPOL Annex VI reg. 14 (seen)."""
    limit = sulphur_limit(area, on)
    return stairs(
        "%",
        to(limit, "within the limit", "good", "within it"),
        beyond("over the limit", "failed", "over it: this fuel may not be burnt there without an approved cleaning plant"),
    )


def judge_sulphur(sulphur: float, area: str, on: date) -> Judgement:
    """Judge the sulphur content of fuel oil by area and date.

    Parameters
    ----------
    sulphur [%] by mass, 0 to 5; area : outside, or one control area; on : the day, from 2020-01-01.

    References
    ----------
    MARPOL Annex VI reg. 14: 0.50 % from 2020, 0.10 % in control areas from 2015, Mediterranean from 1 May 2025, Canadian
    Arctic and Norwegian Sea from 1 March 2027 (seen).
    """
    limit, since = sulphur_limit(area, on), SULPHUR_AREAS[area]
    place = "outside control areas" if area == "outside" else f"in the {area} area"
    later = (f"The area's own limit of {show(INSIDE, '%', 2)} binds from {since.isoformat()}.",) if since and on < since else ()
    return told(
        "fuel-sulphur",
        sulphur_ladder(area, on).step(sulphur),
        f"A sulphur content of {show(sulphur, '%')}, against at most {show(limit, '%', 2)} {place} on {on.isoformat()},",
        (sulphur, "%", limit),
        REGULATION_14,
        (*later, *SULPHUR_NOTES),
    )


CRITERIA = (
    Criterion(
        "fuel-sulphur",
        "Sulphur content of fuel oil by area and date",
        (
            Input("sulphur", "Sulphur content by mass", "number", "%", low=0, high=5),
            Input("area", "Where it is burnt", "choice", choices=tuple(SULPHUR_AREAS)),
            Input("on", "Day", "date", low=date(2020, 1, 1)),
        ),
        REGULATION_14,
        judge_sulphur,
        "Fuel oil burnt from 1 January 2020 on, 0 to 5 % of sulphur by mass.",
        "Both limits and each area's date from both sides.",
        ladder=sulphur_ladder,
    ),
)
