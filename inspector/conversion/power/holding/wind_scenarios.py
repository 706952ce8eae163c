"""The hull in wind and current as typed, and the scenarios that failures are calculated in."""

from dataclasses import dataclass, replace

from inspector.conversion.core.bounds import or_default
from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Default, Figure, Gap, unique
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.ship_particulars import HYDROSTATICS
from inspector.conversion.core.side_area import side_area, sizes_built
from inspector.conversion.core.span import ConversionError
from inspector.conversion.core.things import read_things
from inspector.conversion.power.electrical_loads import ACCURACY
from inspector.conversion.power.holding.failure_case import ASTERN, LoadLimits, Scenario
from inspector.conversion.power.holding.holding_power import LIMIT, Scenarios
from inspector.conversion.power.holding.house_in_the_wind import with_house
from inspector.conversion.power.holding.station_keeping import (
    DRIVE,
    Exposure,
    beam_forces,
    head_forces,
)
from inspector.conversion.power.holding.thruster_thrust import full_thrust
from inspector.conversion.power.load_balance import assumed_power_factors, main_sets
from inspector.conversion.power.plant import Plant
from inspector.conversion.space.particulars import ENCLOSURES
from inspector.record.typed_values import typed_number
from inspector.values.units import convert

OF_THE_VESSEL = "as typed of the vessel, since the table of wind and current has none"
# Factor on the hotel loads in the worst, the likely and the best scenario.
HOTEL_FACTORS = (ACCURACY.value.high, 1.0, ACCURACY.value.low)


@dataclass(frozen=True)
class ExposureRead:
    """The hull in wind and current, as far as it is typed.

    Parameters
    ----------
    exposure : Exposure or None
        None where a size that is needed is missing or cannot be.
    gaps : tuple of Gap
    faults : tuple of str
    defaults : tuple of Default
        What of the house to be built was added to the areas.
    """

    exposure: Exposure | None
    gaps: tuple[Gap, ...] = ()
    faults: tuple[str, ...] = ()
    defaults: tuple[Default, ...] = ()


@dataclass(frozen=True)
class ThrustScenarios:
    """Thrusts and forces of a plant.

    Parameters
    ----------
    scenarios : tuple of Scenario or None
        The worst, the likely and the best; None where there is no thruster.
    thrusts : tuple of Figure
        The full thrust by thruster, in the direction in which it acts [kN].
    defaults : tuple of Default
    """

    scenarios: Scenarios | None
    thrusts: tuple[Figure, ...] = ()
    defaults: tuple[Default, ...] = ()


def read_exposure(case: Case, row: Row) -> ExposureRead:
    """Return the hull in wind and current.

    Parameters
    ----------
    case : Case
    row : Row
        The row of wind and current; sizes that it lacks come from the vessel.

    Returns
    -------
    ExposureRead

    References
    ----------
    As typed by the surveyor.
    """
    names = ("length", "breadth", "draught")
    sizes = {name: _size(case, row, name) for name in names}
    taken = tuple(
        Default(name, sizes[name], OF_THE_VESSEL, unit="m")
        for name in names
        if row.number(name) is None and sizes[name] is not None
    )
    booklet, built = case.one(HYDROSTATICS), sizes_built(read_things(case), case.rows(ENCLOSURES))
    area = side_area(booklet, row, built).area
    needed = {
        "length": sizes["length"],
        "draught": sizes["draught"],
        "side area in the wind": area,
    }
    why = "wind and current on the beam cannot be calculated without it"
    gaps = tuple(Gap(label, why) for label, value in needed.items() if value is None)
    if gaps:
        return ExposureRead(None, gaps)
    # A gap and no refusal: the beam is the harder case, and it can be calculated.
    if row.number("frontal") is None or sizes["breadth"] is None:
        why = "the wind from ahead cannot be calculated without them"
        gaps = (Gap("frontal area in the wind, and breadth", why),)
    try:
        exposure = _exposure(row, {**sizes, "lateral": row.number("lateral") or area})
        house = ()
        if row.number("lateral") is not None:
            between = booklet.number("lpp")
            midship = None if between is None else between / 2
            exposure, house = with_house(exposure, row, built, midship)
        # The booklet's table may have the greater area, and the wind is the same.
        return ExposureRead(replace(exposure, lateral=area), gaps, defaults=(*taken, *house))
    except ConversionError as problem:
        return ExposureRead(None, gaps, (str(problem),))


def _size(case: Case, row: Row, name: str) -> float | None:
    """Return a main dimension [m] as typed here, else as typed of the vessel."""
    typed = row.number(name)
    # The vessel's main dimensions were typed before; asking twice invites two answers.
    return typed_number(case.assessment.vessel.get(name)) if typed is None else typed


def _exposure(row: Row, sizes: dict[str, float | None]) -> Exposure:
    """Return the hull in wind and current, with the current from knots to m/s."""
    given = (
        "frontal",
        "x_wind",
        "wind_beam",
        "wind_head",
        "current_beam",
        "current_head",
        "waves",
    )
    current = row.number("current")
    return Exposure(
        **sizes,
        **{name: row.number(name) for name in given},
        x_current=row.number("x_current") or 0.0,
        current=None if current is None else convert(current, "kn", "m/s"),
    )


def load_limits(
    row: Row, power_factor: float | None, plant: Plant
) -> tuple[LoadLimits, tuple[Default, ...]]:
    """Return how far sets, engines and drives may be used, and the defaults in that.

    Parameters
    ----------
    row : Row
        The row of wind and current.
    power_factor : float or None
        Power factor of the load as read at the board.
    plant : Plant

    Returns
    -------
    tuple of (LoadLimits, tuple of Default)

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.

    References
    ----------
    Efficiency of 0.92, limit of 0.9 (common practice, no source).
    """
    efficiency, drive_defaults = or_default(row.number("efficiency"), DRIVE)
    share, limit_defaults = or_default(row.number("limit"), LIMIT)
    plates = ()
    if power_factor is not None:
        # The plates' power factor matters only beside a load's that was read.
        plates = assumed_power_factors(main_sets(plant.sets), power_factor)
    limits = LoadLimits(efficiency.middle, share.middle, power_factor)
    return limits, (*drive_defaults, *limit_defaults, *plates)


def thrust_scenarios(plant: Plant, exposure: Exposure | None) -> ThrustScenarios:
    """Return the scenarios of a plant: the least thrust meets the greatest force, and so on.

    Parameters
    ----------
    plant : Plant
    exposure : Exposure or None

    Returns
    -------
    ThrustScenarios

    Raises
    ------
    BadInput
        A value that cannot be; the field is named.

    References
    ----------
    Model of our own.
    """
    units = plant.thrusters
    if not units:
        return ThrustScenarios(None)
    across = {unit.name: full_thrust(unit, sideways=True) for unit in units}
    along = {unit.name: full_thrust(unit, sideways=False) for unit in units}
    beams, heads, defaults = (None,) * 3, (None,) * 3, ()
    if exposure is not None:
        beams, defaults = beam_forces(exposure)
        from_ahead = head_forces(exposure)
        if from_ahead is not None:
            heads, defaults = from_ahead[0], (*defaults, *from_ahead[1])
    # The least thrust meets the greatest force and the greatest loads, and the other way round.
    ends = zip(
        ("low", "point", "high"), reversed(beams), reversed(heads), HOTEL_FACTORS, strict=True
    )
    scenarios = tuple(
        Scenario(_at(across, end), _at(along, end), beam, head, hotel)
        for end, beam, head, hotel in ends
    )
    thrusts = tuple(across[unit.name] if unit.across else along[unit.name] for unit in units)
    assumed = any(unit.is_propeller and unit.astern is None for unit in units)
    astern = (ASTERN,) if assumed else ()
    return ThrustScenarios(scenarios, thrusts, unique(defaults, (ACCURACY,), astern))


def _at(thrusts: dict[str, Figure], end: str) -> dict[str, float]:
    """Return the thrusts by unit at one end of their spans, or at the likely value [kN]."""
    return {name: getattr(figure.span, end) for name, figure in thrusts.items()}
