"""Fire pumps: what each main pump and the emergency pump must deliver.

The rule counts from the bilge pumps of a passenger ship of the same dimensions, so that length,
breadth and depth decide.
"""

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.criteria.machinery.bilge_pumping import pump_capacity
from inspector.values.field import Field, number_field
from inspector.values.formatting import show

SOURCE = Source.seen(
    "SOLAS II-2/10.2.2.4, capacity of fire pumps, with IACS SC 270",
    "as quoted in IACS SC 270 of January 2015 and in a public note",
    "cargo 4/3 of a bilge pump to 180 m³/h, passenger 2/3 of the bilge pumps; each pump 80 % of "
    "its share, at least 25 m³/h",
)
EMERGENCY = Source.seen(
    "FSS Code chapter 12, 2.2.1.1, emergency fire pumps",
    "as quoted in IACS SC 270 of January 2015",
    "40 % of the fire pumps; 25 m³/h from 2000 GT and on passenger ships below 1000 GT, else 15",
)
SPECIAL = Source.recalled(
    "Code of safety for special purpose ships 2008, MSC.266(84), with SOLAS II-2/10.2.2.4",
    "as a cargo ship to 60 persons, as a passenger ship above",
    edition="steps recalled",
)
MOST_OF_CARGO = 180.0  # m³/h
LEAST_PUMP = 25.0  # m³/h
BILGE_PUMPS = 3  # of a passenger ship whose numeral is below 30
# kind of ship -> whether its fire pumps are those of a passenger ship
SHIPS = {
    "cargo": False,
    "passenger": True,
    "special purpose, up to 60 persons": False,
    "special purpose, over 60 persons": True,
}
NOTES = (
    "By the plate; a worn pump gives less, so the jets of the trial go first.",
    "The steps of special purpose ships are from memory; flag and class decide.",
)


def fire_water(ship: str, length: float, breadth: float, depth: float) -> float:
    """Return what all fire pumps together must deliver [m³/h].

    Parameters
    ----------
    ship : str
        One of ``SHIPS``.
    length, breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].

    Returns
    -------
    float

    References
    ----------
    SOLAS II-2/10.2.2.4.1 (shares seen in IACS SC 270); the bilge pump of II-1/35-1.

    Examples
    --------
    >>> round(fire_water("cargo", 64, 16, 7), 1), fire_water("cargo", 140, 24, 12)
    (60.4, 180.0)
    """
    bilge = pump_capacity(length, breadth, depth)
    if SHIPS[ship]:
        return BILGE_PUMPS * bilge * 2 / 3
    return min(bilge * 4 / 3, MOST_OF_CARGO)


def _least_pump(ship: str, length: float, breadth: float, depth: float, pumps: int) -> float:
    """Return what each of the required pumps must deliver [m³/h]."""
    return max(LEAST_PUMP, 0.8 * fire_water(ship, length, breadth, depth) / pumps)


def _source_of(ship: str) -> Source | None:
    """Return the source where the kind of ship is from memory; None for the criterion's own."""
    return SPECIAL if ship.startswith("special") else None


def _bands(least: float, ship: str) -> Bands:
    """Return the bands of a capacity [m³/h] against the least one."""
    # A phone has the bands without their source, so what is recalled is poor here already.
    rating = "poor" if _source_of(ship) else "failed"
    return bands_of(
        "m³/h",
        below(least, "too small", rating, "too small"),
        beyond("large enough", "good", "large enough"),
    )


def pump_bands(ship: str, length: float, breadth: float, depth: float, pumps: int) -> Bands:
    """Return the bands of the capacity of one fire pump [m³/h]."""
    return _bands(_least_pump(ship, length, breadth, depth, pumps), ship)


def judge_pump(
    capacity: float, ship: str, length: float, breadth: float, depth: float, pumps: int
) -> Judgement:
    """Judge the capacity of one main fire pump.

    Parameters
    ----------
    capacity : float
        Of one pump [m³/h].
    ship : str
        Kind of ship, one of ``SHIPS``.
    length, breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].
    pumps : int
        Fire pumps that are required.

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS II-2/10.2.2.4.2: 80 % of the total divided by the number, at least 25 m³/h (seen in a
    public note); the total is from the bilge formula (seen, see bilge_pumping.py).
    """
    limit = _least_pump(ship, length, breadth, depth, pumps)
    subject = f"A fire pump of {show(capacity, 'm³/h')}, one of {pumps},"
    return _judged(subject, capacity, limit, ship, NOTES)


def _judged(
    subject: str, capacity: float, least: float, ship: str, notes: tuple[str, ...]
) -> Judgement:
    """Return the judgement of a capacity against the least one [m³/h]."""
    band = _bands(least, ship).band_of(capacity)
    sentence_start = f"{subject} against at least {show(least, 'm³/h')},"
    measured = (capacity, "m³/h", least)
    return judge_by_band(
        band, sentence_start, measured, notes, source=_source_of(ship), at_least=True
    )


def _least_emergency(ship: str, length: float, breadth: float, depth: float, tonnage: int) -> float:
    """Return what the emergency pump must deliver [m³/h]."""
    # A passenger ship of 1000 GT and more needs none where its main pumps are in two spaces.
    floor = 25.0 if SHIPS[ship] or tonnage >= 2000 else 15.0
    return max(floor, 0.4 * fire_water(ship, length, breadth, depth))


def emergency_bands(ship: str, length: float, breadth: float, depth: float, tonnage: int) -> Bands:
    """Return the bands of the capacity of the emergency fire pump [m³/h]."""
    return _bands(_least_emergency(ship, length, breadth, depth, tonnage), ship)


def judge_emergency(
    capacity: float, ship: str, length: float, breadth: float, depth: float, tonnage: int
) -> Judgement:
    """Judge the capacity of the emergency fire pump.

    Parameters
    ----------
    capacity : float
        Of the pump [m³/h].
    ship : str
        Kind of ship, one of ``SHIPS``.
    length, breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].
    tonnage : int
        Gross tonnage.

    Returns
    -------
    Judgement

    References
    ----------
    FSS Code 12.2.2.1.1: 40 % of the fire pumps, at least 25 or 15 m³/h (seen in IACS SC 270); the
    total is from the bilge formula (seen, see bilge_pumping.py).
    """
    limit = _least_emergency(ship, length, breadth, depth, tonnage)
    notes = ("It also gives two jets at the pressure of the fire main.", *NOTES)
    return _judged(
        f"An emergency fire pump of {show(capacity, 'm³/h')},", capacity, limit, ship, notes
    )


_SHIP = Field("ship", "Kind of ship", "choice", choices=tuple(SHIPS))
_HULL = (
    number_field("length", "Length of the ship", "m", 15, 150),
    number_field("breadth", "Breadth of the ship", "m", 4, 40),
    number_field("depth", "Depth to the bulkhead deck", "m", 1.5, 20),
)
_CHECKED = (
    "Two hulls by our own arithmetic on the formula, the cap and both floors from both sides; no "
    "published worked example was found."
)

CRITERIA = (
    Criterion(
        "fire-pump-capacity",
        "Capacity of a main fire pump",
        (
            number_field("capacity", "Capacity of one pump", "m³/h", 0, 2000),
            _SHIP,
            *_HULL,
            Field("pumps", "Fire pumps required", "whole", low=1, high=6),
        ),
        SOURCE,
        judge_pump,
        "Ships of 15 to 150 m under the convention, pumps of 0 to 2000 m³/h.",
        _CHECKED,
        bands=pump_bands,
    ),
    Criterion(
        "emergency-fire-pump",
        "Capacity of the emergency fire pump",
        (
            number_field("capacity", "Capacity of the pump", "m³/h", 0, 2000),
            _SHIP,
            *_HULL,
            Field("tonnage", "Gross tonnage", "whole", low=100, high=300_000),
        ),
        EMERGENCY,
        judge_emergency,
        "Ships of 15 to 150 m under the convention, pumps of 0 to 2000 m³/h.",
        _CHECKED,
        bands=emergency_bands,
    ),
)
