"""Air of an enclosed space against the recommended figures for entry.

It reports whether readings are inside or outside a recommendation, and never more: whether anyone
enters is decided aboard, by permit, by those responsible and by law.
"""

from dataclasses import dataclass

from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import nearer_end
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.field import Field, number_field
from inspector.values.formatting import show
from inspector.values.numbers import difference

SOURCE = Source.seen(
    "MSC.581(110), Recommendations for entering enclosed spaces aboard ships",
    "2025, in effect 3 December 2025, from circulars that summarise it",
    "atmosphere testing",
)
INSIDE, OUTSIDE, UNKNOWN = (
    "inside the recommendation",
    "outside the recommendation",
    "not determined",
)
# % by volume; the upper end is that of OSHA 29 CFR 1915.12, the IMO text names none
OXYGEN_LEAST, OXYGEN_BELOW = 20.9, 22.0
# fresh air is 20.9 %: more than the last digit above it is the meter or enrichment (our own)
OXYGEN_DOUBTED = 21.0

# reading -> (label, limit it must stay below in %, what the % is of), in the order of testing
BELOW = {
    "carbon_dioxide": ("carbon dioxide", 0.5, "by volume"),
    "flammable": ("flammable gas", 1.0, "of the lower flammable limit"),
    "toxic": ("toxic gas", 50.0, "of the occupational exposure limit"),
}
LABELS = {"oxygen": "oxygen", **{name: entry[0] for name, entry in BELOW.items()}}
NOTES = (
    (
        "Readings hold for their moment and place only: they are taken at several levels with "
        "ventilation stopped, again before every entry, and whenever anything changes."
    ),
    (
        "A reading decides nothing: entry needs the ship's permit, an attendant, rescue "
        "equipment, a calibrated instrument and the decision of those responsible under local law."
    ),
    (
        "The recommendation names no upper end for oxygen; below 22 % is that of OSHA 29 CFR "
        "1915.12, and above 21 % the meter is doubted (our own): where texts differ the stricter "
        "counts."
    ),
)
ORDER = (
    "The order of testing is oxygen, then flammable gas, then toxic gas: most "
    "combustible sensors mis-read where oxygen is low."
)
MISREAD = (
    "With oxygen below its figure or not measured, the reading of flammable gas proves "
    "nothing: most combustible sensors mis-read then."
)
SHIPYARD = Source.seen(
    "29 CFR 1915.12, Precautions before entering confined and enclosed spaces (US shipyards)",
    "as published by the agency",
    "(a) to (c)",
)
WITHIN_US, OUTSIDE_US = "inside the shipyard rule", "outside the shipyard rule"
US_OXYGEN_LEAST = 19.5  # % by volume
# reading -> as in BELOW; 0.5 % of carbon dioxide is its permissible limit of 5000 ppm
US_BELOW = {
    "carbon_dioxide": ("carbon dioxide", 0.5, "by volume"),
    "flammable": ("flammable gas", 10.0, "of the lower flammable limit"),
    "toxic": ("toxic gas", 100.0, "of the permissible exposure limit"),
}
US_NOTES = (
    NOTES[0],
    (
        "A reading decides nothing: in a US shipyard a competent person or a marine "
        "chemist tests and certifies, and the law there decides."
    ),
    "The IMO recommendation asks more: where texts differ the stricter counts.",
)


def outside(
    name: str,
    value: float,
    least: float = OXYGEN_LEAST,
    below: dict[str, tuple[str, float, str]] = BELOW,
) -> str | None:
    """Return what is wrong with one reading, or None.

    Parameters
    ----------
    name : str
        oxygen, carbon_dioxide, flammable or toxic.
    value : float
        Reading [%].
    least : float, optional
        Least oxygen [% by volume].
    below : dict[str, tuple[str, float, str]], optional
        Label, limit [%] and reference of each other gas.

    Returns
    -------
    str or None

    References
    ----------
    MSC.581(110) (seen in summaries); upper end of oxygen: 29 CFR 1915.12 (seen).

    Examples
    --------
    >>> outside("oxygen", 20.8)
    'oxygen of 20.8 % is below 20.9 %'
    >>> outside("flammable", 0.9) is None
    True
    """
    if name != "oxygen":
        label, limit, of = below[name]
        # Below and never at it: so the texts say.
        if value < limit:
            return None
        return f"{label} of {show(value, '%')} {of} is not below {show(limit, '%')}"
    if value < least:
        return f"oxygen of {show(value, '%')} is below {show(least, '%')}"
    if value >= OXYGEN_BELOW:
        return f"oxygen of {show(value, '%')} is enriched, not below {show(OXYGEN_BELOW, '%')}"
    return None


@dataclass(frozen=True)
class _Rule:
    """The figures of one text, the words for inside and outside it, and its notes."""

    least_oxygen: float
    below: dict[str, tuple[str, float, str]]
    inside: str
    outside: str
    notes: tuple[str, ...]
    doubted_oxygen: float = OXYGEN_BELOW


RECOMMENDATION = _Rule(OXYGEN_LEAST, BELOW, INSIDE, OUTSIDE, NOTES, OXYGEN_DOUBTED)
SHIPYARD_RULE = _Rule(US_OXYGEN_LEAST, US_BELOW, WITHIN_US, OUTSIDE_US, US_NOTES)


def judge_air(
    oxygen: float | None = None,
    carbon_dioxide: float | None = None,
    flammable: float | None = None,
    toxic: float | None = None,
) -> Judgement:
    """Compare the air of an enclosed space with the recommended figures.

    Parameters
    ----------
    oxygen : float, optional
        Oxygen by volume [%].
    carbon_dioxide : float, optional
        Carbon dioxide by volume [%].
    flammable : float, optional
        Flammable gas, share of the lower limit [%].
    toxic : float, optional
        Toxic gas, share of the exposure limit [%].

    Returns
    -------
    Judgement
        Rating always None; value and limit [%] of the first reading outside, or of oxygen.

    References
    ----------
    MSC.581(110) (seen in circulars), in place of A.1050(27); OSHA 29 CFR 1915.12 (seen).
    """
    readings = (oxygen, carbon_dioxide, flammable, toxic)
    # Never a rating: no meter reading lets anybody in, and a green word would be taken for one that
    # does.
    return _compared(dict(zip(LABELS, readings, strict=True)), RECOMMENDATION)


def judge_shipyard_air(
    oxygen: float | None = None,
    carbon_dioxide: float | None = None,
    flammable: float | None = None,
    toxic: float | None = None,
) -> Judgement:
    """Compare the air of an enclosed space with the figures of the US shipyard rule.

    Parameters
    ----------
    oxygen : float, optional
        Oxygen by volume [%].
    carbon_dioxide : float, optional
        Carbon dioxide by volume [%].
    flammable : float, optional
        Flammable gas, share of the lower limit [%].
    toxic : float, optional
        Toxic gas, share of the permissible limit [%].

    Returns
    -------
    Judgement
        Rating always None; value and limit [%] of the first reading outside, or of oxygen.

    References
    ----------
    29 CFR 1915.12 (seen): oxygen 19.5 to under 22.0 %, under 10 % of the lower limit, toxics below
    the permissible limit.
    """
    readings = (oxygen, carbon_dioxide, flammable, toxic)
    return _compared(dict(zip(LABELS, readings, strict=True)), SHIPYARD_RULE)


def _compared(values: dict[str, float | None], rule: _Rule) -> Judgement:
    """Return the judgement of readings [%], of which some may be missing, by one text."""
    given = {name: value for name, value in values.items() if value is not None}
    checked = {
        name: outside(name, value, rule.least_oxygen, rule.below) for name, value in given.items()
    }
    faults = {name: fault for name, fault in checked.items() if fault}
    missing = [LABELS[name] for name in values if name not in given]
    if faults:
        band, sentence = rule.outside, f"The air is {rule.outside}: {'; '.join(faults.values())}."
    elif missing:
        band = UNKNOWN
        sentence = (
            f"Not determined, for want of {', '.join(missing)}: measure all four before anything "
            "else."
        )
    elif given["oxygen"] > rule.doubted_oxygen:
        band = UNKNOWN
        sentence = (
            f"Not determined: oxygen of {show(given['oxygen'], '%')} is more than the "
            f"{show(OXYGEN_LEAST, '%')} of fresh air, so check the meter in the open, then look "
            "for what enriches the air."
        )
    else:
        band, sentence = rule.inside, _inside_sentence(given, rule)
    notes = (ORDER, *rule.notes)
    # most combustible sensors need oxygen to read at all
    if "flammable" in given and given.get("oxygen", 0) < rule.least_oxygen:
        notes = (MISREAD, *notes)
    value, limit, margin = _governing(faults, given, rule)
    return Judgement(band, None, value, "%", limit, margin, sentence, notes)


def _inside_sentence(given: dict[str, float], rule: _Rule) -> str:
    """Return the sentence of four readings that are inside a text, with its limits."""
    readings = ", ".join(f"{LABELS[name]} {show(value, '%')}" for name, value in given.items())
    limits = ", ".join(
        f"{label} under {show(limit, '%')} {of}" for label, limit, of in rule.below.values()
    )
    return (
        f"The readings ({readings}) are {rule.inside}: oxygen {show(rule.least_oxygen, '%')} to "
        f"under {show(OXYGEN_BELOW, '%')}, {limits}."
    )


def _governing(
    faults: dict[str, str], given: dict[str, float], rule: _Rule
) -> tuple[float | None, float | None, float | None]:
    """Return value, limit and margin of the first reading outside, or else of oxygen."""
    name = next(iter(faults), "oxygen" if "oxygen" in given else None)
    # Nothing was read, so there is no figure to show.
    if name is None:
        return None, None, None
    value = given[name]
    if name == "oxygen":
        return value, *nearer_end(value, rule.least_oxygen, OXYGEN_BELOW)
    limit = rule.below[name][1]
    return value, limit, difference(limit, value)


def _inputs(toxic_of: str) -> tuple[Field, ...]:
    """Return the four readings, each of which may be missing."""
    rows = (
        ("oxygen", "Oxygen by volume", 100),
        ("carbon_dioxide", "Carbon dioxide by volume", 100),
        ("flammable", "Flammable gas, share of the lower limit", 1000),
        ("toxic", f"Toxic gas, share of the {toxic_of}", 100_000),
    )
    return tuple(
        number_field(name, label, "%", 0, high, optional=True) for name, label, high in rows
    )


CRITERIA = (
    Criterion(
        "entry-atmosphere",
        "Air of an enclosed space against the recommended figures",
        _inputs("exposure limit"),
        SOURCE,
        judge_air,
        "Steady readings of a calibrated instrument, ventilation stopped; a "
        "missing one leaves it not determined.",
        "Every limit from both sides and eight mixed cases, against the figures as "
        "the circulars give them.",
    ),
    Criterion(
        "shipyard-atmosphere",
        "Air of an enclosed space against the US shipyard rule",
        _inputs("permissible limit"),
        SHIPYARD,
        judge_shipyard_air,
        "Steady readings of a calibrated instrument in a US shipyard; a missing "
        "one leaves it not determined.",
        "Every limit from both sides and eight mixed cases, against the figures of the rule.",
    ),
)
