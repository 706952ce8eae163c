"""Leaks of refrigerant: is the leak check in date, and would the whole charge in one room be more than people may meet there."""

from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement, refuse
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.months import add_months
from inspector.criteria.refrigeration import GASES, co2_equivalent, leak_check_months
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

CHECKS = Source(
    "European rules on leak checks: (EU) 517/2014 for HFC, (EU) 2024/590 for CFC and HCFC, taken as a guide",
    "thresholds from public summaries",
    "5, 50 and 500 t of CO2; 3, 30 and 300 kg",
    "seen",
)
CHECKS_HFO = Source("Regulation (EU) 2024/573 on fluorinated gases, taken as a guide", "2024, recalled", "1, 10 and 100 kg of HFO", "memory")
PRACTICAL = Source("EN 378-1 and ISO 5149-1, practical limits of refrigerants", "recalled", "R-717 0.00035, R-134a 0.25, R-404A 0.52 kg/m³", "memory")
PRACTICAL_LIMITS = {"R-717": 0.00035, "R-134a": 0.25, "R-404A": 0.52}  # kg/m³
ADVICE = "Which law binds depends on flag, owner and place of service: take advice, this is a reminder."


def check_interval(refrigerant: str, charge: float, detection: str | None) -> int | None:
    """Return the months between leak checks of a charge [kg], doubled by fixed leak detection; None where none is asked."""
    months = leak_check_months(refrigerant, charge)
    return months * 2 if months and detection == "yes" else months


def judge_leak_check(last: date, refrigerant: str, charge: float, on: date, detection: str | None = None) -> Judgement:
    """Judge whether the leak check of a circuit is in date.

    Parameters
    ----------
    last : date of the last check; refrigerant; charge [kg] of one circuit, 0 to 10 000; on : the day; detection : fixed leak detection, yes or no.

    Returns
    -------
    Judgement : value the days left [days], negative where overdue; limit 0.

    References
    ----------
    (EU) 517/2014 and 2024/590: every 12, 6 or 3 months by charge, twice that with fixed detection (seen; HFO memory). Overdue is poor: a guide.
    """
    if last > on:
        refuse("refrigerant-leak-check", "last", last, f"a check of {last.isoformat()} lies after the day, {on.isoformat()}")
    source = CHECKS_HFO if GASES[refrigerant].kind == "HFO" else CHECKS
    months = check_interval(refrigerant, charge, detection)
    amount = f"{show(charge, 'kg')} of {refrigerant} ({show(co2_equivalent(refrigerant, charge), 't')} of CO2)"
    if months is None:
        return Judgement("refrigerant-leak-check", "none asked", "good", None, None, None, None, f"For {amount} no leak check is asked.", source, (ADVICE,))
    due = add_months(last, months)
    left = float((due - on).days)
    band, rating, meaning = ("overdue", "poor", "overdue") if left < 0 else ("in date", "good", "in date")
    sentence = f"For {amount}, checked on {last.isoformat()} and due every {months} months, the next check by {due.isoformat()} is {meaning}."
    return Judgement("refrigerant-leak-check", band, rating, left, "days", 0.0, left, sentence, source, (ADVICE,))


def charge_ladder(volume: float, refrigerant: str) -> Ladder:
    """Two bands of the charge [kg] that could leak into a room [m³]."""
    limit = float(volume * PRACTICAL_LIMITS[refrigerant])
    return stairs(
        "kg",
        to(limit, "within the practical limit", "good", "within it"),
        beyond("over the practical limit", "poor", "over it: look for gas detection, ventilation, alarm and a way out"),
    )


def judge_charge(charge: float, volume: float, refrigerant: str) -> Judgement:
    """Judge the whole charge of a circuit against the room it could leak into.

    Parameters
    ----------
    charge [kg], 0 to 10 000; volume [m³] of the smallest room with parts of the circuit, 1 to 20 000; refrigerant : R-717, R-134a or R-404A.

    References
    ----------
    EN 378-1: practical limits of 0.00035, 0.25 and 0.52 kg/m³ (memory).
    """
    limit = float(volume * PRACTICAL_LIMITS[refrigerant])
    notes = (
        "Leaked gas lies low and displaces air; leave, and let certified persons find it.",
        "Lower limits and further rules hold for ammonia and for flammable gases.",
    )
    return told(
        "refrigerant-practical-limit",
        charge_ladder(volume, refrigerant).step(charge),
        f"A charge of {show(charge, 'kg')} of {refrigerant} for a room of {show(volume, 'm³')}, against at most {show(limit, 'kg')},",
        (charge, "kg", limit),
        PRACTICAL,
        notes,
    )


CRITERIA = (
    Criterion(
        "refrigerant-leak-check",
        "Date of a refrigerant leak check",
        (
            Input("last", "Last leak check", "date", low=date(1990, 1, 1), high=date(2200, 12, 31)),
            Input("refrigerant", "Refrigerant", "choice", choices=tuple(GASES)),
            Input("charge", "Charge of one circuit", "number", "kg", low=0, high=10_000),
            Input("on", "Day", "date", low=date(1990, 1, 1), high=date(2200, 12, 31)),
            Input("detection", "Fixed leak detection", "choice", optional=True, choices=("yes", "no")),
        ),
        CHECKS,
        judge_leak_check,
        "The refrigerants listed, circuits of up to 10 000 kg.",
        "Six charges by our own arithmetic on published thresholds; due dates from both sides.",
    ),
    Criterion(
        "refrigerant-practical-limit",
        "Charge of a circuit against the room it could leak into",
        (
            Input("charge", "Charge of the circuit", "number", "kg", low=0, high=10_000),
            Input("volume", "Volume of the room", "number", "m³", low=1, high=20_000),
            Input("refrigerant", "Refrigerant", "choice", choices=tuple(PRACTICAL_LIMITS)),
        ),
        PRACTICAL,
        judge_charge,
        "Three refrigerants, rooms of 1 to 20 000 m³.",
        "Two rooms by our own arithmetic on recalled limits.",
        ladder=charge_ladder,
    ),
)
