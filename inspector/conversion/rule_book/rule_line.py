"""One line of the rule book: since when a rule is, what it means for her, and who published it."""

from dataclasses import dataclass
from datetime import date

from inspector.criteria.core.source import Source
from inspector.values.quantity import Cell

APPLIES, NOT_HERS, ASK, WAITS = "applies", "does not apply", "ask", "not known"


@dataclass(frozen=True)
class RuleLine:
    """One rule against one vessel.

    Parameters
    ----------
    rule : str
    since : date or None
        The day from which the text binds; None where it has none of its own.
    for_her : Cell
        What it means for this vessel, in a sentence or two.
    state : str
        "applies", "does not apply", "ask" or "not known".
    decides : str
        Who decides in the end.
    source : Source
    """

    rule: str
    since: date | None
    for_her: Cell
    state: str
    decides: str
    source: Source


FLAG = "the flag"
FLAG_AND_CLASS = "flag and class"
