"""Nitrogen oxides of marine diesel engines: which tier the dates of keel and engine ask for, and which the certificate shows.

Only plate and certificate prove a tier; how an engine looks never does.
"""

from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.source import Source
from inspector.quantities import difference, show

SOURCE = Source("MARPOL Annex VI, regulation 13", "revised text of 2008, areas to MEPC.392(82)", "13.3 to 13.7", "seen")
NORWEGIAN = Source("MARPOL Annex VI, regulation 13", "areas to MEPC.392(82), keel date recalled", "Norwegian Sea", "memory")
TIERS = ("none", "I", "II", "III")
# tier -> (below 130 r/min, factor and exponent from 130 to under 2000, from 2000) in g/kWh, n in r/min
# tier III from 2000 r/min: 2.0 as in the regulation (memory); one copy of the text prints 1.96
LIMITS = {"I": (17.0, 45, -0.2, 9.8), "II": (14.4, 44, -0.23, 7.7), "III": (3.4, 9, -0.2, 2.0)}
FROM = (("II", date(2011, 1, 1)), ("I", date(2000, 1, 1)))
# area -> the date from which a keel, or an engine that is not an identical replacement, needs tier III there
AREAS = {
    "North America and US Caribbean": date(2016, 1, 1),
    "Baltic and North Sea": date(2021, 1, 1),
    "Canadian Arctic": date(2025, 1, 1),
    "Norwegian Sea": date(2026, 9, 1),
}
UNSURE = {"Norwegian Sea": "Norwegian Sea (if without building contract: memory)"}
REPLACEMENT = "A replaced engine that is not identical, or an added one, must meet the limits of the day it is fitted."
IMPOSSIBLE = "Tier III is not asked of a replacement where no such engine exists or none fits: MEPC.230(65); then tier II."
APPLIES = "For engines above 130 kW that are not for emergencies only; flag and class decide."


def nox_limit(tier: str, speed: float) -> float:
    """Return the limit [g/kWh] of a tier at a rated crankshaft speed [r/min], unrounded.

    Certificates print one decimal, rounded once from this value. Source: MARPOL Annex VI reg. 13 (formulas seen).

    Examples
    --------
    >>> round(nox_limit("II", 1800), 4), nox_limit("I", 129)
    (7.8477, 17.0)
    """
    slow, factor, exponent, fast = LIMITS[tier]
    return slow if speed < 130 else fast if speed >= 2000 else factor * speed**exponent


def tier_asked(since: date) -> str:
    """Return the tier asked everywhere by the date of keel or of a replaced engine: none, I or II. Reg. 13 (seen)."""
    return next((tier for tier, start in FROM if since >= start), "none")


def closed_areas(since: date) -> tuple[str, ...]:
    """Return the control areas that ask tier III by the date of keel or of a replaced engine. Reg. 13.5, 13.6 (seen but one)."""
    return tuple(area for area, start in AREAS.items() if since >= start)


def rule_date(built: date, installed: date | None, replacement: str | None) -> date:
    """Return the date whose rules bind: the keel's, or the engine's where it is later and not an identical replacement. Reg. 13.2."""
    return built if installed is None or replacement == "identical" else max(built, installed)


def judge_tier(
    built: date, speed: float, certificate: str, installed: date | None = None, replacement: str | None = None, area: str | None = None
) -> Judgement:
    """Judge the tier of an engine's certificate against the one that her dates and waters ask for.

    Parameters
    ----------
    built : keel laid; speed [rpm], rated, 10 to 4000; certificate : none, I, II or III; installed : when this engine was fitted,
    if later; replacement : identical, or other or added (taken where it is not told); area : open sea or one control area.

    Returns
    -------
    Judgement : limit the asked tier's figure and value the certificate's [g/kWh], where there is one.

    Notes
    -----
    No certificate where one is asked is poor (a paper to be found and priced), a lower tier than asked failed. Before
    2000 nothing is asked: without a certificate fair, by our own choice. Tier II where areas ask III: fair, and failed
    in the one area named; a replaced engine poor there, since a waiver may exist.

    References
    ----------
    MARPOL Annex VI reg. 13 (formulas and dates seen, but those marked memory); MEPC.230(65) for replacements (seen).
    """
    if installed is not None and installed < built:
        refuse("nox-tier", "installed", installed, f"an engine fitted on {installed.isoformat()} is older than the keel of {built.isoformat()}")
    since = rule_date(built, installed, replacement)
    areas = closed_areas(since)
    asked = "III" if area in areas else tier_asked(since)
    band, rating, meaning = _tier_band(asked, certificate, () if area == "open sea" else areas, replaced=since != built)
    value = None if certificate == "none" else nox_limit(certificate, speed)
    limit = None if asked == "none" else nox_limit(asked, speed)
    figure = "" if limit is None else f" ({show(limit, 'g/kWh', 1)} at {show(speed, 'rpm')})"
    rule = "no tier" if asked == "none" else f"tier {asked}{figure}"
    paper = "no certificate" if certificate == "none" else f"a tier {certificate} certificate"
    what = f"An engine fitted on {since.isoformat()}" if since != built else f"A keel of {built.isoformat()}"
    sentence = f"{what} asks for {rule}{f' in {area}' if area in areas else ''}, and the engine has {paper}: {meaning}."
    margin = None if value is None or limit is None else difference(limit, value)
    return Judgement(
        "nox-tier",
        band,
        rating,
        value,
        "g/kWh",
        limit,
        margin,
        sentence,
        NORWEGIAN if area == "Norwegian Sea" else SOURCE,
        _tier_notes(areas, replaced=since != built),
    )


def _tier_notes(areas: tuple[str, ...], replaced: bool) -> tuple[str, ...]:
    ask_three = (f"Tier III is asked in: {'; '.join(UNSURE.get(one, one) for one in areas)}.",) if areas else ()
    return (*ask_three, *((IMPOSSIBLE,) if replaced and areas else ()), REPLACEMENT, APPLIES)


def _tier_band(asked: str, certificate: str, areas: tuple[str, ...], replaced: bool) -> tuple[str, str, str]:
    if certificate == "none":
        if asked == "none":
            return "no tier asked", "fair", "lawful as she stands, with the oldest kind of engine"
        return "no certificate", "poor", "find the certificate and the technical file, or price a new approval"
    if TIERS.index(certificate) < TIERS.index(asked):
        if asked == "III" and replaced and certificate == "II":
            return "tier III or a waiver", "poor", "enough there only with the flag's word that no tier III engine was possible"
        return "below the asked tier", "failed", "the engine is below what her date asks for"
    if areas and certificate != "III":
        return "meets the tier, areas closed", "fair", "enough in open waters, not in the control areas named below"
    return "meets the tier", "good", "enough"


CRITERIA = (
    Criterion(
        "nox-tier",
        "NOx tier of an engine against the dates of keel and engine",
        (
            Input("built", "Keel laid", "date", low=date(1900, 1, 1)),
            Input("speed", "Rated speed", "number", "rpm", low=10, high=4000),
            Input("certificate", "Tier on the engine certificate", "choice", choices=TIERS),
            Input("installed", "Engine fitted, if later than the keel", "date", optional=True, low=date(1900, 1, 1)),
            Input("replacement", "Kind of replacement", "choice", optional=True, choices=("identical", "other or added")),
            Input("area", "Where she shall sail", "choice", optional=True, choices=("open sea", *AREAS)),
        ),
        SOURCE,
        judge_tier,
        "Marine diesel engines above 130 kW, 10 to 4000 r/min, keels since 1900.",
        "Limits at nine speeds from the published formulas; each date and each speed boundary from both sides.",
    ),
)
