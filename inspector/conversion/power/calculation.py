"""The power plant as calculated from its particulars: balances, forces and single failures."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Default, Figure, Gap, no_figure, unique
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.span import Span
from inspector.conversion.power.cascade_failure import after_failure, islands_of
from inspector.conversion.power.dp_requirements import (
    CLASSES,
    DpRequirement,
    dp_requirements,
    text_for,
)
from inspector.conversion.power.holding.failure_case import (
    FailureCase,
    LoadLimits,
    Scenario,
    Supply,
)
from inspector.conversion.power.holding.holding_power import Outcome, Scenarios, outcome, outcomes
from inspector.conversion.power.holding.polar import supplies_at
from inspector.conversion.power.holding.wind_scenarios import (
    load_limits,
    read_exposure,
    thrust_scenarios,
)
from inspector.conversion.power.island_balance import balances_by_island
from inspector.conversion.power.load_balance import Balance
from inspector.conversion.power.particulars import BOARD, EXPOSURE
from inspector.conversion.power.plant import Plant
from inspector.conversion.power.plant_rows import PlantParticulars, read_plant
from inspector.criteria.core.source import Source


@dataclass(frozen=True)
class PowerResults:
    """All that is calculated of one inspection's power plant, before it is put into words.

    Parameters
    ----------
    particulars : PlantParticulars
    board : Row
        The row of the main board and the shore connection.
    present : tuple of Balance
        By condition and island, with the loads there are now.
    converted : tuple of Balance
        By condition and island, with the new loads as well.
    thrusts : tuple of Figure
        The full thrust of each thruster [kN].
    limits : LoadLimits
    wind : float or None
        Wind to be withstood [m/s].
    intact : Outcome or None
        The plant as inspected; None without thrusters.
    failures : tuple of Outcome
        Every single failure, worst first; empty without thrusters.
    dp_requirements : tuple of DpRequirement
    dp_text : Source or None
        The text that the DP class is judged by.
    defaults : tuple of Default
    gaps : tuple of Gap
    faults : tuple of str
    """

    particulars: PlantParticulars
    board: Row
    present: tuple[Balance, ...] = ()
    converted: tuple[Balance, ...] = ()
    thrusts: tuple[Figure, ...] = ()
    limits: LoadLimits = LoadLimits()
    wind: float | None = None
    intact: Outcome | None = None
    failures: tuple[Outcome, ...] = ()
    dp_requirements: tuple[DpRequirement, ...] = ()
    dp_text: Source | None = None
    defaults: tuple[Default, ...] = ()
    gaps: tuple[Gap, ...] = ()
    faults: tuple[str, ...] = ()

    @property
    def plant(self) -> Plant:
        """The elements of the plant."""
        return self.particulars.plant

    @property
    def has_input(self) -> bool:
        """Whether any set, thruster or load is typed."""
        return bool(self.plant.sets or self.plant.thrusters or self.particulars.consumers)

    @property
    def worst(self) -> Outcome | None:
        """The worst single failure."""
        return self.failures[0] if self.failures else None


def calculate(case: Case) -> PowerResults:
    """Return the power plant of one inspection; what cannot be calculated is a gap or a fault.

    Parameters
    ----------
    case : Case

    Returns
    -------
    PowerResults

    References
    ----------
    See the modules of this chapter; each figure names its own source.
    """
    # Whatever cannot be read of the plant is a fault already here; the rest is calculated.
    particulars, board, row = read_plant(case), case.one(BOARD), case.one(EXPOSURE)
    plant, wind = particulars.plant, row.number("wind")
    exposure = read_exposure(case, row)
    limits, limit_defaults = load_limits(row, board.number("power_factor"), plant)
    thrust = thrust_scenarios(plant, exposure.exposure)
    common = {
        "particulars": particulars,
        "board": board,
        "thrusts": thrust.thrusts,
        "limits": limits,
        "wind": wind,
        "faults": (*particulars.faults, *exposure.faults),
    }
    # Without thrusters there is no station to keep, and no failure is worth its search.
    if thrust.scenarios is None:
        return PowerResults(
            **common, **_balances(particulars, board, {}), gaps=_plant_gaps(particulars)
        )
    failures = outcomes(plant, thrust.scenarios, wind, limits)
    gaps = exposure.gaps if wind is not None else (*exposure.gaps, _wind_gap())
    drawn = dict.fromkeys(islands_of(plant), no_figure("thrusters", "kW", gaps))
    if exposure.exposure is not None and wind is not None:
        drawn = _drawn_by_thrusters(plant, thrust.scenarios, wind, limits)
    requirements, text = _dp_requirements(case, plant, failures)
    return PowerResults(
        **common,
        **_balances(particulars, board, drawn),
        intact=outcome(plant, thrust.scenarios, (), wind, limits),
        failures=failures,
        dp_requirements=requirements,
        dp_text=text,
        defaults=unique(limit_defaults, thrust.defaults, exposure.defaults),
        gaps=(*_plant_gaps(particulars), *gaps),
    )


def _plant_gaps(particulars: PlantParticulars) -> tuple[Gap, ...]:
    """Return which tables of the plant are empty, and what cannot be calculated without them."""
    plant = particulars.plant
    gaps = []
    # Named one by one, since each is found in another place aboard.
    if not plant.sets:
        why = "none is typed, so no power can be calculated; take them from the plates"
        gaps.append(Gap("generating sets", why))
    if not particulars.consumers:
        why = (
            "none is typed, so no demand can be calculated; "
            "take them from the load balance or the meters"
        )
        gaps.append(Gap("electrical loads", why))
    if not plant.thrusters:
        why = "none is typed, so station keeping cannot be calculated"
        gaps.append(Gap("thrusters", why))
    elif not plant.dependencies:
        why = (
            "none is typed: day tanks, cooling pumps, 24 V boards and rooms "
            "may tie together what the board keeps apart"
        )
        gaps.append(Gap("shared dependencies", why))
    return tuple(gaps)


def _wind_gap() -> Gap:
    """Return the gap of a wind that nobody named."""
    why = (
        "without it only the most wind can be calculated, "
        "not whether station is kept after a failure"
    )
    return Gap("wind to be withstood", why)


def _drawn_by_thrusters(
    plant: Plant, scenarios: Scenarios, wind: float, limits: LoadLimits
) -> dict[frozenset[str], Figure]:
    """Return the power that thrusters draw from each island at a wind [m/s], nothing failed."""
    intact = after_failure(plant)
    tried = [
        (scenario, supplies_at(FailureCase(plant, intact, scenario, limits), wind))
        for scenario in scenarios
    ]
    formula = "least power that balances, rated × (T / T full) to the power of 1.5 / efficiency"
    drawn = {}
    for island in islands_of(plant):
        powers = [_added(plant, scenario, supplies, island) for scenario, supplies in tried]
        span = Span(min(powers), powers[1], max(powers))
        drawn[island] = Figure("thrusters", span, "kW", formula)
    return drawn


def _added(
    plant: Plant, scenario: Scenario, supplies: Iterable[Supply], island: frozenset[str]
) -> float:
    """Return what thrusters add to the loads of an island [kW], losses of the drives included."""
    # Hotel loads are in the demand already, so that only what thrusters add is counted here.
    return sum(
        supply.load - scenario.hotel * sum(plant.hotel.get(bus, 0.0) for bus in supply.places)
        for supply in supplies
        if supply.places <= island
    )


def _balances(
    particulars: PlantParticulars, board: Row, drawn: Mapping[frozenset[str], Figure]
) -> dict[str, tuple[Balance, ...]]:
    """Return the balances with the present and with all loads; drawn is empty without thrusters."""
    plant, factor = particulars.plant, board.number("power_factor")
    # With every set out of order there is no largest one to stop.
    if not any(generator.counts for generator in plant.sets):
        return {}
    # The same sets against two lists: as she is, and with what the conversion adds.
    lists = {"present": particulars.present_consumers, "converted": particulars.consumers_after}
    return {
        name: balances_by_island(plant, consumers, drawn, factor)
        for name, consumers in lists.items()
    }


def _dp_requirements(
    case: Case, plant: Plant, failures: Sequence[Outcome]
) -> tuple[tuple[DpRequirement, ...], Source | None]:
    """Return the requirements of the vessel's class, and the text that applies by her keel."""
    vessel = case.assessment.vessel
    number, built = (str(vessel.get(name, "")).strip() for name in ("dp_class", "built"))
    # Most workboats have no class of positioning, and nothing is required of them.
    if number not in CLASSES:
        return (), None
    try:
        keel = date.fromisoformat(built) if built else None
    except ValueError:
        # A year alone is no day, so neither text can be chosen by it.
        keel = None
    return dp_requirements(number, plant, failures), text_for(keel)
