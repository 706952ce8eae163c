"""The drawings of the chapter on power: demand with one set out, and wind after each failure."""

from collections.abc import Iterator

from inspector.conversion.core.drawing import Bar, Bars, Curve, Polar
from inspector.conversion.core.span_sentences import likely_with_span
from inspector.conversion.power.calculation import PowerResults
from inspector.conversion.power.holding.holding_power import Outcome
from inspector.conversion.power.holding.polar import BEAMS
from inspector.conversion.power.load_balance import Balance, set_capacity
from inspector.conversion.power.plant_elements import GeneratorSet
from inspector.conversion.power.power_figures import element_name, in_knots
from inspector.conversion.power.power_tables import AS_INSPECTED
from inspector.values.quantity import Cell, Quantity, joined, sentence
from inspector.values.units import convert

# A drawing with more bars or longer labels than this cannot be read on a phone.
MOST_BARS = 12
LONGEST_LABEL = 34
# Buses and sets together: more are a table.
MOST_ELEMENTS = 16


def drawings(results: PowerResults) -> Iterator[Bars | Polar]:
    """Return the drawings that have any bar.

    Parameters
    ----------
    results : PowerResults

    Returns
    -------
    iterator of Bars or Polar
    """
    balances = [balance for balance in results.converted if balance.demand.known]
    if balances:
        yield _demand_bars(balances)
        yield _set_bars(balances, results)
    outcomes = [each for each in (results.intact, *results.failures) if each and each.least]
    if outcomes:
        yield _wind_bars(outcomes, results)
    if results.intact is not None and len(results.intact.polar) > len(BEAMS):
        yield _polar(results)


def _demand_bars(balances: list[Balance]) -> Bars:
    """Return the demand of each condition [kW] as a bar, with the rest of the sets as its limit."""
    bars = []
    for balance in balances:
        span = balance.demand.span
        bars.append(
            Bar(balance.name[:LONGEST_LABEL], span.low, span.point, span.high, balance.remaining)
        )
    parts = [
        sentence(
            "{condition} {demand} of {remaining}",
            condition=balance.name,
            demand=likely_with_span(balance.demand.span, "kW", 0),
            remaining=Quantity.exact(balance.remaining, "kW", 0),
        )
        for balance in balances
    ]
    described = joined((joined(parts, "; "), "."), "")
    limit = "sets left with the largest out"
    return Bars("Demand with one set out", "kW", tuple(bars), described, limit)


def _set_bars(balances: list[Balance], results: PowerResults) -> Bars:
    """Return each bus and its sets in the condition that is tightest, the largest set out [kW]."""
    tightest = min(balances, key=lambda balance: balance.margin.span.middle).condition
    factor = results.board.number("power_factor")
    bars, parts = [], []
    for balance in balances:
        if balance.condition != tightest:
            continue
        span = balance.demand.span
        name = balance.place or "the board"
        bars.append(Bar(name, span.low, span.point, span.high, balance.remaining))
        for generator in balance.sets:
            bar = _set_bar(generator, balance, factor)
            bars.append(bar)
            parts.append(
                sentence(
                    "{name} {load} of {rating}",
                    name=bar.label,
                    load=Quantity.exact(bar.high, "kW", 0),
                    rating=Quantity.exact(bar.limit, "kW", 0),
                )
            )
    title = f"Each bus and its sets, {tightest}, with the largest set out"
    described = sentence("At the upper end of the demand: {parts}.", parts=joined(parts, "; "))
    limit = "what the sets give"
    return Bars(title, "kW", tuple(bars[:MOST_ELEMENTS]), described, limit)


def _set_bar(generator: GeneratorSet, balance: Balance, factor: float | None) -> Bar:
    """Return the load of one set [kW], shared among those that run by what they give."""
    capacity = set_capacity(generator, factor)
    if generator.name == balance.stopped:
        return Bar(f"{generator.name}, out", 0.0, None, 0.0, capacity)
    share = capacity / balance.remaining if balance.remaining else 0.0
    load = balance.demand.span * share
    return Bar(generator.name, load.low, load.point, load.high, capacity)


def _wind_bars(outcomes: list[Outcome], results: PowerResults) -> Bars:
    """Return the most wind from every side after each failure [kn] as bars."""
    # Typed in m/s as on a certificate, drawn in knots as a master speaks of wind.
    limit = None if results.wind is None else convert(results.wind, "m/s", "kn")
    bars = []
    for outcome in outcomes[:MOST_BARS]:
        wind = in_knots(outcome.least)
        label = element_name(outcome.element, results) or AS_INSPECTED
        bars.append(Bar(label[:LONGEST_LABEL], wind.low, wind.point, wind.high, limit))
    title = "Most wind withstood from every side after each failure"
    if outcomes[0].ahead is None:
        title = "Most beam wind withstood after each failure"
    limit_label = "" if limit is None else "wind to be withstood"
    return Bars(title, "kn", tuple(bars), _wind_sentence(outcomes, results), limit_label)


def _polar(results: PowerResults) -> Polar:
    """Return the likely wind from every side [kn], as inspected and after the worst failure."""
    shown = {AS_INSPECTED: results.intact}
    if results.worst is not None:
        shown[f"without {element_name(results.worst.element, results)}"] = results.worst
    curves, parts = [], []
    for label, outcome in shown.items():
        winds = {held.heading: convert(held.wind, "m/s", "kn") for held in outcome.polar}
        # From dead ahead all round to dead ahead, so that the curve closes.
        points = (*sorted(winds.items()), (360, winds[0]))
        curves.append(Curve(label[:LONGEST_LABEL], points, dashed=bool(outcome.element)))
        parts.append(
            sentence(
                "{label}: least {wind} from {heading}",
                label=label,
                wind=Quantity.exact(min(winds.values()), "kn", 1),
                heading=Quantity.exact(outcome.worst_heading, "deg", 0),
            )
        )
    described = joined((joined(parts, "; "), "."), "")
    title = "Most wind withstood from every side, likely"
    asked = None if results.wind is None else convert(results.wind, "m/s", "kn")
    return Polar(title, "kn", tuple(curves), described, asked, "wind to be withstood")


def _wind_sentence(outcomes: list[Outcome], results: PowerResults) -> Cell:
    """Return the winds in words, for a reader to whom the drawing says nothing."""
    intact = likely_with_span(in_knots(outcomes[0].least), "kn", 1)
    if len(outcomes) == 1:
        return sentence("As inspected {intact}; nothing else can fail.", intact=intact)
    worst = outcomes[1]
    return sentence(
        "As inspected {intact}; worst, {element}, {wind}.",
        intact=intact,
        element=element_name(worst.element, results),
        wind=likely_with_span(in_knots(worst.least), "kn", 1),
    )
