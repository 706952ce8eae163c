"""Which recorded work lines count by the word, what they likely cost, and which it speaks against.

Replacing and refurbishing one part are two ways to one end: a sum of both would pay twice.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from inspector.assess.model import Part, SystemPart, WorkCost
from inspector.assess.registers import WorkLine
from inspector.values.vocabulary import PRICE_BOTH

_WAYS = ("refurbish", "replace")
# What counts of a part that is priced both ways; where the word asks for neither, the dearer.
_BY_WORD = {"retain": "refurbish", "refurbish": "refurbish", "remove": "replace"}


@dataclass(frozen=True)
class PricedTwice:
    """A part that is priced to be refurbished and to be replaced, which is one work and not two.

    Parameters
    ----------
    part : Part
    counts : str
        The act whose lines count: "refurbish" or "replace"; "" where the part goes and neither is
        done.
    left_out : tuple of WorkLine
        The lines of the other act, or of both, which are in no sum.
    is_the_dearer : bool
        Whether it counts for being the dearer, since the word asks for neither.
    """

    part: Part
    counts: str
    left_out: tuple[WorkLine, ...]
    is_the_dearer: bool = False

    @property
    def left_out_cost(self) -> float:
        """The likely costs of the lines that are left out [currency]."""
        return math.fsum(line.likely or 0.0 for line in self.left_out)


def parts_priced_twice(system: SystemPart) -> Iterator[PricedTwice]:
    """Yield the parts of a system that are priced to be refurbished and to be replaced.

    The lines of the word count, and where it asks for neither, the dearer ones.

    Parameters
    ----------
    system : SystemPart

    Yields
    ------
    PricedTwice

    References
    ----------
    Model of our own.
    """
    for part in (system.whole, *system.units):
        of_part = [line for line in system.lines if line.unit == part.id]
        lines = {act: tuple(line for line in of_part if line.act == act) for act in _WAYS}
        likely = {
            act: math.fsum(line.likely or 0.0 for line in of_act) for act, of_act in lines.items()
        }
        # An act without a likely cost is not priced, so nothing is paid twice.
        if not all(likely.values()):
            continue
        asked = _asked_act(part, system.whole)
        # Where the verdict asks for neither, the dearer way: the sum must never be too small.
        counts = max(likely, key=lambda act: likely[act]) if asked is None else asked
        # What does not count is still named with its amount, so that nothing is lost from sight.
        left_out = tuple(line for act in _WAYS if act != counts for line in lines[act])
        yield PricedTwice(part, counts, left_out, asked is None)


def _asked_act(part: Part, whole: Part) -> str | None:
    """The act that the word asks for: "" for neither, None where it does not say.

    Where a unit's own word leaves it open, what was decided of its system holds.
    """
    if part.let_go:
        return ""
    # A price for all of a system of which some units are replaced is neither of the two ways.
    if "replace" in part.proposal.detail and part.verdict == "refurbish" and not part.decision:
        return None
    return _BY_WORD.get(part.verdict) or _BY_WORD.get(whole.decision)


def counted_lines(system: SystemPart) -> list[WorkLine]:
    """Return the recorded lines that are in the sums.

    Parameters
    ----------
    system : SystemPart

    Returns
    -------
    list of WorkLine
    """
    left_out = {line.id for twice in parts_priced_twice(system) for line in twice.left_out}
    return [line for line in system.lines if line.id not in left_out]


def work_cost(system: SystemPart) -> WorkCost | None:
    """Return what the counted lines of a system likely cost together.

    Parameters
    ----------
    system : SystemPart

    Returns
    -------
    WorkCost or None
        None where none of them is priced.
    """
    likely = [line.likely for line in counted_lines(system) if line.is_priced]
    if not likely:
        return None
    return WorkCost(_label(system.whole), math.fsum(likely))


def _label(whole: Part) -> str:
    if whole.let_go:
        return "taking it out"
    labels = {
        "retain": "work beside it",
        "refurbish": "work on it",
        "remove": "taking out and replacing",
        PRICE_BOTH: "as far as priced",
    }
    return labels.get(whole.verdict, "work recorded so far")


def lines_against(system: SystemPart) -> tuple[str, ...]:
    """Name each recorded line that the word of its part speaks against.

    A surveyor may have his reason; then his decision says so, or the line is taken out.

    Parameters
    ----------
    system : SystemPart

    Returns
    -------
    tuple of str
        Sentences. A part that is priced both ways is not among them: it is still to be decided.
    """
    twice = {one.part.id for one in parts_priced_twice(system)}
    return tuple(
        f"A work line is to {line.act} {part.name}, whose word is {part.spoken}: decide the word, "
        "or take the line out."
        for part in (system.whole, *system.units)
        if part.id not in twice
        for line in system.lines
        if line.unit == part.id and _speaks_against(part, line.act)
    )


def _speaks_against(part: Part, act: str) -> bool:
    if part.let_go:
        return act in _WAYS
    unwelcome = {"retain": ("replace", "remove"), "refurbish": ("remove",)}
    return act in unwelcome.get(part.verdict, ())
