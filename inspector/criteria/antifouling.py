"""Antifouling coats that are banned by date, and the inventory of hazardous materials that a ship must carry."""

from datetime import date

from inspector.criteria.hazardous import EARLIEST, SAMPLE
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.source import Source

AFS = Source("AFS Convention, controls on anti-fouling systems", "in force 17 September 2008, with cybutryne from 2023",
             "organotin 1 January 2003 and 2008; cybutryne 1 January 2023", "seen")
HONG_KONG = Source("Hong Kong Convention on the recycling of ships", "in force 26 June 2025", "inventory, Part I", "seen")
EUROPEAN = Source("Regulation (EU) 1257/2013 on ship recycling", "2013", "inventory of hazardous materials", "seen")

TBT_END = date(2008, 1, 1)
CYBUTRYNE = date(2023, 1, 1)
LEAST_TONNAGE = 500
HK_FORCE, HK_EXISTING = date(2025, 6, 26), date(2030, 6, 26)
EU_NEW, EU_EXISTING = date(2018, 12, 31), date(2020, 12, 31)
CERTIFICATE = ("certificate seen", "no certificate seen")
ANTIFOULING_NOTE = "Blasting or scraping such a coat is work for a yard that may: dust and water are collected."


def judge_organotin(papers: str, built: date | None = None) -> Judgement:
    """Tell what is presumed of organotin under the antifouling by the date of building.

    Parameters
    ----------
    papers : certificate or declaration on the anti-fouling system seen or not; built : keel laid, missing where unknown.

    References
    ----------
    AFS Convention (seen): not applied from 1 January 2003, none on the hull, or sealed, from 1 January 2008.
    """
    seen = papers == CERTIFICATE[0]
    if built is not None and built >= TBT_END:
        band, rating, said = "prohibited when built", None, "organotin was prohibited at building; a hull coated elsewhere still needs its certificate"
    elif seen:
        band, rating, said = "certificate decides", None, "the certificate decides; organotin may still lie under a sealer, which it names"
    else:
        band, rating = ("survey required" if built is None else "suspect under sealer"), "poor"
        said = "organotin is suspect under the present coat until sampled"
    when = "With the date unknown" if built is None else f"Built {built.isoformat()}"
    return Judgement("organotin", band, rating, None, None, None, None, f"{when}, {said}.", AFS, (ANTIFOULING_NOTE, SAMPLE))


def judge_cybutryne(papers: str, applied: date | None = None) -> Judgement:
    """Tell what is presumed of cybutryne in the antifouling by the date of its last coat.

    Parameters
    ----------
    papers : certificate or declaration on the anti-fouling system seen or not; applied : day of the last coat, missing where unknown.

    References
    ----------
    AFS Convention (seen): not applied from 1 January 2023; older outer coats go at the next renewal, at most 60 months after the last application.
    """
    if applied is not None and applied >= CYBUTRYNE:
        band, rating = "banned when applied", None
        said = "cybutryne was banned then: the certificate must name the product, and an older coat below it must be sealed"
    else:
        band, rating = ("survey required" if applied is None else "possible until renewed"), "fair"
        last = "" if applied is None else f", at the latest by {_months_on(applied, 60).isoformat()}"
        said = f"cybutryne is possible in the outer coat, which is then removed or sealed at the next renewal{last}"
    when = "With the date unknown" if applied is None else f"Coated {applied.isoformat()}"
    rated = None if papers == CERTIFICATE[0] else rating
    return Judgement("cybutryne", band, rated, None, None, None, None, f"{when}, {said}.", AFS, (ANTIFOULING_NOTE, SAMPLE))


def _months_on(day: date, months: int) -> date:
    year, month = divmod(day.year * 12 + day.month - 1 + months, 12)
    last = [31, 29 if year % 4 == 0 and (year % 100 or year % 400 == 0) else 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month]
    return date(year, month + 1, min(day.day, last))


def inventory_due(tonnage: int, european: bool, built: date | None) -> tuple[date | None, Source]:
    """Return from when a ship must carry the inventory (None: never by these texts) and the text that asks first.

    Parameters: tonnage, gross; european : under an EU flag or calling at EU ports; built : missing where unknown.
    """
    if tonnage < LEAST_TONNAGE:
        return None, HONG_KONG
    if european:
        return (EU_EXISTING if built is None or built < EU_NEW else max(built, EU_NEW)), EUROPEAN
    return (HK_EXISTING if built is None or built < HK_FORCE else built), HONG_KONG


def judge_inventory(inventory: str, tonnage: int, european: str, built: date | None = None) -> Judgement:
    """Judge whether the inventory of hazardous materials is there, or when it must be.

    Parameters
    ----------
    inventory : seen or not; tonnage : gross, whole, as on the certificate; european : yes where under an EU flag or calling at EU ports; built : keel laid.

    References
    ----------
    Hong Kong Convention (seen): 500 GT and over, new ships from 26 June 2025, others by 26 June 2030. Regulation (EU) 1257/2013 (seen):
    new ships from 31 December 2018, others from 31 December 2020 (the date for calls is memory).
    """
    due, source = inventory_due(tonnage, european == "yes", built)
    notes = ("After a conversion the tonnage may be another, and a vessel out of trade may fall outside; flag decides.",
             "Part I counts structure and equipment; it is kept up with every change.")
    if inventory == "seen":
        band, rating, said = "inventory seen", "good", "The inventory was seen: write its date, its maker and what it lists"
    elif due is None:
        band, rating = "not required by tonnage", None
        said = f"Under {LEAST_TONNAGE} GT no inventory is asked for, and hazardous materials are presumed by date alone"
    elif due <= HK_FORCE:
        band, rating, said = "due and not seen", "poor", f"An inventory is due since {due.isoformat()} and was not seen: a survey is to be counted as cost"
    else:
        band, rating, said = "due later and not seen", "fair", f"An inventory is due by {due.isoformat()} and was not seen: a survey is to be counted as cost"
    return Judgement("hazard-inventory", band, rating, None, None, None, None, f"{said}.", source, notes)


_CERTIFICATE = Input("papers", "Certificate or declaration on the antifouling", "choice", choices=CERTIFICATE)

CRITERIA = (
    Criterion(
        "organotin", "Organotin under the antifouling", (_CERTIFICATE, Input("built", "Keel laid", "date", optional=True, low=EARLIEST)),
        AFS, judge_organotin, "Hulls built since 1900; an unknown date counts as the worst.", "The date of 2008 from both sides, with and without certificate.",
    ),
    Criterion(
        "cybutryne", "Cybutryne in the antifouling", (_CERTIFICATE, Input("applied", "Last antifouling coat", "date", optional=True, low=EARLIEST)),
        AFS, judge_cybutryne, "Antifouling coats of any date; an unknown one counts as the worst.",
        "The date of 2023 from both sides, and the sixty months by our own count.",
    ),
    Criterion(
        "hazard-inventory", "Inventory of hazardous materials",
        (Input("inventory", "Inventory", "choice", choices=("seen", "not seen")), Input("tonnage", "Gross tonnage", "whole", low=1, high=50_000),
         Input("european", "EU flag or calling at EU ports", "choice", choices=("yes", "no")), Input("built", "Keel laid", "date", optional=True,
                                                                                                     low=EARLIEST)),
        HONG_KONG, judge_inventory, "Ships to 50 000 GT under a Party or calling at its ports; flag decides for yachts and government ships.",
        "Tonnage limit and each date from both sides, by our own reading of the published dates.",
    ),
)
