"""Cold stores and refrigerants: is a store cold enough, and may its gas stay.

A refrigerant's status is law and supply, not wear: a plant may run well on a gas that can no longer be bought. Global
warming potentials are those European law uses (fourth assessment report); other tables differ by a fifth.
"""

from dataclasses import dataclass
from datetime import date

from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, beyond, stairs, to
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

FROZEN = Source("Codex Alimentarius CAC/RCP 8-1976, code of practice for quick frozen foods", "revised 2008",
                "product temperature", "memory")
CHILLED = Source("US FDA Food Code", "as adopted in a State's code", "3-501.16, cold holding", "seen")
STORES = Source("Codex CAC/RCP 8-1976 (frozen); US FDA Food Code 3-501.16 (chilled)",
                "revised 2008; as adopted in a State's code", "product temperature; cold holding", "memory")
REGULATION_12 = Source("MARPOL Annex VI, regulation 12", "as amended 2008", "ozone-depleting substances", "seen")
FGAS = Source("Regulation (EU) 2024/573 on fluorinated gases, taken as a guide to supply", "2024, from trade summaries",
              "servicing ban from GWP 2500", "seen")
OUTLOOK = Source("Regulation (EU) 2024/573 on fluorinated gases, taken as a guide to supply", "2024, recalled",
                 "phase-down, step at GWP 750", "memory")

FROZEN_LIMIT, FROZEN_SHORT, CHILLED_LIMIT = -18.0, -15.0, 5.0  # °C; the -15 outside defrost is common practice
CFC_BAN, HCFC_BAN = date(2005, 5, 19), date(2020, 1, 1)
SERVICE_BAN, STEP = 2500, 750  # GWP


@dataclass(frozen=True)
class Gas:
    """One refrigerant: kind (CFC, HCFC, HFC, HFO, natural), GWP of the fourth assessment report, safety class."""

    kind: str
    gwp: int
    safety: str


# GWP seen for R-404A, R-507A and R-422D in a service firm's guide to the European rules; the others memory
GASES = {
    "R-12": Gas("CFC", 10900, "A1"), "R-22": Gas("HCFC", 1810, "A1"), "R-502": Gas("CFC", 4657, "A1"),
    "R-134a": Gas("HFC", 1430, "A1"), "R-404A": Gas("HFC", 3922, "A1"), "R-507A": Gas("HFC", 3985, "A1"),
    "R-407C": Gas("HFC", 1774, "A1"), "R-407F": Gas("HFC", 1825, "A1"), "R-410A": Gas("HFC", 2088, "A1"),
    "R-422D": Gas("HFC", 2729, "A1"), "R-448A": Gas("HFC", 1387, "A1"), "R-449A": Gas("HFC", 1397, "A1"),
    "R-452A": Gas("HFC", 2140, "A1"), "R-513A": Gas("HFC", 631, "A1"), "R-32": Gas("HFC", 675, "A2L"),
    "R-1234yf": Gas("HFO", 4, "A2L"), "R-290": Gas("natural", 3, "A3"), "R-717": Gas("natural", 0, "B2L"),
    "R-744": Gas("natural", 1, "A1"),
}
CAUTIONS = {
    "A2L": "Mildly flammable: look for gas detection and for no ignition sources near it.",
    "A3": "Highly flammable: charge and room are limited by code; no flame, and no work but by certified persons.",
    "B2L": "Ammonia is toxic and flammable: if it smells, leave upwind; the plant room is entered only with the ship.",
}
# kind -> (unit, ((least charge, months between leak checks), ...)): kg for ozone-depleting gases ((EU) 2024/590,
# seen) and HFO (memory), t of CO2 equivalent for HFC (former (EU) 517/2014, seen)
LEAK_CHECKS = {
    "CFC": ("kg", ((300, 3), (30, 6), (3, 12))), "HCFC": ("kg", ((300, 3), (30, 6), (3, 12))),
    "HFC": ("t", ((500, 3), (50, 6), (5, 12))), "HFO": ("kg", ((100, 3), (10, 6), (1, 12))),
}


def co2_equivalent(refrigerant: str, charge: float) -> float:
    """Return the charge [kg] of a refrigerant in tonnes of CO2 equivalent [t], by the GWP of European law.

    Examples
    --------
    >>> round(co2_equivalent("R-404A", 60), 1)
    235.3
    """
    return charge * GASES[refrigerant].gwp / 1000


def leak_check_months(refrigerant: str, charge: float) -> int | None:
    """Return the months between leak checks for a charge [kg], None where none is asked.

    References: (EU) 517/2014 for HFC (seen), (EU) 2024/590 for CFC and HCFC (seen), (EU) 2024/573 for HFO (memory).
    """
    unit, steps = LEAK_CHECKS.get(GASES[refrigerant].kind, ("kg", ()))
    amount = charge if unit == "kg" else co2_equivalent(refrigerant, charge)
    return next((months for least, months in steps if amount >= least), None)


def store_ladder(store: str) -> Ladder:
    """The bands of a store's temperature [°C]; a frozen store has 3 K of grace, a chilled one none."""
    warm = beyond("too warm", "poor", "too warm, unless a defrost or an open door explains it: read again")
    if store == "chilled":
        return stairs("°C", to(CHILLED_LIMIT, "cold enough", "good", "cold enough"), warm)
    grace = to(FROZEN_SHORT, "short of the limit", "fair", "within the 3 K that defrost or loading may explain: read again within the hour")
    return stairs("°C", to(FROZEN_LIMIT, "cold enough", "good", "cold enough"), grace, warm)


def judge_store(temperature: float, store: str) -> Judgement:
    """Judge one reading of a cold store's temperature.

    Parameters
    ----------
    temperature [°C], -60 to 60; store : frozen or chilled.

    Notes
    -----
    One reading may meet a defrost or an open door, so it is never failed.

    References
    ----------
    Frozen -18 °C or colder: Codex CAC/RCP 8-1976 (memory). Chilled 5 °C or colder: US FDA Food Code 3-501.16 (seen).
    """
    limit, source = (FROZEN_LIMIT, FROZEN) if store == "frozen" else (CHILLED_LIMIT, CHILLED)
    too_cold = store == "chilled" and temperature < 0
    freezing = ("Below 0 °C chilled goods may freeze: look at the setting.",) if too_cold else ()
    said = f"{show(temperature, '°C')} in a {store} store, against at most {show(limit, '°C')},"
    notes = (*freezing, "One reading: the log of a day and a night says more.")
    return told("cold-store-temperature", store_ladder(store).step(temperature), said, (temperature, "°C", limit), source, notes)


def judge_refrigerant(refrigerant: str, installed: date, charge: float | None = None) -> Judgement:
    """Judge whether a refrigerant may stay and can be had.

    Parameters
    ----------
    refrigerant : one of GASES; installed : when the plant was fitted; charge [kg] of one circuit.

    Returns
    -------
    Judgement : value is the charge in t of CO2 equivalent [t] where it is known; no limit.

    References
    ----------
    MARPOL Annex VI reg. 12: no new CFC plant from 19 May 2005, no new HCFC plant from 1 January 2020 (seen).
    Regulation (EU) 2024/573: no virgin gas of GWP 2500 and more for servicing (seen), step at 750 (memory).
    """
    gas = GASES[refrigerant]
    band, rating, meaning, source = _status(gas, installed)
    fitted = f"{refrigerant} ({gas.kind}, GWP {gas.gwp}, class {gas.safety}) in a plant of {installed.isoformat()}"
    notes = ["Which law binds depends on flag, owner and place of service: take advice, this is a reminder."]
    if gas.safety in CAUTIONS:
        notes.append(CAUTIONS[gas.safety])
    amount = None if charge is None else co2_equivalent(refrigerant, charge)
    if charge is not None:
        months = leak_check_months(refrigerant, charge)
        due = f"a leak check every {months} months" if months else "no leak checks by the European scheme"
        notes.append(f"{show(charge, 'kg')} equal {show(amount, 't')} of CO2: {due}.")
    return Judgement("refrigerant-status", band, rating, amount, "t", None, None, f"{fitted} {meaning}.", source,
                     tuple(notes))


def _status(gas: Gas, installed: date) -> tuple[str, str, str, Source]:
    if gas.kind in ("CFC", "HCFC"):
        banned = CFC_BAN if gas.kind == "CFC" else HCFC_BAN
        if installed >= banned:
            return ("banned when installed", "failed",
                    f"was installed on or after {banned.isoformat()}, when new {gas.kind} plant was no longer allowed",
                    REGULATION_12)
        return ("may stay, no future", "poor",
                f"was installed before {banned.isoformat()} and may stay, but its gas is hardly made any more: plan a "
                "new plant", REGULATION_12)
    if gas.gwp >= SERVICE_BAN:
        return ("may stay, gas restricted", "poor",
                f"may stay, but virgin gas of GWP {SERVICE_BAN} and more is banned for servicing in Europe: plan a "
                "change", FGAS)
    if gas.gwp >= STEP:
        return "may stay, supply shrinking", "fair", f"may stay; above GWP {STEP} supply shrinks year by year", OUTLOOK
    return "may stay", "good", f"may stay, below the step at GWP {STEP}", OUTLOOK


CRITERIA = (
    Criterion(
        "cold-store-temperature", "Temperature of a cold store",
        (Input("temperature", "Temperature in the store", "number", "°C", low=-60, high=60),
         Input("store", "Kind of store", "choice", choices=("frozen", "chilled"))),
        STORES, judge_store, "Food stores kept frozen or chilled, one steady reading of -60 to 60 °C.",
        "Each limit from both sides; the chilled limit against a published code, the frozen one recalled.", ladder=store_ladder,
    ),
    Criterion(
        "refrigerant-status", "May the refrigerant stay, and can it be had",
        (Input("refrigerant", "Refrigerant", "choice", choices=tuple(GASES)),
         Input("installed", "When the plant was fitted", "date", low=date(1930, 1, 1)),
         Input("charge", "Charge of one circuit", "number", "kg", optional=True, low=0, high=10_000)),
        REGULATION_12, judge_refrigerant, "The refrigerants listed, plants fitted since 1930, charges to 10 000 kg.",
        "Both ban dates from both sides; leak-check intervals by our own arithmetic on published thresholds.",
    ),
)
