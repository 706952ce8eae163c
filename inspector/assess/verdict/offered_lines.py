"""Work lines that follow from what is poor, failed or worn: offered without a price.

Word, units and lines never contradict: what is let go gets a line to remove it, what is replaced a
line for a new one, what stays only small repairs.
"""

from collections.abc import Iterator, Mapping, Sequence

from inspector.assess.checked import CheckResult
from inspector.assess.model import Part
from inspector.assess.recorded import Texts
from inspector.assess.verdict.word import OfferedLine
from inspector.values.vocabulary import PRICE_BOTH


def offered_lines(
    unit: Part, let_go: bool, recorded: Mapping[str, Texts]
) -> tuple[OfferedLine, ...]:
    """Return the lines that are offered for one unit and that no recorded line covers.

    Parameters
    ----------
    unit : Part
    let_go : bool
        Whether it goes and nothing takes its place.
    recorded : mapping of str to mapping
        Line id -> field -> text, of the lines of this unit.

    Returns
    -------
    tuple of OfferedLine
    """
    covered = {(line.get("act"), line.get("check", "")) for line in recorded.values()}
    acts = {line.get("act") for line in recorded.values()}
    return tuple(
        line
        for line in _lines(unit, let_go)
        # One line of the same act says what is done with a unit as a whole.
        if (line.act, line.check) not in covered and (line.check or line.act not in acts)
    )


def _lines(unit: Part, let_go: bool) -> Iterator[OfferedLine]:
    word = unit.verdict
    if word == "remove":
        act, what = ("remove", "Remove") if let_go else ("replace", "A new one in place of")
        yield OfferedLine(unit.id, "", act, f"{what} {unit.name}")
        return
    bad = _bad(unit)
    for result in bad:
        note = f": {result.note}" if result.note else ""
        yield OfferedLine(
            unit.id, result.check.id, "refurbish", f"Put right {result.check.title}{note}"
        )
    if word == "refurbish" and not bad:
        yield OfferedLine(unit.id, "", "refurbish", f"Overhaul {unit.name}")
    if word == PRICE_BOTH:
        if not bad:
            yield OfferedLine(unit.id, "", "refurbish", f"Overhaul {unit.name}")
        yield OfferedLine(unit.id, "", "replace", f"A new one in place of {unit.name}")


def _bad(unit: Part) -> Sequence[CheckResult]:
    found = [one for one in unit.results if one.applicable and one.bad and not one.is_service]
    return sorted(found, key=lambda one: (not one.check.critical, -one.check.weight))
