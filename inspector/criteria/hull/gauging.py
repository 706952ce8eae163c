"""Whether a gauging report has points enough to speak for the hull."""

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.field import Field

PATTERN = Source.seen(
    "ESP Code, resolution A.1049(27)", "2011", "interpretation table on thickness measurement"
)

EXTENTS = ("selected plates", "all plates")


def least_points(plates: int, extent: str) -> int:
    """Return the least number of points for plates: one on each third plate, or two on each plate.

    Parameters
    ----------
    plates : int
        Plates they speak for.
    extent : str
        What the report covers: selected plates or all plates.

    Returns
    -------
    int
        Least number of points.

    References
    ----------
    ESP Code (seen).
    """
    return -(-plates // 3) if extent == "selected plates" else 2 * plates


def _points_bands(plates: int, extent: str) -> Bands:
    """Return the bands of the number of gauged points for so many plates."""
    return bands_of(
        "",
        below(least_points(plates, extent), "too few points", "poor", "too few to speak for them"),
        beyond("enough points", "good", "enough by number"),
    )


def judge_points(points: int, plates: int, extent: str) -> Judgement:
    """Judge whether a gauging report has points enough for the plates it speaks for.

    Parameters
    ----------
    points : int
        Points gauged.
    plates : int
        Plates they speak for.
    extent : str
        What the report covers: selected plates or all plates.

    Returns
    -------
    Judgement

    References
    ----------
    ESP Code A.1049(27), table on thickness measurement (seen): selected, one point on one plate in
    three; all, two points a plate.
    """
    # By number only: where the points are, the report itself must show.
    limit = least_points(plates, extent)
    subject = f"{points} points on {plates} plates ({extent}), against at least {limit},"
    notes = (
        (
            "Points of selected plates lie where corrosion is average, those of all "
            "plates at the quarter ends."
        ),
        (
            "Written for tankers and bulk carriers under enhanced survey; for this "
            "vessel it is a comparison."
        ),
    )
    return judge_by_band(
        _points_bands(plates, extent).band_of(points),
        subject,
        (points, "", limit),
        notes,
        at_least=True,
        verb="are",
    )


CRITERIA = (
    Criterion(
        "gauging-points",
        "Number of points in a gauging report",
        (
            Field("points", "Points gauged", "whole", low=0, high=100_000),
            Field("plates", "Plates they speak for", "whole", low=1, high=10_000),
            Field("extent", "What the report covers", "choice", choices=EXTENTS),
        ),
        PATTERN,
        judge_points,
        "Plates gauged at a survey, up to 10 000 of them.",
        "Both extents from both sides by our own count on the published pattern.",
        bands=_points_bands,
    ),
)
