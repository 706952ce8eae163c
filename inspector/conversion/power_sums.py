"""Everything that the chapter on power tells, computed once from the particulars: balances, thrusts, forces, and every single failure."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from inspector.assess.gather import number
from inspector.conversion.book import Case
from inspector.conversion.dp_demands import CLASSES, Demand, demands, text_for
from inspector.conversion.holding import LIMIT, Outcome, outcome, outcomes
from inspector.conversion.inputs import or_default
from inspector.conversion.load_balance import ACCURACY, CONDITIONS, Balance, demand, factors_used, main_sets, one_out
from inspector.conversion.plant import GeneratorSet
from inspector.conversion.plant_rows import Read, read_plant
from inspector.conversion.plant_tables import BOARD, EXPOSURE
from inspector.conversion.shapes import ConversionError, Default, Figure, Gap, Span, no_figure, unique
from inspector.conversion.station_keeping import DRIVE, Exposure, Force, beam, head, thrust_of
from inspector.conversion.tables import Row
from inspector.conversion.thrust_sharing import Level, Terms
from inspector.criteria.source import Source
from inspector.quantities import convert

KEEPING = "station keeping"


@dataclass(frozen=True)
class Power:
    """The sums of one inspection. now: loads as found; then: with the new ones; intact and found are empty without thrusters."""

    read: Read
    board: Row
    now: tuple[Balance, ...] = ()
    then: tuple[Balance, ...] = ()
    thrusts: tuple[Figure, ...] = ()
    levels: tuple[Level, Level, Level] | None = None
    terms: Terms = Terms()
    wind: float | None = None  # m/s, to be held
    intact: Outcome | None = None
    found: tuple[Outcome, ...] = ()
    demands: tuple[Demand, ...] = ()
    text: Source | None = None
    defaults: tuple[Default, ...] = ()
    gaps: tuple[Gap, ...] = ()
    faults: tuple[str, ...] = ()


def power(case: Case) -> Power:
    """Read the tables and compute; what cannot be is a gap or a fault."""
    read, board, row = read_plant(case), case.one(BOARD), case.one(EXPOSURE)
    exposure, gaps, faults = _exposure(case, row)
    terms, defaults = _terms(row, board.number("power_factor"), read.plant.sets)
    levels, thrusts, from_forces = _levels(read, exposure)
    wind = row.number("wind")
    made = {"read": read, "board": board, "thrusts": thrusts, "terms": terms, "wind": wind}
    plant = read.plant
    if not plant.thrusters or levels is None:
        balances = _balances(read, board, None if not plant.thrusters else no_figure("thrusters", "kW", gaps))
        return Power(**made, **balances, gaps=_power_gaps(read), faults=(*read.faults, *faults))
    intact, found = outcome(plant, levels, (), wind, terms), outcomes(plant, levels, wind, terms)
    if wind is None:
        gaps = (*gaps, Gap("wind to be held", "without it only the most wind can be told, not whether a failure is held"))
    drawn = _drawn(read, levels, wind, terms) if exposure and wind is not None else no_figure("thrusters", "kW", gaps)
    asked, text = _demands(case, read, found)
    return Power(
        **made,
        **_balances(read, board, drawn),
        levels=levels,
        intact=intact,
        found=found,
        demands=asked,
        text=text,
        defaults=unique(defaults, from_forces),
        gaps=(*_power_gaps(read), *gaps),
        faults=(*read.faults, *faults),
    )


def _power_gaps(read: Read) -> tuple[Gap, ...]:
    plant = read.plant
    made = []
    if not plant.sets:
        made.append(Gap("generating sets", "none is typed, so nothing can be told of power; take them from the plates"))
    if not read.consumers:
        made.append(Gap("electrical loads", "none is typed, so no demand can be told; take them from the load balance or the meters"))
    if not plant.thrusters:
        made.append(Gap("thrusters", "none is typed, so nothing can be told of holding position"))
    elif not plant.needs:
        made.append(Gap("shared needs", "none is typed: day tanks, cooling pumps, 24 V boards and rooms may tie together what the board keeps apart"))
    return tuple(made)


def _exposure(case: Case, row: Row) -> tuple[Exposure | None, tuple[Gap, ...], tuple[str, ...]]:
    vessel = case.assessment.vessel
    sizes = {name: row.number(name) if row.number(name) is not None else number(vessel.get(name)) for name in ("length", "breadth", "draught")}
    gaps = tuple(
        Gap(label, "wind and current on the beam cannot be told without it")
        for label, value in (("length", sizes["length"]), ("draught", sizes["draught"]), ("side area in the wind", row.number("lateral")))
        if value is None
    )
    if gaps:
        return None, gaps, ()
    if row.number("frontal") is None or sizes["breadth"] is None:
        gaps = (Gap("frontal area in the wind, and breadth", "holding wind from ahead cannot be told without them"),)
    names = ("lateral", "frontal", "x_wind", "wind_beam", "wind_head", "current_beam", "current_head", "waves")
    current = row.number("current")
    try:
        return (
            Exposure(
                **sizes,
                **{name: row.number(name) for name in names},
                x_current=row.number("x_current") or 0.0,
                current=None if current is None else convert(current, "kn", "m/s"),
            ),
            gaps,
            (),
        )
    except ConversionError as problem:
        return None, gaps, (str(problem),)


def _terms(row: Row, factor: float | None, sets: Iterable[GeneratorSet]) -> tuple[Terms, tuple[Default, ...]]:
    (efficiency, one), (limit, other) = or_default(row.number("efficiency"), DRIVE), or_default(row.number("limit"), LIMIT)
    # the plates' power factor matters only beside one that was read
    plates = factors_used(main_sets(sets), factor) if factor is not None else ()
    return Terms(efficiency.middle, limit.middle, factor), (*one, *other, *plates)


def _levels(read: Read, exposure: Exposure | None) -> tuple[tuple[Level, Level, Level] | None, tuple[Figure, ...], tuple[Default, ...]]:
    units = read.plant.thrusters
    if not units:
        return None, (), ()
    across, along = ({unit.name: thrust_of(unit, sideways) for unit in units} for sideways in (True, False))
    (beams, told), heads = beam(exposure) if exposure else ((None,) * 3, ()), head(exposure) if exposure else None
    ends = ("low", "point", "high")
    forces = [(beams[2 - place], heads[0][2 - place] if heads else None) for place in range(3)]  # least thrust meets the greatest force
    levels = tuple(_level(across, along, end, *pair) for end, pair in zip(ends, forces, strict=True))
    return (
        levels,
        tuple(across[unit.name] if unit.across else along[unit.name] for unit in units),
        unique(told, heads[1] if heads else (), (ACCURACY,)),
    )


def _level(across: dict[str, Figure], along: dict[str, Figure], end: str, beams: Force | None, heads: Force | None) -> Level:
    thrusts = ({name: getattr(figure.span, end) for name, figure in way.items()} for way in (across, along))
    return Level(*thrusts, beams, heads, hotel={"low": ACCURACY.value.high, "point": 1.0, "high": ACCURACY.value.low}[end])


def _drawn(read: Read, levels: tuple[Level, Level, Level], wind: float, terms: Terms) -> Figure:
    """Power that the thrusters draw from the buses [kW] at the wind to be held, nothing failed."""
    plant = read.plant
    ends = []
    for level in levels:
        supplies = outcome(plant, (level,) * 3, (), wind, terms).sources
        engines = {engine.name for engine in plant.engines}
        ends.append(sum(one.load for one in supplies if one.name not in engines) - level.hotel * sum(plant.hotel.values()))
    return Figure("thrusters", Span(min(ends), ends[1], max(ends)), "kW", "shares of bow and stern, rated x (T / T full)^1.5 / efficiency")


def _balances(read: Read, board: Row, drawn: Figure | None) -> dict[str, tuple[Balance, ...]]:
    """Balances by condition, as found and with the new loads; drawn is None where there are no thrusters."""
    if not any(one.counts for one in read.plant.sets):
        return {}
    factor = board.number("power_factor")
    present = [one for one in read.consumers if not one.new]
    made = {}
    for name, consumers in (("now", present), ("then", read.consumers)):
        needs = [(condition, _need(consumers, condition, drawn)) for condition in CONDITIONS]
        made[name] = tuple(one_out(read.plant.sets, need, condition, factor) for condition, need in needs)
    return made


def _need(consumers, condition: str, drawn: Figure | None) -> Figure:
    if condition != KEEPING or drawn is None:
        return demand(consumers, condition)
    if drawn.span is None:
        gap = Gap("power of the thrusters", "it follows from wind, current and areas, of which some are missing")
        return no_figure(f"demand, {condition}", "kW", (gap,))
    return demand(consumers, condition, drawn.span)


def _demands(case: Case, read: Read, found: tuple[Outcome, ...]) -> tuple[tuple[Demand, ...], Source | None]:
    vessel = case.assessment.vessel
    number_, built = str(vessel.get("dp_class", "")).strip(), str(vessel.get("built", "")).strip()
    if number_ not in CLASSES:
        return (), None
    try:
        keel = date.fromisoformat(built) if built else None
    except ValueError:
        keel = None
    return demands(number_, read.plant, found), text_for(keel)
