"""Rules of where she goes and who sails her: ballast, polar waters, sewage, tonnage, crew."""

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
from inspector.conversion.rule_book.tonnage_room import TonnageRoom
from inspector.conversion.ship_kind.ship_kinds import PASSENGER
from inspector.criteria.core.source import Source
from inspector.values.cell_text import cell_text
from inspector.values.quantity import Cell, Quantity, joined, sentence

BALLAST = Source.seen(
    "Ballast water management convention, regulations B-3 and D-2",
    "dates as a public rules site gives them",
    "D-2 of all ships by 8 September 2024",
)
POLAR = Source.seen(
    "SOLAS chapter XIV and the Polar Code, MSC.385(94)",
    "dates as public notices give them",
    "new ships from 1 January 2017; others from the first survey after 1 January 2018",
)
POLAR_YACHTS = Source.seen(
    "Polar Code, MSC.538(107)",
    "adopted 8 June 2023, as a public notice gives it; 300 GT and more from memory",
    "in force on 1 January 2026, for ships outside SOLAS",
)
POLAR_CREW = Source.seen(
    "STCW Convention, regulation V/4, and Polar Code part I-A, chapter 12",
    "MSC.416(97), as class and public notices give it",
    "basic and advanced training from 1 July 2018",
)
SEWAGE = Source.seen(
    "MARPOL annex IV, regulations 2 and 11",
    "text on two public rules sites",
    "400 GT, or more than 15 persons; 3 and 12 nautical miles",
)
SEWAGE_AREA = Source.seen(
    "MARPOL annex IV, regulation 11.3, with MEPC.275(69)",
    "dates as class societies give them",
    "passenger ships in the Baltic Sea from 1 June 2021",
)
TONNAGE = Source.recalled(
    "Thresholds of gross tonnage in SOLAS, MARPOL and the labour convention", "applications"
)
CREW = Source.seen(
    "STCW Convention 1978 as amended, regulations II/2, III/1, III/2 and III/3",
    "2010 text on public rules sites; II/2 and III/3 in extracts",
    "steps of tonnage and of propulsion power",
)
MANNING = Source.seen(
    "SOLAS chapter V, regulation 14.2", "as a public survey site quotes it", "safe manning document"
)
# kW of propulsion from which the certificates of engineers change.
ENGINE_STEPS = (750.0, 3000.0)


def voyage_rules(facts: RuleFacts, rooms: tuple[TonnageRoom, ...]) -> Iterator[RuleLine]:
    """Yield the rules of her waters, her tonnage and her crew.

    Parameters
    ----------
    facts : RuleFacts
    rooms : tuple of TonnageRoom
        The steps of tonnage; empty where her tonnage is not known.

    Yields
    ------
    RuleLine

    References
    ----------
    Each line names its own.
    """
    yield _ballast(facts)
    yield from _polar(facts)
    yield _sewage(facts)
    if facts.kind == PASSENGER:
        words = (
            "As a passenger ship: only by a plant that takes out nutrients, or into a tank. Grey "
            "water is not part of it; some coasts and ports forbid that as well."
        )
        since = date(2021, 6, 1)
        yield RuleLine("Sewage in special areas", since, words, APPLIES, FLAG, SEWAGE_AREA)
    for room in rooms:
        yield _step(room)
    # Certificates follow the tonnage with which she sails, which is that after the changes.
    yield _crew(facts, int(rooms[0].after.high) if rooms else facts.tonnage)


def _ballast(facts: RuleFacts) -> RuleLine:
    """Treatment of ballast water."""
    since = date(2024, 9, 8)
    if not facts.has_ballast:
        words = (
            "No ballast tank is typed; ballast that never leaves her is not counted (from memory)."
        )
        return RuleLine("Ballast water", since, words, WAITS, FLAG, BALLAST)
    words = (
        "Ballast that is let out must meet the standard: a plant, or a plan to sail without taking "
        "any, belongs to the price."
    )
    if facts.tonnage is not None and facts.tonnage < 400:
        words += " Below 400 GT without a certificate (from memory)."
    return RuleLine("Ballast water", since, words, APPLIES, FLAG, BALLAST)


def _polar(facts: RuleFacts) -> Iterator[RuleLine]:
    """The rules of polar waters."""
    polar, since = facts.dates.text("polar"), date(2018, 1, 1)
    rule = "Polar certificate"
    if polar in ("", "none"):
        words = (
            "No polar waters are planned." if polar else "Type whether she goes to polar waters."
        )
        state = NOT_HERS if polar else WAITS
        yield RuleLine(rule, since, words, state, FLAG_AND_CLASS, POLAR)
        return
    words = (
        f"For {polar} polar waters with SOLAS certificates: polar "
        "certificate and operations manual, a category by the ice, a service temperature, cold "
        "weather life-saving gear, stability with ice on her."
    )
    yield RuleLine(rule, since, words, APPLIES, FLAG_AND_CLASS, POLAR)
    if facts.private is not False:
        state = APPLIES if facts.private else ASK
        if facts.tonnage is not None and facts.tonnage < 300:
            state = NOT_HERS
        words = (
            "Also a yacht that is not in trade, from 300 GT: navigation and voyage planning by the "
            "Polar Code."
        )
        yield RuleLine("Polar Code for yachts", date(2026, 1, 1), words, state, FLAG, POLAR_YACHTS)
    words = (
        "Master, mates and watch officers with polar training: of a passenger ship already in open "
        "water with little ice, of others in ice."
    )
    yield RuleLine("Polar training", date(2018, 7, 1), words, APPLIES, FLAG, POLAR_CREW)


def _sewage(facts: RuleFacts) -> RuleLine:
    """What may go over the side, and where nothing may."""
    since, rule = date(2008, 9, 27), "Sewage and grey water"
    if facts.tonnage is None and facts.persons is None:
        words = "By tonnage and persons, and neither is typed."
        return RuleLine(rule, None, words, WAITS, FLAG, SEWAGE)
    hers = (facts.tonnage or 0) >= 400 or (facts.persons or 0) > 15
    if not hers:
        words = "Below 400 GT and with at most 15 persons the annex does not bind; coasts may."
        return RuleLine(rule, None, words, NOT_HERS, FLAG, SEWAGE)
    words = (
        "Treated by an approved plant; ground and disinfected beyond 3 nautical miles; untreated "
        "beyond 12, under way at 4 kn or more. In protected fjords, harbours and near ice nothing "
        "goes over, grey water included: the tanks then count the days."
    )
    return RuleLine(rule, since, words, APPLIES, FLAG, SEWAGE)


def _step(room: TonnageRoom) -> RuleLine:
    """One step of gross tonnage."""
    rule = f"{room.step} GT"
    after = cell_text(room.after.quantity("", 0))
    if room.passed:
        words = f"At {after} GT she is above it: {room.begins}."
        return RuleLine(rule, None, words, APPLIES, FLAG, TONNAGE)
    if room.passed is None:
        words = f"At {after} GT she may be above it: {room.begins}. Settle the volume first."
        return RuleLine(rule, None, words, ASK, FLAG, TONNAGE)
    words = sentence(
        "At {after} GT she stays below it while at most {left} more is enclosed.",
        after=after,
        left=Quantity(room.volume.low, None, room.volume.high, "m³", 0),
    )
    return RuleLine(rule, None, words, NOT_HERS, FLAG, TONNAGE)


def _crew(facts: RuleFacts, tonnage: int | None) -> RuleLine:
    """The certificates of master and chief engineer."""
    since, rule = date(2017, 1, 1), "Crew by tonnage and kilowatts"
    deck = _deck_words(tonnage)
    engine = _engine_words(facts.dates.number("power_after") or facts.power)
    if deck is None and engine is None:
        words = "By tonnage and propulsion power, and neither is typed."
        return RuleLine(rule, since, words, WAITS, FLAG, CREW)
    words = joined(
        (
            deck or "Tonnage is not typed.",
            engine or "Propulsion power is not typed.",
            "How many, the safe manning document says.",
        )
    )
    return RuleLine(rule, since, words, APPLIES, FLAG, CREW)


def _deck_words(tonnage: int | None) -> str | None:
    """What tonnage asks of master and mates."""
    if tonnage is None:
        return None
    if tonnage >= 3000:
        return f"Master and chief mate for 3000 GT and more ({tonnage} GT)."
    if tonnage >= 500:
        return f"Master and chief mate for 500 to 3000 GT ({tonnage} GT)."
    return f"Master for less than 500 GT ({tonnage} GT)."


def _engine_words(power: float | None) -> Cell:
    """What propulsion power asks of the engineers."""
    if power is None:
        return None
    few, many = ENGINE_STEPS
    if power >= many:
        words = "Chief and second engineer for {many} and more ({power})."
    elif power >= few:
        words = "Chief and second engineer for {between} ({power})."
    else:
        words = "No engineer's certificate by the convention below {few} ({power})."
    return sentence(
        words,
        few=Quantity.exact(few, "kW"),
        many=Quantity.exact(many, "kW"),
        between=Quantity(few, None, many, "kW"),
        power=Quantity.exact(power, "kW", 0),
    )
