"""What a gauging report says of the hull as a whole: how fast plates waste, how dense the points lie, what the girder kept."""

from inspector.criteria.exact import percent_of, share
from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, below, beyond, stairs
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.criteria.thickness import exact_rate
from inspector.quantities import show

RATES = Source("API 510, 570 and 653 long-term and short-term corrosion rate", "as worked in an inspector's answer key, 2003 figures",
               "exercises 1 to 10", "seen")
GIRDER = Source("IACS Common Structural Rules for bulk carriers and oil tankers", "edition not noted", "Part 1, chapter 13, section 2", "seen")
NEUTRAL = Source("IACS Common Structural Rules for bulk carriers and oil tankers", "recalled", "neutral-axis zone", "memory")
PATTERN = Source("ESP Code, resolution A.1049(27)", "2011", "interpretation table on thickness measurement", "seen")

ZONES = {"deck or bottom": (90, "failed", GIRDER), "neutral axis": (85, "poor", NEUTRAL)}  # % of as-built area that must remain
EXTENTS = ("selected plates", "all plates")


def judge_rate(
    measured: float, measured_year: int, previous: float, previous_year: int, as_built: float | None = None, built_year: int | None = None
) -> Judgement:
    """Tell how much a plate loses in a year, by the greater of the rate since new and since the previous gauging.

    Parameters
    ----------
    measured, previous, as_built [mm]; measured_year, previous_year, built_year [year], whole; the last pair together or not at all.

    Returns
    -------
    Judgement : value the governing rate [mm in a year]; no rating, because no limit of a rate is published for hulls.

    References
    ----------
    API 510, 570 and 653, as quoted in an answer key (seen): the greater of the two governs.
    """
    name = "corrosion-rate"
    if measured_year <= previous_year:
        refuse(name, "measured_year", measured_year, f"the gauging of {measured_year} must lie after the previous one of {previous_year}")
    if (as_built is None) != (built_year is None):
        missing = "as_built" if as_built is None else "built_year"
        refuse(name, missing, None, "the rate since new needs both the thickness as built and the year built")
    short = exact_rate(previous, measured, measured_year - previous_year)
    rates = [(short, f"since {previous_year}")]
    if built_year is not None:
        if built_year >= previous_year:
            refuse(name, "built_year", built_year, f"the build of {built_year} must lie before the previous gauging of {previous_year}")
        rates.append((exact_rate(as_built, measured, measured_year - built_year), "since new"))
    rate, since = max(rates)
    notes = ("A rate has no limit of its own: what it leaves is judged as remaining life.",)
    if rate <= 0:
        return Judgement(name, "no measurable loss", None, 0.0, "mm", None, None, f"The plate shows no measurable loss {since}.", RATES, notes)
    band = "faster than since new" if len(rates) == 2 and rate > rates[1][0] else "governing rate"
    sentence = f"The plate loses {show(float(rate), 'mm', 4)} a year {since}, the greater of the known rates."
    return Judgement(name, band, None, float(rate), "mm", None, None, sentence, RATES, notes)


def zone_ladder(as_built: float, zone: str) -> Ladder:
    """Bands of the area of one zone of the hull girder [m²] against its area as built [m²]."""
    percent, rating, _ = ZONES[zone]
    limit = share(percent, as_built)
    return stairs(
        "m²",
        below(limit, "below the least area", rating, "too little: longitudinal strength is to be restored with class"),
        beyond("enough area", "good", "enough"),
    )


def judge_zone(gauged: float, as_built: float, zone: str) -> Judgement:
    """Judge the sectional area left in one zone of the hull girder, as the gauging report sums it.

    Parameters
    ----------
    gauged, as_built [m²] : the same zone's area; zone : one of ZONES.

    References
    ----------
    Common Structural Rules part 1, chapter 13, section 2: 90 % in deck and bottom (seen); 85 % at the neutral axis (memory).
    """
    if gauged > as_built:
        refuse("girder-zone", "gauged", gauged, f"a gauged area of {show(gauged, 'm²')} cannot exceed the {show(as_built, 'm²')} as built")
    percent, _, source = ZONES[zone]
    limit = share(percent, as_built)
    left = percent_of(gauged, as_built)
    said = f"{show(gauged, 'm²')} left in the zone '{zone}' ({show(left, '%')}), against at least {show(limit, 'm²')} ({percent} %),"
    notes = ("Written for large tankers and bulk carriers older than ten years; for this vessel it is a comparison, and class decides.",)
    return told("girder-zone", zone_ladder(as_built, zone).step(gauged), said, (gauged, "m²", limit), source, notes, at_least=True)


def least_points(plates: int, extent: str) -> int:
    """Return how many points plates need: one on one plate in three where selected, two on each where all. ESP Code (seen)."""
    return -(-plates // 3) if extent == "selected plates" else 2 * plates


def points_ladder(plates: int, extent: str) -> Ladder:
    """Bands of the number of gauged points for so many plates."""
    return stairs(
        "",
        below(least_points(plates, extent), "too few points", "poor", "too few to speak for them"),
        beyond("enough points", "good", "enough by number"),
    )


def judge_points(points: int, plates: int, extent: str) -> Judgement:
    """Judge whether a gauging report has points enough for the plates it speaks for.

    Parameters
    ----------
    points, plates : whole numbers; extent : selected plates or all plates.

    References
    ----------
    ESP Code A.1049(27), table on thickness measurement (seen): selected, one point on one plate in three; all, two points a plate.
    """
    limit = least_points(plates, extent)
    said = f"{points} points on {plates} plates ({extent}), against at least {limit},"
    notes = ("Points of selected plates lie where corrosion is average, those of all plates at the quarter ends.",
             "Written for tankers and bulk carriers under enhanced survey; for this vessel it is a comparison.")
    return told("gauging-points", points_ladder(plates, extent).step(points), said, (points, "", limit), PATTERN, notes, at_least=True, verb="are")


_YEAR = {"low": 1900, "high": 2100}

CRITERIA = (
    Criterion(
        "corrosion-rate", "Loss of thickness in a year",
        (Input("measured", "Measured thickness", "number", "mm", low=0, high=55), Input("measured_year", "Year of this gauging", "whole", **_YEAR),
         Input("previous", "Previous thickness", "number", "mm", low=0, high=55), Input("previous_year", "Year of the previous gauging", "whole", **_YEAR),
         Input("as_built", "Thickness as built", "number", "mm", optional=True, low=5, high=50),
         Input("built_year", "Year built", "whole", optional=True, **_YEAR)),
        RATES, judge_rate, "Uniform corrosion of steel plates; build, previous and present gauging in this order, whole years.",
        "Against the published answers of the key and two hull cases by our own arithmetic.",
    ),
    Criterion(
        "girder-zone", "Area left in a zone of the hull girder",
        (Input("gauged", "Area as gauged", "number", "m²", low=0, high=10), Input("as_built", "Area as built", "number", "m²", low=0.001, high=10),
         Input("zone", "Zone of the section", "choice", choices=tuple(ZONES))),
        GIRDER, judge_zone, "Transverse sections of ships older than ten years, areas of one zone to 10 m².",
        "Both limits from both sides by our own arithmetic; no published example exists.", ladder=zone_ladder,
    ),
    Criterion(
        "gauging-points", "Number of points in a gauging report",
        (Input("points", "Points gauged", "whole", low=0, high=100_000), Input("plates", "Plates they speak for", "whole", low=1, high=10_000),
         Input("extent", "What the report covers", "choice", choices=EXTENTS)),
        PATTERN, judge_points, "Plates gauged at a survey, up to 10 000 of them.",
        "Both extents from both sides by our own count on the published pattern.", ladder=points_ladder,
    ),
)
