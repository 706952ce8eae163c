"""The warnings of the chapter on power, in words."""

from collections.abc import Iterator, Sequence

from inspector.conversion.core.particulars import Row
from inspector.conversion.power.calculation import PowerResults
from inspector.conversion.power.power_figures import (
    element_name,
    shortfall_name,
    transformer_share,
)
from inspector.values.quantity import Cell, Quantity, sentence

# A warning that names more failures than this is no longer read.
MOST_NAMED = 6


def warnings(results: PowerResults, transformers: Sequence[Row]) -> Iterator[Cell]:
    """Return what a reader must not miss.

    Parameters
    ----------
    results : PowerResults
    transformers : sequence of Row
        The rows of the table of transformers.

    Returns
    -------
    iterator of Cell
    """
    yield from _balance_warnings(results)
    yield from _transformer_warnings(transformers)
    if results.intact is not None:
        yield from _failure_warnings(results)
        yield from _dp_warnings(results)


def _balance_warnings(results: PowerResults) -> Iterator[Cell]:
    """Yield the conditions whose demand is certainly not carried with one set out."""
    for balance in results.converted:
        # Only what is certain is a warning; what may be carried is in the answer and the table.
        if balance.carried is False:
            text = "With {stopped} out the demand in {condition} is not carried: short by {power}."
            if not balance.stopped:
                text = "No set in order feeds the demand in {condition}: short by {power}."
            yield sentence(
                text,
                stopped=balance.stopped,
                condition=balance.name,
                power=Quantity.exact(-balance.margin.span.middle, "kW", 0),
            )


def _transformer_warnings(transformers: Sequence[Row]) -> Iterator[Cell]:
    """Yield the transformers that carry more than their rating."""
    for row in transformers:
        share = transformer_share(row)
        # At its rating a transformer may run for good; only above it is a warning due.
        if share is not None and share > 1:
            yield sentence(
                "Transformer {name} carries {load} of its rating.",
                name=row.text("name"),
                load=Quantity.exact(share * 100, "%", 0),
            )


def _failure_warnings(results: PowerResults) -> Iterator[Cell]:
    """Yield the failures that take all thrust, and those after which the wind is too much."""
    intact = results.intact
    if intact.keeps_station is False:
        yield sentence(
            "The wind to be withstood is too much even with nothing failed: {first} falls short.",
            first=shortfall_name(intact, results) or "thrust",
        )
    # Where there is none to begin with, no failure takes it.
    has_thrust = bool(intact.bow or intact.stern)
    without_thrust = [
        failure for failure in results.failures if failure.bow == 0 and failure.stern == 0
    ]
    dark = [element_name(failure.element, results) for failure in without_thrust]
    if dark and has_thrust:
        text = "A single failure takes all thrust across: {names}."
        yield sentence(text, names=_names(dark))
    lost = [failure for failure in results.failures if failure.keeps_station is False]
    names = [element_name(failure.element, results) for failure in lost]
    # A failure that takes all thrust is in the warning above.
    others = [name for name in names if not (has_thrust and name in dark)]
    # Where the whole plant falls short already, every failure does, and a list says nothing new.
    if others and intact.keeps_station is not False:
        text = "The wind to be withstood is too much after the loss of {names}."
        yield sentence(text, names=_names(others))


def _names(names: Sequence[str]) -> str:
    """Return the first few names, with a word that there are more."""
    more = " and others" if len(names) > MOST_NAMED else ""
    return ", ".join(names[:MOST_NAMED]) + more


def _dp_warnings(results: PowerResults) -> Iterator[Cell]:
    """Yield what the DP class requires and was certainly not found."""
    for requirement in results.dp_requirements:
        if requirement.met is False:
            yield sentence(
                "DP class, not met: {requirement} Finding: {finding}.",
                requirement=requirement.requirement,
                finding=requirement.finding,
            )
