"""The chapter on range and endurance: power by speed three ways, range and days at the brief's speed, and every other limit in the same table."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from inspector.assess.gather import number
from inspector.conversion.book import Case
from inspector.conversion.chapters import Bar, Bars, Chapter, Curve, Graph, Lines, Requirement
from inspector.conversion.consumables import Limits, Stores, limits
from inspector.conversion.consumption import ConsumptionPoint, Engine, Hotel
from inspector.conversion.fuel import FuelTank, tank_gaps, usable_fuel
from inspector.conversion.hull_form import Particulars
from inspector.conversion.propulsive import Propulsion
from inspector.conversion.range import BriefBox, Passage, Ship, passage
from inspector.conversion.range_answers import Economy, economical_speed, fuel_margin
from inspector.conversion.range_tables import ENGINES, PROPULSION, SPEEDS, STORES
from inspector.conversion.shapes import ConversionError, Figure, Gap, Span, no_figure
from inspector.conversion.ship_tables import HYDROSTATICS, TANKS
from inspector.conversion.speed_points import SpeedPoint
from inspector.conversion.speed_power import Ways, ways
from inspector.conversion.tables import Row
from inspector.quantities import show
from inspector.words import capital, grouped, listed

TABLES = (SPEEDS, ENGINES, PROPULSION, STORES)
READ = (*TABLES, TANKS, HYDROSTATICS)
AWAY = ("remove", "convert")   # plans for a tank after which it holds no fuel
VERIFY = ("All of it at the displacement typed with the hydrostatics, before any change. "
          "Verify before you rely on it: a range is proved by consumption measured on her own passages at the displacement she will have.")


@dataclass(frozen=True)
class Inputs:
    """All that was typed, as the pure functions take it; `faults` are the sentences about what could not be used, `gaps` what is missing."""

    brief: BriefBox
    ways: Ways
    main: Engine | None
    generator: Engine | None
    hotel: Hotel
    tanks: tuple[FuelTank, ...]
    stores: Stores
    passage: Row
    faults: tuple[str, ...]


def read_inputs(case: Case) -> Inputs:
    """Typed rows -> inputs; what a function refuses becomes a sentence and counts as not given."""
    faults: list[str] = []
    def taken(make: Callable, otherwise):
        try:
            return make()
        except ConversionError as problem:
            faults.append(str(problem))
            return otherwise
    run, hull = case.one(PROPULSION), case.one(HYDROSTATICS)
    points = tuple(point for row in case.rows(SPEEDS) if (point := taken(lambda row=row: _point(row), None)))
    known = taken(lambda: _particulars(case, hull, run), None)
    propulsion = taken(lambda: Propulsion(screws=run["screws"], diameter=run.number("diameter"), pitch_ratio=run.number("pitch_ratio"),
                                          nozzles=_yes(run, "nozzles")), None)
    found = taken(lambda: ways(points, known, propulsion, run.number("service")), Ways(()))
    engines = [engine for row in case.rows(ENGINES) if (engine := taken(lambda row=row: (row.text("drives"), _engine(row)), None))]
    tanks = tuple(tank for row in case.rows(TANKS) if row.text("kind") == "fuel" and row["plan"] not in AWAY
                  and (tank := taken(lambda row=row: _tank(row), None)))
    return Inputs(
        brief=taken(lambda: _brief(case), BriefBox()), ways=found, main=next((one for drives, one in engines if drives == "propeller"), None),
        generator=next((one for drives, one in engines if drives == "generator"), None),
        hotel=taken(lambda: Hotel(run.number("hotel_sea"), run.number("hotel_anchor"), run.text("hotel_at") or "switchboard"), Hotel()),
        tanks=tanks, stores=taken(lambda: _stores(case.one(STORES)), Stores()), passage=run, faults=tuple(faults))


def _point(row: Row) -> SpeedPoint:
    through = {"through the water": True, "over the ground": False}.get(row.text("over"))
    return SpeedPoint(row.number("speed"), row.number("power"), row.number("displacement"), row["kind"], through)


def _particulars(case: Case, hull: Row, run: Row) -> Particulars:
    vessel = case.assessment.vessel
    draught = hull.number("draught") or number(vessel.get("draught"), 0.1)
    return Particulars(
        breadth=hull.number("breadth") or number(vessel.get("breadth"), 1), draught_fore=hull.number("draught_fore") or draught,
        draught_aft=hull.number("draught_aft") or draught, displacement=hull.number("displacement"), length_waterline=hull.number("lwl"),
        length_between=hull.number("lpp"), waterplane=hull.number("cw"), transom_area=run.number("transom"), bulb_area=run.number("bulb"),
        appendage_area=run.number("appendages"))


def _engine(row: Row) -> Engine:
    measured = row.text("measured") == "measured on board"
    points = tuple(ConsumptionPoint(load / 100, row.number(f"rate_{load}"), measured) for load in (50, 75, 100) if row.number(f"rate_{load}") is not None)
    kind = "main" if row.text("drives") == "propeller" else "auxiliary"
    return Engine(row.text("name"), row.number("power"), row["count"] or 1, row.number("rpm"), row["year"], points, kind)


def _tank(row: Row) -> FuelTank:
    unusable = row.number("unusable")
    return FuelTank(row.text("name"), row.number("capacity"), "calibrated capacity", row.number("density"), row.number("temperature"),
                    suction=None if unusable is None else 1 - unusable / 100)


def _stores(row: Row) -> Stores:
    amounts = {name: row.number(name) for name in ("water", "watermaker", "sewage", "grey", "dry", "chilled", "frozen", "waste", "water_per_head")}
    return Stores(**amounts, toilets=row["toilets"], discharge=row["discharge"], compactor=_yes(row, "compactor"))


def _yes(row: Row, name: str) -> bool | None:
    return {"yes": True, "no": False}.get(row.text(name))


def _brief(case: Case) -> BriefBox:
    brief = case.assessment.brief
    persons = number(brief.get("persons"), 1)
    return BriefBox(number(brief.get("speed"), 1), None, number(brief.get("range"), 1), number(brief.get("endurance"), 0.1),
                    int(persons) if persons is not None else None)


def chapter(case: Case) -> Chapter:
    """The chapter on range and endurance."""
    given = read_inputs(case)
    try:
        return _chapter(case, given)
    except ConversionError as problem:
        return Chapter("range", "Range and endurance", "Range cannot be told from what was typed.", gaps=tuple(_gaps(given)),
                       faults=(*case.faults(*READ), *given.faults, str(problem)), tables=_ids())


def _chapter(case: Case, given: Inputs) -> Chapter:
    fuel = usable_fuel(given.tanks) if given.tanks else no_figure("usable fuel", "t", (Gap("Fuel tanks", "no tank with fuel is recorded"),))
    ship = _ship(given, fuel)
    economy = economical_speed(ship) if ship else None
    at = passage(ship, given.brief.speed_low) if ship and given.brief.speed_low else None
    figures = [fuel, *_at_speed(at), *_economical(economy), *_box(ship, given, at)]
    others = limits(given.stores, given.brief.persons, _fuel_days(at, economy)) if given.brief.persons else None
    return Chapter(
        "range", "Range and endurance", _answer(given, at, economy, others), tuple(figures), tuple(_lines(given, others)), tuple(_drawings(given, others)),
        gaps=tuple(_gaps(given)), faults=(*case.faults(*READ), *given.faults), verify=VERIFY, tables=_ids(),
        requirements=tuple(_requirements(given, at, ship, others)))


def _ids() -> tuple[str, ...]:
    return tuple(table.id for table in READ)


def _ship(given: Inputs, fuel: Figure) -> Ship | None:
    if not given.ways.curves or given.main is None:
        return None
    run = given.passage
    margin, reserve = run.number("sea_margin"), run.number("reserve")
    return Ship(given.ways.curves[0], given.main, given.hotel, fuel, given.generator, run["running"], None if margin is None else 1 + margin / 100,
                None if reserve is None else reserve / 100)


def _at_speed(at: Passage | None) -> list[Figure]:
    if at is None:
        return []
    words = f" at {at.speed:g} kn"
    return [_named(figure, name + words) for figure, name in ((at.power, "Power"), (at.burn, "Fuel burned"), (at.per_mile, "Fuel per mile"),
                                                              (at.range, "Range"), (at.days, "Days under way"))]


def _named(figure: Figure, name: str) -> Figure:
    return Figure(name, figure.span, figure.unit, figure.formula_text, figure.assumptions, figure.defaults, figure.gaps, figure.source)


def _economical(economy: Economy | None) -> list[Figure]:
    if economy is None:
        return []
    found = [_named(economy.speed, "Speed of greatest range")]
    return found + ([_named(economy.passage.range, f"Range at {economy.passage.speed:.3g} kn")] if economy.passage else [])


def _box(ship: Ship | None, given: Inputs, at: Passage | None) -> list[Figure]:
    if ship is None or at is None or given.brief.range is None:
        return []
    return [_named(fuel_margin(ship, at, given.brief), "Fuel left after the brief's range and days")]


def _fuel_days(at: Passage | None, economy: Economy | None) -> tuple[Figure, ...]:
    found = at or (economy.passage if economy else None)
    return (_named(found.days, f"fuel, under way at {found.speed:.3g} kn"),) if found else ()


def _answer(given: Inputs, at: Passage | None, economy: Economy | None, others: Limits | None) -> str:
    if at is not None and at.range.span is not None:
        said = f"At {at.speed:g} kn she goes {_reach(at.range.span, 'nmi')} on the fuel she can carry"
    elif economy is not None and economy.passage is not None and economy.passage.range.span is not None:
        said = f"At {economy.passage.speed:.3g} kn, where it goes farthest, she goes {_reach(economy.passage.range.span, 'nmi')}"
    else:
        said = "How far she goes is not known yet"
    if others is not None and others.binding is not None and others.binding.span is not None:
        names = [figure.name for figure in others.may_bind]
        may = f" {capital(listed(names, 'or'))} may come before it." if names else ""
        return f"{said}; what ends a voyage first is {others.binding.name}, after {_reach(others.binding.span, 'days')}.{may}"
    return said + "."


def _reach(span: Span, unit: str) -> str:
    low, high = (grouped(float(f"{end:.2g}")) for end in (span.low, span.high))
    return f"{low} to {high} {unit}" if low != high else f"{low} {unit}"


def _lines(given: Inputs, others: Limits | None) -> Iterator[Lines]:
    speed = given.brief.speed_low
    if given.ways.curves and speed:
        rows = []
        for name, figure in given.ways.at(speed):
            told = ("–", "–", "–") if figure.span is None else tuple(show(round(end), "kW") for end in (figure.span.low, figure.span.middle, figure.span.high))
            rows.append((name, *told, figure.gaps[0].why if figure.gaps and figure.span is None else ""))
        spread = given.ways.spread(speed)
        note = f"The ways differ by a factor of {spread:.2f}; the first is used." if spread else "Only one way tells this speed."
        yield Lines(f"Power at {speed:g} kn, told in every way there is", ("way", "low", "likely", "high", ""), tuple(rows), (1, 2, 3), note)
    if others is not None and any(figure.span is not None for figure in others.figures):
        rows = tuple((figure.name, *_days_told(figure), "binds" if figure is others.binding else "may bind" if figure in others.may_bind else "")
                     for figure in others.figures)
        yield Lines(f"What lasts how long for {given.brief.persons} persons, days", ("limit", "low", "likely", "high", ""), rows, (1, 2, 3))


def _days_told(figure: Figure) -> tuple[str, ...]:
    if figure.span is None:
        return ("–", "–", "–")
    return tuple(grouped(end) for end in (figure.span.low, figure.span.middle, figure.span.high))


def _drawings(given: Inputs, others: Limits | None) -> Iterator[Graph | Bars]:
    curves = [_curve(one, _fastest(given)) for one in given.ways.curves]
    curves = [one for one in curves if one.points]
    if curves:
        names = ", ".join(curve.label for curve in curves)
        yield Graph("Power by speed", "speed, kn", "shaft power, kW", tuple(curves), f"Power by speed by {names}.", given.brief.speed_low, "the brief's speed")
    bars = [Bar(figure.name, figure.span.low, figure.span.middle, figure.span.high, given.brief.endurance) for figure in (others.figures if others else ())
            if figure.span is not None]
    if bars:
        yield Bars("What lasts how long", "days", tuple(bars), "Days that each store lasts, with the brief's endurance as a stroke.", "the brief's endurance")


def _fastest(given: Inputs) -> float:
    """Where the drawing ends: a third beyond the brief's speed or the fastest point of her own, since far beyond them a formula dwarfs all else."""
    own = [one.high_speed for one in given.ways.curves if one.kind == "log" or "own" in one.method]
    return max([(given.brief.speed_low or 0) * 1.33, *own]) or max(one.high_speed for one in given.ways.curves)


def _curve(one, fastest: float) -> Curve:
    steps, top = 16, min(one.high_speed, fastest)
    speeds = [one.low_speed + (top - one.low_speed) * step / steps for step in range(steps + 1)] if top > one.low_speed else []
    told = [(speed, one.at(speed).span) for speed in speeds if speed > 0]
    return Curve(one.method, tuple((speed, span.middle) for speed, span in told if span is not None), dashed=one.method != "own points, fitted")


def _gaps(given: Inputs) -> Iterator[Gap]:
    yield from given.ways.gaps
    if given.main is None:
        yield Gap("Main engines", "their rated power is needed for load and consumption")
    if not given.tanks:
        yield Gap("Fuel tanks", "enter each tank that holds fuel with its capacity")
    yield from tank_gaps(given.tanks) if given.tanks else ()
    if given.stores == Stores():
        yield Gap("Stores and holding", "what the persons on board live from is not entered")
    for name, value in (("Speed", given.brief.speed_low), ("Persons on board", given.brief.persons)):
        if value is None:
            yield Gap(f"{name} in the brief", "without it nothing can be set against the brief")


def _requirements(given: Inputs, at: Passage | None, ship: Ship | None, others: Limits | None) -> Iterator[Requirement]:
    brief = given.brief
    if brief.speed_low and ship is not None and at is not None and at.load is not None:
        yield Requirement("speed", f"{brief.speed_low:g} kn on the engines, load", 100.0, "%", at.load * 100, least=False)
    elif brief.speed_low:
        yield Requirement("speed", f"{brief.speed_low:g} kn on the engines, load", 100.0, "%", None, least=False)
    if brief.range:
        yield Requirement("range", "Range", brief.range, "nmi", at.range.span if at else None)
    if brief.endurance:
        yield Requirement("endurance", "Endurance, first thing to run out", brief.endurance, "days", _shortest(others))


def _shortest(others: Limits | None) -> Span | None:
    """The least of all days, end by end; not known while any of them is not."""
    if others is None or any(figure.span is None for figure in others.figures):
        return None
    spans = [figure.span for figure in others.figures]
    return Span(min(one.low for one in spans), min(one.middle for one in spans), min(one.high for one in spans))



