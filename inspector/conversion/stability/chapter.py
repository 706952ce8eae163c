"""The chapter on weight and stability."""

from collections.abc import Iterator

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, FigureTable, Requirement
from inspector.conversion.core.claims import CLAIMS, beside_claim, claims_table
from inspector.conversion.core.figure import Gap, unique
from inspector.conversion.core.ship_particulars import HYDROSTATICS
from inspector.conversion.core.span import ConversionError, Span
from inspector.conversion.stability.booklet.booklet_tables import hydrostatic_table
from inspector.conversion.stability.calculation import Stability, calculate, weight_changes
from inspector.conversion.stability.deck_loads import DeckLoad, deck_cargo
from inspector.conversion.stability.kg_limit import is_fluid
from inspector.conversion.stability.levers.intact_criteria import INITIAL_GM, LEAST
from inspector.conversion.stability.loading.condition_drawings import condition_drawings
from inspector.conversion.stability.loading.loading_conditions import (
    LoadingConditions,
    loading_conditions,
)
from inspector.conversion.stability.loading.particulars import LOADING
from inspector.conversion.stability.loading.presentation import table as loading_table
from inspector.conversion.stability.loading.presentation import warnings as loading_warnings
from inspector.conversion.stability.particulars import READ
from inspector.conversion.stability.presentation import VERIFY, answer, drawings, tables
from inspector.conversion.stability.stability_warnings import gaps, warnings
from inspector.values.quantity import sentence

# Departure, arrival, worst and as inspected.
CONDITIONS = 4.0


def chapter(case: Case) -> Chapter:
    """Return the chapter on weight and stability. Never raises for recorded data.

    Parameters
    ----------
    case : Case

    Returns
    -------
    Chapter
    """
    stability = calculate(case)
    loading = loading_conditions(case, stability)
    weight_list, figures = stability.weight_list, stability.condition.figures
    unknown = [figure.gaps for figure in figures if figure.span is None]
    defaults = [item.defaults for item in (*weight_list.masses, *stability.deck_loads)]
    return Chapter(
        "stability",
        "Weight and stability",
        answer(stability),
        (*weight_changes(weight_list.weights), *figures) if stability.has_input else (),
        tuple(_tables(case, stability, loading)),
        (*condition_drawings(stability), *drawings(stability)),
        warnings=(*warnings(stability), *loading_warnings(loading)),
        gaps=unique(weight_list.gaps, gaps(stability), *unknown, _gaps(stability, loading)),
        defaults=unique(*defaults, loading.defaults),
        faults=(*case.faults(*READ, LOADING), *stability.faults, *loading.faults),
        verify=VERIFY if stability.has_input else "",
        particulars=tuple(table.id for table in (*READ, LOADING, CLAIMS)),
        requirements=(*_requirements(stability), *_loading_requirements(stability, loading)),
    )


def _tables(case: Case, stability: Stability, loading: LoadingConditions) -> Iterator[FigureTable]:
    """Yield the tables that have anything in them."""
    yield from tables(stability)
    if loading.conditions:
        yield loading_table(loading)
    claims = claims_table(beside_claim(case.one(CLAIMS), "deadweight", _deadweight(case), "t"))
    if claims is not None:
        yield claims


def _deadweight(case: Case) -> Span | None:
    """Return displacement at the greatest draught less the lightship, as she is [t]."""
    booklet, table = case.one(HYDROSTATICS), hydrostatic_table(case, [])
    greatest, lightship = booklet.number("greatest_draught"), booklet.number("lightship")
    if table is None or not greatest or not lightship:
        return None
    try:
        return Span.exact(table.displacement_at(greatest) - lightship)
    except ConversionError:
        # Past the booklet's last row it would be a guess.
        return None


def _gaps(stability: Stability, loading: LoadingConditions) -> tuple[Gap, ...]:
    """Return what the loading conditions lack, where there is a vessel to load."""
    return loading.gaps if stability.known_start else ()


def _loading_requirements(
    stability: Stability, loading: LoadingConditions
) -> Iterator[Requirement]:
    """Yield that every loading condition meets every check."""
    if stability.known_start:
        label = "Loading conditions that meet every check"
        yield Requirement("loading", label, CONDITIONS, "", loading.met)


def _requirements(stability: Stability) -> Iterator[Requirement]:
    """Yield the demands: load line, least GM and greatest KG [m], and the loads of the deck."""
    # Of every vessel, also where nothing is typed: ignorance must not count as a mark in order.
    yield _load_line(stability)
    if stability.known_start or stability.weight_list.weights:
        # A GM before free surfaces is an upper end, and nothing to compare with.
        with_surfaces = stability.condition.surfaces.span is not None
        gm = stability.condition.gm.span if with_surfaces else None
        label = "Metacentric height after the changes"
        lacks = stability.condition.gm.gaps
        yield Requirement("gm", label, LEAST[INITIAL_GM], "m", gm, lacks=lacks)
    if stability.wind is not None:
        label = "Severe wind: area to leeward over area to windward"
        yield Requirement("wind", label, 1.0, "", stability.wind.ratio)
    limit = stability.condition.kg_limit
    if limit is not None and limit.span is not None:
        # The limit changes with the draught, and its least value in the span is the one to keep.
        kg, label = stability.limited_kg, "Greatest KG by the booklet, after the changes"
        binds = "with free surfaces" if is_fluid(stability.start) else "solid"
        yield Requirement(
            "kg-limit", label, limit.span.low, "m", kg.span, least=False, binds=binds, lacks=kg.gaps
        )
    if stability.deck_loads:
        share = _greatest_share(stability.deck_loads)
        label = "Heaviest load on deck, of what is declared"
        yield Requirement("deck-load", label, 100.0, "%", share, least=False)
        yield from _deck_cargo(stability)


def _load_line(stability: Stability) -> Requirement:
    """Return the draught at the mark amidships against the greatest one [m]."""
    condition, greatest = stability.condition, stability.start.number("greatest_draught")
    left = condition.deadweight_left.span
    return Requirement(
        "load-line",
        "Draught at the load-line mark",
        greatest or 0.0,
        "m",
        # Without a greatest draught there is nothing to hold it against.
        condition.amidships.span if greatest else None,
        least=False,
        binds="" if left is None else sentence("{left} left", left=left.quantity("t", 0)),
        lacks=condition.draught_left.gaps,
    )


def _deck_cargo(stability: Stability) -> Iterator[Requirement]:
    """Yield all loads on deck together against the booklet's greatest deck cargo [t]."""
    cargo = deck_cargo(stability.deck_loads)
    if cargo is not None:
        label = "All loads on deck, against the greatest deck cargo"
        mass = Span.exact(cargo.mass)
        yield Requirement("deck-cargo", label, cargo.total, "t", mass, least=False)


def _greatest_share(loads: tuple[DeckLoad, ...]) -> Span | None:
    """Return the greatest share of what is declared [%]; None where one load has none."""
    shares = [load.share for load in loads]
    # The load that nobody declared may be the worst of them.
    if None in shares:
        return None
    return Span(*(max(getattr(share, end) for share in shares) for end in ("low", "point", "high")))
