"""Temperature rise seen by an infrared camera on electrical parts, in four published levels.

The published table leaves gaps between whole kelvins, so that each gap counts to the worse level.
A light load understates: under 40 % of rated current the answer is "not conclusive", never good.
"""

from dataclasses import replace

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Band, Bands, bands_of, beyond, to
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, refuse
from inspector.criteria.core.source import Source
from inspector.values.field import number_field
from inspector.values.formatting import show
from inspector.values.vocabulary import RATINGS

SOURCE = Source.seen(
    "ANSI/NETA acceptance testing specifications",
    "ATS-2003; later editions not compared",
    "table 100.18",
)
LEAST_LOAD = 40  # % of rated current: common practice
EXPONENTS = (1.6, 2.0)  # rise grows with load to this power, measured to ideal

# reading -> upper ends [K] of levels 1 to 3; above the last is level 4, and the column of similar
# parts has no level 3
LEVELS = {"over_similar": (3, 15, 15), "over_ambient": (10, 20, 40)}
LABELS = {"over_similar": "over a similar part", "over_ambient": "over the air"}
# level -> (band, rating, what to do)
MEANINGS = (
    ("no rise", "good", "no sign of a defect"),
    ("possible defect", "fair", "possibly a defect, to be looked into"),
    ("likely defect", "poor", "likely a defect, to be repaired when time allows"),
    ("watch until repaired", "poor", "to be watched until it can be repaired"),
    ("serious defect", "failed", "a serious defect, to be repaired at once"),
)
CAUTIONS = (
    (
        "Rises are differences in kelvin; compare phases only at like load, and "
        "measure the air at the panel."
    ),
    "Bare shiny metal cannot be read directly; covers are opened by qualified persons only.",
)


def level(reading: str, rise: float) -> int:
    """Return the level 0 to 4 of a rise.

    Parameters
    ----------
    reading : str
        over_similar or over_ambient.
    rise : float
        Temperature rise [K].

    Returns
    -------
    int
        Level 0 to 4.

    References
    ----------
    ANSI/NETA ATS-2003, table 100.18 (seen).

    Examples
    --------
    >>> level("over_similar", 3.5), level("over_ambient", 10.4)
    (2, 2)
    """
    if rise <= 0:
        return 0
    return 1 + sum(rise > end for end in LEVELS[reading])


def rise_at_full_load(rise: float, load: float, exponent: float) -> float:
    """Return the rise expected at rated current from one measured at a lower load.

    Parameters
    ----------
    rise : float
        Measured rise [K].
    load : float
        Share of rated current [%].
    exponent : float
        Exponent of the load, 1.6 to 2.

    Returns
    -------
    float
        Rise x (100 / load) to the exponent [K].

    References
    ----------
    Exponents seen in a thermographers' note.

    Examples
    --------
    >>> round(rise_at_full_load(12, 50, 1.6), 2), rise_at_full_load(12, 50, 2)
    (36.38, 48.0)
    """
    return rise * (100 / load) ** exponent


def judge_rise(
    load: float, over_similar: float | None = None, over_ambient: float | None = None
) -> Judgement:
    """Judge the temperature rise of an electrical part.

    Parameters
    ----------
    load : float
        Share of rated current [%].
    over_similar : float, optional
        Rise over a similar part, like load [K].
    over_ambient : float, optional
        Rise over the air [K].

    Returns
    -------
    Judgement
        The worse of the two columns, as measured. Under full load the rating also heeds the rise
        expected at full load, though never below poor, since that correction is no part of the
        table.

    References
    ----------
    ANSI/NETA ATS-2003, table 100.18 (seen); at least 40 % load (common practice, no source).
    """
    readings = {"over_similar": over_similar, "over_ambient": over_ambient}
    rises = {name: rise for name, rise in readings.items() if rise is not None}
    if not rises:
        why = "it needs a rise over a similar part or over the air, and has neither"
        refuse("over_similar", None, why)
    governing = max(rises, key=lambda name: (level(name, rises[name]), _used_up(name, rises[name])))
    rise, limit = rises[governing], LEVELS[governing][2]
    if over_similar is None:
        band = _column_bands("over_ambient", load).band_of(over_ambient)
    else:
        band = _rise_bands(load, over_ambient).band_of(over_similar)
    subject = f"A rise of {show(rise, 'K')} {LABELS[governing]} at {show(load, '%')} load"
    if band.rating is None:
        sentence = f"{subject} is {band.meaning}."
        return Judgement(band.band, None, rise, "K", limit, None, sentence, CAUTIONS)
    subject = f"{subject}, against a serious defect above {show(limit, 'K')},"
    notes = (*_at_full_load(rises, load), *CAUTIONS)
    return judge_by_band(band, subject, (rise, "K", limit), notes)


def _used_up(reading: str, rise: float) -> float:
    """Return the part of the rise to level 4 that is reached."""
    return rise / LEVELS[reading][2]


def _column_bands(reading: str, load: float) -> Bands:
    """Return the bands of one column [K] at a load [%].

    Under full load a band is split where the rise expected at full load is a level higher. Such a
    part is named by its measured level and rated by the expected one, though never below poor.
    """
    if load < LEAST_LOAD:
        return bands_of(
            "K",
            beyond(
                "not conclusive",
                None,
                f"not conclusive: under {show(LEAST_LOAD, '%')} of rated current a "
                "fault stays cool",
            ),
        )
    # of the two exponents the one that expects more decides
    growth = rise_at_full_load(1, load, EXPONENTS[1]) if load < 100 else 1
    ends = sorted({0.0, *LEVELS[reading], *(end / growth for end in LEVELS[reading])})
    # a rise above the last end shows what the band without end says
    return bands_of(
        "K",
        *(to(end, *_band(reading, end, growth)) for end in ends),
        beyond(*_band(reading, 2 * ends[-1], growth)),
    )


def _rise_bands(load: float, over_ambient: float | None = None) -> Bands:
    """Return the bands of the rise over a similar part [K], none better than that over the air."""
    similar = _column_bands("over_similar", load)
    # A light load already says that nothing can be concluded.
    if over_ambient is None or load < LEAST_LOAD:
        return similar
    air = _column_bands("over_ambient", load).band_of(over_ambient)
    return replace(similar, bands=tuple(_worse(step, air) for step in similar.bands))


def _band(reading: str, rise: float, growth: float) -> tuple[str, str, str]:
    """Return band, rating and meaning of a rise [K] that grows so many times to full load."""
    band, rating, meaning = MEANINGS[level(reading, rise)]
    # an end divided by the growth and multiplied again may miss the end by a rounding
    expected = MEANINGS[level(reading, round(rise * growth, 9))][1]
    # the correction to full load is no part of the table, so that it alone fails nothing
    if expected == "failed" and rating != "failed":
        expected = "poor"
    return band, max(rating, expected, key=RATINGS.index), meaning


def _worse(similar: Band, air: Band) -> Band:
    """Return the band of one column with name and rating of the worse of two."""
    bands = [band for band, _, _ in MEANINGS]
    governing = max(similar, air, key=lambda step: bands.index(step.band))
    return replace(
        similar,
        band=governing.band,
        meaning=governing.meaning,
        rating=max(similar.rating, air.rating, key=RATINGS.index),
    )


def _at_full_load(rises: dict[str, float], load: float) -> tuple[str, ...]:
    """Return the note on the rises [K] expected at full load."""
    hot = {name: rise for name, rise in rises.items() if rise > 0}
    if load >= 100 or not hot:
        return ()
    ranges = [
        f"{show(rise_at_full_load(rise, load, EXPONENTS[0]), 'K')} to "
        f"{show(rise_at_full_load(rise, load, EXPONENTS[1]), 'K')} {LABELS[name]}"
        for name, rise in hot.items()
    ]
    worst = max(
        level(name, rise_at_full_load(rise, load, EXPONENTS[1])) for name, rise in hot.items()
    )
    return (
        f"At full load expect {' and '.join(ranges)} (exponents 1.6 to 2), which "
        f"is level {worst} of 4 at the worse end.",
    )


CRITERIA = (
    Criterion(
        "thermographic-rise",
        "Temperature rise of an electrical part",
        (
            number_field(
                "over_similar", "Rise over a similar part, like load", "K", -50, 500, optional=True
            ),
            number_field("over_ambient", "Rise over the air", "K", -50, 500, optional=True),
            number_field("load", "Share of rated current", "%", 0, 150),
        ),
        SOURCE,
        judge_rise,
        "Electrical parts at 40 to 150 % of rated current; below 40 % not conclusive.",
        "Each published band from both sides and in its gaps; the load correction "
        "by our own arithmetic.",
        bands=_rise_bands,
    ),
)
