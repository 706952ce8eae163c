"""Rules that the work itself calls up: major conversion, engines, energy, fuel tanks."""

from collections.abc import Iterator
from datetime import date

from inspector.conversion.rule_book.rule_facts import RuleFacts
from inspector.conversion.rule_book.rule_line import (
    APPLIES,
    ASK,
    FLAG,
    FLAG_AND_CLASS,
    NOT_HERS,
    WAITS,
    RuleLine,
)
from inspector.criteria.core.source import Source
from inspector.criteria.environment.nitrogen_oxides import (
    SOURCE as NOX,
)
from inspector.criteria.environment.nitrogen_oxides import (
    closed_areas,
    nox_limit,
    tier_asked,
)
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.text import listed

MAJOR = Source.seen(
    "MARPOL annex I, regulation 1.9, major conversion",
    "consolidated text of 2021 on a public law site",
    "dimensions, type, life, or what would make her a new ship",
)
REPLACED = Source.seen(
    "MARPOL annex VI, regulation 13.2, with MEPC.230(65)",
    "2013 guidelines, read on a public rules site",
    "engines that are not identical, from 1 January 2016",
)
ENERGY = Source.seen(
    "MARPOL annex VI, chapter 4, energy efficiency of existing ships",
    "MEPC.328(76), as a class society tells it",
    "400 GT and more of the types of regulation 2; from 1 January 2023",
)
TANKS = Source.seen(
    "MARPOL annex I, regulation 12A, oil fuel tank protection",
    "MEPC 54 of 2006, as IMO's own page gives it",
    "600 m³ and more, delivered from 1 August 2010",
)
# kW: below, the rule on nitrogen oxides asks nothing.
LEAST_ENGINE = 130.0
PROTECTED_FROM, PROTECTED_VOLUME = date(2010, 8, 1), 600.0
ENERGY_FROM, ENERGY_TONNAGE = date(2023, 1, 1), 400
# Above this change of propulsion power a conversion counts as major for the energy index, and
# above that one an engine as a new one.
MAJOR_POWER, NEW_ENGINE_POWER = 5.0, 10.0


def work_rules(facts: RuleFacts) -> Iterator[RuleLine]:
    """Yield the rules that the work itself calls up.

    Parameters
    ----------
    facts : RuleFacts

    Yields
    ------
    RuleLine

    References
    ----------
    Each line names its own.
    """
    yield _major_conversion(facts)
    yield _engines(facts)
    yield _energy(facts)
    yield _fuel_tanks(facts)


def major_reasons(facts: RuleFacts) -> tuple[Cell, ...]:
    """Return what of the work may make it a major conversion.

    Parameters
    ----------
    facts : RuleFacts

    Returns
    -------
    tuple of Cell

    References
    ----------
    MARPOL annex I, 1.9 (seen); a change of power of 5 % by the interpretation of annex VI,
    chapter 4 (seen), where the flag decides.
    """
    found: list[Cell] = []
    if facts.dates.text("new_type") == "yes":
        found.append("another type of ship")
    length = facts.dates.number("lengthened")
    if length:
        found.append(sentence("a length changed by {length}", length=Quantity.exact(length, "m")))
    if facts.dates.text("freeboard") == "yes":
        found.append("a new freeboard")
    change = facts.power_change
    if change is not None and change >= MAJOR_POWER:
        found.append(f"{change:.1f} % more propulsion power")
    return tuple(found)


def _major_conversion(facts: RuleFacts) -> RuleLine:
    """Whether the work makes her new in the eyes of a rule."""
    reasons = major_reasons(facts)
    starts = facts.dates["starts"]
    answered = bool(facts.dates.text("new_type"))
    if reasons:
        state = ASK
        words = joined(
            (
                "The flag may call it a major conversion, and what is added or altered then "
                "follows the rules of the day the work starts: for",
                joined(reasons, ", "),
            )
        )
        words = joined((words, "."), "")
    elif answered:
        state = NOT_HERS
        words = "Nothing typed of the work alters type, length, freeboard or power."
    else:
        state = WAITS
        words = (
            "A change of type is the usual reason, and a supply vessel that carries guests changes "
            "hers. Type the extent of the work."
        )
    if state != NOT_HERS and starts is None:
        words = joined((words, "Its day decides, and is not typed."))
    return RuleLine("Major conversion", starts, words, state, FLAG, MAJOR)


def _engines(facts: RuleFacts) -> RuleLine:
    """The tier that engines need."""
    replaced, fitted = facts.dates.text("engines"), facts.dates["engines_on"]
    rule = "Nitrogen oxides of the engines"
    if replaced == "another kind or added":
        day = fitted or facts.dates["starts"]
        if day is None:
            words = "A replaced engine follows the rules of the day it is fitted: type that day."
            return RuleLine(rule, None, words, WAITS, FLAG_AND_CLASS, REPLACED)
        return RuleLine(rule, day, _tier_words(day, facts), APPLIES, FLAG_AND_CLASS, REPLACED)
    if facts.keel is None:
        words = "By the day of her keel, which is not typed among the vessel's particulars."
        return RuleLine(rule, None, words, WAITS, FLAG_AND_CLASS, NOX)
    kept = "kept engines keep" if replaced in ("none", "") else "identical engines keep"
    tier = tier_asked(facts.keel)
    asked = "no tier" if tier == "none" else f"tier {tier}"
    words = f"A keel of {facts.keel.isoformat()} asks for {asked}; {kept} it."
    if not replaced:
        words += " Type whether engines are replaced: another kind follows the day it is fitted."
    return RuleLine(rule, facts.keel, words, APPLIES, FLAG_AND_CLASS, NOX)


def _tier_words(day: date, facts: RuleFacts) -> Cell:
    """What a day asks of an engine, in words."""
    tier, areas = tier_asked(day), closed_areas(day)
    rpm = facts.dates.number("rpm") or facts.rpm
    words = f"An engine fitted on {day.isoformat()} needs "
    words += "no tier" if tier == "none" else f"tier {tier}"
    if rpm and tier != "none":
        words += " ({limit} at {rpm})"
    if areas:
        words += (
            f", and tier III in {listed(list(areas))}, unless none of like rating exists or fits"
        )
    return sentence(
        f"{words}. Above {{least}}, and not for emergencies only.",
        limit=Quantity.exact(nox_limit(tier, rpm), "g/kWh", 1) if rpm and tier != "none" else None,
        rpm=Quantity.exact(rpm, "rpm") if rpm else None,
        least=Quantity.exact(LEAST_ENGINE, "kW"),
    )


def _energy(facts: RuleFacts) -> RuleLine:
    """The energy index."""
    rule = "Energy index and certificate"
    if facts.tonnage is None:
        words = "By gross tonnage, which is not typed among the vessel's particulars."
        return RuleLine(rule, ENERGY_FROM, words, WAITS, FLAG, ENERGY)
    if facts.tonnage < ENERGY_TONNAGE:
        words = f"Below {ENERGY_TONNAGE} GT nothing is asked."
        return RuleLine(rule, ENERGY_FROM, words, NOT_HERS, FLAG, ENERGY)
    words = (
        "From 400 GT she needs an energy certificate and a management plan. Supply and special "
        "purpose ships are no type with a required index, and passenger ships have one only as "
        "cruise ships of large electric propulsion (from memory)."
    )
    change = facts.power_change
    if change is not None and change >= MAJOR_POWER:
        words += f" With {change:.1f} % more power the flag may want the index calculated anew."
    return RuleLine(rule, ENERGY_FROM, words, ASK, FLAG, ENERGY)


def _fuel_tanks(facts: RuleFacts) -> RuleLine:
    """Whether fuel tanks must be protected."""
    rule = "Protected fuel tanks"
    amounts = {
        "volume": Quantity.exact(facts.fuel, "m³", 0),
        "least": Quantity.exact(PROTECTED_VOLUME, "m³"),
    }
    if not facts.fuel:
        words: Cell = "By the volume of all fuel tanks together, and no fuel tank is typed."
        return RuleLine(rule, PROTECTED_FROM, words, WAITS, FLAG_AND_CLASS, TANKS)
    if facts.fuel < PROTECTED_VOLUME:
        words = sentence("{volume} of fuel tanks together are below {least}.", **amounts)
        return RuleLine(rule, PROTECTED_FROM, words, NOT_HERS, FLAG_AND_CLASS, TANKS)
    if facts.keel is not None and facts.keel >= PROTECTED_FROM:
        words = sentence(
            "{volume} of fuel tanks on a ship of {keel}: behind a double skin.",
            keel=facts.keel,
            **amounts,
        )
        return RuleLine(rule, PROTECTED_FROM, words, APPLIES, FLAG_AND_CLASS, TANKS)
    words = sentence(
        "{volume} of fuel tanks, from {least} on; not asked of an older ship as long as no major "
        "conversion makes her new (from memory). Ask before tanks are made larger.",
        **amounts,
    )
    return RuleLine(rule, PROTECTED_FROM, words, ASK, FLAG_AND_CLASS, TANKS)
