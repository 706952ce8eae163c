"""Air of an enclosed space against the recommended figures for entry.

It says whether readings lie inside or outside a recommendation. It never says more: whether anyone enters is decided
aboard, by permit, by those responsible and by law.
"""

from inspector.criteria.exact import nearer
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.source import Source
from inspector.quantities import difference, show

SOURCE = Source("MSC.581(110), Recommendations for entering enclosed spaces aboard ships",
                "2025, in effect 3 December 2025, from circulars that summarise it", "atmosphere testing", "seen")
INSIDE, OUTSIDE, UNKNOWN = "inside the recommendation", "outside the recommendation", "not determined"
OXYGEN_LEAST, OXYGEN_BELOW = 20.9, 22.0  # % by volume; the upper end is OSHA 29 CFR 1915.12, the IMO text names none

# reading -> (label, limit it must stay below in %, what the % is of), in the order of testing
BELOW = {
    "carbon_dioxide": ("carbon dioxide", 0.5, "by volume"),
    "flammable": ("flammable gas", 1.0, "of the lower flammable limit"),
    "toxic": ("toxic gas", 50.0, "of the occupational exposure limit"),
}
LABELS = {"oxygen": "oxygen", **{name: entry[0] for name, entry in BELOW.items()}}
NOTES = (
    "Readings hold for their moment and place only: they are taken at several levels with ventilation stopped, again "
    "before every entry, and whenever anything changes.",
    "A reading decides nothing: entry needs the ship's permit, an attendant, rescue equipment, a calibrated instrument "
    "and the decision of those responsible under local law.",
    "The upper end for oxygen, below 22 %, is that of OSHA 29 CFR 1915.12; where texts differ the stricter counts.",
)
ORDER = "The order of testing is oxygen, then flammable gas, then toxic gas: most combustible sensors mis-read where oxygen is low."
MISREAD = "With oxygen below its figure or not measured, the reading of flammable gas proves nothing: most combustible sensors mis-read then."
SHIPYARD = Source("29 CFR 1915.12, Precautions before entering confined and enclosed spaces (US shipyards)", "as published by the agency", "(a) to (c)",
                  "seen")
WITHIN_US, OUTSIDE_US = "inside the shipyard rule", "outside the shipyard rule"
US_OXYGEN_LEAST = 19.5  # % by volume
# reading -> (label, limit it must stay below in %, what the % is of); 0.5 % of carbon dioxide is its permissible limit of 5000 ppm
US_BELOW = {
    "carbon_dioxide": ("carbon dioxide", 0.5, "by volume"),
    "flammable": ("flammable gas", 10.0, "of the lower flammable limit"),
    "toxic": ("toxic gas", 100.0, "of the permissible exposure limit"),
}
US_NOTES = (NOTES[0], "A reading decides nothing: in a US shipyard a competent person or a marine chemist tests and certifies, and the law there decides.",
            "The IMO recommendation asks more: where texts differ the stricter counts.")


def outside(name: str, value: float, least: float = OXYGEN_LEAST, below: dict[str, tuple[str, float, str]] = BELOW) -> str | None:
    """Return what is wrong with one reading [%], or None. MSC.581(110) (seen in summaries); oxygen top: 1915.12 (seen).

    Examples
    --------
    >>> outside("oxygen", 20.8)
    'oxygen of 20.8 % is below 20.9 %'
    >>> outside("flammable", 0.9) is None
    True
    """
    if name != "oxygen":
        label, limit, of = below[name]
        return None if value < limit else f"{label} of {show(value, '%')} {of} is not below {show(limit, '%')}"
    if value < least:
        return f"oxygen of {show(value, '%')} is below {show(least, '%')}"
    enriched = f"oxygen of {show(value, '%')} is enriched, not below {show(OXYGEN_BELOW, '%')}"
    return enriched if value >= OXYGEN_BELOW else None


def judge_air(
    oxygen: float | None = None, carbon_dioxide: float | None = None, flammable: float | None = None,
    toxic: float | None = None,
) -> Judgement:
    """Hold readings of an enclosed space's air against the recommended figures.

    Parameters
    ----------
    oxygen, carbon_dioxide [% by volume]; flammable [% of the lower flammable limit]; toxic [% of the occupational
    exposure limit]. A missing one makes the whole "not determined", unless another already lies outside.

    Returns
    -------
    Judgement : rating always None; value and limit [%] of the first reading outside, or of oxygen.

    References
    ----------
    MSC.581(110) (seen in circulars), in place of A.1050(27); OSHA 29 CFR 1915.12 (seen).
    """
    values = {"oxygen": oxygen, "carbon_dioxide": carbon_dioxide, "flammable": flammable, "toxic": toxic}
    return _held("entry-atmosphere", values, OXYGEN_LEAST, BELOW, (INSIDE, OUTSIDE), SOURCE, NOTES)


def judge_shipyard_air(
    oxygen: float | None = None, carbon_dioxide: float | None = None, flammable: float | None = None,
    toxic: float | None = None,
) -> Judgement:
    """Hold readings of an enclosed space's air against the figures of the US shipyard rule.

    Parameters
    ----------
    oxygen, carbon_dioxide [% by volume]; flammable [% of the lower flammable limit]; toxic [% of the permissible
    exposure limit, eight hours]. A missing one makes the whole "not determined", unless another already lies outside.

    Returns
    -------
    Judgement : rating always None; value and limit [%] of the first reading outside, or of oxygen.

    References
    ----------
    29 CFR 1915.12 (seen): oxygen 19.5 to under 22.0 %, under 10 % of the lower limit, toxics below the permissible limit.
    """
    values = {"oxygen": oxygen, "carbon_dioxide": carbon_dioxide, "flammable": flammable, "toxic": toxic}
    return _held("shipyard-atmosphere", values, US_OXYGEN_LEAST, US_BELOW, (WITHIN_US, OUTSIDE_US), SHIPYARD, US_NOTES)


def _held(
    name: str, values: dict[str, float | None], least: float, below: dict[str, tuple[str, float, str]], words: tuple[str, str], source: Source,
    notes: tuple[str, ...],
) -> Judgement:
    given = {one: value for one, value in values.items() if value is not None}
    missing = [LABELS[one] for one in values if one not in given]
    faults = {one: fault for one, value in given.items() if (fault := outside(one, value, least, below))}
    if faults:
        band, sentence = words[1], f"The air lies {words[1]}: {'; '.join(faults.values())}."
    elif missing:
        band = UNKNOWN
        sentence = f"Not determined, for want of {', '.join(missing)}: measure all four before anything else."
    else:
        told = ", ".join(f"{LABELS[one]} {show(value, '%')}" for one, value in given.items())
        limits = ", ".join(f"{label} under {show(limit, '%')} {of}" for label, limit, of in below.values())
        band = words[0]
        sentence = f"The readings ({told}) lie {band}: oxygen {show(least, '%')} to under {show(OXYGEN_BELOW, '%')}, {limits}."
    doubtful = given.get("flammable") is not None and given.get("oxygen", 0) < least
    value, limit, margin = _governing(faults, given, least, below)
    return Judgement(name, band, None, value, "%", limit, margin, sentence, source, (*((MISREAD,) if doubtful else ()), ORDER, *notes))


def _governing(
    faults: dict[str, str], given: dict[str, float], least: float, below: dict[str, tuple[str, float, str]]
) -> tuple[float | None, float | None, float | None]:
    name = next(iter(faults), "oxygen" if "oxygen" in given else None)
    if name is None:
        return None, None, None
    value = given[name]
    if name == "oxygen":
        return value, *nearer(value, least, OXYGEN_BELOW)
    limit = below[name][1]
    return value, limit, difference(limit, value)


def _inputs(toxic_of: str) -> tuple[Input, ...]:
    return (
        Input("oxygen", "Oxygen by volume", "number", "%", optional=True, low=0, high=100),
        Input("carbon_dioxide", "Carbon dioxide by volume", "number", "%", optional=True, low=0, high=100),
        Input("flammable", "Flammable gas, share of the lower limit", "number", "%", optional=True, low=0, high=1000),
        Input("toxic", f"Toxic gas, share of the {toxic_of}", "number", "%", optional=True, low=0, high=100_000),
    )


CRITERIA = (
    Criterion(
        "entry-atmosphere", "Air of an enclosed space against the recommended figures", _inputs("exposure limit"), SOURCE, judge_air,
        "Steady readings of a calibrated instrument, ventilation stopped; a missing one leaves it not determined.",
        "Every limit from both sides and eight mixed cases, against the figures as the circulars give them.",
    ),
    Criterion(
        "shipyard-atmosphere", "Air of an enclosed space against the US shipyard rule", _inputs("permissible limit"), SHIPYARD, judge_shipyard_air,
        "Steady readings of a calibrated instrument in a US shipyard; a missing one leaves it not determined.",
        "Every limit from both sides and eight mixed cases, against the figures of the rule.",
    ),
)
