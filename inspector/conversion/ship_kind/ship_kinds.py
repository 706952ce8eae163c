"""The three kinds of ship by who is aboard, and what each asks for that can be counted.

Subdivision and damage stability themselves are not calculated: the index that is required is, so
that a naval architect and an owner speak of the same figure.
"""

from dataclasses import dataclass
from math import ceil, log

from inspector.conversion.core.bounds import plain

CARGO, SPECIAL, PASSENGER = KINDS = ("cargo ship", "special purpose ship", "passenger ship")
# More passengers make a passenger ship; more special personnel, passengers among them, a special
# purpose ship.
MOST_PASSENGERS = MOST_SPECIAL = 12
# Persons to which a special purpose ship is treated as a cargo ship, and from which her damage
# stability is a passenger ship's.
FEW, MANY = 60, 240
# Share of the index of a passenger ship that is asked of a special purpose ship with few persons.
LEAST_SHARE = 0.8
# Passengers above which the fire rules are those of large passenger ships.
FEW_PASSENGERS = 36
# Persons from which a passenger ship's index grows with them.
MANY_PERSONS = 400
# m of length: below, no index is asked of a cargo ship; below, rafts may take the place of boats.
SHORTEST_INDEX, SHORTEST_BOATS = 80.0, 85.0


@dataclass(frozen=True)
class Aboard:
    """Who is aboard; None where nobody said.

    Parameters
    ----------
    persons : int or None
        All of them.
    crew, special, passengers : int or None
        Crew, special personnel without the passengers, and passengers.
    """

    persons: int | None = None
    crew: int | None = None
    special: int | None = None
    passengers: int | None = None

    @property
    def likely_passengers(self) -> int | None:
        """The passengers as said, else the rest of all persons."""
        if self.passengers is not None:
            return self.passengers
        if None in (self.persons, self.crew, self.special):
            return None
        return max(self.persons - self.crew - self.special, 0)


def kind_of(aboard: Aboard) -> str:
    """Return which kind of ship the persons make.

    Parameters
    ----------
    aboard : Aboard

    Returns
    -------
    str
        One of KINDS; "" where it is not known who is aboard.

    References
    ----------
    SOLAS I/2(f): more than twelve passengers (seen). Special purpose code 2008, 1.3: more than
    twelve special personnel, passengers counted among them (seen).

    Examples
    --------
    >>> kind_of(Aboard(40, 18, 10, 12)), kind_of(Aboard(40, 28, 0, 12)), kind_of(Aboard(40))
    ('special purpose ship', 'cargo ship', '')
    """
    passengers = aboard.likely_passengers
    if passengers is None:
        return ""
    if passengers > MOST_PASSENGERS:
        return PASSENGER
    if aboard.special is None:
        return ""
    return SPECIAL if aboard.special + passengers > MOST_SPECIAL else CARGO


def passenger_index(persons: int) -> float:
    """Return the subdivision index that is required of a passenger ship.

    Parameters
    ----------
    persons : int
        All persons on board, 1 to 6000.

    Returns
    -------
    float
        [-]

    Raises
    ------
    BadInput
        A number that cannot be.

    References
    ----------
    SOLAS II-1/6.2.3 as amended by MSC.421(98) (seen).

    Examples
    --------
    >>> passenger_index(40), round(passenger_index(400), 4)
    (0.722, 0.722)
    """
    number = plain("persons", persons, 1, 6000)
    if number < MANY_PERSONS:
        return 0.722
    if number <= 1350:
        return number / 7580 + 0.66923
    return 0.0369 * log(number + 89.048) + 0.579


def special_share(persons: int) -> float:
    """Return the share of a passenger ship's index that is required of a special purpose ship.

    Parameters
    ----------
    persons : int
        All persons on board, 1 to 6000.

    Returns
    -------
    float
        [-]: 0.8 to 60 persons, 1 from 240, and on a straight line between.

    Raises
    ------
    BadInput
        A number that cannot be.

    References
    ----------
    Special purpose code 2008, 2.2 (seen, as a national act repeats it).

    Examples
    --------
    >>> [special_share(persons) for persons in (60, 150, 240)]
    [0.8, 0.9, 1.0]
    """
    number = plain("persons", persons, 1, 6000)
    beyond = min(max(number - FEW, 0), MANY - FEW) / (MANY - FEW)
    return LEAST_SHARE + (1 - LEAST_SHARE) * beyond


def cargo_index(length: float) -> float | None:
    """Return the subdivision index that is required of a dry cargo ship.

    Parameters
    ----------
    length : float
        Subdivision length, 5 to 400 [m].

    Returns
    -------
    float or None
        [-]; None below 80 m, where the convention asks for none.

    Raises
    ------
    BadInput
        A length that cannot be.

    References
    ----------
    SOLAS II-1/6.2.1 and 6.2.2 (seen, as a national act repeats them).

    Examples
    --------
    >>> cargo_index(79.9) is None, round(cargo_index(101), 4), round(cargo_index(90), 4)
    (True, 0.4941, 0.4449)
    """
    metres = plain("length", length, 5, 400, "m")
    if metres < SHORTEST_INDEX:
        return None
    whole = 1 - 128 / (metres + 152)
    if metres > 100:
        return whole
    return 1 - 1 / (1 + metres / 100 * whole / (1 - whole))


def required_index(kind: str, persons: int, length: float | None) -> float | None:
    """Return the subdivision index that is required of one kind of ship.

    Parameters
    ----------
    kind : str
        One of KINDS.
    persons : int
        All persons on board.
    length : float or None
        Subdivision length [m], which decides for a cargo ship.

    Returns
    -------
    float or None
        [-]; None where none is asked, or the length is not known.

    References
    ----------
    SOLAS II-1/6.2; special purpose code 2008, 2.2 (both seen).
    """
    if kind == PASSENGER:
        return passenger_index(persons)
    if kind == SPECIAL:
        return special_share(persons) * passenger_index(persons)
    return None if length is None else cargo_index(length)


def as_passenger_ship(kind: str, persons: int) -> bool:
    """Return whether life-saving and emergency power are those of a passenger ship.

    Parameters
    ----------
    kind : str
        One of KINDS.
    persons : int
        All persons on board.

    Returns
    -------
    bool

    References
    ----------
    Special purpose code 2008, 4.2 and 8.2: above 60 persons (seen).
    """
    return kind == PASSENGER or (kind == SPECIAL and persons > FEW)


def emergency_hours(kind: str, persons: int) -> int:
    """Return how long the emergency source must feed.

    Parameters
    ----------
    kind : str
        One of KINDS.
    persons : int
        All persons on board.

    Returns
    -------
    int
        [h]

    References
    ----------
    SOLAS II-1/42 (36 h) and 43 (18 h); special purpose code 2008, 4.2 (all seen).
    """
    return 36 if as_passenger_ship(kind, persons) else 18


def places_each_side(kind: str, persons: int) -> tuple[int, int]:
    """Return the places that survival craft must offer.

    Parameters
    ----------
    kind : str
        One of KINDS.
    persons : int
        All persons on board.

    Returns
    -------
    tuple of (int, int)
        Places on each side, and further places in rafts.

    References
    ----------
    SOLAS III/21.1.1: boats for half on each side and rafts for a quarter; III/31.1: everybody on
    each side (both seen).

    Examples
    --------
    >>> places_each_side(PASSENGER, 41), places_each_side(CARGO, 41)
    ((21, 11), (41, 0))
    """
    if as_passenger_ship(kind, persons):
        return ceil(persons / 2), ceil(persons / 4)
    return persons, 0


def fire_rules(kind: str, persons: int, passengers: int | None) -> str:
    """Return whose fire rules a ship takes.

    Parameters
    ----------
    kind : str
        One of KINDS.
    persons : int
        All persons on board.
    passengers : int or None
        Passengers, None where it is not known; they decide for a passenger ship.

    Returns
    -------
    str

    References
    ----------
    Special purpose code 2008, 6.1 to 6.3 (seen); SOLAS II-2 (memory).
    """
    small = f"as a passenger ship of at most {FEW_PASSENGERS} passengers"
    large = f"as a passenger ship of more than {FEW_PASSENGERS} passengers"
    if kind == CARGO:
        return "as a cargo ship"
    if kind == SPECIAL:
        if persons <= FEW:
            return "as a cargo ship"
        return small if persons <= MANY else large
    # Who might be a passenger is counted as one until somebody says who is not.
    return large if (persons if passengers is None else passengers) > FEW_PASSENGERS else small
