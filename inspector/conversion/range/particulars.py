"""What range and endurance are calculated from: their tables, and typed rows as inputs."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from inspector.conversion.core.bounds import BadInput
from inspector.conversion.core.case import Case
from inspector.conversion.core.engine_rows import ENGINES, GENERATOR, PROPELLER, engines_of_plant
from inspector.conversion.core.figure import Gap
from inspector.conversion.core.particulars import Row
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.core.tank_rows import holds_after, tanks_once
from inspector.conversion.hull.hull_form import TUNNEL, Particulars
from inspector.conversion.hull.hull_geometry import Tunnel
from inspector.conversion.hull.propulsive_power import Propulsion
from inspector.conversion.power.electrical_loads import demand
from inspector.conversion.power.particulars import ENGINES as PLANT_ENGINES
from inspector.conversion.power.particulars import GENERATORS as PLANT_SETS
from inspector.conversion.power.plant_rows import read_plant
from inspector.conversion.range.compared.two_tables import (
    hotel_loads_that_differ,
    plants_that_differ,
    stores_in_tanks,
)
from inspector.conversion.range.economical_speed import BriefBox
from inspector.conversion.range.engines import ConsumptionPoint, Engine
from inspector.conversion.range.engines_together import together
from inspector.conversion.range.fuel.fuel_by_speed import EVERYTHING, Plant, point_of_burn
from inspector.conversion.range.fuel.fuel_on_board import FuelTank
from inspector.conversion.range.hotel_load import Hotel
from inspector.conversion.range.range_tables import (
    BY_SHAFT,
    PROPULSION,
    SPEEDS,
    STORES,
)
from inspector.conversion.range.speed_points import SpeedPoint
from inspector.conversion.range.speed_power import PowerCurves, power_curves
from inspector.conversion.range.stores import Stores
from inspector.conversion.stability.floating_condition import displacement
from inspector.conversion.stability.particulars import read_weights
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.record.typed_values import typed_number
from inspector.values.formatting import show
from inspector.values.quantity import Cell

# The loads at which a table of engines asks for a consumption, percent of rated power.
LOADS = (50, 75, 100)

Made = TypeVar("Made")


@dataclass(frozen=True)
class Inputs:
    """All that was typed, as the calculation takes it.

    Parameters
    ----------
    brief : BriefBox
    curves : PowerCurves
        Power by speed, by every method that the particulars allow.
    main, generator : Engine or None
    hotel : Hotel
    tanks : tuple of FuelTank
        Those that hold fuel after the conversion.
    stores : Stores
    running : int or None
        Main engines in use; None for all.
    sea_margin, reserve : float or None
        Shares: 1.15 is a margin of 15 %, 0.10 a reserve of 10 %. None for the usual ones.
    faults : tuple of str
        What could not be used, one sentence each.
    gaps : tuple of Gap
        What is to be asked about the engines, and what was taken from elsewhere.
    shaft_generator, station_fuel : float or None
        Rating of shaft generators that carry the hotel load at sea [kW], and what is burnt on
        station [t/day].
    told : tuple of Cell
        Where two tables disagree.
    """

    brief: BriefBox
    curves: PowerCurves
    main: Engine | None
    generator: Engine | None
    hotel: Hotel
    tanks: tuple[FuelTank, ...]
    stores: Stores
    running: int | None
    sea_margin: float | None
    reserve: float | None
    faults: tuple[str, ...]
    gaps: tuple[Gap, ...] = ()
    shaft_generator: float | None = None
    station_fuel: float | None = None
    told: tuple[Cell, ...] = ()


class _Reader:
    """Makes inputs of typed rows; what is refused becomes a sentence and counts as not given."""

    def __init__(self) -> None:
        self.faults: list[str] = []

    def make(self, build: Callable[..., Made], *arguments, otherwise=None) -> Made:
        """Return what is built, or what counts where it is refused."""
        try:
            return build(*arguments)
        except ConversionError as problem:
            self.faults.append(str(problem))
            return otherwise

    def make_all(self, build: Callable[[Row], Made], rows) -> tuple[Made, ...]:
        """Return what is built of each row, without the refused ones."""
        made = [self.make(build, row) for row in rows]
        return tuple(item for item in made if item is not None)


def read_inputs(case: Case) -> Inputs:
    """Return all that was typed as the calculation takes it.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Inputs
    """
    read, passage = _Reader(), case.one(PROPULSION)
    engines, engine_gaps = _engines(case, read)
    main, generator = engines.get(PROPELLER), engines.get(GENERATOR)
    hotel = read.make(_hotel, passage, case, otherwise=Hotel())
    shaft = passage.number("shaft_generator") if passage["hotel_from"] == BY_SHAFT else None
    plant = None if main is None else Plant(main, generator, hotel, passage["running"], shaft)
    # Each part on its own, so that one refused engine does not take the tanks with it.
    points = read.make_all(lambda row: _speed_point(row, plant), case.rows(SPEEDS))
    known = read.make(_hull, case, case.one(HYDROSTATICS), passage)
    propulsion = read.make(_propulsion, passage)
    service = passage.number("service")
    curves = read.make(power_curves, points, known, propulsion, service, otherwise=PowerCurves(()))
    rows, twice = tanks_once(case.rows(TANKS))
    tanks = read.make_all(_fuel_tank, [row for row in rows if holds_after(row) == "fuel"])
    typed = read.make(_stores, case.one(STORES), otherwise=Stores())
    stores, told = stores_in_tanks(typed, rows)
    margin, reserve = passage.number("sea_margin"), passage.number("reserve")
    return Inputs(
        brief=read.make(_brief, case, otherwise=BriefBox()),
        curves=curves,
        main=main,
        generator=generator,
        hotel=hotel,
        tanks=tanks,
        stores=stores,
        running=passage["running"],
        # Typed as a surcharge in %, calculated with as a factor.
        sea_margin=None if margin is None else 1 + margin / 100,
        reserve=None if reserve is None else reserve / 100,
        faults=(*read.faults, *twice),
        gaps=(*engine_gaps, *_taken_from_the_vessel(case)),
        shaft_generator=shaft,
        station_fuel=passage.number("station_fuel"),
        told=(*told, *plants_that_differ(case), *hotel_loads_that_differ(case, hotel)),
    )


def _engines(case: Case, read: _Reader) -> tuple[dict[str, Engine | None], tuple[Gap, ...]]:
    """Return main engines and sets, each typed once, in this table or among the power plant."""
    rows = [row for row in case.rows(ENGINES) if row.text("out") != "yes"]
    rows = [row for row in rows if row.text("emergency") != "yes"]
    plant = engines_of_plant(case.rows(PLANT_SETS), case.rows(PLANT_ENGINES))
    found: dict[str, Engine | None] = {}
    gaps: list[Gap] = []
    for drives in (PROPELLER, GENERATOR):
        typed = [row for row in rows if row.text("drives") == drives]
        among = typed or [row for row in plant if row.text("drives") == drives]
        made = read.make_all(_driving_engine, among)
        found[drives], missing = together(engine for _, engine in made)
        gaps += missing
    return found, tuple(gaps)


def _taken_from_the_vessel(case: Case) -> tuple[Gap, ...]:
    """Return which main dimensions the table of hydrostatics lacks and the vessel's field gives."""
    booklet, vessel = case.one(HYDROSTATICS), case.assessment.vessel
    why = "the vessel's own field is taken, which may be another draught or breadth"
    draught = any(booklet.number(name) for name in ("draught", "draught_fore", "draught_aft"))
    lacking = {"draught": draught, "breadth": booklet.number("breadth")}
    return tuple(
        Gap(f"{name} in the table of hydrostatics", why)
        for name, typed in lacking.items()
        if not typed and typed_number(vessel.get(name), 0.1)
    )


def _speed_point(row: Row, plant: Plant | None) -> SpeedPoint:
    """Return a point of speed [kn] and power [kW] of a row, which gives fuel a day or power."""
    # None where nobody said: current may then be in the speed, and the result says so.
    through = {"through the water": True, "over the ground": False}.get(row.text("over"))
    speed, power, displacement = (row.number(name) for name in ("speed", "power", "displacement"))
    fuel = row.number("fuel")
    if power is None and fuel is None:
        problem = f"Speed of {show(speed, 'kn')}: give fuel a day or shaft power beside it."
        raise BadInput(problem, field="speed point: power", value=None)
    if fuel is None:
        return SpeedPoint(speed, power, displacement, row["kind"], through)
    # Nobody runs a trial of a whole day: fuel a day is of a log, with its weather.
    point = SpeedPoint(speed, power or 1.0, displacement, row["kind"] or "log", through)
    if power is not None:
        return point
    return point_of_burn(point, plant, fuel, row.text("burns", EVERYTHING))


def _hull(case: Case, booklet: Row, passage: Row) -> Particulars:
    """Return what is known of the hull, from booklet, passage and vessel."""
    # The booklet is closer to this condition than what was typed of the vessel.
    draught = booklet.number("draught") or typed_number(case.assessment.vessel.get("draught"), 0.1)
    before = booklet.number("displacement")
    after = displacement(StartingCondition(booklet), read_weights(case).weights).span
    return Particulars(
        breadth=booklet.number("breadth") or typed_number(case.assessment.vessel.get("breadth"), 1),
        draught_fore=booklet.number("draught_fore") or draught,
        draught_aft=booklet.number("draught_aft") or draught,
        # As she will be: power is asked for after the changes.
        displacement=before if after is None else after,
        length_waterline=booklet.number("lwl"),
        length_between=booklet.number("lpp"),
        waterplane=booklet.number("cw"),
        transom_area=passage.number("transom"),
        bulb_area=passage.number("bulb"),
        appendage_area=passage.number("appendages"),
        tunnels=_tunnels(passage),
    )


def _tunnels(passage: Row) -> tuple[Tunnel, ...]:
    """Return the thruster tunnels as typed."""
    diameter, count = passage.number("tunnel_diameter"), passage["tunnels"]
    if diameter is None:
        return ()
    return (Tunnel(diameter, TUNNEL.value),) * (1 if count is None else count)


def _propulsion(passage: Row) -> Propulsion:
    """Return the propellers as typed; None where something is not known."""
    return Propulsion(
        screws=passage["screws"],
        diameter=passage.number("diameter"),
        pitch_ratio=passage.number("pitch_ratio"),
        nozzles=_yes(passage, "nozzles"),
        open_water=passage.number("open_water"),
    )


def _driving_engine(row: Row) -> tuple[str, Engine]:
    """What an engine drives, and the engine."""
    measured = row.text("measured") == "measured on board"
    rates = [(load, row.number(f"rate_{load}")) for load in LOADS]
    points = tuple(
        ConsumptionPoint(load / 100, rate, measured) for load, rate in rates if rate is not None
    )
    drives = row.text("drives")
    engine = Engine(
        row.text("name"),
        row.number("power"),
        # A row without a count is one engine, as its plate is.
        row["count"] or 1,
        row.number("rpm"),
        row["year"],
        points,
        "main" if drives == "propeller" else "auxiliary",
    )
    return drives, engine


def _hotel(passage: Row, case: Case) -> Hotel:
    """Return the hotel load as typed [kW], at the switchboard by default, and the new loads."""
    where = passage.text("hotel_at") or "switchboard"
    new = read_plant(case).new_consumers
    at_sea, at_anchor = (demand(new, condition).span for condition in ("sea", "harbour"))
    return Hotel(
        passage.number("hotel_sea"),
        passage.number("hotel_anchor"),
        where,
        # A new load without a demand is named as a gap by the chapter on power.
        Span.exact(0.0) if at_sea is None else at_sea,
        Span.exact(0.0) if at_anchor is None else at_anchor,
    )


def _fuel_tank(row: Row) -> FuelTank:
    """Return a fuel tank of a row; its unusable rest is typed in %."""
    unusable = row.number("unusable")
    return FuelTank(
        row.text("name"),
        row.number("capacity"),
        "calibrated capacity",
        # What a converted tank holds now says nothing of the fuel that it will hold.
        row.number("density") if row.text("kind") == "fuel" else None,
        row.number("temperature") if row.text("kind") == "fuel" else None,
        # Typed as what is left in the tank, calculated with as what comes out of it.
        suction=None if unusable is None else 1 - unusable / 100,
    )


def _stores(row: Row) -> Stores:
    """Return the stores of a row; a number that is not typed stays None."""
    numbers = [field.name for field in STORES.columns if field.is_number]
    words = {"toilets": row["toilets"], "discharge": row["discharge"]}
    amounts = {name: row.number(name) for name in numbers}
    return Stores(**amounts, **words, compactor=_yes(row, "compactor"))


def _yes(row: Row, name: str) -> bool | None:
    # Left empty is neither: nobody looked.
    return {"yes": True, "no": False}.get(row.text(name))


def _brief(case: Case) -> BriefBox:
    """Return what the brief asks: speed [kn], range [nmi], endurance [days], persons."""
    brief = case.assessment.brief
    persons = typed_number(brief.get("persons"), 1)
    return BriefBox(
        speed=typed_number(brief.get("speed"), 1),
        range=typed_number(brief.get("range"), 1),
        endurance=typed_number(brief.get("endurance"), 0.1),
        # A brief is typed freely, and "12.0" is twelve persons as well.
        persons=None if persons is None else int(persons),
        station=typed_number(brief.get("station"), 0),
    )
