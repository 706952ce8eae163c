"""The chapter on the power plant: what is left with one set out, the spare for new loads, and the worst single failure against wind and current."""

from collections.abc import Iterator

from inspector.conversion.book import Case
from inspector.conversion.chapters import Chapter, Requirement
from inspector.conversion.electric import mismatch, shore_power
from inspector.conversion.holding import Outcome, worst
from inspector.conversion.load_balance import LOAD_FACTOR, demand, spare_for_new
from inspector.conversion.plant_tables import TABLES, TRANSFORMERS
from inspector.conversion.power_lines import called, drawings, limit_words, lines, transformer_load, wind_words
from inspector.conversion.power_sums import Power, power
from inspector.conversion.shapes import ConversionError, Figure, Gap, Span, no_figure
from inspector.conversion.station_keeping import SCREEN
from inspector.conversion.tables import Row
from inspector.quantities import convert, show
from inspector.words import capital

VERIFY = (
    "A screen, not a capability plot and no failure analysis: verify before you rely on it. Station keeping near divers, structures or people in the water "
    "rests on proving trials, on class and flag, and on the vessel's own failure analysis; loads on measurements by an electrician."
)
RUNNING = "All sets in order are taken as running; loads marked as not essential are taken as shed while keeping station."
SHARING = (
    "Bow and stern units share by their full thrust, wind and current are steady and from one side, and there is no sea beyond the factor for waves."
)
ENGINES = "A shaft generator is counted at its own rating; what it takes from its engine is not taken off the propeller."


def chapter(case: Case) -> Chapter:
    """The chapter on power."""
    sums = power(case)
    ids, plant = tuple(table.id for table in TABLES), sums.read.plant
    faults = (*case.faults(*TABLES), *sums.faults)
    if not (plant.sets or plant.thrusters or sums.read.consumers or case.rows(TRANSFORMERS)):
        gaps = (Gap("generating sets, loads and thrusters", "none is typed; take them from the plates, the load balance and the one-line diagram"),)
        return Chapter(
            "power",
            "Power plant",
            "Nothing is typed of the power plant yet, so neither power nor holding position can be told.",
            gaps=gaps,
            faults=faults,
            tables=ids,
        )
    spare = spare_for_new(sums.now)
    figures = (*_balances(sums, spare), *_holding(sums), *_shore(sums))
    return Chapter(
        "power",
        "Power plant",
        _answer(sums, spare),
        figures,
        tuple(lines(sums, case.rows(TRANSFORMERS))),
        tuple(drawings(sums)),
        warnings=tuple(_warnings(sums, case.rows(TRANSFORMERS))),
        gaps=tuple(dict.fromkeys((*sums.gaps, *_shore_gaps(sums.board)))),
        defaults=sums.defaults,
        faults=faults,
        verify=VERIFY,
        tables=ids,
        requirements=tuple(_requirements(sums)),
    )


def _answer(sums: Power, spare: Figure) -> str:
    parts = []
    sea = next((one for one in sums.then if one.condition == "sea"), None)
    if sea is not None:
        words = {
            True: "carry the demand at sea",
            False: "do not carry the demand at sea",
            None: "may or may not carry the demand at sea, as far as known",
        }[sea.holds]
        parts.append(f"With {sea.out} out, the rest of the sets ({show(round(sea.remaining), 'kW')}) {words}")
    if spare.span is not None:
        parts.append(f"the spare for new loads is {_kilowatts(spare.span)}")
    first = worst(sums.found)
    if first is not None:
        parts.append(f"the worst single failure is {called(first.element, sums)}, after which {_left(first, sums)}")
    if not parts:
        return "Too little is typed to tell the power with one set out or what a failure leaves; see what is missing."
    return capital("; ".join(parts)) + "."


def _left(first: Outcome, sums: Power) -> str:
    if first.wind is None:
        return f"{first.bow:.0f} kN at the bow and {first.stern:.0f} kN at the stern are left"
    gives = f": {limit_words(first, sums)} gives way first" if first.limit else ""
    if first.wind.high == 0:
        return f"not even the current on the beam is held, for want of {limit_words(first, sums).removeprefix('no ')}"
    return f"{wind_words(first.wind)} of wind on the beam are held{gives}"


def _balances(sums: Power, spare: Figure) -> Iterator[Figure]:
    for one in sums.then:
        yield one.demand
        if one.margin.span is not None:
            yield one.margin
    if sums.now:
        yield spare
    new = [one for one in sums.read.consumers if one.new]
    if new:
        added = [figure for figure in (demand(new, condition) for condition in ("harbour", "sea", "manoeuvring", "station keeping")) if figure.span]
        most = max(added, key=lambda figure: figure.span.middle, default=None)
        if most is not None:
            yield Figure(
                "new loads, in the condition where they take most", most.span, "kW", most.name.partition(", ")[2], most.assumptions, most.defaults
            )


def _holding(sums: Power) -> Iterator[Figure]:
    if sums.intact is None:
        return
    first = worst(sums.found)
    cases = [("most wind on the beam, as found", sums.intact, "wind"), ("most wind from ahead, as found", sums.intact, "ahead")]
    if first is not None:
        cases += [(f"most wind on the beam without {called(first.element, sums)}", first, "wind")]
        ahead = min((one for one in sums.found if one.ahead), key=lambda one: one.ahead.middle, default=None)
        cases += [(f"most wind from ahead without {called(ahead.element, sums)}", ahead, "ahead")] if ahead else []
    from_thrust = tuple(dict.fromkeys(default for figure in sums.thrusts for default in figure.defaults))
    assumed = (RUNNING, SHARING, *((ENGINES,) if sums.read.plant.engines and sums.read.plant.sets else ()))
    for name, one, way in cases:
        span = getattr(one, way)
        if span is not None:
            ends = Span(*(convert(end, "m/s", "kn") for end in (span.low, span.middle, span.high)))
            yield Figure(
                name,
                ends,
                "kn",
                f"by bisection; {limit_words(one, sums)} gives way first" if way == "wind" and one.limit else "by bisection",
                assumed,
                (*from_thrust, *sums.defaults),
                (),
                SCREEN,
            )


def _shore(sums: Power) -> Iterator[Figure]:
    board = sums.board
    volts, hertz, amperes = (board.number(name) for name in ("shore_voltage", "shore_frequency", "shore_current"))
    factor = board.number("power_factor")
    try:
        if volts and amperes:
            told = () if factor is not None else (LOAD_FACTOR,)
            most = shore_power(amperes, volts, LOAD_FACTOR.value if factor is None else factor)
            yield Figure("power from shore, at most", Span.exact(most), "kW", "√3 x V x A x power factor", (), told)
        if volts and hertz and board.number("voltage") and board.number("frequency"):
            found = mismatch(board.number("voltage"), board.number("frequency"), volts, hertz)
            yield Figure(
                "flux of the ship's machines on shore supply",
                Span.exact(found.flux * 100),
                "%",
                "V / Hz of shore against the ship's; above 105 % they heat",
            )
            yield Figure(
                "speed of motors on shore supply",
                Span.exact(found.speed * 100),
                "%",
                f"Hz of shore against the ship's; fans take {found.fan_power * 100:.0f} % power",
            )
    except ConversionError as problem:
        yield no_figure("shore supply", "kW", (Gap("shore supply", str(problem)),))


def _shore_gaps(board: Row) -> Iterator[Gap]:
    if board.number("shore_current") is None or board.number("shore_voltage") is None:
        yield Gap("shore connection", "what it gives in harbour cannot be told without its breaker and voltage")


def _warnings(sums: Power, transformers: tuple[Row, ...]) -> Iterator[str]:
    for one in sums.then:
        if one.holds is False:
            short = show(round(-one.margin.span.middle), "kW")
            yield f"With {one.out} out the demand in {one.condition} is not carried: short by {short}."
    for row in transformers:
        share = transformer_load(row)
        if share is not None and share > 1:
            yield f"Transformer {row.text('name')} carries {share * 100:.0f} % of its rating."
    if sums.intact is None:
        return
    if sums.intact.holds is False:
        yield f"The wind to be held is not held even with nothing failed: {limit_words(sums.intact, sums) or 'thrust'} gives way."
    dark = [called(one.element, sums) for one in sums.found if one.bow == 0 and one.stern == 0 and (sums.intact.bow or sums.intact.stern)]
    if dark:
        yield f"A single failure takes all thrust across: {', '.join(dark[:6])}{' and others' if len(dark) > 6 else ''}."
    fails = [name for one in sums.found if one.holds is False and (name := called(one.element, sums)) not in dark]
    if fails and sums.intact.holds is not False:
        yield f"The wind to be held is not held after the loss of {', '.join(fails[:6])}{' and others' if len(fails) > 6 else ''}."
    yield from (f"DP class: not met: {one.asked} Found: {one.found}." for one in sums.demands if one.met is False)


def _requirements(sums: Power) -> Iterator[Requirement]:
    for one in sums.then:
        if one.condition in ("sea", "harbour") and one.demand.span is not None:
            label = f"Power with one set out, {one.condition}, new loads and the upper end of the demand"
            yield Requirement(f"power-one-set-out-{one.condition}", label, round(one.demand.span.high, 1), "kW", Span.exact(one.remaining))
    first = worst(sums.found)
    if sums.wind is not None and first is not None and first.wind is not None:
        yield Requirement(
            "wind-after-failure",
            "Beam wind held after the worst single failure",
            round(convert(sums.wind, "m/s", "kn"), 1),
            "kn",
            Span(*(convert(end, "m/s", "kn") for end in (first.wind.low, first.wind.middle, first.wind.high))),
        )


def _kilowatts(span: Span) -> str:
    return show(round(span.middle), "kW") + ("" if span.is_exact else f" ({show(round(span.low), '')} to {show(round(span.high), 'kW')})")
