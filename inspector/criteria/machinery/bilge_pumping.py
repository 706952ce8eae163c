"""Bilge systems: bore of main and branch, and capacity of a pump, by the convention."""

import math
from decimal import ROUND_HALF_UP, Decimal

from inspector.criteria.core.band_judgement import judge_by_band
from inspector.criteria.core.bands import Bands, bands_of, below, beyond
from inspector.criteria.core.criterion import Criterion
from inspector.criteria.core.decimals import exact
from inspector.criteria.core.judgement import Judgement
from inspector.criteria.core.source import Source
from inspector.values.field import number_field
from inspector.values.formatting import show

SOURCE = Source.seen(
    "SOLAS chapter II-1, regulation 35-1, bilge pumping arrangements",
    "opening read; formula and 2 m/s as the Torremolinos Convention 1977, regulation 49, has them",
    "bore of the main, 25 + 1.68 sqrt(L (B + D)) mm, and 2 m/s",
)
BRANCH = Source.seen(
    "SOLAS chapter II-1, regulation 35-1, bilge pumping arrangements",
    "as the French ship safety regulation repeats it, article 221-II-1/35-1, 3.9",
    "bore of a branch, 25 + 2.16 sqrt(l (B + D)) mm, at least 50 mm",
)
LEAST_BRANCH = 50.0  # mm
CAPACITY = 5.66e-3  # m³/h for each mm² of bore: 2 m/s as class rules round it
INSIDE_OF_MAIN = (
    "Inside diameter, not the nominal size; the nearest standard size may be allowed by flag and "
    "class."
)
INSIDE_OF_BRANCH = "Inside diameter; each well is also tried by pumping it dry."
BY_THE_PLATE = "By the plate; a worn pump gives less: time how fast a well falls."
PASSENGERS = "More than 12 passengers make her a passenger ship: one pump more, and more suctions."


def main_bore(length: float, breadth: float, depth: float) -> float:
    """Return the least bore of the bilge main [mm]: 25 + 1.68 sqrt(L (B + D)).

    Parameters
    ----------
    length, breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].

    Returns
    -------
    float

    References
    ----------
    SOLAS II-1/35-1, by the same formula of the Torremolinos Convention 1977, 49 (seen).

    Examples
    --------
    >>> round(main_bore(64, 16, 7), 2)
    89.46
    """
    # An empirical formula: lengths in metres give a bore in millimetres, and no conversion of units
    # may be drawn through it.
    return 25 + 1.68 * math.sqrt(length * (breadth + depth))


def branch_bore(space_length: float, breadth: float, depth: float) -> float:
    """Return the least bore of a branch [mm]: 25 + 2.16 sqrt(l (B + D)), at least 50 mm.

    Parameters
    ----------
    space_length : float
        Of the compartment [m].
    breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].

    Returns
    -------
    float

    References
    ----------
    SOLAS II-1/35-1 as class rules quote it (*from memory*).
    """
    # By the length of the space that is drained; with the ship's every branch would be too narrow.
    return max(LEAST_BRANCH, 25 + 2.16 * math.sqrt(space_length * (breadth + depth)))


def pump_capacity(length: float, breadth: float, depth: float) -> float:
    """Return the least capacity of each pump [m³/h]: 2 m/s through the required bore of the main.

    Parameters
    ----------
    length, breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].

    Returns
    -------
    float

    References
    ----------
    SOLAS II-1/35-1: 2 m/s (seen in the Torremolinos Convention 1977, 49); 0.00566 d² m³/h as class
    rules round it (*from memory*).
    """
    # By the bore that is asked and not the one that is fitted: a main that is wider than it must be
    # asks for no larger pump.
    return CAPACITY * main_bore(length, breadth, depth) ** 2


def _bore_bands(bore: float, least: float = 0) -> Bands:
    """Return the bands of a bore: class rules allow the nearest 5 mm where that is less."""
    # Pipes are made in steps, and 77 mm asked for is 75 mm bought.
    nearest = float((exact(bore) / 5).quantize(Decimal(1), ROUND_HALF_UP) * 5)
    rounded = max(least, min(bore, nearest))
    return bands_of(
        "mm",
        below(rounded, "too narrow", "poor", "too narrow"),
        below(bore, "enough if rounded", "fair", "enough only as rounded to the nearest 5 mm"),
        beyond("wide enough", "good", "wide enough"),
    )


def main_bands(length: float, breadth: float, depth: float) -> Bands:
    """Return the bands of the bore of the bilge main [mm] from length, breadth and depth [m]."""
    return _bore_bands(main_bore(length, breadth, depth))


def judge_main(bore: float, length: float, breadth: float, depth: float) -> Judgement:
    """Judge the bore of the bilge main.

    Parameters
    ----------
    bore : float
        Inside diameter [mm].
    length, breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS II-1/35-1: 25 + 1.68 sqrt(L (B + D)) mm (seen in the Torremolinos Convention 1977, 49).
    """
    limit = main_bore(length, breadth, depth)
    subject = f"A bilge main of {show(bore, 'mm')}, against at least {show(limit, 'mm', 1)},"
    band = main_bands(length, breadth, depth).band_of(bore)
    return judge_by_band(band, subject, (bore, "mm", limit), (INSIDE_OF_MAIN,), at_least=True)


def branch_bands(space_length: float, breadth: float, depth: float) -> Bands:
    """Return the bands of the bore of a branch [mm] from length of space, breadth, depth [m]."""
    return _bore_bands(branch_bore(space_length, breadth, depth), LEAST_BRANCH)


def judge_branch(bore: float, space_length: float, breadth: float, depth: float) -> Judgement:
    """Judge the bore of a branch suction.

    Parameters
    ----------
    bore : float
        Inside diameter [mm].
    space_length : float
        Of the compartment [m].
    breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS II-1/35-1: 25 + 2.16 sqrt(l (B + D)) mm, at least 50 mm (*from memory*).
    """
    limit = branch_bore(space_length, breadth, depth)
    subject = f"A branch suction of {show(bore, 'mm')}, against at least {show(limit, 'mm', 1)},"
    band = branch_bands(space_length, breadth, depth).band_of(bore)
    return judge_by_band(band, subject, (bore, "mm", limit), (INSIDE_OF_BRANCH,), at_least=True)


def capacity_bands(length: float, breadth: float, depth: float) -> Bands:
    """Return the bands of the capacity of one pump [m³/h] from length, breadth and depth [m]."""
    return bands_of(
        "m³/h",
        below(pump_capacity(length, breadth, depth), "too small", "poor", "too small"),
        beyond("large enough", "good", "large enough"),
    )


def judge_capacity(capacity: float, length: float, breadth: float, depth: float) -> Judgement:
    """Judge the capacity of one bilge pump.

    Parameters
    ----------
    capacity : float
        Of one pump [m³/h].
    length, breadth : float
        Of the ship [m].
    depth : float
        To the bulkhead deck [m].

    Returns
    -------
    Judgement

    References
    ----------
    SOLAS II-1/35-1: 2 m/s through the main of the required bore (seen in the Torremolinos
    Convention 1977, 49); 0.00566 d² m³/h as class rules round it (*from memory*).
    """
    limit = pump_capacity(length, breadth, depth)
    least = f"at least {show(limit, 'm³/h', 2)} for each pump"
    subject = f"A bilge pump of {show(capacity, 'm³/h')}, against {least},"
    band = capacity_bands(length, breadth, depth).band_of(capacity)
    notes = (BY_THE_PLATE, PASSENGERS)
    return judge_by_band(band, subject, (capacity, "m³/h", limit), notes, at_least=True)


_BORE = number_field("bore", "Inside diameter", "mm", 10, 500)
_LENGTH = number_field("length", "Length of the ship", "m", 15, 150)
_BREADTH = number_field("breadth", "Breadth of the ship", "m", 4, 40)
_DEPTH = number_field("depth", "Depth to the bulkhead deck", "m", 1.5, 20)
_CHECKED = (
    "Three hulls by our own arithmetic on the formula; no published worked example was found."
)

CRITERIA = (
    Criterion(
        "bilge-main-bore",
        "Bore of the bilge main",
        (_BORE, _LENGTH, _BREADTH, _DEPTH),
        SOURCE,
        judge_main,
        "Ships of 15 to 150 m with one bilge main, bores of 10 to 500 mm.",
        _CHECKED,
        bands=main_bands,
    ),
    Criterion(
        "bilge-branch-bore",
        "Bore of a branch bilge suction",
        (
            _BORE,
            number_field("space_length", "Length of the space", "m", 1, 60),
            _BREADTH,
            _DEPTH,
        ),
        BRANCH,
        judge_branch,
        "Branch suctions of cargo and machinery spaces of 1 to 60 m, bores of 10 to 500 mm.",
        _CHECKED,
        bands=branch_bands,
    ),
    Criterion(
        "bilge-pump-capacity",
        "Capacity of a bilge pump",
        (
            number_field("capacity", "Capacity of one pump", "m³/h", 0, 2000),
            _LENGTH,
            _BREADTH,
            _DEPTH,
        ),
        SOURCE,
        judge_capacity,
        "Power bilge pumps of ships of 15 to 150 m, 0 to 2000 m³/h each.",
        _CHECKED,
        bands=capacity_bands,
    ),
)
