"""The speed of greatest range, the fuel of a whole mission, and the brief's box of speed, range and endurance answered line by line."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from inspector.conversion.inputs import BadInput, plain
from inspector.conversion.range import BriefBox, Passage, Ship, available, hotel_burn, main_load, passage, propulsion_burn, sea_power
from inspector.conversion.shapes import Figure, Gap, Span, no_figure, rest_on
from inspector.quantities import show
from inspector.words import capital

STEP = 0.25  # kn, of the search; refined within by a parabola
HOURS = 24


@dataclass(frozen=True)
class Economy:
    """speed of greatest range [kn] with hotel load, and the passage at its point (None where it cannot be told)."""

    speed: Figure
    passage: Passage | None


@dataclass(frozen=True)
class Answer:
    """One line of the brief against a figure: asked [the figure's unit]; holds: True, False, or None where it is not known."""

    name: str
    asked: float
    figure: Figure
    holds: bool | None
    sentence: str


def economical_speed(ship: Ship) -> Economy:
    """The speed of least fuel per mile, hotel load included, among the speeds that the curve covers and the engines give.

    The span runs from much propulsion with little hotel (slowest) to little propulsion with much hotel (fastest).
    """
    hotel = hotel_burn(ship)
    found = [(speed, propulsion_burn(ship, power)) for speed, power in _candidates(ship)]
    if not found:
        gap = Gap("power by speed", "no speed is covered by it that the engines give")
        return Economy(no_figure("speed of greatest range", "kn", (gap,)), None)
    slow = _least(found, lambda drive: drive.span.high + hotel.span.low)
    likely = _least(found, lambda drive: drive.span.middle + hotel.span.middle)
    fast = _least(found, lambda drive: drive.span.low + hotel.span.high)
    span = Span(min(slow, likely, fast), likely, max(slow, likely, fast))
    parts = rest_on(found[len(found) // 2][1], hotel)
    if likely in (found[0][0], found[-1][0]):
        end = "lowest" if likely == found[0][0] else "highest"
        parts["assumptions"] += (f"It is the {end} speed at which power is known: beyond it the range may be greater yet.",)
    return Economy(Figure("speed of greatest range", span, "kn", "least of burn / speed", **parts), passage(ship, likely))


def _candidates(ship: Ship) -> list[tuple[float, Figure]]:
    low, high = ship.curve.low_speed, ship.curve.high_speed
    steps = max(1, round((high - low) / STEP))
    speeds = [max(low + (high - low) * step / steps, 0.5) for step in range(steps + 1)]
    powers = [(speed, sea_power(ship, min(speed, high))) for speed in speeds]
    return [(speed, power) for speed, power in powers if power.span is not None and main_load(ship, power.span).low <= 1]


def _least(found: list[tuple[float, Figure]], burn: Callable[[Figure], float]) -> float:
    """The speed of least burn per mile, by the parabola through the least of the grid and its neighbours."""
    grid = [(speed, burn(drive) / speed) for speed, drive in found]
    at = min(range(len(grid)), key=lambda index: grid[index][1])
    if at in (0, len(grid) - 1):
        return grid[at][0]
    (x0, y0), (x1, y1), (x2, y2) = grid[at - 1 : at + 2]
    divisor = (x1 - x0) * (y1 - y2) - (x1 - x2) * (y1 - y0)
    shift = ((x1 - x0) ** 2 * (y1 - y2) - (x1 - x2) ** 2 * (y1 - y0)) / (2 * divisor) if divisor else 0.0
    return min(max(x1 - shift, x0), x2)


def fuel_for(legs: Iterable[tuple[str, float, Figure]]) -> Figure:
    """Fuel of a mission [t] of legs: name, days, burn [t/day].

    Errors
    ------
    BadInput : there is no leg, or a leg of less than no days.
    """
    legs = tuple(legs)
    if not legs:
        raise BadInput("Mission: it has no leg; give one leg with its days at least.", field="mission", value=())
    total = Span.exact(0.0)
    for name, days, burn in legs:
        total = total + burn.span * plain(f"{name}: days", days, 0, 1000, "days")
    formula = " + ".join(f"{show(round(days, 1), 'days')} {name}" for name, days, _ in legs)
    return Figure("fuel for the mission", total, "t", formula, **rest_on(*(burn for _, _, burn in legs)))


def fuel_margin(ship: Ship, at: Passage, brief: BriefBox) -> Figure:
    """Fuel left [t] before the reserve after the brief's range at a speed and the rest of its endurance at anchor; negative is missing.

    Errors
    ------
    BadInput : the brief names no range.
    """
    if brief.range is None:
        raise BadInput("Brief: range is not given, so no fuel for it can be told.", field="brief: range", value=None)
    fuel = available(ship)
    if at.burn.span is None or fuel.span is None:
        return no_figure("fuel left", "t", (*at.burn.gaps, *fuel.gaps))
    days = brief.range / at.speed / HOURS
    legs = [("under way", days, at.burn)]
    if brief.endurance is not None and brief.endurance > days:
        legs.append(("at anchor", brief.endurance - days, hotel_burn(ship, "anchor")))
    need = fuel_for(legs)
    return Figure("fuel left", fuel.span - need.span, "t", f"usable fuel x (1 − reserve) − {need.formula_text}", **rest_on(need, fuel))


def answers(ship: Ship, brief: BriefBox) -> tuple[Answer, ...]:
    """The brief's box answered at each of its speeds: is the speed reached, the range covered, the fuel enough for the endurance."""
    found: list[Answer] = []
    for speed in brief.speeds:
        at, words = passage(ship, speed), f"at {show(speed, 'kn')}"
        load = None if at.load is None else Figure("load of the main engines", at.load * 100, "%", "power at sea / rated power", **rest_on(at.power))
        found.append(_answer(f"power {words}", 100.0, load or no_figure("load of the main engines", "%", at.power.gaps), at.reached, "at most"))
        if brief.range is None:
            continue
        found.append(_answer(f"range {words}", brief.range, at.range, _holds(at.range, brief.range), "at least"))
        left = fuel_margin(ship, at, brief)
        found.append(_answer(f"fuel for range and endurance {words}", 0.0, left, _holds(left, 0.0), "at least"))
    return tuple(found)


def _holds(figure: Figure, asked: float) -> bool | None:
    return None if figure.span is None else figure.span.at_least(asked)


def _answer(name: str, asked: float, figure: Figure, holds: bool | None, word: str) -> Answer:
    verdict = {True: "that holds", False: "that does not hold", None: "whether that holds is not known"}[holds]
    start = capital(name)
    if figure.span is None:
        return Answer(name, asked, figure, None, f"{start}: not known, because {'; '.join(gap.why for gap in figure.gaps)}.")
    low, high = (show(float(f"{end:.3g}"), figure.unit) for end in (figure.span.low, figure.span.high))
    return Answer(name, asked, figure, holds, f"{start}: {low} to {high}, against {word} {show(asked, figure.unit)}; {verdict}.")
