"""Cabins against the labour convention, and what a number of persons needs beside them.

The figures of MLC 2006 are recalled, not read: they may warn, and flag and class decide which
standard applies to an older hull.
"""

from dataclasses import dataclass
from math import ceil

from inspector.conversion.core.bounds import BadInput, one_of, plain, within
from inspector.conversion.core.span import Span
from inspector.criteria.core.source import Source
from inspector.values.formatting import show

MLC = Source.recalled(
    "Maritime Labour Convention, 2006", "Standard A3.1, sleeping rooms and sanitary spaces"
)
# Gross tonnage from which more floor is asked.
BANDS = (3000, 10_000)
# Clear height [m].
HEADROOM = 2.03
# Persons to one toilet, basin and shower.
PER_SANITARY = 6
# m² a seat, a guideline of the convention.
MESS_SEAT = 1.5
HOSPITAL_PERSONS, HOSPITAL_DAYS = 15, 3
OCCUPANTS = (
    "crew",
    "officer",
    "crew, passenger or special purpose ship",
    "officer, passenger or special purpose ship",
    "guest",
)
# Floor [m²] in the bands of tonnage: below the first, between them, above the last.
SINGLE, OFFICER = (4.5, 5.5, 7.0), (7.5, 8.5, 10.0)
# m², allowed below the first band only.
DOUBLE = 7.0
# Persons -> m², on passenger and special purpose ships.
SHARED = {2: 7.5, 3: 11.5, 4: 14.5}
# m² a person where more share a cabin, on special purpose ships.
EACH_BEYOND = 3.6
# m², operational level.
OFFICER_SPECIAL = 7.5


def least_floor(persons: int, who: str, tonnage: float) -> float | None:
    """Return the least floor of a cabin that the labour convention asks.

    Parameters
    ----------
    persons : int
        Persons in the cabin [-].
    who : str
        One of OCCUPANTS.
    tonnage : float
        Gross tonnage [-].

    Returns
    -------
    float or None
        Floor [m²]; None for guests, whom the convention does not cover.

    Raises
    ------
    BadInput
        So many may not share a cabin there, or a value is not possible.

    References
    ----------
    MLC 2006, Standard A3.1 (*from memory*).
    """
    plain("persons in a cabin", persons, 1, 50)
    plain("gross tonnage", tonnage, 1, 100_000)
    one_of("who lives in the cabin", who, OCCUPANTS)
    # The convention is for seafarers; the flag decides what a guest needs.
    if who == "guest":
        return None
    # No officer shares a cabin under the convention, whatever the tonnage.
    if who.startswith("officer") and persons > 1:
        raise _too_many(persons, who, tonnage)
    band = sum(tonnage >= limit for limit in BANDS)
    if who == "officer":
        return OFFICER[band]
    if who.startswith("officer"):
        return OFFICER_SPECIAL
    if persons == 1:
        return SINGLE[band]
    if who != "crew":
        return SHARED.get(persons, EACH_BEYOND * persons)
    # Two in a cabin are allowed to small ships only.
    if persons == 2 and band == 0:
        return DOUBLE
    raise _too_many(persons, who, tonnage)


def _too_many(persons: int, who: str, tonnage: float) -> BadInput:
    """Return the refusal of more persons than the standard allows in a cabin."""
    most = "one or two" if tonnage < BANDS[0] and who == "crew" else "one"
    sentence = (
        f"Persons in a cabin are {persons}, and {who} of a ship of {show(tonnage, '')} GT "
        f"have cabins for {most}: give fewer persons or another standard."
    )
    return BadInput(sentence, field="persons in a cabin", value=persons)


def least_floor_over(persons: int, who: str, tonnage: Span | None) -> Span | None:
    """Return the least floor of a cabin over a span of gross tonnage.

    Parameters
    ----------
    persons : int
        Persons in the cabin [-].
    who : str
        One of OCCUPANTS.
    tonnage : Span or None
        Gross tonnage [-]; None, where it is not known, means any tonnage.

    Returns
    -------
    Span or None
        Floor [m²]; None for guests.

    Raises
    ------
    BadInput
        So many may not share a cabin at any tonnage.

    References
    ----------
    MLC 2006, Standard A3.1 (*from memory*).
    """
    # The floor changes only at the ends of the bands, so it is enough to look there.
    given = Span(1, None, 100_000) if tonnage is None else tonnage
    inside = [limit for limit in BANDS if given.low <= limit <= given.high]
    steps = sorted({given.low, given.high, *inside})
    floors = [_floor_or_two_singles(persons, who, step) for step in steps]
    if None in floors:
        return None
    # One floor over all the tonnage is known, and otherwise only its ends are.
    same = len(set(floors)) == 1
    return Span(min(floors), floors[0] if same else None, max(floors))


def _floor_or_two_singles(persons: int, who: str, tonnage: float) -> float | None:
    """Return the least floor; of two crew where no double is allowed, that of two singles."""
    try:
        return least_floor(persons, who, tonnage)
    except BadInput:
        # A span of tonnage may allow a double in its lower part only: the rest needs two singles.
        if persons == 2 and who == "crew":
            return 2 * least_floor(1, who, tonnage)
        raise


@dataclass(frozen=True)
class Shortfall:
    """What is less than the standard.

    Parameters
    ----------
    what : str
        "floor" or "headroom".
    asked, found : float
        What is asked and what there is [m² for a floor, m for headroom].
    """

    what: str
    asked: float
    found: float


def shortfalls(
    floor: float | None, height: float | None, least: Span | None
) -> tuple[Shortfall, ...]:
    """Return what of a cabin surely falls short of the convention.

    Parameters
    ----------
    floor : float or None
        Floor [m²]; None where it was not measured, and then it is not judged.
    height : float or None
        Clear height [m]; None where it was not measured.
    least : Span or None
        The least floor that is asked [m²]; None where none is.

    Returns
    -------
    tuple of Shortfall

    Raises
    ------
    BadInput
        A value is not possible.

    References
    ----------
    MLC 2006, Standard A3.1 (*from memory*).
    """
    found = []
    # At an unsure tonnage only a floor below the smallest that could be asked surely falls short.
    if floor is not None and least is not None:
        within("floor", floor, 0, 5000, "m²")
        if floor < least.low:
            found.append(Shortfall("floor", least.low, floor))
    if height is not None and plain("headroom", height, 0, 20, "m") < HEADROOM:
        found.append(Shortfall("headroom", HEADROOM, height))
    return tuple(found)


@dataclass(frozen=True)
class Services:
    """What a number of persons needs beside cabins.

    Parameters
    ----------
    sanitary : int
        Sets of toilet, basin and shower [-].
    mess : float
        Floor of the mess [m²].
    hospital : bool or None
        Whether one is asked; None where the days of the voyage are not known.
    """

    sanitary: int
    mess: float
    hospital: bool | None


def services(persons: int, days: float | None = None) -> Services:
    """Return what persons on a voyage need beside cabins.

    Parameters
    ----------
    persons : int
        Persons on board [-].
    days : float, optional
        Days of the voyage [days].

    Returns
    -------
    Services

    Raises
    ------
    BadInput
        A value is not possible.

    References
    ----------
    MLC 2006, Standard A3.1 and its guideline on mess rooms (*from memory*).
    """
    plain("persons on board", persons, 1, 5000)
    if days is not None:
        plain("days of a voyage", days, 0, 1000, "days")
    return Services(ceil(persons / PER_SANITARY), MESS_SEAT * persons, _hospital(persons, days))


def _hospital(persons: int, days: float | None) -> bool | None:
    """Whether a hospital is asked; None where the days of the voyage are not known."""
    # Below it the length of the voyage does not matter.
    if persons < HOSPITAL_PERSONS:
        return False
    return None if days is None else days > HOSPITAL_DAYS
