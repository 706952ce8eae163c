"""Ballast water: the treatment that the convention requires by the day, and its standard."""

from datetime import date

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.values.field import Field
from inspector.values.numbers import difference

SOURCE = Source.seen(
    "Ballast Water Management Convention, regulation B-3, as amended by MEPC.297(72)",
    "dates as administrations publish them",
    "8 September 2019 and 2024; BWMS Code from 28 October 2020",
)
SEALED = Source.recalled(
    "Ballast Water Management Convention, article 3", "permanent ballast in sealed tanks"
)
SAMPLE = Source.seen(
    "Ballast Water Management Convention, regulation D-2",
    "as shown by a public rules site",
    "D-2, performance standard",
)

RENEWAL_FROM, ALL_FROM, CODE_FROM = date(2019, 9, 8), date(2024, 9, 8), date(2020, 10, 28)
TREATMENTS = ("approved system", "exchange only", "none", "no discharge")
APPROVALS = ("BWMS Code", "G8 guidelines", "not shown")
# input -> (its count must stay below, in words)
STANDARD = {
    "large": (10, "viable organisms of 50 µm and more in a m³"),
    "small": (10, "viable organisms of 10 to 50 µm in a ml"),
    "coli": (250, "Escherichia coli in 100 ml"),
    "enterococci": (100, "intestinal enterococci in 100 ml"),
    "cholera": (1, "toxicogenic Vibrio cholerae in 100 ml"),
}


def treatment_asked(on: date, renewal: date | None) -> bool:
    """Return whether the discharge standard D-2 applies: by the day, or by a renewal survey.

    Parameters
    ----------
    on : date
        Day.
    renewal : date or None
        Last renewal of the oil certificate.

    Returns
    -------
    bool

    References
    ----------
    Regulation B-3 (seen).
    """
    # Each ship from its own renewal within five years, and all of them after that.
    return on >= ALL_FROM or (renewal is not None and RENEWAL_FROM <= renewal <= on)


def judge_treatment(
    treatment: str,
    on: date,
    renewal: date | None = None,
    installed: date | None = None,
    approval: str | None = None,
) -> Judgement:
    """Judge how ballast water is treated against what the day requires.

    Parameters
    ----------
    treatment : str
        How ballast is treated, one of the choices.
    on : date
        Day.
    renewal : date, optional
        Last renewal of the oil certificate.
    installed : date, optional
        When the system was fitted.
    approval : str, optional
        Type approval: BWMS Code, G8 guidelines or not shown.

    Returns
    -------
    Judgement

    Notes
    -----
    Want of a system is poor: a cost, and no ballast may go out meanwhile. Only a system that was
    not allowed when fitted fails.

    References
    ----------
    Regulation B-3: first renewal of the oil certificate from 8 September 2019, all ships by 8
    September 2024; systems fitted from 28 October 2020 approved under the BWMS Code (seen). Sealed
    permanent ballast is outside the convention (from memory).
    """
    asked = treatment_asked(on, renewal)
    band, rating, meaning = _treatment_band(treatment, asked, installed, approval)
    rule = "treatment (D-2)" if asked else "exchange (D-1)"
    sentence = (
        f"On {on.isoformat()} the convention asks her for {rule}; with {_as_treated(treatment)} "
        f"she {meaning}."
    )
    note = (
        "Keels from 8 September 2017 need treatment from delivery; some coasts ask for approvals "
        "of their own."
    )
    source = SEALED if treatment == "no discharge" else SOURCE
    return judgement_in_words(band, rating, sentence, (note,), source)


def _treatment_band(
    treatment: str, asked: bool, installed: date | None, approval: str | None
) -> tuple[str, str, str]:
    """Return band, rating and meaning of a treatment where D-2 is or is not asked."""
    if treatment == "approved system":
        return _system_band(installed, approval)
    if treatment == "no discharge":
        return "no treatment needed", "good", "needs none while nothing is discharged"
    if asked:
        meaning = "may discharge no ballast until a treatment system is fitted: price one"
        return "treatment missing", "poor", meaning
    meaning = "might still exchange, and needed a system by 8 September 2024"
    return "exchange still enough", "fair", meaning


def _as_treated(treatment: str) -> str:
    """Return a treatment as it follows "with" in a sentence."""
    words = {"approved system": "an approved system", "none": "no treatment"}
    return words.get(treatment, treatment)


def _system_band(installed: date | None, approval: str | None) -> tuple[str, str, str]:
    """Return band, rating and meaning of a fitted treatment system."""
    # the code replaced the guidelines: approval under it is enough at any date
    if approval == "BWMS Code":
        return "approved system", "good", "has what is asked"
    if approval != "G8 guidelines":
        return "approval not shown", "poor", "has a system whose type approval was not shown"
    if installed is None:
        return "date not shown", "fair", "has what is asked if it was fitted before 28 October 2020"
    # what was already fitted keeps its approval under the older guidelines
    if installed >= CODE_FROM:
        return (
            "approval too old",
            "failed",
            f"has a system fitted on {installed.isoformat()} under guidelines that no longer held",
        )
    return "approved system", "good", "has what is asked, by the older guidelines"


def judge_sample(
    large: int,
    small: int | None = None,
    coli: int | None = None,
    enterococci: int | None = None,
    cholera: int | None = None,
) -> Judgement:
    """Judge a laboratory's count of discharged ballast water.

    Parameters
    ----------
    large : int
        Viable organisms of 50 µm and more in a m³.
    small : int, optional
        Viable organisms of 10 to 50 µm in a ml.
    coli : int, optional
        Escherichia coli in 100 ml.
    enterococci : int, optional
        Intestinal enterococci in 100 ml.
    cholera : int, optional
        Toxicogenic vibrio cholerae in 100 ml.

    Returns
    -------
    Judgement
        Value and limit of the count that is worst against its limit.

    References
    ----------
    Regulation D-2, all five counts together: below 10, 10, 250, 100 and 1 (seen).
    """
    counted = {
        "large": large,
        "small": small,
        "coli": coli,
        "enterococci": enterococci,
        "cholera": cholera,
    }
    known = {name: count for name, count in counted.items() if count is not None}
    worst = max(known, key=lambda name: known[name] / STANDARD[name][0])
    limit, words = STANDARD[worst]
    # A laboratory mostly counts what was paid for.
    missing = [STANDARD[name][1] for name in counted if name not in known]
    # one count over its figure is enough to fail, and only all five meet the standard
    if known[worst] >= limit:
        band, rating, meaning = "over the standard", "failed", "over it"
    elif missing:
        band, rating = "not determined", None
        meaning = "within the standard, which asks all five counts and so is not determined"
    else:
        band, rating, meaning = "meets the standard", "good", "within the standard"
    notes = (f"Not counted: {'; '.join(missing)}.",) if missing else ()
    sentence = (
        f"The worst of what was counted, {known[worst]} {words} against fewer than "
        f"{limit}, is {meaning}."
    )
    return Judgement(
        band, rating, known[worst], "", limit, difference(limit, known[worst]), sentence, notes
    )


_DAY = {"kind": "date", "optional": True, "low": date(1990, 1, 1)}


def _count(name: str, optional: bool) -> Field:
    return Field(
        name, STANDARD[name][1].capitalize(), "whole", optional=optional, low=0, high=10_000_000
    )


CRITERIA = (
    Criterion(
        "ballast-treatment",
        "Ballast water treatment by the day",
        (
            Field("treatment", "How ballast is treated", "choice", choices=TREATMENTS),
            Field("on", "Day", "date", low=date(2017, 9, 8)),
            Field("renewal", "Last renewal of the oil certificate", **_DAY),
            Field("installed", "When the system was fitted", **_DAY),
            Field("approval", "Type approval", "choice", optional=True, choices=APPROVALS),
        ),
        SOURCE,
        judge_treatment,
        "Ships of 400 GT and above that carry ballast water abroad, days from 8 September 2017.",
        "Each date from both sides, as public administrations give them.",
        orders=(
            Order("renewal", AT_MOST, "on", "a renewal still to come binds nobody on the day"),
            Order(
                "installed", AT_MOST, "on", "a system still to be fitted treats nothing on the day"
            ),
        ),
    ),
    Criterion(
        "ballast-discharge",
        "Count of organisms in discharged ballast water",
        (_count("large", False), *(_count(name, True) for name in list(STANDARD)[1:])),
        SAMPLE,
        judge_sample,
        "Laboratory counts of treated ballast water.",
        "Each count of the standard from both sides.",
    ),
)
