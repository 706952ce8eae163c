"""Temperature rise seen by an infrared camera on electrical parts, in four published levels.

The published table leaves gaps between whole kelvins, so its bands are taken as half-open on the safe side. Light load
understates: under 40 % of rated current the answer is "not conclusive", never good.
"""

from dataclasses import replace

from inspector.criteria.judgement import RATINGS, Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, Step, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

SOURCE = Source("ANSI/NETA acceptance testing specifications", "ATS-2003", "table 100.18", "seen")
LEAST_LOAD = 40  # % of rated current: common practice
EXPONENTS = (1.6, 2.0)  # rise grows with load to this power, measured to ideal

# reading -> upper ends [K] of levels 1 to 3 (above the last: level 4); the similar-part column has no level 3
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
    "Rises are differences in kelvin; compare phases only at like load, and measure the air at the panel.",
    "Bare shiny metal cannot be read directly; covers are opened by qualified persons only.",
)


def level(reading: str, rise: float) -> int:
    """Return the level 0 to 4 of a rise.

    Parameters: reading, "over_similar" or "over_ambient"; rise [K]. Source: ANSI/NETA ATS-2003, table 100.18 (seen).

    Examples
    --------
    >>> level("over_similar", 3.5), level("over_ambient", 10.4)
    (2, 2)
    """
    if rise <= 0:
        return 0
    return 1 + sum(rise > end for end in LEVELS[reading])


def rise_at_full_load(rise: float, load: float, exponent: float) -> float:
    """Return the rise [K] expected at rated current from one measured at a load [%] of it, 40 to 100.

    Rise x (100 / load) to the exponent, 1.6 to 2 (exponents seen in a thermographers' note).

    Examples
    --------
    >>> round(rise_at_full_load(12, 50, 1.6), 2), rise_at_full_load(12, 50, 2)
    (36.38, 48.0)
    """
    return rise * (100 / load) ** exponent


def judge_rise(load: float, over_similar: float | None = None, over_ambient: float | None = None) -> Judgement:
    """Judge the temperature rise of an electrical part.

    Parameters
    ----------
    load [%] of rated current, 0 to 150; over_similar, over_ambient [K], at least one.

    Returns
    -------
    Judgement : the worse of the two columns, as measured. Under full load the rating also heeds the rise expected at
    full load, though never below poor, since that correction is no part of the table.

    References
    ----------
    ANSI/NETA ATS-2003, table 100.18 (seen); at least 40 % load (common practice).
    """
    rises = {n: r for n, r in (("over_similar", over_similar), ("over_ambient", over_ambient)) if r is not None}
    if not rises:
        refuse("thermographic-rise", "over_similar", None,
               "it needs a rise over a similar part or over the air, and has neither")
    governing = max(rises, key=lambda name: (level(name, rises[name]), rises[name] / LEVELS[name][2]))
    rise, limit = rises[governing], LEVELS[governing][2]
    ladder = column_ladder("over_ambient", load) if over_similar is None else rise_ladder(load, over_ambient)
    step = ladder.step(over_ambient if over_similar is None else over_similar)
    said = f"A rise of {show(rise, 'K')} {LABELS[governing]} at {show(load, '%')} load"
    if step.rating is None:
        return Judgement("thermographic-rise", step.band, None, rise, "K", limit, None, f"{said} is {step.meaning}.", SOURCE, CAUTIONS)
    held = f"{said}, against a serious defect above {show(limit, 'K')},"
    return told("thermographic-rise", step, held, (rise, "K", limit), SOURCE, (*_at_full_load(rises, load), *CAUTIONS))


def column_ladder(reading: str, load: float) -> Ladder:
    """The bands of one column [K] at a load [%]; under full load a band is split where the rise expected at full load is a level higher.

    Such a part is told by its measured level and rated by the expected one, though never below poor.
    """
    if load < LEAST_LOAD:
        return stairs("K", beyond("not conclusive", None, f"not conclusive: under {show(LEAST_LOAD, '%')} of rated current a fault stays cool"))
    growth = rise_at_full_load(1, load, EXPONENTS[0]) if load < 100 else 1
    ends = sorted({0.0, *LEVELS[reading], *(end / growth for end in LEVELS[reading])})
    # a rise just above the last end stands for the band without end
    return stairs("K", *(to(end, *_band(reading, end, growth)) for end in ends), beyond(*_band(reading, 2 * ends[-1], growth)))


def rise_ladder(load: float, over_ambient: float | None = None) -> Ladder:
    """The bands of the rise over a similar part [K] at a load [%], none better than what a rise over the air already says."""
    similar = column_ladder("over_similar", load)
    if over_ambient is None or load < LEAST_LOAD:
        return similar
    air = column_ladder("over_ambient", load).step(over_ambient)
    return replace(similar, steps=tuple(_worse(step, air) for step in similar.steps))


def _band(reading: str, rise: float, growth: float) -> tuple[str, str, str]:
    band, rating, meaning = MEANINGS[level(reading, rise)]
    # an end divided by the growth and multiplied again may miss the end by a rounding
    expected = MEANINGS[level(reading, round(rise * growth, 9))][1]
    return band, max(rating, "poor" if expected == "failed" and rating != "failed" else expected, key=RATINGS.index), meaning


def _worse(similar: Step, air: Step) -> Step:
    bands = [band for band, _, _ in MEANINGS]
    governing = max(similar, air, key=lambda step: bands.index(step.band))
    return replace(similar, band=governing.band, meaning=governing.meaning, rating=max(similar.rating, air.rating, key=RATINGS.index))


def _at_full_load(rises: dict[str, float], load: float) -> tuple[str, ...]:
    hot = {name: rise for name, rise in rises.items() if rise > 0}
    if load >= 100 or not hot:
        return ()
    ranges = [f"{show(rise_at_full_load(rise, load, EXPONENTS[0]), 'K')} to "
              f"{show(rise_at_full_load(rise, load, EXPONENTS[1]), 'K')} {LABELS[name]}" for name, rise in hot.items()]
    worst = max(level(name, rise_at_full_load(rise, load, EXPONENTS[0])) for name, rise in hot.items())
    return (f"At full load expect {' and '.join(ranges)} (exponents 1.6 to 2), which is level {worst} of 4.",)


CRITERIA = (
    Criterion(
        "thermographic-rise", "Temperature rise of an electrical part",
        (Input("over_similar", "Rise over a similar part, like load", "number", "K", optional=True, low=-50, high=500),
         Input("over_ambient", "Rise over the air", "number", "K", optional=True, low=-50, high=500),
         Input("load", "Share of rated current", "number", "%", low=0, high=150)),
        SOURCE, judge_rise,
        "Electrical parts at 40 to 150 % of rated current; below 40 % not conclusive.",
        "Each published band from both sides and in its gaps; the load correction by our own arithmetic.",
        ladder=rise_ladder,
    ),
)
