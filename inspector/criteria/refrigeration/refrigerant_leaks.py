"""Leaks of refrigerant: is the leak check in date."""

from datetime import date

from inspector.criteria.core.calendar import add_months
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement, judgement_in_words
from inspector.criteria.core.orders import AT_MOST, Order
from inspector.criteria.core.source import Source
from inspector.criteria.refrigeration.stores_and_gases import (
    GASES,
    co2_equivalent,
    leak_check_months,
)
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

CHECKS = Source.seen(
    "European rules on leak checks: (EU) 2024/573 for HFC, (EU) 2024/590 for CFC "
    "and HCFC, taken as a guide",
    "2024; for HFC the thresholds of the repealed (EU) 517/2014 are kept, from public summaries",
    "5, 50 and 500 t of CO2; 3, 30 and 300 kg",
)
CHECKS_HFO = Source.seen(
    "Regulation (EU) 2024/573 on fluorinated gases, taken as a guide",
    "in force from 11 March 2024, thresholds read",
    "1, 10 and 100 kg of HFO",
)
ADVICE = (
    "Which law binds depends on flag, owner and place of service: take advice, this is a reminder."
)


def check_interval(refrigerant: str, charge: float, detection: str | None) -> int | None:
    """Return the months between leak checks of a charge; fixed leak detection doubles them.

    Parameters
    ----------
    refrigerant : str
        Refrigerant, one of the choices.
    charge : float
        Charge of one circuit [kg].
    detection : str or None
        Fixed leak detection: yes or no.

    Returns
    -------
    int or None
        Months; None where no check is asked for.
    """
    months = leak_check_months(refrigerant, charge)
    # A detector that watches always is worth every second look.
    return months * 2 if months and detection == "yes" else months


def judge_leak_check(
    last: date, refrigerant: str, charge: float, on: date, detection: str | None = None
) -> Judgement:
    """Judge whether the leak check of a circuit is in date.

    Parameters
    ----------
    last : date
        Last leak check.
    refrigerant : str
        Refrigerant, one of the choices.
    charge : float
        Charge of one circuit [kg].
    on : date
        Day.
    detection : str, optional
        Fixed leak detection: yes or no.

    Returns
    -------
    Judgement
        Value the days left [days], negative where overdue; limit 0.

    References
    ----------
    (EU) 2024/573 and 2024/590: every 12, 6 or 3 months by charge, twice that with fixed detection
    (seen). Overdue is poor: a guide.
    """
    # The newer regulation counts HFO in kg; for the others the older thresholds were kept.
    source = CHECKS_HFO if GASES[refrigerant].kind == "HFO" else CHECKS
    months = check_interval(refrigerant, charge, detection)
    amount = (
        f"{show(charge, 'kg')} of {refrigerant} "
        f"({show(co2_equivalent(refrigerant, charge), 't')} of CO2)"
    )
    if months is None:
        sentence = f"For {amount} no leak check is asked."
        return judgement_in_words("none asked", "good", sentence, (ADVICE,), source)
    due = add_months(last, months)
    left = float((due - on).days)
    band, rating = ("overdue", "poor") if left < 0 else ("in date", "good")
    sentence = (
        f"For {amount}, checked on {last.isoformat()} and due every {months} months, "
        f"the next check by {due.isoformat()} is {band}."
    )
    return Judgement(band, rating, left, "days", 0.0, left, sentence, (ADVICE,), source=source)


CRITERIA = (
    Criterion(
        "refrigerant-leak-check",
        "Date of a refrigerant leak check",
        (
            Field("last", "Last leak check", "date", low=date(1990, 1, 1), high=date(2200, 12, 31)),
            Field("refrigerant", "Refrigerant", "choice", choices=tuple(GASES)),
            number_field("charge", "Charge of one circuit", "kg", 0, 10_000),
            Field("on", "Day", "date", low=date(1990, 1, 1), high=date(2200, 12, 31)),
            Field(
                "detection", "Fixed leak detection", "choice", optional=True, choices=("yes", "no")
            ),
        ),
        CHECKS,
        judge_leak_check,
        "The refrigerants listed, circuits of up to 10 000 kg.",
        "Six charges by our own arithmetic on published thresholds; due dates from both sides.",
        orders=(Order("last", AT_MOST, "on", "a check still to come proves nothing on the day"),),
    ),
)
