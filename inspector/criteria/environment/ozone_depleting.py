"""Gases that deplete the ozone layer, by date: in plant whose gas is not known, and halon."""

from datetime import date

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.criteria.environment.hazardous_materials import (
    BUILT,
    CHECKED,
    EARLIEST,
    PAPERS,
    built_words,
    presumption,
)
from inspector.values.field import Field

DEPLETING = Source.seen(
    "MARPOL Annex VI, regulation 12",
    "as amended 2008",
    "ozone-depleting substances, 19 May 2005 and 1 January 2020",
)


HALON = Source.seen(
    "SOLAS II-2 by MSC.27(61), new halon systems",
    "1992; the ban as IMO's own page names it, the day from the resolution's date of acceptance",
    "1 October 1994, six months after 1 April 1994",
)


HALON_END, CFC_BAN, HCFC_BAN = date(1994, 10, 1), date(2005, 5, 19), date(2020, 1, 1)


def judge_depleting(papers: str, built: date | None = None) -> Judgement:
    """Report which ozone-depleting gases are possible by the date of building.

    Parameters
    ----------
    papers : str
        Sampling report or inventory: report seen or no report seen.
    built : date, optional
        Keel laid.

    Returns
    -------
    Judgement

    References
    ----------
    MARPOL Annex VI reg. 12 (seen): CFC and halon plant to 19 May 2005, HCFC plant to 1 January
    2020.
    """
    if built is None or built < CFC_BAN:
        band, rating = (
            ("survey required" if built is None else "CFC, halon and HCFC possible"),
            "poor",
        )
        outcome = "plant with CFC, halon or HCFC such as R-22 may be aboard: read every type plate"
    elif built < HCFC_BAN:
        band, rating = "HCFC possible", "fair"
        outcome = (
            "plant with HCFC such as R-22 may be aboard, CFC and halon were prohibited "
            "at building: read every type plate"
        )
    else:
        band, rating = "prohibited when built", None
        outcome = (
            "HCFC, CFC and halon were prohibited at building; older plant fitted later "
            "is still possible: read every type plate"
        )
    notes = (
        "Existing plant may stay; gas is never released, and gas and plant go to "
        "reception with the record book.",
    )
    return presumption(band, rating, papers, f"{built_words(built)}, {outcome}.", notes)


def judge_halon(cylinders: int, installed: date | None = None) -> Judgement:
    """Judge halon cylinders aboard.

    Parameters
    ----------
    cylinders : int
        Halon cylinders counted.
    installed : date, optional
        When fitted.

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS II-2: no new halon systems from 1 October 1994 (seen); MARPOL Annex VI reg. 12:
    none from 19 May 2005 (seen).
    """
    notes = (
        (
            "A halon system may stay where flag allows it, but its gas is hardly to be had: count "
            "its removal as cost."
        ),
        "Cylinders under pressure are handled by licensed firms only, and nothing is released.",
    )
    # Nothing seen is no proof of nothing there, so it gets no rating.
    if cylinders == 0:
        sentence = (
            "No halon cylinder was seen, which proves nothing of rooms not looked into: ask for "
            "the papers of the fixed system."
        )
        return Judgement("none seen", None, 0, None, None, None, sentence, notes)
    when = "at an unknown date" if installed is None else f"on {installed.isoformat()}"
    band, rating, source = "banned when installed", "poor", HALON
    if installed is not None and installed >= CFC_BAN:
        rating, source = "failed", DEPLETING
        outcome = f"when new halon plant was banned from {CFC_BAN.isoformat()}"
    elif installed is not None and installed >= HALON_END:
        outcome = f"when no new halon systems were allowed from {HALON_END.isoformat()}"
    else:
        band, outcome = "to be decommissioned", "so their removal is work and cost"
    counted = f"{cylinders} halon cylinder{'s' if cylinders > 1 else ''}"
    sentence = f"{counted} installed {when}, {outcome}."
    return Judgement(band, rating, cylinders, None, None, None, sentence, notes, source)


CRITERIA = (
    Criterion(
        "ozone-depleting",
        "Ozone-depleting gases by the date of building",
        (PAPERS, BUILT),
        DEPLETING,
        judge_depleting,
        "Plant whose gas is not known; a known refrigerant has a criterion of its own.",
        CHECKED,
    ),
    Criterion(
        "halon",
        "Halon cylinders aboard",
        (
            Field("cylinders", "Halon cylinders counted", "whole", low=0, high=500),
            Field("installed", "When fitted", "date", optional=True, low=EARLIEST),
        ),
        HALON,
        judge_halon,
        "Fixed systems and cylinders marked as halon, up to 500.",
        "Both dates from both sides, unknown date and none seen.",
    ),
)
