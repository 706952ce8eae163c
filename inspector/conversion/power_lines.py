"""The printed tables and the drawings of the chapter on power: balances, failures worst first, buses, thrusts, transformers, demands of the DP class."""

from collections.abc import Iterator

from inspector.conversion.chapters import Bar, Bars, Lines
from inspector.conversion.electric import three_phase, transformer_loading
from inspector.conversion.holding import Outcome, power_limited
from inspector.conversion.load_balance import LOAD_FACTOR, Balance, main_sets, running
from inspector.conversion.plant import alternatives, spoken
from inspector.conversion.power_sums import Power
from inspector.conversion.shapes import ConversionError, Span
from inspector.conversion.tables import Row
from inspector.quantities import convert, show

MOST_SHOWN = 24
MOST_BARS = 12
WORDS = {True: "yes", False: "no", None: "not known"}


def lines(sums: Power, transformers: tuple[Row, ...]) -> Iterator[Lines]:
    """Every table that has a row."""
    makers = (balance_lines(sums), failure_lines(sums), bus_lines(sums), thrust_lines(sums), transformer_lines(transformers), demand_lines(sums))
    yield from (one for one in makers if one.rows)


def balance_lines(sums: Power) -> Lines:
    """Demand by condition against what one set out leaves."""
    rows = tuple(_balance(one, sums) for one in sums.then)
    names = ", ".join(one.name for one in main_sets(sums.read.plant.sets))
    return Lines(
        "Power with one set out",
        ("condition", "demand kW", "set out", "rest kW", "margin kW", "sets running", "A on the board"),
        rows,
        (1, 3, 4),
        f"Counted: {names}. Margin against the rest in full; new loads are in. All buses are taken as one here: with ties open, see the failures. "
        "Sets running: the fewest that carry it at 85 % or less.",
    )


def _balance(one: Balance, sums: Power) -> tuple[str, ...]:
    if one.demand.span is None:
        return (one.condition, "not known", one.out, _bare(one.remaining), "–", "–", "–")
    factor, power = sums.board.number("power_factor"), one.demand.span.middle
    work = running(sums.read.plant.sets, power, factor)
    volts = sums.board.number("voltage")
    amperes = show(round(three_phase(power, volts, factor or LOAD_FACTOR.value).current), "A") if volts else "–"
    return (
        one.condition,
        _reach(one.demand.span),
        one.out,
        _bare(one.remaining),
        _reach(one.margin.span),
        f"{work.count} at {work.load * 100:.0f} %, {work.word}",
        amperes,
    )


def failure_lines(sums: Power) -> Lines:
    """Every single failure, worst first, below the case as found."""
    shown = ([sums.intact] if sums.intact else []) + list(sums.found[:MOST_SHOWN])
    more = len(sums.found) - MOST_SHOWN
    note = (
        "As found means: with all that is out of order left out. Left and need in kN across, likely values; the need is that of the wind to be held. "
    )
    note += f"{more} lesser {'failure is' if more == 1 else 'failures are'} not shown." if more > 0 else "Loads and sets in kW."
    heads = ("failure", "takes with it", "bow left / need", "stern left / need", "load / sets", "holds", "most beam wind", "gives way first")
    return Lines("Single failures, worst first", heads, tuple(_failure(one, sums) for one in shown), (), note)


def _failure(one: Outcome, sums: Power) -> tuple[str, ...]:
    already = sums.intact.lost if sums.intact else frozenset()
    taken = sorted(one.lost - already - {one.element})
    loads = "; ".join(f"{called(supply.name, sums)} {_bare(supply.load)} / {_bare(supply.online)}" for supply in one.sources) or "none: dark"
    return (
        called(one.element, sums) or "none, as found",
        ", ".join(called(name, sums) for name in taken) or "–",
        _pair(one.bow, one.bow_need),
        _pair(one.stern, one.stern_need),
        loads,
        "–" if sums.wind is None else WORDS[one.holds],
        wind_words(one.wind),
        limit_words(one, sums) or "–",
    )


def bus_lines(sums: Power) -> Lines:
    """Each live bus as found: what its thrusters would take at full, and how much of their thrust the power allows."""
    rows = []
    for supply in sums.intact.sources if sums.intact else ():
        buses = supply.name.split(" + ")
        full = sum(unit.rated for unit in sums.read.plant.thrusters if not unit.out and alternatives(unit.feed)[0] in buses)
        if full > 0:
            electric = supply.name not in {engine.name for engine in sums.read.plant.engines}
            hotel = sum(sums.read.plant.hotel.get(bus, 0.0) for bus in buses)
            free = (sums.terms.limit * supply.online - hotel) * (sums.terms.efficiency if electric else 1.0)
            power, thrust = power_limited(free, full)
            rows.append(
                (
                    called(supply.name, sums),
                    _bare(supply.online),
                    _bare(hotel),
                    _bare(full),
                    _bare(max(free, 0.0)),
                    f"{power * 100:.0f} %",
                    f"{thrust * 100:.0f} %",
                )
            )
    return Lines(
        "Thrusters at full against the power of their bus or engine",
        ("bus or engine", "sets kW", "other loads kW", "thrusters at full kW", "free for them kW", "power", "thrust"),
        tuple(rows),
        (1, 2, 3, 4, 5, 6),
        "At the load limit, nothing failed. Below 100 % they cannot all work at full at once.",
    )


def thrust_lines(sums: Power) -> Lines:
    """The full thrust taken for each unit."""
    rows = tuple(
        (unit.name, unit.kind, unit.feed, f"{unit.x:+g} m", _reach(figure.span, "kN", 1), figure.formula_text)
        for unit, figure in zip(sums.read.plant.thrusters, sums.thrusts, strict=True)
    )
    return Lines(
        "Full thrust taken",
        ("unit", "kind", "fed by", "from midship", "thrust", "from"),
        rows,
        (3, 4),
        "A bollard or trial value is better than any of these.",
    )


def transformer_lines(rows: tuple[Row, ...]) -> Lines:
    """Each transformer's load against its plate."""
    made = tuple((row.text("name"), show(row.number("rating"), "kVA"), *_loaded(row)) for row in rows)
    return Lines("Transformers", ("transformer", "rating", "load", ""), made, (1, 2), "By power or by current against the plate.")


def transformer_load(row: Row) -> float | None:
    """Share of the plate; None where neither load nor current with voltage was said."""
    try:
        return transformer_loading(row.number("rating"), row.number("load"), row.number("current"), row.number("voltage"))
    except ConversionError:
        return None


def _loaded(row: Row) -> tuple[str, str]:
    share = transformer_load(row)
    if share is None:
        return "not known", "type its load, or a current with its voltage"
    return f"{share * 100:.1f} %", "overloaded" if share > 1 else "within the plate"


def demand_lines(sums: Power) -> Lines:
    """What the DP class asks and what was found."""
    rows = tuple((one.asked, one.found, {True: "met", False: "not met", None: "not known"}[one.met]) for one in sums.demands)
    text = str(sums.text) if sums.text else "neither text applies, or the day of the keel is not recorded; the newer one was read"
    return Lines(
        "What the DP equipment class asks of power and thrust",
        ("asked", "found", ""),
        rows,
        (),
        f"{text}. Consistent equipment is not the class: the notation and the verification document are, and these lapse with a change of flag or "
        "an alteration that was not agreed.",
    )


def drawings(sums: Power) -> Iterator[Bars]:
    """Demand against the rest with one set out, and the most wind after each failure."""
    known = [one for one in sums.then if one.demand.span]
    if known:
        bars = tuple(Bar(one.condition, one.demand.span.low, one.demand.span.point, one.demand.span.high, one.remaining) for one in known)
        told = "; ".join(f"{one.condition} {_reach(one.demand.span)} of {_bare(one.remaining)} kW" for one in known)
        yield Bars("Demand with one set out", "kW", bars, f"{told}.", "sets left with the largest out")
    held = [one for one in (sums.intact, *sums.found) if one and one.wind]
    if held:
        limit = None if sums.wind is None else convert(sums.wind, "m/s", "kn")
        bars = tuple(
            Bar(
                (called(one.element, sums) or "none, as found")[:34],
                *(convert(end, "m/s", "kn") for end in (one.wind.low, one.wind.middle, one.wind.high)),
                limit,
            )
            for one in held[:MOST_BARS]
        )
        told = f"As found {wind_words(held[0].wind)}; " + (
            f"worst, {called(held[1].element, sums)}, {wind_words(held[1].wind)}." if held[1:] else "nothing else can fail."
        )
        yield Bars("Most beam wind held after each failure", "kn", bars, told, "wind to be held" if limit is not None else "")


def called(name: str, sums: Power) -> str:
    """An element as it is spoken of."""
    return spoken(name, sums.read.plant.buses)


def limit_words(one: Outcome, sums: Power) -> str:
    """What gives way first: "power of bus A", "bow thrust"."""
    start = "power of "
    return start + called(one.limit.removeprefix(start), sums) if one.limit.startswith(start) else one.limit


def wind_words(wind: Span | None) -> str:
    """A span of winds [m/s] in knots: "29.7 kn (24.1 to 33.0)"."""
    if wind is None:
        return "–"
    low, middle, high = (convert(end, "m/s", "kn") for end in (wind.low, wind.middle, wind.high))
    return f"{middle:.1f} kn" + ("" if wind.is_exact else f" ({low:.1f} to {high:.1f})")


def _pair(left: float, need: float | None) -> str:
    return f"{left:.1f} / {'–' if need is None else f'{need:.1f}'}"


def _reach(span: Span, unit: str = "", digits: int = 0) -> str:
    ends = f"{_bare(span.low, digits)} to {_bare(span.high, digits)}"
    return (_bare(span.middle, digits) if span.is_exact else f"{_bare(span.middle, digits)} ({ends})") + (f" {unit}" if unit else "")


def _bare(value: float, digits: int = 0) -> str:
    return show(round(value, digits) + 0.0, "", digits)
