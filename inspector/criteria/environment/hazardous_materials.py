"""Hazardous materials by date: what must be presumed aboard until somebody has sampled it.

A date can raise a suspicion and never settle it: no sentence here says that a vessel has none of a
material. A date that is not known is taken as the worst. Where no report was seen the suspicion is
rated, because it costs the buyer; where a report was seen it is not, because the report decides and
not the date.
"""

from datetime import date

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.orders import AT_LEAST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field

ASBESTOS = Source.seen(
    "SOLAS II-1/3-5, new installation of materials containing asbestos",
    "as amended to 2011",
    "1 July 2002 and 1 January 2011",
)
PCB = Source.seen(
    "Polychlorinated biphenyls, uses before the US ban of 1979, by the US "
    "environmental agency's answer",
    "as published online",
    "materials listed",
)
PAINT = Source.common_practice(
    "Lead and chromate in ship paint by age", "hulls built before about 1990"
)

# Prohibited from the first day with three uses left, without any exception from the second.
ASBESTOS_BAN, ASBESTOS_END = date(2002, 7, 1), date(2011, 1, 1)
# The ban of new PCB; old stocks and imports went into equipment for about ten years more.
PCB_BAN, PCB_STOCKS = date(1980, 1, 1), date(1991, 1, 1)
LEAD_UNTIL = date(1990, 1, 1)
REPORT = ("report seen", "no report seen")
SAMPLE = (
    "Only sampling by a competent laboratory, or an inventory based on it, can say "
    "more. Take no sample yourself and disturb nothing."
)
EARLIEST = date(1900, 1, 1)


def presumption(
    band: str, rating: str | None, papers: str, sentence: str, notes: tuple[str, ...] = ()
) -> Judgement:
    """Return the judgement of a material that is presumed by its date.

    Parameters
    ----------
    band, sentence, notes
        As in ``Judgement``.
    rating : str or None
        Where no report was seen; a report takes the rating away.
    papers : str
        One of ``REPORT``.

    Returns
    -------
    Judgement
    """
    # a report speaks of what was sampled, a date only of what was usual
    if papers == REPORT[0]:
        rating = None
        decides = (
            "What was seen on paper decides, not the date: write what it says and for which spaces."
        )
        notes = (decides, *notes)
    return judgement_in_words(band, rating, sentence, (*notes, SAMPLE))


def built_words(built: date | None) -> str:
    """Return the date of building as a sentence begins with it.

    Parameters
    ----------
    built : date or None

    Returns
    -------
    str
    """
    return "With the date unknown" if built is None else f"Built {built.isoformat()}"


def judge_asbestos(
    papers: str, built: date | None = None, refitted: date | None = None
) -> Judgement:
    """Report what is presumed of asbestos by the dates of building and refit.

    Parameters
    ----------
    papers : str
        Sampling report or inventory: report seen or no report seen.
    built : date, optional
        Keel laid.
    refitted : date, optional
        Last refit of insulation or linings.

    Returns
    -------
    Judgement

    Notes
    -----
    A refit replaces only what it replaces, so the earlier date counts; a refit before 2011 can
    bring asbestos into a later part.

    References
    ----------
    SOLAS II-1/3-5 (seen): banned from 1 July 2002 but for three uses, without exception from 1
    January 2011.
    """
    if built is None or built < ASBESTOS_BAN:
        band, rating = ("survey required" if built is None else "presumed until sampled"), "poor"
        outcome = (
            "asbestos is presumed until sampled: a survey comes before any cutting, "
            "drilling or stripping"
        )
    elif built < ASBESTOS_END:
        band, rating = "possible, sample", "fair"
        outcome = (
            "asbestos is possible in the three uses then allowed and in wrong "
            "deliveries: sample before any cutting"
        )
    else:
        band, rating = "prohibited when built, sample", "fair"
        outcome = (
            "asbestos was prohibited at building, which proves nothing: still sample "
            "gaskets, brake linings and what was repaired since"
        )
    notes = (
        (
            "Look at lagging, gaskets, packing, winch brakes, fire doors and panels, "
            "deck underlay, cable transits, arc chutes."
        ),
        *(_refit(refitted) if refitted else ()),
    )
    return presumption(band, rating, papers, f"{built_words(built)}, {outcome}.", notes)


def _refit(refitted: date) -> tuple[str, ...]:
    """Return the note on a refit before or after the ban."""
    # A refit before the ban brings material in, and one after it takes away only what it touched.
    if refitted < ASBESTOS_BAN:
        return (
            f"The refit of {refitted.isoformat()} lies before the ban of "
            f"{ASBESTOS_BAN.isoformat()}: what it brought in is presumed too.",
        )
    return (
        f"The refit of {refitted.isoformat()} clears only what it replaced, and "
        "only on its papers.",
    )


def judge_pcb(papers: str, built: date | None = None) -> Judgement:
    """Report what is presumed of polychlorinated biphenyls by the date of building.

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
    Uses before the US ban of 1979 (seen); that old stocks were used to about 1990 is our own
    caution.
    """
    if built is None or built < PCB_BAN:
        band, rating = ("survey required" if built is None else "presumed until sampled"), "poor"
        outcome = (
            "PCB is presumed until sampled in capacitors, transformers, ballasts, "
            "cables, sealants, paint and foam"
        )
    elif built < PCB_STOCKS:
        band, rating = "suspect", "fair"
        outcome = "PCB is suspect, because old stocks and imports were used for years after the ban"
    else:
        band, rating = "by document only", None
        outcome = (
            "PCB is not suspected by age alone; old parts fitted later and used "
            "equipment need their papers"
        )
    return presumption(band, rating, papers, f"{built_words(built)}, {outcome}.")


def judge_lead(papers: str, built: date | None = None) -> Judgement:
    """Report what is presumed of lead and chromate in paint by the date of building.

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
    Primers, red lead and old topcoats of hulls built before about 1990 are suspect until tested
    (common practice, no source).
    """
    if built is None or built < LEAD_UNTIL:
        band, rating = ("survey required" if built is None else "suspect until tested"), "poor"
        outcome = "lead and chromate are suspect in primers and old coats until tested"
    else:
        band, rating = "unknown coats still tested", "fair"
        outcome = (
            "lead is less likely by age, and every unknown coat is still tested before "
            "it is heated, ground or blasted"
        )
    notes = (
        "Hot work on painted steel begins with stripping the paint back; local law "
        "says how far and by whom.",
    )
    return presumption(band, rating, papers, f"{built_words(built)}, {outcome}.", notes)


PAPERS = Field("papers", "Sampling report or inventory", "choice", choices=REPORT)
BUILT = Field("built", "Keel laid", "date", optional=True, low=EARLIEST)
CHECKED = (
    "Each date from both sides and the unknown date, against the dates as published; "
    "the ratings are our own."
)

CRITERIA = (
    Criterion(
        "asbestos",
        "Asbestos by the date of building",
        (
            PAPERS,
            BUILT,
            Field(
                "refitted",
                "Last refit of insulation or linings",
                "date",
                optional=True,
                low=EARLIEST,
            ),
        ),
        ASBESTOS,
        judge_asbestos,
        "Ships whose keel was laid since 1900; an unknown date counts as the worst.",
        CHECKED,
        orders=(Order("refitted", AT_LEAST, "built", "nothing is refitted before it is built"),),
    ),
    Criterion(
        "pcb",
        "Polychlorinated biphenyls by the date of building",
        (PAPERS, BUILT),
        PCB,
        judge_pcb,
        "Ships whose keel was laid since 1900; an unknown date counts as the worst.",
        CHECKED,
    ),
    Criterion(
        "lead-paint",
        "Lead and chromate in paint by the date of building",
        (PAPERS, BUILT),
        PAINT,
        judge_lead,
        "Painted steel of hulls built since 1900; an unknown date counts as the worst.",
        "The recalled year from both sides and the unknown date; no limit is published for ships.",
    ),
)
