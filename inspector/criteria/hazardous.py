"""Hazardous materials by date: what must be presumed aboard until somebody has sampled it.

A date can raise a suspicion and never lay one: no sentence here says that a vessel has none of a material. A date that is
not known is taken as the worst. Where no report was seen the suspicion is rated, because it costs the buyer; where one was
seen it is not, because the report decides and not the date.
"""

from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.source import Source

ASBESTOS = Source("SOLAS II-1/3-5, new installation of materials containing asbestos", "as amended to 2011", "1 July 2002 and 1 January 2011", "seen")
PCB = Source("Polychlorinated biphenyls, uses before the US ban of 1979, by the US environmental agency's answer", "as published online", "materials listed",
             "seen")
PAINT = Source("Lead and chromate in ship paint by age", "no publisher", "hulls built before about 1990", "common practice")
DEPLETING = Source("MARPOL Annex VI, regulation 12", "as amended 2008", "ozone-depleting substances, 19 May 2005 and 1 January 2020", "seen")
HALON = Source("SOLAS II-2, new halon systems", "recalled", "1 October 1994", "memory")

ASBESTOS_BAN, ASBESTOS_END = date(2002, 7, 1), date(2011, 1, 1)
PCB_BAN, PCB_STOCKS = date(1980, 1, 1), date(1991, 1, 1)
LEAD_UNTIL = date(1990, 1, 1)
HALON_END, CFC_BAN, HCFC_BAN = date(1994, 10, 1), date(2005, 5, 19), date(2020, 1, 1)
REPORT = ("report seen", "no report seen")
SAMPLE = "Only sampling by a competent laboratory, or an inventory based on it, can say more. Take no sample yourself and disturb nothing."
EARLIEST = date(1900, 1, 1)


def _presumption(name: str, band: str, rating: str, papers: str, sentence: str, source: Source, notes: tuple[str, ...] = ()) -> Judgement:
    seen = papers.endswith("seen") and not papers.startswith("no ")
    decides = ("What was seen on paper decides, not the date: write what it says and for which spaces.",) if seen else ()
    return Judgement(name, band, None if seen else rating, None, None, None, None, sentence, source, (*decides, *notes, SAMPLE))


def _told(built: date | None) -> str:
    return "With the date unknown" if built is None else f"Built {built.isoformat()}"


def judge_asbestos(papers: str, built: date | None = None, refitted: date | None = None) -> Judgement:
    """Tell what is presumed of asbestos by the dates of building and refit.

    Parameters
    ----------
    papers : report seen or not; built : keel laid, missing where unknown; refitted : last refit that changed insulation or linings.

    Notes
    -----
    A refit replaces only what it replaces, so the earlier date counts; a refit before 2011 can bring asbestos into a later part.

    References
    ----------
    SOLAS II-1/3-5 (seen): banned from 1 July 2002 but for three uses, without exception from 1 January 2011.
    """
    if built is None or built < ASBESTOS_BAN:
        band, rating = ("survey required" if built is None else "presumed until sampled"), "poor"
        said = "asbestos is presumed until sampled: a survey comes before any cutting, drilling or stripping"
    elif built < ASBESTOS_END:
        band, rating = "possible, sample", "fair"
        said = "asbestos is possible in the three uses then allowed and in wrong deliveries: sample before any cutting"
    else:
        band, rating = "prohibited when built, sample", "fair"
        said = "asbestos was prohibited at building, which proves nothing: still sample gaskets, brake linings and what was repaired since"
    notes = ("Look at lagging, gaskets, packing, winch brakes, fire doors and panels, deck underlay, cable transits, arc chutes.",
             *(_refit(refitted) if refitted else ()))
    return _presumption("asbestos", band, rating, papers, f"{_told(built)}, {said}.", ASBESTOS, notes)


def _refit(refitted: date) -> tuple[str, ...]:
    if refitted < ASBESTOS_BAN:
        return (f"The refit of {refitted.isoformat()} lies before the ban of {ASBESTOS_BAN.isoformat()}: what it brought in is presumed too.",)
    return (f"The refit of {refitted.isoformat()} clears only what it replaced, and only on its papers.",)


def judge_pcb(papers: str, built: date | None = None) -> Judgement:
    """Tell what is presumed of polychlorinated biphenyls by the date of building.

    Parameters
    ----------
    papers : report seen or not; built : keel laid, missing where unknown.

    References
    ----------
    Uses before the US ban of 1979 (seen); that old stocks were used to about 1990 is our own caution.
    """
    if built is None or built < PCB_BAN:
        band, rating = ("survey required" if built is None else "presumed until sampled"), "poor"
        said = "PCB is presumed until sampled in capacitors, transformers, ballasts, cables, sealants, paint and foam"
    elif built < PCB_STOCKS:
        band, rating, said = "suspect", "fair", "PCB is suspect, because old stocks and imports were used for years after the ban"
    else:
        band, rating = "by document only", None
        said = "PCB is not suspected by age alone; old parts fitted later and used equipment need their papers"
    return _presumption("pcb", band, rating, papers, f"{_told(built)}, {said}.", PCB)


def judge_lead(papers: str, built: date | None = None) -> Judgement:
    """Tell what is presumed of lead and chromate in paint by the date of building.

    Parameters
    ----------
    papers : report seen or not; built : keel laid, missing where unknown.

    References
    ----------
    Primers, red lead and old topcoats of hulls built before about 1990 are suspect until tested (common practice).
    """
    if built is None or built < LEAD_UNTIL:
        band, rating = ("survey required" if built is None else "suspect until tested"), "poor"
        said = "lead and chromate are suspect in primers and old coats until tested"
    else:
        band, rating = "unknown coats still tested", "fair"
        said = "lead is less likely by age, and every unknown coat is still tested before it is heated, ground or blasted"
    notes = ("Hot work on painted steel begins with stripping the paint back; local law says how far and by whom.",)
    return _presumption("lead-paint", band, rating, papers, f"{_told(built)}, {said}.", PAINT, notes)


def judge_depleting(papers: str, built: date | None = None) -> Judgement:
    """Tell which ozone-depleting gases are possible by the date of building, where the gas is not known.

    Parameters
    ----------
    papers : report seen or not, such as the record book of ozone-depleting substances; built : keel laid, missing where unknown.

    References
    ----------
    MARPOL Annex VI reg. 12 (seen): CFC and halon plant to 19 May 2005, HCFC plant to 1 January 2020.
    """
    if built is None or built < CFC_BAN:
        band, rating = ("survey required" if built is None else "CFC, halon and HCFC possible"), "poor"
        said = "plant with CFC, halon or HCFC such as R-22 may be aboard: read every type plate"
    elif built < HCFC_BAN:
        band, rating = "HCFC possible", "fair"
        said = "plant with HCFC such as R-22 may be aboard, CFC and halon were prohibited at building: read every type plate"
    else:
        band, rating = "prohibited when built", None
        said = "HCFC, CFC and halon were prohibited at building; older plant fitted later is still possible: read every type plate"
    notes = ("Existing plant may stay; gas is never released, and gas and plant go to reception with the record book.",)
    return _presumption("ozone-depleting", band, rating, papers, f"{_told(built)}, {said}.", DEPLETING, notes)


def judge_halon(cylinders: int, installed: date | None = None) -> Judgement:
    """Judge halon cylinders aboard.

    Parameters
    ----------
    cylinders : whole, counted with their marks, full or empty; installed : when the system was fitted, missing where unknown.

    References
    ----------
    SOLAS II-2: no new halon systems from 1 October 1994 (memory); MARPOL Annex VI reg. 12: none from 19 May 2005 (seen).
    """
    name = "halon"
    notes = ("A halon system may stay where flag allows it, but its gas is hardly to be had: count its removal as cost.",
             "Cylinders under pressure are handled by licensed firms only, and nothing is released.")
    when = "at an unknown date" if installed is None else f"on {installed.isoformat()}"
    if cylinders == 0:
        sentence = "No halon cylinder was seen, which proves nothing of rooms not looked into: ask for the papers of the fixed system."
        return Judgement(name, "none seen", None, 0, None, None, None, sentence, HALON, notes)
    if installed is not None and installed >= CFC_BAN:
        band, rating, source, said = "banned when installed", "failed", DEPLETING, f"when new halon plant was banned from {CFC_BAN.isoformat()}"
    elif installed is not None and installed >= HALON_END:
        band, rating, source, said = "banned when installed", "poor", HALON, f"when no new halon systems were allowed from {HALON_END.isoformat()}"
    else:
        band, rating, source, said = "to be decommissioned", "poor", HALON, "so their removal is work and cost"
    sentence = f"{cylinders} halon cylinder{'s' if cylinders > 1 else ''} installed {when}, {said}."
    return Judgement(name, band, rating, cylinders, None, None, None, sentence, source, notes)


_PAPERS = Input("papers", "Sampling report or inventory", "choice", choices=REPORT)
_BUILT = Input("built", "Keel laid", "date", optional=True, low=EARLIEST)
_CHECKED = "Each date from both sides and the unknown date, against the dates as published; the ratings are our own."

CRITERIA = (
    Criterion(
        "asbestos", "Asbestos by the date of building",
        (_PAPERS, _BUILT, Input("refitted", "Last refit of insulation or linings", "date", optional=True, low=EARLIEST)),
        ASBESTOS, judge_asbestos, "Ships whose keel was laid since 1900; an unknown date counts as the worst.", _CHECKED,
    ),
    Criterion("pcb", "Polychlorinated biphenyls by the date of building", (_PAPERS, _BUILT), PCB, judge_pcb,
              "Ships whose keel was laid since 1900; an unknown date counts as the worst.", _CHECKED),
    Criterion("lead-paint", "Lead and chromate in paint by the date of building", (_PAPERS, _BUILT), PAINT, judge_lead,
              "Painted steel of hulls built since 1900; an unknown date counts as the worst.",
              "The recalled year from both sides and the unknown date; no limit is published for ships."),
    Criterion("ozone-depleting", "Ozone-depleting gases by the date of building", (_PAPERS, _BUILT), DEPLETING, judge_depleting,
              "Plant whose gas is not known; a known refrigerant has a criterion of its own.", _CHECKED),
    Criterion("halon", "Halon cylinders aboard",
              (Input("cylinders", "Halon cylinders counted", "whole", low=0, high=500), Input("installed", "When fitted", "date", optional=True, low=EARLIEST)),
              HALON, judge_halon, "Fixed systems and cylinders marked as halon, up to 500.", "Both dates from both sides, unknown date and none seen."),
)
