"""The landing area for helicopters: its papers and its fire equipment, as cautions only.

Nothing here can say that anything may land; certificate, flag and operator say that. A figure that
is met therefore carries no rating; one that is not met is poor, and some figures are recalled.
"""

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words, refuse
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

FIRE = Source.seen(
    "FSS Code chapter 17 and IMO's standards for helidecks, as SOLAS II-2/18",
    "both read on a public rules site",
    "foam by D, 45 kg powder, 18 kg carbon dioxide",
)
PAPERS = Source.common_practice(
    "Papers of a landing area", "certificate, structure drawing, friction report"
)

# D below which [m] -> foam [l/min]
FOAM = ((15, 250), (24, 500), (35, 800))
POWDER, CARBON_DIOXIDE = 45, 18  # kg
UNCERTIFIED = (
    "A caution only: without a valid certificate for this deck, this helicopter and this flag "
    "there are no operations, whatever this says."
)
SEEN = ("seen", "not seen")


def judge_papers(certificate: str, structure: str, friction_report: str) -> Judgement:
    """Report whether the papers of a landing area were seen.

    Parameters
    ----------
    certificate : str
        Certificate: seen or not seen.
    structure : str
        Structure drawings: seen or not seen.
    friction_report : str
        Friction report: seen or not seen.

    Returns
    -------
    Judgement

    References
    ----------
    Without papers a landing area is unverified (common practice, no source); class rules know
    certified decks, emergency areas and winching areas apart.
    """
    answers = {
        "certificate": certificate,
        "structure drawing": structure,
        "friction report": friction_report,
    }
    missing = [name for name, answer in answers.items() if answer == "not seen"]
    if missing:
        band, rating = "unverified", "poor"
        sentence = f"Not seen: {', '.join(missing)}. The landing area is unverified: no operations."
    else:
        band, rating = "papers seen", None
        sentence = (
            "Certificate, structure drawing and friction report were seen: write issuer, date and "
            "restrictions."
        )
    kinds = (
        "A deck for landing, one for emergencies and a place for winching are three things; "
        "hovering on it is none of them."
    )
    return judgement_in_words(band, rating, sentence, (kinds, UNCERTIFIED))


def foam_rate(d_value: float) -> int:
    """Return the foam rate [l/min] for a D-value [m] under 35.

    Parameters
    ----------
    d_value : float
        D-value of the helicopter meant [m].

    Returns
    -------
    int
        Foam rate [l/min].

    References
    ----------
    SOLAS II-2/18 (from memory).
    """
    # Below the end: a helicopter of exactly 15 m belongs to the next row.
    for end, rate in FOAM:
        if d_value < end:
            return rate
    refuse(
        "d_value",
        d_value,
        f"the rule names no foam rate for a D-value of {show(d_value, 'm')}; "
        f"it ends below {FOAM[-1][0]} m",
    )


def judge_fire(foam: float, powder: float, carbon_dioxide: float, d_value: float) -> Judgement:
    """Compare the fire equipment of a landing area with its figures.

    Parameters
    ----------
    foam : float
        Foam rate [l/min].
    powder : float
        Dry powder [kg].
    carbon_dioxide : float
        Carbon dioxide [kg].
    d_value : float
        D-value of the helicopter meant [m].

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS II-2/18 (from memory): 250, 500 or 800 l/min of foam by D, 45 kg of dry powder, 18 kg of
    carbon dioxide.
    """
    limit = foam_rate(d_value)
    rows = (
        ("foam", foam, limit, "l/min"),
        ("dry powder", powder, POWDER, "kg"),
        ("carbon dioxide", carbon_dioxide, CARBON_DIOXIDE, "kg"),
    )
    short = [
        f"{name} {show(amount, unit)} of {show(least, unit)}"
        for name, amount, least, unit in rows
        if amount < least
    ]
    size = f"a D-value of {show(d_value, 'm')}"
    # Never good: enough on deck to fight a fire is no permission to land on it.
    if short:
        band, rating = "below the figure", "poor"
        sentence = f"Short for {size}: {', '.join(short)}."
    else:
        band, rating = "figure met", None
        sentence = f"Foam, dry powder and carbon dioxide are not below the figures for {size}."
    notes = (
        "Newer ships follow the fire safety systems code, chapter 17.",
        "Fuel stored aboard is a hazard of its own.",
        UNCERTIFIED,
    )
    margin = difference(foam, limit)
    return Judgement(band, rating, foam, "l/min", limit, margin, sentence, notes)


_D = number_field("d_value", "D-value of the helicopter meant", "m", 5, 40)

CRITERIA = (
    Criterion(
        "landing-papers",
        "Papers of the landing area",
        tuple(
            Field(name, label, "choice", choices=SEEN)
            for name, label in (
                ("certificate", "Certificate"),
                ("structure", "Structure drawings"),
                ("friction_report", "Friction report"),
            )
        ),
        PAPERS,
        judge_papers,
        "Any place marked for helicopters.",
        "Each paper by its absence, by our own count.",
    ),
    Criterion(
        "landing-fire",
        "Fire kit of the landing area",
        (
            number_field("foam", "Foam rate", "l/min", 0, 5000),
            number_field("powder", "Dry powder", "kg", 0, 500),
            number_field("carbon_dioxide", "Carbon dioxide", "kg", 0, 500),
            _D,
        ),
        FIRE,
        judge_fire,
        "Landing areas of older ships, D-values under 35 m.",
        "Each figure and each D-value from both sides, by our own arithmetic.",
    ),
)
