"""The weight that a work line gives, beside the thing of the same name that it is about."""

from collections.abc import Iterator

from inspector.conversion.core.case import Case
from inspector.conversion.core.span import Span
from inspector.conversion.core.tank_rows import name_key
from inspector.conversion.core.things import read_things
from inspector.conversion.stability.particulars import WeightList
from inspector.conversion.stability.things_on_deck import carried_by
from inspector.values.quantity import Cell, Quantity, sentence


def work_lines_that_differ(case: Case, weights: WeightList) -> Iterator[Cell]:
    """Yield the work lines whose weight is not that of the thing of their name.

    Parameters
    ----------
    case : Case
    weights : WeightList
        What comes off and goes on, with its masses.

    Yields
    ------
    Cell

    References
    ----------
    Sums of masses; the thing counts.
    """
    known = carried_by(read_things(case), weights)
    for weight in weights.weights:
        if weight.act == "off":
            known[name_key(weight.name)] = weight.change
    for system in case.assessment.systems:
        for line in system.lines:
            mass = known.get(name_key(line.text))
            if line.weight and mass is not None and not _same(line.weight, mass):
                yield sentence(
                    "{name}: its work line gives {line}, and the list of things {mass}, which "
                    "counts.",
                    name=line.text,
                    line=Quantity.exact(line.weight, "t", signed=True),
                    mass=mass.quantity("t", 0, signed=True),
                )


def _same(typed: float, mass: Span) -> bool:
    """Whether a weight typed in whole tonnes is within what a mass may be."""
    return mass.low - 0.5 <= typed <= mass.high + 0.5
