"""What each kind of ship means for one vessel's persons, subject by subject, with its source."""

from collections.abc import Iterator
from dataclasses import dataclass

from inspector.conversion.ship_kind import rule_sources as sources
from inspector.conversion.ship_kind.assumed_damage import FROM_PERSONS
from inspector.conversion.ship_kind.rule_sources import Cited
from inspector.conversion.ship_kind.ship_kinds import (
    CARGO,
    FEW,
    FEW_PASSENGERS,
    KINDS,
    MANY,
    PASSENGER,
    SHORTEST_BOATS,
    SHORTEST_INDEX,
    SPECIAL,
    Aboard,
    as_passenger_ship,
    emergency_hours,
    fire_rules,
    places_each_side,
    required_index,
    special_share,
)
from inspector.values.quantity import Cell, Quantity, joined, sentence

ASK_FLAG = "Ask the flag."
# m of length from which a special purpose ship must move watertight doors by emergency power.
DOORS_FROM = 50.0
NOT_CALCULATED = "It decides, and is not calculated here."


@dataclass(frozen=True)
class KindLine:
    """One subject, what it means for each kind of ship, and where that is published.

    Parameters
    ----------
    subject : str
    cargo, special, passenger : Cell
    sources : tuple of Cited
    """

    subject: str
    cargo: Cell
    special: Cell
    passenger: Cell
    sources: tuple[Cited, ...]


def kind_lines(aboard: Aboard, length: float | None, tonnage: float | None) -> tuple[KindLine, ...]:
    """Return the subjects in the order in which they decide.

    Parameters
    ----------
    aboard : Aboard
        With the number of all persons.
    length : float or None
        Of the load line certificate, else the best that is known [m].
    tonnage : float or None
        Gross tonnage after the conversion, else as it is [-].

    Returns
    -------
    tuple of KindLine

    References
    ----------
    Each line names its own.
    """
    return tuple(_lines(aboard, length, tonnage))


def _lines(aboard: Aboard, length: float | None, tonnage: float | None) -> Iterator[KindLine]:
    persons = aboard.persons
    yield KindLine(
        "What she is",
        "At most 12 passengers, and at most 12 special personnel with them.",
        "More than 12 special personnel, of whom at most 12 are passengers, from 500 GT: people "
        "with a task of research, expedition or training. Guests are not such people.",
        "More than 12 passengers, at any tonnage. A ship converted to it counts as built on the "
        "day the conversion starts (from memory).",
        (sources.PASSENGER_SHIP, sources.SPECIAL_PURPOSE, sources.AS_NEW),
    )
    yield _subdivision(persons, length)
    yield KindLine(
        "Double bottom, watertight doors, bilge pumping",
        "As a cargo ship: two power bilge pumps.",
        "Double bottom, doors in bulkheads, damage control papers and bilge pumping as a passenger "
        "ship, whatever the number of persons.",
        "As a passenger ship: three power bilge pumps, four from a numeral of 30, in separate "
        "rooms where practicable (from memory).",
        (sources.SPECIAL_HULL, sources.BILGE),
    )
    yield _fire(aboard)
    yield _survival_craft(persons, length, tonnage)
    yield _emergency(persons, length)
    yield KindLine(
        "Radio and voyage recorder",
        f"Radio as a cargo ship; a voyage recorder from 3000 GT{_recorder(tonnage)}.",
        "Radio as a cargo ship; a voyage recorder as the flag reads it: by tonnage, or as a "
        f"passenger ship. {ASK_FLAG}",
        "Radio of passenger ships (from memory), and a voyage recorder at any tonnage.",
        (sources.SPECIAL_RADIO, sources.RADIO, sources.RECORDER),
    )
    yield KindLine(
        "Crew certificates",
        "By tonnage and kilowatts.",
        "By tonnage and kilowatts; special personnel are made familiar with the ship and its "
        "drills (from memory).",
        "By tonnage and kilowatts, and training for passenger ships of everybody with a duty to "
        "passengers: crowds, safety, crisis.",
        (sources.CREW,),
    )
    yield KindLine(
        "Certificates and surveys",
        "Construction, equipment and radio certificates for five years, surveyed every year; the "
        "bottom twice in five years.",
        "A special purpose certificate beside or in place of these, for five years (from memory).",
        "One passenger ship safety certificate for twelve months; the bottom every year (from "
        "memory).",
        (sources.SURVEYS, sources.BOTTOM),
    )
    yield KindLine(
        "A yacht code instead",
        "Some flags accept a yacht code to 12 passengers without cargo; converted, she is new on "
        "the day the work starts.",
        "Not for special personnel.",
        "Some flags accept a code for 13 to 36 passengers and at most 200 persons without cargo; "
        "converted, she is new on the day the work starts.",
        (sources.YACHT_CODES,),
    )


def _subdivision(persons: int, length: float | None) -> KindLine:
    """What decides: the index that is required, and the damage that must be survived."""
    index = {kind: required_index(kind, persons, length) for kind in KINDS}
    if length is None:
        cargo = "An index only from {shortest} of length, and her length is not known."
    elif index[CARGO] is None:
        cargo = (
            "No index below {shortest} of length; a supply vessel has the damage rules of her type."
        )
    else:
        cargo = f"An index of at least {index[CARGO]:.3f} for {{length}}."
    special = (
        "As a passenger ship with special personnel as passengers, at "
        f"{special_share(persons):.3f} of her index: at least {index[SPECIAL]:.3f} for "
        f"{persons} persons."
    )
    if persons < MANY:
        special += f" The damage to her side is asked from {MANY} persons only."
    passenger = f"An index of at least {index[PASSENGER]:.3f} for {persons} persons."
    if persons >= FROM_PERSONS:
        passenger += " Damage anywhere along her side must be survived as well."
    return KindLine(
        "Subdivision and damage stability",
        sentence(
            f"{cargo} {NOT_CALCULATED}",
            shortest=Quantity.exact(SHORTEST_INDEX, "m"),
            length=None if length is None else Quantity.exact(length, "m"),
        ),
        f"{special} {NOT_CALCULATED}",
        f"{passenger} {NOT_CALCULATED}",
        (sources.INDEX, sources.SIDE_DAMAGE, sources.SPECIAL_DAMAGE),
    )


def _fire(aboard: Aboard) -> KindLine:
    """Whose fire rules she takes."""
    rules = {kind: fire_rules(kind, aboard.persons, aboard.likely_passengers) for kind in KINDS}
    counted = "" if aboard.likely_passengers is not None else " (all persons counted as such)"
    return KindLine(
        "Fire protection, detection, escape",
        f"{rules[CARGO].capitalize()}.",
        f"{rules[SPECIAL].capitalize()}: {aboard.persons} persons, steps above {FEW} and {MANY}.",
        f"{rules[PASSENGER].capitalize()}{counted}. Above {FEW_PASSENGERS} passengers a sprinkler "
        "in all living rooms, below it detection in every cabin (from memory).",
        (sources.SPECIAL_FIRE, sources.FIRE),
    )


def _survival_craft(persons: int, length: float | None, tonnage: float | None) -> KindLine:
    """Places in boats and rafts."""
    cargo = _craft_words(CARGO, persons, length)
    passenger = _craft_words(PASSENGER, persons, length)
    if tonnage is None or tonnage >= 500:
        more = "A rescue boat on each side."
    else:
        more = "Below 500 GT rafts for everybody on each side may do."
    return KindLine(
        "Survival craft",
        cargo,
        joined((_craft_words(SPECIAL, persons, length), f"The step is {FEW} persons.")),
        joined((passenger, more)),
        (sources.CRAFT_CARGO, sources.CRAFT_PASSENGER, sources.SPECIAL_CRAFT),
    )


def _craft_words(kind: str, persons: int, length: float | None) -> Cell:
    """The places of one kind of ship in words."""
    side, rafts = places_each_side(kind, persons)
    if as_passenger_ship(kind, persons):
        return (
            f"Boats for {side} on each side, and rafts for {rafts} more; a twentieth more "
            "lifejackets."
        )
    if length is not None and length < SHORTEST_BOATS:
        return sentence(
            f"Rafts for {side} on each side, half as many again where they cannot be moved across; "
            "no boats below {shortest}.",
            shortest=Quantity.exact(SHORTEST_BOATS, "m"),
        )
    return f"Enclosed boats for {side} on each side, and rafts for {side} more."


def _emergency(persons: int, length: float | None) -> KindLine:
    """How long the emergency source feeds."""
    special: Cell = f"{emergency_hours(SPECIAL, persons)} h for {persons} persons."
    if persons <= FEW and (length is None or length > DOORS_FROM):
        longer = sentence(
            "Longer than {length}: power for watertight doors for half an hour as well.",
            length=Quantity.exact(DOORS_FROM, "m"),
        )
        special = joined((special, longer))
    return KindLine(
        "Emergency supply",
        f"{emergency_hours(CARGO, persons)} h.",
        special,
        f"{emergency_hours(PASSENGER, persons)} h, and a battery that feeds until the set does.",
        (sources.POWER_CARGO, sources.POWER_PASSENGER, sources.SPECIAL_POWER),
    )


def _recorder(tonnage: float | None) -> str:
    if tonnage is None:
        return ", and her tonnage is not known"
    return ": asked of her" if tonnage >= 3000 else ": not asked of her"
