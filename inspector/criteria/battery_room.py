"""Air for the room that batteries stand in: enough to dilute the gas that charging makes."""

from inspector.criteria.exact import exact
from inspector.criteria.judgement import Criterion, Input, Judgement
from inspector.criteria.ladder import Ladder, below, beyond, stairs
from inspector.criteria.source import Source
from inspector.criteria.telling import told
from inspector.quantities import show

AIR = Source("EN 62485-2, ventilation of stationary batteries", "edition not read", "air flow by gassing current", "memory")
GASSING = {"valve-regulated, float": 1, "valve-regulated, boost": 8, "vented, float": 5, "vented, boost": 20}  # mA for each Ah


def air_needed(cells: int, capacity_ah: int, charging: str) -> float:
    """Return the air flow [m³/h] that dilutes the gas of so many cells. EN 62485-2 (memory): 0.05 n I C / 1000.

    Examples
    --------
    >>> air_needed(12, 200, "valve-regulated, float"), air_needed(12, 200, "vented, boost")
    (0.12, 2.4)
    """
    return float(exact(0.05) * cells * GASSING[charging] * capacity_ah / 1000)


def air_ladder(cells: int, capacity: int, charging: str) -> Ladder:
    """The bands of the air flow [m³/h] through a battery space. EN 62485-2 (memory)."""
    need = air_needed(cells, capacity, charging)
    return stairs(
        "m³/h",
        below(need, "too little air", "failed", "less than the gas of charging asks for"),
        beyond("enough air", "good", "what the gas of charging asks for"),
    )


def judge_air(airflow: float, cells: int, capacity: int, charging: str) -> Judgement:
    """Judge the ventilation of a battery space against the gas that charging makes.

    Parameters: airflow [m³/h] of the fan or measured; cells : 2 V cells in series; capacity : Ah; charging : one of GASSING.

    References: EN 62485-2 (memory).
    """
    need = air_needed(cells, capacity, charging)
    said = f"{show(airflow, 'm³/h')} for {cells} cells of {capacity} Ah ({charging}), which need {show(need, 'm³/h')},"
    notes = ("No flame, spark or telephone in a battery space; ask the crew to prove that the fan runs before you look in.",)
    return told("battery-ventilation", air_ladder(cells, capacity, charging).step(airflow), said, (airflow, "m³/h", need), AIR, notes, at_least=True)


CRITERIA = (
    Criterion(
        "battery-ventilation",
        "Air flow through a battery space",
        (
            Input("airflow", "Air flow", "number", "m³/h", low=0, high=100_000),
            Input("cells", "2 V cells in series", "whole", low=1, high=1000),
            Input("capacity", "Capacity in Ah", "whole", low=1, high=10_000),
            Input("charging", "Kind of cell and charging", "choice", choices=tuple(GASSING)),
        ),
        AIR,
        judge_air,
        "Lead-acid batteries of 1 to 1000 cells and 1 to 10 000 Ah.",
        "Two batteries by our own arithmetic on the recalled formula.",
        ladder=air_ladder,
    ),
)
