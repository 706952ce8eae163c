"""What the report says of checks and systems in words."""

import math

from inspector.assess.checked import CheckResult, Condition
from inspector.assess.model import Assessment, SystemPart
from inspector.report.cell_runs import Run
from inspector.values.cell_text import minute_text
from inspector.values.formatting import ONE_FIGURE, show
from inspector.values.text import counted, listed
from inspector.values.vocabulary import (
    ENTERED,
    FROM_OUTSIDE,
    GATE_QUESTIONS,
    NOT_ENTERED,
    NOT_FITTED,
    NOT_SEEN,
)

# A rating on which somebody must act, printed in the accent.
ACT_ON = ("poor", "failed")
# The record's earlier spelling of how a space was looked at was yes or no.
_EARLIER_SPELLING = {"yes": ENTERED, "no": FROM_OUTSIDE}
_OUTSIDE_TEXTS = {FROM_OUTSIDE: "Seen from outside, not entered.", NOT_ENTERED: "Not entered."}


def all_results(part: SystemPart) -> list[CheckResult]:
    """Return the results of every unit; those of the whole where it has no units of its own.

    Parameters
    ----------
    part : SystemPart

    Returns
    -------
    list of CheckResult
    """
    return [result for unit in part.units for result in unit.results] or list(part.whole.results)


def looked_at(part: SystemPart, assessment: Assessment) -> bool:
    """Return whether anything at all was recorded of a system.

    Parameters
    ----------
    part : SystemPart
    assessment : Assessment

    Returns
    -------
    bool
        True for an answer, a reading, a note, a photo, a finding, a work line, a decision, a
        paper that is due, a requirement of law, or what was seen in passing.
    """
    # A paper that is due, or a law against it, is known before anybody is aboard.
    if part.lines or part.whole.facts.law or part.whole.papers:
        return True
    if any(unit.walked_past for unit in part.units):
        return True
    if any(decided.decision for decided in (part.whole, *part.units)):
        return True
    if any(finding.system == part.system.id for finding in assessment.findings):
        return True
    if any(is_on(photo.on, part) for photo in assessment.photos):
        return True
    return any(_is_recorded(result) for result in all_results(part))


def is_on(subject: str, part: SystemPart) -> bool:
    """Return whether a subject of the record is within a system.

    Parameters
    ----------
    subject : str
    part : SystemPart

    Returns
    -------
    bool
    """
    # sheet/<system>/..., unit/<system>/... and so on: the system is always the second part.
    return subject.split("/")[1:2] == [part.system.id]


def _is_recorded(result: CheckResult) -> bool:
    return bool(result.answer or result.rating or result.readings or result.note or result.photos)


def condition_text(state: Condition) -> str:
    """Return the condition as one phrase, never a figure without its span.

    Parameters
    ----------
    state : Condition

    Returns
    -------
    str
    """
    # All was seen: there is nothing that could still move it.
    if state.shown is not None and state.high - state.low < ONE_FIGURE:
        return f"Condition {math.floor(state.shown)}."
    # Outward, so that rounding never makes a condition look surer than it is.
    span = f"{math.floor(state.low)} to {math.ceil(state.high)} counting what was not seen"
    if state.shown is not None:
        return f"Condition {math.floor(state.shown)} ({span})."
    # Nothing was seen, which is less than too little.
    if state.points is None:
        return f"Condition not known ({span})."
    return f"Too little was seen for a figure of the condition ({span})."


def coverage_text(state: Condition) -> str:
    """Return how much was seen, by checks and by weight.

    Parameters
    ----------
    state : Condition

    Returns
    -------
    str
    """
    share = show(state.coverage * 100, "%", 0)
    return f"{state.seen} of {counted(state.applicable, 'check')} seen, {share} by weight."


def unseen_reason(result: CheckResult) -> str:
    """Return why a check has no rating: the surveyor's reason, or that it was not answered.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    str
    """
    if result.answer.startswith(NOT_SEEN):
        return result.answer.partition(":")[2].strip() or "no reason given"
    return "read but not rated" if result.readings else "not answered"


def was_not_seen(result: CheckResult) -> bool:
    """Return whether a check belongs to its unit and has no rating.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    bool
    """
    return result.applicable and result.rating is None


def rating_text(result: CheckResult) -> str:
    """Return the rating in a word, or why there is none.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    str
    """
    if not result.fitted:
        return NOT_FITTED
    if result.rating is not None:
        return result.rating
    if result.check.optional and not result.answer:
        return "offered, not asked for"
    reason = unseen_reason(result)
    return f"{NOT_SEEN}, {reason}" if result.answer else reason


def rating_runs(result: CheckResult) -> list[Run]:
    """Return the rating in words, and whether it is overruled or disputed.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    list of Run
    """
    tone = "soft"
    if result.applicable and result.rating is not None:
        tone = "now" if result.rating in ACT_ON else ""
    runs: list[Run] = [(rating_text(result), tone)]
    if result.overruled:
        judged = result.judgement.rating
        why = f"; {result.overruled_because}" if result.overruled_because else ""
        words = f"(surveyor's word; overruled: the reading is judged {judged}{why})"
        runs.append((words, "i"))
    if result.as_unit:
        runs.append((f"(taken over from {result.as_unit})", "i"))
    if result.disputed:
        runs.append(("(disputed)", "i"))
    return runs


def disputed_text(result: CheckResult) -> str:
    """Return every answer of each disputed field, with who gave it and when.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    str
        "" where nothing is disputed.
    """
    answers: dict[str, list[str]] = {}
    people: dict[str, set[str]] = {}
    for answer in result.answers:
        field = answer.field.removeprefix("reading/")
        who = answer.who or "nobody named"
        answers.setdefault(field, []).append(f"{answer.text} by {who}, {minute_text(answer.at)}")
        # One person with two devices is no dispute between people, and is explained otherwise.
        people.setdefault(field, set()).add(answer.who)
    return " ".join(
        f"Answered differently{_one_person(people[field])} ({field}): {'; '.join(given)}. "
        "Not settled."
        for field, given in answers.items()
    )


def _one_person(people: set[str]) -> str:
    """What explains two answers by one person."""
    return ", given apart, on two devices" if len(people) == 1 and any(people) else ""


def gate_text(result: CheckResult) -> str:
    """Return how an enclosed space was looked at, as answered before the rating.

    Parameters
    ----------
    result : CheckResult

    Returns
    -------
    str
        "" where the check asks nothing of the kind, or nothing was answered.
    """
    gate = result.gate
    answer = gate.get("entered", "")
    entered = _EARLIER_SPELLING.get(answer, answer)
    # The questions of permit and air are about going in.
    if not gate or entered != ENTERED:
        return _OUTSIDE_TEXTS.get(entered, "")
    # In the order of the questions, whatever the order in which they were answered.
    met = [label for key, label in GATE_QUESTIONS.items() if gate.get(key) == "yes"]
    lacking = [label for label in GATE_QUESTIONS.values() if label not in met]
    parts = [
        f"Entered with {', '.join(met)}" if met else f"Entered without {listed(lacking, 'or')}"
    ]
    if met and lacking:
        parts.append(f"without {', '.join(lacking)}")
    read = _gate_readings(result)
    if read:
        parts.append(f"read before: {read}")
    return f"{'; '.join(parts)}."


def _gate_readings(result: CheckResult) -> str:
    """What was read of the atmosphere before anybody went in."""
    others = {
        name: value
        for name, value in result.gate.items()
        if name != "entered" and name not in GATE_QUESTIONS
    }
    return "; ".join(f"{name.replace('_', ' ')} {value}" for name, value in others.items())
