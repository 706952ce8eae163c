"""Refrigerants: may the gas of a plant stay, and when are its leaks checked.

The status of a refrigerant is law and supply, not wear: a plant may run well on a gas that can no
longer be bought. Global warming potentials are those of European law (fourth assessment report);
other tables differ by a fifth.
"""

from dataclasses import dataclass
from datetime import date

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.criteria.environment.ozone_depleting import CFC_BAN, HCFC_BAN
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

REGULATION_12 = Source.seen(
    "MARPOL Annex VI, regulation 12", "as amended 2008", "ozone-depleting substances"
)
FGAS = Source.seen(
    "Regulation (EU) 2024/573 on fluorinated gases, taken as a guide to supply",
    "2024, from trade summaries",
    "servicing ban from GWP 2500",
)
OUTLOOK = Source.recalled(
    "Regulation (EU) 2024/573 on fluorinated gases, taken as a guide to supply",
    "phase-down, step at GWP 750",
    edition="2024, recalled",
)

SERVICE_BAN, STEP = 2500, 750  # GWP


@dataclass(frozen=True)
class Gas:
    """One refrigerant.

    Parameters
    ----------
    kind : str
        CFC, HCFC, HFC, HFO or natural.
    gwp : int
        Global warming potential of the fourth assessment report.
    safety : str
        Safety class.
    """

    kind: str
    gwp: int
    safety: str


# GWP of R-404A, R-507A and R-422D seen in a service firm's guide to the European rules; the
# others from memory
GASES = {
    "R-12": Gas("CFC", 10900, "A1"),
    "R-22": Gas("HCFC", 1810, "A1"),
    "R-502": Gas("CFC", 4657, "A1"),
    "R-134a": Gas("HFC", 1430, "A1"),
    "R-404A": Gas("HFC", 3922, "A1"),
    "R-507A": Gas("HFC", 3985, "A1"),
    "R-407C": Gas("HFC", 1774, "A1"),
    "R-407F": Gas("HFC", 1825, "A1"),
    "R-410A": Gas("HFC", 2088, "A1"),
    "R-422D": Gas("HFC", 2729, "A1"),
    "R-448A": Gas("HFC", 1387, "A1"),
    "R-449A": Gas("HFC", 1397, "A1"),
    "R-452A": Gas("HFC", 2140, "A1"),
    "R-513A": Gas("HFC", 631, "A1"),
    "R-32": Gas("HFC", 675, "A2L"),
    "R-1234yf": Gas("HFO", 4, "A2L"),
    "R-290": Gas("natural", 3, "A3"),
    "R-717": Gas("natural", 0, "B2L"),
    "R-744": Gas("natural", 1, "A1"),
}
CAUTIONS = {
    "A2L": "Mildly flammable: look for gas detection and for no ignition sources near it.",
    "A3": (
        "Highly flammable: charge and room are limited by code; no flame, and no work "
        "but by certified persons."
    ),
    "B2L": (
        "Ammonia is toxic and flammable: if it smells, leave upwind; the plant room is "
        "entered only with the ship."
    ),
}
# kind -> unit, and months between leak checks from a charge on: kg for ozone-depleting gases
# ((EU) 2024/590, seen) and HFO, t of CO2 equivalent for HFC (both (EU) 2024/573, seen)
LEAK_CHECKS = {
    "CFC": ("kg", ((300, 3), (30, 6), (3, 12))),
    "HCFC": ("kg", ((300, 3), (30, 6), (3, 12))),
    "HFC": ("t", ((500, 3), (50, 6), (5, 12))),
    "HFO": ("kg", ((100, 3), (10, 6), (1, 12))),
}


def co2_equivalent(refrigerant: str, charge: float) -> float:
    """Return the charge of a refrigerant in tonnes of CO2, by the GWP of European law.

    Parameters
    ----------
    refrigerant : str
        Refrigerant, one of the choices.
    charge : float
        Charge of one circuit [kg].

    Returns
    -------
    float
        CO2 equivalent [t].

    Examples
    --------
    >>> round(co2_equivalent("R-404A", 60), 1)
    235.3
    """
    return charge * GASES[refrigerant].gwp / 1000


def leak_check_months(refrigerant: str, charge: float) -> int | None:
    """Return the months between leak checks for a charge [kg], None where none is asked.

    Parameters
    ----------
    refrigerant : str
        Refrigerant, one of the choices.
    charge : float
        Charge of one circuit [kg].

    Returns
    -------
    int or None
        Months between leak checks for a charge [kg].

    References
    ----------
    (EU) 2024/573 for HFC and HFO, in force from 11 March 2024 (seen; for HFC as in (EU) 517/2014,
    which it repealed), (EU) 2024/590 for CFC and HCFC (seen).
    """
    unit, steps = LEAK_CHECKS.get(GASES[refrigerant].kind, ("kg", ()))
    amount = charge if unit == "kg" else co2_equivalent(refrigerant, charge)
    return next((months for least, months in steps if amount >= least), None)


def judge_refrigerant(refrigerant: str, installed: date, charge: float | None = None) -> Judgement:
    """Judge whether a refrigerant may stay and can be had.

    Parameters
    ----------
    refrigerant : str
        Refrigerant, one of ``GASES``.
    installed : date
        When the plant was fitted.
    charge : float, optional
        Charge of one circuit [kg].

    Returns
    -------
    Judgement
        Value is the charge in t of CO2 equivalent [t] where it is known; no limit.

    References
    ----------
    MARPOL Annex VI reg. 12: no new CFC plant from 19 May 2005, no new HCFC plant from 1 January
    2020 (seen). Regulation (EU) 2024/573: no virgin gas of GWP 2500 and more for servicing (seen),
    step at 750 (from memory).
    """
    gas = GASES[refrigerant]
    band, rating, meaning, source = _status(gas, installed)
    fitted = (
        f"{refrigerant} ({gas.kind}, GWP {gas.gwp}, class {gas.safety}) in a plant of "
        f"{installed.isoformat()}"
    )
    notes = [
        (
            "Which law binds depends on flag, owner and place of service: take advice, "
            "this is a reminder."
        )
    ]
    if gas.safety in CAUTIONS:
        notes.append(CAUTIONS[gas.safety])
    amount = None if charge is None else co2_equivalent(refrigerant, charge)
    if charge is not None:
        months = leak_check_months(refrigerant, charge)
        due = (
            f"a leak check every {months} months"
            if months
            else "no leak checks by the European scheme"
        )
        notes.append(f"{show(charge, 'kg')} equal {show(amount, 't')} of CO2: {due}.")
    return Judgement(
        band, rating, amount, "t", None, None, f"{fitted} {meaning}.", tuple(notes), source=source
    )


def _status(gas: Gas, installed: date) -> tuple[str, str, str, Source]:
    """Return band, rating, meaning and source of a gas in a plant of a date."""
    # gases that deplete the ozone layer are banned by date, the others by their warming
    if gas.kind in ("CFC", "HCFC"):
        return _banned_status(gas, installed)
    # By European law, which is taken as a guide: elsewhere the gas may still be sold.
    if gas.gwp >= SERVICE_BAN:
        meaning = (
            f"may stay, but virgin gas of GWP {SERVICE_BAN} and more is banned for servicing in "
            "Europe: plan a change"
        )
        return "may stay, gas restricted", "poor", meaning, FGAS
    if gas.gwp >= STEP:
        meaning = f"may stay; above GWP {STEP} supply shrinks year by year"
        return "may stay, supply shrinking", "fair", meaning, OUTLOOK
    return "may stay", "good", f"may stay, below the step at GWP {STEP}", OUTLOOK


def _banned_status(gas: Gas, installed: date) -> tuple[str, str, str, Source]:
    """Return the status of a gas that depletes the ozone layer."""
    banned = CFC_BAN if gas.kind == "CFC" else HCFC_BAN
    if installed >= banned:
        meaning = (
            f"was installed on or after {banned.isoformat()}, when new {gas.kind} plant was no "
            "longer allowed"
        )
        return "banned when installed", "failed", meaning, REGULATION_12
    meaning = (
        f"was installed before {banned.isoformat()} and may stay, but its gas is hardly made any "
        "more: plan a new plant"
    )
    return "may stay, no future", "poor", meaning, REGULATION_12


CRITERIA = (
    Criterion(
        "refrigerant-status",
        "May the refrigerant stay, and can it be had",
        (
            Field("refrigerant", "Refrigerant", "choice", choices=tuple(GASES)),
            Field("installed", "When the plant was fitted", "date", low=date(1930, 1, 1)),
            number_field("charge", "Charge of one circuit", "kg", 0, 10_000, optional=True),
        ),
        REGULATION_12,
        judge_refrigerant,
        "The refrigerants listed, plants fitted since 1930, charges to 10 000 kg.",
        "Both ban dates from both sides; leak-check intervals by our own "
        "arithmetic on published thresholds.",
    ),
)
