"""The vessel afloat: the draught marks against the papers, and hog and sag."""

from dataclasses import replace

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

LOADLINE = Source.seen(
    "International Convention on Load Lines",
    "1966, as a national shipping act repeats its article 12",
    "article 12, load line on either side not submerged",
)
MARKS_READ = Source.common_practice(
    "Hog and sag from six draught marks", "midship mean less mean of the ends"
)

SIX = (
    "forward_port",
    "forward_starboard",
    "midship_port",
    "midship_starboard",
    "aft_port",
    "aft_starboard",
)


def mean_of_means(forward: float, midship: float, aft: float) -> float:
    """Return the mean draught, with hog and sag counted: (forward + 6 midship + aft) / 8.

    Parameters
    ----------
    forward : float
        Mean draught forward [m].
    midship : float
        Mean draught amidships [m].
    aft : float
        Mean draught aft [m].

    Returns
    -------
    float
        Mean of means [m].

    References
    ----------
    Common practice of draught surveys, no source.
    """
    # Six parts of eight amidships: so weighted, a bent hull counts with the draught of its
    # displacement (common practice).
    return float((exact(forward) + 6 * exact(midship) + exact(aft)) / 8)


def deflection(forward: float, midship: float, aft: float) -> float:
    """Return the sag of a hull from its mean draughts.

    Parameters
    ----------
    forward : float
        Mean draught forward [m].
    midship : float
        Mean draught amidships [m].
    aft : float
        Mean draught aft [m].

    Returns
    -------
    float
        Sag [mm]; negative where the hull hogs.

    References
    ----------
    Common practice, no source.
    """
    # Plus is sag: the hull is deeper amidships than its ends are. In mm, as booklets permit it.
    return float(1000 * (exact(midship) - (exact(forward) + exact(aft)) / 2))


def _means(*pairs: tuple[float, float]) -> tuple[float, ...]:
    """Return the mean of port and starboard of each pair of marks [m]."""
    return tuple(float((exact(port) + exact(starboard)) / 2) for port, starboard in pairs)


def _judge_marks(
    marks: tuple[float, ...], ends: tuple[float, float, float], greatest: float
) -> Judgement:
    """Judge the marks amidships, port and starboard, by the greatest draught on the papers [m].

    The load line is marked amidships on each side and on neither side may be submerged. The mean
    of means is that of the displacement, and never makes a submerged mark good.
    """
    forward, midship, aft = ends
    mean = mean_of_means(*ends)
    # A list shows at one side, and the mark there is the one that goes under.
    deeper = max(marks)
    # the papers give the summer draught, which may be reached but not passed
    if deeper > greatest:
        band, rating = "over the greatest", "poor"
        outcome = "more: she lies too deep, or the papers are not hers"
    elif mean > greatest:
        band, rating = "mean over the greatest", "fair"
        outcome = "within it, but her mean is more: she hogs, and carries more than the papers say"
    else:
        band, rating, outcome = "at or under the greatest", "good", "within it"
    sentence = (
        f"A draught amidships of {show(deeper, 'm')} on the deeper side (mean of means "
        f"{show(mean, 'm')}: forward {show(forward, 'm')}, midship {show(midship, 'm')}, "
        f"aft {show(aft, 'm')}), against at most {show(greatest, 'm')}, is {outcome}."
    )
    notes = (
        "In fresh water she may lie deeper by the allowance on her certificate.",
        f"Trim {show(difference(aft, forward), 'm')} by the stern.",
    )
    margin = difference(greatest, deeper)
    return Judgement(band, rating, deeper, "m", greatest, margin, sentence, notes, LOADLINE)


def _judge_bend(ends: tuple[float, float, float], permitted: float | None) -> Judgement:
    """Report how much the hull hogs or sags, rated where the booklet permits so much [mm]."""
    sag = deflection(*ends)
    size = abs(sag)
    against = rating = margin = None
    # no general limit is published, so that without the booklet's there is no rating
    if permitted is not None:
        rating = "good" if size <= permitted else "poor"
        margin = difference(permitted, size)
        against = f", against at most {show(permitted, 'mm')}"
    if sag == 0:
        band, sentence = "straight", "The six marks give no hog and no sag."
    else:
        band = "sags" if sag > 0 else "hogs"
        sentence = f"She {band} by {show(size, 'mm')}{against or ''}."
    notes = (
        "Read in still water from a boat or the quay; waves of 5 cm hide a hog of 5 cm.",
        "Loading and sun on deck bend a hull for hours: read again another day.",
    )
    return Judgement(band, rating, size, "mm", permitted, margin, sentence, notes)


def judge_draughts(
    forward_port: float,
    forward_starboard: float,
    midship_port: float,
    midship_starboard: float,
    aft_port: float,
    aft_starboard: float,
    permitted: float | None = None,
    greatest: float | None = None,
) -> Judgement:
    """Judge six marks: those amidships by the papers, and how much the hull hogs or sags.

    Parameters
    ----------
    forward_port, forward_starboard : float
        Draughts forward [m].
    midship_port, midship_starboard : float
        Draughts amidships [m].
    aft_port, aft_starboard : float
        Draughts aft [m].
    permitted : float, optional
        Hog or sag permitted by the booklet [mm].
    greatest : float, optional
        Greatest draught on the papers [m].

    Returns
    -------
    Judgement
        The worse of the two; its value is the deeper of the marks amidships [m], or the hog or
        sag [mm].

    References
    ----------
    International Convention on Load Lines 1966, article 12 (seen in a national act). Mean of
    means, and midship mean less mean of the ends (common practice, no source).
    """
    ends = _means(
        (forward_port, forward_starboard),
        (midship_port, midship_starboard),
        (aft_port, aft_starboard),
    )
    bend = _judge_bend(ends, permitted)
    if greatest is None:
        return bend
    marks = _judge_marks((midship_port, midship_starboard), ends, greatest)
    if bend.rating == "poor" and marks.rating != "poor":
        return replace(bend, notes=(marks.sentence, *bend.notes))
    return replace(marks, notes=(bend.sentence, *marks.notes))


def _draughts() -> tuple[Field, ...]:
    return tuple(
        number_field(name, f"Draught {name.replace('_', ' ')}", "m", 0.3, 15) for name in SIX
    )


CRITERIA = (
    Criterion(
        "hog-sag",
        "Draught marks, hog and sag",
        (
            *_draughts(),
            number_field("permitted", "Permitted by the booklet", "mm", 0, 500, optional=True),
            number_field("greatest", "Greatest draught on the papers", "m", 0.5, 15, optional=True),
        ),
        MARKS_READ,
        judge_draughts,
        "Six marks read on one day, draughts of 0.3 to 15 m; a rating only with a limit from the "
        "papers.",
        "Hog, sag and straight by hand, and each limit from both sides.",
    ),
)
