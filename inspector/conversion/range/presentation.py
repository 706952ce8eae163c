"""Range and endurance as they are shown: answer, figures, tables and drawings."""

from collections.abc import Iterator
from dataclasses import replace

from inspector.conversion.core.chapter import FigureTable, TableColumn, table_columns
from inspector.conversion.core.drawing import AskedPoint, Axis, Bar, Bars, Curve, Graph
from inspector.conversion.core.figure import Figure
from inspector.conversion.core.span import Span
from inspector.conversion.range.calculation import Results
from inspector.conversion.range.consumables import Limits
from inspector.conversion.range.particulars import Inputs
from inspector.conversion.range.passages import Passage, passage
from inspector.conversion.range.speed_power import PowerCurve
from inspector.values.formatting import show
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.text import capital, counted, listed

# How many stretches a drawn curve has.
STEPS = 16
# kn; slower, the hotel load alone decides and no curve of power is meant for it.
SLOWEST = 3.0
# What is drawn of a span of ranges, and whether it is dashed.
RANGE_ENDS = (("likely", "middle", False), ("low", "low", True), ("high", "high", True))
# How far beyond the known speeds a drawing goes: farther, a formula dwarfs all else.
BEYOND_SPEED = 1.33

Three = tuple[Cell, Cell, Cell]


def answer_of(results: Results) -> Cell:
    """Return the whole chapter in one or two sentences.

    Parameters
    ----------
    results : Results

    Returns
    -------
    Cell
    """
    lasting = results.lasting
    if lasting is None or lasting.binding is None:
        return sentence("{reach}.", reach=_reach(results))
    first = sentence(
        "{reach}; what ends a voyage first is {name}, after {days}.",
        reach=_reach(results),
        name=lasting.binding.name,
        days=_two_digits(lasting.binding.span, "days"),
    )
    if not lasting.may_bind:
        return first
    others = listed([figure.name for figure in lasting.may_bind], "or")
    return joined([first, f"{capital(others)} may come before it."])


def _reach(results: Results) -> Cell:
    """How far she goes, at the brief's speed or at the economical one."""
    at_speed, economy = results.at_speed, results.economy
    if at_speed is not None and at_speed.range.known:
        template = "At {speed} she goes {range} on the fuel she can carry"
        return _reach_of(show(at_speed.speed, "kn"), at_speed, template)
    best = economy.passage if economy else None
    if best is not None and best.range.known:
        template = "At {speed}, where it goes farthest, she goes {range}"
        return _reach_of(_found_speed(best), best, template)
    return "How far she goes is not known yet"


def _found_speed(passage: Passage) -> str:
    """The speed of a passage that was calculated and not typed, with no more digits than it has."""
    # The search ends between two speeds that no helmsman could tell apart.
    return show(float(f"{passage.speed:.3g}"), "kn")


def _reach_of(speed: str, passage: Passage, template: str) -> Cell:
    return sentence(template, speed=speed, range=_two_digits(passage.range.span, "nmi"))


def _two_digits(span: Span, unit: str) -> Quantity:
    """A span with no more digits than a first check can claim in a sentence."""
    # "3400 to 21 000 nmi" in a sentence; the table beside it has every digit.
    low, high = (float(f"{end:.2g}") for end in (span.low, span.high))
    return Quantity(low, None, high, unit, 0)


def figures_of(results: Results) -> tuple[Figure, ...]:
    """Return fuel, the passage at the brief's speed, the economical one, and the fuel left.

    Parameters
    ----------
    results : Results

    Returns
    -------
    tuple of Figure
    """
    return tuple(_figures(results))


def _figures(results: Results) -> Iterator[Figure]:
    """Yield the figures of the chapter in the order in which they are shown."""
    yield results.fuel
    if results.at_speed is not None:
        yield from _figures_at(results.at_speed)
    if results.economy is not None:
        yield replace(results.economy.speed, name="Speed of greatest range")
        best = results.economy.passage
        if best is not None:
            yield replace(best.range, name=f"Range at {_found_speed(best)}")
    if results.beside_station is not None:
        yield replace(results.beside_station, name="Range beside the days on station")
    if results.margin is not None:
        yield replace(results.margin, name="Fuel left after the brief's range and days")


def _figures_at(passage: Passage) -> Iterator[Figure]:
    """Yield the figures of the speed that the brief asks for."""
    named = {
        "Power": passage.power,
        "Fuel burned": passage.burn,
        "Fuel per mile": passage.per_mile,
        "Range": passage.range,
        "Days under way": passage.days,
    }
    for name, figure in named.items():
        yield replace(figure, name=f"{name} at {show(passage.speed, 'kn')}")


def tables_of(inputs: Inputs, results: Results) -> tuple[FigureTable, ...]:
    """Return the power by every method, and how long everything on board lasts.

    Parameters
    ----------
    inputs : Inputs
    results : Results

    Returns
    -------
    tuple of FigureTable
    """
    speed, lasting = inputs.brief.speed, results.lasting
    tables = []
    if inputs.curves.curves and speed:
        tables.append(_power_table(inputs, speed))
    if results.by_running and results.by_running[0][1].power.known:
        tables.append(_running_table(results, speed))
    if lasting is not None and any(figure.known for figure in lasting.figures):
        tables.append(_lasting_table(lasting, inputs.brief.persons))
    return tuple(tables)


def _columns(first: str, unit: str) -> tuple[TableColumn, ...]:
    return table_columns(first, ("low", unit), ("likely", unit), ("high", unit), "")


def _power_table(inputs: Inputs, speed: float) -> FigureTable:
    """Return the power of each method at one speed, with how far they differ."""
    rows = [
        (method, *_whole_ends(figure), _reason(figure))
        for method, figure in inputs.curves.at(speed)
    ]
    spread = inputs.curves.spread(speed)
    note = "Only one method covers this speed."
    if spread:
        note = f"The methods differ by a factor of {spread:.2f}; the first is used."
    title = f"Power at {show(speed, 'kn')}, by every method there is"
    return FigureTable(title, _columns("method", "kW"), tuple(rows), note)


def _running_table(results: Results, speed: float) -> FigureTable:
    """Return load, burn and range at one speed for each count of main engines running."""
    rows = []
    for count, made in results.by_running:
        word = {True: "yes", False: "no", None: "not known"}[made.reached]
        load = (made.load * 100).quantity("%", 0)
        burn = made.burn.span.quantity("t/day", 1)
        reach = made.range.span.quantity("nmi", 0) if made.range.known else None
        rows.append((counted(count, "engine"), load, word, burn, reach))
    return FigureTable(
        f"At {show(speed, 'kn')} by main engines running",
        table_columns(
            "running",
            ("load of each", "%"),
            "speed is reached",
            ("burn", "t/day"),
            ("range", "nmi"),
        ),
        tuple(rows),
        "The drag of a propeller that stands still or turns with the water is not counted: "
        "with fewer engines she needs more power than this.",
    )


def _reason(figure: Figure) -> Cell:
    """Why there is no figure."""
    return figure.gaps[0].why if figure.gaps and not figure.known else ""


def _lasting_table(lasting: Limits, persons: int) -> FigureTable:
    """Return how many days each store lasts, and which of them ends the passage."""
    rows = [
        (figure.name, *_whole_ends(figure), _binds(figure, lasting)) for figure in lasting.figures
    ]
    title = f"What lasts how long for {persons} persons"
    return FigureTable(title, _columns("limit", "days"), tuple(rows))


def _binds(figure: Figure, lasting: Limits) -> str:
    """Return whether a limit ends the passage, or may do so."""
    # By identity and not by equality: two stores may last equally long, and one of them is named.
    if figure is lasting.binding:
        return "binds"
    return "may bind" if figure in lasting.may_bind else ""


def _whole_ends(figure: Figure) -> Three:
    """Return low, likely and high of a figure in whole units."""
    if figure.span is None:
        return None, None, None
    span = figure.span
    return tuple(Quantity.exact(end, figure.unit, 0) for end in (span.low, span.middle, span.high))


def drawings_of(inputs: Inputs, results: Results) -> tuple[Graph | Bars, ...]:
    """Return range and power by speed, and how long everything on board lasts.

    Parameters
    ----------
    inputs : Inputs
    results : Results

    Returns
    -------
    tuple of Graph or Bars
    """
    made = (
        _range_graph(inputs, results),
        _power_graph(inputs),
        _lasting_bars(results.lasting, inputs.brief.endurance),
    )
    return tuple(drawing for drawing in made if drawing is not None)


def _range_graph(inputs: Inputs, results: Results) -> Graph | None:
    """Return range by speed with the brief's range at its speed; None where it is not known."""
    ship, brief = results.ship, inputs.brief
    if ship is None:
        return None
    slow, fast = max(ship.curve.low_speed, SLOWEST), min(ship.curve.high_speed, _fastest(inputs))
    if slow >= fast:
        return None
    speeds = [slow + (fast - slow) * step / STEPS for step in range(STEPS + 1)]
    passages = [passage(ship, speed) for speed in speeds]
    # What is more than the engines have is no speed of hers.
    known = [made for made in passages if made.range.known and made.reached is not False]
    if not known:
        return None
    curves = [
        Curve(name, tuple((made.speed, getattr(made.range.span, end)) for made in known), dashed)
        for name, end, dashed in RANGE_ENDS
    ]
    asked = ()
    if brief.speed and brief.range:
        asked = (AskedPoint(brief.speed, brief.range, "asked"),)
    described = "Range by speed on the fuel that she can carry, with what the brief asks."
    axes = Axis("speed", "kn"), Axis("range", "nmi")
    return Graph("Range by speed", *axes, tuple(curves), described, asked=asked)


def _power_graph(inputs: Inputs) -> Graph | None:
    """Return power by speed, a curve for each method; None where no method has points."""
    top = _fastest(inputs)
    curves = [_drawn(curve, top) for curve in inputs.curves.curves]
    curves = [curve for curve in curves if curve.points]
    if not curves:
        return None
    names = ", ".join(curve.label for curve in curves)
    return Graph(
        "Power by speed",
        Axis("speed", "kn"),
        Axis("shaft power", "kW"),
        tuple(curves),
        f"Power by speed by {names}.",
        inputs.brief.speed,
        "the brief's speed",
    )


def _fastest(inputs: Inputs) -> float:
    """Where the drawing ends [kn]: a third beyond the brief's speed or at her fastest point."""
    curves = inputs.curves.curves
    # What was measured is shown whole; a formula reaches to speeds that she never makes.
    own = [curve.high_speed for curve in curves if curve.is_own]
    asked = (inputs.brief.speed or 0) * BEYOND_SPEED
    return max([asked, *own]) or max((curve.high_speed for curve in curves), default=0.0)


def _drawn(curve: PowerCurve, fastest: float) -> Curve:
    """Return a method's curve up to the fastest speed drawn, dashed where it is not fitted."""
    top = min(curve.high_speed, fastest)
    points = []
    # A curve that begins beyond the drawing has no points in it.
    if top > curve.low_speed:
        stretch = (top - curve.low_speed) / STEPS
        points = [_point(curve, curve.low_speed + stretch * step) for step in range(STEPS + 1)]
    known = tuple(point for point in points if point is not None)
    return Curve(curve.method, known, dashed=not curve.is_fitted)


def _point(curve: PowerCurve, speed: float) -> tuple[float, float] | None:
    """Return a point of speed [kn] and power [kW]; None where the power is not known."""
    power = curve.at(speed).span if speed > 0 else None
    # A curve is one line: the span of a method is in its table.
    return None if power is None else (speed, power.middle)


def _lasting_bars(lasting: Limits | None, endurance: float | None) -> Bars | None:
    """Return the days of each store as bars; None where none is known."""
    known = [figure for figure in lasting.figures if figure.known] if lasting else []
    if not known:
        return None
    bars = [
        Bar(figure.name, figure.span.low, figure.span.middle, figure.span.high, endurance)
        for figure in known
    ]
    described = "Days that each store lasts, with the brief's endurance as a stroke."
    return Bars("What lasts how long", "days", tuple(bars), described, "the brief's endurance")
