"""Words that the chapters share for spans in their sentences."""

from inspector.conversion.core.span import Span
from inspector.values.quantity import Cell, Quantity, sentence


def likely_with_span(span: Span, unit: str = "", digits: int | None = None) -> Cell:
    """Return a span for a sentence: the likely value first, and the whole span after it.

    Parameters
    ----------
    span : Span
        The span [unit].
    unit : str
        A unit of ``inspector.values.units``; "" for a plain number.
    digits : int, optional
        Decimals in which it is shown.

    Returns
    -------
    Cell
        The span alone where it has no likely value, and one value where both ends read the same.
    """
    whole = span.quantity(unit, digits)
    # "5 m (5 to 5 m)" would look like a fault of the tool.
    reads_as_one = digits is not None and round(span.low, digits) == round(span.high, digits)
    if span.point is None or span.is_exact or reads_as_one:
        return whole
    likely = Quantity.exact(span.point, unit, digits)
    return sentence("{likely} ({span})", likely=likely, span=whole)
