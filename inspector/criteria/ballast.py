"""Ballast water: whether she has what the convention asks of her by the day, and whether a sample meets its standard."""

from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.source import Source
from inspector.quantities import difference

SOURCE = Source(
    "Ballast Water Management Convention, regulation B-3, as amended by MEPC.297(72)",
    "dates as administrations publish them",
    "8 September 2019 and 2024; BWMS Code from 28 October 2020",
    "seen",
)
SEALED = Source("Ballast Water Management Convention, article 3", "recalled", "permanent ballast in sealed tanks", "memory")
SAMPLE = Source("Ballast Water Management Convention, regulation D-2", "as shown by a public rules site", "D-2, performance standard", "seen")

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
    """Return whether the discharge standard D-2 binds: by the day, or by a renewal survey of the oil certificate. Reg. B-3 (seen)."""
    return on >= ALL_FROM or (renewal is not None and RENEWAL_FROM <= renewal <= on)


def judge_treatment(treatment: str, on: date, renewal: date | None = None, installed: date | None = None, approval: str | None = None) -> Judgement:
    """Judge how she treats her ballast water against what the day asks.

    Parameters
    ----------
    treatment : approved system, exchange only, none, or no discharge; on : the day, from 2017-09-08; renewal : last renewal survey of the oil
    certificate; installed : when the system was fitted; approval : BWMS Code, G8 guidelines, or not shown.

    Notes
    -----
    Want of a system is poor: a cost, and no ballast may go out meanwhile. Only a system that was not allowed when fitted fails.

    References
    ----------
    Regulation B-3: first renewal of the oil certificate from 8 September 2019, all ships by 8 September 2024; systems fitted from 28 October
    2020 approved under the BWMS Code (seen). Sealed permanent ballast is outside the convention (memory).
    """
    if renewal is not None and renewal > on:
        refuse("ballast-treatment", "renewal", renewal, f"a renewal of {renewal.isoformat()} lies after the day, {on.isoformat()}")
    asked = treatment_asked(on, renewal)
    if treatment == "approved system":
        band, rating, meaning = _system_band(installed, approval)
    elif treatment == "no discharge":
        band, rating, meaning = "no treatment needed", "good", "needs none while nothing is discharged"
    elif asked:
        band, rating, meaning = "treatment missing", "poor", "may discharge no ballast until a treatment system is fitted: price one"
    else:
        band, rating, meaning = "exchange still enough", "fair", "might still exchange, and needed a system by 8 September 2024"
    rule = "treatment (D-2)" if asked else "exchange (D-1)"
    sentence = f"On {on.isoformat()} the convention asks her for {rule}; with {_said(treatment)} she {meaning}."
    notes = ("Keels from 8 September 2017 need treatment from delivery; some coasts ask for approvals of their own.",)
    return Judgement("ballast-treatment", band, rating, None, None, None, None, sentence, SEALED if treatment == "no discharge" else SOURCE, notes)


def _said(treatment: str) -> str:
    return {"approved system": "an approved system", "none": "no treatment"}.get(treatment, treatment)


def _system_band(installed: date | None, approval: str | None) -> tuple[str, str, str]:
    if approval == "BWMS Code":
        return "approved system", "good", "has what is asked"
    if approval != "G8 guidelines":
        return "approval not shown", "poor", "has a system whose type approval was not shown"
    if installed is None:
        return "date not shown", "fair", "has what is asked if it was fitted before 28 October 2020"
    if installed >= CODE_FROM:
        return "approval too old", "failed", f"has a system fitted on {installed.isoformat()} under guidelines that no longer held"
    return "approved system", "good", "has what is asked, by the older guidelines"


def judge_sample(large: int, small: int | None = None, coli: int | None = None, enterococci: int | None = None, cholera: int | None = None) -> Judgement:
    """Judge a laboratory's count of discharged ballast water.

    Parameters
    ----------
    large : viable organisms of 50 µm and more in a m³; small : of 10 to 50 µm in a ml; coli, enterococci, cholera : colony forming units in 100 ml.

    Returns
    -------
    Judgement : value and limit of the count that lies worst against its limit.

    References
    ----------
    Regulation D-2: below 10, 10, 250, 100 and 1 (seen).
    """
    counted = {"large": large, "small": small, "coli": coli, "enterococci": enterococci, "cholera": cholera}
    known = {name: count for name, count in counted.items() if count is not None}
    worst = max(known, key=lambda name: known[name] / STANDARD[name][0])
    limit, words = STANDARD[worst]
    met = known[worst] < limit
    band, rating, meaning = ("meets the standard", "good", "within the standard") if met else ("over the standard", "failed", "over it")
    missing = [STANDARD[name][1] for name in counted if name not in known]
    notes = (f"Not counted: {'; '.join(missing)}.",) if missing else ()
    sentence = f"The worst of what was counted, {known[worst]} {words} against fewer than {limit}, is {meaning}."
    return Judgement("ballast-discharge", band, rating, known[worst], "", limit, difference(limit, known[worst]), sentence, SAMPLE, notes)


_DAY = {"kind": "date", "optional": True, "low": date(1990, 1, 1)}


def _count(name: str, optional: bool) -> Input:
    return Input(name, STANDARD[name][1].capitalize(), "whole", optional=optional, low=0, high=10_000_000)


CRITERIA = (
    Criterion(
        "ballast-treatment",
        "Ballast water treatment by the day",
        (
            Input("treatment", "How ballast is treated", "choice", choices=TREATMENTS),
            Input("on", "Day", "date", low=date(2017, 9, 8)),
            Input("renewal", "Last renewal of the oil certificate", **_DAY),
            Input("installed", "When the system was fitted", **_DAY),
            Input("approval", "Type approval", "choice", optional=True, choices=APPROVALS),
        ),
        SOURCE,
        judge_treatment,
        "Ships of 400 GT and above that carry ballast water abroad, days from 8 September 2017.",
        "Each date from both sides, as public administrations give them.",
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
