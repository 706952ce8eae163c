"""The wording of the chapter on stability: its answer, its tables and its drawings."""

from collections.abc import Iterator

from inspector.conversion.core.chapter import FigureTable, table_columns
from inspector.conversion.core.drawing import Axis, Bar, Bars, Curve, Graph
from inspector.conversion.core.span_sentences import likely_with_span
from inspector.conversion.stability.calculation import Stability
from inspector.conversion.stability.deck_loads import DeckLoad, deck_cargo
from inspector.conversion.stability.levers.intact_criteria import (
    INITIAL_GM,
    INTACT,
    LEAST,
    CriterionResult,
)
from inspector.conversion.stability.levers.righting_levers import RightingLevers
from inspector.conversion.stability.levers.severe_wind import SevereWind
from inspector.conversion.stability.levers.weather_criterion import WEATHER
from inspector.conversion.stability.lightship_changes import LightshipChange, lightship_changes
from inspector.conversion.stability.weights import total_change
from inspector.criteria.hull.lightship_and_roll import LIGHTSHIP
from inspector.values.quantity import Cell, Quantity, sentence

VERIFY = (
    "Verify before you rely on it: this is arithmetic on what was typed, and no approval. Only a "
    "naval architect's calculation, an inclining test and a stability booklet approved by class "
    "and flag decide how this vessel may be loaded, changed and sailed."
)
NOTHING_GIVEN = (
    "Neither the starting condition nor a weight is given, "
    "so nothing can be calculated of weight and stability."
)
MET = {True: "met", False: "not met", None: "not known"}
NOT_GIVEN = "not given"
# A drawing with more bars than this cannot be read on a phone.
MOST_BARS = 12
LONGEST_LABEL = 28


def answer(stability: Stability) -> Cell:
    """Return the chapter in one or two sentences.

    Parameters
    ----------
    stability : Stability

    Returns
    -------
    Cell
    """
    weights, condition = stability.weight_list.weights, stability.condition
    if condition.mass.span is None:
        if not weights:
            return NOTHING_GIVEN
        return sentence(
            "The list changes the displacement by {change}; "
            "without the displacement itself nothing more can be calculated.",
            change=likely_with_span(total_change(weights), "t", 0),
        )
    mass, gm = likely_with_span(condition.mass.span, "t", 0), condition.gm
    # The first gap is the nearest cause; all of them are listed below the figures.
    if gm.span is None:
        return sentence(
            "The displacement after the changes is {mass}; "
            "the metacentric height is not known: {gap} is missing.",
            mass=mass,
            gap=gm.gaps[0].name,
        )
    return sentence(
        "The displacement after the changes is {mass}, with a metacentric height of {gm}{solid}: "
        "{side} the least of {least} by this first check.",
        mass=mass,
        gm=likely_with_span(gm.span, "m", 2),
        solid=" before any free surface" if condition.surfaces.span is None else "",
        side=_side(gm.span.at_least(LEAST[INITIAL_GM])),
        least=Quantity.exact(LEAST[INITIAL_GM], "m"),
    )


def _side(is_above: bool | None) -> str:
    return {True: "above", False: "below", None: "not surely above"}[is_above]


def tables(stability: Stability) -> tuple[FigureTable, ...]:
    """Return the tables that have anything in them.

    Parameters
    ----------
    stability : Stability

    Returns
    -------
    tuple of FigureTable
    """
    made = []
    if stability.weight_list.weights:
        made.append(_weight_table(stability))
    if stability.condition.mass.span is not None:
        made.append(_criteria_table(stability))
    if stability.wind is not None:
        made.append(_wind_table(stability.wind))
    changes = lightship_changes(stability.weight_list.weights, stability.start)
    if changes:
        made.append(_lightship_table(changes))
    if stability.deck_loads:
        made.append(_deck_table(stability.deck_loads))
    return tuple(made)


def _weight_table(stability: Stability) -> FigureTable:
    """Return the table of weights off and on, each with its centre and its rise of KG."""
    formulas = {mass.name: mass.formula_text for mass in stability.weight_list.masses}
    rows = []
    for weight, rise in stability.kg_rises:
        centre = (_coordinate(metres) for metres in (weight.lcg, weight.tcg, weight.vcg))
        row = (
            weight.name,
            weight.act,
            weight.mass.quantity("t", 1),
            *centre,
            None if rise is None else rise.quantity("m", 3),
            weight.part,
            formulas.get(weight.name, ""),
        )
        rows.append(row)
    return FigureTable(
        "Weights off and on",
        table_columns(
            "what",
            "act",
            ("mass", "t"),
            ("along", "m"),
            ("off centre", "m"),
            ("above keel", "m"),
            ("rise of KG by it alone", "m"),
            "part of",
            "mass from",
        ),
        tuple(rows),
        "Along: from the after perpendicular. A low weight taken off raises KG as a high weight "
        "put on does.",
    )


def _coordinate(metres: float | None) -> Cell:
    return NOT_GIVEN if metres is None else Quantity.exact(metres, "m", 2)


def _criteria_table(stability: Stability) -> FigureTable:
    """Return the table of the general intact criteria."""
    rows = []
    for result in stability.criteria:
        row = (result.name, _met(result), result.quantity, result.least_quantity)
        rows.append(row)
    return FigureTable(
        "General intact criteria",
        table_columns("criterion", "result", "value", "at least"),
        tuple(rows),
        sentence(
            "{source}. Not known: the levers given do not reach far enough, or do not hold at the "
            "new displacement; the greatest is somewhere between its neighbours. Damage "
            "stability is not calculated here.",
            source=str(INTACT),
        ),
    )


def _wind_table(wind: SevereWind) -> FigureTable:
    """Return the table of severe wind and rolling."""
    rows = (
        ("lever of the steady wind", "", wind.lever.quantity("m", 3), None),
        (
            "heel under steady wind",
            MET[wind.heel_met],
            None if wind.heel is None else wind.heel.quantity("deg", 1),
            sentence("at most {heel}", heel=Quantity.exact(wind.most_heel, "deg", 1)),
        ),
        ("roll to windward", "", wind.roll.quantity("deg", 1), None),
        (
            "area to leeward over area to windward",
            MET[wind.ratio_met],
            wind.ratio.quantity("", 2),
            "at least 1",
        ),
    )
    return FigureTable(
        "Severe wind and rolling",
        table_columns("criterion", "result", "value", "asked"),
        rows,
        sentence(
            "{source}. The side area is that after the changes, as typed: a house to be built "
            "belongs in it.",
            source=str(WEATHER),
        ),
    )


def _met(result: CriterionResult) -> Cell:
    """Return whether a criterion is met, with the angle at which water comes in too soon."""
    if result.floods_at is None:
        return MET[result.met]
    return sentence("not met: floods at {angle}", angle=Quantity.exact(result.floods_at, "deg"))


def _lightship_table(changes: tuple[LightshipChange, ...]) -> FigureTable:
    """Return the table of what changes of the lightship, against its limits [%]."""
    rows = []
    for change in changes:
        amend, incline = change.limits
        row = (
            change.name,
            change.percent.quantity("%", 2),
            Quantity.exact(amend, "%"),
            Quantity.exact(incline, "%"),
            _consequence(change.consequences),
        )
        rows.append(row)
    return FigureTable(
        "Changes of the lightship",
        table_columns(
            "of", ("by", "%"), ("amend from", "%"), ("incline above", "%"), "consequence"
        ),
        tuple(rows),
        sentence(
            "{source}. Class and flag may ask for an inclining test in any case.",
            source=str(LIGHTSHIP),
        ),
    )


def _consequence(words: tuple[str, ...]) -> str:
    return words[0] if len(words) == 1 else f"between {words[0]} and {words[1]}"


def _deck_table(loads: tuple[DeckLoad, ...]) -> FigureTable:
    """Return the table of deck loads, at rest and in a seaway [t/m²]."""
    rows = []
    for load in loads:
        row = (
            load.name,
            Quantity.exact(load.mass, "t"),
            Quantity.exact(load.mean, "t/m²", 2),
            Quantity.exact(load.moving, "t/m²", 2),
            None if load.line is None else Quantity.exact(load.line, "t/m", 2),
            "not declared" if load.share is None else load.share.quantity("%", 0),
        )
        rows.append(row)
    cargo = deck_cargo(loads)
    if cargo is not None:
        mass, share = Quantity.exact(cargo.mass, "t"), Quantity.exact(cargo.share, "%", 0)
        rows.append(("all together, of the greatest deck cargo", mass, None, None, None, share))
    return FigureTable(
        "Loads on deck",
        table_columns(
            "load",
            ("mass", "t"),
            ("mean", "t/m²"),
            ("in a seaway", "t/m²"),
            ("under its walls", "t/m"),
            ("of what is declared", "%"),
        ),
        tuple(rows),
        "Of what is declared: at rest, and with the acceleration of a seaway on top; whether the "
        "declared load includes motion, the ship's plan says. Walls must be carried by bulkheads, "
        "girders or new pillars: a structural check is always needed.",
    )


def drawings(stability: Stability) -> Iterator[Bars | Graph]:
    """Return the drawings: what each weight does to KG, and the righting levers before and after.

    Parameters
    ----------
    stability : Stability

    Returns
    -------
    iterator of Bars or Graph
    """
    # A bar from nowhere to nowhere would show nothing, so unknown heights are left to the table.
    known = [pair for pair in stability.kg_rises if pair[1] is not None]
    if known:
        bars = []
        for weight, rise in known[:MOST_BARS]:
            label = f"{weight.name[:LONGEST_LABEL]} {weight.act}"
            bars.append(Bar(label, rise.low, rise.point, rise.high, 0.0))
        weight, rise = known[0]
        described = sentence(
            "{name} {act} moves KG most, by {rise}.",
            name=weight.name,
            act=weight.act,
            rise=rise.quantity("m", 3),
        )
        title = "What each weight alone does to KG"
        yield Bars(title, "m", tuple(bars), described, "no change")
    if stability.levers.levers is not None:
        yield _lever_graph(stability.levers.before, stability.levers.levers.middle)


def _lever_graph(before: RightingLevers | None, after: RightingLevers) -> Graph:
    """Return the levers before, where GZ was typed, and after."""
    curves = []
    if before is not None:
        points = tuple(zip(before.angles, before.levers, strict=True))
        curves.append(Curve("before", points, dashed=True))
    points = tuple(zip(after.angles, after.levers, strict=True))
    curves.append(Curve("after, estimate", points, dots=True))
    described = sentence(
        "After the changes the greatest lever is {lever} at about {angle}.",
        lever=Quantity.exact(max(after.levers), "m", 2),
        angle=Quantity.exact(after.greatest_lever_angle.point, "deg"),
    )
    return Graph(
        "Righting levers", Axis("heel", "deg"), Axis("lever", "m"), tuple(curves), described
    )
