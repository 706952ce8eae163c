"""What is to be settled before money moves, and what of safety is failed or overdue."""

from reportlab.platypus import Flowable

from inspector.assess.model import Assessment
from inspector.assess.registers import Finding
from inspector.conversion.core.chapter import Requirement
from inspector.report.cell_runs import PAGE, TO, Run
from inspector.report.client.blocks import (
    asked_words,
    money_words,
    numbered,
    offered_words,
    text,
    titled,
)
from inspector.report.client.decision import Decision
from inspector.report.sections.photo_pages import photo_number
from inspector.report.theme import plain
from inspector.values.vocabulary import URGENCIES

MOST_TO_SETTLE = 5


# Of these at least so many places are for what the brief asks and does not get.
_FOR_THE_BRIEF = 2


_MOST_SAFETY = 7


def settled_first(
    assessment: Assessment, decision: Decision, units: str = "si"
) -> tuple[list[list[Run]], int]:
    """Return what is to be settled before money moves, and how much more there is.

    Parameters
    ----------
    assessment : Assessment
    decision : Decision
    units : str
        "si" or "us": the reader's units.

    Returns
    -------
    tuple of (list of list of Run, int)
        At most MOST_TO_SETTLE: dangers and what must be settled before purchase by their urgency,
        and of what the brief asks what she cannot give.
    """
    numbers = {photo.sha: photo.number for photo in assessment.photos}
    found = [
        _finding_runs(finding, numbers)
        for finding in sorted(assessment.findings, key=lambda one: (_urgency(one), one.number))
        if _urgency(finding) < 2
    ]
    asked = [
        _lacking_runs(requirement, key, units)
        for requirement, key in decision.requirements
        # Where the span holds both, what is likely decides whether it is to be settled.
        if requirement.short_by is not None
    ]
    over = decision.cost.left is not None and decision.cost.left < 0
    if over:
        lacks = money_words(-decision.cost.left, decision.cost.currency)
        asked.insert(
            0,
            [(f"The total to plan with is {lacks} over the budget.", ""), ("chapter-money", PAGE)],
        )
    kept = min(len(asked), max(_FOR_THE_BRIEF, MOST_TO_SETTLE - len(found)))
    first = [*found[: MOST_TO_SETTLE - kept], *asked[:kept]]
    return first, len(found) + len(asked) - len(first)


def _urgency(finding: Finding) -> int:
    # Appended, so that an urgency of an older list is found as well.
    return (*URGENCIES, finding.urgency).index(finding.urgency)


def _finding_runs(finding: Finding, numbers: dict[str, int]) -> list[Run]:
    tone = "now" if finding.urgency == URGENCIES[0] else ""
    words = plain(finding.title, 110).rstrip(".")
    if finding.unit_name and finding.unit_name.lower() not in words.lower():
        words = f"{words}, {plain(finding.unit_name, 40)}"
    runs: list[Run] = [(f"{words}.", tone), (f"finding-{finding.number}", PAGE)]
    shown = [numbers[sha] for sha in finding.photos if sha in numbers]
    return [*runs, *((photo_number(one), f"{TO}photo-{one}") for one in shown[:1])]


def _lacking_runs(asked: Requirement, key: str, units: str) -> list[Run]:
    words = f"{asked.label}: {offered_words(asked, units)}, asked {asked_words(asked, units)}."
    return [(words, ""), (key, PAGE)]


def to_settle(assessment: Assessment, decision: Decision, units: str) -> list[Flowable]:
    """Return the block of what is to be settled before money moves.

    Parameters
    ----------
    assessment : Assessment
    decision : Decision
    units : str
        "si" or "us": the reader's units.

    Returns
    -------
    list of Flowable
    """
    first, more = settled_first(assessment, decision, units)
    body: list[Flowable] = [titled("Settle before money moves")]
    if not first:
        return [*body, text([("Nothing of that urgency was found.", "")], "point")]
    body += numbered(first)
    if more:
        body.append(text([(f"and {more} more:", "soft"), ("findings", PAGE)], "point"))
    return body


def safety_block(decision: Decision) -> list[Flowable]:
    """Return what is failed or overdue of safety, whatever anybody wrote of it.

    Parameters
    ----------
    decision : Decision

    Returns
    -------
    list of Flowable
    """
    body: list[Flowable] = [titled("Safety: failed or overdue")]
    if not decision.safety:
        return [*body, text([("Nothing that was seen is failed or overdue.", "")], "point")]
    for item in decision.safety[:_MOST_SAFETY]:
        tone = "" if item.state == "poor" else "b"
        words = f"{item.state}, {item.more}" if item.more else item.state
        runs: list[Run] = [(f"{plain(item.what, 84)}:", ""), (words, tone), (item.key, PAGE)]
        body.append(text(runs, "point"))
    more = len(decision.safety) - _MOST_SAFETY
    if more > 0:
        body.append(text([(f"and {more} more:", "soft"), ("safety", PAGE)], "point"))
    return body
