"""What the list says of one candidate beside her words: what decides, and what to do next."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from inspector.assess.model import Assessment, SystemPart
from inspector.assess.verdict_facts import PARTS_OF_THE_SHIP
from inspector.values.cell_text import money_text
from inspector.values.quantity import Money
from inspector.values.vocabulary import NOT_LOOKED_AT, VERDICTS

# With less than this share of the checks seen, more is won by looking than by deciding.
_SEEN_ENOUGH_TO_DECIDE = 0.1


@dataclass(frozen=True)
class NextAct:
    """What a surveyor does next with an inspection.

    Parameters
    ----------
    step : str
        The page: "prepare", "walk", "decide" or "report".
    text : str
        As a button says it.
    """

    step: str
    text: str


def next_act(assessment: Assessment) -> NextAct:
    """Return what to do next.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    NextAct
    """
    conditions = [part.whole.condition for part in assessment.systems]
    seen = sum(condition.seen for condition in conditions)
    if not seen:
        return NextAct("prepare", "plan the visit")
    if assessment.disputes:
        answers = "disagreement" if assessment.disputes == 1 else "disagreements"
        return NextAct("decide", f"settle {assessment.disputes} {answers}")
    if all(part.whole.decision for part in assessment.systems):
        return NextAct("report", "write the report")
    asked = sum(condition.applicable for condition in conditions)
    if seen < _SEEN_ENOUGH_TO_DECIDE * asked:
        return NextAct("walk", "go on walking")
    return NextAct("decide", "go on: decide")


def summary_sentences(assessment: Assessment) -> list[str]:
    """Return how many systems have which word, what decides, and what the named work comes to.

    Parameters
    ----------
    assessment : Assessment

    Returns
    -------
    list of str
        Empty where there are no systems.
    """
    if not assessment.systems:
        return []
    if all(part.whole.verdict == NOT_LOOKED_AT for part in assessment.systems):
        return ["Nothing is looked at yet."]
    return [_words(assessment), *_what_decides(assessment), *_money(assessment)]


def _words(assessment: Assessment) -> str:
    """How many systems have which word, the three verdicts first."""
    counts = Counter(part.whole.verdict for part in assessment.systems)
    order = [*VERDICTS, *sorted(set(counts) - set(VERDICTS))]
    return ", ".join(f"{counts[word]} {word}" for word in order if counts[word]) + "."


def _what_decides(assessment: Assessment) -> Iterator[str]:
    """The state of the ship herself where something is wrong with it, else the dearest work."""
    worked_on = [
        part for part in assessment.systems if part.whole.verdict not in ("retain", NOT_LOOKED_AT)
    ]
    of_the_ship = [part for part in worked_on if part.system.id in PARTS_OF_THE_SHIP]
    for part in of_the_ship[:1]:
        yield f"What decides: {_named(part)}."
    if not of_the_ship and worked_on:
        dearest = max(worked_on, key=_likely)
        if _likely(dearest):
            likely = _amount(_likely(dearest), assessment.currency)
            yield f"Dearest so far: {dearest.system.name}, {dearest.whole.spoken}, likely {likely}."


def _named(part: SystemPart) -> str:
    """A system with the worst thing seen of it."""
    worst = part.whole.proposal.reasons[:1]
    return "; ".join([part.system.name, *(reason.rstrip(".") for reason in worst)])


def _likely(part: SystemPart) -> float:
    return part.whole.cost.likely if part.whole.cost else 0.0


def _money(assessment: Assessment) -> Iterator[str]:
    """What the priced work comes to. What nobody priced is in no sum, and the sentence says so."""
    total = sum(map(_likely, assessment.systems))
    if total:
        yield f"Work priced so far: likely {_amount(total, assessment.currency)}."


def _amount(value: float, currency: str) -> str:
    return money_text(Money.exact(value, currency))
