"""Engines as they are given, with the points of their own consumption."""

from dataclasses import dataclass

from inspector.conversion.core.bounds import BadInput, one_of, plain
from inspector.values.formatting import show
from inspector.values.text import capital

LOWEST_LOAD, HIGHEST_LOAD = 0.05, 1.1
# Lower heat of combustion of marine fuel, MJ/kg.
HEAT = 42.7
LIKELY_EFFICIENCY = (0.25, 0.50)


@dataclass(frozen=True)
class ConsumptionPoint:
    """One point of an engine's own consumption.

    Parameters
    ----------
    load : float
        0.05 to 1.1 [fraction of rated power].
    rate : float
        [g/kWh]
    measured : bool
        False where the maker declared it.

    Raises
    ------
    BadInput
        The load is outside its range, or the rate is no efficiency of a diesel engine.
    """

    load: float
    rate: float
    measured: bool = False

    def __post_init__(self) -> None:
        plain("consumption point: load", self.load, LOWEST_LOAD, HIGHEST_LOAD)
        plain("consumption point: rate", self.rate, 1, 1000, "g/kWh")
        # Litres typed for grams, or a rate for all engines, show up as an impossible efficiency.
        efficiency, (low, high) = brake_efficiency(self.rate), LIKELY_EFFICIENCY
        if not low <= efficiency <= high:
            typed = show(self.rate, "g/kWh")
            sentence = (
                f"Consumption point: rate of {typed} is an efficiency of {efficiency:.2f}, "
                f"and a diesel has {low} to {high}."
            )
            raise BadInput(sentence, field="consumption point: rate", value=self.rate)


@dataclass(frozen=True)
class Engine:
    """One or more like engines.

    Parameters
    ----------
    name : str
    power : float
        Rated power of each, 1 to 30 000 [kW].
    count : int
        1 to 12.
    rpm : float or None
        Rated speed, 300 to 3000 [rpm].
    built : int or None
        Year.
    points : tuple of ConsumptionPoint
        Its own consumption, each load once.
    kind : str
        "main" or "auxiliary".

    Raises
    ------
    BadInput
        The power is missing, a value is outside its range, or a load is given twice.
    """

    name: str
    power: float
    count: int = 1
    rpm: float | None = None
    built: int | None = None
    points: tuple[ConsumptionPoint, ...] = ()
    kind: str = "main"

    def __post_init__(self) -> None:
        # Asked for here and not by the type: a row of the table may lack it, and the sentence must
        # name the engine.
        if self.power is None:
            sentence = (
                f"{capital(self.name)}: power is not given, "
                "and without it no load and no consumption can be calculated."
            )
            raise BadInput(sentence, field=f"{self.name}: power", value=None)
        plain(f"{self.name}: power", self.power, 1, 30_000, "kW")
        plain(f"{self.name}: number of engines", self.count, 1, 12)
        one_of(f"{self.name}: kind", self.kind, ("main", "auxiliary"))
        if self.rpm is not None:
            plain(f"{self.name}: speed", self.rpm, 300, 3000, "rpm")
        if self.built is not None:
            plain(f"{self.name}: year built", self.built, 1930, 2100)
        # Two rates at one load would make the line between them vertical.
        if len({point.load for point in self.points}) < len(self.points):
            sentence = f"{self.name}: consumption points hold one load twice; give each load once."
            raise BadInput(sentence, field=f"{self.name}: points", value=self.points)


def brake_efficiency(rate: float) -> float:
    """Return the efficiency of an engine by its consumption: 3600 / (rate × 42.7 MJ/kg).

    Parameters
    ----------
    rate : float
        [g/kWh]

    Returns
    -------
    float
        [fraction]

    References
    ----------
    Lower heat of combustion of marine fuel 42.7 MJ/kg (common practice).
    """
    return 3600 / (rate * HEAT)
