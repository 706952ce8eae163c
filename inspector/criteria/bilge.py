"""Bilge systems: bore of main and branch, capacity and number of pumps, by the formulas of the convention."""

import math
from decimal import ROUND_HALF_UP, Decimal

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

SOURCE = Source(
    "SOLAS chapter II-1, regulation 35-1, bilge pumping arrangements",
    "opening read, formulas as class rules quote them",
    "bore of main and branch, 2 m/s, number of pumps",
    "memory",
)
LEAST_BRANCH = 50.0  # mm
CAPACITY = 5.66e-3  # m³/h for each mm² of bore: 2 m/s as class rules round it
PUMPS = {"cargo": 2, "passenger": 3, "passenger, numeral 30 or more": 4}
GUESTS = "More than 12 passengers make her a passenger ship: one pump more, and more suctions."


def main_bore(length: float, breadth: float, depth: float) -> float:
    """Return the least bore of the bilge main [mm] for length, breadth and depth [m]: 25 + 1.68 sqrt(L (B + D)).

    Examples
    --------
    >>> round(main_bore(64, 16, 7), 2)
    89.46
    """
    return 25 + 1.68 * math.sqrt(length * (breadth + depth))


def branch_bore(space_length: float, breadth: float, depth: float) -> float:
    """Return the least bore of a branch [mm] for the length of its space [m]: 25 + 2.16 sqrt(l (B + D)), at least 50."""
    return max(LEAST_BRANCH, 25 + 2.16 * math.sqrt(space_length * (breadth + depth)))


def pump_capacity(length: float, breadth: float, depth: float) -> float:
    """Return the least capacity of each pump [m³/h]: 2 m/s through the main's required bore, 0.00566 d²."""
    return CAPACITY * main_bore(length, breadth, depth) ** 2


def _rounded(bore: float) -> float:
    """To the nearest 5 mm, as class rules allow, where that is less."""
    nearest = float((exact(bore) / 5).quantize(Decimal(1), ROUND_HALF_UP) * 5)
    return min(bore, nearest)


def _bore_ladder(bore: float, least: float = 0) -> Ladder:
    return stairs(
        "mm",
        below(max(least, _rounded(bore)), "too narrow", "poor", "too narrow"),
        below(bore, "enough if rounded", "fair", "enough only as rounded to the nearest 5 mm"),
        beyond("wide enough", "good", "wide enough"),
    )


def main_ladder(length: float, breadth: float, depth: float) -> Ladder:
    """Bands of the bore of the bilge main [mm]."""
    return _bore_ladder(main_bore(length, breadth, depth))


def judge_main(bore: float, length: float, breadth: float, depth: float) -> Judgement:
    """Judge the bore of the bilge main.

    Parameters
    ----------
    bore [mm], inside, 10 to 500; length, breadth, depth [m], depth to the bulkhead deck.

    References
    ----------
    SOLAS II-1/35-1: 25 + 1.68 sqrt(L (B + D)) mm (formula as class rules quote it: memory).
    """
    limit = main_bore(length, breadth, depth)
    return told(
        "bilge-main-bore",
        main_ladder(length, breadth, depth).step(bore),
        f"A bilge main of {show(bore, 'mm')}, against at least {show(limit, 'mm', 1)},",
        (bore, "mm", limit),
        SOURCE,
        ("Inside diameter, not the nominal size; the nearest standard size may be allowed by flag and class.",),
        at_least=True,
    )


def branch_ladder(space_length: float, breadth: float, depth: float) -> Ladder:
    """Bands of the bore of a bilge branch [mm]."""
    return _bore_ladder(branch_bore(space_length, breadth, depth), LEAST_BRANCH)


def judge_branch(bore: float, space_length: float, breadth: float, depth: float) -> Judgement:
    """Judge the bore of a branch suction.

    Parameters
    ----------
    bore [mm], inside, 10 to 500; space_length [m] of the compartment; breadth, depth [m] of the ship.

    References
    ----------
    SOLAS II-1/35-1: 25 + 2.16 sqrt(l (B + D)) mm, at least 50 mm (memory).
    """
    limit = branch_bore(space_length, breadth, depth)
    return told(
        "bilge-branch-bore",
        branch_ladder(space_length, breadth, depth).step(bore),
        f"A branch suction of {show(bore, 'mm')}, against at least {show(limit, 'mm', 1)},",
        (bore, "mm", limit),
        SOURCE,
        ("Inside diameter; each well is also tried by pumping it dry.",),
        at_least=True,
    )


def capacity_ladder(length: float, breadth: float, depth: float) -> Ladder:
    """Two bands of the capacity of one bilge pump [m³/h]."""
    return stairs(
        "m³/h",
        below(pump_capacity(length, breadth, depth), "too small", "poor", "too small"),
        beyond("large enough", "good", "large enough"),
    )


def judge_capacity(capacity: float, length: float, breadth: float, depth: float) -> Judgement:
    """Judge the capacity of one bilge pump.

    Parameters
    ----------
    capacity [m³/h] of one pump, 0 to 2000; length, breadth, depth [m], depth to the bulkhead deck.

    References
    ----------
    SOLAS II-1/35-1: 2 m/s through the main of the required bore; 0.00566 d² m³/h as class rules round it (memory).
    """
    limit = pump_capacity(length, breadth, depth)
    return told(
        "bilge-pump-capacity",
        capacity_ladder(length, breadth, depth).step(capacity),
        f"A bilge pump of {show(capacity, 'm³/h')}, against at least {show(limit, 'm³/h', 2)} for each pump,",
        (capacity, "m³/h", limit),
        SOURCE,
        ("By the plate; a worn pump gives less: time how fast a well falls.", GUESTS),
        at_least=True,
    )


def count_ladder(ship: str) -> Ladder:
    """Two bands of the number of power bilge pumps."""
    return stairs("", below(PUMPS[ship], "too few", "poor", "too few"), beyond("enough", "good", "enough"))


def judge_count(pumps: int, ship: str) -> Judgement:
    """Judge the number of power pumps on the bilge main.

    Parameters
    ----------
    pumps : power pumps connected to the bilge main, 0 to 20; ship : cargo, passenger, or passenger with a numeral of 30 or more.

    References
    ----------
    SOLAS II-1/35-1: two for a cargo ship, three for a passenger ship, four where the numeral is 30 or more (memory).
    """
    limit = PUMPS[ship]
    return told(
        "bilge-pump-count",
        count_ladder(ship).step(pumps),
        f"A count of {show(pumps, '')} power bilge pumps, against at least {limit} for a {ship.partition(',')[0]} ship,",
        (pumps, "", limit),
        SOURCE,
        (GUESTS,),
        at_least=True,
    )


_BORE = Input("bore", "Inside diameter", "number", "mm", low=10, high=500)
_LENGTH = Input("length", "Length of the ship", "number", "m", low=15, high=150)
_BREADTH = Input("breadth", "Breadth of the ship", "number", "m", low=4, high=40)
_DEPTH = Input("depth", "Depth to the bulkhead deck", "number", "m", low=1.5, high=20)
_CHECKED = "Three hulls by our own arithmetic on the formula; no published worked example was found."

CRITERIA = (
    Criterion(
        "bilge-main-bore",
        "Bore of the bilge main",
        (_BORE, _LENGTH, _BREADTH, _DEPTH),
        SOURCE,
        judge_main,
        "Ships of 15 to 150 m with one bilge main, bores of 10 to 500 mm.",
        _CHECKED,
        ladder=main_ladder,
    ),
    Criterion(
        "bilge-branch-bore",
        "Bore of a branch bilge suction",
        (_BORE, Input("space_length", "Length of the space", "number", "m", low=1, high=60), _BREADTH, _DEPTH),
        SOURCE,
        judge_branch,
        "Branch suctions of cargo and machinery spaces of 1 to 60 m, bores of 10 to 500 mm.",
        _CHECKED,
        ladder=branch_ladder,
    ),
    Criterion(
        "bilge-pump-capacity",
        "Capacity of a bilge pump",
        (Input("capacity", "Capacity of one pump", "number", "m³/h", low=0, high=2000), _LENGTH, _BREADTH, _DEPTH),
        SOURCE,
        judge_capacity,
        "Power bilge pumps of ships of 15 to 150 m, 0 to 2000 m³/h each.",
        _CHECKED,
        ladder=capacity_ladder,
    ),
    Criterion(
        "bilge-pump-count",
        "Number of power bilge pumps",
        (Input("pumps", "Power pumps on the bilge main", "whole", low=0, high=20), Input("ship", "Kind of ship", "choice", choices=tuple(PUMPS))),
        SOURCE,
        judge_count,
        "Cargo and passenger ships with 0 to 20 power pumps on the bilge main.",
        "Each number from both sides by our own reading of a recalled rule.",
        ladder=count_ladder,
    ),
)
