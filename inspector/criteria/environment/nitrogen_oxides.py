"""Nitrogen oxides of marine diesel engines: the tier required by dates against the certificate.

Only plate and certificate prove a tier; the look of an engine never does.
"""

from datetime import date

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.orders import AT_LEAST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

SOURCE = Source.seen(
    "MARPOL Annex VI, regulation 13", "revised text of 2008, areas to MEPC.392(82)", "13.3 to 13.7"
)
NORWEGIAN = Source.recalled(
    "MARPOL Annex VI, regulation 13",
    "Norwegian Sea",
    edition="areas to MEPC.392(82), keel date recalled",
)
TIERS = ("none", "I", "II", "III")
# tier -> g/kWh below 130 r/min, factor and exponent from 130 to under 2000 r/min, g/kWh from 2000
# tier III from 2000 r/min: 2.0 as in the regulation (memory); one copy of the text prints 1.96
LIMITS = {"I": (17.0, 45, -0.2, 9.8), "II": (14.4, 44, -0.23, 7.7), "III": (3.4, 9, -0.2, 2.0)}
FROM = (("II", date(2011, 1, 1)), ("I", date(2000, 1, 1)))
# area -> the date from which a keel, or an engine that is not an identical replacement, needs
# tier III there
AREAS = {
    "North America and US Caribbean": date(2016, 1, 1),
    "Baltic and North Sea": date(2021, 1, 1),
    "Canadian Arctic": date(2025, 1, 1),
    "Norwegian Sea": date(2026, 9, 1),
}
UNSURE = {"Norwegian Sea": "Norwegian Sea (if without building contract: memory)"}
REPLACEMENT = (
    "A replaced engine that is not identical, or an added one, must meet the limits of "
    "the day it is fitted."
)
IMPOSSIBLE = (
    "Tier III is not asked of a replacement where no such engine exists or none fits: "
    "MEPC.230(65); then tier II."
)
APPLIES = "For engines above 130 kW that are not for emergencies only; flag and class decide."


def nox_limit(tier: str, speed: float) -> float:
    """Return the limit of a tier at a rated crankshaft speed, unrounded.

    Certificates print one decimal, rounded once from this value.

    Parameters
    ----------
    tier : str
        I, II or III.
    speed : float
        Rated speed [rpm].

    Returns
    -------
    float
        Limit [g/kWh].

    References
    ----------
    MARPOL Annex VI reg. 13 (formulas seen).

    Examples
    --------
    >>> round(nox_limit("II", 1800), 4), nox_limit("I", 129)
    (7.8477, 17.0)
    """
    slow, factor, exponent, fast = LIMITS[tier]
    if speed < 130:
        return slow
    # In the order of the regulation: slow engines may emit more for each kWh.
    return fast if speed >= 2000 else factor * speed**exponent


def tier_asked(since: date) -> str:
    """Return the tier required everywhere by a date: none, I or II.

    Parameters
    ----------
    since : date
        Date of keel or of a replaced engine.

    Returns
    -------
    str

    References
    ----------
    MARPOL Annex VI reg. 13 (seen).
    """
    return next((tier for tier, start in FROM if since >= start), "none")


def closed_areas(since: date) -> tuple[str, ...]:
    """Return the control areas that require tier III by a date.

    Parameters
    ----------
    since : date
        Date of keel or of a replaced engine.

    Returns
    -------
    tuple of str

    References
    ----------
    MARPOL Annex VI reg. 13.5, 13.6 (seen but one).
    """
    return tuple(area for area, start in AREAS.items() if since >= start)


def rule_date(built: date, installed: date | None, replacement: str | None) -> date:
    """Return the date that decides: the keel's, or that of a later engine of another kind.

    Parameters
    ----------
    built : date
        Keel laid.
    installed : date or None
        Engine fitted, if later than the keel.
    replacement : str or None
        Kind of replacement: identical or other or added.

    Returns
    -------
    date

    References
    ----------
    MARPOL Annex VI reg. 13.2.
    """
    # An identical replacement keeps the rules of the engine that it replaced.
    return built if installed is None or replacement == "identical" else max(built, installed)


def judge_tier(
    built: date,
    speed: float,
    certificate: str,
    installed: date | None = None,
    replacement: str | None = None,
    area: str | None = None,
) -> Judgement:
    """Judge the tier of an engine's certificate against the one that dates and waters require.

    Parameters
    ----------
    built : date
        Keel laid.
    speed : float
        Rated speed [rpm].
    certificate : str
        Tier on the engine certificate: none, I, II or III.
    installed : date, optional
        Engine fitted, if later than the keel.
    replacement : str, optional
        Kind of replacement: identical or other or added.
    area : str, optional
        Where she shall sail, one of the choices.

    Returns
    -------
    Judgement
        Limit the asked tier's figure and value the certificate's [g/kWh], where there is one.

    Notes
    -----
    No certificate where one is asked is poor (a paper to be found and priced), a lower tier than
    asked failed. Before 2000 nothing is asked: without a certificate fair, by our own choice. Tier
    II where areas ask III: fair, and failed in the one area named; a replaced engine poor there,
    since a waiver may exist.

    References
    ----------
    MARPOL Annex VI reg. 13 (formulas and dates seen, but those marked memory); MEPC.230(65) for
    replacements (seen).
    """
    since = rule_date(built, installed, replacement)
    replaced = since != built
    areas = closed_areas(since)
    asked = "III" if area in areas else tier_asked(since)
    # Where waters are named they decide alone: other areas are in the notes only.
    closed = () if area else areas
    band, rating, meaning = _tier_band(asked, certificate, closed, replaced)
    value = None if certificate == "none" else nox_limit(certificate, speed)
    limit = None if asked == "none" else nox_limit(asked, speed)
    margin = None if value is None or limit is None else difference(limit, value)
    what = "An engine fitted on" if replaced else "A keel of"
    where = f" in {area}" if area else ""
    paper = "no certificate" if certificate == "none" else f"a tier {certificate} certificate"
    sentence = (
        f"{what} {since.isoformat()} asks for {_tier_words(asked, limit, speed)}{where}, and the "
        f"engine has {paper}: {meaning}."
    )
    notes = _tier_notes(areas, replaced)
    source = NORWEGIAN if area == "Norwegian Sea" else SOURCE
    return Judgement(band, rating, value, "g/kWh", limit, margin, sentence, notes, source)


def _tier_words(tier: str, limit: float | None, speed: float) -> str:
    """Return a tier with its limit [g/kWh] at a speed [r/min]."""
    if limit is None:
        return "no tier"
    return f"tier {tier} ({show(limit, 'g/kWh', 1)} at {show(speed, 'rpm')})"


def _tier_notes(areas: tuple[str, ...], replaced: bool) -> tuple[str, ...]:
    """Return the notes on the areas that require tier III, and on replaced engines."""
    notes = []
    if areas:
        named = "; ".join(UNSURE.get(area, area) for area in areas)
        notes.append(f"Tier III is asked in: {named}.")
        if replaced:
            notes.append(IMPOSSIBLE)
    return (*notes, REPLACEMENT, APPLIES)


def _tier_band(
    asked: str, certificate: str, areas: tuple[str, ...], replaced: bool
) -> tuple[str, str, str]:
    """Return band, rating and meaning of a certificate against the tier required."""
    # Without a paper nothing is proven, and an engine before 2000 needs none.
    if certificate == "none":
        if asked == "none":
            return "no tier asked", "fair", "lawful as she is, with the oldest kind of engine"
        return (
            "no certificate",
            "poor",
            "find the certificate and the technical file, or price a new approval",
        )
    if TIERS.index(certificate) < TIERS.index(asked):
        # a waiver may exist where no engine of tier III fitted: MEPC.230(65)
        if asked == "III" and replaced and certificate == "II":
            return (
                "tier III or a waiver",
                "poor",
                "enough there only with the flag's word that no tier III engine was possible",
            )
        return "below the asked tier", "failed", "the engine is below what her date asks for"
    if areas and certificate != "III":
        return (
            "meets the tier, areas closed",
            "fair",
            "enough in open waters, not in the control areas named below",
        )
    return "meets the tier", "good", "enough"


CRITERIA = (
    Criterion(
        "nox-tier",
        "NOx tier of an engine against the dates of keel and engine",
        (
            Field("built", "Keel laid", "date", low=date(1900, 1, 1)),
            number_field("speed", "Rated speed", "rpm", 10, 4000),
            Field("certificate", "Tier on the engine certificate", "choice", choices=TIERS),
            Field(
                "installed",
                "Engine fitted, if later than the keel",
                "date",
                optional=True,
                low=date(1900, 1, 1),
            ),
            Field(
                "replacement",
                "Kind of replacement",
                "choice",
                optional=True,
                choices=("identical", "other or added"),
            ),
            Field(
                "area",
                "Where she shall sail",
                "choice",
                optional=True,
                choices=("open sea", *AREAS),
            ),
        ),
        SOURCE,
        judge_tier,
        "Marine diesel engines above 130 kW, 10 to 4000 r/min, keels since 1900.",
        "Limits at nine speeds from the published formulas; each date and each "
        "speed boundary from both sides.",
        orders=(
            Order("installed", AT_LEAST, "built", "no engine is fitted before there is a keel"),
        ),
    ),
)
