"""The rule book of one case: its lines by date, and the figures that follow from them."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Default, Figure
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.range.consumables import grey_days, sewage_days
from inspector.conversion.rule_book.derating import ISO_3046, adjusted_share
from inspector.conversion.rule_book.rule_facts import RuleFacts, rule_facts
from inspector.conversion.rule_book.rule_line import RuleLine
from inspector.conversion.rule_book.tonnage_room import HOUSE_HEIGHT, TonnageRoom, tonnage_rooms
from inspector.conversion.rule_book.voyage_rules import voyage_rules
from inspector.conversion.rule_book.work_rules import work_rules
from inspector.conversion.space.tonnage import ITC

HEIGHT = Default("deck height of a new house", HOUSE_HEIGHT, "nobody gave one", unit="m")


@dataclass(frozen=True)
class RuleBook:
    """The rules against one vessel.

    Parameters
    ----------
    facts : RuleFacts
    lines : tuple of RuleLine
        By the day from which they bind; those without a day last.
    rooms : tuple of TonnageRoom
    figures : tuple of Figure
    faults : tuple of str
    """

    facts: RuleFacts
    lines: tuple[RuleLine, ...]
    rooms: tuple[TonnageRoom, ...]
    figures: tuple[Figure, ...]
    faults: tuple[str, ...] = ()


def rule_book(case: Case) -> RuleBook:
    """Return the rule book of one case.

    Parameters
    ----------
    case : Case

    Returns
    -------
    RuleBook

    References
    ----------
    Each line and figure names its own.
    """
    facts, faults = rule_facts(case), []
    rooms: tuple[TonnageRoom, ...] = ()
    if facts.tonnage is not None:
        try:
            rooms = tonnage_rooms(facts.tonnage, facts.added)
        except ConversionError as problem:
            faults.append(str(problem))
    lines = [*work_rules(facts), *voyage_rules(facts, rooms)]
    lines.sort(key=lambda line: (line.since is None, line.since or date.max))
    figures = (*_houses(facts, rooms), *_derated(facts), *_holding(facts))
    return RuleBook(facts, tuple(lines), rooms, figures, tuple(faults))


def _houses(facts: RuleFacts, rooms: tuple[TonnageRoom, ...]) -> Iterator[Figure]:
    """How large a house stays below each step that is not passed."""
    given = facts.dates.number("house_height")
    height, defaults = (given, ()) if given is not None else (HOUSE_HEIGHT, (HEIGHT,))
    for room in rooms:
        if room.passed:
            continue
        yield Figure(
            f"Volume that may still be enclosed below {room.step} GT",
            room.volume,
            "m³",
            "volume of the step − volume of the certificate − volume added",
            source=ITC,
        )
        yield Figure(
            f"Floor of a house of one deck that stays below {room.step} GT",
            room.floor(height),
            "m²",
            "that volume / deck height",
            defaults=defaults,
            source=ITC,
        )


def _derated(facts: RuleFacts) -> Iterator[Figure]:
    """What the main engines give in the heat."""
    air, sea = facts.dates.number("air_hot"), facts.dates.number("sea_hot")
    # A rating that already holds in the tropics is not taken down twice.
    if air is None or facts.dates.text("rated_tropical") == "yes":
        return
    cooled = facts.dates.text("cooled") != "no"
    coolant = sea if sea is not None else 25.0
    share = adjusted_share(air, coolant, cooled=cooled)
    assumed = (
        "Turbocharged, rated at 25 °C of air and water; the maker's own sheet comes first.",
        *(() if sea is not None else ("Sea water is taken as 25 °C.",)),
    )
    yield Figure(
        "Power of the engines in the heat, of what is rated",
        Span.exact(100 * share),
        "%",
        "k − 0.7 (1 − k) (1 / 0.85 − 1), k by the temperatures of air and water",
        assumed,
        source=ISO_3046,
    )
    if facts.power is not None:
        yield Figure(
            "Propulsion power in the heat",
            Span.exact(share * facts.power),
            "kW",
            "that share × rated power of the main engines",
            assumed,
            source=ISO_3046,
        )


def _holding(facts: RuleFacts) -> Iterator[Figure]:
    """How long sewage and grey water are kept where nothing may go over."""
    if facts.persons is None or facts.persons > 1000:
        return
    for name, days in (("sewage", sewage_days), ("grey water", grey_days)):
        figure = days(facts.stores, facts.persons)
        yield replace(figure, name=f"Days until the {name} tanks are full, nothing let out")
