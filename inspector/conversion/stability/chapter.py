"""The chapter on weight and stability."""

from collections.abc import Iterator

from inspector.conversion.core.case import Case
from inspector.conversion.core.chapter import Chapter, Requirement
from inspector.conversion.core.figure import unique
from inspector.conversion.core.span import Span
from inspector.conversion.stability.calculation import Stability, calculate, weight_changes
from inspector.conversion.stability.deck_loads import DeckLoad, deck_cargo
from inspector.conversion.stability.levers.intact_criteria import INITIAL_GM, LEAST
from inspector.conversion.stability.particulars import READ
from inspector.conversion.stability.presentation import VERIFY, answer, drawings, tables
from inspector.conversion.stability.stability_warnings import gaps, warnings


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
    weight_list, figures = stability.weight_list, stability.condition.figures
    unknown = [figure.gaps for figure in figures if figure.span is None]
    defaults = [item.defaults for item in (*weight_list.masses, *stability.deck_loads)]
    return Chapter(
        "stability",
        "Weight and stability",
        answer(stability),
        (*weight_changes(weight_list.weights), *figures) if stability.has_input else (),
        tables(stability),
        tuple(drawings(stability)),
        warnings=tuple(warnings(stability)),
        gaps=unique(weight_list.gaps, gaps(stability), *unknown),
        defaults=unique(*defaults),
        faults=(*case.faults(*READ), *stability.faults),
        verify=VERIFY if stability.has_input else "",
        particulars=tuple(table.id for table in READ),
        requirements=tuple(_requirements(stability)),
    )


def _requirements(stability: Stability) -> Iterator[Requirement]:
    """Yield the demands: load line, least GM and greatest KG [m], and the loads of the deck."""
    # Of every vessel, also where nothing is typed: ignorance must not count as a mark in order.
    left = stability.condition.draught_left.span
    label = "Draught left to the load line, at the mark amidships"
    yield Requirement("load-line", label, 0.0, "m", left)
    if stability.known_start or stability.weight_list.weights:
        # A GM before free surfaces is an upper end, and nothing to compare with.
        is_fluid = stability.condition.surfaces.span is not None
        gm = stability.condition.gm.span if is_fluid else None
        label = "Metacentric height after the changes"
        yield Requirement("gm", label, LEAST[INITIAL_GM], "m", gm)
    if stability.wind is not None:
        label = "Severe wind: area to leeward over area to windward"
        yield Requirement("wind", label, 1.0, "", stability.wind.ratio)
    limit = stability.condition.kg_limit
    if limit is not None and limit.span is not None:
        # The limit changes with the draught, and its least value in the span is the one to keep.
        kg, label = stability.limited_kg, "Greatest KG by the booklet, after the changes"
        yield Requirement("kg-limit", label, limit.span.low, "m", kg.span, least=False)
    if stability.deck_loads:
        share = _greatest_share(stability.deck_loads)
        label = "Heaviest load on deck, of what is declared"
        yield Requirement("deck-load", label, 100.0, "%", share, least=False)
        yield from _deck_cargo(stability)


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
