"""The warnings and the gaps of the chapter on stability, in words."""

from collections.abc import Iterator

from inspector.conversion.core.figure import Gap
from inspector.conversion.stability.calculation import Stability
from inspector.conversion.stability.deck_loads import deck_cargo
from inspector.conversion.stability.levers.intact_criteria import INITIAL_GM, LEAST
from inspector.conversion.stability.levers.severe_wind import missing_for_wind
from inspector.values.quantity import Cell, Quantity, sentence
from inspector.values.text import capital

LEAST_RISE = 0.02  # m of KG, below which a single weight is not worth a warning
TOLERANCE = 0.05  # m by which a given GM may differ from KM − KG


def warnings(stability: Stability) -> Iterator[Cell]:
    """Return what a reader must not miss, the gravest first.

    Parameters
    ----------
    stability : Stability

    Returns
    -------
    iterator of Cell
    """
    yield from _load_line_warnings(stability)
    yield from stability.disagreements
    yield from _gm_warnings(stability)
    yield from _criteria_warnings(stability)
    yield from _wind_warnings(stability)
    yield from _height_warnings(stability)
    yield from _booklet_warnings(stability)
    yield from _deck_warnings(stability)


def _load_line_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield that the load line may be under water."""
    condition = stability.condition
    left, greatest = condition.draught_left.span, stability.start.number("greatest_draught")
    # The low end: a load line may not be under water by an estimate either.
    if left is not None and left.low < 0:
        yield sentence(
            "The draught at the mark amidships may come to {draught}, against {greatest} by the "
            "load line: she may not sail so deep.",
            draught=Quantity.exact(condition.amidships.span.high, "m", 2),
            greatest=Quantity.exact(greatest, "m", 2),
        )


def _gm_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield a metacentric height that may be too small."""
    gm, least = stability.condition.gm.span, LEAST[INITIAL_GM]
    # The low end decides: a GM that may be too small is one to stop at.
    if gm is not None and gm.low < least:
        yield sentence(
            "The metacentric height after the changes may be as little as {gm}, against at least "
            "{least}: this layout needs a naval architect before anything else is spent on it.",
            gm=Quantity.exact(gm.low, "m", 2),
            least=Quantity.exact(least, "m"),
        )


def _criteria_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield the intact criteria that are not met."""
    for result in stability.criteria:
        # The initial GM has a warning of its own.
        if result.floods_at is not None:
            yield sentence(
                "{name}: not met, as water comes in at {angle} already.",
                name=capital(result.name),
                angle=Quantity.exact(result.floods_at, "deg"),
            )
        elif result.met is False and result.name != INITIAL_GM:
            yield sentence(
                "{name}: {value}, against at least {least}; not met by this first check.",
                name=capital(result.name),
                value=result.quantity,
                least=result.least_quantity,
            )


def _wind_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield that severe wind and rolling may not be met."""
    wind = stability.wind
    if wind is None:
        return
    if wind.heel is None or wind.heel.high > wind.most_heel:
        yield sentence(
            "Under steady wind she may heel by more than the {most} allowed.",
            most=Quantity.exact(wind.most_heel, "deg", 1),
        )
    if wind.ratio.low < 1:
        yield sentence(
            "In severe wind the area to leeward may be as little as {ratio} of that to windward, "
            "against at least 1: she may not come back from a gust.",
            ratio=Quantity.exact(wind.ratio.low, "", 2),
        )


def _height_warnings(stability: Stability) -> Iterator[Cell]:
    """Return the weights that raise KG: what goes on high, and what comes off low."""
    # Surprising to many: taking off a low weight raises KG as putting on a high one does.
    for weight, rise in stability.kg_rises:
        if rise is not None and rise.low > 0 and rise.high >= LEAST_RISE:
            yield sentence(
                "{name}, {act} the centre of gravity, alone raises KG by {rise} and takes as much "
                "from the metacentric height.",
                name=capital(weight.name),
                act="put on above" if weight.act == "on" else "taken off below",
                rise=rise.quantity("m", 3),
            )


def _booklet_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield what disagrees with the booklet, and what the booklet lacks."""
    start = stability.start
    yield from _limit_warnings(stability)
    if abs(start.gm_disagreement) > TOLERANCE:
        yield sentence(
            "KM less KG less free surface differs by {difference} from the GM that was given: one "
            "of them was misread; KM and KG were used.",
            difference=Quantity.exact(start.gm_disagreement, "m", 2),
        )
    yield from _roll_warnings(stability)
    if start.row.text("booklet") and not start.row["inclined_on"]:
        yield "No date of an inclining test is recorded: a booklet is based on one."


def _limit_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield that KG may be above the greatest one by the booklet."""
    limit, kg = stability.condition.kg_limit, stability.limited_kg
    # A solid KG above a fluid limit is above it all the more.
    known = kg if kg.span is not None else stability.condition.kg
    if limit is None or limit.span is None or known.span is None:
        return
    # The high end: a booklet's limit may not be passed by an estimate either.
    if known.span.high > limit.span.low:
        yield sentence(
            "{name} may come to {kg}, against {limit} allowed by the booklet.",
            name=known.name,
            kg=Quantity.exact(known.span.high, "m", 2),
            limit=Quantity.exact(limit.span.low, "m", 2),
        )


def _roll_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield that a timed roll and the GM of the booklet do not agree."""
    figure, gm = stability.condition.roll_gm, stability.start.gm
    if figure is None or figure.span is None or gm is None:
        return
    # The factor is spread already, so a GM outside is no matter of rounding.
    if not figure.span.contains(gm):
        yield sentence(
            "The timed roll shows a metacentric height of {rolled}, and the starting condition has "
            "{gm}: the vessel was loaded otherwise that day, or the booklet no longer describes "
            "it.",
            rolled=figure.span.quantity("m", 2),
            gm=Quantity.exact(gm, "m", 2),
        )


def _deck_warnings(stability: Stability) -> Iterator[Cell]:
    """Yield the deck loads that are over what the deck is declared for, in a seaway."""
    for load in stability.deck_loads:
        # In a seaway, since a deck that is strong enough only at rest is not strong enough.
        if load.share is not None and load.share.high > 100:
            yield sentence(
                "{name} reaches {share} of what the deck is declared for: it needs a structural "
                "check.",
                name=capital(load.name),
                share=load.share.quantity("%", 0),
            )
    cargo = deck_cargo(stability.deck_loads)
    if cargo is not None and cargo.share > 100:
        yield sentence(
            "All loads on deck are {mass} together, against {total} of deck cargo allowed by the "
            "booklet.",
            mass=Quantity.exact(cargo.mass, "t"),
            total=Quantity.exact(cargo.total, "t"),
        )


def gaps(stability: Stability) -> Iterator[Gap]:
    """Return what the chapter lacks beside the gaps of its figures.

    Parameters
    ----------
    stability : Stability

    Returns
    -------
    iterator of Gap
    """
    if stability.known_start:
        yield from _booklet_gaps(stability)
    for load in stability.deck_loads:
        if load.share is None:
            why = "Read it from the ship's own plan or the plate on deck."
            yield Gap(f"Declared load under {load.name}", why)


def _booklet_gaps(stability: Stability) -> Iterator[Gap]:
    """Yield what only the stability booklet can give."""
    start = stability.start
    if stability.levers.gap is not None:
        yield stability.levers.gap
    lacking = missing_for_wind(start, stability.side)
    if lacking is not None:
        yield lacking
    if not start.number("lightship"):
        why = "Whether the changes require a new inclining test cannot be known without it."
        yield Gap("Lightship", why)
    if not start.row.text("booklet"):
        yield Gap(
            "Stability booklet",
            "Its date and who approved it are not recorded: were these figures read in an approved "
            "booklet?",
        )
