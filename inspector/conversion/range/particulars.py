"""What range and endurance are calculated from: their tables, and typed rows as inputs."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TypeVar

from inspector.conversion.core.case import Case
from inspector.conversion.core.figure import Gap
from inspector.conversion.core.particulars import Row, Table, column
from inspector.conversion.core.ship_particulars import HYDROSTATICS, TANKS
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.hull.hull_form import Particulars
from inspector.conversion.hull.propulsive_power import Propulsion
from inspector.conversion.power.electrical_loads import demand
from inspector.conversion.power.plant_rows import read_plant
from inspector.conversion.range.economical_speed import BriefBox
from inspector.conversion.range.engines import ConsumptionPoint, Engine
from inspector.conversion.range.engines_together import together
from inspector.conversion.range.fuel_on_board import FuelTank, each_once
from inspector.conversion.range.hotel_load import Hotel
from inspector.conversion.range.speed_points import SpeedPoint
from inspector.conversion.range.speed_power import PowerCurves, power_curves
from inspector.conversion.range.stores import Stores
from inspector.conversion.stability.floating_condition import displacement
from inspector.conversion.stability.particulars import read_weights
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.record.typed_values import typed_number

SPEEDS = Table(
    "speeds",
    "Speed and power points",
    "From the log or a trial: three points over two knots tell more than any formula.",
    (
        column("speed", "Speed", "kn", needed=True, low=1, high=60),
        column("power", "Shaft power, all engines", "kW", needed=True, low=1, high=60_000),
        column("displacement", "Displacement then", "t", low=50, high=200_000),
        column("kind", "Where from", kind="choice", choices=("log", "trial")),
        column("over", "Speed", kind="choice", choices=("through the water", "over the ground")),
        column("on", "Date", kind="date"),
        column("note", "Note", kind="text"),
    ),
)
ENGINES = Table(
    "engines",
    "Engines",
    "Main engines and generator engines, from their plates; "
    "consumption from the shop trial or the log.",
    (
        column("name", "Engine", kind="text", needed=True),
        column("drives", "Drives", kind="choice", choices=("propeller", "generator"), needed=True),
        column("power", "Rated power of each", "kW", needed=True, low=1, high=30_000),
        column("count", "How many", kind="whole", low=1, high=12),
        column("rpm", "Rated speed", "rpm", low=300, high=3000),
        column("year", "Year built", kind="whole", low=1930, high=2100),
        column("rate_50", "Consumption at 50 % load", "g/kWh", low=120, high=400),
        column("rate_75", "at 75 %", "g/kWh", low=120, high=400),
        column("rate_100", "at 100 %", "g/kWh", low=120, high=400),
        column(
            "measured", "Consumption is", kind="choice", choices=("measured on board", "declared")
        ),
    ),
)
PROPULSION = Table(
    "propulsion",
    "Passage",
    "What the passage depends on: hotel load, margins, propellers. Each may stay empty.",
    (
        column("hotel_sea", "Hotel load at sea", "kW", high=20_000),
        column("hotel_anchor", "Hotel load at anchor", "kW", high=20_000),
        # A reading at the switchboard is behind the generator's losses, one at the engine before
        # them.
        column("hotel_at", "Read at", kind="choice", choices=("switchboard", "engine")),
        column("running", "Main engines running", kind="whole", low=1, high=12),
        column("sea_margin", "Sea margin", "%", high=100),
        column("reserve", "Reserve", "%", high=50),
        column("screws", "Propellers", kind="whole", low=1, high=2),
        column("diameter", "Propeller diameter", "m", low=0.5, high=8),
        column("pitch_ratio", "Pitch ratio", low=0.3, high=1.6),
        column("nozzles", "Nozzles", kind="choice", choices=("yes", "no")),
        column("service", "Fouling and weather on top of the regression", low=1, high=3),
        column("transom", "Immersed transom area", "m²", high=200),
        column("bulb", "Bulb cross section", "m²", high=100),
        column("appendages", "Appendage area", "m²", high=2000),
    ),
    single=True,
)
STORES = Table(
    "stores",
    "Stores and holding",
    "What the persons on board live from and leave behind. "
    "What stays empty is a gap, never nothing.",
    (
        column("water", "Fresh-water tanks", "m³", high=20_000),
        column("watermaker", "Watermaker, rated", "m³/day", high=500),
        column("sewage", "Sewage tanks", "m³", high=5000),
        column("grey", "Grey-water tanks", "m³", high=5000),
        column("dry", "Dry store", "m³", high=5000),
        column("chilled", "Chill room", "m³", high=5000),
        column("frozen", "Freezer", "m³", high=5000),
        column("waste", "Garbage room", "m³", high=2000),
        column("toilets", "Toilets", kind="choice", choices=("vacuum", "gravity")),
        column(
            "discharge",
            "On the route, discharge of",
            kind="choice",
            choices=("nothing", "as permitted"),
        ),
        column("compactor", "Compactor", kind="choice", choices=("yes", "no")),
        column("water_per_head", "Fresh water metered, litres a day each", low=0.5, high=1500),
    ),
    single=True,
)
TABLES = (SPEEDS, ENGINES, PROPULSION, STORES)
READ = (*TABLES, TANKS, HYDROSTATICS)
# The plans for a tank after which it holds no fuel.
NO_LONGER_FUEL = ("remove", "convert")
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
        What is to be asked about the engines.
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
    # Each part on its own, so that one refused engine does not take the tanks with it.
    points = read.make_all(_speed_point, case.rows(SPEEDS))
    known = read.make(_hull, case, case.one(HYDROSTATICS), passage)
    propulsion = read.make(_propulsion, passage)
    service = passage.number("service")
    curves = read.make(power_curves, points, known, propulsion, service, otherwise=PowerCurves(()))
    engines = read.make_all(_driving_engine, case.rows(ENGINES))
    fuel_rows = [row for row in case.rows(TANKS) if _holds_fuel(row)]
    main, main_gaps = together(each for drives, each in engines if drives == "propeller")
    generator, set_gaps = together(each for drives, each in engines if drives == "generator")
    tanks, twice = each_once(read.make_all(_fuel_tank, fuel_rows))
    margin, reserve = passage.number("sea_margin"), passage.number("reserve")
    return Inputs(
        brief=read.make(_brief, case, otherwise=BriefBox()),
        curves=curves,
        main=main,
        generator=generator,
        hotel=read.make(_hotel, passage, case, otherwise=Hotel()),
        tanks=tanks,
        stores=read.make(_stores, case.one(STORES), otherwise=Stores()),
        running=passage["running"],
        # Typed as a surcharge in %, calculated with as a factor.
        sea_margin=None if margin is None else 1 + margin / 100,
        reserve=None if reserve is None else reserve / 100,
        faults=(*read.faults, *twice),
        gaps=(*main_gaps, *set_gaps),
    )


def _speed_point(row: Row) -> SpeedPoint:
    """Return a point of speed [kn] and power [kW] of a row."""
    # None where nobody said: current may then be in the speed, and the result says so.
    through = {"through the water": True, "over the ground": False}.get(row.text("over"))
    speed, power, displacement = (row.number(name) for name in ("speed", "power", "displacement"))
    return SpeedPoint(speed, power, displacement, row["kind"], through)


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
    )


def _propulsion(passage: Row) -> Propulsion:
    """Return the propellers as typed; None where something is not known."""
    return Propulsion(
        screws=passage["screws"],
        diameter=passage.number("diameter"),
        pitch_ratio=passage.number("pitch_ratio"),
        nozzles=_yes(passage, "nozzles"),
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


def _holds_fuel(row: Row) -> bool:
    return row.text("kind") == "fuel" and row["plan"] not in NO_LONGER_FUEL


def _fuel_tank(row: Row) -> FuelTank:
    """Return a fuel tank of a row; its unusable rest is typed in %."""
    unusable = row.number("unusable")
    return FuelTank(
        row.text("name"),
        row.number("capacity"),
        "calibrated capacity",
        row.number("density"),
        row.number("temperature"),
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
    )
