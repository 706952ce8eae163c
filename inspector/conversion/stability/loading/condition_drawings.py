"""Drawings of KG before and after against its limit, and of the draughts against the load line."""

from collections.abc import Iterator

from inspector.conversion.core.drawing import Bar, Bars
from inspector.conversion.core.span import Span
from inspector.conversion.stability.calculation import Stability
from inspector.conversion.stability.kg_limit import is_fluid
from inspector.values.quantity import Cell, joined, sentence

KG_TITLE = "KG before and after, above the keel"
DRAUGHT_TITLE = "Draughts after the changes, against the load line"


def condition_drawings(stability: Stability) -> Iterator[Bars]:
    """Yield KG before, after and fluid against its limit, and the draughts at the marks.

    Parameters
    ----------
    stability : Stability

    Yields
    ------
    Bars
        None where nothing after the changes is known.

    References
    ----------
    Model of our own.
    """
    yield from _kg_line(stability)
    yield from _draughts(stability)


def _kg_line(stability: Stability) -> Iterator[Bars]:
    """Yield KG [m], with the booklet's limit on the one that it is for."""
    start, condition = stability.start, stability.condition
    if condition.kg.span is None:
        return
    rise = start.free_surface_rise
    known = {
        "before, solid": None if start.kg is None else Span.exact(start.kg),
        "before, with free surfaces": Span.exact(start.kg + rise) if start.kg and rise else None,
        "after, solid": condition.kg.span,
        "after, with free surfaces": condition.fluid_kg.span,
    }
    limit = condition.kg_limit.span if condition.kg_limit is not None else None
    limited = "after, with free surfaces" if is_fluid(start) else "after, solid"
    # The limit changes with the draught: its least value in the span is the one to keep.
    least = None if limit is None else limit.low
    bars = tuple(
        _bar(name, span, least if name == limited else None)
        for name, span in known.items()
        if span is not None
    )
    words = [
        sentence("{name} {kg}", name=name, kg=span.quantity("m", 2))
        for name, span in known.items()
        if span is not None
    ]
    if limit is not None:
        words.append(sentence("limit {limit}", limit=Span.exact(limit.low).quantity("m", 2)))
    label = "" if limit is None else "greatest KG by the booklet"
    yield Bars(KG_TITLE, "m", bars, _told("KG", words), label, from_zero=False)


def _draughts(stability: Stability) -> Iterator[Bars]:
    """Yield the draughts at the ends and amidships [m], with the greatest one as a stroke."""
    condition = stability.condition
    greatest = stability.start.number("greatest_draught") or None
    at_marks = {
        "forward": condition.fore.span,
        "at the load-line mark": condition.amidships.span,
        "aft": condition.aft.span,
    }
    known = {name: span for name, span in at_marks.items() if span is not None}
    if not known:
        return
    # The mark is amidships: the ends have no limit of their own.
    bars = tuple(
        _bar(name, span, greatest if name == "at the load-line mark" else None)
        for name, span in known.items()
    )
    words = [
        sentence("{name} {draught}", name=name, draught=span.quantity("m", 2))
        for name, span in known.items()
    ]
    if greatest:
        words.append(sentence("greatest {most}", most=Span.exact(greatest).quantity("m", 2)))
    label = "greatest draught" if greatest else ""
    yield Bars(DRAUGHT_TITLE, "m", bars, _told("Draught", words), label, from_zero=False)


def _bar(name: str, span: Span, limit: float | None) -> Bar:
    return Bar(name, span.low, span.middle, span.high, limit)


def _told(what: str, words: list[Cell]) -> Cell:
    """The drawing in one sentence."""
    return joined((f"{what}: ", joined(words, "; "), "."), "")
