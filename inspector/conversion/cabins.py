"""Cabins against the labour convention: the least floor by persons, rank and gross tonnage, headroom, berth, and what goes with a number of persons.

The figures of MLC 2006 are recalled, not read: they may warn, and flag and class say which standard holds for an older hull.
"""

from dataclasses import dataclass
from math import ceil

from inspector.conversion.inputs import BadInput, one_of, plain, within
from inspector.conversion.shapes import Span, span
from inspector.criteria.source import Source

MLC = Source("Maritime Labour Convention, 2006", "recalled", "Standard A3.1, sleeping rooms and sanitary spaces", "memory")
BANDS = (3000, 10_000)             # gross tonnage from which more is asked
HEADROOM = 2.03                    # m
PER_SANITARY, MESS_SEAT = 6, 1.5   # persons to one toilet, basin and shower; m² a seat (a guideline)
HOSPITAL_PERSONS, HOSPITAL_DAYS = 15, 3
LIVERS = ("crew", "officer", "crew, passenger or special purpose ship", "officer, passenger or special purpose ship", "guest")
SINGLE, OFFICER = (4.5, 5.5, 7.0), (7.5, 8.5, 10.0)   # m² by band
DOUBLE = 7.0                                          # m², below the first band only
SHARED = {2: 7.5, 3: 11.5, 4: 14.5}                   # m², passenger and special purpose ships
EACH_BEYOND = 3.6                                     # m² a person, special purpose ships
OFFICER_SPECIAL = 7.5                                 # m², operational level


def least_floor(persons: int, who: str, tonnage: float) -> float | None:
    """Least floor [m²] of a cabin for so many persons (who: one of LIVERS) of a ship of a gross tonnage; None for guests, whom it does not cover.

    Errors
    ------
    BadInput : so many may not share a cabin there, or a value cannot be meant.
    """
    plain("persons in a cabin", persons, 1, 50)
    plain("gross tonnage", tonnage, 1, 100_000)
    one_of("who lives in the cabin", who, LIVERS)
    band = sum(tonnage >= one for one in BANDS)
    if who == "guest":
        return None
    if who == "officer":
        return OFFICER[band] if persons == 1 else _refused(persons, who, tonnage)
    if who.startswith("officer"):
        return OFFICER_SPECIAL if persons == 1 else _refused(persons, who, tonnage)
    if persons == 1:
        return SINGLE[band]
    if who == "crew":
        return DOUBLE if persons == 2 and band == 0 else _refused(persons, who, tonnage)
    return SHARED.get(persons, EACH_BEYOND * persons)


def _refused(persons: int, who: str, tonnage: float) -> float:
    most = "one or two" if tonnage < BANDS[0] and who == "crew" else "one"
    sentence = f"Persons in a cabin are {persons}, and {who} of a ship of {tonnage:g} GT have cabins for {most}: give fewer persons or another standard."
    raise BadInput(sentence, field="persons in a cabin", value=persons)


def least_over(persons: int, who: str, tonnage: Span | None) -> Span | None:
    """The least floor [m²] over a span of gross tonnage; None for guests; a tonnage that nobody gave reaches over all bands."""
    given = Span(1, None, 100_000) if tonnage is None else tonnage
    steps = sorted({given.low, given.high, *(one for one in BANDS if given.low <= one <= given.high)})
    found = [_or_single(persons, who, one) for one in steps]
    if None in found:
        return None
    known = len(set(found)) == 1
    return Span(min(found), found[0] if known else None, max(found))


def _or_single(persons: int, who: str, tonnage: float) -> float | None:
    # where the tonnage is a span and a double is lawful only in its lower part, two singles are what the upper part asks
    try:
        return least_floor(persons, who, tonnage)
    except BadInput:
        if persons == 2 and who == "crew":
            return 2 * least_floor(1, who, tonnage)
        raise


@dataclass(frozen=True)
class Fault:
    """What is less than the standard: the thing, what is asked and what is there [m or m²]."""

    what: str
    asked: float
    found: float


def faults(floor: float | None, height: float | None, least: Span | None) -> tuple[Fault, ...]:
    """What of a cabin's floor [m²] and headroom [m] surely falls short; what was not measured is not judged."""
    found = []
    if floor is not None and least is not None and within("floor", floor, 0, 5000, "m²").high < least.low:
        found.append(Fault("floor", least.low, floor))
    if height is not None and plain("headroom", height, 0, 20, "m") < HEADROOM:
        found.append(Fault("headroom", HEADROOM, height))
    return tuple(found)


@dataclass(frozen=True)
class Services:
    """What goes with a number of persons: sets of toilet, basin and shower; mess [m²]; whether a hospital is asked (None: days not known)."""

    sanitary: int
    mess: float
    hospital: bool | None


def services(persons: int, days: float | None = None) -> Services:
    """What so many persons on a voyage of so many days need beside cabins."""
    plain("persons on board", persons, 1, 5000)
    if days is not None:
        plain("days of a voyage", days, 0, 1000, "days")
    hospital = False if persons < HOSPITAL_PERSONS else None if days is None else days > HOSPITAL_DAYS
    return Services(ceil(persons / PER_SANITARY), span(MESS_SEAT * persons).point, hospital)
