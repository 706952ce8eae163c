"""Antifouling coats banned by date, and the inventory of hazardous materials of a ship."""

from datetime import date

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.source import Source
from inspector.criteria.environment.hazardous_materials import EARLIEST, SAMPLE, built_words
from inspector.values.field import Field

AFS = Source.seen(
    "AFS Convention, controls on anti-fouling systems",
    "in force 17 September 2008, with cybutryne from 2023",
    "organotin 1 January 2003 and 2008; cybutryne 1 January 2023",
)
HONG_KONG = Source.seen(
    "Hong Kong Convention on the recycling of ships", "in force 26 June 2025", "inventory, Part I"
)
EUROPEAN = Source.seen(
    "Regulation (EU) 1257/2013 on ship recycling", "2013", "inventory of hazardous materials"
)

TBT_END = date(2008, 1, 1)
CYBUTRYNE = date(2023, 1, 1)
LEAST_TONNAGE = 500
HK_FORCE, HK_EXISTING = date(2025, 6, 26), date(2030, 6, 26)
EU_NEW, EU_EXISTING = date(2018, 12, 31), date(2020, 12, 31)
CERTIFICATE = ("certificate seen", "no certificate seen")
ANTIFOULING_NOTE = (
    "Blasting or scraping such a coat is work for a yard that may: dust and water are collected."
)


def judge_organotin(papers: str, built: date | None = None) -> Judgement:
    """Report what is presumed of organotin under the antifouling by the date of building.

    Parameters
    ----------
    papers : str
        Certificate or declaration on the antifouling: certificate seen or no certificate seen.
    built : date, optional
        Keel laid.

    Returns
    -------
    Judgement

    References
    ----------
    AFS Convention (seen): not applied from 1 January 2003, none on the hull, or sealed, from 1
    January 2008.
    """
    if built is not None and built >= TBT_END:
        band, rating = "prohibited when built", None
        outcome = (
            "organotin was prohibited at building; a hull coated elsewhere still needs its "
            "certificate"
        )
    # After the date, since a hull built later needs no certificate to be free of it.
    elif papers == CERTIFICATE[0]:
        band, rating = "certificate decides", None
        outcome = "the certificate decides; organotin may still lie under a sealer, which it names"
    else:
        band, rating = ("survey required" if built is None else "suspect under sealer"), "poor"
        outcome = "organotin is suspect under the present coat until sampled"
    sentence = f"{built_words(built)}, {outcome}."
    return judgement_in_words(band, rating, sentence, (ANTIFOULING_NOTE, SAMPLE))


def judge_cybutryne(papers: str, applied: date | None = None) -> Judgement:
    """Report what is presumed of cybutryne in the antifouling by the date of its last coat.

    Parameters
    ----------
    papers : str
        Certificate or declaration on the antifouling: certificate seen or no certificate seen.
    applied : date, optional
        Last antifouling coat.

    Returns
    -------
    Judgement

    References
    ----------
    AFS Convention (seen): not applied from 1 January 2023; older outer coats go at the next
    renewal, at most 60 months after the last application.
    """
    if applied is None:
        when, band, rating, last = "With the date unknown", "survey required", "fair", ""
    else:
        when, band, rating = f"Coated {applied.isoformat()}", "possible until renewed", "fair"
        last = f", at the latest by {add_months(applied, 60).isoformat()}"
    outcome = (
        "cybutryne is possible in the outer coat, which is then removed or sealed at the next "
        f"renewal{last}"
    )
    if applied is not None and applied >= CYBUTRYNE:
        band, rating = "banned when applied", None
        outcome = (
            "cybutryne was banned then: the certificate must name the product, and an older coat "
            "below it must be sealed"
        )
    # where a certificate was seen it decides, and not the date
    if papers == CERTIFICATE[0]:
        rating = None
    return judgement_in_words(band, rating, f"{when}, {outcome}.", (ANTIFOULING_NOTE, SAMPLE))


def inventory_due(tonnage: int, european: bool, built: date | None) -> tuple[date | None, Source]:
    """Return from when a ship must carry the inventory, and the text that asks first.

    Parameters
    ----------
    tonnage : int
        Gross tonnage.
    european : bool
        Whether under an EU flag or calling at EU ports.
    built : date or None
        Keel laid.

    Returns
    -------
    tuple of (date or None, Source)
        Date, None where these texts never ask for it, and source.

    References
    ----------
    Hong Kong Convention, Regulation (EU) 1257/2013 (seen).
    """
    # Below it neither text asks for an inventory; the materials are there all the same.
    if tonnage < LEAST_TONNAGE:
        return None, HONG_KONG
    start, existing, source = HK_FORCE, HK_EXISTING, HONG_KONG
    if european:
        start, existing, source = EU_NEW, EU_EXISTING, EUROPEAN
    # an unknown date of building is taken as that of an existing ship
    is_new = built is not None and built >= start
    return (built if is_new else existing), source


def judge_inventory(
    inventory: str, tonnage: int, european: str, built: date | None = None
) -> Judgement:
    """Judge whether the inventory of hazardous materials is there, or when it must be.

    Parameters
    ----------
    inventory : str
        Inventory: seen or not seen.
    tonnage : int
        Gross tonnage.
    european : str
        EU flag or calling at EU ports: yes or no.
    built : date, optional
        Keel laid.

    Returns
    -------
    Judgement

    References
    ----------
    Hong Kong Convention (seen): 500 GT and over, new ships from 26 June 2025, others by 26 June
    2030. Regulation (EU) 1257/2013 (seen): new ships from 31 December 2018, others from 31 December
    2020 (the date for calls is memory).
    """
    due, source = inventory_due(tonnage, european == "yes", built)
    notes = (
        (
            "After a conversion the tonnage may be another, and a vessel out of trade may fall "
            "outside; flag decides."
        ),
        "Part I counts structure and equipment; it is kept up with every change.",
    )
    if inventory == "seen":
        band, rating = "inventory seen", "good"
        outcome = "The inventory was seen: write its date, its maker and what it lists"
    elif due is None:
        band, rating = "not required by tonnage", None
        outcome = (
            f"Under {LEAST_TONNAGE} GT no inventory is asked for, and hazardous materials are "
            "presumed by date alone"
        )
    else:
        overdue = due <= HK_FORCE
        band = "due and not seen" if overdue else "due later and not seen"
        rating = "poor" if overdue else "fair"
        outcome = (
            f"An inventory is due {'since' if overdue else 'by'} {due.isoformat()} and was not "
            "seen: a survey is to be counted as cost"
        )
    return judgement_in_words(band, rating, f"{outcome}.", notes, source)


_CERTIFICATE = Field(
    "papers", "Certificate or declaration on the antifouling", "choice", choices=CERTIFICATE
)

CRITERIA = (
    Criterion(
        "organotin",
        "Organotin under the antifouling",
        (_CERTIFICATE, Field("built", "Keel laid", "date", optional=True, low=EARLIEST)),
        AFS,
        judge_organotin,
        "Hulls built since 1900; an unknown date counts as the worst.",
        "The date of 2008 from both sides, with and without certificate.",
    ),
    Criterion(
        "cybutryne",
        "Cybutryne in the antifouling",
        (
            _CERTIFICATE,
            Field("applied", "Last antifouling coat", "date", optional=True, low=EARLIEST),
        ),
        AFS,
        judge_cybutryne,
        "Antifouling coats of any date; an unknown one counts as the worst.",
        "The date of 2023 from both sides, and the sixty months by our own count.",
    ),
    Criterion(
        "hazard-inventory",
        "Inventory of hazardous materials",
        (
            Field("inventory", "Inventory", "choice", choices=("seen", "not seen")),
            Field("tonnage", "Gross tonnage", "whole", low=1, high=50_000),
            Field("european", "EU flag or calling at EU ports", "choice", choices=("yes", "no")),
            Field("built", "Keel laid", "date", optional=True, low=EARLIEST),
        ),
        HONG_KONG,
        judge_inventory,
        "Ships to 50 000 GT under a Party or calling at its ports; flag decides "
        "for yachts and government ships.",
        "Tonnage limit and each date from both sides, by our own reading of the published dates.",
    ),
)
