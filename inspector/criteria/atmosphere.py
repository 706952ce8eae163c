"""Air of an enclosed space against the recommended figures for entry.

It says whether readings lie inside or outside a recommendation. It never says more: whether anyone enters is decided
aboard, by permit, by those responsible and by law.
"""

from inspector.criteria.judgement import Criterion, Input, Judgement, Source
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


def outside(name: str, value: float) -> str | None:
    """Return what is wrong with one reading [%], or None. MSC.581(110) (seen in summaries); oxygen top: 1915.12 (seen).

    Examples
    --------
    >>> outside("oxygen", 20.8)
    'oxygen of 20.8 % is below 20.9 %'
    >>> outside("flammable", 0.9) is None
    True
    """
    if name != "oxygen":
        label, limit, of = BELOW[name]
        return None if value < limit else f"{label} of {show(value, '%')} {of} is not below {show(limit, '%')}"
    if value < OXYGEN_LEAST:
        return f"oxygen of {show(value, '%')} is below {show(OXYGEN_LEAST, '%')}"
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
    given = {name: value for name, value in values.items() if value is not None}
    missing = [LABELS[name] for name in values if name not in given]
    faults = {name: fault for name, value in given.items() if (fault := outside(name, value))}
    if faults:
        band, sentence = OUTSIDE, f"The air lies {OUTSIDE}: {'; '.join(faults.values())}."
    elif missing:
        band = UNKNOWN
        sentence = f"Not determined, for want of {', '.join(missing)}: measure all four before anything else."
    else:
        told = ", ".join(f"{LABELS[name]} {show(value, '%')}" for name, value in given.items())
        band = INSIDE
        sentence = f"The readings ({told}) lie {INSIDE}: oxygen 20.9 to under 22 %, carbon dioxide under 0.5 %, " \
                   "flammable gas under 1 % and toxic gas under 50 % of their limits."
    value, limit, margin = _governing(faults, given)
    return Judgement("entry-atmosphere", band, None, value, "%", limit, margin, sentence, SOURCE, NOTES)


def _governing(faults: dict[str, str], given: dict[str, float]) -> tuple[float | None, float | None, float | None]:
    name = next(iter(faults), "oxygen" if "oxygen" in given else None)
    if name is None:
        return None, None, None
    value = given[name]
    if name == "oxygen":
        low, high = difference(value, OXYGEN_LEAST), difference(OXYGEN_BELOW, value)
        return value, OXYGEN_LEAST if low <= high else OXYGEN_BELOW, min(low, high)
    limit = BELOW[name][1]
    return value, limit, difference(limit, value)


CRITERIA = (
    Criterion(
        "entry-atmosphere", "Air of an enclosed space against the recommended figures",
        (Input("oxygen", "Oxygen by volume", "number", "%", optional=True, low=0, high=100),
         Input("carbon_dioxide", "Carbon dioxide by volume", "number", "%", optional=True, low=0, high=100),
         Input("flammable", "Flammable gas, share of the lower limit", "number", "%", optional=True, low=0, high=1000),
         Input("toxic", "Toxic gas, share of the exposure limit", "number", "%", optional=True, low=0, high=100_000)),
        SOURCE, judge_air,
        "Steady readings of a calibrated instrument, ventilation stopped; a missing one leaves it not determined.",
        "Every limit from both sides and eight mixed cases, against the figures as the circulars give them.",
    ),
)
