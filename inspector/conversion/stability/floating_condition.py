"""The floating condition after the changes: displacement, trim and draughts at the ends."""

from collections.abc import Sequence

from inspector.conversion.core.bounds import plain
from inspector.conversion.core.figure import Default, Figure, Gap, no_figure, rest_on, unique
from inspector.conversion.core.span import Span, span
from inspector.conversion.stability.booklet.hydrostatics import (
    CHANGES,
    FLOTATION,
    ROUGH,
    end_draughts,
    estimated_mctc,
    parallel_sinkage,
    tonnes_per_cm,
    trim_change,
)
from inspector.conversion.stability.starting_condition import StartingCondition
from inspector.conversion.stability.weights import Weight, total_change

SEA_WATER = 1025.0  # kg/m³
LEAST_DISPLACEMENT = 1.0  # t
DISPLACEMENT = "Displacement after"
SINKAGE = "Mean draught, change"
TRIM = "Trim, change (plus by the head)"
FORWARD, AFT = "Draught forward after", "Draught aft after"
EVEN_KEEL = "The starting condition is on an even keel, as only a mean draught is given."


def displacement(start: StartingCondition, weights: Sequence[Weight]) -> Figure:
    """Return the displacement after the changes.

    Parameters
    ----------
    start : StartingCondition
    weights : sequence of Weight

    Returns
    -------
    Figure
        Displacement [t].

    References
    ----------
    Sum of masses, textbooks of ship stability (seen).
    """
    mass = start.number("displacement")
    if mass is None:
        why = (
            "Give it from the booklet or the draught marks: "
            "the floating condition cannot be calculated without it."
        )
        return no_figure(DISPLACEMENT, "t", (Gap("Displacement", why),))
    after = mass + total_change(weights)
    # Less than a tonne is no vessel: the list and the displacement are of two ships or two units.
    if after.low < LEAST_DISPLACEMENT:
        why = "The list takes off more than the vessel displaces; check both."
        return no_figure(DISPLACEMENT, "t", (Gap("Displacement", why),))
    formula = "displacement + what goes on − what comes off"
    return Figure(DISPLACEMENT, after, "t", formula, source=CHANGES)


def immersion(start: StartingCondition) -> Figure:
    """Return the tonnes per centimetre of the starting condition.

    Parameters
    ----------
    start : StartingCondition

    Returns
    -------
    Figure
        TPC [t/cm]: as given, else from length, breadth and waterplane coefficient.

    Raises
    ------
    BadInput
        A waterplane or a density that cannot be.

    References
    ----------
    TPC = area × density / 100, textbooks of ship stability (seen).
    """
    given = start.number("tpc")
    # The booklet's own figure is calculated from the lines of this hull.
    if given:
        return Figure("TPC", Span.exact(given), "t/cm", "as given")
    length, breadth, coefficient = (start.number(name) for name in ("lpp", "breadth", "cw"))
    # A waterplane can be estimated from all three only.
    if None in (length, breadth, coefficient):
        why = "Give it from the booklet; without it no change of draught can be calculated."
        return no_figure("TPC", "t/cm", (Gap("TPC", why),))
    area = length * breadth * coefficient
    tpc = tonnes_per_cm(area, start.number("density") or SEA_WATER)
    estimate = "Waterplane area estimated from the coefficient; the booklet's TPC is better."
    formula = "length × breadth × waterplane coefficient × density"
    return Figure("TPC", Span.exact(tpc), "t/cm", formula, (estimate,), source=CHANGES)


def sinkage(start: StartingCondition, weights: Sequence[Weight]) -> Figure:
    """Return the change of the mean draught.

    Parameters
    ----------
    start : StartingCondition
    weights : sequence of Weight

    Returns
    -------
    Figure
        Sinkage [m], minus for a rise.

    Raises
    ------
    BadInput
        A TPC that cannot be.

    References
    ----------
    Mass added / TPC, textbooks of ship stability (seen).
    """
    tpc = immersion(start)
    if tpc.span is None:
        return no_figure(SINKAGE, "m", tpc.gaps)
    # At the middle, since the spread of the masses is far wider than that of a TPC.
    change = parallel_sinkage(total_change(weights), tpc.span.middle)
    return Figure(SINKAGE, change, "m", "mass added / TPC", source=CHANGES, **rest_on(tpc))


def trim(start: StartingCondition, weights: Sequence[Weight]) -> Figure:
    """Return the change of trim.

    Parameters
    ----------
    start : StartingCondition
    weights : sequence of Weight
        One without a centre along the ship may be anywhere between the perpendiculars.

    Returns
    -------
    Figure
        Change of trim [m], plus by the head.

    Raises
    ------
    BadInput
        A TPC, a breadth or an MCTC that cannot be.

    References
    ----------
    Moment / MCTC, textbooks of ship stability (seen).
    """
    length = start.number("lpp")
    mctc, defaults, missing = _trimming_moment(start)
    if length is None:
        no_length = Gap("Length between perpendiculars", "No trim can be calculated without it.")
        missing = (no_length, *missing)
    # Named all at once: they are on one page of the booklet.
    if missing:
        return no_figure(TRIM, "m", missing)
    # Its usual place is known well enough for a first check, and is listed as assumed.
    if start.number("lcf") is None:
        defaults = (*defaults, FLOTATION)
    change = trim_change(_moment(weights, _flotation(start, length), length), mctc)
    formula = "sum of masses × lever about the centre of flotation / MCTC"
    return Figure(TRIM, change, "m", formula, (), defaults, _unplaced(weights), CHANGES)


def _trimming_moment(
    start: StartingCondition,
) -> tuple[Span | float | None, tuple[Default, ...], tuple[Gap, ...]]:
    """Return MCTC [t·m/cm] as given, else estimated from TPC and breadth, or what is missing."""
    given, breadth = start.number("mctc"), start.number("breadth")
    if given:
        return given, (), ()
    tpc = immersion(start)
    if tpc.span is None or breadth is None:
        why = "Give it from the booklet; no trim can be calculated without it."
        return None, (), (Gap("MCTC", why),)
    mctc = estimated_mctc(tpc.span.middle, breadth)
    why = "None is given; it is estimated from TPC and breadth."
    return mctc, (Default("MCTC", mctc, why, unit="t·m/cm", source=ROUGH),), ()


def _flotation(start: StartingCondition, length: float) -> Span:
    """Return the centre of flotation from the after perpendicular [m]."""
    lcf = start.number("lcf")
    return FLOTATION.value * length if lcf is None else span(lcf)


def _moment(weights: Sequence[Weight], centre: Span, length: float) -> Span:
    """Return the trimming moment about a centre of flotation [t·m]."""
    anywhere = Span(0.0, None, length)
    moment = Span.exact(0.0)
    for weight in weights:
        # A weight without a place may be at either end, and the trim is spread by that.
        lcg = anywhere if weight.lcg is None else span(weight.lcg)
        moment = moment + weight.change * (lcg - centre)
    return moment


def _unplaced(weights: Sequence[Weight]) -> tuple[Gap, ...]:
    """Return the gaps of weights without a centre along the ship."""
    why = "It is taken as anywhere between the perpendiculars."
    unplaced = [weight for weight in weights if weight.lcg is None]
    return tuple(Gap(f"Centre along the ship of {weight.name}", why) for weight in unplaced)


def start_draughts(start: StartingCondition) -> tuple[tuple[float, float] | None, bool]:
    """Return the draughts of the starting condition, and whether an even keel was assumed.

    Parameters
    ----------
    start : StartingCondition

    Returns
    -------
    tuple of (tuple of float or None, bool)
        Draughts forward and aft [m]; None where no draught is given.

    References
    ----------
    As typed from the marks or the booklet.
    """
    fore, aft = start.number("draught_fore"), start.number("draught_aft")
    # A mean draught is better than none, yet it hides the trim, so the figure says so.
    if fore is None or aft is None:
        return (start.draught, start.draught) if start.draught else None, True
    return (fore, aft), False


def flotation_share(start: StartingCondition) -> Span:
    """Return the centre of flotation as a share of the length.

    Parameters
    ----------
    start : StartingCondition
        With a length between perpendiculars.

    Returns
    -------
    Span
        Share from the after perpendicular; the usual place where none is given.

    Raises
    ------
    BadInput
        A length that cannot be.

    References
    ----------
    As given; the usual place is common practice, no source.
    """
    lcf = start.number("lcf")
    if lcf is None:
        return FLOTATION.value
    length = plain("length between perpendiculars", start.number("lpp"), 5, 400, "m")
    # A booklet may measure it from another zero; beyond the length it would be refused altogether.
    return Span.exact(min(lcf, length) / length)


def draughts(start: StartingCondition, sunk: Figure, trimmed: Figure) -> tuple[Figure, Figure]:
    """Return the draughts forward and aft after the changes.

    Parameters
    ----------
    start : StartingCondition
    sunk : Figure
        Change of the mean draught [m].
    trimmed : Figure
        Change of trim [m].

    Returns
    -------
    tuple of (Figure, Figure)
        Draughts forward and aft [m]; from an even keel where only a mean draught is given.

    Raises
    ------
    BadInput
        A length or a centre of flotation that cannot be.

    References
    ----------
    Trim shared by the centre of flotation, textbooks of ship stability (seen).
    """
    ends, even_keel = start_draughts(start)
    no_draught = Gap("Draughts of the starting condition", "Give them forward and aft.")
    missing = unique(
        sunk.gaps if sunk.span is None else (),
        trimmed.gaps if trimmed.span is None else (),
        () if ends else (no_draught,),
    )
    if missing:
        return no_figure(FORWARD, "m", missing), no_figure(AFT, "m", missing)
    spans = end_draughts(ends, sunk.span, trimmed.span, flotation_share(start))
    rest = rest_on(sunk, trimmed)
    if even_keel:
        rest["assumptions"] = (*rest["assumptions"], EVEN_KEEL)
    formula = "draught + sinkage, and its share of the trim"
    return tuple(
        Figure(name, after, "m", formula, source=CHANGES, **rest)
        for name, after in zip((FORWARD, AFT), spans, strict=True)
    )
